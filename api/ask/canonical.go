package ask

import (
	"encoding/binary"
	"strings"

	"creasefit/internal/measure"
)

// AppendQuery appends the canonical query: what was given and understood, in
// the order of the table, lengths exact and in one spelling. With answer the
// names that say how to answer are included.
func (r *Reading) AppendQuery(dst []byte, answer bool) []byte {
	from := len(dst)
	if dst = r.appendNames(dst, from, 0, r.table.answers); answer {
		dst = r.appendNames(dst, from, r.table.answers, len(r.values))
	}
	return dst
}

// appendNames appends some names to a query that begins at from.
func (r *Reading) appendNames(dst []byte, from, first, end int) []byte {
	for i := first; i < end; i++ {
		v := &r.values[i]
		if !v.is.Given && !v.implied {
			continue
		}
		name := r.table.names[i].Name
		if name == "errors" {
			continue
		}
		for entry := range v.entries(r) {
			if len(dst) > from {
				dst = append(dst, '&')
			}
			dst = v.appendURL(append(append(dst, name...), '='), r, entry)
		}
	}
	return dst
}

// AppendKey appends what an answer depends on before it is narrowed: the unit, and the texts as they
// were given, which the answer repeats. Every part has its length in front, so
// that no two requests have the same key.
func (r *Reading) AppendKey(dst []byte) []byte {
	dst = append(dst, byte(r.unit))
	for i, v := range r.values {
		switch n := &r.table.names[i]; {
		case !v.is.Given || n.Narrows:
		case n.List:
			texts := textsOf(v.value)
			dst = binary.AppendUvarint(binary.AppendUvarint(dst, uint64(i)), uint64(len(texts)))
			dst = AppendParts(dst, texts...)
		default:
			dst = AppendParts(binary.AppendUvarint(dst, uint64(i)), v.is.Text)
		}
	}
	return dst
}

// AppendParts appends texts, each with its length in front, so that none can pass for
// two or for another one's end.
func AppendParts(dst []byte, texts ...string) []byte {
	for _, text := range texts {
		dst = append(binary.AppendUvarint(dst, uint64(len(text))), text...)
	}
	return dst
}

// textsOf returns the texts of a list; nil for any other field.
func textsOf(v value) []string {
	if list, ok := v.(interface{ texts() []string }); ok {
		return list.texts()
	}
	return nil
}

func (s *Several) texts() []string { return s.Texts }

// Link returns the canonical address of the calculation. It holds until the
// next call of Link.
func (r *Reading) Link(path string) []byte {
	r.canonical = append(append(r.canonical[:0], path...), '?')
	r.canonical = r.AppendQuery(r.canonical, false)
	return r.canonical
}

// Location returns the canonical address of the answer, and how much of it is that of
// the calculation. It holds as Link does.
func (r *Reading) Location(path string) (location []byte, link int) {
	link = len(r.Link(path))
	r.canonical = r.appendNames(r.canonical, len(path)+1, r.table.answers, len(r.values))
	return r.canonical, link
}

// LinkWith returns the canonical address of the calculation with another word
// for one name; nil if the calculation has no such name. It holds as Link does.
func (r *Reading) LinkWith(path, name, word string) []byte {
	i, ok := r.table.index[name]
	if !ok {
		return nil
	}
	own := r.values[i]
	defer func() { r.values[i] = own }()
	r.values[i] = slotOf(&Text{Field{Given: true, Text: word}})
	return r.Link(path)
}

// Given is one value of a request as it was understood.
type Given struct {
	Name, Text string
	Length     measure.Length // of a length and of a ruler mark
	Measured   bool           // it is one of those
	From       string         // where it comes from if the request did not give it
}

// Given lists how each value was understood, and then what was filled in from
// where. It holds until the next call of Given.
func (r *Reading) Given() []Given {
	r.given = r.given[:0]
	for i, v := range r.values {
		if n := &r.table.names[i]; v.is.Given && !n.Answer {
			g := Given{Name: n.Name, Text: v.is.Text}
			if n.List {
				g.Text = strings.Join(textsOf(v.value), ", ")
			} else {
				g.Length, g.Measured = lengthOf(v.value)
			}
			r.given = append(r.given, g)
		}
	}
	for i, v := range r.values {
		if v.is.Given || v.is.From == "" {
			continue
		}
		g := Given{Name: r.table.names[i].Name, Text: v.is.Text, From: v.is.From}
		if g.Length, g.Measured = lengthOf(v.value); g.Text == "" {
			g.Text = measure.Finest(r.unit).Format(g.Length)
		}
		r.given = append(r.given, g)
	}
	return r.given
}

// lengthOf returns the length of a field that is one, or the size of a ruler
// mark.
func lengthOf(v value) (measure.Length, bool) {
	switch v := v.(type) {
	case *Length:
		return v.Length, true
	case *Total:
		return v.Length.Length, true
	case *Step:
		return v.Step.Size(), true
	default:
		return measure.Length{}, false
	}
}

// AppendValue appends the value of a name as it stands in a URL, nothing if it
// was not given.
func (r *Reading) AppendValue(dst []byte, name string) []byte {
	if i, ok := r.table.index[name]; ok && r.values[i].entries(r) > 0 {
		return r.values[i].appendURL(dst, r, 0)
	}
	return dst
}
