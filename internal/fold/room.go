package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// Room is where the contents stand in the closed pattern, and how far they can be
// moved there, along their own axes.
type Room struct {
	Ways    [3]Vec        // unit directions of their width, height and thickness
	Middle  Vec           // of the contents
	Size    Vec           // of the box round them, mm
	Play    [3][2]float64 // how far they can go down (at most 0) and up each way
	Corners []Vec         // of their outline at half of their thickness
}

// Contents returns the room of a pattern's contents in the frame of Fold; it is
// false where the pattern itself goes into something, and for patterns whose
// indices point nowhere.
func Contents(p *pattern.Pattern) (Room, bool) {
	if p.Cavity.Into || len(unsound(p)) > 0 {
		return Room{}, false
	}
	return build(p, 1).contentsRoom(), true
}

// contentsRoom finds the room of the contents. It turns the model.
func (m *model) contentsRoom() (room Room) {
	c := &m.pattern.Cavity
	frame := m.standing()
	m.standOn()
	m.shapes()
	room.Ways = [3]Vec{frame.X, frame.Y, frame.Z}
	if c.Round {
		room.roll(m)
	} else if c.Sides > 0 {
		body, _, _ := newWell(m).stand()
		room.outline(body.corners, body.half)
	} else {
		room.box(m.search())
	}
	room.into(&frame)
	return room
}

// box is the room of contents with the shape of a box.
func (room *Room) box(r *room) {
	var low, high Vec
	for k, at := range r.at {
		mid := (at.low + at.high) / 2
		low[k], high[k] = mid-r.size[k]/2, mid+r.size[k]/2
	}
	z := (low[2] + high[2]) / 2
	room.outline([]Vec{{low[0], low[1], z}, {high[0], low[1], z}, {high[0], high[1], z}, {low[0], high[1], z}}, r.size[2]/2)
	for k, free := range r.free {
		if low[k] > free.low && !math.IsInf(free.low, -1) {
			room.Play[k][0] = free.low - low[k]
		}
		if high[k] < free.high && !math.IsInf(free.high, 1) {
			room.Play[k][1] = free.high - high[k]
		}
	}
}

// outline takes the corners at half of the thickness.
func (room *Room) outline(corners []Vec, half float64) {
	around := boxRound(corners)
	room.Corners = corners
	for k := range room.Size {
		room.Size[k] = around.high[k] - around.low[k]
		room.Middle[k] = (around.low[k] + around.high[k]) / 2
	}
	room.Size[2] = 2 * half
}

// into turns a room into the frame of Fold.
func (room *Room) into(frame *Frame) {
	for i, c := range room.Corners {
		room.Corners[i] = frame.turn(c).Plus(frame.Origin)
	}
	room.Middle = frame.turn(room.Middle).Plus(frame.Origin)
}

// addContents adds the contents to a rig as a plate of their own thickness.
func (r *Rig) addContents() {
	m := *r.m
	m.plates = slices.Clone(m.plates)
	room := m.contentsRoom()
	r.Room = room
	move := Frame{X: room.Ways[0], Y: room.Ways[1], Z: room.Ways[2], Origin: room.Middle}
	ring := make([]spot, len(room.Corners))
	for i, c := range room.Corners {
		ring[i] = move.spot(c)
	}
	at := len(r.Plates)
	r.Plates = append(r.Plates, Part{Name: "contents", Panel: -1, Hinge: -1, Parent: -1, Unit: len(r.Units)})
	r.Units = append(r.Units, Unit{Piece: -1, Body: len(r.Units), Root: at, Plates: []int{at}})
	r.flat = append(r.flat, flatPlate{half: room.Size[2] / 2, still: move, rings: [][]spot{ring}})
	r.order = append(r.order, at)
}
