package assembly

import (
	"slices"

	"creasefit/internal/fold"
)

// duo is a plate that moves and one that could be in its way, or moves otherwise.
// It is pressed where the two press into one another where the move begins: corners
// and spines, and what rounded sizes press together.
type duo struct {
	a, b    int
	pressed bool
}

// release is the part of a turn within which plates that are pressed together must
// come free.
const release = 0.25

// turns are the poses at which a turn is looked at, as parts of it: more of them
// where layers part.
var turns = append([]float64{0.01, 0.02, 0.035}, parts(18)...)

// parts are so many equal parts of one, up to it.
func parts(n int) []float64 {
	at := make([]float64, n)
	for k := range at {
		at[k] = float64(k+1) / float64(n)
	}
	return at
}

// mark marks what moves, and lists what could be in its way. The corners of panels
// that bend give way to one another.
func (t *taking) mark(moving []int) {
	clear(t.moving)
	for _, i := range moving {
		t.moving[i] = true
	}
	t.others = t.others[:0]
	unit := t.rig.Plates[moving[0]].Unit
	for u := range t.rig.Units {
		if t.group[u] != t.group[unit] || u == unit && t.rig.Bent(u) {
			continue
		}
		for _, i := range t.rig.Units[u].Plates {
			if !t.moving[i] {
				t.others = append(t.others, i)
			}
		}
	}
}

// frees reports whether several openings can turn at once, as far as they go,
// without a plate passing through another one by more than the slack and flex.
func (t *taking) frees(openings []opening) bool {
	var moving []int
	flex := 0.0
	for k := range openings {
		moving = append(moving, openings[k].far...)
		flex = max(flex, openings[k].flex)
	}
	t.mark(moving)
	t.pair(openings)
	if len(t.duos) == 0 {
		return true
	}
	slack := t.slack + flex
	before := t.keep()
	defer t.goBack(before)
	t.press(slack)
	for _, at := range t.looks(openings) {
		t.turn(openings, before, at)
		if t.meets(slack, at <= release) {
			return false
		}
	}
	return true
}

// pair lists the duos of openings: plates that the same openings move are as one.
// Openings that move plates of others stand after those.
func (t *taking) pair(openings []opening) {
	t.labels, t.movers, t.duos = t.labels[:0], t.movers[:0], t.duos[:0]
	for i := range t.rig.Plates {
		if !t.moving[i] {
			continue
		}
		var label uint64
		for k := range openings {
			if slices.Contains(openings[k].far, i) {
				label |= 1 << (k % 64)
			}
		}
		for _, j := range t.others {
			t.add(i, j)
		}
		for l, j := range t.movers {
			if t.labels[l] != label {
				t.add(i, j)
			}
		}
		t.movers, t.labels = append(t.movers, i), append(t.labels, label)
	}
}

// add adds a duo, unless the two are never in one another's way.
func (t *taking) add(i, j int) {
	if !t.rig.Free(i, j) {
		t.duos = append(t.duos, duo{a: i, b: j})
	}
}

// looks are the parts of a turn at which it is looked at.
func (t *taking) looks(openings []opening) []float64 {
	if path := openings[0].path; path != nil {
		return append([]float64{0}, parts(len(path)-1)...)
	}
	return turns
}

// press notes what is pressed together before a move.
func (t *taking) press(slack float64) {
	for k := range t.duos {
		d := &t.duos[k]
		d.pressed = t.pose.Meet(d.a, d.b, fold.Vec{}, slack)
	}
}

// meets reports whether something that moves meets something else.
func (t *taking) meets(slack float64, early bool) bool {
	for k := range t.duos {
		if d := &t.duos[k]; !(early && d.pressed) && t.pose.Meet(d.a, d.b, fold.Vec{}, slack) {
			return true
		}
	}
	return false
}

// turn turns openings so far: 0 as they were before, 1 open. Units that bend are
// worked out once for all of them.
func (t *taking) turn(openings []opening, before state, at float64) {
	bent := false
	for k := range openings {
		o := &openings[k]
		t.set(o, before, at)
		bent = bent || t.rig.Bent(t.rig.Hinges[o.hinges[0]].Unit)
	}
	if bent {
		t.pose.LayAll()
	}
	for k := range openings {
		if o := &openings[k]; k == len(openings)-1 || o.near || len(o.carried) > 0 || !slices.Contains(openings[k+1].far, o.far[0]) {
			t.lay(o, before) // else the next one lays it
		}
	}
}

// set says how far the creases of an opening are turned then.
func (t *taking) set(o *opening, before state, at float64) {
	if o.path != nil {
		place := at * float64(len(o.path)-1)
		k := min(int(place), len(o.path)-2)
		part := place - float64(k)
		a, b := o.path[k], o.path[k+1]
		t.pose.Turned[o.hinges[0]] = a[0] + part*(b[0]-a[0])
		t.pose.Turned[o.child] = a[1] + part*(b[1]-a[1])
	} else {
		for _, h := range o.hinges {
			t.pose.Turned[h] = before.turned[h] * (1 - at)
		}
	}
}

// lay works out where all is that turns with an opening of a unit that does not bend.
func (t *taking) lay(o *opening, before state) {
	if t.rig.Bent(t.rig.Hinges[o.hinges[0]].Unit) {
		return
	}
	for _, h := range o.hinges {
		t.pose.Lay(t.rig.Hinges[h].Far)
	}
	if o.near {
		t.holdFar(o, before)
	}
	for k, u := range o.carried {
		t.pose.Away[u] = before.away[u].Carried(o.grips[k].before, t.pose.Frame(o.grips[k].plate))
		t.pose.Lay(t.rig.Units[u].Plates)
	}
}

// holdFar moves the unit of an opening so that the far side of its crease stays
// where it was before.
func (t *taking) holdFar(o *opening, before state) {
	h := &t.rig.Hinges[o.hinges[0]]
	t.pose.Away[h.Unit] = before.away[h.Unit]
	t.pose.Lay(t.rig.Units[h.Unit].Plates)
	t.pose.Away[h.Unit] = before.away[h.Unit].Carried(t.pose.Frame(h.To), o.stays)
	t.pose.Lay(t.rig.Units[h.Unit].Plates)
}

// flexes are the amounts in millimetres, from none, that a panel of the stock may
// give way by: what bends it so little that it does not stay bent, half a per
// cent of strain at its surface. long is how far it reaches from its crease.
func (t *taking) flexes(long float64) []float64 {
	caliper := 2 * t.rig.Half
	most := min(1.5, long/6, long*long/(200*caliper))
	flexes := []float64{0}
	for _, f := range []float64{caliper / 4, caliper, most} {
		if f <= most && f > flexes[len(flexes)-1] {
			flexes = append(flexes, f)
		}
	}
	return flexes
}

// mostFlexes is how many amounts flexes has at most.
const mostFlexes = 4

// beyond returns how far plates reach from a crease.
func (t *taking) beyond(hinge int, plates []int) (long float64) {
	at, along := t.opens(hinge)
	for _, i := range plates {
		low, high := t.pose.Box(i)
		for k := range 8 {
			corner := low
			for axis := range corner {
				if k>>axis&1 == 1 {
					corner[axis] = high[axis]
				}
			}
			d := corner.Minus(at)
			long = max(long, d.Minus(along.Times(d.Dot(along))).Length())
		}
	}
	return long
}
