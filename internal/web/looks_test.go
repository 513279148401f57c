package web_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"creasefit/internal/browser"
)

// solved is true when the element of the page shows an answer with its drawing.
const solved = "document.querySelector('creasefit-solver')?.shadowRoot?.querySelector('figure svg') && !document.querySelector('creasefit-solver').hasAttribute('aria-busy')"

// settled is true when the workbench shows what suits, and made when it shows how
// the chosen kind is made.
const (
	settled = "!document.body.hasAttribute('aria-busy') && !document.getElementById('kinds')?.hidden"
	made    = settled + " && !document.getElementById('make').hidden && document.querySelector('.steps svg')"
)

// look is a way in which pages are looked at.
type look struct {
	name          string
	width, height int64
	medium        string
	scheme        string
}

var (
	wideLight, wideDark     = look{"wide-light", 1280, 900, "screen", "light"}, look{"wide-dark", 1280, 900, "screen", "dark"}
	middleLight, middleDark = look{"middle-light", 768, 1000, "screen", "light"}, look{"middle-dark", 768, 1000, "screen", "dark"}
	narrowLight, narrowDark = look{"narrow-light", 360, 740, "screen", "light"}, look{"narrow-dark", 360, 740, "screen", "dark"}
	printed                 = look{"print", 760, 1000, "print", "light"}
)

// scenes are the pages in the states that are looked at.
var scenes = []struct {
	name, path string
	ready      string // an expression that becomes true
	prepare    string // a script to run then
	done       string // an expression that becomes true after that
	looks      []look
}{
	{"thing", "/?unit=in&contents=tea-tin&sheet=letter", settled, "document.querySelectorAll('#kinds details').forEach((d) => (d.open = true))", "true",
		[]look{wideLight, middleDark, narrowLight, narrowDark, printed}},
	{"box", "/?unit=in&contents=honey-jar&kind=lidded-box&sheet=craft-12&post=us", made, "document.querySelectorAll('details').forEach((d) => (d.open = true))", "document.querySelector('#choices input')",
		[]look{wideDark, middleLight, narrowLight, printed}},
	{"kasten", "/de/?contents=honey-jar&kind=lidded-box&sheet=a3&post=de", made, "document.querySelectorAll('details').forEach((d) => (d.open = true))", "document.querySelector('#choices input')",
		[]look{wideLight, middleDark, narrowDark}},
	{"dead end", "/?unit=in&width=4&height=6&thickness=1/4&kind=envelope&sheet=letter", settled + " && document.querySelector('.wrong, #trouble:not([hidden])')", "", "true", []look{wideLight, narrowDark}},
	{"frame", "/frame?kind=sleeve&unit=in&width=3&height=4&thickness=1&caliper=0.012&lang=de", solved, "", "true", []look{wideDark, narrowLight}},
	{"guide", "/v1/guide/slotted-band.html?" + hearted, "document.querySelectorAll('.steps svg').length > 3", "", "true", []look{wideLight, wideDark, narrowLight, printed}},
	{"anleitung", "/v1/guide/lidded-box.html?unit=mm&width=88&height=125&thickness=38&caliper=0.3&language=de", "document.querySelectorAll('.steps svg').length > 3", "", "true", []look{middleLight, narrowDark, printed}},
	{"guide of a set", "/v1/guide/portfolio.html?unit=in&width=5&height=4&thickness=2&caliper=0.012&layers=tray&layers=sleeve", "document.querySelectorAll('.steps svg').length > 3", "", "true", []look{narrowLight}},
	{"reference", "/docs/calls", "document.forms.length", "document.querySelectorAll('article:first-of-type details').forEach((d) => (d.open = true))", "true",
		[]look{wideLight, narrowDark, printed}},
	{"tasks", "/docs", "true", "", "true", []look{wideLight, narrowDark, printed}},
	{"tasks-de", "/de/docs", "true", "", "true", []look{wideDark, narrowLight}},
	{"formats", "/docs/formats", "true", "", "true", []look{wideLight, narrowDark}},
	{"glossary", "/de/docs/glossary", "true", "", "true", []look{narrowLight}},
	{"limits", "/docs/limits", "true", "", "true", []look{narrowLight}},
	{"design", "/docs/design", "true", "", "true", []look{narrowLight}},
	{"changes", "/docs/changes", "true", "", "true", []look{narrowLight}},
	{"problems", "/problems", "true", "", "true", []look{wideLight, narrowDark}},
	{"unknown", "/de/problems/unknown", "true", "", "true", []look{wideDark, narrowLight}},
	{"answer", "/answer", solved, "", "true", []look{wideLight, narrowDark, printed}},
	{"problem", "/problem", field("width") + "?.hasAttribute('aria-invalid')", "", "true", []look{wideDark, narrowLight}},
}

// hearted is a band with an ornament.
const hearted = "unit=in&width=3.5&thickness=0.09&caliper=0.012&band_height=1-3/4&ornament_width=2&ornament_shape=heart"

// On a page 360 pixels wide no letter of a picture is smaller than 11 pixels: neither in
// a guide, of one kind or of several, nor in the drawing that the element shows.
func TestLettersOfPicturesAreReadableOnPhones(t *testing.T) {
	server, _ := service(t, map[string]string{"/blog": embedded(byHand)})
	const smallest = `(pictures => Math.min(...pictures.flatMap(svg => [...svg.querySelectorAll("[font-size]")].map(letters => Number(letters.getAttribute("font-size")) * svg.getScreenCTM().d))))`
	for path, pictures := range map[string]string{
		"/v1/guide/slotted-band.html?" + hearted:                                                                            "document.querySelectorAll('svg')",
		"/v1/guide/lidded-box.html?unit=mm&width=88&height=125&thickness=38&caliper=0.3&language=de":                        "document.querySelectorAll('svg')",
		"/v1/guide/gusset-bag.html?unit=mm&width=88&height=125&thickness=38&caliper=0.3":                                    "document.querySelectorAll('svg')",
		"/v1/guide/portfolio.html?unit=in&width=5&height=4&thickness=2&caliper=0.012&layers=tray&layers=sleeve&language=de": "document.querySelectorAll('svg')",
		"/blog": root + ".querySelectorAll('figure svg')",
	} {
		p := browser.Open(t, server+path, chromedp.EmulateViewport(360, 740))
		if path == "/blog" {
			p.Until(solved)
		}
		p.Until("document.readyState === 'complete'")
		assert.GreaterOrEqual(t, browser.Eval[float64](p, smallest+"([..."+pictures+"])"), 10.99, path)
		assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), int64(360), path)
	}
}

func TestPagesInEveryLook(t *testing.T) {
	server, _ := service(t, map[string]string{"/answer": embedded(byHand + ` sheet="letter"`), "/problem": embedded(`kind="slotted-band" unit="in" width="3 5/7" thickness="0.09" caliper="0.012" lang="de"`)})
	for _, scene := range scenes {
		for _, look := range scene.looks {
			t.Run(scene.name+"/"+look.name, func(t *testing.T) {
				p := browser.Open(t, server+scene.path, chromedp.EmulateViewport(look.width, look.height), browser.Prefer(look.medium, "prefers-color-scheme", look.scheme))
				p.Until(scene.ready)
				browser.Eval[any](p, scene.prepare+";0")
				p.Until(scene.done)
				assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), look.width, "nothing may stick out at the side")
				p.Shoot("")
				p.Sound()
				if look != printed {
					t.Run("axe", func(t *testing.T) { p.Accessible(t) })
				}
			})
		}
	}
}
