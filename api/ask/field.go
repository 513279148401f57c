package ask

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// value is a field of a request.
type value interface {
	field() *Field
	kind() Type
	// usual keeps the default of the name.
	usual(Default)
	// reset forgets what was given, so that the default holds.
	reset()
	// understand takes one text, which may be the next of several, and reports
	// what is wrong with it.
	understand(*Reading, field)
	// entries is how many values a request leads to, 0 if it leaves the name out.
	entries(*Reading) int
	// appendURL appends one of them as it stands in a URL.
	appendURL(dst []byte, r *Reading, i int) []byte
}

// slot is a value and what it has in common with others, which most of those who look
// through a request need alone: few of its names are given.
type slot struct {
	value
	is      *Field
	implied bool // it may stand in an address without being given
}

// slotOf is the slot of a value.
func slotOf(v value) slot {
	_, unit := v.(*Unit)
	return slot{v, v.field(), unit}
}

// Field is what all fields of a request have in common.
type Field struct {
	Given bool
	Text  string // as given; the last one of a list
	// From says where a value comes from that the request did not give itself:
	// the name of the preset that has it, or "default".
	From string

	table *table
	place int // in the table
}

// name returns what is known of the name that the field is bound to.
func (f *Field) name() *Name { return &f.table.names[f.place] }

func (f *Field) field() *Field { return f }

func (f *Field) usual(Default) {}

func (f *Field) reset() { f.Given, f.Text, f.From = false, "", "" }

func (f *Field) entries(*Reading) int {
	if f.Given {
		return 1
	}
	return 0
}

func (f *Field) appendURL(dst []byte, _ *Reading, _ int) []byte {
	return append(dst, url.QueryEscape(f.Text)...)
}

// Several is the texts of a name that may be given several times.
type Several struct {
	Field
	Texts []string // as given
}

func (s *Several) reset() {
	s.Field.reset()
	s.Texts = s.Texts[:0]
}

func (s *Several) entries(*Reading) int { return len(s.Texts) }

func (s *Several) appendURL(dst []byte, _ *Reading, i int) []byte {
	return append(dst, url.QueryEscape(s.Texts[i])...)
}

// Text is a field of any text.
type Text struct{ Field }

func (*Text) kind() Type { return TextType }

func (*Text) understand(*Reading, field) {}

// Object is one object with names of its own.
type Object struct{ Field }

func (*Object) kind() Type { return ObjectType }

func (*Object) understand(*Reading, field) {}

// Objects is a list of objects with names of their own, or of the plain texts
// that stand for them.
type Objects struct{ Several }

func (*Objects) kind() Type { return ObjectType }

func (o *Objects) understand(_ *Reading, f field) { o.Texts = append(o.Texts, f.text) }

// Word is a field of one word: the choice, or the default.
type Word struct {
	Field
	Word   string
	choice string // the default
}

func (*Word) kind() Type { return ChoiceType }

func (w *Word) usual(d Default) { w.choice = d.Inch }

func (w *Word) reset() {
	w.Field.reset()
	w.Word = w.choice
}

func (w *Word) understand(r *Reading, f field) {
	if r.isWord(w.name(), f) {
		w.Word = f.text
	}
}

// Outline is a field of a word, or of an outline as path data.
type Outline struct{ Word }

func (*Outline) kind() Type { return TextType }

func (o *Outline) understand(r *Reading, f field) {
	if begin := strings.TrimSpace(f.text); !strings.HasPrefix(begin, "M") && !strings.HasPrefix(begin, "m") {
		o.Word.understand(r, f)
		return
	}
	o.Word.Word = f.text
	if err := enclosure.CheckOutline(f.text); err != nil {
		r.Report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: Cut(f.text, MostValue), Detail: "cannot take this outline: " + err.Error(),
			Expected: o.name().expected(r.unit), Hint: "a triangle is " + exampleOutline}, exampleOutline)
	}
}

// exampleOutline is a triangle.
const exampleOutline = "M0 30L20 0L40 30Z"

// fill gives the word a value that the request did not give.
func (w *Word) fill(from string) {
	if !w.Given {
		w.Text, w.From = w.Word, from
	}
}

// Is reports whether the word is the given one.
func (w *Word) Is(word string) bool { return w.Word == word }

// Words is a list of words.
type Words struct{ Several }

func (*Words) kind() Type { return ChoiceType }

func (w *Words) understand(r *Reading, f field) {
	if r.isWord(w.name(), f) {
		w.Texts = append(w.Texts, f.text)
	}
}

// Unit is the field of the unit of bare numbers and of the answer, which may
// also be that of the first length.
type Unit struct{ Word }

// understand knows the words that lengths may be written with for what was meant.
func (u *Unit) understand(r *Reading, f field) {
	switch meant, whole := measure.UnitNamed(f.text); {
	case meant == measure.NoUnit || meant == units[f.text]:
		u.Word.understand(r, f)
	case whole:
		r.reportWord(u.name(), f, meant.String(), fault.Meant(meant.String()))
	default:
		r.reportWord(u.name(), f, "", "write it with the lengths, such as 9.5 "+f.text+", and give unit="+meant.String())
	}
}

func (u *Unit) entries(r *Reading) int {
	if u.Given || r.unit != measure.NoUnit {
		return 1
	}
	return 0
}

func (u *Unit) appendURL(dst []byte, r *Reading, _ int) []byte {
	return append(dst, r.unit.String()...)
}

// Number is a field of a decimal number.
type Number struct {
	Field
	Number  float64
	usually float64
}

func (*Number) kind() Type { return NumberType }

func (n *Number) usual(d Default) { n.usually, _ = strconv.ParseFloat(d.Inch, 64) }

func (n *Number) reset() {
	n.Field.reset()
	n.Number = n.usually
}

func (n *Number) understand(r *Reading, f field) {
	if x, ok := r.parseNumber(n.name(), f); ok {
		n.Number = x
		r.bound(n, f, x, n.name().LeastNumber, n.name().GreatestNumber)
	}
}

func (n *Number) appendURL(dst []byte, _ *Reading, _ int) []byte {
	return strconv.AppendFloat(dst, n.Number, 'f', -1, 64)
}

// Count is a field of a whole number.
type Count struct{ Number }

func (*Count) kind() Type { return CountType }

func (c *Count) understand(r *Reading, f field) {
	x, err := strconv.ParseUint(strings.TrimSpace(f.text), 10, 31)
	if err != nil {
		r.reportNumber(c.name(), f)
		return
	}
	c.Number.Number = float64(x)
	r.bound(c, f, c.Number.Number, c.name().LeastNumber, c.name().GreatestNumber)
}

// Count returns the number.
func (c *Count) Count() int { return int(c.Number.Number) }

// isWord reports whether a text is one of the words of the name; if not, that
// is a fault.
func (r *Reading) isWord(n *Name, f field) bool {
	if slices.Contains(n.Choices, f.text) {
		return true
	}
	nearest := fault.Nearest(strings.ToLower(f.text), n.Choices)
	r.reportWord(n, f, nearest, fault.Meant(nearest))
	return false
}
