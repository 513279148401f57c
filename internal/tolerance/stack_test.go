package tolerance_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/tolerance"
)

// mm and in are shorthand for the tables below.
func mm(text string) measure.Length { return measure.MustParse(text + "mm") }
func in(text string) measure.Length { return measure.MustParse(text + "in") }

// part is so many times a length with that error.
type part struct {
	times float64
	error measure.Length
}

func term(times float64, e measure.Length) part { return part{times, e} }

// stack adds up parts that have a source each.
func stack(nominal measure.Length, parts []part) tolerance.Result {
	f := tolerance.Form{Nominal: nominal}
	var sources []tolerance.Source
	for _, p := range parts {
		f.Times = append(f.Times, p.times)
		sources = append(sources, tolerance.Within(p.error))
	}
	return tolerance.Stack(&f, sources)
}

// example is a published stack: sizes with their signs and errors, and what is
// printed or follows from it by hand.
type example struct {
	name     string
	sizes    []measure.Length // with their coefficients
	terms    []part
	nominal  measure.Length
	worst    measure.Length
	rss      measure.Length
	rssDelta measure.Length // how far the printed figure is rounded
}

var examples = []example{
	{
		name:    "Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., example 1-3: w = a - b - c - d",
		sizes:   []measure.Length{in("1.750"), in("0.750").Neg(), in("0.120").Neg(), in("0.875").Neg()},
		terms:   []part{term(1, in("0.003")), term(-1, in("0.001")), term(-1, in("0.005")), term(-1, in("0.001"))},
		nominal: in("0.005"), worst: in("0.010"), rss: in("0.006"), // sqrt(9 + 1 + 25 + 1) = 6
	},
	{
		name:    "course unit PAI-150: plate, spacer and cap in a housing",
		sizes:   []measure.Length{mm("20.200"), mm("6.000").Neg(), mm("9.000").Neg(), mm("5.000").Neg()},
		terms:   []part{term(1, mm("0.05")), term(-1, mm("0.10")), term(-1, mm("0.12")), term(-1, mm("0.08"))},
		nominal: mm("0.200"), worst: mm("0.35"), rss: mm("0.182483"), rssDelta: measure.Nanometres(1),
	},
	{
		name:    "an engineering note: three parts in a housing",
		sizes:   []measure.Length{in("4.020"), in("2.000").Neg(), in("1.500").Neg(), in("0.500").Neg()},
		terms:   []part{term(1, in("0.005")), term(-1, in("0.005")), term(-1, in("0.003")), term(-1, in("0.002"))},
		nominal: in("0.020"), worst: in("0.015"), rss: in("0.00794"), rssDelta: in("0.00001"),
	},
	{
		name:    "housing, two bushings and a shaft: sqrt(0.0214) by hand",
		sizes:   []measure.Length{mm("100.00"), mm("5.00").Times(-2), mm("88.00").Neg()},
		terms:   []part{term(1, mm("0.10")), term(-1, mm("0.05")), term(-1, mm("0.05")), term(-1, mm("0.08"))},
		nominal: mm("2.00"), worst: mm("0.28"), rss: mm("0.146287"), rssDelta: measure.Nanometres(1),
	},
	{
		name: "ten parts of 0.1 each, as several pages print it",
		terms: []part{term(1, mm("0.1")), term(1, mm("0.1")), term(1, mm("0.1")), term(1, mm("0.1")), term(1, mm("0.1")),
			term(1, mm("0.1")), term(1, mm("0.1")), term(1, mm("0.1")), term(1, mm("0.1")), term(1, mm("0.1"))},
		worst: mm("1.0"), rss: mm("0.316"), rssDelta: mm("0.0005"),
	},
	{
		name:    "Shigley, 9th ed., problem 1-16 solved: a pin 1.569 +- 0.016 makes the gap 0.004 to 0.050",
		sizes:   []measure.Length{in("1.569"), in("1.500").Neg(), in("0.042").Neg()},
		terms:   []part{term(1, in("0.016")), term(-1, in("0.005")), term(-1, in("0.002"))},
		nominal: in("0.027"), worst: in("0.023"), rss: in("0.01688"), rssDelta: in("0.00001"),
	},
	{
		name:    "Shigley, 9th ed., problem 1-17: an outer diameter, the coefficient 2",
		sizes:   []measure.Length{in("3.734"), in("0.139").Times(2)},
		terms:   []part{term(1, in("0.028")), term(2, in("0.004"))},
		nominal: in("4.012"), worst: in("0.036"), rss: in("0.02912"), rssDelta: in("0.00001"),
	},
	{
		name:    "four parts in an envelope (M. Harry), all +- 0.003",
		sizes:   []measure.Length{in("4.976"), in("1.240").Times(-4)},
		terms:   []part{term(1, in("0.003")), term(-1, in("0.003")), term(-1, in("0.003")), term(-1, in("0.003")), term(-1, in("0.003"))},
		nominal: in("0.016"), worst: in("0.015"), rss: measure.Nanometres(170_388), rssDelta: measure.Nanometres(2),
	},
}

