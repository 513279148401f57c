package shop_test

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
)

const (
	stamp   = "document.querySelector('#answer .stamp')?.textContent"
	answer  = "document.getElementById('answer').innerText.replaceAll('\u00a0', ' ')"
	trouble = "document.getElementById('trouble').innerText"
	model   = "document.getElementById('model')"
	painted = model + ".hasAttribute('data-painted') && document.getElementById('shelf').hasAttribute('data-painted')"
)

// stamped is true when the answer begins with a text.
func stamped(text string) string { return stamp + "?.startsWith(" + browser.Quote(text) + ")" }

// to moves the focus to a control by the tab key.
func to(p *browser.Tab, selector string) {
	p.Helper()
	p.TabTo("document.activeElement?.matches(" + browser.Quote(selector) + ")")
}

// fill types a size over what stands in its field, by keyboard.
func fill(p *browser.Tab, name, text string) {
	p.Helper()
	to(p, "#size-"+name)
	browser.Eval[any](p, "document.activeElement.select(); 0")
	p.Keys(text)
}

// focusTop puts the focus before the first control.
func focusTop(p *browser.Tab) {
	browser.Eval[any](p, "document.activeElement.blur(); getSelection().collapse(document.body, 0); 0")
}

// TestAskByKeyboard goes from the shelf to an answer without a pointer, and
// sees the answer change with what is typed.
func TestAskByKeyboard(t *testing.T) {
	address, g := stall(t)
	p := browser.Open(t, address)
	p.Until(painted)
	assert.Contains(t, browser.Eval[string](p, model+".canvas.getAttribute('aria-label')"), "Tin sleeve")
	fill(p, "width", "4 1/2")
	fill(p, "height", "3 in")
	fill(p, "thickness", "1-1/4")
	p.Until(stamped("Yes: your tin goes in easily."))
	assert.Contains(t, browser.Eval[string](p, answer), "Wide: 1/8 in of room.")
	assert.Contains(t, browser.Eval[string](p, answer), "The largest tin for it: 4 17/32 in wide, 1 9/32 in deep.")
	p.Keys(kb.Backspace + kb.Backspace + kb.Backspace + kb.Backspace + "/2") // 1/2 deep
	p.Until(stamped("It goes in, but it is slack."))
	focusTop(p)
	fill(p, "width", "5")
	p.Until(stamped("No: your tin is too big."))
	assert.Contains(t, browser.Eval[string](p, answer), "Wide: 3/8 in too big.")
	assert.NotContains(t, strings.Join(g.Calls(), " "), "OPTIONS", "no call needs a preflight")
	own := browser.Open(t, browser.Eval[string](p, "document.querySelector('#answer a').href"))
	own.Until("document.querySelector('.steps svg')")
	assert.Equal(t, "5", browser.Eval[string](own, "document.getElementById('width').value"), "the workbench takes over what was typed")
	focusTop(p)
	to(p, "#shelf a[href='#honey-box']")
	p.Keys(kb.Enter)
	p.Until("document.getElementById('title').textContent === 'Honey jar box'")
	assert.Empty(t, browser.Eval[string](p, answer), "another kit is another question")
	fill(p, "width", "2 5/8")
	fill(p, "thickness", "3 1/2")
	p.Until(stamped("Yes: your jar goes in easily."))
	to(p, "#model")
	p.Until(model + ".shadowRoot.activeElement")
	p.Keys(kb.Enter)
	p.Until("!" + model + ".canvas.getAttribute('aria-label').includes(', finished,')") // it is taken apart
	p.Sound()
}

