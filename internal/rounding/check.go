package rounding

import (
	"cmp"
	"errors"
	"fmt"
	"math"

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

// check returns what makes a problem unfit for being searched. Figures are added up as
// floats, which cannot overflow and are far closer than the limit is to it.
func (p *Problem) check() error {
	return cmp.Or(p.checkReadings(), p.checkClosures(), p.checkWindows(), p.checkPairs())
}

func (p *Problem) checkReadings() error {
	var total float64
	for i := range p.Readings {
		if total += p.Readings[i].reach(); total > Limit {
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
	var total float64
	for i := range p.Windows {
		w := &p.Windows[i]
		reach, err := p.reach(w.Form.Terms, w.Form.Constant)
		total += 2 * max(1, math.Abs(float64(w.Weight))) * (reach + size(w.Min) + size(w.Max))
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
	var total float64
	for i, e := range p.Even {
		terms := pairTerms(e)
		reach, err := p.reach(terms[:], measure.Length{})
		if total += 2 * reach; err == nil && total > Limit {
			err = errTooLarge()
		}
		if err != nil {
			return fmt.Errorf("rounding: even pair %d: %w", i, err)
		}
	}
	return nil
}

// reach returns how far a form can be from zero at any step.
func (p *Problem) reach(terms []Term, constant measure.Length) (float64, error) {
	sum := size(constant)
	for _, t := range terms {
		if t.Reading < 0 || t.Reading >= len(p.Readings) {
			return 0, fmt.Errorf("there is no reading %d", t.Reading)
		}
		sum += math.Abs(float64(t.Coefficient)) * p.Readings[t.Reading].reach()
	}
	return sum, nil
}

// reach returns how far a reading, set on the coarsest ruler, can be from zero.
func (r *Reading) reach() float64 {
	most := size(r.Ideal)
	if !r.Fixed {
		most = max(size(r.Min), size(r.Max))
	}
	return most + size(measure.Inches(1))
}

// size is a length without its sign, in nanometres.
func size(l measure.Length) float64 { return math.Abs(float64(l.Nanometres())) }
