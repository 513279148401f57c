package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"slices"
	"sync"
	"unicode/utf16"

	"creasefit/internal/draw"
)

// file is a PDF 1.7 file in the making (ISO 32000-1): pages of paths and texts
// in the one font, which is read once for all files. General writers
// parse and subset it for every file, which took most of their time.
type file struct {
	title, language string
	leaves          []*leaf
	*leaf                      // the page that is being written
	beyond          bool       // a character is used that the small font lacks
	elements        []*element // of the text; none in a file without tags
	b               []byte
	at              []int // where each object begins
}

// page begins a page of a size in mm.
func (f *file) page(w, h float64) {
	f.leaf = &leaf{high: h * points, wide: w * points, body: make([]byte, 0, 8<<10)}
	f.leaves = append(f.leaves, f.leaf)
}

// now is the number of the page that is being written.
func (f *file) now() int { return slices.Index(f.leaves, f.leaf) }

// turn goes back to a page, to write more on it.
func (f *file) turn(page int) { f.leaf = f.leaves[page] }

// The numbers of the objects: the pages follow, two objects each.
const (
	objectCatalog = iota + 1
	objectPages
	objectInfo
	objectFont
	objectDescendant
	objectDescriptor
	objectProgram
	objectUnicode
	firstPage
)

// quick are compressors, reused: a new one clears most of a megabyte. What is
// compressed once for all files is compressed thoroughly.
var quick, thorough = deflaters(zlib.BestSpeed), deflaters(zlib.BestCompression)

func deflaters(level int) *sync.Pool {
	return &sync.Pool{New: func() any {
		w, err := zlib.NewWriterLevel(io.Discard, level)
		if err != nil {
			panic(err) // the level is a valid one
		}
		return w
	}}
}

// deflated compresses the content of a stream.
func deflated(content []byte, by *sync.Pool) []byte {
	var b bytes.Buffer
	w := by.Get().(*zlib.Writer)
	defer by.Put(w)
	w.Reset(&b)
	if _, err := w.Write(content); err != nil {
		panic(err) // memory takes everything
	}
	if err := w.Close(); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// output writes the file. The dates are fixed: the same pages give the same
// bytes.
func (f *file) output(w io.Writer) error {
	font := f.font()
	f.b = append(make([]byte, 0, len(font.program)+32<<10), "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"...)
	after, tagged := firstPage+2*len(f.leaves), ""
	if len(f.elements) > 0 {
		tagged = fmt.Sprintf(" /MarkInfo <</Marked true>> /StructTreeRoot %d 0 R", after)
	}
	f.object(fmt.Sprintf("<</Type /Catalog /Pages %d 0 R /Lang %s%s /ViewerPreferences <</DisplayDocTitle true>>>>",
		objectPages, literal(f.language), tagged))
	var kids []byte
	for i := range f.leaves {
		kids = fmt.Appendf(kids, "%d 0 R ", firstPage+2*i)
	}
	f.object(fmt.Sprintf("<</Type /Pages /Count %d /Kids [%s]>>", len(f.leaves), kids))
	f.object(fmt.Sprintf("<</Title %s /Producer (Creasefit) /CreationDate (D:20000101000000Z) /ModDate (D:20000101000000Z)>>", literal(f.title)))
	font.write(f)
	for i, l := range f.leaves {
		parents := ""
		if len(f.elements) > 0 {
			parents = fmt.Sprintf(" /StructParents %d /Tabs /S", i)
		}
		f.object(fmt.Sprintf("<</Type /Page /Parent %d 0 R /MediaBox [0 0 %s] /Resources <</Font <</F %d 0 R>>>> /Contents %d 0 R%s>>",
			objectPages, draw.AppendDecimal(append(draw.AppendDecimal(nil, l.wide, 3), ' '), l.high, 3), objectFont, firstPage+2*i+1, parents))
		f.stream(deflated(l.body, quick), "/Filter /FlateDecode")
	}
	if len(f.elements) > 0 {
		f.structure(after)
	}
	f.finish()
	_, err := w.Write(f.b)
	return err
}

// object writes the next object.
func (f *file) object(text string) {
	f.at = append(f.at, len(f.b))
	f.b = fmt.Appendf(f.b, "%d 0 obj\n%s\nendobj\n", len(f.at), text)
}

// stream writes the next object with a content.
func (f *file) stream(content []byte, about string) {
	f.at = append(f.at, len(f.b))
	f.b = fmt.Appendf(f.b, "%d 0 obj\n<<%s /Length %d>>\nstream\n", len(f.at), about, len(content))
	f.b = append(append(f.b, content...), "\nendstream\nendobj\n"...)
}

// finish writes where the objects are.
func (f *file) finish() {
	begin := len(f.b)
	f.b = fmt.Appendf(f.b, "xref\n0 %d\n0000000000 65535 f \n", len(f.at)+1)
	for _, at := range f.at {
		f.b = fmt.Appendf(f.b, "%010d 00000 n \n", at)
	}
	f.b = fmt.Appendf(f.b, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(f.at)+1, objectCatalog, objectInfo, begin)
}

// literal writes a text string: UTF-16 with a mark of its order, in
// hexadecimal.
func literal(text string) string {
	b := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(text)) {
		b = fmt.Appendf(b, "%04X", u)
	}
	return string(append(b, '>'))
}
