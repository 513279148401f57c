package search

import "slices"

// rasters returns the raster points of a board along its width and height.
func (b *board) rasters() (xs, ys []int32) {
	widths, heights := make([]int32, len(b.faces)), make([]int32, len(b.faces))
	for i, f := range b.faces {
		widths[i], heights[i] = f.w, f.h
	}
	return b.points(b.w, widths), b.points(b.h, heights)
}

// points are the raster points of a side; of one that is longer than the trimmer all
// sums, since a raster point may stand for a shorter sum that can be cut along.
func (b *board) points(side int32, sizes []int32) []int32 {
	if !b.crossable(side) {
		return sumPoints(side, sizes)
	}
	return rasterPoints(side, sizes)
}

// rasterPoints returns the reduced raster points of a length, ascending from
// zero: the positions that cuts can be confined to without losing any layout
// (J. Terno, R. Lindemann, G. Scheithauer, Zuschnittprobleme und ihre
// praktische Loesung, 1987; G. Cintra, F. Miyazawa, Y. Wakabayashi, E. Xavier,
// EJOR 191 (2008) 61-85). A point is the greatest sum of sizes that still lies
// left of what another sum leaves over.
func rasterPoints(total int32, sizes []int32) []int32 {
	sums := sumPoints(total, sizes)
	var points []int32
	at := len(sums) - 1
	for _, s := range sums {
		for sums[at] > total-s {
			at--
		}
		if n := len(points); n == 0 || points[n-1] != sums[at] {
			points = append(points, sums[at])
		}
	}
	slices.Reverse(points)
	if points[0] != 0 {
		points = slices.Insert(points, 0, 0)
	}
	return points
}

// sumPoints returns every sum of sizes, with repetition, up to total.
func sumPoints(total int32, sizes []int32) []int32 {
	sizes = slices.Clone(sizes)
	slices.Sort(sizes)
	sizes = slices.Compact(sizes)
	reached := make([]bool, total+1)
	reached[0] = true
	sums := []int32{}
	for at := int32(0); at <= total; at++ {
		if !reached[at] {
			continue
		}
		sums = append(sums, at)
		for _, s := range sizes {
			if at+s > total {
				break
			}
			reached[at+s] = true
		}
	}
	return sums
}

// floors returns for every length up to total the index of the greatest point
// that is at most as long.
func floors(points []int32, total int32) []int32 {
	floor := make([]int32, total+1)
	at := int32(0)
	for l := range floor {
		if int(at)+1 < len(points) && points[at+1] <= int32(l) {
			at++
		}
		floor[l] = at
	}
	return floor
}
