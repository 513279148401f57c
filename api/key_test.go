package api

import (
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// unremembering is a service that computes everything afresh.
func unremembering() *Service {
	config := DefaultConfig()
	config.Recent = 0
	return New(config, slog.New(slog.DiscardHandler))
}

// TestNoAnswerPassesForAnother: a text with the separators of a key in it once
// put the answer to one request into the place of another's.
func TestNoAnswerPassesForAnother(t *testing.T) {
	const base = "/v1/solve/slotted-band?unit=in&width=3.51&thickness=0.09&caliper=0.012&fit=snug"
	want := call(t, unremembering(), http.MethodGet, base+"&tab=3/4", "").ok().Body.String()
	s := quiet()
	for _, hostile := range []string{"&show=pieces%00tab%003/4", "&pick=/pieces%00tab%003/4", "&download=a%00tab%003/4", "&show=nothing", "&pick=/nothing"} {
		for range 2 { // an answer is remembered when it is given again
			call(t, s, http.MethodGet, base+hostile, "").problem(http.StatusBadRequest)
		}
		assert.Equal(t, want, call(t, s, http.MethodGet, base+"&tab=3/4", "").ok().Body.String(), "after %s", hostile)
	}
	assert.Contains(t, want, `"reading":"8 3/4 in"`)
}

// TestOnlyWholeAnswersAreRemembered: what fails while it is narrowed leaves
// nothing behind.
func TestOnlyWholeAnswersAreRemembered(t *testing.T) {
	s := quiet()
	for _, narrowing := range []string{"&show=nothing", "&pick=/nothing/at/all"} {
		call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards+narrowing, "").problem(http.StatusBadRequest)
	}
	assert.Empty(t, s.recent.young)
	for remembered := range 2 { // from the second time on
		call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards+"&show=step", "").ok()
		assert.Len(t, s.recent.young, remembered)
	}
}

func TestControlCharactersAreRefusedInEveryText(t *testing.T) {
	for _, target := range []string{
		"/v1/solve/slotted-band?" + cards + "&show=step%00", "/v1/solve/slotted-band?" + cards + "&pick=/step%0a", "/v1/ruler?length=92.1mm%09",
		"/v1/ruler?length=92.1mm&download=a%7f", "/v1/mail?" + square + "&post=us%1b[2J", "/v1/yield?unit=in&sheet=12x12&blank=2x3&name=a%00b",
		"/v1/ruler?length=92.1mm&format=json%C2%85", `/v1/yield?unit=in&sheet=12x12&items={"blank":"2x3","name":"a\u0000b","count":2}`,
	} {
		p := get(t, strings.ReplaceAll(target, `"`, "%22")).problem(http.StatusBadRequest)
		require.Len(t, p.Errors, 1, target)
		assert.Contains(t, p.Errors[0].Detail, "control character", target)
	}
}

// hostileTexts are pieces of texts that separators, escapes and encodings are
// made of.
var hostileTexts = []string{"tab", "pieces", "step", "3/4", "1/2", "/", "\x00", "=", "&", ",", ";", "%00", "~0", "~1", "\x01", "\n", "é", "\u2028", "in", " ", "\xff"}

// drawHostile draws a request whose texts are made of such pieces.
func drawHostile(rt *rapid.T) url.Values {
	q := url.Values{"unit": {"in"}, "width": {"3.51"}, "thickness": {"0.09"}, "caliper": {"0.012"}, "fit": {"snug"}}
	names := []string{"tab", "show", "pick", "download", "decimal", "format", "header", "width", "band_height"}
	for range rapid.IntRange(0, 3).Draw(rt, "names") {
		pieces := rapid.SliceOfN(rapid.SampledFrom(hostileTexts), 1, 4).Draw(rt, "pieces")
		q.Set(rapid.SampledFrom(names).Draw(rt, "name"), strings.Join(pieces, ""))
	}
	return q
}

// answered sends a request and returns its tag and body; no tag if refused.
func answered(s *Service, target string) (tag, body string) {
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, target, nil))
	if w.Code == http.StatusOK {
		tag = w.Header().Get("ETag")
	}
	return tag, w.Body.String()
}

// TestSameTagMeansSameBytes: whatever was asked before, a request is answered
// as if it were the first, and two requests share a tag only if their answers
// have the same bytes.
func TestSameTagMeansSameBytes(t *testing.T) {
	remembering, afresh := quiet(), unremembering()
	seen := map[string]string{}
	rapid.Check(t, func(rt *rapid.T) {
		kind := rapid.SampledFrom([]string{"slotted-band", "band", "belly-band"}).Draw(rt, "kind")
		targets := []string{"/v1/solve/" + kind + "?" + drawHostile(rt).Encode(), "/v1/ruler?" + url.Values{"length": {rapid.SampledFrom([]string{"92.1mm", "3-5/8in", "3.625 in"}).Draw(rt, "length")}}.Encode()}
		if rapid.Bool().Draw(rt, "turned") {
			slices.Reverse(targets)
		}
		for _, target := range targets {
			tag, want := answered(afresh, target)
			for range 4 { // computed, remembered, recalled, recognized
				_, got := answered(remembering, target)
				assert.Equal(rt, want, got, target)
			}
			if tag == "" {
				continue
			}
			if before, ok := seen[tag]; ok {
				assert.Equal(rt, before, want, target)
			}
			seen[tag] = want
		}
	})
}

// TestKeysTellBuildsApart: a formula that was mended must not be revalidated as
// unchanged.
func TestKeysTellBuildsApart(t *testing.T) {
	tag := func() string {
		t, _ := answered(unremembering(), "/v1/ruler?length=92.1mm")
		return t
	}
	was, before := Revision, tag()
	defer func() { Revision = was }()
	Revision = func() string { return "another build" }
	assert.NotEqual(t, before, tag())
	assert.NotEmpty(t, was())
	assert.NotEqual(t, Release, was())
}
