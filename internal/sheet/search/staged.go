package search

import (
	"cmp"
	"slices"

	"creasefit/internal/sheet"
)

// staged holds the greatest value that can be cut from a board in two or three
// stages, with unlimited copies of every face: rows are stacked, each of pieces
// in a line, and for a third stage such stacks stand side by side (P. C. Gilmore,
// R. E. Gomory, Operations Research 13 (1965) 94-120). It is far quicker than
// table and finds less.
type staged struct {
	board   *board
	lines   sheet.Axis // that the pieces of a row lie along
	stacks  bool       // several stand side by side, by a third stage
	trims   bool       // a piece may be trimmed to its height by a further cut
	size    corner     // of the sheet as the trimmer meets it, along a row and across it
	xs, ys  []int32    // raster points along a row and across it
	fx, fy  []int32    // their floors
	faces   []lined    // the lowest first
	heights []int32    // of rows
	row     [][]int64  // greatest value of a row, by height and length
	stack   [][]int64  // of a stack, by length and height; without stacks of the whole length alone
	line    []int64    // of stacks side by side, by length
	value   []int64    // of each kind
}

// lined is a face as it lies in a row.
type lined struct {
	along, across int32
	kind          int32
	turned        bool
}

// newStaged prepares the rows of a board.
func newStaged(b *board, lines sheet.Axis, stacks, trims bool) *staged {
	s := &staged{board: b, lines: lines, stacks: stacks, trims: trims, size: b.whole}
	own := corner{b.w, b.h}
	s.xs, s.ys = b.rasters()
	if lines == sheet.Height {
		s.size, own, s.xs, s.ys = corner{b.whole.h, b.whole.w}, corner{b.h, b.w}, s.ys, s.xs
	}
	s.fx, s.fy = floors(s.xs, own.w), floors(s.ys, own.h)
	for _, f := range b.faces {
		size := corner{f.w, f.h}
		s.faces = append(s.faces, lined{size.along(lines), size.along(lines.Other()), f.kind, f.turned})
		s.heights = append(s.heights, size.along(lines.Other()))
	}
	slices.SortStableFunc(s.faces, func(a, b lined) int { return cmp.Compare(a.across, b.across) })
	slices.Sort(s.heights)
	s.heights = slices.Compact(s.heights)
	for range s.heights {
		s.row = append(s.row, make([]int64, len(s.xs)))
	}
	s.stack = make([][]int64, len(s.xs))
	s.line = make([]int64, len(s.xs))
	return s
}

// solve computes the greatest value of the whole board for the given value of
// each kind; ok is false if it was cut short.
func (s *staged) solve(e *effort, value []int64) (most int64, ok bool) {
	s.value = value
	if !s.fillRows(e) {
		return 0, false
	}
	last := len(s.xs) - 1
	if !s.stacks {
		s.fillStack(last)
		return s.top(last), e.spend(len(s.ys) * len(s.heights))
	}
	for x := 1; x <= last; x++ {
		if s.fillStack(x); !e.spend(len(s.ys) * len(s.heights)) {
			return 0, false
		}
	}
	return s.fillLine(), e.spend(len(s.xs) * len(s.xs) / 4)
}

// top is the value of a stack as high as the board.
func (s *staged) top(x int) int64 { return s.stack[x][len(s.ys)-1] }

// fillRows computes the value of rows of every height and length, one face after
// another.
func (s *staged) fillRows(e *effort) bool {
	at := 0
	for i, high := range s.heights {
		row := s.row[i]
		clear(row)
		if s.trims && i > 0 && s.board.crossable(high) {
			copy(row, s.row[i-1])
		}
		for ; at < len(s.faces) && s.faces[at].across == high; at++ {
			if s.addFace(row, &s.faces[at]); !e.spend(len(s.xs)) {
				return false
			}
		}
	}
	return true
}

// addFace enters any number of a face into rows of its height; where the trimmer
// does not divide the row, one that is as long as the board.
func (s *staged) addFace(row []int64, f *lined) {
	v := s.value[f.kind]
	if !s.board.crossable(f.across) {
		if f.along == s.size.w {
			row[len(row)-1] = max(row[len(row)-1], v)
		}
		return
	}
	for x := 1; x < len(row); x++ {
		row[x] = max(row[x], row[x-1])
		if wide := s.xs[x]; wide >= f.along {
			row[x] = max(row[x], v+row[s.fx[wide-f.along]])
		}
	}
}

