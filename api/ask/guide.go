package ask

import (
	"creasefit/internal/draw/pdf"
	"creasefit/internal/guide"
)

// Guide is how the making instructions of an enclosure, or of a portfolio, are
// to be written.
type Guide[Q Subject] struct {
	Of       Q
	Language Word
	Units    Word
	Steps    Word
	Paper    Size // zero for what is usual
	Pictures Word
	Print    Word
}

// NewGuide is the form of a guide of what such requests ask for.
func NewGuide[Q Subject](of func() Q, formats ...string) *Form[*Guide[Q]] {
	return NewForm(func() *Guide[Q] { return &Guide[Q]{Of: of()} }, formats...)
}

func (q *Guide[Q]) bind(b *Names) {
	q.Of.bind(b)
	b.bind(&q.Language, languageName("The language of the guide."))
	b.bind(&q.Units, Name{Name: "units", Choices: []string{"in", "mm", "both"}, Example: "both",
		Help: "The units of the guide. Default: those of the ruler."})
	b.bind(&q.Steps, Name{Name: "steps", Choices: []string{"yes", "no"}, Example: "no", Default: Always("yes"), Advanced: true,
		Help: "Whether the work is told step by step. Without it the lists, notes and warnings are written in a fraction of the time."})
	b.bind(&q.Paper, paperName())
	b.bind(&q.Pictures, picturesName("Adds a picture of each step to the JSON as SVG, for a light or a dark page."))
	b.bind(&q.Print, Name{Name: "print", Choices: []string{"usual", printLarge}, Example: printLarge, Default: Always("usual"),
		Help: "How large the letters are: usual, 10 points, or large, 22 points in one column; of PDF."})
}

// printLarge is the choice of large print.
const printLarge = "large"

// LargePrint reports whether a PDF is to have large letters.
func (q *Guide[Q]) LargePrint() bool { return q.Print.Is(printLarge) }

func (q *Guide[Q]) settle(r *Reading) { q.Of.settle(r) }

// Options are how to write the guide.
func (q *Guide[Q]) Options() guide.Options {
	units, _ := guide.ParseUnits(q.Units.Word) // its choices were checked
	return guide.Options{Language: q.Language.Word, Units: units, Brief: q.Steps.Is("no")}
}

// paperName is the paper that a PDF is for.
func paperName() Name {
	return Name{Name: "paper", Catalogue: "/v1/sheets/sizes", Example: "a4",
		Help: "The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4."}.between(pdf.LeastSide(), pdf.GreatestSide())
}

// languageName is the choice of a language.
func languageName(help string) Name {
	languages := guide.Languages()
	return Name{Name: "language", Choices: languages, Example: languages[0], Default: Always(languages[0]), Help: help}
}

// Subject is what a guide or a drawing can be asked for of.
type Subject interface {
	*Enclosure | *Portfolio
	Request
}
