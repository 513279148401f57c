package api

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
)

// sheetMeasured is a test sheet of card of 0.3 mm whose folds take up 0.2 mm.
const sheetMeasured = "unit=mm&block_width=60&block_thickness=20&turns=10&wound=1720&cut_at=100&cuts=100&cuts=100.5&cuts=99.5&cuts=100&cuts=100.5" +
	"&scored_apart=25&folded_inside=24.5&folded_inside=24.5&folded_inside=24&folded_inside=25&folded_inside=24.5&marked=200&wet_across=204"

// What was measured becomes names that the next request takes; what was not is the
// bench's.
func TestCalibrationLeadsToRequests(t *testing.T) {
	c := decode[wire.Calibration](get(t, "/v1/calibrate?"+sheetMeasured).ok())
	assert.Equal(t, "0.3 mm", c.Use.Caliper)
	assert.Equal(t, "0.2 mm", c.Use.FoldAllowance)
	assert.Equal(t, "0.794 mm", c.Use.ScoreTolerance, "1/32 in, by hand")
	require.Len(t, c.How, 5)
	assert.Equal(t, "10 turns round the block", c.How[0].From)
	assert.Less(t, c.How[0].Least.MM, 0.3)
	assert.InDelta(t, 2, c.Growth[0].Percent, 1e-9)
	asked := "/v1/solve/sleeve?unit=mm&width=95&height=60&thickness=24&"
	plain, learned := decode[wire.Solution](get(t, asked+"caliper=0.3").ok()), decode[wire.Solution](get(t, asked+c.Query).ok())
	assert.NotEqual(t, plain.Sure.Chance, learned.Sure.Chance)
	assert.InDelta(t, plain.Pieces[0].Panels[2].Size.ExactMM+0.2, learned.Pieces[0].Panels[2].Size.ExactMM, 1e-9, "the back has two folds")

	posted := decode[wire.Calibration](postJSON(t, "/v1/calibrate", `{"unit":"mm","stack_count":50,"stack":15,"bench":"plotter"}`).ok())
	assert.Equal(t, "caliper=0.3mm&caliper_tolerance=0.014mm&cut_tolerance=0.2mm&score_tolerance=0.2mm", posted.Query)
	for _, b := range decode[wire.BenchList](get(t, "/v1/benches").ok()).Benches {
		named, said := get(t, asked+"caliper=0.3&show=sure&bench="+b.Name).ok(), get(t, asked+"caliper=0.3&show=sure&"+b.Query).ok()
		assert.JSONEq(t, named.Body.String(), said.Body.String(), "the names of a bench, and the bench by its name")
	}
}

// Folds that bulge give a negative allowance, which a request takes as well.
func TestNegativeAllowance(t *testing.T) {
	c := decode[wire.Calibration](get(t, "/v1/calibrate?unit=mm&caliper=0.8&scored_apart=25&folded_inside=24.5"+strings.Repeat("&folded_inside=24.5", 4)).ok())
	assert.Equal(t, "-0.3 mm", c.Use.FoldAllowance)
	get(t, "/v1/solve/sleeve?unit=mm&width=95&height=60&thickness=24&caliper=0.8&fold_allowance=-0.3").ok()
}

// What contradicts itself is a problem that names what is wrong; everything at once.
func TestCalibrationProblems(t *testing.T) {
	for query, want := range map[string]struct {
		status int
		names  string
	}{
		"unit=mm&wound=1720": {http.StatusBadRequest, "turns block_width block_thickness"},
		"unit=mm&block_width=60&block_thickness=20&turns=10&wound=1590":                        {http.StatusUnprocessableEntity, "wound"},
		"unit=mm&cuts=-3&cut_at=50":                                                            {http.StatusBadRequest, "cuts"},
		"unit=mm&block_tolerance=-1":                                                           {http.StatusBadRequest, "block_tolerance"},
		"unit=mm&cut_at=50&cuts=50&cuts=50&score_at=20&scores=20":                              {http.StatusBadRequest, "cuts scores"},
		"unit=mm&caliper=0.3&stack=6&stack_count=20":                                           {http.StatusBadRequest, "stack"},
		"unit=mm&block_width=60&block_thickness=20&turns=10&wound=1720&stack=9&stack_count=10": {http.StatusBadRequest, "stack"},
		"caliper_tolerance=1":                                                                  {http.StatusBadRequest, "caliper_tolerance"},
	} {
		var names []string
		for _, e := range get(t, "/v1/calibrate?"+query).problem(want.status).Errors {
			names = append(names, e.Name)
			assert.NotEmpty(t, e.Detail)
		}
		assert.Equal(t, want.names, strings.Join(names, " "), query)
	}
}

