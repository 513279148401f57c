package web_test

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"io"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/web"
)

// root is the inside of the element of a page.
const root = "document.querySelector('creasefit-solver').shadowRoot"

// field is the control of a name.
func field(name string) string { return root + ".querySelector('[data-name=" + name + "]')" }

// reading is the width of the blank as the element shows it.
const reading = root + ".querySelector('.blank .reading').textContent.replace('\\u00a0', ' ')"

// embedded is a page of somebody else's with the element on it.
func embedded(attributes string) string {
	return `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>Tidewater Tea</title>` +
		`<script>window.events = []; for (const name of ["creasefit-solution", "creasefit-problem"]) addEventListener(name, (e) => events.push([name, e.detail]));</script>` +
		`<script src="` + web.Assets()[0].Path + `" defer></script></head><body><main><h1>Tidewater Tea</h1><h2>Bands</h2>` +
		`<creasefit-solver ` + attributes + `><a href="/">Work out the sizes</a></creasefit-solver></main></body></html>`
}

const byHand = `kind="slotted-band" unit="in" width="3 1/2" thickness="0.09" caliper="0.012" fit="snug"`

// widget opens a page with the element on it.
func widget(t *testing.T, attributes string) (*tab, *gate) {
	server, g := service(t, map[string]string{"/blog": embedded(attributes)})
	return open(t, server.URL+"/blog", chromedp.EmulateViewport(900, 900)), g
}

// tabTo presses the tab key until a control has the focus.
func (p *tab) tabTo(selector string) {
	p.Helper()
	for range 60 {
		if eval[bool](p, root+".activeElement?.matches("+quote(selector)+") ?? false") {
			return
		}
		p.keys(kb.Tab)
	}
	require.Fail(p.T, "the tab key never gets there", selector)
}

func quote(text string) string {
	literal, _ := json.Marshal(text)
	return string(literal)
}

func TestElementIsSmall(t *testing.T) {
	for _, asset := range web.Assets()[:2] {
		var packed bytes.Buffer
		w := gzip.NewWriter(&packed)
		_, err := w.Write(asset.Body)
		require.NoError(t, err)
		require.NoError(t, w.Close())
		t.Logf("%s: %d bytes, %d compressed", asset.Path, len(asset.Body), packed.Len())
		assert.LessOrEqual(t, packed.Len(), 30<<10, asset.Path)
	}
}

func TestFillInByKeyboard(t *testing.T) {
	p, _ := widget(t, byHand)
	p.until(solved)
	before := eval[string](p, reading)
	assert.Equal(t, "8 1/4 in", before)
	p.tabTo("[data-name=width]")
	p.keys("4 1/4 in") // the tab key has selected what stood there
	p.until(reading + " !== " + quote(before))
	assert.Equal(t, "9 3/4 in", eval[string](p, reading))
	assert.Contains(t, eval[string](p, root+".querySelector('[role=status]').textContent"), "Cut 9 3/4\u00a0in", "the answer is spoken")
	p.tabTo("[data-name=fit]")
	p.keys("loose")
	p.until("events.at(-1)?.[1].values?.fit === 'loose'")
	p.tabTo("summary")
	p.keys(kb.Enter)
	p.tabTo("[data-name=step]")
	p.keys("1/16in")
	p.until("events.at(-1)?.[1].solution?.step === '1/16 in'")
	p.tabTo("[data-name=sheet]")
	p.keys("letter")
	p.until(root + ".textContent.includes('From a sheet5')") // 5 x 1 1/2 in of 8 1/2 in
	p.tabTo("button")
	p.keys(kb.Enter) // back to the plainest readings
	p.until("events.at(-1)?.[1].solution?.step !== '1/16 in'")
	p.sound()
	p.shoot("")
}

