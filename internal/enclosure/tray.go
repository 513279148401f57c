package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// tray is an open box: the bottom and the top wall end in tabs that are glued
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
func tray() *Kind {
	return &Kind{
		Name:  "tray",
		Title: "Tray",
		Help:  "An open box from one sheet: four walls, held by glued tabs at the corners.",
		Needs: []string{"width", "height", "thickness"},
		Params: []Param{
			{Name: "depth", Help: "How high the walls are; up to 1/4 in (6 mm) more than the contents if not given.",
				Least: measure.Millimetres(5), Greatest: measure.Millimetres(500)},
			cornerTabs,
			trayWalls,
			cornerTab,
			boxJoin,
			baseLap,
		},
		Plan: planTray,
	}
}

// trayWalls says whether the walls of a tray are rolled in.
var trayWalls = Param{Name: "walls", Type: ChoiceParam, Choices: []string{"single", "double"}, Help: "Double walls of the tray are rolled in over the tabs."}

// roll makes a box one with rolled walls, of the shape given, if they are
// asked for; in two pieces it has single ones.
func (b *box) roll(in *Input, shape *grid) error {
	if in.choice(trayWalls.Name) != "double" {
		return nil
	}
	b.rolled, b.shape = true, shape
	if !in.inTwo() {
		return nil
	}
	return fault.Fault{Code: fault.Conflict, Field: trayWalls.Name, Value: "double", Detail: "the halves of a tray in two pieces have single walls", Hint: "leave walls or join out"}
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
		p := pattern.Pattern{
			Caliper: in.Caliper, Pieces: []pattern.Piece{b.lay(in, sizes)},
			Cavity: pattern.Cavity{Width: in.Width, Height: in.Height, Thickness: in.Thickness, Bounded: d.bounded()},
		}
		b.part(&p, 0, in, sizes)
		return p
	}
	d.warnTabs()
	return d.plan, err
}

// trayWalls says how high walls may be and how their readings are added: as
// the depth says, or a little higher than the contents.
func (d *draft) trayWalls() (high Range, wall func(name string) int) {
	if d.in.given("depth") {
		depth := d.in.length("depth")
		return Range{depth, depth}, func(name string) int { return d.fixed(name, "depth") }
	}
	need, more := Need{Thickness: 1, HalfCalipers: 1}.Of(d.in), d.in.little()
	return Range{need, need.Add(more.Times(2))}, func(name string) int { return d.reading(name, need.Add(more)) }
}

// stand states that walls whose height is not given are a little higher than
// the contents.
func (d *draft) stand(b *box) {
	if need := (Need{Thickness: 1, HalfCalipers: 1}); !d.in.given("depth") {
		d.within("height of the walls", Range{Max: d.in.little().Times(2)}, d.form(need.Of(d.in).Neg(), times(1, b.wall())))
	}
}

// checkTray refuses walls that have no room for glue, and contents that would
// lie below the tabs.
func (in *Input) checkTray(b *box) error {
	least, thin := b.lowest(in), b.thinnest(in)
	if in.given("depth") {
		return fault.Join(in.bounded("depth", Range{least, measure.Largest()}, "walls that low leave no room for glue", "make the tray deeper"),
			in.least("thickness", in.Thickness, thin, "so thin contents would lie below the tabs"))
	}
	return in.least("thickness", in.Thickness, measure.Max(least, thin), "walls that low leave no room for glue")
}

// warnTabs says where the scores of corner tabs lie, which no ruler has a mark for.
func (d *draft) warnTabs() {
	side := "inside"
	if d.in.choice("corners") == "outside" {
		side = "outside"
	}
	d.warn("tab-scores", "The corner tabs are scored one caliper "+side+" the line of the walls' scores: set the ruler on the line and move it by a scrap of the stock.")
}
