package api

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/tell"
)

// inAddress is a batch in an address: names for all of its lines, and the lines.
func inAddress(names string, lines ...string) string {
	return "/v1/batch?" + names + "&" + url.Values{"lines": lines}.Encode()
}

const oneCard = "kind=slotted-band&unit=in&width=3-1/2in&thickness=0.09in&caliper=0.012in"

// Lines in an address are answered as those that are sent, may be kept, and are found
// unchanged by their tag.
func TestBatchInAnAddress(t *testing.T) {
	lines := []string{`{"id":"a","call":"solve"}`, `{"id":"b","call":"drawing","format":"svg","theme":"dark"}`}
	address := inAddress(oneCard, lines...)
	sent := call(t, shared(), http.MethodPost, "/v1/batch?"+oneCard, strings.Join(lines, "\n"), "Content-Type", mediaLines).ok()
	for range 2 { // the second is remembered
		a := call(t, shared(), http.MethodGet, address, "").ok()
		assert.Equal(t, sent.Body.String(), a.Body.String())
		assert.Contains(t, a.Header().Get("Cache-Control"), "public")
		again := call(t, shared(), http.MethodGet, address, "", "If-None-Match", a.Header().Get("Etag"))
		assert.Equal(t, http.StatusNotModified, again.Code)
	}
	packed := call(t, shared(), http.MethodGet, address, "", "Accept-Encoding", "gzip").ok()
	assert.Equal(t, "gzip", packed.Header().Get("Content-Encoding"))
	assert.Less(t, packed.Body.Len(), sent.Body.Len()/2)
}

// What has failed, or depends on the time that it was given, is kept by nobody.
func TestBatchInAnAddressThatDoesNotLast(t *testing.T) {
	for name, line := range map[string]string{
		"failed": `{"call":"solve","width":"3 5/7 in"}`, "no such call": `{"call":"nothing"}`, "broken": `{`,
		"timed": `{"call":"yield","unit":"in","sheet":"letter","effort_ms":1,"items":[{"blank":"3 x 2 in","count":40}]}`,
	} {
		names := oneCard
		if name == "timed" {
			names = "unit=in"
		}
		a := call(t, shared(), http.MethodGet, inAddress(names, line), "").ok()
		assert.Equal(t, "no-store", a.Header().Get("Cache-Control"), name)
		assert.Equal(t, "W/", a.Header().Get("Etag")[:2], name)
		answers := readLines(t, a.Body.String())
		require.Len(t, answers, 2, name)
		assert.Equal(t, name == "timed", answers[0].Problem == nil, name)
	}
}

func TestBatchInAnAddressIsRefused(t *testing.T) {
	for name, address := range map[string]string{
		"lines":     "/v1/batch?" + oneCard,
		"lines ":    inAddress(oneCard, make([]string, mostInAddress+1)...),
		"wdth":      inAddress("wdth=3", `{"call":"ruler"}`),
		"call":      inAddress("call=nothing", `{}`),
		"columns":   inAddress("columns=/x", `{"call":"ruler"}`),
		"download ": inAddress("download=x", `{"call":"ruler"}`),
	} {
		a := call(t, shared(), http.MethodGet, address, "")
		p := a.problem(http.StatusBadRequest)
		assert.Equal(t, strings.TrimSpace(name), p.Errors[0].Name)
		assert.NotEmpty(t, p.Errors[0].Hint+p.Errors[0].Expected, name)
	}
}

// A batch that is broken off says so where it has room for that, and is cut off where not:
// nobody takes a part for the whole.
func TestABatchThatIsBrokenOffSaysSo(t *testing.T) {
	assert.Equal(t, "]", string(arrayOutput{}.end(nil, 3, 0, "")))
	assert.PanicsWithValue(t, http.ErrAbortHandler, func() { arrayOutput{}.end(nil, 3, 0, "going down") })
	o := &tableOutput{source: &tableSource{header: []string{"sku", "title"}}, style: tell.Style{Separator: ';'}, behind: []string{"reading", "mm"}}
	assert.Empty(t, o.end(nil, 3, 0, ""))
	assert.Equal(t, ";;4;! going down;;\r\n", string(o.end(nil, 3, 0, "going down")), "in the row of the next line")
	assert.JSONEq(t, `{"done":false,"count":3,"failed":1,"why":"going down"}`, string(lineOutput{}.end(nil, 3, 1, "going down")))
}

// What is wrong with a batch as a whole is told at once: an array that is nested too deep, a
// picture in a table, twenty of the names that no line could have.
func TestBatchesAreRefusedAsAWhole(t *testing.T) {
	nested := func(depth int) string {
		return `[{"call":"ruler","length":` + strings.Repeat("[", depth-2) + strings.Repeat("]", depth-2) + "}]"
	}
	postBatch(t, "application/json", nested(ask.MostDepth)).ok() // the line has its problem
	postBatch(t, "application/json", nested(ask.MostDepth+1)).problem(http.StatusBadRequest)
	_, rows, _ := postTable(t, "?call=/v1/drawing/band&columns=/file_spec", mediaCSV, "format,unit,width,thickness,caliper\nsvg,in,3,0.1,0.01\n,in,3,0.1,0.01\n")
	assert.Contains(t, rows[0][6], "! format: the lines of a batch are answered in JSON")
	assert.Equal(t, []string{"", "1.2"}, rows[1][6:], "a drawing in a table is FOLD")
	var names strings.Builder
	for i := range ask.MostReported + 5 {
		names.WriteString("&no" + strconv.Itoa(i) + "=1")
	}
	p := call(t, shared(), http.MethodPost, "/v1/batch?call=ruler"+names.String(), "{}", "Content-Type", mediaLines).problem(http.StatusBadRequest)
	assert.Len(t, p.Errors, ask.MostReported)
}

// An entry of an order that the request has in no list keeps the name that it has.
func TestEntriesAreRenamed(t *testing.T) {
	for name, want := range map[string]string{"items[0].blank": "a.blank", "items[1]": "b", "items[2].blank": "items[2].blank", "items[x]": "items[x]", "sheet[0]": "sheet[0]", "items": "items"} {
		assert.Equal(t, want, renamedEntry(name, "items", []string{"a", "b"}), name)
	}
}
