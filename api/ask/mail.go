package ask

import (
	"slices"

	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// Mail is a piece to be mailed and the posts that are asked about it.
type Mail struct {
	Unit                              Unit
	Width, Height, Thickness          Length
	SizeTolerance, ThicknessTolerance Length
	Mass, MassOunces, MassTolerance   Number
	Posts                             Words
	Along                             Word
	Card, Shape                       Word
	Traits                            [len(traits)]Word // in the order of traits
	Language                          Word
}

// traits are the names that are said of a piece with yes.
var traits = [...]struct {
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

func (q *Mail) bind(b *Names) {
	side := func(n Name) Name { return n.between(measure.Millimetres(1), measure.Millimetres(3000)) }
	spread := func(n Name) Name { return n.between(measure.Length{}, measure.Millimetres(50)) }
	b.bind(&q.Unit, unitName())
	b.bind(&q.Width, side(Name{Name: "width", Example: "5 in", Help: "Width of the finished piece, outside."}))
	b.bind(&q.Height, side(Name{Name: "height", Example: "7 in",
		Help: "Height of the finished piece, outside. Which of the sizes is the longest does not matter."}))
	b.bind(&q.Thickness, Name{Name: "thickness", Example: "1/8 in",
		Help: "Thickness of the finished piece with its contents. Without it the answer says what it may be."}.
		between(hair(), measure.Millimetres(1000)))
	b.bind(&q.SizeTolerance, spread(Name{Name: "size_tolerance", Example: "1/32 in", Advanced: true,
		Help: "How much width and height vary, plus or minus. Default: nothing."}))
	b.bind(&q.ThicknessTolerance, spread(Name{Name: "thickness_tolerance", Example: "1/64 in", Advanced: true,
		Help: "How much the thickness varies, plus or minus. Default: nothing."}))
	b.bind(&q.Mass, Name{Name: "mass", Example: "24",
		Help: "Mass in grams, with everything inside. Without it the answer says what it may be."}.numbers(0.01, 100_000))
	b.bind(&q.MassOunces, Name{Name: "mass_oz", Example: "0.85", Help: "Mass in ounces instead of grams."}.numbers(0.001, 3500))
	b.bind(&q.MassTolerance, Name{Name: "mass_tolerance", Example: "1", Advanced: true,
		Help: "How much the mass varies, plus or minus, in grams. Default: nothing."}.numbers(0, 10_000))
	b.bind(&q.Posts, Name{Name: "post", Most: len(mail.Names()), Choices: mail.Names(), Catalogue: "/v1/posts", Example: "us",
		Help: "The post to ask; may be given several times, in JSON as a list. Default: all."})
	b.bind(&q.Along, Name{Name: "address_along", Choices: sides(), Example: "width", Advanced: true,
		Help: "The side that the lines of the address run along, for posts whose rules ask. Default: the longer one."})
	b.bind(&q.Card, Name{Name: "card", Choices: []string{"no", "single", "folded"}, Example: "single", Default: Always("no"),
		Help: "It is a card without an envelope, unfolded or folded."})
	b.bind(&q.Shape, Name{Name: "shape", Choices: []string{"rectangle", "other"}, Example: "other", Default: Always("rectangle"), Advanced: true,
		Help: "Its outline. A square is a rectangle."})
	for i, t := range traits {
		b.bind(&q.Traits[i], Name{Name: t.name, Choices: []string{"no", "yes"}, Example: "yes", Default: Always("no"), Help: t.help, Advanced: true})
	}
	b.bind(&q.Language, languageName(postWords))
}

func (q *Mail) settle(r *Reading) {
	for _, size := range [...]*Length{&q.Width, &q.Height} {
		if !size.Given {
			r.missing(size, "the "+size.name().Name+" of the finished piece is needed", "")
		}
	}
	r.exclude(&q.MassOunces, &q.Mass, "the mass is given twice")
}

// Posts is what the tables of posts are asked for.
type Posts struct{ Language Word }

func (q *Posts) bind(b *Names) { b.bind(&q.Language, languageName(postWords)) }

func (q *Posts) settle(*Reading) {}

// postWords says what the language of mail is that of.
const postWords = "The language of the words. Names of classes, and sources, stay as they are."

// Piece is the piece.
func (q *Mail) Piece() mail.Piece {
	p := mail.Piece{
		Width: q.Width.Length, Height: q.Height.Length, Thickness: q.Thickness.Length,
		SizeTolerance: q.SizeTolerance.Length, ThicknessTolerance: q.ThicknessTolerance.Length,
		Mass: mail.Grams(q.Mass.Number), MassTolerance: mail.Grams(q.MassTolerance.Number),
		Address: map[string]mail.Side{"width": mail.WidthSide, "height": mail.HeightSide}[q.Along.Word], Traits: q.traits(),
	}
	if q.MassOunces.Given {
		p.Mass = mail.Ounces(q.MassOunces.Number)
	}
	return p
}

// Asked are the posts, each once and in the order of their listing.
func (q *Mail) Asked() []*mail.Post {
	return slices.DeleteFunc(mail.Posts(), func(p *mail.Post) bool {
		return len(q.Posts.Texts) > 0 && !slices.Contains(q.Posts.Texts, p.Name)
	})
}

// traits gathers what is said of the piece.
func (q *Mail) traits() mail.Trait {
	said := map[string]mail.Trait{"single": mail.SingleCard, "folded": mail.FoldedCard}[q.Card.Word]
	if q.Shape.Is("other") {
		said |= mail.Irregular
	}
	for i := range q.Traits {
		if q.Traits[i].Is("yes") {
			said |= traits[i].trait
		}
	}
	return said
}
