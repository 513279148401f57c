package api

import (
	"context"

	"creasefit/internal/draw"
	"creasefit/internal/guide"
	"creasefit/internal/solve"
)

// subject is what a guide or a drawing is asked for of: one enclosure, or
// several round one another.
type subject interface {
	solve(context.Context) (solved, error)
}

// solved is a subject with its measurements.
type solved interface {
	guide(guide.Options) (guide.Guide, error)
	// draw lays the pattern out under a title, or its own if that is empty, in a
	// language that was checked or, if that is empty, the first one there is.
	draw(title, language string) *draw.Drawing
}

// oneSubject is a request for one enclosure.
type oneSubject struct{ *solve.Request }

func (q oneSubject) solve(ctx context.Context) (solved, error) {
	s, err := solve.Solve(ctx, q.Request)
	return oneSolved{s}, err
}

// oneSolved is the solution of one enclosure.
type oneSolved struct{ *solve.Solution }

func (s oneSolved) guide(o guide.Options) (guide.Guide, error) { return guide.Write(s.Solution, o) }

func (s oneSolved) draw(title, language string) *draw.Drawing {
	if title == "" {
		title = s.Request.Kind.Title
	}
	return draw.New(&s.Pattern, draw.Options{Title: title, Step: s.Step, Say: wordsOf(&language), Language: language})
}

func (q *portfolioRequest) solve(ctx context.Context) (solved, error) {
	p, err := solve.SolvePortfolio(ctx, q.layers)
	return &portfolio{q, p}, err
}

func (a *portfolio) guide(o guide.Options) (guide.Guide, error) {
	return guide.WritePortfolio(a.Portfolio, o)
}

// draw draws the pieces of all layers. Readings are written for the finest of
// their rulers, on which every one of them lies.
func (a *portfolio) draw(title, language string) *draw.Drawing {
	if title == "" {
		title = portfolioTitle
	}
	say := wordsOf(&language)
	pieces := a.SideBySide(func(l *solve.Layer, piece string) string {
		if piece == "" {
			return l.Title(say)
		}
		return l.Title(say) + ": " + say(piece)
	})
	return draw.New(&pieces, draw.Options{Title: title, Step: a.finest(), Say: say, Language: language})
}

// wordsOf returns how a language says the words of a drawing; without one it
// chooses the first that there is.
func wordsOf(language *string) func(string) string {
	if *language == "" {
		*language = guide.Languages()[0]
	}
	say, err := guide.Words(*language)
	if err != nil {
		panic(err) // it is one of the choices
	}
	return say
}
