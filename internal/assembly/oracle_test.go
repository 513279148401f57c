package assembly_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// TestNothingPassesThroughAnother judges the orders of all kinds by another method
// than the one that finds them: that parts convex plates by axes at a few poses,
// this follows points. A point of the middle of one plate must not change from one
// face of another plate to the other, from pose to pose, where it lies well inside
// both outlines; and no line between neighbouring points may run through it.
func TestNothingPassesThroughAnother(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			s, o := ordered(t, asked(t, k.Name, usual[k.Name]...))
			assert.Empty(t, throughs(s, o, o.Frame))
		})
	}
}

// The judge itself finds plates that pass through one another: a wall of a tray that
// is sheared inwards as it rises.
func TestTheJudgeFindsWhatPassesThrough(t *testing.T) {
	s, o := ordered(t, asked(t, "tray"))
	wrong := func(step int, at float64) assembly.Frame {
		f := o.Frame(step, at)
		for i := range f.Model.Plates { // a wall that is pushed in beyond its right angle
			if pl := &f.Model.Plates[i]; pl.Panel == 1 {
				for k, v := range pl.Outline {
					pl.Outline[k] = v.Plus(fold.Vec{30 * at * v[2] / 38, 0, 0}).Plus(fold.Vec{0, 30 * at * v[2] / 38, 0})
				}
			}
		}
		return f
	}
	assert.NotEmpty(t, throughs(s, o, wrong))
}

// looksAStep is how often a step is looked at.
const looksAStep = 12

// throughs lists what passes through what while an order is played. Things that are
// made apart are not in one another's way.
func throughs(s *solve.Solution, o *assembly.Order, frame func(int, float64) assembly.Frame) (found []string) {
	j := judge{s: s, hung: hungTogether(&s.Pattern)}
	together := make([]int, len(s.Pattern.Pieces))
	for i := range together {
		together[i] = i
	}
	for step := range o.Steps {
		st := &o.Steps[step]
		for _, piece := range st.Pieces {
			from := together[piece]
			for i := range together {
				if together[i] == from {
					together[i] = together[st.Pieces[0]]
				}
			}
		}
		if st.Do <= assembly.Slit {
			continue
		}
		j.margin = 2*s.Pattern.Caliper.Millimetres() + s.Proof.Tolerance.Millimetres() + st.Flex + 0.01
		plates := frame(step, 0).Model.Plates
		points := make([][]fold.Vec, len(plates))
		for i := range plates {
			points[i] = j.points(&plates[i])
		}
		var before []local
		for look := range looksAStep + 1 {
			f := frame(step, float64(look)/looksAStep)
			now := make([]local, len(f.Model.Plates))
			for i := range now {
				now[i] = frameOf(&f.Model.Plates[i])
			}
			for a := range now {
				for b := range now {
					x, y := &plates[a], &plates[b]
					apart := a == b || !f.Present[a] || !f.Present[b] || together[x.Piece] != together[y.Piece]
					if !apart && !j.exempt(x, y) && j.passes(points[a], &f.Model.Plates[b], now, before, a, b) {
						found = append(found, fmt.Sprintf("step %d at %d/%d: %s through %s", step, look, looksAStep, x.Name, y.Name))
					}
				}
			}
			before = now
		}
	}
	return found
}

// judge compares plates.
type judge struct {
	s      *solve.Solution
	hung   map[[4]int]bool
	margin float64 // mm from its outline that a place counts as inside a plate
}

// hungTogether are the pairs of panels, by piece and number, that a crease, glue or a
// joint holds together: they meet on purpose.
func hungTogether(p *pattern.Pattern) map[[4]int]bool {
	hung := map[[4]int]bool{}
	add := func(a, b, c, d int) { hung[[4]int{a, b, c, d}], hung[[4]int{c, d, a, b}] = true, true }
	for i := range p.Pieces {
		for _, c := range p.Pieces[i].Creases {
			add(i, c.From, i, c.To)
		}
		for _, g := range p.Pieces[i].Glues {
			add(i, g.Panel, i, g.To)
		}
		for _, joint := range p.Pieces[i].Joints {
			add(i, joint.PanelA, i, joint.PanelB)
		}
	}
	for _, b := range p.Bonds {
		for _, g := range b.Glues {
			add(b.A, g.Panel, b.B, g.To)
		}
	}
	return hung
}

