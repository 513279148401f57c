package assembly

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Forget empties the memory of orders.
func Forget() {
	remembered.Lock()
	defer remembered.Unlock()
	clear(remembered.known)
}

// Parts returns the two parts of Find apart: the search at the ideal sizes, and the
// replay of what it finds at the actual ones.
func Parts(ideal, actual *pattern.Pattern, tolerance measure.Length) (search, again func()) {
	t, _ := newTaking(ideal, 0)
	moves, _ := t.search()
	search = func() {
		t, _ := newTaking(ideal, 0)
		t.search()
	}
	return search, func() { replay(moves, actual, tolerance.Millimetres()) }
}
