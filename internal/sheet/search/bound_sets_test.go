package search

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What the sets of the larger blanks prove, the others counted by their area, never
// exceeds what a slow planner needs; with all blanks it is one sheet less at most.
func TestSetsOfLargeBlanksBound(t *testing.T) {
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		if o.Check() != nil {
			return
		}
		want := int64(s.fewest(int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres())))
		pl := newProblem(o).newPlanner(endless())
		pl.boundByArea()
		if rapid.Bool().Draw(t, "extents") {
			pl.boundByExtents()
		}
		n := pl.newEnumeration()
		for k := range pl.kinds {
			require.True(t, n.sets[0].enumerate(n.effort, k))
			require.True(t, n.price())
			assert.Equal(t, k+1, n.priced)
			require.LessOrEqual(t, n.lower, want)
			if n.lower == want && want > 1 && k+1 < len(pl.kinds) {
				proven++
			}
		}
		assert.GreaterOrEqual(t, n.lower, want-1)
	})
	assert.Positive(t, proven, "orders of which large blanks prove enough")
}

// With all blanks listed the bound is that of the linear program over every set there is,
// all rows in it from the beginning.
func TestAllSetsBoundAsTheWholeProgram(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		if o.Check() != nil {
			return
		}
		pl := newProblem(o).newPlanner(endless())
		n := pl.newEnumeration()
		require.True(t, n.list())
		require.True(t, n.price())
		whole := newDuals(floats(pl.needs()))
		for _, code := range n.sets[0].codes[1:] {
			whole.add(floats(n.sets[0].counts(code)), 1)
		}
		require.True(t, whole.optimize(endless(), 10_000))
		worth := 0.0
		for k, v := range whole.prices() {
			worth += v * float64(pl.kinds[k].need)
		}
		assert.EqualValues(t, math.Ceil(worth-1e-6), n.lower, "the program is worth %g", worth)
	})
}

// A search of all sets finds the fewest sheets, or proves that one less does not do.
func TestAllSetsAreSearched(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		if o.Check() != nil {
			return
		}
		pl := newProblem(o).newPlanner(endless())
		pl.boundByArea()
		next := pl.enumerating()
		for turn := 0; turn < 9 && !pl.done(); turn++ {
			pl.left = 5_000_000
			require.True(t, next(turn))
		}
		want := int64(s.fewest(int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres())))
		assert.Equal(t, []int64{want, want}, []int64{pl.lower, pl.cost})
		assert.NotEmpty(t, pl.why)
	})
}

// Too many sets of small blanks to list do not hinder what the large ones prove: this
// order needs 15.1 sheets' worth of the larger half of its blanks.
func TestLargeBlanksOfAPublishedBin(t *testing.T) {
	a, _ := plannedWith(t, binOrder(t, "cl_03_060_01", true), 60_000_000)
	assert.EqualValues(t, 16, a.LowerBound)
	assert.Equal(t, 16, a.Sheets)
}

// What goes beside long blanks is bounded by the sides of a sheet while the sets of the
// larger ones are: by area alone these orders need one sheet less. The table of known
// optima has 26, too, and for the other a number below the blanks' area.
func TestLongBlanksOfPublishedBins(t *testing.T) {
	for _, c := range []struct {
		name   string
		sheets int
		steps  int64
	}{{"cl_05_100_04", 26, 150_000_000}, {"cl_07_040_04", 12, 300_000_000}} {
		a := proven(t, binOrder(t, c.name, true), c.steps)
		assert.Equal(t, []any{c.sheets, int64(c.sheets), true}, []any{a.Sheets, a.LowerBound, a.Proven}, c.name)
	}
}
