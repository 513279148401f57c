package web_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"creasefit/internal/browser"
)

// solved is true when the element of the page shows an answer with its drawing.
const solved = "document.querySelector('creasefit-solver')?.shadowRoot?.querySelector('figure svg') && !document.querySelector('creasefit-solver').hasAttribute('aria-busy')"

// stocked is true when every kind on the workbench's shelf has been painted.
const stocked = "document.querySelector('#shelf').hasAttribute('data-painted')"

// look is a way in which pages are looked at.
type look struct {
	name          string
	width, height int64
	medium        string
	scheme        string
}

var (
	wideLight, wideDark     = look{"wide-light", 1280, 900, "screen", "light"}, look{"wide-dark", 1280, 900, "screen", "dark"}
	narrowLight, narrowDark = look{"narrow-light", 320, 700, "screen", "light"}, look{"narrow-dark", 320, 700, "screen", "dark"}
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
	{"workbench", "/", solved + " && " + stocked + " && document.querySelector('creasefit-fold').hasAttribute('data-painted')",
		"document.querySelector('#order button').click(); " + root + ".querySelector('details').open = true", "document.querySelector('#plan figure svg')",
		[]look{wideLight, wideDark, narrowLight, narrowDark, printed}},
	{"reference", "/docs", "document.forms.length", "document.querySelectorAll('article:first-of-type details').forEach((d) => (d.open = true))", "true",
		[]look{wideLight, narrowDark, printed}},
	{"answer", "/answer", solved, "", "true", []look{wideLight, narrowDark, printed}},
	{"problem", "/problem", field("width") + "?.hasAttribute('aria-invalid')", "", "true", []look{wideDark, narrowLight}},
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

func TestEveryKindOnTheShelfHasAPicture(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/")
	p.Until(stocked)
	assert.Greater(t, browser.Eval[int64](p, "document.querySelectorAll('#shelf a[data-example]').length"), int64(5))
	assert.Empty(t, browser.Eval[[]string](p, "[...document.querySelectorAll('#shelf a:not([data-example])')].map((a) => a.dataset.kind)"))
	p.Sound()
}
