package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
	"creasefit/internal/sheet/verify"
)

// grower makes cut trees at random, and items of what they leave.
type grower struct {
	t     *rapid.T
	order sheet.Order
	made  map[sheet.Extent]int
}

// tree cuts a rectangle so deep; a leaf is a blank or left over.
func (g *grower) tree(have sheet.Extent, deep int) *sheet.Node {
	a := sheet.Axis(rapid.IntRange(0, 1).Draw(g.t, "axis"))
	long := have.Along(a).Nanometres() / 1_000_000
	if deep > 0 && long > 2 && rapid.IntRange(0, 3).Draw(g.t, "cut") > 0 {
		at := measure.Millimetres(rapid.Int64Range(1, long).Draw(g.t, "at"))
		low, high := g.order.Divide(a, at, have)
		if high.Along(a).Sign() <= 0 {
			return &sheet.Node{Cut: a, At: at, Low: g.tree(low, deep-1), High: leftOver()}
		}
		return &sheet.Node{Cut: a, At: at, Low: g.tree(low, deep-1), High: g.tree(high, deep-1)}
	}
	if rapid.IntRange(0, 3).Draw(g.t, "left") == 0 {
		return leftOver()
	}
	return &sheet.Node{Item: g.item(have)}
}

// item is the one of a size, a new one if there is none.
func (g *grower) item(size sheet.Extent) int {
	at, known := g.made[size]
	if !known {
		at = len(g.order.Items)
		g.made[size] = at
		g.order.Items = append(g.order.Items, sheet.Item{Width: size.Width, Height: size.Height})
	}
	return at
}

// Whatever tree there is, its steps make just its blanks on the verifier's table, and
// blanks, offcuts and what the kerf takes are the whole sheet: no search has a part in it.
func TestAnyTreeIsCutAsItSays(t *testing.T) {
	ruler := sheettest.Step(t, "1 mm")
	rapid.Check(t, func(t *rapid.T) {
		mm := func(low, high int64, name string) measure.Length {
			return measure.Millimetres(rapid.Int64Range(low, high).Draw(t, name))
		}
		o := sheet.Order{Ruler: ruler, Kerf: mm(0, 2, "kerf"), Margin: mm(0, 2, "margin"), Sheets: []sheet.Stock{{Width: mm(8, 40, "w"), Height: mm(8, 40, "h")}}}
		g := &grower{t: t, order: o, made: map[sheet.Extent]int{}}
		w, h := o.Usable(0)
		var trees []*sheet.Node
		for range rapid.IntRange(1, 3).Draw(t, "sheets") {
			trees = append(trees, g.tree(sheet.Extent{Width: w, Height: h}, 5))
		}
		o = g.order
		a := sheet.Answer{Made: make([]int, len(o.Items)), Proven: true}
		for _, tree := range trees {
			s := o.Described(o.Lay(0, tree))
			s.Times = rapid.IntRange(1, 3).Draw(t, "times")
			a.Sheets += s.Times
			a.Plans = append(a.Plans, s)
			for _, p := range s.Placed {
				a.Made[p.Item] += s.Times
				a.Used += float64(s.Times) * p.Width.Millimetres() * p.Height.Millimetres()
			}
			if o.Kerf.IsZero() {
				assert.InDelta(t, w.Millimetres()*h.Millimetres(), areaOf(&s), 1e-9)
			} else {
				assert.LessOrEqual(t, areaOf(&s), w.Millimetres()*h.Millimetres())
			}
		}
		if len(o.Items) == 0 {
			return
		}
		for i, n := range a.Made {
			o.Items[i].Count = n
		}
		a.LowerBound = int64(a.Sheets)
		a.Used /= o.PlanArea(a.Plans)
		o.Sum(&a)
		require.NoError(t, verify.Plan(o, a))
	})
}

// areaOf is that of all blanks and offcuts of a sheet, in square millimetres.
func areaOf(s *sheet.Sheets) (sum float64) {
	for _, p := range s.Placed {
		sum += p.Width.Millimetres() * p.Height.Millimetres()
	}
	for _, r := range s.Offcuts {
		sum += r.Width.Millimetres() * r.Height.Millimetres()
	}
	return sum
}
