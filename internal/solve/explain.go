package solve

import (
	"context"
	"errors"
	"slices"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// explain says why a request has no solution at any of its steps: what misses
// at the finest of them, by how much, and what would help.
func (r *Request) explain(ctx context.Context, plan *enclosure.Plan, search *rounding.Search) error {
	if err := plan.Faulty(); err != nil {
		return err
	}
	steps := r.steps()
	step := steps[len(steps)-1]
	miss, err := search.NearestMiss(ctx, step)
	if err != nil {
		return err
	}
	faults := offMarks(plan, miss.OffMarks, step)
	help, err := r.remedies(ctx, miss, plan)
	if err != nil {
		return err
	}
	for _, off := range miss.Windows {
		if f := missedWindow(plan, off, step, help); !slices.Contains(faults, f) { // two slits may miss alike
			faults = append(faults, f)
		}
	}
	if len(faults) == 0 {
		faults = append(faults, fault.Fault{Code: fault.NoFit, Hint: help, Detail: "no readings at " + step.String() + " " + closureNames(plan)})
	}
	return faults.Err()
}

// offMarks reports the sizes fixed by the request that lie on no mark.
func offMarks(plan *enclosure.Plan, off []int, step measure.Step) fault.Faults {
	var faults fault.Faults
	seen := map[string]bool{}
	for _, i := range off {
		field := plan.Sources[i]
		if seen[field] {
			continue
		}
		seen[field] = true
		size := plan.Problem.Readings[i].Ideal
		faults = append(faults, fault.Fault{
			Code: fault.NoFit, Field: field, Value: size.Plain(step.Unit()),
			Detail:   "this size lies on no mark of " + step.String(),
			Expected: "a multiple of " + step.String(),
			Hint:     "the nearest is " + step.Format(step.Nearest(size)),
		})
	}
	return faults
}

// missedWindow reports a window that no readings keep.
func missedWindow(plan *enclosure.Plan, off rounding.Off, step measure.Step, help string) fault.Fault {
	w, unit := plan.Problem.Windows[off.Window], step.Unit()
	direction := " too much"
	if off.By.Sign() < 0 {
		direction = " too little"
	}
	what, by := w.Name, off.By.Abs()
	for _, f := range plan.Fits {
		if f.Window == off.Window {
			what = "clearance along the " + w.Name
			by, w.Min, w.Max = f.Clearance(by), f.Clearance(w.Min), f.Clearance(w.Max)
		}
	}
	return fault.Fault{
		Code: fault.NoFit, Field: "fit",
		Detail: "no readings at " + step.String() + " keep the " + what + " between " + w.Min.Plain(unit) + " and " +
			w.Max.Plain(unit) + ": the nearest has " + by.Plain(unit) + direction,
		Expected: w.Min.Plain(unit) + " to " + w.Max.Plain(unit),
		Hint:     help,
	}
}

// closureNames says what has to add up, or that every size has to lie within its
// limits where nothing has to.
func closureNames(plan *enclosure.Plan) string {
	if len(plan.Problem.Closures) == 0 {
		return "lie within the limits of every size"
	}
	names := make([]string, len(plan.Problem.Closures))
	for i, c := range plan.Problem.Closures {
		names[i] = c.Name
	}
	slices.Sort(names)
	return "make the parts add up: " + strings.Join(slices.Compact(names), ", ")
}

// explainProof says what would help where readings were found that do not close.
func (r *Request) explainProof(ctx context.Context, s *Solution, wrong error) error {
	if err := s.plan.Faulty(); err != nil {
		return err
	}
	var f fault.Fault
	if !errors.As(wrong, &f) || f.Code != fault.NoFit {
		return wrong
	}
	help, err := r.remedies(ctx, rounding.Miss{}, s.plan)
	if err != nil {
		return err
	}
	f.Hint = help
	return fault.Join(f)
}
