package own

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/fault"
)

// clashes reports a row that cannot hold with those before it: the smallest set of
// statements that contradict one another, found by leaving out one after the other (a
// deletion filter), and by how much they do.
func (r *derived) clashes(at int, values []float64) bool {
	last := &r.rows[at]
	set := r.smallest(at, last)
	s := r.systemOf(set)
	values = s.settled(values)
	if !last.misses(values) {
		return false
	}
	by := math.Abs(last.form.at(values))
	names := make([]string, len(set))
	for i := range set {
		names[i] = "that " + set[i].name
	}
	f := fault.Fault{Code: fault.Conflict, Field: under("design", last.place), Detail: last.name + ", which cannot be",
		Hint: "leave one of them out, or free a panel that it binds"}
	if len(names) > 0 {
		f.Detail = "that " + last.name + " contradicts " + strings.Join(names, ", ")
	}
	f.Detail += ": they are " + strconv.FormatFloat(math.Round(by/1e4)/100, 'f', -1, 64) + " mm apart"
	r.wrong = append(r.wrong, f)
	return true
}

// smallest is the smallest set of rows that one contradicts.
func (r *derived) smallest(at int, last *row) []row {
	var set []row
	for i := range r.unknowns {
		if u := &r.unknowns[i]; u.fixed.given {
			set = append(set, row{form: only(r.first+i, parts).plus(-1, r.amount(u.fixed)), name: u.says(), place: u.place})
		}
	}
	for i := range r.rows[:at] {
		if r.rows[i].hard {
			set = append(set, r.rows[i])
		}
	}
	for i := 0; i < len(set); {
		rest := slices.Delete(slices.Clone(set), i, i+1)
		if r.clash(rest, last) {
			set = rest
		} else {
			i++
		}
	}
	return set
}

// says is what the request says of a reach that it fixes.
func (u *unknown) says() string {
	if u.fixed.Size != "" {
		return u.name + " is as long as " + u.fixed.Size + " says"
	}
	return u.name + " has its own length"
}

// clash reports whether a row contradicts the others of a set.
func (r *derived) clash(set []row, last *row) bool {
	s := r.systemOf(set)
	left, fresh := s.add(last.form)
	return !fresh && len(left) > 0
}

// systemOf is the system of some rows.
func (r *derived) systemOf(set []row) system {
	s := system{order: r.known.order}
	for i := range set {
		s.add(set[i].form)
	}
	return s
}
