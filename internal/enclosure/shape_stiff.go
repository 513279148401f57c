package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// stiff reports whether the stock is board, which does not give way.
func (in *Input) stiff() bool { return pattern.Stiff(in.Caliper, in.BoardFrom) }

// trim is what is taken off an edge that would butt half of a caliper into its
// neighbour: one caliper of board, none of paper, which is pressed in.
func (in *Input) trim() measure.Length {
	if in.stiff() {
		return in.Caliper
	}
	return measure.Length{}
}

// PaperOnly refuses board for what is bent, or folded flat on itself.
func (in *Input) PaperOnly(what string) error {
	if !in.stiff() {
		return nil
	}
	from := in.BoardFrom
	if from.IsZero() {
		from = pattern.Board
	}
	return fault.Fault{Code: fault.Impossible, Field: "caliper", Detail: what + " is made of paper: board does not give way, nor fold flat on itself",
		Expected: "under " + from.Plain(in.Unit),
		Hint:     "choose thinner stock, or a kind with walls such as a tray, a sleeve round something thicker or a slipcase; if yours does give way, say so with board_from"}
}

// noSlit refuses a slit of no width that board would have to go into.
func (in *Input) noSlit(field, hint string) error {
	if !in.stiff() {
		return nil
	}
	return fault.Fault{Code: fault.Conflict, Field: field, Detail: "board does not go into a slit, which has no width", Hint: hint}
}

// pastFold adds the reading of how far the ends of a flap begin inside the scores
// beside it, whose folds of 180 degrees round a thickness it must clear when it is
// folded in.
func (d *draft) pastFold(name string, round measure.Length) int {
	return d.atLeast(name, d.in.clearOfFold(round))
}

// clearOfFold is how far a flap must begin inside a score whose fold of 180
// degrees goes round a thickness: half of the spine and half of its own caliper.
func (in *Input) clearOfFold(round measure.Length) measure.Length {
	return in.spine(round).Add(in.Caliper).Over(2)
}
