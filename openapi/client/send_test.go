package client_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/openapi/client"
)

// counting counts what is sent, and keeps the last answer's status.
type counting struct {
	sent   int
	status int
	method string
}

func (c *counting) RoundTrip(r *http.Request) (*http.Response, error) {
	c.sent, c.method = c.sent+1, r.Method
	response, err := http.DefaultTransport.RoundTrip(r)
	if err == nil {
		c.status = response.StatusCode
	}
	return response, err
}

func TestSolveOfAKindByName(t *testing.T) {
	solution, err := dial(t).Solve(t.Context(), "sleeve", map[string]string{"width": "95 mm", "height": "60 mm", "thickness": "24 mm", "caliper": "0.3 mm"})
	require.NoError(t, err)
	typed, err := dial(t).SolveSleeve(t.Context(), client.RequestSolveSleeve{Width: "95 mm", Height: "60 mm", Thickness: "24 mm", Caliper: "0.3 mm"})
	require.NoError(t, err)
	assert.Equal(t, typed, solution)
	_, err = dial(t).Solve(t.Context(), "no/such", client.RequestSolveSleeve{Width: "95 mm"})
	var problem *client.Problem
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, http.StatusNotFound, problem.Status)
}

// TestRememberedAnswers asks twice: the second time the service says that the
// answer is still the same.
func TestRememberedAnswers(t *testing.T) {
	calls := &counting{}
	c, err := client.New(address, &http.Client{Transport: calls})
	require.NoError(t, err)
	c.Remember(1)
	request := client.RequestSolveSleeve{Width: "95 mm", Height: "60 mm", Thickness: "24 mm", Caliper: "0.3 mm"}
	first, err := c.SolveSleeve(t.Context(), request)
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, calls.status)
	again, err := c.SolveSleeve(t.Context(), request)
	require.NoError(t, err)
	assert.Equal(t, []any{2, http.StatusNotModified, http.MethodGet}, []any{calls.sent, calls.status, calls.method})
	assert.Equal(t, first, again)
	list, err := c.Stocks(t.Context())
	require.NoError(t, err)
	same, err := c.Stocks(t.Context())
	require.NoError(t, err)
	assert.Equal(t, http.StatusNotModified, calls.status)
	assert.Equal(t, list, same)
	_, err = c.SolveSleeve(t.Context(), request) // one answer is kept, and that is the list
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, calls.status)
}

// TestComesBackLater counts how often a busy service is asked.
func TestComesBackLater(t *testing.T) {
	asked, after, busy := 0, "0", 2
	service := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if asked++; asked <= busy {
			w.Header().Set("Retry-After", after)
			w.WriteHeader(http.StatusServiceUnavailable)
			return
		}
		_, _ = w.Write([]byte(`{"unit":"mm","lengths":[]}`))
	}))
	defer service.Close()
	c, err := client.New(service.URL, service.Client())
	require.NoError(t, err)
	ruler, err := c.Ruler(t.Context(), client.RequestRuler{Length: []string{"92.1 mm"}})
	require.NoError(t, err)
	assert.Equal(t, 3, asked)
	assert.Equal(t, client.RulerUnitMM, ruler.Unit)
	for wait, times := range map[string]int{"0": 4, "3600": 1, "": 1, "soon": 1, "-1": 1, time.Now().Add(-time.Minute).UTC().Format(http.TimeFormat): 4} {
		asked, after, busy = 0, wait, 100
		_, err = c.Stocks(t.Context())
		assert.ErrorContains(t, err, "503", wait)
		assert.Equal(t, times, asked, wait)
	}
	asked, after = 0, "20"
	hurried, cancel := context.WithTimeout(t.Context(), 20*time.Millisecond)
	defer cancel()
	_, err = c.Stocks(hurried)
	assert.ErrorIs(t, err, context.DeadlineExceeded)
	assert.Equal(t, 1, asked)
}
