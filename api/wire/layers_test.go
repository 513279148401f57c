package wire

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/solve"
)

// layered solves several enclosures round one another.
func layered(t *testing.T, query string) (*solve.Portfolio, *Portfolio) {
	t.Helper()
	a := ask.NewForm(ask.Portfolios()).Take()
	a.AddQuery(query)
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	p, err := solve.SolvePortfolio(context.Background(), a.Q.Layers)
	require.NoError(t, err)
	for _, s := range p.Solutions {
		require.NoError(t, s.CountYields(context.Background()))
	}
	alone := func(i int) *Asked {
		return Ask(&a.Q.Alone[i].Reading, "/v1/solve/"+a.Q.Layers[i].Request.Kind.Name)
	}
	return p, OfPortfolio(p, Ask(&a.Reading, "/v1/solve/portfolio"), alone)
}

const (
	tea   = "unit=in&width=5&height=4&thickness=1&caliper=0.012&fit=easy"
	boxes = tea + "&layers=tray&layers=sleeve&layers=sleeve"
)

// TestLayersAreNamedApart: a kind that comes again has a number, and pieces, links and chain
// are told by that name.
func TestLayersAreNamedApart(t *testing.T) {
	p, w := layered(t, boxes)
	names := []string{"tray", "sleeve", "sleeve 2"}
	assert.Equal(t, names, Each(w.Layers, func(l PortfolioLayer) string { return l.Name }))
	assert.Equal(t, names, Each(w.Chain, func(l ChainLink) string { return l.Layer }))
	assert.Equal(t, []string{"tray", "sleeve", "sleeve"}, Each(w.Layers, func(l PortfolioLayer) string { return l.Kind }))
	pieces := map[string]int{}
	for _, piece := range w.Pieces {
		pieces[piece.Layer]++
	}
	for i, s := range p.Solutions {
		assert.Equal(t, len(s.Pattern.Pieces), pieces[names[i]])
		alone := strings.TrimPrefix(w.Layers[i].Links.Self, "/v1/solve/")
		assert.True(t, strings.HasPrefix(alone, w.Layers[i].Kind+"?unit=in"), "the layer alone")
		assert.Equal(t, "/v1/drawing/"+alone, w.Layers[i].Links.Drawing)
		assert.Equal(t, s.Step.String(), w.Layers[i].Step)
		assert.Equal(t, "no", w.Layers[i].Turned)
		assert.Nil(t, w.Layers[i].Yield, "no sheet is named")
	}
	assert.Equal(t, "portfolio", w.Kind)
	assert.Equal(t, strings.Replace(w.Links.Self, "/solve/", "/drawing/", 1), w.Links.Drawing)
	assert.Empty(t, w.Links.Check)
	_, mailed := linked(t, w.Links.Mail)
	assert.Len(t, mailed, 4, "unit and three sizes: of what is inside nothing more is said")
}

// TestTheChainGoesFromInsideToOutside: each layer goes round the outside of the one before,
// errors and all, and the last one's outside is that of the whole.
func TestTheChainGoesFromInsideToOutside(t *testing.T) {
	_, w := layered(t, boxes)
	for i := 1; i < len(w.Chain); i++ {
		assert.Equal(t, withoutReadings(w.Chain[i-1].Outside), withoutReadings(w.Chain[i].Contents), "%s goes round %s", w.Chain[i].Layer, w.Chain[i-1].Layer)
		assert.Greater(t, w.Chain[i].Outside.Width.Nominal.MM, w.Chain[i].Contents.Width.Nominal.MM)
	}
	last := w.Chain[len(w.Chain)-1].Outside
	assert.Equal(t, []float64{last.Width.Nominal.MM, last.Height.Nominal.MM, last.Thickness.Nominal.MM}, []float64{w.Outside.Width.MM, w.Outside.Height.MM, w.Outside.Thickness.MM})
	for _, l := range w.Chain {
		for _, s := range []SureSize{l.Contents.Width, l.Contents.Height, l.Contents.Thickness, l.Outside.Width, l.Outside.Height, l.Outside.Thickness} {
			const nanometre = 1.1e-6 // both are rounded
			assert.True(t, s.WorstCase[0].MM <= s.RSS[0].MM+nanometre && s.RSS[0].MM <= s.RSS[1].MM && s.RSS[1].MM <= s.WorstCase[1].MM+nanometre, "%s: %+v", l.Layer, s)
		}
	}
	assert.Equal(t, "5 in", w.Chain[0].Contents.Width.Nominal.Reading, "the innermost goes round what was asked for")
}

// withoutReadings are sizes as millimetres: each layer writes them for its own ruler.
func withoutReadings(s SureSizes) (mm []float64) {
	for _, one := range []SureSize{s.Width, s.Height, s.Thickness} {
		for _, l := range []Length{one.Nominal, one.WorstCase[0], one.WorstCase[1], one.RSS[0], one.RSS[1]} {
			mm = append(mm, l.MM)
		}
	}
	return mm
}

