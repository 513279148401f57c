package guide

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// glue is gluing a piece. An area of glue goes down to the next mark of the
// ruler: it does not matter how far exactly, but it must not come out at the
// edge.
func (w *writer) glue(p *pattern.Piece) (Step, bool) {
	if len(p.Glues) == 0 {
		return Step{}, false
	}
	step := Step{Title: w.title("glue", p), Text: w.say("glue.text", nil), After: w.say("glue.dry", nil)}
	for i := range p.Glues {
		g := &p.Glues[i]
		step.Lines = append(step.Lines, w.area(p, g, noun(p.Panels[g.Panel].Name), noun(p.Panels[g.To].Name)))
	}
	return step, true
}

// bond is gluing the pieces to one another that make something together:
// halves, or a flat piece and what stands on it.
func (w *writer) bond(name string) Step {
	p := &w.s.Pattern
	key := "glue.bond"
	if slices.ContainsFunc(p.Bonds, func(b pattern.Bond) bool { return b.Name == name && len(p.Pieces[b.B].Creases) == 0 }) {
		key = "glue.plate"
	}
	step := Step{
		Title: sentence(w.say(key+".title", args{"piece": noun(name)})),
		Text:  w.say(key, nil) + " " + w.say("glue.text", nil), After: w.say("glue.dry", nil),
	}
	part := func(piece *pattern.Piece, panel int) any {
		if len(piece.Panels) == 1 {
			return noun(piece.Name)
		}
		return told{"part", args{"of": noun(piece.Panels[panel].Name), "piece": noun(piece.Name)}}
	}
	for _, b := range p.Bonds {
		if b.Name != name {
			continue
		}
		own, other := &p.Pieces[b.A], &p.Pieces[b.B]
		for k := range b.Glues {
			g := &b.Glues[k]
			step.Lines = append(step.Lines, w.area(own, g, part(own, g.Panel), part(other, g.To)))
		}
	}
	return step
}

// area says what of a piece is glued, and where to.
func (w *writer) area(p *pattern.Piece, g *pattern.Glue, of, to any) string {
	low, high := box(g.Area)
	ruler := w.s.Request.Ruler
	return sentence(w.say("glue."+where(p, g), args{
		"of": of, "face": told{key: "face." + g.Face.String()}, "to": to, "toface": told{key: "face." + g.ToFace.String()},
		"width": ruler.Down(high.X.Sub(low.X)), "height": ruler.Down(high.Y.Sub(low.Y)), "place": w.spot(p, g),
	}))
}

// spot says how far in an area of glue lies from the nearer sides of its panel.
func (w *writer) spot(p *pattern.Piece, g *pattern.Glue) told {
	low, high := box(g.Area)
	from, to := box(p.Panels[g.Panel].Outline)
	return told{"spot", args{
		"across": w.off(g, p, "left", low.X.Sub(from.X), "right", to.X.Sub(high.X)),
		"up":     w.off(g, p, "bottom", low.Y.Sub(from.Y), "top", to.Y.Sub(high.Y)),
	}}
}

// off says how far an area lies off the nearer of two sides.
func (w *writer) off(g *pattern.Glue, p *pattern.Piece, side string, by measure.Length, other string, otherBy measure.Length) told {
	if otherBy.Less(by) {
		side, by = other, otherBy
	}
	key := "off."
	if by.IsZero() {
		key = "at."
	}
	return told{key + side, args{"of": noun(p.Panels[g.Panel].Name), "by": w.s.Request.Ruler.Up(by)}}
}

// where names the part of a panel that is glued: the whole of it, a strip
// along one edge, or an area in it.
func where(p *pattern.Piece, g *pattern.Glue) string {
	low, high := box(g.Area)
	from, to := box(p.Panels[g.Panel].Outline)
	left, right := low.X == from.X, high.X == to.X
	bottom, top := low.Y == from.Y, high.Y == to.Y
	switch {
	case left && right && bottom && top:
		return "whole"
	case bottom && top && right:
		return "right"
	case bottom && top && left:
		return "left"
	case left && right && top:
		return "top"
	case left && right && bottom:
		return "bottom"
	default:
		return "area"
	}
}
