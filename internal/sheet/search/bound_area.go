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

// boundingByRaster proves the same with the greatest area that edge-to-edge cuts
// can use of a sheet, from turn to turn.
func (pl *planner) boundingByRaster() way {
	var t *table
	w := weights{value: pl.weights[0].value}
	return func(int) (again bool) {
		for at := len(w.tops); at < len(pl.boards); at++ {
			if t == nil {
				t = newTable(&pl.boards[at])
			}
			v, ok := t.solve(pl.effort, w.value)
			if !ok {
				return true
			}
			w.tops, t = append(w.tops, v), nil
		}
		pl.prove(w, "Edge-to-edge cuts cannot use enough of fewer sheets.")
		return false
	}
}
