package guide

import (
	"strings"

	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// Write writes the making instructions of a solution. The error is a
// fault.Fault for a language that there is no catalogue of, and for a solution that
// no order of work is found for.
func Write(s *solve.Solution, o Options) (Guide, error) {
	c, err := catalogueOf(o.Language)
	if err != nil {
		return Guide{}, err
	}
	return newWriter(s, c, o.Units).guide(o.Brief)
}

// Warnings are the warnings of a solution, as its guide writes them. The error is a
// fault.Fault for a language that there is no catalogue of.
func Warnings(s *solve.Solution, language string) ([]Warning, error) {
	c, err := catalogueOf(language)
	if err != nil {
		return nil, err
	}
	return newWriter(s, c, OfRuler).warnings(), nil
}

// guide writes the guide.
func (w *writer) guide(brief bool) (Guide, error) {
	s, c := w.s, w.c
	steps, err := []Step{}, error(nil)
	if w.order = (&assembly.Order{}); !brief {
		steps, err = w.steps()
	}
	if err != nil {
		return Guide{}, err
	}
	if w.marks = s.Step; w.finer {
		w.marks = s.Request.Ruler
	}
	kind := s.Request.Kind.In(c.Language)
	return Guide{
		Language: c.Language, Kind: s.Request.Kind.Name,
		Title: kind.Title, Summary: w.summary(kind),
		Labels: c.Labels, Materials: w.materials(), Tools: w.tools(), CutList: w.cutList(),
		Steps: steps, Cautions: w.cautions(), FitNotes: w.fitNotes(), Warnings: w.warnings(),
	}, nil
}

// summary says what is made and for what.
func (w *writer) summary(kind enclosure.Words) string {
	out := &w.s.Outside
	text := kind.Help
	if sizes := w.contents(); sizes != "" {
		key := map[bool]string{true: "summary.into", false: "summary.contents"}[w.s.Pattern.Cavity.Into]
		text += " " + w.say(key, args{"sizes": sizes})
	}
	if !out.Width.IsZero() {
		text += " " + w.say("summary.outside"+w.flat(), args{"sizes": w.sizes(out.Width, out.Height, out.Thickness)})
	}
	if len(w.units) == 1 && w.units[0] != w.ruler {
		text += " " + w.say("summary.converted", args{"unit": w.c.Units[w.ruler.String()]})
	}
	if len(w.units) == 2 {
		text += " " + w.say("summary.both", args{"unit": w.c.Units[w.ruler.String()]})
	}
	w.take()
	return text
}

// step writes a ruler step.
func (w *writer) step(s measure.Step) string {
	return w.reading(s.Size(), s.Unit()) + noBreak + w.c.Units[s.Unit().String()]
}

// contents writes the sizes of the contents that the request names.
func (w *writer) contents() string {
	r := w.s.Request
	return w.sizes(r.Width, r.Height, r.Thickness)
}

// sizes writes the sizes that are known, "3 1/2 in wide, 2 in high and 0.09 in thick".
func (w *writer) sizes(width, height, thickness measure.Length) string {
	var parts []string
	for _, size := range []struct {
		key string
		of  measure.Length
	}{{"width", width}, {"height", height}, {"thickness", thickness}} {
		if !size.of.IsZero() {
			parts = append(parts, w.say("size."+size.key, args{size.key: known(size.of)}))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return w.list(parts)
}

// cutList lists the blanks.
func (w *writer) cutList() []Blank {
	blanks := make([]Blank, len(w.s.Pattern.Pieces))
	for i := range w.s.Pattern.Pieces {
		p := &w.s.Pattern.Pieces[i]
		blanks[i] = Blank{
			Piece: sentence(w.name(noun(p.Name), "")), Quantity: p.Quantity,
			Width:  w.number("width", w.each(p.Width, w.reading), p.Width),
			Height: w.number("height", w.each(p.Height, w.reading), p.Height),
		}
	}
	return blanks
}

// steps writes all steps in the order of work, and what comes on top of it. The
// error is a fault.Fault if there is no order.
func (w *writer) steps() ([]Step, error) {
	o, err := assembly.Find(&w.s.Ideal, &w.s.Pattern, w.s.Proof.Tolerance)
	if err != nil {
		return nil, err
	}
	w.order = o
	steps := w.add(w.work(o), StageDress, &w.s.Pattern.Pieces[0], w.dress)
	if w.s.Ornament != nil {
		steps[len(steps)-1].Order = []int{w.works()}
	}
	return steps, nil
}

// works is how many steps the order of work has; an ornament is the last.
func (w *writer) works() int {
	if w.s.Ornament != nil {
		return len(w.order.Steps) + 1
	}
	return len(w.order.Steps)
}

// add appends a step if there is anything to do in it.
func (w *writer) add(steps []Step, stage Stage, p *pattern.Piece, write func(*pattern.Piece) (Step, bool)) []Step {
	w.take()
	step, any := write(p)
	if !any {
		return steps
	}
	step.Stage, step.Numbers = stage, w.take()
	if stage == StageScore || stage == StageSlit {
		w.likeBefore(&step, noun(p.Name))
	}
	if w.papers {
		step.After = joined([]string{step.After, w.onceOnly("papers.text")})
	}
	return append(steps, step)
}

// likeBefore shortens a step whose lines are those of an earlier one.
func (w *writer) likeBefore(step *Step, of noun) {
	if len(step.Lines) == 0 {
		return
	}
	lines := strings.Join(step.Lines, "\n")
	if before, ok := w.did[lines]; ok {
		step.Text, step.Lines, step.Numbers = w.say("like", args{"piece": before}), nil, nil
		w.take()
		return
	}
	w.did[lines] = of
}

// title is the title of a step with a piece.
func (w *writer) title(key string, p *pattern.Piece) string {
	return sentence(w.say(key+".title", args{"piece": noun(p.Name)}))
}
