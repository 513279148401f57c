package assembly

import (
	"math"
	"slices"

	"creasefit/internal/fold"
)

// opening is a crease that may be opened, with all that turns alike with it.
type opening struct {
	hinges  []int      // creases of pieces that are glued together, on one line
	near    bool       // the root's side turns, since the other is glued to what stays
	stays   fold.Frame // where the far side is then
	child   int        // a hinge beyond it that is turned with it, -1 for none
	path    [][2]float64
	far     []int // the plates that turn
	carried []int // units that are carried along
	grips   []grip
	parted  []int // links
	class   class
	flex    float64
}

// grip is the plate that carries a unit along, and where it was before.
type grip struct {
	plate  int
	before fold.Frame
}

// class is how early a crease is opened when a thing is taken apart.
type class uint8

// The classes. What is not glued opens first. Of what is glued, that opens first
// whose area is set down from outside, where a finger can press it.
const (
	loose class = iota
	setDown
	setUp
	hem // a panel that is glued to the one beside it
)

// folded reports whether a hinge is not flat.
func (t *taking) folded(h int) bool {
	return t.pose.Turned[h] > 0 && math.Abs(t.rig.Hinges[h].Degrees) > 1e-6
}

// opening returns what opens with a hinge; it is false where a glued area would
// slide off instead of lifting: glue is set down face to face.
func (t *taking) opening(h int) (opening, bool) {
	o := opening{hinges: []int{h}, child: -1}
	clear(t.moving)
	t.take(&o, h)
	for again := true; again; {
		again = t.takeAlike(&o)
	}
	return o, t.gather(&o)
}

// nearOpening returns what opens with a hinge of a piece whose far side is glued to
// a piece that stays: the rest of its piece turns.
func (t *taking) nearOpening(h int) (opening, bool) {
	o := opening{hinges: []int{h}, near: true, child: -1}
	unit := t.rig.Hinges[h].Unit
	if unit == t.rig.Units[unit].Body || t.rig.Bent(unit) {
		return o, false
	}
	for k := range t.links {
		if from, _, ok := t.links[k].leads(t.rig, unit); ok && slices.Contains(t.rig.Hinges[h].Far, from) {
			return o, t.gather(&o)
		}
	}
	return o, false
}

// gather works out what moves with the creases of an opening, and what they
// part; it is false where a glued area would slide.
func (t *taking) gather(o *opening) bool {
	o.far, o.stays = o.far[:0], t.pose.Frame(t.rig.Hinges[o.hinges[0]].To)
	clear(t.moving)
	for _, h := range o.hinges {
		t.take(o, h)
	}
	t.carry(o)
	at, along := t.opens(o.hinges[0])
	if o.near {
		along = along.Times(-1)
	}
	for k := range t.links {
		l := &t.links[k]
		if !l.crosses(t.moving) {
			continue
		}
		o.parted = append(o.parted, k)
		if l.glue != nil && !t.lifts(l, at, along) {
			return false
		}
		o.class = max(o.class, t.classOf(o, l))
	}
	return true
}

// take marks the plates that turn about a hinge.
func (t *taking) take(o *opening, h int) {
	turn := t.rig.Hinges[h].Far
	if o.near {
		unit := t.rig.Units[t.rig.Hinges[h].Unit].Plates
		turn = slices.DeleteFunc(slices.Clone(unit), func(i int) bool { return slices.Contains(t.rig.Hinges[h].Far, i) })
	}
	for _, i := range turn {
		if !t.moving[i] {
			t.moving[i], o.far = true, append(o.far, i)
		}
	}
}

// takeAlike takes a crease of another piece, or of the same, on the same line
// whose far side is glued to what turns.
func (t *taking) takeAlike(o *opening) bool {
	for k := range t.links {
		l := &t.links[k]
		if !l.crosses(t.moving) || l.glue == nil {
			continue
		}
		still := l.own
		if t.moving[still] {
			still = l.other
		}
		for h := range t.rig.Hinges {
			if t.folded(h) && slices.Contains(t.rig.Hinges[h].Far, still) && !t.moving[t.rig.Hinges[h].From] && t.alike(o.hinges[0], h) {
				o.hinges = append(o.hinges, h)
				t.take(o, h)
				return true
			}
		}
	}
	return false
}

