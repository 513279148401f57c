package search

import "slices"

// byPriority puts the sheets with the most pieces of the first items first.
func (p *problem) byPriority(plan []cutting) []cutting {
	if !p.order.Prioritized() {
		return plan
	}
	var ranks []int
	for i := range p.order.Items {
		ranks = append(ranks, p.order.Rank(i))
	}
	slices.Sort(ranks)
	ranks = slices.Compact(ranks)
	sorted := slices.Clone(plan)
	slices.SortStableFunc(sorted, func(a, b cutting) int { return slices.Compare(p.ofRanks(b, ranks), p.ofRanks(a, ranks)) })
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
