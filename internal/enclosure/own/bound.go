package own

import (
	"math"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/pattern"
)

// thing is what goes inside: where its sizes run in space, and where it lies there.
type thing struct {
	ways [3]way // of its width, its height and its thickness
	at   spot
}

// clearance is the room along an axis less what goes inside.
type clearance struct {
	axis    pattern.Axis
	form    form
	between string
	fit     string // named, "" for that of the request
	low     int    // the panel that bounds it on the lower side
}

// wanted is what the clearance should be.
func (c *clearance) wanted(in *enclosure.Input) enclosure.Range {
	if c.between == "" {
		return in.Fit
	}
	return enclosure.FitNamed(c.fit, in.Unit)
}

// middle is the middle of what the clearance should be.
func (c *clearance) middle() form {
	if c.between == "" {
		return only(middle, parts)
	}
	is := func(f enclosure.NamedFit) bool { return f.Name == c.fit }
	return only(named+slices.IndexFunc(enclosure.NamedFits(), is), parts)
}

// ways are how a panel, and what lies on it, runs in space.
func (p *plate) ways() [3]way { return [3]way{p.face.across, p.face.up, p.face.inside} }

// contents is the thing over the middle of the panel that it lies on.
func (s *sight) contents() (t thing) {
	f := &s.panels[s.floor]
	t.ways = f.ways()
	foot := s.where(&f.foot)
	for axis, w := range t.ways[:2] {
		from, to := foot[w.axis][0], foot[w.axis][1]
		middle, half := (from+to)/2, s.values[width+axis]/2
		if half == 0 { // a size that nothing depends on
			half = math.Abs(to-from) / 2
		}
		t.at[w.axis] = [2]float64{middle - half, middle + half}
	}
	up := f.face.inside
	face := foot.face(up)
	top := face + float64(up.sign)*s.values[thickness]
	t.at[up.axis] = [2]float64{min(face, top), max(face, top)}
	return t
}

// look tells what the plates show.
func (s *sight) look() (l shown) {
	if s.goesInto() {
		reach, _ := s.outside(s.rootOf(0))
		return shown{pieces: [][2]pairs{{reach}}}
	}
	l.walls = s.wallsOf(s.contents(), s.around())
	for i := range s.panels {
		if p := &s.panels[i]; p.nested {
			reach, t := s.outside(p.base)
			l.pieces = append(l.pieces, [2]pairs{reach, s.nearest(&t, s.pieces[p.piece])})
		}
	}
	return l
}

// wallsOf are the plates that bound the contents: between those across and up that it has
// where it stands it has its place.
func (s *sight) wallsOf(t thing, all []int) pairs {
	for _, w := range t.ways[:2] {
		low, high := s.nearestAlong(&t, all, w.axis)
		if low < 0 || high < 0 {
			continue
		}
		middle, half := (s.spots[low][w.axis][1]+s.spots[high][w.axis][0])/2, (t.at[w.axis][1]-t.at[w.axis][0])/2
		t.at[w.axis] = [2]float64{middle - half, middle + half}
	}
	return s.nearest(&t, all)
}

// nearest are the plates that bound a thing: on each axis the nearest plate on each side
// that is square to it and faces the thing. Plates on edge never bound it.
func (s *sight) nearest(t *thing, all []int) (found pairs) {
	for k, w := range t.ways {
		found[k][0], found[k][1] = s.nearestAlong(t, all, w.axis)
	}
	return found
}

func (s *sight) nearestAlong(t *thing, all []int, axis int) (low, high int) {
	middle := (t.at[axis][0] + t.at[axis][1]) / 2
	low, high = -1, -1
	below, above := math.Inf(-1), math.Inf(1)
	for _, i := range all {
		at := &s.spots[i]
		if s.blocks[i].flat != axis || !at.over(&t.at, axis) {
			continue
		}
		from, to := at[axis][0], at[axis][1]
		switch {
		case (from+to)/2 < middle && to > below+touching:
			low, below = i, to
		case (from+to)/2 >= middle && from < above-touching:
			high, above = i, from
		}
	}
	return low, high
}

// clearances are the forms of the room between what a thing is shown to be bounded by,
// less its sizes.
func (r *derived) clearances(between pairs, ways [3]way, sizes [3]form, c clearance) (found []clearance) {
	for k, pair := range between {
		if pair[0] < 0 || pair[1] < 0 {
			continue
		}
		low, high, a := &r.blocks[pair[0]], &r.blocks[pair[1]], ways[k].axis
		c.axis, c.low = pattern.Axis(k), low.panel
		c.form = high.at[a].low.plus(-1, low.at[a].high).plus(-1, sizes[k])
		found = append(found, c)
	}
	return found
}

// name is what a clearance is called.
func (c *clearance) name() string {
	if c.between == "" {
		return c.axis.String()
	}
	return c.axis.String() + ", " + c.between
}

// need is what a clearance is measured against, where only the readings are left
// over; ok is false where a size is divided.
func (c *clearance) need() (n enclosure.Need, ok bool) {
	for _, u := range [...]int{width, height, thickness} {
		ok = c.form.count(u)%parts == 0
		if !ok {
			return n, false
		}
	}
	of := func(what int, quarters int64) int64 { return -c.form.count(what) / quarters }
	return enclosure.Need{Width: of(width, parts), Height: of(height, parts), Thickness: of(thickness, parts), HalfCalipers: of(caliper, parts/2)}, c.form.count(caliper)%(parts/2) == 0
}
