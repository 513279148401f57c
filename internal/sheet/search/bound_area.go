package search

// boundByArea proves that the sheets are at least as large as the blanks.
func (pl *planner) boundByArea() {
	w := weights{value: make([]int64, len(pl.kinds))}
	for k := range pl.kinds {
		w.value[k] = pl.kinds[k].area
	}
	for _, b := range pl.boards {
		w.tops = append(w.tops, int64(b.w)*int64(b.h))
	}
	pl.rooms = append(pl.rooms, w)
	pl.prove(w, tooLarge)
}

// boundingByRaster proves the same with the greatest area that edge-to-edge cuts
// can use of a sheet, from turn to turn.
func (pl *planner) boundingByRaster() way {
	v := valuing{boards: pl.boards, weights: weights{value: pl.weights[0].value}}
	return func(int) (again bool) {
		if !v.run(pl.effort) {
			return true
		}
		pl.prove(v.weights, "Edge-to-edge cuts cannot use enough of fewer sheets.")
		return false
	}
}

// valuing finds the most that a sheet of every board can be worth, with unlimited
// copies.
type valuing struct {
	weights
	boards []board
	table  *table // of the board at hand
}

// run goes on where it was cut short and reports whether it came to an end.
func (v *valuing) run(e *effort) bool {
	for at := len(v.tops); at < len(v.boards); at++ {
		if v.table == nil {
			v.table = newTable(&v.boards[at])
		}
		top, ok := v.table.solve(e, v.value)
		if !ok {
			return false
		}
		v.tops, v.table = append(v.tops, top), nil
	}
	return true
}

// boundExactly proves for the exact sizes of an order that is planned on a coarser grid
// what the values of the bounds so far prove of a roomier one, the newest first.
func (pl *planner) boundExactly() {
	r, ok := pl.roomier()
	if !ok {
		return
	}
	roomy := r.newPlanner(pl.effort)
	for _, w := range pl.guides() {
		if v := (valuing{boards: r.boards, weights: weights{value: w.value}}); v.run(pl.effort) {
			roomy.prove(v.weights, "")
		}
	}
	pl.exactly = roomy.lower
}
