package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// layCarton lays the carton out: sides and lap end the allowance inside the
// faces, the tuck flaps are narrower by it, and the dust flaps clear of them.
func (d *draft) layCarton(shape *grid, r *cartonReadings, sizes []measure.Length) pattern.Pattern {
	in, a := d.in, sizes[r.allowance]
	p := d.grid(shape, extents{sizes: d.sizesOf(r.across, sizes)}, extents{sizes: d.sizesOf(r.up, sizes)})
	x, y := d.laid.Positions(&p.Strips[0]), d.laid.Positions(&p.Strips[1])
	shape.taper(&p, cartonLeft, a, a)
	shape.taper(&p, cartonRight, a, a)
	shape.taper(&p, cartonLap, a, a.Times(2))
	seam := &p.Creases[cartonBack-1]
	seam.A.Y, seam.B.Y = y[2].Add(a), y[3].Sub(a)
	for _, tuck := range [...]int{cartonTopTuck, cartonBottomTuck} {
		shape.taper(&p, tuck, a, a.Add(sizes[r.taper]))
	}
	reverse := shape == &reverseCarton
	front := d.dustFlaps(&p, r, sizes, reverse)
	p.Seams = d.cartonSeams(&p, x, y, a, front, reverse)
	p.Glues = append(d.laid.Glues.Take(1)[:0], pattern.Glue{Name: "lap", Panel: cartonLap, Face: pattern.Outside,
		To: cartonBack, ToFace: pattern.Inside,
		Area: d.laid.Rectangle(x[4], y[2].Add(a.Times(2)), x[5], y[3].Sub(a.Times(2)))})
	if r.slit >= 0 {
		p.Cuts = append(frictionSlits(&p, cartonBottomTuck, "lower", sizes[r.slit]), frictionSlits(&p, cartonTopTuck, "upper", sizes[r.slit])...)
	}
	whole := d.around(p)
	whole.Cavity.Panel = cartonTopTuck
	if in.inTwo() {
		w := parting{side: cartonLeft, face: cartonBack, lap: x[5].Sub(x[4]), inset: a, apart: x[4].Sub(x[3]).Add(in.Caliper)}
		w.part(&whole)
	}
	return whole
}

// dustFlaps lays out the four dust flaps, clear of the layer that the lap makes
// inside the front, which it returns.
func (d *draft) dustFlaps(p *pattern.Piece, r *cartonReadings, sizes []measure.Length, reverse bool) measure.Length {
	in, a, x, y := d.in, sizes[r.allowance], d.laid.Positions(&p.Strips[0]), d.laid.Positions(&p.Strips[1])
	front, back := in.layers(x[2].Sub(x[1]).Sub(x[4].Sub(x[3]))) // the laps' inside the faces
	long, apart, butt := sizes[r.dust], a.Times(2), in.trim()
	top, low := y[3].Sub(a), y[2].Add(a)
	left, right := [2]measure.Length{x[1].Add(butt), x[2].Sub(apart)}, [2]measure.Length{x[3].Add(front).Add(apart), x[4].Sub(butt)}
	foldedFlap(p, cartonDust, left[0], top, left[1], top.Add(long))
	foldedFlap(p, cartonDust+1, right[0], top, right[1], top.Add(long))
	if reverse {
		left, right = [2]measure.Length{x[1].Add(back).Add(apart), x[2].Sub(butt)}, [2]measure.Length{x[3].Add(butt), x[4].Sub(apart)}
	}
	foldedFlap(p, cartonDust+2, left[0], low, left[1], low.Sub(long))
	foldedFlap(p, cartonDust+3, right[0], low, right[1], low.Sub(long))
	return front
}

// cartonSeams says where the free edge of the back and the scores of the tuck
// flaps come to lie: a caliper outside the lap, and the allowance inside the
// front, where a layer may lie, or, at the bottom of a reverse carton, inside the lap.
func (d *draft) cartonSeams(p *pattern.Piece, x, y []measure.Length, apart, layer measure.Length, reverse bool) []pattern.Seam {
	top, bottom := &p.Creases[cartonTopTuck-1], &p.Creases[cartonBottomTuck-1]
	mirror, partner := x[1].Add(x[2]), cartonFront // both faces begin at the left side
	seams := d.laid.Seams.Take(3)
	seams[0] = pattern.Seam{Name: "back's edge", PanelA: cartonBack, A1: pattern.At(x[0], y[2]), A2: pattern.At(x[0], y[3]),
		PanelB: cartonLap, B1: pattern.At(x[4], y[2]), B2: pattern.At(x[4], y[3]), Apart: d.in.Caliper}
	seams[1] = tuckSeam("top tuck", cartonTopTuck, top, partner, mirror, y[3], apart.Add(layer))
	if reverse {
		mirror, partner, layer = x[3].Add(x[4]), cartonLap, measure.Length{}
	}
	seams[2] = tuckSeam("bottom tuck", cartonBottomTuck, bottom, partner, mirror, y[2], apart.Add(layer))
	return seams
}

// tuckSeam brings the score of a tuck flap to a panel, whose x is mirrored.
func tuckSeam(name string, tuck int, c *pattern.Crease, to int, mirror, y, apart measure.Length) pattern.Seam {
	return pattern.Seam{Name: name, PanelA: tuck, A1: c.A, A2: c.B,
		PanelB: to, B1: pattern.At(mirror.Sub(c.A.X), y), B2: pattern.At(mirror.Sub(c.B.X), y), Apart: apart}
}

// frictionSlits slits the score of a tuck flap in from both ends.
func frictionSlits(p *pattern.Piece, tuck int, which string, long measure.Length) []pattern.Cut {
	c := &p.Creases[tuck-1]
	left, right := pattern.At(c.A.X.Add(long), c.A.Y), pattern.At(c.B.X.Sub(long), c.B.Y)
	return []pattern.Cut{
		{Name: which + " left slit", Kind: pattern.Slit, On: c.Name, At: c.A.Y, Depth: long, Path: pattern.Polygon(c.A, left)},
		{Name: which + " right slit", Kind: pattern.Slit, On: c.Name, At: c.B.Y, Depth: long, Path: pattern.Polygon(right, c.B)},
	}
}
