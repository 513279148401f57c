package glb

import (
	"math"
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// strips is into how many flat strips a panel is cut that bows.
const strips = 8

// bow is a panel that bows in some steps, as a long tuck does that is coaxed past
// the contents: away from what lies inside, in a parabola from the crease that it
// hangs by to its free edge.
type bow struct {
	plate int
	away  fold.Vec // on the blank, from the crease
	wide  float64  // of a strip
	rings [strips][]fold.Vec
	by    map[int]float64 // by step, mm at the most
}

// findBows finds the panels that bow by more than their caliper: of two that turn
// together, such as a lid and its tuck, the one that hangs on the other.
func (s *skeleton) findBows(p *pattern.Pattern, order *assembly.Order) {
	for i := range order.Steps {
		step := &order.Steps[i]
		for k := range step.Turns {
			t := &step.Turns[k]
			at := slices.IndexFunc(s.model.Plates, func(pl fold.Plate) bool { return pl.Piece == t.Piece && pl.Copy == t.Copy && pl.Panel == t.Panel })
			if at < 0 || len(s.model.Plates[at].Hole) > 0 || step.Flex <= s.model.CaliperOf(at) || !hangsOnTurned(p, step, t) {
				continue
			}
			b := slices.IndexFunc(s.bows, func(b bow) bool { return b.plate == at })
			if b < 0 {
				b, s.bows = len(s.bows), append(s.bows, newBow(&s.model.Plates[at], at, &p.Pieces[t.Piece].Creases[t.Crease]))
			}
			s.bows[b].by[i] = step.Flex
		}
	}
}

// hangsOnTurned reports whether a panel hangs on another one that turns with it.
func hangsOnTurned(p *pattern.Pattern, step *assembly.Step, t *assembly.Turn) bool {
	c := &p.Pieces[t.Piece].Creases[t.Crease]
	return t.Path != nil && slices.ContainsFunc(step.Turns, func(o assembly.Turn) bool {
		return o.Piece == t.Piece && o.Copy == t.Copy && o.Panel == c.From && t.Panel == c.To
	})
}

// newBow cuts a plate into strips along its crease.
func newBow(pl *fold.Plate, at int, c *pattern.Crease) bow {
	along := unit(fold.Vec{c.B.X.Sub(c.A.X).Millimetres(), c.B.Y.Sub(c.A.Y).Millimetres(), 0})
	b := bow{plate: at, away: cross(along, fold.Vec{0, 0, 1}), by: map[int]float64{}}
	ring, long := level(pl, pl.Outline), 0.0
	for _, v := range ring {
		if d := dot(v, b.away); math.Abs(d) > math.Abs(long) {
			long = d
		}
	}
	if long < 0 {
		b.away, long = by(b.away, -1), -long
	}
	b.wide = long / strips
	for k := range b.rings {
		b.rings[k] = beyond(beyond(ring, b.away, float64(k)*b.wide), by(b.away, -1), -float64(k+1)*b.wide)
	}
	return b
}

// beyond keeps what of a ring lies further along a way than so far.
func beyond(ring []fold.Vec, way fold.Vec, far float64) (kept []fold.Vec) {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		d, e := dot(p, way)-far, dot(q, way)-far
		if d >= 0 {
			kept = append(kept, p)
		}
		if d*e < 0 {
			kept = append(kept, plus(p, by(minus(q, p), d/(d-e))))
		}
	}
	return kept
}

// bent is a frame with the panels that bow in strips, so much of a step being done.
func (s *skeleton) bent(f assembly.Frame, step int, part float64) assembly.Frame {
	f.Model.Plates = slices.Clone(f.Model.Plates)
	for i := range s.bows {
		b := &s.bows[i]
		for k, pl := range b.bend(f.Model.Plates[b.plate], b.by[step]*math.Sin(math.Pi*part)) {
			if k == 0 {
				f.Model.Plates[b.plate] = pl
				continue
			}
			if pl.Parent = b.plate; k > 1 {
				pl.Parent = len(f.Model.Plates) - 1
			}
			f.Model.Plates = append(f.Model.Plates, pl)
			if f.Present != nil {
				f.Present = append(slices.Clip(f.Present), f.Present[b.plate])
			}
		}
	}
	return f
}

// bend lays the strips of a plate one after another, each as wide as on the blank,
// so that their edges lie on a parabola as high as said.
func (b *bow) bend(pl fold.Plate, high float64) (all [strips]fold.Plate) {
	flat, hung := pl.Frame, pl.Hung
	at := out(&flat, hung)
	along := cross(fold.Vec{0, 0, 1}, b.away)
	for k := range all {
		rise := 4 * high * (1 - float64(2*k+1)/strips) / strips // from edge to edge
		sin := max(-1, min(1, rise/b.wide))
		cos := math.Sqrt(1 - sin*sin)
		onwards := plus(by(turned(&flat, b.away), cos), by(flat.Z, -sin))
		side := turned(&flat, along)
		pl.Frame.X = plus(by(onwards, b.away[0]), by(side, along[0]))
		pl.Frame.Y = plus(by(onwards, b.away[1]), by(side, along[1]))
		pl.Frame.Z = plus(by(flat.Z, cos), by(turned(&flat, b.away), sin))
		pl.Hung = plus(hung, by(b.away, float64(k)*b.wide))
		pl.Frame.Origin = fold.Vec{}
		pl.Frame.Origin = minus(at, out(&pl.Frame, pl.Hung))
		pl.Inside, pl.Outline = pl.Frame.Z, make([]fold.Vec, len(b.rings[k]))
		for i, v := range b.rings[k] {
			pl.Outline[i] = out(&pl.Frame, plus(hung, v))
		}
		at = plus(at, by(onwards, b.wide))
		all[k] = pl
	}
	return all
}

// turned returns where a frame has a direction of its blank.
func turned(f *fold.Frame, v fold.Vec) fold.Vec {
	return plus(by(f.X, v[0]), plus(by(f.Y, v[1]), by(f.Z, v[2])))
}
