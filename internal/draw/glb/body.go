package glb

import (
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
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
		flat[i] = into(&p.Frame, v.Minus(p.Frame.Origin)).Minus(p.Hung)
	}
	return flat
}

// plate returns the body of a plate: its inside, and its outside and edges.
func plate(p *fold.Plate, caliper float64) []part {
	inwards := fold.Vec{0, 0, 1}
	up := inwards.Times(caliper / 2)
	ring, hole := plain(level(p, p.Outline)), plain(level(p, p.Hole))
	inside := face{shifted(ring, up), shifted(hole, up), inwards}
	down := up.Times(-1)
	under := face{shifted(ring, down), shifted(hole, down), inwards.Times(-1)}
	slices.Reverse(under.ring)
	slices.Reverse(under.hole)
	outside := []face{under}
	outside = walls(outside, ring, up)
	outside = walls(outside, hole, up)
	return []part{{faces: []face{inside}, material: inner}, {faces: outside, material: outer}}
}

// walls appends the edge faces along a ring.
func walls(to []face, ring []fold.Vec, up fold.Vec) []face {
	down := up.Times(-1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		out := unit(b.Minus(a).Cross(up))
		to = append(to, face{ring: []fold.Vec{a.Plus(down), b.Plus(down), b.Plus(up), a.Plus(up)}, normal: out})
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
				lines = append(lines, [2]fold.Vec{a.Plus(up), b.Plus(up)}, [2]fold.Vec{a.Minus(up), b.Minus(up)})
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
			off := pl.Hung.Minus(own.Hung)
			if p.Plus(off).Minus(b).Length() < smooth && q.Plus(off).Minus(a).Length() < smooth {
				return true
			}
		}
	}
	return false
}

// goodsOf returns the body of the contents as their joint sees them.
func goodsOf(b *assembly.Block) []part {
	x, y, z := axesOf(b)
	low := make([]fold.Vec, len(b.Base))
	for i, v := range b.Base {
		d := v.Minus(b.Base[0])
		low[i] = fold.Vec{d.Dot(x), d.Dot(y), d.Dot(z)}
	}
	seen := assembly.Block{Base: low, Up: fold.Vec{0, 0, b.Up.Length()}}
	var faces []face
	var lines [][2]fold.Vec
	for i, ring := range seen.Faces() {
		if faces = append(faces, face{ring: ring, normal: draw.NormalOf(ring)}); i >= 2 { // a side
			lines = append(lines, [2]fold.Vec{ring[0], ring[1]}, [2]fold.Vec{ring[3], ring[2]}, [2]fold.Vec{ring[0], ring[3]})
		}
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
	along := ring[to].Minus(ring[from])
	size := along.Length()
	for i := from + 1; i < to; i++ {
		if ring[i].Minus(ring[from]).Cross(along).Length() > smooth*size {
			return false
		}
	}
	return true
}

func unit(a fold.Vec) fold.Vec { return a.Times(1 / a.Length()) }

func shifted(ring []fold.Vec, way fold.Vec) []fold.Vec {
	moved := make([]fold.Vec, len(ring))
	for i, v := range ring {
		moved[i] = v.Plus(way)
	}
	return moved
}
