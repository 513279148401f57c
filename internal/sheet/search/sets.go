package search

import (
	"errors"
	"math/bits"
)

// errTooMany means that an enumeration has reached its bound.
var errTooMany = errors.New("sheet: too many sets of pieces")

// mostSets bounds the memory of one enumeration, about 200 bytes a set.
const mostSets = 300_000

// sets holds the shape curve of every set of pieces that one board can give:
// the complete answer to what fits on it.
type sets struct {
	board  *board
	need   []int
	area   []int64
	shift  []uint
	index  map[uint64]int32
	codes  []uint64
	curves []curve
	ends   []int32 // of each set, the last kind in it
	areas  []int64
	budget int // splits still allowed

	extended int // sets that are extended
	store    []corner
}

// newSets prepares the enumeration for at most so many pieces of each kind;
// it fails if a set of pieces does not fit a word.
func newSets(b *board, kinds []kind, need []int, budget int) (*sets, error) {
	s := &sets{board: b, need: need, budget: budget, index: map[uint64]int32{}, area: make([]int64, len(kinds)), shift: make([]uint, len(kinds)+1)}
	for k := range kinds {
		s.area[k] = kinds[k].area
		s.shift[k+1] = s.shift[k] + uint(bits.Len(uint(need[k])))
	}
	if s.shift[len(kinds)] > 64 {
		return nil, errTooMany
	}
	return s, nil
}

// enumerate fills in sets, smaller ones first, and goes on where it was cut
// short; whole is true when there are no more. A set fits only if it fits
// without one piece of its last kind, so every set is made from that one.
func (s *sets) enumerate(e *effort) (whole bool, err error) {
	if s.codes == nil {
		s.singles()
	}
	for ; s.extended < len(s.codes); s.extended++ {
		before := s.budget
		if err := s.extend(s.extended); err != nil {
			return false, err
		}
		if !e.spend(splitSteps * (1 + before - s.budget)) {
			s.extended++
			return false, nil
		}
	}
	return true, nil
}

// splitSteps is what parting a set in two costs.
const splitSteps = 30

// singles enters all sets of one piece.
func (s *sets) singles() {
	for k := range s.need {
		var c curve
		for _, f := range s.board.faces {
			if int(f.kind) == k {
				c = c.add(corner{f.w, f.h})
			}
		}
		if s.need[k] > 0 && len(c) > 0 {
			s.enter(1<<s.shift[k], c, int32(k), s.area[k])
		}
	}
}

// enter adds a set.
func (s *sets) enter(code uint64, c curve, end int32, area int64) {
	s.index[code] = int32(len(s.codes))
	s.codes = append(s.codes, code)
	s.curves = append(s.curves, append(curve(nil), c...))
	s.ends = append(s.ends, end)
	s.areas = append(s.areas, area)
}

// count is the number of pieces of a kind in a set.
func (s *sets) count(code uint64, k int) int {
	return int(code >> s.shift[k] & (1<<(s.shift[k+1]-s.shift[k]) - 1))
}

// extend tries one more piece of each kind from a set's last on.
func (s *sets) extend(i int) error {
	whole := int64(s.board.w) * int64(s.board.h)
	for k := int(s.ends[i]); k < len(s.need); k++ {
		area := s.areas[i] + s.area[k]
		if area > whole || s.count(s.codes[i], k) == s.need[k] {
			continue
		}
		code := s.codes[i] + 1<<s.shift[k]
		c := s.shape(code)
		if s.budget < 0 || len(s.codes) >= mostSets {
			return errTooMany
		}
		if len(c) > 0 {
			s.enter(code, c, int32(k), area)
		}
	}
	return nil
}

// shape computes a set's curve from all ways to part it in two.
func (s *sets) shape(code uint64) curve {
	c := curve(s.store[:0])
	for part := range s.parts(code) {
		i, okLow := s.index[part]
		if !okLow {
			continue
		}
		if j, okHigh := s.index[code-part]; okHigh {
			c = c.joins(s.board, s.curves[i], s.curves[j])
		}
		s.budget--
	}
	s.store = c[:0]
	return c
}

// parts runs through the proper subsets of a set that come no later than
// their complement.
func (s *sets) parts(code uint64) func(yield func(uint64) bool) {
	return func(yield func(uint64) bool) {
		part := uint64(0)
		for {
			k := 0
			for ; k < len(s.need); k++ {
				if s.count(part, k) < s.count(code, k) {
					part += 1 << s.shift[k]
					break
				}
				part &^= (1<<(s.shift[k+1]-s.shift[k]) - 1) << s.shift[k]
			}
			if k == len(s.need) || part == code {
				return
			}
			if part <= code-part && !yield(part) {
				return
			}
		}
	}
}

// patterns are the sets that no piece can be added to, as patterns.
func (s *sets) patterns(kinds []kind) []pattern {
	var list []pattern
	for _, at := range s.maximal() {
		code := s.codes[at]
		pt := pattern{board: s.board, counts: make([]int32, len(kinds))}
		for k := range kinds {
			pt.counts[k] = int32(s.count(code, k))
		}
		pt.draw = func() *layout { return s.layout(code, corner{s.board.w, s.board.h}) }
		list = append(list, pt)
	}
	return list
}

// maximal lists the sets that no piece can be added to.
func (s *sets) maximal() []int {
	var list []int
	for i, code := range s.codes {
		if s.isMaximal(code) {
			list = append(list, i)
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

// layout joins the pieces of a set within a rectangle that holds them.
func (s *sets) layout(code uint64, within corner) *layout {
	if bits.OnesCount64(code) == 1 {
		if l := s.leaf(code, within); l != nil {
			return l
		}
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

// leaf lays a single piece. A kind of which none is wanted has no bits: it
// shares its shift with the next.
func (s *sets) leaf(code uint64, within corner) *layout {
	for k, need := range s.need {
		if need > 0 && code == 1<<s.shift[k] {
			return s.board.leaf(int32(k), within)
		}
	}
	return nil
}
