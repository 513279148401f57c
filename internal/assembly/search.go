package assembly

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// move is one move while a thing is taken apart: creases that open at once, or
// what is moved away as a whole.
type move struct {
	openings []opening
	leaving  *leaving
	place    fold.Vec // of the contents meanwhile, from where they were at first
}

// search takes the thing apart, move by move. It is false if something is left
// that no move is found for.
func (t *taking) search() (moves []move, ok bool) {
	for {
		m, ok := t.next()
		if !ok {
			return moves, t.done()
		}
		t.do(&m)
		moves = append(moves, m)
	}
}

// done reports whether everything lies flat and by itself.
func (t *taking) done() bool {
	for h := range t.rig.Hinges {
		if t.folded(h) {
			return false
		}
	}
	return t.out && !slices.ContainsFunc(t.links, func(l link) bool { return l.live }) &&
		!slices.Contains(t.nests, false) && !slices.Contains(t.locks, false)
}

// next finds the next move: pieces out of one another, then the contents and what
// has to be opened for them, then piece by piece what is left.
func (t *taking) next() (move, bool) {
	if m, ok := t.parts(); ok {
		return m, true
	}
	if !t.out {
		if m, ok := t.empties(); ok {
			return m, true
		}
	}
	for _, body := range t.outermost() {
		if m, ok := t.open(body); ok {
			return m, true
		}
	}
	return move{}, false
}

// do makes a move.
func (t *taking) do(m *move) {
	before := t.keep()
	for k := range m.openings {
		t.turn(&m.openings[k], before, 1)
	}
	for k := range m.openings {
		t.part(m.openings[k].parted)
	}
	l := m.leaving
	if l == nil {
		return
	}
	t.travel(l, before, 1)
	t.part(l.parted)
	next := slices.Max(t.group) + 1
	for _, u := range l.units {
		if t.group[u] = next; l.each {
			next++
		}
	}
	t.out = t.out || t.isContents(l.units)
	for _, k := range l.nests {
		t.nests[k] = true
	}
	for _, k := range l.locks {
		t.locks[k] = true
	}
}

func (t *taking) part(links []int) {
	for _, k := range links {
		t.links[k].live = false
	}
}

// travel moves units on their way: 0 as they were before, 1 away.
func (t *taking) travel(l *leaving, before state, at float64) {
	for _, u := range l.units {
		t.pose.Away[u] = before.away[u].Shifted(l.first.Times(min(1, 4*at)).Plus(l.way.Times(l.by * at)))
		t.pose.Lay(t.rig.Units[u].Plates)
	}
}

// parts moves a piece out of another one, or off it.
func (t *taking) parts() (move, bool) {
	for k := len(t.p.Nests) - 1; k >= 0; k-- {
		if n := &t.p.Nests[k]; !t.nests[k] {
			l := t.shortest(t.mover(n), math.Inf(1))
			if l != nil {
				l.nests = []int{k}
				return move{leaving: l}, true
			}
		}
	}
	for k := range t.p.Locks {
		if !t.locks[k] {
			if l := t.unlock(&t.p.Locks[k]); l != nil {
				l.locks = []int{k}
				return move{leaving: l}, true
			}
		}
	}
	for u := len(t.rig.Units) - 1; u > 0; u-- { // flat pieces that lie on others
		if unit := &t.rig.Units[u]; unit.Piece >= 0 && unit.Body == u && t.group[u] == t.group[0] && !t.nested(unit.Piece) && len(unit.Plates) == 1 {
			if l := t.lifted(u); l != nil {
				return move{leaving: l}, true
			}
		}
	}
	return move{}, false
}

// nested reports whether a piece goes into another one or crosses it.
func (t *taking) nested(piece int) bool {
	return slices.ContainsFunc(t.p.Nests, func(n pattern.Nesting) bool { return n.Inner == piece || n.Outer == piece }) ||
		slices.ContainsFunc(t.p.Locks, func(l pattern.Lock) bool { return l.A == piece || l.B == piece })
}

// unitOf returns the first copy of a piece.
func (t *taking) unitOf(piece int) int {
	return slices.IndexFunc(t.rig.Units, func(u fold.Unit) bool { return u.Piece == piece })
}

// mover returns the units that move where pieces are nested: a lid that is turned
// over comes off, else the inner piece is drawn out with what is in it.
func (t *taking) mover(n *pattern.Nesting) []int {
	if slices.ContainsFunc(t.p.Places, func(at pattern.Place) bool { return at.Piece == n.Outer && at.Lie == pattern.FaceDown }) {
		return t.body(t.unitOf(n.Outer))
	}
	units := t.body(t.unitOf(n.Inner))
	if !t.out && holds(units, t.unitOf(t.p.Cavity.Piece)) {
		units = append(units, len(t.rig.Units)-1)
	}
	return units
}

