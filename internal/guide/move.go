package guide

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/assembly"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// move says how one move of the order is made.
func (w *writer) move(s *assembly.Step) (lines []string) {
	lines = append(lines, w.spreads(s)...)
	switch {
	case s.Do == assembly.PutIn:
		lines = append(lines, w.fill(s))
	case len(s.Locks) > 0:
		for _, k := range s.Locks {
			lines = append(lines, w.lock(&w.s.Pattern.Locks[k])...)
		}
	case len(s.Nests) > 0:
		for _, k := range s.Nests {
			lines = append(lines, w.nest(&w.s.Pattern.Nests[k], s.Travels[0].Turned))
		}
	case len(s.Travels) > 0:
		lines = append(lines, w.laid(s))
	default:
		lines = append(lines, w.turns(s)...)
		lines = append(lines, w.hooks(s)...)
	}
	if flex := measure.Micrometres(int64(math.Round(s.Flex * 1000))); !flex.Less(w.s.Request.Caliper) {
		lines = append(lines, w.say("turn.flex", args{"flex": fine(flex)}))
	}
	return lines
}

// turns says which panels are turned and how far: those that turn alike in one
// line, a panel with one that hangs on it in a line of their own.
func (w *writer) turns(s *assembly.Step) (lines []string) {
	said := map[string]bool{}
	for i := range s.Turns {
		t := &s.Turns[i]
		p, c := w.crease1(t)
		if t.Path != nil {
			if i+1 < len(s.Turns) && s.Turns[i+1].Group == t.Group {
				child := s.Turns[i+1].Panel
				lines = append(lines, sentence(w.say("turn.pair", args{"of": noun(p.Panels[t.Panel].Name), "child": noun(p.Panels[child].Name)})))
			}
			continue
		}
		how := w.how(p, c)
		if said[how] {
			continue
		}
		said[how] = true
		lines = append(lines, w.turnLine(s, how, int(math.Round(c.Angle))))
	}
	return lines
}

// crease1 returns the piece and the crease of a turn.
func (w *writer) crease1(t *assembly.Turn) (*pattern.Piece, *pattern.Crease) {
	p := &w.s.Pattern.Pieces[t.Piece]
	return p, &p.Creases[t.Crease]
}

// turnLine says that all panels of a move that turn alike are turned: up if one of
// them turns from the panel that lies on the table, as long as nothing is inside.
func (w *writer) turnLine(s *assembly.Step, how string, angle int) string {
	var parts parts
	way := "in."
	for i := range s.Turns {
		if p, c := w.crease1(&s.Turns[i]); w.how(p, c) == how {
			parts = parts.with(noun(p.Panels[s.Turns[i].Panel].Name))
			switch {
			case c.Fold == pattern.Mountain:
				way = "back."
			case c.From == p.Root && s.Do != assembly.Close && !c.Bends():
				way = "up."
			}
		}
	}
	turn := told{"turn." + way + strings.TrimPrefix(how, "back "), args{"parts": parts, "angle": angle}}
	switch onto := w.onto(s); {
	case len(s.Glues) > 0 && len(onto) == 0:
		return sentence(w.say("turn.down", args{"turn": turn, "n": len(parts)}))
	case len(onto) > 0:
		return sentence(w.say("turn.press", args{"turn": turn, "to": onto, "n": len(parts)}))
	}
	return sentence(w.say("turn.only", args{"turn": turn}))
}

// how names how far a crease is folded. Panels that bend are folded flat on one
// another.
func (w *writer) how(p *pattern.Piece, c *pattern.Crease) string {
	switch {
	case c.Rolls():
		return "roll"
	case c.Bends():
		return "curve"
	case slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool { return c.Bends() }):
		return "over"
	case c.Fold == pattern.Mountain:
		return "back " + bend(c)
	default:
		return bend(c)
	}
}

// onto lists what the glued panels of a move are pressed onto: those that stay. A
// hem is pressed onto the panel that it hangs on, which goes without saying.
func (w *writer) onto(s *assembly.Step) (onto parts) {
	for _, a := range s.Glues {
		g, own, other := a.Of(&w.s.Pattern)
		switch {
		case own == other && hem(&w.s.Pattern.Pieces[own], g):
		case w.moved(s, own, g.Panel) || !w.moved(s, other, g.To):
			onto = onto.with(w.part(s, other, g.To))
		default:
			onto = onto.with(w.part(s, own, g.Panel))
		}
	}
	return onto
}

// hem reports whether a glue area sticks a panel to the one beside it.
func hem(p *pattern.Piece, g *pattern.Glue) bool {
	return slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool {
		return c.From == g.Panel && c.To == g.To || c.To == g.Panel && c.From == g.To
	})
}

// moved reports whether a panel is turned or travels in a move.
func (w *writer) moved(s *assembly.Step, piece, panel int) bool {
	return slices.ContainsFunc(s.Turns, func(t assembly.Turn) bool {
		return t.Piece == piece && t.Panel == panel
	}) || slices.ContainsFunc(s.Travels, func(t assembly.Travel) bool { return t.Piece == piece })
}

