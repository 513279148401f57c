package web_test

import (
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
	"creasefit/internal/peer"
	"creasefit/internal/repertoire"
)

// act does something on a page as a hand would, by one tap or one choice.
func act(p *browser.Tab, script string) {
	p.Helper()
	browser.Eval[any](p, script+"; 0")
}

// tap is a tap on what a selector finds.
func tap(selector string) string {
	return "document.querySelector(" + browser.Quote(selector) + ").click()"
}

// write is what typing into a field does.
func write(id, text string) string {
	return "(() => { const f = document.getElementById(" + browser.Quote(id) + "); f.value = " + browser.Quote(text) + "; f.dispatchEvent(new Event('input', { bubbles: true })); })()"
}

// From an empty page to a template to cut out in at most eight actions, on a phone,
// a tablet and a desk, in both languages.
func TestFromAThingToATemplate(t *testing.T) {
	server, _ := service(t, nil)
	for name, way := range map[string]struct {
		path    string
		width   int64
		actions []string
	}{
		"a box for a jar":           {"/", 360, []string{tap("[data-thing=honey-jar]"), tap("[data-kind=lidded-box]")}},
		"a band with a heart":       {"/", 768, []string{tap("[data-thing=tasting-cards]"), tap("[data-kind=slotted-band]"), tap("#finer summary"), write("own-ornament_width", "2"), write("own-ornament_height", "1 3/4")}},
		"an envelope":               {"/", 1280, []string{write("width", "4"), write("height", "6"), write("thickness", "1/16"), tap("[data-kind=envelope]")}},
		"a sleeve round a jar":      {"/", 360, []string{write("width", "3"), write("height", "4 1/2"), tap("[name=shape]"), tap("[data-kind=sleeve]")}},
		"eine Schachtel":            {"/de/", 360, []string{tap("[data-thing=honey-jar]"), tap("[data-kind=lidded-box]")}},
		"ein Umschlag nach eigenem": {"/de/", 768, []string{write("width", "10,5 cm"), write("height", "148 mm"), write("thickness", "1"), tap("[data-kind=envelope]")}},
	} {
		t.Run(name, func(t *testing.T) {
			require.LessOrEqual(t, len(way.actions)+1, 8)
			p := browser.Open(t, server+way.path, chromedp.EmulateViewport(way.width, 800))
			p.Until("document.querySelector('[data-thing]')")
			for i, action := range way.actions {
				p.Until(ready(action))
				act(p, action)
				if i >= len(way.actions)-1 || strings.Contains(action, "data-kind") {
					p.Until(made)
				}
			}
			for _, id := range []string{"print-template", "print-guide-pdf", "print-measured"} {
				answer, body := fetch(t, server+browser.Eval[string](p, "document.getElementById("+browser.Quote(id)+").getAttribute('href')"))
				require.Equal(t, http.StatusOK, answer.StatusCode, id)
				assert.True(t, strings.HasPrefix(body, "%PDF-"), id)
			}
			assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), way.width)
			p.Shoot("")
			p.Sound()
		})
	}
}

// ready is true when what an action is about is there.
func ready(action string) string {
	if _, rest, ok := strings.Cut(action, "[data-kind="); ok {
		name, _, _ := strings.Cut(rest, "]")
		return settled + " && document.querySelector('[data-kind=" + name + "]')"
	}
	if _, rest, ok := strings.Cut(action, `getElementById("own-`); ok {
		name, _, _ := strings.Cut(rest, `"`)
		return "document.getElementById('own-" + name + "')"
	}
	return "true"
}

// The first screen is a dozen requests at the most, none of them refused, and what
// is typed costs one.
func TestRequestsAreFew(t *testing.T) {
	server, gate := service(t, nil)
	p := browser.Open(t, server+"/?contents=honey-jar&unit=in")
	p.Until(settled)
	assert.LessOrEqual(t, len(p.Requests()), 12)
	t.Logf("%d requests", len(p.Requests()))
	gate.Calls() // those until now
	act(p, write("thickness", "2 3/4"))
	p.Until("document.querySelector('#suits svg') && location.search.includes('2+3')")
	p.Until(settled)
	assert.Len(t, gate.Calls(), 1, "one request an entry")
	act(p, tap("[data-kind=lidded-box]"))
	p.Until(made)
	assert.Len(t, gate.Calls(), 1)
	act(p, write("thickness", "2 7/8"))
	p.Until("location.search.includes('2+7') && " + made)
	assert.Len(t, gate.Calls(), 1)
	p.Sound() // a refused call is an error in the console
}

