package web_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
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
func widget(t *testing.T, attributes string) (*browser.Tab, *browser.Gate) {
	server, g := service(t, map[string]string{"/blog": embedded(attributes)})
	return browser.Open(t, server+"/blog", chromedp.EmulateViewport(900, 900)), g
}

// tabTo presses the tab key until a control of the element has the focus.
func tabTo(p *browser.Tab, selector string) {
	p.Helper()
	p.TabTo(root + ".activeElement?.matches(" + browser.Quote(selector) + ")")
}

func TestElementIsSmall(t *testing.T) {
	for _, asset := range web.Assets()[:2] {
		var packed bytes.Buffer
		w := gzip.NewWriter(&packed)
		_, err := w.Write(asset.Body)
		require.NoError(t, err)
		require.NoError(t, w.Close())
		t.Logf("%s: %d bytes, %d compressed", asset.Path, len(asset.Body), packed.Len())
		assert.LessOrEqual(t, packed.Len(), 20<<10, asset.Path)
	}
}

func TestFillInByKeyboard(t *testing.T) {
	p, _ := widget(t, byHand)
	p.Until(solved)
	before := browser.Eval[string](p, reading)
	assert.Equal(t, "8 1/4 in", before)
	tabTo(p, "[data-name=width]")
	p.Keys("4 1/4 in") // the tab key has selected what stood there
	p.Until(reading + " !== " + browser.Quote(before))
	assert.Equal(t, "9 3/4 in", browser.Eval[string](p, reading))
	assert.Contains(t, browser.Eval[string](p, root+".querySelector('[role=status]').textContent"), "Cut 9 3/4\u00a0in", "the answer is spoken")
	tabTo(p, "[data-name=fit]")
	p.Keys("loose")
	p.Until("events.at(-1)?.[1].values?.fit === 'loose'")
	tabTo(p, "summary")
	p.Keys(kb.Enter)
	tabTo(p, "[data-name=step]")
	p.Keys("1/16in")
	p.Until("events.at(-1)?.[1].solution?.step === '1/16 in'")
	tabTo(p, "[data-name=sheet]")
	p.Keys("letter")
	p.Until(root + ".textContent.includes('From a sheet5')") // 5 x 1 1/2 in of 8 1/2 in
	tabTo(p, "button")
	p.Keys(kb.Enter) // back to the plainest readings
	p.Until("events.at(-1)?.[1].solution?.step !== '1/16 in'")
	p.Sound()
	p.Shoot("")
}

func TestProblemAppearsAtItsFieldAndGoes(t *testing.T) {
	p, _ := widget(t, byHand)
	p.Until(solved)
	tabTo(p, "[data-name=width]")
	p.Keys("3 5/7 in")
	p.Until(field("width") + ".getAttribute('aria-invalid') === 'true'")
	told := root + ".getElementById(" + field("width") + ".getAttribute('aria-describedby')).textContent"
	assert.Contains(t, browser.Eval[string](p, told), "not parts of 1/7")
	assert.Contains(t, browser.Eval[string](p, root+".querySelector('[role=status]').textContent"), "not parts of 1/7")
	assert.Equal(t, "creasefit-problem", browser.Eval[string](p, "events.at(-1)[0]"))
	assert.True(t, browser.Eval[bool](p, root+".querySelector('.answer-area').classList.contains('stale')"), "the last answer is marked")
	p.Shoot("")
	tabTo(p, ".trouble button")
	p.Keys(kb.Enter) // correct it
	p.Until("!" + field("width") + ".hasAttribute('aria-invalid') && events.at(-1)[0] === 'creasefit-solution'")
	assert.Equal(t, "323/32", browser.Eval[string](p, "events.at(-1)[1].values.width.replace(/[^0-9/]/g, '')"))
	assert.Equal(t, "width", browser.Eval[string](p, root+".activeElement.dataset.name"), "the focus is on what was corrected")
	tabTo(p, "[data-name=tab]")
	p.Keys("1/7 in")
	p.Until(field("tab") + ".hasAttribute('aria-invalid')")
	p.Keys(strings.Repeat(kb.Backspace, 4) + "2 in")
	p.Until("!" + field("tab") + ".hasAttribute('aria-invalid') && events.at(-1)[0] === 'creasefit-solution'")
	assert.Equal(t, "1/2 in", browser.Eval[string](p, field("tab")+".value"))
	p.Sound()
}

