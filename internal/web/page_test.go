package web_test

import (
	"crypto/sha512"
	"encoding/base64"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
	"creasefit/internal/peer"
	"creasefit/internal/web"
)

// fetch gets an address and returns the answer with its body.
func fetch(t *testing.T, address string) (*http.Response, string) {
	t.Helper()
	answer, err := http.Get(address)
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return answer, string(body)
}

func TestFilesHaveTheirHashAndStay(t *testing.T) {
	server, _ := service(t, nil)
	for _, asset := range web.Assets() {
		for _, path := range []string{asset.Path, asset.Pinned} {
			answer, body := fetch(t, server+path)
			require.Equal(t, http.StatusOK, answer.StatusCode, path)
			sum := sha512.Sum384([]byte(body))
			assert.Equal(t, asset.Integrity, "sha384-"+base64.StdEncoding.EncodeToString(sum[:]))
			assert.Equal(t, asset.Media, answer.Header.Get("Content-Type"))
			assert.Equal(t, "cross-origin", answer.Header.Get("Cross-Origin-Resource-Policy"))
			assert.Equal(t, path == asset.Pinned, strings.Contains(answer.Header.Get("Cache-Control"), "immutable"), path)
		}
		answer, body := fetch(t, server+strings.Replace(asset.Path, "/"+web.Line+"/", "/"+web.Line+"-000000000000/", 1))
		assert.Equal(t, http.StatusNotFound, answer.StatusCode)
		assert.Contains(t, body, asset.Pinned, "the problem names the present file")
	}
}

func TestPagesCallNobodyElse(t *testing.T) {
	server, _ := service(t, nil)
	for path, ready := range map[string]string{"/": solved + " && " + stocked, "/docs": "document.forms.length"} {
		answer, _ := fetch(t, server+path)
		assert.Equal(t, web.Policy, answer.Header.Get("Content-Security-Policy"))
		p := browser.Open(t, server+path)
		p.Until(ready)
		p.Sound() // nothing was refused by the policy
		require.NotEmpty(t, p.Requests())
		for _, address := range p.Requests() {
			own := strings.HasPrefix(address, server+"/") || strings.HasPrefix(address, "data:") || strings.HasPrefix(address, "blob:")
			assert.True(t, own, address)
		}
	}
}

// TestReferenceExamplesRun presses every button of the reference page.
func TestReferenceExamplesRun(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/docs")
	p.Until("document.forms.length")
	count := browser.Eval[int64](p, "document.forms.length")
	calls := browser.Eval[int64](p, "document.querySelectorAll('article').length")
	assert.GreaterOrEqual(t, count, calls, "every call has an example")
	browser.Eval[any](p, "(async () => { for (const form of document.forms) form.querySelector('button').click(); })()")
	p.Until("[...document.querySelectorAll('.outcome')].every((o) => o.textContent)")
	for _, line := range browser.Eval[[]string](p, "[...document.forms].map((f) => f.elements.address.value + ' ' + f.querySelector('.outcome').textContent.slice(0, 300))") {
		assert.Regexp(t, `^\S+ 200, `, line)
	}
	p.Sound()
	p.Shoot("")
}

// press presses the button that copies a snippet of the workbench.
func press(p *browser.Tab, id string) {
	p.Helper()
	browser.Eval[any](p, "copied.textContent = ''; 0")
	p.TabTo("document.activeElement?.dataset.copy === " + browser.Quote(id))
	p.Keys(kb.Enter)
	p.Until("copied.textContent")
}

// shown is a snippet as the page shows it.
func shown(p *browser.Tab, id string) string {
	return browser.Eval[string](p, "document.getElementById("+browser.Quote(id)+").textContent")
}

// TestSnippetsRun copies what the workbench offers for other programs by its
// buttons and uses it as they would.
func TestSnippetsRun(t *testing.T) {
	curl := peer.Path(t, "curl", "apt-get install -y curl")
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?kind=slotted-band&unit=in&width=3+1/2&thickness=0.09&caliper=0.012&fit=snug", browser.Clipboard(true))
	p.Until(solved)
	text := func(id string) string {
		press(p, id)
		assert.Equal(t, "Copied.", browser.Eval[string](p, "copied.textContent"))
		copied := browser.Eval[string](p, "navigator.clipboard.readText()")
		assert.Equal(t, shown(p, id), copied)
		return copied
	}

	command := exec.Command("sh", "-c", strings.Replace(text("curl"), "curl ", curl+" --silent --fail ", 1))
	printed, err := command.Output()
	require.NoError(t, err)
	assert.Contains(t, string(printed), "8 1/4 in")

	browser.Eval[any](p, "(() => { const s = document.getElementById('pick'); s.value = '/pieces/0/scores/1/at'; s.dispatchEvent(new Event('change')); })()")
	formula := regexp.MustCompile(`^=WEBSERVICE\("([^"]+)"\)$`).FindStringSubmatch(text("cell"))
	require.NotNil(t, formula)
	_, body := fetch(t, formula[1])
	number, err := strconv.ParseFloat(body, 64)
	require.NoError(t, err)
	assert.InDelta(t, 2.25, number, 1e-9)

	foreign := "<!DOCTYPE html><html lang=en><title>Tidewater Tea</title><body>" + text("html")
	blog := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		_, _ = io.WriteString(w, foreign)
	}))
	defer blog.Close()
	q := browser.Open(t, blog.URL)
	q.Until(solved)
	assert.Equal(t, "8 1/4 in", browser.Eval[string](q, reading), "on another page, from another origin, with its hash checked")
	q.Sound()
}

