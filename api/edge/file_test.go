package edge

import (
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestGzipIsSentToWhoTakesIt: examples and rules of RFC 9110, 12.5.3.
func TestGzipIsSentToWhoTakesIt(t *testing.T) {
	for header, want := range map[string]bool{
		"compress, gzip": true, "": false, "*": true, "compress;q=0.5, gzip;q=1.0": true, "gzip;q=1.0, identity; q=0.5, *;q=0": true,
		"gzip;q=0, *": false, "*;q=0": false, "identity": false, "GZIP": true, "br;q=1, *;q=0.1": true, "x-gzip": false, "gzip;q=0.000": false,
	} {
		assert.Equal(t, want, AcceptsGzip(header), header)
	}
	text := strings.Repeat("paper ", 500)
	packed, err := gzip.NewReader(strings.NewReader(string(Gzip([]byte(text)))))
	require.NoError(t, err)
	read, err := io.ReadAll(packed)
	require.NoError(t, err)
	assert.Equal(t, text, string(read))
}

// TestTagsAreCompared as RFC 9110 has it in 8.8.3.2, weakly, and in lists.
func TestTagsAreCompared(t *testing.T) {
	for _, c := range []struct {
		header, tag string
		want        bool
	}{
		{`W/"1"`, `W/"1"`, true}, {`W/"1"`, `W/"2"`, false}, {`W/"1"`, `"1"`, true}, {`"1"`, `"1"`, true}, {`"1"`, `W/"1"`, true},
		{`"xyzzy", "r2d2xxxx", "c3piozzzz"`, `"r2d2xxxx"`, true}, {`"xyzzy","1"`, `"1"`, true}, {`*`, `"1"`, false}, {``, `"1"`, false}, {`1`, `"1"`, false},
	} {
		assert.Equal(t, c.want, Matches(c.header, c.tag), "%+v", c)
	}
	assert.True(t, AnyTag(" * "))
	assert.False(t, AnyTag(`"*"`))
	assert.NotEqual(t, Tag([]byte("a"), "csv"), Tag([]byte("b"), "csv"))
	assert.Regexp(t, `^"[\w-]{16}-csv-gzip"$`, Tag([]byte("a"), "csv", "", "gzip"))
}

// TestFilesAreServed plain and packed, unchanged and headless, as pages and not.
func TestFilesAreServed(t *testing.T) {
	text := strings.Repeat("paper ", 100)
	ask := func(f *File, method string, headers ...string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, "/", nil)
		for i := 0; i < len(headers); i += 2 {
			r.Header.Set(headers[i], headers[i+1])
		}
		w := httptest.NewRecorder()
		require.NoError(t, f.Serve(echo.New().NewContext(r, w)))
		return w
	}
	f := NewFile("text/css", []byte(text), "max-age=1")
	plain, packed := ask(f, http.MethodGet), ask(f, http.MethodGet, "Accept-Encoding", "gzip")
	assert.Equal(t, text, plain.Body.String())
	assert.Equal(t, "600", plain.Header().Get("Content-Length"))
	assert.Equal(t, "text/css", plain.Header().Get("Content-Type"))
	assert.Equal(t, "max-age=1", plain.Header().Get("Cache-Control"))
	assert.Empty(t, plain.Header().Get("Content-Encoding"))
	assert.Empty(t, plain.Header().Get("Content-Security-Policy"))
	assert.Equal(t, "gzip", packed.Header().Get("Content-Encoding"))
	assert.Less(t, packed.Body.Len(), 100)
	assert.NotEqual(t, plain.Header().Get("Etag"), packed.Header().Get("Etag"))
	for _, tag := range []string{"*", plain.Header().Get("Etag"), "W/" + plain.Header().Get("Etag")} {
		unchanged := ask(f, http.MethodGet, "If-None-Match", tag)
		assert.Equal(t, http.StatusNotModified, unchanged.Code)
		assert.Zero(t, unchanged.Body.Len())
	}
	assert.Equal(t, http.StatusOK, ask(f, http.MethodGet, "If-None-Match", packed.Header().Get("Etag")).Code)
	head := ask(f, http.MethodHead)
	assert.Zero(t, head.Body.Len())
	assert.Equal(t, "600", head.Header().Get("Content-Length"))
	page := ask(f.Page(PolicyAlone), http.MethodGet)
	assert.Equal(t, PolicyAlone, page.Header().Get("Content-Security-Policy"))
	assert.Equal(t, "no-referrer", page.Header().Get("Referrer-Policy"))
	short := ask(NewFile("text/plain", []byte("a"), ""), http.MethodGet, "Accept-Encoding", "gzip")
	assert.Equal(t, "a", short.Body.String(), "packing it makes it longer")
	assert.Empty(t, short.Header().Get("Content-Encoding"))
	for media, is := range map[string]bool{"text/html; charset=utf-8": true, "image/svg+xml": true, "application/xml": true, "text/csv": false, "application/json": false, "application/pdf": false} {
		assert.Equal(t, is, IsDocument(media), media)
	}
}

