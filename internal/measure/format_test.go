package measure_test

import (
	"encoding/json"
	"math/big"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		step   string
		length measure.Length
		want   string
		url    string
	}{
		{"1/8 in", measure.Sixtyfourths(232), "3 5/8 in", "3-5/8in"},
		{"1/64 in", measure.Sixtyfourths(232), "3 5/8 in", "3-5/8in"},
		{"1/8 in", measure.Sixtyfourths(32), "1/2 in", "1/2in"},
		{"1/8 in", measure.Inches(8), "8 in", "8in"},
		{"1/8 in", measure.Length{}, "0 in", "0in"},
		{"1/8 in", measure.Sixtyfourths(-232), "-3 5/8 in", "-3-5/8in"},
		{"1/8 in", measure.Sixtyfourths(1), "0.015625 in", "0.015625in"},
		{"1/8 in", measure.Thousandths(12), "0.012 in", "0.012in"},
		{"1/8 in", measure.Micrometres(92_100), "92.1 mm", "92.1mm"},
		{"0.5 mm", measure.Micrometres(92_500), "92.5 mm", "92.5mm"},
		{"1 mm", measure.Millimetres(92), "92 mm", "92mm"},
		{"1 mm", measure.Micrometres(-92_075), "-92.075 mm", "-92.075mm"},
		{"1 mm", measure.Nanometres(1), "0.000001 mm", "0.000001mm"},
	} {
		s := mustStep(t, c.step)
		assert.Equal(t, c.want, s.Format(c.length), "%d nm at %s", c.length.Nanometres(), c.step)
		assert.Equal(t, c.url, s.FormatURL(c.length), "%d nm at %s", c.length.Nanometres(), c.step)
	}
	assert.Empty(t, measure.Step{}.String())
}

// The law: what is written is read back to the same length, on a mark or not.
func TestReadsBackWhatItWrites(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, l := drawStep(t), drawLength(t)
		assertReadsBack(t, s, s.Down(l))
		assertReadsBack(t, s, l)
	})
}

func TestReadsBackEveryMark(t *testing.T) {
	for _, s := range everyStep() {
		for n := int64(0); n < 1000; n++ {
			assertReadsBack(t, s, s.Size().Times(n))
		}
	}
}

type failer interface {
	Errorf(format string, args ...any)
	FailNow()
}

func assertReadsBack(t failer, s measure.Step, l measure.Length) {
	for _, text := range []string{s.Format(l), s.FormatURL(l)} {
		got, err := measure.Parse(text, measure.NoUnit, measure.ClearComma)
		require.NoError(t, err, text)
		assert.Equal(t, l, got, text)
	}
}

// Fractions are in lowest terms and never have a denominator beyond the step.
func TestFractionsAreReduced(t *testing.T) {
	fraction := regexp.MustCompile(`(\d+)/(\d+)`)
	for _, s := range measure.Marks(measure.Inch) {
		for n := int64(1); n < 200; n++ {
			l := s.Size().Times(n)
			parts := fraction.FindStringSubmatch(s.Format(l))
			if parts == nil {
				assert.True(t, l.IsMultipleOf(measure.Marks(measure.Inch)[0]))
				continue
			}
			over, _ := new(big.Int).SetString(parts[1], 10)
			under, _ := new(big.Int).SetString(parts[2], 10)
			assert.Equal(t, int64(1), new(big.Int).GCD(nil, nil, over, under).Int64(), s.Format(l))
			assert.LessOrEqual(t, under.Int64(), measure.Inches(1).Nanometres()/s.Size().Nanometres())
		}
	}
}

// Decimals against big rationals.
func TestDecimalEqualsRationals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, places := drawSigned(t), rapid.IntRange(0, 8).Draw(t, "places")
		for unit, per := range map[measure.Unit]int64{measure.Inch: 25_400_000, measure.Millimetre: 1_000_000} {
			want := decimal(big.NewRat(l.Nanometres(), per), places)
			assert.Equal(t, want, string(measure.AppendDecimal(nil, l, unit, places)))
		}
	})
}

// decimal is the slow, obvious way: math/big rounds halves away from zero.
func decimal(x *big.Rat, places int) string {
	s := x.FloatString(places)
	if places > 0 {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// A rounded number prints in JSON as the decimal itself.
func TestRoundedPrintsShort(t *testing.T) {
	places := map[measure.Unit]int{measure.Inch: 6, measure.Millimetre: 4}
	rapid.Check(t, func(t *rapid.T) {
		l := drawSigned(t)
		for unit, n := range places {
			got, err := json.Marshal(l.Rounded(unit))
			require.NoError(t, err)
			if abs := l.Abs().Nanometres(); abs < 100 {
				continue // below the last place, where JSON may print an exponent
			}
			assert.Equal(t, string(measure.AppendDecimal(nil, l, unit, n)), string(got))
		}
	})
}

func TestRoundedHasNoNegativeZero(t *testing.T) {
	got, err := json.Marshal(measure.Nanometres(-1).Rounded(measure.Millimetre))
	require.NoError(t, err)
	assert.Equal(t, "0", string(got))
}

func TestAppendingAllocatesNothing(t *testing.T) {
	s, l := mustStep(t, "1/16 in"), measure.Sixtyfourths(236)
	buffer := make([]byte, 0, 64)
	allocations := testing.AllocsPerRun(100, func() {
		buffer = s.AppendReading(buffer[:0], l)
		buffer = s.AppendURL(buffer, l)
		buffer = measure.AppendDecimal(buffer, l, measure.Millimetre, 6)
	})
	assert.Zero(t, allocations)
	assert.Equal(t, "3 11/16 in3-11/16in93.6625", string(buffer))
}

// TestPlainIsOfTheUsualPlaces: drawings of the trade give thousandths of an inch, and hundredths of a
// millimetre (common practice).
func TestPlainIsOfTheUsualPlaces(t *testing.T) {
	l := measure.MustParse("12.3456 mm")
	assert.Equal(t, "12.35 mm", l.Plain(measure.Millimetre))
	assert.Equal(t, "0.486 in", l.Plain(measure.Inch))
	assert.Equal(t, "0.0123 in", measure.MustParse("0.01234 in").Decimal(measure.Inch, 4))
}

func TestUnitString(t *testing.T) {
	assert.Equal(t, "in", measure.Inch.String())
	assert.Equal(t, "mm", measure.Millimetre.String())
	assert.Empty(t, measure.NoUnit.String())
}
