package wire

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// planned plans an order of a query.
func planned(t *testing.T, query string) (*sheet.Answer, *Yield) {
	t.Helper()
	a := ask.NewYield("json").Take()
	a.AddQuery(query)
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	for _, w := range a.Q.Wanted {
		a.Q.Order.Items = append(a.Q.Order.Items, w.Item)
	}
	a.Q.Order.Effort = sheet.MostEffort // never used up: the plan is the same on any machine
	p, err := solve.PlanCuts(context.Background(), a.Q.Order)
	require.NoError(t, err)
	asked := Ask(&a.Reading, "/v1/yield")
	return &p, OfYield(&a.Q.Order, &p, measure.Inch, nil, asked)
}

const (
	two  = `unit=in&sheet=12x12in&items={"name":"back","blank":"5 x 3 in","count":9}&items={"name":"tab","blank":"2 1/2 x 1 1/2 in","count":14,"spares":2}`
	kerf = two + `&items={"name":"strip","blank":"1 x 4 in","count":3,"grain":"width"}` + "&margin=1/4in&kerf=1/16in&sheet_grain=height"
)

// everyPlan looks at plans with and without margins, kerf, grain and counts.
func everyPlan(t *testing.T, look func(t *testing.T, p *sheet.Answer, y *Yield)) {
	t.Helper()
	for name, query := range map[string]string{"plain": two, "margins and kerf": kerf, "one sheet": "unit=in&sheet=letter&blank=2x3-1/2in", "in stages": two + "&stages=2"} {
		t.Run(name, func(t *testing.T) {
			p, y := planned(t, query)
			look(t, p, y)
		})
	}
}

// TestPlacedBlanksLieApartOnTheSheet: each within the usable part, none over another, and
// as many of each as are made.
func TestPlacedBlanksLieApartOnTheSheet(t *testing.T) {
	everyPlan(t, func(t *testing.T, _ *sheet.Answer, y *Yield) {
		made := make([]int, len(y.Items))
		for _, plan := range y.Plans {
			for i, b := range plan.Placed {
				made[b.Number] += plan.Times
				assert.Equal(t, y.Items[b.Number].Name, b.Item)
				want := [2]float64{y.Items[b.Number].Width.MM, y.Items[b.Number].Height.MM}
				if b.Turned {
					want[0], want[1] = want[1], want[0]
				}
				assert.Equal(t, want, [2]float64{b.Width.MM, b.Height.MM})
				assert.True(t, within(&b.SheetPart, plan.Usable.Width.MM, plan.Usable.Height.MM), "%s at %v, %v", b.Item, b.X, b.Y)
				for _, o := range plan.Placed[:i] {
					assert.False(t, overlap(&b.SheetPart, &o.SheetPart), "%s lies on %s", b.Item, o.Item)
				}
			}
		}
		for i, item := range y.Items {
			assert.Equal(t, made[i], item.Made, item.Name)
			if item.Wanted > 0 {
				assert.Equal(t, item.Made, item.Wanted+item.Spares, item.Name)
				assert.LessOrEqual(t, item.Ready, y.Sheets)
			}
		}
	})
}

// within reports whether a part lies on so large a sheet, from its lower left corner.
func within(p *SheetPart, width, height float64) bool {
	const nothing = 1e-6
	return p.X.MM >= -nothing && p.Y.MM >= -nothing && p.X.MM+p.Width.MM <= width+nothing && p.Y.MM+p.Height.MM <= height+nothing
}

// overlap reports whether two parts have anything in common.
func overlap(a, b *SheetPart) bool {
	along := func(x, width, y, height float64) bool { return math.Min(x+width, y+height)-math.Max(x, y) > 1e-6 }
	return along(a.X.MM, a.Width.MM, b.X.MM, b.Width.MM) && along(a.Y.MM, a.Height.MM, b.Y.MM, b.Height.MM)
}

// TestTreesSettingsAndPartsAreOnePlan: the leaves of the tree are the blanks that lie on the
// sheet, and the settings make parts each of which is cut on or told of at the end.
func TestTreesSettingsAndPartsAreOnePlan(t *testing.T) {
	everyPlan(t, func(t *testing.T, _ *sheet.Answer, y *Yield) {
		for _, plan := range y.Plans {
			leaves := map[int]int{}
			leavesOf(t, &plan.Tree, leaves)
			placed := map[int]int{}
			for _, b := range plan.Placed {
				placed[b.Number]++
			}
			assert.Equal(t, placed, leaves)
			require.Len(t, plan.Settings, len(plan.Steps))
			there := map[int]bool{0: true}
			for _, s := range plan.Settings {
				require.Len(t, s.Low, s.Repeat*len(s.Parts), "each cut makes a part")
				require.Len(t, s.Rest, len(s.Parts))
				for _, part := range s.Parts {
					assert.True(t, there[part], "part %d was made before it is cut", part)
					delete(there, part)
				}
				for _, part := range append(append([]int{}, s.Low...), s.Rest...) {
					there[part] = true
				}
				assert.Contains(t, map[string][]string{"width": {"left", "right"}, "height": {"bottom", "top"}}[s.Across], s.From)
				assert.InDelta(t, s.At.MM-s.At.ExactMM, s.At.OffMM, 1e-9)
			}
			told := map[int]bool{}
			items := map[int]int{}
			for _, part := range plan.Parts {
				told[part.Part] = true
				if part.Number != nil {
					items[*part.Number]++
				}
				assert.Equal(t, part.Offcut, part.Number == nil)
			}
			for part := range there {
				assert.True(t, told[part], "part %d is left, and nothing says what it is", part)
			}
			assert.Equal(t, placed, items, "what is left at the end are the blanks and offcuts")
		}
	})
}

