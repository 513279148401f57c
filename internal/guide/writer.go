package guide

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"creasefit/internal/assembly"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// writer writes one guide.
type writer struct {
	s       *solve.Solution
	c       *catalogue
	ruler   measure.Unit    // that readings are exact in
	units   []measure.Unit  // to write, in order
	numbers []Number        // written since they were last taken
	said    map[string]bool // messages that are said only once
	did     map[string]noun // what was made in which lines
	papers  bool            // some length is set with papers
	inside  noun            // what goes in
	order   *assembly.Order // once it was found
	finer   bool            // whether a length was told that the step has no mark for
	marks   measure.Step    // of the ruler that the steps are told by
}

// fine is a size that no ruler shows: a caliper or a clearance. It is written
// as a decimal.
type fine measure.Length

// known is a size that nobody sets: of the contents, a sheet or the closed thing. It
// is written as it reads on the ruler, and never in papers.
type known measure.Length

// noun is the English name of a part.
type noun string

// newWriter starts a guide in the units asked for.
func newWriter(s *solve.Solution, c *catalogue, u Units) *writer {
	ruler := s.Step.Unit()
	other := measure.Inch + measure.Millimetre - ruler
	units := [...][]measure.Unit{
		OfRuler: {ruler}, Inches: {measure.Inch}, Millimetres: {measure.Millimetre}, Both: {ruler, other},
	}
	return &writer{s: s, c: c, ruler: ruler, units: units[u], said: map[string]bool{}, did: map[string]noun{}, inside: "contents"}
}

// argument writes one argument of a message.
func (w *writer) argument(p piece, a args) string {
	switch v := a[p.key].(type) {
	case measure.Length:
		return w.note(p.key, a, w.set(v), v)
	case fine:
		return w.note(p.key, a, w.each(measure.Length(v), w.decimal), measure.Length(v))
	case known:
		return w.note(p.key, a, w.each(measure.Length(v), w.reading), measure.Length(v))
	case noun:
		return w.name(v, p.form)
	case int:
		return strconv.Itoa(v)
	case string:
		return v
	case told:
		return w.tell(v)
	case parts:
		return w.listed(v, p.form)
	default:
		return "{" + p.key + "}"
	}
}

// set writes a length as a hand sets it: a mark of the ruler, and papers where it
// is set by a scrap of the stock or cut just inside the line.
func (w *writer) set(l measure.Length) string {
	set, ok := w.s.Set(l)
	if !ok || set.Papers == 0 {
		w.finer = w.finer || ok && !l.IsMultipleOf(w.s.Step)
		return w.each(l, w.reading)
	}
	w.papers = true
	a := args{"mark": w.each(set.Mark, w.reading), "n": max(set.Papers, -set.Papers)}
	switch {
	case set.Mark.IsZero():
		return w.say("papers.only", a)
	case set.Papers > 0:
		return w.say("papers.more", a)
	default:
		return w.say("papers.less", a)
	}
}

// note keeps a number for the step that it stands in.
func (w *writer) note(what string, a args, text string, l measure.Length) string {
	n := w.number(what, text, l)
	if of, ok := a["of"].(noun); ok {
		n.Of = w.name(of, "")
	}
	w.numbers = append(w.numbers, n)
	return text
}

// number makes a number with its decimals.
func (w *writer) number(what, text string, l measure.Length) Number {
	return Number{What: what, Text: text, In: l.Rounded(measure.Inch), MM: l.Rounded(measure.Millimetre)}
}

// take returns the numbers noted since it was last called.
func (w *writer) take() []Number {
	numbers := w.numbers
	w.numbers = nil
	return numbers
}

// each writes a length in the units asked for, the second one in brackets.
func (w *writer) each(l measure.Length, write func(measure.Length, measure.Unit) string) string {
	text := write(l, w.units[0]) + noBreak + w.c.Units[w.units[0].String()]
	if len(w.units) == 2 {
		text += " (" + write(l, w.units[1]) + noBreak + w.c.Units[w.units[1].String()] + ")"
	}
	return text
}

// noBreak is a space that no line is broken at.
const noBreak = "\u00a0"

// finest is the finest mark of an inch ruler.
var finest = measure.Marks(measure.Inch)[len(measure.Marks(measure.Inch))-1]

// reading writes the number of units as it is set on a ruler: in the ruler's
// own unit exactly, as far as it has marks; in the other one rounded to
// 1/64 in or 0.1 mm.
func (w *writer) reading(l measure.Length, u measure.Unit) string {
	switch {
	case u == measure.Millimetre && u == w.ruler:
		return w.places(l, u, 2)
	case u == measure.Millimetre:
		return w.places(l, u, 1)
	case u != w.ruler:
		l = finest.Nearest(l)
	case !l.IsMultipleOf(finest):
		return w.places(l, u, 3)
	}
	number, _ := strings.CutSuffix(finest.Format(l), " "+u.String())
	return strings.ReplaceAll(number, " ", noBreak)
}

// decimal writes the number of units to the thousandth of an inch or the
// hundredth of a millimetre.
func (w *writer) decimal(l measure.Length, u measure.Unit) string {
	if u == measure.Inch {
		return w.places(l, u, 3)
	}
	return w.places(l, u, 2)
}

// places writes a decimal number with the decimal mark and the minus sign of
// print.
func (w *writer) places(l measure.Length, u measure.Unit, places int) string {
	text := string(measure.AppendDecimal(nil, l, u, places))
	return strings.Replace(strings.Replace(text, ".", w.c.Decimal, 1), "-", "−", 1)
}

// name writes the name of a part in a case of the language.
func (w *writer) name(n noun, form string) string { return w.c.name(n, form) }

// list joins names: "score 1, score 2 and score 3".
func (w *writer) list(parts []string) string {
	last := len(parts) - 1
	if last < 1 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:last], ", ") + " " + w.say("and", nil) + " " + parts[last]
}

// run lists parts: three and more whose names count on by the first and the last.
func (w *writer) run(names []noun) string {
	names = slices.Compact(slices.Clone(names))
	counts := len(names) > 2
	for i := range names {
		stem, n := counted(string(names[i]))
		first, from := counted(string(names[0]))
		counts = counts && n > 0 && stem == first && n == from+i
	}
	if counts {
		return w.say("run", args{"from": names[0], "to": names[len(names)-1]})
	}
	written := make([]string, len(names))
	for i, n := range names {
		written[i] = w.name(n, "")
	}
	return w.list(written)
}

// counted parts a name that ends in a number: "score", 2. The number is 0 if there
// is none.
func counted(name string) (stem string, n int) {
	i := strings.LastIndexByte(name, ' ')
	n, err := strconv.Atoi(name[i+1:])
	if err != nil || i < 0 {
		return name, 0
	}
	return name[:i], n
}

// sentence begins a text with a capital letter.
func sentence(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}
