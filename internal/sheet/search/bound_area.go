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
	pl.prove(w, tooLarge)
}

// boundByRaster proves the same with the greatest area that edge-to-edge cuts
// can use of a sheet; it wants another turn if it was cut short.
func (pl *planner) boundByRaster(int) (again bool) {
	value := pl.weights[0].value
	var tops []int64
	for _, t := range pl.allTables() {
		v, ok := t.solve(pl.effort, value)
		if !ok {
			return true
		}
		tops = append(tops, v)
	}
	pl.prove(weights{value: value, tops: tops}, "Edge-to-edge cuts cannot use enough of fewer sheets.")
	return false
}
