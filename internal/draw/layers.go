package draw

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// NewLayers draws enclosures round one another, from the innermost on, as one thing that
// is cut away: of each so much more than of the one inside it that all are seen, and of
// the contents nothing. Each has a number, and its name below. The pattern is that of all
// their pieces.
func NewLayers(p *pattern.Pattern, works []Work, o Options) *Drawing {
	l := o.layout(nil)
	n := nested(works)
	s := l.standing(p, n.frame)
	l.lettering = max(l.lettering, s.box.Width()/50)
	f := Figure{Name: l.say(o.Title), Lines: s.lines, Box: s.box, Size: s.box.High}
	names := make([]string, len(works))
	for i := range works {
		names[i] = strconv.Itoa(i+1) + noBreak + works[i].Name
		number, at := strconv.Itoa(i+1), s.at(n.mark(i))
		f.label(textAt(at.X-Width(number, l.lettering)/2, at.Y-0.4*l.lettering, l.lettering, false, number))
	}
	f.label(textAt(f.Box.Low.X, f.Box.Low.Y-0.4*l.lettering, l.lettering, true, Wrap(strings.Join(names, ", "), l.lettering, f.Box.Width())...))
	d := l.drawing(Finished, p, o, func(o Options) *Drawing { return NewLayers(p, works, o) })
	d.Description = strings.Join(names, "; ") + "."
	d.rows([][]Figure{{f}})
	return d
}

// layers is enclosures that stand in one another, in the frame of the outermost one.
type layers struct {
	frame assembly.Frame
	room  fold.Room // of the outermost one
	box   room3     // round it, along the ways of its room
	cuts  []float64 // by layer: where it is cut away, along the first way
}

// room3 is a box along three directions.
type room3 struct{ low, high [3]float64 }

// nested stands enclosures in one another, from the innermost on, and cuts them away.
func nested(works []Work) *layers {
	n := &layers{}
	layer := make([]int, 0) // by plate
	for i := range works {
		outer := closed(works[i].Pattern, &works[i].Options)
		room, ok := fold.Contents(works[i].Pattern)
		if !ok { // it goes into something itself
			room.Ways = [3]fold.Vec{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
		}
		if i > 0 {
			n.into(&room)
			outer.Contents = n.frame.Contents
		}
		for k := range n.frame.Model.Plates { // no two pieces are one
			n.frame.Model.Plates[k].Piece += len(works[i].Pattern.Pieces)
		}
		layer = append(slices.Repeat([]int{i}, len(outer.Model.Plates)), layer...)
		outer.Model.Plates = append(outer.Model.Plates, n.frame.Model.Plates...)
		n.frame, n.room, n.box = outer, room, around(outer.Model.Plates, &room)
	}
	n.cuts = make([]float64, len(works))
	within := 0.0 // of the innermost layer: contents, for which it is cut as well
	if n.frame.Contents != nil {
		within = 1
	}
	for i := range works {
		n.cuts[i] = n.box.high[0] - (n.box.high[0]-n.box.low[0])*(float64(i)+within)/(float64(len(works))+within)
	}
	for k := range n.frame.Model.Plates {
		pl := &n.frame.Model.Plates[k]
		pl.Outline = CutAway(pl.Outline, n.room.Ways[0], n.cuts[layer[k]])
		pl.Hole = CutAway(pl.Hole, n.room.Ways[0], n.cuts[layer[k]])
	}
	return n
}

// around is the box round plates along the ways of a room.
func around(plates []fold.Plate, room *fold.Room) room3 {
	b := room3{[3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}, [3]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}}
	for i := range plates {
		for _, v := range plates[i].Outline {
			for k, way := range room.Ways {
				b.low[k], b.high[k] = min(b.low[k], v.Dot(way)), max(b.high[k], v.Dot(way))
			}
		}
	}
	return b
}

// into moves all to where the contents of another enclosure stand.
func (n *layers) into(to *fold.Room) {
	move := func(v fold.Vec) (moved fold.Vec) {
		for k, way := range n.room.Ways {
			moved = moved.Plus(to.Ways[k].Times(v.Dot(way)))
		}
		return moved
	}
	var mid fold.Vec // of the box, moved
	for k := range to.Ways {
		mid = mid.Plus(to.Ways[k].Times((n.box.low[k] + n.box.high[k]) / 2))
	}
	off := to.Middle.Minus(mid)
	shift := func(ring []fold.Vec) {
		for i, v := range ring {
			ring[i] = move(v).Plus(off)
		}
	}
	for i := range n.frame.Model.Plates {
		pl := &n.frame.Model.Plates[i]
		pl.Inside = move(pl.Inside)
		shift(pl.Outline)
		shift(pl.Hole)
	}
	if c := n.frame.Contents; c != nil {
		c.Up = move(c.Up)
		shift(c.Base)
	}
}

// CutAway is what of a flat ring lies no further along a way than so far (Sutherland and
// Hodgman, 1974).
func CutAway(ring []fold.Vec, way fold.Vec, far float64) (kept []fold.Vec) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		da, db := a.Dot(way)-far, b.Dot(way)-far
		if da <= 0 {
			kept = append(kept, a)
		}
		if da*db < 0 {
			kept = append(kept, between(a, b, da/(da-db)))
		}
	}
	return kept
}

// mark is a place before the middle of what is seen of a layer, at the near lower edge.
func (n *layers) mark(layer int) fold.Vec {
	from := n.box.low[0]
	if layer+1 < len(n.cuts) {
		from = n.cuts[layer+1]
	}
	w := n.room.Ways
	return w[0].Times((from + n.cuts[layer]) / 2).Plus(w[1].Times(n.box.low[1])).Plus(w[2].Times(n.box.low[2]))
}
