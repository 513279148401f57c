package web_test

import (
	"encoding/json"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/web"
)

// described says that the page shows the sizes of the design as it stands.
const described = `!document.querySelector("#flat.rough") && document.querySelector("#said table")`

// maker works on the page as somebody would, and counts what she does.
type maker struct {
	*browser.Tab
	actions int
}

// press presses a plus of the flat picture, or a button of a panel's sentence.
func (m *maker) press(what string) {
	m.actions++
	browser.Eval[any](m.Tab, `[...document.querySelectorAll("#flat [role=button], button")].find((e) => (e.getAttribute("aria-label") ?? e.textContent) === `+browser.Quote(what)+`)
		.dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
}

// of presses a button of the sentence of a panel.
func (m *maker) of(panel, button string) {
	m.actions++
	browser.Eval[any](m.Tab, `[...document.querySelector('#panels li[data-panel=`+browser.Quote(panel)+`]').querySelectorAll("button")].find((e) => e.textContent === `+browser.Quote(button)+`).click()`)
}

// say chooses words of a sentence.
func (m *maker) say(label, words string) {
	m.actions++
	ok := browser.Eval[bool](m.Tab, `(() => { const s = document.querySelector('select[aria-label=`+browser.Quote(label)+`]'), o = [...s.options].find((o) => o.textContent === `+browser.Quote(words)+`);
		if (!o) return false; s.value = o.value; s.dispatchEvent(new Event("change", { bubbles: true })); return true; })()`)
	require.True(m.T, ok, "%s: %s", label, words)
}

// From "make it mine" on a sleeve to a sleeve with a pocket and a closing flap, ready to
// be printed, in at most fifteen actions.
func TestFromASleeveToOneWithAPocketAndAFlap(t *testing.T) {
	server, _ := service(t, nil)
	m := &maker{Tab: browser.Open(t, server+"/own?kind=sleeve&unit=mm&width=90&height=127&thickness=12&caliper=0.3&scores=two")}
	m.Until(described)
	assert.Equal(t, "Sleeve with a glued lap", browser.Eval[string](m.Tab, `document.getElementById("title").value`))

	m.press("Add a panel at the bottom edge of front")
	m.say("how below front is folded", "back, flat behind")
	m.press("Add a panel at the left edge of below front")
	m.say("how left of below front is folded", "back, flat behind")
	m.say("what left of below front lies on", "is glued onto the outside of front")
	m.of("left of below front", "The same on the other side")
	m.press("Add a panel at the top edge of back")
	m.say("how far above back reaches", "as far as it must")
	m.press("Add a panel at the top edge of above back")
	m.say("what above above back lies on", "lies on the outside of front")
	m.Until(described + ` && document.querySelectorAll("#flat .panel").length === 10`)
	m.actions++ // the link to the template is pressed
	href := browser.Eval[string](m.Tab, `[...document.querySelectorAll("#ways a")].find((a) => a.textContent === "Print the template").href`)
	assert.LessOrEqual(t, m.actions, 15)
	answer, body := fetch(t, href)
	assert.Equal(t, "application/pdf", answer.Header.Get("Content-Type"))
	assert.True(t, strings.HasPrefix(body, "%PDF"))
	m.Until(`document.getElementById("folded").hasAttribute("data-painted")`)
	m.Shoot("")
	m.Sound()
	m.Accessible(t)

	address := browser.Eval[string](m.Tab, "location.href")
	again := browser.Open(t, address)
	again.Until(described + ` && document.querySelectorAll("#flat .panel").length === 10`)
}

// What is missing is asked in words, with a button that leads to the panel; undoing goes
// back; the keyboard adds panels; what is kept is there again.
func TestOwnPageAsksGoesBackAndKeeps(t *testing.T) {
	server, _ := service(t, nil)
	m := &maker{Tab: browser.Open(t, server+"/own?kind=sleeve&unit=mm&width=90&height=127&thickness=12&caliper=0.3&scores=two")}
	m.Until(described)
	m.TabTo(`document.activeElement.getAttribute("aria-label") === "Add a panel at the top edge of back"`)
	m.Keys(kb.Enter)
	m.Until(described + ` && document.querySelectorAll("#flat .panel").length === 6`)
	m.say("how far above back reaches", "as far as it must")
	m.Until(`document.getElementById("said").textContent.includes("nothing says how far above back reaches")`)
	assert.True(t, browser.Eval[bool](m.Tab, `document.querySelector("#flat.rough") !== null`), "the picture is a guess then")
	m.press("Show above back")
	m.Until(`document.activeElement.closest("li")?.dataset.panel === "above back"`)
	m.press("Undo")
	m.press("Undo")
	m.Until(described + ` && document.querySelectorAll("#flat .panel").length === 5`)
	m.press("Keep in my list")
	m.Until(`[...document.querySelectorAll("#begin option")].some((o) => o.textContent === "mine: Sleeve with a glued lap")`)
	m.Sound()
}

// A kind that is no design is said to be none, beside the design that the page begins with.
func TestOwnPageOfAKindThatIsNoDesign(t *testing.T) {
	server, _ := service(t, nil)
	m := &maker{Tab: browser.Open(t, server+"/own?kind=prism-box&unit=mm&width=90&height=127&thickness=12&caliper=0.3")}
	m.Until(described)
	assert.Contains(t, browser.Eval[string](m.Tab, `document.querySelector("#said .wrong").textContent`), "not given as a design")
	m.press("Add a panel at the top edge of left floor")
	m.Until(described + ` && !document.querySelector("#said .wrong")`)
}

// The page holds on a telephone, in the dark and at a large screen, in both languages.
func TestOwnPageInEveryLook(t *testing.T) {
	server, _ := service(t, nil)
	for path, looks := range map[string][]look{"/own": {wideLight, wideDark, narrowLight, narrowDark}, "/de/own": {wideDark, narrowLight}} {
		for _, look := range looks {
			t.Run(strings.Trim(path, "/")+" "+look.name, func(t *testing.T) {
				p := browser.Open(t, server+path, chromedp.EmulateViewport(look.width, look.height), browser.Prefer(look.medium, "prefers-color-scheme", look.scheme))
				p.Until(described + ` && document.getElementById("folded").hasAttribute("data-painted")`)
				assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), look.width, "nothing may stick out at the side")
				p.Shoot("")
				p.Sound()
				p.Accessible(t)
			})
		}
	}
}

// In German everything that the page itself says is German; the design goes along to the
// other language.
func TestOwnPageSpeaksGerman(t *testing.T) {
	server, _ := service(t, nil)
	m := &maker{Tab: browser.Open(t, server+"/de/own?kind=sleeve&unit=mm&width=90&height=127&thickness=12&caliper=0.3&scores=two")}
	m.Until(described)
	m.press("Fläche oben an Rückseite anhängen")
	m.say("wie weit über Rückseite reicht", "so weit sie muss")
	m.Until(`document.getElementById("said").textContent.includes("nichts sagt, wie weit über Rückseite reicht")`)
	text := strings.ReplaceAll(browser.Eval[string](m.Tab, `[...document.querySelectorAll("header, h2, #panels, #joins, #said, button")].map((e) => e.innerText).join(" ")`), "\n", " ")
	for _, word := range []string{"the", "of", "is", "and", "with", "not", "hangs", "folded", "reaches", "glued", "front", "back", "side", "lap", "height", "sleeve", "Sleeve"} {
		assert.NotContains(t, " "+text+" ", " "+word+" ")
	}
	m.press("Zurück")
	m.press("Zurück")
	m.Until(described)
	browser.Eval[any](m.Tab, `(() => { const w = document.querySelector("[name=width]"); w.value = "abc"; w.dispatchEvent(new Event("input", { bubbles: true })); })(); 0`)
	m.Until(`document.querySelector("#said li")`)
	assert.NotRegexp(t, `\b(the|cannot|read|such|of|is|a)\b`, browser.Eval[string](m.Tab, `document.getElementById("said").textContent`), "what has no words of its own is told by its kind")
	browser.Eval[any](m.Tab, `(() => { const w = document.querySelector("[name=width]"); w.value = "90"; w.dispatchEvent(new Event("input", { bubbles: true })); })(); 0`)
	m.Until(described)
	browser.Eval[any](m.Tab, `document.getElementById("language").click()`)
	m.Until(`document.documentElement.lang === "en" && ` + described)
	assert.Equal(t, "Sleeve with a glued lap", browser.Eval[string](m.Tab, `document.getElementById("title").value`))
}

// Everything that the designs on the page are made of has a German name.
func TestDesignsHaveGermanNames(t *testing.T) {
	_, rest, ok := strings.Cut(string(web.OwnPage("de")), `id="words">`)
	require.True(t, ok)
	data, _, _ := strings.Cut(rest, "</script>")
	var words struct{ Names map[string]string }
	require.NoError(t, json.Unmarshal([]byte(data), &words))
	files, err := filepath.Glob("../enclosure/own/designs/*.json")
	require.NoError(t, err)
	kinds, err := filepath.Glob("../enclosure/own/designs/kinds/*.json")
	require.NoError(t, err)
	require.Greater(t, len(files), 5)
	for _, file := range append(files, kinds...) {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		var d struct {
			Design string
			Pieces []struct {
				Piece  string
				Panels []struct{ Panel string }
			}
			Sizes []struct{ Name, Help string }
		}
		require.NoError(t, json.Unmarshal(text, &d), file)
		names := []string{d.Design}
		for _, p := range d.Pieces {
			names = append(names, p.Piece)
			for _, q := range p.Panels {
				names = append(names, q.Panel)
			}
		}
		for _, name := range names {
			assert.Contains(t, words.Names, name, file)
		}
		for _, s := range d.Sizes {
			assert.NotEmpty(t, words.Names[s.Name], "%s of %s", s.Name, file)
			assert.True(t, words.Names[s.Help] != "" || strings.Contains(file, "kinds"), "%s of %s", s.Name, file)
		}
	}
}

// A design that is too long for an address is solved, shown folded, printed and shared
// all the same.
func TestLongDesignsArePrintedAndShared(t *testing.T) {
	server, _ := service(t, nil)
	sizes := make([]string, 28)
	for i := range sizes {
		sizes[i] = fmt.Sprintf(`{"name":"size_%d","in":"1 in","mm":"25 mm","help":"%s"}`, i, strings.Repeat("A length that nothing asks for. ", 6))
	}
	design := strings.Replace(string(own.Simplest().Text), `"sizes":[`, `"sizes":[`+strings.Join(sizes, ",")+",", 1)
	p := browser.Open(t, server+"/own#"+url.Values{"design": {design}, "width": {"90"}}.Encode())
	p.Until(described + ` && document.getElementById("folded").hasAttribute("data-painted")`)
	assert.Greater(t, browser.Eval[int64](p, "location.href.length"), int64(8000))
	browser.Eval[any](p, `window.saved = ""; HTMLAnchorElement.prototype.click = function () { window.saved = this.download + " " + this.href; }`)
	browser.Eval[any](p, `[...document.querySelectorAll("#ways button")].find((b) => b.textContent === "Print the template").click()`)
	p.Until(`window.saved.startsWith("own.pdf blob:")`)
	p.Sound()
}

// The workbench leads from a kind that is given as a design to its panels, with the
// thing and the paper as they are.
func TestMakeItMine(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/")
	p.Until("document.querySelector('[data-thing]')")
	act(p, tap("[data-thing=tasting-cards]"))
	p.Until(ready(tap("[data-kind=slotted-band]")))
	act(p, tap("[data-kind=slotted-band]"))
	p.Until(made + " && document.getElementById('print-mine')")
	act(p, tap("#print-mine"))
	p.Until(described)
	assert.Equal(t, "Slotted belly band", browser.Eval[string](p, `document.getElementById("title").value`))
	assert.NotEqual(t, "127", browser.Eval[string](p, `document.querySelector("#thing [name=height]").value`), "that of the cards")
	p.Sound()
}
