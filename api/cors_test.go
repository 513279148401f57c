package api

import (
	"bytes"
	"context"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
)

// The origins of the stall's own pages.
const (
	stallPage = "https://tidewater.example"
	stallTest = "http://127.0.0.1:4000"
)

// forStall is a service that only the stall's own pages may read.
func forStall(change func(*Config)) *Service {
	config := DefaultConfig()
	config.AllowedOrigins = []string{stallPage, " " + stallTest}
	if change != nil {
		change(&config)
	}
	return New(config, slog.New(slog.DiscardHandler))
}

// ask calls a service from a page of an origin, if any.
func askFrom(s *Service, method, target, origin string, set ...string) *httptest.ResponseRecorder {
	request := newRequest(method, target, "", set)
	if origin != "" {
		request.Header.Set("Origin", origin)
	}
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, request)
	return w
}

// allowsOnly checks that an answer may be read by pages of the origin alone,
// or by nobody's if it is empty, and that no cache gives it to others.
func allowsOnly(t *testing.T, w *httptest.ResponseRecorder, origin string) {
	t.Helper()
	var want []string
	if origin != "" {
		want = []string{origin}
	}
	assert.Equal(t, want, w.Header().Values("Access-Control-Allow-Origin"))
	assert.Contains(t, strings.Split(w.Header().Get("Vary"), ", "), "Origin")
	assert.Contains(t, strings.Split(w.Header().Get("Vary"), ", "), "Accept-Encoding")
}

func TestListedOriginsMayRead(t *testing.T) {
	s := forStall(nil)
	for origin, allowed := range map[string]bool{
		stallPage: true, stallTest: true, "": false, "null": false, "*": false,
		"https://other.example": false, "http://tidewater.example": false, "https://tidewater.example:443": false, "https://tidewater.example:8443": false,
		"https://tidewater.example/": false, "https://Tidewater.example": false, "HTTPS://tidewater.example": false, "https://www.tidewater.example": false,
		"https://tidewater.example.evil.example": false, "https://tidewater.example, http://127.0.0.1:4000": false, "http://127.0.0.1": false,
	} {
		want := ""
		if allowed {
			want = origin
		}
		allowsOnly(t, askFrom(s, http.MethodGet, "/v1/kinds", origin), want)
		preflight := askFrom(s, http.MethodOptions, "/v1/solve/band", origin, "Access-Control-Request-Method", "POST", "Access-Control-Request-Headers", "content-type")
		assert.Equal(t, http.StatusNoContent, preflight.Code)
		allowsOnly(t, preflight, want)
	}
}

// TestEveryAnswerSaysWhoMayReadIt goes through every status that a page can
// meet.
func TestEveryAnswerSaysWhoMayReadIt(t *testing.T) {
	s := forStall(nil)
	tag := askFrom(s, http.MethodGet, "/v1/kinds", "").Header().Get("ETag")
	limited := forStall(func(c *Config) { c.RateLimit, c.RateBurst = 0.001, 1 })
	require.Equal(t, http.StatusOK, askFrom(limited, http.MethodGet, "/v1/kinds", "").Code)
	busy := forStall(func(c *Config) { c.MostRunning, c.MostWaiting, c.Recent = 1, 0, 0 })
	require.True(t, busy.cheap.Enter(context.Background(), "somebody"))
	broken := forStall(nil)
	for _, k := range broken.calls {
		if ruler, is := k.(*calculation[*ask.Ruler, *ask.Ruler]); is {
			ruler.compute = nil
		}
	}
	for _, c := range []struct {
		s              *Service
		method, target string
		set            headers
		status         int
	}{
		{s, http.MethodGet, "/v1/solve/slotted-band?" + cards, nil, 200},
		{s, http.MethodGet, "/v1/solve/slotted-band?" + cards, headers{"Accept", "text/csv"}, 200},
		{s, http.MethodHead, "/v1/kinds", nil, 200},
		{s, http.MethodGet, "/", nil, 200},
		{s, http.MethodGet, "/v1/kinds", headers{"If-None-Match", tag}, 304},
		{s, http.MethodGet, "/v1/ruler", nil, 400},
		{s, http.MethodGet, "/nothing", nil, 404},
		{s, http.MethodDelete, "/v1/kinds", nil, 405},
		{s, http.MethodGet, "/v1/ruler?_=" + strings.Repeat("x", 9000), nil, 414},
		{limited, http.MethodGet, "/v1/kinds", nil, 429},
		{broken, http.MethodGet, "/v1/ruler?length=1in", nil, 500},
		{busy, http.MethodGet, "/v1/solve/slotted-band?" + cards, nil, 503},
	} {
		for _, origin := range []string{stallPage, stallTest, "https://other.example", ""} {
			w := askFrom(c.s, c.method, c.target, origin, c.set...)
			require.Equal(t, c.status, w.Code, c.target)
			if !strings.HasSuffix(origin, "other.example") {
				allowsOnly(t, w, origin)
			} else {
				allowsOnly(t, w, "")
			}
		}
	}
}

