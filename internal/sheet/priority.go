package sheet

import (
	"math"
	"slices"
)

// Rank is when an item is cut: the least first.
func (o Order) Rank(item int) int {
	if p := o.Items[item].Priority; p > 0 {
		return p
	}
	return math.MaxInt
}

// Prioritized reports whether some items are to be cut before others.
func (o Order) Prioritized() bool {
	return slices.ContainsFunc(o.Items, func(it Item) bool { return it.Priority != o.Items[0].Priority })
}

// RankOf is that of the first of the items on a sheet.
func (o Order) RankOf(s *Sheets) int {
	first := math.MaxInt
	for _, p := range s.Placed {
		first = min(first, o.Rank(p.Item))
	}
	return first
}

// settle puts the steps of plans into order, those of the plans whose items are
// first before all others.
func (o Order) settle(plans []Sheets) ([]Setting, Work) {
	if !o.Prioritized() {
		return Settle(plans)
	}
	var list []Setting
	work := Work{}
	for from := 0; from < len(plans); {
		to := from + 1
		for to < len(plans) && o.RankOf(&plans[to]) == o.RankOf(&plans[from]) {
			to++
		}
		part, w := Settle(plans[from:to])
		for i := range part {
			for n := range part[i].Steps {
				part[i].Steps[n].Plan += from
			}
		}
		list = append(list, part...)
		work = Work{work.Settings + w.Settings, work.Cuts + w.Cuts, work.Turns + w.Turns, max(work.Stages, w.Stages)}
		from = to
	}
	return list, work
}

// ready fills in when all of each item is made.
func (a *Answer) ready(items int) {
	a.Ready = make([]int, items)
	sheets := 0
	for i := range a.Plans {
		sheets += a.Plans[i].Times
		for _, p := range a.Plans[i].Placed {
			a.Ready[p.Item] = sheets
		}
	}
}
