package search

import (
	"cmp"
	"container/heap"
	"math"
	"slices"

	"creasefit/internal/sheet"
)

// bounded finds the most valuable sheet with at most so many pieces of each
// kind: it joins rectangles best first, judged by their own value and the most
// that the rest of the sheet could add with unlimited copies (K. Viswanathan,
// A. Bagchi, Operations Research 41 (1993) 768-776; V. Cung, M. Hifi, B. Le
// Cun, Int. Trans. Opl. Res. 7 (2000) 185-210).
type bounded struct {
	*effort
	table  *table
	pack   *packing
	around []int64 // most that can be added round a rectangle, by column
	open   openTiles
	closed []worthTile
	sizes  []corner // of closed, for a quick look
	seen   map[tileKey]bool
	best   worthTile
	nodes  int     // rectangles still allowed
	hope   float64 // part of what may be added that rectangles are judged by
	whole  bool    // around is known
	dear   []int32 // kinds of any value, the most for their area first
	caps   []int   // most pieces of each kind
	area   []int64 // of a piece of each kind
}

// worthTile is a joined rectangle with its value.
type worthTile struct {
	set    multiset
	w, h   int32
	value  int64
	reach  int64 // most valuable sheet that contains it
	rank   int64 // what it is judged by: reach, or less of what is only hoped for
	layout *layout
}

// tileKey tells rectangles apart.
type tileKey struct {
	set  multiset
	w, h int32
}

// openTiles is a heap of rectangles, the most promising first.
type openTiles []worthTile

func (o openTiles) Len() int           { return len(o) }
func (o openTiles) Less(i, j int) bool { return o[i].rank > o[j].rank }
func (o openTiles) Swap(i, j int)      { o[i], o[j] = o[j], o[i] }
func (o *openTiles) Push(x any)        { *o = append(*o, x.(worthTile)) }
func (o *openTiles) Pop() any {
	last := (*o)[len(*o)-1]
	*o = (*o)[:len(*o)-1]
	return last
}

// newBounded prepares the search on a table that has been solved for the
// values, for at most so many pieces of each kind.
func newBounded(e *effort, t *table, pack *packing, caps []int, nodes int) *bounded {
	b := &bounded{effort: e, table: t, pack: pack, caps: caps, seen: map[tileKey]bool{}, nodes: nodes, hope: 1}
	b.whole = b.surround()
	b.rank()
	return b
}

// rank lists the kinds of any value by what they are worth for their area.
func (b *bounded) rank() {
	area := make([]int64, len(b.caps))
	for _, f := range b.table.board.faces {
		area[f.kind] = int64(f.w) * int64(f.h)
	}
	for k, v := range b.table.value {
		if v > 0 && b.caps[k] > 0 {
			b.dear = append(b.dear, int32(k))
		}
	}
	slices.SortFunc(b.dear, func(x, y int32) int {
		return cmp.Compare(float64(b.table.value[y])*float64(area[x]), float64(b.table.value[x])*float64(area[y]))
	})
	b.area = area
}

// beyond is the greatest value that the pieces which a rectangle leaves can
// have within the area that it leaves, the last of them in part.
func (b *bounded) beyond(n *worthTile) int64 {
	board := b.table.board
	free, sum := int64(board.w)*int64(board.h)-int64(n.w)*int64(n.h), int64(0)
	for _, k := range b.dear {
		left := int64(b.caps[k]) - int64(b.pack.count(&n.set, int(k)))
		if left*b.area[k] >= free {
			return sum + int64(float64(free)/float64(b.area[k])*float64(b.table.value[k])) + 1
		}
		free -= left * b.area[k]
		sum += left * b.table.value[k]
	}
	return sum
}

// surround computes the most that can be added round every rectangle: strips
// beside or above it, until the sheet is full. A rectangle is known by what it
// leaves free to its right and above it, rounded down to raster points. Only
// such lengths may be rounded down: a raster point is what a sum leaves of the
// board, and a sum itself need not be one. Of the strips only those are tried that
// no two shorter ones are as good as. It reports whether it came to an end.
func (b *bounded) surround() bool {
	t := b.table
	nx, ny := len(t.xs), len(t.ys)
	b.around = make([]int64, nx*ny)
	for x := range nx {
		for y := range ny {
			if !b.spend(1 + b.surroundAt(x, y)) {
				return false
			}
		}
	}
	return true
}

