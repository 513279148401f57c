package own

import (
	"slices"
	"strconv"

	"creasefit/internal/pattern"
)

// blank is a piece before it is folded, as far as no size is asked for.
type blank struct {
	first, count, root int                // of all panels, those of the piece
	folds              []int              // the panels that hang by its folds, in their order
	chains             [2][]int           // the unknowns along its width and its height
	scores             [2][]pattern.Score // between those
	names              []string           // of the folds
	whole              bool               // nothing is cut away
	square             bool               // no side is slanted
}

// layBlanks lists the panels of each piece, and its folds: those along the width from the
// left, then those along the height from the bottom, then all others.
func (v *derivation) layBlanks() {
	v.blanks, v.crease = make([]blank, len(v.Pieces)), make([]int, len(v.panels))
	first := 0
	for piece := range v.Pieces {
		b := &v.blanks[piece]
		*b = blank{first: first, count: len(v.Pieces[piece].Panels), root: v.rootOf(piece), square: true}
		first += b.count
		for axis := range b.chains {
			row := v.row(b.root, axis)
			for _, i := range row {
				u := v.panels[i].far
				if i != b.root {
					b.folds = append(b.folds, i)
				} else if axis == 1 {
					u = v.panels[i].up
				}
				b.chains[axis] = append(b.chains[axis], u)
			}
			b.whole = b.whole || len(row) == b.count
		}
		for i := b.first; i < first; i++ {
			q := &v.panels[i]
			if q.parent >= 0 && !slices.Contains(b.folds, i) {
				b.folds = append(b.folds, i)
			}
			b.square = b.square && !q.Taper.given
			b.whole = b.whole && !q.Narrower.given && !q.Taper.given && q.ends == [2]int{-1, -1}
		}
		for n, i := range b.folds {
			q := &v.panels[i]
			v.crease[i] = n
			b.names = append(b.names, "score "+strconv.Itoa(n+1))
			if axis := q.Edge.axis(); len(b.scores[axis]) < len(b.chains[axis])-1 {
				b.scores[axis] = append(b.scores[axis], pattern.Score{Name: b.names[n], Fold: q.Fold, Angle: float64(q.Angle)})
			}
		}
	}
}

// row lists a root and the panels in a row with it, from the left or the bottom.
func (v *derivation) row(root, axis int) []int {
	row := []int{root}
	before, after := Edge(2*axis), Edge(2*axis+1)
	for at := v.next(root, before); at >= 0; at = v.next(at, before) {
		row = slices.Insert(row, 0, at)
	}
	for at := v.next(root, after); at >= 0; at = v.next(at, after) {
		row = append(row, at)
	}
	return row
}

// next is the panel that hangs on an edge of another one, -1 for none.
func (v *derivation) next(on int, e Edge) int {
	return slices.IndexFunc(v.panels, func(q plate) bool { return q.parent == on && q.Edge == e })
}

// settable is what a ruler is set to: an unknown, or something else by a key.
type settable struct {
	name, key string
	unknown   int
}

// set gives every unknown that a ruler is set to its reading, and what else is set by
// itself, in the order that the design says. It is set once for all panels of a piece that
// lie along no edge of a blank and are as long by the same size.
func (v *derivation) set() {
	var all []settable
	for i := range v.unknowns {
		if u := &v.unknowns[i]; !u.end && v.shared(v.first+i) < 0 {
			all = append(all, settable{name: u.name, unknown: i})
		}
	}
	all = append(all, v.besides()...)
	place := func(s settable) int {
		if i := slices.Index(v.Order, s.name); i >= 0 {
			return i
		}
		return len(v.Order)
	}
	slices.SortStableFunc(all, func(a, b settable) int { return place(a) - place(b) })
	v.readings, v.further = len(all), map[string]int{}
	for reading, s := range all {
		if s.key != "" {
			v.further[s.key] = reading
		} else {
			v.unknowns[s.unknown].reading = reading
		}
	}
	for i := range v.unknowns {
		if with := v.shared(v.first + i); with >= 0 {
			v.unknowns[i].reading = with
		}
	}
}

// besides lists what is set by itself and is no unknown: the named sizes that joins are
// stated with, and creeps.
func (v *derivation) besides() (all []settable) {
	var creeps []settable
	for i := range v.Joins {
		j := &v.Joins[i]
		for _, a := range [...]Amount{j.Short, j.Past} {
			known := slices.ContainsFunc(all, func(s settable) bool { return s.key == a.Size })
			if a.Size != "" && !known && !slices.ContainsFunc(v.unknowns, func(u unknown) bool { return u.fixed.Size == a.Size }) {
				all = append(all, settable{name: a.Size, key: a.Size})
			}
		}
		if j.Type == Clear {
			creeps = append(creeps, settable{name: j.creep(), key: j.place})
		}
	}
	return append(all, creeps...)
}

// shared is the reading that an unknown has with one before it, -1 if there is none.
func (v *derivation) shared(unknown int) int {
	u := v.of(unknown)
	if u.fixed.Size == "" || v.alongEdge(unknown) {
		return -1
	}
	for i := range v.unknowns[:unknown-v.first] {
		if o := &v.unknowns[i]; o.fixed.Size == u.fixed.Size && o.piece == u.piece && !v.alongEdge(v.first+i) {
			return o.reading
		}
	}
	return -1
}

// alongEdge reports whether an unknown lies along an edge of a blank.
func (v *derivation) alongEdge(unknown int) bool {
	for piece := range v.Pieces {
		if b := &v.blanks[piece]; slices.Contains(b.chains[0], unknown) || slices.Contains(b.chains[1], unknown) {
			return true
		}
	}
	return false
}
