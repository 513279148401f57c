package solve

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/calibrate"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// hidden is a paper and a hand as they really are, in millimetres; the errors of
// cuts and scores are standard deviations.
type hidden struct{ caliper, fold, cut, score float64 }

func millimetres(l float64) measure.Length { return measure.Nanometres(int64(l * 1e6)) }

// calibrated is what such a maker is told of a test sheet that she measured with
// a ruler of half millimetres.
func (h *hidden) calibrated(t *testing.T, r *rand.Rand) *calibrate.Record {
	half := measure.Finest(measure.Millimetre)
	read := func(l float64) measure.Length { return half.Nearest(millimetres(l)) }
	m := &calibrate.Measured{Ruler: half, Unit: measure.Millimetre, Turns: 10, Wound: read(1600 + 400*h.caliper),
		Block: calibrate.Block{Width: measure.Millimetres(60), Thickness: measure.Millimetres(20)}}
	m.Cuts.At, m.Scores.At, m.Fold.Apart = measure.Millimetres(100), measure.Millimetres(30), measure.Millimetres(25)
	for range 10 {
		m.Cuts.Lines = append(m.Cuts.Lines, read(100+h.cut*r.NormFloat64()))
		m.Scores.Lines = append(m.Scores.Lines, read(30+h.score*r.NormFloat64()))
		m.Fold.Inside = append(m.Fold.Inside, read(25-h.caliper-h.fold+0.2*r.NormFloat64()))
	}
	record, err := calibrate.Find(m)
	require.NoError(t, err)
	return record
}

// TestCalibratedPiecesFitAsPromised has makers whose truth is hidden calibrate
// and make what they are told, once each: it goes together as often as was
// promised, or a little oftener, since what ten strips leave open is allowed for.
func TestCalibratedPiecesFitAsPromised(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 5))
	want := 6000
	if testing.Short() {
		want = 1500
	}
	var promised, fitted, number [2]float64 // of all, and of those that are to be sure
	made := 0
	for made < want {
		between := func(low, high float64) float64 { return low + r.Float64()*(high-low) }
		h := hidden{between(0.1, 0.7), between(-0.1, 0.3), between(0.2, 0.5), between(0.2, 0.5)}
		q := seen(t, []string{"sleeve", "lidded-box", "drawer-box", "tray"}[r.IntN(4)], r.IntN(2), 50+r.Int64N(100), 80+r.Int64N(100), 15+r.Int64N(40))
		for _, k := range h.calibrated(t, r).Known {
			*map[string]*measure.Length{"caliper": &q.Caliper, "caliper_tolerance": &q.CaliperTolerance, "cut_tolerance": &q.CutError,
				"score_tolerance": &q.ScoreError, "fold_allowance": &q.FoldAllowance}[k.Name] = k.Use
		}
		q.WallGive = enclosure.WallGive(q.Caliper, measure.Length{})
		s := solved(q)
		if s == nil {
			continue
		}
		truth := *s.Request
		truth.Caliper, truth.FoldAllowance, truth.CaliperTolerance = millimetres(h.caliper), millimetres(h.fold), measure.Length{}
		truth.CutError, truth.ScoreError = millimetres(3*h.cut), millimetres(3*h.score)
		plan, err := truth.planned()
		if err != nil || len(plan.Problem.Readings) != len(s.sizes) {
			continue
		}
		j := truth.judgeFrom(plan, s.sizes, s.Sure.Datum)
		held := shareThatHolds(r, j.forms, j.sources, 1)
		made++
		for i, from := range [...]float64{0, 0.9} {
			if s.Sure.Chance >= from {
				promised[i], fitted[i], number[i] = promised[i]+s.Sure.Chance, fitted[i]+held, number[i]+1
			}
		}
	}
	for i, n := range number {
		p, f := promised[i]/n, fitted[i]/n
		t.Logf("promised %.4f, fitted %.4f of %v", p, f, n)
		assert.GreaterOrEqual(t, f, p-0.015)
		assert.LessOrEqual(t, f, p+0.05)
	}
}