// What is typed is in the address at once, Back works, and a return to the start
// goes on where it was left.
func TestNothingTypedIsLost(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/")
	act(p, write("width", "3 1/"))
	assert.Contains(t, browser.Eval[string](p, "location.search"), "width=3+1%2F", "half of a size is kept, too")
	act(p, write("width", "3 1/2")+";"+write("height", "5")+";"+write("thickness", "0.09"))
	p.Until(settled)
	act(p, tap("[data-kind=sleeve]"))
	p.Until(made)
	act(p, tap("[data-kind=band]"))
	p.Until(made + " && document.querySelector('[data-kind=band][aria-current]')")
	act(p, "history.back()")
	p.Until(made + " && document.querySelector('[data-kind=sleeve][aria-current]')")
	act(p, "history.back()")
	p.Until(settled + " && document.getElementById('sizes').hidden")
	assert.Equal(t, "3 1/2", browser.Eval[string](p, "document.getElementById('width').value"))
	p.Do(chromedp.Navigate(server + "/"))
	p.Until(settled)
	assert.Equal(t, "3 1/2", browser.Eval[string](p, "document.getElementById('width').value"), "the start goes on")
	act(p, write("width", ""))
	p.Until("document.getElementById('kinds').hidden")
	assert.True(t, browser.Eval[bool](p, "document.getElementById('make').hidden && document.getElementById('sizes').hidden"), "no old answer stays to be cut")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('status').textContent"), "Still to fill in: width.")
	p.Sound()
}

// A kind that does not work says why, and what does is beside it with all that was
// typed.
func TestDeadEndLeadsOn(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?unit=in&width=4&height=6&thickness=1/4&kind=envelope&stock=index-110&sheet=letter")
	p.Until(settled + " && document.querySelector('.wrong')")
	assert.Contains(t, browser.Eval[string](p, "document.querySelector('.wrong').textContent"), "One score at each side")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('against').textContent"), "Envelope")
	act(p, tap("#suits [data-kind]"))
	p.Until(made)
	for _, value := range []string{"width=4", "height=6", "thickness=1%2F4", "sheet=letter"} {
		assert.Contains(t, browser.Eval[string](p, "location.search"), value)
	}
	p = browser.Open(t, server+"/?unit=in&width=40&height=30&thickness=1/2&kind=sleeve&stock=index-110&sheet=letter")
	p.Until(made)
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('answer').textContent"), "It does not come out of this sheet")
}

// All that stands on the German page is in German: none of the texts that the
// catalogues have in English only.
func TestNoEnglishOnTheGermanPage(t *testing.T) {
	english, german := catalogue(t, "en"), catalogue(t, "de")
	require.ElementsMatch(t, keys(english.Page), keys(german.Page), "every text is in both catalogues")
	server, _ := service(t, nil)
	for _, path := range []string{"/de/", "/de/?contents=honey-jar&kind=lidded-box&sheet=a3&post=de", "/de/?width=102&height=152&thickness=6&kind=envelope&sheet=a4", "/de/?contents=tasting-cards&kind=slotted-band&sheet=letter&post=us", "/de/?width=abc"} {
		p := browser.Open(t, server+path)
		p.Until("document.querySelector('[data-thing]') && !document.body.hasAttribute('aria-busy')")
		act(p, "document.querySelectorAll('details').forEach((d) => (d.open = true))")
		p.Until("true")
		for _, text := range browser.Eval[[]string](p, everyText) {
			for key, said := range english.Page {
				if said != german.Page[key] && len(said) > 3 && !strings.Contains(said, "{") {
					assert.NotEqual(t, said, text, "%s on %s", key, path)
				}
			}
			for said := range german.Titles {
				assert.NotContains(t, text, said, path)
			}
			for _, k := range repertoire.Kinds() {
				assert.NotEqual(t, k.Title, text, path)
				assert.NotEqual(t, k.Help, text, path)
			}
			for _, word := range strings.FieldsFunc(text, func(c rune) bool { return !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c > 127) }) {
				assert.NotContains(t, plainEnglish, strings.ToLower(word), "%q on %s", text, path)
			}
		}
		p.Sound()
	}
}

// plainEnglish are words without which hardly an English sentence is made, and which
// German does not have.
var plainEnglish = []string{"the", "of", "is", "and", "with", "from", "not", "by", "goes", "inches", "width", "thickness", "sheet", "paper", "fold", "score", "slit", "glue", "left", "right", "bottom", "lid", "tray", "card"}

