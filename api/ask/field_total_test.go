package ask

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
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
