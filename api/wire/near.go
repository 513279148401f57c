package wire

import (
	"cmp"
	"slices"

	"creasefit/api/ask"
	"creasefit/internal/measure"
)

// Near is how a preset compares with a size that was asked for; empty if none
// was.
type Near struct {
	Off    *Length `json:"off,omitempty"`                    // how far the side that differs more is off
	Turned bool    `json:"turned,omitempty" example:"false"` // its width is compared with the height asked for
}

// sized is a preset with its size, so that a list can be searched.
type sized[P any] struct {
	preset        P
	width, height measure.Length
	unit          measure.Unit
}

// picked puts the presets in the order of how near they are to what is
// wanted, and says so of each through mark. Those as near as one another stay in
// the order of the list.
func picked[P any](list []sized[P], q *ask.Near, mark func(*P, Near)) []P {
	if q.Size.Given {
		slices.SortStableFunc(list, func(a, b sized[P]) int {
			offA, _ := a.apart(q.Size)
			offB, _ := b.apart(q.Size)
			return cmp.Compare(offA.Nanometres(), offB.Nanometres())
		})
	}
	if q.Top.Given {
		list = list[:min(len(list), q.Top.Count())]
	}
	presets := make([]P, len(list))
	for i, s := range list {
		presets[i] = s.preset
		if q.Size.Given {
			off, turned := s.apart(q.Size)
			mark(&presets[i], Near{new(exactIn(s.unit, off)), turned})
		}
	}
	return presets
}

// apart returns how far the worse side is off the size wanted, the better way
// up.
func (s sized[P]) apart(from ask.Size) (off measure.Length, turned bool) {
	worse := func(width, height measure.Length) measure.Length {
		return measure.Max(width.Sub(from.Width).Abs(), height.Sub(from.Height).Abs())
	}
	upright, across := worse(s.width, s.height), worse(s.height, s.width)
	if across.Less(upright) {
		return across, true
	}
	return upright, false
}
