package own

import (
	"math"
	"slices"
	"sync"

	"creasefit/internal/fault"
)

// mostRounds is how often a design is folded up before its plates must have come
// to rest: each round starts from the sizes that the one before it gave.
const mostRounds = 8

// mostFolded is how many foldings of a design are remembered, which make the same plan
// but for the lengths of a request.
const mostFolded = mostRounds

// derived is a folding of a design in forms: whatever the request, as long as the same
// plates lie on one another and bound the contents.
type derived struct {
	*derivation
	panels []plate // folded
	blocks []block
	pieces [][]int // by piece: its blocks, and those of what is glued onto it
	piles  bool    // what lies on what hangs on the sizes
	ends   bool    // so does where a lid or a panel ends
	rows   []row
	hard   system // of hard rows alone
	shown  shown
	fits   []clearance
	exact  []row // hard rows in readings alone
	layers []row // soft rows that hard ones with papers in them became
	soft   []row
	over   []int // hard rows that say nothing new, but of what the request gives
	known  system
	wrong  fault.Faults // with the design
	unsaid error        // what it leaves open
	once   sync.Once
	stated stated // once it is planned
}

// derive folds a design up until what bounds the contents stays the same, and gives the
// unknowns their values now.
func (v *derivation) derive(now []float64) (*derived, error) {
	if err := v.odd.Err(); err != nil {
		return nil, err
	}
	last := v.begin
	if last != nil {
		last.known.settle(now)
	} else {
		v.guess(now)
	}
	var before []*derived
	for range mostRounds {
		r, err := v.foldedAt(now)
		if err != nil {
			return nil, err
		}
		r.known.settle(now)
		if last != nil && r.same(last) {
			return r, r.unsaid
		}
		if slices.ContainsFunc(before, r.same) {
			break // it goes round in a circle
		}
		before, last = append(before, r), r
	}
	return nil, impossible("pieces", "folded up again and again, other plates bound the contents every time",
		"give the free panels a reach, one by one, to see which of them does not settle")
}

// foldedAt is the folding that comes of some values: one that is remembered, or a new one.
func (v *derivation) foldedAt(values []float64) (*derived, error) {
	v.lock.Lock()
	known := slices.Clip(v.folded)
	v.lock.Unlock()
	for _, r := range known {
		if r.holds(values) && r.agrees(values) {
			return r, nil
		}
	}
	r := v.fold(values)
	r.solve(values)
	if err := r.wrong.Err(); err != nil {
		return nil, err
	}
	r.unsaid = r.undecided()
	v.lock.Lock()
	defer v.lock.Unlock()
	if len(v.folded) < mostFolded {
		v.folded = append(v.folded, r)
	}
	return r, nil
}

// same reports whether two foldings are the same.
func (r *derived) same(o *derived) bool {
	if r == o {
		return true
	}
	for i := range r.panels {
		if r.panels[i].pile != o.panels[i].pile || r.panels[i].rim != o.panels[i].rim || r.panels[i].beside != o.panels[i].beside {
			return false
		}
	}
	return r.shown.is(o.shown)
}

// fold folds a design up at some values, and writes down what it states.
func (v *derivation) fold(values []float64) *derived {
	r := &derived{derivation: v, panels: slices.Clone(v.panels)}
	s := &sight{derived: r, values: values, feet: make([]spot, len(r.panels))}
	s.fold()
	for i := range r.panels {
		r.panels[i].beside = s.besides(i)
	}
	r.ends = slices.ContainsFunc(r.panels, func(p plate) bool { return p.lid || p.Clear })
	r.piles = r.ends || slices.ContainsFunc(r.panels, func(p plate) bool { return p.spine != nil })
	r.state()
	return r
}

// solve takes in everything that is stated, what must be before what should be,
// and works the unknowns out.
func (r *derived) solve(values []float64) {
	r.known.order = r.unknownsInTurn()
	for i := range r.unknowns {
		if u := &r.unknowns[i]; u.fixed.given {
			r.known.add(only(r.first+i, parts).plus(-1, r.amount(u.fixed)))
		}
	}
	r.takeHard(values)
	r.hard = r.known.clone()
	r.shown = (&sight{derived: r}).standing(values)
	r.fits = r.fitted()
	for i := range r.fits {
		r.known.add(r.fits[i].form.plus(-1, r.fits[i].middle()))
	}
	r.takeSoft(true)
	for i := range r.Joins {
		if j := &r.Joins[i]; j.Type == Even {
			r.known.add(only(r.far(j.A), parts).with(r.far(j.B), -parts))
		}
	}
	r.takeSoft(false)
}