// leavesOf counts the items of a tree; a cut has a low and a high part.
func leavesOf(t *testing.T, n *CutNode, leaves map[int]int) {
	t.Helper()
	if n.Cut == "" {
		assert.Nil(t, n.At)
		if n.Number != nil {
			leaves[*n.Number]++
		}
		return
	}
	require.NotNil(t, n.At)
	assert.Zero(t, n.Leaf, "a cut is no leaf")
	leavesOf(t, n.Low, leaves)
	leavesOf(t, n.High, leaves)
}

// TestFiguresOfAPlanAddUp: sheets are those of the plans, what is used is the blanks' area by
// the sheets', and the cut list has every step of every plan once.
func TestFiguresOfAPlanAddUp(t *testing.T) {
	everyPlan(t, func(t *testing.T, p *sheet.Answer, y *Yield) {
		sheets, paper, blanks := 0, 0.0, 0.0
		steps := map[StepRef]bool{}
		for i, plan := range y.Plans {
			sheets += plan.Times
			paper += float64(plan.Times) * plan.Sheet.Width.MM * plan.Sheet.Height.MM
			for _, b := range plan.Placed {
				blanks += float64(plan.Times) * b.Width.MM * b.Height.MM
			}
			for n := range plan.Steps {
				steps[StepRef{i + 1, n + 1}] = false
			}
		}
		assert.Equal(t, y.Sheets, sheets)
		assert.InDelta(t, blanks/paper, y.Used, 1e-6)
		assert.InDelta(t, 100*y.Used, y.UsedPercent, 0.0501)
		assert.GreaterOrEqual(t, float64(y.Sheets), y.LowerBound)
		assert.Equal(t, y.Proven, p.Proven)
		for _, set := range y.CutList {
			assert.Positive(t, set.Cuts)
			for _, at := range set.Steps {
				done, known := steps[at]
				assert.True(t, known && !done, "%v", at)
				steps[at] = true
				setting := y.Plans[at.Plan-1].Settings[at.Step-1]
				assert.Equal(t, set.At.MM, setting.At.MM)
			}
		}
		for at, done := range steps {
			assert.True(t, done, "%v is at some setting", at)
		}
		assert.Equal(t, YieldWork{p.Work.Settings, p.Work.Cuts, p.Work.Turns, p.Work.Stages}, y.Work)
		assert.Equal(t, y.Links.Self+"&format=svg", y.Links.Picture)
		assert.Contains(t, y.Summary, number(100*y.Used, 0)+" percent of the paper is used.")
	})
}

// TestUsableOffcutsAreLargeEnough, the largest first, and no more of them than there are
// offcuts.
func TestUsableOffcutsAreLargeEnough(t *testing.T) {
	_, y := planned(t, two+"&offcut_least=2in")
	offcuts, usable := 0, 0
	for _, plan := range y.Plans {
		for _, o := range plan.Offcuts {
			if min(o.Width.MM, o.Height.MM) >= 50.8 {
				offcuts += plan.Times
			}
		}
	}
	before := math.Inf(1)
	for _, u := range y.UsableOffcuts {
		usable += u.Count
		assert.GreaterOrEqual(t, min(u.Width.MM, u.Height.MM), 50.8)
		area := u.Width.MM * u.Height.MM
		assert.LessOrEqual(t, area, before)
		before = area
	}
	assert.Equal(t, offcuts, usable)
}

// TestAnOrderByCost tells prices as they were given.
func TestAnOrderByCost(t *testing.T) {
	_, y := planned(t, `unit=in&minimize=cost&sheet={"size":"12 x 12 in","price":"0.35"}&sheet={"size":"8 x 12 in","price":"0.2"}&items={"name":"back","blank":"5 x 3 in","count":9}`)
	cost := 0.0
	for _, plan := range y.Plans {
		cost += float64(plan.Times) * []float64{0.35, 0.2}[plan.Sheet.Number]
	}
	assert.InDelta(t, cost, y.Cost, 1e-9)
	assert.LessOrEqual(t, y.LowerBound, y.Cost)
	assert.Contains(t, y.Summary, " for "+number(y.Cost, 4)+".")
}
