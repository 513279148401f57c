// Package ask reads what a caller asks for: a query string, a JSON object, a
// form or a row of a table become one struct a call, whose fields are bound to
// the names of the call. Everything that is wrong is found at once.
//
// A call's struct says in its bind method which name fills which field, with
// its help, its bounds and its default, and in its settle method what presets
// add and what contradicts itself. What is documented of a name comes from
// there too. The package computes nothing and knows no answers.
package ask

import "sync"

// Request is what a call is asked for: a pointer to a struct of fields such as
// Length and Word, and of structs of those.
type Request interface {
	// bind binds every field to its name.
	bind(*Names)
	// settle fills in presets and defaults once everything is read, and reports
	// what is missing or contradicts itself.
	settle(*Reading)
}

// Form is the names of one call, bound to the fields of its requests.
type Form[Q Request] struct {
	names   *table
	formats []string
	empty   func() Q
	asked   sync.Pool
}

// Asked is one request on its way from text to values.
type Asked[Q Request] struct {
	Reading
	Q    Q
	form *Form[Q]
}

// NewForm returns the form of a call whose requests begin as empty ones and
// whose answers have these formats, the first by default.
func NewForm[Q Request](empty func() Q, formats ...string) *Form[Q] {
	f := &Form[Q]{names: &table{index: map[string]int{}}, formats: formats, empty: empty}
	f.asked.New = func() any { return f.bound() }
	f.asked.Put(f.bound())
	return f
}

// New returns the form of a call whose requests begin as the zero T.
func New[T any, Q interface {
	*T
	Request
}](formats ...string) *Form[Q] {
	return NewForm(func() Q { return new(T) }, formats...)
}

// bound returns a request whose fields are bound; the first one makes the
// table of names.
func (f *Form[Q]) bound() *Asked[Q] {
	a := &Asked[Q]{Q: f.empty(), form: f}
	names := &Names{table: f.names, making: len(f.names.names) == 0}
	a.Q.bind(names)
	if names.making {
		f.names.answers = len(names.values)
	}
	if len(f.formats) > 0 {
		names.answer = true
		a.Answer.bind(names, f.formats)
	}
	a.Reading.table, a.Reading.values = f.names, names.values
	return a
}

// Take returns an empty request to be filled in. Release gives it back.
func (f *Form[Q]) Take() *Asked[Q] {
	a := f.asked.Get().(*Asked[Q])
	a.reset()
	return a
}

// Names lists the names of the call.
func (f *Form[Q]) Names() []Name { return f.names.names }

// Large makes the form take bodies as large as an order's, and returns it.
func (f *Form[Q]) Large() *Form[Q] {
	f.names.large = true
	return f
}

// Release gives the request back; nothing may refer to it any more.
func (a *Asked[Q]) Release() { a.form.asked.Put(a) }

// Check checks what was read, fills in what is not given, and reports whether
// nothing is wrong.
func (a *Asked[Q]) Check() bool {
	a.checkBounds()
	a.Q.settle(&a.Reading)
	return len(a.faults) == 0
}

// table is the names of one call in the order they are listed.
type table struct {
	names   []Name
	words   []string // the names alone, for hints
	index   map[string]int
	answers int    // how many come before those that say how to answer
	large   bool   // bodies are larger than those of other calls
	rows    string // the name of objects that may come as the rows of a table
}

// find returns what is known of a name, or nil if the call does not know it.
func (t *table) find(name string) *Name {
	i, ok := t.index[name]
	if !ok {
		return nil
	}
	return &t.names[i]
}

// word is a quoted name, which needs no memory where the call knows it.
func (t *table) word(quoted []byte) string {
	if i, ok := t.index[string(quoted[1:len(quoted)-1])]; ok {
		return t.names[i].Name
	}
	return Unquote(quoted)
}

// Names binds the names of a call to the fields of one request.
type Names struct {
	table  *table
	making bool // the table is still to be made; else it is known
	answer bool // what follows says how to answer
	values []slot
}

// bind binds a name to a field, which gives it its type.
func (n *Names) bind(v value, name Name) {
	if n.making {
		name.Type, name.List, name.Answer = v.kind(), isList(v), n.answer
		if name.Type == ChoiceType && name.Catalogue != "" {
			name.Type = PresetType
		}
		n.table.index[name.Name] = len(n.table.names)
		n.table.names = append(n.table.names, name)
		n.table.words = append(n.table.words, name.Name)
	}
	v.field().place, v.field().table = len(n.values), n.table
	v.usual(name.Default)
	n.values = append(n.values, slotOf(v))
}

// isList reports whether a field takes a name that is given several times.
func isList(v value) bool {
	_, ok := v.(interface{ texts() []string })
	return ok
}
