package api

import (
	"context"
	"slices"

	"creasefit/api/ask"
	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// solved is what a guide or a drawing is asked for of, with its measurements:
// one enclosure, or several round one another.
type solved interface {
	guide(guide.Options) (guide.Guide, error)
	// draw lays the pattern out under a title, or its own if that is empty, in a
	// language that was checked.
	draw(title, language string, as ask.Layout) (*draw.Drawing, error)
	// works are what is made one after another.
	works(language string) []draw.Work
	// name is that of the kind.
	name() string
}

// solveSubject solves what is asked for.
func solveSubject[Q ask.Subject](ctx context.Context, q Q) (solved, error) {
	switch q := any(q).(type) {
	case *ask.Portfolio:
		p, err := solve.SolvePortfolio(ctx, q.Layers)
		return &portfolio{q, p}, err
	case *ask.Enclosure:
		s, err := solve.Solve(ctx, q.Request)
		return oneSolved{s}, err
	default:
		panic("no other subject")
	}
}

// oneSolved is the solution of one enclosure.
type oneSolved struct{ *solve.Solution }

func (s oneSolved) guide(o guide.Options) (guide.Guide, error) { return guide.Write(s.Solution, o) }

func (s oneSolved) draw(title, language string, as ask.Layout) (*draw.Drawing, error) {
	if title == "" {
		title = s.Request.Kind.Title
	}
	o := s.drawn(title, language)
	o.Clearances = clearances(s.Solution)
	return as(&s.Pattern, o, s.works(language))
}

func (s oneSolved) name() string { return s.Request.Kind.Name }

func (s oneSolved) works(language string) []draw.Work {
	return []draw.Work{{Pattern: &s.Pattern, Options: s.drawn(s.Request.Kind.Title, language), Order: s.order}}
}

// drawn is how it is drawn.
func (s oneSolved) drawn(title, language string) draw.Options {
	o := draw.Options{Title: title, Step: s.Step, Stops: s.Settings, Say: wordsOf(language), Language: language}
	if s.Ornament != nil {
		o.Beside = []pattern.Piece{s.Ornament.Piece()}
	}
	return o
}

// clearances are those of a solution, each named by the words before and its own.
func clearances(s *solve.Solution, words ...string) []draw.Clearance {
	list := make([]draw.Clearance, len(s.Fits))
	for i := range s.Fits {
		f := &s.Fits[i]
		name := slices.Clone(words)
		if f.Between != "" {
			name = append(name, f.Between)
		}
		list[i] = draw.Clearance{Name: append(name, f.Axis.String()), Least: f.Window.Min, Most: f.Window.Max,
			Low: f.RSS.Min, High: f.RSS.Max, Enough: f.Give.Neg(), Chance: f.Chance}
	}
	return list
}

// order finds the order of the work.
func (s oneSolved) order() (*assembly.Order, error) {
	o, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
	if err != nil || s.Ornament == nil {
		return o, err
	}
	return o.Dressed(s.whole()), nil
}

// whole is the pattern with what is laid on it when it is closed.
func (s *oneSolved) whole() *pattern.Pattern {
	o := s.drawn("", "")
	return o.Whole(&s.Pattern)
}

func (a *portfolio) guide(o guide.Options) (guide.Guide, error) {
	return guide.WritePortfolio(a.Portfolio, o)
}

// draw draws the pieces of all layers. Readings are written for the finest of
// their rulers, on which every one of them lies.
func (a *portfolio) draw(title, language string, as ask.Layout) (*draw.Drawing, error) {
	if title == "" {
		title = portfolioTitle
	}
	say := wordsOf(language)
	pieces := a.SideBySide(func(l *solve.Layer, piece string) string {
		if piece == "" {
			return l.Title(say)
		}
		return l.Title(say) + ": " + say(piece)
	})
	var list []draw.Clearance
	for i, s := range a.Solutions {
		list = append(list, clearances(s, a.Layers[i].Title(say))...)
	}
	return as(&pieces, draw.Options{Title: title, Step: a.finest(), Say: say, Language: language, Clearances: list}, a.works(language))
}

func (a *portfolio) name() string { return portfolioName }

// works are the layers from the innermost on.
func (a *portfolio) works(language string) (works []draw.Work) {
	for i, s := range a.Solutions {
		work := oneSolved{s}.works(language)[0]
		work.Name = a.Layers[i].Title(wordsOf(language))
		work.Options.Title = work.Name
		works = append(works, work)
	}
	return works
}

// wordsOf returns how a language says the words of a drawing.
func wordsOf(language string) func(string) string {
	say, err := guide.Words(language)
	if err != nil {
		panic(err) // it is one of the choices
	}
	return say
}

// finest is the finest of the rulers that the readings are for.
func (a *portfolio) finest() measure.Step {
	finest := a.Solutions[0].Step
	for _, s := range a.Solutions[1:] {
		if s.Step.Size().Less(finest.Size()) {
			finest = s.Step
		}
	}
	return finest
}
