package ask

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fault"
	"creasefit/internal/golden"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// everyCall is the names of every call, of kinds those of one.
func everyCall() map[string][]Name {
	k, _ := repertoire.Lookup("slotted-band")
	of := func() *Enclosure { return &Enclosure{Kind: k} }
	yield := NewYield("json", "csv")
	forms := yield.Take().Q.forms
	return map[string][]Name{
		"check": NewCheck(k, "json").Names(), "guide": NewGuide(of, "json").Names(), "drawing": NewDrawing(of, "svg", "pdf").Names(),
		"ruler": New[Ruler]("json", "csv").Names(), "stock": New[Paper]("json").Names(), "mail": New[Mail]("json", "csv").Names(), "calibrate": New[Calibration]("json", "pdf").Names(),
		"yield": yield.Names(), "yield sheet": forms.sheet.Names(), "yield blank": forms.blank.Names(), "yield item": forms.kinds.byName[k.Name].Names(),
		"adapt": NewAdapt(k, "json").Names(), "suggest": New[Suggest]("json").Names(), "match": NewMatch(nil, "json").Names(), "presets": New[Near]("json").Names(), "posts": New[Posts]("json").Names(),
		"portfolio": NewForm(Portfolios(), "json").Names(), "layer": Portfolios()().kinds.byName[k.Name].Names(),
	}
}

// describe writes what is known of a name.
func describe(n *Name) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %s", n.Name, n.Type)
	if n.List {
		fmt.Fprintf(&b, " list of %d", n.MostValues())
	}
	switch n.Type {
	case LengthType, SizeType:
		fmt.Fprintf(&b, " %s..%s nm", number(float64(n.Least.Nanometres())), number(float64(n.Greatest.Nanometres())))
	case CountType, NumberType:
		fmt.Fprintf(&b, " %s..%s", number(n.LeastNumber), number(n.GreatestNumber))
	case ChoiceType:
		fmt.Fprintf(&b, " %s", strings.Join(n.Choices, "|"))
	}
	fmt.Fprintf(&b, "; advanced %t, answer %t, narrows %t; default %q %q; such as %s", n.Advanced, n.Answer, n.Narrows, n.Default.Inch, n.Default.Millimetre, n.Example)
	if n.Catalogue != "" {
		fmt.Fprintf(&b, "; listed at %s", n.Catalogue)
	}
	if n.MostCharacters > 0 {
		fmt.Fprintf(&b, "; at most %d characters", n.MostCharacters)
	}
	return b.String() + "\n\t" + n.Help + "\n"
}

// TestNamesAreAsDocumented freezes what is known of every name; what a call has
// in common with a check stands there alone.
func TestNamesAreAsDocumented(t *testing.T) {
	calls, common := everyCall(), map[string]bool{}
	for _, n := range calls["check"] {
		common[describe(&n)] = true
	}
	for call, names := range calls {
		var b strings.Builder
		for i := range names {
			if line := describe(&names[i]); call == "check" || !common[line] {
				b.WriteString(line)
			}
		}
		golden.Check(t, filepath.Join("testdata", "names", strings.ReplaceAll(call, " ", "-")+".txt"), []byte(b.String()))
	}
}

// TestEveryBoundIsKept gives every length, size, count and number its least and
// its greatest value, which are taken, and the next ones beyond, which are not.
func TestEveryBoundIsKept(t *testing.T) {
	for call, names := range everyCall() {
		for i := range names {
			n := &names[i]
			switch n.Type {
			case LengthType:
				step := measure.Nanometres(1)
				assert.Empty(t, refusal(n, mm(n.Least)), "%s %s", call, n.Name)
				assert.Empty(t, refusal(n, mm(n.Greatest)), "%s %s", call, n.Name)
				if n.Greatest.Less(measure.Largest()) {
					assert.Equal(t, fault.OutOfRange, refusal(n, mm(n.Greatest.Add(step))), "%s %s", call, n.Name)
				}
				if !n.Least.IsZero() {
					assert.Equal(t, fault.OutOfRange, refusal(n, mm(n.Least.Sub(step))), "%s %s", call, n.Name)
				}
			case SizeType:
				assert.Empty(t, refusal(n, mm(n.Least)+" x "+mm(n.Greatest)), "%s %s", call, n.Name)
				assert.Equal(t, fault.OutOfRange, refusal(n, mm(n.Least)+" x "+mm(n.Greatest.Add(measure.Nanometres(1)))), "%s %s", call, n.Name)
				if !n.Least.IsZero() {
					assert.Equal(t, fault.OutOfRange, refusal(n, mm(n.Least.Sub(measure.Nanometres(1)))+" x "+mm(n.Greatest)), "%s %s", call, n.Name)
				}
			case CountType, NumberType:
				assert.Empty(t, refusal(n, number(n.LeastNumber)), "%s %s", call, n.Name)
				assert.Empty(t, refusal(n, number(n.GreatestNumber)), "%s %s", call, n.Name)
				assert.Equal(t, fault.OutOfRange, refusal(n, number(n.GreatestNumber+1)), "%s %s", call, n.Name)
				if below := n.LeastNumber - 0.0000001; n.Type == NumberType && below > 0 {
					assert.Equal(t, fault.OutOfRange, refusal(n, number(below)), "%s %s", call, n.Name)
				}
			}
		}
	}
}

