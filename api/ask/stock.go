package ask

import (
	"fmt"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
	"creasefit/internal/stock"
)

// Stock is the paper and the sheet that it comes in.
type Stock struct {
	Preset   Word
	Caliper  Length
	Varies   Length
	Give     Length
	Board    Length
	Fold     Spread
	MadeAt   Number
	UsedAt   Number
	Grammage Number
	Sheet    Size
	Grain    Word
}

func (s *Stock) bind(b *Names, grain Name) {
	b.bind(&s.Preset, stockName("The paper, by name, instead of its caliper."))
	b.bind(&s.Caliper, Name{Name: "caliper", Example: "0.012 in",
		Help: "Thickness of one sheet of the paper."}.between(hair(), measure.Millimetres(5)))
	b.bind(&s.Varies, Name{Name: "caliper_tolerance", Example: "0.001 in", Advanced: true,
		Help: "How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper."}.between(measure.Length{}, measure.Millimetres(2)))
	b.bind(&s.Give, Name{Name: "wall_give", Example: "0 in", Advanced: true,
		Help: "How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on " +
			"nothing."}.between(measure.Length{}, measure.Millimetres(5)))
	b.bind(&s.Board, Name{Name: "board_from", Example: "1/32 in", Advanced: true,
		Help: "Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what " +
			"folds flat is refused. Default: 0.8 mm."}.between(hair(), measure.Millimetres(10)))
	b.bind(&s.Fold, Name{Name: "fold_allowance", Example: "0.1 mm", Advanced: true,
		Help: "What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate " +
			"measures it. Default: 0."}.between(measure.Length{}, measure.Millimetres(2)))
	b.bind(&s.MadeAt, Name{Name: "made_at", Example: "40", Advanced: true,
		Help: "Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow " +
			"0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %."}.numbers(5, 95))
	b.bind(&s.UsedAt, Name{Name: "used_at", Example: "65", Advanced: true,
		Help: "Relative humidity in percent where the piece is used."}.numbers(5, 95))
	b.bind(&s.Grammage, Name{Name: "grammage", Example: "270", Advanced: true,
		Help: "Mass of the paper in g/m2. Without a caliper the caliper is estimated from it."}.numbers(10, 3000))
	b.bind(&s.Sheet, Name{Name: "sheet", Catalogue: "/v1/sheets/sizes", Example: "12 x 12 in", Advanced: true,
		Help: "The sheet that blanks are cut from: a size, or a name."}.between(measure.Millimetres(10), measure.Millimetres(5000)))
	b.bind(&s.Grain, grain)
}

// stockName is what is known of the name of a paper.
func stockName(help string) Name {
	return Name{Name: "stock", Choices: stock.Names(), Catalogue: "/v1/stocks", Example: "index-110", Help: help}
}

// sheetGrainName is the grain of a sheet.
func sheetGrainName() Name {
	return Name{Name: "grain", Choices: sides(), Example: "height", Advanced: true, Help: "The side of the sheet that the grain runs along."}
}

// sides are the words for a side of a sheet.
func sides() []string { return []string{sheet.AlongWidth.String(), sheet.AlongHeight.String()} }

// settle fills in the paper.
func (s *Stock) settle(r *Reading, q *solve.Request) {
	r.exclude(&s.Caliper, &s.Preset, "the named stock has a caliper of its own")
	q.Grammage = s.Grammage.Number
	switch {
	case s.Preset.Given:
		s.settleNamed(r, q)
	case s.Caliper.Given:
		q.CaliperTolerance = stock.Spread(s.Caliper.Length)
	case s.Grammage.Given:
		e := stock.EstimateCaliper(q.Grammage)
		s.Caliper.fill(e.Caliper, "grammage")
		q.CaliperTolerance = e.Tolerance()
		q.Notes = append(q.Notes, r.estimated("estimated from the grammage", e.Caliper, e.Low, e.High))
	default:
		r.missing(&s.Caliper, "the thickness of the paper is needed", "give caliper, stock by name, or grammage for an estimate")
	}
	q.Caliper, q.BoardFrom = s.Caliper.Length, s.Board.Length
	if s.Varies.Given {
		q.CaliperTolerance = s.Varies.Length
	}
	if q.WallGive = enclosure.WallGive(q.Caliper, s.Board.Length); s.Give.Given {
		q.WallGive = s.Give.Length
	}
	if q.FoldAllowance = s.Fold.Length.Length; s.Fold.sign == '-' {
		q.FoldAllowance = q.FoldAllowance.Neg()
	}
	r.together(&s.MadeAt, &s.UsedAt)
	r.together(&s.UsedAt, &s.MadeAt)
	q.Season = solve.Season{MadeAt: s.MadeAt.Number, UsedAt: s.UsedAt.Number}
	q.SheetWidth, q.SheetHeight = s.Sheet.Width, s.Sheet.Height
	q.Grain = sideOf(s.Grain.Word)
}

// settleNamed fills in a paper of the catalogue.
func (s *Stock) settleNamed(r *Reading, q *solve.Request) {
	p, ok := stock.Lookup(s.Preset.Word)
	if !ok {
		return
	}
	s.Caliper.fill(p.Caliper, "stock")
	q.CaliperTolerance = p.CaliperTolerance
	if p.Grammage > 0 {
		r.exclude(&s.Grammage, &s.Preset, "the named stock has a grammage of its own")
		q.Grammage = p.Grammage
	}
	if p.Estimated {
		q.Notes = append(q.Notes, r.estimated("a usual figure, not a published one", p.Caliper, p.Low, p.High))
	}
}

// estimated is the warning that a caliper was not measured.
func (r *Reading) estimated(how string, caliper, low, high measure.Length) enclosure.Warning {
	unit := r.unit
	if unit == measure.NoUnit {
		unit = measure.Millimetre
	}
	return enclosure.Warning{Code: "estimated-caliper", Detail: fmt.Sprintf(
		"The caliper of %s is %s: %s to %s is likely. Measure ten sheets and divide by ten.",
		plainLength(caliper, unit), how, plainLength(low, unit), plainLength(high, unit))}
}

// plainLength writes a length as a short decimal of the unit.
func plainLength(l measure.Length, unit measure.Unit) string {
	places := 2
	if unit == measure.Inch {
		places = 4
	}
	return l.Decimal(unit, places)
}
