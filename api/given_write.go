package api

import "creasefit/internal/measure"

// appendGiven appends how each value was understood, and what was filled in
// from where.
func (x *answering) appendGiven(dst []byte) []byte {
	dst = append(dst, '{')
	for i, g := range x.Given() {
		dst = append(append(append(comma(dst, i), '"'), g.Name...), `":`...)
		dst = appendString(append(dst, `{"text":`...), g.Text)
		if g.Measured {
			dst = appendBoth(dst, g.Length)
		}
		if g.From != "" {
			dst = append(append(append(dst, `,"from":"`...), g.From...), '"')
		}
		dst = append(dst, '}')
	}
	return append(dst, '}')
}

// appendBoth appends the members mm and in.
func appendBoth(dst []byte, l measure.Length) []byte {
	dst = measure.AppendDecimal(append(dst, `,"mm":`...), l, measure.Millimetre, 6)
	return measure.AppendDecimal(append(dst, `,"in":`...), l, measure.Inch, 6)
}

// appendMember appends the name of the next member of an object whose first
// member begins at from.
func appendMember(dst []byte, from int, name string) []byte {
	if len(dst) > from {
		dst = append(dst, ',')
	}
	return append(append(append(dst, '"'), name...), `":`...)
}
