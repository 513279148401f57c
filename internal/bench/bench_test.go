package bench_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/bench"
	"creasefit/internal/measure"
)

// Common practice: by hand to 1/32 in, with a trimmer to 1/64 in, with a
// cutting machine to 0.2 mm.
func TestCommonPractice(t *testing.T) {
	for name, want := range map[string]string{"hand": "1/32 in", "trimmer": "1/64 in", "plotter": "0.2 mm"} {
		b, ok := bench.Lookup(name)
		if assert.True(t, ok, name) {
			assert.Equal(t, measure.MustParse(want), b.Cut, name)
			assert.Equal(t, measure.MustParse(want), b.Score, name)
		}
	}
}

func TestBenchesAreComplete(t *testing.T) {
	for i, b := range bench.All() {
		assert.Equal(t, bench.Names()[i], b.Name)
		assert.NotEmpty(t, b.Title, b.Name)
		assert.NotEmpty(t, b.Source, b.Name)
		found, ok := bench.Lookup(b.Name)
		assert.True(t, ok)
		assert.Equal(t, b, found, "names are not used twice")
	}
	_, ok := bench.Lookup("Hand")
	assert.False(t, ok, "names are case-exact")
}

// A household ruler has sixteenths of an inch, or half millimetres (common
// practice).
func TestHouseholdRuler(t *testing.T) {
	assert.Equal(t, measure.MustParse("1/16 in"), bench.Ruler(measure.Inch).Size())
	assert.Equal(t, measure.MustParse("0.5 mm"), bench.Ruler(measure.Millimetre).Size())
}

func TestAllIsACopy(t *testing.T) {
	bench.All()[0].Cut = measure.Inches(1)
	b, _ := bench.Lookup(bench.Names()[0])
	assert.NotEqual(t, measure.Inches(1), b.Cut)
}

func ExampleLookup() {
	b, _ := bench.Lookup("trimmer")
	step, _ := measure.ParseStep("1/64")
	fmt.Println(b.Title, "cuts to", step.Format(b.Cut))
	// Output: guillotine or rotary trimmer and score board cuts to 1/64 in
}
