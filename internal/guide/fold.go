package guide

import (
	"math"
	"slices"
	"strings"

	"creasefit/internal/pattern"
)

// fold is folding the scores of a piece once, the outermost first.
func (w *writer) fold(p *pattern.Piece) (Step, bool) {
	if len(p.Creases) == 0 {
		return Step{}, false
	}
	step := Step{Title: w.title("fold", p), Text: w.say("fold.text", nil)}
	for _, g := range foldGroups(p) {
		c := &p.Creases[g[0]]
		scores, n := w.creases(p, g)
		a := args{"n": n, "scores": scores, "angle": int(math.Round(c.Angle))}
		step.Lines = append(step.Lines, sentence(w.say("fold."+c.Fold.String()+"."+bend(c), a)))
	}
	step.After = strings.Join(w.care(p), " ")
	return step, true
}

// bend names how far a crease is folded; one that lies open only lets the
// enclosure fold flat.
func bend(c *pattern.Crease) string {
	switch math.Round(c.Angle) {
	case 0:
		return "open"
	case 90:
		return "square"
	case 180:
		return "over"
	default:
		return "angle"
	}
}

// foldGroups gathers the creases, by index, that are folded alike, those
// farthest from the panel that stays still first.
func foldGroups(p *pattern.Piece) [][]int {
	order := make([]int, len(p.Creases))
	for i := range order {
		order[i] = i
	}
	depth := lineDepths(p)
	slices.SortStableFunc(order, func(i, j int) int { return depth[p.Creases[j].Name] - depth[p.Creases[i].Name] })
	var groups [][]int
	for _, i := range order {
		c := &p.Creases[i]
		last := len(groups) - 1
		if last >= 0 {
			d := &p.Creases[groups[last][0]]
			if d.Fold == c.Fold && bend(d) == bend(c) && math.Round(d.Angle) == math.Round(c.Angle) {
				groups[last] = append(groups[last], i)
				continue
			}
		}
		groups = append(groups, []int{i})
	}
	for _, g := range groups {
		slices.Sort(g)
	}
	return groups
}

// depths returns for each panel how many creases lie between it and the root.
func depths(p *pattern.Piece) []int {
	depth := make([]int, len(p.Panels))
	for range p.Creases { // each pass settles at least one more panel
		for i := range p.Creases {
			c := &p.Creases[i]
			depth[c.To] = depth[c.From] + 1
		}
	}
	return depth
}

// lineDepths returns for each score how deep its deepest crease lies: all of
// them are folded together.
func lineDepths(p *pattern.Piece) map[string]int {
	depth, deepest := depths(p), make(map[string]int, len(p.Creases))
	for i := range p.Creases {
		c := &p.Creases[i]
		deepest[c.Name] = max(deepest[c.Name], depth[c.To])
	}
	return deepest
}

// creases lists the names of creases, each once, and says how many there are.
func (w *writer) creases(p *pattern.Piece, which []int) (list string, n int) {
	if len(which) == len(p.Creases) && len(which) > 2 {
		return w.say("scores.all", nil), len(which)
	}
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
