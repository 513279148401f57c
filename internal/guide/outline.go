package guide

import (
	"math"

	"creasefit/internal/pattern"
)

// outline is cutting away what of the blank belongs to no panel.
func (w *writer) outline(p *pattern.Piece) (Step, bool) {
	step := Step{Title: w.title("outline", p), Text: w.say("outline.text", args{"piece": noun(p.Name)})}
	for i := range p.Panels {
		for _, chain := range freeChains(p, i) {
			step.Lines = append(step.Lines, w.say("outline.line", args{"of": w.name(noun(p.Panels[i].Name), ""), "path": w.path(p, chain)}))
		}
	}
	for i, l := range step.Lines {
		step.Lines[i] = sentence(l)
	}
	return step, len(step.Lines) > 0
}

// path writes the way of a blade from point to point.
func (w *writer) path(p *pattern.Piece, way []pattern.Vertex) string {
	text := w.tell(point(p, way[0].Point))
	for i, v := range way[1:] {
		key := "path.straight"
		if way[i].Bulge < 0 || way[i].Bulge > 0 {
			key = "path.arc"
		}
		through := pattern.Middle(way[i].Point, v.Point, way[i].Bulge)
		text += " " + w.say(key, args{"point": point(p, v.Point), "through": point(p, through)})
	}
	return text
}

// freeChains returns the parts of a panel's outline that have to be cut: what
// is no crease, no edge of the blank and no cut of its own.
func freeChains(p *pattern.Piece, panel int) [][]pattern.Vertex {
	outline := p.Panels[panel].Outline
	var chains [][]pattern.Vertex
	n := len(outline)
	start := 0
	for start < n && isFree(p, panel, start) {
		start++
	}
	open := false
	for k := range n {
		i := (start + k) % n
		if !isFree(p, panel, i) {
			open = false
			continue
		}
		if !open {
			chains = append(chains, []pattern.Vertex{outline[i]})
			open = true
		}
		last := &chains[len(chains)-1]
		*last = append(*last, outline[(i+1)%n])
	}
	return chains
}

// isFree reports whether the edge that leaves a corner of a panel has to be
// cut.
func isFree(p *pattern.Piece, panel, corner int) bool {
	outline := p.Panels[panel].Outline
	a, b := outline[corner].Point, outline[(corner+1)%len(outline)].Point
	if a.X == b.X && (a.X.IsZero() || a.X == p.Width) || a.Y == b.Y && (a.Y.IsZero() || a.Y == p.Height) {
		return false
	}
	for i := range p.Creases {
		c := &p.Creases[i]
		if (c.From == panel || c.To == panel) && overlap(a, b, c.A, c.B) && bentAlike(&outline[corner], c) {
			return false
		}
	}
	for i := range p.Cuts {
		way := p.Cuts[i].Path
		for j := 1; j < len(way); j++ {
			if overlap(a, b, way[j-1].Point, way[j].Point) {
				return false
			}
		}
	}
	return true
}

// bentAlike reports whether an edge that begins at a corner bends as a crease
// between the same ends does.
func bentAlike(v *pattern.Vertex, c *pattern.Crease) bool {
	bulge := c.Bulge
	if v.Point != c.A {
		bulge = -bulge
	}
	return math.Abs(v.Bulge-bulge) < 1e-9
}

// overlap reports whether one of two straight edges lies on the other.
func overlap(a, b, c, d pattern.Point) bool {
	return on(a, c, d) && on(b, c, d) || on(c, a, b) && on(d, a, b)
}
