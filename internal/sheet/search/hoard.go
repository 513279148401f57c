package search

// hoard keeps the sheets that reworking came across and that waste little:
// those of different plans may make a plan together.
type hoard struct {
	target   int64
	pack     *packing // nil if sets of pieces do not fit one
	allow    []int64  // waste, of each size of sheet
	seen     map[hoardKey]bool
	patterns []pattern
}

// hoardKey tells sheets apart.
type hoardKey struct {
	stock int
	set   multiset
}

// mostHoarded bounds the memory of a hoard.
const mostHoarded = 20_000

// keep takes the changed sheets of a step.
func (h *hoard) keep(drafts []draft, changed []bool, kinds int) {
	if h.pack == nil || len(h.patterns) >= mostHoarded {
		return
	}
	for i, now := range changed {
		if t := &drafts[i]; now && t.root != none && t.free <= h.allow[t.board.stock] {
			h.add(t, kinds)
		}
	}
}

// add takes a sheet unless one like it is there.
func (h *hoard) add(t *draft, kinds int) {
	key := hoardKey{stock: t.board.stock}
	for i := range t.knots {
		if face := t.knots[i].face; face != none {
			key.set, _ = h.pack.sum(&key.set, &h.pack.one[t.board.faces[face].kind])
		}
	}
	if !h.seen[key] {
		h.seen[key] = true
		h.patterns = append(h.patterns, drawn(t.board, t.layout(t.root), kinds))
	}
}
