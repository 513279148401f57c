package enclosure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// ornamented plans a slotted band round a tasting card with the given lengths
// for its own parameters.
func ornamented(t *testing.T, options map[string]string) (*enclosure.Plan, error) {
	t.Helper()
	kind, ok := repertoire.Lookup("slotted-band")
	require.True(t, ok)
	in := &enclosure.Input{
		Unit: measure.Inch, Width: measure.Inches(4), Thickness: measure.Thousandths(50), Caliper: measure.Thousandths(12),
		Fit: enclosure.NamedFits()[0].Range(measure.Inch), Params: kind.Params, Given: map[string]enclosure.Value{},
	}
	for name, text := range options {
		in.Given[name] = enclosure.Value{Length: measure.MustParse(text)}
	}
	return kind.Plan(in)
}

// Worked by hand for tabs of 1/2 in on a band of 1 1/2 in.
func TestOrnament(t *testing.T) {
	rows := []struct {
		name, width, height     string
		coversTabs, coversSlits bool
		glueTo, glueHeight      string
		trimWidth, showsHeight  string
		adds                    string
	}{
		{"larger than the closure", "2 in", "2 in", true, true, "1/2 in", "1 1/2 in", "0 in", "0 in", "0.024 in"},
		{"just as large", "1 in", "1 1/2 in", true, true, "1/2 in", "1 1/2 in", "0 in", "0 in", "0.024 in"},
		{"narrower than the tabs", "3/4 in", "2 in", false, true, "3/8 in", "1 1/2 in", "1/8 in", "0 in", "0.024 in"},
		{"lower than the band", "2 in", "1 in", false, false, "1/2 in", "1 in", "0 in", "1/4 in", "0.024 in"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			plan, err := ornamented(t, map[string]string{"ornament_width": row.width, "ornament_height": row.height})
			require.NoError(t, err)
			o := plan.Ornament
			require.NotNil(t, o)
			assert.Equal(t, row.coversTabs, o.CoversTabs)
			assert.Equal(t, row.coversSlits, o.CoversSlits)
			assert.Equal(t, measure.MustParse("1/16 in"), o.GlueFrom, "never across a slit")
			assert.Equal(t, measure.MustParse(row.glueTo), o.GlueTo)
			assert.Equal(t, measure.MustParse(row.glueHeight), o.GlueHeight)
			assert.Equal(t, measure.MustParse(row.trimWidth), o.TrimWidth)
			assert.Equal(t, measure.MustParse(row.showsHeight), o.ShowsHeight)
			assert.Equal(t, measure.MustParse(row.adds), o.Adds)
		})
	}
}

func TestOrnamentRefused(t *testing.T) {
	for name, options := range map[string]map[string]string{
		"no room for glue": {"ornament_width": "1/4 in"},
		"no width":         {"ornament_height": "2 in"},
		"only a caliper":   {"ornament_caliper": "0.02 in"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := ornamented(t, options)
			var faults fault.Faults
			require.ErrorAs(t, err, &faults)
			assert.Equal(t, "ornament_width", faults[0].Field)
			assert.NotEmpty(t, faults[0].Hint)
		})
	}
}

func TestNoOrnamentUnlessAskedFor(t *testing.T) {
	plan, err := ornamented(t, nil)
	require.NoError(t, err)
	assert.Nil(t, plan.Ornament)
}
