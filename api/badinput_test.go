package api

import (
	"fmt"
	"html"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/wire"
)

// TestBadValues sends one wrong thing at a time, by GET and by POST: each is
// named with its value, a reason and its own code, and nothing panics.
func TestBadValues(t *testing.T) {
	const rest = "&unit=in&thickness=0.09&caliper=0.012"
	for _, c := range []struct{ name, value, code string }{
		{"width", "NaN", "unreadable"},
		{"width", "Inf", "unreadable"},
		{"width", "-Infinity", "unreadable"},
		{"width", "1e3", "unreadable"},
		{"width", "0x1f", "unreadable"},
		{"width", "+3 in", "unreadable"},
		{"width", "-3 in", "unreadable"},
		{"width", "٣ in", "unreadable"},
		{"width", "3 ft", "unreadable"},
		{"width", "3'", "unreadable"},
		{"width", "3 5/7 in", "unreadable"},
		{"width", "3 8/5 in", "unreadable"},
		{"width", "3 1/0 in", "unreadable"},
		{"width", "3 1/128 in", "too-fine"},
		{"width", "1,234mm", "ambiguous"},
		{"width", "1,234,567mm", "unreadable"},
		{"width", "1'234mm", "unreadable"},
		{"width", "9.2.1mm", "unreadable"},
		{"width", "99999999999999999999mm", "out-of-range"},
		{"width", "0." + strings.Repeat("3", 40), "unreadable"},
		{"width", strings.Repeat("9", 40), "unreadable"},
		{"width", strings.Repeat("9", 400), "unreadable"},
		{"width", "99 m", "unreadable"},
		{"width", "90000mm", "out-of-range"},
		{"width", "0", "out-of-range"},
		{"width", "0.01mm", "out-of-range"},
		{"width", "", "missing"},
		{"width", "   ", "missing"},
		{"width", "three", "unreadable"},
		{"width", "=SUM(A1)", "unreadable"},
		{"width", "<script>", "unreadable"},
		{"width", "\x00", "unreadable"},
		{"width", "\u202e3 in", "unreadable"},
		{"Width", "3.5", "unknown"},
		{"widht", "3.5", "unknown"},
		{"band_hieght", "1", "unknown"},
		{"fit", "snugly", "unknown"},
		{"fit", "Snug", "unknown"},
		{"bench", "laser", "unknown"},
		{"grain", "along", "unknown"},
		{"unit", "ft", "unknown"},
		{"contents", "tea-tim", "unknown"},
		{"stock", "index-111", "unknown"},
		{"grammage", "1e2", "unreadable"},
		{"grammage", "inf", "unreadable"},
		{"grammage", "0x10p3", "unreadable"},
		{"grammage", "1_000", "unreadable"},
		{"grammage", "9", "out-of-range"},
		{"grammage", "99999999999999999999999", "out-of-range"},
		{"ruler", "1/128 in", "too-fine"},
		{"ruler", "1/7 in", "unreadable"},
		{"ruler", "1 in", "out-of-range"},
		{"ruler", "10 mm", "out-of-range"},
		{"ruler", "0.7 mm", "out-of-range"},
		{"step", "0.1 mm", "too-fine"},
		{"sheet", "12 in", "unreadable"},
		{"sheet", "12 x 12 x 12 in", "unreadable"},
		{"sheet", "1 x 1 mm", "out-of-range"},
		{"format", "pdf", "unknown-format"},
		{"decimal", "dot", "unknown"},
		{"header", "no", "unknown"},
		{"errors", "line", "unknown"},
		{"pick", "step", "conflict"},
		{"download", "../x", "conflict"},
		{"tab", "2000mm", "out-of-range"},
		{"scores", "three", "unknown"},
	} {
		t.Run(c.name+"="+ask.Cut(c.value, 20), func(t *testing.T) {
			query := strings.Replace(rest, "&"+c.name+"=in", "", 1) + "&" + encoded(c.name) + "=" + encoded(c.value)
			if c.name != "width" {
				query += "&width=3.5"
			}
			wantFault(t, get(t, "/v1/solve/slotted-band?"+query[1:]), c.name, c.value, c.code)
		})
	}
}

