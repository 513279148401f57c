package ask

import (
	"strconv"

	"creasefit/internal/draw"
	"creasefit/internal/draw/png"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Drawing is how an enclosure, or a portfolio, is to be drawn.
type Drawing[Q Subject] struct {
	Of       Q
	Theme    Word
	Pixels   Count
	Closed   Number
	Paper    Size // zero for what is usual
	Language Word
	View     Word
	Bed      Size // zero for one as large as needed
	Kerf     Length
	Folds    Word
	Picture  Count
}

// NewDrawing is the form of a drawing of what such requests ask for.
func NewDrawing[Q Subject](of func() Q, formats ...string) *Form[*Drawing[Q]] {
	return NewForm(func() *Drawing[Q] { return &Drawing[Q]{Of: of()} }, formats...)
}

func (q *Drawing[Q]) bind(b *Names) {
	q.Of.bind(b)
	theme := themeName("Dark lines on light paper, or the other way round; of SVG and PNG.")
	b.bind(&q.Theme, theme)
	b.bind(&q.Pixels, Name{Name: "pixels", Example: "800", Default: Always("800"),
		Help: "Width of a PNG in pixels."}.numbers(png.Least, png.Greatest))
	b.bind(&q.Closed, Name{Name: "closed", Example: "0.5", Default: Always("1"),
		Help: "How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work."}.
		numbers(0, 1))
	b.bind(&q.Paper, paperName())
	b.bind(&q.Language, languageName("The language of the words in the drawing."))
	var views []string
	for _, v := range [...]draw.View{draw.Measured, draw.Template, draw.Cutter, draw.Picture, draw.Finished, draw.Spread} {
		views = append(views, v.String())
	}
	b.bind(&q.View, Name{Name: "view", Choices: views, Example: draw.Template.String(), Default: Always(draw.Measured.String()),
		Help: "What the drawing is for: measured, with every length that is set on a ruler; template, to print at true scale and cut out; " +
			"cutter, lines for a machine; step, one step of the work; finished, the enclosure round its contents; spread, how its clearances " +
			"come out against what was wanted."})
	b.bind(&q.Picture, Name{Name: "picture", Example: "3", Default: Always("1"),
		Help: "Which step of the work is drawn, from 1; of the view step."}.numbers(1, mostPictures))
	b.bind(&q.Bed, Name{Name: "bed", Catalogue: "/v1/sheets/sizes", Example: "300x200mm",
		Help: "The area that a cutting machine reaches; of the view cutter. Default: as large as needed."}.between(measure.Millimetres(20), measure.Millimetres(5000)))
	b.bind(&q.Kerf, Name{Name: "kerf", Example: "0.2mm", Default: Default{Inch: "0 in", Millimetre: "0 mm"},
		Help: "How much the machine's tool takes away: outlines run half of it outside; of the view cutter."}.between(measure.Millimetres(0), measure.Millimetres(3)))
	b.bind(&q.Folds, Name{Name: "folds", Choices: []string{"score", foldsPerforate}, Example: foldsPerforate, Default: Always("score"),
		Help: "What the machine does to folds: score them, or cut them through in dashes of 2 mm; of the view cutter."})
}

// foldsPerforate is the choice to cut folds through in dashes.
const foldsPerforate = "perforate"

// OnPhones is the size of letters in parts of a picture's width that come out at
// 11 pixels on a page 360 wide, with its margins.
const OnPhones = 11.0 / 300

// mostPictures is more than any order of work has steps.
const mostPictures = 500

// Layout lays a pattern out as a drawing for some purpose; works are what it is made of,
// with the order of their work. The error is a draw.CutterError or a fault.
type Layout func(p *pattern.Pattern, o draw.Options, works []draw.Work) (*draw.Drawing, error)

// Layout returns how the pattern is laid out.
func (q *Drawing[Q]) Layout() Layout {
	cutter := draw.CutterOptions{Kerf: q.Kerf.Length.Millimetres(), Perforate: q.Folds.Is(foldsPerforate)}
	cutter.Bed = draw.Point{X: q.Bed.Width.Millimetres(), Y: q.Bed.Height.Millimetres()}
	picture := q.Picture.Count()
	return func(p *pattern.Pattern, o draw.Options, works []draw.Work) (*draw.Drawing, error) {
		switch {
		case q.View.Is(draw.Picture.String()):
			draws, n, err := draw.Pictures(works)
			if err != nil {
				return nil, err
			}
			if picture > n {
				return nil, fault.Fault{Code: fault.OutOfRange, Field: "picture", Value: strconv.Itoa(picture), Detail: "the work has " + strconv.Itoa(n) + " steps",
					Expected: "1 to " + strconv.Itoa(n), Hint: strconv.Itoa(n)}
			}
			return draws([]int{picture}).Readable(OnPhones), nil
		case q.View.Is(draw.Finished.String()) && len(works) > 1:
			return draw.NewLayers(p, works, o).Readable(OnPhones), nil
		case q.View.Is(draw.Finished.String()):
			return draw.NewFinished(p, o), nil
		case q.View.Is(draw.Spread.String()):
			return draw.NewSpread(p, o), nil
		case q.View.Is(draw.Template.String()):
			return draw.NewTemplate(p, o), nil
		case q.View.Is(draw.Cutter.String()):
			return draw.NewCutter(p, o, cutter)
		default:
			return draw.New(p, o), nil
		}
	}
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
