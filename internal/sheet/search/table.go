package search

import (
	"slices"

	"creasefit/internal/sheet"
)

// table holds the greatest value that can be cut from every rectangle of a
// board whose sides are raster points, with unlimited copies of every face.
type table struct {
	board  *board
	xs, ys []int32   // raster points
	fx, fy []int32   // floors of xs and ys
	byRow  []int64   // value of (x, y) at y*len(xs)+x
	byCol  []int64   // the same at x*len(ys)+y
	value  []int64   // of each kind
	solved int       // rows
	across [][]int32 // of each row, the parts that cuts across the width need try
	useful [][]int32 // of each column, those across the height
}

// newTable prepares the raster of a board; solve fills it for given values.
func newTable(b *board) *table {
	t := &table{board: b}
	t.xs, t.ys = b.rasters()
	t.fx, t.fy = floors(t.xs, b.w), floors(t.ys, b.h)
	t.byRow = make([]int64, len(t.xs)*len(t.ys))
	t.byCol = make([]int64, len(t.xs)*len(t.ys))
	t.across, t.useful = make([][]int32, len(t.ys)), make([][]int32, len(t.xs))
	return t
}

// solve computes the greatest value of every rectangle for the given value of
// each kind and returns that of the whole board; ok is false if it was cut short.
// Asked again for the same values, it goes on.
//
// A rectangle's value is the greatest of: a single piece, the next smaller
// rectangle either way, and its best cut. Only some cuts need be tried: the
// smaller part of a cut across the width can be taken as one whose own best is
// strictly better than any cut across its width, since the parts of such a cut
// could be cut off the whole rectangle one by one; so a list of those parts is
// kept for each row, and likewise for each column.
func (t *table) solve(e *effort, value []int64) (most int64, ok bool) {
	if t.solved == 0 || !slices.Equal(t.value, value) {
		t.begin(value)
	}
	for ; t.solved < len(t.ys); t.solved++ {
		if e.ended() {
			return 0, false
		}
		y := t.solved
		t.across[y] = t.solveRow(y, t.across[y][:0])
		e.spend(len(t.xs) + len(t.xs)*len(t.across[y])/2)
	}
	return t.byRow[len(t.byRow)-1], true
}

// begin forgets what was solved for other values, and enters the single pieces.
func (t *table) begin(value []int64) {
	t.value, t.solved = value, 1
	clear(t.byRow)
	clear(t.byCol)
	for i := range t.useful {
		t.useful[i] = t.useful[i][:0]
	}
	for _, f := range t.board.faces {
		x, y := ceiling(t.xs, t.fx, f.w), ceiling(t.ys, t.fy, f.h)
		if x < 0 || y < 0 {
			continue
		}
		least := &t.byRow[y*len(t.xs)+x] // rectangle that holds the piece
		*least = max(*least, t.value[f.kind])
	}
}

// ceiling returns the index of the least point that is at least l, or -1.
func ceiling(points, floor []int32, l int32) int {
	at := int(floor[l])
	if points[at] < l {
		at++
	}
	if at == len(points) {
		return -1
	}
	return at
}

// solveRow fills one row from left to right. It appends to row the parts that
// cuts across the width need try, and to useful those across the height.
func (t *table) solveRow(y int, row []int32) []int32 {
	nx, ny := len(t.xs), len(t.ys)
	line := t.byRow[y*nx : (y+1)*nx]
	below := t.byRow[(y-1)*nx : y*nx]
	top := t.ys[y]
	across := t.board.crossable(top)
	for x := 1; x < nx; x++ {
		wide := t.xs[x]
		wv, hv := line[x-1], below[x]
		if across {
			wv = max(wv, bestCut(line, t.xs, t.fx, row, wide))
		}
		if t.board.crossable(wide) {
			hv = max(hv, bestCut(t.byCol[x*ny:(x+1)*ny], t.ys, t.fy, t.useful[x], top))
		}
		v := max(wv, hv, line[x])
		line[x] = v
		t.byCol[x*ny+y] = v
		if v > wv {
			row = append(row, int32(x))
		}
		if v > hv {
			t.useful[x] = append(t.useful[x], int32(y))
		}
	}
	return row
}

// bestCut returns the greatest value of a strip cut into two, where parts
// lists the smaller parts worth trying, ascending.
func bestCut(line []int64, points, floor, parts []int32, length int32) int64 {
	best := int64(0)
	half := length / 2
	for _, p := range parts {
		at := points[p]
		if at > half {
			break
		}
		best = max(best, line[p]+line[floor[length-at]])
	}
	return best
}

// trace returns a layout of the greatest value, or nil if that is zero.
func (t *table) trace() *layout { return t.traceAt(len(t.xs)-1, len(t.ys)-1) }

// traceAt returns a layout of the greatest value of one rectangle.
func (t *table) traceAt(x, y int) *layout {
	nx := len(t.xs)
	v := t.byRow[y*nx+x]
	if v == 0 {
		return nil
	}
	for t.byRow[y*nx+x-1] == v {
		x--
	}
	for t.byRow[(y-1)*nx+x] == v {
		y--
	}
	for _, f := range t.board.faces {
		if t.value[f.kind] == v && f.w <= t.xs[x] && f.h <= t.ys[y] {
			return &layout{kind: f.kind, turned: f.turned}
		}
	}
	for p := 1; p < x && t.board.crossable(t.ys[y]); p++ {
		if q := int(t.fx[t.xs[x]-t.xs[p]]); t.byRow[y*nx+p]+t.byRow[y*nx+q] == v {
			return &layout{axis: sheet.Width, low: t.traceAt(p, y), high: t.traceAt(q, y)}
		}
	}
	for p := 1; p < y; p++ {
		if q := int(t.fy[t.ys[y]-t.ys[p]]); t.byRow[p*nx+x]+t.byRow[q*nx+x] == v {
			return &layout{axis: sheet.Height, low: t.traceAt(x, p), high: t.traceAt(x, q)}
		}
	}
	return nil
}
