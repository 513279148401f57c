package main

import (
	"encoding/json"
	"fmt"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"

	"creasefit/api"
)

// trial runs the service in this process, for real answers to the examples.
type trial struct{ handler http.Handler }

// newTrial returns the service with its default settings, but for those that
// depend on the machine: the examples show a machine of two processors.
func newTrial() trial {
	config := api.DefaultConfig()
	config.MostRunning, config.MostDear, config.MostStreams = 2, 1, 32
	return trial{api.New(config, slog.New(slog.DiscardHandler)).Handler()}
}

// answer sends the example of a call.
func (t trial) answer(call api.CallSpec, method, media string) (any, error) {
	path := strings.Replace(call.Path, "{kind}", kindNames()[0].(string), 1)
	r := httptest.NewRequest("GET", path+"?"+call.Example, nil)
	if method == "post" {
		r = httptest.NewRequest("POST", path, strings.NewReader(call.Body))
		r.Header.Set("Content-Type", "application/json")
	}
	return t.send(r, media)
}

// send returns the answer as an example of its media type.
func (t trial) send(r *http.Request, media string) (any, error) {
	r.Header.Set("Accept", media)
	w := httptest.NewRecorder()
	t.handler.ServeHTTP(w, r)
	got, _, _ := strings.Cut(w.Header().Get("Content-Type"), ";")
	if w.Code != http.StatusOK || got != media && media != "" {
		return nil, fmt.Errorf("%s %s: status %d, %s instead of %s: %s", r.Method, r.URL, w.Code, got, media, w.Body)
	}
	if isJSON(media) {
		return decoded(w.Body.Bytes()), nil
	}
	return w.Body.String(), nil
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
func (p *patch) fillExamples(path string, get object) error {
	success := get["responses"].(object)["200"].(object)
	for media, entry := range success["content"].(object) {
		e := entry.(object)
		if !shown(media) { // a page, which may show this very document
			continue
		}
		if e["example"] != nil || e["examples"] != nil || strings.HasPrefix(path, "/openapi") {
			continue
		}
		answer, err := p.try.send(httptest.NewRequest("GET", strings.Replace(path, "{code}", "no-fit", 1), nil), "")
		if err != nil {
			return err
		}
		e["example"] = answer
	}
	for _, parameter := range asList(get["parameters"]) {
		switch q := parameter.(object); q["name"] {
		case "code":
			q["example"] = "no-fit"
		case "kind":
			q["example"] = kindNames()[0]
		}
	}
	return nil
}

// number keeps the digits of a number.
func number(text string) json.Number { return json.Number(text) }

// decimal writes a number without exponent.
func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
