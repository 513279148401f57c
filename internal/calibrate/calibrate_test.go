package calibrate

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/bench"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

func lengths(texts ...string) (list []measure.Length) {
	for _, text := range texts {
		list = append(list, mm(text))
	}
	return list
}

// known returns what is known of a name; the test fails if nothing is.
func (r *Record) known(t testing.TB, name string) Known {
	for _, k := range r.Known {
		if k.Name == name {
			return k
		}
	}
	require.Fail(t, "nothing is known", name)
	return Known{}
}

// Ten cutoff biases of vacuum tubes, of which M. G. Natrella, Experimental
// Statistics (NBS Handbook 91, 1963), 4-5 to 4-7, asks how they vary (data set
// NATR45.DAT of NIST): the squares about their mean, 12.1, add up to 0.30. Taken
// for millimetres and read to far finer marks, their deviation is the root of
// 0.30 / 9, and its limits are that of 0.30 / 19.023 and of 0.30 / 2.700.
func TestPublishedSample(t *testing.T) {
	m := Measured{Ruler: measure.MustParseStep("0.5 mm"), Unit: measure.Millimetre,
		Cuts: Stop{mm("12.1"), lengths("12.1", "12.3", "11.8", "12.0", "12.4", "12.0", "12.1", "11.9", "12.2", "12.2")}}
	s := sampleOf(m.Cuts.Lines, 0)
	assert.InDelta(t, 12.1e6, s.mean, 1)
	assert.InDelta(t, 1e6*math.Sqrt(0.30/9), s.deviation, 10)

	rounded := 0.5 * 0.5 / 12.0 // what reading to half a millimetre adds to a variance
	r, err := Find(&m)
	require.NoError(t, err)
	cut := r.known(t, "cut_tolerance")
	read := max(0.30/9, 2*rounded) // no better than the ruler
	made := func(times float64) float64 { return 3 * math.Sqrt(max(read*times-rounded, 0)) }
	assert.InDelta(t, made(1), cut.Estimate.Millimetres(), 1e-5)
	assert.InDelta(t, made(9/19.023), cut.Least.Millimetres(), 1e-3)
	assert.InDelta(t, made(9/2.700), cut.Greatest.Millimetres(), 1e-3)
	// The next of n + 1 draws lies within t s (1 + 1/n)^(1/2): 2.262 for nine degrees.
	assert.InDelta(t, made(2.262*2.262/1.96/1.96*1.1), cut.Use.Millimetres(), 1e-3)
	assert.Empty(t, r.Notes, "the stop is where it should be")
}

// Ten cuts at a stop of 100 mm, all of them 1 mm too far: what is to be used has that in
// it beside what the next cut may be off, less what is not known of it (both by hand:
// read to half a millimetre, they deviate by (0.5^2 / 6)^(1/2)).
func TestCutsToOneSide(t *testing.T) {
	m := Measured{Ruler: measure.MustParseStep("0.5 mm"), Unit: measure.Millimetre, Cuts: Stop{mm("100"), lengths("101", "101", "101", "101", "101", "101", "101", "101", "101", "101")}}
	r, err := Find(&m)
	require.NoError(t, err)
	const read, rounded = 0.25 / 6, 0.25 / 12
	next := read*2.262157*2.262157/1.959964/1.959964*1.1 - rounded
	assert.InDelta(t, 3*math.Sqrt(next+1-read/10), r.known(t, "cut_tolerance").Use.Millimetres(), 1e-5)
	assert.Equal(t, []string{"Your cuts lie 1 mm too far on average: set the stop 1 mm short, and measure again."}, r.Notes)
}

// What was not measured is what the bench has.
func TestBenchIsARecord(t *testing.T) {
	hand, _ := bench.Lookup("hand")
	r, err := Find(&Measured{Ruler: measure.MustParseStep("0.5 mm"), Unit: measure.Millimetre, Bench: hand})
	require.NoError(t, err)
	assert.Equal(t, OfBench(hand), r)
	assert.Equal(t, hand.Cut, r.known(t, "cut_tolerance").Use)
}

