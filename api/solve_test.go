package api

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/golden"
)

// cards is a set of tasting cards in a snug slotted band.
const cards = "unit=in&width=3-1/2&thickness=0.09&caliper=0.012&band_height=1-3/4&tab=1/2&fit=snug&ruler=1/8in"

// cardsBody is the same request as JSON.
const cardsBody = `{"unit":"in","width":"3-1/2","thickness":0.09,"caliper":0.012,"band_height":"1-3/4","tab":"1/2","fit":"snug","ruler":"1/8in"}`

func TestSolveMakesTheStripOfCommonPractice(t *testing.T) {
	s := decode[wire.Solution](get(t, "/v1/solve/slotted-band?"+cards).ok())
	require.Len(t, s.Pieces, 1)
	piece := s.Pieces[0]
	assert.Equal(t, "1/8 in", s.Step)
	assert.Equal(t, "8 1/4 in", piece.Blank.Width.Reading)
	assert.Equal(t, "1 3/4 in", piece.Blank.Height.Reading)
	var at []string
	for _, score := range piece.Scores {
		at = append(at, score.At.Reading)
	}
	assert.Equal(t, []string{"1/2 in", "2 1/4 in", "5 7/8 in", "7 3/4 in"}, at)
	assert.True(t, s.Proof.Closes && s.Proof.Holds)
	require.Len(t, s.Fit, 1)
	assert.Equal(t, "snug", s.Fit[0].Verdict)
}

// TestReadingsAddUp adds up the JSON numbers: panels make the blank, scores
// are their partial sums, and a turned score is measured from the other end.
func TestReadingsAddUp(t *testing.T) {
	for _, target := range []string{"/v1/solve/slotted-band?" + cards, "/v1/solve/band?contents=tea-sachets&stock=index-110&unit=mm&scores=two"} {
		s := decode[wire.Solution](get(t, target).ok())
		for _, piece := range s.Pieces {
			across, scores := 0.0, 0
			for _, panel := range piece.Panels {
				if panel.Across == "width" {
					across += panel.Size.MM
				}
				if panel.Across == "width" && scores < len(piece.Scores) {
					assert.InDelta(t, across, piece.Scores[scores].At.MM, 1e-9)
					scores++
				}
			}
			assert.InDelta(t, piece.Blank.Width.MM, across, 1e-9)
			for _, score := range piece.Scores {
				assert.InDelta(t, score.At.ExactMM+score.At.OffMM, score.At.MM, 1e-9)
				if score.Or != nil {
					assert.InDelta(t, piece.Blank.Width.MM, score.At.MM+score.Or.At.MM, 1e-9)
				}
			}
		}
	}
}

func TestGetAndPostGiveTheSameAnswer(t *testing.T) {
	byGet := get(t, "/v1/solve/slotted-band?"+cards).ok()
	byJSON := postJSON(t, "/v1/solve/slotted-band", strings.ReplaceAll(strings.ReplaceAll(cardsBody, "0.09", `"0.09"`), "0.012", `"0.012"`)).ok()
	byForm := call(t, shared(), "POST", "/v1/solve/slotted-band", cards, "Content-Type", "application/x-www-form-urlencoded").ok()
	assert.Equal(t, byGet.Body.String(), byJSON.Body.String())
	assert.Equal(t, byGet.Body.String(), byForm.Body.String())
	assert.Equal(t, byGet.Header().Get("ETag"), byJSON.Header().Get("ETag"))
	assert.Equal(t, "/v1/solve/slotted-band?unit=in&width=3-1/2in&thickness=0.09in&caliper=0.012in&ruler=1/8in&fit=snug&band_height=1-3/4in&tab=1/2in",
		byJSON.Header().Get("Content-Location"))
}

// TestCanonicalLinkGivesTheSameSolution follows the links of a solution.
func TestCanonicalLinkGivesTheSameSolution(t *testing.T) {
	first := decode[wire.Solution](get(t, "/v1/solve/slotted-band?width=89mm&thickness=2.3+mm&caliper=0.3mm&_=17&utm_source=x&x-trace=1").ok())
	again := decode[wire.Solution](get(t, first.Links.Self).ok())
	assert.Equal(t, first.Pieces, again.Pieces)
	assert.Equal(t, first.Links.Self, again.Links.Self)
	require.NotEmpty(t, first.Alternatives)
	finer := decode[wire.Solution](get(t, first.Alternatives[0].Link).ok())
	assert.Equal(t, first.Alternatives[0].Step, finer.Step)
	assert.Equal(t, first.Alternatives[0].Fit, finer.Fit)
}

