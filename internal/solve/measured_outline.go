package solve

import (
	"fmt"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// places are the coordinates of all corners of all pieces that are not their whole
// blank, from the left and from the bottom in turn, in the order of the answer.
func places(p *pattern.Pattern) (at []measure.Length) {
	for i := range p.Pieces {
		if p.Pieces[i].WholeBlank() {
			continue
		}
		for _, ring := range p.Pieces[i].Contours() {
			for _, v := range ring {
				at = append(at, v.X, v.Y)
			}
		}
	}
	return at
}

// outline settles sizes from the corners of the outline. A corner lies where sums of
// sizes put it: how often one goes in is seen from how far the corner moves with it.
// Where a corner hangs on one unsettled size alone, it settles that.
func (d *dealer) outline(plan *enclosure.Plan, corners [][2]measure.Length) {
	sizes := plan.Ideals()
	for i := range sizes {
		if d.placed[i] {
			sizes[i] = d.sizes[i]
		}
	}
	laid := plan.Lay(sizes)
	base := places(&laid)
	if 2*len(corners) != len(base) {
		d.leftOver("outline", len(base)/2, len(corners), "corners of the outline, each from the left x from the bottom, as the solution's outline has them")
		return
	}
	s := unsettled{d: d, sizes: sizes, off: make([]measure.Length, len(base)), moves: map[int][]measure.Length{}}
	for j := range base {
		s.off[j] = corners[j/2][j%2].Sub(base[j])
	}
	for i := range sizes {
		if !d.placed[i] {
			s.look(plan, i, base)
		}
	}
	for s.settleOne() {
	}
	for j, off := range s.off {
		if measure.Micrometres(2).Less(off.Abs()) {
			d.faults = append(d.faults, fault.Fault{Code: fault.Conflict, Field: "outline",
				Detail: fmt.Sprintf("corner %d does not lie %s where the other measurements put it", j/2+1, [...]string{"from the left", "from the bottom"}[j%2]),
				Hint:   "measure it again, and the scores beside it"})
			return
		}
	}
}

// unsettled is what is left to settle from corners.
type unsettled struct {
	d     *dealer
	sizes []measure.Length
	off   []measure.Length         // by coordinate: how far it was measured beyond where the sizes put it
	moves map[int][]measure.Length // by unsettled size: how far each coordinate moves with a nudge of it
}

// look sees how the corners move with a size.
func (s *unsettled) look(plan *enclosure.Plan, i int, base []measure.Length) {
	sizes := append([]measure.Length(nil), s.sizes...)
	sizes[i] = sizes[i].Add(nudge)
	laid := plan.Lay(sizes)
	moved := places(&laid)
	if len(moved) != len(base) {
		return
	}
	for j := range moved {
		moved[j] = moved[j].Sub(base[j])
	}
	s.moves[i] = moved
}

// onMark is a size without the nanometres that halving sums leaves beside a mark.
func onMark(size measure.Length) measure.Length {
	for _, unit := range []measure.Unit{measure.Inch, measure.Millimetre} {
		if mark := measure.Finest(unit).Nearest(size); !measure.Nanometres(5).Less(mark.Sub(size).Abs()) {
			return mark
		}
	}
	return size
}

// settleOne settles a size that some coordinate hangs on alone; false if there is none.
func (s *unsettled) settleOne() bool {
	for j := range s.off {
		only, count := -1, 0
		for i, moved := range s.moves {
			if !moved[j].IsZero() {
				only, count = i, count+1
			}
		}
		if count != 1 {
			continue
		}
		moved := s.moves[only]
		by := s.off[j].Times(nudge.Nanometres()).Over(moved[j].Nanometres())
		for k := range s.off {
			s.off[k] = s.off[k].Sub(moved[k].Times(by.Nanometres()).Over(nudge.Nanometres()))
		}
		s.d.placed[only], s.d.sizes[only] = true, onMark(s.sizes[only].Add(by))
		delete(s.moves, only)
		return true
	}
	return false
}