// TestEveryVerdictInWords types sizes round the one that the sleeve was made
// for.
func TestEveryVerdictInWords(t *testing.T) {
	address, _ := stall(t)
	p := browser.Open(t, address)
	for _, c := range []struct{ width, height, thickness, mark, says, sure string }{
		{"4 1/2", "3", "1 1/4", "yes", "Yes: your tin goes in easily.", "Even if every cut"},
		{"4 9/16", "3", "1 1/4", "yes", "Yes: your tin goes in, snugly one way.", "about 99 times in 100"},
		{"4 19/32", "3", "1 1/4", "yes", "Yes: your tin goes in, snugly one way.", "about 95 times in 100"},
		{"4 39/64", "3", "1 1/4", "slack", "Perhaps: your tin may just go in.", "times in 100"},
		{"4 5/8", "3", "1 1/4", "no", "No: your tin is too big.", "about 15 times in 100"},
		{"6", "3", "1 1/4", "no", "No: your tin is too big.", "does not go in"},
		{"4", "3", "1 1/4", "slack", "It goes in, but it is slack.", "Even if every cut"},
		{"4 1/2", "4", "1 1/4", "slack", "It goes in, but the length does not match.", "The tin stands out of the sleeve by 1 in."},
		{"4 1/2", "2", "1 1/4", "slack", "It goes in, but the length does not match.", "The sleeve is 1 in longer than the tin."},
		{"11,4 cm", "76 mm", "3.2 cm", "yes", "Yes: your tin goes in easily.", "Even if every cut"},
	} {
		submit(t, p, map[string]string{"width": c.width, "height": c.height, "thickness": c.thickness})
		p.Until(stamped(c.says))
		assert.Equal(t, c.mark, browser.Eval[string](p, "document.getElementById('answer').dataset.mark"), "%v", c)
		assert.Contains(t, browser.Eval[string](p, answer), c.sure, "%v", c)
		assert.Equal(t, c.mark != "yes", browser.Eval[bool](p, "Boolean(document.querySelector('#answer a'))"), "%v", c)
	}
	p.Sound()
}

// TestUnitIsTheVisitors switches to millimetres.
func TestUnitIsTheVisitors(t *testing.T) {
	address, _ := stall(t)
	p := browser.Open(t, address+"#card-band")
	p.Until("document.getElementById('title').textContent === 'Tasting card band'")
	fill(p, "width", "89")
	fill(p, "thickness", "6.5")
	p.Until("document.getElementById('size-width-wrong').textContent.includes('greatest')") // 89 inches
	to(p, "[name=unit]")
	p.Keys(kb.ArrowRight)
	p.Until(stamped("Yes: your set of cards fits snugly."))
	assert.Contains(t, browser.Eval[string](p, answer), "Wide: 1 mm of room.")
	p.Sound()
}

// TestProblemIsAtItsSizeAndGoes types what cannot be read, and mends it.
func TestProblemIsAtItsSizeAndGoes(t *testing.T) {
	address, _ := stall(t)
	p := browser.Open(t, address+"#honey-box")
	p.Until("document.getElementById('title').textContent === 'Honey jar box'")
	fill(p, "width", "2 5/7")
	fill(p, "thickness", "3 1/2")
	wrong := "document.getElementById('size-width-wrong').textContent"
	p.Until(wrong)
	assert.Contains(t, browser.Eval[string](p, wrong), "2 5/7")
	assert.Equal(t, "true", browser.Eval[string](p, "document.getElementById('size-width').getAttribute('aria-invalid')"))
	assert.Empty(t, browser.Eval[string](p, "document.getElementById('size-thickness-wrong').textContent"))
	assert.Contains(t, browser.Eval[string](p, answer), "Look at: across.")
	p.Shoot("")
	t.Run("axe", func(t *testing.T) { p.Accessible(t) })
	focusTop(p)
	fill(p, "width", "2 5/8")
	p.Until(stamped("Yes"))
	assert.Empty(t, browser.Eval[string](p, wrong))
	focusTop(p)
	fill(p, "width", kb.Delete+kb.Enter)
	p.Until(wrong + " === 'Still to be measured.'")
	assert.Equal(t, "size-width", browser.Eval[string](p, "document.activeElement.id"))
	p.Sound()
}

// TestSlowAndLostService slows the service down, cuts it off and lets it come
// back.
func TestSlowAndLostService(t *testing.T) {
	address, g := stall(t)
	p := browser.Open(t, address+"#card-band")
	p.Until(painted)
	g.Set(2500*time.Millisecond, "/v1/check/", false)
	fill(p, "width", "3 1/2")
	fill(p, "thickness", "1/4")
	p.Until(answer + ".includes('the line is slow')")
	p.Until(stamped("Yes"))
	g.Set(0, "", true)
	fill(p, "thickness", "1/8")
	p.Until(trouble + ".includes('cannot be reached')")
	assert.Empty(t, browser.Eval[string](p, answer), "no old answer stays")
	p.Shoot("")
	t.Run("axe", func(t *testing.T) { p.Accessible(t) })
	g.Set(0, "", false)
	to(p, "#trouble button")
	p.Keys(kb.Enter)
	p.Until(stamped("It goes in, but it is slack."))
	assert.Empty(t, browser.Eval[string](p, trouble))
	p.Sound()
}

