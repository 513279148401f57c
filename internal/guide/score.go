package guide

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// line is one score: one crease or several on one straight line.
type line struct {
	names    []string
	upright  bool           // it runs from bottom to top; else from left to right
	slanted  bool           // neither: from a to b
	at       measure.Length // from the left or the bottom
	low, top measure.Length // where it begins and ends along its own direction
	whole    bool           // it may run from edge to edge
	a, b     pattern.Point
	bulge    float64 // of a curved one, which is slanted too
}

// score is pressing the scores of a piece.
func (w *writer) score(p *pattern.Piece) (Step, bool) {
	lines := w.scoreLines(p)
	if len(lines) == 0 {
		return Step{}, false
	}
	step := Step{Title: w.title("score", p), Text: joined([]string{w.say("score.text", args{"n": len(lines)}), w.onceOnly("score.measure")})}
	alike, lines := w.scoresAlike(p, lines)
	step.Lines = append(step.Lines, alike...)
	for _, upright := range []bool{true, false} {
		step.Lines = append(step.Lines, w.scoreAlong(p, lines, upright)...)
	}
	if slices.ContainsFunc(lines, func(l line) bool { return l.slanted }) {
		step.Text += " " + w.say("score.points", nil)
	}
	for _, l := range lines {
		if l.slanted {
			step.Lines = append(step.Lines, sentence(w.slantedLine(p, l)))
		}
	}
	return step, true
}

// scoresAlike writes the scores that lie as far from different edges, several in
// one line with one stop, and returns those that are left.
func (w *writer) scoresAlike(p *pattern.Piece, lines []line) (text []string, left []line) {
	done := make([]bool, len(lines))
	for i, l := range lines {
		if done[i] {
			continue
		}
		var group []int
		for j := i; j < len(lines); j++ {
			if !done[j] && l.stopAlike(p, &lines[j]) {
				group = append(group, j)
			}
		}
		if len(group) < 2 {
			left = append(left, l)
			continue
		}
		var edges, names []string
		for _, j := range group {
			done[j] = true
			_, edge := lines[j].near(p)
			edges, names = append(edges, w.say("edge."+edge, nil)), append(names, lines[j].names...)
		}
		at, _ := l.near(p)
		key := "score.alike"
		if !l.whole {
			key = "score.alike.part." + map[bool]string{true: "bottom", false: "left"}[l.upright]
		}
		text = append(text, sentence(w.say(key, args{"scores": w.list(once(names)), "at": at, "edges": w.list(edges), "from": l.low, "to": l.top})))
	}
	return text, left
}

// near returns how far a line lies from the nearer edge, and which that is.
func (l *line) near(p *pattern.Piece) (measure.Length, string) {
	other := l.across(p).Sub(l.at)
	switch {
	case l.upright && other.Less(l.at):
		return other, "right"
	case l.upright:
		return l.at, "left"
	case other.Less(l.at):
		return other, "top"
	default:
		return l.at, "bottom"
	}
}

// stopAlike reports whether two lines are scored with one stop, from two edges.
func (l *line) stopAlike(p *pattern.Piece, other *line) bool {
	if l.slanted || other.slanted || l.whole != other.whole {
		return false
	}
	a, _ := l.near(p)
	b, _ := other.near(p)
	return a == b && (l.whole || l.upright == other.upright && l.low == other.low && l.top == other.top)
}

// scoreAlong writes the scores of one direction: from the left or the bottom,
// then those that are plainer from the opposite edge.
func (w *writer) scoreAlong(p *pattern.Piece, lines []line, upright bool) []string {
	edge, opposite := "left", "right"
	if !upright {
		edge, opposite = "bottom", "top"
	}
	var text []string
	var far []line
	for _, l := range lines {
		switch {
		case l.slanted || l.upright != upright:
		case w.turned(p, l):
			far = append(far, l)
		default:
			text = append(text, w.scoreLine(l, l.at, edge))
		}
	}
	if len(far) == 0 {
		return text
	}
	text = append(text, w.say("score.turn."+opposite, args{"n": len(far)}))
	for _, l := range slices.Backward(far) {
		text = append(text, w.scoreLine(l, l.across(p).Sub(l.at), opposite))
	}
	return append(text, w.say("score.back", nil))
}

// across returns the length of the blank that the place of a line is measured
// along.
func (l *line) across(p *pattern.Piece) measure.Length {
	if l.upright {
		return p.Width
	}
	return p.Height
}

// turned reports whether a score is nearer to the opposite edge and on a
// coarser mark from there. A score that ends inside the blank is not turned,
// since its ends would be measured from other edges too.
func (w *writer) turned(p *pattern.Piece, l line) bool {
	other := l.across(p).Sub(l.at)
	return l.whole && other.Less(l.at) && w.mark(l.at).Less(w.mark(other))
}

