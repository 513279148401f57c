package solve

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// allow makes room for what folds take up: every panel is longer by half of a
// fold's allowance at each of its ends that is folded, and every clearance and
// limit counts what is left. Sums that must be zero have as many folds on both
// sides, or the fold proof sees it.
func (r *Request) allow(plan *enclosure.Plan) {
	if r.FoldAllowance.IsZero() {
		return
	}
	taken := r.takenUp(plan)
	for i := range plan.Problem.Readings {
		reading := &plan.Problem.Readings[i]
		reading.Ideal = reading.Ideal.Add(taken[i])
	}
	for i := range plan.Problem.Windows {
		f := &plan.Problem.Windows[i].Form
		for _, t := range f.Terms {
			f.Constant = f.Constant.Sub(taken[t.Reading].Times(t.Coefficient))
		}
	}
}

// takenUp is, by reading, what the folds at its ends take up of it. Sizes that the
// request fixes, such as laps, are as long as it says.
func (r *Request) takenUp(plan *enclosure.Plan) []measure.Length {
	ends := make([]int64, len(plan.Problem.Readings))
	laid := plan.Build(plan.Ideals())
	for i := range plan.Strips {
		s := &plan.Strips[i]
		scores := scoresOf(&laid, s)
		for j, reading := range s.Readings {
			var folded int64
			for _, boundary := range [...]int{j - 1, j} {
				if boundary >= 0 && boundary < len(scores) && scores[boundary].Fold != pattern.Flat {
					folded++
				}
			}
			ends[reading] = max(ends[reading], folded)
		}
	}
	taken := make([]measure.Length, len(ends))
	for i, n := range ends {
		if !plan.Problem.Readings[i].Fixed {
			taken[i] = r.FoldAllowance.Times(n).Over(2)
		}
	}
	return taken
}

// scoresOf finds what is done between the readings of a strip.
func scoresOf(laid *pattern.Pattern, s *enclosure.Strip) []pattern.Score {
	if s.Piece >= len(laid.Pieces) {
		return nil
	}
	strips := laid.Pieces[s.Piece].Strips
	at := slices.IndexFunc(strips, func(o pattern.Strip) bool { return o.Across == s.Across && len(o.Cells) == len(s.Readings) })
	if at < 0 {
		return nil
	}
	return strips[at].Scores
}

// folded lays out what comes of sizes once folds have taken up theirs.
func (r *Request) folded(plan *enclosure.Plan, sizes []measure.Length, lay func([]measure.Length) pattern.Pattern) pattern.Pattern {
	if r.FoldAllowance.IsZero() {
		return lay(sizes)
	}
	left := slices.Clone(sizes)
	for i, taken := range r.takenUp(plan) {
		left[i] = left[i].Sub(taken)
	}
	return lay(left)
}
