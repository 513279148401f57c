package api

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// mostSample is how much of a table its dialect is found out from.
const mostSample = 64 << 10

// dialect is the habits that a table is written in. RFC 4180 has commas, UTF-8
// and line ends of two characters; spreadsheets write what is usual where they
// run.
type dialect struct {
	encoding  string // as the answer names it
	marked    bool   // the table begins with a byte order mark
	separator rune
	decimal   string // point or comma; empty if no number says
	bareCR    bool   // lines end in a carriage return alone
	hinted    bool   // the first row names the separator
}

// separators are those that are looked for, the usual one first.
var separators = []rune{',', ';', '\t', '|'}

// separatorNames names them in an answer.
var separatorNames = map[rune]string{',': "comma", ';': "semicolon", '\t': "tab", '|': "bar"}

// encodings are those that a media type may name.
var encodings = map[string]encoding.Encoding{
	"utf-8": unicode.UTF8, "us-ascii": unicode.UTF8, "windows-1252": charmap.Windows1252, "iso-8859-1": charmap.Windows1252,
	"utf-16": unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), "utf-16le": unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM),
	"utf-16be": unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM),
}

// byteOrderMark begins a text in UTF-8 that wants to be known as one.
const byteOrderMark = "\ufeff"

// findEncoding finds the encoding of a table by its first bytes: a byte order
// mark, zeros in every other place, or what is not UTF-8.
func (d *dialect) findEncoding(sample []byte, charset string) {
	zero := bytes.IndexByte(sample[:min(len(sample), 200)], 0)
	switch {
	case bytes.HasPrefix(sample, []byte(byteOrderMark)):
		d.encoding, d.marked = "utf-8", true
	case bytes.HasPrefix(sample, []byte{0xff, 0xfe}):
		d.encoding, d.marked = "utf-16le", true
	case bytes.HasPrefix(sample, []byte{0xfe, 0xff}):
		d.encoding, d.marked = "utf-16be", true
	case charset != "":
		d.encoding = charset
	case zero >= 0 && zero%2 == 1:
		d.encoding = "utf-16le"
	case zero >= 0:
		d.encoding = "utf-16be"
	case utf8.Valid(wholeRunes(sample)):
		d.encoding = "utf-8"
	default:
		d.encoding = "windows-1252"
	}
}

// wholeRunes leaves out a last character that the sample has only the
// beginning of.
func wholeRunes(sample []byte) []byte {
	for i := 1; i < utf8.UTFMax && i <= len(sample); i++ {
		if tail := sample[len(sample)-i:]; utf8.RuneStart(tail[0]) {
			if !utf8.FullRune(tail) {
				return sample[:len(sample)-i]
			}
			break
		}
	}
	return sample
}

// reader decodes a table into UTF-8 with line ends that csv knows.
func (d *dialect) reader(body io.Reader) io.Reader {
	if d.encoding != "utf-8" {
		body = transform.NewReader(body, encodings[d.encoding].NewDecoder())
	}
	if d.bareCR {
		body = &lineEnds{body}
	}
	return body
}

// lineEnds turns every carriage return into a line feed.
type lineEnds struct{ body io.Reader }

func (l *lineEnds) Read(p []byte) (int, error) {
	n, err := l.body.Read(p)
	for i, c := range p[:n] {
		if c == '\r' {
			p[i] = '\n'
		}
	}
	return n, err
}

