package repertoire_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/enclosure"
	"creasefit/internal/golden"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// describe writes what a caller can know of a parameter.
func describe(p *enclosure.Param) string {
	var what string
	switch p.Type {
	case enclosure.LengthParam:
		mm := func(l measure.Length) string { return l.Decimal(measure.Millimetre, 6) }
		what = fmt.Sprintf("length %s..%s, default %s or %s", mm(p.Least), mm(p.Greatest), mm(p.DefaultInch), mm(p.DefaultMillimetre))
	case enclosure.CountParam:
		what = fmt.Sprintf("count %d..%d, default %d", p.LeastCount, p.GreatestCount, p.DefaultCount)
	default:
		what = "one of " + strings.Join(p.Choices, ", ")
	}
	return fmt.Sprintf("  %s: %s; advanced %t, drawn %t, by the bench %t\n    %s\n", p.Name, what, p.Advanced, p.Drawn, p.ByBench, p.Help)
}

// TestKindsAreFrozen: a kind, its order in the list, or a parameter with its bounds, default and
// words that changes is a change that somebody meant.
func TestKindsAreFrozen(t *testing.T) {
	var b strings.Builder
	for _, k := range repertoire.Kinds() {
		fmt.Fprintf(&b, "%s: %s. %s\n  needs %s; a box %t, sealed %t\n", k.Name, k.Title, k.Help, strings.Join(k.Needs, ", "), k.Box, k.Sealed)
		for i := range k.Params {
			b.WriteString(describe(&k.Params[i]))
		}
	}
	golden.Check(t, "testdata/kinds.txt", []byte(b.String()))
}

// TestKindsAreFoundByName, each once, with words in German, defaults within their bounds and
// no name twice.
func TestKindsAreFoundByName(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		found, ok := repertoire.Lookup(k.Name)
		assert.True(t, ok, k.Name)
		assert.Same(t, k, found)
		assert.NotEqual(t, k.In("en"), k.In("de"), "%s has words in German", k.Name)
		assert.Equal(t, k.Title, k.In("xx").Title, "in English where there are none")
		seen := map[string]bool{}
		for _, p := range k.Params {
			assert.False(t, seen[p.Name], "%s: %s twice", k.Name, p.Name)
			seen[p.Name] = true
			for _, u := range []measure.Unit{measure.Inch, measure.Millimetre} {
				if d := p.DefaultLength(u); !d.IsZero() {
					assert.False(t, d.Less(p.Least) || p.Greatest.Less(d), "%s: the default of %s", k.Name, p.Name)
				}
			}
			if p.Type == enclosure.CountParam && p.DefaultCount != 0 {
				assert.True(t, p.LeastCount <= p.DefaultCount && p.DefaultCount <= p.GreatestCount, "%s: %s", k.Name, p.Name)
			}
		}
	}
	_, ok := repertoire.Lookup("Band")
	assert.False(t, ok, "names are case-exact")
}
