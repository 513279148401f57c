package draw_test

// brute finds the fewest areas for rectangles of whole sizes by trying every
// area and every whole place for each in turn: rectangles of whole sizes that
// fit can be pushed onto whole places.
type brute struct {
	sizes [][2]int
	each  int // the first ones, of which one lies on each area
	w, h  int
	areas [][]bool
}

// fewest is the fewest areas of a whole size that rectangles of whole sizes take, with one
// more of its own size on each, which may be empty; 0 if one of them has room on none.
func fewest(sizes [][2]int, each [2]int, w, h int) int {
	for n := 1; n <= len(sizes); n++ {
		b := brute{w: w, h: h, areas: make([][]bool, n)}
		for a := range b.areas {
			b.areas[a] = make([]bool, w*h)
			if each[0] > 0 {
				b.sizes = append(b.sizes, each)
				b.each++
			}
		}
		if b.sizes = append(b.sizes, sizes...); b.fits(0) {
			return n
		}
	}
	return 0
}

func (b *brute) fits(k int) bool {
	if k == len(b.sizes) {
		return true
	}
	for a := range b.areas {
		if k < b.each && a != k {
			continue
		}
		for turn := range 2 {
			w, h := b.sizes[k][turn], b.sizes[k][1-turn]
			for y := 0; y+h <= b.h; y++ {
				for x := 0; x+w <= b.w; x++ {
					if b.fill(a, x, y, w, h, true) {
						if b.fits(k + 1) {
							return true
						}
						b.fill(a, x, y, w, h, false)
					}
				}
			}
		}
	}
	return false
}

// fill takes or frees a rectangle's cells; it reports false, and changes
// nothing, if one of them is taken already.
func (b *brute) fill(area, x, y, w, h int, with bool) bool {
	for pass := range 2 {
		for j := y; j < y+h; j++ {
			for i := x; i < x+w; i++ {
				cell := &b.areas[area][j*b.w+i]
				if pass == 0 && with && *cell {
					return false
				}
				if pass == 1 {
					*cell = with
				}
			}
		}
	}
	return true
}