// ways are the directions in which pieces are moved, along the axes of a plate.
func (t *taking) ways(plate int) []fold.Vec {
	f := t.pose.Frame(plate)
	return []fold.Vec{f.Z, f.Z.Times(-1), f.Y, f.Y.Times(-1), f.X, f.X.Times(-1)}
}

// shortest finds the shortest way for units to be clear of all else, shorter than
// least; nil if there is none.
func (t *taking) shortest(units []int, least float64) (best *leaving) {
	plates := t.plates(units)
	for _, way := range t.ways(t.rig.Units[0].Root) {
		if by, blockers := t.clears(plates, way); len(blockers) == 0 && by < least-1e-6 {
			least, best = by, &leaving{units: units, way: way, by: by}
		}
	}
	return best
}

// unlock draws the pieces that cross others out of their slots, upwards if both
// ways are as short: what is slit from below comes down on what is slit from above.
func (t *taking) unlock(lock *pattern.Lock) (best *leaving) {
	for _, piece := range [2]int{lock.A, lock.B} {
		var units []int
		for u := range t.rig.Units {
			if t.rig.Units[u].Piece == piece {
				units = append(units, u)
			}
		}
		plates := t.plates(units)
		for _, way := range []fold.Vec{{0, 0, 1}, {0, 0, -1}} {
			by, blockers := t.clears(plates, way)
			better := best == nil || by < best.by-1e-6 || by < best.by+1e-6 && way[2] > best.way[2]
			if len(blockers) == 0 && better {
				best = &leaving{units: units, way: way, by: by, each: true}
			}
		}
	}
	return best
}

// aside is how far in millimetres a piece is lifted at least, so that it is seen apart.
const aside = 10

// lifted takes a flat piece off what it lies on or is glued to; nil if it is in
// the way.
func (t *taking) lifted(unit int) *leaving {
	plates := t.plates([]int{unit})
	f := t.pose.Frame(t.rig.Units[unit].Root)
	var parted []int
	for k := range t.links {
		if _, _, ok := t.links[k].leads(t.rig, unit); ok {
			parted = append(parted, k)
			if math.Abs(t.pose.Normal(t.links[k].own).Dot(f.Z)) < 1-1e-6 || math.Abs(t.pose.Normal(t.links[k].other).Dot(f.Z)) < 1-1e-6 {
				return nil // it would slide
			}
		}
	}
	for _, way := range []fold.Vec{f.Z, f.Z.Times(-1)} {
		if by, blockers := t.clears(plates, way); len(blockers) == 0 {
			return &leaving{units: []int{unit}, way: way, by: max(by, aside), parted: parted}
		}
	}
	return nil
}

// empties takes the contents out, or opens what is in their way: joints round them
// first, then the fewest creases. The contents may be anywhere in their room.
func (t *taking) empties() (move, bool) {
	if m, ok := t.round(t.joined(), true); ok {
		return m, true
	}
	e := t.exits(len(t.rig.Units) - 1)
	if len(e.opens) == 0 && e.cost < 0.5 {
		return move{leaving: &e.leaving}, true
	}
	var wanted []opening
	for _, h := range e.opens {
		if o, ok := t.opening(h); ok {
			wanted = append(wanted, o)
		}
	}
	for _, flex := range [2]bool{false, true} {
		for _, place := range t.everywhere() {
			t.shift(place)
			if m, ok := t.round(wanted, flex); ok {
				return m, true
			}
		}
	}
	return move{}, false
}

// everywhere are the places of the contents that are tried: as they stand, in the
// middle of their room, and to each of its sides.
func (t *taking) everywhere() []fold.Vec {
	room := &t.rig.Room
	places := []fold.Vec{t.offset, {}}
	for k, way := range room.Ways {
		places[1] = places[1].Plus(way.Times((room.Play[k][0] + room.Play[k][1]) / 2))
		places = append(places, way.Times(room.Play[k][0]), way.Times(room.Play[k][1]))
	}
	return places
}

// shift moves the contents within their room.
func (t *taking) shift(to fold.Vec) {
	unit := len(t.rig.Units) - 1
	t.pose.Away[unit] = t.pose.Away[unit].Shifted(to.Minus(t.offset))
	t.pose.Lay(t.rig.Units[unit].Plates)
	t.offset = to
}

// joined lists the openings that part joints and nothing that is glued: of more
// than the panels that hook into one another, since these cannot be held alone.
func (t *taking) joined() (openings []opening) {
	hooked := make([]bool, len(t.rig.Plates))
	for k := range t.links {
		if l := &t.links[k]; l.live && l.glue == nil {
			hooked[l.own], hooked[l.other] = true, true
		}
	}
	for h := range t.rig.Hinges {
		if !t.folded(h) || hooked[t.rig.Hinges[h].To] {
			continue
		}
		o, ok := t.opening(h)
		glued := func(k int) bool { return t.links[k].glue != nil }
		if ok && len(o.parted) > 0 && !slices.ContainsFunc(o.parted, glued) {
			openings = append(openings, o)
		}
	}
	return openings
}