// encoded escapes every byte of a value that a query cannot hold.
func encoded(text string) string {
	var b strings.Builder
	for _, c := range []byte(text) {
		fmt.Fprintf(&b, "%%%02X", c)
	}
	return b.String()
}

// wantFault checks that the answer names the value with the code.
func wantFault(t *testing.T, a answer, name, value, code string) {
	t.Helper()
	p := a.problem(http.StatusBadRequest)
	for _, e := range p.Errors {
		if e.Name == name && e.Code == code {
			assert.NotEmpty(t, e.Detail)
			assert.LessOrEqual(t, len([]rune(e.Value)), ask.MostValue+3)
			if strings.TrimSpace(value) != "" {
				assert.Equal(t, ask.Cut(value, ask.MostValue), e.Value)
			}
			return
		}
	}
	require.Fail(t, "no such fault", "want %s %s in %+v", name, code, p.Errors)
}

// TestConflicts gives two values that contradict each other.
func TestConflicts(t *testing.T) {
	for _, c := range []struct{ query, name, code string }{
		{"contents=tasting-cards&width=3in&caliper=0.3mm", "width", "conflict"},
		{"contents=tasting-cards&height=3in&caliper=0.3mm", "height", "conflict"},
		{"contents=tasting-cards&caliper=0.3mm&stock=index-110", "caliper", "conflict"},
		{"contents=tasting-cards&grammage=200&stock=index-110", "grammage", "conflict"},
		{"contents=tasting-cards&caliper=0.3mm&fit=snug&clearance_min=0mm", "clearance_min", "conflict"},
		{"contents=tasting-cards&caliper=0.3mm&clearance_min=1mm", "clearance_max", "missing"},
		{"contents=tasting-cards&caliper=0.3mm&clearance_max=1mm", "clearance_min", "missing"},
		{"contents=tasting-cards&caliper=0.3mm&clearance_min=2mm&clearance_max=1mm", "clearance_max", "conflict"},
		{"contents=tasting-cards&caliper=0.3mm&ruler=1/8in&step=1/16in", "step", "conflict"},
		{"contents=tasting-cards&caliper=0.3mm&ruler=1/8in&step=1mm", "step", "conflict"},
		{"contents=tasting-cards", "caliper", "missing"},
		{"caliper=0.3mm&thickness=2mm", "width", "missing"},
		{"contents=photo-4r&caliper=0.3mm", "thickness", "missing"},
		{"width=3in&thickness=0.1in&caliper=0.012in&format=csv&show=step", "show", "conflict"},
		{"width=3in&thickness=0.1in&caliper=0.012in&pick=/step&show=step", "show", "conflict"},
		{"width=3in&thickness=0.1in&caliper=0.012in&pick=/step&format=json", "pick", "conflict"},
		{"width=3in&thickness=0.1in&caliper=0.012in&pick=/nothing", "pick", "unknown"},
		{"width=3in&thickness=0.1in&caliper=0.012in&show=pices", "show", "unknown"},
		{"width=3in&width=3in&thickness=0.1in&caliper=0.012in", "width", "repeated"},
	} {
		t.Run(c.query, func(t *testing.T) { wantFault(t, get(t, "/v1/solve/slotted-band?"+c.query), c.name, "", c.code) })
	}
}

func TestBareNumberSuggestsBothUnits(t *testing.T) {
	p := get(t, "/v1/solve/slotted-band?width=3.5&thickness=2mm&caliper=0.3mm").problem(http.StatusBadRequest)
	require.Len(t, p.Errors, 1)
	assert.Equal(t, "no-unit", p.Errors[0].Code)
	assert.Contains(t, p.Errors[0].Hint, "3.5in")
	assert.Contains(t, p.Errors[0].Hint, "3.5mm")
	assert.Empty(t, p.Try, "the unit is not guessed")
}

