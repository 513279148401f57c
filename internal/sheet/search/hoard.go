package search

// hoard keeps the sheets that reworking came across and that waste little:
// those of different plans may make a plan together.
type hoard struct {
	target   int64
	allow    []int64 // waste, of each size of sheet
	seen     map[string]bool
	key      []byte
	patterns []pattern
}

// mostHoarded bounds the memory of a hoard.
const mostHoarded = 20_000

// keep takes the changed sheets of a step.
func (h *hoard) keep(drafts []draft, changed []bool, kinds int) {
	for i, now := range changed {
		if t := &drafts[i]; now && t.root != none && t.free <= h.allow[t.board.stock] && len(h.patterns) < mostHoarded {
			h.add(t, kinds)
		}
	}
}

// add takes a sheet unless one like it is there: of the same size, with as many pieces
// of every kind.
func (h *hoard) add(t *draft, kinds int) {
	h.key = append(append(h.key[:0], byte(t.board.stock)), make([]byte, 2*kinds)...)
	for i := range t.knots {
		if face := t.knots[i].face; face != none {
			at := 1 + 2*t.board.faces[face].kind
			if h.key[at]++; h.key[at] == 0 {
				h.key[at+1]++
			}
		}
	}
	if !h.seen[string(h.key)] {
		h.seen[string(h.key)] = true
		h.patterns = append(h.patterns, drawn(t.board, t.layout(t.root), kinds))
	}
}
