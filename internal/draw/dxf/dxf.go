// Package dxf writes the cuts and scores of a drawing as DXF R12 in ASCII, the
// plainest form of that exchange format, for cutting machines and CAD.
//
// Coordinates are millimetres with the pattern's own origin and y upwards; the
// first piece's blank begins at 0, 0 and the others lie in rows to its right and
// above. Cuts round a piece are closed polylines, arcs are true arcs. The layers
// are CUT, SLIT, CREASE_VALLEY, CREASE_MOUNTAIN (of board HALF_CUT_OTHER_SIDE
// and HALF_CUT), GLUE and GLUE_OTHER_SIDE, and
// NAME with what each piece is called and how many are made of it. A drawing
// for a cutter has CUT, SCORE, HALF_CUT and HALF_CUT_OTHER_SIDE, PERFORATE, MARK and GLUE, and no texts.
//
// The package writes no dimensions.
package dxf

import (
	"fmt"
	"io"
	"strconv"

	"creasefit/internal/draw"
)

// gap is what stays free between pieces, mm.
const gap = 10

// layer is one layer of the file.
type layer struct {
	of     draw.Layer
	name   string
	colour int // of the standard palette: 7 black or white, 1 red, 4 cyan, 5 blue
	line   string
}

var layers = [...]layer{
	{draw.Outline, "CUT", 7, "CONTINUOUS"},
	{draw.SlitCut, "SLIT", 5, "CONTINUOUS"},
	{draw.ValleyFold, "CREASE_VALLEY", 4, "VALLEY"},
	{draw.MountainFold, "CREASE_MOUNTAIN", 1, "MOUNTAIN"},
	{draw.HalfCutUnder, "HALF_CUT_OTHER_SIDE", 4, "VALLEY"},
	{draw.HalfCut, "HALF_CUT", 1, "MOUNTAIN"},
	{draw.Pasted, "GLUE", 2, "CONTINUOUS"},
	{draw.PastedUnder, "GLUE_OTHER_SIDE", 30, "CONTINUOUS"},
}

// machine are the layers of drawings for a cutter: of what is done.
var machine = [...]layer{
	{draw.CutPath, "CUT", 7, "CONTINUOUS"},
	{draw.ScorePath, "SCORE", 4, "CONTINUOUS"},
	{draw.HalfCutUnderPath, "HALF_CUT_OTHER_SIDE", 6, "CONTINUOUS"},
	{draw.HalfCutPath, "HALF_CUT", 30, "CONTINUOUS"},
	{draw.PerforationPath, "PERFORATE", 1, "CONTINUOUS"},
	{draw.MarkPath, "MARK", 3, "CONTINUOUS"},
	{draw.GluePath, "GLUE", 2, "CONTINUOUS"},
}

// names is the layer of the pieces' names and numbers.
const names = "NAME"

// Encode writes the drawing. The error is the writer's.
func Encode(w io.Writer, d *draw.Drawing) error {
	f := file{b: make([]byte, 0, 8<<10), layers: layers[:]}
	if d.View == draw.Cutter {
		f.layers = machine[:]
	}
	at, high := places(d)
	f.header(high)
	f.tables(d.View)
	f.pair(0, "SECTION")
	f.pair(2, "ENTITIES")
	for i := range d.Figures {
		f.figure(&d.Figures[i], at[i])
		if d.View != draw.Cutter {
			f.name(d, i, at[i])
		}
	}
	f.pair(0, "ENDSEC")
	f.pair(0, "EOF")
	_, err := w.Write(f.b)
	return err
}

// places returns where the figures lie, in rows about as wide as all are high
// or, for a machine, where the drawing has them; and what they take up.
func places(d *draw.Drawing) (at []draw.Point, high draw.Point) {
	sizes := make([]draw.Point, len(d.Figures))
	for i := range d.Figures {
		sizes[i] = draw.Point{X: d.Figures[i].Size.X + gap, Y: d.Figures[i].Size.Y + gap}
	}
	at, _ = draw.Rows(sizes)
	for i := range d.Figures {
		if d.View == draw.Cutter {
			at[i] = d.Figures[i].At
		}
		high = draw.Point{X: max(high.X, at[i].X+d.Figures[i].Size.X), Y: max(high.Y, at[i].Y+d.Figures[i].Size.Y)}
	}
	return at, high
}

// file is the growing file.
type file struct {
	b      []byte
	layers []layer
}

// pair writes a group code and its text.
func (f *file) pair(code int, value string) {
	f.b = strconv.AppendInt(f.b, int64(code), 10)
	f.b = append(append(append(f.b, "\r\n"...), value...), "\r\n"...)
}

func (f *file) count(code, value int) { f.pair(code, strconv.Itoa(value)) }

// number writes a decimal to the nanometre.
func (f *file) number(code int, value float64) {
	f.pair(code, string(draw.AppendDecimal(nil, value, 6)))
}