// far is the unknown of how far the panel of a line reaches.
func (v *derivation) far(l Line) int { return v.panels[v.index[l.Panel]].far }

// unknownsInTurn lists the ends before the readings: they are solved first.
func (v *derivation) unknownsInTurn() []int {
	order := make([]int, 0, len(v.unknowns))
	for _, ends := range [...]bool{true, false} {
		for i := range v.unknowns {
			if v.unknowns[i].end == ends {
				order = append(order, v.first+i)
			}
		}
	}
	return order
}

// takeHard sorts the hard rows out: what says nothing new is dropped, what is left
// of papers is a layer, what has readings alone a closure.
func (r *derived) takeHard(values []float64) {
	before := system{order: r.known.order} // without the sizes that the request gives
	for i := range r.rows {
		w := &r.rows[i]
		if !w.hard {
			continue
		}
		left, fresh := before.add(w.form)
		rest, says := left, fresh
		if fresh {
			rest, says = r.known.add(w.form)
		}
		if !says && len(rest) > 0 {
			if r.over = append(r.over, i); r.clashes(i, values) {
				continue
			}
		}
		if fresh && !r.hasEnd(left) {
			r.sort(w, left)
		}
	}
}

// agrees reports whether nothing that a folding states contradicts itself at some values.
func (r *derived) agrees(values []float64) bool {
	if len(r.over) == 0 {
		return true
	}
	values = r.known.settled(values)
	return !slices.ContainsFunc(r.over, func(i int) bool { return r.rows[i].misses(values) })
}

// misses reports whether a hard row does not hold at some values. Papers may be off by as
// many again.
func (w *row) misses(values []float64) bool {
	papers := float64(w.form.count(caliper)) / parts * values[caliper]
	return math.Abs(w.form.at(values)) > touching+2*math.Abs(papers)
}

// hasEnd reports whether a row says where an end lies.
func (v *derivation) hasEnd(f form) bool {
	return slices.ContainsFunc(f, func(p part) bool { return p.of >= v.first && v.of(p.of).end })
}

// sort puts a hard row among the closures or the layers.
func (r *derived) sort(w *row, left form) {
	closed := *w
	closed.form = left
	if f := w.form.plain(); r.alike(f, left) {
		closed.form = f
	}
	switch {
	case left.count(width) != 0 || left.count(height) != 0 || left.count(thickness) != 0:
		closed.hard, closed.weight, closed.room = false, 1, [2]form{only(little, -parts), only(little, parts)}
		r.layers = append(r.layers, closed)
	case left.count(caliper) != 0:
		r.layers = append(r.layers, closed.layered())
	default:
		r.exact = append(r.exact, closed)
	}
}

// alike reports whether two forms are of the same sort, so that the one that was
// stated can stand for the one that is left of it.
func (r *derived) alike(a, b form) bool {
	if r.hasEnd(a) {
		return false
	}
	for u := range one {
		if (a.count(u) != 0) != (b.count(u) != 0) {
			return false
		}
	}
	return true
}

// layered states that readings differ by papers: from none to twice as many, since
// a caliper is no multiple of a ruler's mark.
func (w row) layered() row {
	f := w.form
	if f.count(caliper) > 0 {
		f = f.times(-1)
	}
	papers := only(caliper, f.count(caliper))
	w.hard, w.layer, w.weight, w.form = false, true, 1, f.plus(-1, papers)
	w.room = [2]form{nil, papers.times(-2)}
	return w
}

// takeSoft takes in the soft rows at their best: those that have a best place, or
// those that hold anywhere in their room.
func (r *derived) takeSoft(weighed bool) {
	for i := range r.rows {
		if w := &r.rows[i]; !w.hard && weighed == (w.weight > 0) {
			r.soft = append(r.soft, *w)
			r.known.add(w.form.plus(-1, w.best()))
		}
	}
}

// undecided says what is still open when all is folded.
func (r *derived) undecided() error {
	if r.known.large {
		return impossible("pieces", "the shares of shares are too intricate to be exact", "say shares of one panel, in smaller numbers")
	}
	var left fault.Faults
	for _, u := range r.known.open() {
		left = append(left, impossible(r.of(u).place, "nothing says how far "+r.of(u).name+" reaches", "give it a reach, or say what its edge meets"))
	}
	return left.Err()
}

// fault adds what is wrong with the design at a place.
func (r *derived) fault(place, detail, hint string) {
	r.wrong = append(r.wrong, impossible(place, detail, hint))
}

// impossible is what is wrong with a design at a place.
func impossible(place, detail, hint string) fault.Fault {
	return fault.Fault{Code: fault.Impossible, Field: under("design", place), Detail: detail, Hint: hint}
}
