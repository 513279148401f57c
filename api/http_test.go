package api

import (
	"bytes"
	"compress/gzip"
	"encoding/csv"
	"encoding/xml"
	"io"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
)

// everyPath is one address of every call.
var everyPath = []string{
	"/", "/v1/kinds", "/v1/kinds/band", "/v1/solve/slotted-band?" + cards, "/v1/ruler?length=92.1mm", "/v1/stock?grammage=200", "/v1/posts", "/v1/mail?" + square,
	"/v1/contents", "/v1/stocks", "/v1/sheets/sizes", "/v1/benches", "/v1/limits", "/openapi.json", "/openapi.yaml",
	"/problems/no-fit", "/healthz", "/readyz",
}

func TestHeadWorksWhereverGetDoes(t *testing.T) {
	for _, path := range everyPath {
		byGet := get(t, path).ok()
		byHead := call(t, shared(), http.MethodHead, path, "").ok()
		for _, name := range []string{"Content-Type", "Content-Length", "ETag", "Cache-Control", "Vary"} {
			assert.Equal(t, byGet.Header().Get(name), byHead.Header().Get(name), "%s of %s", name, path)
		}
	}
}

func TestUnchangedAnswersAreNotSentAgain(t *testing.T) {
	for _, path := range everyPath {
		first := get(t, path).ok()
		tag := first.Header().Get("ETag")
		if path == "/healthz" || path == "/readyz" {
			assert.Equal(t, "no-store", first.Header().Get("Cache-Control"))
			continue
		}
		require.Regexp(t, `^"[^"]+"$`, tag, path)
		for _, header := range []string{tag, "W/" + tag, `"other", ` + tag, "*"} {
			again := get(t, path, "If-None-Match", header)
			assert.Equal(t, http.StatusNotModified, again.Code, path)
			assert.Empty(t, again.Body.String())
			assert.Equal(t, tag, again.Header().Get("ETag"))
			assert.Contains(t, again.Header().Get("Cache-Control"), "public, max-age=")
		}
		get(t, path, "If-None-Match", `"other"`).ok()
	}
	const body = `{"length":"92.1 mm"}`
	tag := postJSON(t, "/v1/ruler", body).ok().Header().Get("ETag")
	for _, header := range []string{tag, "*"} {
		postJSON(t, "/v1/ruler", body, "If-None-Match", header).ok() // a 304 is for GET and HEAD alone (RFC 9110, 13.1.2)
	}
}

// TestEntityTagsTellAnswersApart: the order of the names says nothing, anything
// that changes the answer gives another tag; so does another spelling of a
// value, since the answer repeats it.
func TestEntityTagsTellAnswersApart(t *testing.T) {
	tag := func(target string, set ...string) string { return get(t, target, set...).ok().Header().Get("ETag") }
	base := "/v1/solve/slotted-band?unit=in&width=3.5&thickness=0.09&caliper=0.012"
	same := tag(base)
	assert.Equal(t, same, tag("/v1/solve/slotted-band?caliper=0.012&thickness=0.09&width=3.5&unit=in&_=99&gclid=x"))
	assert.Equal(t, same, tag(base+"&errors=cell"))
	seen := map[string]string{same: base}
	for _, other := range []string{
		strings.Replace(base, "3.5", "3-1/2", 1), base + "&fit=snug", base + "&fit=loose", base + "&format=csv", base + "&format=xml", base + "&format=text", base + "&format=csv&header=0",
		base + "&format=csv&decimal=comma", base + "&pick=/step", base + "&show=step", base + "&step=1/16in", base + "&bench=plotter",
		strings.Replace(base, "slotted-band", "band", 1), strings.Replace(base, "3.5", "3.51", 1), strings.Replace(base, "unit=in", "unit=mm", 1) + "&contents_tolerance=0",
	} {
		other = strings.Replace(other, "unit=mm&width=3.5&thickness=0.09&caliper=0.012", "unit=mm&width=88.9&thickness=2.286&caliper=0.3048", 1)
		got := tag(other)
		assert.NotContains(t, seen, got, "%s and %s", other, seen[got])
		seen[got] = other
	}
	assert.NotEqual(t, same, tag(base, "Accept-Encoding", "gzip"))
	assert.NotEqual(t, same, tag(base, "Accept", "text/csv"))
}

