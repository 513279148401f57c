package api

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"

	"creasefit/api/ask"
	"creasefit/internal/fault"
)

// tableSource reads a table: its header has the names, among them call and kind
// if the lines differ in them, and any other columns. An empty cell is a name
// that is left out.
type tableSource struct {
	batches *batches
	order   *batchOrder
	in      *csv.Reader
	body    *rowReader
	dialect dialect
	header  []string // as it came
	names   []string // what its columns stand for
	number  int
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
func (s *tableSource) next() ([]string, error) {
	s.body.left = mostLine
	return s.in.Read()
}

// openTable finds out how a table is written and reads its header.
func (s *batches) openTable(body io.Reader, o *batchOrder, charset string, separator rune) (*tableSource, *problem) {
	if _, known := encodings[charset]; charset != "" && !known {
		return nil, problemOf(fault.Faults{ask.NotRead("charset="+charset, "UTF-8, UTF-16 or Windows-1252", mediaCSV+"; charset=utf-8")})
	}
	sample, err := io.ReadAll(io.LimitReader(body, mostSample))
	if err != nil {
		return nil, single(fault.Unreadable, "the body ends before it is complete", "")
	}
	t := &tableSource{batches: s, order: o, dialect: dialect{separator: separator}}
	t.dialect.findEncoding(sample, charset)
	plain := dialect{encoding: t.dialect.encoding}
	start, _ := io.ReadAll(plain.reader(bytes.NewReader(sample))) // what is no character of an encoding is read as an unknown one
	rows := t.dialect.findHabits(string(start), s.isColumn)
	if len(rows) == 0 || len(rows[0]) > mostColumns {
		return nil, problemOf(fault.Faults{{Code: fault.Unreadable, Detail: "the table has no readable header row",
			Expected: "names parted by commas, semicolons, tabs or bars, such as sku,width,thickness; at most 256 of them", Hint: "the first row has the names, each further row one request"}})
	}
	t.readHeader(rows)
	t.body = &rowReader{body: t.dialect.reader(io.MultiReader(bytes.NewReader(sample), body))}
	t.in = newTableReader(t.body, t.dialect.separator)
	for range 1 + map[bool]int{true: 1}[t.dialect.hinted] { // the header was read
		if _, err := t.next(); err != nil {
			return nil, single(fault.Unreadable, "the header row is too long", "")
		}
	}
	return t, nil
}

// readHeader learns the columns from the header, and from the first rows the
// decimal mark, unless the request says which.
func (s *tableSource) readHeader(rows [][]string) {
	s.header = rows[0]
	s.header[0] = strings.TrimPrefix(s.header[0], byteOrderMark)
	for _, heading := range s.header {
		s.names = append(s.names, columnName(heading))
	}
	meant := func(i int) bool { return i < len(s.names) && s.batches.isColumn(s.names[i]) }
	s.dialect.findDecimal(rows[1:], meant)
	said := s.order.usual.Take("decimal", func(string) bool { return true })
	s.dialect.decimal = cmp.Or(said, s.dialect.decimal)
	if s.dialect.decimal != "" && !slices.Contains(s.names, "decimal") {
		s.order.usual.Add("decimal", s.dialect.decimal)
	}
}

// isColumn reports whether a column of that name may be read: a call of the
// batch knows it, or it says which call that is.
func (s *batches) isColumn(name string) bool {
	switch name {
	case "call", "kind":
		return true
	}
	for _, known := range s.families() {
		if known[name] {
			return true
		}
	}
	return false
}

// said is what was found out of the table, for the header of the answer.
func (s *tableSource) said() string {
	var read, passed []string
	for i, name := range s.names {
		path := s.batches.pathOf(s.order.call, s.order.kind) // which may be that of the family
		inFamily := s.batches.familyKnows(path, name) || s.batches.families()[path][name]
		if s.batches.isColumn(name) && (s.order.call == "" || name == "kind" || inFamily) {
			read = append(read, name)
		} else {
			passed = append(passed, s.header[i])
		}
	}
	return s.dialect.field(read, passed)
}

func (s *tableSource) chunk(lines []line) ([]line, bool, error) {
	for len(lines) < mostChunk {
		row, err := s.next()
		var syntax *csv.ParseError
		switch {
		case err == io.EOF:
			return lines, false, nil
		case errors.Is(err, errLongRow):
			s.number++ // most often because of a quote that nothing closes
			l := line{number: s.number, wrong: lineTooLong()}
			l.wrong.detail += "; is a quotation mark never closed?"
			return append(lines, l), false, nil
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
func (s *tableSource) line(row []string) line {
	l := line{number: s.number, cells: row, call: s.order.call}
	kind := s.order.kind
	for i, cell := range row[:min(len(row), len(s.names))] {
		switch text := strings.TrimSpace(cell); {
		case text == "":
		case s.names[i] == "call":
			l.call = text
		case s.names[i] == "kind":
			kind = text
		}
	}
	l.call = s.batches.pathOf(l.call, kind)
	if len(row) > len(s.names) {
		l.wrong = single(fault.Unreadable, "the row has more cells than the header has names", "quote a cell that has a separator in it")
		l.cells = row[:len(s.names)]
	}
	l.add = func(r *ask.Reading) { s.addRow(r, row, l.call) }
	return l
}

// addRow adds the cells of a row that its call, or one of another kind, knows.
func (s *tableSource) addRow(r *ask.Reading, row []string, path string) {
	for i, cell := range row {
		name := s.names[i]
		if name == "kind" && path != "" && strings.HasSuffix(path, "/"+strings.TrimSpace(cell)) {
			continue
		}
		if strings.TrimSpace(cell) != "" && s.batches.familyKnows(path, name) {
			r.AddCell(name, cell)
		}
	}
	r.AddUsual(&s.order.usual)
}
