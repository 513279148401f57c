package search

import (
	"cmp"
	"math"
	"slices"
)

// fewLeft is how many pieces may be left for them to be planned as an order of
// their own.
const fewLeft = 40

// dive rounds the fractional cover: it cuts the sheets that the cover takes whole,
// or, if there are none, one that it takes most of, prices what is left anew, and
// so on until that is few pieces, which are planned as an order of their own.
func (g *generator) dive() []use {
	var plan []use
	for at := g; ; {
		left, stock := at.needs(), map[int]int{}
		plan = append(plan, at.take(left, stock)...)
		if !some(left) {
			return plan
		}
		p := at.leaving(left, stock)
		if len(p.boards) == 0 {
			return nil
		}
		rest := p.newPlanner(g.effort)
		rest.greedy.random = g.greedy.random
		if rest.pieces() <= fewLeft || len(plan) == 0 || g.ended() {
			return g.restOf(plan, rest)
		}
		at = rest.newGenerator(rest.patternsOf(at.patterns))
		at.rough = true
		g.lend(g.left/8, at.run)
	}
}

// restOf adds the plan of what is left, nil if there is none.
func (g *generator) restOf(plan []use, rest *planner) []use {
	g.rest(rest)
	for _, c := range rest.best {
		plan = append(plan, use{drawn(c.board, c.layout, len(rest.kinds)), c.times})
	}
	if rest.best == nil {
		return nil
	}
	return plan
}

// take cuts what the cover takes whole, or else some sheets that it takes most of,
// more or less at random. What is left is less then, and the stock used more.
func (g *generator) take(left []int32, stock map[int]int) []use {
	g.duals.optimize(g.effort, 5_000)
	var plan []use
	var parts []part
	for i, x := range g.duals.uses() {
		pt := &g.patterns[i]
		if n := min(int(math.Floor(x+1e-6)), pt.repeats(left)); n > 0 {
			plan = append(plan, g.cut(pt, n, left, stock)...)
		} else if x > 1e-6 {
			parts = append(parts, part{pt, x * (0.9 + 0.2*g.greedy.random.Float64())})
		}
	}
	slices.SortFunc(parts, func(a, b part) int { return cmp.Compare(b.share, a.share) })
	for _, p := range parts[:(len(parts)+partsAtOnce-1)/partsAtOnce] {
		if len(plan) == 0 || p.share > 0.5 && p.pattern.repeats(left) > 0 {
			plan = append(plan, g.cut(p.pattern, 1, left, stock)...)
		}
	}
	return plan
}

// part is a pattern of which a cover takes less than a whole sheet.
type part struct {
	pattern *pattern
	share   float64
}

// partsAtOnce is of how many parts one is rounded up at once.
const partsAtOnce = 8

// cut takes a pattern off what is left, so often or as often as there are sheets.
func (g *generator) cut(pt *pattern, times int, left []int32, stock map[int]int) []use {
	if b := pt.board; b.available > 0 {
		times = min(times, b.available-stock[b.stock])
	}
	if times <= 0 {
		return nil
	}
	stock[pt.board.stock] += times
	counts := slices.Clone(pt.counts)
	for k := range counts {
		counts[k] = min(counts[k], left[k])
		left[k] -= counts[k] * int32(times)
	}
	return []use{{drawn(pt.board, only(pt.draw(), counts), len(counts)), times}}
}

// leaving is the order that is left, on the sheets that are left.
func (p *problem) leaving(left []int32, stock map[int]int) *problem {
	rest := *p
	rest.kinds = slices.Clone(p.kinds)
	for k := range rest.kinds {
		rest.kinds[k].need = int(left[k])
	}
	rest.boards = nil
	for _, b := range p.boards {
		if b.available > 0 {
			if b.available -= stock[b.stock]; b.available == 0 {
				continue
			}
		}
		rest.boards = append(rest.boards, b)
	}
	return &rest
}

// patternsOf lists what known patterns give of this order.
func (p *problem) patternsOf(known []pattern) []pattern {
	var list []pattern
	left := p.needs()
	for i := range known {
		at := slices.IndexFunc(p.boards, func(b board) bool { return b.stock == known[i].board.stock })
		if at < 0 {
			continue
		}
		pt := pattern{board: &p.boards[at], counts: make([]int32, len(left))}
		for k, n := range known[i].counts {
			pt.counts[k] = min(n, left[k])
		}
		if !some(pt.counts) {
			continue
		}
		pt.draw = func() *layout { return only(known[i].draw(), slices.Clone(pt.counts)) }
		list = append(list, pt)
	}
	return list
}
