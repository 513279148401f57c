// Package glb writes the folded enclosure as binary glTF 2.0: the plates of
// the fold proof with the thickness of their stock, and the contents as a
// translucent box.
//
// Every plate is a node named after its panel, under one node that turns
// millimetres with z upwards into the metres with y upwards of the format.
// Closed says how far every fold is turned, so that a page can show the
// folding frame by frame. The same drawing gives the same bytes.
//
// The package bends no paper and shows no light, camera or ground.
package glb

import (
	"errors"
	"io"
	"math"

	"creasefit/internal/draw"
	"creasefit/internal/fold"
)

// Options are how the enclosure is to stand.
type Options struct {
	Closed float64 // how far it is folded: 0 for flat, 1 for closed; others are brought to the nearer of these
}

// Encode writes the drawing's pattern. The error is the writer's, or says that
// there is nothing to fold.
func Encode(w io.Writer, d *draw.Drawing, o Options) error {
	if d.Pattern == nil {
		return errors.New("glb: the drawing shows no pattern")
	}
	closed := 0.0
	if o.Closed > 0 { // not a number is flat
		closed = min(o.Closed, 1)
	}
	model := fold.Fold(d.Pattern, closed)
	if len(model.Plates) == 0 {
		return errors.New("glb: the pattern cannot be folded")
	}
	s := newScene(d.Title)
	for i := range model.Plates {
		if p := &model.Plates[i]; len(p.Outline) > 2 { // a fold may take up all of a narrow panel
			s.node(p.Name, plate(p, model.Caliper)...)
		}
	}
	if faces := contents(d.Pattern, &model); faces != nil {
		s.contents(faces)
	}
	b, err := s.bytes()
	if err != nil {
		return err
	}
	_, err = w.Write(b)
	return err
}

// part is faces of one material.
type part struct {
	faces    []face
	material int
}

// face is a flat polygon, counterclockwise seen from outside of the body that
// it bounds.
type face struct {
	ring, hole []fold.Vec
	normal     fold.Vec
}

// plate returns the body of a plate: its inside, and its outside and edges.
func plate(p *fold.Plate, caliper float64) []part {
	up := by(p.Inside, caliper/2)
	ring, hole := plain(p.Outline), plain(p.Hole)
	inside := face{shifted(ring, up), shifted(hole, up), p.Inside}
	down := by(up, -1)
	outside := []face{{reversed(shifted(ring, down)), reversed(shifted(hole, down)), by(p.Inside, -1)}}
	outside = walls(outside, ring, up)
	outside = walls(outside, hole, up)
	return []part{{[]face{inside}, inner}, {outside, outer}}
}

// walls appends the edge faces along a ring.
func walls(to []face, ring []fold.Vec, up fold.Vec) []face {
	down := by(up, -1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		out := unit(cross(minus(b, a), up))
		to = append(to, face{ring: []fold.Vec{plus(a, down), plus(b, down), plus(b, up), plus(a, up)}, normal: out})
	}
	return to
}

// smooth is how far, in mm, a chord may be from the corners that it leaves
// out: the proof's arcs have many more than an eye can see.
const smooth = 0.02

// plain leaves out corners that hardly change the ring.
func plain(ring []fold.Vec) []fold.Vec {
	if len(ring) < 8 {
		return ring
	}
	kept := []fold.Vec{ring[0]}
	for at := 0; at < len(ring)-1; {
		next := at + 1
		for next+1 < len(ring) && straight(ring, at, next+1) {
			next++
		}
		kept = append(kept, ring[next])
		at = next
	}
	return kept
}

// straight reports whether all corners between two lie near their chord.
func straight(ring []fold.Vec, from, to int) bool {
	along := minus(ring[to], ring[from])
	size := length(along)
	for i := from + 1; i < to; i++ {
		if length(cross(minus(ring[i], ring[from]), along)) > smooth*size {
			return false
		}
	}
	return true
}

func plus(a, b fold.Vec) fold.Vec       { return fold.Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func minus(a, b fold.Vec) fold.Vec      { return fold.Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func by(a fold.Vec, f float64) fold.Vec { return fold.Vec{a[0] * f, a[1] * f, a[2] * f} }
func dot(a, b fold.Vec) float64         { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func length(a fold.Vec) float64         { return math.Sqrt(dot(a, a)) }
func unit(a fold.Vec) fold.Vec          { return by(a, 1/length(a)) }
func cross(a, b fold.Vec) fold.Vec {
	return fold.Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func shifted(ring []fold.Vec, way fold.Vec) []fold.Vec {
	moved := make([]fold.Vec, len(ring))
	for i, v := range ring {
		moved[i] = plus(v, way)
	}
	return moved
}

func reversed(ring []fold.Vec) []fold.Vec {
	for i, j := 0, len(ring)-1; i < j; i, j = i+1, j-1 {
		ring[i], ring[j] = ring[j], ring[i]
	}
	return ring
}