func (f *file) point(code int, p draw.Point) {
	f.number(code, p.X)
	f.number(code+10, p.Y)
}

// header names the version, the unit and what the pieces take up.
func (f *file) header(high draw.Point) {
	f.pair(999, "one drawing unit is 1 mm")
	f.pair(0, "SECTION")
	f.pair(2, "HEADER")
	f.pair(9, "$ACADVER")
	f.pair(1, "AC1009")
	f.pair(9, "$INSUNITS")
	f.count(70, 4)
	f.pair(9, "$EXTMIN")
	f.point(10, draw.Point{})
	f.pair(9, "$EXTMAX")
	f.point(10, high)
	f.pair(0, "ENDSEC")
}

// tables lists the line types and layers.
func (f *file) tables(view draw.View) {
	f.pair(0, "SECTION")
	f.pair(2, "TABLES")
	f.pair(0, "TABLE")
	f.pair(2, "LTYPE")
	f.count(70, 3)
	f.lineType("CONTINUOUS", "cut", nil)
	f.lineType("VALLEY", "valley fold", draw.ValleyFold.Style().Dash)
	f.lineType("MOUNTAIN", "mountain fold", draw.MountainFold.Style().Dash)
	f.pair(0, "ENDTAB")
	f.pair(0, "TABLE")
	f.pair(2, "LAYER")
	all := f.layers
	if view != draw.Cutter {
		all = append(all[:len(all):len(all)], layer{name: names, colour: 8, line: "CONTINUOUS"})
	}
	f.count(70, len(all))
	for _, l := range all {
		f.pair(0, "LAYER")
		f.pair(2, l.name)
		f.count(70, 0)
		f.count(62, l.colour)
		f.pair(6, l.line)
	}
	f.pair(0, "ENDTAB")
	f.pair(0, "ENDSEC")
}

// lineType describes a line type: lengths of line, and of gaps as negative
// lengths.
func (f *file) lineType(name, text string, dash []float64) {
	f.pair(0, "LTYPE")
	f.pair(2, name)
	f.count(70, 0)
	f.pair(3, text)
	f.count(72, 'A')
	f.count(73, len(dash))
	sum := 0.0
	for _, d := range dash {
		sum += d
	}
	f.number(40, sum)
	for i, d := range dash {
		if i%2 == 1 {
			d = -d
		}
		f.number(49, d)
	}
}

// figure writes the lines of one piece, layer by layer.
func (f *file) figure(fig *draw.Figure, at draw.Point) {
	for _, l := range f.layers {
		for i := range fig.Lines {
			// hatching has no name, the glue area's edge has
			if line := &fig.Lines[i]; line.Layer == l.of && !line.Fill && (line.Closed || l.of > draw.Waste) {
				f.line(line, l.name, at)
			}
		}
	}
}

// name writes what a piece is called and how many are made of it, below its
// lower left corner, as text on a layer of its own.
func (f *file) name(d *draw.Drawing, figure int, at draw.Point) {
	text := d.Figures[figure].Name
	if d.Pattern != nil && figure < len(d.Pattern.Pieces) {
		text += " x " + strconv.Itoa(max(1, d.Pattern.Pieces[figure].Quantity))
	}
	f.pair(0, "TEXT")
	f.pair(8, names)
	f.point(10, draw.Point{X: at.X, Y: at.Y - 4})
	f.number(40, 3)
	f.pair(1, ascii(text))
}

// ascii writes characters beyond ASCII the way that the format has for them.
func ascii(text string) string {
	var b []byte
	for _, r := range text {
		switch {
		case r < ' ' || r > 0xffff:
			b = append(b, '?')
		case r < 0x7f:
			b = append(b, byte(r))
		default:
			b = fmt.Appendf(b, "\\U+%04X", r)
		}
	}
	return string(b)
}

// line writes one line: two places as LINE, all else as POLYLINE.
func (f *file) line(l *draw.Line, layer string, origin draw.Point) {
	at := func(v draw.Vertex) draw.Point { return draw.Point{X: v.X + origin.X, Y: v.Y + origin.Y} }
	if len(l.Path) == 2 && !l.Path[0].IsArc() && !l.Closed {
		f.pair(0, "LINE")
		f.pair(8, layer)
		f.point(10, at(l.Path[0]))
		f.point(11, at(l.Path[1]))
		return
	}
	f.pair(0, "POLYLINE")
	f.pair(8, layer)
	f.count(66, 1)
	if l.Closed {
		f.count(70, 1)
	}
	for i, v := range l.Path {
		f.pair(0, "VERTEX")
		f.pair(8, layer)
		f.point(10, at(v))
		if v.IsArc() && (l.Closed || i+1 < len(l.Path)) {
			f.pair(42, strconv.FormatFloat(v.Bulge, 'f', -1, 64))
		}
	}
	f.pair(0, "SEQEND")
	f.pair(8, layer)
}
