package ask

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// ordered is what the names of an order come to.
func ordered(q *Yield) any {
	o := q.Order
	o.Say = nil
	return struct {
		Order    sheet.Order
		Dark     bool
		Pictures string
		Cut      string
		Wanted   []Wanted
	}{o, q.Dark(), q.Pictures.Word, q.Order.Word(" Cut once: "), q.Wanted}
}

func TestEveryNameOfAnOrder(t *testing.T) {
	checkEffects(t, NewYield("json"), "unit=in&sheet=12x12in&blank=2x3in", ordered, append([]effect{
		{"unit", "mm", "", "", map[string]string{"Order.Ruler": "0.5 mm", "Order.Least": nm("50 mm")}},
		{"sheet", "8 x 10 in", "", "", map[string]string{"Order.Sheets[0].Width": nm("8 in"), "Order.Sheets[0].Height": nm("10 in")}},
		{"sheet_grain", "height", "", "", map[string]string{"Order.Sheets[0].Grain": fmt.Sprint(sheet.AlongHeight)}},
		{"margin", "1/4 in", "", "", map[string]string{"Order.Margin": nm("1/4 in")}},
		{"kerf", "1/8 in", "", "", map[string]string{"Order.Kerf": nm("1/8 in")}},
		{"ruler", "1/8 in", "", "", map[string]string{"Order.Ruler": "1/8 in"}},
		{"trimmer_length", "11 in", "", "", map[string]string{"Order.Trimmer": nm("11 in")}},
		{"minimize", "cost", "", "", map[string]string{"Order.Minimize": fmt.Sprint(sheet.LeastCost)}},
		{"prefer", "stages", "", "", map[string]string{"Order.Prefer": fmt.Sprint(sheet.FewStages)}},
		{"stages", "3", "", "", map[string]string{"Order.Stages": "3"}},
		{"offcut_least", "3 in", "", "", map[string]string{"Order.Least": nm("3 in")}},
		{"effort_ms", "700", "", "", map[string]string{"Order.Effort": "700ms"}},
		{"theme", "dark", "", "", map[string]string{"Dark": "true"}},
		{"pictures", "light", "", "", map[string]string{"Pictures": "light"}},
		{"language", "de", "", "", map[string]string{"Cut": " Schneide einmal: "}},
		{"items", `{"blank":"2 x 3 in","count":7}`, "", "blank", map[string]string{"Wanted[0].Item.Count": "7", "Wanted[0].Place": "items[0]"}},
		{"name", "lid", "", "", map[string]string{"Wanted[0].Item.Name": "lid"}},
		{"blank", "4 x 5 in", "", "", map[string]string{"Wanted[0].Item.Width": nm("4 in"), "Wanted[0].Item.Height": nm("5 in")}},
		{"count", "9", "", "", map[string]string{"Wanted[0].Item.Count": "9"}},
		{"grain", "width", "", "", map[string]string{"Wanted[0].Item.Grain": fmt.Sprint(sheet.AlongWidth)}},
	}, shopEffects("Wanted[0].Item.")...))
}

func TestEveryNameOfASheetAndOfABlank(t *testing.T) {
	forms := NewYield("json").Take().Q.forms
	checkEffects(t, forms.sheet, "size=12x12in", func(q *Sheet) any { return q.stock(sheet.AnySide) }, []effect{
		{"size", "8 x 10 in", "", "", map[string]string{"Width": nm("8 in"), "Height": nm("10 in")}},
		{"grain", "height", "", "", map[string]string{"Grain": fmt.Sprint(sheet.AlongHeight)}},
		{"price", "0.3501", "", "", map[string]string{"Price": "3501"}},
		{"available", "12", "", "", map[string]string{"Available": "12"}},
		{"paper", "kraft", "", "", map[string]string{"Paper": "kraft"}},
		{"offcut", "yes", "", "", map[string]string{"Offcut": "true"}},
	})
	checkEffects(t, forms.blank, "blank=2x3in", func(q *Blank) any { return q.item(&Reading{}) }, append([]effect{
		{"name", "lid", "", "", map[string]string{"Name": "lid"}},
		{"blank", "4 x 5 in", "", "", map[string]string{"Width": nm("4 in"), "Height": nm("5 in")}},
		{"count", "9", "", "", map[string]string{"Count": "9"}},
		{"grain", "height", "", "", map[string]string{"Grain": fmt.Sprint(sheet.AlongHeight)}},
	}, shopEffects("")...))
}

