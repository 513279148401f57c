// Package browser drives Chromium in tests of pages. It is imported by tests
// only.
//
// It knows no page: what is looked for on one, its own tests say.
package browser

import (
	"context"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	permission "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	browserlog "github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"creasefit/internal/peer"
)

var shots = flag.String("shots", "", "folder to write screenshots of the pages into")

// patience is how long a test waits for a page to get into a state.
const patience = 20 * time.Second

// chromium is one browser for all tests of a package.
var chromium = sync.OnceValues(func() (context.Context, error) {
	ctx, _ := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(program), chromedp.NoSandbox, chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("enable-unsafe-swiftshader", true), chromedp.WindowSize(1280, 900))...)
	ctx, stop := chromedp.NewContext(ctx)
	stopBrowser = stop
	return ctx, chromedp.Do(ctx)
})

var (
	program     string
	stopBrowser = func() {}
)

// Main runs the tests of a package and closes the browser.
func Main(m *testing.M) {
	code := m.Run()
	stopBrowser()
	os.Exit(code)
}

// Tab is a page in the browser, and everything that went wrong on it.
type Tab struct {
	*testing.T
	ctx      context.Context
	mu       sync.Mutex
	errors   []string
	requests []string
}

// Open opens an address in a new tab.
func Open(t *testing.T, address string, first ...chromedp.Action[chromedp.Void]) *Tab {
	t.Helper()
	program = peer.Path(t, "chromium", "apt-get install -y chromium")
	parent, err := chromium()
	require.NoError(t, err)
	ctx, cancel := chromedp.NewContext(parent)
	ctx, stop := context.WithTimeout(ctx, 2*time.Minute)
	t.Cleanup(func() { stop(); cancel() })
	p := &Tab{T: t, ctx: ctx}
	require.NoError(t, chromedp.Do(ctx))
	require.NoError(t, chromedp.Listen(ctx, p.note))
	p.Do(act(network.Enable, network.EnableParams{}), act(browserlog.Enable, cdp.Empty{}))
	p.Do(append(first, chromedp.Navigate(address))...)
	return p
}

// note keeps addresses that were asked for, and scripts that failed.
func (p *Tab) note(event any) {
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

// Sound checks that no script has failed.
func (p *Tab) Sound() {
	p.Helper()
	p.mu.Lock()
	defer p.mu.Unlock()
	require.Empty(p.T, p.errors, "scripts that failed")
}

// Requests lists the addresses that the page has asked for.
func (p *Tab) Requests() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return slices.Clone(p.requests)
}

// Quote writes a text as a literal of JavaScript.
func Quote(text string) string {
	literal, _ := json.Marshal(text)
	return string(literal)
}

// Do runs actions.
func (p *Tab) Do(actions ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	require.NoError(p.T, chromedp.Do(p.ctx, actions...))
}

// Eval evaluates an expression, which may be a promise.
func Eval[T any](p *Tab, expression string) T {
	p.Helper()
	value, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	require.NoError(p.T, err, expression)
	return value
}

// Until waits for an expression to become true.
func (p *Tab) Until(expression string) {
	p.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(30 * time.Millisecond) {
		ok, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool]("Boolean("+expression+")", chromedp.EvalAwaitPromise))
		if err == nil && ok {
			return
		}
		p.Sound()
		if time.Now().After(end) {
			p.Shoot("-failed")
			require.Failf(p.T, "the page never got there", "%s: %v", expression, err)
		}
	}
}

// TabTo presses the tab key until an expression says that what is meant has
// the focus.
func (p *Tab) TabTo(focused string) {
	p.Helper()
	for range 60 {
		if Eval[bool](p, "Boolean("+focused+")") {
			return
		}
		p.Keys(kb.Tab)
	}
	require.Fail(p.T, "the tab key never gets there", focused)
}

// Keys types on the keyboard of the page.
func (p *Tab) Keys(keys string) {
	p.Helper()
	p.Do(chromedp.KeyEvent(keys))
}

// act is a command of the protocol as an action.
func act[P, R any](command cdp.Command[P, R], params P) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, command, params)
		return err
	})
}

// Prefer sets what the reader prefers: a medium and media features.
func Prefer(medium string, features ...string) chromedp.Action[chromedp.Void] {
	list := []*emulation.MediaFeature{}
	for i := 0; i+1 < len(features); i += 2 {
		list = append(list, &emulation.MediaFeature{Name: features[i], Value: features[i+1]})
	}
	return act(emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: medium, Features: list})
}

// Offline cuts the page off from every network, or connects it again.
func (p *Tab) Offline(off bool) {
	p.Do(act(network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
		MatchedNetworkConditions: []*network.Conditions{{Offline: off, DownloadThroughput: -1, UploadThroughput: -1}}}),
		act(network.OverrideNetworkState, network.OverrideNetworkStateParams{Offline: off, DownloadThroughput: -1, UploadThroughput: -1}))
}

// Clipboard lets pages write to the clipboard and read it, or write only when
// the reader agrees, which nobody does here.
func Clipboard(granted bool) (actions []chromedp.Action[chromedp.Void]) {
	setting := permission.PermissionSettingDenied
	if granted {
		setting = permission.PermissionSettingGranted
	}
	for _, name := range []string{"clipboard-read", "clipboard-write"} {
		actions = append(actions, act(permission.SetPermission, permission.SetPermissionParams{Permission: &permission.PermissionDescriptor{Name: name}, Setting: setting}))
	}
	return append(actions, act(emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true}))
}

// WithoutScripts keeps the scripts of pages from running.
func WithoutScripts() chromedp.Action[chromedp.Void] {
	return act(emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
}

// Context is what further actions of chromedp run in.
func (p *Tab) Context() context.Context { return p.ctx }

// Shoot writes a screenshot of the whole page if they are asked for.
func (p *Tab) Shoot(name string) {
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
