package guide

import (
	"slices"
	"strings"

	"creasefit/internal/fault"
	"creasefit/internal/solve"
)

// WritePortfolio writes the making instructions of enclosures round one
// another: each is made, from the inside out, before one goes into another.
// The error is a fault.Fault for a language that there is no catalogue of, and for
// a layer that no order of work is found for.
func WritePortfolio(p *solve.Portfolio, o Options) (Guide, error) {
	c, err := catalogueOf(o.Language)
	if err != nil {
		return Guide{}, err
	}
	w := newWriter(p.Solutions[len(p.Solutions)-1], c, o.Units)
	whole := Guide{Language: c.Language, Kind: "portfolio", Labels: c.Labels, Title: w.say("portfolio.title", nil), Steps: []Step{}}
	var titles []string
	var finishing []Step
	before := 0
	said := w.said
	for i, s := range p.Solutions {
		own := newWriter(s, c, o.Units)
		own.said = said
		if i > 0 {
			own.inside = outermost(p.Solutions[i-1], titles[i-1], c.Language)
		}
		g, err := own.guide(o.Brief)
		if err != nil {
			return Guide{}, fault.Under(p.Layers[i].Place, err)
		}
		title := p.Layers[i].Title(c.word)
		titles = append(titles, title)
		finishing = append(finishing, whole.join(&g, title, before)...)
		before += own.works()
		if i == 0 || own.marks.Size().Less(w.marks.Size()) {
			w.marks = own.marks
		}
	}
	whole.Tools = slices.Insert(whole.Tools, 0, w.ruled()) // the one with the finest marks does for all
	whole.Steps = append(whole.Steps, finishing...)
	out := &w.s.Outside
	whole.Summary = w.say("portfolio.summary", args{"layers": w.list(titles)}) + " " +
		w.say("summary.outside", args{"sizes": w.sizes(out.Width, out.Height, out.Thickness)})
	return whole, nil
}

// outermost names what is seen of a layer: its piece, or the layer if it is made of
// several.
func outermost(s *solve.Solution, title, language string) noun {
	w := writer{s: s}
	switch name := w.together(0); {
	case len(s.Pattern.Nests)+len(s.Pattern.Locks) == 0:
		return name
	case language == "en": // which writes the names of things small
		return noun(strings.ToLower(title))
	}
	return noun(title)
}

// join adds the guide of one layer, whose order of work begins after so many steps of
// the others, and returns the steps in which it is filled and
// closed: each layer is made before one goes into another. What all layers have in
// common is said once, all else is said of the layer; the ruler, its first tool, of all.
func (g *Guide) join(layer *Guide, title string, before int) (finishing []Step) {
	of := title + ": "
	for _, m := range layer.Materials {
		if len(m.Numbers) > 0 {
			m.Text = of + m.Text
		}
		g.Materials = addItem(g.Materials, m)
	}
	for _, tool := range layer.Tools[1:] {
		g.Tools = addItem(g.Tools, tool)
	}
	for _, b := range layer.CutList {
		if b.Piece = of + b.Piece; len(layer.CutList) == 1 {
			b.Piece = title
		}
		g.CutList = append(g.CutList, b)
	}
	for _, s := range layer.Steps {
		s.Title = of + s.Title
		for i := range s.Order {
			s.Order[i] += before
		}
		if s.Stage == StageClose || s.Stage == StageDress {
			finishing = append(finishing, s)
		} else {
			g.Steps = append(g.Steps, s)
		}
	}
	fresh := slices.DeleteFunc(slices.Clone(layer.Cautions), func(c string) bool { return slices.Contains(g.Cautions, c) })
	g.Cautions = append(g.Cautions, fresh...)
	for _, note := range layer.FitNotes {
		g.FitNotes = append(g.FitNotes, of+note)
	}
	for _, warning := range layer.Warnings {
		warning.Text = of + warning.Text
		g.Warnings = append(g.Warnings, warning)
	}
	return finishing
}

// addItem adds an item to a list that does not have it yet.
func addItem(items []Item, item Item) []Item {
	if slices.ContainsFunc(items, func(known Item) bool { return known.Text == item.Text }) {
		return items
	}
	return append(items, item)
}
