package draw

import (
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/pattern"
)

// Figure is the picture of one piece: x and y are measured in millimetres
// from the lower left corner of its blank.
type Figure struct {
	Name   string
	Lines  []Line // in the order of their layers
	Labels []Label
	Box    Box   // round everything
	Size   Point // of the blank: its upper right corner
	At     Point // where its origin lies in the drawing, from the drawing's lower left corner
}

// figure is a figure in the making.
type figure struct {
	*layout
	flat
	piece   *pattern.Piece
	glues   []pattern.Glue
	fig     Figure
	sides   [4]side
	keys    []string        // what letters in small panels stand for
	w, h    float64         // of the blank
	drawn   []hurdle        // the first of the lines, as far as they were looked at
	hurdles *hurdles        // found so far; nil if there may be more
	far     map[string]bool // scores that are measured from the right or the top edge
	brief   bool            // scores have numbers and no directions, cuts no names, readings no unit
}

// flat is the paper of a piece.
type flat struct {
	mesh     *Mesh
	contours [][]Vertex // round the paper
	rings    [][]Point  // the same, arcs as chords
}

// paperOf returns the paper of a piece, which is found once for all sizes of letters.
func (l *layout) paperOf(piece *pattern.Piece) flat {
	if f, ok := l.papers[piece]; ok {
		return f
	}
	f := flat{mesh: NewMesh(piece)}
	for _, ring := range piece.Contours() {
		f.contours = append(f.contours, vertices(ring))
		f.rings = append(f.rings, Flatten(nil, vertices(ring), true, 0.1))
	}
	l.papers[piece] = f
	return f
}

// figure begins the figure of a piece.
func (l *layout) figure(piece *pattern.Piece, glues []pattern.Glue) *figure {
	f := &figure{layout: l, flat: l.paperOf(piece), piece: piece, glues: glues, w: piece.Width.Millimetres(), h: piece.Height.Millimetres()}
	f.fig.Name = f.say(piece.Name)
	f.fig.Size = Point{f.w, f.h}
	f.fig.Box = Box{High: f.fig.Size}
	return f
}

// Texts reports whether a label reaches into a box.
func (f *Figure) Texts(b Box) bool {
	return slices.ContainsFunc(f.Labels, func(l Label) bool { return l.Box.Meets(b) })
}

// ordered puts the lines into the order of their layers.
func (f *figure) ordered() {
	slices.SortStableFunc(f.fig.Lines, func(a, b Line) int { return int(a.Layer) - int(b.Layer) })
}

// drawPiece draws one piece with its readings and its glue areas.
func (l *layout) drawPiece(piece *pattern.Piece, glues []pattern.Glue) Figure {
	f := l.figure(piece, glues)
	f.geometry()
	f.readings()
	f.panels()
	f.fig.Lines = append(f.fig.Lines, f.hatches()...)
	f.surround()
	f.details()
	f.head()
	f.ordered()
	return f.fig
}

// geometry draws the paper, its outline, its cuts and its folds.
func (f *figure) geometry() {
	contours := f.contours
	f.fig.Lines = make([]Line, 0, 24+2*len(contours)+len(f.mesh.Edges))
	for _, c := range contours {
		f.fig.Lines = append(f.fig.Lines, Line{Layer: Paper, Path: c, Closed: true, Fill: true})
	}
	f.folds()
	f.fig.Lines = append(f.fig.Lines, f.slits()...)
	f.fig.Lines = append(f.fig.Lines, f.stops()...)
	f.blankEdge()
	for _, c := range contours {
		f.fig.Lines = append(f.fig.Lines, Line{Layer: Outline, Name: f.say("outline"), Path: c, Closed: true})
	}
}

// blankEdge draws the blank's rectangle, which lengths are measured from, where
// it is cut away.
func (f *figure) blankEdge() {
	corners := rectangle(Box{High: f.fig.Size})
	for i, a := range corners {
		for _, part := range f.outside(a.Point, corners[(i+1)%4].Point) {
			f.fig.Lines = append(f.fig.Lines, Line{Layer: BlankEdge, Path: []Vertex{{Point: part[0]}, {Point: part[1]}}})
		}
	}
}

// surround lays out the four sides: first below and above, then left and
// right outside of what those take up.
func (f *figure) surround() {
	f.lay(&f.sides[below])
	f.lay(&f.sides[above])
	f.sides[leftOf].line, f.sides[rightOf].line = f.fig.Box.Low.X, f.fig.Box.High.X
	f.lay(&f.sides[leftOf])
	f.lay(&f.sides[rightOf])
	for _, l := range f.fig.Lines {
		for _, v := range l.Path {
			f.fig.Box = f.fig.Box.join(Box{v.Point, v.Point})
		}
	}
}

// head writes the piece's name, size and number above it.
func (f *figure) head() {
	text := f.size(f.piece.Width, f.piece.Height) + ", " + f.say("make") + " " + strconv.Itoa(max(1, f.piece.Quantity))
	if len(f.keys) > 0 {
		text += ". " + strings.Join(f.keys, ", ")
	}
	f.title(text)
}

// title writes the figure's name, and a line about it, above all that is there.
func (f *figure) title(text string) {
	f.fig.Box.High.Y += 0.6 * f.lettering
	most := max(f.fig.Box.Width(), 22*f.lettering)
	f.above(Wrap(text, f.lettering, most), f.lettering, true)
	f.above(Wrap(f.fig.Name, 1.3*f.lettering, most), 1.3*f.lettering, false)
}

// above adds lines of text on top of all that is there.
func (f *figure) above(lines []string, size float64, quiet bool) {
	_, h := Block(lines, size)
	f.label(textAt(f.fig.Box.Low.X, f.fig.Box.High.Y+h, size, quiet, lines...))
	f.fig.Box.High.Y += 0.35 * f.lettering
}
