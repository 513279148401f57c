package tell

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"creasefit/api/wire"
)

// Style is how tables and texts are written.
type Style struct {
	Bare  bool // a table has no header row
	Comma bool // decimal commas; the cells of a table are parted by semicolons
}

// Append appends an answer of package wire in a format that is no picture.
func Append(dst []byte, f Format, answer any, s Style) []byte {
	switch f {
	case CSV:
		return appendCSV(dst, s, tableOf(answer))
	case XML:
		return appendXML(dst, rowsOf(answer))
	case Text:
		return appendText(dst, s, answer)
	default:
		return AppendJSON(dst, answer)
	}
}

// table is an answer in rows and columns: a cell is a word, a number, or a
// reading.
type table struct {
	header []string
	rows   [][]any
}

// reading is what to set on the ruler.
type reading string

// tableOf returns the one table that the answer is told in.
func tableOf(answer any) table {
	switch a := answer.(type) {
	case *wire.Yield:
		return cuttingTable(a)
	case *wire.Mail:
		return mailTable(a)
	case *wire.Suggestions:
		return suggestionTable(a)
	default:
		return measurementTable(rowsOf(answer))
	}
}

// appendCSV appends a table as RFC 4180 has it. No cell begins with a character
// that a spreadsheet takes for a formula: words are the service's own.
func appendCSV(dst []byte, s Style, t table) []byte {
	out := appender{dst}
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	if s.Comma {
		w.Comma = ';'
	}
	if !s.Bare {
		_ = w.Write(t.header) // to memory
	}
	for _, row := range t.rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = s.cell(cell)
		}
		_ = w.Write(cells)
	}
	w.Flush()
	return out.bytes
}

// appender is a writer to memory.
type appender struct{ bytes []byte }

var _ io.Writer = (*appender)(nil)

func (a *appender) Write(text []byte) (int, error) {
	a.bytes = append(a.bytes, text...)
	return len(text), nil
}

// cell writes one cell.
func (s Style) cell(cell any) string {
	switch c := cell.(type) {
	case int:
		return strconv.Itoa(c)
	case float64:
		return s.mark(number(c))
	case reading:
		return s.mark(string(c))
	case string:
		return c
	default:
		return "" // there is nothing to tell
	}
}

// mark writes a number with the wanted decimal mark.
func (s Style) mark(text string) string {
	if s.Comma {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}