func TestFormatsAreNegotiated(t *testing.T) {
	for _, c := range []struct{ extension, query, accept, media, vary string }{
		{"", "", "", "application/json", "Accept-Encoding, Accept"},
		{"", "", "*/*", "application/json", "Accept-Encoding, Accept"},
		{"", "", "text/csv", "text/csv; charset=utf-8", "Accept-Encoding, Accept"},
		{"", "", "text/csv;q=0.1, application/xml;q=0.9", "application/xml", "Accept-Encoding, Accept"},
		{"", "", "text/*", "text/csv; charset=utf-8", "Accept-Encoding, Accept"},
		{"", "", "text/*, text/csv;q=0", "text/plain; charset=utf-8", "Accept-Encoding, Accept"},
		{"", "", "image/png", "application/json", "Accept-Encoding, Accept"},
		{"", "", "text/csv;q=nonsense", "application/json", "Accept-Encoding, Accept"},
		{"", "&format=text", "text/csv", "text/plain; charset=utf-8", "Accept-Encoding"},
		{".csv", "", "application/xml", "text/csv; charset=utf-8", "Accept-Encoding"},
		{".csv", "&format=csv", "", "text/csv; charset=utf-8", "Accept-Encoding"},
		{".json", "", "text/csv", "application/json", "Accept-Encoding"},
		{".txt", "", "", "text/plain; charset=utf-8", "Accept-Encoding"},
		{".xml", "", "", "application/xml", "Accept-Encoding"},
	} {
		a := get(t, "/v1/solve/slotted-band"+c.extension+"?"+cards+c.query, "Accept", c.accept).ok()
		assert.Equal(t, c.media, a.Header().Get("Content-Type"), "%+v", c)
		assert.Equal(t, c.vary, a.Header().Get("Vary"), "%+v", c)
	}
	get(t, "/v1/solve/slotted-band.csv?format=xml&"+cards).problem(http.StatusBadRequest)
	p := get(t, "/v1/solve/slotted-band.pdf?"+cards).problem(http.StatusBadRequest)
	assert.Contains(t, p.Errors[0].Expected, "json, csv, xml, text")
	p = get(t, "/v1/ruler.pdf?length=1mm").problem(http.StatusBadRequest)
	assert.Contains(t, p.Errors[0].Expected, "json, csv, xml, text")
	assert.Equal(t, "text/csv; charset=utf-8", get(t, "/v1/ruler.csv?length=1mm").ok().Header().Get("Content-Type"))
}

func TestPickAndShow(t *testing.T) {
	pickOf := func(pointer string) string {
		return get(t, "/v1/solve/slotted-band?pick="+pointer+"&"+cards).ok().Body.String()
	}
	assert.Equal(t, "2.25", pickOf("/pieces/0/scores/1/at/in"))
	assert.Equal(t, "2 1/4 in", pickOf("/pieces/0/scores/1/at/reading"))
	assert.Equal(t, "true", pickOf("/proof/closes"))
	assert.Equal(t, `{"text":"3-1/2","mm":88.9,"in":3.5}`, pickOf("/given/width"))
	assert.Equal(t, "2,25", get(t, "/v1/solve/slotted-band?decimal=comma&pick=/pieces/0/scores/1/at/in&"+cards).ok().Body.String())
	assert.JSONEq(t, `{"step":"1/8 in","unit":"in"}`, get(t, "/v1/solve/slotted-band?show=unit,step&"+cards).ok().Body.String())
	a := get(t, "/v1/solve/slotted-band?pick=/step&"+cards).ok()
	assert.Equal(t, "text/plain; charset=utf-8", a.Header().Get("Content-Type"))
	p := get(t, "/v1/solve/slotted-band?pick=/peices/0&"+cards).problem(http.StatusBadRequest)
	assert.Contains(t, p.Errors[0].Hint, "pieces")
}

// TestPointers takes the examples of RFC 6901, section 5.
func TestPointers(t *testing.T) {
	document := []byte(`{"foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4, "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8}`)
	for pointer, want := range map[string]string{
		"/foo": `["bar", "baz"]`, "/foo/0": "bar", "/": "0", "/a~1b": "1", "/c%d": "2", "/e^f": "3", "/g|h": "4", `/i\j`: "5", `/k"l`: "6", "/ ": "7", "/m~0n": "8",
	} {
		got, f := pick(document, pointer, false)
		assert.Empty(t, f.Code, pointer)
		assert.Equal(t, want, string(got), pointer)
	}
	for _, pointer := range []string{"/foo/2", "/foo/-", "/foo/00", "/foo/bar", "/bar", "/foo/0/0"} {
		_, f := pick(document, pointer, false)
		assert.Equal(t, "pick", f.Field, pointer)
	}
}