func TestWorkedExamples(t *testing.T) {
	for _, e := range examples {
		nominal := measure.Sum(e.sizes...)
		assert.Equal(t, e.nominal, nominal, e.name)
		r := stack(nominal, e.terms)
		assert.Equal(t, nominal, r.Nominal, e.name)
		assert.Equal(t, measure.Range{Min: nominal.Sub(e.worst), Max: nominal.Add(e.worst)}, r.WorstCase, e.name)
		assert.InDelta(t, e.rss.Nanometres(), r.RSS.Max.Sub(nominal).Nanometres(), float64(e.rssDelta.Nanometres()), e.name)
		assert.Equal(t, nominal, r.RSS.Min.Add(r.RSS.Max).Over(2), e.name)
	}
}

// Shigley, 9th ed., on the volume of a block 1.500 +- 0.002 by 1.875 +- 0.003
// by 3.000 +- 0.004 in: to first order, each error times the face across it, so
// the coefficients are the areas 5.625, 4.5 and 2.8125.
func TestFirstOrderVolume(t *testing.T) {
	r := stack(in("8.4375"), []part{
		term(5.625, in("0.002")), term(4.5, in("0.003")), term(2.8125, in("0.004")),
	})
	assert.Equal(t, in("0.036"), r.WorstCase.Max.Sub(r.Nominal))
}

// ISO 286, 25 H7/g6: a hole of 25.000 to 25.021 and a shaft of 24.980 to
// 24.993 mm have a clearance of 0.007 to 0.041 mm.
func TestLimitsAndFits(t *testing.T) {
	hole, shaft := mm("25.0105"), mm("24.9865")
	r := stack(hole.Sub(shaft), []part{term(1, mm("0.0105")), term(-1, mm("0.0065"))})
	assert.Equal(t, measure.Range{Min: mm("0.007"), Max: mm("0.041")}, r.WorstCase)
}

func TestChanceOfWorkedExamples(t *testing.T) {
	for _, c := range []struct {
		name     string
		nominal  measure.Length
		terms    []part
		notFit   float64
		relative float64
	}{
		{"bearing 1.063, shaft 1.048, deviations 0.0025 and 0.0050: z = 2.683282",
			in("0.015"), []part{term(1, in("0.0075")), term(-1, in("0.0150"))}, 0.00364518, 1e-5},
		{"bearing 1.500, shaft 1.480, deviations 0.0020 and 0.0040: z = 4.472136",
			in("0.020"), []part{term(1, in("0.0060")), term(-1, in("0.0120"))}, 3.8721e-6, 1e-4},
	} {
		got := 1 - stack(c.nominal, c.terms).Chance
		assert.InEpsilon(t, c.notFit, got, c.relative, c.name)
	}
}

