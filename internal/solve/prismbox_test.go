package solve_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
	"creasefit/internal/tolerance"
)

// jar is a request for a round jar of honey in so many sides, on a fine ruler.
func jar(t testing.TB, sides int64) *solve.Request {
	r := thick(t, "prism-box")
	r.Height, r.Ruler = measure.Length{}, measure.Marks(measure.Inch)[6]
	r.Options["sides"] = enclosure.Value{Count: sides}
	return r
}

// Round contents and such as have sides themselves, which have no height.
func TestRandomPrismBoxesFoldUp(t *testing.T) {
	const want = 1000
	r := wide{rand.New(rand.NewPCG(3, 12))}
	k := jar(t, 6).Kind
	solved, inscribed := 0, 0
	for tries := 0; solved < want && tries < 20*want; tries++ {
		q := r.request(k)
		q.Height = measure.Length{}
		s, err := solve.Solve(context.Background(), q)
		if err != nil {
			checkRefusal(t, q, err)
			continue
		}
		solved++
		if q.Options["around"].Choice == "inscribed" {
			inscribed++
		}
		checkFolded(t, s)
	}
	require.Equal(t, want, solved)
	assert.Greater(t, inscribed, want/20)
}

func TestEveryCaliperOfAPrismBoxCounts(t *testing.T) {
	for sides := int64(3); sides <= 12; sides++ {
		for _, around := range []string{"circumscribed", "inscribed"} {
			t.Run(fmt.Sprint(sides, " ", around), func(t *testing.T) {
				r := jar(t, sides)
				r.Width, r.Options["around"] = measure.MustParse("5 in"), enclosure.Value{Choice: around}
				checkMutants(t, r, "lap", "base blank", "top blank", "lid wall", "half of a notch+")
				checkLayout(t, r)
				checkPlaces(t, r)
			})
		}
	}
}

// tangents are those of 180 degrees over n, in square roots, as the regular
// polygons that ruler and compass construct have them.
var tangents = map[int64]float64{
	3: math.Sqrt(3), 4: 1, 5: math.Sqrt(5 - 2*math.Sqrt(5)), 6: 1 / math.Sqrt(3),
	8: math.Sqrt2 - 1, 10: math.Sqrt(1 - 2/math.Sqrt(5)), 12: 2 - math.Sqrt(3),
}

// In all but no stock the side of a polygon about a circle is its diameter and
// the clearance times the tangent, and folded up the box is that far across.
func TestPrismBoxAgainstPlaneGeometry(t *testing.T) {
	for sides, tangent := range tangents {
		r := jar(t, sides)
		r.Caliper, r.Width = measure.Micrometres(1), measure.MustParse("6 in")
		plan, sizes := planned(t, r, r.Caliper)
		across := r.Width.Add(r.Fit.Min.Add(r.Fit.Max).Over(2)).Millimetres()
		p := plan.Build(sizes)
		side := p.Pieces[0].Strips[0].Cells[1].Size.Millimetres()
		assert.InDelta(t, across*tangent, side, 0.004, "%d sides", sides)
		perimeter := side * float64(sides)
		assert.Greater(t, perimeter, math.Pi*across, "a polygon about a circle is longer than it")
		r.Options["around"] = enclosure.Value{Choice: "inscribed"}
		plan, sizes = planned(t, r, r.Caliper)
		clear := across - r.Width.Millimetres()
		inner := plan.Build(sizes).Pieces[0].Strips[0].Cells[1].Size.Millimetres() - clear*tangent
		assert.InDelta(t, r.Width.Millimetres()*tangent/math.Sqrt(1+tangent*tangent), inner, 0.004, "the side of %d in a circle is its diameter times the sine", sides)
	}
}

// With four sides the inside is the centre less one caliper, and the lap takes
// another one: 101.00 mm for contents of 100 mm and a play of 1 mm in 0.30 mm
// stock are 101.60 mm from centre to centre, 101.90 mm outside, see the tray.
func TestPrismBoxOfFourSides(t *testing.T) {
	r := metric(t, "prism-box", 100, 0, 30)
	r.Options["sides"] = enclosure.Value{Count: 4}
	plan, sizes := planned(t, r, r.Caliper)
	p := plan.Build(sizes)
	assert.Equal(t, measure.MustParse("101.60 mm"), p.Pieces[0].Strips[0].Cells[1].Size)
	p.Pieces, p.Places, p.Bonds, p.Nests = p.Pieces[:2], p.Places[:1], p.Bonds[:1], nil
	proof := fold.Prove(&p, measure.Length{})
	assert.Equal(t, measure.MustParse("101.90 mm"), proof.Extent[0])
	assert.Equal(t, measure.MustParse("1 mm"), proof.Clearances[0].Clearance)
}

