package pattern

import "creasefit/internal/measure"

// Board is the caliper from which stock does not give way, unless it is known
// better: a plate of paper that is pressed half of its caliper into its neighbour is
// bent out of the way, one of board is not (common practice).
var Board = measure.Micrometres(800)

// Stiff reports whether stock of a caliper does not give way; from is the caliper
// from which it does not, zero for Board.
func Stiff(caliper, from measure.Length) bool {
	if from.IsZero() {
		from = Board
	}
	return !caliper.Less(from)
}

// Stiff reports whether the stock of the pattern does not give way.
func (p *Pattern) Stiff() bool { return Stiff(p.Caliper, p.BoardFrom) }
