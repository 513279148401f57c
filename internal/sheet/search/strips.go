package search

import (
	"slices"

	"creasefit/internal/sheet"
)

// strip fills a rectangle with strips side by side along an axis, equal ones as
// often as they go, each a stack of one kind and what is left beside it: cuts
// that a person makes with few settings.
func (f *filler) strip(room corner, a sheet.Axis) *layout {
	at := f.pick(room, corner{})
	if at < 0 {
		return nil
	}
	if !f.board.crossable(room.along(a.Other())) {
		a = a.Other()
	}
	across := a.Other()
	if !f.board.crossable(room.along(across)) {
		return f.fill(room.w, room.h)
	}
	fc := f.board.faces[at]
	size, before := corner{fc.w, fc.h}, slices.Clone(f.left)
	high := min(room.along(across)/size.along(across), f.left[fc.kind])
	f.left[fc.kind] -= high
	leaf := &layout{kind: fc.kind, turned: fc.turned}
	one := inRow(across, leaf, high)
	if rest := room.along(across) - high*size.along(across); rest > 0 {
		one = beside(across, one, f.strip(sides(a, size.along(a), rest), f.either(across)))
	}
	wide := 1 + f.again(before, room.along(a)/size.along(a)-1)
	rest := room.along(a) - wide*size.along(a)
	return beside(a, inRow(a, one, wide), f.strip(sides(a, rest, room.along(across)), f.either(a)))
}

// either is an axis, or now and then the other.
func (f *filler) either(a sheet.Axis) sheet.Axis {
	if f.random.IntN(3) == 0 {
		return a.Other()
	}
	return a
}

// again takes what has been taken since as often as it goes, at most so often,
// and returns how often that is.
func (f *filler) again(before []int32, most int32) int32 {
	for k, n := range before {
		if taken := n - f.left[k]; taken > 0 {
			most = min(most, f.left[k]/taken)
		}
	}
	for k, n := range before {
		f.left[k] -= most * (n - f.left[k])
	}
	return most
}

// inRow repeats a layout.
func inRow(a sheet.Axis, l *layout, times int32) *layout {
	whole := l
	for range times - 1 {
		whole = beside(a, whole, l)
	}
	return whole
}
