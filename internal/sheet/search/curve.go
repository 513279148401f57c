package search

import "creasefit/internal/sheet"

// corner is the size of a rectangle that a set of pieces can be cut from.
type corner struct{ w, h int32 }

// area is in square units.
func (c corner) area() int64 { return int64(c.w) * int64(c.h) }

// along returns the side along an axis.
func (c corner) along(a sheet.Axis) int32 {
	if a == sheet.Width {
		return c.w
	}
	return c.h
}

// sides is the rectangle that is so long along an axis and so long across it.
func sides(a sheet.Axis, along, across int32) corner {
	if a == sheet.Width {
		return corner{along, across}
	}
	return corner{across, along}
}

// curve is the shape curve of a set of pieces: the least rectangles it can be
// cut from, narrowest first, none inside another (R. Otten, Design Automation
// Conference 1982; L. Stockmeyer, Information and Control 57 (1983) 91-101).
type curve []corner

// add enters a rectangle unless the curve has one inside it.
func (c curve) add(p corner) curve {
	at := 0
	for at < len(c) && c[at].w <= p.w {
		if c[at].h <= p.h {
			return c
		}
		at++
	}
	end := at
	for end < len(c) && c[end].h >= p.h {
		end++
	}
	if at > 0 && c[at-1].w == p.w {
		at--
	}
	if at == end {
		c = append(c, corner{})
		copy(c[at+1:], c[at:])
		c[at] = p
		return c
	}
	c[at] = p
	return append(c[:at+1], c[end:]...)
}

// joins enters all least rectangles of one shape beside or above another, as
// far as a board holds and its trimmer divides them and they are no larger than most.
func (c curve) joins(b *board, low, high curve, most int64) curve {
	for i, j := 0, 0; i < len(low) && j < len(high); {
		p, q := low[i], high[j]
		r := corner{p.w + q.w, max(p.h, q.h)}
		if r.w > b.w {
			break
		}
		if r.h <= b.h && b.crossable(r.h) && r.area() <= most {
			c = c.add(r)
		}
		if p.h >= q.h {
			i++
		}
		if q.h >= p.h {
			j++
		}
	}
	for i, j := len(low)-1, len(high)-1; i >= 0 && j >= 0; {
		p, q := low[i], high[j]
		r := corner{max(p.w, q.w), p.h + q.h}
		if r.h > b.h {
			break
		}
		if r.w <= b.w && b.crossable(r.w) && r.area() <= most {
			c = c.add(r)
		}
		if p.w >= q.w {
			i--
		}
		if q.w >= p.w {
			j--
		}
	}
	return c
}

// leaf lays a single piece within a rectangle.
func (b *board) leaf(kind int32, within corner) *layout {
	for _, f := range b.faces {
		if f.kind == kind && f.w <= within.w && f.h <= within.h {
			return &layout{kind: kind, turned: f.turned}
		}
	}
	return nil
}

// split finds corners of two shapes that join within a rectangle.
func (b *board) split(low, high curve, within corner) (a sheet.Axis, p, q corner, ok bool) {
	for _, p := range low {
		for _, q := range high {
			if h := max(p.h, q.h); p.w+q.w <= within.w && h <= within.h && b.crossable(h) {
				return sheet.Width, p, q, true
			}
			if w := max(p.w, q.w); p.h+q.h <= within.h && w <= within.w && b.crossable(w) {
				return sheet.Height, p, q, true
			}
		}
	}
	return sheet.Width, p, q, false
}
