package search

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"creasefit/internal/sheet"
)

// tile is a rectangle joined from pieces that wastes little.
type tile struct {
	set       multiset
	w, h      int32
	waste     int64
	axis      sheet.Axis
	low, high int32 // the joined tiles, or low -1 and the face in high
}

// tight joins tiles upwards from single pieces, as P. Y. Wang does (Operations
// Research 31 (1983) 573-586): whatever wastes more than a plan of the wanted
// cost can afford is left out. Tiles are made level by level, a level being a
// number of pieces; a level that grows too large keeps the least wasteful.
type tight struct {
	board  *board
	pack   *packing
	tiles  []tile
	levels []level
	from   int   // first tile of the last level
	allow  int64 // waste
	width  int   // most tiles of a level
	whole  bool  // nothing was left out
	random *rand.Rand
	least  int64   // the shortest side of a piece
	gapX   []int32 // what pieces can never fill of a length
	gapY   []int32
	seen   map[tileKey]bool
	effort *effort
}

// level is all tiles of so many pieces, in two orders.
type level struct {
	byHeight, byWidth []edges
}

// edges is what a join needs to know of a tile first, kept close together.
type edges struct {
	waste    int64
	w, h, at int32
}

// tileKey tells tiles of one level apart.
type tileKey struct {
	set  multiset
	w, h int32
}

// newTight prepares a board; allow is the waste a sheet may have.
func newTight(e *effort, b *board, pack *packing, allow int64, width int, random *rand.Rand) *tight {
	t := &tight{board: b, pack: pack, allow: allow, width: width, whole: true, random: random, effort: e}
	widths, heights := []int32{}, []int32{}
	t.least = int64(max(b.w, b.h))
	for _, f := range b.faces {
		t.least = min(t.least, int64(f.w), int64(f.h))
		widths, heights = append(widths, f.w), append(heights, f.h)
	}
	t.gapX, t.gapY = gaps(b.w, widths), gaps(b.h, heights)
	return t
}

// gaps returns for every length what is left by the greatest sum in it.
func gaps(total int32, sizes []int32) []int32 {
	sums := sumPoints(total, sizes)
	floor := floors(sums, total)
	for l := range floor {
		floor[l] = int32(l) - sums[floor[l]]
	}
	return floor
}

// run makes all levels.
func (t *tight) run() {
	t.singles()
	for n := 2; !t.effort.ended(); n++ {
		t.from = len(t.tiles)
		t.seen = map[tileKey]bool{}
		for i := 1; i <= n/2; i++ {
			if n-i <= len(t.levels) {
				t.combine(t.levels[i-1], t.levels[n-i-1])
			}
		}
		t.close()
		if n > 2*t.last() {
			return
		}
	}
	t.whole = false
}

// last is the greatest number of pieces of any tile.
func (t *tight) last() int {
	for n := len(t.levels); n > 0; n-- {
		if len(t.levels[n-1].byWidth) > 0 {
			return n
		}
	}
	return 0
}

// singles makes the first level.
func (t *tight) singles() {
	t.seen = map[tileKey]bool{}
	for i, f := range t.board.faces {
		if t.outside(f.w, f.h) > t.allow {
			continue
		}
		t.offer(tile{set: t.pack.one[f.kind], w: f.w, h: f.h, low: -1, high: int32(i)})
	}
	t.close()
}

// offer keeps a tile if it is new.
func (t *tight) offer(n tile) {
	key := tileKey{n.set, n.w, n.h}
	if !t.seen[key] {
		t.seen[key] = true
		t.tiles = append(t.tiles, n)
	}
	if len(t.tiles)-t.from > crowd+2*t.width {
		t.keep()
	}
}

// crowd is how far a level may grow before it is thinned out.
const crowd = 50_000

// close ends a level: it keeps the best tiles and sorts them.
func (t *tight) close() {
	if len(t.tiles)-t.from > t.width {
		t.keep()
	}
	t.levels = append(t.levels, t.sorted(t.tiles[t.from:]))
}

// sorted puts the tiles of the last level in order.
func (t *tight) sorted(tiles []tile) level {
	var l level
	for i := range tiles {
		n := &tiles[i]
		l.byHeight = append(l.byHeight, edges{n.waste, n.w, n.h, int32(t.from + i)})
	}
	l.byWidth = slices.Clone(l.byHeight)
	slices.SortFunc(l.byHeight, func(a, b edges) int { return cmp.Compare(a.h, b.h) })
	slices.SortFunc(l.byWidth, func(a, b edges) int { return cmp.Compare(a.w, b.w) })
	return l
}

