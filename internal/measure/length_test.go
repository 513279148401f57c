package measure_test

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
)

func TestPublishedConversions(t *testing.T) {
	for _, c := range []struct {
		name string
		in   measure.Length
		nm   int64
	}{
		{"1 in = 25.4 mm exactly (addendum to NBS Circular 572, 1960; NIST SP 811, appendix B)", measure.Inches(1), 25_400_000},
		{"1 yd = 0.9144 m (the same)", measure.Inches(36), 914_400_000},
		{"1/64 in = 0.396875 mm (the same, divided)", measure.Sixtyfourths(1), 396_875},
		{"1/32 in = 0.79375 mm", measure.Sixtyfourths(2), 793_750},
		{"1/16 in = 1.5875 mm", measure.Sixtyfourths(4), 1_587_500},
		{"1/8 in = 3.175 mm", measure.Sixtyfourths(8), 3_175_000},
		{"12 points = 0.3048 mm", measure.Thousandths(12), 304_800},
		{"85.60 mm, ID-1 (ISO/IEC 7810)", measure.Micrometres(85_600), 85_600_000},
	} {
		assert.Equal(t, c.nm, c.in.Nanometres(), c.name)
	}
}

// ISO/IEC 7810 gives ID-1 in millimetres and in inches, each rounded: the two
// are not the same length and must not be taken for it.
func TestRoundedTwinsStayApart(t *testing.T) {
	assert.NotEqual(t, measure.Micrometres(85_600), measure.Thousandths(3370))
	assert.Equal(t, int64(85_598_000), measure.Thousandths(3370).Nanometres())
	assert.Equal(t, int64(53_975_000), measure.Thousandths(2125).Nanometres())
}

func TestNearestSixtyFourth(t *testing.T) {
	const pocketbook = "ICS Building Trades Pocketbook, Decimal Equivalents of 64ths"
	for _, c := range []struct {
		source         string
		tenThousandths int64 // of an inch
		step, want     string
	}{
		{pocketbook, 1330, "1/64 in", "9/64 in"},
		{pocketbook, 3670, "1/64 in", "23/64 in"},
		{pocketbook, 8979, "1/64 in", "57/64 in"},
		{"common practice", 4000, "1/64 in", "13/32 in"},
		{"common practice", 3000, "1/16 in", "5/16 in"},
		{"common practice", 7000, "1/64 in", "45/64 in"},
		{"common practice", 1230, "1/8 in", "1/8 in"},
		{"11/3 in to a 16th", 36667, "1/16 in", "3 11/16 in"},
		{"11/3 in to a 32nd", 36667, "1/32 in", "3 21/32 in"},
		{"11/3 in to a 64th", 36667, "1/64 in", "3 43/64 in"},
	} {
		step := mustStep(t, c.step)
		nearest := step.Nearest(measure.Inches(c.tenThousandths).Over(10_000))
		assert.Equal(t, c.want, step.Format(nearest), "%d/10000 in to %s: %s", c.tenThousandths, c.step, c.source)
	}
}

func TestRoundingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, l := drawStep(t), drawSigned(t)
		down, up, nearest := s.Down(l), s.Up(l), s.Nearest(l)
		for _, m := range []measure.Length{down, up, nearest} {
			assert.True(t, m.IsMultipleOf(s))
		}
		assert.False(t, l.Less(down), "down is at most l")
		assert.False(t, up.Less(l), "up is at least l")
		assert.True(t, l.Sub(down).Less(s.Size()) && up.Sub(l).Less(s.Size()))
		assert.True(t, nearest == down || nearest == up)
		assert.False(t, s.Size().Less(l.Sub(nearest).Abs().Times(2)), "no more than half a step off")
		assert.Equal(t, s.Nearest(l.Neg()), nearest.Neg(), "halves go away from zero on both sides")
	})
}

func TestNearestHalvesAwayFromZero(t *testing.T) {
	step := mustStep(t, "1 mm")
	assert.Equal(t, measure.Millimetres(3), step.Nearest(measure.Micrometres(2500)))
	assert.Equal(t, measure.Millimetres(-3), step.Nearest(measure.Micrometres(-2500)))
}

func TestArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawSigned(t), drawSigned(t)
		n := rapid.Int64Range(1, 5000).Draw(t, "n")
		assert.Equal(t, a, a.Add(b).Sub(b))
		assert.Equal(t, measure.Sum(a, b, a), a.Times(2).Add(b))
		assert.Equal(t, a.Compare(b), a.Sub(b).Sign())
		assert.Equal(t, a.Less(b), b.Compare(a) > 0)
		assert.Equal(t, a.Sub(b).IsZero(), a == b)
		assert.Equal(t, measure.Max(a, b).Add(measure.Min(a, b)), a.Add(b))
		assert.Equal(t, a.Abs(), measure.Max(a, a.Neg()))
		assert.Equal(t, roundedRat(big.NewRat(a.Nanometres(), n)), a.Over(n).Nanometres())
	})
}

// roundedRat is the slow, obvious rounding: to the nearest, halves away from
// zero.
func roundedRat(x *big.Rat) int64 {
	half := big.NewRat(1, 2)
	if x.Sign() < 0 {
		half.Neg(half)
	}
	sum := new(big.Rat).Add(x, half)
	return new(big.Int).Quo(sum.Num(), sum.Denom()).Int64()
}

func TestCoarsestMark(t *testing.T) {
	for text, want := range map[string]string{
		"3 in": "1 in", "3 1/2 in": "1/2 in", "3 5/8 in": "1/8 in", "3 63/64 in": "1/64 in", "0 in": "1 in",
		"120 mm": "10 mm", "125 mm": "5 mm", "92 mm": "1 mm", "92.5 mm": "0.5 mm", "0.3 mm": "", "0.012 in": "",
	} {
		unit := measure.Inch
		if text[len(text)-2:] == "mm" {
			unit = measure.Millimetre
		}
		s, ok := measure.CoarsestMark(measure.MustParse(text), unit)
		assert.Equal(t, want, s.String(), text)
		assert.Equal(t, want != "", ok, text)
	}
}

func TestSearchSteps(t *testing.T) {
	for finest, want := range map[string][]string{
		"1/64 in": {"1/2 in", "1/4 in", "1/8 in", "1/16 in", "1/32 in", "1/64 in"},
		"1/16 in": {"1/2 in", "1/4 in", "1/8 in", "1/16 in"},
		"1 in":    {},
		"0.5 mm":  {"5 mm", "1 mm", "0.5 mm"},
		"1 mm":    {"5 mm", "1 mm"},
	} {
		got := []string{}
		for _, s := range measure.SearchSteps(mustStep(t, finest)) {
			got = append(got, s.String())
		}
		assert.Equal(t, want, got, finest)
	}
}

// everyStep returns the marks of both rulers.
func everyStep() []measure.Step {
	return append(append([]measure.Step{}, measure.Marks(measure.Inch)...), measure.Marks(measure.Millimetre)...)
}

func drawStep(t *rapid.T) measure.Step { return rapid.SampledFrom(everyStep()).Draw(t, "step") }

func drawLength(t *rapid.T) measure.Length {
	return measure.Nanometres(rapid.Int64Range(0, measure.Largest().Nanometres()).Draw(t, "nm"))
}

func drawSigned(t *rapid.T) measure.Length {
	most := measure.Largest().Nanometres()
	return measure.Nanometres(rapid.Int64Range(-most, most).Draw(t, "nm"))
}

func mustStep(t testing.TB, text string) measure.Step {
	t.Helper()
	s, err := measure.ParseStep(text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A ruler in inches goes down to 64ths, one in millimetres to halves (common practice).
func TestFinestMarks(t *testing.T) {
	assert.Equal(t, measure.MustParseStep("1/64 in"), measure.Finest(measure.Inch))
	assert.Equal(t, measure.MustParseStep("0.5 mm"), measure.Finest(measure.Millimetre))
	assert.Equal(t, measure.MustParseStep("0.5 mm"), measure.Finest(measure.NoUnit))
}

// Lengths in sentences have three places of an inch and two of a millimetre: 0.3048 mm is
// 12 thousandths (1 in = 25.4 mm), 1/32 in is 0.03125.
func TestPlainDecimals(t *testing.T) {
	for l, want := range map[measure.Length][2]string{
		measure.Micrometres(305): {"0.012 in", "0.31 mm"}, measure.Sixtyfourths(2): {"0.031 in", "0.79 mm"}, measure.Inches(1): {"1 in", "25.4 mm"},
	} {
		assert.Equal(t, want, [2]string{l.Plain(measure.Inch), l.Plain(measure.Millimetre)})
	}
}
