package guide

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// close is putting the contents in and closing the enclosure, or trying it in
// what it goes into.
func (w *writer) close(*pattern.Piece) (Step, bool) {
	p := &w.s.Pattern
	a := args{"root": noun(w.floor().Name)}
	if p.Cavity.Into {
		a["sizes"] = w.contents()
	}
	step := Step{Title: w.say("close.title"+w.flat(), nil), Text: w.say(w.closing(), a)}
	for i := range p.Pieces {
		piece := &p.Pieces[i]
		step.Lines = append(step.Lines, w.flaps(i)...)
		step.Lines = append(step.Lines, w.joints(piece)...)
		step.Lines = append(step.Lines, w.seams(piece, piece, piece.Seams)...)
	}
	for i := range p.Bonds {
		b := &p.Bonds[i]
		step.Lines = append(step.Lines, w.seams(&p.Pieces[b.A], &p.Pieces[b.B], b.Seams)...)
	}
	step.Lines = once(step.Lines)
	for i := range w.s.Fits {
		step.Lines = append(step.Lines, w.spare(&w.s.Fits[i]))
	}
	return step, true
}

// floor returns the panel that the contents lie on, or that the lap is glued to
// which they lie on.
func (w *writer) floor() *pattern.Panel {
	p := &w.s.Pattern
	c := &p.Cavity
	for i := range p.Bonds {
		if b := &p.Bonds[i]; b.A == c.Piece {
			for k := range b.Glues {
				if g := &b.Glues[k]; g.Panel == c.Panel {
					return &p.Pieces[b.B].Panels[g.To]
				}
			}
		}
	}
	return &p.Pieces[c.Piece].Panels[c.Panel]
}

// closing names the message about how the contents come in, or the whole into
// its place.
func (w *writer) closing() string {
	p := &w.s.Pattern
	switch {
	case p.Cavity.Into && len(p.Locks) > 0:
		return "close.stand"
	case p.Cavity.Into:
		return "close.into" + w.flat()
	case len(p.Nests) > 0:
		return "close.nested"
	case w.glued():
		return "close.slide"
	default:
		return "close.lay"
	}
}

// flat is the ending of messages about what has no folds to be closed.
func (w *writer) flat() string {
	if slices.ContainsFunc(w.s.Pattern.Pieces, func(p pattern.Piece) bool { return len(p.Creases) > 0 }) {
		return ""
	}
	return ".flat"
}

// spare says what room a fit leaves.
func (w *writer) spare(f *solve.Fit) string {
	key := "close.room"
	switch {
	case w.slotted(f):
		key = "close.slots." + f.Axis.String()
	case f.Between == "" && !w.s.Pattern.Cavity.Into:
		key = "close.spare"
	}
	return sentence(w.say(key, args{"of": noun(f.Axis.String()), "where": w.where(f), "clearance": fine(f.Nominal)}))
}

// once drops what has been said before.
func once(lines []string) []string {
	var kept []string
	for _, line := range lines {
		if !slices.Contains(kept, line) {
			kept = append(kept, line)
		}
	}
	return kept
}

// flaps says which panels are folded over at the end: those that nothing hangs
// on, that are not glued and that no joint holds, in the order that the pattern
// folds them in.
func (w *writer) flaps(piece int) []string {
	p := &w.s.Pattern.Pieces[piece]
	held := make([]bool, len(p.Panels))
	for i := range p.Creases {
		held[p.Creases[i].From] = true
	}
	for i := range p.Glues {
		held[p.Glues[i].Panel], held[p.Glues[i].To] = true, true
	}
	for i := range w.s.Pattern.Bonds {
		b := &w.s.Pattern.Bonds[i]
		for k := range b.Glues {
			if b.A == piece {
				held[b.Glues[k].Panel] = true
			}
			if b.B == piece {
				held[b.Glues[k].To] = true
			}
		}
	}
	for i := range p.Joints {
		held[p.Joints[i].PanelA], held[p.Joints[i].PanelB] = true, true
	}
	var lines []string
	for i := range p.Creases {
		if to := p.Creases[i].To; !held[to] {
			lines = append(lines, w.say("close.flap", args{"of": noun(p.Panels[to].Name)}))
		}
	}
	return lines
}