// TestOriginsAreWhatBrowsersSend: examples of RFC 6454 and of the Fetch standard.
func TestOriginsAreWhatBrowsersSend(t *testing.T) {
	for address, want := range map[string]string{
		"http://example.com": "http://example.com", "http://example.com:80": "http://example.com", "https://example.com:443": "https://example.com",
		"http://example.com/path/file": "http://example.com", "http://EXAMPLE.com:8080": "http://example.com:8080", "https://example.com:80": "https://example.com:80",
		"http://[::1]:3000": "http://[::1]:3000", "http://192.0.2.7": "http://192.0.2.7",
		"ftp://example.com": "", "example.com": "", "null": "", "http://": "", "http://exa mple.com": "", "http://example.com:99999": "", "http://example.com:0": "", "http://*.example.com": "",
	} {
		assert.Equal(t, want, wantedOrigin(address), address)
	}
	assert.ErrorContains(t, CheckOrigins(nil), "names no origin")
	assert.ErrorContains(t, CheckOrigins([]string{"*", "https://tidewater.example"}), "stands alone")
	assert.ErrorContains(t, CheckOrigins([]string{"https://Tidewater.example"}), "write https://tidewater.example")
	assert.NoError(t, CheckOrigins([]string{"https://tidewater.example", " http://localhost:3000"}))
	x := NewOrigins([]string{"https://tidewater.example"})
	assert.Equal(t, []string{"https://tidewater.example"}, x.Allow(http.Header{"Origin": {"https://tidewater.example"}}))
	assert.Nil(t, x.Allow(http.Header{"Origin": {"https://other.example"}}))
	assert.Contains(t, x.VaryAccept[0], "Origin")
	x = NewOrigins([]string{" * "})
	assert.Equal(t, []string{"*"}, x.Allow(http.Header{}))
	assert.NotContains(t, x.Vary[0], "Origin")
}

// TestIDsAreTheCallersOrNew: those of callers only where they are safe in a log.
func TestIDsAreTheCallersOrNew(t *testing.T) {
	ids := NewIDs()
	for _, given := range []string{"stall-42", strings.Repeat("a", 64), "A_b-C9zz"} {
		assert.Equal(t, given, ids.Take(given))
	}
	seen := map[string]bool{}
	for _, given := range []string{"", "short42", strings.Repeat("a", 65), "line\nbreak", "semi;colon", "umlaut-äöü"} {
		id := ids.Take(given)
		assert.NotEqual(t, given, id)
		assert.Regexp(t, `^[A-Za-z0-9_-]{8,64}$`, id)
		assert.False(t, seen[id], "it is new")
		seen[id] = true
	}
}

// TestSettings: defaults that can be served with, and each bound.
func TestSettings(t *testing.T) {
	config := DefaultConfig()
	assert.NoError(t, config.Check())
	server := config.Server(http.NotFoundHandler())
	assert.Equal(t, 5*time.Second, server.ReadHeaderTimeout)
	assert.Equal(t, config.MostURL+16<<10, server.MaxHeaderBytes)
	config.MostRunning, config.MostDear, config.MostStreams = 3, 2, 9
	cheap, dear, streams := config.Places()
	assert.Equal(t, []int{3, 2, 9}, []int{cheap, dear, streams})
	for variable, complaint := range map[string]string{
		"CREASEFIT_MOST_BODY=0": "MOST_BODY must be above zero", "CREASEFIT_MOST_WAITING=-1": "MOST_WAITING must not be below zero", "CREASEFIT_TRACE_SHARE=1.5": "TRACE_SHARE: it must not be above one",
		"CREASEFIT_OTLP_ENDPOINT=collector": "OTLP_ENDPOINT", "CREASEFIT_MOST_IN_FLIGHT=0": "MOST_IN_FLIGHT must be above zero", "CREASEFIT_LOG_FORMAT=xml": `"xml" is neither text nor json`,
		"CREASEFIT_DRAIN_DELAY=soon": "soon", "CREASEFIT_READ_TIMEOT=1s": "did you mean CREASEFIT_READ_TIMEOUT?", "CREASEFIT_KEYS_FILE=/nowhere": "KEYS_FILE",
	} {
		_, err := ReadConfig([]string{variable})
		assert.ErrorContains(t, err, complaint, variable)
	}
	for _, fine := range []string{"CREASEFIT_MOST_WAITING=0", "CREASEFIT_RECENT_BYTES=0", "CREASEFIT_TRACE_SHARE=0", "CREASEFIT_OTLP_ENDPOINT=http://127.0.0.1:4318", "CREASEFIT_PEERS=require", "PATH=/bin"} {
		_, err := ReadConfig([]string{fine})
		assert.NoError(t, err, fine)
	}
}
