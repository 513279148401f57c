package glb

import (
	"math"
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
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
	b := bow{plate: at, away: along.Cross(fold.Vec{0, 0, 1}), by: map[int]float64{}}
	ring, long := level(pl, pl.Outline), 0.0
	for _, v := range ring {
		if d := v.Dot(b.away); math.Abs(d) > math.Abs(long) {
			long = d
		}
	}
	if long < 0 {
		b.away, long = b.away.Times(-1), -long
	}
	b.wide = long / strips
	for k := range b.rings {
		b.rings[k] = draw.CutAway(draw.CutAway(ring, b.away.Times(-1), -float64(k)*b.wide), b.away, float64(k+1)*b.wide)
	}
	return b
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
	along := fold.Vec{0, 0, 1}.Cross(b.away)
	for k := range all {
		rise := 4 * high * (1 - float64(2*k+1)/strips) / strips // from edge to edge
		sin := max(-1, min(1, rise/b.wide))
		cos := math.Sqrt(1 - sin*sin)
		onwards := turned(&flat, b.away).Times(cos).Plus(flat.Z.Times(-sin))
		side := turned(&flat, along)
		pl.Frame.X = onwards.Times(b.away[0]).Plus(side.Times(along[0]))
		pl.Frame.Y = onwards.Times(b.away[1]).Plus(side.Times(along[1]))
		pl.Frame.Z = flat.Z.Times(cos).Plus(turned(&flat, b.away).Times(sin))
		pl.Hung = hung.Plus(b.away.Times(float64(k) * b.wide))
		pl.Frame.Origin = fold.Vec{}
		pl.Frame.Origin = at.Minus(out(&pl.Frame, pl.Hung))
		pl.Inside, pl.Outline = pl.Frame.Z, make([]fold.Vec, len(b.rings[k]))
		for i, v := range b.rings[k] {
			pl.Outline[i] = out(&pl.Frame, hung.Plus(v))
		}
		at = at.Plus(onwards.Times(b.wide))
		all[k] = pl
	}
	return all
}

// turned returns where a frame has a direction of its blank.
func turned(f *fold.Frame, v fold.Vec) fold.Vec {
	return f.X.Times(v[0]).Plus(f.Y.Times(v[1]).Plus(f.Z.Times(v[2])))
}