// length is how long the cuts across a stack are.
func (s *staged) length(x int) int32 {
	if x == len(s.xs)-1 {
		return s.size.w
	}
	return s.xs[x]
}

// fillStack computes the value of stacks of rows of a length; where the trimmer
// does not divide them, of one row as high as the board.
func (s *staged) fillStack(x int) {
	if s.stack[x] == nil {
		s.stack[x] = make([]int64, len(s.ys))
	}
	stack := s.stack[x]
	if !s.board.crossable(s.length(x)) {
		clear(stack)
		if i, ok := slices.BinarySearch(s.heights, s.size.h); ok {
			stack[len(stack)-1] = s.row[i][x]
		}
		return
	}
	for y := 1; y < len(stack); y++ {
		best, high := stack[y-1], s.ys[y]
		for i, h := range s.heights {
			if h > high {
				break
			}
			best = max(best, s.row[i][x]+stack[s.fy[high-h]])
		}
		stack[y] = best
	}
}

// fillLine computes the value of stacks side by side and returns that of the
// whole board.
func (s *staged) fillLine() int64 {
	last := len(s.xs) - 1
	if !s.board.crossable(s.size.h) {
		clear(s.line)
		s.line[last] = s.top(last)
		return s.line[last]
	}
	var useful []int // stacks worth more than any shorter one
	most := int64(0)
	for x := 1; x <= last; x++ {
		if v := s.top(x); v > most {
			useful, most = append(useful, x), v
		}
		best := s.line[x-1]
		for _, part := range useful {
			best = max(best, s.top(part)+s.line[s.fx[s.xs[x]-s.xs[part]]])
		}
		s.line[x] = best
	}
	return s.line[last]
}

// trace returns a layout of the greatest value, or nil if that is zero.
func (s *staged) trace() *layout {
	last := len(s.xs) - 1
	if !s.stacks {
		return s.traceStack(last)
	}
	var whole *layout
	for x := last; s.line[x] > 0; {
		for s.line[x-1] == s.line[x] {
			x--
		}
		part := x
		for part > 0 && (s.top(part) == 0 || s.top(part)+s.line[s.fx[s.xs[x]-s.xs[part]]] != s.line[x]) {
			part--
		}
		whole = beside(s.lines, whole, s.traceStack(part))
		x = int(s.fx[s.xs[x]-s.xs[part]])
	}
	return whole
}

// traceStack returns a layout of a stack as high as the board.
func (s *staged) traceStack(x int) *layout {
	var whole *layout
	stack := s.stack[x]
	for y := len(stack) - 1; stack[y] > 0; {
		for stack[y-1] == stack[y] {
			y--
		}
		i := 0
		for s.heights[i] > s.ys[y] || s.row[i][x] == 0 || s.row[i][x]+stack[s.fy[s.ys[y]-s.heights[i]]] != stack[y] {
			i++
		}
		whole = beside(s.lines.Other(), whole, s.traceRow(i, x))
		y = int(s.fy[s.ys[y]-s.heights[i]])
	}
	return whole
}

// traceRow returns a layout of a row.
func (s *staged) traceRow(i, x int) *layout {
	var whole *layout
	row := s.row[i]
	for row[x] > 0 {
		for row[x-1] == row[x] {
			x--
		}
		f := s.faceOf(i, x)
		whole = beside(s.lines, whole, &layout{kind: f.kind, turned: f.turned})
		x = int(s.fx[s.xs[x]-f.along])
	}
	return whole
}

// faceOf is a face that the value of a row comes from.
func (s *staged) faceOf(i, x int) *lined {
	for at := range s.faces {
		f := &s.faces[at]
		v := s.value[f.kind]
		if v == 0 || f.along > s.xs[x] || f.across > s.heights[i] || !s.trims && f.across != s.heights[i] {
			continue
		}
		if v+s.row[i][s.fx[s.xs[x]-f.along]] == s.row[i][x] {
			return f
		}
	}
	return nil
}
