package enclosure

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// An outline is drawn by chords that lie within one part in so many of its size.
const fineness = 2000

// mostChords bounds how many of them there are.
const mostChords = 600

// A curve is a cubic Bezier curve, or the straight line from its first point to its last.
type curve struct {
	p        [4]xy
	straight bool
}

type xy struct{ x, y float64 }

func (a xy) plus(b xy) xy              { return xy{a.x + b.x, a.y + b.y} }
func (a xy) minus(b xy) xy             { return xy{a.x - b.x, a.y - b.y} }
func (a xy) times(f float64) xy        { return xy{a.x * f, a.y * f} }
func (a xy) cross(b xy) float64        { return a.x*b.y - a.y*b.x }
func (a xy) toward(b xy, t float64) xy { return a.plus(b.minus(a).times(t)) }

// draw adds what one command draws.
func (r *pathReader) draw(name byte, relative bool, v []float64) {
	switch name {
	case 'H':
		v = []float64{v[0], 0}
	case 'V':
		v = []float64{0, v[0]}
	}
	at := func(i int) xy {
		p := xy{v[i], v[i+1]}
		if relative || name == 'V' {
			p.x += r.now.x
		}
		if relative || name == 'H' {
			p.y += r.now.y
		}
		return p
	}
	smooth := func(after ...byte) xy {
		if slices.Contains(after, r.before) {
			return r.now.times(2).minus(r.control)
		}
		return r.now
	}
	switch name {
	case 'M':
		r.now, r.start = at(0), at(0)
	case 'L', 'H', 'V':
		r.line(at(0))
	case 'C':
		r.cubic(at(0), at(2), at(4))
	case 'S':
		r.cubic(smooth('C', 'S'), at(0), at(2))
	case 'Q':
		r.quadratic(at(0), at(2))
	case 'T':
		r.quadratic(smooth('Q', 'T'), at(0))
	case 'A':
		r.arc(v, at(5))
	}
}

func (r *pathReader) line(to xy) {
	if to != r.now {
		r.curves = append(r.curves, curve{[4]xy{r.now, r.now, to, to}, true})
	}
	r.now = to
}

func (r *pathReader) cubic(a, b, to xy) {
	r.curves = append(r.curves, curve{p: [4]xy{r.now, a, b, to}})
	r.now, r.control = to, b
}

// quadratic is the cubic curve that runs the same way.
func (r *pathReader) quadratic(a, to xy) {
	r.cubic(r.now.toward(a, 2.0/3), to.toward(a, 2.0/3), to)
	r.control = a
}

// arc is part of an ellipse (the same source, appendix B.2.4 and B.2.5), drawn by a
// cubic curve for at most each quarter of a turn.
func (r *pathReader) arc(v []float64, to xy) {
	rx, ry := math.Abs(v[0]), math.Abs(v[1])
	if rx == 0 || ry == 0 || to == r.now {
		r.line(to)
		return
	}
	sin, cos := math.Sincos(v[2] * math.Pi / 180)
	half := r.now.minus(to).times(0.5)
	x, y := (cos*half.x+sin*half.y)/rx, (cos*half.y-sin*half.x)/ry
	if long := math.Hypot(x, y); long > 1 {
		rx, ry, x, y = rx*long, ry*long, x/long, y/long
	}
	off := math.Sqrt(max(0, 1/(x*x+y*y)-1))
	if v[3] == v[4] {
		off = -off
	}
	cx, cy := off*y, -off*x // of the circle that the ellipse would be, from the middle of the chord
	from := math.Atan2(y-cy, x-cx)
	turn := math.Atan2(-y-cy, -x-cx) - from
	if sweep := 2*v[4] - 1; turn*sweep < 0 { // the flag is 0 or 1
		turn += 2 * math.Pi * sweep
	}
	centre := r.now.toward(to, 0.5)
	place := func(a, b float64) xy {
		a, b = rx*(a+cx), ry*(b+cy)
		return centre.plus(xy{cos*a - sin*b, sin*a + cos*b})
	}
	n := int(math.Ceil(math.Abs(turn)/(math.Pi/2) - 1e-9))
	step := turn / float64(n)
	reach := 4.0 / 3 * math.Tan(step/4)
	for i := range n {
		s, c := math.Sincos(from + step*float64(i))
		t, d := math.Sincos(from + step*float64(i+1))
		end := place(d, t)
		if i == n-1 {
			end = to
		}
		r.cubic(place(c-reach*s, s+reach*c), place(d+reach*t, t-reach*d), end)
	}
}