func TestMissingSizeIsAskedForAndNotSent(t *testing.T) {
	p, g := widget(t, byHand)
	p.Until(solved)
	g.Calls()
	tabTo(p, "[data-name=width]")
	p.Keys(kb.Backspace)
	p.Until(root + ".querySelector('[role=status]').textContent.includes('Still to fill in: width')")
	for _, c := range g.Calls() {
		assert.NotContains(t, c, "/v1/batch")
	}
}

func TestUnitChangeKeepsTheMeaning(t *testing.T) {
	p, _ := widget(t, byHand)
	p.Until(solved)
	tabTo(p, "[data-name=unit]")
	p.Keys("m")
	p.Until("events.at(-1)?.[1].solution?.unit === 'mm'")
	assert.Equal(t, "3 1/2 in", browser.Eval[string](p, field("width")+".value"))
	assert.Equal(t, "0.5 mm", browser.Eval[string](p, field("ruler")+".value"))
}

func TestSlowServiceIsToldAndAnswersStayInOrder(t *testing.T) {
	p, g := widget(t, byHand)
	p.Until(solved)
	g.Send(func(w http.ResponseWriter, r *http.Request, on http.Handler) {
		if strings.Contains(r.URL.RawQuery, "5in") {
			time.Sleep(1800 * time.Millisecond)
		}
		on.ServeHTTP(w, r)
	})
	tabTo(p, "[data-name=width]")
	p.Keys("5in")
	p.Until(root + ".querySelector('[role=status]').textContent.includes('slow to answer')")
	p.Keys(kb.Backspace + kb.Backspace + kb.Backspace + "6in")
	p.Until("events.at(-1)?.[1].values?.width === '6in'")
	time.Sleep(1800 * time.Millisecond)
	assert.Equal(t, "6in", browser.Eval[string](p, "events.at(-1)[1].values.width"), "an answer that comes too late is dropped")
	assert.Equal(t, int64(0), browser.Eval[int64](p, "events.filter(([, d]) => d.values?.width === '5in').length"))
	p.Sound()
}

func TestLostServiceIsToldAndComesBack(t *testing.T) {
	p, g := widget(t, byHand)
	p.Until(solved)
	g.Set(0, "", true)
	tabTo(p, "[data-name=width]")
	p.Keys("5in")
	p.Until(root + ".querySelector('.trouble')?.textContent.includes('cannot be reached')")
	assert.True(t, browser.Eval[bool](p, root+".querySelector('.answer-area').classList.contains('stale')"))
	assert.Equal(t, int64(0), browser.Eval[int64](p, "events.at(-1)[1].problem.status"))
	p.Shoot("")
	g.Set(0, "", false)
	tabTo(p, ".trouble button")
	p.Keys(kb.Enter)
	p.Until("events.at(-1)[1].values?.width === '5in'")
	p.Until(root + ".querySelector('.trouble').hidden")
	p.Sound()
}

func TestPageWithoutServiceShowsWhatIsInside(t *testing.T) {
	server, g := service(t, map[string]string{"/blog": embedded(byHand)})
	g.Send(func(w http.ResponseWriter, r *http.Request, on http.Handler) {
		if strings.HasPrefix(r.URL.Path, "/v1/") {
			panic(http.ErrAbortHandler)
		}
		on.ServeHTTP(w, r)
	})
	p := browser.Open(t, server+"/blog")
	p.Until(root + ".querySelector('.trouble')?.textContent.includes('cannot be reached')")
	assert.True(t, browser.Eval[bool](p, "document.querySelector('creasefit-solver a').getBoundingClientRect().height > 0"), "the link inside is shown")
	g.Send(nil)
	browser.Eval[any](p, "dispatchEvent(new Event('online')); 0")
	p.Until(solved)
	assert.True(t, browser.Eval[bool](p, "document.querySelector('creasefit-solver a').getBoundingClientRect().height === 0"), "and gives way to the sentence")
}

