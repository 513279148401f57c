package search

import (
	"math/rand/v2"

	"creasefit/internal/sheet"
)

// filler fills one board at a time with the pieces that are left, placing the
// piece that scores best into the lower left of each rectangle and dividing
// what remains by one of the two cuts.
type filler struct {
	board  *board
	left   []int32
	score  []float64 // of each face
	choose float64   // chance of the cut that leaves the smaller largest rest
	stages int       // that the fill may have; zero means any number
	random *rand.Rand
	looked int // faces
}

// whole returns a layout for the board and takes its pieces from left.
func (f *filler) whole(strips bool) *layout {
	all := corner{f.board.w, f.board.h}
	switch {
	case f.stages > 0:
		return f.inStages(all, f.axisFor(all), f.stages)
	case strips:
		return f.strip(all, sheet.Axis(f.random.IntN(2)))
	default:
		return f.fill(all.w, all.h)
	}
}

// fill returns a layout for a rectangle and takes its pieces from left.
func (f *filler) fill(w, h int32) *layout {
	best := f.pick(corner{w, h}, corner{})
	if best < 0 {
		return nil
	}
	fc := f.board.faces[best]
	f.left[fc.kind]--
	leaf := &layout{kind: fc.kind, turned: fc.turned}
	if f.widthFirst(w, h, fc) {
		high := f.fill(w-fc.w, h)
		return beside(sheet.Width, beside(sheet.Height, leaf, f.fill(fc.w, h-fc.h)), high)
	}
	high := f.fill(w, h-fc.h)
	return beside(sheet.Height, beside(sheet.Width, leaf, f.fill(w-fc.w, fc.h)), high)
}

// widthFirst chooses the first of the two cuts that free a piece.
func (f *filler) widthFirst(w, h int32, fc face) bool {
	if !f.board.crossable(h) && fc.w < w {
		return false
	}
	if !f.board.crossable(w) && fc.h < h {
		return true
	}
	right, top := int64(w-fc.w), int64(h-fc.h)
	wide := max(right*int64(h), top*int64(fc.w)) > max(top*int64(w), right*int64(fc.h))
	return wide == (f.random.Float64() < f.choose)
}

// shake gives every face a score near its value.
func (f *filler) shake(value []float64, noise float64) {
	for i, fc := range f.board.faces {
		f.score[i] = value[fc.kind] * (1 + noise*(f.random.Float64()-0.5))
	}
	f.choose = f.random.Float64()
	if f.random.IntN(2) == 0 {
		f.choose = 1
	}
}
