package search

import "slices"

// byPriority puts the sheets with the most pieces of the first items first.
func (p *problem) byPriority(plan []cutting) []cutting {
	if !p.order.Prioritized() {
		return plan
	}
	ranks := map[int]bool{}
	for i := range p.order.Items {
		ranks[p.order.Rank(i)] = true
	}
	list := make([]int, 0, len(ranks))
	for r := range ranks {
		list = append(list, r)
	}
	slices.Sort(list)
	sorted := slices.Clone(plan)
	slices.SortStableFunc(sorted, func(a, b cutting) int { return slices.Compare(p.ofRanks(b, list), p.ofRanks(a, list)) })
	return sorted
}

// ofRanks counts the pieces of a sheet by their ranks.
func (p *problem) ofRanks(c cutting, ranks []int) []int32 {
	counts, sums := make([]int32, len(p.kinds)), make([]int32, len(ranks))
	tally(c.layout, counts)
	for k, n := range counts {
		at, _ := slices.BinarySearch(ranks, p.order.Rank(p.kinds[k].items[0]))
		sums[at] += n
	}
	return sums
}
