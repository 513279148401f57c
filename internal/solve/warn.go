package solve

import (
	"strconv"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// warn gathers what the maker should know although the answer holds.
func (s *Solution) warn(plan *enclosure.Plan) []enclosure.Warning {
	r := s.Request
	warnings := make([]enclosure.Warning, 0, len(r.Notes)+len(plan.Warnings)+2)
	warnings = append(append(warnings, r.Notes...), plan.Warnings...)
	if f := unsure(s.Fits); f != nil {
		warnings = append(warnings, f.warnUnsure())
	}
	for i := range s.Fits {
		if f := &s.Fits[i]; f.Between != "" && f.WorstCase.Min.Sign() < 0 {
			warnings = append(warnings, f.warnBinds(r.Unit))
		}
	}
	for i := range s.Pattern.Pieces {
		warnings = r.warnSheet(warnings, &s.Pattern.Pieces[i])
	}
	return warnings
}

// warnUnsure warns of a fit that some tries miss.
func (f *Fit) warnUnsure() enclosure.Warning {
	what := "the contents go in"
	if f.Between != "" {
		what = f.Between + " goes together"
	}
	return enclosure.Warning{Code: "unsure-fit", Detail: "With these tools " + what + " along the " + f.Axis.String() + " in about " +
		strconv.Itoa(int(f.Chance*100)) + " of 100 tries: make a trial piece, choose a looser fit or cut more exactly."}
}

// warnBinds warns of a piece that binds in another one when all errors are at
// their worst at once.
func (f *Fit) warnBinds(u measure.Unit) enclosure.Warning {
	return enclosure.Warning{Code: "may-bind", Detail: "At worst " + f.Between + " binds along the " + f.Axis.String() + ": it is then " +
		decimals(f.WorstCase.Min.Neg(), u) + " too tight. Choose a looser fit or cut more exactly."}
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
