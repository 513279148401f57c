package ask

import (
	"encoding/json"
	"net/url"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// spelt reads a request in one way and gives its canonical query and its key.
func spelt[Q Request](f *Form[Q], add func(*Reading)) (query, key string, ok bool) {
	a := f.Take()
	defer a.Release()
	add(&a.Reading)
	a.Parse()
	ok = a.Check()
	return string(a.AppendQuery(nil, true)), string(a.AppendKey(nil)), ok
}

// alikeInEverySpelling gives each name of a call its example beside what the call needs, by a
// query, as JSON, and as a cell of a table: each time it is the same request with the same key,
// and its canonical query reads back to itself.
func alikeInEverySpelling[Q Request](t *testing.T, call string, f *Form[Q], base string) (taken int) {
	t.Helper()
	known, err := url.ParseQuery(base)
	require.NoError(t, err)
	for _, n := range f.Names() {
		values := url.Values{}
		for name, list := range known {
			values[name] = list
		}
		values[n.Name] = []string{n.Example}
		query, key, ok := spelt(f, func(r *Reading) { r.AddQuery(values.Encode()) })
		byJSON, jsonKey, _ := spelt(f, func(r *Reading) { r.AddJSON(asObject(t, f.names, values)) })
		byCell, cellKey, _ := spelt(f, func(r *Reading) {
			for _, name := range sortedNames(values) {
				r.AddCell(name, values.Get(name))
			}
		})
		assert.Equal(t, []string{query, query}, []string{byJSON, byCell}, "%s %s", call, n.Name)
		assert.Equal(t, []string{key, key}, []string{jsonKey, cellKey}, "%s %s", call, n.Name)
		if !ok {
			continue // beside these it contradicts something
		}
		taken++
		again, _, _ := spelt(f, func(r *Reading) { r.AddQuery(query) })
		assert.Equal(t, query, again, "%s %s: the canonical query of a canonical query is itself", call, n.Name)
		assert.True(t, n.Name == "errors" || strings.Contains("&"+query, "&"+n.Name+"="), "%s: %s is in %s", call, n.Name, query)
	}
	return taken
}

// sortedNames are the names of a query in the order that Encode writes them.
func sortedNames(values url.Values) []string {
	var names []string
	for name := range values {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// asObject writes a query as the JSON object that says the same.
func asObject(t *testing.T, names *table, values url.Values) []byte {
	t.Helper()
	var members []string
	for _, name := range sortedNames(values) {
		text, err := json.Marshal(values.Get(name))
		require.NoError(t, err)
		if n := names.find(name); n.Type == ObjectType && isObject(values.Get(name)) {
			text = []byte(values.Get(name))
		}
		members = append(members, `"`+name+`": `+string(text))
	}
	return []byte("{" + strings.Join(members, ", ") + "}")
}

// TestEverySpellingIsOneRequest, of each call and each of its names.
func TestEverySpellingIsOneRequest(t *testing.T) {
	k, _ := repertoire.Lookup("slotted-band")
	of := func() *Enclosure { return &Enclosure{Kind: k} }
	nothing := func(string) ([]string, bool) { return nil, false }
	const thing = "width=3.5in&height=5in&thickness=0.09in&caliper=0.012in"
	taken := alikeInEverySpelling(t, "solve", NewSolve(k, "json", "csv"), thing) +
		alikeInEverySpelling(t, "check", NewCheck(k, "json", "csv"), thing) +
		alikeInEverySpelling(t, "adapt", NewAdapt(k, "json"), thing) +
		alikeInEverySpelling(t, "guide", NewGuide(of, "json", "pdf"), thing) +
		alikeInEverySpelling(t, "drawing", NewDrawing(of, "svg", "pdf"), thing) +
		alikeInEverySpelling(t, "portfolio", NewForm(Portfolios(), "json"), thing+"&layers=sleeve") +
		alikeInEverySpelling(t, "ruler", New[Ruler]("json", "csv"), "length=1in") +
		alikeInEverySpelling(t, "stock", New[Paper]("json"), "unit=in&caliper=0.012in") +
		alikeInEverySpelling(t, "mail", New[Mail]("json", "csv"), "width=5in&height=7in") +
		alikeInEverySpelling(t, "calibrate", New[Calibration]("json", "pdf"), "unit=mm") +
		alikeInEverySpelling(t, "suggest", New[Suggest]("json"), thing) +
		alikeInEverySpelling(t, "match", NewMatch(nothing, "json"), "width=3in&holders=%7B%22width%22%3A%224+in%22%7D") +
		alikeInEverySpelling(t, "presets", New[Near]("json"), "unit=in") +
		alikeInEverySpelling(t, "yield", NewYield("json", "csv"), "unit=in&sheet=12x12in&blank=2x3in")
	assert.Greater(t, taken, 250, "most examples are taken as they are")
}

// TestALengthIsOneLength however it is written (25.4 mm are an inch): the canonical address has
// it once, exactly, in the unit of the answer.
func TestALengthIsOneLength(t *testing.T) {
	for canonical, texts := range map[string][]string{
		"unit=in&length=3-5/8in": {"3 5/8 in", "3-5/8in", "3.625 in", "92.075 mm", "9.2075cm", `3 5/8"`, "29/8in"},
		"unit=in&length=1/2in":   {"0.5in", ".5 in", "1/2 in", "12.7mm", "1.27 cm", "32/64in"},
		"unit=in&length=0.3in":   {"0.3in", "7.62mm", "0,762 cm"},
	} {
		for _, text := range texts {
			query, _, ok := spelt(New[Ruler]("json"), func(r *Reading) {
				r.Add("unit", "in")
				r.Add("decimal", map[bool]string{true: "comma", false: "point"}[strings.Contains(text, ",")])
				r.Add("length", text)
			})
			assert.True(t, ok, text)
			assert.Equal(t, canonical, strings.Split(query, "&decimal")[0], text)
		}
	}
}

// TestASignIsOneWay: more, less, or both; the address keeps the sign.
func TestASignIsOneWay(t *testing.T) {
	k, _ := repertoire.Lookup("band")
	for text, want := range map[string][3]string{"0.03in": {"0.03 in", "0.03 in", "0.03in"}, "-0.03in": {"0.03 in", "0 in", "-0.03in"}, "+0.03in": {"0 in", "0.03 in", "%2B0.03in"}} {
		a := NewSolve(k).Take()
		a.Add("contents_tolerance", text)
		a.AddQuery("width=3in&thickness=0.1in&caliper=0.01in")
		a.Parse()
		require.True(t, a.Check(), "%v", a.Faults())
		s := a.Q.Request.SizeTolerance
		assert.Equal(t, [2]string{nm(want[0]), nm(want[1])}, [2]string{nm(s.Low.Decimal(1, 6)), nm(s.High.Decimal(1, 6))}, text)
		assert.Contains(t, string(a.Link("/x")), "contents_tolerance="+want[2], text)
	}
	for _, text := range []string{"-", "+", "--1in", "-+1in", "-x"} {
		a := NewSolve(k).Take()
		a.Add("contents_tolerance", text)
		a.AddQuery("width=3in&thickness=0.1in&caliper=0.01in")
		a.Parse()
		assert.False(t, a.Check(), text)
		assert.Equal(t, "contents_tolerance", a.Faults()[0].Field, text)
	}
}

// TestAddressesWithAnotherWord are those of the same request but for it, and leave the
// request as it is.
func TestAddressesWithAnotherWord(t *testing.T) {
	a := band()
	a.AddQuery("unit=in&width=3&thickness=0.1&caliper=0.01&fit=snug&sheet=letter")
	a.Parse()
	require.True(t, a.Check())
	own := string(a.Link("/x"))
	assert.Equal(t, strings.Replace(own, "fit=snug", "fit=loose", 1), string(a.LinkWith("/x", "fit", "loose")))
	assert.Equal(t, own, string(a.Link("/x")), "it holds for one address")
	assert.Nil(t, a.LinkWith("/x", "columns", "3"), "a band has no columns")
	assert.Equal(t, "letter", string(a.AppendValue(nil, "sheet")))
	assert.Equal(t, "x3in", string(a.AppendValue([]byte("x"), "width")))
	assert.Empty(t, a.AppendValue(nil, "height"), "it was not given")
	assert.Empty(t, a.AppendValue(nil, "columns"))
}

// TestLengthsAndMarksAreMeasured among what was given: their size is told beside their text; a
// sum of sizes is one length, and a list none.
func TestLengthsAndMarksAreMeasured(t *testing.T) {
	a := band()
	a.AddQuery("unit=in&width=3+of+1.5in+and+2+of+1/8in&thickness=0.1&caliper=0.01&ruler=1/32in&fit=snug&grammage=200")
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	measured := map[string]string{}
	for _, g := range a.Given() {
		if g.Measured {
			measured[g.Name] = g.Length.Decimal(measure.Inch, 6)
		}
	}
	assert.Equal(t, map[string]string{"width": "4.75 in", "thickness": "0.1 in", "caliper": "0.01 in", "ruler": "0.03125 in"}, measured)
	r := New[Ruler]("json").Take()
	r.AddQuery("length=1in&length=2in")
	r.Parse()
	require.True(t, r.Check())
	for _, g := range r.Given() {
		assert.False(t, g.Measured, g.Name)
	}
	assert.Equal(t, "1in, 2in", r.Given()[0].Text)
}

// TestWhatSaysNothingAlone is refused with the name that it wants beside it.
func TestWhatSaysNothingAlone(t *testing.T) {
	for query, missing := range map[string]string{"made_at=40": "used_at", "used_at=40": "made_at", "clearance_min=0": "clearance_max", "clearance_max=1/8in": "clearance_min"} {
		a := band()
		a.AddQuery("unit=in&width=3&thickness=0.1&caliper=0.01&" + query)
		a.Parse()
		require.False(t, a.Check(), query)
		require.Len(t, a.Faults(), 1, "%s: %v", query, a.Faults())
		assert.Equal(t, missing, a.Faults()[0].Field, query)
		hint, given := strings.CutPrefix(a.Faults()[0].Hint, "add ")
		if given && strings.Contains(hint, "=") {
			again := band()
			again.AddQuery("unit=in&width=3&thickness=0.1&caliper=0.01&" + query + "&" + strings.ReplaceAll(hint, " ", "+"))
			again.Parse()
			assert.True(t, again.Check(), "%s with its hint %s: %v", query, hint, again.Faults())
		}
	}
}

// TestAListHasSoManyValues, and not one more.
func TestAListHasSoManyValues(t *testing.T) {
	for n, taken := range map[int]bool{50: true, 51: false} {
		a := New[Ruler]("json").Take()
		a.AddQuery(strings.TrimSuffix(strings.Repeat("length=1in&", n), "&"))
		a.Parse()
		assert.Equal(t, taken, a.Check(), "%d lengths", n)
		if !taken {
			assert.Equal(t, "at most 50 times", a.Faults()[0].Expected)
		}
	}
	for n, taken := range map[int]bool{12: true, 13: false} {
		a := NewForm(Portfolios()).Take()
		a.AddQuery("width=3in&height=4in&thickness=1in&caliper=0.01in&" + strings.TrimSuffix(strings.Repeat("layers=sleeve&", n), "&"))
		a.Parse()
		assert.Equal(t, taken, a.Check(), "%d layers", n)
	}
}

// TestAPaperThatStatesNoGrammage takes one beside its name, others have their own.
func TestAPaperThatStatesNoGrammage(t *testing.T) {
	for name, taken := range map[string]bool{"coated-cover-10pt": true, "index-110": false} {
		a := New[Paper]("json").Take()
		a.AddQuery("unit=in&grammage=270&stock=" + name)
		a.Parse()
		assert.Equal(t, taken, a.Check(), "%s: %v", name, a.Faults())
	}
}

// TestItemsGoByTheOrdersRuler unless they have one of their own; what is wrong with one is told
// under its place, and what is beyond twenty faults is counted over all of them.
func TestItemsGoByTheOrdersRuler(t *testing.T) {
	item := func(more string) string {
		return "items=" + url.QueryEscape(`{"kind":"band","width":3,"thickness":0.1,"caliper":0.01`+more+`}`)
	}
	a := NewYield("json").Take()
	a.AddQuery("unit=in&sheet=12x12in&ruler=1/32in&" + item("") + "&" + item(`,"ruler":"1/8in"`))
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	require.Len(t, a.Q.Wanted, 2)
	assert.Equal(t, "1/32 in", a.Q.Wanted[0].Request.Ruler.String())
	assert.Equal(t, "1/8 in", a.Q.Wanted[1].Request.Ruler.String())
	many := ""
	for i := range 23 {
		many += `,"nothing` + string(rune('a'+i)) + `":1`
	}
	a = NewYield("json").Take()
	a.AddQuery("unit=in&sheet=12x12in&" + item(many) + "&" + item(many))
	a.Parse()
	assert.False(t, a.Check())
	assert.Len(t, a.Faults(), 20)
	assert.Equal(t, 26, a.Hidden(), "46 names that nothing knows")
	assert.Equal(t, "items[0].nothinga", a.Faults()[0].Field)
}
