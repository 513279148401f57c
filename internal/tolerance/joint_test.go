package tolerance_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/tolerance"
)

// correlated makes n forms with the given mean, in standard deviations, any two
// of which are correlated by rho: each has an error of its own and one shared.
func correlated(n int, mean, rho float64) ([]tolerance.Form, []tolerance.Source) {
	unit := tolerance.Within(mm("3")) // a standard deviation of 1 mm
	sources := []tolerance.Source{unit}
	forms := make([]tolerance.Form, n)
	for i := range n {
		sources = append(sources, unit)
		times := make([]float64, n+1)
		times[0], times[i+1] = math.Sqrt(rho), math.Sqrt(1-rho)
		forms[i] = tolerance.Form{Nominal: measure.Nanometres(int64(mean * 1e6)), Times: times}
	}
	return forms, sources
}

// Two quantities are both positive with probability 1/4 + arcsin(rho) / 2 pi
// (W. F. Sheppard, 1899; Abramowitz and Stegun, 26.3.19), any number that are
// correlated by a half with 1 / (n + 1) (the orthant of equal correlations; from
// memory), three with 1/8 + the sum of the arcsines / 4 pi.
func TestOrthants(t *testing.T) {
	for _, rho := range []float64{0, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99} {
		forms, sources := correlated(2, 0, rho)
		assert.InDelta(t, 0.25+math.Asin(rho)/(2*math.Pi), tolerance.Joint(forms, sources).Chance, 2e-5, "two, %v", rho)
		forms, sources = correlated(3, 0, rho)
		assert.InDelta(t, 0.125+3*math.Asin(rho)/(4*math.Pi), tolerance.Joint(forms, sources).Chance, 1e-4, "three, %v", rho)
	}
	for n := 2; n <= 12; n++ {
		forms, sources := correlated(n, 0, 0.5)
		assert.InDelta(t, 1/float64(n+1), tolerance.Joint(forms, sources).Chance, 1e-4, "%d", n)
	}
}

// The bivariate normal table of the US National Bureau of Standards (Applied
// Mathematics Series 50, 1959; figures recomputed from the tetrachoric series
// that it is made from): the chance that both of two quantities are at least
// minus h, correlated by rho.
func TestBivariateTable(t *testing.T) {
	for _, h := range []float64{0, 0.5, 1, 1.5, 2} {
		for _, rho := range []float64{0.1, 0.3, 0.5, 0.7} {
			forms, sources := correlated(2, h, rho)
			assert.InDelta(t, tetrachoric(h, rho), tolerance.Joint(forms, sources).Chance, 2e-5, "h = %v, rho = %v", h, rho)
		}
	}
}

// tetrachoric is the chance that two quantities correlated by rho are both at
// most h: K. Pearson's series, the normal density and Hermite polynomials.
func tetrachoric(h, rho float64) float64 {
	phi, density := math.Erfc(-h/math.Sqrt2)/2, math.Exp(-h*h/2)/math.Sqrt(2*math.Pi)
	sum, before, he, factorial, power := phi*phi, 0.0, 1.0, 1.0, 1.0
	for n := 1; n < 80; n++ {
		power *= rho
		factorial *= float64(n)
		sum += density * density * he * he * power / factorial
		before, he = he, h*he-float64(n-1)*before
	}
	return sum
}

// The percentage points of every table of the normal distribution.
func TestQuantile(t *testing.T) {
	for p, z := range map[float64]float64{0.5: 0, 0.9: 1.281552, 0.95: 1.644854, 0.975: 1.959964, 0.99: 2.326348, 0.999: 3.090232, 0.9999: 3.719016, 1e-10: -6.361341, 1e-12: -7.034484, 1e-15: -7.941345, 1e-20: -9.262340} {
		assert.InDelta(t, z, tolerance.Quantile(p), 2e-6, "%v", p)
	}
}

// Random forms over shared sources, many of them one-sided: the chance lies
// within 0.003 of the share of random makings that hold.
func TestJointAgainstMonteCarlo(t *testing.T) {
	random := rand.New(rand.NewPCG(14, 1))
	systems, makings := 150, 40_000
	if testing.Short() {
		systems = 40
	}
	var worst float64
	for range systems {
		forms, sources := randomSystem(random)
		c := tolerance.Joint(forms, sources)
		share := holds(random, forms, sources, makings)
		off := math.Abs(c.Chance - share)
		worst = max(worst, off)
		assert.LessOrEqual(t, off, 0.003+5*math.Sqrt(share*(1-share)/float64(makings)), "%d forms", len(forms))
	}
	t.Logf("at most %.4f off in %d systems", worst, systems)
}

