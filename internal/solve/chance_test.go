package solve

import (
	"context"
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/tolerance"
)

var makings = flag.Int("makings", 20_000, "makings a request that the chance is held to; from 1000000 on, of 1000 requests and 50 portfolios")

// wholeRun is from how many makings on everything is gone through.
const wholeRun = 1_000_000

// TestChanceAgainstMonteCarlo holds the chance of random requests of all kinds,
// by hands that are seldom sure, and of random portfolios to random draws of
// every source: they differ by at most 0.003 and what chance leaves to so many
// draws (3.3 standard deviations, of which a thousand see one).
//
//	go test ./internal/solve -run MonteCarlo -makings 1000000 -timeout 2h
func TestChanceAgainstMonteCarlo(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 29))
	requests, portfolios := 60, 6
	if *makings >= wholeRun {
		requests, portfolios = 1000, 50
	}
	var worst float64
	hold := func(name string, c Certainty, forms []tolerance.Form, sources []tolerance.Source) {
		share := shareThatHolds(r, forms, sources, *makings)
		off := math.Abs(share - c.Chance)
		worst = max(worst, off)
		noise := 3.3 * math.Sqrt(share*(1-share)/float64(*makings))
		if *makings >= wholeRun {
			noise = 0 // what is asked for holds with it
		}
		assert.LessOrEqual(t, off, 0.003+noise, "%s: %.5f, drawn %.5f, %d forms", name, c.Chance, share, len(forms))
	}
	for kinds, done := repertoire.Kinds(), 0; done < requests; {
		q := randomHand(r)
		q.Kind = kinds[done%len(kinds)]
		if s := solved(q); s != nil {
			done++
			hold(q.Kind.Name, s.Sure, s.judgement().forms, s.judgement().sources)
		}
	}
	t.Logf("%d requests: at most %.5f off", requests, worst)
	worst = 0
	for done := 0; done < portfolios; {
		if p := randomPortfolio(r); p != nil {
			done++
			var forms []tolerance.Form
			for _, s := range p.Solutions {
				forms = append(forms, s.judgement().forms...)
			}
			hold("portfolio", p.Sure, forms, p.Solutions[len(p.Solutions)-1].judgement().sources)
		}
	}
	t.Logf("%d portfolios: at most %.5f off", portfolios, worst)
}

// solved is the solution of a request that may be for thinner contents than it
// says, since some kinds hold thin ones only; nil if it has none.
func solved(q *Request) *Solution {
	for range 2 {
		if s, err := Solve(context.Background(), q); err == nil {
			return s
		}
		q.Thickness = q.Thickness.Over(12)
	}
	return nil
}

// randomPortfolio is two to four kinds round one another, or nil.
func randomPortfolio(r *rand.Rand) *Portfolio {
	kinds := repertoire.Kinds()
	layers := make([]Layer, 2+r.IntN(3))
	first := randomHand(r)
	for i := range layers {
		q := *first
		q.Kind = kinds[r.IntN(len(kinds))]
		layers[i].Request = &q
	}
	p, err := SolvePortfolio(context.Background(), layers)
	if err != nil {
		return nil
	}
	return p
}

// randomHand is a request without a kind for a random thing and a hand that is
// seldom sure.
func randomHand(r *rand.Rand) *Request {
	about := func(least, most int64) measure.Length { return measure.Micrometres(least + r.Int64N(most-least)) }
	q := &Request{
		Unit: measure.Millimetre, Width: about(40_000, 250_000), Height: about(40_000, 250_000), Thickness: about(500, 60_000),
		Caliper: about(100, 600), CaliperTolerance: about(5, 60), Ruler: measure.Finest(measure.Millimetre), CutError: about(100, 1500), ScoreError: about(100, 1500),
		Fit: enclosure.NamedFits()[r.IntN(2)].Range(measure.Millimetre), SizeTolerance: tolerance.Within(about(0, 1000)), ThicknessTolerance: tolerance.Source{Low: about(0, 1500)},
	}
	q.WallGive = enclosure.WallGive(q.Caliper, measure.Length{})
	return q
}

// shareThatHolds is the share of random draws of all sources in which no form is
// negative.
func shareThatHolds(r *rand.Rand, forms []tolerance.Form, sources []tolerance.Source, draws int) float64 {
	type term struct {
		source int
		times  float64
	}
	nominal, terms := make([]float64, len(forms)), make([][]term, len(forms))
	for i := range forms {
		nominal[i] = float64(forms[i].Nominal.Nanometres())
		for s, times := range forms[i].Times {
			low, high, deviation := float64(sources[s].Low.Nanometres()), float64(sources[s].High.Nanometres()), float64(sources[s].Deviation.Nanometres())
			if deviation == 0 {
				deviation = (low + high) / 6
			}
			nominal[i] += times * (high - low) / 2
			if times != 0 {
				terms[i] = append(terms[i], term{s, times * deviation})
			}
		}
	}
	drawn, held := make([]float64, len(sources)), 0
draw:
	for range draws {
		for i := range drawn {
			drawn[i] = r.NormFloat64()
		}
		for i, clearance := range nominal {
			for _, t := range terms[i] {
				clearance += t.times * drawn[t.source]
			}
			if clearance < 0 {
				continue draw
			}
		}
		held++
	}
	return float64(held) / float64(draws)
}
