package own_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/enclosure/own"
	"creasefit/internal/measure"
)

// The four-flap wrapper agrees with a published conservation manual (reCollections,
// Australian Museums On Line, "Four-flap wrappers"; quoted from memory of the sheet:
// base about 2 mm over the book each way, every wall one board more than the one
// inside it, the inner flaps 3 mm short of the base): the base within the easy fit of
// 1.5 to 3 mm, walls within the 1 mm that a ruler in millimetres leaves a board.
func TestTheFourFlapWrapperIsThatOfTheManuals(t *testing.T) {
	var wrapper own.Example
	for _, e := range own.Examples() {
		if e.Name == "four-flap-wrapper" {
			wrapper = e
		}
	}
	book := [3]float64{150, 220, 28}
	sizes, s := sizesOf(t, wrapper.Text, measure.Millimetre, book)
	board := s.Pattern.Caliper.Millimetres()
	mm := func(name string) float64 { return sizes[name].Millimetres() }
	assert.InDelta(t, book[0]+2, mm("base")-board, 1.01, "the base is about 2 mm over the book")
	inner := book[2] + board // a wall is scored in the middle of the board
	for i, wall := range []string{"lower wall", "upper wall", "left wall", "right wall"} {
		more := mm(wall) - inner
		if i == 0 {
			assert.InDelta(t, 2.25, more, 1, "%s goes round the book", wall)
		} else {
			assert.GreaterOrEqual(t, more, board-1e-9, wall)
			assert.LessOrEqual(t, more, board+1.01, wall)
		}
		inner = mm(wall)
	}
	piece := &s.Pattern.Pieces[0]
	for i := range piece.Panels {
		if p := &piece.Panels[i]; p.Name == "lower flap" || p.Name == "upper flap" {
			assert.InDelta(t, mm("base")-3, p.Outline[2].X.Sub(p.Outline[0].X).Millimetres(), 1e-9, p.Name)
		}
	}
}

// A design of twenty-four panels is folded up in forms in a few milliseconds.
func BenchmarkPlan(b *testing.B) {
	for _, e := range append(own.Examples(), own.Kinds()...) {
		k, err := own.Read(e.Text)
		if err != nil {
			b.Fatal(err)
		}
		in := request(k, measure.Millimetre, things[1], 300)
		b.Run(e.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := k.Plan(inputOf(in)); err != nil {
					b.Skip(err)
				}
			}
		})
	}
}
