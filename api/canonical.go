package api

import (
	"net/url"
	"slices"
	"strconv"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// appendQuery appends the canonical query of the reading: what was given and
// understood, in the order of the table, lengths exact and in one spelling.
// With answer the names that say how to answer are included.
func (r *reading) appendQuery(dst []byte, answer bool) []byte {
	first := true
	for i := range r.table.params {
		p, v := &r.table.params[i], &r.values[i]
		unit := i == pUnit && p.Name == "unit" && r.unit != measure.NoUnit
		if !v.given && !unit || p.Answer && (!answer || p.Name == "errors") {
			continue
		}
		for n := range v.entries() {
			if !first {
				dst = append(dst, '&')
			}
			first = false
			dst = append(append(dst, p.Name...), '=')
			dst = r.appendValue(dst, p, v, n)
		}
	}
	return dst
}

// entries is how many values a name was given.
func (v *value) entries() int {
	return max(1, len(v.texts))
}

// appendValue appends one value as it stands in a URL; n counts in a list.
func (r *reading) appendValue(dst []byte, p *param, v *value, n int) []byte {
	finest := finestMark(r.unit)
	switch {
	case p.Type == lengthType && p.List:
		return finest.AppendURL(dst, v.lengths[n])
	case p.Type == lengthType:
		return finest.AppendURL(dst, v.length)
	case p.Type == sizeType && p.List:
		return appendSizeURL(dst, finest, v.sizes[n])
	case p.Type == sizeType && !v.named:
		return appendSizeURL(dst, finest, v.size)
	case p.List:
		return append(dst, url.QueryEscape(v.texts[n])...)
	case p.Type == stepType:
		return v.step.AppendURL(dst, v.step.Size())
	case p.Type == countType || p.Type == numberType:
		return strconv.AppendFloat(dst, v.number, 'f', -1, 64)
	case p.Name == "unit":
		return append(dst, r.unit.String()...)
	default:
		return append(dst, url.QueryEscape(v.text)...)
	}
}

// appendSizeURL appends a width and a height as they stand in a URL.
func appendSizeURL(dst []byte, finest measure.Step, size [2]measure.Length) []byte {
	return finest.AppendURL(append(finest.AppendURL(dst, size[0]), 'x'), size[1])
}

// link returns the canonical address of the calculation.
func (r *reading) link(path string) []byte {
	r.canonical = append(append(r.canonical[:0], path...), '?')
	r.canonical = r.appendQuery(r.canonical, false)
	return r.canonical
}

// linkWith returns the canonical address of the calculation with another word
// for one name; nil if the calculation has no such name.
func (r *reading) linkWith(path string, o enclosure.Option) []byte {
	changed := *r
	changed.values = slices.Clone(r.values)
	i := slices.IndexFunc(r.table.params, func(p param) bool { return p.Name == o.Name })
	if i < 0 {
		return nil
	}
	changed.values[i] = value{given: true, text: o.Choice}
	return changed.appendQuery(append([]byte(path), '?'), false)
}
