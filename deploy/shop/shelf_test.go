package shop_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
)

// answerOf is what the page says of a product.
func answerOf(p *browser.Tab, id string) string {
	return browser.Eval[string](p, "document.querySelector('[data-id="+browser.Quote(id)+"] .says').textContent")
}

// measure types the visitor's sizes and asks.
func measure(p *browser.Tab, width, height, thickness string) {
	for name, text := range map[string]string{"width": width, "height": height, "thickness": thickness} {
		browser.Eval[any](p, "document.getElementById("+browser.Quote(name)+").value = "+browser.Quote(text)+"; 0")
	}
	browser.Eval[any](p, "document.querySelectorAll('.says').forEach((s) => (s.textContent = '')); document.querySelector('#mine button').click(); 0")
}

// TestShelfAnswersForEveryProduct reads the page's structured data and asks once
// for all of it.
func TestShelfAnswersForEveryProduct(t *testing.T) {
	address, g := stall(t)
	p := browser.Open(t, address+"shelf.html")
	p.Until("document.querySelector('#products[data-stocked]')?.children.length === 3")
	before := len(g.Calls())
	measure(p, "90", "60", "24")
	p.Until("[...document.querySelectorAll('.says')].every((s) => s.textContent)")
	calls := g.Calls()[before:]
	require.Len(t, calls, 1, "one request for the page: %v", calls)
	assert.Contains(t, calls[0], "/v1/match")
	assert.True(t, strings.HasPrefix(answerOf(p, "T-1"), "Yes, with "), answerOf(p, "T-1"))
	assert.True(t, strings.HasPrefix(answerOf(p, "T-2"), "No: 16 mm too large along the thickness"), answerOf(p, "T-2"))
	assert.True(t, strings.HasPrefix(answerOf(p, "T-3"), "Yes"), answerOf(p, "T-3"))
	measure(p, "oops", "60", "24")
	p.Until("document.getElementById('width-wrong').textContent")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('width-wrong').textContent"), "cannot read 'oops'")
	p.Shoot("")
	p.Accessible(t)
}

// TestShelfReadsAnExport names a product export instead: its separator, its decimal
// commas and the units in its headings are understood.
func TestShelfReadsAnExport(t *testing.T) {
	address, _ := stall(t)
	p := browser.Open(t, address+"shelf.html")
	p.Until("document.querySelector('#products[data-stocked]')")
	type product struct{ ID, Title, Price, Width, Height, Thickness string }
	list := browser.Eval[[]product](p, "(async () => (await import('./products.js')).fromExport(await (await fetch('products.csv')).text()))()")
	assert.Equal(t, []product{{"B-1", "Jar box; tall", "4,10", "70 mm", "70 mm", "95,5 mm"}, {"B-2", "Sampler tray", "2,60", "98 mm", "64 mm", "26 mm"}}, list)
	browser.Eval[any](p, "document.getElementById('products').removeAttribute('data-stocked'); 0")
	other := browser.Open(t, address+"shelf-export.html")
	other.Until("document.querySelector('#products[data-stocked]')?.children.length === 2")
	measure(other, "65", "65", "90")
	other.Until("[...document.querySelectorAll('.says')].every((s) => s.textContent)")
	assert.True(t, strings.HasPrefix(answerOf(other, "B-1"), "Yes"), answerOf(other, "B-1"))
	assert.True(t, strings.HasPrefix(answerOf(other, "B-2"), "No"), answerOf(other, "B-2"))
	other.Sound()
}