func TestAllFaultsAreReportedAtOnceButTwentyAtMost(t *testing.T) {
	p := get(t, "/v1/solve/slotted-band?width=x&thickness=y&caliper=z&tabb=1&fit=tight&fit=loose").problem(http.StatusBadRequest)
	var names []string
	for _, e := range p.Errors {
		names = append(names, e.Name)
	}
	assert.Equal(t, []string{"width", "thickness", "caliper", "tabb", "fit", "fit"}, names)
	var many []string
	for i := range 50 {
		many = append(many, fmt.Sprintf("n%d=1", i))
	}
	p = get(t, "/v1/solve/slotted-band?"+strings.Join(many, "&")).problem(http.StatusBadRequest)
	assert.Len(t, p.Errors, 20)
	assert.Positive(t, p.NotListed)
}

func TestTryIsACorrectedAddress(t *testing.T) {
	for query, want := range map[string]string{
		"unit=in&widht=3.5&thickness=0.09&caliper=0.012":           "/v1/solve/slotted-band?unit=in&width=3.5&thickness=0.09&caliper=0.012",
		"unit=in&width=3.5&thickness=0.09&caliper=0.012&fit=snugg": "/v1/solve/slotted-band?unit=in&width=3.5&thickness=0.09&caliper=0.012&fit=snug",
		"unit=in&width=3-1/128&thickness=0.09&caliper=0.012":       "/v1/solve/slotted-band?unit=in&width=",
	} {
		p := get(t, "/v1/solve/slotted-band?"+query).problem(http.StatusBadRequest)
		require.NotEmpty(t, p.Try, query)
		assert.Contains(t, p.Try, want)
		get(t, p.Try).ok()
	}
}

// TestQueryStringsAreReadStrictly sends what net/url drops in silence.
func TestQueryStringsAreReadStrictly(t *testing.T) {
	for _, query := range []string{"width=3%zzin", "width=3in;thickness=1in", "%zz=1", "width=%"} {
		p := get(t, "/v1/solve/slotted-band?"+query).problem(http.StatusBadRequest)
		assert.Equal(t, "unreadable", p.Errors[0].Code, query)
	}
	spelled := func(length string) string {
		return get(t, "/v1/solve/slotted-band?pick=/given/width/mm&thickness=2mm&caliper=0.3mm&width="+length).ok().Body.String()
	}
	for _, length := range []string{"3-5/8in", "3+5/8in", "3%2B5/8in", "3%205/8%20in", "3%E2%85%9D%20in", "3-5%2F8%22", "92,075mm&decimal=comma"} {
		want := "92.075"
		if strings.Contains(length, "comma") {
			want = "92,075"
		}
		assert.Equal(t, want, spelled(length), length)
	}
}

// TestJSONIsReadStrictly sends bodies that encoding/json would take, and some
// that it would not.
func TestJSONIsReadStrictly(t *testing.T) {
	good := `"unit":"in","thickness":0.09,"caliper":0.012`
	for name, body := range map[string]string{
		"empty":               ` `,
		"not JSON":            `width=3.5`,
		"not an object":       `[1]`,
		"a text":              `"width"`,
		"null":                `null`,
		"trailing data":       `{` + good + `,"width":3.5} {}`,
		"trailing comma":      `{` + good + `,"width":3.5,}`,
		"comment":             `{` + good + `,"width":3.5} // x`,
		"duplicate":           `{` + good + `,"width":3.5,"width":3.5}`,
		"duplicate by escape": `{` + good + `,"width":3.5,"w\u0069dth":3.5}`,
		"wrong case":          `{` + good + `,"Width":3.5}`,
		"unknown":             `{` + good + `,"width":3.5,"colour":"red"}`,
		"null member":         `{` + good + `,"width":null}`,
		"an object":           `{` + good + `,"width":{"value":3.5}}`,
		"a list":              `{` + good + `,"width":[3.5]}`,
		"NaN":                 `{` + good + `,"width":NaN}`,
		"infinity":            `{` + good + `,"width":Infinity}`,
		"exponent":            `{` + good + `,"width":3.5e0}`,
		"huge exponent":       `{` + good + `,"width":1e999999999}`,
		"negative":            `{` + good + `,"width":-3.5}`,
		"boolean":             `{` + good + `,"width":true}`,
		"many digits":         `{` + good + `,"width":3.` + strings.Repeat("5", 5000) + `}`,
		"not UTF-8":           "{" + good + ",\"width\":\"3.5\xff\"}",
		"byte order mark":     "\ufeff{" + good + `,"width":3.5}`,
		"deep":                strings.Repeat(`{"a":`, 17) + `1` + strings.Repeat(`}`, 17),
		"very deep":           strings.Repeat(`[`, 60000),
		"cut off":             `{` + good + `,"width":3.`,
		"many names":          `{` + good + strings.Repeat(`,"a":1`, 100) + `}`,
		"lone surrogate":      `{` + good + `,"width":"\ud800"}`,
	} {
		t.Run(name, func(t *testing.T) {
			p := postJSON(t, "/v1/solve/slotted-band", body).problem(http.StatusBadRequest)
			assert.NotEmpty(t, p.Errors)
		})
	}
}

