package draw

import (
	"cmp"
	"slices"
	"strconv"

	"creasefit/internal/pattern"
)

// NewTemplate draws a pattern to be printed at true scale and cut out: outline,
// cuts, folds and glue areas, and in each piece its name, how many are made of
// it, which side is seen and which way the grain runs. No other line lies
// inside an outline.
func NewTemplate(p *pattern.Pattern, o Options) *Drawing {
	l := o.layout(p)
	return l.stacked(l.patterned(Template, p, o, NewTemplate, l.template))
}

// template draws one piece with its name and marks, in the largest panel that
// has room for them or else below the piece.
func (l *layout) template(piece *pattern.Piece, glues []pattern.Glue) Figure {
	f := l.figure(piece, glues)
	f.geometry()
	f.drop(BlankEdge)
	text := f.fig.Name + ", " + f.say("make") + " " + strconv.Itoa(max(1, piece.Quantity)) + ", " + f.say("inside up")
	if grain := f.grain(); grain != "" {
		text += ", " + f.say("grain") + noBreak + grain
	}
	if !f.inscribeLargest(text) {
		f.label(textAt(0, f.fig.Box.Low.Y-0.5*f.lettering, f.lettering, false, Wrap(text, f.lettering, max(f.w, 16*f.lettering))...))
	}
	f.fig.Lines = append(f.fig.Lines, f.hatches()...)
	f.ordered()
	return f.fig
}

// noBreak is a space that no line is broken at.
const noBreak = "\u00a0"

// inscribeLargest writes a text into the largest panel with room for it.
func (f *figure) inscribeLargest(text string) bool {
	order := make([]int, len(f.piece.Panels))
	areas := make([]float64, len(order))
	for i := range order {
		low, high := extent(Flatten(nil, vertices(f.piece.Panels[i].Outline), true, 0.1), Point{1, 0})
		left, right := extent(Flatten(nil, vertices(f.piece.Panels[i].Outline), true, 0.1), Point{0, 1})
		order[i], areas[i] = i, (high-low)*(right-left)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(areas[b], areas[a]) })
	for _, i := range order {
		spot := f.room(i)
		if l, ok := spot.inscribe(text, f.lettering); ok {
			f.label(l)
			return true
		}
	}
	return false
}

// grain is an arrow along which most of the piece's creases run, and so the
// grain should: folds along it are easy, across it they crack.
func (f *figure) grain() string {
	up, across := 0.0, 0.0
	for i := range f.piece.Creases {
		c := &f.piece.Creases[i]
		up += c.B.Y.Sub(c.A.Y).Abs().Millimetres()
		across += c.B.X.Sub(c.A.X).Abs().Millimetres()
	}
	switch {
	case up > across:
		return "↕"
	case across > up:
		return "↔"
	default:
		return ""
	}
}
