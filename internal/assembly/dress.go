package assembly

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// waits is how far an ornament waits from its place, in parts of its height.
const waits = 0.6

// Dressed returns the order with one more step: the tabs of a joint are pressed flat,
// and the halves of an ornament, each on the tab of its own side, are laid over it. The
// ornament is the last piece of the pattern; its first panel is the half over the joint's
// first tab.
func (o *Order) Dressed(whole *pattern.Pattern) *Order {
	dressed, ornament := *o, len(whole.Pieces)-1
	dressed.whole = whole
	step := Step{Do: Dress, Pieces: []int{ornament, 0}}
	for _, tab := range tabsOf(whole) {
		step.Turns = append(step.Turns, Turn{Crease: tab.crease, Panel: tab.panel, From: 1, To: 2})
	}
	f := o.Frame(len(o.Steps)-1, 1)
	front := f.Model.Plates[plateOf(&f.Model, tabsOf(whole)[0].front)]
	plates := len(f.Model.Plates)
	Adorn(&f, whole, 0, 1)
	dressed.waiting = f.Model.Plates[plates:]
	step.Travels = []Travel{{Piece: ornament, Way: front.Inside, By: waits * whole.Pieces[ornament].Height.Millimetres()}}
	dressed.Steps = append(o.Steps[:len(o.Steps):len(o.Steps)], step)
	return &dressed
}

// dressing is how everything stands in a step of an order with an ornament: the tabs
// are pressed first, then the ornament comes.
func (o *Order) dressing(step int, at float64) Frame {
	plain := *o
	plain.whole, plain.Steps = nil, o.Steps[:len(o.Steps)-1]
	if step < len(plain.Steps) {
		f := plain.Frame(step, at)
		f.Model.Plates, f.Present = append(f.Model.Plates, o.waiting...), append(f.Present, false, false)
		return f
	}
	f := plain.Frame(step-1, 1)
	Adorn(&f, o.whole, min(1, 2*at), 1-max(0, 2*at-1))
	return f
}

// tab is a panel that locks and is pressed onto the panel that it hangs on.
type tab struct{ panel, front, crease int }

// tabsOf returns the tabs of the first joint of a pattern.
func tabsOf(p *pattern.Pattern) (tabs [2]tab) {
	piece := &p.Pieces[0]
	for k, panel := range [...]int{piece.Joints[0].PanelA, piece.Joints[0].PanelB} {
		for i := range piece.Creases {
			if c := &piece.Creases[i]; c.To == panel {
				tabs[k] = tab{panel, c.From, i}
			}
		}
	}
	return tabs
}

// plateOf returns the plate of a panel of the first piece.
func plateOf(m *fold.Model, panel int) int {
	return max(0, slices.IndexFunc(m.Plates, func(pl fold.Plate) bool { return pl.Piece == 0 && pl.Panel == panel }))
}

// Adorn presses the tabs of a closed pattern onto the panels that they hang on, by a
// part of the way, and adds the halves of the ornament, its last piece, at a part of the
// way that they come.
func Adorn(f *Frame, whole *pattern.Pattern, pressed, away float64) {
	tabs := tabsOf(whole)
	for _, t := range tabs {
		press(&f.Model, &whole.Pieces[0], t, pressed)
	}
	ornament := len(whole.Pieces) - 1
	piece, band := &whole.Pieces[ornament], &whole.Pieces[0]
	front := f.Model.Plates[plateOf(&f.Model, tabs[0].front)].Frame
	caliper := cmp.Or(piece.Caliper.Millimetres(), f.Model.Caliper)
	lift := (3*f.Model.Caliper+caliper)/2 + away*waits*piece.Height.Millimetres()
	seam := band.Creases[tabs[0].crease].A.X.Millimetres()
	on := fold.Frame{X: front.X.Times(-1), Y: front.Y, Z: front.Z.Times(-1)}
	middle := along(along(along(front.Origin, front.X, seam), front.Y, band.Height.Millimetres()/2), on.Z, lift)
	on.Origin = along(along(middle, on.X, -piece.Width.Millimetres()/2), on.Y, -piece.Height.Millimetres()/2)
	for i := range piece.Panels {
		pl := fold.Plate{Name: piece.Panels[i].Name, Piece: ornament, Panel: i, Crease: -1, Inside: on.Z, Frame: on, Caliper: caliper, Parent: -1}
		for _, v := range piece.Panels[i].Outline {
			pl.Outline = append(pl.Outline, along(along(on.Origin, on.X, v.X.Millimetres()), on.Y, v.Y.Millimetres()))
		}
		f.Model.Plates, f.Present = append(f.Model.Plates, pl), append(f.Present, true)
	}
}

// press turns a tab that stands up a part of the way down onto the panel that it hangs
// on, on which it lies one caliper up.
func press(m *fold.Model, band *pattern.Piece, t tab, part float64) {
	if part <= 0 {
		return
	}
	front, pl := m.Plates[plateOf(m, t.front)].Frame, &m.Plates[plateOf(m, t.panel)]
	at := band.Creases[t.crease].A.X
	side := 1.0
	if band.Panels[t.panel].Outline[0].X.Less(at) {
		side = -1
	}
	sin, cos := math.Sincos((1 + part) * math.Pi / 2)
	was, now := pl.Frame, fold.Frame{X: along(front.X.Times(cos), front.Z, -side*sin), Y: front.Y, Z: along(front.Z.Times(cos), front.X, side*sin)}
	seam := along(along(front.Origin, front.X, at.Millimetres()), front.Z, -part*m.Caliper)
	now.Origin = along(seam, now.X, -at.Millimetres())
	pl.Frame, pl.Inside = now, now.Z
	for i, v := range pl.Outline {
		off := v.Minus(was.Origin)
		pl.Outline[i] = along(along(now.Origin, now.X, off.Dot(was.X)), now.Y, off.Dot(was.Y))
	}
}

// along is a place so far along a direction.
func along(p, way fold.Vec, by float64) fold.Vec {
	return p.Plus(way.Times(by))
}
