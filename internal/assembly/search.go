package assembly

import (
	"slices"

	"creasefit/internal/fold"
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
	t.turn(m.openings, before, 1)
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
		if unit := &t.rig.Units[u]; unit.Piece >= 0 && !slices.Contains(bodies, unit.Body) {
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
