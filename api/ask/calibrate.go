package ask

import (
	"creasefit/internal/bench"
	"creasefit/internal/calibrate"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// Calibration is what was measured on a test sheet.
type Calibration struct {
	Unit                                       Unit
	Ruler                                      Step
	BlockWidth, BlockThickness, BlockTolerance Length
	Turns                                      Count
	Wound                                      Length
	StackCount                                 Count
	Stack                                      Length
	Caliper                                    Length
	CutAt, ScoreAt, ScoredApart                Length
	Cuts, Scores, FoldedInside                 Lengths
	Marked, WetAlong, WetAcross                Length
	Preset                                     Word
	Paper                                      Size // of the printed test sheet; zero for what is usual
	Language                                   Word

	Measured calibrate.Measured // what the names come to
}

// mostTurns and mostSheets bound what anybody winds or stacks; most strips are as
// many as anybody makes.
const (
	mostTurns  = 200
	mostSheets = 1000
	mostStrips = 50
)

func (q *Calibration) bind(b *Names) {
	b.bind(&q.Unit, unitName())
	b.bind(&q.Ruler, rulerName("The finest mark that everything was read to."))
	q.bindPaper(b)
	q.bindHand(b)
	b.bind(&q.Paper, paperName())
	b.bind(&q.Language, languageName("The language of the words on the test sheet."))
}

// bindPaper binds what is measured of the paper.
func (q *Calibration) bindPaper(b *Names) {
	long := func(v *Length, name, example, help string) {
		b.bind(v, Name{Name: name, Example: example, Help: help}.between(measure.Millimetres(1), measure.Millimetres(20_000)))
	}
	b.bind(&q.BlockWidth, Name{Name: "block_width", Example: "60 mm",
		Help: "Width of the block that a strip is wound round."}.between(measure.Millimetres(2), measure.Millimetres(1000)))
	b.bind(&q.BlockThickness, Name{Name: "block_thickness", Example: "20 mm",
		Help: "Thickness of that block."}.between(measure.Micrometres(100), measure.Millimetres(1000)))
	b.bind(&q.BlockTolerance, Name{Name: "block_tolerance", Example: "0.05 mm", Default: Default{"0.002 in", "0.05 mm"}, Advanced: true,
		Help: "How far each size of the block may be off, plus or minus."}.spread())
	b.bind(&q.Turns, Name{Name: "turns", Example: "10", Help: "How many whole turns the strip makes round the block."}.numbers(1, mostTurns))
	long(&q.Wound, "wound", "1720 mm", "How long a piece of the strip the turns took.")
	b.bind(&q.StackCount, Name{Name: "stack_count", Example: "20", Help: "How many sheets lie in a stack."}.numbers(1, mostSheets))
	b.bind(&q.Stack, Name{Name: "stack", Example: "6 mm",
		Help: "How high the stack is, pressed flat."}.between(measure.Micrometres(100), measure.Millimetres(1000)))
	b.bind(&q.Caliper, Name{Name: "caliper", Example: "0.012 in",
		Help: "Thickness of one sheet, if it is known and not to be measured."}.between(stock.LeastCaliper(), stock.GreatestCaliper()))
	long(&q.Marked, "marked", "200 mm", "How far apart two marks on a sheet were, both ways, before it was wetted or dried.")
	long(&q.WetAlong, "wet_along", "200.5 mm", "How far apart they are afterwards along the grain.")
	long(&q.WetAcross, "wet_across", "204 mm", "How far apart they are afterwards across the grain.")
}

// bindHand binds what is measured of the hand and of folds.
func (q *Calibration) bindHand(b *Names) {
	at := func(v *Length, name, example, help string) {
		b.bind(v, Name{Name: name, Example: example, Help: help}.between(measure.Millimetres(2), measure.Millimetres(5000)))
	}
	strips := func(v *Lengths, name, example, help string) {
		b.bind(v, Name{Name: name, Example: example, Most: mostStrips, Help: help}.between(measure.Micrometres(100), measure.Millimetres(5000)))
	}
	at(&q.CutAt, "cut_at", "100 mm", "The stop that strips were cut at, set anew for each.")
	strips(&q.Cuts, "cuts", "100.5 mm", "How wide each of them is; five or more, ten are better.")
	at(&q.ScoreAt, "score_at", "30 mm", "The stop that strips were scored at, set anew for each.")
	strips(&q.Scores, "scores", "29.5 mm", "How far from the edge each score lies; five or more, ten are better.")
	at(&q.ScoredApart, "scored_apart", "25 mm", "How far apart two scores on a strip are.")
	strips(&q.FoldedInside, "folded_inside", "24.5 mm", "How far apart the walls of each such strip stand inside when it is folded up square; five or more, ten are better.")
	b.bind(&q.Preset, Name{Name: "bench", Choices: bench.Names(), Example: bench.Usual, Default: Always(bench.Usual),
		Help: "How the paper is cut and scored, for what was not measured."})
}

func (q *Calibration) settle(r *Reading) {
	r.needUnit(&q.Unit)
	if !q.Ruler.Given {
		q.Ruler.fill(q.Ruler.on(r.unit), "default")
	}
	for _, needs := range [...]struct{ v, other value }{
		{&q.Wound, &q.Turns}, {&q.Wound, &q.BlockWidth}, {&q.Wound, &q.BlockThickness}, {&q.Turns, &q.Wound},
		{&q.Stack, &q.StackCount}, {&q.StackCount, &q.Stack}, {&q.Cuts, &q.CutAt}, {&q.Scores, &q.ScoreAt},
		{&q.FoldedInside, &q.ScoredApart}, {&q.WetAlong, &q.Marked}, {&q.WetAcross, &q.Marked},
	} {
		r.together(needs.v, needs.other)
	}
	r.exclude(&q.Wound, &q.Caliper, "the caliper that is given is not to be measured")
	r.exclude(&q.Stack, &q.Caliper, "the caliper that is given is not to be measured")
	for _, list := range [...]*Lengths{&q.Cuts, &q.Scores, &q.FoldedInside} {
		r.limit(list, len(list.Lengths))
	}
	b, _ := bench.Lookup(q.Preset.Word)
	q.Measured = calibrate.Measured{
		Ruler: q.Ruler.Step, Unit: r.unit, Bench: b, Caliper: q.Caliper.Length,
		Block: calibrate.Block{Width: q.BlockWidth.Length, Thickness: q.BlockThickness.Length, Tolerance: q.BlockTolerance.On(r.unit)},
		Turns: q.Turns.Count(), Wound: q.Wound.Length, Sheets: q.StackCount.Count(), Stack: q.Stack.Length,
		Cuts: calibrate.Stop{At: q.CutAt.Length, Lines: q.Cuts.Lengths}, Scores: calibrate.Stop{At: q.ScoreAt.Length, Lines: q.Scores.Lengths},
		Fold:   calibrate.Folded{Apart: q.ScoredApart.Length, Inside: q.FoldedInside.Lengths},
		Marked: q.Marked.Length, WetAlong: q.WetAlong.Length, WetAcross: q.WetAcross.Length,
	}
}
