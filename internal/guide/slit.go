package guide

import (
	"slices"
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// slit is making the cuts inside a blank.
func (w *writer) slit(p *pattern.Piece) (Step, bool) {
	if len(p.Cuts) == 0 {
		return Step{}, false
	}
	step := Step{Title: w.title("slit", p), Text: w.onceOnly("slit.text")}
	if slices.ContainsFunc(p.Cuts, byDepth) {
		step.Text += " " + w.say("slit.depth", nil)
	}
	if slices.ContainsFunc(p.Cuts, byPoints) {
		step.Text += " " + w.say("slit.points", nil)
	}
	if step.Text = strings.TrimSpace(step.Text); step.Text == "" {
		step.Text = w.say("slit.text", nil)
	}
	for i := range p.Cuts {
		like := func(j int) bool {
			return byPoints(p.Cuts[i]) && byPoints(p.Cuts[j]) && mirrored(p, &p.Cuts[i], &p.Cuts[j])
		}
		if slices.ContainsFunc(upTo(i), like) {
			continue
		}
		step.Lines = append(step.Lines, sentence(w.cutLine(p, &p.Cuts[i])))
		var alike parts
		for j := i + 1; j < len(p.Cuts); j++ {
			if like(j) {
				alike = alike.with(noun(p.Cuts[j].Name))
			}
		}
		if len(alike) > 0 {
			step.Lines = append(step.Lines, sentence(w.say("cut.alike", args{"parts": alike})))
		}
	}
	if len(p.Joints) > 0 {
		step.After = w.say("slit.joint", args{"n": len(p.Joints)})
	}
	return step, true
}

// upTo lists the numbers before n.
func upTo(n int) []int {
	numbers := make([]int, n)
	for i := range numbers {
		numbers[i] = i
	}
	return numbers
}

// mirrored reports whether two cuts are the same, each from the edges beside it.
func mirrored(p *pattern.Piece, a, b *pattern.Cut) bool {
	x, y := fromEdges(p, a.Path), fromEdges(p, b.Path)
	if slices.Equal(x, y) {
		return true
	}
	slices.Reverse(y)
	return slices.Equal(x, y)
}

// fromEdges says how far the corners of a straight way are from the edges beside
// them; nothing of one that is curved.
func fromEdges(p *pattern.Piece, way []pattern.Vertex) (corners []pattern.Point) {
	for _, v := range way {
		if v.Bulge < 0 || v.Bulge > 0 {
			return []pattern.Point{v.Point}
		}
		corners = append(corners, pattern.At(measure.Min(v.X, p.Width.Sub(v.X)), measure.Min(v.Y, p.Height.Sub(v.Y))))
	}
	return corners
}

// cutLine says where one cut lies and how far it goes.
func (w *writer) cutLine(p *pattern.Piece, c *pattern.Cut) string {
	a := args{"of": noun(c.Name), "at": c.At, "depth": c.Depth, "width": c.Width}
	switch {
	case byPoints(*c):
		a["path"] = w.path(p, c.Path)
		return w.say("cut.path", a)
	case c.Kind == pattern.Window:
		low, high := box(c.Path)
		a["x"], a["y"], a["width"], a["height"] = low.X, low.Y, high.X.Sub(low.X), high.Y.Sub(low.Y)
		return w.say("cut.window", a)
	}
	if c.Kind == pattern.Slit && len(c.Path) == 2 && !atEdge(p, c.Path[0].Point) && !atEdge(p, c.Path[1].Point) {
		a["from"], a["to"] = point(p, c.Path[0].Point), point(p, c.Path[1].Point)
		return w.say("cut.slit.inside", a)
	}
	a["edge"], a["side"] = told{key: "edge." + c.From}, told{key: "edge." + side(c.From)}
	key := "cut." + c.Kind.String()
	if c.Kind == pattern.Notch {
		key += "." + shape(c.Path)
	}
	if c.On != "" {
		a["score"] = noun(c.On)
		return w.say(key+".on", a)
	}
	return w.say(key+".at", a)
}

// atEdge reports whether a point lies on an edge of the blank.
func atEdge(p *pattern.Piece, at pattern.Point) bool {
	return at.X.IsZero() || at.Y.IsZero() || at.X == p.Width || at.Y == p.Height
}

// byPoints reports whether a cut is told by the points that it goes through.
func byPoints(c pattern.Cut) bool {
	return c.Kind == pattern.Relief || c.From == "" && c.Kind != pattern.Window
}

// byDepth reports whether a cut is told by how far it goes in from an edge.
func byDepth(c pattern.Cut) bool { return !byPoints(c) && c.Kind != pattern.Window }

// side returns the edge that the place of a cut along another edge is
// measured from.
func side(from string) string {
	if from == "left" || from == "right" {
		return "bottom"
	}
	return "left"
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

// greatestBlank returns the greatest width and height of all blanks.
func (w *writer) greatestBlank() (width, height measure.Length) {
	for i := range w.s.Pattern.Pieces {
		p := &w.s.Pattern.Pieces[i]
		width, height = measure.Max(width, p.Width), measure.Max(height, p.Height)
	}
	return width, height
}
