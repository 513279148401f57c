package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// trayWalls says how high walls may be and how their readings are added: as
// the depth says, or a little higher than the contents.
func (d *draft) trayWalls() (high Range, wall func(name string) int) {
	if d.in.given("depth") {
		depth := d.in.length("depth")
		return Range{Min: depth, Max: depth}, func(name string) int { return d.fixed(name, "depth") }
	}
	need, more := Need{Thickness: 1, HalfCalipers: 1}.Of(d.in), d.in.Little()
	return Range{Min: need, Max: need.Add(more.Times(2))}, func(name string) int { return d.reading(name, need.Add(more)) }
}

// stand states that walls whose height is not given are a little higher than
// the contents.
func (d *draft) stand(b *box) {
	if need := (Need{Thickness: 1, HalfCalipers: 1}); !d.in.given("depth") {
		d.within("height of the walls", Range{Max: d.in.Little().Times(2)}, d.form(need.Of(d.in).Neg(), times(1, b.wall())))
	}
}

// checkTray refuses walls that have no room for glue, and contents that would
// lie below the tabs.
func (in *Input) checkTray(b *box) error {
	least, thin := b.lowest(in), b.thinnest(in)
	if err := in.checkRoll(b); err != nil {
		return err
	}
	if in.given("depth") {
		return fault.Join(in.bounded("depth", Range{Min: least, Max: measure.Largest()}, "walls that low leave no room for glue", "make the tray deeper"),
			in.least("thickness", in.Thickness, thin, "so thin contents would lie below the tabs"))
	}
	return in.least("thickness", in.Thickness, measure.Max(least, thin), "walls that low leave no room for glue")
}

// checkRoll refuses walls of two layers that cannot be rolled in.
func (in *Input) checkRoll(b *box) error {
	field, high, most := "thickness", in.Thickness, measure.Min(in.Width, in.Height)
	if in.given("depth") {
		field, high = "depth", in.length("depth")
	}
	if unknown := most.Less(Widths().Min); !b.rolled || unknown || !most.Less(high) { // a check has yet to find it
		return nil
	}
	return in.Outside(field, Range{Min: b.lowest(in), Max: most}, "walls of two layers are rolled in: higher than the tray is wide, they meet the wall across", "leave walls out, or turn the contents")
}

// trayWalls says whether the walls of a tray are rolled in.
var trayWalls = Param{Name: "walls", Type: ChoiceParam, Choices: []string{"single", "double"},
	Help: "Double walls of the tray are rolled in over the tabs."}

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
