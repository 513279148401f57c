package measure

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// ParseSize reads lengths joined by x, ×, or *: "8 1/2 x 11 in", "85 × 55 mm".
// A unit after the last holds for all that have none of their own. counts are
// the numbers of lengths that are taken; two if none are given. Any error is
// a *ParseError.
func ParseSize(text string, unit Unit, decimal Decimal, counts ...int) ([]Length, error) {
	if len(counts) == 0 {
		counts = []int{2}
	}
	parts, err := splitSize(text, counts)
	if err != nil {
		return nil, err
	}
	measurements := make([]measurement, len(parts))
	for i, p := range parts {
		if measurements[i], err = read(p.text, decimal); err != nil {
			return nil, p.within(text, err)
		}
	}
	last := measurements[len(parts)-1].unit
	lengths := make([]Length, len(parts))
	for i := len(parts) - 1; i >= 0; i-- {
		m := measurements[i]
		if m.unit.unit == NoUnit {
			m.unit = last
		}
		if lengths[i], err = m.length(unit); err != nil {
			return nil, parts[i].within(text, err)
		}
	}
	return lengths, nil
}

// part is one length of a size and where it begins.
type part struct {
	text string
	at   int
}

// splitSize divides a size at its signs of multiplication.
func splitSize(text string, counts []int) ([]part, *ParseError) {
	if len(text) > 4*mostCharacters*slices.Max(counts) {
		return nil, &ParseError{Reason: ReasonTooLong, Text: text, Detail: "a length has at most 32 characters"}
	}
	if strings.TrimSpace(text) == "" {
		return nil, &ParseError{Reason: ReasonEmpty, Text: text, Detail: "no size is given; is the cell blank?"}
	}
	var parts []part
	from := 0
	for i, c := range text {
		if strings.ContainsRune("xX×*", c) {
			parts = append(parts, trimmedPart(text[from:i], from))
			from = i + len(string(c))
		}
	}
	parts = append(parts, trimmedPart(text[from:], from))
	if !slices.Contains(counts, len(parts)) {
		detail := fmt.Sprintf("a size here is %s lengths joined by x, not %d", joined(counts, " or ", strconv.Itoa), len(parts))
		return nil, &ParseError{Reason: ReasonCount, Text: text, At: parts[len(parts)-1].at, Detail: detail}
	}
	return parts, nil
}

// trimmedPart drops the white space round a part.
func trimmedPart(text string, at int) part {
	left := strings.TrimLeftFunc(text, unicode.IsSpace)
	return part{strings.TrimSpace(left), at + len(text) - len(left)}
}

// within makes an error of the part one of the whole text.
func (p part) within(text string, err *ParseError) *ParseError {
	whole := *err
	whole.Text, whole.At = text, err.At+p.at
	if err.Hint != "" {
		hints := strings.Split(err.Hint, " or ")
		for i, h := range hints {
			hints[i] = text[:p.at] + h + text[p.at+len(p.text):]
		}
		whole.Hint = strings.Join(hints, " or ")
	}
	return &whole
}

// ParseStep reads the distance between two ruler marks: "1/8 in", "1/16" (a
// bare fraction is of an inch), "0.5 mm". It must be one of Marks. Any error
// is a *ParseError.
func ParseStep(text string) (Step, error) {
	s, err := readStep(text)
	if err == nil {
		return s, nil
	}
	isNoStep := func(hint string) bool { _, err := readStep(hint); return err != nil }
	err.Hint = strings.Join(slices.DeleteFunc(strings.Split(err.Hint, " or "), isNoStep), " or ")
	return Step{}, err
}

// readStep is ParseStep with hints that are lengths, but perhaps not steps.
func readStep(text string) (Step, *ParseError) {
	m, err := read(text, ClearComma)
	if err != nil {
		return Step{}, err
	}
	if m.unit.unit == NoUnit && m.fraction {
		m.unit = unitName{Inch, nmPerInch}
	}
	l, err := m.length(NoUnit)
	if err != nil {
		return Step{}, err
	}
	return m.step(l)
}

// step finds the mark of exactly that size.
func (m measurement) step(l Length) (Step, *ParseError) {
	marks := Marks(m.unit.unit)
	nearest, finest := marks[0], marks[len(marks)-1]
	for _, s := range marks {
		if s.size == l {
			return s, nil
		}
		if l.Sub(s.size).Abs().Less(l.Sub(nearest.size).Abs()) {
			nearest = s
		}
	}
	if l.Less(finest.size) {
		return Step{}, m.r.fail(ReasonTooFine, 0, "a ruler's finest mark is "+finest.String(), finest.String())
	}
	return Step{}, m.r.fail(ReasonNotAMark, 0, "no ruler is divided so; its marks are "+joined(marks, ", ", Step.String), nearest.String())
}

// joined writes a list by the names of its parts.
func joined[T any](list []T, by string, name func(T) string) string {
	names := make([]string, len(list))
	for i, part := range list {
		names[i] = name(part)
	}
	return strings.Join(names, by)
}