// hooks says how cuts lock into each other.
func (w *writer) hooks(s *assembly.Step) (lines []string) {
	for _, k := range s.Joints {
		p := &w.s.Pattern.Pieces[k.Piece]
		j := &p.Joints[k.Joint]
		lines = append(lines, w.say("close.joint", args{
			"a": noun(p.Cuts[j.A].Name), "b": noun(p.Cuts[j.B].Name),
			"pa": noun(p.Panels[j.PanelA].Name), "pb": noun(p.Panels[j.PanelB].Name),
		}))
	}
	return lines
}

// fill says how the contents go in: laid down, or slid in from an edge of the
// panel that they lie on.
func (w *writer) fill(s *assembly.Step) string {
	a := args{"root": noun(w.floor().Name), "what": w.inside}
	way := s.Travels[0].Way
	edge := entry(way[0], way[1], way[2])
	a["edge"] = told{key: "edge." + edge}
	closes := func(s assembly.Step) bool {
		return s.Do == assembly.Close && w.moved(&s, w.s.Pattern.Cavity.Piece, w.s.Pattern.Cavity.Panel)
	}
	switch {
	case edge != "" && slices.ContainsFunc(w.order.Steps, closes): // the panel that they lie on is turned later
		return sentence(w.say("fill.slide.open", a))
	case edge != "":
		return sentence(w.say("fill.slide", a))
	}
	return sentence(w.say("fill.lay", a))
}

// entry names the edge of the first blank that a way comes in from; "" if it
// comes down on it.
func entry(x, y, z float64) string {
	switch {
	case math.Abs(z) > math.Abs(x) && math.Abs(z) > math.Abs(y):
		return ""
	case math.Abs(y) >= math.Abs(x)-1e-9 && y < 0:
		return "top"
	case math.Abs(y) >= math.Abs(x)-1e-9:
		return "bottom"
	case x < 0:
		return "right"
	default:
		return "left"
	}
}

// parts are names that are listed in one sentence, each once.
type parts []any

func (ps parts) with(part any) parts {
	for _, p := range ps {
		if same(p, part) {
			return ps
		}
	}
	return append(ps, part)
}

// same reports whether two parts have one name.
func same(a, b any) bool {
	x, plainX := a.(noun)
	y, plainY := b.(noun)
	if plainX || plainY {
		return plainX && plainY && x == y
	}
	p, q := a.(told).a, b.(told).a
	return p["of"] == q["of"] && p["piece"] == q["piece"]
}

// part names a panel of a move: with its piece where whole pieces of one thing are
// brought together and both have such a panel.
func (w *writer) part(s *assembly.Step, piece, panel int) any {
	p := &w.s.Pattern.Pieces[piece]
	name := p.Panels[panel].Name
	if len(p.Panels) == 1 {
		return noun(p.Name)
	}
	for _, other := range s.Pieces {
		if len(s.Travels) > 0 && other != piece && slices.ContainsFunc(w.s.Pattern.Pieces[other].Panels, func(p pattern.Panel) bool { return p.Name == name }) {
			return told{"part", args{"of": noun(name), "piece": noun(p.Name)}}
		}
	}
	return noun(name)
}

// listed writes parts: three and more with one head word by that word alone, if
// the language has one for several of them.
func (w *writer) listed(ps parts, form string) string {
	var written []string
	done := map[string]bool{}
	for _, p := range ps {
		n, ok := p.(noun)
		if !ok {
			written = append(written, w.tell(p.(told)))
			continue
		}
		head := headword(string(n))
		if done[head] {
			continue
		}
		if count := ps.headed(head); count > 2 && count == w.most(head) {
			if many, ok := w.c.Many[head]; ok {
				done[head] = true
				written = append(written, w.write(many, head, args{"n": count}))
				continue
			}
		}
		written = append(written, w.name(n, form))
	}
	return w.list(written)
}

// most returns how many panels of one thing have a head word.
func (w *writer) most(head string) (most int) {
	count := map[noun]int{}
	for i := range w.s.Pattern.Pieces {
		for _, p := range w.s.Pattern.Pieces[i].Panels {
			if headword(p.Name) == head {
				count[w.together(i)]++
			}
		}
	}
	for _, n := range count {
		most = max(most, n)
	}
	return most
}

// headed counts the parts with a head word.
func (ps parts) headed(head string) (count int) {
	for _, p := range ps {
		if n, ok := p.(noun); ok && headword(string(n)) == head {
			count++
		}
	}
	return count
}

// headword is the word of an English name that says what it is: "tab" of "lower
// left tab", "flap" of "flap 3" and of "flap of the front".
func headword(name string) string {
	name, _, _ = strings.Cut(name, " of the ")
	words := strings.Fields(name)
	if _, err := strconv.Atoi(words[len(words)-1]); err == nil && len(words) > 1 {
		words = words[:len(words)-1]
	}
	return words[len(words)-1]
}
