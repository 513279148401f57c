package search

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/sheet"
)

// sound checks everything that a draft says of itself against its tree.
func (d *draft) sound(t require.TestingT) {
	if d.root == none {
		require.Empty(t, d.knots)
		require.Equal(t, int64(d.board.w)*int64(d.board.h), d.free)
		return
	}
	area := int64(0)
	w, h := replay(t, d.board, d.layout(d.root), func(k int32) {
		for _, f := range d.board.faces {
			if f.kind == k {
				area += int64(f.w) * int64(f.h)
				break
			}
		}
	})
	require.Equal(t, corner{w, h}, d.knots[d.root].need)
	require.True(t, w <= d.board.w && h <= d.board.h)
	require.Equal(t, int64(d.board.w)*int64(d.board.h)-area, d.free)
	require.EqualValues(t, none, d.knots[d.root].up)
	seen := 0
	d.soundBelow(t, d.root, corner{d.board.w, d.board.h}, &seen)
	require.Equal(t, len(d.knots), seen, "knots that hang on nothing")
}

// soundBelow checks a knot and all below it, whose room is what the others leave.
func (d *draft) soundBelow(t require.TestingT, at int16, room corner, seen *int) {
	*seen++
	n := d.knots[at]
	require.Equal(t, room, n.room)
	require.True(t, n.need.w <= room.w && n.need.h <= room.h)
	if n.face != none {
		return
	}
	low, high := d.knots[n.low], d.knots[n.high]
	require.Equal(t, []int16{at, at}, []int16{low.up, high.up})
	across := min(room.along(n.axis.Other()), d.board.limit)
	d.soundBelow(t, n.low, sides(n.axis, room.along(n.axis)-high.need.along(n.axis), across), seen)
	d.soundBelow(t, n.high, sides(n.axis, room.along(n.axis)-low.need.along(n.axis), across), seen)
}

// places lists where a face may be joined to a draft.
func (d *draft) places(face int16) (list []place) {
	f := d.board.faces[face]
	if d.root == none {
		return []place{{knot: none, face: face}}
	}
	for i, n := range d.knots {
		for _, a := range []sheet.Axis{sheet.Width, sheet.Height} {
			size, across := corner{f.w, f.h}, a.Other()
			if n.need.along(a)+size.along(a) <= n.room.along(a) && max(n.need.along(across), size.along(across)) <= min(n.room.along(across), d.board.limit) {
				list = append(list, place{knot: int16(i), face: face, axis: a})
			}
		}
	}
	return list
}

// Whatever is put in and taken out, rooms, least rectangles and the free area are those
// of the tree, and what is taken out is what hung there.
func TestDraftsStaySound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, _ := drawnBoard(t, 20)
		b.limit = rapid.Int32Range(min(b.w, b.h), max(b.w, b.h)).Draw(t, "limit")
		d := newDraft(b)
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			if d.root != none && rapid.IntRange(0, 3).Draw(t, "out") == 0 {
				at := int16(rapid.IntRange(0, len(d.knots)-1).Draw(t, "knot"))
				want := d.pieces(at, nil)
				require.Equal(t, want, d.remove(at, nil))
			} else if list := d.places(int16(rapid.IntRange(0, len(b.faces)-1).Draw(t, "face"))); len(list) > 0 {
				d.insert(rapid.SampledFrom(list).Draw(t, "place"))
			}
			d.sound(t)
			var other draft
			other.copyFrom(&d)
			other.sound(t)
		}
	})
}

// Beside an edge of 10 a face 7 high and 4 wide leaves 3 x 4 beside itself, and an eighth
// of the 16 behind that 7 of the height share: 12 + 14; one 12 high leaves 2 x the 5 that
// the knot is long.
func TestLossesByHand(t *testing.T) {
	assert.EqualValues(t, 12+14, loss(10, 5, 7, 4, 16))
	assert.EqualValues(t, 10+20, loss(10, 5, 12, 4, 16))
	assert.EqualValues(t, 0, loss(10, 5, 10, 4, 0))
}