// TestOfflineVisitorKeepsWhatSheTyped cuts the browser off and connects it
// again: the page asks by itself.
func TestOfflineVisitorKeepsWhatSheTyped(t *testing.T) {
	address, _ := stall(t)
	p := browser.Open(t, address+"#card-band")
	p.Until(painted)
	p.Offline(true)
	fill(p, "width", "3 1/2")
	fill(p, "thickness", "1/4")
	p.Until(trouble + ".includes('You are offline')")
	p.Offline(false)
	p.Until(stamped("Yes: your set of cards fits snugly."))
	assert.Empty(t, browser.Eval[string](p, trouble))
}

// TestPageOfAnotherOriginIsNotAnswered opens the page from an origin that the
// service does not list: even the script of the model is refused, and the page
// says what is left.
func TestPageOfAnotherOriginIsNotAnswered(t *testing.T) {
	address, _ := stall(t)
	p := browser.Open(t, strings.Replace(address, "127.0.0.1", "localhost", 1)+"#card-band")
	fill(p, "width", "3 1/2")
	fill(p, "thickness", "1/4")
	assert.Eventually(t, func() bool { return browser.Eval[bool](p, trouble+".includes('cannot be reached')") }, 20*time.Second, 50*time.Millisecond)
	assert.Contains(t, browser.Eval[string](p, model+".innerText"), "has not answered yet")
}

// TestPageWithoutScriptsIsReadable turns scripts off.
func TestPageWithoutScriptsIsReadable(t *testing.T) {
	address, _ := stall(t)
	p := browser.Open(t, address, browser.WithoutScripts(), chromedp.EmulateViewport(320, 700))
	text := browser.Eval[string](p, "document.body.innerText")
	assert.Contains(t, text, "for a tin: 4 1/2 in wide, 3 in long, 1 1/4 in deep")
	assert.NotContains(t, text, "measured in", "no form that nobody answers")
	assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), int64(320))
	p.Shoot("")
}

// TestEveryLook looks at every answer wide and narrow, light and dark, and on
// paper.
func TestEveryLook(t *testing.T) {
	address, _ := stall(t)
	for _, look := range []struct {
		name, kit, medium, scheme string
		width, height             int64
		sizes                     map[string]string
	}{
		{"wide-light", "tin-sleeve", "screen", "light", 1280, 900, map[string]string{"width": "4 1/2", "height": "3", "thickness": "1 1/4"}},
		{"wide-dark", "honey-box", "screen", "dark", 1280, 900, map[string]string{"width": "2 3/8", "thickness": "3 1/2"}},
		{"narrow-light", "honey-box", "screen", "light", 320, 700, map[string]string{"width": "3 1/4", "thickness": "3 1/2"}},
		{"narrow-dark", "tin-sleeve", "screen", "dark", 320, 700, map[string]string{"width": "4 1/2", "height": "4", "thickness": "1 1/4"}},
		{"print", "card-band", "print", "light", 760, 1000, map[string]string{"width": "3 1/2", "thickness": "1/4"}},
	} {
		t.Run(look.name, func(t *testing.T) {
			p := browser.Open(t, address+"#"+look.kit, chromedp.EmulateViewport(look.width, look.height), browser.Prefer(look.medium, "prefers-color-scheme", look.scheme))
			p.Until(painted)
			submit(t, p, look.sizes)
			p.Until(stamp)
			assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), look.width, "nothing may stick out at the side")
			p.Shoot("")
			p.Sound()
			if look.medium == "screen" {
				t.Run("axe", func(t *testing.T) { p.Accessible(t) })
			}
		})
	}
}

// submit puts sizes into their fields and sends the form.
func submit(t *testing.T, p *browser.Tab, sizes map[string]string) {
	t.Helper()
	list, err := json.Marshal(sizes)
	require.NoError(t, err)
	browser.Eval[any](p, "for (const [name, text] of Object.entries("+string(list)+")) document.getElementById('size-' + name).value = text; say('', []); document.getElementById('form').requestSubmit(); 0")
}
