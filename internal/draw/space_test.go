package draw

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/fold"
)

// TestOrder: what is in front as it is seen from in front, the right and above. The wall
// aslant lies on both sides of the table's plane and the table on both of its own; in the
// middle of what both take up of the drawing it is the table's plane that is nearer, where
// both are seen it is the wall.
func TestOrder(t *testing.T) {
	v := newViewer()
	face := func(ring ...fold.Vec) solid { return v.newSolid(ring, nil, NormalOf(ring), InsideFace, 0, false) }
	table := face(fold.Vec{0, 0, 0}, fold.Vec{100, 0, 0}, fold.Vec{100, 100, 0}, fold.Vec{0, 100, 0})
	for name, c := range map[string]struct {
		other solid
		want  int
	}{
		"a wall before it":               {face(fold.Vec{20, -5, -30}, fold.Vec{30, -5, -30}, fold.Vec{30, -5, 8}, fold.Vec{20, -5, 8}), 1},
		"a high one aslant before it":    {face(fold.Vec{20, -8, -100}, fold.Vec{30, -2, -100}, fold.Vec{30, -2, 8}, fold.Vec{20, -8, 8}), 1},
		"a wall behind it":               {face(fold.Vec{20, 101, -30}, fold.Vec{30, 101, -30}, fold.Vec{30, 101, 8}, fold.Vec{20, 101, 8}), -1},
		"a shelf below it":               {face(fold.Vec{20, 20, -9}, fold.Vec{30, 20, -9}, fold.Vec{30, 30, -9}, fold.Vec{20, 30, -9}), -1},
		"a card on it":                   {face(fold.Vec{20, 20, 1}, fold.Vec{30, 20, 1}, fold.Vec{30, 30, 1}, fold.Vec{20, 30, 1}), 1},
		"one beside it":                  {face(fold.Vec{200, 0, 9}, fold.Vec{300, 0, 9}, fold.Vec{300, 99, 9}, fold.Vec{200, 99, 9}), 0},
		"one in the same place as it is": {table, 0},
	} {
		assert.Equal(t, c.want, v.order(&c.other, &table), name)
		assert.Equal(t, -c.want, v.order(&table, &c.other), name)
	}
}
