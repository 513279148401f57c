package web_test

import (
	"crypto/sha512"
	"encoding/base64"
	"io"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
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
	for path, ready := range map[string]string{"/?contents=tea-tin": settled, "/de/?contents=tea-tin": settled, "/docs/calls": "document.forms.length", "/docs": "true", "/de/problems/unknown": "true"} {
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
	p := browser.Open(t, server+"/docs/calls")
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

// TestModuleInABrowser loads the JavaScript module by its evergreen address on a
// page of another origin, and asks where it came from.
func TestModuleInABrowser(t *testing.T) {
	server, _ := service(t, nil)
	other, _ := service(t, map[string]string{"/blog": "<!DOCTYPE html><html lang=en><title>Tidewater Tea</title>"})
	p := browser.Open(t, other+"/blog")
	const asks = ".then(({ creasefit }) => creasefit().solve('sleeve', { width: '95 mm', height: '60 mm', thickness: '24 mm', caliper: '0.3 mm', ruler: '1 mm' }, { format: 'csv' }))"
	assert.Contains(t, browser.Eval[string](p, "import("+browser.Quote(server+"/module/1/creasefit.js")+")"+asks), "sleeve,blank,width,,265 mm")
	p.Sound()
}

func TestReferenceSnippetsRun(t *testing.T) {
	server, _ := service(t, nil)
	p := browser.Open(t, server+"/docs/calls")
	page := "<!DOCTYPE html><html lang=en><title>Tidewater Tea</title><body>" + browser.Eval[string](p, "pinned.textContent + folded.textContent")
	other, _ := service(t, map[string]string{"/blog": page})
	q := browser.Open(t, other+"/blog")
	q.Until(solved)
	q.Until("document.querySelector('creasefit-fold').hasAttribute('data-painted')")
	q.Sound()
}

func TestFoldedViewByKeyboard(t *testing.T) {
	server, _ := service(t, map[string]string{"/blog": `<!DOCTYPE html><html lang="en"><title>Tidewater Tea</title><script src="` + web.Assets()[1].Path + `" defer></script>` +
		`<creasefit-fold label="Slotted belly band" measures="1 in" src="/v1/drawing/slotted-band?unit=in&amp;contents=tasting-cards&amp;stock=index-110"></creasefit-fold>`})
	p := browser.Open(t, server+"/blog", browser.Prefer("screen", "prefers-reduced-motion", "reduce"))
	const fold = "document.querySelector('creasefit-fold')"
	label := fold + ".canvas.getAttribute('aria-label')"
	p.Until(fold + ".hasAttribute('data-painted')")
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

// TestStopsStayWithTheirFields: no stop or comma stands after a field that it could part
// from at the end of a line.
func TestStopsStayWithTheirFields(t *testing.T) {
	for _, language := range web.Languages() {
		for name, page := range map[string][]byte{"/": web.Workbench(language), "/own": web.OwnPage(language)} {
			stops := regexp.MustCompile(`(?:</span>|</select>)[.,]([^ ]{0,7})`).FindAllSubmatch(page, -1)
			assert.NotEmpty(t, stops, "%s %s", name, language)
			for _, stop := range stops {
				assert.Equal(t, "</span>", string(stop[1]), "%s %s: %s", name, language, stop[0])
			}
		}
	}
}
