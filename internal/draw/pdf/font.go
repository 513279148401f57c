package pdf

import (
	_ "embed"
	"fmt"
	"maps"
	"slices"
	"sync"

	"creasefit/internal/draw"
)

// typeface is the font as files embed it: a composite font whose codes are
// the numbers of the glyphs (ISO 32000-1, 9.7).
type typeface struct {
	program []byte // compressed
	size    int    // of the program, uncompressed
	widths  string
	unicode []byte // compressed: from codes to characters
}

// western is the font with the shapes of the common characters alone, under their
// numbers in the whole one. It was made of that with fonttools 4.38: pyftsubset
// --unicodes=0-FF,2010-202F,215B-215E,2190-2195 --retain-gids --notdef-outline
// --drop-tables=OS/2,name,gasp.
//
//go:embed western.ttf
var western []byte

// The small font has the characters that the catalogues' languages need; the
// whole one is embedded only where a file has others. Both are made once.
var (
	small = sync.OnceValue(func() *typeface { return newTypeface(western, common) })
	whole = sync.OnceValue(func() *typeface { return newTypeface(draw.Font(), func(rune) bool { return true }) })
)

// common reports whether a character is in the small font: those of western
// European languages, dashes, quotation marks, eighths and arrows.
func common(r rune) bool {
	return r < 0x100 || r >= 0x2010 && r < 0x2030 || r >= 0x215b && r < 0x215f || r >= 0x2190 && r < 0x2196
}

// font returns the font that the file needs.
func (f *file) font() *typeface {
	if f.beyond {
		return whole()
	}
	return small()
}

// glyphOf returns the number of a character's glyph, that of a question mark
// where the font has none.
func glyphOf(r rune) uint16 {
	if g := draw.Glyph(r); g != 0 {
		return g
	}
	return draw.Glyph('?')
}

// newTypeface makes a font with some of its characters.
func newTypeface(program []byte, has func(rune) bool) *typeface {
	kept := map[uint16]rune{}
	for r := rune(1); r <= 0xffff; r++ {
		g := draw.Glyph(r)
		if _, known := kept[g]; g != 0 && !known && has(r) {
			kept[g] = r
		}
	}
	var widths, lines []byte
	for _, g := range slices.Sorted(maps.Keys(kept)) {
		widths = fmt.Appendf(widths, "%d [%.0f] ", g, draw.Width(string(kept[g]), 1000))
		lines = fmt.Appendf(lines, "1 beginbfchar\n<%04X> <%04X>\nendbfchar\n", g, kept[g])
	}
	unicode := "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CMapName /Characters def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n" + string(lines) + "endcmap\nend\nend\n"
	return &typeface{deflated(program, thorough), len(program), string(widths), deflated([]byte(unicode), thorough)}
}

// write writes the font's objects.
func (t *typeface) write(f *file) {
	f.object(fmt.Sprintf("<</Type /Font /Subtype /Type0 /BaseFont /CREASE+GoRegular /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>",
		objectDescendant, objectUnicode))
	f.object(fmt.Sprintf("<</Type /Font /Subtype /CIDFontType2 /BaseFont /CREASE+GoRegular /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> "+
		"/FontDescriptor %d 0 R /CIDToGIDMap /Identity /DW 600 /W [%s]>>", objectDescriptor, t.widths))
	// the font's own figures, in thousandths of its size
	f.object(fmt.Sprintf("<</Type /FontDescriptor /FontName /CREASE+GoRegular /Flags 32 /FontBBox [-440 -432 2160 1195] /ItalicAngle 0 "+
		"/Ascent 935 /Descent -211 /CapHeight 716 /StemV 88 /FontFile2 %d 0 R>>", objectProgram))
	f.stream(t.program, fmt.Sprintf("/Filter /FlateDecode /Length1 %d", t.size))
	f.stream(t.unicode, "/Filter /FlateDecode")
}