// shopEffects are those of the names that an item has of a shop, under a path.
func shopEffects(path string) []effect {
	return []effect{
		{"paper", "kraft", "", "", map[string]string{path + "Paper": "kraft"}},
		{"priority", "2", "", "", map[string]string{path + "Priority": "2"}},
		{"spares", "3", "count=9", "", map[string]string{path + "Spares": "3", path + "Count": "12"}},
	}
}

// TestEveryNameOfAnItem sets every name of an enclosure in an order: all those
// of a solution but the sheet, whose grain is that of the blanks here.
func TestEveryNameOfAnItem(t *testing.T) {
	form := NewYield("json").Take().Q.forms.kinds.byName["band"]
	k, _ := repertoire.Lookup("band")
	come := func(q *Item) any {
		return struct {
			Request *solve.Request
			Item    sheet.Item
		}{q.Request, q.item(&Reading{})}
	}
	effects := slices.DeleteFunc(commonEffects(), func(e effect) bool { return e.name == "sheet" || e.name == "grain" })
	effects = append(under("Request", append(effects, ownEffects(k, measure.Inch)...)),
		effect{"grain", "height", "", "", map[string]string{"Item.Grain": fmt.Sprint(sheet.AlongHeight)}},
		effect{"kind", "band", "", "", nil},
		effect{"name", "lid", "", "", map[string]string{"Item.Name": "lid"}},
		effect{"count", "9", "", "", map[string]string{"Item.Count": "9"}})
	effects = append(effects, shopEffects("Item.")...)
	a := form.Take()
	a.AddQuery(enclosureBase + "&sheet=12x12in")
	a.Parse()
	require.False(t, a.Check())
	assert.Equal(t, "an item has no sheet of its own", a.Faults()[0].Detail)
	checkEffects(t, form, enclosureBase, come, append(effects, elsewhere("sheet")))
}

// layersOf is what the names of a portfolio come to.
func layersOf(q *Portfolio) any { return q.Layers }

// TestEveryNameOfAPortfolio sets every name beside the layers: the contents
// reach the innermost alone, all others every layer.
func TestEveryNameOfAPortfolio(t *testing.T) {
	var effects []effect
	for _, e := range commonEffects() {
		changes := map[string]string{}
		for path, value := range e.changes {
			changes["[0].Request."+path] = value
			if !slices.Contains([]string{"contents", "width", "height", "thickness", "contents_tolerance"}, e.name) {
				changes["[1].Request."+path] = value
			}
		}
		e.changes = changes
		effects = append(effects, e)
	}
	of := Portfolios()
	base := enclosureBase + "&layers=sleeve&layers=band"
	checkEffects(t, NewForm(of, "json"), base, layersOf, append(effects, elsewhere("layers")))
	_, one := taken(t, NewForm(of), enclosureBase+"&layers=tray", layersOf)
	assert.Equal(t, "tray", one["[0].Request.Kind"])
	_, two := taken(t, NewForm(of), base, layersOf)
	assert.Equal(t, "band", two["[1].Request.Kind"])
	assert.Equal(t, "layers[1]", two["[1].Place"])
}

// TestEveryNameOfALayer sets what a layer may say itself: it reaches that layer
// alone and goes before what stands beside the layers.
func TestEveryNameOfALayer(t *testing.T) {
	k, _ := repertoire.Lookup("band")
	beside := "unit=in&width=3.5in&height=5in&thickness=0.09in&caliper=0.02in&fit=loose&grain=width&sheet=9x9in&layers=sleeve&layers="
	layer := func(member string) string { return beside + `{"kind":"band"` + member + `}` }
	shared := []string{"unit", "contents", "width", "height", "thickness", "contents_tolerance", "ruler", "bench", "cut_tolerance", "score_tolerance", "made_at", "used_at"}
	for _, e := range append(commonEffects(), append(ownEffects(k, measure.Inch), effect{"turned", "edge", "", "", map[string]string{"": ""}})...) {
		member := `,"` + e.name + `":"` + e.value + `"`
		if strings.HasPrefix(e.with, "clearance") { // the clearances, which are given together
			member = `,"clearance_min":"0.01 in","clearance_max":"0.11 in"`
		}
		a := NewForm(Portfolios()).Take()
		a.AddQuery(layer(member))
		a.Parse()
		if slices.Contains(shared, e.name) {
			require.False(t, a.Check(), e.name)
			assert.Equal(t, "layers[1]."+e.name, a.Faults()[0].Field)
			assert.Equal(t, fault.Conflict, a.Faults()[0].Code)
			continue
		}
		require.True(t, a.Check(), "%s: %v", e.name, a.Faults())
		_, before := taken(t, NewForm(Portfolios()), layer(""), layersOf)
		after := flatten(a.Q.Layers)
		for _, path := range different(before, after) {
			assert.Contains(t, path, "[1].", "%s reaches its layer alone", e.name)
		}
		for path, want := range e.changes {
			if want != "*" && path != "" {
				assert.Equal(t, want, after["[1].Request."+path], e.name)
			}
		}
	}
}

