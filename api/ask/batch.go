package ask

import (
	"encoding/json"
	"slices"
	"strings"

	"creasefit/internal/fault"
)

// Usual is the names that hold for every line of a batch which does not say
// them itself, as the query of the batch has them.
type Usual struct{ fields []field }

// ReadUsual reads the query of a batch.
func ReadUsual(raw string) (Usual, fault.Faults) {
	var r Reading
	r.AddQuery(raw)
	return Usual{r.fields}, r.faults
}

// Take takes the first field of that name away if its text is wanted, and
// returns the text; empty if there is none.
func (u *Usual) Take(name string, wanted func(text string) bool) string {
	i := slices.IndexFunc(u.fields, func(f field) bool { return f.name == name && wanted(f.text) })
	if i < 0 {
		return ""
	}
	text := u.fields[i].text
	u.fields = slices.Delete(u.fields, i, i+1)
	return text
}

// Add adds a name, unless there is one already.
func (u *Usual) Add(name, text string) {
	if !u.Has(name) {
		u.fields = append(u.fields, field{name, text})
	}
}

// Has reports whether there is such a name.
func (u *Usual) Has(name string) bool {
	return slices.ContainsFunc(u.fields, func(f field) bool { return f.name == name })
}

// Each calls use for every name with its text.
func (u *Usual) Each(use func(name, text string)) {
	for _, f := range u.fields {
		use(f.name, f.text)
	}
}

// AddUsual adds the usual names that the request has not.
func (r *Reading) AddUsual(u *Usual) {
	own := len(r.fields)
	for _, f := range u.fields {
		if !slices.ContainsFunc(r.fields[:own], func(g field) bool { return g.name == f.name }) {
			r.fields = append(r.fields, f)
		}
	}
}

// AddCell adds a name with the text of a cell, which may hold a whole list: its
// values parted by |, by semicolons, by line breaks, or by commas with a space
// behind, or a JSON array. A comma alone may be a decimal mark.
func (r *Reading) AddCell(name, text string) {
	p := r.table.find(name)
	if p == nil || !p.List {
		r.Add(name, text)
		return
	}
	begun := strings.TrimSpace(text)
	switch {
	case strings.HasPrefix(begun, "[") && json.Valid([]byte(begun)):
		r.addMember(name, []byte(begun))
	case strings.HasPrefix(begun, "{"):
		r.Add(name, text)
	default:
		for part := range strings.SplitSeq(text, partedBy(text)) {
			if part = strings.TrimSpace(part); part != "" {
				r.Add(name, part)
			}
		}
	}
}

// partedBy is what parts the values of a list in a cell.
func partedBy(text string) string {
	for _, mark := range [...]string{"|", ";", "\n"} {
		if strings.Contains(text, mark) {
			return mark
		}
	}
	return ", "
}
