package solve

import (
	"math"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Outside is the size of the closed enclosure, with the contents inside.
type Outside struct {
	Width, Height, Thickness measure.Length
	Mass                     float64 // of the paper alone, grams; zero if the grammage is unknown
}

// sizes are the size along the width, the height and the thickness.
func (o *Outside) sizes() [3]measure.Length {
	return [3]measure.Length{o.Width, o.Height, o.Thickness}
}

// outside is the size of the closed enclosure and the mass of its paper.
func (s *Solution) outside(extent [3]measure.Length) Outside {
	size := around(&s.Pattern, extent, s.Ornament)
	o := Outside{Width: size[0], Height: size[1], Thickness: size[2]}
	if s.Request.Grammage == 0 {
		return o
	}
	for i := range s.Pattern.Pieces {
		piece := &s.Pattern.Pieces[i]
		o.Mass += float64(piece.Quantity) * piece.Area() * s.Request.Grammage / 1e6
	}
	return o
}

// around is the size of folded plates, of the contents where they stick out,
// and of the ornament on top, which may be nil.
func around(p *pattern.Pattern, extent [3]measure.Length, ornament *enclosure.Ornament) [3]measure.Length {
	if c := &p.Cavity; !c.Into {
		extent[0], extent[1] = measure.Max(extent[0], c.Width), measure.Max(extent[1], c.Height)
		extent[2] = measure.Max(extent[2], c.Thickness)
	}
	if ornament != nil {
		extent[2] = measure.Max(p.Cavity.Thickness, fold.Extent(pressed(p))[2]).Add(ornament.Adds)
	}
	return extent
}

// pressed is a pattern whose locked tabs lie in the plane of the panels that they
// hang on, as they do under an ornament, which counts them itself.
func pressed(p *pattern.Pattern) *pattern.Pattern {
	flat := *p
	flat.Pieces = slices.Clone(p.Pieces)
	for i := range flat.Pieces {
		piece := &flat.Pieces[i]
		piece.Creases = slices.Clone(piece.Creases)
		for _, j := range piece.Joints {
			for k := range piece.Creases {
				if c := &piece.Creases[k]; c.To == j.PanelA || c.To == j.PanelB {
					c.Angle = 0
				}
			}
		}
	}
	return &flat
}

// A nudge is how far a size is moved to see how the outside follows.
var nudge = measure.Micrometres(100)

// dependence says what the outside depends on along every axis, by source: the
// lines that its readings lie between, the caliper, and the contents. It
// folds the pattern up again with one size after the other a little larger,
// so that no kind has to say how its outside comes about.
func (s *Solution) dependence() (d [3][]float64) {
	a := &s.judgement().account
	n := len(a.sources)
	times := make([]float64, len(d)*n)
	for axis := range d {
		d[axis] = times[axis*n : (axis+1)*n : (axis+1)*n]
	}
	f := fold.Follow(&s.Pattern)
	defer f.Done()
	s.onReadings(f, a, &d)
	for axis, slope := range s.slopesOf(f, func(q *Request) *measure.Length { return &q.Caliper }) {
		d[axis][a.pack] += slope
	}
	for along, slopes := range s.onContents(f) {
		for axis, slope := range slopes {
			a.spread(d[axis], pattern.Axis(along), slope)
		}
	}
	return d
}

// onReadings adds what the outside depends on by the lines of its readings. They are
// laid out by another plan of the same, which keeps none of the patterns.
func (s *Solution) onReadings(f *fold.Follower, a *account, d *[3][]float64) {
	plan, err := s.Request.planned()
	if err != nil {
		return // never: it was planned before
	}
	defer plan.Memory.GiveBack()
	base, leaders := s.Outside.sizes(), s.leaders()
	counted, sizes := s.counted(leaders), make([]measure.Length, len(s.sizes))
	for i := range leaders {
		if leaders[i] != i {
			continue
		}
		copy(sizes, s.sizes)
		for j, leader := range leaders {
			if leader == i {
				sizes[j] = sizes[j].Add(nudge)
			}
		}
		moved := s.refolded(f, plan, sizes)
		plan.Laid.GiveBack()
		for axis, slope := range slopesFrom(base, moved) {
			var c coefficients
			c[counted[i].reading] = 1
			a.settings(d[axis], c, slope*counted[i].share)
		}
	}
}

// onContents says how the outside follows each size of the contents. Where the plates
// of most kinds stay, only contents that stick out count.
func (s *Solution) onContents(f *fold.Follower) (slopes [3][3]float64) {
	still := s.still(f)
	for along := range pattern.Axis(len(slopes)) {
		size := func(q *Request) *measure.Length { return q.size(along.String()) }
		if !still {
			slopes[along] = s.slopesOf(f, size)
			continue
		}
		q, p := *s.Request, s.Pattern
		*size(&q) = size(&q).Add(nudge)
		p.Cavity.Width, p.Cavity.Height, p.Cavity.Thickness = q.Width, q.Height, q.Thickness
		slopes[along] = slopesFrom(s.Outside.sizes(), around(&p, s.plates, nil))
	}
	return slopes
}

// still reports whether the plates stay where they are, without an ornament, when the contents
// grow in all directions, and whether a cavity for these is of their sizes.
func (s *Solution) still(f *fold.Follower) bool {
	q := *s.Request
	for _, size := range [...]*measure.Length{&q.Width, &q.Height, &q.Thickness} {
		*size = size.Add(nudge)
	}
	plan, err := q.planned()
	if err != nil {
		return false
	}
	defer plan.Memory.GiveBack()
	if s.Ornament != nil || len(plan.Problem.Readings) != len(s.sizes) {
		return false
	}
	p := q.folded(plan, s.sizes, plan.Build)
	return f.Extent(&p) == s.plates && (p.Cavity.Into || s.Request.fills(&s.Pattern.Cavity) && q.fills(&p.Cavity))
}

// fills reports whether a cavity is of the sizes of the contents.
func (r *Request) fills(c *pattern.Cavity) bool {
	return c.Width == r.Width && c.Height == r.Height && c.Thickness == r.Thickness
}

// leaders names for every reading the first of those that it is always equal
// to, such as the four walls of a box: by a closure, or since one parameter
// fixes both. The outside goes over the highest wall, so that they count once.
func (s *Solution) leaders() []int {
	leaders := make([]int, len(s.sizes))
	for i, source := range s.plan.Sources {
		leaders[i] = i
		if first := slices.Index(s.plan.Sources, source); source != "" {
			leaders[i] = first
		}
	}
	for i := range s.plan.Problem.Closures {
		f := &s.plan.Problem.Closures[i].Form
		if len(f.Terms) == 2 && f.Constant.IsZero() && f.Terms[0].Coefficient == -f.Terms[1].Coefficient {
			a, b := f.Terms[0].Reading, f.Terms[1].Reading
			leaders[max(a, b)] = leaders[min(a, b)]
		}
	}
	return leaders
}

// counting says which reading's settings count for a leader, and how much less
// than the reading they move the outside where a fit says so: sides of a prism
// that are all marked along one strip are never all off the same way.
type counting struct {
	reading int
	share   float64
}

// counted says for every leader what counts: the reading that a fit counts, if
// any does.
func (s *Solution) counted(leaders []int) []counting {
	counted := make([]counting, len(leaders))
	for i := range counted {
		counted[i] = counting{i, 1}
	}
	for i := range s.plan.Fits {
		f := &s.plan.Fits[i]
		for _, t := range s.plan.Problem.Windows[f.Window].Form.Terms {
			c := counting{t.Reading, 1}
			if f.Scale > 0 {
				c.share = f.Share / f.Scale
			}
			counted[leaders[t.Reading]] = c
		}
	}
	return counted
}

// slopesOf says how the outside follows one size of the request while all
// readings stay. A plan that the next larger size has none of, or another one
// for, is asked for the next smaller size.
func (s *Solution) slopesOf(f *fold.Follower, size func(*Request) *measure.Length) (slopes [3]float64) {
	for _, by := range [...]measure.Length{nudge, nudge.Neg()} {
		q := *s.Request
		*size(&q) = size(&q).Add(by)
		plan, err := q.planned()
		if err != nil || len(plan.Problem.Readings) != len(s.sizes) {
			continue
		}
		slopes = slopesFrom(s.Outside.sizes(), s.refolded(f, plan, s.sizes))
		plan.Memory.GiveBack()
		if by.Sign() < 0 {
			for axis := range slopes {
				slopes[axis] = -slopes[axis]
			}
		}
		return slopes
	}
	return slopes
}

// refolded is the outside of another plan or other sizes.
func (s *Solution) refolded(f *fold.Follower, plan *enclosure.Plan, sizes []measure.Length) [3]measure.Length {
	p := s.Request.folded(plan, sizes, plan.Build)
	return around(&p, f.Extent(&p), s.Ornament)
}

// slopesFrom is by how often the nudge a size has grown, to a thousandth.
func slopesFrom(base, moved [3]measure.Length) (slopes [3]float64) {
	for axis := range slopes {
		grown := float64(moved[axis].Sub(base[axis]).Nanometres()) / float64(nudge.Nanometres())
		slopes[axis] = math.Round(grown*1000) / 1000
	}
	return slopes
}
