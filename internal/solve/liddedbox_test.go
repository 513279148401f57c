package solve_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

func TestRandomLiddedBoxesFoldUp(t *testing.T) {
	checkRandom(t, "lidded-box", measure.Millimetres(60))
}

func TestEveryCaliperOfALiddedBoxCounts(t *testing.T) {
	for _, corners := range []string{"inside", "outside"} {
		t.Run(corners, func(t *testing.T) {
			r := thick(t, "lidded-box")
			r.Options = choices("corners", corners)
			checkMutants(t, r)
			checkLayout(t, r)
			checkPlaces(t, r)
		})
	}
}

// checkPlaces moves each further piece of a solution's ideal up and down by a
// caliper: one of them presses it into the other piece, which the proof must
// notice.
func checkPlaces(t *testing.T, r *solve.Request) {
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	for i := range s.Ideal.Places {
		at := &s.Ideal.Places[i].Above
		noticed := false
		for _, off := range []measure.Length{r.Caliper, r.Caliper.Neg()} {
			*at = at.Add(off)
			noticed = noticed || len(fold.Prove(&s.Ideal, measure.Length{}).Faults) > 0
			*at = at.Sub(off)
		}
		assert.True(t, noticed, "%s out of its place makes no difference", s.Ideal.Pieces[s.Ideal.Places[i].Piece].Name)
	}
}

// A lid at 1/16 in rulers and any stock from 0.2 to 1.0 mm goes on as it is set on
// the ruler, and the answer is sure or warns, whatever the tools.
func TestLidNeverBindsUnwarned(t *testing.T) {
	for _, kind := range []string{"lidded-box", "prism-box"} {
		t.Run(kind, func(t *testing.T) {
			r := random{rand.New(rand.NewPCG(16, 1918)), measure.Millimetres(60)}
			k, ok := repertoire.Lookup(kind)
			require.True(t, ok)
			bound, free := 0, 0
			for range 2000 {
				q := r.request(k)
				q.Unit, q.Ruler = measure.Inch, measure.Marks(measure.Inch)[4]
				q.Caliper, q.Thickness = r.about(0.2, 1), r.about(10, 60)
				q.CutError, q.ScoreError = r.about(0.05, 0.8), r.about(0.05, 0.8)
				q.CaliperTolerance = q.Caliper.Over(20)
				if s, err := solve.Solve(context.Background(), q); err == nil {
					if checkLid(t, s) {
						free++
					} else {
						bound++
					}
				}
			}
			assert.Greater(t, bound, 50)
			assert.Greater(t, free, 50)
		})
	}
}

// checkLid reports whether a solution is sure, or is warned of.
func checkLid(t *testing.T, s *solve.Solution) bool {
	for _, f := range s.Fits {
		if f.Between != "" {
			require.Equal(t, "lid over tray", f.Between)
			require.GreaterOrEqual(t, f.Nominal.Sign(), 0, "the lid must go on as it is set on the ruler")
		}
	}
	said := warned(s, "unsure-fit")
	require.Equal(t, s.Sure.Chance < 0.95, said != "", "%v: %s", s.Sure.Chance, said)
	return said == ""
}

// warned joins the warnings of a code.
func warned(s *solve.Solution, code string) (all string) {
	for _, w := range s.Warnings {
		if w.Code == code {
			all += w.Detail + "\n"
		}
	}
	return all
}

// Over a box of 0.30 mm stock that is 101.60 mm outside, see the tray, a lid is
// 101.60 mm and the play inside, and one caliper more from centre to centre.
func TestLidOfTheSameStock(t *testing.T) {
	r := metric(t, "lidded-box", 150, 100, 30)
	r.Options = map[string]enclosure.Value{"lid_fit": {Choice: "snug"}}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	play := fold.Prove(&s.Ideal, measure.Length{}).Clearances[4].Clearance
	assert.Equal(t, measure.MustParse("0.75 mm"), play, "the middle of snug")
	lid := s.Ideal.Pieces[1].Strips[1].Cells[1].Size
	assert.Equal(t, measure.MustParse("101.60 mm").Add(play), lid.Sub(s.Request.Caliper))
}

// By hand, for contents of 3 x 5 x 1 1/2 in in 0.012 in stock with 1/16 to 1/8 in
// of clearance and a snug lid: the lid's tabs need 1/8 in, half of 1/16 in and
// two calipers, its walls five more; the walls of the tray are 1.5685 in or more.
func TestLiddedBoxRefusals(t *testing.T) {
	r := thick(t, "lidded-box")
	r.Options["lid_depth"] = enclosure.Value{Length: measure.MustParse("2 in")}
	checkImpossible(t, r, "lid_depth", "from 1/4 in to 1 9/16 in")
	r = thick(t, "lidded-box")
	r.Thickness = measure.MustParse("1/8 in")
	checkImpossible(t, r, "thickness", "at least 3/8 in")
	r = thick(t, "lidded-box")
	r.Options["tab"] = enclosure.Value{Length: measure.MustParse("2 in")}
	_, err := solve.Solve(context.Background(), r)
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	require.Len(t, faults, 1, "both pieces have tabs, which is said once")
}

func BenchmarkSolveLiddedBox(b *testing.B) { benchmarkThick(b, "lidded-box") }