// everyText gathers each text of the page, with those that are read aloud and those
// that stand in empty fields.
const everyText = `(() => {
	const texts = [];
	const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	while (walk.nextNode()) {
		const parent = walk.currentNode.parentElement;
		if (!parent.closest("script, style, [lang=en], code") && walk.currentNode.textContent.trim()) texts.push(walk.currentNode.textContent.trim());
	}
	for (const e of document.querySelectorAll("[aria-label], [placeholder], [title], [alt]")) {
		if (!e.closest("[lang=en]")) for (const name of ["aria-label", "placeholder", "title", "alt"]) if (e.getAttribute(name)) texts.push(e.getAttribute(name));
	}
	return texts;
})()`

// words is a catalogue of the pages.
type words struct{ Page, Titles map[string]string }

func catalogue(t *testing.T, language string) (w words) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("words", language+".json"))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &w))
	return w
}

func keys(m map[string]string) []string {
	var list []string
	for key := range m {
		list = append(list, key)
	}
	return list
}

// Inputs are read as the language writes them.
func TestGermanInputs(t *testing.T) {
	server, _ := service(t, nil)
	for typed, millimetres := range map[string]string{"3 1/2 Zoll": "88.9", "3 1 / 2 Zoll": "88.9", "8,89 cm": "88.9", "88,9": "88.9"} {
		p := browser.Open(t, server+"/de/")
		act(p, write("width", typed)+";"+write("height", "127")+";"+write("thickness", "3"))
		p.Until(settled)
		act(p, tap("[data-kind=sleeve]"))
		p.Until(made)
		assert.Equal(t, millimetres, strings.Replace(given(t, server, p), ",", ".", 1), typed)
	}
}

// given is the width in millimetres as the service understood it.
func given(t *testing.T, server string, p *browser.Tab) string {
	link, err := url.Parse(browser.Eval[string](p, "document.getElementById('print-measured').getAttribute('href')"))
	require.NoError(t, err)
	names := link.Query()
	for _, name := range []string{"language", "paper", "format"} {
		names.Del(name)
	}
	names.Set("pick", "/given/width/mm")
	_, body := fetch(t, server+strings.Replace(link.Path, "/drawing/", "/solve/", 1)+"?"+names.Encode())
	return body
}

// Pieces are kept by name, leave in a file and come back from it.
func TestPiecesAreKept(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?contents=tea-tin&kind=sleeve&unit=mm&stock=index-110&sheet=a4")
	p.Until(made)
	act(p, "document.getElementById('keep-name').value = 'Tin sleeve'; document.querySelector('#keep button').click()")
	assert.Equal(t, "Tin sleeve", browser.Eval[string](p, "document.querySelector('#kept a').textContent"))
	p.Do(chromedp.Navigate(server + "/?width=5&unit=in&stock=index-110"))
	p.Until(settled)
	act(p, tap("#kept a"))
	p.Until(made)
	assert.Contains(t, browser.Eval[string](p, "location.search"), "contents=tea-tin")
	saved := browser.Eval[string](p, "localStorage.getItem('creasefit-pieces')")
	act(p, tap("#kept button"))
	assert.Empty(t, browser.Eval[[]string](p, "[...document.querySelectorAll('#kept a')].map((a) => a.textContent)"))
	bring := func(text string) string {
		return "(() => { const d = new DataTransfer(); d.items.add(new File([" + browser.Quote(text) + "], 'p.json')); const f = document.getElementById('file'); f.files = d.files; f.dispatchEvent(new Event('change')); })()"
	}
	act(p, bring(`{"pieces":`+saved+`}`))
	p.Until("document.querySelector('#kept a')?.textContent === 'Tin sleeve'")
	act(p, bring(`{"pieces":[{"name":"x","search":"javascript:alert(1)"}]}`))
	p.Until("document.getElementById('kept-said').textContent")
	assert.Len(t, browser.Eval[[]string](p, "[...document.querySelectorAll('#kept a')].map((a) => a.textContent)"), 1)
	p.Sound()
}