// TestRefusedCopySelects keeps pages from the clipboard: the snippet is
// selected instead, for the reader's own keys.
func TestRefusedCopySelects(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?kind=slotted-band&unit=in&width=3+1/2&thickness=0.09&caliper=0.012&fit=snug", browser.Clipboard(false))
	p.Until(solved)
	for _, id := range []string{"curl", "cell", "html"} {
		press(p, id)
		assert.Contains(t, browser.Eval[string](p, "copied.textContent"), "Selected")
		assert.Equal(t, shown(p, id), browser.Eval[string](p, "getSelection().toString()"))
	}
	p.Sound()
}

func TestReferenceSnippetsRun(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/docs")
	page := "<!DOCTYPE html><html lang=en><title>Tidewater Tea</title><body>" + browser.Eval[string](p, "pinned.textContent + folded.textContent")
	other, _ := service(t, map[string]string{"/blog": page})
	q := browser.Open(t, other+"/blog")
	q.Until(solved)
	q.Until("document.querySelector('creasefit-fold').hasAttribute('data-painted')")
	q.Sound()
}

func TestFoldedViewByKeyboard(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/", browser.Prefer("screen", "prefers-reduced-motion", "reduce"))
	const fold = "document.querySelector('creasefit-fold')"
	label := fold + ".canvas.getAttribute('aria-label')"
	p.Until(solved + " && " + fold + ".hasAttribute('data-painted')")
	assert.Contains(t, browser.Eval[string](p, label), "Slotted belly band, finished")
	assert.Contains(t, browser.Eval[string](p, label), "Closed it measures")
	pixels := fold + ".canvas.toDataURL()"
	before := browser.Eval[string](p, pixels)
	browser.Eval[any](p, fold+".sliders.turn.focus(); 0")
	p.Keys(kb.ArrowRight + kb.ArrowRight + kb.ArrowRight)
	p.Until(pixels + " !== " + browser.Quote(before))
	assert.Contains(t, browser.Eval[string](p, label), "turned by 31 degrees")
	browser.Eval[any](p, fold+".button.focus(); 0")
	p.Keys(kb.Enter)
	p.Until(label + ".includes('lying flat')")
	p.Keys(kb.Enter)
	p.Until(label + ".includes(', finished,')")
	p.Sound()
}

func TestOrderIsPlanned(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/?kind=slotted-band&unit=in&width=3+1/2&height=5&thickness=0.09&caliper=0.012&fit=snug", chromedp.EmulateViewport(1280, 900))
	p.Until(solved)
	browser.Eval[any](p, "document.getElementById('count').focus(); 0")
	p.Keys(strings.Repeat(kb.Delete, 2) + "17" + kb.Enter)
	p.Until("document.querySelector('#plan figure svg')")
	order := `{"unit":"in","sheet":"12 x 12 in","items":[{"name":"band","blank":"8 1/4 x 1 1/2 in","count":17}]}`
	answer, err := http.Post(server+"/v1/yield", "application/json", strings.NewReader(order))
	require.NoError(t, err)
	defer answer.Body.Close()
	var plan struct{ Sheets int }
	require.NoError(t, json.NewDecoder(answer.Body).Decode(&plan))
	assert.Equal(t, strconv.Itoa(plan.Sheets), browser.Eval[string](p, "document.querySelector('#plan strong').textContent.split(' ')[0]"))
	assert.Positive(t, browser.Eval[int64](p, "document.querySelectorAll('#plan ol li').length"))
	p.Shoot("")

	browser.Eval[any](p, "document.getElementById('put').click(); document.querySelector('#shelf a[data-kind=sleeve]').click(); 0")
	p.Until("document.querySelector('creasefit-fold').getAttribute('src').includes('/sleeve?')")
	browser.Eval[any](p, "document.querySelector('#order button').click(); 0")
	p.Until("document.querySelector('#plan figure svg')?.textContent.includes('sleeve')")
	browser.Eval[any](p, "document.getElementById('count').value = 'many'; document.querySelector('#order button').click(); 0")
	p.Until("document.querySelector('#plan .wrong')")
	p.Sound()
}
