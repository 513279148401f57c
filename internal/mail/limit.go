package mail

// Limit is one bound of a class or a surcharge.
type Limit struct {
	Bound Amount
	Least bool // the bound is the least that is taken, else the greatest
	Open  bool // the bound itself is not taken any more
	// Grace, if not zero, is a further bound: between the two, sources disagree
	// or the post allows for errors of measuring. Doubt says which.
	Grace Amount
	Doubt string
	// Hearsay says that no official source of the bound was at hand.
	Hearsay bool
	Source  string
	// Unless waives the limit for a piece within all of these.
	Unless []Limit
}

// Limits are bounds of one class or surcharge.
type Limits []Limit

// State is how a piece stands to a limit.
type State uint8

// The states, from the best to the worst.
const (
	Inside   State = iota
	Unknown        // the quantity is not known
	Unsure         // within, but not with every error of the tolerances
	Disputed       // beyond a bound that is hearsay, or within its grace
	Outside
)

// String returns the state as it is written on the wire.
func (s State) String() string {
	return [...]string{"inside", "unknown", "unsure", "disputed", "outside"}[s]
}

// Finding is a limit with what a piece has of its quantity.
type Finding struct {
	*Limit
	State State
	Value Amount // unless Unknown
	Left  Amount // how far the value is from the bound; below nothing beyond it
}

// beyond returns how far a value is beyond a bound: above nothing if it is.
func (l *Limit) beyond(bound Amount, value int64) int64 {
	past := value - bound.n
	if l.Least {
		past = -past
	}
	if l.Open {
		past++
	}
	return past
}

// check compares a piece with the limit; ok is false if the limit is waived.
func (l *Limit) check(m *measured) (f Finding, ok bool) {
	if l.waived(m) {
		return f, false
	}
	v, known := m.of(l.Bound.of, l.Least)
	if !known {
		return Finding{Limit: l, State: Unknown}, true
	}
	left := l.Bound.n - v.nominal
	if l.Least {
		left = -left
	}
	return Finding{Limit: l, State: l.state(v), Value: Amount{l.Bound.of, v.nominal}, Left: Amount{l.Bound.of, left}}, true
}

// waived reports whether the piece is within what the limit is waived for.
func (l *Limit) waived(m *measured) bool {
	for i := range l.Unless {
		if f, _ := l.Unless[i].check(m); f.State == Outside || f.State == Unknown {
			return false
		}
	}
	return len(l.Unless) > 0
}

// state compares a value and its errors with the bound.
func (l *Limit) state(v spread) State {
	worst := v.high
	if l.Least {
		worst = v.low
	}
	switch {
	case l.beyond(l.Bound, v.nominal) > 0 && (l.Hearsay || !l.Grace.IsZero() && l.beyond(l.Grace, v.nominal) <= 0):
		return Disputed
	case l.beyond(l.Bound, v.nominal) > 0:
		return Outside
	case l.beyond(l.Bound, worst) > 0:
		return Unsure
	default:
		return Inside
	}
}
