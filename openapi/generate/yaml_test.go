package main

import (
	"encoding/json"
	"net/http/httptest"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"sigs.k8s.io/yaml"
)

// TestYAMLKeepsTheOrder writes members that have no natural order the same way
// every time, and words that YAML 1.1 takes for values as texts.
func TestYAMLKeepsTheOrder(t *testing.T) {
	const asJSON = `{"5XX":1,"200":"on","4XX":{"no":"12:30","y":"2026-11-29"},"503":["a","true"]}`
	const want = "5XX: 1\n\"200\": \"on\"\n4XX:\n  \"no\": \"12:30\"\n  \"y\": \"2026-11-29\"\n\"503\":\n  - a\n  - \"true\"\n"
	for range 20 {
		got, err := inYAML([]byte(asJSON))
		require.NoError(t, err)
		require.Equal(t, want, string(got))
	}
	back, err := yaml.YAMLToJSON([]byte(want))
	require.NoError(t, err)
	assert.JSONEq(t, asJSON, string(back), "another library, of YAML 1.1, reads the same")
}

// TestExamplesShowOneMachine asks the trial, on any number of processors, for the
// limits that come from it elsewhere.
func TestExamplesShowOneMachine(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(7))
	p := patch{service: newService()}
	limits := p.send(httptest.NewRequest("GET", "/v1/limits", nil), "application/json").(object)
	require.NoError(t, p.err)
	assert.Equal(t, []any{json.Number("2"), json.Number("1"), json.Number("32")}, []any{limits["running"], limits["planning"], limits["streams"]})
}

// TestTheFirstMistakeIsTold: of an example that is refused, and after it of a part that is
// described in two ways.
func TestTheFirstMistakeIsTold(t *testing.T) {
	p := patch{service: newService(), components: object{"schemas": object{}}}
	assert.Nil(t, p.send(httptest.NewRequest("GET", "/v1/ruler", nil), "application/json"))
	for n := range 9 {
		p.share("schemas", "Name", "/v1/solve/band", object{"maximum": n})
	}
	assert.ErrorContains(t, p.err, "GET /v1/ruler: status 400")
	p.err = nil
	p.share("schemas", "Name", "/v1/solve/band", object{"maximum": 9})
	assert.EqualError(t, p.err, "Name of /v1/solve/band is described in two ways")
}
