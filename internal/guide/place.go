package guide

import (
	"slices"

	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// layer reports whether a piece that lies so is a layer, which is glued on.
func layer(p *pattern.Piece, lie pattern.Lie) bool {
	return len(p.Creases) == 0 && lie <= pattern.FaceDown
}

// layered reports whether there are layers.
func (w *writer) layered() bool {
	p := &w.s.Pattern
	return slices.ContainsFunc(p.Places, func(at pattern.Place) bool { return layer(&p.Pieces[at.Piece], at.Lie) })
}

// lock says how pieces that cross in slots are put together: those that are
// cut from the top stand, the others come down on them.
func (w *writer) lock(l *pattern.Lock) []string {
	low, high := &w.s.Pattern.Pieces[l.A], &w.s.Pattern.Pieces[l.B]
	if slices.ContainsFunc(high.Cuts, func(c pattern.Cut) bool { return c.From == "top" }) {
		low, high = high, low
	}
	lines := []string{
		w.say("place.stand", args{"n": low.Quantity, "of": noun(low.Name), "to": noun(high.Name)}),
		w.say("place.push", args{"n": high.Quantity, "of": noun(high.Name), "to": noun(low.Name)}),
	}
	if !l.Slotted {
		lines = append(lines, w.say("place.ease", nil))
	}
	return lines
}

// nest says how one piece goes into another: what is turned over goes over it,
// all else slides.
func (w *writer) nest(n *pattern.Nesting, turned bool) string {
	key := "place.slide"
	if turned {
		key = "place.over"
	}
	return w.say(key, args{"in": w.together(n.Inner), "out": w.together(n.Outer)})
}

// together names what a piece is part of if it is glued to another one, or else
// the piece.
func (w *writer) together(piece int) noun {
	p := &w.s.Pattern
	for i := range p.Bonds {
		if b := &p.Bonds[i]; b.A == piece || b.B == piece {
			return noun(b.Name)
		}
	}
	return noun(p.Pieces[piece].Name)
}

// where says along which axis a fit is, and between which pieces if it is not
// that of the contents.
func (w *writer) where(f *solve.Fit) told {
	if f.Between == "" {
		return told{"where", args{"of": noun(f.Axis.String())}}
	}
	return told{"where.between", args{"between": w.between(f), "of": noun(f.Axis.String())}}
}

// between names the pieces that a fit is between.
func (w *writer) between(f *solve.Fit) string {
	if said, ok := w.c.joined(f.Between); ok {
		return said
	}
	return f.Between
}

// slotted reports whether a fit is between pieces that cross in slots.
func (w *writer) slotted(f *solve.Fit) bool {
	return slices.ContainsFunc(w.s.Pattern.Locks, func(l pattern.Lock) bool { return l.Name == f.Between })
}
