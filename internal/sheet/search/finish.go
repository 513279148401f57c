package search

import (
	"fmt"
	"strconv"
	"strings"

	"creasefit/internal/sheet"
)

// cutting is one layout, cut from so many sheets of a board.
type cutting struct {
	board  *board
	layout *layout
	times  int
}

// finish turns layouts into plans. Pieces beyond what is wanted must have been
// taken out of the layouts before.
func (p *problem) finish(cuttings []cutting, eager bool) sheet.Answer {
	a := p.outline(cuttings, eager)
	for i := range a.Plans {
		a.Plans[i] = p.order.Described(a.Plans[i])
	}
	if p.coarse {
		multiples := strings.ReplaceAll(strconv.FormatFloat(float64(p.unit)/1e6, 'f', -1, 64), ".", p.order.Word("."))
		a.Warnings = append(a.Warnings, sheet.Warning{Code: "coarse-grid", Detail: fmt.Sprintf(p.order.Word(
			"The sizes share no length longer than a hair: they were planned as if rounded up to multiples of %s mm, so more blanks may be possible."), multiples)})
	}
	return a
}

// outline turns layouts into plans whose steps have no words yet.
func (p *problem) outline(cuttings []cutting, eager bool) sheet.Answer {
	a := sheet.Answer{Made: make([]int, len(p.order.Items))}
	f := finisher{problem: p, answer: &a, left: p.wanted(cuttings), eager: eager}
	for _, c := range p.byPriority(cuttings) {
		if c.layout != nil {
			f.add(c)
		}
	}
	a.Used = f.used()
	p.order.Sum(&a)
	return a
}

// finisher builds an answer's plans.
type finisher struct {
	*problem
	answer *sheet.Answer
	left   []int // of each item
	eager  bool
}

// wanted returns the counts of all items; without counts, what a layout gives, shared
// evenly among those of a kind.
func (p *problem) wanted(cuttings []cutting) []int {
	left, made := make([]int, len(p.order.Items)), make([]int32, len(p.kinds))
	for _, c := range cuttings {
		tally(c.layout, made)
	}
	for k := range p.kinds {
		items := p.kinds[k].items
		for n, i := range items {
			if left[i] = p.order.Items[i].Count; left[i] == 0 {
				left[i] = (int(made[k]) + len(items) - 1 - n) / len(items)
			}
		}
	}
	return left
}

// add plans all sheets of one cutting. Sheets that get the same items are one
// plan.
func (f *finisher) add(c cutting) {
	tidied, counts := f.tidy(c.layout).layout, make([]int32, len(f.kinds))
	tally(c.layout, counts)
	for left := c.times; left > 0; {
		times := f.alike(counts, left)
		s := f.sheet(c.board, tidied)
		s.Times = times
		for k, n := range counts {
			f.left[f.next(int32(k))] -= (times - 1) * int(n)
		}
		left -= times
		f.answer.Sheets += s.Times
		if f.order.Sheets[s.Stock].Offcut {
			f.answer.Offcuts += s.Times
		}
		f.answer.Cost += int64(s.Times) * f.order.Sheets[s.Stock].Price
		for _, pl := range s.Placed {
			f.answer.Made[pl.Item] += s.Times
		}
		f.gather(s)
	}
}

// alike is how many of the sheets left get the same items: as many as the next item
// of every kind on them suffices for.
func (f *finisher) alike(counts []int32, left int) int {
	for k, n := range counts {
		if n > 0 {
			left = min(left, f.left[f.next(int32(k))]/int(n))
		}
	}
	return max(left, 1)
}

// gather counts a sheet as a further copy of a plan, if it is one.
func (f *finisher) gather(s sheet.Sheets) {
	for i := range f.answer.Plans {
		if p := &f.answer.Plans[i]; p.Stock == s.Stock && sheet.Same(p.Tree, s.Tree) {
			p.Times += s.Times
			return
		}
	}
	f.answer.Plans = append(f.answer.Plans, s)
}

// sheet plans one sheet.
func (f *finisher) sheet(b *board, l *layout) sheet.Sheets {
	w, h := f.order.Usable(b.stock)
	r := &realizer{order: f.order, kinds: f.kinds, items: f.take, needs: map[*layout]sheet.Extent{}, eager: f.eager}
	return f.order.Lay(b.stock, r.tree(l, sheet.Extent{Width: w, Height: h}, l.axis))
}

// take chooses the item of the next piece of a kind.
func (f *finisher) take(k int32) int {
	i := f.next(k)
	f.left[i]--
	return i
}

// next is the first item of a kind that still wants a piece.
func (f *finisher) next(k int32) int {
	items := f.kinds[k].items
	for _, i := range items {
		if f.left[i] > 0 {
			return i
		}
	}
	return items[len(items)-1]
}

// used is the part of all sheets' area that became blanks.
func (f *finisher) used() float64 {
	blanks := 0.0
	for i, n := range f.answer.Made {
		it := f.order.Items[i]
		blanks += float64(n) * it.Width.Millimetres() * it.Height.Millimetres()
	}
	if len(f.answer.Plans) == 0 {
		return 0
	}
	return blanks / f.order.PlanArea(f.answer.Plans)
}
