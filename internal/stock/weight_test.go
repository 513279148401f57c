package stock_test

import (
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/peer"
	"creasefit/internal/stock"
)

func grade(t testing.TB, name string) stock.Grade {
	t.Helper()
	g, ok := stock.LookupGrade(name)
	require.True(t, ok, name)
	return g
}

// weights are what GNU units 2.22 answers, to eight figures.
var weights = []struct {
	pounds   float64
	grade    string
	grammage float64
}{
	{20, "bond", 75.194607}, {24, "bond", 90.233529},
	{60, "text", 88.808789}, {70, "text", 103.61025}, {80, "text", 118.41172}, {100, "text", 148.01465},
	{65, "cover", 175.76739}, {80, "cover", 216.3291}, {100, "cover", 270.41138}, {120, "cover", 324.49365}, {130, "cover", 351.53479},
	{90, "index", 162.7162}, {110, "index", 198.87536}, {140, "index", 253.11409},
	{67, "bristol", 146.91824}, {100, "tag", 162.74759}, {125, "tag", 203.43448},
}

func TestGrammageOfBasisWeights(t *testing.T) {
	for _, w := range weights {
		assert.InEpsilon(t, w.grammage, grade(t, w.grade).Grammage(w.pounds), 5e-8, "%v lb %s", w.pounds, w.grade)
	}
}

// One pound in g/m2 and back: GNU units to eight figures and, where trade
// pages print a factor, that factor as far as it is printed.
func TestFactors(t *testing.T) {
	for _, c := range []struct {
		grade           string
		gsmPerPound     float64
		poundsPerGSM    float64
		printed, within float64
	}{
		{"bond", 3.7597304, 0.265977, 3.760, 5e-4},
		{"cover", 2.7041138, 0.369807, 2.704, 5e-4},
		{"blotting", 3.0836385, 0.324292, 0, 0},
		{"bristol", 2.1928096, 0.456036, 2.19, 5e-3},
		{"blanks", 2.2826934, 0.438079, 0, 0},
		{"index", 1.8079578, 0.553110, 1.81, 5e-3},
		{"tag", 1.6274759, 0.614448, 1.627, 5e-4},
		{"text", 1.4801465, 0.675609, 1.480, 5e-4},
		{"paperboard", 4.8824276, 0.204816, 4.882, 5e-4},
	} {
		g := grade(t, c.grade)
		assert.InEpsilon(t, c.gsmPerPound, g.Grammage(1), 2e-8, c.grade)
		assert.InDelta(t, c.poundsPerGSM, g.BasisWeight(1), 6e-7, c.grade)
		if c.printed != 0 {
			assert.InDelta(t, c.printed, g.Grammage(1), c.within, c.grade)
		}
	}
}

// GNU units, asked for every grade by each of its names.
func TestGNUUnitsAgreesOnWeights(t *testing.T) {
	units := peer.Path(t, "units", "apt-get install -y units")
	for _, g := range stock.Grades() {
		for _, name := range append(g.Also, g.Name) {
			out, err := exec.Command(units, "-t", "-o", "%.12g", "73.5 lb"+name, "gsm").Output()
			require.NoError(t, err, name)
			want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
			require.NoError(t, err)
			assert.InEpsilon(t, want, grade(t, name).Grammage(73.5), 1e-11, name)
		}
	}
}

func TestWeightsGoBackAndForth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.SampledFrom(stock.Grades()).Draw(t, "grade")
		pounds := rapid.Float64Range(1, 1000).Draw(t, "pounds")
		assert.InEpsilon(t, pounds, g.BasisWeight(g.Grammage(pounds)), 1e-12)
	})
}

// Masses of sheets by hand: grammage times area; 1 oz is 28.349523125 g.
func TestSheetMass(t *testing.T) {
	for _, c := range []struct {
		name     string
		grammage float64
		sheet    string
		grams    float64
	}{
		{"a letter sheet of 20 lb bond is 20 lb / 500 / 4", grade(t, "bond").Grammage(20), "8.5 x 11 in", 4.5359237},
		{"A4 at 80 g/m2", 80, "210 x 297 mm", 4.9896},
		{"100 lb cover", grade(t, "cover").Grammage(100), "10 x 7 in", 0.430769 * 28.349523125},
		{"80 lb cover", grade(t, "cover").Grammage(80), "8.5 x 5.5 in", 6.524752},
	} {
		size := measure.MustParseSize(c.sheet)
		assert.InEpsilon(t, c.grams, stock.SheetMass(c.grammage, size[0], size[1]), 2e-6, c.name)
	}
}

// GNU units takes 0.8 g/cm3 for paper: 12 points are 243.84 g/m2.
func TestEstimateAgreesWithGNUUnits(t *testing.T) {
	e := stock.EstimateCaliper(243.84)
	assert.InDelta(t, measure.Thousandths(12).Millimetres(), e.Caliper.Millimetres(), 0.0005)
	assert.InDelta(t, 0.8, stock.Density(243.84, measure.Thousandths(12)), 1e-12)
}

// Every published stock with a grammage lies in the range that an estimate
// from its grammage gives, or within its own tolerance of it.
func TestPublishedCalipersLieInTheEstimatedRange(t *testing.T) {
	seen := 0
	for _, s := range stock.All() {
		if s.Grammage == 0 {
			continue
		}
		seen++
		e := stock.EstimateCaliper(s.Grammage)
		assert.False(t, s.Caliper.Add(s.CaliperTolerance).Less(e.Low), "%s is thinner", s.Name)
		assert.False(t, e.High.Less(s.Caliper.Sub(s.CaliperTolerance)), "%s is thicker", s.Name)
		assert.False(t, e.Tolerance().Less(e.High.Sub(e.Caliper)) || e.Tolerance().Less(e.Caliper.Sub(e.Low)))
	}
	assert.Greater(t, seen, 20)
}
