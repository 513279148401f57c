package draw_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/search"
)

func TestPlanShowsEveryBlankWhereItLies(t *testing.T) {
	order, answer := drawtest.Plan()
	d := draw.NewPlan(order, answer, draw.Options{Title: "Market stall", Step: order.Ruler})
	checkLayout(t, "plan", d)
	require.Len(t, d.Figures, len(answer.Plans))
	for i, plan := range answer.Plans {
		shown := map[draw.Point]string{}
		waste := 0
		for _, l := range d.Figures[i].Lines {
			if l.Layer == draw.Outline {
				shown[l.Path[0].Point] = l.Name
			}
			if l.Layer == draw.Waste && l.Name != "" {
				waste++
			}
		}
		for _, p := range plan.Placed {
			at := draw.Point{X: p.X.Add(plan.Usable.X).Millimetres(), Y: p.Y.Add(plan.Usable.Y).Millimetres()}
			assert.Equal(t, order.Items[p.Item].Name, shown[at])
		}
		assert.Equal(t, len(plan.Offcuts), waste)
	}
}

func TestPlanOfManySmallBlanks(t *testing.T) {
	order := &sheet.Order{
		Sheets: []sheet.Stock{{Width: measure.Inches(12), Height: measure.Inches(12)}},
		Ruler:  measure.Marks(measure.Inch)[4],
		Items:  []sheet.Item{{Name: "tea sachet label", Width: measure.Sixtyfourths(32), Height: measure.Sixtyfourths(48)}},
	}
	answer, err := search.Plan(context.Background(), *order)
	require.NoError(t, err)
	d := draw.NewPlan(order, &answer, draw.Options{Step: order.Ruler})
	checkLayout(t, "labels", d)
	checkLayout(t, "labels", d.Lettered(8))
}
