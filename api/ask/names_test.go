package ask

import (
	"fmt"
	"maps"
	"net/url"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/guide"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// flatten writes every exported value under its path: what a request comes to.
func flatten(value any) map[string]string {
	flat := map[string]string{}
	flattenInto(flat, "", reflect.ValueOf(value))
	return flat
}

func flattenInto(flat map[string]string, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		switch known := v.Interface().(type) {
		case *enclosure.Kind:
			flat[path] = known.Name
		case fmt.Stringer:
			flat[path] = known.String()
		default:
			if !v.IsNil() {
				flattenInto(flat, path, v.Elem())
			}
		}
	case reflect.Struct:
		switch known := v.Interface().(type) {
		case measure.Length:
			flat[path] = fmt.Sprint(known.Nanometres())
		case measure.Step:
			flat[path] = known.String()
		case mail.Mass:
			flat[path] = fmt.Sprint(known)
		default:
			for i := range v.NumField() {
				if f := v.Type().Field(i); f.IsExported() {
					flattenInto(flat, strings.Trim(path+"."+f.Name, "."), v.Field(i))
				}
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			flattenInto(flat, fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			flattenInto(flat, fmt.Sprintf("%s[%v]", path, key), v.MapIndex(key))
		}
	default:
		flat[path] = fmt.Sprint(v.Interface())
	}
}

// different lists the paths at which two requests differ.
func different(a, b map[string]string) []string {
	all := maps.Clone(a)
	maps.Copy(all, b)
	return slices.DeleteFunc(slices.Sorted(maps.Keys(all)), func(path string) bool { return a[path] == b[path] })
}

// taken reads a query and checks it; what comes of it is what come returns.
func taken[Q Request](t *testing.T, f *Form[Q], query string, come func(Q) any) (*Asked[Q], map[string]string) {
	t.Helper()
	a := f.Take()
	a.AddQuery(query)
	a.Parse()
	require.True(t, a.Check(), "%s: %v", query, a.Faults())
	return a, flatten(come(a.Q))
}

// effect is one name of a call with a value, and all that it changes.
type effect struct {
	name, value string
	with        string            // what is asked for besides the base, with and without the name
	without     string            // names of the base that the value stands in the place of, parted by blanks
	changes     map[string]string // the paths with their new values; "*" for any
}

// checkEffects sets every name of a call in turn and sees its effect and no
// other, and its text among what was given.
func checkEffects[Q Request](t *testing.T, f *Form[Q], base string, come func(Q) any, effects []effect) {
	t.Helper()
	seen := map[string]bool{}
	for _, e := range effects {
		seen[e.name] = true
		if e.value == "" {
			continue
		}
		with := strings.Trim(base+"&"+e.with, "&")
		var kept []string
		for pair := range strings.SplitSeq(with, "&") {
			if name, _, _ := strings.Cut(pair, "="); name != e.name && !slices.Contains(strings.Fields(e.without), name) {
				kept = append(kept, pair)
			}
		}
		_, before := taken(t, f, with, come)
		a, after := taken(t, f, strings.Join(append(kept, e.name+"="+url.QueryEscape(e.value)), "&"), come)
		changed := different(before, after)
		assert.ElementsMatch(t, slices.Sorted(maps.Keys(e.changes)), changed, "what %s=%s changes", e.name, e.value)
		for path, want := range e.changes {
			if want != "*" {
				assert.Equal(t, want, after[path], "%s=%s", e.name, e.value)
			}
		}
		i := slices.IndexFunc(a.Given(), func(g Given) bool { return g.Name == e.name })
		require.GreaterOrEqual(t, i, 0, "%s is not among what was given", e.name)
		assert.Equal(t, e.value, a.Given()[i].Text)
		assert.Empty(t, a.Given()[i].From)
		assert.Contains(t, string(a.Link("/x")), e.name+"=", "the canonical address has every name")
	}
	for _, n := range f.Names() {
		assert.True(t, n.Answer || seen[n.Name], "no effect of %s is stated", n.Name)
	}
}

// refused states of a name that its effect is looked at elsewhere.
func elsewhere(name string) effect { return effect{name: name} }

// nm writes a length in nanometres.
func nm(text string) string { return fmt.Sprint(measure.MustParse(text).Nanometres()) }

// commonEffects are the effects of the names that all calculations about
// enclosures have, on a request of solve.
func commonEffects() []effect {
	const both = "clearance_min=0.02in&clearance_max=0.1in"
	return []effect{
		{"unit", "mm", "", "", map[string]string{"Unit": "mm", "Ruler": "0.5 mm", "Fit.Min": nm("1.5 mm"), "Fit.Max": nm("3 mm")}},
		{"contents", "id-1", "", "width height thickness", map[string]string{"Width": nm("85.6 mm"), "Height": nm("53.98 mm"), "Thickness": nm("0.76 mm"), "ThicknessTolerance.Low": "*", "ThicknessTolerance.High": "*"}},
		{"width", "3.25 in", "", "", map[string]string{"Width": nm("3.25 in")}},
		{"width", "3 of 1.5 in and 2 of 1/8 in", "", "", map[string]string{"Width": nm("4.75 in")}},
		{"height", "4.25 in", "", "", map[string]string{"Height": nm("4.25 in")}},
		{"thickness", "0.2 in", "", "", map[string]string{"Thickness": nm("0.2 in")}},
		{"contents_tolerance", "-0.03 in", "", "", map[string]string{"SizeTolerance.Low": nm("0.03 in"), "ThicknessTolerance.Low": nm("0.03 in")}},
		{"stock", "index-110", "", "caliper", map[string]string{"Caliper": "*", "CaliperTolerance": "*", "WallGive": "*", "Grammage": "*"}},
		{"caliper", "0.01 in", "", "", map[string]string{"Caliper": nm("0.01 in"), "CaliperTolerance": "*", "WallGive": nm("0.01 in")}},
		{"caliper_tolerance", "0.001 in", "", "", map[string]string{"CaliperTolerance": nm("0.001 in")}},
		{"wall_give", "0.002 in", "", "", map[string]string{"WallGive": nm("0.002 in")}},
		{"board_from", "0.01 in", "", "", map[string]string{"BoardFrom": nm("0.01 in"), "WallGive": "0"}},
		{"fold_allowance", "-0.01 in", "", "", map[string]string{"FoldAllowance": "-" + nm("0.01 in")}},
		{"made_at", "30", "made_at=40&used_at=60", "", map[string]string{"Season.MadeAt": "30"}},
		{"used_at", "70", "made_at=40&used_at=60", "", map[string]string{"Season.UsedAt": "70"}},
		{"grammage", "250", "", "", map[string]string{"Grammage": "250"}},
		{"sheet", "8 x 10 in", "", "", map[string]string{"SheetWidth": nm("8 in"), "SheetHeight": nm("10 in")}},
		{"grain", "height", "", "", map[string]string{"Grain": "height"}},
		{"ruler", "1/32 in", "", "", map[string]string{"Ruler": "1/32 in"}},
		{"step", "1/8 in", "", "", map[string]string{"Step": "1/8 in"}},
		{"bench", "plotter", "", "", map[string]string{"CutError": nm("0.2 mm"), "ScoreError": nm("0.2 mm")}},
		{"cut_tolerance", "0.04 in", "", "", map[string]string{"CutError": nm("0.04 in")}},
		{"score_tolerance", "0.05 in", "", "", map[string]string{"ScoreError": nm("0.05 in")}},
		{"fit", "snug", "", "", map[string]string{"FitName": "snug", "Fit.Min": "0", "Fit.Max": nm("1/16 in")}},
		{"clearance_min", "0.01 in", both, "", map[string]string{"Fit.Min": nm("0.01 in")}},
		{"clearance_max", "0.11 in", both, "", map[string]string{"Fit.Max": nm("0.11 in")}},
		{"wanted_chance", "0.9", "", "", map[string]string{"WantedChance": "0.9"}},
	}
}

// enclosureBase gives lengths with their units, so that the unit alone can
// change.
const enclosureBase = "unit=in&width=3.5in&height=5in&thickness=0.09in&caliper=0.012in"

// ownEffects are the effects of a kind's own parameters, each with its first
// value that is not the default, in the unit.
func ownEffects(k *enclosure.Kind, unit measure.Unit) []effect {
	var effects []effect
	for _, p := range k.Params {
		given := map[enclosure.ParamType]string{enclosure.LengthParam: "0", enclosure.CountParam: "0"}
		e := effect{name: p.Name, value: otherValue(p, unit)}
		given[p.Type] = e.value
		if p.Type == enclosure.LengthParam {
			given[p.Type] = nm(e.value)
		}
		path := "Options[" + p.Name + "]."
		e.changes = map[string]string{path + "Length": given[enclosure.LengthParam], path + "Count": given[enclosure.CountParam]}
		if p.Type == enclosure.ChoiceParam {
			e.changes[path+"Choice"] = e.value
		}
		effects = append(effects, e)
	}
	return effects
}

// otherValue is a value of a kind's parameter that is not its default.
func otherValue(p enclosure.Param, unit measure.Unit) string {
	switch p.Type {
	case enclosure.ChoiceParam:
		return p.Choices[1]
	case enclosure.CountParam:
		if p.DefaultCount != p.LeastCount {
			return fmt.Sprint(p.LeastCount)
		}
		return fmt.Sprint(p.LeastCount + 1)
	default:
		mark := measure.Finest(unit)
		return mark.Format(mark.Up(p.Least.Add(mark.Size())))
	}
}

// TestEveryNameOfASolution sets every name of every kind in turn, in both
// units.
func TestEveryNameOfASolution(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		effects := slices.Concat(commonEffects(), ownEffects(k, measure.Inch), ownEffects(k, measure.Millimetre))
		checkEffects(t, NewSolve(k, "json"), enclosureBase, func(q *Enclosure) any { return q.Request }, effects)
	}
}

// under puts a path before those of effects.
func under(path string, effects []effect) []effect {
	for i := range effects {
		changes := map[string]string{}
		for name, value := range effects[i].changes {
			changes[path+"."+name] = value
		}
		effects[i].changes = changes
	}
	return effects
}

func TestEveryNameOfACheck(t *testing.T) {
	k, _ := repertoire.Lookup("slotted-band")
	come := func(q *Check) any {
		return struct {
			Request  *solve.Request
			Own      *solve.Measurements
			Finished *solve.Finished
		}{q.Request, q.Measurements(), q.Finished()}
	}
	checkEffects(t, NewCheck(k, "json"), enclosureBase+"&blank=8x2in&marks=2in&rises=1in&depths=1in", come, slices.Concat(
		under("Request", slices.Concat(commonEffects(), ownEffects(k, measure.Inch))), []effect{
			{"blank", "9 x 3 in", "", "", map[string]string{"Own.Blanks[0][0]": nm("9 in"), "Own.Blanks[0][1]": nm("3 in")}},
			{"marks", "3 in", "", "", map[string]string{"Own.Marks[0]": nm("3 in")}},
			{"rises", "4 in", "", "", map[string]string{"Own.Rises[0]": nm("4 in")}},
			{"depths", "5 in", "", "", map[string]string{"Own.Depths[0]": nm("5 in")}},
			{"outline", "1 x 2 in", "", "", map[string]string{"Own.Corners[0][0]": nm("1 in"), "Own.Corners[0][1]": nm("2 in")}},
			{"inside_width", "3.7 in", "", "", map[string]string{"Finished.Inside[0]": nm("3.7 in")}},
			{"inside_height", "2 in", "", "", map[string]string{"Finished.Inside[1]": nm("2 in")}},
			{"inside_thickness", "1/8 in", "", "", map[string]string{"Finished.Inside[2]": nm("1/8 in")}},
			{"outside_width", "3.8 in", "", "", map[string]string{"Finished.Outside[0]": nm("3.8 in")}},
			{"outside_height", "2 in", "", "", map[string]string{"Finished.Outside[1]": nm("2 in")}},
			{"outside_thickness", "1/4 in", "", "", map[string]string{"Finished.Outside[2]": nm("1/4 in")}},
		}))
}

func TestEveryNameOfAnAdaptation(t *testing.T) {
	k, _ := repertoire.Lookup("slotted-band")
	come := func(q *Adapt) any { return q.MadeFor }
	var known []effect
	for _, n := range NewCheck(k, "json").Names() {
		known = append(known, elsewhere(n.Name)) // as of a check
	}
	made := func(name, value string, more ...string) effect {
		e := effect{"made_for_" + strings.ToLower(name), value, "", "", map[string]string{name: nm(value)}}
		for _, path := range more {
			e.changes[path] = "*"
		}
		return e
	}
	checkEffects(t, NewAdapt(k, "json"), enclosureBase+"&blank=8x2in", come, append(known,
		made("Width", "3 in"), made("Height", "4 in"), made("Thickness", "0.1 in"), made("Caliper", "0.02 in", "WallGive")))
}

func TestEveryNameOfAGuideAndADrawing(t *testing.T) {
	k, _ := repertoire.Lookup("band")
	of := func() *Enclosure { return &Enclosure{Kind: k} }
	own := under("Request", slices.Concat(commonEffects(), ownEffects(k, measure.Inch)))
	checkEffects(t, NewGuide(of, "json"), enclosureBase, func(q *Guide[*Enclosure]) any {
		return struct {
			Request       *solve.Request
			Options       guide.Options
			Width, Height measure.Length
			Pictures      string
			Large         bool
		}{q.Of.Request, q.Options(), q.Paper.Width, q.Paper.Height, q.Pictures.Word, q.LargePrint()}
	}, append(slices.Clone(own),
		effect{"language", "de", "", "", map[string]string{"Options.Language": "de"}},
		effect{"steps", "no", "", "", map[string]string{"Options.Brief": "true"}},
		effect{"pictures", "dark", "", "", map[string]string{"Pictures": "dark"}},
		effect{"units", "both", "", "", map[string]string{"Options.Units": fmt.Sprint(guide.Both)}},
		effect{"print", "large", "", "", map[string]string{"Large": "true"}},
		effect{"paper", "8 x 9 in", "", "", map[string]string{"Width": nm("8 in"), "Height": nm("9 in")}}))
	checkEffects(t, NewDrawing(of, "svg"), enclosureBase, func(q *Drawing[*Enclosure]) any {
		return struct {
			Request                             *solve.Request
			Dark                                bool
			Pixels, Picture                     int
			Closed                              float64
			Language, View, Folds               string
			Width, Height, Across, Beside, Kerf measure.Length
		}{q.Of.Request, q.Dark(), q.Pixels.Count(), q.Picture.Count(), q.Closed.Number, q.Language.Word, q.View.Word, q.Folds.Word,
			q.Paper.Width, q.Paper.Height, q.Bed.Width, q.Bed.Height, q.Kerf.Length}
	}, append(slices.Clone(own),
		effect{"theme", "dark", "", "", map[string]string{"Dark": "true"}},
		effect{"pixels", "321", "", "", map[string]string{"Pixels": "321"}},
		effect{"closed", "0.25", "", "", map[string]string{"Closed": "0.25"}},
		effect{"view", "cutter", "", "", map[string]string{"View": "cutter"}},
		effect{"picture", "3", "", "", map[string]string{"Picture": "3"}},
		effect{"bed", "11 x 7 in", "", "", map[string]string{"Across": nm("11 in"), "Beside": nm("7 in")}},
		effect{"kerf", "0.2 mm", "", "", map[string]string{"Kerf": nm("0.2 mm")}},
		effect{"folds", "perforate", "", "", map[string]string{"Folds": "perforate"}},
		effect{"language", "de", "", "", map[string]string{"Language": "de"}},
		effect{"paper", "8 x 9 in", "", "", map[string]string{"Width": nm("8 in"), "Height": nm("9 in")}}))
}

func TestEveryNameOfTheRulerAndOfAPaper(t *testing.T) {
	checkEffects(t, New[Ruler]("json"), "unit=in&length=1in", func(q *Ruler) any { return q.Lengths.Lengths }, []effect{
		{"unit", "mm", "", "", nil},
		{"length", "2 in", "", "", map[string]string{"[0]": nm("2 in")}},
	})
	checkEffects(t, New[Paper]("json"), "unit=in&caliper=0.012in", func(q *Paper) any {
		return struct {
			Known  any
			Source string
		}{q.Known, q.Source}
	}, []effect{
		{"unit", "mm", "", "", map[string]string{"Known.Unit": "mm"}},
		{"stock", "index-110", "", "caliper", map[string]string{"Known.Named": "true", "Known.Caliper": "*", "Known.Grammage": "*", "Source": "*"}},
		{"caliper", "0.02 in", "", "", map[string]string{"Known.Caliper": nm("0.02 in")}},
		{"points", "13", "", "", map[string]string{"Known.Points": "13"}},
		{"stack", "1 in", "", "", map[string]string{"Known.Stack": nm("1 in")}},
		{"stack_sheets", "40", "", "", map[string]string{"Known.StackSheets": "40"}},
		{"grammage", "250", "", "", map[string]string{"Known.Grammage": "250"}},
		{"basis_weight", "81", "", "", map[string]string{"Known.BasisWeight": "81"}},
		{"grade", "cover", "basis_weight=80", "", map[string]string{"Known.Grade.Name": "cover", "Known.Grade.Title": "*", "Known.Grade.Basis": "*"}},
		{"sheet_mass", "12.5", "", "", map[string]string{"Known.SheetMass": "12.5"}},
		{"sheet", "6 x 7 in", "", "", map[string]string{"Known.SheetWidth": nm("6 in"), "Known.SheetHeight": nm("7 in")}},
	})
}

func TestEveryNameOfACalibration(t *testing.T) {
	const strip = "block_width=60mm&block_thickness=20mm&turns=10&wound=1720mm"
	const lines, folds = "=10mm&%[1]s=10mm&%[1]s=11mm&%[1]s=10mm&%[1]s=9mm", "caliper=0.3mm&scored_apart=25mm&folded_inside"
	five := func(name string) string { return name + fmt.Sprintf(lines, name) }
	first := func(list string) func(string) map[string]string {
		return func(text string) map[string]string { return map[string]string{"Measured." + list: nm(text)} }
	}
	checkEffects(t, New[Calibration]("json"), "unit=mm", func(q *Calibration) any {
		return struct {
			Measured      any
			Width, Height measure.Length
			Language      string
		}{q.Measured, q.Paper.Width, q.Paper.Height, q.Language.Word}
	}, []effect{
		{"unit", "in", "ruler=0.5mm&block_tolerance=1mm", "", map[string]string{"Measured.Unit": "in"}},
		{"ruler", "1 mm", "", "", map[string]string{"Measured.Ruler": "1 mm"}},
		{"block_width", "61 mm", strip, "", first("Block.Width")("61 mm")},
		{"block_thickness", "21 mm", strip, "", first("Block.Thickness")("21 mm")},
		{"block_tolerance", "0.2 mm", strip, "", first("Block.Tolerance")("0.2 mm")},
		{"turns", "9", strip, "", map[string]string{"Measured.Turns": "9"}},
		{"wound", "1730 mm", strip, "", first("Wound")("1730 mm")},
		{"stack_count", "30", "stack_count=20&stack=6mm", "", map[string]string{"Measured.Sheets": "30"}},
		{"stack", "7 mm", "stack_count=20&stack=6mm", "", first("Stack")("7 mm")},
		{"caliper", "0.4 mm", "", "", first("Caliper")("0.4 mm")},
		{"cut_at", "11 mm", "cut_at=10mm&" + five("cuts"), "", first("Cuts.At")("11 mm")},
		elsewhere("cuts"),
		{"score_at", "11 mm", "score_at=10mm&" + five("scores"), "", first("Scores.At")("11 mm")},
		elsewhere("scores"),
		{"scored_apart", "26 mm", folds + fmt.Sprintf(lines, "folded_inside"), "", first("Fold.Apart")("26 mm")},
		elsewhere("folded_inside"),
		{"marked", "100 mm", "marked=200mm&wet_along=201mm&wet_across=203mm", "", first("Marked")("100 mm")},
		{"wet_along", "202 mm", "marked=200mm&wet_along=201mm&wet_across=203mm", "", first("WetAlong")("202 mm")},
		{"wet_across", "204 mm", "marked=200mm&wet_along=201mm&wet_across=203mm", "", first("WetAcross")("204 mm")},
		{"bench", "plotter", "", "", map[string]string{"Measured.Bench.Name": "plotter", "Measured.Bench.Title": "*", "Measured.Bench.Cut": nm("0.2 mm"), "Measured.Bench.Score": nm("0.2 mm")}},
		{"paper", "200 x 210 mm", "", "", map[string]string{"Width": nm("200 mm"), "Height": nm("210 mm")}},
		{"language", "de", "", "", map[string]string{"Language": "de"}},
	})
	_, flat := taken(t, New[Calibration]("json"), "unit=mm&cut_at=10mm&"+five("cuts")+"&score_at=10mm&"+five("scores")+"&scored_apart=25mm&caliper=0.3mm&"+five("folded_inside"), func(q *Calibration) any { return q.Measured })
	for _, list := range []string{"Cuts.Lines", "Scores.Lines", "Fold.Inside"} {
		assert.Equal(t, nm("11 mm"), flat[list+"[2]"], list)
		assert.Equal(t, nm("9 mm"), flat[list+"[4]"], list)
	}
}

func TestEveryNameOfAPieceToBeMailed(t *testing.T) {
	trait := func(t mail.Trait) map[string]string { return map[string]string{"Piece.Traits": fmt.Sprint(t)} }
	checkEffects(t, New[Mail]("json"), "unit=in&width=5in&height=7in&post=us", func(q *Mail) any {
		posts := ""
		for _, p := range q.Asked() {
			posts += p.Name
		}
		return struct {
			Piece    mail.Piece
			Posts    string
			Language string
		}{q.Piece(), posts, q.Language.Word}
	}, []effect{
		{"unit", "mm", "", "", nil},
		{"width", "4 in", "", "", map[string]string{"Piece.Width": nm("4 in")}},
		{"height", "6 in", "", "", map[string]string{"Piece.Height": nm("6 in")}},
		{"thickness", "1/4 in", "", "", map[string]string{"Piece.Thickness": nm("1/4 in")}},
		{"size_tolerance", "1/32 in", "", "", map[string]string{"Piece.SizeTolerance": nm("1/32 in")}},
		{"thickness_tolerance", "1/64 in", "", "", map[string]string{"Piece.ThicknessTolerance": nm("1/64 in")}},
		{"mass", "24", "", "", map[string]string{"Piece.Mass": fmt.Sprint(mail.Grams(24))}},
		{"mass_oz", "0.85", "", "", map[string]string{"Piece.Mass": fmt.Sprint(mail.Ounces(0.85))}},
		{"mass_tolerance", "1.5", "", "", map[string]string{"Piece.MassTolerance": fmt.Sprint(mail.Grams(1.5))}},
		{"post", "de", "", "", map[string]string{"Posts": "de"}},
		{"address_along", "height", "", "", map[string]string{"Piece.Address": fmt.Sprint(mail.HeightSide)}},
		{"card", "single", "", "", trait(mail.SingleCard)},
		{"card", "folded", "", "", trait(mail.FoldedCard)},
		{"shape", "other", "", "", trait(mail.Irregular)},
		{"rigid", "yes", "", "", trait(mail.Rigid)},
		{"uneven", "yes", "", "", trait(mail.Uneven)},
		{"clasp", "yes", "", "", trait(mail.Clasp)},
		{"plastic", "yes", "", "", trait(mail.Plastic)},
		{"box", "yes", "", "", trait(mail.Box)},
		{"language", "de", "", "", map[string]string{"Language": "de"}},
	})
}

func TestEveryNameOfAListThatIsSearchedBySize(t *testing.T) {
	checkEffects(t, New[Near]("json"), "near=86x54mm", func(q *Near) any {
		return struct{ Width, Height, Top any }{q.Size.Width, q.Size.Height, q.Top.Count()}
	}, []effect{
		{"unit", "mm", "", "", nil},
		{"near", "50 x 60 mm", "", "", map[string]string{"Width": nm("50 mm"), "Height": nm("60 mm")}},
		{"top", "3", "", "", map[string]string{"Top": "3"}},
	})
}
