package wire

import (
	"fmt"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/golden"
	"creasefit/internal/measure"
)

// stated is a length as it is stated, - if it is not.
func stated(l *Length) string {
	if l == nil {
		return "-"
	}
	return fmt.Sprintf("%s (%v mm)", l.Reading, l.MM)
}

// TestABenchAsNamesIsThatBench: its query reads back to the same tolerances.
func TestABenchAsNamesIsThatBench(t *testing.T) {
	for _, p := range Benches().Benches {
		names, err := url.ParseQuery(p.Query)
		require.NoError(t, err)
		for name, want := range map[string]float64{"cut_tolerance": p.CutTolerance.MM, "score_tolerance": p.ScoreTolerance.MM} {
			assert.Equal(t, want, measure.MustParse(names.Get(name)).Millimetres(), "%s %s", p.Name, name)
		}
	}
}

// TestPresetsAreFrozen: a size, a unit, a tolerance or a source of a preset that changes
// is a change that somebody meant.
func TestPresetsAreFrozen(t *testing.T) {
	var b strings.Builder
	for _, p := range Contents(&ask.Near{}).Contents {
		fmt.Fprintf(&b, "contents %s: %s x %s x %s, within %s and %s, invented %t: %s (%s)\n", p.Name, stated(&p.Width), stated(&p.Height), stated(p.Thickness),
			stated(p.SizeTolerance), stated(p.ThicknessTolerance), p.Invented, p.Title, p.Source)
	}
	for _, p := range Sheets(&ask.Near{}).Sheets {
		fmt.Fprintf(&b, "sheet %s: %s x %s: %s (%s)\n", p.Name, stated(&p.Width), stated(&p.Height), p.Title, p.Source)
	}
	for _, p := range Stocks().Stocks {
		fmt.Fprintf(&b, "stock %s: %s within %s, %s to %s, %v g/m2, estimated %t: %s (%s)\n", p.Name, stated(&p.Caliper), stated(p.CaliperTolerance),
			stated(&p.CaliperRange[0]), stated(&p.CaliperRange[1]), p.Grammage, p.Estimated, p.Title, p.Source)
	}
	for _, p := range Benches().Benches {
		fmt.Fprintf(&b, "bench %s: cuts within %s, scores within %s, %s: %s (%s)\n", p.Name, stated(&p.CutTolerance), stated(&p.ScoreTolerance), p.Query, p.Title, p.Source)
	}
	golden.Check(t, "testdata/presets.txt", []byte(b.String()))
}