// A picked number has the decimal mark that was asked for, whatever it begins with; what is
// no number keeps its points.
func TestPickedNumbersHaveTheDecimalMark(t *testing.T) {
	document := []byte(`{"below":-0.5,"nine":9.25,"none":0.5,"text":"9.5 in","list":[1.5],"no":false}`)
	for pointer, want := range map[string]string{"/below": "-0,5", "/nine": "9,25", "/none": "0,5", "/text": "9.5 in", "/list": "[1.5]", "/list/0": "1,5", "/no": "false"} {
		got, f := pick(document, pointer, true)
		assert.Empty(t, f.Code, pointer)
		assert.Equal(t, want, string(got), pointer)
	}
}

// TestShowNamesAMemberOnce: readers of JSON differ about a name that comes twice.
func TestShowNamesAMemberOnce(t *testing.T) {
	document := []byte(`{"a":1,"b":{"c":[2]},"a/b":3}`)
	for names, want := range map[string]string{"a": `{"a":1}`, "b,a": `{"b":{"c":[2]},"a":1}`, "a, a,b,a": `{"a":1,"b":{"c":[2]}}`, "a/b": `{"a/b":3}`} {
		got, f := show(document, strings.Split(names, ","))
		assert.Empty(t, f.Code, names)
		assert.Equal(t, want, string(got), names)
	}
	_, f := show(document, []string{"a", "d"})
	assert.Equal(t, "show", f.Field)
	assert.Equal(t, "one of a, b, a/b", f.Expected)
}

func TestDownloadsAreAttachments(t *testing.T) {
	a := get(t, "/v1/solve/slotted-band.csv?download=stall-band_1&"+cards).ok()
	assert.Equal(t, `attachment; filename="stall-band_1.csv"`, a.Header().Get("Content-Disposition"))
}

func TestErrorsInCells(t *testing.T) {
	for target, want := range map[string]string{
		"/v1/solve/slotted-band?errors=cell&width=3+5/7in&thickness=1mm&caliper=0.3mm": "! width: cannot read '3 5/7 in'",
		"/v1/solve/nothing?errors=cell": "! kind: there is no such kind",
		"/v1/solve/slotted-band?errors=cell&width=3.5in&thickness=0.09in&caliper=0.012in&clearance_min=0.001in&clearance_max=0.002in": "! fit: no readings",
		"/nothing?errors=cell": "! there is no such address",
	} {
		a := get(t, strings.ReplaceAll(target, "3+5/7in", "3+5/7+in")).ok()
		assert.Contains(t, a.Body.String(), want)
		assert.NotContains(t, a.Body.String(), "\n")
		assert.Equal(t, "no-store", a.Header().Get("Cache-Control"))
		assert.Equal(t, "text/plain; charset=utf-8", a.Header().Get("Content-Type"))
	}
}

// TestTablesAreReadByOthers reads the CSV and the XML with the standard
// library's readers.
func TestTablesAreReadByOthers(t *testing.T) {
	records, err := csv.NewReader(get(t, "/v1/solve/slotted-band.csv?"+cards).ok().Body).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"piece", "what", "name", "from", "reading", "in", "mm"}, records[0])
	assert.Equal(t, []string{"band", "score", "score 2", "left", "2 1/4 in", "2.25", "57.15"}, records[4])
	semicolons := csv.NewReader(get(t, "/v1/solve/slotted-band.csv?decimal=comma&header=0&"+cards).ok().Body)
	semicolons.Comma = ';'
	comma, err := semicolons.ReadAll()
	require.NoError(t, err)
	require.Len(t, comma, len(records)-1)
	for i, record := range comma {
		for j, cell := range record {
			assert.Equal(t, records[i+1][j], strings.Replace(cell, ",", ".", 1))
			assert.NotContains(t, []string{"=", "+", "-", "@"}, cell[:min(1, len(cell))])
		}
	}
	var document struct {
		Scores []struct {
			In float64 `xml:"in,attr"`
		} `xml:"score"`
	}
	body := get(t, "/v1/solve/slotted-band.xml?"+cards).ok().Body.Bytes()
	d := xml.NewDecoder(bytes.NewReader(body))
	d.CharsetReader = func(charset string, input io.Reader) (io.Reader, error) {
		assert.Equal(t, "US-ASCII", charset)
		return input, nil
	}
	require.NoError(t, d.Decode(&document))
	require.Len(t, document.Scores, 4)
	assert.InDelta(t, 0.5, document.Scores[0].In, 0)
	for _, c := range body {
		assert.Less(t, c, byte(0x80))
	}
}

