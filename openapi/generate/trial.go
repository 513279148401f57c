package main

import (
	"encoding/json"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"

	"creasefit/api"
)

// newService returns the service with its default settings, but for those that
// depend on the machine: the examples show a machine of two processors.
func newService() http.Handler {
	config := api.DefaultConfig()
	config.MostRunning, config.MostDear, config.MostStreams = 2, 1, 32
	return api.New(config, slog.New(slog.DiscardHandler)).Handler()
}

// answer sends the example of a call.
func (p *patch) answer(call api.CallSpec, method, media string) any {
	path := strings.Replace(call.Path, "{kind}", kindNames()[0].(string), 1)
	r := httptest.NewRequest("GET", path+"?"+call.Example, nil)
	if method == "post" {
		r = httptest.NewRequest("POST", path, strings.NewReader(call.Body))
		r.Header.Set("Content-Type", "application/json")
	}
	return p.send(r, media)
}

// send returns the answer as an example of its media type.
func (p *patch) send(r *http.Request, media string) any {
	r.Header.Set("Accept", media)
	w := httptest.NewRecorder()
	p.service.ServeHTTP(w, r)
	got, _, _ := strings.Cut(w.Header().Get("Content-Type"), ";")
	switch {
	case w.Code != http.StatusOK || got != media && media != "":
		p.fail("%s %s: status %d, %s instead of %s: %s", r.Method, r.URL, w.Code, got, media, w.Body)
		return nil
	case isJSON(media):
		return decoded(w.Body.Bytes())
	}
	return w.Body.String()
}

// decoded turns JSON into a value whose numbers keep their digits.
func decoded(text []byte) any {
	var value any
	d := json.NewDecoder(strings.NewReader(string(text)))
	d.UseNumber()
	if err := d.Decode(&value); err != nil {
		panic(err) // it is our own answer
	}
	return value
}

// fillExamples adds real answers to the calls that take no names, but for those
// that answer with the specification itself.
func (p *patch) fillExamples(path string, get object) {
	success := get["responses"].(object)["200"].(object)
	for media, entry := range success["content"].(object) {
		e := entry.(object)
		if !shown(media) { // a page, which may show this very document
			continue
		}
		if e["example"] != nil || e["examples"] != nil || strings.HasPrefix(path, "/openapi") {
			continue
		}
		e["example"] = p.send(httptest.NewRequest("GET", strings.Replace(path, "{code}", "no-fit", 1), nil), "")
	}
	for _, parameter := range asList(get["parameters"]) {
		switch q := parameter.(object); q["name"] {
		case "code":
			q["example"] = "no-fit"
		case "kind":
			q["example"] = kindNames()[0]
		}
	}
}

// number keeps the digits of a number.
func number(text string) json.Number { return json.Number(text) }

// decimal writes a number without exponent.
func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
