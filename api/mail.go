package api

import (
	"context"
	"slices"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// The names of a piece to be mailed, by their place in its table.
const (
	mailUnit = iota
	mailWidth
	mailHeight
	mailThickness
	mailSizeTolerance
	mailThicknessTolerance
	mailMass
	mailMassOunces
	mailMassTolerance
	mailPost
	mailAddressAlong
	mailCard
	mailShape
	mailTraits // the first of those in mailTraitNames
)

// mailTraitNames are the names that are said of a piece with yes.
var mailTraitNames = [...]struct {
	name  string
	trait mail.Trait
	help  string
}{
	{"rigid", mail.Rigid, "It does not bend."},
	{"uneven", mail.Uneven, "It is not equally thick all over: a tin, a pen or a knot shows through."},
	{"clasp", mail.Clasp, "It is closed with a clasp, a string or a button."},
	{"plastic", mail.Plastic, "Its outside is not paper."},
	{"box", mail.Box, "It is a box, hinged or not."},
}

// mailFormats are the formats of what posts make of a piece.
var mailFormats = []tell.Format{tell.JSON, tell.CSV, tell.Text}

// mailTable is the names that the call about mailing knows.
func mailTable() *table {
	side := func(p param) param { return p.length(measure.Millimetres(1), measure.Millimetres(3000)) }
	spread := func(p param) param { return p.length(measure.Length{}, measure.Millimetres(50)) }
	mass := func(p param, least, greatest float64) param {
		p.Type, p.LeastNumber, p.GreatestNumber = numberType, least, greatest
		return p
	}
	return newTable([]param{
		unitParam(),
		side(param{Name: "width", Example: "5 in", Help: "Width of the finished piece, outside."}),
		side(param{Name: "height", Example: "7 in", Help: "Height of the finished piece, outside. Which of the sizes is the longest does not matter."}),
		param{Name: "thickness", Example: "1/8 in", Help: "Thickness of the finished piece with its contents. Without it the answer says what it may be."}.
			length(measure.Micrometres(10), measure.Millimetres(1000)),
		spread(param{Name: "size_tolerance", Example: "1/32 in", Advanced: true, Help: "How much width and height vary, plus or minus. Default: nothing."}),
		spread(param{Name: "thickness_tolerance", Example: "1/64 in", Advanced: true, Help: "How much the thickness varies, plus or minus. Default: nothing."}),
		mass(param{Name: "mass", Example: "24", Help: "Mass in grams, with everything inside. Without it the answer says what it may be."}, 0.01, 100_000),
		mass(param{Name: "mass_oz", Example: "0.85", Help: "Mass in ounces instead of grams."}, 0.001, 3500),
		mass(param{Name: "mass_tolerance", Example: "1", Advanced: true, Help: "How much the mass varies, plus or minus, in grams. Default: nothing."}, 0, 10_000),
		{Name: "post", Type: presetType, List: true, Most: len(mail.Names()), Choices: mail.Names(), Catalogue: "/v1/posts", Example: "us",
			Help: "The post to ask; may be given several times, in JSON as a list. Default: all."},
		{Name: "address_along", Type: choiceType, Choices: []string{"width", "height"}, Example: "width", Advanced: true,
			Help: "The side that the lines of the address run along, for posts whose rules ask. Default: the longer one."},
		{Name: "card", Type: choiceType, Choices: []string{"no", "single", "folded"}, Example: "single", DefaultInch: "no", DefaultMillimetre: "no",
			Help: "It is a card without an envelope, unfolded or folded."},
		{Name: "shape", Type: choiceType, Choices: []string{"rectangle", "other"}, Example: "other", DefaultInch: "rectangle", DefaultMillimetre: "rectangle", Advanced: true,
			Help: "Its outline. A square is a rectangle."},
	}, traitParams(), answerParams(mailFormats))
}

// traitParams are the names that are said with yes.
func traitParams() []param {
	list := make([]param, len(mailTraitNames))
	for i, t := range mailTraitNames {
		list[i] = param{Name: t.name, Type: choiceType, Choices: []string{"no", "yes"}, Example: "yes", DefaultInch: "no", DefaultMillimetre: "no",
			Help: t.help, Advanced: true}
	}
	return list
}

// mailRequest is a piece and the posts that are asked about it.
type mailRequest struct {
	piece mail.Piece
	posts []*mail.Post
}

// judgeMail answers with what posts make of a finished piece.
//
//	@Summary		Whether a piece may be mailed
//	@Description	Of each post the cheapest size class that takes a finished piece, what keeps it out of the cheaper ones and by how much, surcharges with their reasons, and how near it is to a limit. Every limit has its source; what no official source was found for keeps nothing out, but is told. Confirm with the post office: rules change.
//	@ID				mail
//	@Tags			mail
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	Mail
//	@Header			200	{string}	ETag	"strong"
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/mail [get]
//	@Router			/v1/mail [post]
func (s *Service) judgeMail(c echo.Context) error {
	return s.mail.serve(s, c, c.Param("extension"))
}

// mailCalculation asks posts about a piece.
type mailCalculation = calculation[*mailRequest, []mail.Judgement]

// newMailCalculation returns the calculation about mailing.
func newMailCalculation() *mailCalculation {
	return &mailCalculation{
		table: mailTable(), path: "/v1/mail", formats: mailFormats,
		read: readMail,
		compute: func(_ context.Context, q *mailRequest) ([]mail.Judgement, error) {
			list := make([]mail.Judgement, len(q.posts))
			for i, p := range q.posts {
				list[i] = p.Judge(&q.piece)
			}
			return list, nil
		},
		write: writeMail,
	}
}

// readMail takes the piece and the posts, each once and in the order of their
// listing.
func readMail(r *reading) *mailRequest {
	for _, place := range []int{mailWidth, mailHeight} {
		if !r.has(place) {
			r.missing(place, "the "+r.name(place)+" of the finished piece is needed", "")
		}
	}
	r.exclude(mailMassOunces, mailMass, "the mass is given twice")
	q := &mailRequest{piece: mail.Piece{
		Width: r.values[mailWidth].length, Height: r.values[mailHeight].length, Thickness: r.values[mailThickness].length,
		SizeTolerance: r.values[mailSizeTolerance].length, ThicknessTolerance: r.values[mailThicknessTolerance].length,
		Mass: mail.Grams(r.values[mailMass].number), MassTolerance: mail.Grams(r.values[mailMassTolerance].number),
		Address: addressSide(r.values[mailAddressAlong].text), Traits: r.mailTraits(),
	}}
	if r.has(mailMassOunces) {
		q.piece.Mass = mail.Ounces(r.values[mailMassOunces].number)
	}
	for _, p := range mail.Posts() {
		if asked := r.values[mailPost].texts; len(asked) == 0 || slices.Contains(asked, p.Name) {
			q.posts = append(q.posts, p)
		}
	}
	return q
}

// addressSide returns the side of a word of the choices.
func addressSide(word string) mail.Side {
	switch word {
	case "width":
		return mail.WidthSide
	case "height":
		return mail.HeightSide
	default:
		return mail.LongerSide
	}
}

// mailTraits gathers what is said of the piece.
func (r *reading) mailTraits() mail.Trait {
	traits := map[string]mail.Trait{"single": mail.SingleCard, "folded": mail.FoldedCard}[r.values[mailCard].text]
	if r.values[mailShape].text == "other" {
		traits |= mail.Irregular
	}
	for i, t := range mailTraitNames {
		if r.values[mailTraits+i].text == "yes" {
			traits |= t.trait
		}
	}
	return traits
}
