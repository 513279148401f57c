package pattern

import "math"

// Area returns the area of paper in one copy of the piece, in square
// millimetres: its panels less their windows.
func (p *Piece) Area() float64 {
	var area float64
	for i := range p.Panels {
		area += enclosed(p.Panels[i].Outline) + enclosed(p.Panels[i].Hole)
	}
	return area
}

// enclosed returns the area inside an outline, negative if it is clockwise:
// the shoelace sum over its corners, and for each arc the segment between it
// and its chord.
func enclosed(outline []Vertex) float64 {
	var twice float64
	for i, v := range outline {
		w := outline[(i+1)%len(outline)]
		x, y := v.X.Millimetres(), v.Y.Millimetres()
		dx, dy := w.X.Millimetres()-x, w.Y.Millimetres()-y
		twice += x*dy - y*dx
		if v.Bulge != 0 {
			twice += 2 * segment(math.Hypot(dx, dy), v.Bulge)
		}
	}
	return twice / 2
}

// segment returns the area between an arc and its chord, positive if the arc
// bends outwards on a counterclockwise outline.
func segment(chord, bulge float64) float64 {
	angle := 4 * math.Atan(bulge)
	radius := chord / (2 * math.Sin(angle/2))
	return radius * radius * (angle - math.Sin(angle)) / 2
}
