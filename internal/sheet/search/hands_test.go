package search

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// Every criterion decides where those before it are equal, and no later one does.
func TestHandsAreComparedInOrder(t *testing.T) {
	worse := []func(h *hands){
		func(h *hands) { h.late++ }, func(h *hands) { h.Settings++ }, func(h *hands) { h.plans++ }, func(h *hands) { h.Turns++ },
		func(h *hands) { h.Stages++ }, func(h *hands) { h.offcut-- }, func(h *hands) { h.Cuts++ },
	}
	compare := func(a, b []int, prefer sheet.Preference) int {
		var p, q hands
		for _, i := range a {
			worse[i](&p)
		}
		for _, i := range b {
			worse[i](&q)
		}
		return p.compare(&q, prefer)
	}
	assert.Zero(t, compare([]int{0, 1, 2}, []int{0, 1, 2}, sheet.FewSettings))
	for i := range worse {
		later := []int{}
		for j := i + 1; j < len(worse); j++ {
			later = append(later, j)
		}
		assert.Positive(t, compare([]int{i}, later, sheet.FewSettings), "criterion %d comes before %v", i, later)
		assert.Negative(t, compare(later, []int{i}, sheet.FewSettings))
	}
	assert.Positive(t, compare([]int{5}, []int{1, 2, 3, 4, 6}, sheet.LargeOffcuts), "the offcut comes first where it is preferred")
	assert.Negative(t, compare([]int{5}, []int{0}, sheet.LargeOffcuts), "but after what has priority")
	assert.Positive(t, compare([]int{4}, []int{1, 2, 3, 5, 6}, sheet.FewStages))
	assert.Negative(t, compare([]int{4}, []int{0}, sheet.FewStages))
}

// What an answer asks of the hands: its work, its plans, when what has priority is made
// and its largest usable offcut.
func TestHandsOfAnAnswer(t *testing.T) {
	in := measure.Inches
	p := &problem{order: sheet.Order{Items: []sheet.Item{{Priority: 1}, {}, {Priority: 2}}}}
	a := sheet.Answer{Work: sheet.Work{Settings: 4, Cuts: 9}, Plans: make([]sheet.Sheets, 3), Ready: []int{2, 5, 4},
		Usable: []sheet.Usable{{Extent: sheet.Extent{Width: in(2), Height: in(3)}}, {Extent: sheet.Extent{Width: in(1), Height: in(8)}}}}
	h := p.handsOf(&a)
	assert.Equal(t, a.Work, h.Work)
	assert.Equal(t, []int{3, 6}, []int{h.plans, h.late})
	assert.InDelta(t, 8*25.4*25.4, h.offcut, 1e-6)
}

// Strips are cut the longest first, then the widest, equal ones together; what they
// leave is at the end of the run, where it costs no setting (common practice).
func TestStripsAreTidied(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sixteenth(t), Sheets: []sheet.Stock{{Width: in(12), Height: in(12)}},
		Items: []sheet.Item{{Name: "tag", Width: in(2), Height: in(4), Count: 2}, {Name: "band", Width: in(3), Height: in(9), Count: 1}, {Name: "strip", Width: in(1), Height: in(9), Count: 1}}}
	p := newProblem(o)
	leaf := func(item int) *layout {
		for k := range p.kinds {
			if p.kinds[k].items[0] == item {
				return &layout{kind: int32(k)}
			}
		}
		return nil
	}
	l := leaf(0)
	for _, item := range []int{2, 1, 0} {
		l = &layout{axis: sheet.Width, low: l, high: leaf(item)}
	}
	a := p.outline([]cutting{{&p.boards[0], l, 1}}, false)
	var items []int
	whole := a.Plans[0].Tree
	assert.Equal(t, []any{sheet.Height, in(9), sheet.Offcut}, []any{whole.Cut, whole.At, whole.High.Item}, "one trim serves all strips, since the longest are blanks")
	for _, placed := range a.Plans[0].Placed {
		items = append(items, placed.Item)
	}
	assert.Equal(t, []int{1, 2, 0, 0}, items, "band, strip, tag, tag")
	assert.Equal(t, []int{2, 1, 1}, a.Made)
	assert.Equal(t, 1, a.Sheets)
	assert.InDelta(t, (8*2+27+9)/144.0, a.Used, 1e-12)
	eager := p.outline([]cutting{{&p.boards[0], l, 1}}, true)
	assert.GreaterOrEqual(t, eager.Work.Settings, a.Work.Settings, "trimming at once takes settings of its own")
	assert.LessOrEqual(t, eager.Work.Cuts, a.Work.Cuts)
}