// TestTheWholeIsAsSureAsAllLayers: never surer than the least sure of them, which is named.
func TestTheWholeIsAsSureAsAllLayers(t *testing.T) {
	p, w := layered(t, boxes)
	for _, s := range p.Solutions {
		assert.LessOrEqual(t, w.Sure.Chance, round(s.Sure.Chance, 4)+w.Sure.Within)
	}
	assert.True(t, strings.HasPrefix(w.Sure.Of, "all layers: the contents go in"), w.Sure.Of)
	require.NotNil(t, w.Sure.Weakest)
	assert.Equal(t, w.Layers[p.Unsurest].Name, w.Sure.Weakest.Layer)
	least := 1.0
	for _, l := range w.Chain {
		for _, f := range l.Fit {
			least = min(least, f.Chance)
		}
	}
	assert.Equal(t, least, w.Sure.Weakest.Chance)
}

// TestTheProofOfAllLayers: it closes if every layer does, with the greatest gap and its
// tolerance; the mass is that of all papers, or not known.
func TestTheProofOfAllLayers(t *testing.T) {
	p, w := layered(t, boxes+"&grammage=240")
	mass := 0.0
	for _, s := range p.Solutions {
		assert.LessOrEqual(t, on(s.Proof.Gap), w.Proof.Gap)
		mass += s.Outside.Mass
	}
	assert.True(t, w.Proof.Closes && w.Proof.Holds)
	assert.InDelta(t, mass, w.Outside.Mass, 0.005)
	assert.Positive(t, mass)
	for i := range p.Solutions {
		p.Solutions[i].Outside.Mass = 0.25
	}
	assert.Equal(t, 0.75, wholeMass(p), "grams, of a small thing")
	p.Solutions[1].Outside.Mass = 0
	assert.Zero(t, wholeMass(p), "that of one layer is not known")
	p.Solutions[0].Proof = solve.Proof{Closes: true, Holds: false, Gap: um(9000), Tolerance: um(10)}
	assert.Equal(t, solve.Proof{Closes: true, Holds: false, Gap: um(9000), Tolerance: um(10)}, wholeProof(p))
	p.Solutions[2].Proof.Closes = false
	assert.False(t, wholeProof(p).Closes)
	p.Solutions[2].Warnings = []enclosure.Warning{{Code: "some", Detail: "take care"}}
	assert.Contains(t, Each(allWarnings(p), func(w enclosure.Warning) string { return w.Detail }), "sleeve 2: take care")
}

// TestATurnedLayerIsSaidToBe, and a layer tells how it comes out of the sheet.
func TestATurnedLayerIsSaidToBe(t *testing.T) {
	_, w := layered(t, tea+`&sheet=letter&layers=tray&layers={"kind":"sleeve","turned":"quarter"}`)
	assert.Equal(t, []string{"no", "quarter"}, Each(w.Layers, func(l PortfolioLayer) string { return l.Turned }))
	assert.Equal(t, w.Chain[0].Outside.Width.Nominal.MM, w.Chain[1].Contents.Height.Nominal.MM, "its height goes along what was the width")
	for _, l := range w.Layers {
		require.NotNil(t, l.Yield)
		assert.Contains(t, l.Links.Yield, "&sheet=letter")
	}
}

// TestLayersAsMeasured: the readings of every layer work, those of one that was cut wrong are
// told by its name.
func TestLayersAsMeasured(t *testing.T) {
	p, solved := layered(t, boxes)
	own := Each(p.Solutions, func(s *solve.Solution) *solve.Measurements { return s.ReadOff() })
	reading := &ask.NewForm(ask.Portfolios()).Take().Reading
	judge := func() *PortfolioCheck {
		c, err := solve.CheckPortfolio(context.Background(), p.Layers, own)
		require.NoError(t, err)
		return OfPortfolioCheck(c, &Asked{Reading: reading}, func(int) *Asked { return &Asked{Reading: reading} })
	}
	right := judge()
	assert.True(t, right.Works)
	assert.Equal(t, "Every layer closes and goes round the one before.", right.Words)
	assert.Equal(t, "/v1/kinds/portfolio", right.Links.Kind)
	for i, l := range right.Layers {
		assert.Equal(t, solved.Layers[i].Name, l.Name)
		assert.True(t, l.Works)
		assert.Equal(t, bare(solved.Chain[i].Fit), bare(right.Chain[i].Fit))
	}
	own[1].Marks[0] = own[1].Marks[0].Add(um(20_000))
	wrong := judge()
	assert.False(t, wrong.Works)
	assert.Equal(t, "The sleeve does not work as measured.", wrong.Words, "the first that does not")
	assert.Equal(t, []bool{true, false}, []bool{wrong.Layers[0].Works, wrong.Layers[1].Works})
}
