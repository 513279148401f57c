package glb

import (
	"math"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
)

// part is faces of one material, or the lines that are drawn along edges.
type part struct {
	faces    []face
	lines    [][2]fold.Vec
	material int
}

// face is a flat polygon, counterclockwise seen from outside of the body that
// it bounds.
type face struct {
	ring, hole []fold.Vec
	normal     fold.Vec
}

// level is where a plate lies flat before it is folded: its blank, seen from
// where it hangs.
func level(p *fold.Plate, ring []fold.Vec) []fold.Vec {
	flat := make([]fold.Vec, len(ring))
	for i, v := range ring {
		flat[i] = minus(into(&p.Frame, minus(v, p.Frame.Origin)), p.Hung)
	}
	return flat
}

// plate returns the body of a plate: its inside, and its outside and edges.
func plate(p *fold.Plate, caliper float64) []part {
	inwards := fold.Vec{0, 0, 1}
	up := by(inwards, caliper/2)
	ring, hole := plain(level(p, p.Outline)), plain(level(p, p.Hole))
	inside := face{shifted(ring, up), shifted(hole, up), inwards}
	down := by(up, -1)
	outside := []face{{reversed(shifted(ring, down)), reversed(shifted(hole, down)), by(inwards, -1)}}
	outside = walls(outside, ring, up)
	outside = walls(outside, hole, up)
	return []part{{faces: []face{inside}, material: inner}, {faces: outside, material: outer}}
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

// edges returns the lines along the edges of a plate, on both of its faces. A
// panel that bends has none where one of its facets goes on into the next.
func (k *skeleton) edges(plate int) (lines [][2]fold.Vec) {
	pl := &k.model.Plates[plate]
	up := fold.Vec{0, 0, k.model.CaliperOf(plate) / 2}
	for _, ring := range [...][]fold.Vec{plain(level(pl, pl.Outline)), plain(level(pl, pl.Hole))} {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if !k.goesOn(plate, a, b) {
				lines = append(lines, [2]fold.Vec{plus(a, up), plus(b, up)}, [2]fold.Vec{minus(a, up), minus(b, up)})
			}
		}
	}
	return lines
}

// goesOn reports whether a facet of the same panel lies beyond an edge.
func (k *skeleton) goesOn(plate int, a, b fold.Vec) bool {
	own := &k.model.Plates[plate]
	for i := range k.model.Plates {
		pl := &k.model.Plates[i]
		if i == plate || pl.Panel < 0 || pl.Panel != own.Panel || pl.Piece != own.Piece || pl.Copy != own.Copy {
			continue
		}
		ring := level(pl, pl.Outline)
		for j, p := range ring {
			q := ring[(j+1)%len(ring)]
			if apart(plus(p, pl.Hung), plus(b, own.Hung)) < smooth && apart(plus(q, pl.Hung), plus(a, own.Hung)) < smooth {
				return true
			}
		}
	}
	return false
}

func apart(a, b fold.Vec) float64 { return length(minus(a, b)) }

// goodsOf returns the body of the contents as their joint sees them.
func goodsOf(b *assembly.Block) []part {
	x, y, z := axesOf(b)
	n, high := len(b.Base), fold.Vec{0, 0, length(b.Up)}
	low := make([]fold.Vec, n)
	for i, v := range b.Base {
		d := minus(v, b.Base[0])
		low[i] = fold.Vec{dot(d, x), dot(d, y), dot(d, z)}
	}
	top := shifted(low, high)
	faces := []face{{ring: top, normal: fold.Vec{0, 0, 1}}, {ring: reversed(shifted(low, fold.Vec{})), normal: fold.Vec{0, 0, -1}}}
	lines := make([][2]fold.Vec, 0, 3*n)
	for i, a := range low {
		k := (i + 1) % n
		faces = append(faces, face{ring: []fold.Vec{a, low[k], top[k], top[i]}, normal: unit(cross(minus(low[k], a), high))})
		lines = append(lines, [2]fold.Vec{a, low[k]}, [2]fold.Vec{top[i], top[k]}, [2]fold.Vec{a, top[i]})
	}
	return []part{{faces: faces, material: goods}, {lines: lines, material: edge}}
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
