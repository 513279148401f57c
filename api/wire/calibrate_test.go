package wire

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/bench"
	"creasefit/internal/calibrate"
	"creasefit/internal/measure"
)

// record is what was learned of a paper and a hand, in round figures.
func record() *calibrate.Record {
	return &calibrate.Record{
		Known: []calibrate.Known{
			{Name: "caliper", Use: um(305), Estimate: um(305), Least: um(291), Greatest: um(319), From: "10 turns round the block"},
			{Name: "caliper_tolerance", Use: um(18), Estimate: um(18), From: "three standard deviations"},
			{Name: "cut_tolerance", Use: um(700), Estimate: um(600), Least: um(400), Greatest: um(1100), From: "10 cuts at 100 mm"},
			{Name: "fold_allowance", Use: um(-120), Estimate: um(-120), Least: um(-200), Greatest: um(-40), From: "10 strips folded up"},
		},
		Growth: []calibrate.Growth{{Name: "wet_across", Estimate: 0.021234, Least: 0.0187, Greatest: 0.02376}},
		Notes:  []string{"set the stop 1 mm short"},
	}
}

// TestACalibrationIsTextToKeep: names, query and words say the same lengths, in millimetres
// to a thousandth and in inches to a ten-thousandth.
func TestACalibrationIsTextToKeep(t *testing.T) {
	a := &Asked{Self: "/v1/calibrate?unit=mm&turns=10"}
	c := OfCalibration(record(), measure.Millimetre, a)
	assert.Equal(t, CalibrationUse{Caliper: "0.305 mm", CaliperTolerance: "0.018 mm", CutTolerance: "0.7 mm", FoldAllowance: "-0.12 mm"}, c.Use)
	assert.Equal(t, "caliper=0.305mm&caliper_tolerance=0.018mm&cut_tolerance=0.7mm&fold_allowance=-0.12mm", c.Query)
	assert.Equal(t, "caliper 0.305 mm (0.291 to 0.319), caliper tolerance 0.018 mm, cut tolerance 0.7 mm (0.4 to 1.1), fold allowance -0.12 mm (-0.2 to -0.04)", c.Words)
	assert.Equal(t, CalibrationLinks{"/v1/calibrate?unit=mm&turns=10", "/v1/calibrate.pdf?unit=mm", "/v1/kinds"}, c.Links)
	assert.Equal(t, []CalibrationGrew{{"wet_across", 2.12, 1.87, 2.38, 0.95}}, c.Growth, "in percent, to a hundredth")
	assert.Equal(t, []string{"set the stop 1 mm short"}, c.Notes)
	inches := OfCalibration(record(), measure.Inch, a)
	assert.Equal(t, "0.012 in", inches.Use.Caliper)
	assert.Equal(t, "0.0276 in", inches.Use.CutTolerance)
	assert.Equal(t, "caliper=0.012in&caliper_tolerance=0.0007in&cut_tolerance=0.0276in&fold_allowance=-0.0047in", inches.Query)
}

// TestHowItCameAbout: what was measured has limits with their confidence, what is taken
// for granted has none.
func TestHowItCameAbout(t *testing.T) {
	c := OfCalibration(record(), measure.Millimetre, &Asked{})
	require.Len(t, c.How, 4)
	for _, h := range c.How {
		measured := h.Name != "caliper_tolerance"
		assert.Equal(t, []bool{measured, measured, measured}, []bool{h.Least != nil, h.Greatest != nil, h.Confidence == 0.95}, h.Name)
	}
	cut := c.How[2]
	assert.Equal(t, []float64{0.6, 0.4, 1.1}, []float64{cut.Estimate.MM, cut.Least.MM, cut.Greatest.MM}, "the estimate, not what is to be used")
	assert.Equal(t, "10 cuts at 100 mm", cut.From)
}

// TestWhatWasLearnedIsTaken: the query of an answer goes into the next request as it is, of
// every bench and with all that can be measured.
func TestWhatWasLearnedIsTaken(t *testing.T) {
	for _, b := range bench.All() {
		c := OfCalibration(calibrate.OfBench(b), measure.Millimetre, &Asked{})
		names, err := url.ParseQuery(c.Query)
		require.NoError(t, err)
		assert.Equal(t, []string{c.Use.CutTolerance}, []string{spaced(names.Get("cut_tolerance"))}, b.Name)
		assert.InDelta(t, on(b.Cut), on(measure.MustParse(names.Get("cut_tolerance"))), 0.0005, "%s: its cuts to the micrometre", b.Name)
	}
	for _, unit := range []measure.Unit{measure.Inch, measure.Millimetre} {
		c := OfCalibration(record(), unit, &Asked{})
		k := kindOf(t, "band")
		a := ask.NewSolve(k).Take()
		a.AddQuery("unit=in&width=3.5&height=5&thickness=0.09&" + c.Query)
		a.Parse()
		require.True(t, a.Check(), "%s: %v", c.Query, a.Faults())
		assert.Equal(t, measure.MustParse(c.Use.Caliper), a.Q.Request.Caliper)
		assert.Equal(t, measure.MustParse(strings.TrimPrefix(c.Use.FoldAllowance, "-")).Neg(), a.Q.Request.FoldAllowance)
		assert.Equal(t, measure.MustParse(c.Use.CutTolerance), a.Q.Request.CutError)
	}
}

// spaced puts the blank back that an address leaves out.
func spaced(text string) string {
	unit := text[len(text)-2:]
	return text[:len(text)-2] + " " + unit
}
