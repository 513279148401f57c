package mail

import "slices"

// Verdict is what a post makes of a piece.
type Verdict uint8

// The verdicts.
const (
	Refused Verdict = iota // no class takes it
	Takes                  // the class takes it, as far as is known
	MayTake                // a limit of the class is unsure or disputed
)

// String returns the verdict as it is written on the wire.
func (v Verdict) String() string { return [...]string{"none", "takes", "may-take"}[v] }

// Due is a surcharge with its reasons.
type Due struct {
	Name    string
	Limits  []Finding // that it is due for, those that are unsure included
	Rules   []*Rule
	Certain bool // some reason is neither unsure nor disputed
}

// Refusal is a class that does not take the piece, and why not.
type Refusal struct {
	Class  *Class
	Limits []Finding
	Rules  []*Rule
}

// Judgement is what a post makes of a piece.
type Judgement struct {
	Post       *Post
	Verdict    Verdict
	Class      *Class     // the cheapest that takes it; nil if none does
	Limits     []Finding  // of that class, as far as they hold for the piece
	Surcharges []Due      // of that class
	Refusals   []Refusal  // of the classes before it, or of all
	Unknown    []Quantity // that limits of the class are of
}

// Judge finds the cheapest class that takes the piece. What is not known keeps
// it out of none.
func (p *Post) Judge(q *Piece) Judgement {
	j, m := Judgement{Post: p}, q.seenBy(p)
	for i := range p.Classes {
		c := &p.Classes[i]
		limits, rules := checkAll(c.Limits, &m), brokenOf(c.Rules, m.traits)
		outside := ofStates(limits, Outside)
		if len(outside) > 0 || len(rules) > 0 {
			j.Refusals = append(j.Refusals, Refusal{c, outside, rules})
			continue
		}
		j.Class, j.Limits = c, limits
		j.settle(&m)
		break
	}
	return j
}

// settle fills in what follows from the class that was found.
func (j *Judgement) settle(m *measured) {
	j.Verdict = Takes
	if len(ofStates(j.Limits, Unsure, Disputed)) > 0 {
		j.Verdict = MayTake
	}
	for _, f := range ofStates(j.Limits, Unknown) {
		if !slices.Contains(j.Unknown, f.Bound.of) {
			j.Unknown = append(j.Unknown, f.Bound.of)
		}
	}
	for i := range j.Class.Surcharges {
		s := &j.Class.Surcharges[i]
		found := checkAll(s.Limits, m)
		d := Due{s.Name, ofStates(found, Unsure, Disputed, Outside), brokenOf(s.Rules, m.traits), false}
		d.Certain = len(d.Rules) > 0 || len(ofStates(found, Outside)) > 0
		if d.Certain || len(d.Limits) > 0 {
			j.Surcharges = append(j.Surcharges, d)
		}
	}
}

// Nearest returns the limit of the class that the piece is nearest to, in
// parts of the bound, or false if nothing is known of any.
func (j *Judgement) Nearest() (Finding, bool) {
	var nearest Finding
	for _, f := range ofStates(j.Limits, Inside, Unsure, Disputed) {
		if nearest.Limit == nil || f.share() < nearest.share() {
			nearest = f
		}
	}
	return nearest, nearest.Limit != nil
}

// share is what is left in parts of the bound.
func (f *Finding) share() float64 { return float64(f.Left.n) / float64(f.Bound.n) }

// checkAll compares a piece with all limits that are not waived for it.
func checkAll(limits []Limit, m *measured) []Finding {
	list := make([]Finding, 0, len(limits))
	for i := range limits {
		if f, ok := limits[i].check(m); ok {
			list = append(list, f)
		}
	}
	return list
}

// ofStates picks the findings that are in one of the states.
func ofStates(list []Finding, states ...State) []Finding {
	return slices.DeleteFunc(slices.Clone(list), func(f Finding) bool { return !slices.Contains(states, f.State) })
}

// brokenOf picks the rules that a piece of these traits breaks.
func brokenOf(rules []Rule, t Trait) []*Rule {
	var broken []*Rule
	for i := range rules {
		if rules[i].broken(t) {
			broken = append(broken, &rules[i])
		}
	}
	return broken
}