// A strip and a stack that agree say more together; the mean lies between them,
// nearer to the one that is known better.
func TestStripAndStackTogether(t *testing.T) {
	m := Measured{Ruler: measure.MustParseStep("0.5 mm"), Unit: measure.Millimetre,
		Block: Block{mm("60"), mm("20"), mm("0.02")}, Turns: 10, Wound: mm("1720"), Sheets: 50, Stack: mm("15.5")}
	strip, err := m.wound()
	require.NoError(t, err)
	pile, err := m.stacked()
	require.NoError(t, err)
	both, err := m.caliper()
	require.NoError(t, err)
	assert.InDelta(t, 0.3e6, strip.caliper, 1)
	assert.InDelta(t, 0.31e6, pile.caliper, 1)
	// They agree within three deviations of their difference and a tenth, 0.0391 mm.
	m.Stack = mm("16.95")
	_, err = m.caliper()
	require.NoError(t, err)
	m.Stack = mm("16.975")
	_, err = m.caliper()
	require.Error(t, err)
	// Variances by hand, each a third of the squares of half ranges: of the strip
	// (0.25 / 400)^2 + 2 (0.02 / 20)^2, of the stack (0.25 / 50)^2 mm^2. Weights are their
	// inverses, and the variance of the mean is the inverse of their sum.
	u, v := (0.000625*0.000625+2*0.001*0.001)/3, 0.005*0.005/3
	assert.InDelta(t, 1e6*(0.3/u+0.31/v)/(1/u+1/v), both.caliper, 1)
	assert.InDelta(t, 1e6*math.Sqrt(1/(1/u+1/v)), both.deviation(), 0.1)
}

// What folds take up, by hand: the mean of ten walls is known to within the root of
// 1.0 / 9 / 10, a stated caliper of 1 mm to a third of 7 %; 9.9 effective degrees of freedom
// (JCGM 100:2008, G.4.1, rounds them down) make Student's t 2.262.
func TestFoldOfAStatedCaliper(t *testing.T) {
	m := Measured{Ruler: measure.MustParseStep("0.5 mm"), Unit: measure.Millimetre, Caliper: mm("1"),
		Fold: Folded{mm("101.4"), lengths("100", "100.5", "99.5", "100", "100", "100.5", "99.5", "100", "100", "100")}}
	r, err := Find(&m)
	require.NoError(t, err)
	fold := r.known(t, "fold_allowance")
	limit := 2.262157 * math.Sqrt(1.0/90+0.07*0.07/9)
	assert.InDelta(t, 0.4, fold.Use.Millimetres(), 1e-9)
	assert.InDelta(t, 0.4-limit, fold.Least.Millimetres(), 1e-5)
	assert.InDelta(t, 0.4+limit, fold.Greatest.Millimetres(), 1e-5)
	m.Fold.Apart, m.Fold.Inside = mm("200"), lengths("100", "100", "100", "100", "100")
	_, err = Find(&m)
	require.NoError(t, err, "five strips are enough, and half as far apart is not too near")
	m.Fold.Apart = mm("200.001")
	_, err = Find(&m)
	require.Error(t, err)
}

// Measurements that cannot be are each a fault that names what is wrong.
func TestContradictions(t *testing.T) {
	half := measure.MustParseStep("0.5 mm")
	block := Block{mm("60"), mm("20"), mm("0.1")}
	ten := lengths("100", "100.5", "99.5", "100", "100", "100.5", "99.5", "100", "100", "100")
	for name, c := range map[string]struct {
		m        Measured
		field    string
		code     fault.Code
		expected string
	}{
		"a strip shorter than its block": {Measured{Block: block, Turns: 10, Wound: mm("1599")}, "wound", fault.Impossible, "more than 1600 mm"},
		"a strip for a plank":            {Measured{Block: block, Turns: 1, Wound: mm("200")}, "wound", fault.Impossible, "0.01 mm to 5 mm"},
		"a stack of boards":              {Measured{Sheets: 2, Stack: mm("20")}, "stack", fault.Impossible, "0.01 mm to 5 mm"},
		"a stack that says otherwise":    {Measured{Block: block, Turns: 10, Wound: mm("1720"), Sheets: 10, Stack: mm("6")}, "stack", fault.Conflict, ""},
		"too few cuts":                   {Measured{Cuts: Stop{mm("100"), ten[:4]}}, "cuts", fault.Missing, "at least 5 strips"},
		"too few scores":                 {Measured{Scores: Stop{mm("100"), ten[:1]}}, "scores", fault.Missing, "at least 5 strips"},
		"cuts at another stop":           {Measured{Cuts: Stop{mm("50"), ten}}, "cuts", fault.Conflict, "40 mm to 60 mm"},
		"walls wider than their scores":  {Measured{Caliper: mm("0.3"), Fold: Folded{mm("40"), ten}}, "folded_inside", fault.Conflict, "20 mm to 40.5 mm"},
		"folds in unknown paper":         {Measured{Fold: Folded{mm("101"), ten}}, "caliper", fault.Missing, ""},
		"too few folds":                  {Measured{Caliper: mm("0.3"), Fold: Folded{mm("101"), ten[:2]}}, "folded_inside", fault.Missing, "at least 5 strips"},
		"a sheet that doubles":           {Measured{Marked: mm("100"), WetAcross: mm("200")}, "wet_across", fault.Conflict, "94 mm to 106 mm"},
	} {
		c.m.Ruler, c.m.Unit = half, measure.Millimetre
		_, err := Find(&c.m)
		var faults fault.Faults
		require.NoError(t, faults.Add(err), name)
		require.Len(t, faults, 1, name)
		assert.Equal(t, c.field, faults[0].Field, name)
		assert.Equal(t, c.code, faults[0].Code, name)
		assert.Equal(t, c.expected, faults[0].Expected, name)
		assert.NotEmpty(t, faults[0].Hint, name)
	}
	_, err := Find(&Measured{Ruler: half, Unit: measure.Millimetre, Cuts: Stop{mm("100"), ten[:4]}, Scores: Stop{mm("50"), ten}})
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	assert.Len(t, faults, 2, "everything that is wrong is found at once")
}

