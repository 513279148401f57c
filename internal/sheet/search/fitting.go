package search

import "math/bits"

// mostFitted is how many pieces are fitted to a sheet at once: every way to part
// every set of them in two is looked at, three times as many for each piece more.
const mostFitted = 16

// fitting says whether given pieces can be cut from one sheet: exactly, since
// it knows the least rectangles of every set of them that waste no more than
// all of them leave of the sheet.
type fitting struct {
	board   *board
	pieces  []int32 // kinds
	area    []int64 // of every set, by the bits of its pieces
	from    []int32 // where the corners of a set begin; those of the next end them
	corners []corner
	found   curve
	allow   int64 // waste
}

// fit looks for a layout of pieces on a board, nil if there is none. They are
// no larger together than the board. sure is false if it was cut short.
func (f *fitting) fit(e *effort, b *board, faces [][]int16, kinds []kind, pieces []int32) (l *layout, sure bool) {
	f.board, f.pieces = b, pieces
	f.area, f.from, f.corners = append(f.area[:0], 0), append(f.from[:0], 0, 0), f.corners[:0]
	f.allow = int64(b.w) * int64(b.h)
	for _, k := range pieces {
		f.allow -= kinds[k].area
	}
	all := uint32(1)<<len(pieces) - 1
	for set := uint32(1); set <= all; set++ {
		if !e.spend(1 << bits.OnesCount32(set)) {
			return nil, false
		}
		first, rest := pieces[bits.TrailingZeros32(set)], set&(set-1)
		f.area = append(f.area, f.area[rest]+kinds[first].area)
		f.found = f.found[:0]
		if rest == 0 {
			for _, at := range faces[first] {
				f.found = f.found.add(corner{b.faces[at].w, b.faces[at].h})
			}
		} else {
			f.part(set)
		}
		f.corners = append(f.corners, f.found...)
		f.from = append(f.from, int32(len(f.corners)))
	}
	if len(f.of(all)) == 0 {
		return nil, true
	}
	return f.layout(all, corner{b.w, b.h}), true
}

// of are the corners of a set.
func (f *fitting) of(set uint32) curve { return f.corners[f.from[set]:f.from[set+1]] }

// part joins every two sets that a set can be parted into, the first of which
// has its last piece.
func (f *fitting) part(set uint32) {
	last := uint32(1) << (31 - bits.LeadingZeros32(set))
	others := set ^ last
	for sub := others; sub > 0; {
		sub = (sub - 1) & others
		if low, high := f.of(sub|last), f.of(others^sub); len(low) > 0 && len(high) > 0 {
			f.found = f.found.joins(f.board, low, high, f.area[set]+f.allow)
		}
	}
}

// layout joins the pieces of a set within a rectangle that holds them.
func (f *fitting) layout(set uint32, within corner) *layout {
	if set&(set-1) == 0 {
		return f.board.leaf(f.pieces[bits.TrailingZeros32(set)], within)
	}
	for sub := (set - 1) & set; sub > 0; sub = (sub - 1) & set {
		if a, p, q, ok := f.board.split(f.of(sub), f.of(set^sub), within); ok {
			return &layout{axis: a, low: f.layout(sub, p), high: f.layout(set^sub, q)}
		}
	}
	return nil
}
