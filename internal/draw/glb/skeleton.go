package glb

import (
	"math"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// skeleton says what hangs on what: joint 0 holds everything and stands it up,
// then every plate in the order of the fold proof hangs on the plate that it is
// folded on, and last come the contents if there are any.
type skeleton struct {
	model    *fold.Model // closed
	contents *assembly.Block
	standing stance
	lying    stance
	bows     []bow
}

// stance is where a joint is on what it hangs on.
type stance struct {
	shift fold.Vec // mm
	turn  quaternion
	gone  bool // it is not there yet
}

// scale hides what is not there.
func (s *stance) scale() []float64 {
	if s.gone {
		return []float64{0, 0, 0}
	}
	return []float64{1, 1, 1}
}

// newSkeleton takes the joints from the closed model.
func newSkeleton(closed *assembly.Frame, order *assembly.Order) *skeleton {
	s := &skeleton{model: &closed.Model, contents: closed.Contents}
	s.lying.turn = quaternion{0, 0, 0, 1}
	low, high := s.extent(fold.Vec{1, 0, 0}, fold.Vec{0, 1, 0}, fold.Vec{0, 0, 1})
	s.lying.shift = fold.Vec{-(low[0] + high[0]) / 2, -(low[1] + high[1]) / 2, -low[2]}
	s.standing = s.lying
	if up, ok := mouth(order); ok && steady(high.Minus(low), up) {
		y, z := fold.Vec{0, 0, -1}, up // back and up: what was underneath is behind
		x := y.Cross(up)
		low, high = s.extent(x, y, z)
		s.standing.turn = rotation(fold.Vec{x[0], y[0], z[0]}, fold.Vec{x[1], y[1], z[1]}, fold.Vec{x[2], y[2], z[2]})
		s.standing.shift = fold.Vec{-(low[0] + high[0]) / 2, -(low[1] + high[1]) / 2, -low[2]}
	}
	return s
}

// stands reports whether the closed thing is stood up.
func (s *skeleton) stands() bool { return s.standing != s.lying }

// mouth returns the direction in which the contents came in, backwards.
func mouth(order *assembly.Order) (fold.Vec, bool) {
	if order == nil {
		return fold.Vec{}, false
	}
	for i := range order.Steps {
		if step := &order.Steps[i]; step.Do == assembly.PutIn {
			return step.Travels[0].Way.Times(-1), true
		}
	}
	return fold.Vec{}, false
}

// steady reports whether a thing of a size stands with a direction up that lies
// along an axis other than the blank's own up: its foot must be a sixth as wide as
// it is high (our own measure of what looks safe).
func steady(size, up fold.Vec) bool {
	for k, d := range up {
		if d = math.Abs(d); d > 0.999 && k < 2 {
			foot := min(size[1-k], size[2])
			return foot >= size[k]/6
		}
	}
	return false
}

// extent returns the box round the closed thing along some axes.
func (s *skeleton) extent(axes ...fold.Vec) (low, high fold.Vec) {
	for k, axis := range axes {
		low[k], high[k] = math.Inf(1), math.Inf(-1)
		if b := s.contents; b != nil {
			for _, v := range b.Base {
				d, up := v.Dot(axis), b.Up.Dot(axis)
				low[k], high[k] = min(low[k], d, d+up), max(high[k], d, d+up)
			}
		}
		for i := range s.model.Plates {
			pl := &s.model.Plates[i]
			reach := s.model.CaliperOf(i) / 2 * math.Abs(pl.Inside.Dot(axis))
			for _, v := range pl.Outline {
				d := v.Dot(axis)
				low[k], high[k] = min(low[k], d-reach), max(high[k], d+reach)
			}
		}
	}
	return low, high
}

// stances returns where every joint is when everything stands as in a frame, laid
// down or stood up.
func (s *skeleton) stances(f *assembly.Frame, stood float64) []stance {
	all := make([]stance, 0, len(f.Model.Plates)+2)
	if all = append(all, s.lying); stood > 0 {
		all[0] = s.standing
	}
	for i := range f.Model.Plates {
		pl := &f.Model.Plates[i]
		on, pin := fold.Frame{X: fold.Vec{1, 0, 0}, Y: fold.Vec{0, 1, 0}, Z: fold.Vec{0, 0, 1}}, fold.Vec{}
		if pl.Parent >= 0 {
			on, pin = f.Model.Plates[pl.Parent].Frame, f.Model.Plates[pl.Parent].Hung
		}
		at := stance{shift: into(&on, out(&pl.Frame, pl.Hung).Minus(on.Origin)).Minus(pin), gone: f.Present != nil && !f.Present[i] && pl.Parent < 0}
		at.turn = rotation(into(&on, pl.Frame.X), into(&on, pl.Frame.Y), into(&on, pl.Frame.Z))
		all = append(all, at)
	}
	if s.contents != nil {
		at := stance{gone: f.Contents == nil}
		block := f.Contents
		if at.gone {
			block = s.contents
		}
		x, y, z := axesOf(block)
		at.shift, at.turn = block.Base[0], rotation(x, y, z)
		all = append(all, at)
	}
	return all
}

// into returns a direction as a frame sees it.
func into(f *fold.Frame, v fold.Vec) fold.Vec { return fold.Vec{v.Dot(f.X), v.Dot(f.Y), v.Dot(f.Z)} }

// out returns where a frame has a place of its blank.
func out(f *fold.Frame, p fold.Vec) fold.Vec {
	return f.Origin.Plus(f.X.Times(p[0]).Plus(f.Y.Times(p[1]).Plus(f.Z.Times(p[2]))))
}

// axesOf returns the directions of the contents: along their first edge, across
// it, and to their top.
func axesOf(b *assembly.Block) (x, y, z fold.Vec) {
	x, z = unit(b.Base[1].Minus(b.Base[0])), unit(b.Up)
	return x, z.Cross(x), z
}

// nodes writes the joints with their bodies, as they stand at rest, and returns
// their numbers.
func (s *scene) skeleton(k *skeleton, rest []stance, d *draw.Drawing) []int {
	joints := []int{s.node("standing", 0, &rest[0])}
	for i := range k.model.Plates {
		pl := &k.model.Plates[i]
		on := joints[0]
		if pl.Parent >= 0 {
			on = -1 // once its parent has its number
		}
		joints = append(joints, s.node(d.Say(pl.Name), on, &rest[1+i]))
	}
	for i := range k.model.Plates {
		pl := &k.model.Plates[i]
		if pl.Parent >= 0 {
			s.hang(joints[1+i], joints[1+pl.Parent])
		}
		if len(pl.Outline) > 2 { // a fold may take up all of a narrow panel
			s.body(joints[1+i], append(plate(pl, k.model.CaliperOf(i)), part{lines: k.edges(i), material: edge})...)
		}
	}
	if k.contents != nil {
		n := len(rest) - 1
		joints = append(joints, s.node(d.Say("contents"), joints[0], &rest[n]))
		s.body(joints[n], goodsOf(k.contents)...)
		if len(k.contents.Base) == 4 {
			s.Nodes[joints[n]].Extras = map[string][3]string{"axes": {pattern.Width.String(), pattern.Height.String(), pattern.Thickness.String()}}
		}
	}
	return joints
}