// maker is a paper and a hand that nobody knows: the truth behind measurements.
type maker struct {
	*rand.Rand
	ruler                     measure.Step
	caliper, fold, cut, score float64 // mm; the deviations of a cut and a score
	along, across, up         float64
}

func newMaker(r *rand.Rand) *maker {
	within := func(low, high float64) float64 { return low + r.Float64()*(high-low) }
	return &maker{Rand: r, ruler: measure.MustParseStep("0.5 mm"), caliper: within(0.1, 0.8), fold: within(-0.1, 0.4), cut: within(0.25, 0.7), score: within(0.25, 0.7),
		along: within(0.001, 0.004), across: within(0.01, 0.03), up: within(0.2, 0.5)}
}

// read is what a ruler says.
func (m *maker) read(millimetres float64) measure.Length {
	return m.ruler.Nearest(length(millimetres * 1e6))
}

// measured is a test sheet made and measured by the maker.
func (m *maker) measured() *Measured {
	q := &Measured{Ruler: m.ruler, Unit: measure.Millimetre, Block: Block{mm("60"), mm("20"), mm("0.05")}, Turns: 10, Marked: mm("200")}
	off := func() float64 { return 0.05 * (2*m.Float64() - 1) }
	q.Wound = m.read(2*10*(60+off()+20+off()) + 4*100*m.caliper)
	q.Cuts.At, q.Scores.At, q.Fold.Apart = mm("100"), mm("30"), mm("25")
	for range 10 {
		q.Cuts.Lines = append(q.Cuts.Lines, m.read(100+m.cut*m.NormFloat64()))
		q.Scores.Lines = append(q.Scores.Lines, m.read(30+m.score*m.NormFloat64()))
		q.Fold.Inside = append(q.Fold.Inside, m.read(25-m.caliper-m.fold+m.up*m.NormFloat64()))
	}
	// The marks were made with the same ruler, somewhere within half of one of its own.
	from := 200 + 0.25*(2*m.Float64()-1)
	q.WetAlong, q.WetAcross = m.read(from*(1+m.along)), m.read(from*(1+m.across))
	return q
}

// TestSimulatedMakers has makers whose truth is hidden measure with a ruler of
// half millimetres: what is said to hold 95 times in 100 does 93 to 97 times.
func TestSimulatedMakers(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 3))
	makers := 6000
	covered := map[string]int{}
	for range makers {
		m := newMaker(r)
		record, err := Find(m.measured())
		require.NoError(t, err)
		for name, truth := range map[string]float64{"caliper": m.caliper, "fold_allowance": m.fold, "cut_tolerance": 3 * m.cut, "score_tolerance": 3 * m.score} {
			k := record.known(t, name)
			if k.Least.Millimetres() <= truth && truth <= k.Greatest.Millimetres() {
				covered[name]++
			}
		}
		for _, g := range record.Growth {
			truth := map[string]float64{"wet_along": m.along, "wet_across": m.across}[g.Name]
			if g.Least <= truth && truth <= g.Greatest {
				covered[g.Name]++
			}
		}
	}
	require.Len(t, covered, 6)
	for name, n := range covered {
		share := float64(n) / float64(makers)
		t.Logf("%s: %.4f", name, share)
		assert.InDelta(t, Confidence, share, 0.02, name)
	}
}
