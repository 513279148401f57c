package api

import (
	"bufio"
	"cmp"
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/fault"
	"creasefit/internal/sheet"
)

// planLines reads the lines of a plan that is followed.
func planLines(t *testing.T, a answer) []wire.PlanLine {
	t.Helper()
	assert.Equal(t, "application/x-ndjson", a.ok().Header().Get("Content-Type"))
	assert.Equal(t, "no-store", a.Header().Get("Cache-Control"))
	var lines []wire.PlanLine
	for text := range strings.Lines(a.Body.String()) {
		var l wire.PlanLine
		require.NoError(t, json.Unmarshal([]byte(text), &l))
		lines = append(lines, l)
	}
	require.NotEmpty(t, lines)
	return lines
}

// Every line has a plan that stands, none is worse than the one before, and the
// last says why it is the last.
func TestAPlanIsFollowed(t *testing.T) {
	lines := planLines(t, postJSON(t, "/v1/yield", craft, "Accept", "application/x-ndjson"))
	for i, l := range lines {
		require.NotNil(t, l.Plan)
		assert.InDelta(t, float64(l.Plan.Sheets)-l.Bound, l.Gap, 1e-9)
		assert.Equal(t, i == len(lines)-1, l.Done)
		if i > 0 {
			assert.LessOrEqual(t, l.Plan.Sheets, lines[i-1].Plan.Sheets)
			assert.GreaterOrEqual(t, l.Bound, lines[i-1].Bound)
			assert.GreaterOrEqual(t, l.Seconds, lines[i-1].Seconds)
		}
	}
	last := lines[len(lines)-1]
	assert.Equal(t, "settled", last.Why)
	assert.Equal(t, decode[wire.Yield](postJSON(t, "/v1/yield", craft).ok()), *last.Plan)
	assert.Equal(t, last.Plan.Sheets, planLines(t, postJSON(t, "/v1/yield?format=ndjson", craft))[0].Plan.Sheets)
}

// The picture of each line is that of its own plan: it has every blank that the plan
// places, and is told as a picture alone is.
func TestALinesPictureIsOfItsPlan(t *testing.T) {
	pictured := strings.Replace(craft, "{", `{"pictures":"dark",`, 1)
	lines := planLines(t, postJSON(t, "/v1/yield?format=ndjson", pictured))
	for _, l := range lines {
		placed := map[string]int{}
		for _, p := range l.Plan.Plans {
			for _, b := range p.Placed {
				placed[b.Item]++
			}
		}
		for name, n := range placed {
			assert.Equal(t, n, strings.Count(l.Plan.Picture, "<title>"+name+"</title></path>"), name)
		}
		assert.Contains(t, l.Plan.Picture, wire.Count(l.Plan.Sheets, "sheet.", "sheets."))
	}
	alone := postJSON(t, "/v1/yield?format=svg&theme=dark", craft).ok().Body.String()
	assert.Equal(t, alone, strings.ReplaceAll(lines[len(lines)-1].Plan.Picture, "plan-", "creasefit-"))
	assert.Empty(t, decode[wire.Yield](postJSON(t, "/v1/yield", craft).ok()).Picture)
}

// What is wrong with an order is a problem, not a line.
func TestAFaultyOrderIsNotFollowed(t *testing.T) {
	postJSON(t, "/v1/yield", `{"sheet":"12x12in"}`, "Accept", "application/x-ndjson").problem(http.StatusBadRequest)
	postJSON(t, "/v1/yield?format=ndjson&pick=/sheets", craft).problem(http.StatusBadRequest)
	postJSON(t, "/v1/yield?format=ndjson", strings.Replace(craft, `"12 x 18 in"`, `{"size":"12 x 18 in","available":2}`, 1)).problem(http.StatusUnprocessableEntity)
}

// A caller that leaves ends the work, and its place in the lane is free again.
func TestWhoeverLeavesEndsThePlan(t *testing.T) {
	s := quiet()
	server := httptest.NewServer(s.Handler())
	defer server.Close()
	ctx, leave := context.WithCancel(context.Background())
	hard := `{"unit":"in","effort_ms":10000,"sheet":"12 x 12 in","items":[{"blank":"5 x 3 in","count":31},{"blank":"4 1/4 x 2 3/4 in","count":29},{"blank":"3 3/8 x 2 1/8 in","count":37},{"blank":"7 1/8 x 1 5/8 in","count":23},{"blank":"6 3/8 x 4 5/8 in","count":19}]}`
	request, err := http.NewRequestWithContext(ctx, http.MethodPost, server.URL+"/v1/yield?format=ndjson", strings.NewReader(hard))
	require.NoError(t, err)
	request.Header.Set("Content-Type", "application/json")
	response, err := http.DefaultClient.Do(request)
	require.NoError(t, err)
	defer response.Body.Close()
	require.Equal(t, http.StatusOK, response.StatusCode)
	_, err = bufio.NewReader(response.Body).ReadString('\n')
	require.NoError(t, err)
	free := s.dear.State().Free
	leave()
	assert.Eventually(t, func() bool { return s.dear.State().Free == free+1 }, 5*time.Second, 5*time.Millisecond)
}

