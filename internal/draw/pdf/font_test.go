package pdf

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"creasefit/internal/draw"
)

// TestWesternIsTheFont: the small font has every common character with the number, the
// shape and the width that it has in the whole one, and no other shapes.
func TestWesternIsTheFont(t *testing.T) {
	part, err := sfnt.Parse(western)
	require.NoError(t, err)
	whole, err := sfnt.Parse(draw.Font())
	require.NoError(t, err)
	var a, b sfnt.Buffer
	there := map[sfnt.GlyphIndex]bool{0: true}
	for r := range rune(0x10000) {
		index, err := whole.GlyphIndex(&a, r)
		require.NoError(t, err)
		if index == 0 || !common(r) {
			continue
		}
		there[index] = true
		own, err := part.GlyphIndex(&b, r)
		require.NoError(t, err)
		require.Equal(t, index, own, "%U", r)
		want, err := whole.LoadGlyph(&a, index, fixed.I(1000), nil)
		require.NoError(t, err)
		got, err := part.LoadGlyph(&b, index, fixed.I(1000), nil)
		require.NoError(t, err)
		assert.Equal(t, want, got, "%U", r)
		wide, err := part.GlyphAdvance(&b, index, fixed.I(1000), font.HintingNone)
		require.NoError(t, err)
		assert.InDelta(t, draw.Width(string(r), 1000), float64(wide)/64, 1e-9, "%U", r)
	}
	assert.Greater(t, len(there), 200)
	shapes := 0
	for g := range part.NumGlyphs() {
		got, err := part.LoadGlyph(&b, sfnt.GlyphIndex(g), fixed.I(1000), nil)
		require.NoError(t, err)
		if !there[sfnt.GlyphIndex(g)] && len(got) > 0 {
			shapes++ // accents that others are put together from
		}
	}
	assert.Less(t, shapes, 20)
}

// TestBeyondWestern: a file with a character that the small font lacks has the whole one.
func TestBeyondWestern(t *testing.T) {
	for text, beyond := range map[string]bool{"Größe 3 ⅝ ↕": false, "Чай": true, "τσάι": true, "茶": true} {
		f := &file{}
		f.page(100, 100)
		f.text(text, 0, 0, 3, 0)
		assert.Equal(t, beyond, f.beyond, text)
		assert.Equal(t, beyond, f.font() == whole(), text)
	}
	assert.Equal(t, draw.Glyph('?'), glyphOf('茶'))
}
