package api

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// chromium is the Accept header of a browser that opens an address (WHATWG Fetch
// names no value; this is what Chromium sends).
const chromium = "text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,image/webp,*/*;q=0.8"

// opened is what a browser that opens an address is answered.
func opened(t *testing.T, target, accept string) *httptest.ResponseRecorder {
	t.Helper()
	w := httptest.NewRecorder() // pages are in no specification
	shared().Handler().ServeHTTP(w, newRequest(http.MethodGet, target, "", headers{"Accept", accept}))
	return w
}

func TestBrowsersGetPages(t *testing.T) {
	const sleeve = "/v1/solve/sleeve?unit=in&width=3&height=4&thickness=1&caliper=0.012"
	for target, want := range map[string]struct {
		status int
		says   []string
	}{
		sleeve:                     {200, []string{"score 1", `href="/?kind=sleeve&amp;unit=in&amp;width=3in`, "format=json", "/v1/guide/sleeve?"}},
		"/v1/kinds":                {200, []string{"lidded-box"}},
		"/no/such/page":            {404, []string{"Begin with the thing", `href="/docs"`}},
		"/v1/solve/sleave?unit=in": {404, []string{"did you mean sleeve?", "Perhaps this was meant"}},
		sleeve + "&width=4":        {400, []string{"width"}},
		"/v1/solve/sleeve?unit=in&width=<b>&height=4&thickness=1&caliper=0.012": {400, []string{"&lt;b&gt;"}},
	} {
		w := opened(t, target, chromium)
		require.Equal(t, want.status, w.Code, target)
		assert.Equal(t, "text/html; charset=utf-8", w.Header().Get("Content-Type"), target)
		assert.Contains(t, w.Header().Get("Content-Security-Policy"), "default-src 'none'")
		for _, says := range want.says {
			assert.Contains(t, w.Body.String(), says, target)
		}
	}
	tag := opened(t, sleeve, chromium).Header().Get("ETag")
	assert.NotEqual(t, tag, opened(t, sleeve, "text/plain").Header().Get("ETag"), "a page is other bytes")
	for _, accept := range []string{"*/*", "application/json", ""} {
		assert.Equal(t, "application/json", opened(t, sleeve, accept).Header().Get("Content-Type"))
		assert.Equal(t, problemMediaType, opened(t, "/no/such/page", accept).Header().Get("Content-Type"))
	}
	assert.Equal(t, problemMediaType, opened(t, "/v1/solve/sleave?format=json", chromium).Header().Get("Content-Type"), "who names a format gets no page")
	assert.Equal(t, "application/json", opened(t, sleeve+"&format=json", chromium).Header().Get("Content-Type"), "what is named is what is given")
}
