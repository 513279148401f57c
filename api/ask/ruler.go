package ask

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// MostLengths is how many lengths one call of the ruler takes.
const MostLengths = usualMost

// Ruler is lengths to be read off every ruler.
type Ruler struct {
	Unit    Unit
	Lengths Lengths
}

func (q *Ruler) bind(b *Names) {
	b.bind(&q.Unit, unitName())
	b.bind(&q.Lengths, Name{Name: "length", Most: MostLengths, Example: "92.1 mm",
		Help: "The length; may be given up to 50 times, in JSON as a list."}.
		between(measure.Length{}, measure.Largest()))
}

func (q *Ruler) settle(r *Reading) {
	if !q.Lengths.Given {
		r.missing(&q.Lengths, "a length is needed", "add length=3-5/8in")
	}
	r.limit(&q.Lengths, len(q.Lengths.Lengths))
}

// Paper is what is known of a paper.
type Paper struct {
	Unit        Unit
	Preset      Word
	Caliper     Length
	Points      Number
	Stack       Length
	StackSheets Count
	Grammage    Number
	BasisWeight Number
	Grade       Word
	SheetMass   Number
	Sheet       Size

	Known  stock.Known // what the names come to
	Source string      // of a named paper
}

func (q *Paper) bind(b *Names) {
	weight := func(name, help, example string) Name {
		return Name{Name: name, Help: help, Example: example}.numbers(0.01, 100_000)
	}
	b.bind(&q.Unit, unitName())
	b.bind(&q.Preset, stockName("The paper, by name."))
	b.bind(&q.Caliper, Name{Name: "caliper", Example: "0.012 in",
		Help: "Thickness of one sheet."}.between(stock.LeastCaliper(), stock.GreatestCaliper()))
	b.bind(&q.Points, Name{Name: "points", Example: "12",
		Help: "Thickness of one sheet in thousandths of an inch, as on packets of cover and board."}.numbers(0.4, 197))
	b.bind(&q.Stack, Name{Name: "stack", Example: "1/2 in",
		Help: "Height of several sheets pressed together; needs stack_sheets."}.between(stock.LeastCaliper(), measure.Millimetres(1000)))
	b.bind(&q.StackSheets, Name{Name: "stack_sheets", Example: "50", Help: "How many sheets the stack has."}.numbers(1, 10_000))
	b.bind(&q.Grammage, Name{Name: "grammage", Example: "216", Help: "Mass in g/m2."}.numbers(stock.LeastGrammage, stock.GreatestGrammage))
	b.bind(&q.BasisWeight, weight("basis_weight", "Mass of a ream of the grade's basis size, in pounds; needs grade.", "80"))
	b.bind(&q.Grade, Name{Name: "grade", Choices: stock.GradeNames(), Example: "cover",
		Help: "The family of papers that the basis weight belongs to."})
	b.bind(&q.SheetMass, weight("sheet_mass", "Mass of one sheet in grams; needs sheet.", "13.1"))
	b.bind(&q.Sheet, Name{Name: "sheet", Catalogue: "/v1/sheets/sizes", Example: "8 1/2 x 11 in", Help: "Size of a sheet, or its name."}.
		between(measure.Millimetres(10), measure.Millimetres(5000)))
}

func (q *Paper) settle(r *Reading) {
	r.exclude(&q.Caliper, &q.Preset, "the named stock has a caliper of its own")
	q.Known = stock.Known{Unit: r.unit, Caliper: q.Caliper.Length, Points: q.Points.Number, Stack: q.Stack.Length, StackSheets: q.StackSheets.Count(),
		Grammage: q.Grammage.Number, BasisWeight: q.BasisWeight.Number, SheetMass: q.SheetMass.Number, SheetWidth: q.Sheet.Width, SheetHeight: q.Sheet.Height}
	q.Known.Grade, _ = stock.LookupGrade(q.Grade.Word)
	q.Source = ""
	if s, ok := stock.Lookup(q.Preset.Word); ok {
		q.Known.Named, q.Known.Caliper, q.Source = true, s.Caliper, s.Source
		if s.Grammage > 0 {
			r.exclude(&q.Grammage, &q.Preset, "the named stock has a grammage of its own")
			q.Known.Grammage = s.Grammage
		}
	}
	if q.Grade.Given && !q.BasisWeight.Given {
		r.Report(fault.Fault{Code: fault.Missing, Field: q.BasisWeight.name().Name, Detail: "a grade is of use with a basis weight only",
			Hint: "add basis_weight or leave out grade"}, "")
	}
}

// Nothing is the request of a call that takes no names but those that say how
// to answer.
type Nothing struct{}

func (*Nothing) bind(*Names) {}

func (*Nothing) settle(*Reading) {}
