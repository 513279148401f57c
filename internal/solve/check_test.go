package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// lengths reads a list of lengths.
func lengths(texts ...string) []measure.Length {
	ls := make([]measure.Length, len(texts))
	for i, text := range texts {
		ls[i] = measure.MustParse(text)
	}
	return ls
}

// strip is the slotted band of common practice as read off a ruler, with the
// given scores.
func strip(marks ...string) *solve.Measurements {
	return &solve.Measurements{
		Blanks: [][2]measure.Length{{measure.MustParse("8 1/4 in"), measure.MustParse("1 3/4 in")}},
		Marks:  lengths(marks...), Depths: lengths("1 in", "1 in"),
	}
}

func snugStrip(t testing.TB) *solve.Request {
	return request(t, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0)
}

func TestCheckOfGoodMeasurements(t *testing.T) {
	c, err := solve.CheckOwn(context.Background(), snugStrip(t), strip("1/2 in", "2 1/4 in", "5 7/8 in", "7 3/4 in"))
	require.NoError(t, err)
	assert.True(t, c.Works)
	assert.Empty(t, c.Mend)
	assert.Equal(t, measure.MustParse("0.011 in"), c.Fits[0].Nominal, "3 5/8 less 3.614, by hand")
	assert.Equal(t, measure.MustParse("3.511 in"), c.Greatest.Width)
	assert.Equal(t, measure.MustParse("0.101 in"), c.Greatest.Thickness)
	for _, closure := range c.Closures {
		assert.True(t, closure.Off.IsZero(), closure.Name)
	}
}

func TestCheckFindsWhatDoesNotCloseAndMendsIt(t *testing.T) {
	c, err := solve.CheckOwn(context.Background(), snugStrip(t), strip("1/2 in", "2 1/4 in", "5 7/8 in", "7 5/8 in"))
	require.NoError(t, err)
	assert.False(t, c.Works)
	require.Len(t, c.Closures, 1)
	assert.Equal(t, measure.MustParse("1/8 in"), c.Closures[0].Off.Abs(), "the halves are an eighth short of the back")
	assert.True(t, c.Mended)
	require.Len(t, c.Mend, 1, "the smallest change is one size: %v", c.Mend)
	assert.Equal(t, measure.MustParse("1/8 in"), c.Mend[0].To.Sub(c.Mend[0].From).Abs())
}

func TestCheckFindsWhatIsTooTight(t *testing.T) {
	r := snugStrip(t)
	r.Width = measure.MustParse("3 5/8 in")
	c, err := solve.CheckOwn(context.Background(), r, strip("1/2 in", "2 1/4 in", "5 7/8 in", "7 3/4 in"))
	require.NoError(t, err)
	assert.False(t, c.Works)
	assert.Equal(t, "tight", c.Fits[0].Verdict)
	assert.False(t, c.Proof.Holds)
	assert.True(t, c.Mended)
}

func TestCheckFindsTheContents(t *testing.T) {
	r := snugStrip(t)
	r.Width = measure.Length{}
	c, err := solve.CheckOwn(context.Background(), r, strip("1/2 in", "2 1/4 in", "5 7/8 in", "7 3/4 in"))
	require.NoError(t, err)
	assert.Equal(t, measure.MustParse("3.511 in"), c.Request.Width)
	assert.True(t, c.Works, "%v", c.Findings)
}

func TestCheckRefusesWrongCounts(t *testing.T) {
	rows := map[string]struct {
		own   *solve.Measurements
		field string
	}{
		"no blank":        {&solve.Measurements{Marks: lengths("1/2 in", "2 in", "5 in", "7 in"), Depths: lengths("1 in", "1 in")}, "blank"},
		"too few scores":  {strip("1/2 in", "2 1/4 in"), "marks"},
		"scores go down":  {strip("1/2 in", "5 7/8 in", "2 1/4 in", "7 3/4 in"), "marks"},
		"scores too long": {strip("1/2 in", "2 1/4 in", "5 7/8 in", "9 in"), "marks"},
	}
	for name, row := range rows {
		t.Run(name, func(t *testing.T) {
			_, err := solve.CheckOwn(context.Background(), snugStrip(t), row.own)
			var faults fault.Faults
			require.ErrorAs(t, err, &faults)
			var fields []string
			for _, f := range faults {
				fields = append(fields, f.Field)
			}
			assert.Contains(t, fields, row.field)
		})
	}
}

func TestCheckRefusesOptionsThatContradict(t *testing.T) {
	r := snugStrip(t)
	r.Options["tab"] = enclosure.Value{Length: measure.MustParse("3/4 in")}
	_, err := solve.CheckOwn(context.Background(), r, strip("1/2 in", "2 1/4 in", "5 7/8 in", "7 3/4 in"))
	var faults fault.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, fault.Conflict, faults[0].Code)
}

// What the service hands out it must also find good.
func TestCheckAgreesWithSolve(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := snugStrip(t)
		r.Width = measure.Micrometres(rapid.Int64Range(30_000, 200_000).Draw(rt, "width"))
		r.Thickness = measure.Micrometres(rapid.Int64Range(100, 40_000).Draw(rt, "thickness"))
		s, err := solve.Solve(context.Background(), r)
		if err != nil {
			rt.Skip("no such band")
		}
		c, err := solve.CheckOwn(context.Background(), r, s.ReadOff())
		require.NoError(rt, err)
		assert.True(rt, c.Works, "%v %v %v", c.Closures, c.Windows, c.Findings)
		for i, f := range s.Fits {
			assert.Equal(rt, f, c.Fits[i])
		}
	})
}
