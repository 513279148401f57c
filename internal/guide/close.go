package guide

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// place is putting further pieces to earlier ones: a flat one is a layer that
// is glued on, a folded one goes over or into the other.
func (w *writer) place(*pattern.Piece) (Step, bool) {
	p := &w.s.Pattern
	if len(p.Places) == 0 {
		return Step{}, false
	}
	step := Step{Title: w.say("place.title", nil)}
	if w.layered() {
		step.Text = w.say("place.layers", args{"n": len(p.Places)})
	} else {
		step.Text = w.say("place.fitted", nil)
	}
	for _, at := range p.Places {
		key := "place.layer"
		if len(p.Pieces[at.Piece].Creases) > 0 {
			key = "place.fit"
		}
		step.Lines = append(step.Lines, sentence(w.say(key, args{
			"of": noun(p.Pieces[at.Piece].Name), "on": noun(p.Pieces[at.On].Name), "x": at.X, "y": at.Y,
		})))
	}
	return step, true
}

// layered reports whether a flat piece is glued onto another.
func (w *writer) layered() bool {
	return slices.ContainsFunc(w.s.Pattern.Places, func(at pattern.Place) bool { return len(w.s.Pattern.Pieces[at.Piece].Creases) == 0 })
}

// close is putting the contents in and closing the enclosure.
func (w *writer) close(*pattern.Piece) (Step, bool) {
	p := &w.s.Pattern
	root := noun(p.Pieces[p.Cavity.Piece].Panels[p.Cavity.Panel].Name)
	step := Step{Title: w.say("close.title", nil)}
	spare := "close.spare"
	switch {
	case p.Cavity.Into:
		step.Text, spare = w.say("close.into", args{"sizes": w.contents()}), "close.room"
	case w.glued():
		step.Text = w.say("close.slide", args{"root": root})
	default:
		step.Text = w.say("close.lay", args{"root": root})
	}
	for i := range p.Pieces {
		step.Lines = append(step.Lines, w.flaps(&p.Pieces[i])...)
		step.Lines = append(step.Lines, w.joints(&p.Pieces[i])...)
		step.Lines = append(step.Lines, w.seams(&p.Pieces[i])...)
	}
	for _, f := range w.s.Fits {
		step.Lines = append(step.Lines, w.say(spare, args{"of": noun(f.Axis.String()), "clearance": fine(f.Nominal)}))
	}
	return step, true
}

// flaps says which panels are folded over at the end: those that nothing hangs
// on, that are not glued and that no joint holds, in the order that the pattern
// folds them in.
func (w *writer) flaps(p *pattern.Piece) []string {
	held := make([]bool, len(p.Panels))
	for i := range p.Creases {
		held[p.Creases[i].From] = true
	}
	for i := range p.Glues {
		held[p.Glues[i].Panel], held[p.Glues[i].To] = true, true
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

// seams says which edges meet, how far they stay apart, or how far one lies in
// from the other. What is glued has been told.
func (w *writer) seams(p *pattern.Piece) []string {
	var lines []string
	for i := range p.Seams {
		s := &p.Seams[i]
		if gluedTo(p, s.PanelA, s.PanelB) {
			continue
		}
		a := args{"of": noun(p.Panels[s.PanelA].Name), "to": noun(p.Panels[s.PanelB].Name), "apart": s.Apart}
		key := "close.seam"
		if by, over := inFrom(&p.Panels[s.PanelB], s.B1, s.B2); over {
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

// glued reports whether any piece is glued to itself.
func (w *writer) glued() bool {
	return slices.ContainsFunc(w.s.Pattern.Pieces, func(p pattern.Piece) bool { return len(p.Glues) > 0 })
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
