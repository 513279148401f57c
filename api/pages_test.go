package api

import (
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/web"
)

func TestPagesKeepToTheirOwnFiles(t *testing.T) {
	for _, path := range []string{"/", "/docs/calls", "/?kind=sleeve&unit=mm"} {
		a := get(t, path).ok()
		assert.Equal(t, web.Media, a.Header().Get("Content-Type"))
		assert.Equal(t, web.Policy, a.Header().Get("Content-Security-Policy"))
		assert.Equal(t, "no-referrer", a.Header().Get("Referrer-Policy"))
		assert.NotContains(t, a.Body.String(), "http://", "no address of another place")
		assert.NotContains(t, a.Body.String(), "https://", "no address of another place")
	}
}

func TestPageFilesAreCompressedAndRevalidated(t *testing.T) {
	for _, asset := range append(web.Assets(), moduleAssets()...) {
		plain := get(t, asset.Path).ok()
		packed := get(t, asset.Path, "Accept-Encoding", "gzip").ok()
		assert.Equal(t, "public, max-age=31536000, immutable", get(t, asset.Pinned).ok().Header().Get("Cache-Control"))
		assert.Equal(t, "gzip", packed.Header().Get("Content-Encoding"))
		assert.NotEqual(t, plain.Header().Get("ETag"), packed.Header().Get("ETag"))
		r, err := gzip.NewReader(packed.Body)
		require.NoError(t, err)
		body, err := io.ReadAll(r)
		require.NoError(t, err)
		assert.Equal(t, plain.Body.Bytes(), body)
		unchanged := httptest.NewRecorder() // these addresses are in no specification
		shared().Handler().ServeHTTP(unchanged, newRequest(http.MethodGet, asset.Path, "", headers{"Accept-Encoding", "gzip", "If-None-Match", packed.Header().Get("ETag")}))
		assert.Equal(t, http.StatusNotModified, unchanged.Code)
		assert.Empty(t, unchanged.Header().Get("Content-Encoding"))
	}
}

func TestPinnedFileOfAnotherReleaseNamesThePresentOne(t *testing.T) {
	solver := web.Assets()[0]
	p := get(t, "/element/1-0123456789ab/creasefit-solver.js").problem(http.StatusNotFound)
	assert.Contains(t, p.Errors[0].Hint, solver.Pinned)
	p = get(t, "/element/1/no-such.js").problem(http.StatusNotFound)
	assert.Empty(t, p.Errors[0].Hint)
}
