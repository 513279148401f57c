package api

import (
	"bytes"
	"context"
	"io"
	"net/url"
	"strconv"
	"strings"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/draw"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/svg"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// guideFormats are the formats of a guide.
var guideFormats = []tell.Format{tell.JSON, tell.Markdown, tell.HTML, tell.Text, tell.PDF}

// guided is what is to be made with its guide.
type guided struct {
	paper  [2]measure.Length // zero for what is usual
	theme  string            // of the pictures of its JSON; "no" for none
	large  bool
	solved solved
	guide  guide.Guide
}

// newGuide answers with the making instructions of an enclosure.
//
//	@Summary		Making instructions of an enclosure
//	@Description	Materials, tools, the cut list and numbered steps in order of work, with cautions and pictures.
//	@ID				guide
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Success		200	{object}	guide.Guide
//	@Router			/v1/guide/{kind} [get]
//	@Router			/v1/guide/{kind} [post]
func newGuide[Q ask.Subject](kind string, of func() Q) computing {
	return &calculation[*ask.Guide[Q], *guided]{
		form: ask.NewGuide(of, tell.FormatNames(guideFormats)...), path: "/v1/guide/" + kind, formats: guideFormats,
		compute: func(ctx context.Context, q *ask.Guide[Q]) (*guided, error) {
			s, err := solveSubject(ctx, q.Of)
			if err != nil {
				return nil, err
			}
			g, err := s.guide(q.Options())
			return &guided{[2]measure.Length{q.Paper.Width, q.Paper.Height}, q.Pictures.Word, q.LargePrint(), s, g}, err
		},
		write: func(dst []byte, f tell.Format, a *guided, x *answering) []byte { return append(dst, a.in(f, x)...) },
	}
}

// in writes the guide in the format.
func (a *guided) in(f tell.Format, x *answering) []byte {
	switch f {
	case tell.Markdown:
		return a.guide.Markdown(a.pictureLink(x))
	case tell.Text:
		return a.guide.Text()
	case tell.HTML:
		pictures := guide.Pictures{Step: a.pictureOf(svg.Options{Classes: true}), Dark: svg.Style(draw.Dark()), Link: a.pictureLink(x)}
		if pictures.Step == nil { // they have every length of the pattern, in letters that a phone can show
			pictures.Figure = svg.Append(nil, a.figure(), svg.Options{Classes: true})
		}
		return written(a.guide.HTML(pictures))
	case tell.PDF:
		return x.encoded(nil, func(w io.Writer) error {
			how := pdf.Guide{Steps: a.drawingOf(), Large: a.large}
			return pdf.EncodeGuide(w, &a.guide, a.figure(), how, pdf.Options{Width: a.paper[0], Height: a.paper[1], Context: x.ctx})
		})
	default:
		a.illustrate()
		return bytes.TrimSpace(written(a.guide.JSON()))
	}
}

// figure is the drawing of the pattern in the guide's language.
func (a *guided) figure() *draw.Drawing {
	d, err := a.solved.draw(a.guide.Labels.Figure, a.guide.Language, func(p *pattern.Pattern, o draw.Options, _ []draw.Work) (*draw.Drawing, error) {
		return draw.New(p, o), nil
	})
	if err != nil {
		panic(err) // a measured drawing has no limits
	}
	return d
}

// drawingOf returns how the picture of steps of the work, from 1, is drawn, nil
// where there is no order of work.
func (a *guided) drawingOf() func(steps []int) *draw.Drawing {
	works := a.solved.works(a.guide.Language)
	for i := range works {
		works[i].Options.Title = "" // the step has one
	}
	draws, _, err := draw.Pictures(works)
	if err != nil {
		return nil // the guide has been written without one, too
	}
	return draws
}

// pictureOf returns how those pictures are set into a page.
func (a *guided) pictureOf(o svg.Options) func(steps []int) []byte {
	drawn := a.drawingOf()
	if drawn == nil {
		return nil
	}
	return func(steps []int) []byte {
		o.ID = "picture-" + strconv.Itoa(steps[0])
		return svg.Append(nil, drawn(steps).Readable(ask.OnPhones), o)
	}
}

// illustrate gives the steps their pictures, if they are asked for.
func (a *guided) illustrate() {
	if a.theme == "no" {
		return
	}
	picture := a.pictureOf(svg.Options{Dark: a.theme == "dark"})
	if picture == nil {
		return
	}
	for i := range a.guide.Steps {
		if s := &a.guide.Steps[i]; len(s.Order) > 0 {
			s.Pictures = []string{string(picture(s.Order))}
		}
	}
}

// pictureLink returns the address of the picture of a step of the work, nil
// where there is none.
func (a *guided) pictureLink(x *answering) func(step int) string {
	names, err := url.ParseQuery(strings.TrimPrefix(string(x.Link("")), "?"))
	if err != nil {
		return nil
	}
	for _, name := range [...]string{"units", "pictures", "print"} { // a drawing has none of these
		names.Del(name)
	}
	names.Set("view", draw.Picture.String())
	return func(step int) string {
		names.Set("picture", strconv.Itoa(step))
		return "/v1/drawing/" + a.solved.name() + ".svg?" + names.Encode()
	}
}

// written returns what was written to memory, which cannot fail; if it did
// the caller gets a plain 500 and the log the cause.
func written(text []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return text
}
