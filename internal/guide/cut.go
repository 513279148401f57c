package guide

import (
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// cut is cutting the blanks of a piece.
func (w *writer) cut(p *pattern.Piece) (Step, bool) {
	step := Step{Title: w.title("cut", p)}
	step.Text = w.say("cut.blank", args{"n": p.Quantity, "of": noun(p.Name), "width": p.Width, "height": p.Height})
	if square := w.onceOnly("cut.square"); square != "" {
		step.Lines = append(step.Lines, square)
	}
	if grain := w.grain(p); grain != "" {
		step.Lines = append(step.Lines, grain)
	}
	mark := "cut.mark"
	if len(p.Creases) == 0 {
		mark = "cut.mark.flat"
	}
	if mark := w.onceOnly(mark); mark != "" {
		step.Lines = append(step.Lines, mark)
	}
	return step, true
}

// grain says how the grain ought to run: along most of the scores. Where it is
// known that it cannot, a warning says so.
func (w *writer) grain(p *pattern.Piece) string {
	key, ok := map[solve.Grain]string{solve.GrainHeight: "up", solve.GrainWidth: "across"}[solve.FoldSide(p)]
	if !ok {
		return ""
	}
	r := w.s.Request
	switch kept := r.KeepsGrain(p); {
	case kept == solve.GrainAcross:
		return ""
	case r.Grain == solve.GrainUnknown:
		return w.say("cut.grain."+key, nil)
	}
	return w.say("cut.grain.given."+key, args{"side": noun(r.Grain.String())})
}
