package guide

import (
	"creasefit/internal/pattern"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// cut is cutting the blanks of a piece.
func (w *writer) cut(p *pattern.Piece) (Step, bool) {
	mark := "cut.mark"
	if len(p.Creases) == 0 {
		mark = "cut.mark.flat"
	}
	text := []string{w.say("cut.blank", args{"n": p.Quantity, "width": p.Width, "height": p.Height}),
		w.onceOnly("cut.square"), w.grain(p), w.onceOnly(mark)}
	return Step{Title: w.title("cut", p), Text: joined(text)}, true
}

// grain says how the grain ought to run: along most of the scores. Where it is
// known that it cannot, a warning says so.
func (w *writer) grain(p *pattern.Piece) string {
	key, ok := map[sheet.Side]string{sheet.AlongHeight: "up", sheet.AlongWidth: "across"}[solve.FoldSide(p)]
	if !ok {
		return ""
	}
	r := w.s.Request
	switch kept := r.KeepsGrain(p); {
	case kept == solve.GrainAcross:
		return ""
	case r.Grain == sheet.AnySide && !p.Scored():
		return w.onceOnly("cut.grain.roll")
	case r.Grain == sheet.AnySide:
		return w.onceOnly("cut.grain." + key)
	}
	return w.say("cut.grain.given."+key, args{"side": noun(r.Grain.String())})
}
