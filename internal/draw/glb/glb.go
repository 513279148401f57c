// Package glb writes an enclosure as binary glTF 2.0, with its making: the plates
// of the fold proof with the thickness of their stock and their edges drawn, and
// the contents as a translucent body.
//
// Every plate is a node named after its panel that hangs on the plate that it is
// folded on, under one node that turns millimetres with z upwards into the metres
// with y upwards of the format. The first animation is the whole order of work;
// every step of it follows as an animation of its own. At rest all stands as it does
// when so much of the work is done as the options say: finished, on its foot. The
// same drawing gives the same bytes.
//
// The package bends no paper and shows no light, camera or ground.
package glb

import (
	"errors"
	"io"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/fold"
)

// Options are how the enclosure is to stand.
type Options struct {
	// Closed is how much of the work is done: 0 for flat, 1 for closed; others are
	// brought to the nearer of these.
	Closed float64
	// Order is the order of work. Without one nothing moves, all folds are turned
	// at once, and there are no contents.
	Order *assembly.Order
}

// Encode writes the drawing's pattern. The error is the writer's, or says that
// there is nothing to fold.
func Encode(w io.Writer, d *draw.Drawing, o Options) error {
	if d.Pattern == nil {
		return errors.New("glb: the drawing shows no pattern")
	}
	part := 0.0
	if o.Closed > 0 { // not a number is flat
		part = min(o.Closed, 1)
	}
	closed := finished(d, part, o.Order)
	if len(closed.Model.Plates) == 0 {
		return errors.New("glb: the pattern cannot be folded")
	}
	k := newSkeleton(&closed, o.Order)
	var clips []clip
	if o.Order != nil {
		k.findBows(d.Pattern, o.Order)
		closed = k.bent(closed, -1, 0)
		clips = k.clips(o.Order, d)
	}
	rest := k.stances(&closed, part)
	if len(clips) > 0 {
		rest = at(clips, part)
	}
	s := newScene(d.Title)
	s.animate(d.Title, clips, s.skeleton(k, rest, d))
	b, err := s.bytes()
	if err != nil {
		return err
	}
	_, err = w.Write(b)
	return err
}

// finished is how everything stands in the end: where there is no order of work,
// with so much of every fold turned as part says.
func finished(d *draw.Drawing, part float64, order *assembly.Order) assembly.Frame {
	if order != nil && len(order.Steps) > 0 {
		return order.Frame(len(order.Steps)-1, 1)
	}
	return assembly.Frame{Model: fold.Fold(d.Pattern, part)}
}