// surroundAt computes it for what is left free to so far right and so high; it
// returns how many strips it looked at.
func (b *bounded) surroundAt(x, y int) (looked int) {
	t := b.table
	nx, ny := len(t.xs), len(t.ys)
	most := int64(0)
	if x > 0 { // an empty strip makes room for a wider one across it
		most = b.around[(x-1)*ny+y]
	}
	if y > 0 {
		most = max(most, b.around[x*ny+y-1])
	}
	high, wide := int(t.fy[t.board.h-t.ys[y]]), int(t.fx[t.board.w-t.xs[x]])
	for _, strip := range t.across[high] {
		rest := t.xs[x] - t.xs[strip]
		if rest < 0 {
			break
		}
		most = max(most, t.byRow[high*nx+int(strip)]+b.around[int(t.fx[rest])*ny+y])
		looked++
	}
	for _, strip := range t.useful[wide] {
		rest := t.ys[y] - t.ys[strip]
		if rest < 0 {
			break
		}
		most = max(most, t.byCol[wide*ny+int(strip)]+b.around[x*ny+int(t.fy[rest])])
		looked++
	}
	b.around[x*ny+y] = most
	return looked
}

// reach is the greatest value of a sheet with a rectangle of a value in it.
func (b *bounded) reach(w, h int32, value int64) int64 {
	t := b.table
	return value + b.around[int(t.fx[t.board.w-w])*len(t.ys)+int(t.fy[t.board.h-h])]
}

// hopeful is the part of what may be added by which good sheets are found soon.
const hopeful = 0.8

// quickly looks for good sheets among so many rectangles and proves nothing. What it
// finds, run has to surpass.
func (b *bounded) quickly(nodes int) {
	kept := b.nodes
	b.hope, b.nodes = hopeful, nodes
	b.run()
	b.hope, b.nodes = 1, kept
	b.open, b.closed, b.sizes = b.open[:0], b.closed[:0], b.sizes[:0]
	clear(b.seen)
}

// run returns the greatest value; if the search was cut short, sure is false, and
// the value is one that no sheet exceeds.
func (b *bounded) run() (value int64, sure bool) {
	if !b.whole {
		return math.MaxInt64, false
	}
	for _, f := range b.table.board.faces {
		b.offer(worthTile{set: b.pack.one[f.kind], w: f.w, h: f.h, value: b.table.value[f.kind], layout: &layout{kind: f.kind, turned: f.turned}})
	}
	for b.open.Len() > 0 {
		next := heap.Pop(&b.open).(worthTile)
		if next.reach <= b.best.value {
			if b.hope < 1 {
				continue
			}
			return b.best.value, true
		}
		if b.nodes < 0 || !b.spend(1+len(b.sizes)) {
			return next.reach, false
		}
		b.closed, b.sizes = append(b.closed, next), append(b.sizes, corner{next.w, next.h})
		restW, restH := b.table.board.w-next.w, b.table.board.h-next.h
		for i, size := range b.sizes {
			if size.w <= restW || size.h <= restH {
				b.join(&next, &b.closed[i])
			}
		}
	}
	return b.best.value, true
}

// join offers two rectangles side by side and one above the other.
func (b *bounded) join(p, q *worthTile) {
	board := b.table.board
	wide, high := p.w+q.w <= board.w && board.crossable(max(p.h, q.h)), p.h+q.h <= board.h && board.crossable(max(p.w, q.w))
	value := p.value + q.value
	wide = wide && b.reach(p.w+q.w, max(p.h, q.h), value) > b.best.value
	high = high && b.reach(max(p.w, q.w), p.h+q.h, value) > b.best.value
	if !wide && !high {
		return
	}
	set, ok := b.pack.sum(&p.set, &q.set)
	if !ok {
		return
	}
	if wide {
		b.offer(worthTile{set, p.w + q.w, max(p.h, q.h), value, 0, 0, &layout{axis: sheet.Width, low: p.layout, high: q.layout}})
	}
	if high {
		b.offer(worthTile{set, max(p.w, q.w), p.h + q.h, value, 0, 0, &layout{axis: sheet.Height, low: p.layout, high: q.layout}})
	}
}

// offer keeps a rectangle that may lead to more than the best.
func (b *bounded) offer(n worthTile) {
	n.reach = b.reach(n.w, n.h, n.value)
	if n.reach <= b.best.value {
		return
	}
	key := tileKey{n.set, n.w, n.h}
	if b.seen[key] {
		return
	}
	b.seen[key] = true
	if n.reach = min(n.reach, n.value+b.beyond(&n)); n.reach <= b.best.value {
		return
	}
	n.rank = n.value + int64(b.hope*float64(n.reach-n.value))
	b.nodes--
	if n.value > b.best.value {
		b.best = n
	}
	heap.Push(&b.open, n)
}
