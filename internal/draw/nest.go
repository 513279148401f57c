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

// lay lays some rectangles on one area: every way in which each has been pushed down and
// to the left is tried, which is enough, for all others can be pushed into one of
// these. It returns nil if there is none, or if none was found with reasonable work.
func (n *nest) lay(set []int) []Spot {
	set = append(set[:len(set):len(set)], len(n.sizes)-1)
	key := make([]byte, 0, 2*len(set))
	for _, i := range set {
		key = append(key, byte(i>>8), byte(i))
	}
	if way, ok := n.known[string(key)]; ok {
		return way
	}
	l := laying{nest: n, set: set, spots: make([]Spot, len(set)), done: make([]bool, len(set)), left: n.nodes}
	l.spare = n.area.X*n.area.Y + 1e-6
	for _, i := range set {
		l.spare -= n.sizes[i].X * n.sizes[i].Y
	}
	var way []Spot
	if l.spare >= 0 && l.next([]shelf{{wide: n.area.X}}, len(set)) {
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
	done  []bool
	spare float64 // of the area: what may stay empty
	left  int     // nodes
}

// shelf is a level part of the upper edge of all that is laid, from the left.
type shelf struct{ x, wide, y float64 }

// next lays one more rectangle at the left end of the lowest shelf, or leaves that
// empty up to the lower one of its neighbours.
func (l *laying) next(shelves []shelf, more int) bool {
	if more == 0 {
		return true
	}
	if l.left--; l.left < 0 {
		return false
	}
	low := 0
	for i := range shelves {
		if shelves[i].y < shelves[low].y {
			low = i
		}
	}
	for k, i := range l.set {
		if l.done[k] || slices.ContainsFunc(l.set[:k], func(j int) bool { return l.sizes[j] == l.sizes[i] && !l.done[slices.Index(l.set, j)] }) {
			continue // laid, or like one that is tried already
		}
		for _, turned := range [...]bool{false, true} {
			if l.place(shelves, low, k, turned, more) {
				return true
			}
		}
	}
	return l.skip(shelves, low, more)
}

// place tries a rectangle at the left end of a shelf.
func (l *laying) place(shelves []shelf, low, k int, turned bool, more int) bool {
	size, at := l.sizes[l.set[k]], shelves[low]
	if turned {
		size = Point{size.Y, size.X}
	}
	if size.X > at.wide+1e-6 || at.y+size.Y > l.area.Y+1e-6 {
		return false
	}
	with := slices.Insert(slices.Clone(shelves), low, shelf{at.x, size.X, at.y + size.Y})
	with[low+1].x, with[low+1].wide = at.x+size.X, at.wide-size.X
	l.done[k], l.spots[k] = true, Spot{At: Point{at.x, at.y}, Turned: turned}
	if l.next(level(with), more-1) {
		return true
	}
	l.done[k] = false
	return false
}

// skip leaves a shelf empty up to the lower one of its neighbours.
func (l *laying) skip(shelves []shelf, low, more int) bool {
	up := math.Inf(1)
	for _, i := range [...]int{low - 1, low + 1} {
		if i >= 0 && i < len(shelves) {
			up = min(up, shelves[i].y)
		}
	}
	waste := shelves[low].wide * (up - shelves[low].y)
	if !(waste <= l.spare) {
		return false
	}
	with := slices.Clone(shelves)
	with[low].y = up
	l.spare -= waste
	defer func() { l.spare += waste }()
	return l.next(level(with), more)
}

// level joins shelves of one height and leaves out those without a width.
func level(shelves []shelf) []shelf {
	kept := shelves[:0]
	for _, s := range shelves {
		switch last := len(kept) - 1; {
		case s.wide < 1e-6:
		case last >= 0 && math.Abs(kept[last].y-s.y) < 1e-6:
			kept[last].wide += s.wide
		default:
			kept = append(kept, s)
		}
	}
	return kept
}
