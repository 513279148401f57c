package search

// fitOneSheet says whether all pieces come out of one sheet where a plan at the
// lower bound can have no more, and they are not too many to tell.
func (pl *planner) fitOneSheet() {
	target := pl.target()
	if target >= 2*pl.cheapest() || pl.pieces() > mostFitted {
		return
	}
	pieces, total := pl.singly(), pl.area()
	var f fitting
	for i := range pl.boards {
		b := &pl.boards[i]
		if b.cost > target || int64(b.w)*int64(b.h) < total {
			continue
		}
		l, err := f.fit(pl.ctx, b, facesOf(b, len(pl.kinds)), pl.kinds, pieces)
		if err != nil {
			return
		}
		if l != nil {
			pl.offer([]use{{drawn(b, l, len(pl.kinds)), 1}})
			return
		}
	}
	pl.raise(target+1, "A complete search found no way to cut all blanks from one sheet.")
}

// cheapest is the cost of the cheapest sheet.
func (p *problem) cheapest() int64 {
	least := p.dearest()
	for _, b := range p.boards {
		least = min(least, b.cost)
	}
	return least
}