// eager takes an answer and counts how often it was sent on, and how many lines there
// were each time.
type eager struct {
	*httptest.ResponseRecorder
	sent []int
}

func (e *eager) Flush() { e.sent = append(e.sent, strings.Count(e.Body.String(), "\n")) }

// Every line is sent on as soon as it is there, whoever else waits; caches are told that
// the header chose the format where it did.
func TestLinesAreSentOnOneByOne(t *testing.T) {
	for target, vary := range map[string]string{"/v1/yield": "Accept-Encoding, Accept", "/v1/yield?format=ndjson": "Accept-Encoding"} {
		w := &eager{ResponseRecorder: httptest.NewRecorder()}
		shared().Handler().ServeHTTP(w, newRequest(http.MethodPost, target, craft, headers{"Content-Type", "application/json", "Accept", mediaLines}))
		lines := planLines(t, answer{t, w.ResponseRecorder})
		var want []int
		for i := range lines {
			want = append(want, i+1)
		}
		assert.Equal(t, want, w.sent, target)
		assert.Equal(t, vary, strings.Join(w.Header().Values("Vary"), ", "), target)
	}
}

// A calculation that fails after its first line says so in its last one: the status is
// told already.
func TestAPlanThatFailsOnTheWaySaysSo(t *testing.T) {
	k := *newYield().(*calculation[*ask.Yield, *yieldAnswer])
	follow := k.follow.compute
	k.follow.compute = func(ctx context.Context, q *ask.Yield, each func(*yieldAnswer)) (*yieldAnswer, error) {
		a, err := follow(ctx, q, each)
		each(a)
		return nil, cmp.Or(err, context.DeadlineExceeded)
	}
	w := httptest.NewRecorder()
	c := shared().echo.NewContext(newRequest(http.MethodPost, "/v1/yield?format=ndjson", craft, headers{"Content-Type", "application/json"}), w)
	require.NoError(t, k.serve(shared().host, c, ""))
	lines := planLines(t, answer{t, w})
	last := lines[len(lines)-1]
	require.Greater(t, len(lines), 1)
	assert.False(t, lines[0].Done)
	assert.True(t, last.Done)
	assert.Nil(t, last.Plan)
	require.NotNil(t, last.Problem)
	assert.Equal(t, "/problems/took-too-long", last.Problem.Type)
}

// An order with a count may take as long as it says, and what is around it; one without
// takes what its exact plan takes, whatever it says.
func TestOrdersHaveTheTimeThatTheyAskFor(t *testing.T) {
	form := ask.NewYield("json")
	for query, want := range map[string]time.Duration{
		"unit=in&sheet=12x12&blank=3x2&count=1&effort_ms=70":                                                  70*time.Millisecond + planningRest,
		"unit=in&sheet=12x12&blank=3x2&effort_ms=70":                                                          sheet.MostEffort + planningRest,
		`unit=in&sheet=12x12&items={"blank":"3x2"}&items={"blank":"4x2"}&effort_ms=70`:                        sheet.MostEffort + planningRest,
		`unit=in&sheet=12x12&items={"blank":"3x2","count":1}&items={"blank":"4x2","count":1}&effort_ms=10000`: 10*time.Second + planningRest,
	} {
		asked := form.Take()
		asked.AddQuery(query)
		asked.Parse()
		asked.Check()
		assert.Equal(t, want, timeAllowed(asked.Q), query)
		asked.Release()
	}
}

// What is too dear to be listed is no line either, neither on the way nor at the end.
func TestPlansThatAreTooDearAreNotFollowed(t *testing.T) {
	k := *newYield().(*calculation[*ask.Yield, *yieldAnswer])
	k.price = func(*yieldAnswer, tell.Format) error {
		return fault.Fault{Code: fault.OverBudget, Detail: "for a test"}
	}
	w := httptest.NewRecorder()
	c := shared().echo.NewContext(newRequest(http.MethodPost, "/v1/yield?format=ndjson", craft, headers{"Content-Type", "application/json"}), w)
	require.NoError(t, k.serve(shared().host, c, ""))
	assert.Equal(t, "/problems/over-budget", answer{t, w}.problem(http.StatusUnprocessableEntity).Type)
}
