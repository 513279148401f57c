package draw_test

import (
	"context"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/search"
)

// quiet gathers where the numbers beside the cuts stand.
func quiet(f *draw.Figure, text string) []draw.Box {
	var boxes []draw.Box
	for _, l := range f.Labels {
		if l.Quiet && len(l.Lines) == 1 && l.Lines[0] == text {
			boxes = append(boxes, l.Box)
		}
	}
	return boxes
}

// Every step has its number on the sheet, beside an edge of what it cuts: of
// the first margin, right of the cut at 11 3/4 in.
func TestPlanNumbersTheCuts(t *testing.T) {
	order, answer := drawtest.Plan()
	d := draw.NewPlan(order, answer, draw.Options{Step: order.Ruler})
	for i, plan := range answer.Plans {
		for n := range plan.Steps {
			assert.NotEmpty(t, quiet(&d.Figures[i], strconv.Itoa(n+1)), "plan %d, step %d", i+1, n+1)
		}
	}
	first := quiet(&d.Figures[0], "1")
	require.Len(t, first, 1)
	cut := measure.Sixtyfourths(12*64 - 16).Millimetres()
	assert.Equal(t, sheet.Width, answer.Plans[0].Steps[0].Cut)
	assert.InDelta(t, cut, first[0].Low.X, order.Margin.Millimetres())
	second := quiet(&d.Figures[0], "2")
	require.Len(t, second, 1)
	assert.InDelta(t, order.Margin.Millimetres(), second[0].High.X, order.Margin.Millimetres(), "the turned sheet is trimmed at its left")
}

// Cuts that take something away leave the same blanks as the plan.
func TestPlanOfWideCuts(t *testing.T) {
	order, _ := drawtest.Plan()
	order.Kerf = measure.Sixtyfourths(8)
	answer, err := search.Plan(context.Background(), *order)
	require.NoError(t, err)
	d := draw.NewPlan(order, &answer, draw.Options{Step: order.Ruler})
	checkLayout(t, "wide cuts", d)
	assert.NotEmpty(t, quiet(&d.Figures[0], "1"))
}

func TestPlanShowsTheGrain(t *testing.T) {
	order, answer := drawtest.Plan()
	for grain, shown := range map[sheet.Side]bool{sheet.AnySide: false, sheet.AlongWidth: true, sheet.AlongHeight: true} {
		order.Sheets[0].Grain = grain
		d := draw.NewPlan(order, answer, draw.Options{Step: order.Ruler})
		checkLayout(t, "grain", d)
		boxes := quiet(&d.Figures[0], "grain")
		require.Equal(t, shown, len(boxes) == 1)
		if shown {
			assert.Equal(t, grain == sheet.AlongHeight, boxes[0].Height() > boxes[0].Width(), "the word runs with the grain")
		}
	}
}
