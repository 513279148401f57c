package draw_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/draw"
)

// wrapPlainly is Wrap word by word, each line measured anew.
func wrapPlainly(text string, size, most float64) []string {
	var lines []string
	line := ""
	for i, word := range strings.Split(text, " ") {
		switch {
		case i == 0 || line == "":
			line = word
		case draw.Width(line+" "+word, size) > most:
			lines, line = append(lines, line), word
		default:
			line += " " + word
		}
	}
	return append(lines, line)
}

func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-zäß0-9/„“\x{a0}]{1,14}`), 1, 40).Draw(t, "words")
		text := strings.Join(words, " ")
		size, most := rapid.Float64Range(1, 5).Draw(t, "size"), rapid.Float64Range(1, 300).Draw(t, "most")
		lines := draw.Wrap(text, size, most)
		assert.Equal(t, wrapPlainly(text, size, most), lines)
		assert.Equal(t, text, strings.Join(lines, " "), "nothing is lost")
	})
	assert.Equal(t, []string{""}, draw.Wrap("", 3, 10))
}
