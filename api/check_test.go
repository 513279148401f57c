package api

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/repertoire"
)

// ownStrip is the strip of common practice as somebody measured it.
const ownStrip = "unit=in&width=3-1/2&thickness=0.09&caliper=0.012&fit=snug&ruler=1/8in&blank=8-1/4x1-3/4&marks=1/2&marks=2-1/4&marks=5-7/8&marks=7-3/4&depths=1&depths=1"

func TestCheckFindsGoodMeasurementsGood(t *testing.T) {
	c := decode[wire.Check](get(t, "/v1/check/slotted-band?"+ownStrip).ok())
	assert.True(t, c.Works)
	assert.Equal(t, "It closes, and the contents go in: width snug.", c.Words)
	assert.Empty(t, c.Mend)
	require.NotNil(t, c.Greatest.Width)
	assert.InDelta(t, 3.511, c.Greatest.Width.In, 1e-9, "3 5/8 - 0.09 - 2 x 0.012, by hand")
}

func TestCheckMends(t *testing.T) {
	target := "/v1/check/slotted-band?" + strings.Replace(ownStrip, "7-3/4", "7-5/8", 1)
	c := decode[wire.Check](get(t, target).ok())
	assert.False(t, c.Works)
	require.Len(t, c.Mend, 1)
	assert.InDelta(t, 0.125, max(c.Mend[0].To.In-c.Mend[0].From.In, c.Mend[0].From.In-c.Mend[0].To.In), 1e-9)
	text := get(t, target+"&format=text").ok().Body.String()
	assert.Contains(t, text, "It does not work as measured")
	assert.Contains(t, text, "change "+c.Mend[0].Name+" from "+c.Mend[0].From.Reading+" to "+c.Mend[0].To.Reading)
}

func TestCheckByPostAndGetAgree(t *testing.T) {
	body := `{"unit":"in","width":"3-1/2","thickness":0.09,"caliper":0.012,"fit":"snug","ruler":"1/8in","blank":["8-1/4x1-3/4"],"marks":["1/2","2-1/4","5-7/8","7-3/4"],"depths":[1,1]}`
	posted := postJSON(t, "/v1/check/slotted-band", body).ok()
	again, first := decode[wire.Check](get(t, posted.Header().Get("Content-Location")).ok()), decode[wire.Check](posted)
	again.Given = first.Given // repeats how the values were written
	assert.Equal(t, first, again)
	assert.Equal(t, "1/2, 2-1/4, 5-7/8, 7-3/4", first.Given.Of("marks").Text)
	assert.Equal(t, "true", get(t, "/v1/check/slotted-band?"+ownStrip+"&pick=/works").ok().Body.String())
}

func TestCheckFindsTheGreatestContents(t *testing.T) {
	c := decode[wire.Check](get(t, "/v1/check/slotted-band?"+strings.Replace(ownStrip, "width=3-1/2&", "", 1)).ok())
	assert.True(t, c.Works, c.Words)
	assert.InDelta(t, 3.511, c.Greatest.Width.In, 1e-9)
}

func TestCheckNamesWhatIsWrong(t *testing.T) {
	rows := map[string]struct {
		query  string
		status int
		field  string
	}{
		"no blank":              {strings.Replace(ownStrip, "blank=8-1/4x1-3/4&", "", 1), http.StatusBadRequest, "blank"},
		"a score too few":       {strings.Replace(ownStrip, "marks=5-7/8&", "", 1), http.StatusBadRequest, "marks"},
		"scores going down":     {strings.Replace(ownStrip, "marks=2-1/4&marks=5-7/8", "marks=5-7/8&marks=2-1/4", 1), http.StatusUnprocessableEntity, "marks"},
		"a contradicting tab":   {ownStrip + "&tab=3/4", http.StatusBadRequest, "tab"},
		"too many scores":       {ownStrip + strings.Repeat("&marks=1", 33), http.StatusBadRequest, "marks"},
		"an unreadable marking": {ownStrip + "&marks=3-5/7", http.StatusBadRequest, "marks"},
	}
	for name, row := range rows {
		t.Run(name, func(t *testing.T) {
			p := get(t, "/v1/check/slotted-band?"+row.query).problem(row.status)
			var fields []string
			for _, e := range p.Errors {
				fields = append(fields, e.Name)
			}
			assert.Contains(t, fields, row.field)
		})
	}
}

// TestEveryKindChecksItsOwnExample checks for each kind what its example
// solution gives, which must work.
func TestEveryKindChecksItsOwnExample(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			query, body := checkExample(k)
			require.NotEmpty(t, query, "the example of the specification must solve")
			assert.True(t, decode[wire.Check](get(t, "/v1/check/"+k.Name+"?"+query).ok()).Works)
			assert.True(t, decode[wire.Check](postJSON(t, "/v1/check/"+k.Name, body).ok()).Works)
		})
	}
}

func TestOrnamentIsAnswered(t *testing.T) {
	s := decode[wire.Solution](get(t, "/v1/solve/slotted-band?"+cards+"&ornament_width=3/4&ornament_height=2").ok())
	require.NotNil(t, s.Ornament)
	assert.False(t, s.Ornament.CoversTabs)
	assert.True(t, s.Ornament.CoversSlits)
	assert.Equal(t, "1/8 in", s.Ornament.TrimWidth.Reading, "tabs of 1/2 in under halves of 3/8 in")
}

// The check that a solution links finds its own readings good, for every kind.
func TestSolutionsLinkTheirCheck(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		query, _, s := solvedExample(k)
		require.NotNil(t, s, k.Name)
		link := decode[wire.Solution](get(t, "/v1/solve/"+k.Name+"?"+query).ok()).Links.Check
		assert.True(t, decode[wire.Check](get(t, link).ok()).Works, link)
	}
}
