package assembly

import (
	"math"
	"slices"
)

// over is how far beyond its angle the child of a pair may be bent meanwhile.
const over = 1.5

// mostPoses bounds the search for the way of one pair, and mostTried that for all
// pairs while one thing is taken apart.
const (
	mostPoses = 4000
	mostTried = 16000
)

// corridor finds how a crease opens together with one beyond it, such as a lid
// with its tuck: a way through the two angles, in steps of about a degree. The
// panel beyond may bow meanwhile by a part of the most that it can.
func (t *taking) corridor(o *opening, bowed float64) bool {
	if o.near || len(o.parted) > 0 || len(o.hinges) > 1 {
		return false
	}
	flex := o.flex
	for c := range t.rig.Hinges {
		if t.rig.Hinges[c].From == t.rig.Hinges[o.hinges[0]].To && t.folded(c) {
			o.child, o.flex = c, max(flex, bowed*t.bow(c))
			if t.findPath(o) {
				return true
			}
		}
	}
	o.child, o.path, o.flex = -1, nil, flex
	return false
}

// bows are the parts of the most that a panel can bow which are tried.
var bows = [...]float64{0.25, 0.5, 1}

// bow returns how far in millimetres what hangs on a crease can bow between its
// ends as a tuck does that is coaxed past the contents: what strains its surface
// by half a per cent, so that it does not stay bent, and a sixth of its length.
func (t *taking) bow(child int) float64 {
	long := t.beyond(child, t.rig.Hinges[child].Far)
	return min(long/6, long*long/(800*2*t.rig.Half))
}

// node is a pair of angles in steps from closed.
type node struct{ turn, child int }

// walk is the search for a path.
type walk struct {
	t     *taking
	o     *opening
	size  node // steps of the whole turns
	from  map[node]node
	slack float64
}

// findPath looks for a path to the open crease, always onwards first. When it is
// open, what hangs on it is laid flat too.
func (t *taking) findPath(o *opening) bool {
	h, c := &t.rig.Hinges[o.hinges[0]], &t.rig.Hinges[o.child]
	w := walk{t: t, o: o, size: node{int(math.Ceil(math.Abs(h.Degrees))), int(math.Ceil(math.Abs(c.Degrees)))}, from: map[node]node{}, slack: t.slack + o.flex}
	before := t.keep()
	defer t.goBack(before)
	t.mark(o.far)
	t.pair([]opening{*o, {far: c.Far}})
	t.press(w.slack)
	end, ok := w.search()
	if !ok {
		return false
	}
	path := [][2]float64{{0, 0}}
	for n := end; ; n = w.from[n] {
		path = append(path, w.fractions(n))
		if n == (node{}) {
			break
		}
	}
	slices.Reverse(path)
	o.path = path
	return true
}

// fractions are how far both creases are turned at a node.
func (w *walk) fractions(n node) [2]float64 {
	return [2]float64{1 - float64(n.turn)/float64(w.size.turn), 1 - float64(n.child)/float64(w.size.child)}
}

// search goes from node to node, deepest first.
func (w *walk) search() (end node, ok bool) {
	stack := []node{{}}
	seen := map[node]bool{{}: true}
	low := -int(math.Round((over - 1) * float64(w.size.child)))
	for poses := 0; len(stack) > 0 && poses < mostPoses && w.t.tried < mostTried; {
		n := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if n != (node{}) {
			poses, w.t.tried = poses+1, w.t.tried+1
			if !w.free(n) {
				continue
			}
		}
		if n.turn == w.size.turn {
			return n, true
		}
		for _, step := range [...]node{{0, 1}, {0, -1}, {1, 1}, {1, -1}, {1, 0}} { // the last is tried first
			next := node{n.turn + step.turn, n.child + step.child}
			if seen[next] || next.child < low || next.child > w.size.child {
				continue
			}
			seen[next], w.from[next] = true, n
			stack = append(stack, next)
		}
	}
	return node{}, false
}

// free reports whether nothing is in the way at a node.
func (w *walk) free(n node) bool {
	f := w.fractions(n)
	t, o := w.t, w.o
	t.pose.Turned[o.hinges[0]], t.pose.Turned[o.child] = f[0], f[1]
	t.pose.Lay(t.rig.Hinges[o.hinges[0]].Far)
	return !t.meets(w.slack, float64(n.turn) <= release*float64(w.size.turn))
}