// What goes round the piece, how many sheets an order takes, and how it folds.
func TestWhatFollowsFromAPiece(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?contents=honey-jar&kind=tray&unit=in&stock=index-110&sheet=craft-12&post=us")
	p.Until(made)
	act(p, "document.getElementById('count').value = '17'; document.querySelector('#order button').click()")
	p.Until("document.querySelector('#plan figure svg') && !document.getElementById('plan-stop')")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('plan').textContent"), "sheets,")
	act(p, "document.getElementById('outer').value = 'sleeve'; document.querySelector('#nest button').click()")
	p.Until("document.querySelector('#nested li')")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('nested').textContent"), "Closed it measures")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('mailed').textContent"), "Confirm with your post office")
	act(p, tap("#mailed summary"))
	p.Until("document.querySelectorAll('#mailed li').length > 2")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('mailed').textContent"), "(at most ", "each with the limit that it is nearest to")
	act(p, tap("#folded summary"))
	p.Until("document.querySelector('creasefit-fold')?.hasAttribute('data-painted')")
	act(p, "document.querySelector('.steps .picture button').click()")
	assert.True(t, browser.Eval[bool](p, "document.getElementById('large').open && Boolean(document.querySelector('#large svg'))"))
	act(p, tap("#shut"))
	p.Sound()
}

