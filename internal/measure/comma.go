package measure

import "strings"

// pointed rewrites a numeral so that its only mark is a decimal point, or
// says why it cannot be read in one way.
func (r *reader) pointed(numeral string, at int) (string, *ParseError) {
	commas, points := strings.Count(numeral, ","), strings.Count(numeral, ".")
	switch {
	case commas == 0 && points == 1:
		return numeral, nil
	case commas == 1 && points == 0:
		return r.oneComma(numeral, at)
	}
	english, ok := ungroup(numeral, ",", ".")
	if ok && r.decimal == DecimalPoint {
		return english, nil
	}
	german, also := ungroup(numeral, ".", ",")
	second := at + secondMark(numeral)
	switch {
	case ok:
		return "", r.fail(ReasonThousands, second, thousandsDetail, readable(r.withUnit(english)))
	case also:
		return "", r.fail(ReasonThousands, second, thousandsDetail, readable(r.withUnit(german)))
	default:
		return "", r.fail(ReasonSyntax, second, "a number has one decimal mark", "")
	}
}

const thousandsDetail = "digits are not grouped in thousands"

// oneComma reads a numeral whose only mark is a comma.
func (r *reader) oneComma(numeral string, at int) (string, *ParseError) {
	decimal := strings.Replace(numeral, ",", ".", 1)
	grouped, isGrouped := ungroup(numeral, ",", ".")
	comma := at + strings.Index(numeral, ",")
	switch {
	case r.decimal == DecimalPoint && isGrouped:
		return grouped, nil
	case r.decimal == DecimalPoint:
		return "", r.fail(ReasonDecimalMark, comma, "the decimal mark was said to be a point", readable(r.withUnit(decimal)))
	case r.decimal == ClearComma && isGrouped:
		return "", r.fail(ReasonAmbiguous, comma, "the comma can be a decimal mark or group thousands",
			either(r.withUnit(decimal), r.withUnit(grouped)))
	default:
		return decimal, nil
	}
}

// ungroup removes the group marks from a numeral that is properly grouped in
// threes, and turns its decimal mark, if any, into a point.
func ungroup(numeral, group, decimal string) (string, bool) {
	whole, decimals, marked := strings.Cut(numeral, decimal)
	groups := strings.Split(whole, group)
	if len(groups) < 2 || strings.Contains(decimals, group) || strings.Contains(decimals, decimal) || marked && decimals == "" {
		return "", false
	}
	first := groups[0]
	if len(first) < 1 || len(first) > 3 || first[0] == '0' {
		return "", false
	}
	for _, g := range groups[1:] {
		if len(g) != 3 {
			return "", false
		}
	}
	plain := strings.Join(groups, "")
	if marked {
		plain += "." + decimals
	}
	return plain, true
}

// secondMark returns the offset of the second comma or point.
func secondMark(numeral string) int {
	first := strings.IndexAny(numeral, ".,")
	return first + 1 + strings.IndexAny(numeral[first+1:], ".,")
}

// withUnit appends the unit that the text was written with to a number.
func (r *reader) withUnit(number string) string { return number + strings.TrimSpace(r.text[r.end:]) }
