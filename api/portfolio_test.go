package api

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/guide"
	"creasefit/internal/solve"
)

// chest is parted tea sachets in a tray, in a sleeve, with a band of thinner
// paper round it.
const chest = `{"unit":"in","width":5,"height":4,"thickness":2,"caliper":0.012,"fit":"easy","grammage":270,"sheet":"24 x 24 in",` +
	`"layers":[{"kind":"dividers","columns":3},"tray",{"kind":"sleeve","turned":"quarter"},{"kind":"band","caliper":0.006,"grammage":135,"fit":"snug"}]}`

// TestPortfolioNestsItsLayers follows the chain from the inside to the outside,
// and asks for each layer by itself.
func TestPortfolioNestsItsLayers(t *testing.T) {
	p := decode[wire.Portfolio](postJSON(t, "/v1/solve/portfolio", chest).ok())
	require.Len(t, p.Layers, 4)
	require.Len(t, p.Chain, 4)
	assert.InDelta(t, 127, p.Chain[0].Contents.Width.Nominal.MM, 0, "what the request says goes into the first")
	for i := 1; i < len(p.Chain); i++ {
		inner, outer := p.Chain[i-1].Outside, p.Chain[i].Contents
		if p.Layers[i].Turned == "quarter" {
			inner.Width, inner.Height = inner.Height, inner.Width
		}
		assert.Equal(t, inner.Width.Nominal.MM, outer.Width.Nominal.MM, "exactly, to the nanometre")
		assert.Equal(t, inner.Height.Nominal.MM, outer.Height.Nominal.MM)
		assert.Equal(t, inner.Thickness.RSS[1].MM, outer.Thickness.RSS[1].MM)
	}
	last := p.Chain[3]
	assert.Equal(t, "band", last.Layer)
	assert.Equal(t, last.Outside.Width.Nominal, p.Outside.Width)
	assert.Equal(t, "snug", last.Fit[0].Verdict)
	assert.True(t, p.Proof.Closes && p.Proof.Holds)
	count := 0
	for i, layer := range p.Layers {
		alone := decode[wire.Solution](get(t, layer.Links.Self).ok())
		for _, piece := range alone.Pieces {
			own := p.Pieces[count]
			assert.Equal(t, p.Layers[i].Name, own.Layer)
			own.Layer = ""
			assert.Equal(t, piece, own, "the same readings")
			count++
		}
		assert.Equal(t, alone.Yield, layer.Yield)
		assert.Equal(t, alone.Outside.Width, p.Chain[i].Outside.Width.Nominal)
		get(t, layer.Links.Guide).ok()
		get(t, layer.Links.Drawing).ok()
		get(t, layer.Links.Yield).ok()
	}
	assert.Len(t, p.Pieces, count)
	blanks := 0.0 // grams, before their corners are cut off
	for _, piece := range p.Pieces {
		grammage := map[bool]float64{false: 270, true: 135}[piece.Layer == "band"]
		blanks += float64(piece.Quantity) * grammage * piece.Blank.Width.MM * piece.Blank.Height.MM / 1e6
	}
	require.NotNil(t, p.Outside.Mass)
	assert.InEpsilon(t, blanks, p.Outside.Mass, 0.05)
	assert.Less(t, p.Outside.Mass, blanks)
}

// TestPortfolioByGetAndPost asks the same in both ways.
func TestPortfolioByGetAndPost(t *testing.T) {
	post := decode[wire.Portfolio](postJSON(t, "/v1/solve/portfolio", chest).ok())
	byLink := decode[wire.Portfolio](get(t, post.Links.Self).ok())
	post.Given, byLink.Given = nil, nil // the texts are spelled otherwise
	assert.Equal(t, post, byLink)
	words := "/v1/solve/portfolio?unit=in&width=5&height=4&thickness=2&caliper=0.012&layers=tray&layers=sleeve&layers=sleeve"
	p := decode[wire.Portfolio](get(t, words).ok())
	assert.Equal(t, []string{"tray", "sleeve", "sleeve 2"}, []string{p.Layers[0].Name, p.Layers[1].Name, p.Layers[2].Name})
	objects := strings.Replace(words, "layers=tray", "layers="+url.QueryEscape(`{"kind":"tray"}`), 1)
	assert.Equal(t, p.Chain, decode[wire.Portfolio](get(t, objects).ok()).Chain)
	rows := get(t, strings.Replace(words, "portfolio", "portfolio.csv", 1)).ok().Body.String()
	assert.Contains(t, rows, "\r\nsleeve 2,blank,width,,")
	assert.Equal(t, "sleeve 2", get(t, words+"&pick=/chain/2/layer").ok().Body.String())
}

