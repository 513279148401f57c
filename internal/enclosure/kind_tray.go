package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Tray is an open box: the bottom and the top wall end in tabs that are glued
// to the side walls, inside them or outside; rolled walls fold over once more
// and cover the tabs.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance, all lengths from crease to crease or to a free edge; a fold of
// 180 degrees round R takes R + t of the sheet, half on each side of its score:
//
//	tabs inside:   base width  = W + 3t + c_w, with rolled walls W + 5t + c_w
//	tabs outside:  base width  = W + t + c_w,  with rolled walls W + 3t + c_w
//	both:          base height = H + t + c_h,  with rolled walls H + 3t + c_h
//	walls          = T + t/2 and up to 1/4 in more
//	rolled walls   = walls - a, the least ruler mark that is not under one caliper
//
// The base is t less inside and t more outside than from centre to centre of
// its scores (FEFCO/ESBO code), where no tab or rolled wall lies.
func Tray() *Kind {
	return &Kind{
		Name:  "tray",
		Title: "Tray",
		Help:  "An open box from one sheet: four walls, held by glued tabs at the corners.",
		Words: german("Offener Kasten",
			"Ein Boden mit vier Wänden, an den Ecken mit Laschen verklebt; auf Wunsch mit eingerollten, doppelten Wänden."),
		Needs: []string{"width", "height", "thickness"},
		Box:   true,
		Params: []Param{
			lengthParam("depth", 5, 500, "How high the walls are; up to 1/4 in (6 mm) more than the contents if not given."),
			cornerTabs,
			trayWalls,
			cornerTab,
			boxJoin,
			baseLap,
		},
		Plan: planTray,
	}
}

var trayGrid, rolledTrayGrid = boxGrid("tray"), rolledBoxGrid("tray")

func planTray(in *Input) (*Plan, error) {
	d, b := newDraft(in), in.newBox(&trayGrid, in.Fit.Max.Over(2))
	if err := b.roll(in, &rolledTrayGrid); err != nil {
		return nil, err
	}
	b.halve(in, 1)
	walls, wall := d.trayWalls()
	long := d.trayBase(b, wall)
	d.stand(b)
	err := fault.Join(d.addTab(b, "corner tab", walls, long), in.checkTray(b), b.checkHalves(in, in.Width))
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern {
		p := d.around(b.lay(d, sizes))
		b.part(d, &p, 0, sizes)
		return p
	}
	return d.plan, err
}
