package drawtest

import (
	"context"

	"creasefit/internal/draw"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/search"
)

// Plan plans a small mixed order of the market stall.
func Plan() (*sheet.Order, *sheet.Answer) {
	order := &sheet.Order{
		Sheets: []sheet.Stock{{Width: measure.Inches(12), Height: measure.Inches(12)}},
		Margin: measure.Sixtyfourths(16), Ruler: measure.Marks(measure.Inch)[4], Effort: sheet.MostEffort, // never used up: the plan is the same on any machine
		Items: []sheet.Item{
			{Name: "belly band for sachets", Width: measure.Sixtyfourths(8*64 + 24), Height: measure.Sixtyfourths(96), Count: 9},
			{Name: "tasting card", Width: measure.Sixtyfourths(4*64 + 16), Height: measure.Sixtyfourths(5*64 + 32), Count: 3},
			{Name: "honey jar seal", Width: measure.Inches(1), Height: measure.Sixtyfourths(4 * 64), Count: 12},
		},
	}
	answer, err := search.Plan(context.Background(), *order)
	if err != nil {
		panic(err) // the order is sound
	}
	return order, &answer
}

// DrawPlan draws that plan.
func DrawPlan() *draw.Drawing {
	order, answer := Plan()
	return draw.NewPlan(order, answer, draw.Options{Title: "Cut plan for the market stall", Step: order.Ruler})
}
