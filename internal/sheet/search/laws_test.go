package search

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// crossed exchanges width and height.
func crossed(s sheet.Side) sheet.Side {
	return map[sheet.Side]sheet.Side{sheet.AlongWidth: sheet.AlongHeight, sheet.AlongHeight: sheet.AlongWidth}[s]
}

// sameOrders are ways to write an order down anew that change nothing of what it needs.
var sameOrders = map[string]func(o *sheet.Order){
	"sheet and blanks turned by a quarter": func(o *sheet.Order) {
		s := &o.Sheets[0]
		s.Width, s.Height, s.Grain = s.Height, s.Width, crossed(s.Grain)
		for i := range o.Items {
			it := &o.Items[i]
			it.Width, it.Height, it.Grain = it.Height, it.Width, crossed(it.Grain)
		}
	},
	"blanks turned on the paper, with their grain": func(o *sheet.Order) {
		for i := range o.Items {
			it := &o.Items[i]
			it.Width, it.Height, it.Grain = it.Height, it.Width, crossed(it.Grain)
		}
	},
	"items in another order": func(o *sheet.Order) { slices.Reverse(o.Items) },
	"every length three times as long": func(o *sheet.Order) {
		o.Kerf, o.Trimmer = o.Kerf.Times(3), o.Trimmer.Times(3)
		o.Sheets[0].Width, o.Sheets[0].Height = o.Sheets[0].Width.Times(3), o.Sheets[0].Height.Times(3)
		for i := range o.Items {
			o.Items[i].Width, o.Items[i].Height = o.Items[i].Width.Times(3), o.Items[i].Height.Times(3)
		}
	},
	"an item as two of the same blank": func(o *sheet.Order) {
		if it := o.Items[0]; it.Count > 1 {
			o.Items[0].Count--
			it.Count = 1
			o.Items = append(o.Items, it)
		}
	},
	"the same sheet twice in the list": func(o *sheet.Order) { o.Sheets = append(o.Sheets, o.Sheets[0]) },
	"the sheet at any price":           func(o *sheet.Order) { o.Sheets[0].Price = 7; o.Minimize = sheet.LeastCost },
	"another paper by name": func(o *sheet.Order) {
		o.Sheets[0].Paper = "kraft"
		for i := range o.Items {
			o.Items[i].Paper = "kraft"
		}
	},
}

// However an order is written down, it takes as many sheets.
func TestSameOrdersTakeAsManySheets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		if o.Check() != nil {
			return
		}
		want, err := counted(o, littleWork)
		require.NoError(t, err)
		require.True(t, want.Proven)
		for name, write := range sameOrders {
			same := o
			same.Items, same.Sheets = slices.Clone(o.Items), slices.Clone(o.Sheets)
			write(&same)
			got, err := counted(same, littleWork)
			require.NoError(t, err, name)
			require.NoError(t, verify.Plan(same, got), name)
			assert.Equal(t, []any{want.Sheets, true}, []any{got.Sheets, got.Proven}, name)
		}
	})
}

// A sheet inside its margins is a smaller sheet, and a cut that takes away a kerf is one
// that takes nothing from a sheet and from blanks that are one kerf longer: all but the
// last blank of a row need one, and so does the row (common practice).
func TestMarginsAndKerfsAreLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		o.Trimmer, o.Kerf = measure.Length{}, measure.Millimetres(int64(rapid.IntRange(0, 2).Draw(t, "wide")))
		if o.Check() != nil {
			return
		}
		margin := measure.Millimetres(int64(rapid.IntRange(1, 3).Draw(t, "margin")))
		inside, plain := o, o
		inside.Margin, inside.Sheets = margin, slices.Clone(o.Sheets)
		plain.Kerf, plain.Sheets, plain.Items = measure.Length{}, slices.Clone(o.Sheets), slices.Clone(o.Items)
		for _, side := range []*measure.Length{&inside.Sheets[0].Width, &inside.Sheets[0].Height} {
			*side = side.Add(margin).Add(margin)
		}
		for _, side := range []*measure.Length{&plain.Sheets[0].Width, &plain.Sheets[0].Height} {
			*side = side.Add(o.Kerf)
		}
		for i := range plain.Items {
			plain.Items[i].Width, plain.Items[i].Height = plain.Items[i].Width.Add(o.Kerf), plain.Items[i].Height.Add(o.Kerf)
		}
		want, err := counted(o, littleWork)
		require.NoError(t, err)
		for _, same := range []sheet.Order{inside, plain} {
			got, err := counted(same, littleWork)
			require.NoError(t, err)
			require.NoError(t, verify.Plan(same, got))
			assert.Equal(t, want.Sheets, got.Sheets)
		}
	})
}

