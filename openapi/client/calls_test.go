package client_test

import (
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/openapi/client"
)

// tin is the sleeve that a stall sells its sachets in.
var tin = client.RequestSolveSleeve{Width: "95 mm", Height: "60 mm", Thickness: "24 mm", Caliper: "0.3 mm", Fit: "easy", Ruler: "1 mm"}

func TestFilesAreOfTheirFormat(t *testing.T) {
	c := dial(t)
	drawing := client.RequestDrawingSleeve{RequestSolveSleeve: tin}
	guide := client.RequestGuideSleeve{RequestSolveSleeve: tin, Language: "de"}
	for _, f := range []struct {
		request        client.Request
		format, media  string
		begins, within string
	}{
		{drawing, "svg", "image/svg+xml", "<svg", "</svg>"},
		{drawing, "pdf", "application/pdf", "%PDF-1", "%%EOF"},
		{drawing, "glb", "model/gltf-binary", "glTF", "accessors"},
		{guide, "markdown", "text/markdown", "# ", "98 mm"},
		{tin, "csv", "text/csv", "piece,", "98 mm"},
	} {
		file, err := c.File(t.Context(), f.request, f.format)
		require.NoError(t, err, f.format)
		assert.Equal(t, f.media, file.MediaType)
		assert.Equal(t, f.begins, string(file.Bytes[:len(f.begins)]))
		assert.Contains(t, string(file.Bytes), f.within)
	}
	_, err := c.File(t.Context(), drawing, "csv")
	var problem *client.Problem
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, "format", problem.Errors[0].Name)
}

func TestEmptyValuesAreNotSent(t *testing.T) {
	for text, value := range map[string]any{
		`{}`: client.RequestCheckSleeve{},
		`{"width":"95 mm","height":"60 mm","thickness":"24 mm","caliper":"0.3 mm","fit":"easy","ruler":"1 mm","closed":0}`: client.RequestDrawingSleeve{
			RequestSolveSleeve: tin, Closed: new(0.0)},
		`{"sheet":[{"size":"letter"}],"items":[{"blank":"3 x 5 in"},{"kind":"band","contents":"tea-tin","count":2,"name":"tins"}]}`: client.RequestYield{
			Sheet: []client.SheetValueYield{{Size: "letter"}},
			Items: []client.ItemsValue{{Blank: new("3 x 5 in")}, itemOf(client.RequestSolveBand{Contents: client.ContentsValueTeaTin}, new(2), "tins")},
		},
	} {
		written, err := json.Marshal(value)
		require.NoError(t, err)
		assert.JSONEq(t, text, string(written))
	}
}

// TestMixedOrderIsPlanned checks that every piece of every enclosure
// lies on a sheet.
func TestMixedOrderIsPlanned(t *testing.T) {
	plan, err := dial(t).Yield(t.Context(), client.RequestYield{
		Sheet: []client.SheetValueYield{{Size: "a4"}},
		Items: []client.ItemsValue{itemOf(tin, new(3), ""), {Name: new("card"), Blank: new("90 x 120 mm"), Count: new(7)}},
		Unit:  "mm",
	})
	require.NoError(t, err)
	made := map[string]int{}
	for _, p := range plan.Plans {
		for _, part := range p.Placed {
			made[part.Item] += p.Times
		}
	}
	assert.Equal(t, map[string]int{"sleeve": 3, "card": 7}, made)
}

func TestProblemNamesEveryValue(t *testing.T) {
	_, err := dial(t).SolveSleeve(t.Context(), client.RequestSolveSleeve{Width: "95", Height: "3 5/7 in", Thickness: "24 mm", Caliper: "0.3 mm"})
	var problem *client.Problem
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, http.StatusBadRequest, problem.Status)
	assert.Len(t, problem.Errors, 2)
	_, err = dial(t).SolveSleeve(t.Context(), client.RequestSolveSleeve{Width: "95 mm", Height: "60 mm", Thickness: "24 mm", Caliper: "0.3 mm", ClearanceMin: "0.1 mm", ClearanceMax: "0.2 mm", Ruler: "5 mm"})
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, http.StatusUnprocessableEntity, problem.Status)
	_, err = dial(t).Kind(t.Context(), "../limits")
	require.ErrorAs(t, err, &problem)
	assert.Equal(t, http.StatusNotFound, problem.Status)
}

// TestAnswersOfOthers meets what may answer instead of the service.
func TestAnswersOfOthers(t *testing.T) {
	for name, answer := range map[string]http.HandlerFunc{
		"a page of a proxy": func(w http.ResponseWriter, _ *http.Request) { http.Error(w, "<html>", http.StatusBadGateway) },
		"half a problem": func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", "application/problem+json")
			w.WriteHeader(http.StatusBadGateway)
			_, _ = w.Write([]byte(`{"detail":`))
		},
	} {
		t.Run(name, func(t *testing.T) {
			server := httptest.NewServer(answer)
			defer server.Close()
			c, err := client.New(server.URL+"/", server.Client())
			require.NoError(t, err)
			_, err = c.Kinds(t.Context())
			assert.EqualError(t, err, "creasefit: GET /v1/kinds: answered 502 Bad Gateway")
		})
	}
}

func TestCallsEndWithTheirContext(t *testing.T) {
	reached := make(chan struct{})
	server := httptest.NewServer(http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
		close(reached)
		<-r.Context().Done()
	}))
	defer server.Close()
	c, err := client.New(server.URL, server.Client())
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(t.Context())
	go func() {
		<-reached
		cancel()
	}()
	_, err = c.Kinds(ctx)
	assert.ErrorIs(t, err, context.Canceled)
}

func TestAddressesAreChecked(t *testing.T) {
	for _, address := range []string{"", "127.0.0.1:8080", "ftp://127.0.0.1", "http://", "http://a b"} {
		_, err := client.New(address, nil)
		assert.Error(t, err, address)
	}
}

// itemOf is an item of an order.
func itemOf(enclosure client.Request, count *int, name string) client.ItemsValue {
	item := client.ItemOf(enclosure)
	if item.Count = count; name != "" {
		item.Name = &name
	}
	return item
}
