package solve

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/tolerance"
)

// Season is the relative humidity, in percent, that something is made at and that
// it is used at; zero for no other season.
type Season struct{ MadeAt, UsedAt float64 }

// away is how much damper it is where the piece is used, by the span that growth
// is stated for.
func (s Season) away() float64 {
	if s.MadeAt <= 0 || s.UsedAt <= 0 {
		return 0
	}
	return (s.UsedAt - s.MadeAt) / GrowthSpan
}

// Growth is by what part a sheet grows, from least to greatest.
type Growth struct{ Least, Greatest float64 }

func (g Growth) middle() float64 { return (g.Least + g.Greatest) / 2 }
func (g Growth) half() float64   { return (g.Greatest - g.Least) / 2 }

// By what part paper grows along and across its grain while the humidity rises by
// GrowthSpan: ranges for bond paper from a paper supplier's technical page, which
// measures by ISO 8226 and does not say over which span. That of part 1 of the
// standard, from 33 to 66 %, is from memory.
var (
	GrowthAlong  = Growth{0.001, 0.002}
	GrowthAcross = Growth{0.002, 0.004}
)

// GrowthSpan is in percent of relative humidity.
const GrowthSpan = 33.0

// grown is, by reading, whether it lies along the grain of its blank, the main
// folds of which run along the grain unless the sheet has no room for that.
func (r *Request) grown(plan *enclosure.Plan) []bool {
	along := make([]bool, len(plan.Problem.Readings))
	laid := plan.Build(plan.Ideals())
	for i := range plan.Strips {
		s := &plan.Strips[i]
		if s.Piece >= len(laid.Pieces) {
			continue
		}
		p := &laid.Pieces[s.Piece]
		same := FoldSide(p).String() == s.Across.String()
		if r.KeepsGrain(p) == GrainAcross {
			same = !same
		}
		for _, reading := range s.Readings {
			along[reading] = same
		}
	}
	return along
}

// grow makes every clearance what it is where the piece is used: its sizes have
// grown or shrunk by the middle of what paper does.
func (r *Request) grow(plan *enclosure.Plan) {
	away := r.Season.away()
	if away == 0 {
		return
	}
	along := r.grown(plan)
	for i := range plan.Fits {
		f := &plan.Problem.Windows[plan.Fits[i].Window].Form
		for _, t := range f.Terms {
			ideal := plan.Problem.Readings[t.Reading].Ideal.Times(t.Coefficient)
			f.Constant = f.Constant.Add(part(ideal, away*growthOf(along[t.Reading]).middle()))
		}
	}
}

// growthOf is how paper grows along its grain, or across it.
func growthOf(along bool) Growth {
	if along {
		return GrowthAlong
	}
	return GrowthAcross
}

// metre is the length that sources of growth are stated for.
var metre = measure.Millimetres(1000)

// seasons adds the sources of growth: by how much a metre of the paper may grow
// more or less than the middle of what paper does, along the grain and across.
func (a *account) seasons() {
	away := a.r.Season.away()
	if away == 0 {
		return
	}
	a.along = a.r.grown(a.plan)
	for i, along := range [...]bool{true, false} {
		half := part(metre, away*growthOf(along).half()).Abs()
		a.growth[i] = a.of(cause{of: season, along: pattern.Axis(i)}, tolerance.Within(half))
	}
}

// growths adds how often the sources of growth go into a length made of readings.
func (a *account) growths(times []float64, c *coefficients, scale float64) {
	if a.along == nil {
		return
	}
	for reading, along := range a.along {
		source := a.growth[1]
		if along {
			source = a.growth[0]
		}
		times[source] += float64(c[reading]) * scale * a.sizes[reading].Millimetres() / metre.Millimetres()
	}
}
