package draw

import (
	"cmp"
	"math"
	"slices"
)

// Spot is where a rectangle lies on one of several equal areas: its lower left
// corner, and whether it is turned by a quarter to the left.
type Spot struct {
	Area   int
	At     Point
	Turned bool
}

// nodes bounds the work of looking for a way to lay rectangles on one area,
// and most is how many rectangles are distributed by a complete search.
const (
	nodes = 40_000
	few   = 1_500 // where there are more than most rectangles
	most  = 10
)

// Nest lays rectangles on as few equal areas as they fit, each with its sides
// along the area's, and on every area one more of a size of its own, which may
// be empty: where that lies is told by area. It reports false if one of the
// rectangles fits on no area. Up to ten
// rectangles are distributed by a complete search, more by the first area that
// each fits on, the largest first.
func Nest(sizes []Point, area, each Point) (spots, more []Spot, ok bool) {
	n := nest{sizes: append(sizes[:len(sizes):len(sizes)], each), area: area, order: make([]int, len(sizes)), known: map[string][]Spot{}, nodes: nodes}
	if len(sizes) > most {
		n.nodes = few
	}
	total := 0.0
	for i, s := range sizes {
		n.order[i] = i
		total += s.X * s.Y
		if n.lay([]int{i}) == nil {
			return nil, nil, false
		}
	}
	slices.SortStableFunc(n.order, func(a, b int) int {
		return cmp.Compare(sizes[b].X*sizes[b].Y, sizes[a].X*sizes[a].Y)
	})
	least := int(math.Ceil(total/(area.X*area.Y-each.X*each.Y) - 1e-9))
	for areas := max(1, least); len(sizes) <= most && areas < len(sizes); areas++ {
		if n.share(0, make([][]int, areas)) {
			break
		}
	}
	if n.sets == nil {
		for _, i := range n.order {
			n.first(i)
		}
	}
	spots, more = n.spots()
	return spots, more, true
}

// nest distributes rectangles over areas.
type nest struct {
	sizes []Point // the last one lies on every area
	area  Point
	order []int // the largest first
	nodes int
	sets  [][]int
	known map[string][]Spot // ways to lay what was tried on one area, nil for none
}

// share distributes the rectangles from the k-th on; empty areas are alike.
func (n *nest) share(k int, sets [][]int) bool {
	if k == len(n.order) {
		n.sets = sets
		return true
	}
	for a := range sets {
		before := sets[a]
		with := append(before[:len(before):len(before)], n.order[k])
		if n.lay(with) != nil {
			sets[a] = with
			if n.share(k+1, sets) {
				return true
			}
			sets[a] = before
		}
		if len(before) == 0 {
			break
		}
	}
	return false
}

// first puts a rectangle on the first area with room for it.
func (n *nest) first(i int) {
	for a, set := range n.sets {
		if with := append(set[:len(set):len(set)], i); n.lay(with) != nil {
			n.sets[a] = with
			return
		}
	}
	n.sets = append(n.sets, []int{i})
}

// spots collects where everything lies.
func (n *nest) spots() (all, more []Spot) {
	last := len(n.sizes) - 1
	all = make([]Spot, last)
	for a, set := range n.sets {
		for k, s := range n.lay(set) {
			if s.Area = a; k == len(set) {
				more = append(more, s)
			} else {
				all[set[k]] = s
			}
		}
	}
	return all, more
}

// lay lays some rectangles on one area: every way in which each touches the
// area's edges or others to its left and below is tried, which is enough, for
// all others can be pushed together into one of these. It returns nil if there
// is none, or if none was found with reasonable work.
func (n *nest) lay(set []int) []Spot {
	set = append(set[:len(set):len(set)], len(n.sizes)-1)
	key := make([]byte, 0, 2*len(set))
	for _, i := range set {
		key = append(key, byte(i>>8), byte(i))
	}
	if way, ok := n.known[string(key)]; ok {
		return way
	}
	l := laying{nest: n, set: set, spots: make([]Spot, len(set)), boxes: make([]Box, 0, len(set)), done: make([]bool, len(set)), left: n.nodes}
	room := n.area.X*n.area.Y + 1e-6
	for _, i := range set {
		room -= n.sizes[i].X * n.sizes[i].Y
	}
	var way []Spot
	if room >= 0 && l.next() {
		way = l.spots
	}
	n.known[string(key)] = way
	return way
}

// laying is one area that is being filled.
type laying struct {
	*nest
	set   []int
	spots []Spot
	boxes []Box
	done  []bool
	left  int // nodes
}

// next lays one more rectangle, in every place and both ways round.
func (l *laying) next() bool {
	if len(l.boxes) == len(l.set) {
		return true
	}
	for k, i := range l.set {
		if l.done[k] || slices.ContainsFunc(l.set[:k], func(j int) bool { return l.sizes[j] == l.sizes[i] && !l.done[slices.Index(l.set, j)] }) {
			continue // laid, or like one that is tried already
		}
		for _, turned := range [...]bool{false, true} {
			size := l.sizes[i]
			if turned {
				size = Point{size.Y, size.X}
			}
			if l.place(k, size, turned) {
				return true
			}
		}
		if l.left < 0 {
			return false
		}
	}
	return false
}

// place tries every corner that the laid rectangles leave.
func (l *laying) place(k int, size Point, turned bool) bool {
	for y := -1; y < len(l.boxes); y++ {
		for x := -1; x < len(l.boxes); x++ {
			var low Point
			if x >= 0 {
				low.X = l.boxes[x].High.X
			}
			if y >= 0 {
				low.Y = l.boxes[y].High.Y
			}
			if l.left--; l.left < 0 {
				return false
			}
			box := Box{low, low.add(size)}
			if !l.free(box) {
				continue
			}
			l.done[k], l.spots[k], l.boxes = true, Spot{At: low, Turned: turned}, append(l.boxes, box)
			if l.next() {
				return true
			}
			l.done[k], l.boxes = false, l.boxes[:len(l.boxes)-1]
		}
	}
	return false
}

// free reports whether a box lies on the area and on no other.
func (l *laying) free(b Box) bool {
	if b.High.X > l.area.X+1e-6 || b.High.Y > l.area.Y+1e-6 {
		return false
	}
	inner := b.grow(-1e-6)
	return !slices.ContainsFunc(l.boxes, inner.Meets)
}
