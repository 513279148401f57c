package search

// fitOneSheet says whether all pieces come out of one sheet where a plan at the
// lower bound can have no more, and they are not too many to tell.
func (pl *planner) fitOneSheet(int) (again bool) {
	target := pl.target()
	if target >= 2*pl.cheapest() || pl.pieces() > mostFitted {
		return false
	}
	pieces, total := pl.singly(), pl.weights[0].sum(pl.needs())
	var f fitting
	for i := range pl.boards {
		b := &pl.boards[i]
		if b.cost > target || int64(b.w)*int64(b.h) < total {
			continue
		}
		l, sure := f.fit(pl.effort, b, facesOf(b, len(pl.kinds)), pl.kinds, pieces)
		if !sure {
			return true
		}
		if l != nil {
			pl.offer([]use{{drawn(b, l, len(pl.kinds)), 1}})
			return false
		}
	}
	pl.raise(target+1, "A complete search found no way to cut all blanks from one sheet.")
	return false
}

// cheapest is the cost of the cheapest sheet.
func (p *problem) cheapest() int64 {
	least := p.dearest()
	for _, b := range p.boards {
		least = min(least, b.cost)
	}
	return least
}
