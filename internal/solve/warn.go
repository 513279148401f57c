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
	if axis, chance, found := unsure(s.Fits); found {
		warnings = append(warnings, enclosure.Warning{Code: "unsure-fit",
			Detail: "With these tools the contents go in along the " + axis.String() + " in about " +
				strconv.Itoa(int(chance*100)) + " of 100 tries: make a trial piece, choose a looser fit or cut more exactly."})
	}
	for i := range s.Pattern.Pieces {
		warnings = r.warnSheet(warnings, &s.Pattern.Pieces[i])
	}
	return warnings
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
		return append(warnings, enclosure.Warning{Code: "larger-than-sheet",
			Detail: "The " + p.Name + " does not come out of the sheet in one piece."})
	}
	along := mainFolds(p)
	if r.Grain == GrainUnknown || along == pattern.Thickness {
		return warnings
	}
	alongGrain := turned
	if (along == pattern.Height) == (r.Grain == GrainHeight) {
		alongGrain = upright
	}
	if !alongGrain {
		warnings = append(warnings, enclosure.Warning{Code: "across-grain",
			Detail: "The " + p.Name + " only comes out of the sheet with its main folds across the grain, where stock may crack: score it well and try one first."})
	}
	return warnings
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
