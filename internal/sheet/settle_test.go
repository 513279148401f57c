package sheet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
)

// settler tries every order of settings, as a person with nothing else to do would.
type settler struct {
	plans []sheet.Sheets
	best  int
}

// fewest is the least number of settings for what is still to be made.
func (s *settler) fewest(parts []map[int]bool, made []map[int]bool, set int) {
	if set >= s.best {
		return
	}
	readings := map[measure.Length]bool{}
	left := 0
	for p := range s.plans {
		for n := range s.plans[p].Steps {
			if !made[p][n] {
				left++
				readings[s.plans[p].Steps[n].Reading] = s.ready(parts, p, n) || readings[s.plans[p].Steps[n].Reading]
			}
		}
	}
	if left == 0 {
		s.best = set
		return
	}
	for reading, some := range readings {
		if some {
			onTable, done := copied(parts), copied(made)
			s.cut(reading, onTable, done)
			s.fewest(onTable, done, set+1)
		}
	}
}

// ready reports whether all parts of a step are on the table.
func (s *settler) ready(parts []map[int]bool, plan, step int) bool {
	for _, id := range s.plans[plan].Steps[step].Parts {
		if !parts[plan][id] {
			return false
		}
	}
	return true
}

// cut makes all that can be made at a setting.
func (s *settler) cut(reading measure.Length, parts, made []map[int]bool) {
	for p := range s.plans {
		for n := range s.plans[p].Steps {
			st := &s.plans[p].Steps[n]
			if made[p][n] || st.Reading != reading || !s.ready(parts, p, n) {
				continue
			}
			made[p][n] = true
			for _, list := range [][]int{st.Low, st.Rest} {
				for _, id := range list {
					parts[p][id] = true
				}
			}
		}
	}
}

// copied are maps that may be changed.
func copied(maps []map[int]bool) []map[int]bool {
	list := make([]map[int]bool, len(maps))
	for i, m := range maps {
		list[i] = map[int]bool{}
		for k, v := range m {
			list[i][k] = v
		}
	}
	return list
}

// Of random plans Settle takes no fewer settings than trying every order finds, and in all
// hardly more; its cuts are those of any order.
func TestSettlingAgainstEveryOrder(t *testing.T) {
	least, taken, ruler := 0, 0, sheettest.Step(t, "10 mm")
	rapid.Check(t, func(t *rapid.T) {
		o := sheet.Order{Ruler: ruler, Sheets: []sheet.Stock{{Width: measure.Millimetres(60), Height: measure.Millimetres(50)}}}
		g := &grower{t: t, order: o, made: map[sheet.Extent]int{}}
		var trees []*sheet.Node
		for range rapid.IntRange(1, 2).Draw(t, "sheets") {
			trees = append(trees, g.tree(sheet.Extent{Width: o.Sheets[0].Width, Height: o.Sheets[0].Height}, 3))
		}
		var plans []sheet.Sheets
		cuts, parts, made := 0, []map[int]bool{}, []map[int]bool{}
		for _, tree := range trees {
			plans = append(plans, g.order.Lay(0, tree))
			parts, made = append(parts, map[int]bool{0: true}), append(made, map[int]bool{})
			for _, st := range plans[len(plans)-1].Steps {
				cuts += len(st.Parts) * st.Repeat
			}
		}
		s := &settler{plans, math.MaxInt}
		s.fewest(parts, made, 0)
		list, work := sheet.Settle(plans)
		assert.Len(t, list, work.Settings)
		assert.Equal(t, cuts, work.Cuts)
		assert.GreaterOrEqual(t, work.Settings, s.best)
		least, taken = least+s.best, taken+work.Settings
	})
	assert.LessOrEqual(t, 100*taken, 105*least, "%d settings, %d at the least", taken, least)
}
