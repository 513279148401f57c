package assembly

import (
	"encoding/binary"
	"math"
	"slices"
	"sync"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// mostKnown bounds how many structures are remembered.
const mostKnown = 1024

// memory holds the way apart of structures that were searched. It changes no
// answer: what it holds is what a search would find again.
type memory struct {
	sync.Mutex
	known map[string][]move
}

var remembered = memory{known: map[string][]move{}}

func (m *memory) look(key string) []move {
	m.Lock()
	defer m.Unlock()
	return m.known[key]
}

func (m *memory) keep(key string, moves []move) {
	m.Lock()
	defer m.Unlock()
	if len(m.known) >= mostKnown {
		clear(m.known)
	}
	m.known[key] = moves
}

// Find returns the order of work of a proved pattern: ideal as on an endlessly fine
// ruler, actual as it is cut, of the same shape. Plates of the actual one may
// press into one another by the tolerance that its proof allows. The error is a
// fault.Fault if no order is found.
func Find(ideal, actual *pattern.Pattern, tolerance measure.Length) (*Order, error) {
	key := structure(ideal)
	slack := tolerance.Millimetres()
	if known := remembered.look(key); known != nil {
		if o := replay(known, actual, slack); o != nil {
			return o, nil
		}
	}
	for _, p := range [...]*pattern.Pattern{ideal, actual} {
		t, ok := newTaking(p, 0)
		if !ok {
			return nil, none()
		}
		moves, ok := t.search()
		if !ok {
			continue
		}
		if o := replay(moves, actual, slack); o != nil {
			remembered.keep(key, moves)
			return o, nil
		}
	}
	return nil, none()
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

// structure is all of a pattern that an order hangs on, without its sizes.
func structure(p *pattern.Pattern) string {
	var s key
	for i := range p.Pieces {
		s.piece(&p.Pieces[i])
	}
	for _, at := range p.Places {
		s.ints(at.Piece, at.On, int(at.Lie))
	}
	for _, n := range p.Nests {
		s.ints(-2, n.Inner, n.Outer)
	}
	for _, l := range p.Locks {
		s.ints(-3, l.A, l.B)
	}
	for _, b := range p.Bonds {
		s.ints(-4, b.A, b.B)
		s.glues(b.Glues)
	}
	c := &p.Cavity
	s.ints(-5, c.Piece, c.Panel, c.Sides, int(c.Turned*1000), len(c.Bounded))
	if c.Into {
		s.ints(-6)
	}
	return string(s)
}

// key is a structure while it is written.
type key []byte

func (s *key) ints(values ...int) {
	for _, v := range values {
		*s = binary.AppendVarint(*s, int64(v))
	}
}

func (s *key) piece(p *pattern.Piece) {
	s.ints(-1, p.Quantity, p.Root, len(p.Panels))
	bends := slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool { return c.Bulge < 0 || c.Bulge > 0 })
	for i := range p.Creases {
		c := &p.Creases[i]
		s.ints(c.From, c.To, int(c.Fold), c.Round.Sign())
		if curved := c.Bulge < 0 || c.Bulge > 0; curved || !bends {
			s.ints(int(math.Round(c.Angle * 10)))
		}
	}
	s.glues(p.Glues)
	for _, j := range p.Joints {
		s.ints(j.PanelA, j.PanelB)
	}
}

func (s *key) glues(glues []pattern.Glue) {
	s.ints(len(glues))
	for _, g := range glues {
		s.ints(g.Panel, int(g.Face), g.To, int(g.ToFace))
	}
}
