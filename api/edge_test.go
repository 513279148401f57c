package api

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/tell"
	"creasefit/internal/web"
)

// TestCachesTellFormatsApart: a shared cache once gave JSON to a caller who
// asked for CSV. Wherever the address alone does not say which format is
// wanted, the answer varies by Accept, whatever that header was.
func TestCachesTellFormatsApart(t *testing.T) {
	for target, varies := range map[string]bool{
		"/v1/solve/slotted-band?" + cards: true, "/v1/drawing/slotted-band?" + cards: true, "/v1/guide/slotted-band?" + cards: true, "/v1/ruler?length=92.1mm": true,
		"/v1/yield?unit=in&sheet=12x12&blank=2x3": true, "/v1/mail?" + square: true,
		"/v1/solve/slotted-band.csv?" + cards: false, "/v1/solve/slotted-band?format=json&" + cards: false, "/v1/solve/slotted-band?pick=/step&" + cards: false,
		"/v1/kinds": true, "/v1/limits.json": false, "/v1/contents.csv": false, "/openapi.json": false,
	} {
		for _, accept := range []string{"", "*/*", "application/json", "text/csv", "text/markdown,*/*;q=0.8", "image/heic"} {
			set := headers{"Accept", accept}
			if accept == "" {
				set = nil
			}
			a := get(t, target, set...).ok()
			assert.Equal(t, varies, strings.Contains(a.Header().Get("Vary"), "Accept,") || strings.HasSuffix(a.Header().Get("Vary"), " Accept"), "%s, Accept: %s, Vary: %s", target, accept, a.Header().Get("Vary"))
			unchanged := get(t, target, append(set, "If-None-Match", a.Header().Get("ETag"))...)
			assert.Equal(t, http.StatusNotModified, unchanged.Code)
			assert.Equal(t, a.Header().Get("Vary"), unchanged.Header().Get("Vary"))
		}
	}
}

// TestAStarMatchesOnlyAnswers: whether there is any answer is not known before
// it is computed.
func TestAStarMatchesOnlyAnswers(t *testing.T) {
	for _, s := range []*Service{quiet(), unremembering()} {
		for range 2 {
			assert.Equal(t, http.StatusNotModified, call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards, "", "If-None-Match", "*").Code)
			call(t, s, http.MethodGet, "/v1/solve/slotted-band?width=3.5in&thickness=0.09in&caliper=0.012in&clearance_min=0.001in&clearance_max=0.002in", "", "If-None-Match", "*").problem(http.StatusUnprocessableEntity)
			call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards+"&pick=/nothing", "", "If-None-Match", "*").problem(http.StatusBadRequest)
		}
	}
}

// TestPlansThatDependOnTimeAreNotKept: more time might have found a better one.
func TestPlansThatDependOnTimeAreNotKept(t *testing.T) {
	s := quiet()
	a := call(t, s, http.MethodPost, "/v1/yield", strings.Replace(hardOrder(), `"effort_ms":10000`, `"effort_ms":1`, 1), "Content-Type", "application/json").ok()
	require.Contains(t, a.Body.String(), `"proven":false`)
	assert.Regexp(t, `^W/"`, a.Header().Get("ETag"))
	assert.Equal(t, "no-store", a.Header().Get("Cache-Control"))
	assert.Empty(t, s.recent.young)
	proven := call(t, s, http.MethodPost, "/v1/yield", `{"unit":"in","sheet":"12x12","blank":"6x6","count":4,"effort_ms":10000}`, "Content-Type", "application/json").ok()
	require.Contains(t, proven.Body.String(), `"proven":true`)
	assert.Regexp(t, `^"`, proven.Header().Get("ETag"))
	assert.Contains(t, proven.Header().Get("Cache-Control"), "public")
}

// TestFilesAreSentCompressed: the specification is more than eight times as long
// as it need be on the way.
func TestFilesAreSentCompressed(t *testing.T) {
	for _, target := range []string{"/openapi.json", "/openapi.yaml", "/", "/docs", "/problems/no-fit"} {
		plain, packed := get(t, target).ok(), get(t, target, "Accept-Encoding", "gzip").ok()
		assert.Empty(t, plain.Header().Get("Content-Encoding"))
		assert.Equal(t, "gzip", packed.Header().Get("Content-Encoding"), target)
		assert.NotEqual(t, plain.Header().Get("ETag"), packed.Header().Get("ETag"))
		if target == "/openapi.json" {
			assert.Less(t, 8*packed.Body.Len(), plain.Body.Len())
		}
	}
}

