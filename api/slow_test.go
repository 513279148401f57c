package api

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
)

// slowReader is a caller that does not take an answer before it is let.
type slowReader struct {
	*httptest.ResponseRecorder
	begun, let chan struct{}
}

func (w *slowReader) Write(p []byte) (int, error) {
	close(w.begun)
	<-w.let
	return w.ResponseRecorder.Write(p)
}

// TestSlowReadersHoldSoMuch: answers that are on their way to callers who do not
// read are bounded together; what finds no room is told so at once, with none of
// the headers of the answer, and probes are answered.
func TestSlowReadersHoldSoMuch(t *testing.T) {
	s := with(func(c *Config) { c.MostInFlight = 100 })
	slow := &slowReader{httptest.NewRecorder(), make(chan struct{}), make(chan struct{})}
	served := make(chan struct{})
	go func() {
		defer close(served)
		s.Handler().ServeHTTP(slow, httptest.NewRequest(http.MethodGet, "/v1/solve/slotted-band?"+cards, nil))
	}()
	<-slow.begun
	a := call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards, "", "Accept-Encoding", "gzip")
	assert.Equal(t, "/problems/overloaded", a.problem(http.StatusServiceUnavailable).Type)
	assert.Empty(t, a.Header().Get("ETag"))
	assert.Empty(t, a.Header().Get("Content-Encoding"))
	call(t, s, http.MethodGet, "/readyz", "").ok()
	close(slow.let)
	<-served
	assert.Equal(t, http.StatusOK, slow.Code)
	call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards, "").ok()
	assert.Zero(t, s.flight.Held())
}
