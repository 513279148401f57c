package shop_test

import (
	"encoding/json"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api"
	"creasefit/api/wire"
	"creasefit/internal/browser"
	"creasefit/internal/golden"
	"creasefit/internal/web"
)

func TestMain(m *testing.M) { browser.Main(m) }

// usual is the address of the service in the files.
const usual = "http://127.0.0.1:8080"

// kit is an entry of kits.js.
type kit struct {
	ID, Title, Thing, Kind string
	Made, Paper            map[string]string
	Printed                map[string][]string
	Sizes                  []struct {
		Label string
		Names []string
	}
}

// kits reads the table of the page, which is JSON but for its first words.
func kits(t *testing.T) []kit {
	t.Helper()
	text := read(t, "kits.js")
	_, table, ok := strings.Cut(text, "const KITS = ")
	require.True(t, ok)
	var list []kit
	d := json.NewDecoder(strings.NewReader(strings.TrimSuffix(strings.TrimSpace(table), ";")))
	require.NoError(t, d.Decode(&list))
	require.Greater(t, len(list), 2)
	return list
}

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	return string(text)
}

// stall serves the files from one origin and the service, which lets the pages
// of the listed origins alone read its answers, from another one.
func stall(t *testing.T, alsoAllowed ...string) (page string, g *browser.Gate) {
	t.Helper()
	var service string
	files := http.FileServer(http.Dir("."))
	shop := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		page := map[string]string{"/": "index.html", "/shelf.html": "shelf.html", "/shelf-export.html": "shelf.html"}[r.URL.Path]
		if page == "" {
			files.ServeHTTP(w, r)
			return
		}
		text := strings.ReplaceAll(read(t, page), usual, service)
		if r.URL.Path == "/shelf-export.html" {
			text = strings.Replace(text, `<ul id="products"`, `<ul id="products" data-products="products.csv"`, 1)
		}
		w.Header().Set("Content-Type", "text/html")
		_, _ = w.Write([]byte(text))
	}))
	t.Cleanup(shop.Close)
	service, g = serviceFor(t, append(alsoAllowed, shop.URL)...)
	return shop.URL + "/", g
}

// serviceFor runs the service for the pages of some origins.
func serviceFor(t *testing.T, origins ...string) (string, *browser.Gate) {
	t.Helper()
	config := api.DefaultConfig()
	config.AllowedOrigins = origins
	require.NoError(t, config.Check())
	return browser.Serve(t, api.New(config, slog.New(slog.DiscardHandler)).Handler())
}

// pinned is the line of the page that loads the folded model.
var pinned = regexp.MustCompile(`src="` + regexp.QuoteMeta(usual) + `([^"]+)" integrity="([^"]+)"`)

// TestPageIsPinnedToThePresentModel keeps address and hash those of the file
// that this release serves.
func TestPageIsPinnedToThePresentModel(t *testing.T) {
	fold := web.Assets()[1]
	if golden.Updating() {
		fresh := pinned.ReplaceAllString(read(t, "index.html"), `src="`+usual+fold.Pinned+`" integrity="`+fold.Integrity+`"`)
		require.NoError(t, os.WriteFile("index.html", []byte(fresh), 0o644))
	}
	found := pinned.FindStringSubmatch(read(t, "index.html"))
	require.Len(t, found, 3)
	assert.Equal(t, []string{fold.Pinned, fold.Integrity}, found[1:], "go test ./deploy/shop -run Pinned -update")
	assert.Equal(t, 1, strings.Count(read(t, "index.html")+read(t, "shop.js")+read(t, "words.js")+read(t, "kits.js")+read(t, "shop.css"), usual), "the address stands in one place")
}

// ask gets an answer of the service.
func ask[T any](t *testing.T, service, call, kind string, values ...map[string][]string) T {
	t.Helper()
	query := url.Values{}
	for _, list := range values {
		for name, texts := range list {
			query[name] = append(query[name], texts...)
		}
	}
	response, err := http.Get(service + "/v1/" + call + "/" + kind + "?" + query.Encode())
	require.NoError(t, err)
	defer response.Body.Close()
	var answer T
	require.NoError(t, json.NewDecoder(response.Body).Decode(&answer))
	require.Equal(t, http.StatusOK, response.StatusCode, "%s: %v", kind, query)
	return answer
}

// lists makes lists of single values.
func lists(values map[string]string) map[string][]string {
	all := map[string][]string{}
	for name, text := range values {
		all[name] = []string{text}
	}
	return all
}

// TestKitsAreAsTheyWereMade solves every kit anew and compares what is printed
// on its packet; the thing that it was made for must go in.
func TestKitsAreAsTheyWereMade(t *testing.T) {
	service, _ := serviceFor(t, "*")
	for _, k := range kits(t) {
		unit := map[string][]string{"unit": {"in"}}
		s := ask[wire.Solution](t, service, "solve", k.Kind, unit, lists(k.Made), lists(k.Paper))
		got := map[string][]string{}
		for _, piece := range s.Pieces {
			got["blank"] = append(got["blank"], strings.TrimSuffix(piece.Blank.Width.Reading, " in")+" x "+piece.Blank.Height.Reading)
			for _, score := range piece.Scores {
				name := map[string]string{"width": "marks", "height": "rises"}[score.Across]
				got[name] = append(got[name], score.At.Reading)
			}
		}
		for name, list := range got {
			assert.Equal(t, list, k.Printed[name], "%s of %s", name, k.ID)
		}
		c := ask[wire.Check](t, service, "check", k.Kind, unit, lists(k.Made), lists(k.Paper), k.Printed)
		assert.True(t, c.Works, "%s: %s", k.ID, c.Words)
	}
}

// TestPlainTextSaysTheSame holds what is shown without JavaScript to the table.
func TestPlainTextSaysTheSame(t *testing.T) {
	_, plain, _ := strings.Cut(read(t, "index.html"), "<noscript>")
	plain, _, _ = strings.Cut(plain, "</noscript>")
	for _, k := range kits(t) {
		var sizes []string
		for _, s := range k.Sizes {
			sizes = append(sizes, k.Made[s.Names[0]]+" "+strings.ToLower(s.Label))
		}
		assert.Contains(t, plain, "<dt>"+k.Title+"</dt><dd>for a "+k.Thing+": "+strings.Join(sizes, ", ")+"</dd>")
	}
}