// A wall moves by no more than the errors of two marks, wherever these lie on
// the strip: walk round polygons whose marks are off and measure across.
func TestPrismBoxMarksAddUpToTwo(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 36))
	for sides := 3; sides <= 12; sides++ {
		most := 0.0
		for range 2000 {
			off, last, height := 0.0, 0.0, 0.0
			for k := 1; k <= sides/2; k++ { // up from the first wall to the one or the corner opposite
				next := []float64{-1, 1}[r.IntN(2)]
				if k == 1 {
					last = []float64{-1, 1}[r.IntN(2)]
				}
				height += math.Sin(2 * math.Pi * float64(k) / float64(sides))
				off += (next - last) * math.Sin(2*math.Pi*float64(k)/float64(sides))
				last = next
			}
			most = max(most, math.Abs(off))
			assert.InDelta(t, opposite(sides), height, 1e-9, "sides of one add up to how far it is across")
		}
		assert.LessOrEqual(t, most, 2+1e-9)
		assert.Greater(t, most, 1.0)
	}
}

// opposite is how far it is from a side of one to the side or corner opposite.
func opposite(sides int) float64 {
	inner := 1 / (2 * math.Tan(math.Pi/float64(sides)))
	if sides%2 == 0 {
		return 2 * inner
	}
	return inner + 1/(2*math.Sin(math.Pi/float64(sides)))
}

func TestPrismBoxToleranceStack(t *testing.T) {
	r := jar(t, 8)
	r.CutError, r.ScoreError = measure.Micrometres(400), measure.Micrometres(300)
	r.SizeTolerance, r.CaliperTolerance = tolerance.Within(measure.Micrometres(200)), measure.Micrometres(10)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	worst := func(f solve.Fit) float64 { return f.Nominal.Sub(f.WorstCase.Min).Millimetres() }
	assert.InDelta(t, 0.4+0.3+0.2+2*0.01, worst(s.Fits[0]), 1e-5, "two marks, the contents, two calipers")
	assert.InDelta(t, 2*(0.4+0.3*0.3535534)+3*0.01, worst(s.Fits[2]), 1e-5, "two cuts, two strokes at the stop of both laps, three calipers")
}

// By hand for contents of 3 x 1 1/2 in in 0.012 in stock with 1/16 to 1/8 in of
// clearance and a lid from snug to loose: laps and flaps need 1/8 in, half of 1/8
// and 1/4 in and four calipers, 0.3605 in, and have nine sixteenths of half of
// 3.0865 in, which is less than the side, 0.868 in; a lid is up to 1.506 + 1/16 + 2 x 0.012
// in deep; walls need 1/8 in and three calipers, and 1/8 in more for a full lid.
func TestPrismBoxRefusals(t *testing.T) {
	for _, c := range []struct{ option, value, expected string }{
		{"lap", "2 in", "from 3/8 in to 55/64 in"},
		{"lap", "1/4 in", "from 3/8 in to 55/64 in"},
		{"lid_depth", "2 in", "from 13/64 in to 1 37/64 in"},
	} {
		r := jar(t, 6)
		r.Options[c.option] = enclosure.Value{Length: measure.MustParse(c.value)}
		checkImpossible(t, r, c.option, c.expected)
	}
	r := jar(t, 6)
	r.Thickness = measure.MustParse("1/8 in")
	checkImpossible(t, r, "thickness", "at least 19/64 in")
	r = jar(t, 12) // 0.3605 / 9 x 16 / tan 15 = 2.3918, less 0.024 and 1/16 in
	r.Width = measure.MustParse("1 in")
	checkImpossible(t, r, "width", "at least 2 13/32 in")
	r = jar(t, 6)
	r.Height, r.Options["around"] = r.Width, enclosure.Value{Choice: "inscribed"}
	_, err := solve.Solve(context.Background(), r)
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	assert.Equal(t, []any{fault.Conflict, "height"}, []any{faults[0].Code, faults[0].Field})
}

// Somebody's own walls must be equally wide.
func TestCheckOfUnequalSides(t *testing.T) {
	r := jar(t, 6)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	own := s.ReadOff()
	own.Marks[3] = own.Marks[3].Add(measure.Sixtyfourths(4))
	_, err = solve.CheckOwn(context.Background(), r, own)
	assert.ErrorContains(t, err, "panels that must be equally wide are not")
}

func BenchmarkSolvePrismBox(b *testing.B) {
	for _, sides := range []int64{3, 6, 12} {
		b.Run(fmt.Sprint(sides), func(b *testing.B) {
			r := jar(b, sides)
			benchmarkSolve(b, r)
		})
	}
}

// The score of a prism's lap lies whole papers beside its line where hands set it, and as
// far as the formula says on an endlessly fine ruler: for six sides one paper, and 1.1547.
func TestTwinsKeepTheirOwnScores(t *testing.T) {
	s, err := solve.Solve(t.Context(), jar(t, 6))
	require.NoError(t, err)
	for _, wall := range []int{0, 2} {
		set, ideal := s.Pattern.Pieces[wall].Strips[0].Scores[0].Beside, s.Ideal.Pieces[wall].Strips[0].Scores[0].Beside
		assert.Equal(t, s.Request.Caliper, set)
		assert.InDelta(t, 2/math.Sqrt(3), float64(ideal.Nanometres())/float64(s.Request.Caliper.Nanometres()), 1e-5)
	}
}
