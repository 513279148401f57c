package search

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/sheet"
)

// layout is how pieces are joined into a rectangle: a leaf is one piece, any
// other node lays low and high side by side along axis (Width) or one above
// the other (Height). It has no sizes: the smallest rectangle follows from the
// pieces, and realize turns it into cuts.
type layout struct {
	kind      int32
	turned    bool
	axis      sheet.Axis
	low, high *layout
}

// face is one way in which a kind of piece may lie on a board.
type face struct {
	w, h   int32
	kind   int32
	turned bool
}

// board is the usable part of one size of sheet, in units. Every sheet.Extent is
// one kerf too long, so that cuts take nothing away.
type board struct {
	w, h      int32
	limit     int32  // the longest cut
	whole     corner // the sides, more than the limit where those of the sheet are: a unit may hide what must be trimmed first
	faces     []face
	stock     int
	cost      int64
	available int // zero means as many as needed
}

// crossable reports whether a rectangle this long along one axis may be cut
// along that axis.
func (b *board) crossable(extent int32) bool { return extent <= b.limit }

// longer is a side that is made longer than any cut if that is so.
func (b *board) longer(side int32, than bool) int32 {
	if than {
		return max(side, b.limit+1)
	}
	return side
}

// kind is all items of the same size and grain.
type kind struct {
	items []int // indices of the order's items, in its order
	need  int   // pieces wanted
	area  int64 // in square units, kerf included
}

// problem is an order in whole units.
type problem struct {
	order  sheet.Order
	kinds  []kind
	boards []board
	unit   int64 // nanometres
	coarse bool  // pieces were rounded up to the unit
	roomy  bool  // pieces are rounded down instead, and sheets up
}

// newProblem translates an order that has been checked.
func newProblem(o sheet.Order) *problem {
	p := &problem{order: o, unit: commonUnit(o)}
	p.gatherKinds()
	for p.layBoards(); p.tooFine(); p.layBoards() {
		p.coarsen()
	}
	return p
}

// commonUnit is the greatest length that all pieces, one kerf longer, are
// multiples of.
func commonUnit(o sheet.Order) int64 {
	unit := int64(0)
	for _, it := range o.Items {
		unit = gcd(unit, it.Width.Add(o.Kerf).Nanometres())
		unit = gcd(unit, it.Height.Add(o.Kerf).Nanometres())
	}
	return unit
}

// gcd is the greatest common divisor; gcd(0, n) is n.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// gatherKinds merges items of the same size and grain, largest area first.
func (p *problem) gatherKinds() {
	type key struct {
		w, h, grain int64
		paper       string
	}
	index := map[key]int{}
	for i, it := range p.order.Items {
		k := key{it.Width.Nanometres(), it.Height.Nanometres(), int64(it.Grain), it.Paper}
		at, seen := index[k]
		if !seen {
			at = len(p.kinds)
			index[k] = at
			p.kinds = append(p.kinds, kind{})
		}
		p.kinds[at].items = append(p.kinds[at].items, i)
		p.kinds[at].need += it.Count
	}
	for k := range p.kinds {
		slices.SortStableFunc(p.kinds[k].items, func(i, j int) int { return cmp.Compare(p.order.Rank(i), p.order.Rank(j)) })
	}
	slices.SortStableFunc(p.kinds, func(a, b kind) int {
		x, y := p.order.Items[a.items[0]], p.order.Items[b.items[0]]
		return cmp.Compare(y.Width.Millimetres()*y.Height.Millimetres(), x.Width.Millimetres()*x.Height.Millimetres())
	})
}

// layBoards expresses sheets and pieces in the current unit: pieces rounded
// up, sheets and the trimmer down.
func (p *problem) layBoards() {
	o, kerf := p.order, p.order.Kerf.Nanometres()
	p.boards = nil
	for k := range p.kinds {
		p.kinds[k].area = math.MaxInt64
	}
	for s := range o.Sheets {
		w, h := o.Usable(s)
		b := board{w: p.down(w.Nanometres() + kerf), h: p.down(h.Nanometres() + kerf), stock: s, cost: o.Cost(s), available: o.Sheets[s].Available}
		b.limit = max(b.w, b.h)
		b.whole = corner{b.w, b.h}
		if !o.Trimmer.IsZero() {
			b.limit = min(b.limit, p.down(o.Trimmer.Nanometres()+kerf))
			b.whole = corner{b.longer(b.w, o.Trimmer.Less(w)), b.longer(b.h, o.Trimmer.Less(h))}
		}
		p.layFaces(&b, kerf)
		if len(b.faces) > 0 {
			p.boards = append(p.boards, b)
		}
	}
}

// layFaces lists the ways in which every kind may lie on a board. What is as long as the
// board fills it, however they were rounded: nothing lies beside it.
func (p *problem) layFaces(b *board, kerf int64) {
	for k, kd := range p.kinds {
		it := kd.items[0]
		for _, turned := range p.order.Turns(it, b.stock) {
			if !p.order.Reachable(it, b.stock, turned) {
				continue
			}
			w, h := p.order.Items[it].Lying(turned)
			f := face{min(p.up(w.Nanometres()+kerf), b.w), min(p.up(h.Nanometres()+kerf), b.h), int32(k), turned}
			p.kinds[k].area = min(p.kinds[k].area, int64(f.w)*int64(f.h))
			b.faces = append(b.faces, f)
		}
	}
}

// down and up round to whole units, and the other way about where it is roomy.
func (p *problem) down(nm int64) int32 { return p.units(nm, p.roomy) }
func (p *problem) up(nm int64) int32   { return p.units(nm, !p.roomy) }

// units are whole ones, rounded up or down.
func (p *problem) units(nm int64, up bool) int32 {
	if up {
		nm += p.unit - 1
	}
	return int32(nm / p.unit)
}

// roomier is an order planned on a coarser grid, with more room than there is: what
// is proven of it holds for the exact sizes. ok is false if nothing is left of a piece.
func (p *problem) roomier() (r *problem, ok bool) {
	r = new(problem)
	*r = *p
	r.kinds, r.roomy = slices.Clone(p.kinds), true
	r.layBoards()
	for _, b := range r.boards {
		for _, f := range b.faces {
			if min(f.w, f.h) == 0 {
				return nil, false
			}
		}
	}
	return r, true
}

// Bounds of the tables: extents in units, and cells of the tables of all
// boards together, which take 16 bytes each.
const (
	mostUnits = 1 << 18
	mostCells = 2_000_000
)

// tooFine reports whether the tables would be too large.
func (p *problem) tooFine() bool {
	for s := range p.order.Sheets {
		w, h := p.order.Usable(s)
		if max(w.Nanometres(), h.Nanometres())/p.unit >= mostUnits {
			return true
		}
	}
	cells := 0
	for i := range p.boards {
		xs, ys := p.boards[i].rasters()
		cells += len(xs) * len(ys)
	}
	return cells > mostCells
}

// coarsen makes the unit longer. The first coarse unit divides the longest
// side of a sheet into at most mostUnits; later ones double it.
func (p *problem) coarsen() {
	longest := int64(0)
	for s := range p.order.Sheets {
		w, h := p.order.Usable(s)
		longest = max(longest, w.Nanometres(), h.Nanometres())
	}
	p.unit = max(2*p.unit, longest/(mostUnits-1)+1)
	p.coarse = true
}