func TestProblemAppearsAtItsFieldAndGoes(t *testing.T) {
	p, _ := widget(t, byHand)
	p.until(solved)
	p.tabTo("[data-name=width]")
	p.keys("3 5/7 in")
	p.until(field("width") + ".getAttribute('aria-invalid') === 'true'")
	told := root + ".getElementById(" + field("width") + ".getAttribute('aria-describedby')).textContent"
	assert.Contains(t, eval[string](p, told), "not parts of 1/7")
	assert.Contains(t, eval[string](p, root+".querySelector('[role=status]').textContent"), "not parts of 1/7")
	assert.Equal(t, "creasefit-problem", eval[string](p, "events.at(-1)[0]"))
	assert.True(t, eval[bool](p, root+".querySelector('.answer-area').classList.contains('stale')"), "the last answer is marked")
	p.shoot("")
	p.tabTo(".trouble button")
	p.keys(kb.Enter) // correct it
	p.until("!" + field("width") + ".hasAttribute('aria-invalid') && events.at(-1)[0] === 'creasefit-solution'")
	assert.Equal(t, "323/32", eval[string](p, "events.at(-1)[1].values.width.replace(/[^0-9/]/g, '')"))
	assert.Equal(t, "width", eval[string](p, root+".activeElement.dataset.name"), "the focus is on what was corrected")
	p.tabTo("[data-name=tab]")
	p.keys("1/7 in")
	p.until(field("tab") + ".hasAttribute('aria-invalid')")
	p.keys(strings.Repeat(kb.Backspace, 4) + "2 in")
	p.until("!" + field("tab") + ".hasAttribute('aria-invalid') && events.at(-1)[0] === 'creasefit-solution'")
	assert.Equal(t, "1/2 in", eval[string](p, field("tab")+".value"))
	p.sound()
}

func TestMissingSizeIsAskedForAndNotSent(t *testing.T) {
	p, g := widget(t, byHand)
	p.until(solved)
	g.calls()
	p.tabTo("[data-name=width]")
	p.keys(kb.Backspace)
	p.until(root + ".querySelector('[role=status]').textContent.includes('Still to fill in: width')")
	for _, c := range g.calls() {
		assert.NotContains(t, c, "/v1/solve")
	}
}

func TestUnitChangeKeepsTheMeaning(t *testing.T) {
	p, _ := widget(t, byHand)
	p.until(solved)
	p.tabTo("[data-name=unit]")
	p.keys("m")
	p.until("events.at(-1)?.[1].solution?.unit === 'mm'")
	assert.Equal(t, "3 1/2 in", eval[string](p, field("width")+".value"))
	assert.Equal(t, "0.5 mm", eval[string](p, field("ruler")+".value"))
}

func TestSlowServiceIsToldAndAnswersStayInOrder(t *testing.T) {
	p, g := widget(t, byHand)
	p.until(solved)
	g.set(1800*time.Millisecond, "/v1/solve/slotted-band?unit=in&width=5", false)
	p.tabTo("[data-name=width]")
	p.keys("5in")
	p.until(root + ".querySelector('[role=status]').textContent.includes('slow to answer')")
	p.keys(kb.Backspace + kb.Backspace + kb.Backspace + "6in")
	p.until("events.at(-1)?.[1].values?.width === '6in'")
	time.Sleep(1800 * time.Millisecond)
	assert.Equal(t, "6in", eval[string](p, "events.at(-1)[1].values.width"), "an answer that comes too late is dropped")
	assert.Equal(t, int64(0), eval[int64](p, "events.filter(([, d]) => d.values?.width === '5in').length"))
	p.sound()
}

func TestLostServiceIsToldAndComesBack(t *testing.T) {
	p, g := widget(t, byHand)
	p.until(solved)
	g.set(0, "", true)
	p.tabTo("[data-name=width]")
	p.keys("5in")
	p.until(root + ".querySelector('.trouble')?.textContent.includes('cannot be reached')")
	assert.True(t, eval[bool](p, root+".querySelector('.answer-area').classList.contains('stale')"))
	assert.Equal(t, int64(0), eval[int64](p, "events.at(-1)[1].problem.status"))
	p.shoot("")
	g.set(0, "", false)
	p.tabTo(".trouble button")
	p.keys(kb.Enter)
	p.until("events.at(-1)[1].values?.width === '5in'")
	p.until(root + ".querySelector('.trouble').hidden")
	p.sound()
}

func TestPageWithoutServiceShowsWhatIsInside(t *testing.T) {
	server, g := service(t, map[string]string{"/blog": embedded(byHand)})
	g.Handler = without(g.Handler)
	p := open(t, server.URL+"/blog")
	p.until(root + ".querySelector('.trouble')?.textContent.includes('cannot be reached')")
	assert.True(t, eval[bool](p, "document.querySelector('creasefit-solver a').getBoundingClientRect().height > 0"), "the link inside is shown")
	g.Handler = g.Handler.(cut).Handler
	eval[any](p, "dispatchEvent(new Event('online')); 0")
	p.until(solved)
	assert.True(t, eval[bool](p, "document.querySelector('creasefit-solver a').getBoundingClientRect().height === 0"), "and gives way to the sentence")
}

