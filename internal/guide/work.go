package guide

import (
	"slices"
	"strings"

	"creasefit/internal/assembly"
	"creasefit/internal/pattern"
)

// work writes all steps in the order of work: what blanks need, then what is done
// with one thing after another, several moves in one step.
func (w *writer) work(o *assembly.Order) (steps []Step) {
	for i := 0; i < len(o.Steps); {
		end := i + 1
		s := &o.Steps[i]
		p := &w.s.Pattern.Pieces[s.Pieces[0]]
		switch s.Do {
		case assembly.Cut:
			steps = w.add(steps, StageCut, p, w.cut)
		case assembly.Score:
			steps = w.add(steps, StageScore, p, w.score)
		case assembly.Slit:
			steps = w.add(steps, StageSlit, p, w.cuts)
		default:
			for end < len(o.Steps) && w.belong(o, i, end) {
				end++
			}
			steps = w.section(steps, o, i, end)
		}
		for k := len(steps) - 1; k >= 0 && steps[k].Order == nil; k-- {
			for step := i; step < end; step++ {
				steps[k].Order = append(steps[k].Order, step+1)
			}
		}
		i = end
	}
	return steps
}

// belong reports whether a move is told in one step with an earlier one: making one
// thing, or filling and closing it.
func (w *writer) belong(o *assembly.Order, first, next int) bool {
	a, b := &o.Steps[first], &o.Steps[next]
	if b.Do <= assembly.Slit || w.finishes(o, first) != w.finishes(o, next) {
		return false
	}
	return w.finishes(o, first) || w.made(a) == w.made(b)
}

// made names the thing that a move makes.
func (w *writer) made(s *assembly.Step) noun {
	if len(s.Travels) > 0 && len(s.Glues) > 0 {
		return w.together(s.Travels[0].Piece)
	}
	return w.together(s.Pieces[0])
}

// finishes reports whether a move is made when its parts are made: the contents
// have gone in or go in, or pieces go into one another.
func (w *writer) finishes(o *assembly.Order, step int) bool {
	joins := func(s assembly.Step) bool { return s.Do == assembly.PutIn || s.Do == assembly.Join || len(s.Locks) > 0 }
	return slices.ContainsFunc(o.Steps[:step+1], joins)
}

// section writes several moves as one step.
func (w *writer) section(steps []Step, o *assembly.Order, first, end int) []Step {
	p := &w.s.Pattern.Pieces[o.Steps[first].Pieces[0]]
	last := !slices.ContainsFunc(o.Steps[end:], func(s assembly.Step) bool { return s.Do > assembly.Slit })
	stage, write := StageClose, w.finishing
	if !w.finishes(o, first) {
		stage, write = StageFold, w.making
		if slices.ContainsFunc(o.Steps[first:end], glues) {
			stage = StageGlue
		}
	}
	return w.add(steps, stage, p, func(p *pattern.Piece) (Step, bool) {
		step := write(p, o.Steps[first:end])
		for i := first; i < end; i++ {
			step.Lines = append(step.Lines, w.move(&o.Steps[i])...)
		}
		if stage != StageClose {
			w.likeBefore(&step, w.made(&o.Steps[first]))
		}
		if last {
			step.Lines = append(step.Lines, w.measures()...)
		}
		return step, true
	})
}

func glues(s assembly.Step) bool { return len(s.Glues) > 0 || s.Do == assembly.Glue }

// making begins the step in which a thing is folded and glued. What holds for all of
// them is said in the first.
func (w *writer) making(p *pattern.Piece, moves []assembly.Step) Step {
	key, text, after := "fold", []string{}, []string{}
	glued := slices.ContainsFunc(moves, glues)
	if glued {
		key = "make"
	}
	switch turned := slices.ContainsFunc(moves, func(s assembly.Step) bool { return len(s.Turns) > 0 }); {
	case turned && !p.Scored():
		key = "roll"
	case turned:
		text = append(text, w.onceOnly("fold.first"), w.onceOnly("fold.ways"))
		after = w.care(p)
	default:
		key, text = "lay", append(text, w.say("lay.text", nil))
	}
	if glued {
		text, after = append(text, w.onceOnly("glue.text")), append(after, w.onceOnly("glue.dry"))
	}
	title := sentence(w.say(key+".title", args{"piece": w.made(&moves[0])}))
	if key == "lay" && len(w.s.Pattern.Bonds) == 0 {
		title = w.say("place.title", nil)
	}
	return Step{Title: title, Text: joined(text), After: joined(after)}
}

// onceOnly says what is said only once in a guide.
func (w *writer) onceOnly(key string) string {
	if w.said[key] {
		return ""
	}
	w.said[key] = true
	return w.say(key, nil)
}

// joined makes a paragraph of what there is to say.
func joined(texts []string) string {
	return strings.Join(slices.DeleteFunc(texts, func(t string) bool { return t == "" }), " ")
}

// finishing begins the step in which the thing is filled and closed.
func (w *writer) finishing(_ *pattern.Piece, moves []assembly.Step) Step {
	key := "place"
	for i := range moves {
		if moves[i].Do == assembly.PutIn {
			key = "fill"
		}
	}
	if key == "fill" && len(moves) > 1 {
		key = "close"
	}
	step := Step{Title: w.say(key+".title", nil)}
	switch {
	case len(w.s.Pattern.Locks) > 0:
		step.Text = w.say("place.slotted", nil)
	case w.glued():
		step.Text = w.say("close.dry", nil)
	default:
		step.Text = w.say("close.gently", nil)
	}
	return step
}

// measures says how the finished thing is tried: what stays open, what it goes
// into and how its slots are.
func (w *writer) measures() (lines []string) {
	p := &w.s.Pattern
	for i := range p.Pieces {
		piece := &p.Pieces[i]
		lines = append(lines, w.seams(piece, piece, piece.Seams)...)
	}
	for i := range p.Bonds {
		b := &p.Bonds[i]
		lines = append(lines, w.seams(&p.Pieces[b.A], &p.Pieces[b.B], b.Seams)...)
	}
	if p.Cavity.Into {
		key := "close.into" + w.flat()
		if len(p.Locks) > 0 {
			key = "close.stand"
		}
		lines = append(lines, w.say(key, args{"sizes": w.contents()}))
	}
	lines = once(lines)
	for i := range w.s.Fits {
		if line, ok := w.spare(&w.s.Fits[i]); ok {
			lines = append(lines, line)
		}
	}
	return lines
}
