package api

import (
	"html"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/manual"
	"creasefit/internal/peer"
)

// pageAt gets a page, whose address need not be in the specification.
func pageAt(t *testing.T, address string) *httptest.ResponseRecorder {
	t.Helper()
	w := httptest.NewRecorder()
	shared().Handler().ServeHTTP(w, newRequest(http.MethodGet, address, "", nil))
	require.Equal(t, http.StatusOK, w.Code, address)
	return w
}

// shownAnswer is an answer as a page shows it.
var shownAnswer = regexp.MustCompile(`<p class="status">(\d+), ([^<]*)</p>\s*<pre[^>]*><code class="answer">([^<]*)</code>`)

// manualRequests are all requests of the manual with the pages that show them.
func manualRequests() map[string][]manual.Request {
	all := map[string][]manual.Request{}
	for _, task := range manual.Tasks {
		all["/docs"] = append(all["/docs"], task.Requests...)
	}
	for code, p := range manual.Problems {
		if p.Asked != nil {
			all["/problems/"+code] = []manual.Request{*p.Asked, *p.Mended}
		}
	}
	return all
}

// TestManualShowsWhatTheServiceAnswers sends every request of every page in both
// languages and compares the answer with the one that the page shows. What a task
// asks for is answered; what a problem's page asks for has that problem, and is
// answered when it is mended.
func TestManualShowsWhatTheServiceAnswers(t *testing.T) {
	for path, requests := range manualRequests() {
		for _, language := range manual.Languages {
			shown := shownAnswer.FindAllStringSubmatch(pageAt(t, manual.Address(path, language)).Body.String(), -1)
			require.Len(t, shown, len(requests), path)
			for i, r := range requests {
				a := askOutside(t, r)
				assert.Equal(t, manual.Shown(a), html.UnescapeString(shown[i][3]), "%s, request %d", path, i+1)
				if code, ok := strings.CutPrefix(path, "/problems/"); ok && i == 0 {
					assert.Contains(t, a.Body, `"type":"/problems/`+code+`"`, "%s: %s", path, a.Body)
				} else {
					assert.Equal(t, http.StatusOK, a.Status, "%s, request %d: %s", path, i+1, a.Body)
				}
			}
		}
	}
}

// askOutside sends a request of the manual as a caller does.
func askOutside(t *testing.T, r manual.Request) manual.Answer {
	t.Helper()
	method, set := http.MethodGet, headers(nil)
	if r.Method != "" {
		method = r.Method
	}
	if r.Media != "" {
		set = headers{"Content-Type", r.Media}
	}
	w := httptest.NewRecorder()
	shared().Handler().ServeHTTP(w, newRequest(method, r.Target, r.Body, set))
	media, _, _ := strings.Cut(w.Header().Get("Content-Type"), ";")
	return manual.Answer{Status: w.Code, Media: media, Body: w.Body.String()}
}

// TestCommandsOfTheManualRun runs the command lines as they are shown.
func TestCommandsOfTheManualRun(t *testing.T) {
	peer.Path(t, "curl", "apt-get install -y curl")
	url := listen(t, shared().Handler())
	for path, requests := range manualRequests() {
		for _, r := range requests {
			command := exec.Command("sh", "-c", strings.Replace(r.Command(), "curl ", "curl --silent ", 1))
			command.Env = append(os.Environ(), "CREASEFIT="+url)
			output, err := command.Output()
			require.NoError(t, err, r.Command())
			want := askOutside(t, r)
			if strings.HasPrefix(path, "/problems/method") {
				continue // the router's own words
			}
			assert.Equal(t, want.Body, string(output), r.Command())
		}
	}
}

