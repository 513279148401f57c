package guide

import (
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// spread is where glue is spread in one move: on areas that are alike.
type spread struct {
	key          string
	a            args
	text, paired string // what tells it from others: all but the panels; and all but the side too
	both, up     told   // where it lies at both sides, and how far up
	on           parts
}

// spreads says where glue is spread. An area of glue goes down to the next mark of
// the step: it does not matter how far exactly, but it must not come out at the
// edge.
func (w *writer) spreads(s *assembly.Step) (lines []string) {
	var all []spread
	for _, a := range s.Glues {
		g, own, _ := a.Of(&w.s.Pattern)
		one := w.spread(&w.s.Pattern.Pieces[own], g)
		one.on = one.on.with(w.part(s, own, g.Panel))
		i := slices.IndexFunc(all, func(s spread) bool { return s.text == one.text })
		if twin := slices.IndexFunc(all, one.twin); i < 0 && twin >= 0 {
			all[twin].a["place"] = told{"spot", args{"across": one.both, "up": one.up}}
			continue
		}
		if i < 0 {
			all = append(all, one)
		} else {
			all[i].on = all[i].on.with(one.on[0])
		}
	}
	w.take()
	if scattered(all) {
		return []string{sentence(w.say("glue.under", args{"face": all[0].a["face"], "parts": all[0].on, "to": w.onto(s), "n": len(w.onto(s))}))}
	}
	for _, one := range all {
		one.a["parts"], one.a["n"] = one.on, len(one.on)
		lines = append(lines, sentence(w.say(one.key, one.a)))
	}
	return lines
}

// scattered reports whether there are many areas on one panel: a hand finds them where
// the other panels lie.
func scattered(all []spread) bool {
	return len(all) > 2 && !slices.ContainsFunc(all, func(s spread) bool {
		return s.key != "glue.area" || len(s.on) != 1 || !same(s.on[0], all[0].on[0])
	})
}

// twin reports whether another area is the same one at the other side of the panel.
func (s *spread) twin(other spread) bool {
	return s.key == "glue.area" && other.key == s.key && s.paired == other.paired && s.text != other.text &&
		len(s.on) == 1 && len(other.on) == 1 && same(s.on[0], other.on[0])
}

// spread says where on its panel an area lies.
func (w *writer) spread(p *pattern.Piece, g *pattern.Glue) spread {
	low, high := box(g.Area)
	from, to := box(p.Panels[g.Panel].Outline)
	left, right := low.X.Sub(from.X), to.X.Sub(high.X)
	step := w.s.Step
	s := spread{key: "glue." + where(p, g)}
	across := w.off("left", left, "right", right)
	s.both = w.off("sides", measure.Min(left, right), "sides", measure.Min(left, right))
	s.up = w.off("bottom", low.Y.Sub(from.Y), "top", to.Y.Sub(high.Y))
	s.a = args{"of": noun(p.Panels[g.Panel].Name), "face": told{key: "face." + g.Face.String()}, "width": step.Down(high.X.Sub(low.X)),
		"height": step.Down(high.Y.Sub(low.Y)), "place": told{"spot", args{"across": across, "up": s.up}}}
	write := func(place told) string {
		return w.say(s.key, args{"face": s.a["face"], "width": s.a["width"], "height": s.a["height"], "place": place, "parts": parts{}})
	}
	s.text, s.paired = write(s.a["place"].(told)), write(told{"spot", args{"across": s.both, "up": s.up}})
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

// off says how far an area lies off the nearer of two sides of its panel.
func (w *writer) off(side string, by measure.Length, other string, otherBy measure.Length) told {
	if otherBy.Less(by) {
		side, by = other, otherBy
	}
	key := "off."
	if by.IsZero() {
		key = "at."
	}
	return told{key + side, args{"by": w.s.Step.Up(by)}}
}

// where names the part of a panel that is glued: the whole of it, a strip
// along one edge, or an area in it; of a roll the end that comes to lie over the other.
func where(p *pattern.Piece, g *pattern.Glue) string {
	low, high := box(g.Area)
	from, to := box(p.Panels[g.Panel].Outline)
	left, right := low.X == from.X, high.X == to.X
	bottom, top := low.Y == from.Y, high.Y == to.Y
	switch {
	case slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool { return c.Rolls() }):
		return "roll"
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