func TestAnswersAreCompressed(t *testing.T) {
	plain := get(t, "/v1/solve/slotted-band?"+cards).ok()
	packed := get(t, "/v1/solve/slotted-band?"+cards, "Accept-Encoding", "br, gzip;q=0.5").ok()
	assert.Equal(t, "gzip", packed.Header().Get("Content-Encoding"))
	unpack, err := gzip.NewReader(packed.Body)
	require.NoError(t, err)
	body, err := io.ReadAll(unpack)
	require.NoError(t, err)
	assert.Equal(t, plain.Body.String(), string(body))
	assert.Empty(t, get(t, "/v1/solve/slotted-band?"+cards, "Accept-Encoding", "gzip;q=0").ok().Header().Get("Content-Encoding"))
}

func TestBrowsersMayCallFromAnywhere(t *testing.T) {
	for _, path := range []string{"/v1/solve/slotted-band", "/nothing"} {
		a := call(t, shared(), http.MethodOptions, path, "", "Origin", "https://tidewater.example", "Access-Control-Request-Method", "POST")
		assert.Equal(t, http.StatusNoContent, a.Code)
		assert.Contains(t, a.Header().Get("Access-Control-Allow-Methods"), "POST")
		assert.Contains(t, a.Header().Get("Access-Control-Allow-Headers"), "Content-Type")
	}
}

func TestWrongAddressesAndMethods(t *testing.T) {
	const sizes = "unit=in&width=3&height=2&thickness=1&caliper=0.012"
	p := get(t, "/v1/solve/sloted-band?unit=in").problem(http.StatusNotFound)
	assert.Equal(t, "/v1/solve/slotted-band?unit=in", p.Try)
	assert.Contains(t, p.Errors[0].Expected, "slotted-band")
	p = get(t, "/v1/rular").problem(http.StatusNotFound)
	assert.Equal(t, "/v1/ruler", p.Try)
	for asked, try := range map[string]string{ // what was right of an address is kept
		"/v1/rular?length=3in":              "/v1/ruler?length=3in",
		"/v1/drawing/traay.png?" + sizes:    "/v1/drawing/tray.png?" + sizes,
		"/v1/kinds/try/design?walls=single": "/v1/kinds/tray/design?walls=single",
	} {
		assert.Equal(t, try, get(t, asked).problem(http.StatusNotFound).Try)
	}
	for _, path := range []string{"/v1/drawing/tray.svg?", "/v1/guide/tray.md?", "/v1/solve/tray?", "/v1/solve/tray.txt?"} {
		assert.Equal(t, path+sizes, get(t, path+strings.Replace(sizes, "width", "widht", 1)).problem(http.StatusBadRequest).Try)
		get(t, path+sizes).ok()
	}
	for _, path := range []string{"//v1/kinds", "/v1/kinds/", "/v1//kinds", "/v1/kinds/../kinds", "/V1/kinds", "/v1/solve/", "/v1/solve/band/x"} {
		get(t, path).problem(http.StatusNotFound)
	}
	for _, method := range []string{"PUT", "DELETE", "PATCH", "TRACE", "PROPFIND", "BREW"} {
		a := call(t, shared(), method, "/v1/ruler", "")
		assert.Contains(t, a.Header().Get("Allow"), "GET, HEAD, POST")
		a.problem(http.StatusMethodNotAllowed)
	}
	a := call(t, shared(), "POST", "/v1/kinds", "")
	assert.Contains(t, a.Header().Get("Allow"), "GET, HEAD")
	a.problem(http.StatusMethodNotAllowed)
}

