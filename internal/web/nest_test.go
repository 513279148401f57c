package web_test

import (
	"encoding/json"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
)

// TestOneRoundTheOther puts two kinds round what lies on the bench, by keyboard,
// and finds the service's own numbers there; one that cannot go round says so.
func TestOneRoundTheOther(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?kind=tray&unit=in&width=5&height=4&thickness=2&caliper=0.012&corners=outside", chromedp.EmulateViewport(1280, 900))
	p.Until(solved + " && document.querySelector('#outer option')")
	put := func(kind string) {
		browser.Eval[any](p, "(() => { const s = document.getElementById('outer'); s.value = '"+kind+"'; s.focus(); })()")
		p.Keys(kb.Tab + kb.Enter)
	}
	put("sleeve")
	p.Until("document.querySelectorAll('#nested li').length === 2")
	put("band")
	p.Until("document.querySelectorAll('#nested li').length === 3")

	query := url.Values{"unit": {"in"}, "width": {"5"}, "height": {"4"}, "thickness": {"2"}, "caliper": {"0.012"},
		"layers": {`{"kind":"tray","corners":"outside"}`, "sleeve", "band"}}
	_, body := fetch(t, server+"/v1/solve/portfolio?"+query.Encode())
	var want struct {
		Pieces []struct {
			Blank struct{ Width, Height struct{ Reading string } }
		}
	}
	require.NoError(t, json.Unmarshal([]byte(body), &want))
	for i, shown := range browser.Eval[[]string](p, "[...document.querySelectorAll('#nested li')].map((li) => li.textContent)") {
		blank := want.Pieces[i].Blank
		assert.Contains(t, shown, blank.Width.Reading+" by "+blank.Height.Reading)
	}
	for _, link := range browser.Eval[[]string](p, "[...document.querySelectorAll('#nested a')].map((a) => a.href)") {
		answer, _ := fetch(t, link)
		assert.Equal(t, 200, answer.StatusCode, link)
	}
	p.Shoot("")

	put("dividers")
	p.Until("document.querySelector('#nested .wrong')")
	assert.True(t, strings.Contains(browser.Eval[string](p, "document.querySelector('#nested .wrong').textContent"), "not round it"))
	browser.Eval[any](p, "document.querySelector('#round li:last-child button').click(); 0")
	p.Until("document.querySelectorAll('#nested li').length === 3")
}
