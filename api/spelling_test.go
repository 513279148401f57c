package api

import (
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sent is a request as it is sent.
type sent struct {
	method, target, body string
	headers              []string // names and values in turn
}

// answeredAs sends it and returns the answer without what differs each time.
func (r sent) answeredAs(s *Service) (int, http.Header, string) {
	request := httptest.NewRequest(r.method, r.target, strings.NewReader(r.body))
	for i := 0; i < len(r.headers); i += 2 {
		request.Header.Add(r.headers[i], r.headers[i+1])
	}
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, request)
	header := w.Header().Clone()
	header.Del("Request-Id")
	header.Del("Server-Timing")
	return w.Code, header, w.Body.String()
}

// TestRequestsAreRecognized: one that is sent again is answered as the first time,
// whatever else was asked that looks like it.
func TestRequestsAreRecognized(t *testing.T) {
	const path, query = "/v1/solve/slotted-band", "/v1/solve/slotted-band?" + cards
	body := strings.ReplaceAll(benchBand, "\n", "")
	jsonBody := []string{"Content-Type", "application/json"}
	s, afresh := quiet(), unremembering()
	_, first, _ := sent{http.MethodGet, query, "", nil}.answeredAs(afresh)
	all := []sent{
		{http.MethodPost, path, body, jsonBody},
		{http.MethodPost, path, body, append(jsonBody, "Accept", "text/csv")},
		{http.MethodPost, path, body, append(jsonBody, "Accept-Encoding", "gzip")},
		{http.MethodPost, path, body, append(jsonBody, "Accept", "text/csv", "Accept-Encoding", "gzip")},
		{http.MethodPost, path, body, append(jsonBody, "Content-Encoding", "gzip")},
		{http.MethodPost, path, body, nil},
		{http.MethodPost, path, cards, []string{"Content-Type", "application/x-www-form-urlencoded"}},
		{http.MethodPost, path, cards, jsonBody},
		{http.MethodPost, path + ".csv", body, jsonBody},
		{http.MethodPost, path + "?show=step", body, jsonBody},
		{http.MethodPost, path + "?show=nothing", body, jsonBody},
		{http.MethodPost, path, `{"x-pad":"` + strings.Repeat("a", mostSpelt) + `",` + body[1:], jsonBody},
		{http.MethodGet, query, "", nil},
		{http.MethodHead, query, "", nil},
		{http.MethodGet, query, "", []string{"If-None-Match", first.Get("ETag")}},
		{http.MethodGet, query, "", []string{"Accept", "text/html"}},
		{http.MethodGet, query + "&pick=/step", "", nil},
		{http.MethodGet, query + "&download=band", "", nil},
	}
	for range 5 {
		for _, r := range all {
			wantStatus, wantHeader, want := r.answeredAs(afresh)
			status, header, got := r.answeredAs(s)
			assert.Equal(t, wantStatus, status, r)
			assert.Equal(t, wantHeader, header, r)
			assert.Equal(t, want, got, r)
		}
	}
	assert.Len(t, s.spellings.young, 12, "of those whose answer is remembered, all but the long one, the page and the one that its caller knows")
}

// TestBodiesThatEndEarlyAreNotRecognized: what was read of them is read again, and
// refused as ever.
func TestBodiesThatEndEarlyAreNotRecognized(t *testing.T) {
	s := quiet()
	for range 3 {
		r := httptest.NewRequest(http.MethodPost, "/v1/ruler", io.MultiReader(strings.NewReader(`{"length":"92.1 mm"}`), brokenBody{}))
		r.ContentLength = 40
		r.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, r)
		require.Equal(t, http.StatusBadRequest, w.Code)
		assert.Contains(t, w.Body.String(), "the body ends before it is complete")
	}
	assert.Empty(t, s.spellings.young)
}

// brokenBody is the rest of a body whose caller has gone.
type brokenBody struct{}

func (brokenBody) Read([]byte) (int, error) { return 0, io.ErrUnexpectedEOF }
