package guide

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

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

// flat is the ending of messages about what has no folds to be closed.
func (w *writer) flat() string {
	if w.scored() {
		return ""
	}
	return ".flat"
}

// scored reports whether anything is scored.
func (w *writer) scored() bool {
	return slices.ContainsFunc(w.s.Pattern.Pieces, func(p pattern.Piece) bool { return p.Scored() })
}

// spare says how much deeper or wider than the paper a fit makes slots; what room
// the others leave stands in the notes.
func (w *writer) spare(f *solve.Fit) (line string, ok bool) {
	if !w.slotted(f) {
		return "", false
	}
	return w.say("close.slots."+f.Axis.String(), args{"clearance": fine(f.Nominal)}), true
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

// seams says how far edges of two pieces, or of one, stay apart, or how far one
// lies in from the other. What is glued has been told. Gaps beside one panel that are
// as wide are told as one.
func (w *writer) seams(p, other *pattern.Piece, seams []pattern.Seam) []string {
	var lines []string
	var open []*pattern.Seam
	for i := range seams {
		s := &seams[i]
		if p == other && gluedTo(p, s.PanelA, s.PanelB) {
			continue
		}
		a := args{"of": noun(p.Panels[s.PanelA].Name), "to": noun(other.Panels[s.PanelB].Name), "apart": s.Apart}
		if by, over := inFrom(&other.Panels[s.PanelB], s.B1, s.B2); over {
			a["by"] = by
			lines = append(lines, sentence(w.say("close.over", a)))
		} else if w.s.Pattern.Caliper.Times(2).Less(s.Apart) {
			open = append(open, s)
		}
	}
	for len(open) > 0 {
		first, of := open[0], parts{}
		open = slices.DeleteFunc(open, func(s *pattern.Seam) bool {
			like := s.PanelB == first.PanelB && s.Apart == first.Apart
			if like {
				of = of.with(noun(p.Panels[s.PanelA].Name))
			}
			return like
		})
		lines = append(lines, sentence(w.say("close.gap", args{"of": of, "to": noun(other.Panels[first.PanelB].Name), "apart": first.Apart})))
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
	step := Step{Title: w.say("dress.title", nil), Text: w.say("dress.halves", args{"width": o.HalfWidth.Times(2), "height": o.Height})}
	step.Lines = append(step.Lines, w.say("dress.press", nil))
	if !o.TrimWidth.IsZero() {
		step.Lines = append(step.Lines, w.say("dress.trim", args{"width": o.TrimWidth}))
	}
	from, to, height := w.s.Step.Up(o.GlueFrom), w.s.Step.Down(o.GlueTo), w.s.Step.Down(o.GlueHeight)
	key := "dress.glue"
	if !from.Less(to) || height.IsZero() { // too coarse a ruler for it
		key = "dress.glue.beside"
	}
	step.Lines = append(step.Lines, w.say(key, args{"from": from, "to": to, "height": height}))
	if o.ShowsHeight.IsZero() {
		step.Lines = append(step.Lines, w.say("dress.covers", nil))
	} else {
		step.Lines = append(step.Lines, w.say("dress.shows", args{"height": o.ShowsHeight}))
	}
	step.After = w.say("dress.adds", args{"thickness": fine(o.Adds)})
	return step, true
}
