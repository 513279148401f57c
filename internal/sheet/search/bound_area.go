package search

// boundByArea proves that the sheets are at least as large as the blanks.
func (pl *planner) boundByArea() {
	w := weights{value: make([]int64, len(pl.kinds))}
	for k := range pl.kinds {
		w.value[k] = pl.kinds[k].area
	}
	for _, b := range pl.boards {
		area := int64(b.w) * int64(b.h)
		w.top = max(w.top, (area+b.cost-1)/b.cost)
	}
	pl.prove(w, tooLarge)
}

// boundByRaster proves the same with the greatest area that edge-to-edge cuts
// can use of a sheet; it wants another turn if it was cut short.
func (pl *planner) boundByRaster(int) (again bool) {
	value := pl.weights[0].value
	top, ok := pl.top(value)
	if ok {
		pl.prove(weights{value, top}, "Edge-to-edge cuts cannot use enough of fewer sheets.")
	}
	return !ok
}

// top is the greatest value of one sheet for each unit of its cost, with
// unlimited copies.
func (pl *planner) top(value []int64) (int64, bool) {
	top := int64(1)
	for _, t := range pl.allTables() {
		v, ok := t.solve(pl.effort, value)
		if !ok {
			return 0, false
		}
		top = max(top, ceilDiv(v, t.board.cost))
	}
	return top, true
}
