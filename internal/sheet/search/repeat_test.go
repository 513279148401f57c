package search

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// repeated draws an order of a few kinds, many of each.
func repeated(t testing.TB, seed uint64, kinds, pieces int) sheet.Order {
	r := rand.New(rand.NewPCG(seed, 3))
	o := sheet.Order{Sheets: []sheet.Stock{{Width: measure.Inches(12), Height: measure.Inches(12)}}, Ruler: sixteenth(t)}
	for k := range kinds {
		o.Items = append(o.Items, sheet.Item{
			Name:  fmt.Sprint("kind ", k),
			Width: measure.Sixtyfourths(16 * (8 + r.Int64N(36))), Height: measure.Sixtyfourths(16 * (6 + r.Int64N(20))),
			Count: 1 + r.IntN(2*pieces/kinds),
		})
	}
	return o
}

// Orders of a few kinds are proven best, however many of each are wanted.
func TestRepeatedKinds(t *testing.T) {
	for _, kinds := range []int{2, 3, 5} {
		for _, pieces := range []int{25, 70, 300, 3000} {
			for seed := range seeds(4) {
				assert.True(t, proven(t, repeated(t, seed, kinds, pieces), muchWork).Proven, "%d kinds, %d pieces, seed %d", kinds, pieces, seed)
			}
		}
	}
}

// The largest order there may be is answered, if only with a bound.
func TestLargestOrder(t *testing.T) {
	o := repeated(t, 1, sheet.MostItems, 2*sheet.MostItems)
	for i := range o.Items {
		o.Items[i].Count = sheet.MostPieces / sheet.MostItems
	}
	o.Effort = 2 * time.Second
	a := planned(t, o)
	assert.LessOrEqual(t, float64(a.Sheets), 1.1*float64(a.LowerBound))
}
