package browser

import (
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"
)

// Detour answers a call itself or passes it on.
type Detour func(w http.ResponseWriter, r *http.Request, on http.Handler)

// Gate stands between a page and the service, to slow it down or cut it off.
type Gate struct {
	sync.Mutex
	handler http.Handler
	detour  Detour
	delay   time.Duration
	closed  bool
	slow    string // only calls of this path are slow
	seen    []string
}

// ServeHTTP notes the call and lets it through, late or not at all.
func (g *Gate) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	g.Lock()
	delay, closed, detour := g.delay, g.closed, g.detour
	if !strings.Contains(r.RequestURI, g.slow) {
		delay = 0
	}
	g.seen = append(g.seen, r.Method+" "+r.RequestURI)
	g.Unlock()
	if closed {
		panic(http.ErrAbortHandler)
	}
	time.Sleep(delay)
	if detour != nil {
		detour(w, r, g.handler)
		return
	}
	g.handler.ServeHTTP(w, r)
}

// Set changes how the gate lets calls through: a delay for the calls whose
// address contains slow, or closed for all.
func (g *Gate) Set(delay time.Duration, slow string, closed bool) {
	g.Lock()
	defer g.Unlock()
	g.delay, g.slow, g.closed = delay, slow, closed
}

// Send sends all calls over a detour; nil ends it.
func (g *Gate) Send(over Detour) {
	g.Lock()
	defer g.Unlock()
	g.detour = over
}

// Calls lists what was asked for since it was last asked.
func (g *Gate) Calls() []string {
	g.Lock()
	defer g.Unlock()
	seen := g.seen
	g.seen = nil
	return seen
}

// Serve runs a handler behind a gate until the test ends, and returns its
// address.
func Serve(t *testing.T, h http.Handler) (string, *Gate) {
	t.Helper()
	g := &Gate{handler: h}
	server := httptest.NewUnstartedServer(g)
	server.Config.ErrorLog = slog.NewLogLogger(slog.DiscardHandler, slog.LevelError)
	server.Start()
	t.Cleanup(server.Close)
	return server.URL, g
}
