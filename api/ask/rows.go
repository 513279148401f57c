package ask

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"strings"

	"creasefit/internal/fault"
)

const mediaCSV = "text/csv"

// addRows adds the rows of a table as objects: each cell under the name that
// stands above it. An empty cell is a name that is left out. Cells are parted by
// semicolons if the header is.
func (r *Reading) addRows(body []byte) {
	in := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(body, []byte("\ufeff"))))
	first, _, _ := bytes.Cut(body, []byte("\n"))
	if bytes.Count(first, []byte(";")) > bytes.Count(first, []byte(",")) {
		in.Comma = ';'
	}
	in.ReuseRecord = true
	header, err := in.Read()
	names := make([]string, len(header))
	for i, name := range header {
		names[i] = strings.TrimSpace(name)
	}
	for err == nil {
		var row []string
		if row, err = in.Read(); err == nil {
			r.Add(r.table.rows, rowObject(names, row))
		}
	}
	var wrong *csv.ParseError
	if errors.As(err, &wrong) || len(names) < 2 {
		detail := "the table has no header with two names and more"
		if wrong != nil {
			detail = "the table cannot be read: " + wrong.Error()
		}
		r.Report(fault.Fault{Code: fault.Unreadable, Field: r.table.rows, Detail: detail, Expected: "a header row of names, then a row each",
			Hint: "id,width,height,thickness"}, "")
	}
}

// rowObject is a row as an object.
func rowObject(names, row []string) string {
	b := []byte{'{'}
	for i, cell := range row {
		if cell = strings.TrimSpace(cell); cell == "" {
			continue
		}
		if len(b) > 1 {
			b = append(b, ',')
		}
		b = appendText(append(appendText(b, names[i]), ':'), cell)
	}
	return string(append(b, '}'))
}

// appendText appends a text as JSON.
func appendText(dst []byte, text string) []byte {
	literal, _ := json.Marshal(text) // texts always have a literal
	return append(dst, literal...)
}
