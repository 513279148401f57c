package measure

import (
	"slices"
	"strconv"
	"strings"
)

// Total is a size that several things or layers make together, side by side or on
// one another.
type Total struct {
	Length       // of all whose sizes are written
	Them   int64 // how often "them" stands in it: a size that the reader of the text knows
	Unit   Unit  // the last one written; NoUnit if none is
}

// mostOfThem is how many of one thing a total takes.
const mostOfThem = 10_000

// The words that join the parts of a total, those between a number of things and
// the size of one, and those for a size known elsewhere. An x is none of them:
// "9 x 5 in" is a size.
var (
	joiners = []string{" + ", " and ", " und "}
	ofs     = []string{"of", "*", "mal"}
	thems   = []string{"them", "davon"}
)

// ParseTotal reads a length, or what several lengths come to:
//
//	60 mm   3 of 60 mm   12 of 1.5 mm + 2 of 0.5 mm   3 of them and 4 mm
//
// A unit after the last holds for all that have none of their own. Any error is
// a *ParseError.
func ParseTotal(text string, unit Unit, decimal Decimal) (total Total, err error) {
	if len(text) > 4*mostCharacters {
		return total, &ParseError{Reason: ReasonTooLong, Text: text, Detail: "a length has at most 32 characters"}
	}
	last := unitName{}
	for end, more := len(text), true; more; {
		var p part
		p, end, more = lastSummand(text[:end])
		count, one := p.counted()
		if one.known() {
			total.Them += count
			continue
		}
		l, wrong := one.length(unit, &last, decimal)
		if wrong != nil {
			return total, one.within(text, wrong)
		}
		if total.Unit == NoUnit {
			total.Unit = last.unit
		}
		total.Length = total.Add(l.Times(count))
		if largest.Less(total.Length) {
			return total, &ParseError{Reason: ReasonTooLarge, Text: text, Detail: tooLargeDetail}
		}
	}
	return total, nil
}

// length reads a part in its own unit, or else in the last one that was written.
func (p part) length(unit Unit, last *unitName, decimal Decimal) (Length, *ParseError) {
	m, err := read(p.text, decimal)
	if err != nil {
		return Length{}, err
	}
	if m.unit.unit == NoUnit {
		m.unit = *last
	} else {
		*last = m.unit
	}
	return m.length(unit)
}

// lastSummand takes the last part off a text, and says where the rest ends, if
// there is more.
func lastSummand(text string) (p part, end int, more bool) {
	at := 0
	for _, j := range joiners {
		if i := strings.LastIndex(text, j); i >= 0 && i+len(j) > at {
			at, end, more = i+len(j), i, true
		}
	}
	return trimmedPart(text[at:], at), end, more
}

// counted parts how many there are from what one of them is; one where no number
// stands in front.
func (p part) counted() (int64, part) {
	digits := strings.TrimLeft(p.text, "0123456789")
	n, err := strconv.ParseInt(p.text[:len(p.text)-len(digits)], 10, 32)
	rest := strings.TrimLeft(digits, " \u00a0")
	if err != nil || n == 0 || n > mostOfThem {
		return 1, p
	}
	for _, of := range ofs {
		if len(rest) >= len(of) && strings.EqualFold(rest[:len(of)], of) {
			return n, trimmedPart(rest[len(of):], p.at+len(p.text)-len(rest)+len(of))
		}
	}
	if one := (part{rest, p.at + len(p.text) - len(rest)}); one.known() { // "3 davon"
		return n, one
	}
	return 1, p
}

// known reports whether a part stands for a size known elsewhere.
func (p part) known() bool {
	return slices.ContainsFunc(thems, func(them string) bool { return strings.EqualFold(p.text, them) })
}
