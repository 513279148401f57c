package search

import (
	"math"
	"math/bits"
)

// mostSets bounds the memory of one enumeration, about 200 bytes a set.
const mostSets = 300_000

// sets holds the shape curve of every set of pieces that one board can give:
// the complete answer to what fits on it. The first is the empty set.
type sets struct {
	board  *board
	order  []int32 // kinds, in the order that they are listed in
	need   []int   // of each kind in that order, as all below
	shift  []uint
	index  map[uint64]int32
	codes  []uint64
	curves []curve
	budget int                              // splits still allowed
	full   bool                             // there are too many sets to go on
	rooms  []func(code uint64) (left int64) // measures of the room that a set leaves

	extended int   // sets that are extended by the kind at hand
	ends     []int // of each kind that is done, where the sets of it and those before it end
	store    []corner
}

// newSets prepares the enumeration, in an order of the kinds, for at most so many pieces
// of each.
func newSets(b *board, order []int32, need []int, budget int) *sets {
	s := &sets{board: b, order: order, budget: budget, index: map[uint64]int32{}, shift: make([]uint, len(order)+1)}
	for at, k := range order {
		s.need = append(s.need, need[k])
		s.shift[at+1] = s.shift[at] + uint(bits.Len(uint(need[k])))
	}
	s.enter(0, nil)
	return s
}

// enumerate fills in the sets of one kind more, those of all kinds before it being
// there, and goes on where it was cut short; it is whole when there are no more.
// Each is made from the one without the piece added last, which fits if it does, and
// comes after all sets that it can be parted into.
func (s *sets) enumerate(e *effort, k int) (whole bool) {
	if k < len(s.ends) {
		return true
	}
	for s.extended < len(s.codes) {
		before := s.budget
		if s.extend(s.extended, k); s.full {
			return false
		}
		if s.extended++; !e.spend(splitSteps * (1 + before - s.budget)) {
			return false
		}
	}
	s.ends, s.extended = append(s.ends, len(s.codes)), 0
	return true
}

// measure lets no set in that leaves less than no room on the board.
func (s *sets) measure(w *weights, board int) {
	var value []int64
	for _, k := range s.order {
		value = append(value, w.value[k])
	}
	worth := worthOf(s, value)
	s.rooms = append(s.rooms, func(code uint64) int64 { return w.tops[board] - worth(code) })
}

// splitSteps is what parting a set in two costs.
const splitSteps = 30

// enter adds a set.
func (s *sets) enter(code uint64, c curve) {
	s.index[code] = int32(len(s.codes))
	s.codes = append(s.codes, code)
	s.curves = append(s.curves, append(curve(nil), c...))
}

// count is the number of pieces of a kind in a set.
func (s *sets) count(code uint64, k int) int {
	return int(code >> s.shift[k] & (1<<(s.shift[k+1]-s.shift[k]) - 1))
}

// counts is the number of pieces of every kind in a set.
func (s *sets) counts(code uint64) []int32 {
	counts := make([]int32, len(s.need))
	for at, k := range s.order {
		counts[k] = int32(s.count(code, at))
	}
	return counts
}

// extend tries one more piece of a kind; there are too many sets where one does not fit
// a word.
func (s *sets) extend(i, k int) {
	if s.need[k] == 0 || s.shift[k+1] <= 64 && s.count(s.codes[i], k) == s.need[k] {
		return
	}
	if s.full = s.shift[k+1] > 64 || s.budget < 0 || len(s.codes) >= mostSets; s.full {
		return
	}
	code := s.codes[i] + 1<<s.shift[k]
	if !s.promising(code, k) {
		return
	}
	if c := s.shape(code); len(c) > 0 {
		s.enter(code, c)
	}
}

// promising reports whether a set with a piece of a kind more fits as far as those tell
// that have one of the others less: most sets that do not fit have one that does not
// either, or leave less than no room.
func (s *sets) promising(code uint64, k int) bool {
	for _, left := range s.rooms {
		if left(code) < 0 {
			return false
		}
	}
	for other := range k {
		if s.count(code, other) == 0 {
			continue
		}
		if _, fits := s.index[code-1<<s.shift[other]]; !fits {
			s.budget--
			return false
		}
	}
	return true
}

// shape computes a set's curve from all ways to part it in two; that of a single
// piece is its faces.
func (s *sets) shape(code uint64) curve {
	c := curve(s.store[:0])
	if k := s.single(code); k >= 0 {
		for _, f := range s.board.faces {
			if f.kind == k {
				c = c.add(corner{f.w, f.h})
			}
		}
	}
	for part := range s.parts(code) {
		i, okLow := s.index[part]
		if !okLow {
			continue
		}
		if j, okHigh := s.index[code-part]; okHigh {
			c = c.joins(s.board, s.curves[i], s.curves[j], math.MaxInt64)
		}
		s.budget--
	}
	s.store = c[:0]
	return c
}

// single is the kind of a set of one piece, or -1. A kind of which none is wanted
// has no bits: it shares its shift with the next.
func (s *sets) single(code uint64) int32 {
	for at, need := range s.need {
		if need > 0 && code == 1<<s.shift[at] {
			return s.order[at]
		}
	}
	return -1
}

// parts runs through the proper subsets of a set that come no later than
// their complement.
func (s *sets) parts(code uint64) func(yield func(uint64) bool) {
	return func(yield func(uint64) bool) {
		var room [64]uint64 // the fields of the kinds in the set
		fields := room[:0]
		for k := range s.need {
			if s.count(code, k) > 0 {
				fields = append(fields, (1<<(s.shift[k+1]-s.shift[k])-1)<<s.shift[k])
			}
		}
		for part := uint64(0); part != code; {
			for _, field := range fields {
				if part&field < code&field {
					part += field & -field
					break
				}
				part &^= field
			}
			if part != code && part <= code-part && !yield(part) {
				return
			}
		}
	}
}

// patterns are the sets that no piece can be added to, as patterns.
func (s *sets) patterns() []pattern {
	var list []pattern
	for _, code := range s.codes {
		if s.isMaximal(code) {
			list = append(list, pattern{s.board, s.counts(code), func() *layout { return s.layout(code, corner{s.board.w, s.board.h}) }})
		}
	}
	return list
}

// isMaximal reports whether no piece can be added to a set.
func (s *sets) isMaximal(code uint64) bool {
	for k, need := range s.need {
		if s.count(code, k) < need {
			if _, fits := s.index[code+1<<s.shift[k]]; fits {
				return false
			}
		}
	}
	return true
}

// layout joins the pieces of a set within a rectangle.
func (s *sets) layout(code uint64, within corner) *layout {
	if k := s.single(code); k >= 0 {
		return s.board.leaf(k, within)
	}
	for part := range s.parts(code) {
		i, okLow := s.index[part]
		j, okHigh := s.index[code-part]
		if !okLow || !okHigh {
			continue
		}
		if a, p, q, ok := s.board.split(s.curves[i], s.curves[j], within); ok {
			return &layout{axis: a, low: s.layout(part, p), high: s.layout(code-part, q)}
		}
	}
	return nil
}
