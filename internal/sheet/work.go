package sheet

import (
	"cmp"
	"iter"
	"slices"

	"creasefit/internal/measure"
)

// Work is what an order asks of a person: for one sheet at a time, so that a
// stack saves its share.
type Work struct {
	Settings int // positions that the trimmer is set to, one after another
	Cuts     int
	Turns    int // of a part between two cuts, a quarter or half round
	Stages   int // most directions one after another from a trimmed sheet to a blank
}

// Setting is one position of the trimmer and all cuts that are made at it
// before it is set anew, in any of the plans.
type Setting struct {
	Reading measure.Length
	Cuts    int
	Steps   []StepAt
}

// StepAt is a step of a plan, by their indices.
type StepAt struct{ Plan, Step int }

// Settle puts all steps of some plans into an order in which the trimmer is set
// anew as rarely as can be seen: a setting makes every cut of its length whose
// part is there by then.
func Settle(plans []Sheets) ([]Setting, Work) {
	t := newTable(plans)
	var list []Setting
	work := Work{}
	for t.left > 0 {
		s := t.set(t.choose())
		list = append(list, s)
		work.Cuts += s.Cuts
	}
	work.Settings = len(list)
	for i := range plans {
		work.Turns += plans[i].Times * turnsOf(plans[i].Steps)
		work.Stages = max(work.Stages, plans[i].Tree.Stages())
	}
	return list, work
}

// Usable is an offcut worth keeping, and how many sheets leave one like it.
type Usable struct {
	Extent
	Times int
}

// Sum puts the plans of an answer with what has priority first, and fills in what
// follows from them: the settings, the work and the usable offcuts.
func (o Order) Sum(a *Answer) {
	if o.Prioritized() {
		slices.SortStableFunc(a.Plans, func(s, t Sheets) int { return cmp.Compare(o.RankOf(&s), o.RankOf(&t)) })
	}
	a.Settings, a.Work = o.settle(a.Plans)
	a.ready(len(o.Items))
	a.Usable = nil
	for i := range a.Plans {
		for _, r := range a.Plans[i].Offcuts {
			if !r.Width.Less(o.Least) && !r.Height.Less(o.Least) {
				a.keep(Extent{r.Width, r.Height}, a.Plans[i].Times)
			}
		}
	}
	slices.SortStableFunc(a.Usable, func(x, y Usable) int { return cmp.Compare(y.area(), x.area()) })
}

// keep adds offcuts of a size.
func (a *Answer) keep(size Extent, times int) {
	for i := range a.Usable {
		if a.Usable[i].Extent == size {
			a.Usable[i].Times += times
			return
		}
	}
	a.Usable = append(a.Usable, Usable{size, times})
}

// area is in square millimetres.
func (e Extent) area() float64 { return e.Width.Millimetres() * e.Height.Millimetres() }

// turnsOf counts how often a part is turned before it is cut.
func turnsOf(steps []Step) int {
	turns, along := 0, make([]Axis, partsOf(steps))
	for i := range steps {
		s := &steps[i]
		for _, part := range s.Parts {
			if part > 0 && along[part] != s.Cut || s.Turned {
				turns++
			}
		}
		for part := range s.made() {
			along[part] = s.Cut
		}
	}
	return turns
}

// partsOf is how many parts there are in all, the sheet among them.
func partsOf(steps []Step) int {
	n := 1
	for i := range steps {
		n += len(steps[i].Low) + len(steps[i].Rest)
	}
	return n
}

// made are the parts that a step makes.
func (s *Step) made() iter.Seq[int] {
	return func(yield func(int) bool) {
		for _, list := range [...][]int{s.Low, s.Rest} {
			for _, part := range list {
				if !yield(part) {
					return
				}
			}
		}
	}
}

// Stages is the greatest number of directions of cutting, one after another, on
// the way to a leaf.
func (n *Node) Stages() int {
	if !n.IsCut() {
		return 0
	}
	most := 0
	for _, part := range []*Node{n.Low, n.High} {
		deep := part.Stages()
		if !part.IsCut() || part.Cut != n.Cut {
			deep++
		}
		most = max(most, deep)
	}
	return most
}

// table is what lies on the table while an order is cut: of every plan the parts
// that there are, and the steps still to be made.
type table struct {
	plans []Sheets
	since [][]int // of every part, the look at which it was there; there for good from look 0 on
	look  int
	left  int // steps
	marks []measure.Length
	steps map[measure.Length][]StepAt // still to be made, by the mark that they are set to
}

// absent is the look of a part that nothing has made.
const absent = -1

// newTable lays a sheet of every plan out.
func newTable(plans []Sheets) *table {
	t := &table{plans: plans, steps: map[measure.Length][]StepAt{}}
	for i := range plans {
		since := slices.Repeat([]int{absent}, partsOf(plans[i].Steps))
		since[0] = 0
		t.since = append(t.since, since)
		for n := range plans[i].Steps {
			mark := plans[i].Steps[n].Reading
			if t.steps[mark] == nil {
				t.marks = append(t.marks, mark)
			}
			t.steps[mark] = append(t.steps[mark], StepAt{i, n})
			t.left++
		}
	}
	return t
}

// choose returns the mark to set next: one that is not needed again, else the
// one that makes the most steps.
func (t *table) choose() measure.Length {
	best, most := measure.Length{}, 0
	for _, mark := range t.marks {
		n := t.ready(mark)
		if n > 0 && n == len(t.steps[mark]) {
			return mark
		}
		if n > most {
			best, most = mark, n
		}
	}
	return best
}

// ready counts the steps that can be made at a mark one after another. Steps of
// a plan come after those that make their parts.
func (t *table) ready(mark measure.Length) int {
	t.look++
	n := 0
	for _, at := range t.steps[mark] {
		if t.can(at) {
			t.make(at, t.look)
			n++
		}
	}
	return n
}

// can reports whether the parts of a step are there, at this look or for good.
func (t *table) can(at StepAt) bool {
	for _, part := range t.plans[at.Plan].Steps[at.Step].Parts {
		if since := t.since[at.Plan][part]; since != 0 && since != t.look {
			return false
		}
	}
	return true
}

// make notes the parts that a step makes.
func (t *table) make(at StepAt, look int) {
	for part := range t.plans[at.Plan].Steps[at.Step].made() {
		t.since[at.Plan][part] = look
	}
}

// set makes all steps that can be made at a mark.
func (t *table) set(mark measure.Length) Setting {
	s, later := Setting{Reading: mark}, t.steps[mark][:0]
	t.look++
	for _, at := range t.steps[mark] {
		if !t.can(at) {
			later = append(later, at)
			continue
		}
		t.make(at, 0)
		st := &t.plans[at.Plan].Steps[at.Step]
		s.Cuts += t.plans[at.Plan].Times * len(st.Parts) * st.Repeat
		s.Steps = append(s.Steps, at)
	}
	t.left -= len(s.Steps)
	t.steps[mark] = later
	return s
}