// exempt says of two plates that they meet on purpose, or that a curve bends them,
// which only the finder models.
func (j *judge) exempt(a, b *fold.Plate) bool {
	if a.Panel < 0 || b.Panel < 0 {
		return true
	}
	for _, piece := range [...]int{a.Piece, b.Piece} {
		for _, c := range j.s.Pattern.Pieces[piece].Creases {
			if c.Bulge < 0 || c.Bulge > 0 {
				return true
			}
		}
	}
	for _, l := range j.s.Pattern.Locks {
		if l.A == a.Piece && l.B == b.Piece || l.B == a.Piece && l.A == b.Piece {
			return true
		}
	}
	return j.hung[[4]int{a.Piece, a.Panel, b.Piece, b.Panel}]
}

// passes reports whether a point of plate a has gone through plate b since the look
// before, or a line between two neighbouring points runs through it now.
func (j *judge) passes(points []fold.Vec, b *fold.Plate, now, before []local, of, by int) bool {
	last := fold.Vec{math.NaN()}
	for _, p := range points {
		here := now[by].local(now[of].at(p))
		if j.cuts(last, here, b, &now[by]) {
			return true
		}
		last = here
		if before != nil && j.cuts(before[by].local(before[of].at(p)), here, b, &now[by]) {
			return true
		}
	}
	return false
}

// cuts reports whether the line between two places beside a plate runs through it.
func (j *judge) cuts(p, q fold.Vec, b *fold.Plate, f *local) bool {
	if math.IsNaN(p[0]) || (p[2] > 0) == (q[2] > 0) {
		return false
	}
	part := p[2] / (p[2] - q[2])
	return j.within(p.Plus(q.Minus(p).Times(part)), b, f)
}

// within reports whether a place in the plane of a plate lies well inside its outline.
func (j *judge) within(p fold.Vec, b *fold.Plate, f *local) bool {
	in, near := false, math.Inf(1)
	for i, v := range b.Outline {
		u, w := f.local(v), f.local(b.Outline[(i+1)%len(b.Outline)])
		if (u[1] > p[1]) != (w[1] > p[1]) && p[0] < u[0]+(p[1]-u[1])/(w[1]-u[1])*(w[0]-u[0]) {
			in = !in
		}
		e, d := fold.Vec{w[0] - u[0], w[1] - u[1]}, fold.Vec{p[0] - u[0], p[1] - u[1]}
		along := max(0, min(1, d.Dot(e)/max(1e-12, e.Dot(e))))
		near = min(near, d.Minus(e.Times(along)).Length())
	}
	return in && near > j.margin
}

// points are places well inside a plate, in its own plane, row by row there and back
// so that neighbours follow one another.
func (j *judge) points(pl *fold.Plate) (points []fold.Vec) {
	const across = 8
	f := frameOf(pl)
	low, high := fold.Vec{math.Inf(1), math.Inf(1)}, fold.Vec{math.Inf(-1), math.Inf(-1)}
	for _, v := range pl.Outline {
		l := f.local(v)
		for k := range 2 {
			low[k], high[k] = min(low[k], l[k]), max(high[k], l[k])
		}
	}
	for y := range across {
		for x := range across {
			if y%2 == 1 {
				x = across - 1 - x
			}
			p := fold.Vec{low[0] + (float64(x)+0.5)/across*(high[0]-low[0]), low[1] + (float64(y)+0.5)/across*(high[1]-low[1])}
			if j.within(p, pl, &f) {
				points = append(points, p)
			}
		}
	}
	return points
}

// local is the plane of a plate: its inside is up.
type local struct{ o, x, y, z fold.Vec }

func frameOf(pl *fold.Plate) local {
	o := pl.Outline[0]
	x := pl.Outline[1].Minus(o)
	x = x.Times(1 / x.Length())
	return local{o, x, pl.Inside.Cross(x), pl.Inside}
}

func (f *local) local(v fold.Vec) fold.Vec {
	d := v.Minus(f.o)
	return fold.Vec{d.Dot(f.x), d.Dot(f.y), d.Dot(f.z)}
}

func (f *local) at(p fold.Vec) fold.Vec {
	return f.o.Plus(f.x.Times(p[0])).Plus(f.y.Times(p[1])).Plus(f.z.Times(p[2]))
}