// TestDefaultsAreWhatIsComputedWith leaves every name out that has a default:
// the request comes to the same as one that gives the default.
func TestDefaultsAreWhatIsComputedWith(t *testing.T) {
	checked := 0
	defaulted := func(names []Name, unit string) []effect {
		var list []effect
		for _, n := range names {
			if n.Default.Inch != "" && !n.Answer {
				list = append(list, effect{name: n.Name, value: map[string]string{"in": n.Default.Inch, "mm": n.Default.Millimetre}[unit]})
			}
		}
		checked += len(list)
		return list
	}
	for _, unit := range []string{"in", "mm"} {
		base := "unit=" + unit + "&width=3.5in&height=5in&thickness=0.5in"
		of := func() *Enclosure { k, _ := repertoire.Lookup("band"); return &Enclosure{Kind: k} }
		alike(t, NewSolve(of().Kind), base+"&caliper=0.012in", func(q *Enclosure) any { q.Request.Options = nil; return q.Request }, defaulted(NewSolve(of().Kind).Names(), unit))
		alike(t, NewDrawing(of, "svg"), base+"&caliper=0.012in", func(q *Drawing[*Enclosure]) any {
			return []any{q.Dark(), q.Pixels.Count(), q.Picture.Count(), q.Closed.Number, q.Language.Word, q.View.Word, q.Folds.Word}
		}, defaulted(NewDrawing(of, "svg").Names(), unit))
		alike(t, NewGuide(of, "json"), base+"&caliper=0.012in", func(q *Guide[*Enclosure]) any { return q.Options() }, defaulted(NewGuide(of, "json").Names(), unit))
		alike(t, New[Mail]("json"), base, func(q *Mail) any { return q.Piece() }, defaulted(New[Mail]("json").Names(), unit))
		alike(t, NewYield("json"), "unit="+unit+"&sheet=12x12in&blank=2x3in", ordered, defaulted(NewYield("json").Names(), unit))
	}
	assert.Greater(t, checked, 40)
}

// alike checks that giving each value changes nothing.
func alike[Q Request](t *testing.T, f *Form[Q], base string, come func(Q) any, defaults []effect) {
	t.Helper()
	_, without := taken(t, f, base, come)
	for _, e := range defaults {
		_, with := taken(t, f, base+"&"+e.name+"="+e.value, come)
		assert.Equal(t, without, with, "%s=%s is the default", e.name, e.value)
	}
}

// TestUsualFitsAndRuler holds the defaults to what they are for people (common
// practice): easy is 1/16 to 1/8 in, snug up to 1/16 in, loose up to 1/4 in; a
// household ruler has sixteenths, or half millimetres.
func TestUsualFitsAndRuler(t *testing.T) {
	windows := map[string][4]string{"snug": {"0 in", "1/16 in", "0 mm", "1.5 mm"}, "easy": {"1/16 in", "1/8 in", "1.5 mm", "3 mm"}, "loose": {"1/8 in", "1/4 in", "3 mm", "6 mm"}}
	k, _ := repertoire.Lookup("band")
	for fit, w := range windows {
		for i, unit := range []string{"in", "mm"} {
			a, _ := taken(t, NewSolve(k), "unit="+unit+"&width=3in&thickness=0.1in&caliper=0.012in&fit="+fit, func(q *Enclosure) any { return q.Request })
			assert.Equal(t, enclosure.Range{Min: measure.MustParse(w[2*i]), Max: measure.MustParse(w[2*i+1])}, a.Q.Request.Fit, fit)
			assert.Equal(t, []string{"1/16 in", "0.5 mm"}[i], a.Q.Request.Ruler.String())
		}
	}
	find := func(name string) *Name { return NewSolve(k).names.find(name) }
	assert.Equal(t, "The clearance wanted: snug 0 to 1/16 in (1.5 mm), easy to 1/8 in (3 mm), loose to 1/4 in (6 mm).", find("fit").Help)
	assert.Equal(t, Default{"1/16 in", "0.5 mm"}, find("ruler").Default)
	assert.Equal(t, Always("easy"), find("fit").Default)
	assert.Equal(t, Always("hand"), find("bench").Default)
}
