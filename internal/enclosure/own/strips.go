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
			if axis, _ := q.Edge.along(); len(b.scores[axis]) < len(b.chains[axis])-1 {
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

// set gives every unknown that a ruler is set to its reading, and what else is set by
// itself. It is set once for all panels of a piece that lie along no edge of a blank and are
// as long by the same size.
func (v *derivation) set() {
	var names []string
	at := func(name string) int { // where it comes in their order
		if i := slices.Index(v.Order, name); i >= 0 {
			return i
		}
		return len(v.Order)
	}
	var alone []int // the unknowns that have a reading of their own, -1 for what else has
	for i := range v.unknowns {
		if u := &v.unknowns[i]; !u.end && v.shared(v.first+i) < 0 {
			names, alone = append(names, u.name), append(alone, i)
		}
	}
	for _, name := range v.besides() {
		names, alone = append(names, name), append(alone, -1)
	}
	inTurn := make([]int, len(names))
	for i := range inTurn {
		inTurn[i] = i
	}
	slices.SortStableFunc(inTurn, func(a, b int) int { return at(names[a]) - at(names[b]) })
	v.readings, v.further = len(names), map[string]int{}
	for reading, i := range inTurn {
		if u := alone[i]; u >= 0 {
			v.unknowns[u].reading = reading
		} else {
			v.further[names[i]] = reading
		}
	}
	for i := range v.unknowns {
		if u := &v.unknowns[i]; !u.end {
			if with := v.shared(v.first + i); with >= 0 {
				u.reading = with
			}
		}
	}
}

// besides lists what is set by itself and is no unknown: the named sizes that joins are
// stated with, and creeps.
func (v *derivation) besides() (names []string) {
	for i := range v.Joins {
		j := &v.Joins[i]
		for _, a := range [...]Amount{j.Short, j.Past} {
			fixed := func(u unknown) bool { return u.fixed.Size == a.Size }
			if a.Size != "" && !slices.Contains(names, a.Size) && !slices.ContainsFunc(v.unknowns, fixed) {
				names = append(names, a.Size)
			}
		}
	}
	for i := range v.Joins {
		if j := &v.Joins[i]; j.Type == Clear {
			names = append(names, j.creep())
		}
	}
	return names
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
