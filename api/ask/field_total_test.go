package ask

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/contents"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/tolerance"
)

// Several of the named contents lie beside one another; the canonical address
// still says so, since their sizes vary as often as there are of them.
func TestSeveralOfThem(t *testing.T) {
	a := band()
	a.AddQuery("contents=tea-sachets&width=3+of+them+%2B+2+mal+0,5+mm&thickness=2*them&decimal=comma&caliper=0.3mm")
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	assert.Equal(t, measure.MustParse("8.25 in").Add(measure.Millimetres(1)), a.Q.Request.Width, "three sachets of 2 3/4 in")
	assert.Equal(t, measure.MustParse("2 3/8 in"), a.Q.Request.Height, "one of them high")
	assert.Equal(t, measure.MustParse("1 1/4 in"), a.Q.Request.Thickness, "two stacks of 5/8 in")
	assert.Equal(t, tolerance.Within(measure.MustParse("3/64 in")), a.Q.Request.SizeTolerance)
	assert.Equal(t, tolerance.Within(measure.MustParse("1/32 in")), a.Q.Request.ThicknessTolerance)
	assert.Equal(t, "/x?unit=mm&contents=tea-sachets&width=3+of+them+and+1mm&thickness=2+of+them&caliper=0.3mm", string(a.Link("/x")))
}

// Bounds are told in the unit of the request, inwards where they are no short decimal.
func TestBoundsInOneUnit(t *testing.T) {
	a := band()
	a.AddQuery("unit=in&width=90&thickness=0.1&caliper=0.012&clearance_min=0&clearance_max=2")
	a.Parse()
	require.False(t, a.Check())
	assert.Equal(t, "a length from 0.1182 in to 78.7401 in, such as 3 1/2 in", a.Faults()[0].Expected)
	assert.Equal(t, "78.7401in", a.Faults()[0].Hint)
	assert.Equal(t, "a length from 0 in to 0.3937 in, such as 1/16 in", a.Faults()[1].Expected)
}

// What is wrong with several things names the field and what to do.
func TestSeveralOfThemRefused(t *testing.T) {
	for query, want := range map[string][2]string{
		"unit=in&width=3+of+them&thickness=1":             {"width", "name the contents, or write 3 of 60 mm"},
		"contents=photo-4r&thickness=9+of+them":           {"thickness", "write 9 of 1 mm"},
		"contents=tea-tin&width=90+of+them":               {"width", "leave some of them out"},
		"contents=tea-tin&width=3+of+60mm":                {"width", "leave out width or contents"},
		"unit=mm&thickness=1&width=3+x+60":                {"width", ""},
		"unit=mm&thickness=1&width=3+of+60+furlongs":      {"width", ""},
		"unit=mm&width=60&thickness=500+of+2":             {"thickness", "500mm"},
		"unit=mm&width=60&thickness=3+of+2&height=0+of+9": {"height", ""},
	} {
		a := band()
		a.AddQuery(query + "&caliper=0.3mm")
		a.Parse()
		assert.False(t, a.Check(), query)
		require.Len(t, a.Faults(), 1, query)
		assert.Equal(t, want, [2]string{a.Faults()[0].Field, a.Faults()[0].Hint}, query)
	}
}

// A round thing is as thick as it is wide: whoever says the one need not say the other.
func TestRoundThingsAreAsThickAsWide(t *testing.T) {
	rolls := 0
	for _, k := range repertoire.Kinds() {
		if !k.Rolls() {
			continue
		}
		rolls++
		for query, thick := range map[string]string{"shape=round": "60 mm", "shape=round&thickness=58": "58 mm", "shape=box&thickness=58": "58 mm"} {
			a := NewSolve(k, "json").Take()
			a.AddQuery("unit=mm&width=60&height=90&caliper=0.3&" + query)
			a.Parse()
			require.True(t, a.Check(), "%s %s: %v", k.Name, query, a.Faults())
			assert.Equal(t, measure.MustParse(thick), a.Q.Request.Thickness, "%s %s", k.Name, query)
		}
		a := NewSolve(k, "json").Take()
		a.AddQuery("unit=mm&width=60&height=90&caliper=0.3")
		a.Parse()
		require.False(t, a.Check(), k.Name)
		assert.Equal(t, "thickness", a.Faults()[0].Field, "nothing says that it is round")
	}
	assert.Positive(t, rolls)
}

