package sheet

import (
	"cmp"
	"context"
	"slices"
)

// weights price the kinds so that no pattern is worth more than top for every
// unit its sheet costs: a proof that an order worth n*top costs at least n.
type weights struct {
	value []int64
	top   int64
}

// bound is the least cost of what is left.
func (w *weights) bound(left []int32) int64 {
	sum := int64(0)
	for k, n := range left {
		sum += int64(n) * w.value[k]
	}
	return (sum + w.top - 1) / w.top
}

// cover looks for sheets that give all that is wanted within a cost, by depth
// first search: it takes the most valuable kind left and tries every pattern
// that gives it.
type cover struct {
	patterns []pattern
	weights  []weights // the first guides the search
	left     []int32
	used     map[*board]int
	chosen   []choice
	failed   map[string]int64 // what is left, and the most cost that was not enough
	nodes    int              // still allowed
	ctx      context.Context
	key      []byte
}

// choice is a pattern and what it gives of what was left.
type choice struct {
	pattern *pattern
	take    []int32
}

// newCover prepares a search for an order.
func newCover(ctx context.Context, patterns []pattern, weights []weights, left []int32, nodes int) *cover {
	return &cover{patterns: patterns, weights: weights, left: slices.Clone(left), used: map[*board]int{},
		failed: map[string]int64{}, nodes: nodes, ctx: ctx}
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
	if !c.promising(cost) || c.nodes <= 0 {
		return false
	}
	if c.nodes--; c.nodes%256 == 0 && c.ctx.Err() != nil {
		c.nodes = 0
	}
	key := c.state()
	if cost <= c.failed[key] {
		return false
	}
	for _, pt := range c.candidates(lead, cost) {
		c.put(pt)
		if c.visit(cost - pt.pattern.board.cost) {
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

// promising reports whether no bound rules out a cost.
func (c *cover) promising(cost int64) bool {
	for i := range c.weights {
		if c.weights[i].bound(c.left) > cost {
			return false
		}
	}
	return true
}

// state is a text for what is left and what is in stock.
func (c *cover) state() string {
	c.key = c.key[:0]
	for _, n := range c.left {
		c.key = append(c.key, byte(n), byte(n>>8), byte(n>>16))
	}
	for i := range c.patterns {
		if b := c.patterns[i].board; b.available > 0 && (i == 0 || c.patterns[i-1].board != b) {
			c.key = append(c.key, byte(c.used[b]), byte(c.used[b]>>8))
		}
	}
	return string(c.key)
}

// candidates lists what the patterns that give a kind can take, the most
// valuable first, each once, without those that waste more than a cost allows.
func (c *cover) candidates(lead int, cost int64) []choice {
	type ranked struct {
		choice
		gain int64
	}
	var list []ranked
	seen := map[string]bool{}
	for i := range c.patterns {
		pt := &c.patterns[i]
		if pt.counts[lead] == 0 || pt.board.cost > cost || pt.board.available > 0 && c.used[pt.board] >= pt.board.available {
			continue
		}
		if c.wasteful(pt, cost) {
			continue
		}
		take := make([]int32, len(c.left))
		text := make([]byte, 0, 2*len(c.left)+2)
		for k, n := range pt.counts {
			take[k] = min(n, c.left[k])
			text = append(text, byte(take[k]), byte(take[k]>>8))
		}
		text = append(text, byte(pt.board.stock))
		if !seen[string(text)] {
			seen[string(text)] = true
			list = append(list, ranked{choice{pt, take}, pt.gain(c.weights[0].value, c.left) / pt.board.cost})
		}
	}
	slices.SortStableFunc(list, func(x, y ranked) int { return cmp.Compare(y.gain, x.gain) })
	out := make([]choice, len(list))
	for i := range list {
		out[i] = list[i].choice
	}
	return out
}

// wasteful reports whether a pattern takes so little that the rest cannot be
// covered within the cost.
func (c *cover) wasteful(pt *pattern, cost int64) bool {
	for i := range c.weights {
		w := &c.weights[i]
		sum := -pt.gain(w.value, c.left)
		for k, n := range c.left {
			sum += int64(n) * w.value[k]
		}
		if sum > w.top*(cost-pt.board.cost) {
			return true
		}
	}
	return false
}

// put takes a choice off what is left.
func (c *cover) put(ch choice) {
	for k, n := range ch.take {
		c.left[k] -= n
	}
	c.used[ch.pattern.board]++
	c.chosen = append(c.chosen, ch)
}

// undo takes the last choice back.
func (c *cover) undo() {
	ch := c.chosen[len(c.chosen)-1]
	c.chosen = c.chosen[:len(c.chosen)-1]
	for k, n := range ch.take {
		c.left[k] += n
	}
	c.used[ch.pattern.board]--
}