// mark returns the coarsest mark of the ruler that a length lies on, zero if
// none.
func (w *writer) mark(l measure.Length) measure.Length {
	step, _ := measure.CoarsestMark(l, w.ruler)
	return step.Size()
}

// scoreLine says where one score lies.
func (w *writer) scoreLine(l line, at measure.Length, edge string) string {
	a := args{"scores": w.list(l.names), "at": at, "from": l.low, "to": l.top}
	if l.whole {
		return sentence(w.say("score."+edge, a))
	}
	return sentence(w.say("score.part."+edge, a))
}

// slantedLine says where a slanted score runs: a curved one through the middle
// of its arc, one at 45 degrees from edge to edge
// of the blank, else between its two ends.
func (w *writer) slantedLine(p *pattern.Piece, l line) string {
	from, to := l.a, l.b
	if l.bulge < 0 || l.bulge > 0 {
		through := point(p, pattern.Middle(from, to, l.bulge))
		return w.say("score.curved", args{"scores": w.list(l.names), "from": point(p, from), "through": through, "to": point(p, to)})
	}
	dx, dy := to.X.Sub(from.X), to.Y.Sub(from.Y)
	if dx.Abs() == dy.Abs() {
		from, to = edgeFrom(p, from, dx.Neg(), dy.Neg()), edgeFrom(p, to, dx, dy)
	}
	return w.say("score.slanted", args{"scores": w.list(l.names), "from": point(p, from), "to": point(p, to)})
}

// edgeFrom returns where a line from a point at 45 degrees, to the right or
// left and up or down as dx and dy say, comes to the edge of the blank.
func edgeFrom(p *pattern.Piece, from pattern.Point, dx, dy measure.Length) pattern.Point {
	x, y := from.X, from.Y
	if dx.Sign() > 0 {
		x = p.Width.Sub(from.X)
	}
	if dy.Sign() > 0 {
		y = p.Height.Sub(from.Y)
	}
	by := measure.Min(x, y)
	return pattern.At(from.X.Add(by.Times(int64(dx.Sign()))), from.Y.Add(by.Times(int64(dy.Sign()))))
}

// scoreLines gathers the creases of a piece that lie on one line, the upright
// ones from the left, then the others from the bottom.
func (w *writer) scoreLines(p *pattern.Piece) []line {
	var lines []line
	for i := range p.Creases {
		c := &p.Creases[i]
		l := lineOf(c)
		l.names = []string{w.crease(p, c)}
		j := slices.IndexFunc(lines, func(k line) bool { return !l.slanted && !k.slanted && k.upright == l.upright && k.at == l.at })
		if j < 0 {
			lines = append(lines, l)
			continue
		}
		k := &lines[j]
		k.low, k.top = measure.Min(k.low, l.low), measure.Max(k.top, l.top)
		if !slices.Contains(k.names, l.names[0]) {
			k.names = append(k.names, l.names[0])
		}
	}
	for i := range lines {
		lines[i].whole = !lines[i].slanted && !marks(p, &lines[i])
	}
	slices.SortStableFunc(lines, func(a, b line) int { return a.at.Compare(b.at) })
	return lines
}

// crease names a crease: by the panel as well if another line of the piece is
// scored under the same name.
func (w *writer) crease(p *pattern.Piece, c *pattern.Crease) string {
	own := lineOf(c)
	for i := range p.Creases {
		other := lineOf(&p.Creases[i])
		if p.Creases[i].Name == c.Name && (other.upright != own.upright || other.at != own.at || other.a != own.a || other.b != own.b) {
			return w.say("score.of", args{"score": noun(c.Name), "of": noun(p.Panels[c.To].Name)})
		}
	}
	return w.name(noun(c.Name), "")
}

// lineOf returns the line of a crease.
func lineOf(c *pattern.Crease) line {
	switch {
	case c.Bulge < 0 || c.Bulge > 0:
		return line{slanted: true, a: c.A, b: c.B, bulge: c.Bulge}
	case c.A.X == c.B.X:
		return line{upright: true, at: c.A.X, low: measure.Min(c.A.Y, c.B.Y), top: measure.Max(c.A.Y, c.B.Y)}
	case c.A.Y == c.B.Y:
		return line{at: c.A.Y, low: measure.Min(c.A.X, c.B.X), top: measure.Max(c.A.X, c.B.X)}
	default:
		return line{slanted: true, a: c.A, b: c.B}
	}
}

// point is a place on a blank: along one of its edges, or from its lower left
// corner.
func point(p *pattern.Piece, at pattern.Point) told {
	switch {
	case at.X.IsZero():
		return told{"point.left", args{"at": at.Y}}
	case at.X == p.Width:
		return told{"point.right", args{"at": at.Y}}
	case at.Y.IsZero():
		return told{"point.bottom", args{"at": at.X}}
	case at.Y == p.Height:
		return told{"point.top", args{"at": at.X}}
	default:
		return told{"point", args{"x": at.X, "y": at.Y}}
	}
}
