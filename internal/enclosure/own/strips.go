package own

import "slices"

// chain lists the unknowns along an axis of the blank, from the left or the bottom.
func (v *derivation) chain(root, axis int) []int {
	own := v.panels[root].far
	if axis == 1 {
		own = v.panels[root].up
	}
	chain := []int{own}
	for _, e := range [...]Edge{Edge(2 * axis), Edge(2*axis + 1)} {
		for at := v.next(root, e); at >= 0; at = v.next(at, e) {
			if e == Left || e == Bottom {
				chain = slices.Insert(chain, 0, v.panels[at].far)
			} else {
				chain = append(chain, v.panels[at].far)
			}
		}
	}
	return chain
}

// next is the panel that hangs on an edge of another one, -1 for none.
func (v *derivation) next(on int, e Edge) int {
	return slices.IndexFunc(v.panels, func(q plate) bool { return q.parent == on && q.Edge == e })
}

// set gives every unknown that a ruler is set to its reading. It is set once for all panels
// of a piece that lie along no edge of a blank and are as long by the same size.
func (v *derivation) set() {
	settings := 0
	for i := range v.unknowns {
		u := &v.unknowns[i]
		if u.end {
			continue
		}
		if u.reading = v.shared(v.first + i); u.reading < 0 {
			u.reading = settings
			settings++
		}
	}
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
		root := v.rootOf(piece)
		if slices.Contains(v.chain(root, 0), unknown) || slices.Contains(v.chain(root, 1), unknown) {
			return true
		}
	}
	return false
}

// lineUp numbers the panels of each piece, and lists its folds: those along the width from
// the left, then those along the height from the bottom, then all others.
func (v *derivation) lineUp() {
	v.at, v.crease, v.creases = make([]int, len(v.panels)), make([]int, len(v.panels)), make([][]int, len(v.Pieces))
	for piece := range v.Pieces {
		root, n := v.rootOf(piece), 0
		var order []int
		for _, e := range [...]Edge{Left, Right, Bottom, Top} {
			var row []int
			for at := v.next(root, e); at >= 0; at = v.next(at, e) {
				row = append(row, at)
			}
			if e == Left || e == Bottom {
				slices.Reverse(row)
			}
			order = append(order, row...)
		}
		for i := range v.panels {
			if q := &v.panels[i]; q.piece == piece {
				v.at[i] = n
				n++
				if q.parent >= 0 && !slices.Contains(order, i) {
					order = append(order, i)
				}
			}
		}
		for n, i := range order {
			v.crease[i] = n
		}
		v.creases[piece] = order
	}
}
