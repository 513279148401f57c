package search

import "slices"

// feasible is a dual feasible function on whole lengths: whatever pieces lie
// beside one another in a length, their values add up to no more than the
// length's own, which is top. Of a piece, the product of such values along both
// sides is never more than the product of the tops for a whole sheet (S. P.
// Fekete, J. Schepers, Mathematics of Operations Research 29 (2004) 353-368).
type feasible struct {
	top   int64
	value []int64 // of the extents asked for
}

// mostParts bounds the functions that round to parts of a length, and mostCuts
// the lengths that others tell small pieces from large ones by.
const (
	mostParts = 12
	mostCuts  = 32
)

// feasibles lists the functions of a length that may tell the extents apart.
func feasibles(total int64, extents []int32) []feasible {
	var list []feasible
	add := func(top int64, of func(x int64) int64) {
		f := feasible{top: top, value: make([]int64, len(extents))}
		for i, x := range extents {
			f.value[i] = of(int64(x))
		}
		list = append(list, f)
	}
	add(total, func(x int64) int64 { return x })
	for n := int64(1); n <= mostParts; n++ {
		add(n*total, func(x int64) int64 { return inParts(x, total, n) })
	}
	for _, least := range cuts(total, extents) {
		add(total, func(x int64) int64 { return without(x, total, least) })
		if n := total / least; n > 0 {
			add(2*n, func(x int64) int64 { return stepped(x, total, least, n) })
		}
	}
	return list
}

// inParts rounds down to parts of which n + 1 make a length and n count for it:
// u(n) of the source.
func inParts(x, total, n int64) int64 {
	if x*(n+1)%total == 0 {
		return n * x
	}
	return x * (n + 1) / total * total
}

// without drops what is shorter than least, and takes what leaves less than
// that for the whole: U of the source.
func without(x, total, least int64) int64 {
	switch {
	case x > total-least:
		return total
	case x < least:
		return 0
	default:
		return x
	}
}

// stepped counts how often least goes into what is shorter than half, and into
// what longer pieces leave: phi of the source, doubled.
func stepped(x, total, least, n int64) int64 {
	switch {
	case 2*x > total:
		return 2 * (n - (total-x)/least)
	case 2*x == total:
		return n
	default:
		return 2 * (x / least)
	}
}

// cuts chooses among the extents, and what they leave, lengths up to half.
func cuts(total int64, extents []int32) []int64 {
	var list []int64
	for _, x := range extents {
		for _, l := range []int64{int64(x), total - int64(x), total - int64(x) + 1} {
			if l > 0 && 2*l <= total {
				list = append(list, l)
			}
		}
	}
	slices.Sort(list)
	list = slices.Compact(list)
	for len(list) > mostCuts { // every other one
		for i := range len(list) / 2 {
			list[i] = list[2*i+1]
		}
		list = list[:len(list)/2]
	}
	return list
}

// boundByExtents proves the greatest bound that two functions of a sheet's sides
// give: a large piece may count for more than its area, since nothing useful
// lies beside it. Of several sizes of sheet it takes the sides of a rectangle
// that holds them all.
func (pl *planner) boundByExtents() {
	var e extents
	for i := range pl.boards {
		b := &pl.boards[i]
		e.w, e.h = max(e.w, b.w), max(e.h, b.h)
		for _, f := range b.faces {
			e.kinds, e.across, e.up = append(e.kinds, f.kind), append(e.across, f.w), append(e.up, f.h)
		}
	}
	needs, most := pl.needs(), 0.0
	w := weights{value: make([]int64, len(pl.kinds))}
	best := weights{value: slices.Clone(w.value), top: 1} // where the boards hold none of the kinds
	across, up := feasibles(int64(e.w), e.across), feasibles(int64(e.h), e.up)
	for i := range across {
		for j := range up {
			e.price(&w, &across[i], &up[j])
			if ratio := float64(w.sum(needs)) / float64(w.top); ratio > most {
				best, most = weights{value: slices.Clone(w.value), top: w.top}, ratio
			}
		}
	}
	best.tops = slices.Repeat([]int64{best.top}, len(pl.boards))
	pl.rooms = append(pl.rooms, best)
	if pl.boundOf(&best) > pl.lower {
		pl.prove(best, "Nothing useful lies beside long and wide blanks: counted so, they are too large for fewer sheets.")
	}
}

// extents are the sides of a rectangle and of all faces of the kinds.
type extents struct {
	w, h       int32
	kinds      []int32
	across, up []int32
}

// price values every kind by the face that counts least.
func (e *extents) price(w *weights, across, up *feasible) {
	for k := range w.value {
		w.value[k] = -1
	}
	for i, k := range e.kinds {
		if v := across.value[i] * up.value[i]; w.value[k] < 0 || v < w.value[k] {
			w.value[k] = v
		}
	}
	w.top = across.top * up.top
}
