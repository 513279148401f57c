package sheet

import (
	"fmt"

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
		var low job
		low, rest = s.cut(*rest)
		groups = merge(groups, low)
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

// cut makes one step of a job: the same setting as often as equal strips
// follow one another.
func (s *stepper) cut(j job) (low job, rest *job) {
	n := j.node
	lowHave, have := s.order.Divide(n.Cut, n.At, j.have)
	repeat, after := 1, n.High
	for after.IsCut() && after.Cut == n.Cut && after.At == n.At && Same(after.Low, n.Low) {
		_, have = s.order.Divide(n.Cut, n.At, have)
		repeat, after = repeat+1, after.High
	}
	st := s.setting(n.Cut, n.At, j.have.Along(n.Cut.Other()))
	st.Parts, st.Repeat = j.parts, repeat
	s.number(&st)
	cut, left := job{st.Low, n.Low, lowHave, j.sides}, job{st.Rest, after, have, j.sides}
	if s.words {
		s.describe(&st, cut, left)
	}
	s.steps = append(s.steps, st)
	return cut, &left
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
func (s *stepper) describe(st *Step, low, rest job) {
	made, left := len(low.parts), ""
	switch {
	case low.alike(rest):
		made += len(rest.parts)
	case !rest.node.IsCut() && rest.node.Item != Offcut:
		left = s.say(" What is left is %s.", times(len(rest.parts), s.what(rest)))
	}
	st.Text = s.set(*st) + s.stack(st.Parts)
	if st.Repeat == 1 {
		st.Text += s.say(" Cut once: ")
	} else {
		st.Text += s.say(" Cut %d times: ", st.Repeat)
	}
	st.Text += times(made, s.what(low)) + "." + left
}

// what names the parts of a job: a blank, or a size.
func (s *stepper) what(j job) string {
	if !j.node.IsCut() && j.node.Item != Offcut && !j.sides {
		return s.order.ItemName(j.node.Item)
	}
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

// stack says how many parts are cut alike.
func (s *stepper) stack(parts []int) string {
	if len(parts) == 1 {
		return ""
	}
	return s.say(" Stack %d alike.", len(parts))
}

// times counts things.
func times(n int, what string) string { return fmt.Sprintf("%d x %s", n, what) }

// text writes a length for the order's ruler.
func (s *stepper) text(l measure.Length) string { return s.order.Reading(s.order.Ruler.Format(l)) }

// say says a text in the order's language with values in its places.
func (s *stepper) say(text string, values ...any) string {
	return fmt.Sprintf(s.order.Word(text), values...)
}
