package guide

import (
	"cmp"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// line is the straight line along a side of the blank that a crease lies on.
type line struct {
	straight bool
	upright  bool           // it runs from bottom to top; else from left to right
	at       measure.Length // from the left or the bottom
	a, b     pattern.Point  // of one that is not straight: its ends
}

// lineOf returns the line of a crease.
func lineOf(c *pattern.Crease) line {
	switch {
	case c.Bends():
	case c.A.X == c.B.X:
		return line{straight: true, upright: true, at: c.A.X}
	case c.A.Y == c.B.Y:
		return line{straight: true, at: c.A.Y}
	}
	return line{a: c.A, b: c.B}
}

// place returns the point of a line at a distance from where it begins.
func (l *line) place(along measure.Length) pattern.Point {
	if l.upright {
		return pattern.At(l.at, along)
	}
	return pattern.At(along, l.at)
}

// length returns how long the line is in the blank.
func (l *line) length(p *pattern.Piece) measure.Length {
	if l.upright {
		return p.Height
	}
	return p.Width
}

// stretch is a part of a line that is scored in one go.
type stretch struct {
	line
	low, top measure.Length // from the bottom or the left
}

// stretches joins creases on one line to stretches that are scored in one go:
// over gaps where nothing is left that must stay smooth.
func stretches(p *pattern.Piece, creases []int) (all []stretch) {
	for _, i := range creases {
		c := &p.Creases[i]
		s := stretch{line: lineOf(c)}
		if s.low, s.top = c.A.X, c.B.X; s.upright {
			s.low, s.top = c.A.Y, c.B.Y
		}
		s.low, s.top = measure.Min(s.low, s.top), measure.Max(s.low, s.top)
		all = append(all, s)
	}
	slices.SortFunc(all, func(a, b stretch) int { return cmp.Or(a.low.Compare(b.low), a.top.Compare(b.top)) })
	joined := all[:1]
	for _, s := range all[1:] {
		last := &joined[len(joined)-1]
		if last.marks(p, last.top, s.low) {
			joined = append(joined, s)
		} else {
			last.top = measure.Max(last.top, s.top)
		}
	}
	return joined
}

// marks reports whether a line that is scored from one place to another runs
// through the middle of a panel.
func (l *line) marks(p *pattern.Piece, from, to measure.Length) bool {
	for i := range p.Panels {
		ends := along(p.Panels[i].Outline, l.upright)
		for j := 1; j < len(ends); j++ {
			low, top := measure.Max(from, ends[j-1]), measure.Min(to, ends[j])
			if low.Less(top) && inside(p.Panels[i].Outline, l.place(low.Add(top).Over(2))) {
				return true
			}
		}
	}
	return false
}

// extent says how far stretches on one line run; nothing if from edge to edge. A
// score may be drawn on as far as it marks nothing, and ends best at another one.
func (w *writer) extent(p *pattern.Piece, all []stretch) (extent parts) {
	for i := range all {
		s := &all[i]
		low, lowAt := w.end(p, s, s.low, measure.Length{})
		top, topAt := w.end(p, s, s.top, s.length(p))
		way := map[bool]string{true: "upright", false: "level"}[s.upright]
		a := args{"from": s.low, "to": s.top, "low": low, "top": top}
		switch {
		case lowAt && topAt:
		case lowAt && top != "":
			extent = append(extent, told{"extent." + way + ".before", a})
		case topAt && low != "":
			extent = append(extent, told{"extent." + way + ".beyond", a})
		case low != "" && top != "":
			extent = append(extent, told{"extent.between", a})
		default:
			extent = append(extent, told{"extent." + way, a})
		}
	}
	return extent
}

// end says where a stretch may end: at the edge of the blank, or else at the nearest
// score across that it can be drawn on to, which it names.
func (w *writer) end(p *pattern.Piece, s *stretch, from, edge measure.Length) (score string, atEdge bool) {
	free := func(to measure.Length) bool { return !s.marks(p, measure.Min(from, to), measure.Max(from, to)) }
	if free(edge) {
		return "", true
	}
	var best measure.Length
	for i := range p.Creases {
		c := &p.Creases[i]
		across := lineOf(c)
		if !across.straight || across.upright == s.upright || !w.alone(p, c) {
			continue
		}
		off := across.at.Sub(from)
		if off.Sign() != 0 && off.Sign() != edge.Sub(from).Sign() || !free(across.at) || score != "" && !off.Abs().Less(best) {
			continue
		}
		score, best = w.name(noun(c.Name), ""), off.Abs()
	}
	return score, false
}
