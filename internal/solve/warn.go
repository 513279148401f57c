package solve

import (
	"context"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// warn gathers what the maker should know although the answer holds. The error
// is the context's.
func (s *Solution) warn(ctx context.Context) ([]enclosure.Warning, error) {
	r := s.Request
	warnings := make([]enclosure.Warning, 0, len(r.Notes)+len(s.plan.Warnings)+2)
	warnings = append(append(warnings, r.Notes...), s.plan.Warnings...)
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
	along := mainFolds(p)
	if r.SheetWidth.IsZero() || r.Grain == GrainUnknown || along == pattern.Thickness {
		return GrainUnasked
	}
	upright := (along == pattern.Height) == (r.Grain == GrainHeight)
	if upright && within(p.Width, p.Height, r.SheetWidth, r.SheetHeight) || !upright && within(p.Height, p.Width, r.SheetWidth, r.SheetHeight) {
		return GrainAlong
	}
	return GrainAcross
}

// within reports whether a blank lies inside a sheet.
func within(width, height, sheetWidth, sheetHeight measure.Length) bool {
	return !sheetWidth.Less(width) && !sheetHeight.Less(height)
}

// mainFolds returns the side of the blank that most of the crease length runs
// along, or Thickness if it runs along neither.
func mainFolds(p *pattern.Piece) pattern.Axis {
	var up, across measure.Length
	for _, c := range p.Creases {
		up = up.Add(c.B.Y.Sub(c.A.Y).Abs())
		across = across.Add(c.B.X.Sub(c.A.X).Abs())
	}
	switch {
	case across.Less(up):
		return pattern.Height
	case up.Less(across):
		return pattern.Width
	default:
		return pattern.Thickness
	}
}