// Four lengths of variances 0.0004, 0.0009, 0.0004 and 0.0001 add up to
// 12.00; within 0.10 either way with probability 0.981578.
func TestTwoSidedChance(t *testing.T) {
	terms := []part{term(1, mm("0.06")), term(1, mm("0.09")), term(1, mm("0.06")), term(1, mm("0.03"))}
	above := stack(mm("0.10"), terms).Chance
	assert.InDelta(t, 0.981578, 2*above-1, 5e-7)
}

// The cumulative normal table, in every textbook of statistics.
func TestNormalTable(t *testing.T) {
	for z, phi := range map[string]float64{
		"1.00": 0.841345, "1.28": 0.899727, "1.645": 0.950015, "1.96": 0.975002, "2.00": 0.977250,
		"2.326": 0.989991, "2.576": 0.995002, "3.00": 0.998650, "2.5": 0.99379, "3.5": 0.99977,
		"1.281552": 0.90, "1.644854": 0.95, "1.959964": 0.975, "2.326348": 0.99, "2.575829": 0.995,
	} {
		deviation := []part{term(1, mm("3"))} // three standard deviations of 1 mm
		assert.InDelta(t, phi, stack(mm(z), deviation).Chance, 5e-6, "z = %s", z)
		assert.InDelta(t, 1-phi, stack(mm(z).Neg(), deviation).Chance, 5e-6, "z = -%s", z)
	}
}

// Process capability: a centred process rejects on both sides together.
func TestCapabilityTable(t *testing.T) {
	for _, c := range []struct {
		thirds int64 // of the capability index
		reject float64
	}{{1, 0.317311}, {2, 0.0455003}, {3, 0.00269980}, {4, 6.33425e-5}, {5, 5.73303e-7}, {6, 1.97318e-9}} {
		low := stack(measure.Millimetres(-c.thirds), []part{term(1, mm("3"))}).Chance
		assert.InEpsilon(t, c.reject, 2*low, 1e-5, "index %d/3", c.thirds)
	}
}

func TestNoErrorIsCertain(t *testing.T) {
	assert.Equal(t, 1.0, stack(mm("1"), nil).Chance)
	assert.Equal(t, 1.0, stack(measure.Length{}, nil).Chance)
	assert.Equal(t, 0.0, stack(mm("1").Neg(), []part{term(1, measure.Length{})}).Chance)
	assert.Equal(t, 0.5, stack(measure.Length{}, []part{term(1, mm("1"))}).Chance)
}

// A million random makings of a stack: the share that fits lies within five
// standard errors of the chance, and so does the share within root-sum-square.
func TestMonteCarlo(t *testing.T) {
	const n = 1_000_000
	random := rand.New(rand.NewPCG(25, 4))
	nominal := in("1/32")
	terms := []part{term(1, in("1/32")), term(-1, in("1/64")), term(-2, mm("0.011")), term(-0.5, mm("0.4"))}
	fits, within := 0, 0
	r := stack(nominal, terms)
	for range n {
		clearance := nominal.Millimetres()
		for _, t := range terms {
			clearance += t.times * random.NormFloat64() * t.error.Millimetres() / 3
		}
		if clearance >= 0 {
			fits++
		}
		if r.RSS.Min.Millimetres() <= clearance && clearance <= r.RSS.Max.Millimetres() {
			within++
		}
	}
	assertShare(t, r.Chance, fits, n)
	assertShare(t, 0.9973002, within, n) // three deviations either way, as the capability table has it
}

// assertShare checks a share of n against its probability.
func assertShare(t *testing.T, p float64, count, n int) {
	t.Helper()
	standardError := math.Sqrt(p * (1 - p) / float64(n))
	assert.InDelta(t, p, float64(count)/float64(n), 5*standardError)
}