// A better plan is shown as soon as it is found; who stops keeps the best so far,
// with its picture, and nothing more is asked.
func TestOrderIsStoppedWithTheBestSoFar(t *testing.T) {
	server, gate := service(t, nil)
	stopped := make(chan struct{})
	gate.Send(func(w http.ResponseWriter, r *http.Request, on http.Handler) {
		assert.False(t, r.URL.Path == "/v1/yield" && r.Method == http.MethodGet, "the order is planned once")
		if r.URL.Path != "/v1/yield" || r.Method != http.MethodPost {
			on.ServeHTTP(w, r)
			return
		}
		assert.Equal(t, "application/x-ndjson", r.Header.Get("Accept"))
		w.Header().Set("Content-Type", "application/x-ndjson")
		cuts := `"work":{"settings":4},"plans":[{"times":8,"steps":["Set 4 in.","Set 2 in."]}],"usable_offcuts":[{"count":8,"width":{"reading":"3 in"},"height":{"reading":"2 1/2 in"}}]`
		picture := func(sheets string) string {
			return browser.Quote(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/><text>` + sheets + ` sheets</text></svg>`)
		}
		for _, sheets := range []string{"9", "8"} {
			_, _ = io.WriteString(w, `{"plan":{"sheets":`+sheets+`,"picture":`+picture(sheets)+`,"used":0.75,"proven":false,"lower_bound":7,`+cuts+`},"bound":7,"gap":1,"seconds":0.1,"done":false}`+"\n")
			_ = http.NewResponseController(w).Flush()
		}
		<-r.Context().Done() // a search that goes on until nobody wants it
		close(stopped)
	})
	p := browser.Open(t, server+"/?contents=honey-jar&kind=tray&unit=in&stock=index-110&sheet=craft-12")
	p.Until(made)
	act(p, "document.getElementById('count').value = '17'; document.querySelector('#order button').click()")
	p.Until("document.querySelector('#plan strong')?.textContent.startsWith('8 sheets')")
	assert.Contains(t, browser.Eval[string](p, "document.getElementById('plan').textContent"), "At least 7 are needed.")
	act(p, "document.getElementById('plan-stop').focus(); document.getElementById('plan-stop').click()")
	<-stopped
	p.Until("document.querySelector('#plan figure svg')")
	assert.Equal(t, "8 sheets", browser.Eval[string](p, "document.querySelector('#plan svg text').textContent"), "the picture is that of the plan that is told")
	said := browser.Eval[string](p, "document.getElementById('plan').textContent")
	for _, words := range []string{"8 sheets", "Worth keeping: 8 × 3\u00a0in × 2 1/2\u00a0in.", "Settings of the trimmer: 4", "Sheets to cut like this: 8"} {
		assert.Contains(t, said, words)
	}
	assert.Equal(t, "Set 4 in.|Set 2 in.", browser.Eval[string](p, "[...document.querySelectorAll('#plan li')].map((step) => step.textContent).join('|')"),
		"the steps are those of the plan that is told")
	assert.False(t, browser.Eval[bool](p, "Boolean(document.getElementById('plan-stop'))"))
	assert.Equal(t, "plan", browser.Eval[string](p, "document.activeElement.closest('form').id === 'order' ? 'plan' : ''"), "the focus is not lost")
	p.Sound()
}

// Several of a named thing stay what they are called, in the address and in the answer.
func TestSeveralThings(t *testing.T) {
	server, _ := service(t, nil)
	for path, text := range map[string]string{"/": "3 of them + 1/8 in", "/de/": "3 davon und 1/8 Zoll"} {
		p := browser.Open(t, server+path+"?contents=tea-sachets&unit=in&stock=index-110&sheet=letter")
		p.Until(settled)
		act(p, write("width", text))
		p.Until("location.search.includes('width=3+') && " + settled)
		act(p, tap("[data-kind=sleeve]"))
		p.Until(made)
		assert.Equal(t, "212.725", given(t, server, p), "3 x 2 3/4 in and 1/8 in")
		assert.Contains(t, browser.Eval[string](p, "location.search"), "contents=tea-sachets")
		p.Sound()
	}
}

// What the trial piece came to is typed in: it is judged, the folded piece teaches
// what was off, and that goes into the address; so does what a test sheet says.
func TestTrialPieceTeaches(t *testing.T) {
	server, _ := service(t, nil)
	for path, said := range map[string]struct{ works, fails, mend, learn string }{
		"/":    {"It closes, and the contents go in.", "It does not work as it was cut.", "Change ", "The stop for the"},
		"/de/": {"Es schließt, und der Inhalt passt hinein.", "So, wie es geschnitten ist, geht es nicht.", "statt ", "Der Anschlag für"},
	} {
		p := browser.Open(t, server+path+"?unit=in&contents=tasting-cards&kind=slotted-band&stock=index-110&fit=snug&ruler=1/8+in&sheet=letter")
		p.Until(made)
		text := func() string {
			return browser.Eval[string](p, "document.getElementById('trial-said').textContent")
		}
		check := func(actions string) {
			act(p, "document.getElementById('trial-said').replaceChildren();"+actions+";document.querySelector('#trial-form button').click()")
			p.Until("document.getElementById('trial-said').textContent")
		}
		act(p, tap("#trial summary"))
		check("0")
		assert.Contains(t, text(), said.works, path)
		marks := browser.Eval[string](p, "document.getElementById('trial-marks').value")
		off := strings.Replace(marks, ";", " ;", 1)
		off = "1 " + off[strings.Index(off, " ;")+1:]
		check(write("trial-marks", off))
		assert.Contains(t, text(), said.fails, path)
		assert.Contains(t, text(), said.mend, path)
		check(write("trial-marks", marks) + ";" + write("trial-outside_width", "4"))
		p.Shoot("")
		assert.True(t, browser.Eval[bool](p, "Boolean(document.querySelector('#trial-said button'))"), text())
		assert.Regexp(t, `0[.,]029.(in|Zoll)`, text(), "off by less than a mark of the ruler")
		if path == "/de/" {
			assert.NotContains(t, text(), "tolerance", "every setting has its German name")
		}
		check(write("trial-marks", "3 5/7"))
		assert.Equal(t, "true", browser.Eval[string](p, "document.getElementById('trial-marks').getAttribute('aria-invalid')"))
		act(p, tap("#hand summary")+";"+write("hand-marked", "8")+";"+write("hand-wet_across", "8 1/8")+";"+write("hand-block_width", "2")+";"+write("hand-block_thickness", "1")+";"+write("hand-turns", "10")+";"+
			write("hand-wound", "63 1/4")+";"+tap("#hand-form button"))
		p.Until("document.querySelector('#hand-said button')")
		assert.Regexp(t, `1[.,]56`, browser.Eval[string](p, "document.getElementById('hand-said').textContent"))
		for _, name := range []string{"marked", "wet_across", "block_width", "block_thickness", "turns", "wound"} {
			act(p, write("hand-"+name, ""))
		}
		act(p, "document.getElementById('hand-said').replaceChildren();"+write("hand-stack_count", "20")+";"+write("hand-stack", "1/4")+";"+tap("#hand-form button"))
		p.Until("document.querySelector('#hand-said button')")
		act(p, tap("#hand-said button"))
		p.Until("/caliper=0(\\.|%2C)0/.test(location.search) && " + made)
		assert.NotContains(t, browser.Eval[string](p, "location.search"), "stock=")
	}
}

// By keys alone: the thing, the kind, the template.
func TestPathByKeyboard(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/")
	p.TabTo("document.activeElement?.dataset.thing === 'honey-jar'")
	p.Keys(kb.Enter)
	p.Until(settled)
	p.TabTo("document.activeElement?.dataset.kind === 'tray'")
	p.Keys(kb.Enter)
	p.Until(made)
	p.TabTo("document.activeElement?.id === 'print-template'")
	p.Sound()
}

// The lines for other pages and programs work as they are.
func TestSnippetsRun(t *testing.T) {
	curl := peer.Path(t, "curl", "apt-get install -y curl")
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?kind=slotted-band&unit=in&width=3+1/2&thickness=0.09&caliper=0.012&fit=snug&ruler=1/8+in", browser.Clipboard(true)...)
	p.Until(made)
	act(p, "document.getElementById('embed').open = true")
	text := func(id string) string {
		act(p, "document.getElementById('copied').textContent = ''; document.querySelector('[data-copy="+id+"]').click()")
		p.Until("document.getElementById('copied').textContent")
		copied := browser.Eval[string](p, "navigator.clipboard.readText()")
		assert.Equal(t, browser.Eval[string](p, "document.getElementById("+browser.Quote(id)+").textContent"), copied)
		return copied
	}
	printed, err := exec.Command("sh", "-c", strings.Replace(text("prompt"), "curl ", curl+" --silent --fail ", 1)).Output()
	require.NoError(t, err)
	assert.Contains(t, string(printed), "8 1/4 in")
	_, address, _ := strings.Cut(text("cell"), `"`)
	_, body := fetch(t, strings.TrimSuffix(address, `")`))
	assert.Equal(t, "8.25", body)
	for _, id := range []string{"evergreen", "pinned"} {
		q := browser.Open(t, blog(t, text(id)))
		q.Until(solved)
		assert.Equal(t, "8 1/4 in", browser.Eval[string](q, reading), "on another page, from another origin")
		q.Sound()
	}
	q := browser.Open(t, blog(t, text("frame")))
	q.Until("document.querySelector('iframe')")
	q.Sound()
	q = browser.Open(t, text("link"))
	q.Until(made)
	assert.Contains(t, browser.Eval[string](q, "document.querySelector('.cut').textContent"), "8 1/4")
}

// blog is a page of somebody else with lines in it.
func blog(t *testing.T, lines string) string {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		_, _ = io.WriteString(w, "<!DOCTYPE html><html lang=en><title>Tidewater Tea</title><body>"+lines)
	}))
	t.Cleanup(server.Close)
	return server.URL
}

// Nothing is too small for a thumb, and at 200 per cent nothing sticks out.
func TestPathAtTwiceTheSize(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?contents=honey-jar&kind=lidded-box&unit=in&stock=index-110&sheet=letter", chromedp.EmulateViewport(640, 800))
	p.Until(made)
	act(p, "document.documentElement.style.fontSize = '200%'")
	assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), int64(640))
	small := browser.Eval[[]string](p, "[...document.querySelectorAll('main button, main a, main select')].filter((e) => e.getClientRects().length && e.getBoundingClientRect().height < 24).map((e) => e.textContent)")
	assert.Empty(t, slices.DeleteFunc(small, func(s string) bool { return s == "" }))
}

