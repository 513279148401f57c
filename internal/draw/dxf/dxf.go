// Package dxf writes the cuts and scores of a drawing as DXF R12 in ASCII, the
// plainest form of that exchange format, for cutting machines and CAD.
//
// Coordinates are millimetres with the pattern's own origin and y upwards; the
// first piece's blank begins at 0, 0 and the others lie to its right. Cuts
// round a piece are closed polylines, arcs are true arcs. The layers are CUT,
// SLIT, CREASE_VALLEY and CREASE_MOUNTAIN.
//
// The package writes no texts, dimensions or glue areas: nothing that a
// machine could take for a cut.
package dxf

import (
	"io"
	"math"
	"strconv"

	"creasefit/internal/draw"
)

// Options are how the pieces are to lie.
type Options struct {
	Gap float64 // between pieces, mm; 10 if zero
}

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
}

// Encode writes the drawing. The error is the writer's.
func Encode(w io.Writer, d *draw.Drawing, o Options) error {
	if o.Gap <= 0 {
		o.Gap = 10
	}
	f := file{b: make([]byte, 0, 8<<10)}
	f.header(d, o.Gap)
	f.tables()
	f.pair(0, "SECTION")
	f.pair(2, "ENTITIES")
	for i, x := range places(d, o.Gap) {
		f.figure(&d.Figures[i], x)
	}
	f.pair(0, "ENDSEC")
	f.pair(0, "EOF")
	_, err := w.Write(f.b)
	return err
}

// places returns where each figure's blank begins.
func places(d *draw.Drawing, gap float64) []float64 {
	at := make([]float64, len(d.Figures))
	for i := 1; i < len(at); i++ {
		at[i] = at[i-1] + d.Figures[i-1].Size.X + gap
	}
	return at
}

// file is the growing file.
type file struct{ b []byte }

// pair writes a group code and its text.
func (f *file) pair(code int, value string) {
	f.b = strconv.AppendInt(f.b, int64(code), 10)
	f.b = append(append(append(f.b, "\r\n"...), value...), "\r\n"...)
}

func (f *file) count(code, value int) { f.pair(code, strconv.Itoa(value)) }

// number writes a decimal to the nanometre.
func (f *file) number(code int, value float64) {
	value = math.Round(value*1e6) / 1e6
	f.pair(code, strconv.FormatFloat(value+0, 'f', -1, 64)) // + 0 makes -0 plain zero
}

func (f *file) point(code int, p draw.Point) {
	f.number(code, p.X)
	f.number(code+10, p.Y)
}

// header names the version, the unit and what the pieces take up.
func (f *file) header(d *draw.Drawing, gap float64) {
	var high draw.Point
	for i, x := range places(d, gap) {
		high = draw.Point{X: x + d.Figures[i].Size.X, Y: max(high.Y, d.Figures[i].Size.Y)}
	}
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
func (f *file) tables() {
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
	f.count(70, len(layers))
	for _, l := range layers {
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
func (f *file) figure(fig *draw.Figure, x float64) {
	for _, l := range layers {
		for i := range fig.Lines {
			if line := &fig.Lines[i]; line.Layer == l.of && !line.Fill {
				f.line(line, l.name, x)
			}
		}
	}
}

// line writes one line: two places as LINE, all else as POLYLINE.
func (f *file) line(l *draw.Line, layer string, x float64) {
	at := func(v draw.Vertex) draw.Point { return draw.Point{X: v.X + x, Y: v.Y} }
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