func TestBothUnitsSolveOnTheirOwnRulers(t *testing.T) {
	inches := decode[wire.Solution](get(t, "/v1/solve/slotted-band?contents=tasting-cards&caliper=0.012in&unit=in").ok())
	millimetres := decode[wire.Solution](get(t, "/v1/solve/slotted-band?contents=tasting-cards&caliper=0.012in&unit=mm").ok())
	assert.Contains(t, inches.Step, " in")
	assert.Contains(t, millimetres.Step, " mm")
	assert.Equal(t, "mm", millimetres.Unit)
}

func TestGivenSaysHowValuesWereUnderstood(t *testing.T) {
	s := decode[wire.Solution](get(t, "/v1/solve/slotted-band?contents=tasting-cards&stock=index-110&tab=1-1/4&unit=in").ok())
	assert.Equal(t, "1-1/4", s.Given.Of("tab").Text)
	assert.InDelta(t, 31.75, s.Given.Of("tab").MM, 0)
	assert.InDelta(t, 1.25, s.Given.Of("tab").In, 0)
	assert.Equal(t, "contents", s.Given.Of("width").From)
	assert.InDelta(t, 88.9, s.Given.Of("width").MM, 0)
	assert.Equal(t, "stock", s.Given.Of("caliper").From)
	assert.Equal(t, "default", s.Given.Of("fit").From)
	assert.Equal(t, "1/16 in", s.Given.Of("ruler").Text)
}

func TestEstimatedCaliperIsWarnedOf(t *testing.T) {
	s := decode[wire.Solution](get(t, "/v1/solve/band?contents=tasting-cards&grammage=270&unit=mm").ok())
	assert.Equal(t, "grammage", s.Given.Of("caliper").From)
	require.NotEmpty(t, s.Warnings)
	var codes []string
	for _, w := range s.Warnings {
		codes = append(codes, w.Code)
		if w.Code == "estimated-caliper" {
			// 270 g/m2 at 1.0, 0.8 and 0.65 g/cm3 (ISO 534: caliper = grammage / density).
			assert.Contains(t, w.Detail, "0.34 mm")
			assert.Contains(t, w.Detail, "0.27 mm to 0.42 mm")
		}
	}
	assert.Contains(t, codes, "estimated-caliper")
}

// TestGoldenAnswers freezes one whole answer in every format.
func TestGoldenAnswers(t *testing.T) {
	for name, target := range map[string]string{
		"solution.json":       "/v1/solve/slotted-band?" + cards,
		"solution.csv":        "/v1/solve/slotted-band.csv?" + cards,
		"solution-comma.csv":  "/v1/solve/slotted-band.csv?decimal=comma&header=0&" + cards,
		"solution.xml":        "/v1/solve/slotted-band.xml?" + cards,
		"solution.txt":        "/v1/solve/slotted-band.txt?" + cards,
		"millimetres.json":    "/v1/solve/band?width=89mm&thickness=12mm&caliper=0.3mm&lap=15mm&contents_tolerance=0.5mm&grammage=270",
		"ruler.json":          "/v1/ruler?length=92.1mm",
		"paper.json":          "/v1/stock?basis_weight=80&grade=cover&sheet=letter",
		"kind.json":           "/v1/kinds/slotted-band",
		"mail.json":           "/v1/mail?width=4in&height=6in&thickness=0.24in&thickness_tolerance=1/64in&mass_oz=2&card=single&post=us&post=upu",
		"mail.csv":            "/v1/mail.csv?decimal=comma&" + square,
		"mail.txt":            "/v1/mail.txt?" + square,
		"posts.json":          "/v1/posts",
		"problem-unfit.json":  "/v1/solve/slotted-band?width=3.5in&thickness=0.09in&caliper=0.012in&clearance_min=0.001in&clearance_max=0.002in",
		"problem-values.json": "/v1/solve/slotted-band?width=3-5/7in&thickness=-1mm&caliper=12&tabb=1in&fit=tight&ruler=1/128in",
	} {
		t.Run(name, func(t *testing.T) { kept(t, name, get(t, target).Body.String()) })
	}
}

// kept compares with a committed file.
func kept(t *testing.T, name, got string) {
	t.Helper()
	golden.Check(t, filepath.Join("testdata", "golden", name), []byte(got))
}