// TestEveryProblemHasAPage: every type has words in both languages, and either two
// requests or a word on how it comes about.
func TestEveryProblemHasAPage(t *testing.T) {
	require.Len(t, manual.Problems, len(problemKinds), "no page of a problem that is none")
	index := pageAt(t, "/problems").Body.String()
	german := pageAt(t, "/de/problems").Body.String()
	for _, p := range problemList() {
		assert.Contains(t, index, `href="/problems/`+p.Code+`"`)
		assert.Contains(t, german, `href="/de/problems/`+p.Code+`"`)
		assert.NotEmpty(t, p.Title.De, p.Code)
		assert.NotEmpty(t, p.Help.De, p.Code)
		assert.Equal(t, p.Asked == nil, p.Comes.De != "", p.Code)
		assert.Contains(t, pageAt(t, "/problems/"+p.Code).Body.String(), "<h1>"+html.EscapeString(p.Title.En)+"</h1>")
		assert.Contains(t, pageAt(t, "/de/problems/"+p.Code).Body.String(), "<h1>"+html.EscapeString(p.Title.De)+"</h1>")
	}
	get(t, "/problems/no-such").problem(http.StatusNotFound)
}

// manualLink is a link of a page.
var manualLink = regexp.MustCompile(`href="(/[^"#]*)"`)

// TestPagesOfTheManualLeadSomewhere follows every link of every page.
func TestPagesOfTheManualLeadSomewhere(t *testing.T) {
	for _, p := range pagesOfManual() {
		for _, language := range manual.Languages {
			text := pageAt(t, manual.Address(p.path, language)).Body.String()
			assert.Contains(t, text, `<html lang="`+language+`">`)
			for _, link := range manualLink.FindAllStringSubmatch(text, -1) {
				if strings.HasPrefix(link[1], "/problems/") || strings.HasPrefix(link[1], "/v1/") {
					continue // asked for by the other tests
				}
				w := httptest.NewRecorder()
				shared().Handler().ServeHTTP(w, newRequest(http.MethodGet, html.UnescapeString(link[1]), "", nil))
				assert.NotEqual(t, http.StatusNotFound, w.Code, "%s on %s", link[1], p.path)
			}
		}
	}
}

// TestEveryLimitIsExplained compares the words with the list.
func TestEveryLimitIsExplained(t *testing.T) {
	for _, language := range manual.Languages {
		text := pageAt(t, manual.Address("/docs/limits", language)).Body.String()
		assert.NotContains(t, text, "<td></td>", "every limit has words and a value")
		assert.Contains(t, text, "<code>batch_line_bytes</code></th><td>65536</td>")
	}
	limits := decode[map[string]any](get(t, "/v1/limits").ok())
	assert.Len(t, limitRows(), len(limits))
}

// TestFormatsAreThoseOfTheCalls asks for what the table says that there is, and
// for what it says that there is not.
func TestFormatsAreThoseOfTheCalls(t *testing.T) {
	examples := map[string]string{}
	for _, spec := range CallSpecs() {
		path := spec.Path
		if spec.Annotated != "" {
			path = spec.Annotated
		}
		if examples[path] == "" {
			examples[path] = strings.ReplaceAll(spec.Path, "{kind}", "band") + "?" + spec.Example
		}
	}
	table := formatTable()
	for _, row := range table.Rows {
		require.Len(t, row.Has, len(table.Formats), row.Call)
		for i, has := range row.Has {
			a := askOutside(t, manual.Request{Target: examples[row.Call] + "&format=" + table.Formats[i]})
			assert.Equal(t, has, a.Status == http.StatusOK, "%s as %s: %s", row.Call, table.Formats[i], a.Body[:min(200, len(a.Body))])
		}
	}
}

// TestAgentsAreToldAllKinds: what is told with little room leads to a compact
// description of every kind.
func TestAgentsAreToldAllKinds(t *testing.T) {
	text := pageAt(t, "/llms.txt").Body.String()
	assert.Less(t, len(text), 8<<10)
	for _, k := range decode[wire.KindList](get(t, "/v1/kinds").ok()).Kinds {
		link := "/v1/kinds/" + k.Name + ".txt"
		assert.Contains(t, text, "("+link+")")
		compact := get(t, link).ok().Body.String()
		assert.Contains(t, compact, k.Name+": "+k.Title)
		assert.Contains(t, compact, "\ncaliper (length, 0.01 to 5 mm): ")
		assert.Less(t, len(compact), get(t, "/v1/kinds/"+k.Name).ok().Body.Len()*6/10, k.Name)
	}
}
