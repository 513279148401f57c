package assembly

import "creasefit/internal/fold"

// play makes moves that were found for other sizes, and checks every pose of
// them. It returns them as they are at these sizes, and the pose before each.
func (t *taking) play(known []move) (moves []move, from []state, ok bool) {
	for k := range known {
		m, ok := t.again(&known[k])
		if !ok {
			return nil, nil, false
		}
		from = append(from, t.keep())
		t.do(&m)
		moves = append(moves, m)
	}
	return moves, from, t.done()
}

// again makes a move of other sizes one of these.
func (t *taking) again(m *move) (move, bool) {
	if m.leaving != nil {
		l := t.leavesAgain(m.leaving)
		if l == nil {
			return move{}, false
		}
		return move{leaving: l}, true
	}
	if t.out {
		return t.opensAgain(m)
	}
	for _, place := range append([]fold.Vec{m.place}, t.everywhere()...) {
		t.shift(place)
		if again, ok := t.opensAgain(m); ok {
			again.place = place
			return again, true
		}
	}
	return move{}, false
}

// opensAgain opens the same creases, with the stock giving way as little as it
// must.
func (t *taking) opensAgain(m *move) (move, bool) {
	again := move{openings: make([]opening, len(m.openings))}
	for k := range m.openings {
		o := &again.openings[k]
		*o = opening{hinges: m.openings[k].hinges, near: m.openings[k].near, child: m.openings[k].child, path: m.openings[k].path}
		t.gather(o)
	}
	if t.frees(again.openings) {
		return again, true
	}
	long := 0.0
	for k := range again.openings {
		long = max(long, t.beyond(again.openings[k].hinges[0], again.openings[k].far))
	}
	amounts := t.flexes(long)
	if child := again.openings[0].child; child >= 0 {
		for _, part := range bows {
			amounts = append(amounts, part*t.bow(child))
		}
	}
	for _, flex := range amounts {
		for k := range again.openings {
			again.openings[k].flex = flex
		}
		if t.frees(again.openings) || t.newPaths(again.openings) {
			return again, true
		}
	}
	return move{}, false
}

// newPaths finds new ways for pairs of creases where those of other sizes are
// blocked.
func (t *taking) newPaths(openings []opening) bool {
	for k := range openings {
		if openings[k].child < 0 || !t.findPath(&openings[k]) {
			return false
		}
	}
	for k := range openings { // one after another, since their ways differ in length
		if !t.frees(openings[k : k+1]) {
			return false
		}
	}
	return true
}

// leavesAgain moves the same units the same way, as far as they must go here;
// nil if something is in the way.
func (t *taking) leavesAgain(known *leaving) *leaving {
	l := *known
	plates := t.plates(l.units)
	if t.isContents(l.units) {
		return t.emptiesAgain(&l, plates)
	}
	by, blockers := t.clears(plates, l.way)
	if len(blockers) > 0 {
		return nil
	}
	if l.by = by; len(l.nests)+len(l.locks) == 0 {
		l.by = max(by, aside)
	}
	return &l
}

// emptiesAgain takes the contents out the same way, from wherever in their room
// they can go, past a mouth that gives way as little as it must.
func (t *taking) emptiesAgain(l *leaving, plates []int) *leaving {
	contents := l.units[0]
	before := t.pose.Away[contents]
	defer func() {
		t.pose.Away[contents] = before
		t.pose.Lay(plates)
	}()
	defer func() { t.flex = 0 }()
	for _, t.flex = range t.flexes(t.rig.Room.Size.Length()) {
		for axis, way := range t.rig.Room.Ways {
			if d := way.Dot(l.way); d < 0.5 && d > -0.5 {
				continue
			}
			for _, first := range t.places(axis) {
				l.first, l.flex = first.Minus(t.offset), t.flex
				t.pose.Away[contents] = before.Shifted(l.first)
				t.pose.Lay(plates)
				by, blockers := t.clears(plates, l.way)
				if l.by = by; len(blockers) == 0 {
					return l
				}
			}
		}
	}
	return nil
}
