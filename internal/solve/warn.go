package solve

import (
	"context"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/sheet"
)

// warn gathers what the maker should know although the answer holds. The error
// is the context's.
func (s *Solution) warn(ctx context.Context) ([]enclosure.Warning, error) {
	r := s.Request
	warnings := append(append(s.Warnings, r.Notes...), s.plan.Warnings...)
	warnings, err := s.warnUnsure(ctx, warnings)
	for i := range s.Pattern.Pieces {
		warnings = r.warnSheet(warnings, &s.Pattern.Pieces[i])
	}
	return warnings, err
}

// warnSheet warns of a blank that does not come out of the sheet, or only with
// its main folds across the grain, where they may crack (W. B. Wheelwright,
// From Paper Mill to Pressroom, 1920).
func (r *Request) warnSheet(warnings []enclosure.Warning, p *pattern.Piece) []enclosure.Warning {
	if r.SheetWidth.IsZero() {
		return warnings
	}
	upright := within(p.Width, p.Height, r.SheetWidth, r.SheetHeight)
	turned := within(p.Height, p.Width, r.SheetWidth, r.SheetHeight)
	if !upright && !turned {
		return append(warnings, enclosure.Warning{Code: tooLarge,
			Detail: "The " + p.Name + " does not come out of the sheet in one piece."})
	}
	if r.KeepsGrain(p) == GrainAcross {
		warnings = append(warnings, enclosure.Warning{Code: "across-grain",
			Detail: "The " + p.Name + " only comes out of the sheet with its main folds across the grain, where stock may crack: score it well and try one first."})
	}
	return warnings
}

// KeepsGrain says how the main folds of a blank lie to the grain of the sheet.
func (r *Request) KeepsGrain(p *pattern.Piece) GrainKept {
	along := FoldSide(p)
	if r.SheetWidth.IsZero() || r.Grain == sheet.AnySide || along == sheet.AnySide {
		return GrainUnasked
	}
	upright := along == r.Grain
	if upright && within(p.Width, p.Height, r.SheetWidth, r.SheetHeight) || !upright && within(p.Height, p.Width, r.SheetWidth, r.SheetHeight) {
		return GrainAlong
	}
	return GrainAcross
}

// within reports whether a blank lies inside a sheet.
func within(width, height, sheetWidth, sheetHeight measure.Length) bool {
	return !sheetWidth.Less(width) && !sheetHeight.Less(height)
}