// Three sheets of two plans that are the same are one plan, cut three times; where two
// items share a kind, each sheet takes what is still wanted of the first.
func TestEqualSheetsAreOnePlan(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sixteenth(t), Sheets: []sheet.Stock{{Width: in(12), Height: in(12), Price: 7}},
		Items: []sheet.Item{{Name: "lid", Width: in(12), Height: in(12), Count: 3}}}
	p := newProblem(o)
	lid := &layout{}
	a := p.outline([]cutting{{&p.boards[0], lid, 2}, {&p.boards[0], lid, 1}}, false)
	assert.Len(t, a.Plans, 1)
	assert.Equal(t, 3, a.Plans[0].Times)
	assert.Equal(t, int64(21), a.Cost)
	o.Items = append(o.Items, sheet.Item{Name: "base", Width: in(12), Height: in(12), Count: 2})
	p = newProblem(o)
	a = p.outline([]cutting{{&p.boards[0], lid, 5}}, false)
	assert.Equal(t, []int{3, 2}, a.Made)
	assert.Equal(t, []int{3, 2}, []int{a.Plans[0].Times, a.Plans[1].Times})
	assert.Equal(t, []int{3, 5}, a.Ready)
}

// Sheets with more of what comes first are cut first; where they have as many, what comes
// next decides, and where nothing has priority they stay as they are.
func TestSheetsByPriority(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sixteenth(t), Sheets: []sheet.Stock{{Width: in(12), Height: in(12)}},
		Items: []sheet.Item{{Width: in(5), Height: in(5), Count: 9}, {Width: in(4), Height: in(4), Count: 9, Priority: 2}, {Width: in(3), Height: in(3), Count: 9, Priority: 1}}}
	p := newProblem(o)
	kindOf := map[int]int32{}
	for k := range p.kinds {
		kindOf[p.kinds[k].items[0]] = int32(k)
	}
	sheetOf := func(items ...int) cutting {
		var kinds []int32
		for _, i := range items {
			kinds = append(kinds, kindOf[i])
		}
		return cutting{&p.boards[0], piecesOn(kinds...), 1}
	}
	a, b, c, d := sheetOf(0, 0), sheetOf(1, 0), sheetOf(2), sheetOf(2, 1)
	assert.Equal(t, []cutting{d, c, b, a}, p.byPriority([]cutting{a, b, c, d}))
	for i := range p.order.Items {
		p.order.Items[i].Priority = 0
	}
	assert.Equal(t, []cutting{a, b, c, d}, p.byPriority([]cutting{a, b, c, d}))
}

// What is preferred is had: over some orders the largest offcuts are larger and the stages
// fewer than where settings come first, which then are fewest; never at another sheet.
func TestPreferencesAreFollowed(t *testing.T) {
	var offcuts, stages, settings [3]float64
	for seed := range uint64(8) {
		sheets := 0
		for prefer := range [3]struct{}{} {
			o := craftOrder(t, seed)
			o.Least, o.Prefer = measure.Inches(2), sheet.Preference(prefer)
			a, _ := plannedWith(t, o, 20_000_000)
			if prefer > 0 {
				assert.Equal(t, sheets, a.Sheets, "seed %d", seed)
			}
			sheets = a.Sheets
			stages[prefer] += float64(a.Work.Stages)
			settings[prefer] += float64(a.Work.Settings)
			if len(a.Usable) > 0 {
				offcuts[prefer] += a.Usable[0].Width.Inches() * a.Usable[0].Height.Inches()
			}
		}
	}
	assert.Greater(t, offcuts[sheet.LargeOffcuts], 1.2*offcuts[sheet.FewSettings])
	assert.Less(t, stages[sheet.FewStages], stages[sheet.FewSettings])
	assert.Less(t, settings[sheet.FewSettings], min(settings[sheet.LargeOffcuts], settings[sheet.FewStages]))
}

// More work never costs more sheets and, at the same number, is never harder on the hands.
func TestMoreWorkIsNeverHarderOnTheHands(t *testing.T) {
	for seed := range seeds(10) {
		o := craftOrder(t, seed)
		p := newProblem(o)
		var before sheet.Answer
		for i, steps := range []int64{100_000, 1_000_000, 6_000_000, 30_000_000} {
			a, _ := plannedWith(t, o, steps)
			h, was := p.handsOf(&a), p.handsOf(&before)
			switch {
			case i == 0 || a.Sheets < before.Sheets:
			case a.Sheets > before.Sheets:
				t.Errorf("seed %d: %d steps give %d sheets, fewer gave %d", seed, steps, a.Sheets, before.Sheets)
			default:
				assert.LessOrEqual(t, h.compare(&was, o.Prefer), 0, "seed %d: %d steps give %+v, fewer gave %+v", seed, steps, h, was)
			}
			before = a
		}
	}
}
