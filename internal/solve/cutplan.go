package solve

import (
	"context"

	"creasefit/internal/sheet"
	"creasefit/internal/sheet/search"
	"creasefit/internal/sheet/verify"
)

// PlanCuts plans how blanks come out of sheets and verifies the plan before it
// leaves: one that fails gives sheet.Unsound. A faulty order gives fault.Faults, a
// context that ends first its error.
func PlanCuts(ctx context.Context, o sheet.Order) (sheet.Answer, error) {
	a, err := search.Plan(ctx, o)
	if err != nil {
		return sheet.Answer{}, err
	}
	if wrong := verify.Plan(o, a); wrong != nil {
		return sheet.Answer{}, &sheet.Unsound{Order: o, Wrong: wrong}
	}
	return a, nil
}
