package verify

import "creasefit/internal/sheet"

// work replays the settings of an answer over all its plans: every step is made
// once, at its own reading, when its parts are there, those of what has priority first.
func (v *verifier) work(a sheet.Answer) {
	parts, left := make([]map[int]bool, len(a.Plans)), 0
	for i := range a.Plans {
		parts[i] = map[int]bool{0: true}
		left += len(a.Plans[i].Steps)
	}
	cuts, stages, last := 0, 0, 0
	for i, s := range a.Settings {
		made := 0
		for _, at := range s.Steps {
			if at.Plan < 0 || at.Plan >= len(a.Plans) || at.Step < 0 || at.Step >= len(a.Plans[at.Plan].Steps) {
				v.expect(false, "setting %d has a step that there is not", i+1)
				return
			}
			st := &a.Plans[at.Plan].Steps[at.Step]
			v.expect(st.Reading == s.Reading, "setting %d makes a cut at %v", i+1, st.Reading)
			made += a.Plans[at.Plan].Times * len(st.Parts) * st.Repeat
			v.exchange(st, parts[at.Plan])
			left--
			rank := v.rank(&a.Plans[at.Plan])
			v.expect(last <= rank, "setting %d is of a plan that has priority over one before it", i+1)
			last = rank
		}
		v.expect(made == s.Cuts, "setting %d makes %d cuts, not %d", i+1, made, s.Cuts)
		cuts += made
	}
	for i := range a.Plans {
		stages = max(stages, deepest(a.Plans[i].Tree))
	}
	v.expect(left == 0, "%d steps are not made by the settings", left)
	v.expect(a.Work.Settings == len(a.Settings) && a.Work.Cuts == cuts, "the work is %d settings and %d cuts, not %d and %d", len(a.Settings), cuts, a.Work.Settings, a.Work.Cuts)
	v.expect(a.Work.Turns == v.turns, "there are %d turns, not %d", v.turns, a.Work.Turns)
	v.expect(v.order.Stages == 0 || stages <= v.order.Stages, "there are %d stages, more than allowed", stages)
	v.expect(a.Work.Stages == stages, "there are %d stages, not %d", stages, a.Work.Stages)
}

// exchange takes the parts of a step off the table and lays those it makes there.
func (v *verifier) exchange(st *sheet.Step, parts map[int]bool) {
	for _, id := range st.Parts {
		v.expect(parts[id], "a step is made before part %d is there", id)
		delete(parts, id)
	}
	for _, list := range [][]int{st.Low, st.Rest} {
		for _, id := range list {
			parts[id] = true
		}
	}
}

// deepest is the greatest number of cuts, runs of one direction counting once, on
// the way to a leaf.
func deepest(n *sheet.Node) int {
	if n == nil || n.Low == nil || n.High == nil {
		return 0
	}
	most := 0
	for _, part := range []*sheet.Node{n.Low, n.High} {
		deep := deepest(part)
		if part.Low == nil || part.Cut != n.Cut {
			deep++
		}
		most = max(most, deep)
	}
	return most
}
