package ask

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/contents"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// band is an empty request for a band.
func band() *Asked[*Enclosure] {
	k, _ := repertoire.Lookup("band")
	return NewSolve(k, "json", "csv").Take()
}

// TestPresetContentsAnswerInTheirUnit: contents that are measured in inches are
// answered in inches when nothing else names a unit.
func TestPresetContentsAnswerInTheirUnit(t *testing.T) {
	inches := 0
	for _, item := range contents.All() {
		a := band()
		a.AddQuery("stock=index-110&thickness=0.1&contents=" + item.Name)
		a.Parse()
		a.Check()
		assert.Contains(t, a.Faults().Error(), "thickness", "a bare number is still nobody's")
		a = band()
		a.AddQuery("stock=index-110&contents=" + item.Name)
		a.Parse()
		if a.Check() {
			assert.Equal(t, item.Unit, a.Unit(), item.Name)
			assert.Equal(t, item.Unit, a.Q.Request.Unit, item.Name)
			assert.Equal(t, item.Unit, a.Q.Request.Ruler.Unit(), item.Name)
		}
		if item.Unit == measure.Inch {
			inches++
		}
	}
	assert.Positive(t, inches)
}

// TestTheUnitIsThatOfTheFirstLength, or of a step, or the one named.
func TestTheUnitIsThatOfTheFirstLength(t *testing.T) {
	for query, want := range map[string]measure.Unit{
		"width=3in&caliper=0.3mm": measure.Inch, "caliper=0.3mm&width=3in": measure.Millimetre, "caliper=0.3mm&width=3in&unit=in": measure.Inch,
		"step=1/8in&caliper=0.3mm": measure.Inch, "sheet=300x300mm&width=3in": measure.Millimetre, "sheet=a4&width=3in": measure.Inch, "grammage=200": measure.NoUnit,
	} {
		a := band()
		a.AddQuery(query)
		a.Parse()
		assert.Equal(t, want, a.Unit(), query)
	}
}

// TestWhatIsFilledInSaysWhereItComesFrom lists what presets and defaults add.
func TestWhatIsFilledInSaysWhereItComesFrom(t *testing.T) {
	from := func(query string) map[string]string {
		a := band()
		a.AddQuery(query)
		a.Parse()
		require.True(t, a.Check(), "%v", a.Faults())
		list := map[string]string{}
		for _, g := range a.Given() {
			if g.From != "" {
				list[g.Name] = g.From + " " + g.Text
			}
		}
		return list
	}
	assert.Equal(t, map[string]string{"width": "contents 85.6 mm", "height": "contents 53.98 mm", "thickness": "contents 0.76 mm", "caliper": "stock 0.28 mm", "ruler": "default 0.5 mm", "fit": "default easy"},
		withoutCaliper(from("contents=id-1&stock=index-110")))
	assert.Contains(t, from("contents=id-1&grammage=200")["caliper"], "grammage ")
	assert.Equal(t, map[string]string{"ruler": "default 1/32 in"}, from("unit=in&width=3&thickness=0.1&caliper=0.01&step=1/32in&clearance_min=0&clearance_max=0.1"))
	assert.Empty(t, from("unit=in&width=3&thickness=0.1&caliper=0.01&ruler=1/16in&fit=easy"))
}

// withoutCaliper drops the figure of a paper, which package stock answers for.
func withoutCaliper(list map[string]string) map[string]string {
	if strings.HasPrefix(list["caliper"], "stock ") {
		list["caliper"] = "stock 0.28 mm"
	}
	return list
}

// TestKeysTellRequestsApart draws pairs of requests: they have the same key only
// if the same texts were given for the same names in the same unit, in whatever
// order.
func TestKeysTellRequestsApart(t *testing.T) {
	text := rapid.StringMatching(`[a1/ =&]{0,6}`)
	draw := func(rt *rapid.T) map[string]string {
		given := map[string]string{}
		for _, name := range []string{"width", "tab", "lap", "fit", "decimal", "pick"} {
			if rapid.Bool().Draw(rt, name) {
				given[name] = text.Draw(rt, name+" text")
			}
		}
		return given
	}
	key := func(given map[string]string, backwards bool) string {
		a := band()
		names := []string{"width", "lap", "fit", "decimal", "pick"}
		for i := range names {
			n := names[i]
			if backwards {
				n = names[len(names)-1-i]
			}
			if text, ok := given[n]; ok {
				a.Add(n, text)
			}
		}
		a.Parse()
		return string(a.AppendKey(nil))
	}
	identity := func(given map[string]string) string {
		var b strings.Builder
		for _, name := range []string{"width", "lap", "fit", "decimal"} { // pick only narrows
			if text, ok := given[name]; ok {
				if strings.TrimSpace(text) == "" {
					text = "" // nothing was said
				}
				b.WriteString(name + "\x00" + text + "\x00")
			}
		}
		return b.String()
	}
	rapid.Check(t, func(rt *rapid.T) {
		one, other := draw(rt), draw(rt)
		assert.Equal(rt, key(one, false), key(one, true), "the order does not matter")
		if identity(one) != identity(other) {
			assert.NotEqual(rt, key(one, false), key(other, false), "%v and %v", one, other)
		} else {
			assert.Equal(rt, key(one, false), key(other, false), "%v and %v", one, other)
		}
	})
}

