package tell

import (
	"strconv"
	"strings"

	"creasefit/api/wire"
	"creasefit/internal/pattern"
)

// row is one measurement of an answer: the same in CSV, XML and text. A corner has
// two lengths, which are one line of a text and two rows of a table.
type row struct {
	piece, what, name, from string
	length                  *wire.Length
	up                      *wire.Length // of a corner, from the bottom; else nil
}

// flat lists rows of one length each.
func flat(rows []row) []row {
	list := make([]row, 0, len(rows))
	for _, r := range rows {
		up := r.up
		r.up = nil
		if list = append(list, r); up != nil {
			list = append(list, row{piece: r.piece, what: r.what, name: r.name, from: "bottom", length: up})
		}
	}
	return list
}

// rowsOf lists the measurements of an answer; none of one that is no set of
// measurements.
func rowsOf(answer any) []row {
	switch a := answer.(type) {
	case *wire.Solution:
		return pieceRows(nil, a.Pieces)
	case *wire.Portfolio:
		return pieceRows(nil, a.Pieces)
	case *wire.Ruler:
		return rulerRows(a)
	default:
		return nil
	}
}

// pieceRows lists of each piece the blank, the scores, the panels, the cuts, the
// outline, if it is not the blank's own, and the ends of scores that do not run from
// edge to edge.
func pieceRows(rows []row, pieces []wire.Piece) []row {
	for i := range pieces {
		l := pieceList{rows, pieceName(&pieces[i], pieces)}
		l.sizes(&pieces[i])
		l.cuts(&pieces[i])
		l.places(&pieces[i])
		rows = l.rows
	}
	return rows
}

// pieceList lists what is told of one piece.
type pieceList struct {
	rows  []row
	piece string
}

func (l *pieceList) add(what, name, from string, length *wire.Length) {
	l.rows = append(l.rows, row{piece: l.piece, what: what, name: name, from: from, length: length})
}

func (l *pieceList) at(what, name string, x, y *wire.Length) {
	l.rows = append(l.rows, row{l.piece, what, name, "left", x, y})
}

// sizes lists the blank, the scores and the panels.
func (l *pieceList) sizes(p *wire.Piece) {
	l.add("blank", "width", "", &p.Blank.Width)
	l.add("blank", "height", "", &p.Blank.Height)
	for i := range p.Scores {
		s := &p.Scores[i]
		what := "score"
		if s.HalfCut != "" {
			what = "half-cut " + s.HalfCut
		}
		l.add(what, s.Name, s.From, &s.At)
	}
	for i := range p.Panels {
		l.add("panel", p.Panels[i].Name, "", &p.Panels[i].Size)
	}
}

func (l *pieceList) cuts(p *wire.Piece) {
	for i := range p.Cuts {
		c := &p.Cuts[i]
		if c.Long != nil {
			l.add(c.Kind, c.Name+" length", "", c.Long)
			l.add(c.Kind, c.Name+" middle", pattern.Beside(c.From), c.At)
			l.add(c.Kind, c.Name+" lies", c.From, &c.Depth)
			continue
		}
		l.add(c.Kind, c.Name, c.From, &c.Depth)
		if c.Width.MM != 0 {
			l.add(c.Kind, c.Name+" width", "", &c.Width)
		}
	}
}

// places lists the corners, the ends of scores and how much of the layer below shows.
func (l *pieceList) places(p *wire.Piece) {
	for i := range p.Outline {
		if c := &p.Outline[i]; !wholeBlank(p) {
			l.at("outline", cornerName(c, i), &c.X, &c.Y)
		}
	}
	for i := range p.Partials {
		part := &p.Partials[i]
		l.at("end", part.Name+" of the "+part.Panel+" begins", &part.Begins.X, &part.Begins.Y)
		l.at("end", part.Name+" of the "+part.Panel+" ends", &part.Ends.X, &part.Ends.Y)
	}
	if r := p.Reveal; r != nil {
		l.at("reveal", "reveal on "+r.On, &r.X, &r.Y)
	}
}

// wholeBlank reports whether the outline of a piece is that of its blank.
func wholeBlank(p *wire.Piece) bool {
	for i := range p.Outline {
		c := &p.Outline[i]
		if c.Bulge != 0 || c.X.MM != 0 && c.X.MM != p.Blank.Width.MM || c.Y.MM != 0 && c.Y.MM != p.Blank.Height.MM {
			return false
		}
	}
	return true
}

