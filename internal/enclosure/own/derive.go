package own

import (
	"math"
	"slices"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// mostRounds is how often a design is folded up before its plates must have come
// to rest: each round starts from the sizes that the one before it gave.
const mostRounds = 8

// derived is what a design comes to for one request.
type derived struct {
	*derivation
	fits   []clearance
	thing  *thing
	exact  []row // hard rows in readings alone
	layers []row // soft rows that hard ones with papers in them became
	soft   []row
	known  system
}

// derive folds a design up until what bounds the contents stays the same.
func derive(d *Design, in *enclosure.Input) (*derived, error) {
	v := newDerivation(d, in)
	if err := v.odd.Err(); err != nil {
		return nil, err
	}
	if d.begin != nil {
		v.beginAt(d.begin)
	} else {
		v.fold()
		v.state()
		v.guess()
	}
	var last string
	for range mostRounds {
		v.wrong = nil
		r := &derived{derivation: v}
		v.fold()
		v.state()
		r.solve()
		if err := r.wrong.Err(); err != nil {
			return nil, err
		}
		if now := r.shape(); now == last {
			return r, r.check()
		} else {
			last = now
		}
	}
	return nil, fault.Fault{Code: fault.Impossible, Field: "design.pieces", Detail: "folded up again and again, other plates bound the contents every time",
		Hint: "give the free panels a reach, one by one, to see which of them does not settle"}
}

// beginAt begins at the sizes that a design came to for another thing, as they depend on
// the thing and the paper.
func (v *derivation) beginAt(s *system) {
	s.settle(v.values)
	for i := range v.unknowns {
		if u := &v.unknowns[i]; u.fixed {
			v.values[firstReading+i] = float64(u.size.Nanometres())
		}
	}
}

// guess betters the first guess: what is the sum of others by a statement is as large
// as they are together, so that what lies inside begins inside.
func (v *derivation) guess() {
	for range 2 {
		for i := range v.rows {
			w := &v.rows[i]
			u := w.form.sum()
			if u < 0 || v.unknowns[u-firstReading].fixed {
				continue
			}
			others := slices.Clone(w.form)
			others[u] = 0
			v.values[u] = (float64(w.best().Nanometres()) - others.at(v.values)) * parts / float64(w.form[u])
		}
	}
}

// shape tells two foldings apart: what bounds the contents, what lies on what, and
// every size to the micrometre.
func (r *derived) shape() string {
	var b strings.Builder
	for _, c := range r.fits {
		b.WriteByte(byte(c.axis))
		b.WriteByte(byte(c.low))
		b.WriteByte(byte(c.high))
	}
	for i := firstReading; i < r.count; i++ {
		um := int64(math.Round(r.values[i] / 1000))
		for range 6 {
			b.WriteByte(byte(um))
			um >>= 8
		}
	}
	return b.String()
}

// solve takes in everything that is stated, what must be before what should be,
// and works the unknowns out.
func (r *derived) solve() {
	r.known.order = r.unknownsInTurn()
	for i := range r.unknowns {
		if u := &r.unknowns[i]; u.fixed {
			r.known.add(r.only(firstReading+i, parts).plus(-1, r.length(u.size)))
		}
	}
	r.takeHard()
	r.bindContents()
	r.takeSoft(true)
	for _, j := range r.Joins {
		if j.Type == Even {
			a, b := r.panels[r.index[j.A.Panel]].far, r.panels[r.index[j.B.Panel]].far
			r.known.add(r.only(a, parts).with(b, -parts))
		}
	}
	r.takeSoft(false)
	r.known.settle(r.values)
}

// unknownsInTurn lists the ends before the readings: they are solved first.
func (r *derived) unknownsInTurn() []int {
	order := make([]int, 0, len(r.unknowns))
	for _, ends := range [...]bool{true, false} {
		for i := range r.unknowns {
			if r.unknowns[i].end == ends {
				order = append(order, firstReading+i)
			}
		}
	}
	return order
}

// takeHard sorts the hard rows out: what says nothing new is dropped, what is left
// of papers is a layer, what has readings alone a closure.
func (r *derived) takeHard() {
	var before system // without the sizes that the request gives
	before.order = r.known.order
	for i := range r.rows {
		w := &r.rows[i]
		if !w.hard {
			continue
		}
		left, fresh := before.add(w.form)
		if !fresh {
			if !left.isZero() {
				r.clashes(i)
			}
			continue
		}
		if rest, fresh := r.known.add(w.form); !fresh && !rest.isZero() && r.clashes(i) {
			continue
		}
		if !r.hasEnd(left) {
			r.sort(w, left)
		}
	}
}

// hasEnd reports whether a row says where an end lies.
func (r *derived) hasEnd(f form) bool {
	for i := range r.unknowns {
		if r.unknowns[i].end && f[firstReading+i] != 0 {
			return true
		}
	}
	return false
}

// isLayer reports whether papers are in a row of readings.
func (r *derived) isLayer(f form) bool { return f[caliper] != 0 }

// sort puts a hard row among the closures or the layers.
func (r *derived) sort(w *row, left form) {
	closed := *w
	closed.form = left
	if f := w.form.plain(); r.alike(f, left) {
		closed.form = f
	}
	switch {
	case left[width] != 0 || left[height] != 0 || left[thickness] != 0:
		little := r.in.Little()
		closed.hard, closed.weight, closed.room = false, 1, enclosure.Range{Min: little.Neg(), Max: little}
		r.layers = append(r.layers, closed)
	case r.isLayer(left):
		r.layers = append(r.layers, r.layer(closed))
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
	for u := range firstReading - 1 {
		if (a[u] != 0) != (b[u] != 0) {
			return false
		}
	}
	return true
}

// layer states that readings differ by papers: from none to twice as many, since
// a caliper is no multiple of a ruler's mark.
func (r *derived) layer(w row) row {
	f := w.form
	if f[caliper] > 0 {
		f = f.times(-1)
	}
	papers := r.only(caliper, f[caliper])
	w.hard, w.layer, w.weight, w.form = false, true, 1, f.plus(-1, papers)
	w.room = enclosure.Range{Max: papers.times(-2).exact(r.lengths())}
	return w
}

// lengths are the exact lengths that forms without readings are made of.
func (r *derived) lengths() []measure.Length {
	l := make([]measure.Length, r.count)
	l[caliper], l[width], l[height], l[thickness], l[one] = r.in.Caliper, r.in.Width, r.in.Height, r.in.Thickness, measure.Nanometres(1)
	return l
}

// bindContents finds what bounds the contents, at the values known so far.
func (r *derived) bindContents() {
	values := slices.Clone(r.values)
	r.known.settle(values)
	before := r.values
	r.values = values
	if r.goesInto() {
		r.fits = r.outsides()
	} else {
		r.thing = r.contents()
		r.fits = r.bounds(r.thing, r.floor, r.panels[r.floor].piece, "")
	}
	r.values = before
	r.values = values
	r.fits = append(r.fits, r.nests()...)
	r.values = before
	for i := range r.fits {
		middle := r.fits[i].wanted.Min.Add(r.fits[i].wanted.Max).Over(2)
		r.known.add(r.fits[i].form.plus(-1, r.length(middle)))
	}
}

// takeSoft takes in the soft rows at their best: those that have a best place, or
// those that hold anywhere in their room.
func (r *derived) takeSoft(weighed bool) {
	for i := range r.rows {
		if w := &r.rows[i]; !w.hard && weighed == (w.weight > 0) {
			r.soft = append(r.soft, *w)
			r.known.add(w.form.plus(-1, r.length(w.best())))
		}
	}
}

// check says what is still open when all is folded.
func (r *derived) check() error {
	if r.known.large {
		r.fault("pieces", "the shares of shares are too intricate to be exact", "say shares of one panel, in smaller numbers")
		return r.wrong.Err()
	}
	for _, u := range r.known.open() {
		w := &r.unknowns[u-firstReading]
		r.fault(w.place, "nothing says how far "+w.name+" reaches", "give it a reach, or say what its edge meets")
	}
	return r.wrong.Err()
}

// fault adds what is wrong with the design at a place.
func (v *derivation) fault(place, detail, hint string) {
	v.wrong = append(v.wrong, fault.Fault{Code: fault.Impossible, Field: under("design", place), Detail: detail, Hint: hint})
}
