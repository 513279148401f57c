package api

import (
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"

	"creasefit/api/ask"
	"creasefit/internal/fault"
)

// csvSource reads a table: its header has the names, among them call and,
// if wanted, id. An empty cell is a name that is left out.
type csvSource struct {
	in     *csv.Reader
	body   *rowReader
	header []string
	number int
}

// rowReader ends a table whose next row is longer than a line may be, which
// would otherwise be kept whole.
type rowReader struct {
	body io.Reader
	left int
}

var errLongRow = errors.New("the row is too long")

func (r *rowReader) Read(p []byte) (int, error) {
	if r.left <= 0 {
		return 0, errLongRow
	}
	n, err := r.body.Read(p[:min(len(p), r.left)])
	r.left -= n
	return n, err
}

// next reads a row.
func (s *csvSource) next() ([]string, error) {
	s.body.left = mostLine
	return s.in.Read()
}

// openCSV reads the header of a table.
func openCSV(body io.Reader) (batchSource, batchOutput, *problem) {
	rows := &rowReader{body: body}
	s := &csvSource{in: csv.NewReader(rows), body: rows}
	s.in.FieldsPerRecord = -1
	header, err := s.next()
	if err != nil || len(header) > ask.MostNames {
		return nil, nil, problemOf(fault.Faults{{Code: fault.Unreadable, Detail: "the table has no readable header row",
			Expected: "names parted by commas, such as id,call,unit,width", Hint: "the first row has the names, each further row one request"}})
	}
	for i := range header {
		header[i] = strings.TrimSpace(strings.TrimPrefix(header[i], "\ufeff"))
	}
	s.header = header
	return s, &csvOutput{}, nil
}

func (s *csvSource) chunk(lines []line) ([]line, bool, error) {
	for len(lines) < mostChunk {
		row, err := s.next()
		var syntax *csv.ParseError
		switch {
		case err == io.EOF:
			return lines, false, nil
		case errors.Is(err, errLongRow):
			s.number++
			return append(lines, line{number: s.number, wrong: lineTooLong()}), false, nil
		case errors.As(err, &syntax):
			s.number++
			return append(lines, line{number: s.number, wrong: single(fault.Unreadable, "the table cannot be read from here on: "+syntax.Err.Error(), "")}), false, nil
		case err != nil:
			return nil, false, err
		}
		s.number++
		lines = append(lines, s.line(row))
	}
	return lines, true, nil
}

// line makes a request of a row.
func (s *csvSource) line(row []string) line {
	l := line{number: s.number}
	var fields [][2]string // name and text
	for i, cell := range row {
		switch {
		case i >= len(s.header):
			l.wrong = single(fault.Unreadable, "the row has more cells than the header has names", "")
		case s.header[i] == "id":
			l.id = cell
		case s.header[i] == "call":
			l.call = strings.TrimSpace(cell)
		case strings.TrimSpace(cell) != "":
			fields = append(fields, [2]string{s.header[i], cell})
		}
	}
	l.add = func(r *ask.Reading) {
		for _, f := range fields {
			r.Add(f[0], f[1])
		}
	}
	return l
}

// csvOutput writes a row for every measurement of every answer, and one row
// with what is wrong for a request that has none.
type csvOutput struct{}

func (csvOutput) begin(dst []byte) []byte {
	return append(dst, "id,line,piece,what,name,from,reading,in,mm\r\n"...)
}

// answer turns the JSON answer of a line into rows: the table and the JSON
// come from the same numbers.
func (csvOutput) answer(dst []byte, _ bool, l *line, a []byte) []byte {
	if detail := memberAt(a, "problem", "detail"); detail != "" {
		return appendRow(dst, l, "", "problem", "", "", "! "+detail, "", "")
	}
	answer, _ := descend(a, "answer")
	pieces, _ := descend(answer, "pieces")
	if len(pieces) == 0 {
		return appendSummary(dst, l, answer)
	}
	eachItem(pieces, func(piece []byte) {
		name := ask.Member(piece, "name")
		blank, _ := descend(piece, "blank")
		dst = appendMeasure(dst, l, name, "blank", "width", "", blank, "width")
		dst = appendMeasure(dst, l, name, "blank", "height", "", blank, "height")
		for _, list := range [...]struct{ what, from, at string }{{"score", "scores", "at"}, {"panel", "panels", "size"}, {"cut", "cuts", "depth"}} {
			items, _ := descend(piece, list.from)
			eachItem(items, func(item []byte) {
				dst = appendMeasure(dst, l, name, list.what, ask.Member(item, "name"), ask.Member(item, "from"), item, list.at)
			})
		}
	})
	return dst
}

// appendSummary appends what an answer without pieces comes to: the verdict of
// a check, the sheets of an order. Anything else is no row of a table.
func appendSummary(dst []byte, l *line, answer []byte) []byte {
	from := len(dst)
	for _, what := range [...]string{"words", "sheets", "per_sheet"} {
		if text := ask.Member(answer, what); text != "" {
			dst = appendRow(dst, l, "", what, "", "", text, "", "")
		}
	}
	if len(dst) == from {
		dst = appendRow(dst, l, "", "problem", "", "", "! the answer to this call is no table; send the line as JSON", "", "")
	}
	return dst
}

// end adds a row that says why the table is not whole.
func (csvOutput) end(dst []byte, count, _ int, why string) []byte {
	if why == "" {
		return dst
	}
	return appendRow(dst, &line{number: count + 1}, "", "problem", "", "", "! "+why, "", "")
}

// appendMeasure appends the row of the LENGTH in a member of an object.
func appendMeasure(dst []byte, l *line, piece, what, name, from string, object []byte, member string) []byte {
	return appendRow(dst, l, piece, what, name, from,
		memberAt(object, member, "reading"), memberAt(object, member, "in"), memberAt(object, member, "mm"))
}

// memberAt follows names into an object.
func memberAt(object []byte, names ...string) string {
	for _, name := range names[:len(names)-1] {
		object, _ = descend(object, name)
	}
	return ask.Member(object, names[len(names)-1])
}

// eachItem calls use for every item of a list.
func eachItem(list []byte, use func([]byte)) {
	s := ask.Scanner{Text: list}
	if s.Peek() != '[' {
		return
	}
	for s.Next(); s.Peek() != ']'; s.Expect(',') {
		use(s.Skip())
	}
}

// appendRow appends a row, the cells quoted where they must be (RFC 4180).
func appendRow(dst []byte, l *line, cells ...string) []byte {
	dst = append(appendCell(dst, l.id), ',')
	dst = strconv.AppendInt(dst, int64(l.number), 10)
	for _, cell := range cells {
		dst = appendCell(append(dst, ','), cell)
	}
	return append(dst, "\r\n"...)
}

// appendCell appends a cell. One that a spreadsheet would take for a formula
// gets an apostrophe.
func appendCell(dst []byte, cell string) []byte {
	if begun := strings.TrimLeft(cell, " \t\r\n"); begun != "" && strings.ContainsRune("=+-@", rune(begun[0])) || strings.HasPrefix(cell, "\t") {
		if _, err := strconv.ParseFloat(cell, 64); err != nil {
			cell = "'" + cell
		}
	}
	if !strings.ContainsAny(cell, ",\"\r\n\t") {
		return append(dst, cell...)
	}
	return append(append(append(dst, '"'), strings.ReplaceAll(cell, `"`, `""`)...), '"')
}
