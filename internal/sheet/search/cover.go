package search

import (
	"cmp"
	"slices"
)

// weights price the kinds so that no pattern is worth more than its board's top,
// nor more than top for every unit its sheet costs: a proof that an order worth
// n*top costs at least n.
type weights struct {
	value []int64
	tops  []int64 // of every board
	top   int64
}

// sum is the value of what is left.
func (w *weights) sum(left []int32) int64 {
	sum := int64(0)
	for k, n := range left {
		sum += int64(n) * w.value[k]
	}
	return sum
}

// cover looks for sheets that give all that is wanted within a cost, by depth
// first search: it takes the most valuable kind left and tries every pattern
// that gives it.
type cover struct {
	giving  [][]*pattern // of each kind
	limited []*board     // boards with a number in stock
	weights []weights    // the first guides the search
	left    []int32
	used    map[int]int
	chosen  []choice
	failed  map[string]int64 // what is left, and the most cost that was not enough
	nodes   int              // still allowed
	effort  *effort
	key     []byte
}

// choice is a pattern and what it gives of what was left.
type choice struct {
	pattern *pattern
	take    []int32
}

// newCover prepares a search for an order.
func newCover(e *effort, patterns []pattern, weights []weights, left []int32, nodes int) *cover {
	c := &cover{giving: make([][]*pattern, len(left)), weights: weights, left: slices.Clone(left), used: map[int]int{},
		failed: map[string]int64{}, nodes: nodes, effort: e}
	for i := range patterns {
		pt := &patterns[i]
		for k, n := range pt.counts {
			if n > 0 {
				c.giving[k] = append(c.giving[k], pt)
			}
		}
		if pt.board.available > 0 && !slices.Contains(c.limited, pt.board) {
			c.limited = append(c.limited, pt.board)
		}
	}
	return c
}

// search reports whether a cost is enough. It is sure of its no only if done
// is true.
func (c *cover) search(cost int64) (found, done bool) {
	found = c.visit(cost)
	return found, found || c.nodes > 0
}

// visit tries to cover what is left within a cost.
func (c *cover) visit(cost int64) bool {
	lead := c.lead()
	if lead < 0 {
		return true
	}
	if c.nodes <= 0 {
		return false
	}
	if c.nodes--; !c.effort.spend(len(c.left) * (1 + len(c.giving[lead]))) {
		c.nodes = 0
	}
	key := c.state()
	if cost <= c.failed[key] {
		return false
	}
	for _, pt := range c.candidates(lead, cost) {
		c.put(pt)
		if c.visit(cost - pt.board.cost) {
			return true
		}
		c.undo()
	}
	if c.nodes > 0 {
		c.failed[key] = cost
	}
	return false
}

// lead is the most valuable kind of which something is left, or -1.
func (c *cover) lead() int {
	best, value := -1, int64(-1)
	for k, n := range c.left {
		if n > 0 && c.weights[0].value[k] > value {
			best, value = k, c.weights[0].value[k]
		}
	}
	return best
}

// state is a text for what is left and what is in stock.
func (c *cover) state() string {
	c.key = c.key[:0]
	for _, n := range c.left {
		c.key = append(c.key, byte(n), byte(n>>8), byte(n>>16))
	}
	for _, b := range c.limited {
		c.key = append(c.key, byte(c.used[b.stock]), byte(c.used[b.stock]>>8))
	}
	return string(c.key)
}

// ranked is a pattern with the value of what it gives of what is left.
type ranked struct {
	pattern *pattern
	gain    int64
}

// candidates lists the patterns that give a kind, the most valuable first,
// without those that waste more than a cost allows and without all but one of
// those that give the same of what is left.
func (c *cover) candidates(lead int, cost int64) []*pattern {
	var list []ranked
	need := c.totals()
	for _, pt := range c.giving[lead] {
		b := pt.board
		if b.cost > cost || b.available > 0 && c.used[b.stock] >= b.available {
			continue
		}
		if gain, ok := c.worthwhile(pt, cost, need); ok {
			list = append(list, ranked{pt, gain})
		}
	}
	slices.SortStableFunc(list, func(x, y ranked) int {
		return cmp.Or(cmp.Compare(y.gain*x.pattern.board.cost, x.gain*y.pattern.board.cost), c.compare(x.pattern, y.pattern))
	})
	var out []*pattern
	for i, r := range list {
		if i == 0 || c.compare(list[i-1].pattern, r.pattern) != 0 {
			out = append(out, r.pattern)
		}
	}
	return out
}

// compare orders patterns by what they give of what is left.
func (c *cover) compare(x, y *pattern) int {
	for k, n := range c.left {
		if d := min(x.counts[k], n) - min(y.counts[k], n); d != 0 {
			return int(d)
		}
	}
	return x.board.stock - y.board.stock
}

// totals is the value of all that is left, by every bound.
func (c *cover) totals() []int64 {
	need := make([]int64, len(c.weights))
	for i := range c.weights {
		need[i] = c.weights[i].sum(c.left)
	}
	return need
}

// worthwhile returns what a pattern gives by the first bound, unless by any
// bound it gives too little for the rest to be covered within the cost.
func (c *cover) worthwhile(pt *pattern, cost int64, need []int64) (int64, bool) {
	first := int64(0)
	for i := range c.weights {
		w := &c.weights[i]
		gain := pt.gain(w.value, c.left)
		if need[i]-gain > w.top*(cost-pt.board.cost) {
			return 0, false
		}
		if i == 0 {
			first = gain
		}
	}
	return first, true
}

// put takes what a pattern gives off what is left.
func (c *cover) put(pt *pattern) {
	ch := choice{pt, make([]int32, len(c.left))}
	for k, n := range pt.counts {
		ch.take[k] = min(n, c.left[k])
		c.left[k] -= ch.take[k]
	}
	c.used[ch.pattern.board.stock]++
	c.chosen = append(c.chosen, ch)
}

// undo takes the last choice back.
func (c *cover) undo() {
	ch := c.chosen[len(c.chosen)-1]
	c.chosen = c.chosen[:len(c.chosen)-1]
	for k, n := range ch.take {
		c.left[k] += n
	}
	c.used[ch.pattern.board.stock]--
}
