package ask

import (
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// Length is a field of a length.
type Length struct {
	Field
	Length                  measure.Length
	onInches, onMillimetres measure.Length // the default
}

func (*Length) kind() Type { return LengthType }

func (l *Length) usual(d Default) {
	l.onInches, _ = measure.Parse(d.Inch, measure.NoUnit, measure.Decimal(0))
	l.onMillimetres, _ = measure.Parse(d.Millimetre, measure.NoUnit, measure.Decimal(0))
}

func (l *Length) reset() {
	l.Field.reset()
	l.Length = measure.Length{}
}

func (l *Length) understand(r *Reading, f field) {
	if x, ok := r.parseLength(l.name(), f); ok {
		l.Length = x
		r.boundLength(l, f, x)
	}
}

// On returns the length, or its default on rulers of the unit.
func (l *Length) On(unit measure.Unit) measure.Length {
	switch {
	case l.Given:
		return l.Length
	case unit == measure.Inch:
		return l.onInches
	default:
		return l.onMillimetres
	}
}

// fill gives the length a value that the request did not give.
func (l *Length) fill(x measure.Length, from string) {
	if !l.Given && !x.IsZero() {
		l.Length, l.From = x, from
	}
}

// Put gives the length a value as if the request had given it.
func (l *Length) Put(x measure.Length) { l.Given, l.Length, l.From = true, x, "" }

func (l *Length) appendURL(dst []byte, r *Reading, _ int) []byte {
	return measure.Finest(r.unit).AppendURL(dst, l.Length)
}

// Lengths is a list of lengths.
type Lengths struct {
	Several
	Lengths []measure.Length
}

func (*Lengths) kind() Type { return LengthType }

func (l *Lengths) reset() {
	l.Several.reset()
	l.Lengths = l.Lengths[:0]
}

func (l *Lengths) understand(r *Reading, f field) {
	if x, ok := r.parseLength(l.name(), f); ok {
		l.Lengths, l.Texts = append(l.Lengths, x), append(l.Texts, f.text)
		r.boundLength(l, f, x)
	}
}

func (l *Lengths) appendURL(dst []byte, r *Reading, i int) []byte {
	return measure.Finest(r.unit).AppendURL(dst, l.Lengths[i])
}

// Size is a field of a width and a height, or of the name of a sheet.
type Size struct {
	Field
	Width, Height measure.Length
	named         bool
}

func (*Size) kind() Type { return SizeType }

func (s *Size) reset() { *s = Size{Field: Field{table: s.table, place: s.place}} }

func (s *Size) understand(r *Reading, f field) {
	if sheet, ok := stock.LookupSheet(f.text); ok && s.name().Catalogue != "" {
		s.Width, s.Height, s.named = sheet.Width, sheet.Height, true
		return
	}
	if x, ok := r.parseSize(s, f); ok {
		s.Width, s.Height = x[0], x[1]
	}
}

func (s *Size) appendURL(dst []byte, r *Reading, i int) []byte {
	if s.named {
		return s.Field.appendURL(dst, r, i)
	}
	return AppendSize(dst, r.unit, s.Width, s.Height)
}

// AppendSize appends a width and a height as they stand in a URL of a request
// that is answered in the unit.
func AppendSize(dst []byte, unit measure.Unit, width, height measure.Length) []byte {
	finest := measure.Finest(unit)
	return finest.AppendURL(append(finest.AppendURL(dst, width), 'x'), height)
}

// Sizes is a list of widths and heights.
type Sizes struct {
	Several
	Sizes [][2]measure.Length
}

func (*Sizes) kind() Type { return SizeType }

func (s *Sizes) reset() {
	s.Several.reset()
	s.Sizes = s.Sizes[:0]
}

func (s *Sizes) understand(r *Reading, f field) {
	if x, ok := r.parseSize(s, f); ok {
		s.Sizes, s.Texts = append(s.Sizes, x), append(s.Texts, f.text)
	}
}

func (s *Sizes) appendURL(dst []byte, r *Reading, i int) []byte {
	return AppendSize(dst, r.unit, s.Sizes[i][0], s.Sizes[i][1])
}

// Step is a field of the distance between two ruler marks.
type Step struct {
	Field
	Step                    measure.Step
	onInches, onMillimetres measure.Step // the default
}

func (*Step) kind() Type { return StepType }

func (s *Step) usual(d Default) {
	s.onInches, _ = measure.ParseStep(d.Inch)
	s.onMillimetres, _ = measure.ParseStep(d.Millimetre)
}

func (s *Step) reset() {
	s.Field.reset()
	s.Step = measure.Step{}
}

func (s *Step) understand(r *Reading, f field) {
	step, err := measure.ParseStep(f.text)
	if refused, is := err.(*measure.ParseError); is && refused.Reason == measure.ReasonNoUnit && r.named != measure.NoUnit {
		step, err = measure.ParseStep(f.text + " " + r.named.String())
	}
	if err != nil {
		r.reportParse(s.name(), f, err)
		return
	}
	if r.unit == measure.NoUnit {
		r.unit = step.Unit()
	}
	s.Step = step
}

func (s *Step) appendURL(dst []byte, _ *Reading, _ int) []byte {
	return s.Step.AppendURL(dst, s.Step.Size())
}

// on returns the default on rulers of the unit.
func (s *Step) on(unit measure.Unit) measure.Step {
	if unit == measure.Inch {
		return s.onInches
	}
	return s.onMillimetres
}

// fill gives the step a value that the request did not give.
func (s *Step) fill(step measure.Step, from string) {
	s.Step, s.Text, s.From = step, step.String(), from
}

// parseLength reads a length and takes its unit as that of the answer if the
// request names none and had no length before.
func (r *Reading) parseLength(n *Name, f field) (measure.Length, bool) {
	l, err := measure.Parse(f.text, r.named, r.decimal)
	if err != nil {
		r.reportParse(n, f, err)
		return l, false
	}
	r.noteUnit(f.text)
	return l, true
}

// parseSize reads a width and a height and keeps their bounds.
func (r *Reading) parseSize(v value, f field) ([2]measure.Length, bool) {
	n := v.field().name()
	sides, err := measure.ParseSize(f.text, r.named, r.decimal)
	if err != nil {
		r.reportParse(n, f, err)
		return [2]measure.Length{}, false
	}
	r.noteUnit(f.text)
	for _, l := range sides {
		r.boundLength(v, f, l)
	}
	return [2]measure.Length(sides), true
}

// noteUnit takes the unit that a text which was read as a length is written
// in. All names of metric units have an m; those of inches have none.
func (r *Reading) noteUnit(text string) {
	switch {
	case r.unit != measure.NoUnit:
	case strings.ContainsAny(text, "mM"):
		r.unit = measure.Millimetre
	default:
		r.unit = measure.Inch
	}
}
