package client_test

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/openapi"
	"creasefit/openapi/client"
)

// operation is what the tests read of an operation of the specification.
type operation struct {
	ID   string `json:"operationId"`
	Body struct {
		Content map[string]struct {
			Example any `json:"example"`
		} `json:"content"`
	} `json:"requestBody"`
}

// specPaths reads the operations of the committed specification.
func specPaths(t *testing.T) map[string]map[string]operation {
	t.Helper()
	var spec struct {
		Paths map[string]map[string]operation `json:"paths"`
	}
	require.NoError(t, json.Unmarshal(openapi.Text(), &spec))
	return spec.Paths
}

// apart are the paths whose answers are pages, files or a stream, and that of
// portfolios, whose example is in forms that the client does not have.
var apart = regexp.MustCompile("^(/|/docs|/healthz|/readyz|/openapi.*|/problems/.*|/v1/drawing/.*|/v1/batch|/v1/(solve|guide)/portfolio)$")

// TestAnswersLoseNothing makes every call with the specification's example,
// once by hand and once through the client: the client's types hold the whole
// answer.
func TestAnswersLoseNothing(t *testing.T) {
	calls := reflect.ValueOf(dial(t))
	called := 0
	for path, item := range specPaths(t) {
		if apart.MatchString(path) {
			continue
		}
		id := item["get"].ID
		if post, ok := item["post"]; ok {
			id = strings.TrimSuffix(post.ID, "-post")
		}
		call := calls.MethodByName(goName(id))
		require.True(t, call.IsValid(), "%s has no method %s", path, goName(id))
		arguments := arguments(t, call.Type(), item["post"])
		results := call.Call(append([]reflect.Value{reflect.ValueOf(t.Context())}, arguments...))
		require.Nil(t, results[1].Interface(), path)
		held, err := json.Marshal(results[0].Interface())
		require.NoError(t, err)
		var body any
		if len(arguments) == 1 && arguments[0].Kind() == reflect.Struct {
			body = arguments[0].Interface()
		}
		assert.JSONEq(t, byHand(t, path, body), string(held), path)
		called++
	}
	assert.Greater(t, called, 3*16, "solve, check and guide of every kind, and the others")
}

// TestPortfolioIsItsExample does the same for a portfolio, and builds what the
// specification's example asks for.
func TestPortfolioIsItsExample(t *testing.T) {
	const path = "/v1/solve/portfolio"
	request := client.RequestSolvePortfolio{
		Unit: "in", Width: "5", Height: "4", Thickness: "2", Caliper: "0.012", Fit: "easy",
		Layers: []client.LayersValueSolve{
			client.LayerOf(client.RequestSolveDividers{Columns: new(3)}),
			client.LayerOf(client.RequestSolveTray{Corners: "outside"}),
			client.LayerOf(client.RequestSolveSleeve{}),
			client.LayerOf(client.RequestSolveBand{Caliper: "0.006", Fit: "snug"}),
		},
	}
	portfolio, err := dial(t).Portfolio(t.Context(), request)
	require.NoError(t, err)
	held, err := json.Marshal(portfolio)
	require.NoError(t, err)
	assert.JSONEq(t, byHand(t, path, request), string(held))
	var example client.Portfolio
	asked := specPaths(t)[path]["post"].Body.Content["application/json"].Example
	require.NoError(t, json.Unmarshal([]byte(byHand(t, path, asked)), &example))
	assert.Equal(t, example.Chain, portfolio.Chain)
	guide, err := dial(t).GuidePortfolio(t.Context(), client.RequestGuidePortfolio{RequestSolvePortfolio: request})
	require.NoError(t, err)
	assert.Len(t, guide.CutList, len(portfolio.Pieces))
}

// goName is the name that the generator gives an operation.
func goName(id string) string {
	var b strings.Builder
	for word := range strings.SplitSeq(id, "-") {
		b.WriteString(strings.ToUpper(word[:1]) + word[1:])
	}
	return b.String()
}

// arguments are those of a call, beside the context: the example of its
// request, the name of a kind, or nothing.
func arguments(t *testing.T, call reflect.Type, post operation) []reflect.Value {
	t.Helper()
	if call.NumIn() == 1 {
		return nil
	}
	shape := call.In(1)
	argument := reflect.New(shape)
	if shape.Kind() == reflect.String {
		argument.Elem().SetString("sleeve")
		return []reflect.Value{argument.Elem()}
	}
	example := post.Body.Content["application/json"].Example.(map[string]any)
	text, err := json.Marshal(example)
	require.NoError(t, err)
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	require.NoError(t, d.Decode(argument.Interface()))
	return []reflect.Value{argument.Elem()}
}

// byHand makes a call without the client: by POST if there is a body.
func byHand(t *testing.T, path string, body any) string {
	t.Helper()
	request, err := http.NewRequestWithContext(t.Context(), http.MethodGet, address+strings.Replace(path, "{kind}", "sleeve", 1), nil)
	require.NoError(t, err)
	if body != nil {
		encoded, err := json.Marshal(body)
		require.NoError(t, err)
		request.Method, request.Body = http.MethodPost, io.NopCloser(bytes.NewReader(encoded))
		request.Header.Set("Content-Type", "application/json")
	}
	response, err := http.DefaultClient.Do(request)
	require.NoError(t, err)
	defer response.Body.Close()
	text, err := io.ReadAll(response.Body)
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, response.StatusCode, string(text))
	return string(text)
}
