package solve

import (
	"cmp"
	"context"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/tolerance"
)

// Thing is what is to go in; its height or thickness may be zero where a holder
// has no need of it.
type Thing struct {
	Width, Height, Thickness          measure.Length
	SizeTolerance, ThicknessTolerance tolerance.Source
}

// sizes are along the width, the height and the thickness.
func (t *Thing) sizes() [3]measure.Length { return [3]measure.Length{t.Width, t.Height, t.Thickness} }

// Inside is the room of a holder that somebody measured; zero for a side that is
// open or does not matter.
type Inside struct {
	Width, Height, Thickness measure.Length
	Tolerance                tolerance.Source // of each of them
}

// Room is how much longer a holder is than a thing along one axis; below zero by
// how much it is too short.
type Room struct {
	Axis    pattern.Axis
	Between string // as of Fit
	Left    measure.Length
	Chance  float64 // that it is not below zero
}

// Match is how a thing goes into a holder.
type Match struct {
	Fits    bool
	Verdict string // of the axis with the least room
	Rooms   []Room
	Chance  float64  // that it goes in along all axes at once
	Turned  bool     // width and height of the thing have changed places
	Against []string // what else keeps it out, in plain words
	Refused error    // by the kind of the holder; all else is empty then
}

// least is the axis with the least room, nil without any.
func (m *Match) least() *Room {
	if len(m.Rooms) == 0 {
		return nil
	}
	return &m.Rooms[slices.IndexFunc(m.Rooms, func(r Room) bool {
		return !slices.ContainsFunc(m.Rooms, func(o Room) bool { return o.Left.Less(r.Left) })
	})]
}

// total is all room together: how far the holder is from the thing.
func (m *Match) total() measure.Length {
	var sum measure.Length
	for _, r := range m.Rooms {
		sum = sum.Add(r.Left.Abs())
	}
	return sum
}

// Hold puts a thing into a holder that was measured, as it lies or, if it may be
// turned, with width and height changed if that leaves more room along the axis
// with the least.
func (h *Inside) Hold(t *Thing, unit measure.Unit, turn bool) Match {
	m := h.hold(t, unit)
	if turn && !m.Fits {
		other := *t
		other.Width, other.Height = t.Height, t.Width
		if o := h.hold(&other, unit); m.least() != nil && m.least().Left.Less(o.least().Left) {
			m, m.Turned = o, true
		}
	}
	return m
}

func (h *Inside) hold(t *Thing, unit measure.Unit) Match {
	m := Match{Fits: true, Chance: 1}
	inside, outside := [3]measure.Length{h.Width, h.Height, h.Thickness}, t.sizes()
	for axis := range pattern.Axis(3) {
		if inside[axis].IsZero() || outside[axis].IsZero() {
			continue
		}
		own := t.SizeTolerance
		if axis == pattern.Thickness {
			own = t.ThicknessTolerance
		}
		r := Room{Axis: axis, Left: inside[axis].Sub(outside[axis])}
		r.Chance = tolerance.Stack(&tolerance.Form{Nominal: r.Left, Times: []float64{1, -1}}, []tolerance.Source{h.Tolerance, own}).Chance
		m.Chance *= r.Chance
		m.Fits = m.Fits && r.Left.Sign() >= 0
		m.Rooms = append(m.Rooms, r)
	}
	if r := m.least(); r != nil {
		m.Verdict = enclosure.Verdict(r.Left, unit)
	}
	return m
}

// Hold puts a thing into a solution as it was made for its own contents: what a
// check of its readings against the thing says. The error is the context's.
func (s *Solution) Hold(ctx context.Context, t *Thing) (Match, error) {
	r := *s.Request
	r.Width, r.Height, r.Thickness = t.Width, t.Height, t.Thickness
	r.SizeTolerance, r.ThicknessTolerance = t.SizeTolerance, t.ThicknessTolerance
	r.Notes = nil
	if missing := r.unknown(); len(missing) > 0 {
		return Match{Refused: missing}, nil
	}
	c, err := examine(&r, s.ReadOff())
	if err != nil {
		return Match{Refused: err}, ctx.Err()
	}
	m := Match{Fits: c.Works, Chance: c.Sure.Chance, Against: c.Findings}
	for _, f := range c.Fits {
		m.Rooms = append(m.Rooms, Room{f.Axis, f.Between, f.Nominal, f.Chance})
	}
	if w := m.least(); w != nil {
		m.Verdict = enclosure.Verdict(w.Left, r.Ruler.Unit())
	}
	return m, ctx.Err()
}

// CompareMatches puts the better match first: one that fits, the closest first;
// then those that do not, by how much the worst axis misses; then what a kind
// refuses.
func CompareMatches(a, b *Match) int {
	switch {
	case a.Fits != b.Fits:
		return cmp.Compare(boolean(!a.Fits), boolean(!b.Fits))
	case a.Fits:
		return cmp.Or(cmp.Compare(boolean(a.Chance < half), boolean(b.Chance < half)), a.total().Compare(b.total()))
	case a.least() == nil || b.least() == nil:
		return cmp.Compare(boolean(a.least() == nil), boolean(b.least() == nil))
	default:
		return b.least().Left.Compare(a.least().Left)
	}
}

// half is the chance under which what should fit comes after all that does.
const half = 0.5
