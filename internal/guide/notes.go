package guide

import (
	"context"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/solve"
)

// sure is the chance from which a fit counts as certain: 199 of 200.
const sure = 0.995

// fitNotes says how the contents go in and what would make it tighter or
// looser.
func (w *writer) fitNotes() []string {
	var notes []string
	for i := range w.s.Fits {
		notes = append(notes, w.fitNote(&w.s.Fits[i]))
	}
	if last := len(notes) - 1; last >= 0 && w.s.Sure.Chance >= sure {
		notes[last] += " " + w.say("fit.sure", nil)
	} else if last >= 0 {
		notes = append(notes, w.say("fit.chance", args{"n": hundredths(w.s.Sure.Chance)}))
	}
	for i := range w.s.Alternatives {
		notes = append(notes, w.alternative(&w.s.Alternatives[i], i)...)
	}
	if len(w.s.Fits) > 0 {
		notes = append(notes, w.otherFits()...)
	}
	w.take()
	return notes
}

// fitNote says how the contents go in along one axis. How sure that is is told of all
// axes at once, since a piece has to pass every one.
func (w *writer) fitNote(f *solve.Fit) string {
	return sentence(w.say("fit.note", args{
		"where": w.where(f), "verdict": told{key: "verdict." + f.Verdict}, "clearance": fine(f.Nominal),
		"from": fine(f.RSS.Min), "to": fine(f.RSS.Max),
	}))
}

// hundredths is a chance in whole hundredths, downwards.
func hundredths(chance float64) int { return int(chance*100 + 1e-9) }

// alternative says what a finer step would leave along each axis, unless the answer or
// an earlier alternative leaves the same.
func (w *writer) alternative(alt *solve.Alternative, index int) []string {
	var leaves []string
	for i, f := range alt.Fits {
		own := &w.s.Fits[i]
		known := own.Nominal == f.Nominal || slices.ContainsFunc(w.s.Alternatives[:index], func(a solve.Alternative) bool {
			return a.Fits[i].Nominal == f.Nominal
		})
		if !known {
			leaves = append(leaves, w.say("fit.leaves", args{"where": w.where(own), "clearance": fine(f.Nominal), "instead": fine(own.Nominal)}))
		}
	}
	if leaves == nil {
		return nil
	}
	return []string{w.say("fit.step", args{"step": w.step(alt.Step), "leaves": w.list(leaves)})}
}

// otherFits points to the nearest named fits beside the one that was asked for that
// there are readings for, too.
func (w *writer) otherFits() []string {
	named := enclosure.NamedFits()
	at := slices.IndexFunc(named, func(f enclosure.NamedFit) bool { return f.Name == w.s.Request.FitName })
	if at < 0 {
		return []string{w.say("fit.window", nil)}
	}
	tighter, looser := slices.Clone(named[:at]), named[at+1:]
	slices.Reverse(tighter)
	return append(w.ask("fit.ask.tighter", tighter), w.ask("fit.ask.looser", looser)...)
}

// ask says which of the fits to ask for instead: the first with an answer.
func (w *writer) ask(key string, fits []enclosure.NamedFit) []string {
	for _, f := range fits {
		changed := *w.s.Request
		changed.FitName, changed.Fit = f.Name, f.Range(changed.Ruler.Unit())
		if _, err := solve.Solve(context.Background(), &changed); err == nil {
			return []string{w.say(key, args{"fit": f.Name, "word": told{key: "verdict." + f.Name}})}
		}
	}
	return nil
}

// warnings writes the warnings of the solution: in the catalogue's words if it
// has some, else as they are.
func (w *writer) warnings() []Warning {
	var warnings []Warning
	for _, from := range w.s.Warnings {
		said := Warning{from.Code, from.Detail}
		if m, ok := w.c.Warnings[w.variant(&from)]; ok {
			said.Text = w.write(m, from.Code, w.warned(&from))
		}
		if !slices.Contains(warnings, said) {
			warnings = append(warnings, said)
		}
	}
	w.take()
	return warnings
}

// warned are the arguments that the words of a warning may use.
func (w *writer) warned(from *enclosure.Warning) args {
	a := args{"caliper": fine(w.s.Request.Caliper), "try": from.Try.Name + "=" + from.Try.Choice}
	if least, ok := w.unsure(); ok {
		a["of"], a["n"], a["between"] = noun(least.Axis.String()), hundredths(w.s.Sure.Chance), w.between(least)
	}
	return a
}

// variant names the words of a warning: others where they are about two pieces
// and not about the contents, or where something would do away with it.
func (w *writer) variant(from *enclosure.Warning) string {
	code := from.Code
	if least, ok := w.unsure(); code == "unsure-fit" && ok && least.Between != "" {
		code += ".between"
	}
	if from.Try.Name != "" {
		code += ".try"
	}
	return code
}

// unsure returns the fit that is least sure.
func (w *writer) unsure() (*solve.Fit, bool) {
	if w.s.Sure.Weakest < 0 || len(w.s.Fits) == 0 {
		return nil, false
	}
	return &w.s.Fits[w.s.Sure.Weakest], true
}
