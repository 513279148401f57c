package solve_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
	"creasefit/internal/tolerance"
)

// The errors of the worked examples below, in nanometres: a cut or a score by
// hand (1/64 in), the caliper (0.001 in), the contents (1/32 in).
const (
	setting  = 396_875
	paper    = 25_400
	contents = 793_750
)

// layersOf are layers of these kinds round contents of 5 x 4 x 2 in, in stock
// of 0.012 in, easy to put in.
func layersOf(t testing.TB, kinds ...string) []solve.Layer {
	layers := make([]solve.Layer, len(kinds))
	for i, name := range kinds {
		kind, ok := repertoire.Lookup(name)
		require.True(t, ok, name)
		layers[i] = solve.Layer{Place: name, Request: &solve.Request{
			Kind: kind, Unit: measure.Inch, Ruler: measure.Marks(measure.Inch)[4], Caliper: measure.Thousandths(12), CaliperTolerance: measure.Nanometres(paper),
			CutError: measure.Nanometres(setting), ScoreError: measure.Nanometres(setting), FitName: "easy", Fit: enclosure.NamedFits()[1].Range(measure.Inch),
		}}
	}
	q := layers[0].Request
	q.Width, q.Height, q.Thickness = measure.Inches(5), measure.Inches(4), measure.Inches(2)
	q.SizeTolerance, q.ThicknessTolerance = tolerance.Within(measure.Nanometres(contents)), tolerance.Within(measure.Nanometres(contents))
	return layers
}

// teaChest is what the benchmark packs: parted tea sachets in a tray, in a
// sleeve, with a band round it, in a box with a lid.
func teaChest(t testing.TB) []solve.Layer {
	return layersOf(t, "dividers", "tray", "sleeve", "band", "lidded-box")
}

// spread is how far a size may be off in the worst case and by root-sum-square,
// in nanometres; both ranges lie evenly about it.
func spread(t *testing.T, s solve.Sure) (worst, rss int64) {
	assert.Equal(t, s.Nominal.Sub(s.WorstCase.Min), s.WorstCase.Max.Sub(s.Nominal))
	assert.Equal(t, s.Nominal.Sub(s.RSS.Min), s.RSS.Max.Sub(s.Nominal))
	return s.WorstCase.Max.Sub(s.Nominal).Nanometres(), s.RSS.Max.Sub(s.Nominal).Nanometres()
}

// root is the root of the sum of squares, to the nanometre.
func root(errors ...float64) int64 {
	sum := 0.0
	for _, e := range errors {
		sum += e * e
	}
	return int64(math.Round(math.Sqrt(sum)))
}

// TestToleranceChainByHand adds up by hand what a tray in a sleeve depends on
// (inside, centre and outside of square folds: outside = centre + t).
func TestToleranceChainByHand(t *testing.T) {
	p, err := solve.SolvePortfolio(context.Background(), layersOf(t, "tray", "sleeve"))
	require.NoError(t, err)
	tray, sleeve := &p.Chain[0], &p.Chain[1]

	// The tray's contents vary by 1/32 in. Its base is what the blank leaves of
	// two walls scored at one stop, so that its outside depends on the blank, twice
	// on the stop and on one caliper; its walls stand on one score and half a
	// caliper each. Of the error of a score an eighth, squared, is its own.
	const stop, own = setting * 0.9354143, setting * 0.3535534
	base := []float64{setting, 2 * stop, own, own, paper}
	for axis, by := range [3]struct {
		worst  float64
		errors []float64
	}{{3*setting + paper, base}, {3*setting + paper, base}, {setting + paper/2, []float64{setting, paper / 2}}} {
		worst, rss := spread(t, tray.Contents[axis])
		assert.Equal(t, []int64{contents, contents}, []int64{worst, rss})
		worst, rss = spread(t, tray.Outside[axis])
		assert.EqualValues(t, by.worst, worst, "tray, axis %d", axis)
		assert.InDelta(t, root(by.errors...), rss, 5, "tray, axis %d", axis)
		assert.Equal(t, tray.Outside[axis], sleeve.Contents[axis], "what the sleeve goes round")
	}

	// The sleeve's clearance along the width: its back is what two scores, each at
	// a stop of its own, leave of the blank, less one caliper, less the tray: the
	// paper of both is of one pack, so that its error counts twice.
	width := p.Solutions[1].Fits[0]
	require.Equal(t, "width", width.Axis.String())
	errors := append([]float64{setting, setting, setting, 2 * paper}, base[:4]...)
	assert.InDelta(t, root(errors...), width.RSS.Max.Sub(width.Nominal).Nanometres(), 5)
	assert.EqualValues(t, 6*setting+2*paper, width.WorstCase.Max.Sub(width.Nominal).Nanometres())
	deviation := float64(root(errors...)) / 3
	assert.InDelta(t, math.Erfc(-float64(width.Nominal.Nanometres())/(deviation*math.Sqrt2))/2, width.Chance, 1e-6, "the normal distribution")

	// The sleeve is open along the height: the tray's outside sticks out of it or
	// it is cut as long, whichever is more. Along the width it is a caliper larger
	// than its back.
	worst, rss := spread(t, sleeve.Outside[0])
	assert.EqualValues(t, 3*setting+paper, worst)
	assert.InDelta(t, root(setting, setting, setting, paper), rss, 5)
	assert.Equal(t, p.Solutions[1].Outside.Width, sleeve.Outside[0].Nominal)
}