// TestHostNeverGetsIntoLinks sends forged forwarding headers.
func TestHostNeverGetsIntoLinks(t *testing.T) {
	for _, path := range everyPath {
		body := get(t, path, "Host", "evil.example", "X-Forwarded-Host", "evil.example", "X-Forwarded-Prefix", "/evil").Body.String()
		assert.NotContains(t, body, "evil")
	}
}

func TestRequestIDs(t *testing.T) {
	given := get(t, "/healthz", "Request-Id", "stall-42-abc").ok()
	assert.Equal(t, "stall-42-abc", given.Header().Get("Request-Id"))
	for _, bad := range []string{"short", "with space in it", strings.Repeat("x", 65), "line\nbreak-here"} {
		got := get(t, "/healthz", "Request-Id", bad).ok().Header().Get("Request-Id")
		assert.NotEqual(t, bad, got)
	}
	assert.NotEqual(t, get(t, "/healthz").Header().Get("Request-Id"), get(t, "/healthz").Header().Get("Request-Id"))
}

func TestRulerReadsEveryMark(t *testing.T) {
	r := decode[wire.Ruler](postJSON(t, "/v1/ruler", `{"length":["92.1 mm","3 5/8 in"]}`).ok())
	require.Len(t, r.Lengths, 2)
	assert.Equal(t, "mm", r.Unit)
	for _, l := range r.Lengths {
		assert.Len(t, l.Readings, 11)
		for _, reading := range l.Readings {
			assert.InDelta(t, l.MM, reading.At.ExactMM, 1e-9)
			assert.InDelta(t, reading.At.MM-reading.At.ExactMM, reading.At.OffMM, 1e-9)
		}
	}
	assert.Equal(t, "3 5/8 in", r.Lengths[0].Readings[3].At.Reading)
	get(t, "/v1/ruler").problem(http.StatusBadRequest)
}

// TestPaperAgreesWithPublishedFigures compares with GNU units 2.22: 80 lb cover
// is 216.3291 g/m2.
func TestPaperAgreesWithPublishedFigures(t *testing.T) {
	p := decode[wire.Paper](get(t, "/v1/stock?basis_weight=80&grade=cover&sheet=letter").ok())
	assert.InDelta(t, 216.3291, p.Grammage, 0.005)
	assert.True(t, p.CaliperEstimated)
	for query, code := range map[string]string{
		"": "missing", "unit=in": "missing", "basis_weight=80": "missing", "grade=cover": "missing",
		"grammage=200&sheet_mass=3&sheet=letter": "conflict", "stock=index-110&caliper=1mm": "conflict",
		"points=12&stack=1in&stack_sheets=50": "conflict", "unit=in&stack=1/2": "missing", "stock=index-110&points=14": "conflict",
	} {
		assert.Equal(t, code, get(t, "/v1/stock?"+query).problem(http.StatusBadRequest).Errors[0].Code, query)
	}
	stack := decode[wire.Paper](get(t, "/v1/stock?stack=1/2in&stack_sheets=50&points=10").ok())
	assert.Equal(t, 0.01, stack.Caliper.In)
	doubted := decode[wire.Paper](get(t, "/v1/stock?unit=mm&points=4&basis_weight=80&grade=cover").ok())
	assert.Equal(t, []string{"points", "basis_weight"}, doubted.Contradict)
	assert.True(t, doubted.Unlikely)
}

// TestKindsDescribeWhatIsRead: every default and every example that a kind
// lists is taken, and the bounds are the ones that hold.
func TestKindsDescribeWhatIsRead(t *testing.T) {
	for _, summary := range decode[wire.KindList](get(t, "/v1/kinds").ok()).Kinds {
		kind := decode[wire.Kind](get(t, summary.Link).ok())
		assert.Equal(t, "/v1/solve/"+kind.Name, kind.Links.Solve)
		for _, p := range kind.Parameters {
			if p.Type == "length" {
				above := get(t, kind.Links.Solve+"?"+p.Name+"=99999mm").problem(http.StatusBadRequest)
				assert.Equal(t, "out-of-range", above.Errors[0].Code, p.Name)
			}
			if p.About == "answer" {
				continue
			}
			for _, e := range get(t, kind.Links.Solve+"?"+p.Name+"="+encoded(p.Example)).problem(http.StatusBadRequest).Errors {
				assert.NotContains(t, []string{"unreadable", "unknown", "out-of-range", "too-fine"}, e.Code, "the example of %s: %+v", p.Name, e)
			}
		}
	}
}