// TestBodiesOfOtherTypesAreRefused sends what is neither JSON nor a form.
func TestBodiesOfOtherTypesAreRefused(t *testing.T) {
	for _, header := range []string{"", "text/plain", "text/json", "application/xml", "multipart/form-data; boundary=x", "application/json; charset=latin1", ";;", "application/json, text/plain"} {
		p := call(t, shared(), "POST", "/v1/solve/slotted-band", cardsBody, "Content-Type", header).problem(http.StatusUnsupportedMediaType)
		assert.Equal(t, "/problems/media-type", p.Type, header)
	}
	call(t, shared(), "POST", "/v1/solve/slotted-band", cardsBody, "Content-Type", "application/json", "Content-Encoding", "gzip").problem(http.StatusUnsupportedMediaType)
	call(t, shared(), "POST", "/v1/solve/slotted-band", cardsBody, "Content-Type", "application/JSON; charset=UTF-8").ok()
	call(t, shared(), "POST", "/v1/solve/slotted-band?"+cards, "").ok()
}

func TestLimits(t *testing.T) {
	long := "/v1/solve/slotted-band?x-pad=" + strings.Repeat("a", 8000)
	assert.Equal(t, "/problems/url-too-long", get(t, long).problem(http.StatusRequestURITooLong).Type)
	large := `{"x-pad":"` + strings.Repeat("a", 70000) + `"}`
	assert.Equal(t, "/problems/body-too-large", postJSON(t, "/v1/solve/slotted-band", large).problem(http.StatusRequestEntityTooLarge).Type)
	p := get(t, "/v1/solve/slotted-band?"+strings.Repeat("a=1&", 65)).problem(http.StatusBadRequest)
	assert.Contains(t, fmt.Sprint(p.Errors), "too many names")
	p = get(t, "/v1/ruler?"+strings.Repeat("length=1mm&", 51)).problem(http.StatusBadRequest)
	assert.Equal(t, "too-many", p.Errors[0].Code)
	l := decode[wire.Limits](get(t, "/v1/limits").ok())
	assert.Equal(t, 8000, l.URL)
	assert.Equal(t, 64, l.Names)
}

// TestInfeasibleRequestsSayWhatWouldHelp asks for what no ruler shows.
func TestInfeasibleRequestsSayWhatWouldHelp(t *testing.T) {
	p := get(t, "/v1/solve/slotted-band?width=3.5in&thickness=0.09in&caliper=0.012in&clearance_min=0.001in&clearance_max=0.002in").problem(http.StatusUnprocessableEntity)
	assert.Equal(t, "/problems/no-fit", p.Type)
	assert.Contains(t, p.Detail, "width")
	assert.Contains(t, p.Detail, "nearest")
	assert.NotEmpty(t, p.Errors[0].Hint)
	p = get(t, "/v1/solve/slotted-band?width=3.5in&thickness=0.09in&caliper=0.012in&band_height=3/8in").problem(http.StatusUnprocessableEntity)
	assert.Equal(t, "/problems/impossible", p.Type)
	assert.Equal(t, "band_height", p.Errors[0].Name)
}

func TestEveryProblemTypeResolves(t *testing.T) {
	for i := range problemKinds {
		page := get(t, "/problems/"+string(problemKinds[i].code)).ok()
		assert.Contains(t, html.UnescapeString(page.Body.String()), problemKinds[i].title)
	}
	get(t, "/problems/nothing").problem(http.StatusNotFound)
}
