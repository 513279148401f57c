package sheet

import (
	"fmt"
	"strings"

	"creasefit/internal/measure"
)

// Step is one setting of the trimmer and every cut made at it. Parts are
// numbered: part 0 is the sheet, and every cut makes two new ones, the low
// part first.
type Step struct {
	Cut     Axis
	At      measure.Length // exact distance of the cut from the part's low edge: left or bottom
	Reading measure.Length // the mark nearest to At; equal to it if OnMark
	OnMark  bool
	Length  measure.Length // how long the cut is
	Trim    bool           // trims a margin
	Turned  bool           // measured from the right or the top: the part is turned round first
	Parts   []int          // cut alike; they may lie in one stack
	Repeat  int            // cuts made in each part, one after another, each in what the last left over
	Low     []int          // the low parts: all of the first part, then all of the next
	Rest    []int          // what is left of each part after its last cut
	Text    string         // what to do, in words
}

// Part says what becomes of one part that is not cut any further.
type Part struct {
	ID     int
	Item   int // or Offcut
	Turned bool
}

// job is parts of the same size that are cut in the same way.
type job struct {
	parts []int
	node  *Node
	have  Extent
	sides bool // the margins at the sides of cuts across the sheet's long side are still there
	whole bool // the sheet itself, trimmed or not
}

// stepper turns a cut tree into steps.
type stepper struct {
	order Order
	steps []Step
	ends  []Part
	next  int
	words bool
	long  Axis // the sheet's side that is longer than the trimmer, where that matters
}

// run orders the cuts of a job: first all parallel cuts, strip after strip,
// then every group of equal strips.
func (s *stepper) run(j job) {
	if j.sides && !(j.node.IsCut() && j.node.Cut == s.long) {
		s.trimSides(j)
		return
	}
	var groups []job
	for rest := &j; rest != nil; {
		if !rest.node.IsCut() || rest.node.Cut != j.node.Cut {
			groups = merge(groups, *rest)
			break
		}
		var lows []job
		lows, rest = s.cut(*rest)
		for _, low := range lows {
			groups = merge(groups, low)
		}
	}
	for _, g := range groups {
		if g.node.IsCut() || g.sides {
			s.run(g)
			continue
		}
		s.end(g)
	}
}

// end says what becomes of the parts of a job that are not cut any further.
func (s *stepper) end(j job) {
	for _, id := range j.parts {
		s.ends = append(s.ends, Part{id, j.node.Item, j.node.Turned})
	}
}

// merge adds a job to those it can be stacked with.
func merge(groups []job, j job) []job {
	for i, g := range groups {
		if g.alike(j) {
			groups[i].parts = append(g.parts, j.parts...)
			return groups
		}
	}
	return append(groups, j)
}

// alike reports whether two jobs can be cut in one stack.
func (j job) alike(k job) bool { return j.have == k.have && j.sides == k.sides && Same(j.node, k.node) }

// Same reports whether two trees are cut alike into the same items.
func Same(a, b *Node) bool {
	if a.IsCut() != b.IsCut() {
		return false
	}
	if !a.IsCut() {
		return a.Item == b.Item && a.Turned == b.Turned
	}
	return a.Cut == b.Cut && a.At == b.At && Same(a.Low, b.Low) && Same(a.High, b.High)
}

// cut makes one step of a job: the same setting as often as strips of one width
// follow one another, however they are cut on.
func (s *stepper) cut(j job) (lows []job, rest *job) {
	n := j.node
	size, have := s.order.Divide(n.Cut, n.At, j.have)
	strips, after := []*Node{n.Low}, n.High
	for after.IsCut() && after.Cut == n.Cut && after.At == n.At {
		_, have = s.order.Divide(n.Cut, n.At, have)
		strips, after = append(strips, after.Low), after.High
	}
	st := s.setting(n.Cut, n.At, j.have.Along(n.Cut.Other()))
	st.Parts, st.Repeat = j.parts, len(strips)
	s.number(&st)
	for i, id := range st.Low {
		lows = merge(lows, job{parts: []int{id}, node: strips[i%len(strips)], have: size, sides: j.sides})
	}
	left := job{parts: st.Rest, node: after, have: have, sides: j.sides}
	if s.words {
		s.describe(&st, j, lows, left)
	}
	s.steps = append(s.steps, st)
	return lows, &left
}

// setting is a step with its reading and the length of its cuts.
func (s *stepper) setting(a Axis, at, length measure.Length) Step {
	ruler := s.order.Ruler
	return Step{Cut: a, At: at, Reading: ruler.Nearest(at), OnMark: at.IsMultipleOf(ruler), Length: length}
}

// number gives the new parts of a step their numbers.
func (s *stepper) number(st *Step) {
	for range st.Parts {
		for range st.Repeat {
			st.Low = append(st.Low, s.next)
			s.next++
		}
		st.Rest = append(st.Rest, s.next)
		s.next++
	}
}

// describe writes the step in words.
func (s *stepper) describe(st *Step, j job, lows []job, rest job) {
	var made []string
	parts := map[string]int{}
	for _, low := range lows {
		what := s.what(low)
		if parts[what] == 0 {
			made = append(made, what)
		}
		parts[what] += len(low.parts)
	}
	left, what := "", s.what(rest)
	switch {
	case !rest.node.IsCut() && rest.node.Item == Offcut:
	case parts[what] > 0:
		parts[what] += len(rest.parts)
	case !rest.node.IsCut():
		left = s.say(" What is left is %s.", times(len(rest.parts), what))
	}
	for i, what := range made {
		made[i] = times(parts[what], what)
	}
	cut := s.say(" Cut once: ")
	if st.Repeat > 1 {
		cut = s.say(" Cut %d times: ", st.Repeat)
	}
	st.Text = s.set(*st) + s.take(j) + cut + strings.Join(made, ", ") + "." + left
}

// what names the parts of a job: a blank, or a size.
func (s *stepper) what(j job) string {
	if !j.node.IsCut() && j.node.Item != Offcut && !j.sides {
		return s.order.ItemName(j.node.Item)
	}
	return s.size(j)
}

// size is that of the parts of a job.
func (s *stepper) size(j job) string {
	return s.say("%s by %s", s.text(j.have.Width), s.text(j.have.Height))
}

// set says where to set the trimmer.
func (s *stepper) set(st Step) string {
	text := s.say("Set %s across the "+st.Cut.String(), s.text(st.At))
	if !st.OnMark {
		text += s.say(" (nearest mark %s)", s.text(st.Reading))
	}
	return text + "."
}

// take says which parts are cut, and how many alike; nothing of the sheet itself.
func (s *stepper) take(j job) string {
	switch {
	case j.whole:
		return ""
	case len(j.parts) == 1:
		return s.say(" Take %s.", s.size(j))
	default:
		return s.say(" Stack %d of %s.", len(j.parts), s.size(j))
	}
}

// times counts things.
func times(n int, what string) string { return fmt.Sprintf("%d x %s", n, what) }

// text writes a length for the order's ruler.
func (s *stepper) text(l measure.Length) string { return s.order.Reading(s.order.Ruler.Format(l)) }

// say says a text in the order's language with values in its places.
func (s *stepper) say(text string, values ...any) string {
	return fmt.Sprintf(s.order.Word(text), values...)
}
