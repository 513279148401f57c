package fold

import (
	"math"

	"creasefit/internal/pattern"
)

// Pose is how everything stands: how far each hinge is turned, and how each unit
// has been moved from its place. After a change, Lay works out where plates are.
type Pose struct {
	Turned []float64 // by hinge: 0 flat, 1 closed
	Away   []Frame   // by unit

	rig *Rig
	bow []float64 // by unit
	at  []placed  // by plate
}

// placed is a plate where it is in a pose. Its box and parts are worked out when they
// are asked for.
type placed struct {
	move    Frame
	turn    Frame // about its hinge, by so many degrees
	degrees float64
	lifted  bool
	box     box
	parts   []part
}

// Closed returns the pose of the closed pattern with everything in its place.
func (r *Rig) Closed() *Pose {
	p := &Pose{rig: r, Turned: make([]float64, len(r.Hinges)), Away: make([]Frame, len(r.Units)),
		bow: make([]float64, len(r.Units)), at: make([]placed, len(r.Plates))}
	for u := range p.Away {
		p.Away[u] = still()
	}
	for h := range p.Turned {
		p.Turned[h] = 1
	}
	corners := 0
	for i := range r.flat {
		for _, ring := range r.flat[i].rings {
			corners += len(ring)
		}
	}
	space := make([]Vec, corners)
	for i := range p.at {
		p.at[i].degrees = math.Inf(1) // not known yet
		p.at[i].parts = make([]part, len(r.flat[i].rings))
		for k, ring := range r.flat[i].rings {
			p.at[i].parts[k].half, p.at[i].parts[k].corners = r.flat[i].half, space[:len(ring):len(ring)]
			space = space[len(ring):]
		}
	}
	p.LayAll()
	return p
}

// LayAll works out where all plates are.
func (p *Pose) LayAll() {
	p.bend()
	p.Lay(p.rig.order)
}

// Lay works out where some plates are, which must be in the order of Hinge.Far.
// The plates that they hang on have been worked out.
func (p *Pose) Lay(plates []int) {
	for _, i := range plates {
		p.at[i].move, p.at[i].lifted = p.moved(i), false
	}
}

// bend works out how far every unit bends.
func (p *Pose) bend() {
	clear(p.bow)
	for i := range p.rig.flat {
		if part := &p.rig.Plates[i]; p.rig.flat[i].curved {
			p.bow[part.Unit] = max(p.bow[part.Unit], p.Turned[part.Hinge])
		}
	}
}

// pressed is how much of the way to flat a tube of bent panels is pressed: all of it,
// but for what leaves paper between its sides, so that what lies on what can be told.
const pressed = 0.985

// moved is the motion of a plate.
func (p *Pose) moved(i int) Frame {
	part, f := &p.rig.Plates[i], &p.rig.flat[i]
	if part.Parent < 0 {
		return p.Away[part.Unit].after(&f.still)
	}
	var degrees float64
	bow := p.bow[part.Unit]
	if f.bends {
		degrees = f.degrees * bow
	} else {
		degrees = p.Turned[part.Hinge] * (f.degrees + pressed*f.unbowed*(1-bow))
	}
	if at := &p.at[i]; at.degrees != degrees {
		at.degrees, at.turn = degrees, hinge(f.a, f.n, degrees*f.share)
	}
	return p.at[part.Parent].move.after(&p.at[i].turn)
}

// lift returns a plate with its corners where they are.
func (p *Pose) lift(i int) *placed {
	at := &p.at[i]
	if at.lifted {
		return at
	}
	at.lifted = true
	around := noBox()
	for k, ring := range p.rig.flat[i].rings {
		part := &at.parts[k]
		part.normal = at.move.Z
		for c, spot := range ring {
			part.corners[c] = at.move.at(spot)
			around.take(&part.corners[c])
		}
	}
	at.box = around.thicker(at.move.Z, p.rig.flat[i].half)
	return at
}

// Frame returns where the blank of a plate is.
func (p *Pose) Frame(plate int) Frame { return p.at[plate].move }

// Box returns the corners of the box round a plate.
func (p *Pose) Box(plate int) (low, high Vec) {
	around := &p.lift(plate).box
	return around.low, around.high
}

// Reach returns how far the box round a plate reaches in a direction, from the origin.
func (p *Pose) Reach(plate int, way Vec) float64 { return p.lift(plate).box.ahead(way) }

// Model returns the plates of the pattern as they stand.
func (p *Pose) Model() Model {
	m := p.rig.m
	model := Model{Caliper: 2 * m.half, Plates: make([]Plate, len(m.plates))}
	for i := range m.plates {
		pl := m.plates[i]
		pl.move = p.at[i].move
		model.Plates[i] = m.plate(&pl)
	}
	return model
}

// Corners returns the outline of the contents at half of their thickness.
func (p *Pose) Corners() []Vec { return p.lift(len(p.at) - 1).parts[0].corners }

// Point returns where a point of a plate's blank is.
func (p *Pose) Point(plate int, at pattern.Point) Vec { return p.at[plate].move.at(place(at)) }

// Axis returns a point on the line of a hinge and its direction, such that the
// plates beyond it turn by its positive degrees as a right-handed screw does.
func (p *Pose) Axis(h int) (at, along Vec) {
	i := p.rig.Hinges[h].Far[0]
	f, move := &p.rig.flat[i], &p.at[p.rig.Plates[i].Parent].move
	return move.at(f.a), move.turn(Vec{f.n.y, -f.n.x, 0})
}