// randomSystem makes a few forms that share some of their sources.
func randomSystem(random *rand.Rand) ([]tolerance.Form, []tolerance.Source) {
	sources := make([]tolerance.Source, 3+random.IntN(20))
	for i := range sources {
		e := measure.Micrometres(10 + random.Int64N(800))
		sources[i] = tolerance.Within(e)
		if random.IntN(5) == 0 {
			sources[i].Low = measure.Length{}
		}
	}
	forms := make([]tolerance.Form, 1+random.IntN(14))
	for i := range forms {
		forms[i] = tolerance.Form{Nominal: measure.Micrometres(random.Int64N(1800)), Times: make([]float64, len(sources))}
		for range 1 + random.IntN(5) {
			forms[i].Times[random.IntN(len(sources))] += float64(random.IntN(5) - 2)
		}
	}
	return forms, sources
}

// holds is the share of random makings in which no form is negative.
func holds(random *rand.Rand, forms []tolerance.Form, sources []tolerance.Source, makings int) float64 {
	held := 0
	errors := make([]float64, len(sources))
	for range makings {
		for i, s := range sources {
			low, high := s.Low.Millimetres(), s.High.Millimetres()
			errors[i] = (high-low)/2 + random.NormFloat64()*(high+low)/6
		}
		if allHold(forms, errors) {
			held++
		}
	}
	return float64(held) / float64(makings)
}

// allHold reports whether no form is negative with the given errors.
func allHold(forms []tolerance.Form, errors []float64) bool {
	for i := range forms {
		clearance := forms[i].Nominal.Millimetres()
		for j, times := range forms[i].Times {
			clearance += times * errors[j]
		}
		if clearance < 0 {
			return false
		}
	}
	return true
}

// How far a chance may be off by the way it is worked out: of clearances that fail seldom a
// tenth of how often they do, and never more than a lattice is.
func TestHowFarAChanceMayBeOff(t *testing.T) {
	for mean, within := range map[float64]float64{2.575829: 2e-5 + 2*0.005/10, 3.290527: 2e-5 + 2*0.0005/10, 2.053749: 0.003 + 2e-5} {
		forms, sources := correlated(2, mean, 0)
		assert.InDelta(t, within, tolerance.Joint(forms, sources).Within, 1e-6, "%v", mean)
	}
	forms, sources := correlated(8, 0.5, 0.3)
	assert.InDelta(t, 0.003, tolerance.Joint(forms, sources).Within, 1e-9)
}

// Laws: never more likely than the unlikeliest alone, nor less than all of them
// independent of one another where all are correlated positively; the same forms
// twice are as likely as once.
func TestJointLaws(t *testing.T) {
	for _, rho := range []float64{0, 0.3, 0.6, 0.95} {
		forms, sources := correlated(5, 1.2, rho)
		alone, all := tolerance.Stack(&forms[0], sources).Chance, tolerance.Joint(forms, sources)
		assert.LessOrEqual(t, all.Chance, alone+1e-9)
		assert.GreaterOrEqual(t, all.Chance, math.Pow(alone, 5)-0.001)
		assert.InDelta(t, all.Chance, tolerance.Joint(append(forms, forms...), sources).Chance, 1e-9)
		assert.Equal(t, all, tolerance.Joint(forms, sources))
	}
	sources := []tolerance.Source{tolerance.Within(mm("1"))}
	assert.Equal(t, 1.0, tolerance.Joint(nil, nil).Chance)
	assert.Equal(t, 0.0, tolerance.Joint([]tolerance.Form{{Nominal: mm("1").Neg()}}, sources).Chance)
	assert.Equal(t, 1.0, tolerance.Joint([]tolerance.Form{{}}, sources).Chance)
	opposite := []tolerance.Form{{Times: []float64{1}}, {Times: []float64{-1}}}
	assert.InDelta(t, 0, tolerance.Joint(opposite, sources).Chance, 0.001, "nothing is left between two that exclude one another")
}

func BenchmarkJoint(b *testing.B) {
	for _, n := range []int{2, 4, 8} {
		forms, sources := correlated(n, 1.8, 0.3)
		b.Run(string(rune('0'+n)), func(b *testing.B) {
			for b.Loop() {
				tolerance.Joint(forms, sources)
			}
		})
	}
}
