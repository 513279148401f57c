package rounding

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"math/bits"

	"creasefit/internal/measure"
)

// Limit is what the figures of a problem may come to in nanometres, with each
// reading as far from zero as it may be: a closure's form; all windows' forms
// and ends together, doubled and times their weights; all pairs together,
// doubled. Within it nothing is ever rounded or overflows. Ten readings of 100 m
// in a window of weight 1000 with coefficients of 1000 are within, fourteen are
// not; with coefficients and weights of 10 a hundred such windows are.
const Limit = math.MaxInt64 / 4

// errTooLarge returns what a problem beyond the limit is refused with.
func errTooLarge() error {
	return errors.New("lengths, coefficients and weights are too large to be exact")
}

// check returns what makes a problem unfit for being searched.
func (p *Problem) check() error {
	return cmp.Or(p.checkReadings(), p.checkClosures(), p.checkWindows(), p.checkPairs())
}

func (p *Problem) checkReadings() error {
	var total uint64
	for i := range p.Readings {
		if total = plus(total, p.Readings[i].reach()); total > Limit {
			return fmt.Errorf("rounding: reading %d (%s): %w", i, p.Readings[i].Name, errTooLarge())
		}
	}
	return nil
}

func (p *Problem) checkClosures() error {
	for i := range p.Closures {
		c := &p.Closures[i]
		reach, err := p.reach(c.Form.Terms, c.Form.Constant)
		if err == nil && reach > Limit {
			err = errTooLarge()
		}
		if err != nil {
			return fmt.Errorf("rounding: closure %d (%s): %w", i, c.Name, err)
		}
	}
	return nil
}

func (p *Problem) checkWindows() error {
	var total uint64
	for i := range p.Windows {
		w := &p.Windows[i]
		reach, err := p.reach(w.Form.Terms, w.Form.Constant)
		ends := plus(size(w.Min.Nanometres()), size(w.Max.Nanometres()))
		total = plus(total, times(times(2, size(max(1, w.Weight))), plus(reach, ends)))
		switch {
		case err != nil:
		case w.Weight < 0:
			err = errors.New("the weight is negative")
		case w.Max.Less(w.Min):
			err = errors.New("the least is above the greatest")
		case total > Limit:
			err = errTooLarge()
		}
		if err != nil {
			return fmt.Errorf("rounding: window %d (%s): %w", i, w.Name, err)
		}
	}
	return nil
}

func (p *Problem) checkPairs() error {
	var total uint64
	for i, e := range p.Even {
		terms := pairTerms(e)
		reach, err := p.reach(terms[:], measure.Length{})
		if total = plus(total, times(2, reach)); err == nil && total > Limit {
			err = errTooLarge()
		}
		if err != nil {
			return fmt.Errorf("rounding: even pair %d: %w", i, err)
		}
	}
	return nil
}

// reach returns how far a form can be from zero at any step.
func (p *Problem) reach(terms []Term, constant measure.Length) (uint64, error) {
	sum := size(constant.Nanometres())
	for _, t := range terms {
		if t.Reading < 0 || t.Reading >= len(p.Readings) {
			return 0, fmt.Errorf("there is no reading %d", t.Reading)
		}
		sum = plus(sum, times(size(t.Coefficient), p.Readings[t.Reading].reach()))
	}
	return sum, nil
}

// reach returns how far a reading, set on the coarsest ruler, can be from zero.
func (r *Reading) reach() uint64 {
	most := size(r.Ideal.Nanometres())
	if !r.Fixed {
		most = max(size(r.Min.Nanometres()), size(r.Max.Nanometres()))
	}
	return plus(most, size(measure.Inches(1).Nanometres()))
}

// size returns a number without its sign.
func size(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// plus and times stop at the greatest number.
func plus(a, b uint64) uint64 {
	sum, over := bits.Add64(a, b, 0)
	return sum | -over
}

func times(a, b uint64) uint64 {
	if over, product := bits.Mul64(a, b); over == 0 {
		return product
	}
	return math.MaxUint64
}