func TestGermanPage(t *testing.T) {
	p, _ := widget(t, `kind="slotted-band" lang="de" width="88,9" thickness="2,3" caliper="0,3" ruler="1 mm" fit="snug"`)
	p.Until(solved)
	assert.Contains(t, browser.Eval[string](p, root+".querySelector('.sentence').textContent"), "Wickle")
	assert.Equal(t, "mm", browser.Eval[string](p, "events.at(-1)[1].solution.unit"), "a German reader measures in millimetres")
	assert.InDelta(t, 88.9, browser.Eval[float64](p, "events.at(-1)[1].solution.given.width.mm"), 1e-9)
	assert.Contains(t, browser.Eval[string](p, root+".querySelector('.fit').textContent"), ",")
	assert.Contains(t, browser.Eval[string](p, "events.at(-1)[1].link"), "decimal=comma")
	assert.Contains(t, browser.Eval[string](p, root+".querySelector('.links a').href"), "language=de")
	browser.Eval[any](p, "document.querySelector('creasefit-solver').strings = { sure: 'Geht das?' }; 0")
	p.Until(root + ".querySelector('.fit .title')?.textContent === 'Geht das?'")
	p.Sound()
	p.Shoot("")
}

// One request an entry, in German with its warnings too, and on a page of another
// origin none that asks first whether it may.
func TestElementAsksOnceAnEntry(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		server, g := service(t, nil)
		blog, _ := service(t, map[string]string{"/blog": embedded(byHand + ` lang="` + language + `" service="` + server + `/"`)})
		p := browser.Open(t, blog+"/blog", chromedp.EmulateViewport(900, 900))
		p.Until(solved)
		g.Calls()
		before := browser.Eval[int](p, "events.length")
		browser.Eval[any](p, "document.querySelector('creasefit-solver').values = { width: '4 in' }; 0")
		p.Until("events.length > " + strconv.Itoa(before) + " && " + solved)
		assertOneAddress(t, g.Calls())
		p.Sound()
	}
}

// assertOneAddress checks that all was asked with one address, which caches can keep.
func assertOneAddress(t *testing.T, calls []string) {
	t.Helper()
	require.Len(t, calls, 1)
	assert.True(t, strings.HasPrefix(calls[0], "GET /v1/batch?"), calls[0])
}

// With steps the work stands below the sizes with its pictures, in one request all
// the same, and is copied with them.
func TestElementTellsTheSteps(t *testing.T) {
	for language, title := range map[string]string{"en": "Step by step", "de": "Schritt für Schritt"} {
		server, g := service(t, nil)
		blog, _ := service(t, map[string]string{"/blog": embedded(byHand + ` steps lang="` + language + `" service="` + server + `/"`)})
		p := browser.Open(t, blog+"/blog", append(browser.Clipboard(true), chromedp.EmulateViewport(900, 900))...)
		p.Until(solved + " && " + root + ".querySelector('.steps svg')")
		assert.Equal(t, title, browser.Eval[string](p, root+".querySelector('.steps .title').textContent"))
		steps := browser.Eval[int](p, root+".querySelectorAll('.steps li').length")
		assert.Greater(t, steps, 3)
		if language == "de" {
			assert.Contains(t, browser.Eval[string](p, root+".querySelector('.alternatives').textContent"), "an der Mitte")
			assert.Zero(t, browser.Eval[int](p, root+".querySelectorAll('.answer-area [lang=en]').length"), "nothing of the answer is left in English")
		}
		g.Calls()
		browser.Eval[any](p, "document.querySelector('creasefit-solver').values = { width: '4 in' }; 0")
		p.Until(root + ".querySelector('.steps')?.textContent.includes('9 1/4')")
		assertOneAddress(t, g.Calls())
		browser.Eval[any](p, root+".querySelector('.steps button').click(); 0")
		p.Until(root + ".querySelector('.steps [role=status]').textContent")
		html := browser.Eval[string](p, "navigator.clipboard.read().then(([item]) => item.getType('text/html')).then((blob) => blob.text())")
		assert.Equal(t, steps, strings.Count(html, "<li>"))
		assert.Contains(t, html, "data:image/svg+xml,")
		p.Sound()
		p.Shoot(language)
	}
}

// With model the folded view is there as well, and follows what is typed.
func TestElementShowsTheModel(t *testing.T) {
	p, g := widget(t, byHand+" model")
	p.Until(solved + " && " + root + ".querySelector('creasefit-fold')?.hasAttribute('data-painted')")
	src := root + ".querySelector('creasefit-fold').getAttribute('src')"
	before := browser.Eval[string](p, src)
	g.Calls()
	browser.Eval[any](p, "document.querySelector('creasefit-solver').values = { width: '4 in' }; 0")
	p.Until(src + " !== " + browser.Quote(before) + " && " + root + ".querySelector('creasefit-fold').hasAttribute('data-painted')")
	assertOneAddress(t, g.Calls()[:1])
	p.Sound()
	p.Shoot("")
}

