package api

import (
	"bufio"
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
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
