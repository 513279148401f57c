package web_test

import (
	"context"
	"flag"
	"fmt"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	browserlog "github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"creasefit/api"
	"creasefit/internal/peer"
)

var shots = flag.String("shots", "", "folder to write screenshots of the pages into")

// patience is how long a test waits for a page to get into a state.
const patience = 20 * time.Second

// gate stands between a page and the service, to slow it down or cut it off.
type gate struct {
	http.Handler
	sync.Mutex
	delay  time.Duration
	closed bool
	slow   string // only calls of this path are slow
	seen   []string
}

func (g *gate) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	g.Lock()
	delay, closed := g.delay, g.closed
	if !strings.Contains(r.RequestURI, g.slow) {
		delay = 0
	}
	g.seen = append(g.seen, r.Method+" "+r.RequestURI)
	g.Unlock()
	if closed {
		panic(http.ErrAbortHandler)
	}
	time.Sleep(delay)
	g.Handler.ServeHTTP(w, r)
}

// set changes how the gate lets calls through.
func (g *gate) set(delay time.Duration, slow string, closed bool) {
	g.Lock()
	defer g.Unlock()
	g.delay, g.slow, g.closed = delay, slow, closed
}

// calls lists what was asked for since the last call.
func (g *gate) calls() []string {
	g.Lock()
	defer g.Unlock()
	seen := g.seen
	g.seen = nil
	return seen
}

// service runs the service behind a gate, with further pages of the test's own.
func service(t *testing.T, pages map[string]string) (*httptest.Server, *gate) {
	t.Helper()
	own := api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler()
	g := &gate{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if page, ok := pages[r.URL.Path]; ok {
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			fmt.Fprint(w, page)
			return
		}
		own.ServeHTTP(w, r)
	})}
	server := httptest.NewUnstartedServer(g)
	server.Config.ErrorLog = slog.NewLogLogger(slog.DiscardHandler, slog.LevelError)
	server.Start()
	t.Cleanup(server.Close)
	return server, g
}

// browser is one Chromium for all tests of the package.
var browser = sync.OnceValues(func() (context.Context, error) {
	ctx, _ := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(chromium), chromedp.NoSandbox, chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("enable-unsafe-swiftshader", true), chromedp.WindowSize(1280, 900))...)
	ctx, stop := chromedp.NewContext(ctx)
	stopBrowser = stop
	return ctx, chromedp.Do(ctx)
})

var (
	chromium    string
	stopBrowser = func() {}
)

func TestMain(m *testing.M) {
	code := m.Run()
	stopBrowser()
	os.Exit(code)
}

// tab is a page in the browser, and everything that went wrong on it.
type tab struct {
	*testing.T
	ctx      context.Context
	mu       sync.Mutex
	errors   []string
	requests []string
}

// open opens an address in a new tab.
func open(t *testing.T, address string, first ...chromedp.Action[chromedp.Void]) *tab {
	t.Helper()
	chromium = peer.Path(t, "chromium", "apt-get install -y chromium")
	parent, err := browser()
	require.NoError(t, err)
	ctx, cancel := chromedp.NewContext(parent)
	ctx, stop := context.WithTimeout(ctx, 2*time.Minute)
	t.Cleanup(func() { stop(); cancel() })
	p := &tab{T: t, ctx: ctx}
	require.NoError(t, chromedp.Do(ctx))
	require.NoError(t, chromedp.Listen(ctx, p.note))
	_, err = chromedp.Call(ctx, network.Enable, network.EnableParams{})
	require.NoError(t, err)
	_, err = chromedp.Call(ctx, browserlog.Enable, cdp.Empty{})
	require.NoError(t, err)
	require.NoError(t, chromedp.Do(ctx, first...))
	require.NoError(t, chromedp.Do(ctx, chromedp.Navigate(address)))
	return p
}

// note keeps addresses that were asked for, and scripts that failed.
func (p *tab) note(event any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		p.requests = append(p.requests, e.Request.URL)
	case *browserlog.EventEntryAdded:
		if e.Entry.Level == browserlog.EntryLevelError && e.Entry.Source != browserlog.EntrySourceNetwork {
			p.errors = append(p.errors, e.Entry.Text)
		}
	case *runtime.EventExceptionThrown:
		p.errors = append(p.errors, describe(e.ExceptionDetails))
	}
}

// sound checks that no script has failed.
func (p *tab) sound() {
	p.Helper()
	p.mu.Lock()
	defer p.mu.Unlock()
	require.Empty(p.T, p.errors, "scripts that failed")
}

// do runs actions.
func (p *tab) do(actions ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	require.NoError(p.T, chromedp.Do(p.ctx, actions...))
}

// eval evaluates an expression, which may be a promise.
func eval[T any](p *tab, expression string) T {
	p.Helper()
	value, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	require.NoError(p.T, err, expression)
	return value
}

// until waits for an expression to become true.
func (p *tab) until(expression string) {
	p.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(30 * time.Millisecond) {
		ok, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool]("Boolean("+expression+")", chromedp.EvalAwaitPromise))
		if err == nil && ok {
			return
		}
		p.sound()
		if time.Now().After(end) {
			p.shoot("-failed")
			require.Failf(p.T, "the page never got there", "%s: %v", expression, err)
		}
	}
}

// keys types on the keyboard of the page.
func (p *tab) keys(keys string) {
	p.Helper()
	p.do(chromedp.KeyEvent(keys))
}

// prefer sets what the reader prefers: a medium and media features.
func prefer(medium string, features ...string) chromedp.Action[chromedp.Void] {
	list := []*emulation.MediaFeature{}
	for i := 0; i+1 < len(features); i += 2 {
		list = append(list, &emulation.MediaFeature{Name: features[i], Value: features[i+1]})
	}
	return chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: medium, Features: list})
		return err
	})
}

// shoot writes a screenshot of the whole page if they are asked for.
func (p *tab) shoot(name string) {
	p.Helper()
	if *shots == "" {
		return
	}
	picture, err := chromedp.Run(p.ctx, chromedp.FullScreenshot(100))
	require.NoError(p.T, err)
	require.NoError(p.T, os.MkdirAll(*shots, 0o755))
	top, err := chromedp.Run(p.ctx, chromedp.CaptureScreenshot())
	require.NoError(p.T, err)
	file := filepath.Join(*shots, strings.ReplaceAll(p.Name(), "/", "-")+name)
	require.NoError(p.T, os.WriteFile(file+".png", picture, 0o644))
	require.NoError(p.T, os.WriteFile(file+"-top.png", top, 0o644))
}

// describe says what a script has thrown.
func describe(d *runtime.ExceptionDetails) string {
	if d.Exception != nil {
		return d.Exception.Description
	}
	return d.Text
}