// The outline of an ornament is one of the words, or a path that is typed: it stays in
// the address, and what is wrong with it stands at the field, in both languages.
func TestOutlineOfAnOrnamentIsTyped(t *testing.T) {
	server, _ := service(t, nil)
	for _, start := range []string{"/", "/de/"} {
		p := browser.Open(t, server+start+"?kind=slotted-band&"+hearted, chromedp.EmulateViewport(360, 800))
		p.Until(made)
		act(p, tap("#finer summary"))
		p.Until("document.getElementById('own-ornament_shape')?.value === 'heart'")
		assert.Equal(t, int64(6), browser.Eval[int64](p, "document.getElementById('own-ornament_shape').list.options.length"))
		act(p, write("own-ornament_shape", "M0,0 L20,0 X"))
		p.Until("document.getElementById('wrong-ornament_shape') && document.getElementById('own-ornament_shape').ariaInvalid === 'true'")
		p.Shoot("wrong")
		p.Accessible(t)
		act(p, write("own-ornament_shape", "M0,0 L20,0 L10,20 Z"))
		p.Until("!document.getElementById('wrong-ornament_shape') && " + made)
		assert.Equal(t, "M0,0 L20,0 L10,20 Z", browser.Eval[string](p, "new URLSearchParams(location.search).get('ornament_shape')"))
		assert.LessOrEqual(t, browser.Eval[int64](p, "document.documentElement.scrollWidth"), int64(360))
		p.Sound()
	}
}
