package api

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

// served returns the shared service, made before the first input is timed: on a busy
// machine its start alone may take the ten seconds after which an input counts as hung.
func served() http.Handler { return shared().Handler() }

// fuzzQuery sends any query string to a call.
func fuzzQuery(f *testing.F, path string, seeds ...string) {
	service := served()
	for _, seed := range seeds {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, query string) {
		request := httptest.NewRequest(http.MethodGet, path, nil)
		request.URL = &url.URL{Path: path, RawQuery: query}
		wantNoFailure(t, service, request)
	})
}

// The decoders of the calls, each with what it reads and what it must refuse.
func FuzzCheck(f *testing.F) {
	fuzzQuery(f, "/v1/check/slotted-band", cards, cards+"&blank=8-1/4x1-3/4in", "measured=1in&unit=mm", cards+"&blank=x")
}

func FuzzGuide(f *testing.F) {
	fuzzQuery(f, "/v1/guide/slotted-band", cards, cards+"&language=de&units=both", cards+"&format=pdf&paper=a0", cards+"&paper=140x1mm&format=pdf")
}

func FuzzDrawing(f *testing.F) {
	fuzzQuery(f, "/v1/drawing/slotted-band", cards, cards+"&format=png&pixels=64", cards+"&format=pdf&paper=140x140mm", cards+"&closed=0.5&format=glb", cards+"&pixels=-1&theme=%00")
}

func FuzzMail(f *testing.F) {
	fuzzQuery(f, "/v1/mail", square, square+"&post=us&post=de", "width=1in&height=1e9", square+"&mass=24&mass_oz=1")
}

func FuzzYield(f *testing.F) {
	fuzzQuery(f, "/v1/yield", "unit=in&sheet=12x12&blank=2x3", `unit=in&sheet=12x12&effort_ms=1&items={"blank":"2x3","count":3}`, `sheet={"size":"a4","price":0.00001}&blank=1x1mm`, `items=[{}]&sheet=letter`)
}

// FuzzEveryCall sends any query to any call there is, also to those that have no
// target of their own.
func FuzzEveryCall(f *testing.F) {
	service, paths := served(), shared().paths
	for _, seed := range []string{cards, "width=5in&height=4in&thickness=2in&caliper=0.012in", "length=92.1mm", "holders=[{}]&width=1", `layers=["sleeve",{}]&width=5in`, "format=csv&pick=/a/0&show=,", "%zz&;&=&a=%00"} {
		for n := range paths {
			f.Add(uint16(n), seed)
		}
	}
	f.Fuzz(func(t *testing.T, n uint16, query string) {
		path := paths[int(n)%len(paths)]
		request := httptest.NewRequest(http.MethodGet, "/", nil)
		request.URL = &url.URL{Path: path, RawQuery: query}
		wantNoFailure(t, service, request)
	})
}

// FuzzBatch sends any body in each of the three shapes of a batch.
func FuzzBatch(f *testing.F) {
	service := served()
	for i, seed := range []string{cardLine(0, "4") + "\n{}\n[", `[{"call":"/v1/ruler","length":"92.1 mm"}]`, "id,call,length\n\"\t=1\",/v1/ruler,92.1 mm\n", `{"call":"/v1/batch"}`, "call\n\"", "[[[[[[[[[[[[[[[[[["} {
		f.Add(seed, uint8(i))
	}
	f.Fuzz(func(t *testing.T, body string, shape uint8) {
		if strings.Contains(body, "yield") {
			t.Skip("orders take the time that they name")
		}
		request := httptest.NewRequest(http.MethodPost, "/v1/batch", strings.NewReader(body))
		request.Header.Set("Content-Type", []string{mediaLines, "application/json", mediaCSV}[shape%3])
		w := httptest.NewRecorder()
		service.ServeHTTP(w, request)
		if w.Code >= 500 || w.Code == http.StatusOK && shape%3 == 0 && !strings.Contains(w.Body.String(), `"done":true`) {
			t.Fatalf("status %d: %s", w.Code, w.Body)
		}
	})
}
