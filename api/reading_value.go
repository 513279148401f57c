package api

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// parseValue understands one text by the type of its name.
func (r *reading) parseValue(p *param, v *value, f field) {
	switch p.Type {
	case lengthType:
		r.parseLength(p, v, f)
	case sizeType:
		r.parseSize(p, v, f)
	case stepType:
		r.parseStep(p, v, f)
	case choiceType:
		r.parseChoice(p, f)
	case presetType:
		r.parsePreset(p, v, f)
	case countType:
		r.parseCount(p, v, f)
	case numberType:
		r.parseNumber(p, v, f)
	case objectType:
		v.texts = append(v.texts, f.text)
	case textType:
	}
}

// parseLength reads a length and checks its bounds.
func (r *reading) parseLength(p *param, v *value, f field) {
	l, err := measure.Parse(f.text, r.named, r.decimal)
	if err != nil {
		r.reportParse(p, f, err)
		return
	}
	r.noteUnit(f.text)
	if ok, below := within(l.Nanometres(), p.rule); !ok {
		r.reportRange(p, f, below, finestMark(r.unit).FormatURL(p.nearerBound(below)))
		return
	}
	v.length = l
	if p.List {
		v.lengths = append(v.lengths, l)
		v.texts = append(v.texts, f.text)
	}
}

// nearerBound returns the bound that a value was beyond.
func (p *param) nearerBound(below bool) measure.Length {
	if below {
		return p.Least
	}
	return p.Greatest
}

// noteUnit takes the unit of the first length as that of the answer when the
// request names none.
func (r *reading) noteUnit(text string) {
	if r.unit != measure.NoUnit {
		return
	}
	r.unit = writtenUnit(text)
}

// writtenUnit returns the unit that a text which was read as a length is
// written in. All names of metric units have an m; those of inches have none.
func writtenUnit(text string) measure.Unit {
	if strings.ContainsAny(text, "mM") {
		return measure.Millimetre
	}
	return measure.Inch
}

// parseSize reads a width and a height, or the name of a sheet size.
func (r *reading) parseSize(p *param, v *value, f field) {
	if size, ok := sheetNamed(f.text); ok && p.Catalogue != "" {
		v.size, v.named = size, true
		return
	}
	ls, err := measure.ParseSize(f.text, r.named, r.decimal)
	if err != nil {
		r.reportParse(p, f, err)
		return
	}
	r.noteUnit(f.text)
	rule := param{Type: lengthType, Least: p.Least, Greatest: p.Greatest}.validation()
	for _, l := range ls {
		if ok, below := within(l.Nanometres(), rule); !ok {
			r.reportRange(p, f, below, "")
			return
		}
	}
	v.size = [2]measure.Length{ls[0], ls[1]}
	if p.List {
		v.sizes, v.texts = append(v.sizes, v.size), append(v.texts, f.text)
	}
}

// parseStep reads the distance between two ruler marks.
func (r *reading) parseStep(p *param, v *value, f field) {
	s, err := measure.ParseStep(f.text)
	if err != nil && r.named != measure.NoUnit {
		s, err = measure.ParseStep(f.text + " " + r.named.String())
	}
	if err != nil {
		_, err = measure.ParseStep(f.text)
		r.reportParse(p, f, err)
		return
	}
	if r.unit == measure.NoUnit {
		r.unit = s.Unit()
	}
	v.step = s
}

// parseChoice checks that a word is one of the list.
func (r *reading) parseChoice(p *param, f field) {
	if ok, _ := within(f.text, p.rule); !ok {
		r.reportWord(p, f, p.Choices)
	}
}

// parsePreset checks that a word is one of the catalogue.
func (r *reading) parsePreset(p *param, v *value, f field) {
	if !slices.Contains(p.Choices, f.text) {
		r.reportWord(p, f, p.Choices)
		return
	}
	if p.List {
		v.texts = append(v.texts, f.text)
	}
}