// The test sheet is a PDF, in both languages and for both papers (an A5 sheet is 148 mm
// x 210 mm, ISO 216; a point is 1/72 in).
func TestTestSheetIsPrinted(t *testing.T) {
	seen := map[string]string{}
	for query, parts := range map[string][]string{
		"unit=mm": {"/Lang <FEFF0065006E>"}, "unit=in&language=de": {"/Lang <FEFF00640065>"},
		"unit=mm&paper=a5":                  {"/MediaBox [0 0 419.528 595.276]"},
		"unit=mm&paper=a5&scored_apart=30":  {"/MediaBox [0 0 419.528 595.276]"},
		"unit=mm&paper=a5&marked=120":       {"/MediaBox [0 0 419.528 595.276]"},
		"unit=mm&paper=a5&language=de":      {"/MediaBox [0 0 419.528 595.276]", "/Lang <FEFF00640065>"},
		"unit=mm&paper=a5&block_width=30mm": {"/MediaBox [0 0 419.528 595.276]"},
	} {
		text := get(t, "/v1/calibrate.pdf?"+query).ok().Body.String()
		assert.True(t, strings.HasPrefix(text, "%PDF-"), query)
		for _, part := range parts {
			assert.Contains(t, text, part, query)
		}
		seen[query] = text
	}
	for _, other := range []string{"scored_apart=30", "marked=120", "language=de"} {
		assert.NotEqual(t, seen["unit=mm&paper=a5"], seen["unit=mm&paper=a5&"+other], "it shows what is to be measured: %s", other)
	}
	english := strings.Replace(seen["unit=mm&paper=a5&language=de"], "/Lang <FEFF00640065>", "/Lang <FEFF0065006E>", 1)
	assert.NotEqual(t, seen["unit=mm&paper=a5"], english, "more than the name of the language is another")
	assert.Equal(t, seen["unit=mm&paper=a5"], seen["unit=mm&paper=a5&block_width=30mm"], "a block is no part of it")
}

// A sleeve whose walls stand 0.5 mm closer than they should teaches what its folds
// take up, and the next request takes that by name.
func TestFoldedPieceLeadsToRequests(t *testing.T) {
	const asked = "unit=mm&width=95&height=60&thickness=24&caliper=0.3&caliper_tolerance=0.011&bench=plotter"
	const own = "&blank=263x60mm&marks=98&marks=124.5&marks=222.5&marks=248.5"
	plain := decode[wire.Check](get(t, "/v1/check/sleeve?"+asked+own).ok())
	require.True(t, plain.Works, plain.Words)
	assert.Nil(t, plain.Learned)
	c := decode[wire.Check](get(t, "/v1/check/sleeve?"+asked+own+"&inside_width=97.2&inside_thickness=25").ok())
	require.NotNil(t, c.Learned)
	require.NotEmpty(t, c.Learned.Causes)
	assert.Equal(t, "fold", c.Learned.Causes[0].Cause)
	assert.Contains(t, c.Learned.Words, "Most likely every fold takes up")
	assert.Less(t, c.Learned.Chance, 0.1)
	again := decode[wire.Solution](get(t, "/v1/solve/sleeve?unit=mm&width=95&height=60&thickness=24&"+c.Learned.Query).ok())
	assert.Greater(t, again.Pieces[0].Panels[2].Size.ExactMM, 97.55, "the back has room for two folds")
}
