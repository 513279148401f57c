package tolerance

// lattice is a rule of rank one: the multiples of a vector, folded so that the
// integrand is as if periodic. The vectors were built one component after the
// other to have the least worst-case error in the Korobov space of order 2 with
// weights 0.3 x 0.7^j (F. Y. Kuo, "Component-by-component constructions achieve
// the optimal rate of convergence", J. Complexity 19, 2003).
type lattice struct {
	points int
	vector []int
}

// latticeWithin is how far an integral over a lattice may be off. On a thousand
// random requests it is less off than that, see TestJointAgainstMonteCarlo.
const latticeWithin = 0.003

var (
	coarse = lattice{251, []int{103, 69}}
	middle = lattice{509, []int{10, 54, 197}}
	fine   = lattice{2039, []int{601, 358, 879, 541, 635, 746, 306, 727, 471, 614, 980, 96, 665, 808, 519, 286, 625, 119, 470, 150, 442, 633, 508, 683}}
)

// latticeFor is the rule for so many variables, the last of which is integrated
// exactly.
func latticeFor(variables int) *lattice {
	switch {
	case variables <= 3:
		return &coarse
	case variables == 4:
		return &middle
	}
	return &fine
}

// step is how far the points are from one another along a variable.
func (l *lattice) step(variable int) float64 {
	round, i := variable/len(l.vector), variable%len(l.vector)
	return float64(l.vector[i]*(round+1)%l.points) / float64(l.points)
}

// first is where the points begin along a variable, off the corner where folding
// would meet the ends.
func (l *lattice) first(variable int) float64 {
	at := 0.618 * float64(variable+1)
	return at - float64(int(at))
}
