package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/pattern"
)

// TestRoomOfContentsByHand: what is 40 x 40 x 10 mm stands on the base of a tray that leaves it 41 x 42 mm
// and has no lid. A prism of four sides stands there as a box does.
func TestRoomOfContentsByHand(t *testing.T) {
	for _, sides := range []int{0, 4} {
		p := squareTray()
		p.Cavity.Sides = sides
		room, ok := Contents(p)
		require.True(t, ok)
		assert.InDeltaSlice(t, []float64{40, 40, 10}, room.Size[:], 1e-9)
		require.Len(t, room.Corners, 4)
		for k, c := range room.Corners {
			assert.InDelta(t, 40, room.Corners[(k+1)%4].Minus(c).Length(), 1e-9)
			assert.InDelta(t, 800, c.Minus(room.Middle).Dot(c.Minus(room.Middle)), 1e-6, "half a diagonal away from the middle")
		}
		if sides == 0 {
			for axis, play := range []float64{1, 2, 0} {
				assert.InDelta(t, play, room.Play[axis][1]-room.Play[axis][0], 1e-6)
				assert.LessOrEqual(t, room.Play[axis][0], 0.0)
				assert.GreaterOrEqual(t, room.Play[axis][1], 0.0)
			}
		}
	}
}

// What points nowhere has no room for contents, nor has what goes into something itself.
func TestNoRoomForContents(t *testing.T) {
	for name, change := range map[string]func(p *pattern.Pattern){
		"no such panel": func(p *pattern.Pattern) { p.Cavity.Panel = len(p.Pieces[0].Panels) },
		"no such piece": func(p *pattern.Pattern) { p.Cavity.Piece = 1 },
		"it goes in":    func(p *pattern.Pattern) { p.Cavity.Into = true },
	} {
		p := squareTray()
		change(p)
		_, ok := Contents(p)
		assert.False(t, ok, name)
	}
}
