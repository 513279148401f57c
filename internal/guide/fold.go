package guide

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// bend names how far a crease is folded; one that lies open only lets the
// enclosure fold flat.
func bend(c *pattern.Crease) string {
	switch math.Round(c.Angle) {
	case 90:
		return "square"
	case 180:
		return "over"
	default:
		return "angle"
	}
}

// creases lists the names of creases, each once, and says how many there are.
func (w *writer) creases(p *pattern.Piece, which []int) (list string, n int) {
	var names []string
	for _, i := range which {
		if name := w.crease(p, &p.Creases[i]); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return w.list(names), len(names)
}

// care says what must not be pressed sharp at once: where two creases or two
// edges must meet, and folds that go round something.
func (w *writer) care(p *pattern.Piece) []string {
	var text []string
	for i := range p.Joints {
		j := &p.Joints[i]
		a, b := p.Cuts[j.A].On, p.Cuts[j.B].On
		if a != "" && b != "" {
			text = append(text, sentence(w.say("fold.meet.scores", args{"a": noun(a), "b": noun(b)})))
		}
	}
	if len(text) == 0 && len(p.Seams) > 0 {
		text = append(text, w.say("fold.meet.edges", nil))
	}
	var thick []int
	for i := range p.Creases {
		if c := &p.Creases[i]; w.s.Pattern.Caliper.Less(c.Round) {
			thick = append(thick, i)
		}
	}
	if len(thick) > 0 {
		scores, n := w.creases(p, thick)
		text = append(text, w.say("fold.round", args{"n": n, "scores": scores}))
	}
	return text
}
