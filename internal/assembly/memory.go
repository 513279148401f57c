package assembly

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"sync"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// mostKnown bounds how many orders are remembered.
const mostKnown = 256

// memory holds orders that were found lately: a guide, its pictures and the
// model of one solution are asked for one after another. An order is known by
// every size of its pattern. A way apart that was found at other sizes may be
// possible too, but not the one that a search finds here, and then an answer
// would hang on what was asked before it.
type memory struct {
	sync.Mutex
	known map[digest]*Order
}

// digest stands for a pattern with all its sizes.
type digest [sha256.Size]byte

var remembered = memory{known: map[digest]*Order{}}

func (m *memory) look(key digest) *Order {
	m.Lock()
	defer m.Unlock()
	return m.known[key]
}

func (m *memory) keep(key digest, o *Order) {
	m.Lock()
	defer m.Unlock()
	if len(m.known) >= mostKnown {
		clear(m.known)
	}
	m.known[key] = o
}

// Find returns the order of work of a proved pattern: ideal as on an endlessly fine
// ruler, actual as it is cut, of the same shape. Plates of the actual one may
// press into one another by the tolerance that its proof allows. The error is a
// fault.Fault if no order is found.
func Find(ideal, actual *pattern.Pattern, tolerance measure.Length) (*Order, error) {
	key := digest(sha256.Sum256(fmt.Appendf(nil, "%#v %#v %#v", *ideal, *actual, tolerance)))
	if known := remembered.look(key); known != nil {
		return known, nil
	}
	var left []string
	for _, p := range [...]*pattern.Pattern{ideal, actual} {
		t, ok := newTaking(p, 0)
		if !ok {
			return nil, none(nil)
		}
		moves, ok := t.search()
		if !ok {
			left = t.left()
			continue
		}
		if o := replay(moves, actual, tolerance.Millimetres()); o != nil {
			remembered.keep(key, o)
			return o, nil
		}
	}
	return nil, none(left)
}

// replay plays a way apart at the actual sizes; nil if it cannot be gone there.
func replay(known []move, actual *pattern.Pattern, slack float64) *Order {
	t, ok := newTaking(actual, slack)
	if !ok {
		return nil
	}
	moves, from, ok := t.play(known)
	if !ok {
		return nil
	}
	return t.order(moves, from)
}

// Leads reports whether the way that an order goes leads to another pattern of its shape
// too.
func (o *Order) Leads(actual *pattern.Pattern, tolerance measure.Length) bool {
	if !sameShape(o.t.p, actual) {
		return false
	}
	t, ok := newTaking(actual, tolerance.Millimetres())
	if ok {
		_, _, ok = t.play(o.moves)
	}
	return ok
}

// sameShape reports whether two patterns differ in nothing but sizes.
func sameShape(a, b *pattern.Pattern) bool {
	if len(a.Nests) != len(b.Nests) || len(a.Locks) != len(b.Locks) || len(a.Bonds) != len(b.Bonds) {
		return false
	}
	return slices.EqualFunc(a.Pieces, b.Pieces, func(p, q pattern.Piece) bool {
		return len(p.Panels) == len(q.Panels) && len(p.Joints) == len(q.Joints) && slices.EqualFunc(p.Creases, q.Creases, func(c, d pattern.Crease) bool { return c.From == d.From && c.To == d.To })
	})
}
