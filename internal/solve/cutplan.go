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
	return FollowCuts(ctx, o, nil)
}

// FollowCuts is PlanCuts that gives each better plan away on the way, verified as
// well: one that fails is kept back, since the last one will say so.
func FollowCuts(ctx context.Context, o sheet.Order, each func(sheet.Answer)) (sheet.Answer, error) {
	sound := func(a sheet.Answer) {
		if verify.Plan(o, a) == nil {
			each(a)
		}
	}
	if each == nil {
		sound = nil
	}
	a, err := search.Follow(ctx, o, sound)
	if err != nil {
		return sheet.Answer{}, err
	}
	if wrong := verify.Plan(o, a); wrong != nil {
		return sheet.Answer{}, &sheet.Unsound{Order: o, Wrong: wrong}
	}
	return a, nil
}