// findHabits finds line ends and separator in the decoded beginning of a table,
// and returns its rows.
func (d *dialect) findHabits(text string, known func(name string) bool) [][]string {
	text = strings.TrimPrefix(text, byteOrderMark)
	if d.bareCR = !strings.Contains(text, "\n") && strings.Contains(text, "\r"); d.bareCR {
		text = strings.ReplaceAll(text, "\r", "\n")
	}
	first, rest, _ := strings.Cut(text, "\n")
	if hint, ok := strings.CutPrefix(strings.TrimSpace(strings.Trim(first, `"`)), "sep="); ok && utf8.RuneCountInString(hint) <= 1 {
		d.hinted, text = true, rest
		if c, _ := utf8.DecodeRuneInString(first[strings.Index(first, "=")+1:]); separatorNames[c] != "" {
			d.separator = c
			return sampleRows(text, c)
		}
	}
	if d.separator != 0 { // the media type says which
		return sampleRows(text, d.separator)
	}
	best := -1
	var rows [][]string
	for _, c := range separators {
		found := sampleRows(text, c)
		if score := scoreOf(found, known); score > best {
			best, rows, d.separator = score, found, c
		}
	}
	return rows
}

// sampleRows reads the whole rows of a sample.
func sampleRows(text string, separator rune) [][]string {
	r := newTableReader(strings.NewReader(text), separator)
	var rows [][]string
	for {
		row, err := r.Read()
		if err != nil {
			return rows
		}
		rows = append(rows, row)
	}
}

// newTableReader reads rows as loosely as spreadsheets write them.
func newTableReader(body io.Reader, separator rune) *csv.Reader {
	r := csv.NewReader(body)
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = separator, -1, true
	return r
}

// scoreOf says how well a separator explains rows: by the names it finds in the
// header, then by the rows that are as long as that, then by its columns.
func scoreOf(rows [][]string, known func(string) bool) int {
	if len(rows) == 0 {
		return 0
	}
	names, even := 0, 0
	for _, name := range rows[0] {
		if known(columnName(name)) {
			names++
		}
	}
	for _, row := range rows[1:] {
		if len(row) == len(rows[0]) {
			even++
		}
	}
	return names*2_000_000 + even*1000/max(1, len(rows)-1)*1000 + min(len(rows[0]), 999)
}

// columnName is the name that the heading of a column stands for: headings are
// often written with capitals and spaces.
func columnName(heading string) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(strings.TrimSpace(strings.TrimPrefix(heading, byteOrderMark))))
}

// Numbers with a mark that can be read in one way only: three digits behind a
// comma may be thousands.
var (
	pointNumber = regexp.MustCompile(`\d\.\d`)
	commaNumber = regexp.MustCompile(`(^|[^\d,.])\d+,(\d{1,2}|\d{4,})($|[^\d,.])`)
)

// findDecimal finds the decimal mark of the cells that are meant as values.
func (d *dialect) findDecimal(rows [][]string, meant func(column int) bool) {
	points, commas := false, false
	for _, row := range rows {
		for i, cell := range row {
			if meant(i) {
				points = points || pointNumber.MatchString(cell)
				commas = commas || commaNumber.MatchString(cell)
			}
		}
	}
	switch {
	case commas && !points:
		d.decimal = "comma"
	case points && !commas:
		d.decimal = "point"
	}
}

// field is the dialect as a structured header field (RFC 9651): a dictionary.
func (d *dialect) field(read, passed []string) string {
	text := "separator=" + separatorNames[d.separator] + ", encoding=" + d.encoding
	if d.decimal != "" {
		text += ", decimal=" + d.decimal
	}
	return text + ", read=" + innerList(read) + ", passed=" + innerList(passed)
}

// innerList writes texts as an inner list, those that are not ASCII as display
// strings.
func innerList(texts []string) string {
	items := make([]string, len(texts))
	for i, text := range texts {
		if strings.ContainsFunc(text, func(c rune) bool { return c < ' ' || c > '~' }) {
			items[i] = displayString(text)
		} else {
			items[i] = `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
		}
	}
	return "(" + strings.Join(items, " ") + ")"
}

// displayString writes a text that is not ASCII (RFC 9651, 3.3.8).
func displayString(text string) string {
	out := []byte(`%"`)
	for _, c := range []byte(text) {
		if c < ' ' || c > '~' || c == '%' || c == '"' {
			out = fmt.Appendf(out, "%%%02x", c)
		} else {
			out = append(out, c)
		}
	}
	return string(append(out, '"'))
}