// parseCount reads a whole number without sign or exponent.
func (r *reading) parseCount(p *param, v *value, f field) {
	text := strings.TrimSpace(f.text)
	n, err := strconv.ParseUint(text, 10, 31)
	if err != nil || text[0] == '+' {
		r.reportNumber(p, f)
		return
	}
	v.number = float64(n)
	if ok, below := within(v.number, p.rule); !ok {
		r.reportRange(p, f, below, p.numberBound(below))
	}
}

// parseNumber reads a decimal number without sign or exponent.
func (r *reading) parseNumber(p *param, v *value, f field) {
	text := strings.TrimSpace(f.text)
	if r.decimal == measure.DecimalComma {
		text = strings.Replace(text, ",", ".", 1)
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.Trim(text, "0123456789.") != "" || math.IsInf(x, 0) {
		r.reportNumber(p, f)
		return
	}
	v.number = x
	if ok, below := within(x, p.rule); !ok {
		r.reportRange(p, f, below, p.numberBound(below))
	}
}

// numberBound writes the bound that a number was beyond.
func (p *param) numberBound(below bool) string {
	if below {
		return number(p.LeastNumber)
	}
	return number(p.GreatestNumber)
}

// reportNumber reports a text that is no number of the type.
func (r *reading) reportNumber(p *param, f field) {
	detail := "cannot read " + strconv.Quote(cut(f.text, mostValue)) + " as a number; signs, exponents and units are not read here"
	r.report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: detail, Expected: p.expected(r.unit), Hint: p.Example}, "")
}

// reportWord reports a word that is not on the list.
func (r *reading) reportWord(p *param, f field, words []string) {
	nearest := fault.Nearest(strings.ToLower(f.text), words)
	hint := ""
	if nearest != "" {
		hint = "did you mean " + nearest + "?"
	}
	detail := "there is no " + p.Name + " " + strconv.Quote(cut(f.text, mostValue))
	r.report(fault.Fault{Code: fault.Unknown, Field: f.name, Value: f.text, Detail: detail, Expected: p.expected(r.unit), Hint: hint}, nearest)
}

// reportRange reports a value beyond a bound.
func (r *reading) reportRange(p *param, f field, below bool, correction string) {
	detail := "the value is above the greatest that is taken"
	if below {
		detail = "the value is below the least that is taken"
	}
	r.report(fault.Fault{Code: fault.OutOfRange, Field: f.name, Value: f.text, Detail: detail, Expected: p.expected(r.unit), Hint: correction}, correction)
}

// reportParse reports a text that package measure refused.
func (r *reading) reportParse(p *param, f field, err error) {
	var refused *measure.ParseError
	if !errors.As(err, &refused) {
		r.report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: "cannot read it", Expected: p.expected(r.unit)}, "")
		return
	}
	if refused.Reason == measure.ReasonNoUnit && r.mistaken {
		return
	}
	correction := refused.Hint
	if strings.Contains(correction, " or ") {
		correction = "" // which of the two is not for us to guess
	}
	detail := "cannot read '" + cut(f.text, mostValue) + "': " + refused.Detail
	r.report(fault.Fault{Code: parseCode(refused.Reason), Field: f.name, Value: f.text, Detail: detail, Expected: p.expected(r.unit), Hint: refused.Hint}, correction)
}

// parseCode maps the reasons of package measure to fault codes.
func parseCode(reason measure.Reason) fault.Code {
	switch reason {
	case measure.ReasonNoUnit:
		return fault.NoUnit
	case measure.ReasonAmbiguous:
		return fault.Ambiguous
	case measure.ReasonTooFine:
		return fault.TooFine
	case measure.ReasonTooLarge, measure.ReasonNotAMark:
		return fault.OutOfRange
	case measure.ReasonEmpty:
		return fault.Missing
	default:
		return fault.Unreadable
	}
}