// mm writes a length exactly.
func mm(l measure.Length) string {
	return string(measure.AppendDecimal(nil, l, measure.Millimetre, 6)) + " mm"
}

// alone is a request of one name.
type alone struct {
	value value
	name  Name
}

func (q *alone) bind(b *Names) { b.bind(q.value, q.name) }

func (*alone) settle(*Reading) {}

// refusal is the code of the fault of a value; empty if it is taken.
func refusal(n *Name, text string) fault.Code {
	fields := map[Type][2]value{LengthType: {&Length{}, &Lengths{}}, SizeType: {&Size{}, &Sizes{}}, CountType: {&Count{}, nil}, NumberType: {&Number{}, nil}}
	which := 0
	if n.List {
		which = 1
	}
	a := NewForm(func() *alone { return &alone{fields[n.Type][which], *n} }).Take()
	a.Add(n.Name, text)
	a.Parse()
	if a.Check() {
		return ""
	}
	return a.Faults()[0].Code
}

// TestFaultsKeepTheOrderOfTheNames: what is out of bounds is found after all
// else, but told where it stands.
func TestFaultsKeepTheOrderOfTheNames(t *testing.T) {
	k, _ := repertoire.Lookup("band")
	a := NewSolve(k, "json").Take()
	a.AddQuery("unit=in&grammage=1&width=x&height=90&thickness=0&bench=laser&caliper=9&sheet=1x900&thicknes=1&step=1/7in")
	a.Parse()
	require.False(t, a.Check())
	var told []string
	for _, f := range a.Faults() {
		told = append(told, f.Field+" "+string(f.Code))
	}
	assert.Equal(t, []string{"grammage out-of-range", "width unreadable", "height out-of-range", "thickness out-of-range", "bench unknown", "caliper out-of-range",
		"sheet out-of-range", "thicknes unknown", "step unreadable"}, told)
	_, ok := a.Corrected()
	assert.False(t, ok, "nobody can guess the width")
}

// TestAtMostTwentyFaultsAreTold counts the others.
func TestAtMostTwentyFaultsAreTold(t *testing.T) {
	a := New[Ruler]("json").Take()
	for range 30 {
		a.Add("length", "99 m")
	}
	a.Add("unit", "in")
	a.Add("unit", "in")
	for range 5 {
		a.Add("lenght", "1")
	}
	a.Parse()
	require.False(t, a.Check())
	assert.Len(t, a.Faults(), MostReported)
	assert.Equal(t, 30+1+5-MostReported, a.Hidden())
	_, ok := a.Corrected()
	assert.False(t, ok)
}

// TestEveryFieldIsBound: a field of a call's struct that no name fills would be
// read as never given.
func TestEveryFieldIsBound(t *testing.T) {
	k, _ := repertoire.Lookup("slotted-band")
	of := func() *Enclosure { return &Enclosure{Kind: k} }
	for _, q := range []any{
		NewSolve(k, "json", "csv").Take(), NewCheck(k, "json", "csv").Take(), NewGuide(of, "json", "csv").Take(), NewDrawing(of, "json", "csv").Take(), New[Ruler]("json", "csv").Take(),
		New[Paper]("json", "csv").Take(), New[Mail]("json", "csv").Take(), NewYield("json", "csv").Take(), NewForm(Portfolios(), "json", "csv").Take(),
		NewAdapt(k, "json").Take(), New[Suggest]("json").Take(), New[Calibration]("json").Take(), New[Near]("json").Take(), New[Posts]("json").Take(), NewKindDesign(k, "json").Take(),
	} {
		assert.Empty(t, unbound(q), "%T", q)
	}
}
