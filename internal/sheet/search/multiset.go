package search

import "math/bits"

// words is the size of a multiset: room for 128 different single pieces.
const words = 4

// multiset is a number of pieces of each kind, in bit fields that are one bit
// wider than the number wanted, so that two are added field by field.
type multiset [words]uint64

// packing lays the fields of the kinds out.
type packing struct {
	one   []multiset // one piece of each kind
	slack multiset   // added to a sum, it carries into guard where too many are taken
	guard multiset
	word  []int
	shift []uint
	width []uint
}

// newPacking lays out the fields for so many pieces of each kind; ok is false
// if there is no room.
func newPacking(need []int) (p *packing, ok bool) {
	p = &packing{}
	word, shift := 0, uint(0)
	for _, n := range need {
		width := uint(bits.Len(uint(n))) + 1
		if shift+width > 64 {
			word, shift = word+1, 0
		}
		if word == words {
			return nil, false
		}
		var one multiset
		one[word] = 1 << shift
		p.one = append(p.one, one)
		p.slack[word] |= uint64(1<<(width-1)-1-n) << shift
		p.guard[word] |= 1 << (shift + width - 1)
		p.word, p.shift, p.width = append(p.word, word), append(p.shift, shift), append(p.width, width-1)
		shift += width
	}
	return p, true
}

// sum adds two multisets; ok is false if they take more than is wanted.
func (p *packing) sum(a, b *multiset) (s multiset, ok bool) {
	over := uint64(0)
	for i := range s {
		s[i] = a[i] + b[i]
		over |= (s[i] + p.slack[i]) & p.guard[i]
	}
	return s, over == 0
}

// count is the number of pieces of a kind.
func (p *packing) count(s *multiset, k int) int32 {
	return int32(s[p.word[k]] >> p.shift[k] & (1<<p.width[k] - 1))
}
