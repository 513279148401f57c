package guide

import (
	"cmp"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
)

// score is pressing the scores of a piece: stop by stop, those that run from edge
// to edge first, since others end at them; then what no stop serves.
func (w *writer) score(p *pattern.Piece) (Step, bool) {
	if !p.Scored() {
		return Step{}, false
	}
	var whole, parts []scored
	for _, l := range w.stops(p) {
		if len(l.extent) == 0 {
			whole = append(whole, l)
		} else {
			parts = append(parts, l)
		}
	}
	key, how, ends := "score", "", "score.measure"
	if w.s.Pattern.Stiff() {
		key, how, ends = "score.board", w.onceOnly("score.board"), "score.board.measure"
	}
	step := Step{Title: w.title(key, p), Text: joined([]string{how, w.onceOnly(ends)})}
	for _, l := range append(whole, parts...) {
		step.Lines = append(step.Lines, w.scoreLine(p, &l))
	}
	if slanted := w.slanted(p); len(slanted) > 0 {
		step.Text = joined([]string{step.Text, w.onceOnly("score.points")})
		step.Lines = append(step.Lines, slanted...)
	}
	return step, true
}

// scored is what is scored in one line of a guide.
type scored struct {
	at     measure.Length  // of the stop
	uses   []*settings.Use // of the stop, by edge
	extent parts           // how far the scores run; none from edge to edge
}

// stops gathers the straight scores of a piece by the stop that serves them and by
// how far they run.
func (w *writer) stops(p *pattern.Piece) (lines []scored) {
	for _, s := range w.s.Settings() {
		first := len(lines)
		for i := range s.Serves {
			u := &s.Serves[i]
			if s.Tool != settings.Score || p != &w.s.Pattern.Pieces[u.Piece] {
				continue
			}
			extent := w.extent(p, stretches(p, u.Creases))
			k := slices.IndexFunc(lines[first:], func(l scored) bool { return w.listed(l.extent, "") == w.listed(extent, "") })
			if k < 0 {
				k = len(lines) - first
				lines = append(lines, scored{at: s.At.Add(w.s.Pattern.Caliper.Times(int64(s.Papers))), extent: extent})
			}
			lines[first+k].uses = append(lines[first+k].uses, u)
		}
	}
	w.take()
	for _, l := range lines {
		slices.SortStableFunc(l.uses, func(a, b *settings.Use) int { return cmp.Compare(a.Edge, b.Edge) })
	}
	return lines
}

// scoreLine says where the scores of one stop lie.
func (w *writer) scoreLine(p *pattern.Piece, l *scored) string {
	key := "score.whole"
	if len(l.extent) > 0 {
		key = "score.part"
	}
	var creases []int
	var edges []settings.Edge
	for _, u := range l.uses {
		creases, edges = append(creases, u.Creases...), append(edges, u.Edge)
	}
	return sentence(w.say(key, args{"at": l.at, "edges": w.edges(edges), "extent": l.extent, "scores": w.scoreNames(p, creases)}))
}

// edges names the edges that a stop is measured from.
func (w *writer) edges(edges []settings.Edge) told {
	edges = slices.Compact(edges)
	if len(edges) == allEdges {
		return told{"edges.all", args{"n": len(edges)}}
	}
	var names []string
	for _, e := range edges {
		names = append(names, w.say("side."+e.String(), nil))
	}
	return told{"edges", args{"list": w.list(names), "n": len(edges)}}
}

// allEdges is how many edges a blank has.
const allEdges = 4

// scoreNames names creases by their scores, or, where other lines are scored under
// the same names, by what is folded there.
func (w *writer) scoreNames(p *pattern.Piece, creases []int) string {
	var panels parts
	own := true
	for _, i := range creases {
		c := &p.Creases[i]
		own = own && w.alone(p, c)
		panels = panels.with(noun(p.Panels[c.To].Name))
	}
	if !own {
		return w.say("score.for", args{"parts": panels})
	}
	list, _ := w.creases(p, creases)
	return list
}

// creases lists the names of creases, each once, and says how many there are.
func (w *writer) creases(p *pattern.Piece, which []int) (list string, n int) {
	var names []noun
	for _, i := range which {
		if name := noun(p.Creases[i].Name); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return w.run(names), len(names)
}

// alone reports whether the name of a crease is that of no other line of the piece.
func (w *writer) alone(p *pattern.Piece, c *pattern.Crease) bool {
	own := lineOf(c)
	return !slices.ContainsFunc(p.Creases, func(other pattern.Crease) bool {
		return other.Name == c.Name && lineOf(&other) != own
	})
}

// slanted says where the scores run that no stop serves, aslant or in a curve: those
// alike together.
func (w *writer) slanted(p *pattern.Piece) (text []string) {
	var creases []int
	var ways [][]pattern.Vertex
	for i := range p.Creases {
		if c := &p.Creases[i]; !lineOf(c).straight {
			creases, ways = append(creases, i), append(ways, []pattern.Vertex{{Point: c.A, Bulge: c.Bulge}, {Point: c.B}})
		}
	}
	for _, f := range families(p, ways) {
		var alike []int
		for _, i := range f.members {
			alike = append(alike, creases[i])
		}
		text = append(text, joined([]string{sentence(w.slantedLine(p, ways[f.members[0]], w.scoreNames(p, alike))), w.also(&f)}))
	}
	return text
}

// slantedLine says where a slanted score runs: a curved one through the middle of
// its arc, one at 45 degrees from edge to edge of the blank, else between its two
// ends.
func (w *writer) slantedLine(p *pattern.Piece, way []pattern.Vertex, names string) string {
	from, to := way[0].Point, way[1].Point
	if bulge := way[0].Bulge; bulge < 0 || bulge > 0 {
		return w.say("score.curved", args{"scores": names, "from": point(p, from), "through": middle(p, way[0], to), "to": point(p, to)})
	}
	dx, dy := to.X.Sub(from.X), to.Y.Sub(from.Y)
	if dx.Abs() == dy.Abs() {
		from, to = edgeFrom(p, from, dx.Neg(), dy.Neg()), edgeFrom(p, to, dx, dy)
	}
	return w.say("score.slanted", args{"scores": names, "from": point(p, from), "to": point(p, to)})
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