// chords appends the places that stand for a curve, without its first, no farther from
// it than so much: 3/4 of the greatest second difference is the bound of a chord over
// the whole curve, and it falls with the square of their number.
func (c *curve) chords(to []xy, within float64) []xy {
	n := 1
	if !c.straight {
		bend := 0.0
		for i := range 2 {
			d := c.p[i].plus(c.p[i+2]).minus(c.p[i+1].times(2))
			bend = max(bend, math.Hypot(d.x, d.y))
		}
		n = max(2, int(min(mostChords, math.Ceil(math.Sqrt(0.75*bend/within)))))
	}
	for k := 1; k <= n; k++ {
		t := float64(k) / float64(n)
		a, b, e := c.p[0].toward(c.p[1], t), c.p[1].toward(c.p[2], t), c.p[2].toward(c.p[3], t)
		if k == n {
			to = append(to, c.p[3])
		} else {
			to = append(to, a.toward(b, t).toward(b.toward(e, t), t))
		}
	}
	return to
}

// drawn is a shape that is cut in half along its middle line: both halves, each from
// the line's bottom to its top, and how many times as high as wide the shape is.
type drawn struct {
	left, right []spot
	aspect      float64
}

// CheckOutline says what is wrong with the path of an ornament's outline, and where.
func CheckOutline(path string) error {
	_, err := readOutline(path)
	return err
}

// readOutline reads the path of an outline, whose y runs downwards.
func readOutline(path string) (*drawn, error) {
	curves, err := readPath(path)
	if err != nil {
		return nil, err
	}
	var ring []xy
	for i := range curves {
		ring = append(ring, curves[i].p[:]...)
	}
	low, high := rectangleRound(ring)
	size := high.minus(low)
	if size.x <= 0 || size.y <= 0 {
		return nil, errors.New("it has no area")
	}
	ring = ring[:0]
	for i := range curves {
		ring = curves[i].chords(ring, max(size.x, size.y)/fineness)
	}
	if len(ring) > mostChords {
		return nil, fmt.Errorf("it takes %d straight lines, more than %d: draw it with fewer curves", len(ring), mostChords)
	}
	if at, crosses := crossesItself(ring); crosses {
		return nil, fmt.Errorf("it crosses itself near %.4g %.4g", at.x, at.y)
	}
	low, high = rectangleRound(ring)
	middle, size := low.toward(high, 0.5), high.minus(low)
	for i, p := range ring {
		ring[i] = xy{(p.x - middle.x) / (size.x / 2), (high.y - p.y) / size.y}
	}
	left, right, err := cutInHalf(ring)
	return &drawn{left, right, size.y / size.x}, err
}

// rectangleRound is the rectangle round places.
func rectangleRound(places []xy) (low, high xy) {
	low, high = places[0], places[0]
	for _, p := range places {
		low, high = xy{min(low.x, p.x), min(low.y, p.y)}, xy{max(high.x, p.x), max(high.y, p.y)}
	}
	return low, high
}

// crossesItself returns where two lines of a ring pass through one another.
func crossesItself(ring []xy) (at xy, crosses bool) {
	n := len(ring)
	for i, a := range ring {
		b := ring[(i+1)%n]
		for j := range i {
			c, d := ring[j], ring[(j+1)%n]
			if min(a.x, b.x) > max(c.x, d.x) || max(a.x, b.x) < min(c.x, d.x) || min(a.y, b.y) > max(c.y, d.y) || max(a.y, b.y) < min(c.y, d.y) {
				continue
			}
			ab, cd := b.minus(a), d.minus(c)
			if ab.cross(c.minus(a))*ab.cross(d.minus(a)) < 0 && cd.cross(a.minus(c))*cd.cross(b.minus(c)) < 0 {
				return a.toward(b, 0.5), true
			}
		}
	}
	return xy{}, false
}

// cutInHalf cuts a ring along x = 0.
func cutInHalf(ring []xy) (left, right []spot, err error) {
	area := 0.0
	for i, a := range ring {
		area += a.cross(ring[(i+1)%len(ring)]) / 2
	}
	if math.Abs(area) < 0.02 {
		return nil, nil, errors.New("it has hardly any area")
	}
	if area < 0 {
		slices.Reverse(ring)
	}
	n, crossings, from := len(ring), 0, 0
	for i, a := range ring {
		if b := ring[(i+1)%n]; (a.x >= 0) != (b.x >= 0) {
			crossings++
			if b.x >= 0 {
				from = i + 1
			}
		}
	}
	if crossings != 2 {
		return nil, nil, fmt.Errorf("the upright line through its middle meets it %d times instead of twice, so that it would fall apart", crossings)
	}
	on := func(i int) spot {
		a, b := ring[(i+n-1)%n], ring[i%n]
		return spot{0, a.y + (b.y-a.y)*a.x/(a.x-b.x)}
	}
	i := from
	right = append(right, on(i))
	for ; ring[i%n].x >= 0; i++ {
		right = append(right, spot{ring[i%n].x, ring[i%n].y})
	}
	right, left = append(right, on(i)), append(left, on(i))
	for ; ring[i%n].x < 0; i++ {
		left = append(left, spot{-ring[i%n].x, ring[i%n].y})
	}
	left = append(left, on(i))
	slices.Reverse(left)
	return left, right, nil
}