// TestLayersTakeWhatTheyDoNotSay checks that a layer's own paper and fit stand
// in the place of those beside the layers, and that the rest is taken from there.
func TestLayersTakeWhatTheyDoNotSay(t *testing.T) {
	body := func(layer string) string {
		return `{"unit":"mm","width":80,"height":120,"thickness":20,"stock":"index-110","clearance_min":1,"clearance_max":2,"layers":["tray",` + layer + `]}`
	}
	windows := func(layer string) (first, second wire.Length, self string) {
		p := decode[wire.Portfolio](postJSON(t, "/v1/solve/portfolio", body(layer)).ok())
		return p.Chain[0].Fit[0].Window[1], p.Chain[1].Fit[0].Window[1], p.Layers[1].Links.Self
	}
	first, second, self := windows(`"sleeve"`)
	assert.InDelta(t, 2, first.MM, 0)
	assert.InDelta(t, 2, second.MM, 0)
	assert.Contains(t, self, "stock=index-110")
	first, second, self = windows(`{"kind":"sleeve","fit":"loose","caliper":0.5}`)
	assert.InDelta(t, 2, first.MM, 0)
	assert.InDelta(t, 6, second.MM, 0)
	assert.Contains(t, self, "caliper=0.5mm")
	assert.NotContains(t, self, "stock=")
}

// TestPortfolioProblems names every wrong field by the way that leads to it,
// and those beside the layers once.
func TestPortfolioProblems(t *testing.T) {
	for target, want := range map[string][]string{
		"": {"layers"},
		"unit=in&width=5x&height=4&thickness=2&layers=tray&layers=trai&layers=%7B%22kind%22:%22band%22,%22width%22:3,%22lapp%22:1%7D": {
			"width", "layers[0].caliper", "layers[1].kind", "layers[2].lapp", "layers[2].width", "layers[2].caliper"},
		"unit=in&width=5&height=4&layers=tray&layers=sleeve&caliper=0.01":                                             {"thickness"},
		"unit=in&width=5&height=4&thickness=2&layers=tray&layers=sleeve&caliper=0.01&stock=index-110":                 {"caliper"},
		"unit=in&width=5&height=4&thickness=2&layers=tray&caliper=0.01&layers=%7B%22kind%22:%22sleeve%22":             {"layers[1].kind"},
		"unit=in&width=5&height=4&thickness=2&caliper=0.01&" + strings.Repeat("layers=sleeve&", 13) + "layers=sleeve": {"layers"},
	} {
		p := get(t, "/v1/solve/portfolio?"+target).problem(http.StatusBadRequest)
		var names []string
		for _, e := range p.Errors {
			names = append(names, e.Name)
		}
		assert.Equal(t, want, names, target)
	}
	p := get(t, "/v1/solve/portfolio?unit=in&width=5&height=4&thickness=2&caliper=0.01&layers=tray&layers=dividers").problem(http.StatusUnprocessableEntity)
	assert.Equal(t, "layers[1].kind", p.Errors[0].Name)
}

// TestPortfolioInTheCatalogueAndInBatches finds the portfolio where kinds are
// found.
func TestPortfolioInTheCatalogueAndInBatches(t *testing.T) {
	list := decode[wire.KindList](get(t, "/v1/kinds").ok())
	require.Len(t, list.Assemblies, 1)
	shown := decode[wire.Kind](get(t, list.Assemblies[0].Link).ok())
	assert.Equal(t, "/v1/solve/portfolio", shown.Links.Solve)
	line := strings.Replace(chest, "{", `{"call":"/v1/solve/portfolio",`, 1) + "\n"
	answered := call(t, shared(), http.MethodPost, "/v1/batch", line, "Content-Type", mediaLines).ok().Body.String()
	assert.Contains(t, answered, `"status":200,"answer":{"kind":"portfolio"`)
}