// alike reports whether two hinges lie on one line, give or take the layers that
// lie on one another there, and open the same way.
func (t *taking) alike(g, h int) bool {
	at, along := t.opens(g)
	other, same := t.opens(h)
	if along.Dot(same) < 1-1e-9 {
		return false
	}
	d := other.Minus(at)
	off := d.Minus(along.Times(d.Dot(along)))
	return off.Length() < 6*t.rig.Half
}

// opens returns the axis of a hinge such that its plates open right-handed.
func (t *taking) opens(h int) (at, along fold.Vec) {
	at, along = t.pose.Axis(h)
	if t.rig.Hinges[h].Degrees > 0 {
		along = along.Times(-1)
	}
	return at, along
}

// carry finds the units that hang on what turns alone, and takes them along.
func (t *taking) carry(o *opening) {
	for u := range t.rig.Units {
		if slices.Contains(o.carried, u) {
			continue
		}
		by, hangs := t.hangsOn(u, o)
		if !hangs {
			continue
		}
		o.carried, o.grips = append(o.carried, u), append(o.grips, grip{by, t.pose.Frame(by)})
		for _, i := range t.rig.Units[u].Plates {
			t.moving[i], o.far = true, append(o.far, i)
		}
	}
}

// hangsOn returns a plate that turns which a unit without a turning crease is
// linked to; it is false if the unit is linked, by itself or through others, to
// plates that do not turn.
func (t *taking) hangsOn(unit int, o *opening) (by int, hangs bool) {
	if t.turnsIn(unit, o) {
		return -1, false
	}
	by = -1
	seen := []int{unit}
	for k := 0; k < len(seen); k++ {
		for l := range t.links {
			from, to, ok := t.links[l].leads(t.rig, seen[k])
			if !ok {
				continue
			}
			next := t.rig.Plates[to].Unit
			switch {
			case t.moving[to]:
				if seen[k] == unit && !t.moving[from] {
					by = to
				}
			case t.turnsIn(next, o) || next == t.rig.Units[unit].Body:
				return -1, false
			case !slices.Contains(seen, next):
				seen = append(seen, next)
			}
		}
	}
	return by, by >= 0
}

// leads returns the ends of a live link that leads out of a unit.
func (l *link) leads(rig *fold.Rig, unit int) (from, to int, ok bool) {
	a, b := rig.Plates[l.own].Unit, rig.Plates[l.other].Unit
	switch {
	case !l.live || a == b:
		return 0, 0, false
	case a == unit:
		return l.own, l.other, true
	case b == unit:
		return l.other, l.own, true
	}
	return 0, 0, false
}

// turnsIn reports whether one of the turning creases is the unit's own.
func (t *taking) turnsIn(unit int, o *opening) bool {
	return slices.ContainsFunc(o.hinges, func(h int) bool { return t.rig.Hinges[h].Unit == unit })
}

// lifts reports whether a glued area lifts off its partner when it begins to turn:
// at least a third of its way is square to it.
func (t *taking) lifts(l *link, at, along fold.Vec) bool {
	arm := t.middle(l).Minus(at)
	way := along.Cross(arm)
	return math.Abs(way.Dot(t.pose.Frame(l.own).Z))*3 >= way.Length()
}

// middle returns the middle of a glue area.
func (t *taking) middle(l *link) (mid fold.Vec) {
	for _, v := range l.glue.Area {
		mid = mid.Plus(t.pose.Point(l.own, v.Point).Times(1 / float64(len(l.glue.Area))))
	}
	return mid
}

// classOf says how a crease opens that parts a link.
func (t *taking) classOf(o *opening, l *link) class {
	if l.glue == nil {
		return loose
	}
	h := &t.rig.Hinges[o.hinges[0]]
	if len(o.far) <= 2 && (l.own == h.To && l.other == h.From || l.own == h.From && l.other == h.To) {
		return hem
	}
	face := l.glue.ToFace
	if t.moving[l.own] {
		face = l.glue.Face
	}
	if face == 0 { // the inside of what turns is set down
		return setDown
	}
	return setUp
}
