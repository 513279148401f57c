// Package settings lists the stops that a pattern is made with. A stop is set
// once, on the score board or on the trimmer, and serves every line that lies
// as far from its edge: the wall's width from all four edges of a tray and of
// its lid is one setting, not eight positions.
//
// It works from the pattern alone. Slanted and curved scores are marked by
// points and have no stop; the package neither says how far off a stop is set,
// which the tolerance stack does, nor in which order the work is done.
package settings

import (
	"cmp"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Tool is what a stop is set on.
type Tool uint8

// The tools: what cuts, and what scores.
const (
	Cut Tool = iota
	Score
)

// String returns the tool as it is written on the wire.
func (t Tool) String() string { return [...]string{"cut", "score"}[t] }

// Do is what a stop is used for.
type Do uint8

// The uses: one side of a blank is so long; a score lies there; a slit or slot
// is so deep; a slit or slot lies there along its edge.
const (
	Blank Do = iota
	Line
	Depth
	Place
)

// String returns the use as it is written on the wire.
func (d Do) String() string { return [...]string{"blank", "score", "depth", "place"}[d] }

// Edge is the edge of a blank that a stop is measured from.
type Edge uint8

// The edges.
const (
	Left Edge = iota
	Right
	Bottom
	Top
)

var edgeNames = [...]string{"left", "right", "bottom", "top"}

// String returns the edge as it is written on the wire.
func (e Edge) String() string { return edgeNames[e] }

// Setting is one stop and all that it serves.
type Setting struct {
	Tool   Tool
	At     measure.Length // how far from the edge
	Papers int            // whole calipers to add to At, as by a scrap of the stock; negative ones are taken off
	Serves []Use
}

// Use is one thing that is done at a stop.
type Use struct {
	Piece   int // of the pattern
	Do      Do
	Edge    Edge  // a blank's width is measured from the left, its height from the bottom
	Creases []int // of the piece: all that lie on this line
	Cut     int   // of the piece; -1 for none
}

// Of lists the stops of a pattern: those for cuts, then those for scores; of
// each, those that serve the fewest first, then by size. A line that lies on no
// mark, but whole calipers beside one of the step, is set with so many papers
// (pattern.SetOf).
func Of(p *pattern.Pattern, step, ruler measure.Step, d Datum) []Setting {
	l := newLister(p, step, ruler, d)
	for i := range p.Pieces {
		l.blank(i, &p.Pieces[i])
		l.scores(i, &p.Pieces[i])
		l.cuts(i, &p.Pieces[i])
	}
	l.serve()
	slices.SortStableFunc(l.found, func(a, b Setting) int {
		return cmp.Or(cmp.Compare(a.Tool, b.Tool), cmp.Compare(len(a.Serves), len(b.Serves)), a.At.Compare(b.At), cmp.Compare(a.Papers, b.Papers))
	})
	return l.found
}

// lister gathers settings. All uses, and all creases of uses, are one piece of
// memory.
type lister struct {
	step, ruler measure.Step
	caliper     measure.Length
	datum       Datum
	found       []Setting
	uses        []Use
	served      []int // by use: the setting that serves it
	creases     []int
	lines       []line
}

// newLister has room for all that a pattern may need.
func newLister(p *pattern.Pattern, step, ruler measure.Step, d Datum) *lister {
	creases, uses := 0, 0
	for i := range p.Pieces {
		creases += len(p.Pieces[i].Creases)
		uses += 2 + len(p.Pieces[i].Creases) + 2*len(p.Pieces[i].Cuts)
	}
	return &lister{step: step, ruler: ruler, caliper: p.Caliper, datum: d,
		found: make([]Setting, 0, uses), uses: make([]Use, 0, uses), served: make([]int, 0, uses),
		creases: make([]int, 0, creases), lines: make([]line, 0, creases)}
}

// add notes a use at so far from its edge.
func (l *lister) add(t Tool, at measure.Length, u Use) {
	how, ok := pattern.SetOf(at, l.caliper, l.step, l.ruler)
	if !ok {
		how = pattern.Set{Mark: at}
	}
	i := slices.IndexFunc(l.found, func(s Setting) bool { return s.Tool == t && s.At == how.Mark && s.Papers == how.Papers })
	if i < 0 {
		i = len(l.found)
		l.found = append(l.found, Setting{Tool: t, At: how.Mark, Papers: how.Papers})
	}
	l.uses, l.served = append(l.uses, u), append(l.served, i)
}

// serve gives the settings their uses.
func (l *lister) serve() {
	all := make([]Use, 0, len(l.uses))
	for i := range l.found {
		from := len(all)
		for j, by := range l.served {
			if by == i {
				all = append(all, l.uses[j])
			}
		}
		l.found[i].Serves = all[from:len(all):len(all)]
	}
}

// blank adds the two sides of a blank.
func (l *lister) blank(i int, p *pattern.Piece) {
	l.add(Cut, p.Width, Use{Piece: i, Do: Blank, Edge: Left, Cut: -1})
	l.add(Cut, p.Height, Use{Piece: i, Do: Blank, Edge: Bottom, Cut: -1})
}

// scores adds the straight scores along the sides of a blank, all on one line
// together.
func (l *lister) scores(i int, p *pattern.Piece) {
	l.lines = l.lines[:0]
	for j := range p.Creases {
		l.lines = append(l.lines, straight(&p.Creases[j]))
	}
	for j, line := range l.lines {
		if line.slanted || slices.Contains(l.lines[:j], line) {
			continue
		}
		from := len(l.creases)
		for k, other := range l.lines {
			if other == line {
				l.creases = append(l.creases, k)
			}
		}
		at, edge := l.from(p, line.at, line.upright)
		l.add(Score, at, Use{Piece: i, Do: Line, Edge: edge, Creases: l.creases[from:len(l.creases):len(l.creases)], Cut: -1})
	}
}

// from is the edge that a place along the width or the height is measured from, and how
// far it lies from there.
func (l *lister) from(p *pattern.Piece, at measure.Length, along bool) (measure.Length, Edge) {
	length, edge := p.Height, Bottom
	if along {
		length, edge = p.Width, Left
	}
	at, far := l.datum.From(at, length)
	if far {
		edge++ // the opposite one
	}
	return at, edge
}

// line is where a score lies along a side of the blank.
type line struct {
	slanted, upright bool // slanted or curved ones lie along none
	at               measure.Length
}

func straight(c *pattern.Crease) line {
	switch {
	case c.Bends():
	case c.A.X == c.B.X:
		return line{upright: true, at: c.A.X}
	case c.A.Y == c.B.Y:
		return line{at: c.A.Y}
	}
	return line{slanted: true}
}

// cuts adds how deep slits and slots are and, if they lie on no score, where.
func (l *lister) cuts(i int, p *pattern.Piece) {
	for j := range p.Cuts {
		c := &p.Cuts[j]
		edge := Edge(slices.Index(edgeNames[:], c.From))
		if c.Kind != pattern.Slit && c.Kind != pattern.Slot || int(edge) >= len(edgeNames) {
			continue
		}
		l.add(Cut, c.Depth, Use{Piece: i, Do: Depth, Edge: edge, Cut: j})
		if c.On != "" {
			continue
		}
		at, along := l.from(p, c.At, edge != Left && edge != Right)
		l.add(Cut, at, Use{Piece: i, Do: Place, Edge: along, Cut: j})
	}
}