// Laws: the root-sum-square range lies within the worst case, which is
// centred; neither order nor signs matter; more error never helps.
func TestLaws(t *testing.T) {
	draw := rapid.Custom(func(t *rapid.T) part {
		times := float64(rapid.Int64Range(-6, 6).Draw(t, "times")) / float64(rapid.Int64Range(1, 4).Draw(t, "over"))
		return part{times, measure.Nanometres(rapid.Int64Range(0, 2_000_000).Draw(t, "error"))}
	})
	rapid.Check(t, func(t *rapid.T) {
		terms := rapid.SliceOfN(draw, 1, 8).Draw(t, "terms")
		nominal := measure.Nanometres(rapid.Int64Range(-5_000_000, 5_000_000).Draw(t, "nominal"))
		r := stack(nominal, terms)
		assert.False(t, r.RSS.Min.Less(r.WorstCase.Min) || r.WorstCase.Max.Less(r.RSS.Max))
		assert.Equal(t, nominal.Times(2), r.WorstCase.Min.Add(r.WorstCase.Max))
		assert.True(t, 0 <= r.Chance && r.Chance <= 1)

		turned := make([]part, len(terms))
		for i, term := range terms {
			term.times = -term.times
			turned[len(terms)-1-i] = term
		}
		other := stack(nominal, turned)
		assert.Equal(t, r.WorstCase, other.WorstCase)
		assert.InDelta(t, r.Chance, other.Chance, 1e-12)

		if more := stack(nominal, append(turned, draw.Draw(t, "more"))); nominal.Sign() > 0 {
			assert.LessOrEqual(t, more.Chance, r.Chance+1e-12)
		}
	})
}

func TestStackAllocatesNothing(t *testing.T) {
	f, sources := tolerance.Form{Times: []float64{1, -1}}, []tolerance.Source{tolerance.Within(mm("0.1")), tolerance.Within(mm("0.2"))}
	assert.Zero(t, testing.AllocsPerRun(100, func() { tolerance.Stack(&f, sources) }))
}

// The floor is the one call that the chance cannot do without.
func BenchmarkStack(b *testing.B) {
	f := tolerance.Form{Nominal: mm("0.2"), Times: []float64{1, -1, -1, -1}}
	sources := []tolerance.Source{tolerance.Within(mm("0.05")), tolerance.Within(mm("0.10")), tolerance.Within(mm("0.12")), tolerance.Within(mm("0.08"))}
	b.Run("stack", func(b *testing.B) {
		for b.Loop() {
			tolerance.Stack(&f, sources)
		}
	})
	b.Run("floor", func(b *testing.B) {
		x := 0.2
		for b.Loop() {
			x = math.Erfc(x) / 2
		}
	})
}

func ExampleStack() {
	// A strip's back of 3 5/8 in, set by two scores, round contents that need
	// 3.614 in.
	need := measure.MustParse("91.796 mm")
	score, caliper := tolerance.Within(measure.MustParse("1/64 in")), tolerance.Within(measure.MustParse("0.011 mm"))
	back := tolerance.Form{Nominal: measure.MustParse("3 5/8 in").Sub(need), Times: []float64{1, -1, -2}}
	r := tolerance.Stack(&back, []tolerance.Source{score, score, caliper})
	fmt.Println("nominal", r.Nominal.Rounded(measure.Millimetre))
	fmt.Println("worst case", r.WorstCase.Min.Rounded(measure.Millimetre), "to", r.WorstCase.Max.Rounded(measure.Millimetre))
	fmt.Println("root-sum-square", r.RSS.Min.Rounded(measure.Millimetre), "to", r.RSS.Max.Rounded(measure.Millimetre))
	fmt.Printf("goes in: %.1f %%\n", 100*r.Chance)
	// Output:
	// nominal 0.279
	// worst case -0.5368 to 1.0948
	// root-sum-square -0.2827 to 0.8407
	// goes in: 93.2 %
}
