package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/guide"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// mailed is what posts make of a piece, and the language that it is told in.
type mailed struct {
	list     []mail.Judgement
	language string
}

// newMail answers with what posts make of a finished piece.
//
//	@Summary		Whether a piece may be mailed
//	@Description	Of each post the cheapest size class that takes a finished piece, what keeps it out of the cheaper ones and by how much, surcharges with their reasons, and how near it is to a limit. Every limit has its source; what no official source was found for keeps nothing out, but is told. Confirm with the post office: rules change.
//	@ID				mail
//	@Tags			mail
//	@Success		200	{object}	wire.Mail
//	@Router			/v1/mail [get]
//	@Router			/v1/mail [post]
func newMail() computing {
	return &calculation[*ask.Mail, *mailed]{
		form: ask.New[ask.Mail](tell.FormatNames(tableFormats)...), path: "/v1/mail", formats: tableFormats, table: tell.MailColumns,
		compute: func(_ context.Context, q *ask.Mail) (*mailed, error) {
			piece := q.Piece()
			return &mailed{wire.Each(q.Asked(), func(p *mail.Post) mail.Judgement { return p.Judge(&piece) }), q.Language.Word}, nil
		},
		answer: func(m *mailed, x *answering) any {
			return wire.OfMail(m.list, voiceOf(m.language, x.Unit()), x.asked())
		},
	}
}

// voiceOf is what words in a language are written in.
func voiceOf(language string, unit measure.Unit) wire.Voice {
	in := wire.Voice{Unit: unit}
	if language != guide.Languages()[0] {
		in.In = wordsOf(language)
	}
	return in
}