// outermost lists the bodies, by their first units, those first that go over others.
func (t *taking) outermost() (bodies []int) {
	for _, n := range t.p.Nests {
		bodies = append(bodies, t.rig.Units[t.unitOf(n.Outer)].Body)
	}
	for u := range slices.Backward(t.rig.Units) {
		if unit := &t.rig.Units[u]; unit.Piece >= 0 && !holds(bodies, unit.Body) {
			bodies = append(bodies, unit.Body)
		}
	}
	return bodies
}

// open opens what can be opened of a body.
func (t *taking) open(body int) (move, bool) {
	var openings []opening
	for h := range t.rig.Hinges {
		if t.rig.Units[t.rig.Hinges[h].Unit].Body == body && t.folded(h) {
			if o, ok := t.opening(h); ok {
				openings = append(openings, o)
			}
			if o, ok := t.nearOpening(h); ok {
				openings = append(openings, o)
			}
		}
	}
	for c := loose; c <= hem; c++ {
		of := slices.DeleteFunc(slices.Clone(openings), func(o opening) bool { return o.class != c })
		if m, ok := t.round(of, true); ok {
			return m, true
		}
		if c == loose {
			if m, ok := t.liftOff(body, false); ok {
				return m, true
			}
		}
	}
	return t.liftOff(body, true)
}

// liftOff takes a piece off the others of a body: one without creases, or one that
// lies flat as all the others.
func (t *taking) liftOff(body int, flat bool) (move, bool) {
	for _, u := range slices.Backward(t.body(body)) {
		if u == body || t.group[u] != t.group[body] || (len(t.rig.Units[u].Plates) > 1) != flat {
			continue
		}
		if l := t.lifted(u); l != nil {
			return move{leaving: l}, true
		}
	}
	return move{}, false
}

// round chooses the opening that moves least, with all that are like it: alone,
// with a crease beyond it, or with the stock giving way. What is not glued opens
// with what hangs on it.
func (t *taking) round(openings []opening, flex bool) (move, bool) {
	slices.SortStableFunc(openings, func(a, b opening) int { return cmp.Compare(len(a.far), len(b.far)) })
	o, ok := t.first(openings, flex)
	if !ok {
		return move{}, false
	}
	all := []opening{o}
	for _, other := range openings {
		if !t.like(&o, &other) || !other.settle(t, o.child >= 0, o.flex) {
			continue
		}
		if more := append(all[:len(all):len(all)], other); t.frees(more, true) {
			all = more
		}
	}
	slices.SortStableFunc(all, func(a, b opening) int { return cmp.Compare(len(b.far), len(a.far)) })
	return move{openings: all, place: t.offset}, true
}

// first returns the first opening that is free; if the stock may give way, as
// little as it must.
func (t *taking) first(openings []opening, flex bool) (opening, bool) {
	for _, o := range openings {
		if t.frees([]opening{o}, true) {
			return o, true
		}
	}
	for _, o := range openings {
		if len(o.parted) == 0 && len(o.hinges) == 1 && t.corridor(&o) {
			return o, true
		}
	}
	for k := 1; flex && k < mostFlexes; k++ {
		for _, o := range openings {
			flexes := t.flexes(t.reach(&o))
			if k >= len(flexes) {
				continue
			}
			o.flex = flexes[k]
			if t.frees([]opening{o}, true) || len(o.parted) == 0 && len(o.hinges) == 1 && t.corridor(&o) {
				return o, true
			}
		}
	}
	return opening{}, false
}

// settle makes an opening free the way that another one like it is.
func (o *opening) settle(t *taking, pair bool, flex float64) bool {
	if o.flex = flex; pair {
		return t.corridor(o)
	}
	return t.frees([]opening{*o}, true)
}

// like reports whether two openings are told as one.
func (t *taking) like(a, b *opening) bool {
	g, h := &t.rig.Hinges[a.hinges[0]], &t.rig.Hinges[b.hinges[0]]
	if a.hinges[0] == b.hinges[0] || a.near || b.near || a.class != b.class || math.Abs(math.Abs(g.Degrees)-math.Abs(h.Degrees)) > 1e-6 {
		return false
	}
	apart := disjoint(a, b)
	return apart && len(a.far) == len(b.far) && len(a.parted) == len(b.parted) ||
		a.child < 0 && len(a.parted) == 0 && len(b.parted) == 0 && len(a.carried) == 0 && len(b.carried) == 0
}

// disjoint reports whether two openings move nothing together.
func disjoint(a, b *opening) bool {
	return !slices.ContainsFunc(a.far, func(i int) bool { return holds(b.far, i) })
}
