package own

import (
	"math"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/pattern"
)

// thing is what goes inside: where its sizes run in space, and how large they are.
type thing struct {
	ways  [3]way  // of its width, its height and its thickness
	sizes [3]form // of the same
	at    [3][2]float64
	open  [3][2]bool // by size: nothing bounds it on the lower side, on the upper side
}

// clearance is the room along an axis less what goes inside.
type clearance struct {
	axis    pattern.Axis
	form    form
	between string
	wanted  enclosure.Range
	low     int // the panel that bounds it on either side
	high    int
}

// contents is the thing that lies on the panel that holds it, at the values known.
func (v *derivation) contents() *thing {
	f := &v.panels[v.floor]
	t := &thing{ways: [3]way{f.face.across, f.face.up, f.face.inside}}
	for k := range t.sizes {
		t.sizes[k] = v.only(width+k, parts)
	}
	return t
}

// stand puts the thing over the middle of the panel that it lies on.
func (t *thing) stand(v *derivation, floor int) {
	f := &v.panels[floor]
	for axis := range 2 {
		space, low := f.lies(axis, f.spans[axis][0])
		_, high := f.lies(axis, f.spans[axis][1])
		from, to := low.at(v.values), high.at(v.values)
		middle, half := (from+to)/2, t.sizes[axis].at(v.values)/2
		if half == 0 { // a size that nothing depends on
			half = math.Abs(to-from) / 2
		}
		t.at[space] = [2]float64{middle - half, middle + half}
	}
	up := f.face.inside
	face := f.origin[up.axis].at(v.values) + float64(up.sign)*v.values[caliper]/2
	top := face + float64(up.sign)*t.sizes[2].at(v.values)
	t.at[up.axis] = [2]float64{min(face, top), max(face, top)}
}

// bounds finds the clearances of a thing between the plates of a piece: on each
// axis the nearest plate on each side that is square to it and faces the thing.
// Plates on edge never bound it; what is bounded by papers alone needs no fit.
func (v *derivation) bounds(t *thing, floor, piece int, between string) []clearance {
	all := append(v.blocks(piece), v.lids(piece)...)
	t.stand(v, floor)
	t.open = [3][2]bool{}
	var found []clearance
	for again := range 2 {
		found = found[:0]
		for k := range t.ways {
			low, high := v.nearest(all, t, t.ways[k].axis)
			t.open[k] = [2]bool{low == nil, high == nil}
			if low == nil || high == nil {
				continue
			}
			a := t.ways[k].axis
			if again == 0 && k < 2 { // between the plates that it has there
				middle, half := (low.at[a].high.at(v.values)+high.at[a].low.at(v.values))/2, t.sizes[k].at(v.values)/2
				t.at[a] = [2]float64{middle - half, middle + half}
			}
			f := high.at[a].low.plus(-1, low.at[a].high).plus(-1, t.sizes[k])
			found = append(found, clearance{axis: pattern.Axis(k), form: f, between: between, wanted: v.in.Fit, low: low.panel, high: high.panel})
		}
	}
	return slices.DeleteFunc(found, func(c clearance) bool { return !c.form.has(firstReading) })
}

// name is what a clearance is called.
func (c *clearance) name() string {
	if c.between == "" {
		return c.axis.String()
	}
	return c.axis.String() + ", " + c.between
}

// nearest returns the plates that bound the thing along an axis.
func (v *derivation) nearest(all []block, t *thing, axis int) (low, high *block) {
	middle := (t.at[axis][0] + t.at[axis][1]) / 2
	below, above := math.Inf(-1), math.Inf(1)
	for i := range all {
		b := &all[i]
		if b.flat != axis || !v.faces(b, t, axis) {
			continue
		}
		from, to := b.at[axis].low.at(v.values), b.at[axis].high.at(v.values)
		switch {
		case (from+to)/2 < middle && to > below:
			low, below = b, to
		case (from+to)/2 >= middle && from < above:
			high, above = b, from
		}
	}
	return low, high
}

// faces reports whether a plate reaches into the thing's own cross-section.
func (v *derivation) faces(b *block, t *thing, axis int) bool {
	for k := range t.at {
		if k == axis {
			continue
		}
		from, to := b.at[k].low.at(v.values), b.at[k].high.at(v.values)
		if min(to, t.at[k][1])-max(from, t.at[k][0]) <= touching {
			return false
		}
	}
	return true
}

// need is what a clearance is measured against, where only the readings are left
// over; ok is false where a size is divided.
func (c *clearance) need() (n enclosure.Need, ok bool) {
	for _, u := range [...]int{width, height, thickness} {
		ok = c.form[u]%parts == 0
		if !ok {
			return n, false
		}
	}
	ok = c.form[caliper]%(parts/2) == 0
	n = enclosure.Need{Width: -c.form[width] / parts, Height: -c.form[height] / parts, Thickness: -c.form[thickness] / parts, HalfCalipers: -c.form[caliper] / (parts / 2)}
	return n, ok
}
