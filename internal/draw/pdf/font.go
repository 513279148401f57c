package pdf

import (
	"encoding/binary"
	"fmt"
	"slices"
	"sync"

	"golang.org/x/image/font/sfnt"

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

// The small font has the characters that the catalogues' languages need; the
// whole one is embedded only where a file has others. Both are made once.
var (
	small = sync.OnceValue(func() *typeface { return newTypeface(common) })
	whole = sync.OnceValue(func() *typeface { return newTypeface(func(rune) bool { return true }) })
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

// lastCharacter is the last one that the font may have.
const lastCharacter = 0xffff

// glyphs holds the number of every character's glyph, 0 for none.
var glyphs = sync.OnceValue(func() []uint16 {
	font, err := sfnt.Parse(draw.Font())
	if err != nil {
		panic("pdf: the built-in font cannot be read: " + err.Error())
	}
	numbers := make([]uint16, lastCharacter+1)
	var buffer sfnt.Buffer
	for r := range numbers {
		if index, err := font.GlyphIndex(&buffer, rune(r)); err == nil {
			numbers[r] = uint16(index)
		}
	}
	return numbers
})

// glyphOf returns the number of a character's glyph, that of a question mark
// where the font has none.
func glyphOf(r rune) uint16 {
	if r > 0 && r <= lastCharacter {
		if g := glyphs()[r]; g != 0 {
			return g
		}
	}
	return glyphs()['?']
}

// newTypeface makes the font with some of its characters.
func newTypeface(has func(rune) bool) *typeface {
	kept := map[uint16]rune{0: 0}
	for r, g := range glyphs() {
		if g != 0 && has(rune(r)) {
			if _, known := kept[g]; !known {
				kept[g] = rune(r)
			}
		}
	}
	program := subset(draw.Font(), kept)
	codes := make([]uint16, 0, len(kept))
	for g := range kept {
		codes = append(codes, g)
	}
	slices.Sort(codes)
	var widths, lines []byte
	for _, g := range codes[1:] {
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

// needed are the tables of a TrueType font that an embedded one must have
// (ISO 32000-1, 9.9), in the order of their names.
var needed = [...]string{"cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"}

// subset returns a TrueType font with the shapes of some glyphs and of those
// that these are put together from; the others are empty, and all keep their
// numbers.
func subset(font []byte, kept map[uint16]rune) []byte {
	tables := make(map[string][]byte)
	for i := range int(binary.BigEndian.Uint16(font[4:])) {
		entry := font[12+16*i:]
		at, size := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		tables[string(entry[:4])] = font[at : at+size]
	}
	place := locations(tables["loca"], tables["head"])
	glyf, n := tables["glyf"], len(place)-1
	for g := 0; g < n; g++ {
		if _, keep := kept[uint16(g)]; !keep {
			continue
		}
		for _, part := range components(glyf[place[g]:place[g+1]]) {
			if _, known := kept[part]; !known {
				kept[part], g = 0, -1 // it may stand before this one
			}
		}
	}
	var shapes, loca []byte
	for g := range n {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(shapes)))
		if _, keep := kept[uint16(g)]; keep {
			shapes = append(shapes, glyf[place[g]:place[g+1]]...)
			shapes = append(shapes, make([]byte, -len(shapes)&3)...)
		}
	}
	tables["glyf"], tables["loca"] = shapes, binary.BigEndian.AppendUint32(loca, uint32(len(shapes)))
	head := slices.Clone(tables["head"])
	binary.BigEndian.PutUint16(head[50:], 1) // long locations
	tables["head"] = head
	return assembled(tables)
}

// locations reads where each glyph begins, and where the last one ends.
func locations(loca, head []byte) []uint32 {
	var place []uint32
	if binary.BigEndian.Uint16(head[50:]) == 0 {
		for i := 0; i+1 < len(loca); i += 2 {
			place = append(place, 2*uint32(binary.BigEndian.Uint16(loca[i:])))
		}
		return place
	}
	for i := 0; i+3 < len(loca); i += 4 {
		place = append(place, binary.BigEndian.Uint32(loca[i:]))
	}
	return place
}

// components returns the glyphs that a composite one is put together from.
func components(shape []byte) (parts []uint16) {
	if len(shape) < 10 || int16(binary.BigEndian.Uint16(shape)) >= 0 {
		return nil
	}
	for at := 10; ; {
		flags := binary.BigEndian.Uint16(shape[at:])
		parts = append(parts, binary.BigEndian.Uint16(shape[at+2:]))
		at += 6
		if flags&1 != 0 { // two words say where it goes
			at += 2
		}
		for bit, size := range map[uint16]int{8: 2, 0x40: 4, 0x80: 8} { // a scale, two, or four
			if flags&bit != 0 {
				at += size
			}
		}
		if flags&0x20 == 0 {
			return parts
		}
	}
}

// assembled writes a font file of the needed tables.
func assembled(tables map[string][]byte) []byte {
	count := 0
	for _, name := range needed {
		if tables[name] != nil {
			count++
		}
	}
	b := binary.BigEndian.AppendUint32(nil, 0x00010000)
	for _, v := range [...]int{count, 128, 3, 16*count - 128} {
		b = binary.BigEndian.AppendUint16(b, uint16(v))
	}
	at := len(b) + 16*count
	var body []byte
	for _, name := range needed {
		table := tables[name]
		if table == nil {
			continue
		}
		padded := append(slices.Clone(table), make([]byte, -len(table)&3)...)
		sum := uint32(0)
		for i := 0; i < len(padded); i += 4 {
			sum += binary.BigEndian.Uint32(padded[i:])
		}
		b = append(b, name...)
		for _, v := range [...]uint32{sum, uint32(at + len(body)), uint32(len(table))} {
			b = binary.BigEndian.AppendUint32(b, v)
		}
		body = append(body, padded...)
	}
	return append(b, body...)
}
