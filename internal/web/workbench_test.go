package web_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// solved is true when the element of the page shows an answer with its drawing.
const solved = "document.querySelector('creasefit-solver')?.shadowRoot.querySelector('figure svg') && !document.querySelector('creasefit-solver').hasAttribute('aria-busy')"

// looks are the ways in which the pages are looked at.
var looks = []struct {
	name          string
	width, height int64
	medium        string
	scheme        string
}{
	{"wide-light", 1280, 900, "screen", "light"}, {"wide-dark", 1280, 900, "screen", "dark"},
	{"narrow-light", 320, 700, "screen", "light"}, {"narrow-dark", 320, 700, "screen", "dark"},
	{"print", 760, 1000, "print", "light"},
}

func TestWorkbenchInEveryLook(t *testing.T) {
	server, _ := service(t, nil)
	for _, look := range looks {
		t.Run(look.name, func(t *testing.T) {
			p := open(t, server.URL+"/", chromedp.EmulateViewport(look.width, look.height), prefer(look.medium, "prefers-color-scheme", look.scheme))
			p.until(solved)
			p.until("document.querySelector('creasefit-fold').hasAttribute('data-painted')")
			p.until("document.querySelector('#shelf').hasAttribute('data-painted')")
			assert.Equal(t, int64(0), eval[int64](p, "document.querySelectorAll('#shelf a:not([data-example])').length"), "kinds without a picture")
			assert.LessOrEqual(t, eval[int64](p, "document.documentElement.scrollWidth"), look.width, "nothing may stick out at the side")
			p.sound()
			p.shoot("")
		})
	}
}

func TestReferenceInEveryLook(t *testing.T) {
	server, _ := service(t, nil)
	for _, look := range looks {
		t.Run(look.name, func(t *testing.T) {
			p := open(t, server.URL+"/docs", chromedp.EmulateViewport(look.width, look.height), prefer(look.medium, "prefers-color-scheme", look.scheme))
			assert.LessOrEqual(t, eval[int64](p, "document.documentElement.scrollWidth"), look.width, "nothing may stick out at the side")
			p.sound()
			p.shoot("")
		})
	}
}
