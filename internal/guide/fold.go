package guide

import (
	"math"

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
		text = append(text, w.onceOnly("fold.meet.edges"))
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