// TestDocumentsMayLoadNothing: what a browser shows as a document of this
// origin says what it may load.
func TestDocumentsMayLoadNothing(t *testing.T) {
	for _, target := range []string{"/v1/guide/slotted-band.html?" + cards, "/v1/drawing/slotted-band.svg?" + cards, "/v1/yield.svg?unit=in&sheet=12x12&blank=2x3", "/problems/no-fit", "/problems/over-budget"} {
		assert.Contains(t, get(t, target).ok().Header().Get("Content-Security-Policy"), "default-src 'none'", target)
	}
	assert.Equal(t, web.Policy, get(t, "/docs").ok().Header().Get("Content-Security-Policy"))
	assert.Empty(t, get(t, "/v1/ruler?length=92.1mm").ok().Header().Get("Content-Security-Policy"))
}

// TestCellsAreNoFormulas: spreadsheets read a cell that begins with a tab, or
// with spaces before a sign, as what follows.
func TestCellsAreNoFormulas(t *testing.T) {
	ids := []string{"\t=1+1", " =1+1", "=1+1", "@x", "\tplain", "plain", "-3"}
	for _, id := range ids {
		body := tell.Style{}.AppendRow(nil, id, "it fits")
		rows, err := csv.NewReader(bytes.NewReader(body)).ReadAll()
		require.NoError(t, err)
		want := id
		if id != "plain" && id != "-3" {
			want = "'" + id
		}
		assert.Equal(t, want, rows[0][0])
	}
}

// lockedLog is a log that goroutines write to.
type lockedLog struct {
	sync.Mutex
	strings.Builder
}

func (l *lockedLog) Write(p []byte) (int, error) {
	l.Lock()
	defer l.Unlock()
	return l.Builder.Write(p)
}

func (l *lockedLog) text() string {
	l.Lock()
	defer l.Unlock()
	return l.String()
}

// TestRefusedBodiesAreAnsweredWhileTheyAreSent sends on for much longer than
// the connection holds, announced and in chunks, and reads the whole answer.
func TestRefusedBodiesAreAnsweredWhileTheyAreSent(t *testing.T) {
	r := start(t, nil)
	const size = 24 << 20
	for name, head := range map[string]string{"announced": fmt.Sprintf("Content-Length: %d", size), "in chunks": "Transfer-Encoding: chunked"} {
		for path, status := range map[string]string{"/v1/ruler": "413", "/v1/nothing": "404"} {
			connection, err := net.Dial("tcp", strings.TrimPrefix(r.public, "http://"))
			require.NoError(t, err)
			_ = connection.SetDeadline(time.Now().Add(20 * time.Second))
			fmt.Fprintf(connection, "POST %s HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n%s\r\n\r\n", path, head)
			sent := make(chan error, 1)
			go func() {
				block := bytes.Repeat([]byte("a"), 64<<10)
				for range size / len(block) {
					if head[0] == 'T' {
						_, err = fmt.Fprintf(connection, "%x\r\n%s\r\n", len(block), block)
					} else {
						_, err = connection.Write(block)
					}
					if err != nil {
						break
					}
				}
				sent <- err
			}()
			assert.NoError(t, <-sent, "%s %s: the caller could send all of it", name, path)
			answer, err := http.ReadResponse(bufio.NewReader(connection), nil)
			require.NoError(t, err, "%s %s", name, path)
			assert.Equal(t, status, answer.Status[:3])
			body, err := io.ReadAll(answer.Body)
			require.NoError(t, err)
			assert.Contains(t, string(body), `"status":`+status)
			_ = connection.Close()
		}
	}
}

// TestCallersThatLeaveAreNoPanic: nothing is logged of a batch that its caller
// left in the middle.
func TestCallersThatLeaveAreNoPanic(t *testing.T) {
	var log lockedLog
	r := startLogging(t, slog.New(slog.NewTextHandler(&log, nil)), nil)
	for range 3 {
		connection, err := net.Dial("tcp", strings.TrimPrefix(r.public, "http://"))
		require.NoError(t, err)
		fmt.Fprintf(connection, "POST /v1/batch HTTP/1.1\r\nHost: x\r\nContent-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n40\r\n")
		time.Sleep(10 * time.Millisecond)
		_ = connection.Close()
	}
	require.Eventually(t, func() bool { return runningBatches() == 0 }, 5*time.Second, 5*time.Millisecond)
	assert.NotContains(t, log.text(), "panic")
	assert.NotContains(t, log.text(), "goroutine")
}

// TestFindersFindTheirFiles: crawlers learn not to calculate, and the file for
// weaknesses has what RFC 9116 wants.
func TestFindersFindTheirFiles(t *testing.T) {
	assert.Contains(t, askFrom(shared(), http.MethodGet, "/robots.txt", "").Body.String(), "Disallow: /v1/\n")
	w := askFrom(shared(), http.MethodGet, "/.well-known/security.txt", "")
	assert.Equal(t, "text/plain; charset=utf-8", w.Header().Get("Content-Type"))
	assert.Regexp(t, `(?m)^Contact: https://`, w.Body.String())
	assert.Regexp(t, `(?m)^Expires: 20\d\d-\d\d-\d\dT`, w.Body.String())
}