// TestPortfolioGuideAndDrawing writes and draws all layers in one, in every
// format, with every piece of the answer.
func TestPortfolioGuideAndDrawing(t *testing.T) {
	p := decode[wire.Portfolio](postJSON(t, "/v1/solve/portfolio", chest).ok())
	g := decode[guide.Guide](get(t, p.Links.Guide).ok())
	require.Len(t, g.CutList, len(p.Pieces))
	for i, piece := range p.Pieces {
		assert.Equal(t, piece.Quantity, g.CutList[i].Quantity)
		assert.InDelta(t, piece.Blank.Width.MM, g.CutList[i].Width.MM, 0)
	}
	assert.Contains(t, get(t, p.Links.Guide+"&format=html&language=de").ok().Body.String(), "<svg")
	assert.True(t, strings.HasPrefix(get(t, p.Links.Guide+"&format=pdf").ok().Body.String(), "%PDF-"))
	for _, format := range drawingFormats {
		assert.NotEmpty(t, get(t, p.Links.Drawing+"&format="+format.String()).ok().Body.Bytes(), format)
	}
	picture := get(t, p.Links.Drawing).ok().Body.String()
	for _, title := range []string{"Dividers: width strip", ">Tray<", ">Sleeve with a glued lap<"} {
		assert.Contains(t, picture, title)
	}
	assert.Equal(t, p.Layers[0].Links.Kind, "/v1/kinds/dividers")
}

// The steps of all layers are counted through from the inside out; each has its picture,
// and the guide tells each of them once and shows it.
func TestPortfolioHasPictures(t *testing.T) {
	asked := func(names string) string { return "{" + names + "," + chest[1:] }
	wrong := postJSON(t, "/v1/drawing/portfolio", asked(`"view":"step","picture":400`)).problem(http.StatusBadRequest)
	n, err := strconv.Atoi(wrong.Errors[0].Hint)
	require.NoError(t, err)
	steps := 0
	for _, layer := range decode[wire.Portfolio](postJSON(t, "/v1/solve/portfolio", chest).ok()).Layers {
		steps += len(decode[wire.Solution](get(t, layer.Links.Self+"&show=order").ok()).Order)
	}
	assert.Equal(t, steps, n, "as many as its layers by themselves")
	for _, k := range []int{1, n / 2, n} {
		picture := postJSON(t, "/v1/drawing/portfolio", asked(`"view":"step","picture":`+strconv.Itoa(k))).ok().Body.String()
		assert.Contains(t, picture, "<desc")
	}
	g := decode[guide.Guide](postJSON(t, "/v1/guide/portfolio", asked(`"pictures":"light"`)).ok())
	told := map[int]int{}
	for _, s := range g.Steps {
		require.Len(t, s.Pictures, 1, s.Title)
		assert.Contains(t, s.Pictures[0], "<svg ")
		for _, k := range s.Order {
			told[k]++
		}
	}
	for k := 1; k <= n; k++ {
		assert.Equal(t, 1, told[k], "step %d", k)
	}
	page := postJSON(t, "/v1/guide/portfolio", asked(`"format":"html"`)).ok().Body.String()
	assert.Equal(t, len(g.Steps), strings.Count(page, "<svg "))
	whole := postJSON(t, "/v1/drawing/portfolio", asked(`"view":"finished"`)).ok().Body.String()
	for _, name := range []string{"1\u00a0Dividers", "2\u00a0Tray", "3\u00a0Sleeve with", "4\u00a0Belly band"} {
		assert.Contains(t, whole, name)
	}
}

// A layer by itself goes round what varies most of the sizes inside, so that its answer is no
// surer than it is in the portfolio.
func TestALayerAloneHasTheGreatestSpread(t *testing.T) {
	asked := ask.NewForm(ask.Portfolios()).Take()
	asked.AddQuery("unit=in&width=5&height=4&thickness=2&caliper=0.012&fit=easy&layers=tray&layers=sleeve&layers=band")
	asked.Parse()
	require.True(t, asked.Check(), "%v", asked.Faults())
	p, err := solve.SolvePortfolio(t.Context(), asked.Q.Layers)
	require.NoError(t, err)
	for i := 1; i < len(p.Solutions); i++ {
		standAlone(asked.Q, p, i)
		told, any := asked.Q.Alone[i].Q.Contents.Tolerance.Length.Length, false
		for _, size := range p.Chain[i].Contents {
			spread := size.RSS.Max.Sub(size.Nominal)
			assert.False(t, told.Less(spread), "layer %d", i)
			any = any || told == spread
		}
		assert.True(t, any, "it is that of a size")
	}
}
