package search

import "creasefit/internal/sheet"

// inStages fills a rectangle with strips along an axis, each filled in one stage
// less across it; in the last stage pieces are as wide as their strip.
func (f *filler) inStages(room corner, a sheet.Axis, stages int) *layout {
	wide, exact := room.along(a.Other()), corner{}
	divided := f.board.crossable(wide)
	switch {
	case !divided:
		exact = room
	case stages == 1:
		exact = sides(a, 0, wide)
	}
	at := f.pick(room, exact)
	if at < 0 {
		return nil
	}
	fc := f.board.faces[at]
	long := corner{fc.w, fc.h}.along(a)
	var one *layout
	if stages == 1 || !divided {
		f.left[fc.kind]--
		one = &layout{kind: fc.kind, turned: fc.turned}
	} else {
		one = f.inStages(sides(a, long, wide), a.Other(), stages-1)
	}
	if one == nil || !divided {
		return one
	}
	return beside(a, one, f.inStages(sides(a, room.along(a)-long, wide), a, stages))
}

// axisFor is an axis at random along which the trimmer divides a rectangle.
func (f *filler) axisFor(room corner) sheet.Axis {
	a := sheet.Axis(f.random.IntN(2))
	if !f.board.crossable(room.along(a.Other())) {
		return a.Other()
	}
	return a
}

// pick returns the best face for a rectangle, or -1, of those whose sides are
// exactly as long as they must be, where that is not zero.
func (f *filler) pick(room, exact corner) int {
	best, at := 0.0, -1
	f.looked += len(f.board.faces)
	for i := range f.board.faces {
		fc := &f.board.faces[i]
		if fc.w > room.w || fc.h > room.h || f.left[fc.kind] == 0 || exact.w > 0 && fc.w != exact.w || exact.h > 0 && fc.h != exact.h {
			continue
		}
		s := f.score[i]
		if fc.w == room.w || fc.h == room.h {
			s *= 1.5
		}
		if at < 0 || s > best {
			best, at = s, i
		}
	}
	return at
}