// keep chooses the least wasteful tiles of the last level, ties at random, and
// drops the others.
func (t *tight) keep() {
	type ranked struct {
		tile
		rank float64
	}
	list := make([]ranked, 0, len(t.tiles)-t.from)
	for _, n := range t.tiles[t.from:] {
		list = append(list, ranked{n, float64(n.waste)/(float64(n.w)*float64(n.h)) + 0.02*t.random.Float64()})
	}
	slices.SortFunc(list, func(a, b ranked) int { return cmp.Compare(a.rank, b.rank) })
	t.tiles = t.tiles[:t.from]
	for _, n := range list[:t.width] {
		t.tiles = append(t.tiles, n.tile)
	}
	t.whole = false
}

// combine joins every tile of one level with those of another that are about
// as long where they meet.
func (t *tight) combine(low, high level) {
	for _, a := range low.byHeight {
		if !t.effort.spend(joinSteps * (1 + t.beside(a, high.byHeight) + t.above(a, high.byWidth))) {
			t.whole = false
			return
		}
	}
}

// joinSteps is what looking at a join costs.
const joinSteps = 10

// reach is how much shorter and how much longer than an edge the other tile's
// may be, for a tile that is so long across it.
func (t *tight) reach(a edges, across int32) (shorter, longer int32) {
	spare, most := t.allow-a.waste, int64(max(t.board.w, t.board.h))
	return int32(min(spare/t.least, most)), int32(min(spare/int64(across), most))
}

// beside joins a tile with others along the width; it returns how many it looked at.
func (t *tight) beside(a edges, others []edges) (looked int) {
	shorter, longer := t.reach(a, a.w)
	at, _ := slices.BinarySearchFunc(others, a.h-shorter, func(e edges, h int32) int { return cmp.Compare(e.h, h) })
	for ; at < len(others) && others[at].h <= a.h+longer; at++ {
		looked++
		b := &others[at]
		w, h := a.w+b.w, max(a.h, b.h)
		if w > t.board.w || !t.board.crossable(h) {
			continue
		}
		waste := a.waste + b.waste + int64(a.w)*int64(h-a.h) + int64(b.w)*int64(h-b.h)
		t.joined(a.at, b.at, tile{w: w, h: h, waste: waste, axis: sheet.Width})
	}
	return looked
}

// above joins a tile with others along the height in the same way.
func (t *tight) above(a edges, others []edges) (looked int) {
	shorter, longer := t.reach(a, a.h)
	at, _ := slices.BinarySearchFunc(others, a.w-shorter, func(e edges, w int32) int { return cmp.Compare(e.w, w) })
	for ; at < len(others) && others[at].w <= a.w+longer; at++ {
		looked++
		b := &others[at]
		w, h := max(a.w, b.w), a.h+b.h
		if h > t.board.h || !t.board.crossable(w) {
			continue
		}
		waste := a.waste + b.waste + int64(a.h)*int64(w-a.w) + int64(b.h)*int64(w-b.w)
		t.joined(a.at, b.at, tile{w: w, h: h, waste: waste, axis: sheet.Height})
	}
	return looked
}

// joined offers a join unless it wastes or takes too much.
func (t *tight) joined(i, j int32, n tile) {
	if n.waste+t.outside(n.w, n.h) > t.allow {
		return
	}
	set, ok := t.pack.sum(&t.tiles[i].set, &t.tiles[j].set)
	if !ok {
		return
	}
	n.set, n.low, n.high = set, i, j
	t.offer(n)
}

// outside is what no piece can fill beside and above a tile.
func (t *tight) outside(w, h int32) int64 {
	return int64(h)*int64(t.gapX[t.board.w-w]) + int64(w)*int64(t.gapY[t.board.h-h])
}

// patterns lists the sets of pieces that waste little enough of a whole sheet.
func (t *tight) patterns(kinds int) []pattern {
	var out []pattern
	seen := map[multiset]bool{}
	whole := int64(t.board.w) * int64(t.board.h)
	for i := range t.tiles {
		n := &t.tiles[i]
		if whole-int64(n.w)*int64(n.h)+n.waste > t.allow || seen[n.set] {
			continue
		}
		seen[n.set] = true
		pt := pattern{board: t.board, counts: make([]int32, kinds), draw: func() *layout { return t.layout(int32(i)) }}
		for k := range kinds {
			pt.counts[k] = t.pack.count(&n.set, k)
		}
		out = append(out, pt)
	}
	return out
}

// layout is how a tile is joined.
func (t *tight) layout(i int32) *layout {
	n := &t.tiles[i]
	if n.low < 0 {
		f := t.board.faces[n.high]
		return &layout{kind: f.kind, turned: f.turned}
	}
	return &layout{axis: n.axis, low: t.layout(n.low), high: t.layout(n.high)}
}
