package search

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// TestFeasibleFunctionsAreFeasible holds every function to its definition
// (Fekete and Schepers 2004): extents that fit a length together are worth no
// more than the length.
func TestFeasibleFunctionsAreFeasible(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		total := rapid.Int32Range(2, 200).Draw(t, "total")
		extents := rapid.SliceOfN(rapid.Int32Range(1, total), 1, 12).Draw(t, "extents")
		for n, f := range feasibles(int64(total), extents) {
			length, value := int32(0), int64(0)
			for range 40 {
				i := rapid.IntRange(0, len(extents)-1).Draw(t, "next")
				if length+extents[i] > total {
					break
				}
				length, value = length+extents[i], value+f.value[i]
			}
			require.LessOrEqual(t, value, f.top, "function %d", n)
			for i := range extents {
				require.GreaterOrEqual(t, f.value[i], int64(0))
			}
		}
	})
}

// TestFeasibleFunctionsByHand works out the functions of a length of 12: u(2) of
// 5 is 5 x 3 / 12 rounded down, 1 of 2 parts; U(3) takes 10 for the whole and
// drops 2; phi(4) of 7, more than half, is 3 less the one 4 that 5 leave, doubled.
func TestFeasibleFunctionsByHand(t *testing.T) {
	assert.EqualValues(t, 12, inParts(5, 12, 2), "of 24")
	assert.EqualValues(t, 8, inParts(4, 12, 2), "4 x 3 is a whole length: it counts as it is")
	assert.Equal(t, []int64{12, 0, 9, 3}, []int64{without(10, 12, 3), without(2, 12, 3), without(9, 12, 3), without(3, 12, 3)})
	assert.Equal(t, []int64{4, 3, 2, 0}, []int64{stepped(7, 12, 4, 3), stepped(6, 12, 4, 3), stepped(5, 12, 4, 3), stepped(3, 12, 4, 3)})
}

// Pieces of 7 x 6 1/2 in on sheets of 12 x 12 in take one each, though three have
// less area than one sheet: 136 1/2 of 144 square inches.
func TestLargePiecesTakeASheetEach(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Sheets: []sheet.Stock{{Width: in(12), Height: in(12)}}, Ruler: measure.Marks(measure.Inch)[0],
		Items: []sheet.Item{{Name: "lid", Width: in(7), Height: in(13).Over(2), Count: 3}}}
	pl := newProblem(o).newPlanner(endless())
	pl.boundByArea()
	assert.EqualValues(t, 1, pl.lower)
	pl.boundByExtents()
	assert.EqualValues(t, 3, pl.lower)
}

// Where the sheets that are left hold none of the blanks that are left, there is no bound
// by extents, and no plan.
func TestBlanksThatNoSheetHolds(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Sheets: []sheet.Stock{{Width: in(12), Height: in(12), Available: 1}, {Width: in(4), Height: in(4)}}, Ruler: measure.Marks(measure.Inch)[0],
		Items: []sheet.Item{{Name: "lid", Width: in(7), Height: in(7), Count: 3}, {Name: "tag", Width: in(2), Height: in(2), Count: 1}}}
	p := newProblem(o)
	rest := p.leaving([]int32{2, 0}, map[int]int{0: 1}).newPlanner(endless())
	require.Len(t, rest.boards, 1)
	rest.left = 1_000_000
	rest.runRest()
	assert.Nil(t, rest.best)
	_, err := Plan(context.Background(), o)
	assert.ErrorContains(t, err, "in stock")
}

// TestOrdersOfFewSizes plans orders such as stalls make: several of some sizes,
// large and small ones, some that keep the grain. All are proven, whatever their
// best plan wastes.
func TestOrdersOfFewSizes(t *testing.T) {
	if testing.Short() {
		t.Skip("proofs that take their time")
	}
	t.Parallel()
	r := rand.New(rand.NewPCG(12, 7))
	for n := range 40 {
		o := sheet.Order{Sheets: []sheet.Stock{{Width: measure.Inches(12), Height: measure.Inches(12), Grain: sheet.AlongHeight}}, Ruler: measure.Marks(measure.Inch)[3]}
		for i := range 3 + r.IntN(12) {
			side := func() measure.Length { return measure.Sixtyfourths(8 * (12 + r.Int64N(56))) } // 1 1/2 to 8 3/8 in
			o.Items = append(o.Items, sheet.Item{Name: fmt.Sprint("blank ", i), Width: side(), Height: side(), Count: 1 + r.IntN(3), Grain: sheet.Side(r.IntN(3))})
		}
		a := proven(t, o, muchWork)
		assert.True(t, a.Proven, "order %d: %d sheets, at least %d", n, a.Sheets, a.LowerBound)
	}
}

// Sheets at 1.00 and 1.80 come to no sum between 1.00 and 1.80, nor between 2.80
// and 3.00: the blanks of one and a half sheets' area cost 1.80 at least.
func TestBoundsArePayable(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Minimize: sheet.LeastCost, Ruler: measure.Marks(measure.Inch)[0],
		Sheets: []sheet.Stock{{Width: in(12), Height: in(12), Price: 100}, {Width: in(12), Height: in(24), Price: 180}},
		Items:  []sheet.Item{{Name: "card", Width: in(4), Height: in(5), Count: 11}}}
	p := newProblem(o)
	pl := p.newPlanner(endless())
	for bound, want := range map[int64]int64{1: 100, 100: 100, 101: 180, 181: 200, 201: 280, 281: 300} {
		assert.Equal(t, want, pl.payable(bound))
	}
	pl.boundByArea()
	assert.EqualValues(t, 180, pl.lower)
}