// TestEveryKindIsASentence shows that the element knows no kind: every name
// that a kind's calculations know has its place.
func TestEveryKindIsASentence(t *testing.T) {
	p, _ := widget(t, `kind="slotted-band"`)
	kinds := browser.Eval[[]string](p, "fetch('/v1/kinds').then((r) => r.json()).then(({ kinds }) => kinds.map((k) => k.name))")
	require.Greater(t, len(kinds), 5)
	for _, kind := range kinds {
		browser.Eval[any](p, "events.length = 0; document.querySelector('creasefit-solver').setAttribute('kind', "+browser.Quote(kind)+"); 0")
		p.Until("events.some(([, d]) => d.kind === " + browser.Quote(kind) + " || d.problem)")
		missing := browser.Eval[[]string](p, "fetch('/v1/kinds/"+kind+"').then((r) => r.json()).then(({ parameters }) => parameters.filter((q) => q.about === 'calculation' && !"+
			root+".querySelector(`[data-name=${q.name}]`)).map((q) => q.name))")
		assert.Empty(t, missing, kind)
		p.Sound()
	}
}

// TestWhatAnAnswerSuggestsIsOneButton takes a box that is larger than the sheet
// in two pieces, as its warning offers.
func TestWhatAnAnswerSuggestsIsOneButton(t *testing.T) {
	p, _ := widget(t, `kind="tray" unit="in" width="9" height="7" thickness="2" caliper="0.02" sheet="12 x 12 in"`)
	p.Until(solved)
	tabTo(p, ".notes > button")
	p.Keys(kb.Enter)
	p.Until(solved + " && events.at(-1)[1].solution.pieces.length === 2")
	assert.Equal(t, "two-pieces", browser.Eval[string](p, field("join")+".value"))
	assert.False(t, browser.Eval[bool](p, "Boolean("+root+".querySelector('.notes > button'))"), "nothing else is offered")
	p.Sound()
	p.Shoot("")
}

func TestPermanentLinkAndPrint(t *testing.T) {
	p, _ := widget(t, byHand+` sheet="letter"`)
	p.Until(solved)
	link, err := url.Parse(browser.Eval[string](p, "events.at(-1)[1].link"))
	require.NoError(t, err)
	assert.Equal(t, "3 1/2", link.Query().Get("width"))
	for _, href := range browser.Eval[[]string](p, "["+"..."+root+".querySelectorAll('.links a')].map((a) => a.href)") {
		answer, err := http.Get(href)
		require.NoError(t, err)
		require.NoError(t, answer.Body.Close())
		assert.Equal(t, http.StatusOK, answer.StatusCode, href)
	}
	p.Do(browser.Prefer("print"))
	assert.True(t, browser.Eval[bool](p, "getComputedStyle("+root+".querySelector('.links')).display === 'none' && "+field("width")+".getBoundingClientRect().height > 0"))
	p.Do(browser.Prefer("screen"), chromedp.Navigate(link.String()))
	p.Until(made)
	assert.Contains(t, browser.Eval[string](p, "document.querySelector('main').textContent.replaceAll('\\u00a0', ' ')"), "8 1/4 in", "the link leads to the same answer")
}

