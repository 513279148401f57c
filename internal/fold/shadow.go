package fold

import "math"

// shadow returns which stretch of an axis the plate takes up within the beam
// that a box sweeps along it, and whether it reaches into the beam at all.
// What is in contact with the side of the beam is not in it.
func (m *model) shadow(pl *plate, axis int, box *[3]span) (span, bool) {
	var beam [3]span
	for k, s := range box {
		beam[k] = inner(s)
		if k != axis && (pl.high[k]-hair <= beam[k].low || pl.low[k]+hair >= beam[k].high) {
			return span{}, false
		}
	}
	if pl.filled || pl.blocks(axis, &beam) {
		return span{pl.low[axis], pl.high[axis]}, true
	}
	if pl.besides(axis, &beam, m.half) {
		return span{}, false
	}
	t := tracer{pl: pl, half: m.half, axis: axis, beam: &beam, found: span{math.Inf(1), math.Inf(-1)}}
	t.trace()
	return t.found, t.found.low <= t.found.high
}

// besides reports whether the beam, as far as the plate reaches along it, passes by
// its plane.
func (pl *plate) besides(axis int, beam *[3]span, half float64) bool {
	low := -pl.move.Z.Dot(pl.move.Origin)
	high := low
	for k, n := range pl.move.Z {
		s := beam[k]
		if k == axis {
			s = span{pl.low[k], pl.high[k]}
		}
		low, high = low+min(n*s.low, n*s.high), high+max(n*s.low, n*s.high)
	}
	return low > half+hair || high < -half-hair
}

// blocks reports whether a plate that stands square to the axis has paper in
// the middle of the beam: the common case, answered without its edges.
func (pl *plate) blocks(axis int, beam *[3]span) bool {
	if math.Abs(pl.move.Z[axis]) < 1-1e-12 {
		return false
	}
	var p Vec
	for k, s := range beam {
		p[k] = (s.low + s.high) / 2
	}
	return pl.covers(pl.move.spot(p))
}

// covers reports whether the plate has paper at a spot of its blank.
func (pl *plate) covers(s spot) bool { return within(s, pl.flat) && !within(s, pl.hole) }

// inner draws the ends of a stretch in by a hair; one that is too short for
// that becomes its middle.
func inner(s span) span {
	if s.high-s.low < 2*hair {
		mid := (s.low + s.high) / 2
		return span{mid, mid}
	}
	return span{s.low + hair, s.high - hair}
}

// tracer finds the ends of what a plate and a beam have in common. They lie
// where an edge of the plate enters the beam or ends within it, or where an
// edge of the beam enters a face of the plate.
type tracer struct {
	pl    *plate
	half  float64
	axis  int
	beam  *[3]span
	lines [4]Vec // a point of each edge of the beam
	found span
}

// trace looks along all edges of the plate and of the beam.
func (t *tracer) trace() {
	i, j := (t.axis+1)%3, (t.axis+2)%3
	for k := range t.lines {
		t.lines[k][i], t.lines[k][j] = t.beam[i].low, t.beam[j].low
		if k > 1 {
			t.lines[k][i] = t.beam[i].high
		}
		if k%2 == 1 {
			t.lines[k][j] = t.beam[j].high
		}
	}
	t.edges(t.pl.space)
	t.edges(t.pl.lift(nil, t.pl.hole))
	t.corners()
}

func (t *tracer) mark(d float64) {
	t.found.low, t.found.high = min(t.found.low, d), max(t.found.high, d)
}

// edges looks along the edges of the plate at a ring, on both faces and
// between them.
func (t *tracer) edges(ring []Vec) {
	if len(ring) == 0 {
		return
	}
	thick := t.pl.move.Z.Times(t.half)
	a := &ring[len(ring)-1]
	for i := range ring {
		b := &ring[i]
		if meets, passed := t.beside(a, b); meets {
			t.edge(a.Plus(thick), b.Plus(thick))
			t.edge(a.Minus(thick), b.Minus(thick))
			t.edge(a.Minus(thick), a.Plus(thick))
			if passed {
				t.wall(*a, b.Minus(*a))
			}
		}
		a = b
	}
}

// beside reports whether the edge face on the mid-caliper edge from a to b may have
// something in the beam, and whether an edge of the beam may pass through it.
func (t *tracer) beside(a, b *Vec) (meets, passed bool) {
	passed = true
	for k, s := range t.beam {
		if k == t.axis {
			continue
		}
		thick := t.half * math.Abs(t.pl.move.Z[k])
		low, high := min(a[k], b[k])-thick, max(a[k], b[k])+thick
		if high < s.low || low > s.high {
			return false, false
		}
		passed = passed && (low <= s.low || high >= s.high)
	}
	return true, passed
}

// edge marks the ends of the part of a to b within the beam.
func (t *tracer) edge(a, b Vec) {
	from, to := 0.0, 1.0
	for k, s := range t.beam {
		if k == t.axis {
			continue
		}
		d := b[k] - a[k]
		if math.Abs(d) < 1e-12 {
			if a[k] < s.low || a[k] > s.high {
				return
			}
			continue
		}
		enter, leave := (s.low-a[k])/d, (s.high-a[k])/d
		from, to = max(from, min(enter, leave)), min(to, max(enter, leave))
	}
	if from <= to {
		t.mark(a[t.axis] + from*(b[t.axis]-a[t.axis]))
		t.mark(a[t.axis] + to*(b[t.axis]-a[t.axis]))
	}
}

// wall marks where the beam's edges pass through the edge face of the plate
// that stands on the mid-caliper edge from a along e.
func (t *tracer) wall(a, e Vec) {
	n := t.pl.move.Z
	out := e.Cross(n)
	if math.Abs(out[t.axis]) < 1e-12 {
		return
	}
	for _, p := range t.lines {
		p[t.axis] = a.Minus(p).Dot(out) / out[t.axis]
		d := p.Minus(a)
		along := d.Dot(e) / e.Dot(e)
		if along >= 0 && along <= 1 && math.Abs(d.Dot(n)) <= t.half {
			t.mark(p[t.axis])
		}
	}
}

// under reports whether the line along an axis through a point meets the box round
// the plate.
func (pl *plate) under(p *Vec, axis int) bool {
	i, j := (axis+1)%3, (axis+2)%3
	return pl.low[i] <= p[i] && p[i] <= pl.high[i] && pl.low[j] <= p[j] && p[j] <= pl.high[j]
}

// corners marks where the beam's edges pass through the two faces.
func (t *tracer) corners() {
	n := t.pl.move.Z
	if math.Abs(n[t.axis]) < 1e-12 {
		return
	}
	for _, p := range t.lines {
		if !t.pl.under(&p, t.axis) {
			continue
		}
		for _, h := range [...]float64{-t.half, t.half} {
			q := p
			q[t.axis] = (t.pl.move.Origin.Minus(p).Dot(n) + h) / n[t.axis]
			if t.pl.covers(t.pl.move.spot(q)) {
				t.mark(q[t.axis])
			}
		}
	}
}
