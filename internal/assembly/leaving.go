package assembly

import (
	"math"
	"slices"

	"creasefit/internal/fold"
)

// leaving is how the contents or pieces are moved away as wholes.
type leaving struct {
	units  []int
	each   bool     // every unit is then by itself
	first  fold.Vec // a shift to where the way begins, within the room of the contents
	way    fold.Vec // a unit direction
	by     float64  // mm
	flex   float64  // mm by which the stock must give way
	parted []int    // links
	locks  []int    // of the pattern
	nests  []int    // of the pattern
}

// plates lists the plates of units, and marks them as what moves.
func (t *taking) plates(units []int) (plates []int) {
	for _, u := range units {
		plates = append(plates, t.rig.Units[u].Plates...)
	}
	t.mark(plates)
	return plates
}

// clears says how far units must go one way to be clear of all else, and which
// plates are in their way.
func (t *taking) clears(plates []int, way fold.Vec) (by float64, blockers []int) {
	ahead, behind := math.Inf(-1), math.Inf(1)
	for _, j := range t.others {
		ahead = max(ahead, t.pose.Reach(j, way))
	}
	for _, i := range plates {
		behind = min(behind, -t.pose.Reach(i, way.Times(-1)))
	}
	if by = ahead - behind; by <= 0 {
		return 0, nil
	}
	whole := way.Times(by)
	hit := make([]bool, len(t.rig.Plates))
	for _, i := range plates {
		for _, j := range t.others {
			if !hit[j] && t.pose.Meet(i, j, whole, t.slack+t.flex) {
				hit[j], blockers = true, append(blockers, j)
			}
		}
	}
	return by, blockers
}

// exit is a way out for the contents: what has to be opened for it.
type exit struct {
	leaving
	opens []int // hinges
	cost  float64
}

const (
	gluedCost  = 100  // of opening what is glued
	fixedCost  = 1e4  // of what cannot be opened
	topWeight  = 1e-3 // the top of the blank, where all else is the same
	nearWeight = 1e-4 // a millimetre of the way
)

// exits finds the best way out for the contents, from any place in their room.
func (t *taking) exits(contents int) exit {
	best := exit{cost: math.Inf(1)}
	plates := t.plates([]int{contents})
	before := t.pose.Away[contents]
	home := before.Shifted(t.offset.Times(-1))
	root := t.pose.Frame(t.rig.Units[0].Root)
	for axis, way := range t.rig.Room.Ways {
		for _, sign := range [2]float64{1, -1} {
			way := way.Times(sign)
			for _, first := range t.places(axis) {
				t.pose.Away[contents] = home.Shifted(first)
				t.pose.Lay(plates)
				by, blockers := t.clears(plates, way)
				e := t.priced(blockers)
				e.leaving = leaving{units: []int{contents}, first: first.Minus(t.offset), way: way, by: by}
				e.cost += nearWeight*by - topWeight*(2*way.Dot(root.Y)+way.Dot(root.Z))
				if e.cost < best.cost-1e-9 {
					best = e
				}
				if len(blockers) == 0 {
					break
				}
			}
		}
	}
	t.pose.Away[contents] = before
	t.pose.Lay(plates)
	return best
}

// places are the shifts of the contents within their room, across an axis: as
// they stand, then to all sides.
func (t *taking) places(axis int) []fold.Vec {
	shifts := []fold.Vec{{}}
	room := &t.rig.Room
	u, v := (axis+1)%3, (axis+2)%3
	for _, a := range [...]float64{0, room.Play[u][0], room.Play[u][1]} {
		for _, b := range [...]float64{0, room.Play[v][0], room.Play[v][1]} {
			shift := room.Ways[u].Times(a).Plus(room.Ways[v].Times(b))
			if shift.Length() > 0 {
				shifts = append(shifts, shift)
			}
		}
	}
	return shifts
}

// priced says what has to be opened for plates to get out of the way.
func (t *taking) priced(blockers []int) (e exit) {
	for _, i := range blockers {
		h, glued := t.opener(i)
		switch {
		case h < 0:
			e.cost += fixedCost
		case !slices.Contains(e.opens, h):
			e.opens = append(e.opens, h)
			if e.cost++; glued {
				e.cost += gluedCost
			}
		}
	}
	return e
}

// opener returns the crease nearest to a plate that is folded and parts nothing,
// or else the nearest one that parts glue; -1 if there is none.
func (t *taking) opener(plate int) (hinge int, glued bool) {
	hinge = -1
	for i := plate; i >= 0; i = t.rig.Plates[i].Parent {
		h := t.rig.Plates[i].Hinge
		if h < 0 || !t.folded(h) {
			continue
		}
		o, ok := t.opening(h)
		switch {
		case ok && len(o.parted) == 0:
			return h, false
		case ok && hinge < 0:
			hinge, glued = h, true
		}
	}
	return hinge, glued
}