// TestGermanPageSaysWhatIsWrongInGerman provokes the problems and the warnings
// that readers meet most often.
func TestGermanPageSaysWhatIsWrongInGerman(t *testing.T) {
	p, g := widget(t, `kind="slotted-band" lang="de" width="88,9" thickness="2,3" grammage="270" ruler="1 mm" fit="snug"`)
	p.Until(solved)
	notes := root + ".querySelector('.notes ul').textContent"
	p.Until(notes + ".includes('ist geschätzt')")
	assert.Contains(t, browser.Eval[string](p, notes), "Die Papierdicke von 0,")
	assert.Zero(t, browser.Eval[int64](p, root+".querySelectorAll('.notes [lang=en]').length"), "nothing is left in English")
	assert.Contains(t, browser.Eval[string](p, root+".querySelector('figure').textContent"), "Rille 1", "nor in the drawing")
	wrong := root + ".getElementById(" + field("width") + ".getAttribute('aria-describedby').split(' ')[0]).textContent"
	for typed, told := range map[string]string{
		"abc": "„abc“ lässt sich nicht lesen.", "3 5/7 in": "„3 5/7 in“ lässt sich nicht lesen; vielleicht 3 23/32 in.", "99999": "„99999“ liegt außerhalb dessen, was geht; vielleicht 2000mm.",
	} {
		browser.Eval[any](p, "document.querySelector('creasefit-solver').values = { width: "+browser.Quote(typed)+" }; 0")
		p.Until(field("width") + ".getAttribute('aria-invalid') === 'true' && " + wrong + " === " + browser.Quote(told))
		assert.Equal(t, "So geht es noch nicht: "+told, browser.Eval[string](p, root+".querySelector('[role=status]').textContent"))
	}
	browser.Eval[any](p, "document.querySelector('creasefit-solver').values = { width: '88,9', step: '10 mm' }; 0")
	p.Until(field("fit") + ".parentElement.textContent.includes('Mit diesem Lineal geht das nicht auf; ')")
	g.Send(func(w http.ResponseWriter, _ *http.Request, _ http.Handler) {
		w.Header().Set("Content-Type", "application/problem+json")
		w.WriteHeader(http.StatusServiceUnavailable)
		_, _ = io.WriteString(w, `{"type":"/problems/overloaded","status":503,"detail":"too many calculations are running","errors":[]}`)
	})
	browser.Eval[any](p, "document.querySelector('creasefit-solver').values = { width: '91,4', step: '' }; 0")
	p.Until(root + ".querySelector('.trouble').textContent.includes('Der Dienst hat gerade zu viel zu tun.')")
	p.Sound()
	p.Shoot("")
}

// On a dark page of somebody else's the element takes type and colours from there,
// under a policy that demands Trusted Types and allows the service alone.
func TestElementOnADarkStrictPage(t *testing.T) {
	page := strings.Replace(embedded(byHand), "<title>", `<style nonce="n">body { background: #101418; color: #e8e2d4; font-family: monospace }</style><title>`, 1)
	page = strings.Replace(page, "<script>window", `<script nonce="n">window`, 1)
	own, _ := service(t, nil)
	blog := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Header().Set("Content-Security-Policy", "default-src 'none'; script-src 'nonce-n' "+own+"; style-src 'nonce-n'; connect-src "+own+"; img-src data:; require-trusted-types-for 'script'; trusted-types 'none'")
		_, _ = io.WriteString(w, strings.Replace(page, `src="/element`, `src="`+own+`/element`, 1))
	}))
	defer blog.Close()
	p := browser.Open(t, blog.URL, chromedp.EmulateViewport(900, 900))
	p.Until(solved)
	style := func(property string) string {
		return browser.Eval[string](p, "getComputedStyle(document.querySelector('creasefit-solver'))."+property)
	}
	assert.Equal(t, "rgb(232, 226, 212)", style("color"))
	assert.Equal(t, "rgba(0, 0, 0, 0)", style("backgroundColor"), "no card of its own")
	assert.Equal(t, "monospace", style("fontFamily"))
	assert.True(t, browser.Eval[bool](p, root+".querySelector('figure').classList.contains('dark')"), "the drawing is that of a dark page")
	p.Shoot("")
	p.Sound()
	t.Run("axe", func(t *testing.T) { p.Accessible(t) })
}

// The outline of an ornament is chosen from the words that the field offers, or typed as
// a path; what is wrong with it stands at the field, and goes.
func TestElementTakesAnOrnament(t *testing.T) {
	p, _ := widget(t, byHand+` ornament_width="2" ornament_height="1 3/4"`)
	p.Until(solved)
	shape := field("ornament_shape")
	assert.Equal(t, int64(6), browser.Eval[int64](p, shape+".list.options.length"))
	write := func(text string) {
		browser.Eval[any](p, shape+".closest('details')?.setAttribute('open', ''); "+shape+".value = ''; "+shape+".focus(); 0")
		p.Keys(text + kb.Enter)
	}
	write("heart")
	p.Until("events.at(-1)[1].solution?.ornament?.shape === 'heart'")
	p.Shoot("heart")
	write("M0,0 L20,0 X")
	p.Until(shape + ".ariaInvalid === 'true'")
	p.Sound()
	write("M0,0 L20,0 L10,20 Z")
	p.Until(shape + ".ariaInvalid !== 'true' && events.at(-1)[1].link?.includes('ornament_shape=M0')")
	p.Sound()
}
