package guide

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// cut is cutting the blanks of a piece.
func (w *writer) cut(p *pattern.Piece) (Step, bool) {
	step := Step{Title: w.title("cut", p)}
	step.Text = w.say("cut.blank", args{"n": p.Quantity, "of": noun(p.Name), "width": p.Width, "height": p.Height})
	step.Lines = append(step.Lines, w.say("cut.square", nil))
	switch up, across := creased(p); {
	case across.Less(up):
		step.Lines = append(step.Lines, w.say("cut.grain.up", nil))
	case up.Less(across):
		step.Lines = append(step.Lines, w.say("cut.grain.across", nil))
	}
	mark := "cut.mark"
	if len(p.Creases) == 0 {
		mark = "cut.mark.flat"
	}
	step.Lines = append(step.Lines, w.say(mark, nil))
	return step, true
}

// creased returns how much crease of a piece runs up and across.
func creased(p *pattern.Piece) (up, across measure.Length) {
	for i := range p.Creases {
		c := &p.Creases[i]
		up = up.Add(c.B.Y.Sub(c.A.Y).Abs())
		across = across.Add(c.B.X.Sub(c.A.X).Abs())
	}
	return up, across
}