// What is as fine or as narrow as can be is taken: a step on every mark, a fit without play,
// all that a named thing may come to.
func TestWhatIsJustWithin(t *testing.T) {
	for query, ok := range map[string]bool{
		"ruler=1/8in&step=1/8in": true, "ruler=1/8in&step=1/16in": false,
		"clearance_min=1/8in&clearance_max=1/8in": true, "clearance_min=1/8in&clearance_max=1/16in": false,
		"ruler=1/2in": true, "ruler=1in": false,
	} {
		a := band()
		a.AddQuery("unit=in&width=3&thickness=1&caliper=0.012&" + query)
		a.Parse()
		assert.Equal(t, ok, a.Check(), "%s: %v", query, a.Faults())
	}
}

// A caliper that is estimated is told in the unit of the request, to a hundredth of a
// millimetre or a ten-thousandth of an inch.
func TestEstimatesAreToldInShort(t *testing.T) {
	for _, c := range []struct {
		l    string
		unit measure.Unit
		want string
	}{
		{"0.01234 in", measure.Inch, "0.0123 in"}, {"0.34567 mm", measure.Millimetre, "0.35 mm"}, {"0.3 mm", measure.Inch, "0.0118 in"},
	} {
		assert.Equal(t, c.want, plainLength(measure.MustParse(c.l), c.unit))
	}
	a := NewSolve(band().Q.Kind, "json").Take()
	a.AddQuery("width=60+mm&thickness=2+mm&grammage=250")
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	require.NotEmpty(t, a.Q.Request.Notes)
	assert.Regexp(t, `^The caliper of 0\.\d\d? mm is .*: 0\.\d\d? mm to 0\.\d\d? mm is likely\.`, a.Q.Request.Notes[0].Detail)
}

// One named thing varies as its listing says, once; names are as long as their letters are
// many, not their bytes.
func TestOneThingVariesOnce(t *testing.T) {
	item, known := contents.Lookup("id-1")
	require.True(t, known)
	a := band()
	a.AddQuery("contents=id-1&caliper=0.3mm")
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	assert.Equal(t, tolerance.Within(item.ThicknessTolerance), a.Q.Request.ThicknessTolerance)
	assert.Positive(t, item.ThicknessTolerance.Sign())
	for n, ok := range map[int]bool{MostValue: true, MostValue + 1: false} {
		y := NewYield("json").Take()
		y.AddQuery("unit=in&sheet=12x12&blank=3x2&name=" + strings.Repeat("ü", n))
		y.Parse()
		assert.Equal(t, ok, y.Check(), "%d letters", n)
	}
}

// A name stands in steps and on terminals: what turns letters round there or is not to be seen
// (Unicode 15, 23.2, format characters) is refused with control characters; other letters are not.
func TestNamesAreToBeSeen(t *testing.T) {
	for name, ok := range map[string]bool{"Tasting cards – für 2 €": true, "cards\u202esdrac": false, "cards\u200b": false, "cards\u00ad": false, "茶": true} {
		y := NewYield("json").Take()
		y.AddQuery("unit=in&sheet=12x12&blank=3x2&name=" + url.QueryEscape(name))
		y.Parse()
		assert.Equal(t, ok, y.Check(), "%q: %v", name, y.Faults())
	}
	for depth, ok := range map[int]bool{MostDepth: true, MostDepth + 1: false} {
		f, fine := UnreadableJSON([]byte(strings.Repeat(`{"a":`, depth-1) + "{}" + strings.Repeat("}", depth-1)))
		assert.Equal(t, ok, fine, "%d levels: %s", depth, f.Detail)
	}
}
