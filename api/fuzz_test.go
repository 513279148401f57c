package api

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// FuzzQuery sends any query string: the answer is 200 or a 4xx problem, never
// a panic or a 5xx.
func FuzzQuery(f *testing.F) {
	fuzzQuery(f, "/v1/solve/slotted-band", cards, "width=3+5/8in", "width=1,234mm&decimal=comma", "unit=in&width=NaN", "a=%zz", ";", "errors=cell&width=x", "pick=/a~1b/0&"+cards, "show=,&"+cards)
}

// FuzzJSON sends any body.
func FuzzJSON(f *testing.F) {
	service := served()
	for _, seed := range []string{cardsBody, `{"width":3.5}`, `{"width":null}`, `{"width":[1,2]}`, `[[[[`, `{"a":1,"a":1}`, `{"width":"\ud800"}`, `{`, ``, `{"unit":"in","width":1e999}`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, body string) {
		request := httptest.NewRequest(http.MethodPost, "/v1/solve/slotted-band", strings.NewReader(body))
		request.Header.Set("Content-Type", "application/json")
		wantNoFailure(t, service, request)
	})
}

// FuzzLayers sends any layer between two that are well.
func FuzzLayers(f *testing.F) {
	service := served()
	for _, seed := range []string{`"sleeve"`, `{"kind":"sleeve","turned":"edge"}`, `{"kind":"dividers"}`, `{}`, `[]`, `{"kind":1}`, `{"kind":"band","width":3,"lap":"9 in"}`, `{"kind":"tray","caliper":5,"stock":"x"}`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, layer string) {
		body := `{"unit":"in","width":5,"height":4,"thickness":2,"caliper":0.012,"layers":["tray",` + layer + `,"lidded-box"]}`
		request := httptest.NewRequest(http.MethodPost, "/v1/solve/portfolio", strings.NewReader(body))
		request.Header.Set("Content-Type", "application/json")
		wantNoFailure(t, service, request)
	})
}

// FuzzHeaders sends any headers of negotiation.
func FuzzHeaders(f *testing.F) {
	service := served()
	f.Add("text/csv;q=0.5, */*", "gzip;q=0", `W/"x", *`, "application/json; charset=utf-8")
	f.Add(";;q=,", "*", `"`, "text/html;")
	f.Fuzz(func(t *testing.T, accept, encoding, match, media string) {
		request := httptest.NewRequest(http.MethodPost, "/v1/solve/slotted-band?"+cards, strings.NewReader("{}"))
		request.Header["Accept"], request.Header["Accept-Encoding"] = []string{accept}, []string{encoding}
		request.Header["If-None-Match"], request.Header["Content-Type"] = []string{match}, []string{media}
		wantNoFailure(t, service, request)
	})
}

// wantNoFailure sends the request.
func wantNoFailure(t *testing.T, service http.Handler, request *http.Request) {
	t.Helper()
	w := httptest.NewRecorder()
	service.ServeHTTP(w, request)
	if w.Code >= 500 || w.Code != http.StatusOK && w.Code < 400 {
		t.Fatalf("status %d: %s", w.Code, w.Body)
	}
	if w.Code >= 400 && w.Header().Get("Content-Type") != problemMediaType {
		t.Fatalf("status %d as %s", w.Code, w.Header().Get("Content-Type"))
	}
}