// TestTheCanonicalAddressReadsBack: whatever spelling a request had, its
// canonical address is read as the same request and is its own.
func TestTheCanonicalAddressReadsBack(t *testing.T) {
	k, _ := repertoire.Lookup("slotted-band")
	rapid.Check(t, func(rt *rapid.T) {
		unit := rapid.SampledFrom([]string{"in", "mm"}).Draw(rt, "unit")
		query := "unit=" + unit
		for name, values := range map[string][]string{
			"width": {"3.5in", "3-1/2in", "88.9mm", "8.89cm"}, "thickness": {"0.09in", "2.286 mm"}, "caliper": {".012in", "0.3mm"}, "tab": {"1/2in", "13mm"},
			"sheet": {"12x12in", "letter", "300 x 400 mm"}, "fit": {"snug", "loose"}, "grammage": {"270", "270.50"}, "step": {"1/8in", "1mm"}, "grain": {"width"},
		} {
			if name == "width" || name == "thickness" || name == "caliper" || rapid.Bool().Draw(rt, name) {
				query += "&" + name + "=" + strings.ReplaceAll(rapid.SampledFrom(values).Draw(rt, name+" value"), " ", "+")
			}
		}
		read := func(query string) (*Asked[*Enclosure], bool) {
			a := NewSolve(k, "json").Take()
			a.AddQuery(query)
			a.Parse()
			return a, a.Check()
		}
		a, ok := read(query)
		if !ok {
			return // a step of another unit than the ruler's
		}
		canonical := string(a.AppendQuery(nil, false))
		again, ok := read(canonical)
		require.True(rt, ok, "%s: %v", canonical, again.Faults())
		assert.Equal(rt, flatten(a.Q.Request), flatten(again.Q.Request), "%s and %s", query, canonical)
		assert.Equal(rt, canonical, string(again.AppendQuery(nil, false)))
	})
}

// TestBinderAndValidator are what echo asks for.
func TestBinderAndValidator(t *testing.T) {
	e := echo.New()
	e.Binder, e.Validator = Binder{MostBody: 64, MostLarge: 128}, Validator{}
	bind := func(asked any, media, body string) error {
		request := httptest.NewRequest(http.MethodPost, "/?unit=in", strings.NewReader(body))
		request.Header.Set("Content-Type", media)
		return e.NewContext(request, httptest.NewRecorder()).Bind(asked)
	}
	a := band()
	require.NoError(t, bind(a, "application/json", `{"width":3,"thickness":0.1,"caliper":"0.01"}`))
	c := e.NewContext(httptest.NewRequest(http.MethodGet, "/", nil), httptest.NewRecorder())
	require.NoError(t, c.Validate(a))
	assert.Equal(t, measure.Inches(3), a.Q.Request.Width)
	require.NoError(t, bind(band(), "application/x-www-form-urlencoded; charset=UTF-8", "width=3"))
	for body, code := range map[string]fault.Code{`{"width":3}` + strings.Repeat(" ", 64): BodyTooLarge} {
		var faulty fault.Fault
		require.ErrorAs(t, bind(band(), "application/json", body), &faulty)
		assert.Equal(t, code, faulty.Code)
		assert.Equal(t, "the body has more than 64 bytes", faulty.Detail)
		require.NoError(t, bind(NewYield("json").Take(), "application/json", body), "orders may be larger")
	}
	for _, media := range []string{"text/plain", "application/json; charset=latin1", "", "application/x"} {
		var faulty fault.Fault
		require.ErrorAs(t, bind(band(), media, "{}"), &faulty, media)
		assert.Equal(t, MediaType, faulty.Code, media)
	}
	wrong := band()
	require.NoError(t, bind(wrong, "application/json", `{"width":"x","height":900}`))
	var faults fault.Faults
	require.ErrorAs(t, c.Validate(wrong), &faults)
	assert.Equal(t, []string{"width", "height"}, []string{faults[0].Field, faults[1].Field})
	assert.Error(t, e.Binder.Bind(&struct{}{}, c), "no other struct is read")
	assert.Error(t, c.Validate(&struct{}{}))
}

