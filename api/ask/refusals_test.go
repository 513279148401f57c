package ask

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/golden"
	"creasefit/internal/repertoire"
)

// refused is a request that something is wrong with: a query, or a JSON object.
type refused struct{ call, request string }

var refusals = []refused{
	{"solve", ""},
	{"solve", "width=3&thickness=0.1&caliper=0.01"},
	{"solve", "width=3in&thicknes=0.1in&caliper=0.01in"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&width=4in"},
	{"solve", "width=&thickness=%ff&caliper=0.01in"},
	{"solve", "width=3in&thickness=0.1in%0a&caliper=0.01in"},
	{"solve", "width=" + strings.Repeat("3", 65) + "in&thickness=0.1in&caliper=0.01in"},
	{"solve", "width=3in;thickness=0.1in"},
	{"solve", "width=3in&thickness=%zz"},
	{"solve", "width=3 1/3 in&thickness=0.1in&caliper=0.01in&unit=inch"},
	{"solve", "width=3&thickness=0.1&caliper=0.01&unit=Inches"},
	{"solve", "width=90&thickness=2&caliper=0.3&unit=millimeters"},
	{"solve", "width=9&thickness=0.2&caliper=0.03&unit=cm"},
	{"solve", "width=9&thickness=0.2&caliper=0.03&unit=furlong"},
	{"solve", "width=0in&thickness=0.1in&caliper=0.3in"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&ruler=1/7in"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&ruler=1/8in&step=1/64in"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&fit=tight"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&fit=snug&clearance_min=1/8in"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&clearance_min=1/4in&clearance_max=1/8in"},
	{"solve", "width=3in&thickness=0.1in&stock=index-11"},
	{"solve", "width=3in&thickness=0.1in&stock=index-110&grammage=200"},
	{"solve", "width=3in&thickness=0.1in&stock=index-110&caliper=0.01in"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&reveal=1/4in&widht=3in"},
	{"solve", "unit=mm&width=1,234&thickness=2&caliper=0.3"},
	{"solve", "contents=tasting-card&caliper=0.01in"},
	{"solve", "contents=us-2-bar&caliper=0.01in"},
	{"solve", "unit=in&width=3&thickness=0.1&caliper=0.01&decimal=comma&size_tolerance=0.5"},
	{"solve", `{"width":null,"thickness":[1],"caliper":{"in":1},"step":true}`},
	{"solve", `{"width":"3 in","width":"4 in","Thickness":1}`},
	{"solve", `[1]`}, {"solve", `{"width":`}, {"solve", ` `}, {"solve", "{\"width\":\"\xff\"}"}, {"solve", strings.Repeat("[", 17)},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&format=yaml&pick=a&show=step,&download=a/b&errors=line"},
	{"yield", "unit=in"},
	{"yield", "unit=in&sheet=12x12&blank=2x3&items={}&count=0"},
	{"yield", "unit=in&sheet=12&blank=2x3x4"},
	{"yield", `unit=in&sheet={"size":"12x12","price":0.00001,"available":0}&blank=2x3`},
	{"yield", `unit=in&sheet={"siz":"12x12"}&items={"blank":"2x3","grain":"across"}&items=[`},
	{"yield", `unit=in&sheet={"size":"12x12","price":1.00005}&blank=2x3`},
	{"yield", `unit=in&sheet=12x12&items={"kind":"bnd","width":3}`},
	{"yield", `unit=in&sheet=12x12&items={"kind":"band","width":3}`},
	{"yield", "unit=in&sheet=12x12&blank=2x3&effort_ms=10001&count=+3"},
	{"portfolio", "width=3in&height=4in&thickness=1in&caliper=0.01in"},
	{"portfolio", "width=3in&height=4in&thickness=1in&caliper=0.01in&layers=sleve&layers={}"},
	{"portfolio", "width=3in&height=4in&thickness=1in&layers=sleeve&layers=band"},
	{"portfolio", "width=3in&height=4in&thickness=1in&caliper=9in&fit=tight&layers=sleeve&layers=band"},
	{"portfolio", "width=3in&thickness=1in&stock=index-110&grammage=200&layers=sleeve&layers=band"},
	{"portfolio", `width=3in&height=4in&thickness=1in&caliper=0.01in&layers={"kind":"sleeve","lap":"9999in","turned":"twice"}`},
	{"portfolio", "width=3in&height=4in&thickness=1in&caliper=0.01in&" + strings.TrimSuffix(strings.Repeat("layers=sleeve&", 13), "&")},
	{"portfolio", `width=3in&height=4in&thickness=1in&caliper=0.01in&layers=own&layers={"kind":"own"}&layers={"kind":"own","design":{"design":"Tag","pieces":[]}}`},
	{"portfolio", `width=3in&height=4in&thickness=1in&caliper=0.01in&layers={"kind":"sleeve","unit":"in","width":"5in","bench":"hand"}&layers={"kind":"sleeve","fit":"tight"}`},
	{"yield", `unit=in&sheet=12x12&items={"kind":"own","design":{"design":"Tag","pieces":[{"piece":"tag","panels":[]}]},"count":2}`},
	{"yield", `unit=in&sheet=12x12&items={"kind":"band","width":3,"thickness":0.1,"caliper":0.01,"sheet":"letter","spares":2}&items={"name":"a\tb"}&margin=501mm&stages=4`},
	{"solve", "contents=tea-tin&size_tolerance=-0&caliper=0.01in&caliper_tolerance=9in"},
	{"solve", "width=3in&thickness=0.1in&caliper=0.01in&made_at=101&used_at=33"},
	{"mail", "unit=in&width=5"}, {"mail", "unit=in&width=5&height=7&mass=20&mass_oz=1&post=xx"}, {"mail", "width=5in&height=7mm&thickness=-1mm"},
	{"paper", "basis_weight=80&grade=covr"}, {"paper", "caliper=6mm&grammage=-1"},
	{"ruler", ""}, {"ruler", "length=1/0in"}, {"ruler", "length=" + strings.Repeat("9", 30) + "in"}, {"ruler", strings.TrimSuffix(strings.Repeat("length=1in&", 51), "&")},
	{"check", "width=3in&thickness=0.1in&caliper=0.01in&blank=8in"}, {"check", "width=3in&thickness=0.1in&caliper=0.01in&blank=8x1in&scores=1in&depths=x"},
	{"guide", "width=3in&thickness=0.1in&caliper=0.01in&language=fr&units=cm&paper=a99"},
	{"drawing", "width=3in&thickness=0.1in&caliper=0.01in&view=bent&pixels=10&closed=2&paper=1x1mm"},
	{"drawing", "width=3in&thickness=0.1in&caliper=0.01in&picture=2&bed=10x10mm&kerf=1mm&folds=cut"},
	{"calibrate", "block_width=60"}, {"calibrate", "ruler=1/7in&unit=cm"},
	{"calibrate", "unit=mm&wound=1720&stack=6&cuts=100&scores=29&folded_inside=24&wet_along=200&wet_across=201"},
	{"calibrate", "unit=mm&turns=10&stack_count=20"}, {"calibrate", "unit=mm&turns=201&stack_count=0&block_tolerance=11&bench=laser&paper=a99&language=fr"},
	{"calibrate", "unit=mm&caliper=0.3&wound=1720&turns=10&block_width=60&block_thickness=20&stack=6&stack_count=20"},
	{"calibrate", "unit=mm&cut_at=100&" + strings.TrimSuffix(strings.Repeat("cuts=100&", 51), "&")},
	{"adapt", "width=3in&thickness=0.1in&caliper=0.01in&blank=8x1in&made_for_width=1mm&made_for_caliper=6mm"},
	{"adapt", "width=3in&thickness=0.1in&caliper=0.01in&made_for_lap=1in"},
	{"suggest", "unit=in&thickness=1&caliper=0.01&wish=cheap&minutes=0.4&pictures=red&language=fr&post=xx"},
	{"suggest", "unit=in&width=3&thickness=1&caliper=0.01&wish=one-sheet&class=letter"},
	{"suggest", "unit=in&width=3&thickness=1&caliper=0.01&post=us&class=Leter"},
	{"suggest", "unit=in&width=&thickness=1&caliper=0.01&post=usa&class=letter"}, {"suggest", "unit=in&width=x&thickness=1&caliper=0.01&minutes=+3"},
	{"match", "unit=in"}, {"match", "unit=in&width=3&height=4&thickness=1"},
	{"match", `unit=in&width=3&height=4&thickness=1&holders={}&holders={"width":"0.5 mm"}&holders={"kind":"slee","width":3}&turn=maybe&only=best&top=0`},
	{"match", `unit=in&width=3&height=4&thickness=1&holders={"width":"4 in"}&list=0123456789abcdef`},
	{"match", `unit=in&width=3&height=4&thickness=1&list=ffffffffffffffff`},
	{"match", `unit=in&width=3&things={"width":"3 in"}&holders={"width":"4 in"}&holders={"width":"5 in"}`},
	{"presets", "unit=in&near=3x&top=0"}, {"presets", "near=3x5&top=x"},
}

// refusalOf reads a request and writes everything that is wrong with it, and the
// corrected query if there is one.
func refusalOf[Q Request](f *Form[Q], request string) string {
	a := f.Take()
	defer a.Release()
	if strings.ContainsAny(request[:min(1, len(request))], "{[ ") {
		a.AddJSON([]byte(request))
	} else {
		a.AddQuery(request)
	}
	a.Parse()
	a.Check()
	var b strings.Builder
	for _, f := range a.Faults() {
		fmt.Fprintf(&b, "  %s %s=%q: %s | %s | %s\n", f.Code, f.Field, f.Value, f.Detail, f.Expected, f.Hint)
	}
	if a.Hidden() > 0 {
		fmt.Fprintf(&b, "  and %d more\n", a.Hidden())
	}
	if corrected, ok := a.Corrected(); ok && len(a.Faults()) > 0 {
		fmt.Fprintf(&b, "  try %s\n", corrected)
	}
	return b.String()
}

// TestRefusals holds what is said of bad requests to what was looked at: every
// fault with its name, its value, its bound and its hint, in order.
func TestRefusals(t *testing.T) {
	k, _ := repertoire.Lookup("band")
	of := func() *Enclosure { return &Enclosure{Kind: k} }
	nothing := func(string) ([]string, bool) { return nil, false }
	calls := map[string]func(string) string{
		"solve":     func(r string) string { return refusalOf(NewSolve(k, "json", "csv"), r) },
		"check":     func(r string) string { return refusalOf(NewCheck(k, "json", "csv"), r) },
		"guide":     func(r string) string { return refusalOf(NewGuide(of, "json", "pdf"), r) },
		"drawing":   func(r string) string { return refusalOf(NewDrawing(of, "svg", "pdf"), r) },
		"yield":     func(r string) string { return refusalOf(NewYield("json", "csv"), r) },
		"portfolio": func(r string) string { return refusalOf(NewForm(Portfolios(), "json", "csv"), r) },
		"mail":      func(r string) string { return refusalOf(New[Mail]("json", "csv"), r) },
		"paper":     func(r string) string { return refusalOf(New[Paper]("json", "csv"), r) },
		"ruler":     func(r string) string { return refusalOf(New[Ruler]("json", "csv"), r) },
		"calibrate": func(r string) string { return refusalOf(New[Calibration]("json", "csv"), r) },
		"adapt":     func(r string) string { return refusalOf(NewAdapt(k, "json", "csv"), r) },
		"suggest":   func(r string) string { return refusalOf(New[Suggest]("json", "csv"), r) },
		"match":     func(r string) string { return refusalOf(NewMatch(nothing, "json", "csv"), r) },
		"presets":   func(r string) string { return refusalOf(New[Near]("json", "csv"), r) },
	}
	var b strings.Builder
	for _, c := range refusals {
		said := calls[c.call](c.request)
		require.NotEmpty(t, said, "%s %s is refused", c.call, c.request)
		if _, corrected, ok := strings.Cut(said, "  try "); ok {
			assert.Empty(t, calls[c.call](strings.TrimSuffix(corrected, "\n")), "%s %s: the correction is refused as well", c.call, c.request)
		}
		fmt.Fprintf(&b, "%s %q\n%s", c.call, c.request, said)
	}
	golden.Check(t, "testdata/refusals.txt", []byte(b.String()))
}
