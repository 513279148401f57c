package guide

import (
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// spread is where glue is spread in one move: on areas that are alike.
type spread struct {
	key  string
	a    args
	text string // what tells it from others: all but the panels
	on   parts
}

// spreads says where glue is spread. An area of glue goes down to the next mark of
// the ruler: it does not matter how far exactly, but it must not come out at the
// edge.
func (w *writer) spreads(s *assembly.Step) (lines []string) {
	var all []spread
	for _, a := range s.Glues {
		g, own, _ := a.Of(&w.s.Pattern)
		one := w.spread(&w.s.Pattern.Pieces[own], g)
		one.on = one.on.with(w.part(s, own, g.Panel))
		i := slices.IndexFunc(all, func(s spread) bool { return s.text == one.text })
		if i < 0 {
			all = append(all, one)
		} else {
			all[i].on = all[i].on.with(one.on[0])
		}
	}
	w.take()
	for _, one := range all {
		one.a["parts"], one.a["n"] = one.on, len(one.on)
		lines = append(lines, sentence(w.say(one.key, one.a)))
	}
	return lines
}

// spread says where on its panel an area lies.
func (w *writer) spread(p *pattern.Piece, g *pattern.Glue) spread {
	low, high := box(g.Area)
	ruler := w.s.Request.Ruler
	s := spread{key: "glue." + where(p, g)}
	s.a = args{"face": told{key: "face." + g.Face.String()}, "width": ruler.Down(high.X.Sub(low.X)), "height": ruler.Down(high.Y.Sub(low.Y)), "place": w.spot(p, g)}
	s.text = w.say(s.key, args{"face": s.a["face"], "width": s.a["width"], "height": s.a["height"], "place": s.a["place"], "parts": parts{}})
	return s
}

// laid says how a flat piece is laid on another one or pressed onto what is glued.
func (w *writer) laid(s *assembly.Step) string {
	piece := s.Travels[0].Piece
	if len(s.Glues) > 0 {
		return sentence(w.say("place.press", args{"of": noun(w.s.Pattern.Pieces[piece].Name), "to": w.onto(s)}))
	}
	at := w.s.Pattern.Places[slices.IndexFunc(w.s.Pattern.Places, func(at pattern.Place) bool { return at.Piece == piece })]
	return sentence(w.say("place.layer", args{"of": noun(w.s.Pattern.Pieces[piece].Name), "on": noun(w.s.Pattern.Pieces[at.On].Name), "x": at.X, "y": at.Y}))
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
