package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Sleeve is a wrap that is open above and below. Its seam is at a corner: a lap
// is scored along the right edge of the back's side and glued inside the free
// edge of the front, so that the left side goes round one caliper more.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance, all lengths from crease to crease or to a free edge; a fold of
// 180 degrees round R takes R + t of the sheet, half on each side of its score:
//
//	two scores a side:  back = front = W + t + c_w
//	                    right side = T + t + c_t, under the lap
//	                    left side  = right side + t, within a caliper
//	in two pieces:      both sides = T + 2t + c_t, between the two laps
//	one score a side:   the left fold round T + t, the right one round T
//	                    back  = W + T + 2 1/2 t + c_w
//	                    front = back - T/2 and up to 1/8 in less, so that its
//	                    edge does not stick out over the right fold
//	both:               height = H - reveal, within 1/8 in
func Sleeve() *Kind {
	return &Kind{
		Name:  "sleeve",
		Title: "Sleeve with a glued lap",
		Help:  "A wrap open at both ends that slides over the contents, glued along a lap at one corner.",
		Words: german("Hülle mit Klebelasche",
			"Eine an beiden Enden offene Hülle, die über den Inhalt geschoben wird, an einer Ecke mit einer Lasche verklebt."),
		Needs: []string{"width", "height", "thickness"},
		Params: append([]Param{
			contentsShape,
			lengthParam("lap", 3, 300, "How wide the lap is that is glued inside the front.").usually(32, 15),
			showing,
			scoresPerSide,
			wrapJoin,
		}, notchParams...),
		Plan: planSleeve,
	}
}

var sleeveThin = grid{
	piece:  "sleeve",
	across: edge{[]string{"front", "back", "lap"}, []pattern.Score{valley("1", 180), valley("2", 180)}},
	up:     edge{names: []string{"sleeve height"}},
	cells:  []cell{{"front", 0, 0, 1}, {"back", 1, 0, -1}, {"lap", 2, 0, 1}},
	root:   1,
}

// sleeveReadings are the indices of a sleeve's readings in its problem.
type sleeveReadings struct {
	across []int // the panels from the left
	height int
	notch  thumb
}

func planSleeve(in *Input) (*Plan, error) {
	d, r := newDraft(in), &sleeveReadings{}
	height := in.Height.Sub(in.length("reveal"))
	if Round(in.Given) {
		return d.rolledSleeve(height)
	}
	shape, glued := &sleeveThick, measure.Length{}
	var flat error
	if !in.inTwo() && in.oneScore(d) {
		shape = &sleeveThin
		r.across, glued = d.thinSleeve()
		flat = in.PaperOnly("a sleeve with one score at each side")
	} else {
		r.across, glued = d.thickSleeve()
	}
	r.height = d.sleeveHeight(height)
	d.wrapStrips(0, 1, r.across, []int{r.height})
	var wrong error
	r.notch, wrong = d.notched(r.across[0], measure.Max(in.Beside(), in.length("lap")), in.Beside(), height.Sub(in.Little()))
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.laySleeve(shape, r, sizes) }
	return d.plan, fault.Join(flat, in.checkSleeve(glued), in.twoScores(), wrong)
}

// rolledSleeve plans a sleeve round what is round, which has no sides.
func (d *draft) rolledSleeve(height measure.Length) (*Plan, error) {
	plan, wrong := d.rolled(&Roll{Piece: "sleeve", High: "sleeve height", Body: "body", Lap: "lap", Width: "lap"}, d.sleeveHeight(height))
	for _, name := range [...]string{scoresPerSide.Name, wrapJoin.Name, notchParams[0].Name, notchParams[1].Name} {
		wrong = fault.Join(wrong, d.in.OnlyFor(name, contentsShape.Name, "box"))
	}
	return plan, wrong
}

// sleeveHeight adds the reading of a sleeve's height, a little more or less than
// what it should cover.
func (d *draft) sleeveHeight(height measure.Length) int {
	reading := d.between("sleeve height", height, d.in.Beside(), measure.Largest())
	d.within("height", Range{Min: d.in.Little().Neg(), Max: d.in.Little()}, d.form(height.Neg(), times(1, reading)))
	return reading
}

// thickSleeve adds the readings of a sleeve with two scores a side, and says
// how much of the lap the contents may leave uncovered.
func (d *draft) thickSleeve() (across []int, loose measure.Length) {
	face, depth := Need{Width: 1, HalfCalipers: 2}, Need{Thickness: 1, HalfCalipers: 2 + d.in.lapLayers()}
	across = d.tube(d.ideal(face), d.ideal(depth))
	d.fit(pattern.Width, face, times(1, across[2]))
	d.fit(pattern.Thickness, depth, times(1, across[3]))
	d.wrapSides(across[1], across[3])
	return across, d.in.Fit.Max.Add(d.in.Caliper).Over(2)
}

// thinSleeve adds the readings of a sleeve with one score a side, and says how
// much of the lap the front may leave uncovered.
func (d *draft) thinSleeve() (across []int, loose measure.Length) {
	need, edge := Need{Width: 1, Thickness: 1, HalfCalipers: 5}, d.in.Thickness.Over(2)
	whole := d.ideal(need)
	front := d.reading("front", whole.Sub(edge).Sub(d.in.Little().Over(2)))
	back := d.round("back", pattern.Width, need)
	d.within("front's edge", Range{Max: d.in.Little()}, d.form(edge.Neg(), times(1, back), times(-1, front)))
	return []int{front, back, d.fixed("lap", "lap")}, edge.Add(measure.Max(d.in.Little(), d.in.Caliper.Over(2)))
}

// checkSleeve refuses a sleeve that is not there, and a lap that has no room or
// leaves none for glue.
func (in *Input) checkSleeve(loose measure.Length) error {
	return fault.Join(
		in.covers("height", in.Beside().Add(in.Little()), "nothing is left of the sleeve"),
		in.bounded("lap", Range{Min: loose.Add(leastGlue), Max: in.Width}, "the lap leaves no room for glue, or reaches across the front", "make it fit the front"),
	)
}

// laySleeve lays the sleeve out, glues its lap inside the front and bites the
// notch out.
func (d *draft) laySleeve(shape *grid, r *sleeveReadings, sizes []measure.Length) pattern.Pattern {
	in := d.in
	thin := shape == &sleeveThin
	across := extents{sizes: d.sizesOf(r.across, sizes)}
	if thin {
		across.rounds = []measure.Length{in.Thickness.Add(in.Caliper), in.Thickness}
	}
	p := d.grid(shape, across, extents{sizes: []measure.Length{sizes[r.height]}})
	if thin {
		glueSleeve(&p, measure.Max(sizes[r.across[1]].Sub(sizes[r.across[0]]), in.spine(in.Thickness).Over(2)))
	} else {
		glueSleeve(&p, measure.Length{})
		seamSleeve(&p, in.Caliper)
	}
	if r.notch.radius >= 0 {
		d.biteSleeve(&p, sizes[r.notch.after], sizes[r.notch.radius])
	}
	whole := d.around(p)
	if in.inTwo() {
		partSleeve(&whole, 0)
		lieOnSecondLap(&whole)
	}
	return whole
}
