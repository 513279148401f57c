package wire

import (
	"math"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// TestAPaperInFigures: 80 lb cover weighs 216.33 g/m2 (80 lb of 500 sheets of 20 x 26 in), and a
// letter sheet of it 13.051 g; 12 points of it make 0.71 g/cm3.
func TestAPaperInFigures(t *testing.T) {
	letter, _ := stock.LookupSheet("letter")
	cover, ok := stock.LookupGrade("cover")
	require.True(t, ok)
	d, err := stock.Describe(stock.Known{Points: 12, BasisWeight: 80, Grade: cover, SheetWidth: letter.Width, SheetHeight: letter.Height})
	require.NoError(t, err)
	p := OfPaper(&d, measure.Inch, "a source", &Asked{Self: "/v1/stock?unit=in"})
	assert.Equal(t, "0.012 in", p.Caliper.Reading)
	assert.Equal(t, 216.33, p.Grammage)
	assert.Equal(t, [2]float64{216.33, 216.33}, p.GrammageRange)
	assert.Equal(t, 0.71, p.Density)
	const squareMetresOfLetter = 0.2159 * 0.2794
	grammage := 80 * 453.59237 / (500 * 20 * 26 * 0.0254 * 0.0254)
	thousandths := func(x float64) float64 { return math.Round(1000*x) / 1000 }
	assert.Equal(t, thousandths(grammage*squareMetresOfLetter), p.SheetMass, "grams, to a thousandth")
	assert.Equal(t, thousandths(grammage*squareMetresOfLetter/2), p.ReamMass, "500 sheets in kilograms")
	assert.Equal(t, thousandths(grammage/304.8), p.Density)
	assert.Equal(t, []any{false, false, false}, []any{p.CaliperEstimated, p.GrammageEstimated, p.Unlikely})
	assert.Equal(t, []string{"a source", "/v1/stock?unit=in"}, []string{p.Source, p.Links.Self})
	for _, w := range p.BasisWeights {
		if w.Grade == "cover" {
			assert.Equal(t, 80.0, w.Pounds)
			assert.Equal(t, "500 sheets of 20 x 26 in", w.Basis)
		}
	}
	assert.Len(t, p.BasisWeights, len(stock.GradeNames()))
}

// TestAPaperThatCannotBe names the figures that contradict one another, and what is
// estimated has a range.
func TestAPaperThatCannotBe(t *testing.T) {
	d, err := stock.Describe(stock.Known{Caliper: um(70), Grammage: 100})
	require.NoError(t, err)
	p := OfPaper(&d, measure.Millimetre, "", &Asked{})
	assert.True(t, p.Unlikely)
	assert.Equal(t, []string{"caliper", "grammage"}, p.Contradict)
	d, err = stock.Describe(stock.Known{Grammage: 200})
	require.NoError(t, err)
	p = OfPaper(&d, measure.Millimetre, "", &Asked{})
	assert.True(t, p.CaliperEstimated)
	assert.Less(t, p.CaliperRange[0].MM, p.Caliper.MM)
	assert.Less(t, p.Caliper.MM, p.CaliperRange[1].MM)
}

// TestTheRulerInBothUnits and at each of its marks: 3 3/16 in are 80.9625 mm.
func TestTheRulerInBothUnits(t *testing.T) {
	a := ask.New[ask.Ruler]("json").Take()
	a.AddQuery("unit=in&length=3.1875")
	a.Parse()
	require.True(t, a.Check())
	require.Len(t, a.Q.Lengths.Lengths, 1)
	l := exactIn(measure.Inch, a.Q.Lengths.Lengths[0])
	assert.Equal(t, Length{Reading: "3 3/16 in", In: 3.1875, MM: 80.9625, ExactMM: 80.9625}, l)
}

// TestDesignsSayWhatTheyAre: each is told with the title and the help that stand in it, and
// as the text that a request takes.
func TestDesignsSayWhatTheyAre(t *testing.T) {
	list := Designs().Designs
	require.Len(t, list, len(own.Examples()))
	for i, d := range list {
		e := own.Examples()[i]
		known, err := own.Decode([]byte(d.Design))
		require.NoError(t, err, d.Name)
		assert.Equal(t, []string{e.Name, known.Title, known.Help, e.Kind}, []string{d.Name, d.Title, d.Help, d.Kind})
		assert.NotEmpty(t, d.Title)
		assert.NotEmpty(t, d.Help)
		assert.Equal(t, DesignLinks{"/v1/designs", "/v1/solve/own"}, d.Links)
	}
	var text JSON
	require.NoError(t, text.UnmarshalJSON([]byte(`{"a": 1}`)))
	assert.Equal(t, JSON(`{"a": 1}`), text, "as it stands")
}

// TestPresetsAreNamesThatAreTaken: each of the lists, asked for by its name.
func TestPresetsAreNamesThatAreTaken(t *testing.T) {
	asked := func(name, value, rest string) {
		a := ask.NewSolve(kindOf(t, "band")).Take()
		a.AddQuery("unit=in&" + name + "=" + url.QueryEscape(value) + rest)
		a.Parse()
		assert.True(t, a.Check(), "%s=%s: %v", name, value, a.Faults())
	}
	const size, paper = "&width=3in&height=5in&thickness=0.1in", "&caliper=0.012in"
	for _, p := range Contents(&ask.Near{}).Contents {
		thickness := "&thickness=0.1in"
		if p.Thickness != nil {
			thickness = ""
		}
		asked("contents", p.Name, thickness+paper)
	}
	for _, p := range Stocks().Stocks {
		asked("stock", p.Name, size)
	}
	for _, p := range Sheets(&ask.Near{}).Sheets {
		asked("sheet", p.Name, size+paper)
	}
	for _, p := range Benches().Benches {
		asked("bench", p.Name, size+paper)
	}
}