// TestBodiesThatAreNoFlatObject are refused as a whole, with what is wrong.
func TestBodiesThatAreNoFlatObject(t *testing.T) {
	for body, detail := range map[string]string{
		"": "the body is empty", "[]": "the body is not a JSON object", "{": "the body is not JSON: unexpected end of JSON input at byte 1", "{} x": "the body is not JSON: invalid character 'x' after top-level value at byte 4",
		"{\"a\":\"\xff\"}": "the JSON is not UTF-8", strings.Repeat("[", 17) + strings.Repeat("]", 17): "the JSON is nested deeper than 16 levels",
		`{"width":[3]}`: "this name takes one value, not a list", `{"width":{"a":1}}`: "a value is a text or a number, not an object or a list", `{"width":null}`: "null is no value",
		`{"unit":"in","width":3,"width":3}`: "the name is given more than once", `{"width":true}`: "cannot read 'true'",
	} {
		a := band()
		a.AddJSON([]byte(body))
		a.Parse()
		require.NotEmpty(t, a.Faults(), body)
		assert.Contains(t, a.Faults()[0].Detail, detail, body)
	}
	_, ok := UnreadableJSON([]byte(strings.Repeat("[", 16) + strings.Repeat("]", 16)))
	assert.False(t, ok)
	a := band()
	a.AddQuery("a=1;b=2&c=%zz&" + strings.Repeat("x=1&", MostNames) + "y=1")
	assert.Equal(t, "names are separated by &, not by a semicolon", a.Faults()[0].Detail)
	assert.Equal(t, "the percent sign does not begin two hexadecimal digits", a.Faults()[1].Detail)
	assert.Equal(t, fault.TooMany, a.Faults()[2].Code)
}

// TestDropTakesTheFirst of a name away; another one is still an unknown name.
func TestDropTakesTheFirst(t *testing.T) {
	for query, unknown := range map[string]int{"id=1&width=3in": 0, "width=3in&id=1&id=2": 1, "width=3in": 0} {
		a := band()
		a.AddQuery(query)
		a.Drop("id")
		a.Parse()
		assert.Len(t, a.Faults(), unknown, query)
		assert.True(t, a.Q.Contents.Width.Given, query)
	}
}

// TestOutsideNamesAreIgnored: what browsers and link shorteners hang on.
func TestOutsideNamesAreIgnored(t *testing.T) {
	a := band()
	a.AddQuery("_=1&gclid=2&fbclid=3&update=4&x-anything=5&utm_source=6")
	a.Parse()
	assert.Empty(t, a.Faults())
	assert.Equal(t, []byte{byte(measure.NoUnit)}, a.AppendKey(nil))
}

func TestMembersOfAnObject(t *testing.T) {
	object := []byte(`{"a":"x\u0041","b":12.5,"c":{"d":[1,"}"]},"e":true}`)
	for name, want := range map[string]string{"a": "xA", "b": "12.5", "c": `{"d":[1,"}"]}`, "e": "true", "f": ""} {
		assert.Equal(t, want, Member(object, name))
	}
	assert.Empty(t, Member([]byte("[1]"), "a"))
}

// A bare mark is of the unit that the request names; a bare fraction is of an inch whatever
// that is. What cannot be read is told as it came.
func TestBareMarks(t *testing.T) {
	for query, want := range map[string]string{
		"unit=mm&ruler=0.5": "0.5 mm", "unit=mm&ruler=1": "1 mm", "unit=in&ruler=0.5": "1/2 in", "unit=mm&ruler=1/8": "1/8 in", "ruler=1/16": "1/16 in",
	} {
		a := band()
		a.AddQuery(query + "&width=90mm&thickness=3mm&caliper=0.3mm")
		a.Parse()
		require.True(t, a.Check(), "%s: %v", query, a.Faults())
		assert.Equal(t, want, a.Q.Request.Ruler.String(), query)
	}
	for query, want := range map[string]fault.Fault{
		"ruler=0.5":          {Code: fault.NoUnit, Detail: "cannot read '0.5': a bare number needs a unit"},
		"unit=mm&ruler=0.3":  {Code: fault.TooFine, Detail: "cannot read '0.3': a ruler's finest mark is 0.5 mm"},
		"unit=mm&ruler=7":    {Code: fault.OutOfRange, Detail: "cannot read '7': no ruler is divided so; its marks are 10 mm, 5 mm, 1 mm, 0.5 mm"},
		"unit=mm&ruler=mark": {Code: fault.Unreadable, Detail: "cannot read 'mark': a length begins with a number"},
	} {
		a := band()
		a.AddQuery(query + "&width=90mm&thickness=3mm&caliper=0.3mm")
		a.Parse()
		require.False(t, a.Check(), query)
		said := a.Faults()[0]
		assert.Equal(t, want, fault.Fault{Code: said.Code, Detail: said.Detail}, query)
		assert.Equal(t, "ruler", said.Field, query)
	}
}