// alone are the ways and bounds, each of which may run by itself.
var alone = map[string]func(pl *planner) way{
	"raster":    (*planner).boundingByRaster,
	"extents":   func(pl *planner) way { return func(int) bool { pl.boundByExtents(); return false } },
	"one sheet": func(pl *planner) way { return pl.fitOneSheet },
	"rework":    (*planner).reworking,
	"enumerate": (*planner).enumerating,
	"generate":  (*planner).generating,
	"fill":      func(pl *planner) way { return pl.filling },
}

// Whatever a single way finds can be cut, and whatever it proves holds: no bound is above
// the fewest sheets that trying everything finds, and no plan is below them.
func TestEveryWayAloneIsSound(t *testing.T) {
	met := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		if o.Check() != nil {
			return
		}
		want := int64(s.fewest(int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres())))
		for name, makes := range alone {
			e := endless()
			p := newProblem(o)
			pl := p.newPlanner(e)
			pl.rest = (*planner).runRest
			pl.boundByArea()
			next := makes(pl)
			for turn := 0; turn < 3 && !pl.done(); turn++ {
				e.left = 2_000_000
				if !next(turn) {
					break
				}
			}
			require.LessOrEqual(t, pl.lower, want, name)
			if pl.best == nil {
				continue
			}
			require.NoError(t, verify.Plan(o, p.finish(pl.best, true)), name)
			require.GreaterOrEqual(t, pl.cost, want, name)
			if pl.cost == want {
				met[name]++
			}
		}
	})
	for _, name := range []string{"rework", "enumerate", "generate", "fill", "one sheet"} {
		assert.Positive(t, met[name], "%s finds some of the plans", name)
	}
}

// The same order planned twice with the same work is planned alike, whatever the clock.
func TestPlansAreTheSameAgain(t *testing.T) {
	for seed := range uint64(6) {
		o := craftOrder(t, seed)
		a, spent := plannedWith(t, o, 5_000_000)
		b, again := plannedWith(t, o, 5_000_000)
		assert.Equal(t, a, b)
		assert.Equal(t, spent, again)
	}
}

// Whoever follows a plan is told of it now and then, each time of a cheaper plan, a
// greater bound or one that is easier on the hands, and never of a worse one.
func TestFollowersAreToldOfBetterPlans(t *testing.T) {
	o := craftOrder(t, 3)
	e, now := endless(), time.Time{}
	e.left = 30_000_000
	e.clock = func() time.Time { now = now.Add(followEvery); return now }
	var told []sheet.Answer
	last, err := newProblem(o).planWith(e, func(a sheet.Answer) { told = append(told, a) })
	require.NoError(t, err)
	require.NotEmpty(t, told)
	for i, a := range append(told, last) {
		require.NoError(t, verify.Plan(o, a))
		if i == 0 {
			continue
		}
		before := told[i-1]
		assert.LessOrEqual(t, a.Sheets, before.Sheets)
		assert.GreaterOrEqual(t, a.LowerBound, before.LowerBound)
		if a.Sheets == before.Sheets {
			assert.LessOrEqual(t, a.Work.Settings, before.Work.Settings)
		}
	}
}
