package rounding

import (
	"errors"
	"fmt"
	"math"
	"math/bits"

	"creasefit/internal/measure"
)

// Limit is what the figures of a problem may come to, in nanometres: the
// largest form and, counted twice and times their weights, the sum of all
// windows, with each reading at its greatest distance from zero. A dozen
// windows over readings of 100 m with coefficients of 10 and weights of 100
// are far inside.
const Limit = math.MaxInt64 / 4

// check returns what makes a problem unfit for being searched.
func (p *Problem) check() error {
	var total uint64
	for i := range p.Readings {
		if total = plus(total, p.Readings[i].reach()); total > Limit {
			return fmt.Errorf("rounding: reading %d (%s): %w", i, p.Readings[i].Name, orTooLarge(nil))
		}
	}
	total = 0
	for i := range p.Closures {
		c := &p.Closures[i]
		reach, err := p.reach(&c.Form)
		if err != nil || reach > Limit {
			return fmt.Errorf("rounding: closure %d (%s): %w", i, c.Name, orTooLarge(err))
		}
	}
	for i := range p.Windows {
		w := &p.Windows[i]
		reach, err := p.reach(&w.Form)
		switch {
		case err != nil:
		case w.Weight < 0:
			err = errors.New("negative weight")
		case w.Max.Less(w.Min):
			err = errors.New("the least is above the greatest")
		}
		reach = plus(reach, plus(size(w.Min.Nanometres()), size(w.Max.Nanometres())))
		total = plus(total, times(2*size(max(1, w.Weight)), reach))
		if err != nil || total > Limit {
			return fmt.Errorf("rounding: window %d (%s): %w", i, w.Name, orTooLarge(err))
		}
	}
	total = 0
	for i, e := range p.Even {
		terms := pairTerms(e)
		reach, err := p.reach(&Form{Terms: terms[:]})
		total = plus(total, times(2, reach))
		if err != nil || total > Limit {
			return fmt.Errorf("rounding: even pair %d: %w", i, orTooLarge(err))
		}
	}
	return nil
}

func orTooLarge(err error) error {
	if err != nil {
		return err
	}
	return errors.New("lengths, coefficients and weights are too large to be exact")
}

// reach returns how far a form can be from zero at any step.
func (p *Problem) reach(f *Form) (uint64, error) {
	sum := size(f.Constant.Nanometres())
	for _, t := range f.Terms {
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