// cut lets no calculation through.
type cut struct{ http.Handler }

func without(h http.Handler) http.Handler { return cut{h} }

func (c cut) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if strings.HasPrefix(r.URL.Path, "/v1/") {
		panic(http.ErrAbortHandler)
	}
	c.Handler.ServeHTTP(w, r)
}

func TestGermanPage(t *testing.T) {
	p, g := widget(t, `kind="slotted-band" lang="de" width="88,9" thickness="2,3" caliper="0,3" ruler="1 mm" fit="snug"`)
	p.until(solved)
	assert.Contains(t, eval[string](p, root+".querySelector('.sentence').textContent"), "Wickle")
	assert.Equal(t, "mm", eval[string](p, "events.at(-1)[1].solution.unit"), "a German reader measures in millimetres")
	assert.InDelta(t, 88.9, eval[float64](p, "events.at(-1)[1].solution.given.width.mm"), 1e-9)
	assert.Contains(t, eval[string](p, root+".querySelector('.fit').textContent"), ",")
	assert.Contains(t, strings.Join(g.calls(), " "), "decimal=comma")
	assert.Contains(t, eval[string](p, root+".querySelector('.links a').href"), "language=de")
	eval[any](p, "document.querySelector('creasefit-solver').strings = { sure: 'Geht das?' }; 0")
	p.until(root + ".querySelector('.fit .title')?.textContent === 'Geht das?'")
	p.sound()
	p.shoot("")
}

func TestLongRequestIsPosted(t *testing.T) {
	server, g := service(t, nil)
	long := "/" + strings.Repeat("a", 1900)
	inner := g.Handler
	g.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/blog" {
			_, _ = io.WriteString(w, embedded(byHand+` service="`+server.URL+long+`/"`))
			return
		}
		r.URL.Path = strings.TrimPrefix(r.URL.Path, long)
		inner.ServeHTTP(w, r)
	})
	p := open(t, server.URL+"/blog")
	p.until(solved)
	assert.Equal(t, "8 1/4 in", eval[string](p, reading))
	calls := strings.Join(g.calls(), "\n")
	assert.Contains(t, calls, "POST "+long+"/v1/solve/slotted-band\n")
	assert.NotContains(t, calls, "OPTIONS", "no call needs a preflight")
}

// TestEveryKindIsASentence shows that the element knows no kind: every name
// that a kind's calculations know has its place.
func TestEveryKindIsASentence(t *testing.T) {
	p, _ := widget(t, `kind="slotted-band"`)
	kinds := eval[[]string](p, "fetch('/v1/kinds').then((r) => r.json()).then(({ kinds }) => kinds.map((k) => k.name))")
	require.Greater(t, len(kinds), 5)
	for _, kind := range kinds {
		eval[any](p, "events.length = 0; document.querySelector('creasefit-solver').setAttribute('kind', "+quote(kind)+"); 0")
		p.until("events.some(([, d]) => d.kind === " + quote(kind) + " || d.problem)")
		missing := eval[[]string](p, "fetch('/v1/kinds/"+kind+"').then((r) => r.json()).then(({ parameters }) => parameters.filter((q) => q.about === 'calculation' && !"+
			root+".querySelector(`[data-name=${q.name}]`)).map((q) => q.name))")
		assert.Empty(t, missing, kind)
		p.sound()
	}
}

func TestPermanentLinkAndPrint(t *testing.T) {
	p, _ := widget(t, byHand+` sheet="letter"`)
	p.until(solved)
	link, err := url.Parse(eval[string](p, "events.at(-1)[1].link"))
	require.NoError(t, err)
	assert.Equal(t, "3 1/2", link.Query().Get("width"))
	for _, href := range eval[[]string](p, "["+"..."+root+".querySelectorAll('.links a')].map((a) => a.href)") {
		answer, err := http.Get(href)
		require.NoError(t, err)
		require.NoError(t, answer.Body.Close())
		assert.Equal(t, http.StatusOK, answer.StatusCode, href)
	}
	p.do(prefer("print"))
	assert.True(t, eval[bool](p, "getComputedStyle("+root+".querySelector('.links')).display === 'none' && "+field("width")+".getBoundingClientRect().height > 0"))
	p.do(prefer("screen"), chromedp.Navigate(link.String()))
	p.until(solved)
	assert.Equal(t, "8 1/4 in", eval[string](p, reading), "the link leads to the same answer")
}
