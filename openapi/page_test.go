package openapi_test

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"testing"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
	"creasefit/internal/peer"
	"creasefit/openapi"
)

func TestMain(m *testing.M) { browser.Main(m) }

// page shows the specification by Swagger UI and notes when every operation
// stands there.
const page = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Specification</title><link rel="icon" href="data:,">
<link rel="stylesheet" href="/swagger-ui.css"></head><body><div id="ui"></div><script src="/swagger-ui-bundle.js"></script>
<script>SwaggerUIBundle({ url: "/openapi.json", dom_id: "#ui", docExpansion: "none", onComplete: () => { window.shown = performance.now(); } });</script></body></html>`

// TestARendererShowsTheSpecification opens the whole specification with a
// documentation renderer, which once took half a million nodes: every section is
// there, and one that is opened lists its operations.
func TestARendererShowsTheSpecification(t *testing.T) {
	if testing.Short() {
		t.Skip("a browser")
	}
	files := http.FileServer(http.Dir(filepath.Join(peer.Modules(t, "swagger-ui-dist@5.35.0"), "swagger-ui-dist")))
	service := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case "/":
			_, _ = fmt.Fprint(w, page)
		case "/openapi.json":
			_, _ = w.Write(openapi.JSON())
		default:
			files.ServeHTTP(w, r)
		}
	}))
	defer service.Close()
	spec, err := openapi3.NewLoader().LoadFromData(openapi.JSON())
	require.NoError(t, err)
	operations := 0
	for _, item := range spec.Paths.Map() {
		for _, o := range item.Operations() {
			if o.Tags[0] == "service" {
				operations++
			}
		}
	}
	tab := browser.Open(t, service.URL+"/")
	tab.Until("window.shown")
	t.Logf("shown after %.0f ms", browser.Eval[float64](tab, "window.shown"))
	assert.Equal(t, len(spec.Tags), browser.Eval[int](tab, `document.querySelectorAll(".opblock-tag").length`))
	browser.Eval[bool](tab, `(document.querySelector("#operations-tag-service").click(), true)`)
	tab.Until(fmt.Sprintf(`document.querySelectorAll(".opblock").length === %d`, operations))
	tab.Sound()
	assert.Less(t, browser.Eval[int](tab, `document.querySelectorAll("*").length`), 20_000)
	tab.Shoot("")
}