// joints says how cuts lock into each other.
func (w *writer) joints(p *pattern.Piece) []string {
	var lines []string
	for i := range p.Joints {
		j := &p.Joints[i]
		lines = append(lines, w.say("close.joint", args{
			"a": noun(p.Cuts[j.A].Name), "b": noun(p.Cuts[j.B].Name),
			"pa": noun(p.Panels[j.PanelA].Name), "pb": noun(p.Panels[j.PanelB].Name),
		}))
	}
	return lines
}

// seams says which edges of two pieces, or of one, meet, how far they stay
// apart, or how far one lies in from the other. What is glued has been told.
func (w *writer) seams(p, other *pattern.Piece, seams []pattern.Seam) []string {
	var lines []string
	for i := range seams {
		s := &seams[i]
		if p == other && gluedTo(p, s.PanelA, s.PanelB) {
			continue
		}
		a := args{"of": noun(p.Panels[s.PanelA].Name), "to": noun(other.Panels[s.PanelB].Name), "apart": s.Apart}
		key := "close.seam"
		if by, over := inFrom(&other.Panels[s.PanelB], s.B1, s.B2); over {
			key, a["by"] = "close.over", by
		} else if w.s.Pattern.Caliper.Times(2).Less(s.Apart) {
			key = "close.gap"
		}
		lines = append(lines, sentence(w.say(key, a)))
	}
	return lines
}

// gluedTo reports whether two panels are glued to one another.
func gluedTo(p *pattern.Piece, a, b int) bool {
	return slices.ContainsFunc(p.Glues, func(g pattern.Glue) bool { return g.Panel == a && g.To == b || g.Panel == b && g.To == a })
}

// inFrom returns how far a line lies in from the nearest parallel side of a
// panel, and whether it runs through the panel at all rather than along an
// edge.
func inFrom(panel *pattern.Panel, a, b pattern.Point) (measure.Length, bool) {
	for i, v := range panel.Outline {
		if overlap(a, b, v.Point, panel.Outline[(i+1)%len(panel.Outline)].Point) {
			return measure.Length{}, false
		}
	}
	low, high := box(panel.Outline)
	by, along := measure.Min(a.Y.Sub(low.Y), high.Y.Sub(a.Y)), a.Y == b.Y
	if a.X == b.X {
		by, along = measure.Min(a.X.Sub(low.X), high.X.Sub(a.X)), true
	}
	return by, along && by.Sign() > 0
}

// glued reports whether any piece is glued to itself or to another one.
func (w *writer) glued() bool {
	return len(w.s.Pattern.Bonds) > 0 || slices.ContainsFunc(w.s.Pattern.Pieces, func(p pattern.Piece) bool { return len(p.Glues) > 0 })
}

// dress is gluing an ornament over the closure.
func (w *writer) dress(*pattern.Piece) (Step, bool) {
	o := w.s.Ornament
	if o == nil {
		return Step{}, false
	}
	step := Step{Title: w.say("dress.title", nil), Text: w.say("dress.halves", args{"width": o.HalfWidth, "height": o.Height})}
	step.Lines = append(step.Lines, w.say("dress.press", nil))
	if !o.TrimWidth.IsZero() {
		step.Lines = append(step.Lines, w.say("dress.trim", args{"width": o.TrimWidth}))
	}
	step.Lines = append(step.Lines, w.say("dress.glue", args{"from": o.GlueFrom, "to": o.GlueTo, "height": o.GlueHeight}))
	if o.ShowsHeight.IsZero() {
		step.Lines = append(step.Lines, w.say("dress.covers", nil))
	} else {
		step.Lines = append(step.Lines, w.say("dress.shows", args{"height": o.ShowsHeight}))
	}
	step.After = w.say("dress.adds", args{"thickness": fine(o.Adds)})
	return step, true
}
