package ask

import (
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/png"
	"creasefit/internal/guide"
)

// Guide is how the making instructions of an enclosure, or of a portfolio, are
// to be written.
type Guide[Q Subject] struct {
	Of       Q
	Language Word
	Units    Word
	Paper    Size // zero for what is usual
}

// NewGuide is the form of a guide of what such requests ask for.
func NewGuide[Q Subject](of func() Q, formats ...string) *Form[*Guide[Q]] {
	return NewForm(func() *Guide[Q] { return &Guide[Q]{Of: of()} }, formats...)
}

func (q *Guide[Q]) bind(b *Names) {
	q.Of.bind(b)
	b.bind(&q.Language, languageName("The language of the guide."))
	b.bind(&q.Units, Name{Name: "units", Choices: []string{"in", "mm", "both"}, Example: "both", Help: "The units of the guide. Default: those of the ruler."})
	b.bind(&q.Paper, paperName())
}

func (q *Guide[Q]) settle(r *Reading) { q.Of.settle(r) }

// Options are how to write the guide.
func (q *Guide[Q]) Options() guide.Options {
	units, _ := guide.ParseUnits(q.Units.Word) // its choices were checked
	return guide.Options{Language: q.Language.Word, Units: units}
}

// Drawing is how an enclosure, or a portfolio, is to be drawn.
type Drawing[Q Subject] struct {
	Of       Q
	Theme    Word
	Pixels   Count
	Closed   Number
	Paper    Size // zero for what is usual
	Language Word
}

// NewDrawing is the form of a drawing of what such requests ask for.
func NewDrawing[Q Subject](of func() Q, formats ...string) *Form[*Drawing[Q]] {
	return NewForm(func() *Drawing[Q] { return &Drawing[Q]{Of: of()} }, formats...)
}

func (q *Drawing[Q]) bind(b *Names) {
	q.Of.bind(b)
	theme := themeName("Dark lines on light paper, or the other way round; of SVG and PNG.")
	b.bind(&q.Theme, theme)
	b.bind(&q.Pixels, Name{Name: "pixels", Example: "800", Default: Always("800"), Help: "Width of a PNG in pixels."}.numbers(png.Least, png.Greatest))
	b.bind(&q.Closed, Name{Name: "closed", Example: "0.5", Default: Always("1"), Help: "How far the folded model is closed: 0 flat, 1 closed; of GLB."}.numbers(0, 1))
	b.bind(&q.Paper, paperName())
	b.bind(&q.Language, languageName("The language of the words in the drawing."))
}

func (q *Drawing[Q]) settle(r *Reading) { q.Of.settle(r) }

// The themes of pictures.
const themeLight, themeDark = "light", "dark"

// themeName is the choice of dark lines or light ones.
func themeName(help string) Name {
	return Name{Name: "theme", Choices: []string{themeLight, themeDark}, Example: themeDark, Default: Always(themeLight), Help: help}
}

// Dark reports whether lines are to be light.
func (q *Drawing[Q]) Dark() bool { return q.Theme.Is(themeDark) }

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