// cornerName numbers a corner of an outline and says in which ring it lies, and how
// the edge that leaves it bends.
func cornerName(c *wire.Corner, i int) string {
	name := "corner " + strconv.Itoa(i+1)
	if c.Ring > 0 {
		name += " of ring " + strconv.Itoa(c.Ring+1)
	}
	if c.Bulge != 0 {
		name += ", bulge " + strconv.FormatFloat(c.Bulge, 'f', -1, 64)
	}
	return name
}

// pieceName names a piece of a portfolio after its layer and, where that has
// several, itself.
func pieceName(p *wire.Piece, pieces []wire.Piece) string {
	if p.Layer == "" {
		return p.Name
	}
	for i := range pieces {
		if other := &pieces[i]; other != p && other.Layer == p.Layer {
			return p.Layer + " " + p.Name
		}
	}
	return p.Layer
}

// rulerRows lists the nearest marks of each length.
func rulerRows(a *wire.Ruler) []row {
	var rows []row
	for i := range a.Lengths {
		for j := range a.Lengths[i].Readings {
			r := &a.Lengths[i].Readings[j]
			rows = append(rows, row{piece: "length " + strconv.Itoa(i+1), what: "reading", name: r.Step, length: &r.At})
		}
	}
	return rows
}

// measurementRow is a measurement of one length in a table.
func measurementRow(r row) []any {
	return []any{r.piece, r.what, r.name, r.from, reading(set(r.length)), r.length.In, r.length.MM}
}

// appendXML appends one element for each measurement, its numbers as
// attributes, so that number(//score[1]/@in) works in XPath 1.0.
func appendXML(dst []byte, rows []row) []byte {
	dst = append(dst, "<?xml version=\"1.0\" encoding=\"US-ASCII\"?>\n<measurements>\n"...)
	for _, r := range flat(rows) {
		dst = append(append(dst, "  <"...), strings.ReplaceAll(r.what, " ", "-")...)
		for _, attribute := range [...][2]string{
			{"piece", r.piece}, {"name", r.name}, {"from", r.from}, {"reading", set(r.length)},
			{"in", number(r.length.In)}, {"mm", number(r.length.MM)},
		} {
			if attribute[1] != "" {
				dst = append(append(append(dst, ' '), attribute[0]...), `="`...)
				dst = append(appendXMLText(dst, attribute[1]), '"')
			}
		}
		dst = append(dst, "/>\n"...)
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

// appendRowText appends one line to read aloud for each measurement.
func appendRowText(dst []byte, s Style, rows []row) []byte {
	for _, r := range rows {
		dst = append(append(append(dst, r.piece...), ", "...), r.label()...)
		dst = s.appendLength(append(dst, ": "...), r.length, r.from)
		if r.up != nil {
			dst = s.appendLength(append(dst, ", "...), r.up, "bottom")
		}
		dst = append(dst, '\n')
	}
	return dst
}

// appendLength appends what is set, and the edge that it is measured from, if any.
func (s Style) appendLength(dst []byte, l *wire.Length, from string) []byte {
	dst = append(dst, s.mark(set(l))...)
	if l.Papers != 0 { // what it comes to, in the mark's unit
		comes, unit := l.MM, " mm)"
		if strings.HasSuffix(l.Reading, " in") {
			comes, unit = l.In, " in)"
		}
		dst = append(strconv.AppendFloat(append(dst, " ("...), comes, 'f', -1, 64), unit...)
	}
	if from != "" {
		dst = append(append(dst, " from the "...), from...)
	}
	return dst
}

// set is a mark with the papers that are set beside it.
func set(l *wire.Length) string {
	word, n, papers := " and ", l.Papers, " paper"
	if n < 0 {
		word, n = " less ", -n
	}
	switch n {
	case 0:
		return l.Reading
	case 1:
	default:
		papers = " papers"
	}
	return l.Reading + word + strconv.Itoa(n) + papers
}

// label names a measurement in a line of text; most names say what they are.
func (r *row) label() string {
	if strings.Contains(r.name, r.what) || r.what == "panel" {
		return r.name
	}
	return r.what + " " + r.name
}
