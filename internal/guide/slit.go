package guide

import (
	"slices"

	"creasefit/internal/pattern"
)

// cuts is making all cuts inside a blank: those that are told by their depth, then
// the outline.
func (w *writer) cuts(p *pattern.Piece) (Step, bool) {
	depths, outline := w.depths(p), w.outline(p)
	step := Step{Title: w.title("slit", p), Lines: append(depths, outline...)}
	text := []string{w.onceOnly("slit.text")}
	if len(depths) > 0 {
		text = append(text, w.onceOnly("slit.depth"))
	}
	if _, regular := p.Regular(); len(outline) > 0 && !regular {
		text = append(text, w.onceOnly("slit.points"))
	}
	step.Text = joined(text)
	if len(p.Joints) > 0 {
		step.After = w.say("slit.joint", args{"n": len(p.Joints)})
	}
	return step, len(step.Lines) > 0
}

// depths says how the cuts are made that go in from an edge, and windows: those that
// differ in nothing but their places in one line.
func (w *writer) depths(p *pattern.Piece) (lines []string) {
	done := make([]bool, len(p.Cuts))
	for i := range p.Cuts {
		if byPoints(&p.Cuts[i]) || done[i] {
			continue
		}
		var alike []*pattern.Cut
		for j := i; j < len(p.Cuts); j++ {
			if !done[j] && !byPoints(&p.Cuts[j]) && cutAlike(p, &p.Cuts[i], &p.Cuts[j]) {
				alike, done[j] = append(alike, &p.Cuts[j]), true
			}
		}
		lines = append(lines, sentence(w.cutLine(p, alike)))
	}
	return lines
}

// cutAlike reports whether two cuts differ in their places only.
func cutAlike(p *pattern.Piece, a, b *pattern.Cut) bool {
	return a == b || a.Kind == b.Kind && a.Kind != pattern.Window && !p.Inner(a) && !p.Inner(b) && a.From == b.From && a.Depth == b.Depth &&
		a.Width == b.Width && a.Before == b.Before && (a.On == "") == (b.On == "") && shape(a.Path) == shape(b.Path)
}

// cutLine says where cuts that are alike lie and how far they go.
func (w *writer) cutLine(p *pattern.Piece, cuts []*pattern.Cut) string {
	c := cuts[0]
	var names, scores []noun
	var places parts
	for _, c := range cuts {
		names = append(names, noun(c.Name))
		scores = append(scores, noun(c.On))
		places = append(places, told{"length", args{"at": c.At.Sub(c.Before), "of": noun(c.Name)}})
	}
	a := args{"of": w.run(names), "at": places, "depth": c.Depth, "width": c.Width, "n": len(cuts)}
	if len(names) == 1 {
		a["of"] = names[0]
	}
	a["edge"], a["side"] = told{key: "edge." + c.From}, told{key: "edge." + pattern.Beside(c.From)}
	key := "cut." + c.Kind.String()
	if c.Kind == pattern.Notch {
		key += "." + shape(c.Path)
	}
	switch {
	case c.Kind == pattern.Window:
		low, high := box(c.Path)
		a["x"], a["y"], a["width"], a["height"] = low.X, low.Y, high.X.Sub(low.X), high.Y.Sub(low.Y)
		return w.say(key, a)
	case p.Inner(c):
		return w.innerLine(p, c, a)
	case c.On != "":
		a["score"] = w.run(scores)
		return w.say(key+".on", a)
	case w.crossed(p, c):
		return w.say(key+".cross", a)
	case !c.Before.IsZero():
		return w.say(key+".from", a)
	default:
		return w.say(key+".at", a)
	}
}

// crossed reports whether a notch goes in to where two scores cross, off the marks of
// the ruler: the scores say how deep it goes and where its middle is.
func (w *writer) crossed(p *pattern.Piece, c *pattern.Cut) bool {
	at, how := w.s.Set(c.At)
	_, deep := w.s.Set(c.Depth)
	if c.Kind != pattern.Notch || how && deep && at.Mark.IsMultipleOf(w.s.Step) {
		return false
	}
	_, found := p.Crossing(c.Path[len(c.Path)/2].Point)
	return found
}

// innerLine says where a slit lies that meets no edge: along an edge, or from point
// to point.
func (w *writer) innerLine(p *pattern.Piece, c *pattern.Cut, a args) string {
	long, ok := p.Within(c)
	if !ok {
		a["from"], a["to"] = point(p, c.Path[0].Point), point(p, c.Path[1].Point)
		return w.say("cut.slit.inside", a)
	}
	a["long"], a["low"], a["high"] = long, c.Path[0].X, c.Path[1].X
	if pattern.Beside(c.From) == "bottom" {
		a["low"], a["high"] = c.Path[0].Y, c.Path[1].Y
	}
	return w.say("cut.slit.beside", a)
}

// byPoints reports whether a cut is told by the points that it goes through, with
// the outline.
func byPoints(c *pattern.Cut) bool {
	return c.Kind == pattern.Relief || c.From == "" && c.Kind != pattern.Window
}

// shape names the shape of a notch.
func shape(way []pattern.Vertex) string {
	switch {
	case slices.ContainsFunc(way, func(v pattern.Vertex) bool { return v.Bulge < 0 || v.Bulge > 0 }):
		return "round"
	case len(way) == 3:
		return "pointed"
	default:
		return "square"
	}
}
