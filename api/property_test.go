package api

import (
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// drawQuery draws a request that can be read: sizes of things that people
// wrap, and any of the kind's own names.
func drawQuery(rt *rapid.T, k *enclosure.Kind) url.Values {
	unit := rapid.SampledFrom([]string{"in", "mm"}).Draw(rt, "unit")
	length := func(name string, least, greatest int64) string {
		nm := rapid.Int64Range(least/100, greatest/100).Draw(rt, name) * 100
		marks := measure.Marks(map[string]measure.Unit{"in": measure.Inch, "mm": measure.Millimetre}[unit])
		l := measure.Nanometres(nm)
		if rapid.Bool().Draw(rt, "on a mark") {
			l = rapid.SampledFrom(marks).Draw(rt, "mark").Up(l)
		}
		return marks[0].FormatURL(l)
	}
	const mm = 1_000_000
	q := url.Values{"unit": {unit}, "width": {length("width", 20*mm, 300*mm)}, "height": {length("height", 20*mm, 300*mm)},
		"thickness": {length("thickness", mm/10, 60*mm)}, "caliper": {length("caliper", mm/20, 2*mm)}}
	if rapid.Bool().Draw(rt, "fit") {
		q.Set("fit", rapid.SampledFrom([]string{"snug", "easy", "loose"}).Draw(rt, "fit name"))
	}
	for _, p := range k.Params {
		odds := map[bool]int{false: 3, true: 15}[p.Advanced]
		if rapid.IntRange(0, odds).Draw(rt, p.Name+" given") != odds/2 { // the ends are drawn more often
			continue
		}
		switch p.Type {
		case enclosure.LengthParam:
			q.Set(p.Name, length(p.Name, p.Least.Nanometres(), min(p.Greatest.Nanometres(), 300*mm)))
		case enclosure.CountParam:
			q.Set(p.Name, strconv.FormatInt(rapid.Int64Range(p.LeastCount, p.GreatestCount).Draw(rt, p.Name), 10))
		case enclosure.ChoiceParam:
			q.Set(p.Name, rapid.SampledFrom(p.Choices).Draw(rt, p.Name))
		}
	}
	return q
}

// TestReadableRequestsAreAnswered sends requests that can be read, of every
// kind: each is solved or refused with a reason, the same by GET and by POST,
// and the canonical address leads to the same solution. About one in five is solved;
// each check sends three, so that a short run meets some.
func TestReadableRequestsAreAnswered(t *testing.T) {
	solved := 0
	rapid.Check(t, func(rt *rapid.T) {
		for range 3 {
			if answeredAlike(t, rt) {
				solved++
			}
		}
	})
	assert.Positive(t, solved, "none of the requests was solved")
}

// answeredAlike sends one request in every way and reports whether it was solved.
func answeredAlike(t *testing.T, rt *rapid.T) bool {
	k := rapid.SampledFrom(repertoire.Kinds()).Draw(rt, "kind")
	query := drawQuery(rt, k)
	target := "/v1/solve/" + k.Name
	a := get(t, target+"?"+query.Encode())
	require.Contains(t, []int{http.StatusOK, http.StatusUnprocessableEntity, http.StatusBadRequest}, a.Code, "%s: %s", query.Encode(), a.Body)
	members := map[string]string{}
	for name := range query {
		members[name] = query.Get(name)
	}
	body, err := json.Marshal(members)
	require.NoError(t, err)
	posted := postJSON(t, target, string(body))
	require.Equal(t, a.Code, posted.Code)
	if a.Code != http.StatusOK {
		return false
	}
	assert.Equal(t, a.Header().Get("ETag"), posted.Header().Get("ETag"))
	link := decode[wire.Solution](a).Links.Self
	again := get(t, link).ok()
	assert.Equal(t, link, decode[wire.Solution](again).Links.Self, query.Encode())
	return true
}

// TestNumbersAreRoundedOnce looks at every number of many answers: no
// exponent, no tail of digits, no negative zero.
func TestNumbersAreRoundedOnce(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		k := rapid.SampledFrom(repertoire.Kinds()).Draw(rt, "kind")
		w := httptest.NewRecorder()
		shared().Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/v1/solve/"+k.Name+"?"+drawQuery(rt, k).Encode(), nil))
		checkNumbers(t, w.Body)
	})
}

// checkNumbers looks at every number of an answer.
func checkNumbers(t *testing.T, body io.Reader) {
	t.Helper()
	d := json.NewDecoder(body)
	d.UseNumber()
	for {
		token, err := d.Token()
		if err != nil {
			return
		}
		if n, ok := token.(json.Number); ok {
			assert.NotContains(t, n.String(), "e")
			assert.NotEqual(t, "-0", n.String())
			_, decimals, _ := strings.Cut(n.String(), ".")
			assert.LessOrEqual(t, len(decimals), 6, n.String())
		}
	}
}
