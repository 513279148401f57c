package fault_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/fault"
)

func TestNearest(t *testing.T) {
	names := []string{"width", "height", "thickness", "caliper", "tab"}
	for got, want := range map[string]string{
		"widht":     "width",     // two substitutions
		"wide":      "width",     // a substitution and an insertion
		"thicknes":  "thickness", // a letter left out
		"Height":    "height",    // names are case-exact
		"callliper": "caliper",
		"tb":        "tab",
		"colour":    "",
		"":          "",
		"x":         "",
	} {
		assert.Equal(t, want, fault.Nearest(got, names), got)
	}
	assert.Empty(t, fault.Nearest("width", nil))
	assert.Equal(t, "tray", fault.Nearest("tray", []string{"trays", "tray"}), "the exact name beats a near one")
	assert.Equal(t, "bard", fault.Nearest("bird", []string{"bard", "bind"}), "the first of two as near")
}

// A name that was shortened to its first or its last word is meant, if no other could be.
func TestNearestOfAWord(t *testing.T) {
	names := []string{"trimmer_length", "folded-card", "lidded-box", "prism-box", "effort_ms"}
	for got, want := range map[string]string{"trimmer": "trimmer_length", "card": "folded-card", "effort": "effort_ms", "box": "", "length": "trimmer_length", "mer": "", "": ""} {
		assert.Equal(t, want, fault.Nearest(got, names), got)
	}
	assert.Equal(t, "car", fault.Nearest("card", []string{"folded-card", "car"}), "a mistyped one first")
}

// The judge of the next test knows the distances of textbooks.
func TestSlowDistance(t *testing.T) {
	for _, c := range []struct {
		a, b     string
		distance int
	}{
		{"kitten", "sitting", 3}, {"saturday", "sunday", 3}, {"flaw", "lawn", 2}, {"gumbo", "gambol", 2},
		{"", "abc", 3}, {"abc", "abc", 0},
	} {
		assert.Equal(t, c.distance, slow(c.a, c.b), "%s to %s", c.a, c.b)
	}
}

// Against the slow, obvious recursion, slow.
func TestNearestIsTheNearest(t *testing.T) {
	word := rapid.StringMatching(`[abc]{1,6}`)
	rapid.Check(t, func(t *rapid.T) {
		got, names := word.Draw(t, "got"), rapid.SliceOfN(word, 1, 5).Draw(t, "names")
		best := fault.Nearest(got, names)
		least := 1 << 30
		for _, name := range names {
			if d := slow(got, name); 2*d < len(name) {
				least = min(least, d)
			}
		}
		if best == "" {
			assert.Equal(t, 1<<30, least)
			return
		}
		assert.Equal(t, least, slow(got, best))
	})
}

// slow returns the edit distance by trying everything.
func slow(a, b string) int {
	switch {
	case a == "" || b == "":
		return len(a) + len(b)
	case a[0] == b[0]:
		return slow(a[1:], b[1:])
	default:
		return 1 + min(slow(a[1:], b), slow(a, b[1:]), slow(a[1:], b[1:]))
	}
}
