package api

import (
	"strconv"
	"strings"

	"creasefit/api/tell"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// row is one measurement of a table: the same in CSV, XML and text.
type row struct {
	piece, what, name, from string
	step                    measure.Step
	length                  measure.Length
}

// solutionRows lists the measurements of a solution: of each piece the blank,
// the scores, the panels and the cuts.
func solutionRows(s *solve.Solution) []row {
	var rows []row
	for i := range s.Pattern.Pieces {
		p := &s.Pattern.Pieces[i]
		add := func(what, name, from string, l measure.Length) {
			rows = append(rows, row{p.Name, what, name, from, s.Step, l})
		}
		add("blank", "width", "", p.Width)
		add("blank", "height", "", p.Height)
		eachScore(p, p, func(m mark) {
			from, _ := edges(m.across)
			add("score", m.score.Name, from, m.at)
		})
		for j := range p.Strips {
			for _, cell := range p.Strips[j].Cells {
				add("panel", cell.Name, "", cell.Size)
			}
		}
		for _, c := range p.Cuts {
			add(c.Kind.String(), c.Name, c.From, c.Depth)
			if !c.Width.IsZero() {
				add(c.Kind.String(), c.Name+" width", "", c.Width)
			}
		}
	}
	return rows
}

// rowStyle is how tables are written.
type rowStyle struct{ bare, comma bool }

// rowStyle returns what the request wants.
func (x *answering) rowStyle() rowStyle { return rowStyle{x.bare, x.comma} }

// appendRows appends the measurements in any format but JSON.
func appendRows(dst []byte, f tell.Format, style rowStyle, rows []row) []byte {
	switch f {
	case tell.CSV:
		return appendCSV(dst, style, rows)
	case tell.XML:
		return appendXML(dst, rows)
	default:
		return appendText(dst, style, rows)
	}
}

// appendCSV appends a table as RFC 4180 has it; with a decimal comma the
// cells are parted by semicolons. Names are the service's own words, so no
// cell needs quotes or begins with a character that a spreadsheet takes for a
// formula.
func appendCSV(dst []byte, style rowStyle, rows []row) []byte {
	separator := byte(',')
	if style.comma {
		separator = ';'
	}
	if !style.bare {
		dst = appendCells(dst, separator, "piece", "what", "name", "from", "reading", "in", "mm")
	}
	for i := range rows {
		r := &rows[i]
		dst = appendCells(dst, separator, r.piece, r.what, r.name, r.from, style.mark(r.reading()), style.mark(r.in()), style.mark(r.mm()))
	}
	return dst
}

// appendCells appends one line of cells.
func appendCells(dst []byte, separator byte, cells ...string) []byte {
	for i, cell := range cells {
		if i > 0 {
			dst = append(dst, separator)
		}
		dst = append(dst, cell...)
	}
	return append(dst, "\r\n"...)
}

// mark writes a number with the wanted decimal mark.
func (s rowStyle) mark(text string) string {
	if s.comma {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}

func (r *row) reading() string { return r.step.Format(r.length) }
func (r *row) in() string      { return string(measure.AppendDecimal(nil, r.length, measure.Inch, 6)) }
func (r *row) mm() string      { return string(measure.AppendDecimal(nil, r.length, measure.Millimetre, 6)) }

// appendXML appends one element for each measurement, its numbers as
// attributes, so that number(//score[1]/@in) works in XPath 1.0.
func appendXML(dst []byte, rows []row) []byte {
	dst = append(dst, "<?xml version=\"1.0\" encoding=\"US-ASCII\"?>\n<measurements>\n"...)
	for i := range rows {
		r := &rows[i]
		dst = append(append(append(dst, "  <"...), r.what...), ` piece="`...)
		dst = append(append(appendXMLText(dst, r.piece), `" name="`...), appendXMLText(nil, r.name)...)
		if r.from != "" {
			dst = append(append(dst, `" from="`...), r.from...)
		}
		dst = append(append(dst, `" reading="`...), r.reading()...)
		dst = append(append(dst, `" in="`...), r.in()...)
		dst = append(append(append(dst, `" mm="`...), r.mm()...), "\"/>\n"...)
	}
	return append(dst, "</measurements>\n"...)
}

// appendXMLText appends a text as ASCII for an attribute.
func appendXMLText(dst []byte, text string) []byte {
	for _, c := range text {
		if c < ' ' || c > '~' || c == '<' || c == '&' || c == '"' {
			dst = append(strconv.AppendInt(append(dst, "&#"...), int64(c), 10), ';')
			continue
		}
		dst = append(dst, byte(c))
	}
	return dst
}

// appendText appends one line to read aloud for each measurement.
func appendText(dst []byte, style rowStyle, rows []row) []byte {
	for i := range rows {
		r := &rows[i]
		dst = append(append(append(dst, r.piece...), ", "...), r.label()...)
		dst = append(append(dst, ": "...), style.mark(r.reading())...)
		if r.from != "" {
			dst = append(append(dst, " from the "...), r.from...)
		}
		dst = append(dst, '\n')
	}
	return dst
}

// label names a measurement in a line of text; most names say what they are.
func (r *row) label() string {
	if strings.Contains(r.name, r.what) || r.what == "panel" {
		return r.name
	}
	return r.what + " " + r.name
}