// TestOriginsChangeNothingElse: the same entity tag and the same bytes, since
// the answer itself does not depend on who asks.
func TestOriginsChangeNothingElse(t *testing.T) {
	const target = "/v1/solve/slotted-band?" + cards
	open := askFrom(shared(), http.MethodGet, target, "https://other.example")
	assert.Equal(t, "*", open.Header().Get("Access-Control-Allow-Origin"))
	assert.Equal(t, "Accept-Encoding, Accept", open.Header().Get("Vary"))
	for _, origin := range []string{stallPage, stallTest, "null"} {
		listed := askFrom(forStall(nil), http.MethodGet, target, origin)
		for _, name := range []string{"ETag", "Cache-Control", "Content-Type"} {
			assert.Equal(t, open.Header().Get(name), listed.Header().Get(name), name)
		}
		assert.True(t, bytes.Equal(open.Body.Bytes(), listed.Body.Bytes()))
	}
}

func TestAnyOriginMayBeSpaced(t *testing.T) {
	s := forStall(func(c *Config) { c.AllowedOrigins = []string{" * "} })
	assert.Equal(t, "*", askFrom(s, http.MethodGet, "/v1/kinds", "https://other.example").Header().Get("Access-Control-Allow-Origin"))
}

func TestOriginsAreChecked(t *testing.T) {
	for _, good := range []string{"*", stallPage, stallPage + ", " + stallTest, "https://a.example,https://b.example:8443,http://[::1]:4000", "http://stall"} {
		config := DefaultConfig()
		config.AllowedOrigins = strings.Split(good, ",")
		assert.NoError(t, config.Check(), good)
	}
	for bad, want := range map[string]string{
		"":                                `"" is no origin`,
		stallPage + ",":                   `"" is no origin`,
		stallPage + "/":                   `"https://tidewater.example/" is not how browsers write an origin: write https://tidewater.example`,
		stallPage + "/tins?x=1#top":       "write https://tidewater.example",
		"HTTPS://Tidewater.Example":       "write https://tidewater.example",
		"https://tidewater.example:443":   "write https://tidewater.example",
		"http://tidewater.example:080":    "write http://tidewater.example:80",
		"http://tidewater.example:":       "write http://tidewater.example",
		"https://me:x@tidewater.example":  "write https://tidewater.example",
		"http://[0:0::1]:4000":            "write http://[::1]:4000",
		"*," + stallPage:                  "* stands alone",
		"null":                            `"null" is no origin`,
		"tidewater.example":               `"tidewater.example" is no origin`,
		"//tidewater.example":             "is no origin",
		"ftp://tidewater.example":         "is no origin",
		"https://":                        "is no origin",
		"https://*.tidewater.example":     "is no origin",
		"https://téa.example":             "is no origin",
		"https://tea house.example":       "is no origin",
		"https://tidewater.example:0":     "is no origin",
		"https://tidewater.example:99999": "is no origin",
	} {
		config := DefaultConfig()
		config.AllowedOrigins = strings.Split(bad, ",")
		assert.ErrorContains(t, config.Check(), "CREASEFIT_ALLOWED_ORIGINS: ", bad)
		assert.ErrorContains(t, config.Check(), want, bad)
	}
	config := DefaultConfig()
	config.AllowedOrigins = nil
	assert.ErrorContains(t, config.Check(), "names no origin")
	config.AllowedOrigins = []string{"null", "https://a.example", "b.example"}
	assert.ErrorContains(t, config.Check(), `"null"`)
	assert.ErrorContains(t, config.Check(), `"b.example"`, "every wrong entry is named")
}