// TestPrismOutsideByHand: the sides of the lid are marked along one strip, so that
// what is across it moves by two marks at the most, and by its own caliper.
func TestPrismOutsideByHand(t *testing.T) {
	layers := layersOf(t, "prism-box")
	layers[0].Request.Height = measure.Length{}
	layers[0].Request.Options = map[string]enclosure.Value{"sides": {Count: 4}}
	p, err := solve.SolvePortfolio(context.Background(), layers)
	require.NoError(t, err)
	square, _ := spread(t, p.Chain[0].Outside[0])
	assert.InDelta(t, 2*setting+paper, square, 1000)
	layers[0].Request.Options["sides"] = enclosure.Value{Count: 12}
	p, err = solve.SolvePortfolio(context.Background(), layers)
	require.NoError(t, err)
	worst, _ := spread(t, p.Chain[0].Outside[1])
	assert.InEpsilon(t, square, worst, 0.05)
}

// TestTurnedLayers exchanges the axes that a turn names, and no others.
func TestTurnedLayers(t *testing.T) {
	for turn, axes := range map[solve.Turn][3]int{solve.AsItLies: {0, 1, 2}, solve.Quarter: {1, 0, 2}, solve.OnEdge: {0, 2, 1}, solve.OnEnd: {2, 1, 0}} {
		layers := layersOf(t, "tray", "lidded-box")
		layers[1].Turn = turn
		p, err := solve.SolvePortfolio(context.Background(), layers)
		require.NoError(t, err)
		for axis, along := range axes {
			assert.Equal(t, p.Chain[0].Outside[along], p.Chain[1].Contents[axis], "turn %d", turn)
		}
		q := layers[1].Request
		assert.Equal(t, p.Chain[1].Contents[0].Nominal, q.Width)
		assert.Equal(t, p.Chain[1].Contents[1].Nominal, q.Height)
		assert.Equal(t, p.Chain[1].Contents[2].Nominal, q.Thickness)
	}
}

// TestPortfoliosOfAnyKinds nests kinds at random: each layer goes round the
// outside of the one before, which is what its folded plates take up, and all
// of them are proven.
func TestPortfoliosOfAnyKinds(t *testing.T) {
	t.Parallel()
	const want = 300
	r, kinds := wide{rand.New(rand.NewPCG(5, 12))}, repertoire.Kinds()
	solved := 0
	for tries := 0; solved < want && tries < 150*want; tries++ {
		layers := make([]solve.Layer, 2+r.IntN(4))
		for i := range layers {
			q := r.request(kinds[r.IntN(len(kinds))])
			if i > 0 {
				q.Unit, q.Ruler = layers[0].Request.Unit, layers[0].Request.Ruler
			}
			q.CaliperTolerance = measure.Micrometres(r.Int64N(40))
			q.SizeTolerance, q.ThicknessTolerance = tolerance.Within(measure.Micrometres(r.Int64N(500))), tolerance.Within(measure.Micrometres(r.Int64N(500)))
			layers[i] = solve.Layer{Request: q, Place: "layers", Turn: solve.Turn(r.IntN(4))}
		}
		p, err := solve.SolvePortfolio(context.Background(), layers)
		if err != nil {
			var faults fault.Faults
			require.True(t, errors.As(err, &faults), "%v", err)
			for _, f := range faults {
				assert.True(t, strings.HasPrefix(f.Field, "layers"), "%+v", f)
			}
			continue
		}
		solved++
		for i, s := range p.Solutions {
			require.True(t, s.Proof.Closes && s.Proof.Holds)
			for axis, size := range [...]measure.Length{s.Outside.Width, s.Outside.Height, s.Outside.Thickness} {
				require.Equal(t, size, p.Chain[i].Outside[axis].Nominal)
				checkSure(t, p.Chain[i].Contents[axis])
				checkSure(t, p.Chain[i].Outside[axis])
			}
		}
	}
	assert.Equal(t, want, solved)
}

// checkSure checks that a size lies within its own ranges, the likely one
// within the worst.
func checkSure(t *testing.T, s solve.Sure) {
	worst, rss := spread(t, s)
	require.GreaterOrEqual(t, rss, int64(0))
	require.GreaterOrEqual(t, worst+10, rss) // stops and strokes are shares to the nanometre
	require.Less(t, worst, int64(100e6), "no size is uncertain by 100 mm")
}

func TestPortfolioRefusals(t *testing.T) {
	_, err := solve.SolvePortfolio(context.Background(), layersOf(t, "tray", "dividers"))
	var faults fault.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, []string{"dividers.kind", "dividers"}, []string{faults[0].Field, faults[0].Value}, "what goes into its contents goes round nothing")

	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = solve.SolvePortfolio(ctx, teaChest(t))
	assert.ErrorIs(t, err, context.Canceled)
}

// BenchmarkPortfolioOfFive solves five layers with their proofs and their chain;
// the floor solves the same five one by one.
func BenchmarkPortfolioOfFive(b *testing.B) {
	b.Run("portfolio", func(b *testing.B) {
		for b.Loop() {
			p, err := solve.SolvePortfolio(context.Background(), teaChest(b))
			require.NoError(b, err)
			p.GiveBack()
		}
	})
	b.Run("floor", func(b *testing.B) {
		layers := teaChest(b)
		_, err := solve.SolvePortfolio(context.Background(), layers)
		require.NoError(b, err)
		for b.Loop() {
			for i := range layers {
				s, err := solve.Solve(context.Background(), layers[i].Request)
				require.NoError(b, err)
				s.GiveBack()
			}
		}
	})
}
