package guide

import (
	"slices"

	"creasefit/internal/solve"
)

// WritePortfolio writes the making instructions of enclosures round one
// another: those of each, from the inside out, in one. The error is a
// fault.Fault for a language that there is no catalogue of.
func WritePortfolio(p *solve.Portfolio, o Options) (Guide, error) {
	c, err := catalogueOf(o.Language)
	if err != nil {
		return Guide{}, err
	}
	w := newWriter(p.Solutions[len(p.Solutions)-1], c, o.Units)
	whole := Guide{Language: c.Language, Kind: "portfolio", Labels: w.labels(), Title: w.say("portfolio.title", nil)}
	var titles []string
	for i, s := range p.Solutions {
		g, err := Write(s, o)
		if err != nil {
			return Guide{}, err
		}
		title := p.Layers[i].Title(c.word)
		titles = append(titles, title)
		if i > 0 { // what goes in is the layer before
			g.Materials = g.Materials[:len(g.Materials)-1]
		}
		whole.join(&g, title)
	}
	out := &w.s.Outside
	whole.Summary = w.say("portfolio.summary", args{"layers": w.list(titles)}) + " " +
		w.say("summary.outside", args{"sizes": w.sizes(out.Width, out.Height, out.Thickness)})
	return whole, nil
}

// join adds the guide of one layer. What all layers have in common is said
// once, all else is said of the layer.
func (g *Guide) join(layer *Guide, title string) {
	of := title + ": "
	for _, m := range layer.Materials {
		if len(m.Numbers) > 0 {
			m.Text = of + m.Text
		}
		if !slices.ContainsFunc(g.Materials, m.same) {
			g.Materials = append(g.Materials, m)
		}
	}
	for _, tool := range layer.Tools {
		if !slices.ContainsFunc(g.Tools, tool.same) {
			g.Tools = append(g.Tools, tool)
		}
	}
	for _, b := range layer.CutList {
		if b.Piece = of + b.Piece; len(layer.CutList) == 1 {
			b.Piece = title
		}
		g.CutList = append(g.CutList, b)
	}
	for _, s := range layer.Steps {
		s.Title = of + s.Title
		g.Steps = append(g.Steps, s)
	}
	for _, caution := range layer.Cautions {
		if !slices.Contains(g.Cautions, caution) {
			g.Cautions = append(g.Cautions, caution)
		}
	}
	for _, note := range layer.FitNotes {
		g.FitNotes = append(g.FitNotes, of+note)
	}
	for _, warning := range layer.Warnings {
		warning.Text = of + warning.Text
		g.Warnings = append(g.Warnings, warning)
	}
}

// same reports whether two items are told in the same words.
func (i Item) same(other Item) bool { return i.Text == other.Text }
