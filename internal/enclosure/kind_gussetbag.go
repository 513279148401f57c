package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// GussetBag is a tube of two faces and two side gussets, each scored along its
// middle, closed by a glue lap inside the back. At the foot the front and the
// gussets have short flaps, mitred in the front corners; the back's flap is the
// base, which is glued over them. The top edge is turned over to the inside,
// cut apart and trimmed at the corners; the lap ends below it.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance, at least 2t of it for the contents to pass the turn-over, all
// lengths from crease to crease:
//
//	front = back   = W + t + c_w
//	right gusset   = T + t + c_t, in two halves
//	left gusset    = right gusset + t, since the back goes over the lap;
//	                 in two pieces, with two laps, both are as the right one + t
//	base           = left gusset, in two pieces + t, scored t below the other flaps
//	back height    = H + headroom and up to 1/2 in more
//	trim of the turn-over at each corner = 1 1/2 t and up to the next mark
//
// The blank of the tube is 2(W + T) + lap wide, and 5t and the clearances.
func GussetBag() *Kind {
	return &Kind{
		Name:  "gusset-bag",
		Title: "Gusset bag",
		Help:  "A bag with side gussets, a folded base glued over three flaps, and a turned-over top edge.",
		Words: german("Tüte mit Seitenfalten",
			"Eine Tüte mit seitlichen Balgfalten, gefaltetem Boden, der auf drei Klappen geklebt wird, und eingeschlagenem oberem Rand."),
		Needs: []string{"width", "height", "thickness"},
		Params: []Param{
			lengthParam("headroom", 10, 1000, "How far the bag stands above the contents, at least.").usually(128, 50),
			lengthParam("turn_over", 3, 300, "How far the top edge is turned over to the inside.").usually(32, 15),
			lengthParam("lap", 3, 300, "How wide the glue lap is.").usually(32, 15),
			lengthParam("base_flap", 3, 300, "How far the flaps of the front and of the gussets reach under the base.").usually(16, 5).seldom(),
			wrapJoin,
		},
		Plan: planGussetBag,
	}
}

// The panels of a bag: walls first, then what hangs on them.
const (
	bagFront = iota
	bagLeftFront
	bagLeftBack
	bagBack
	bagRightFront
	bagRightBack
	bagLap
	bagBase
	bagFlap                   // of the front, then of the gussets as the walls
	bagTurnOver = bagFlap + 5 // of the front, then of the others as the walls
)

var bagGrid = grid{
	piece: "bag",
	across: edge{[]string{"back", "left back half", "left front half", "front", "right front half", "right back half", "lap"},
		[]pattern.Score{valley("1", 90), mountain("2", 0), valley("3", 90), valley("4", 90), mountain("5", 0), valley("6", 90)}},
	up: edge{[]string{"base", "back height", "turn-over"}, []pattern.Score{valley("7", 90), valley("8", 180)}},
	cells: []cell{
		bagFront:        {"front", 3, 1, -1},
		bagLeftFront:    {"left front half", 2, 1, bagFront},
		bagLeftBack:     {"left back half", 1, 1, bagLeftFront},
		bagBack:         {"back", 0, 1, bagLeftBack},
		bagRightFront:   {"right front half", 4, 1, bagFront},
		bagRightBack:    {"right back half", 5, 1, bagRightFront},
		bagLap:          {"lap", 6, 1, bagRightBack},
		bagBase:         {"base", 0, 0, bagBack},
		bagFlap:         {"flap of the front", 3, 0, bagFront},
		bagFlap + 1:     {"flap of the left front half", 2, 0, bagLeftFront},
		bagFlap + 2:     {"flap of the left back half", 1, 0, bagLeftBack},
		bagFlap + 3:     {"flap of the right front half", 4, 0, bagRightFront},
		bagFlap + 4:     {"flap of the right back half", 5, 0, bagRightBack},
		bagTurnOver:     {"turn-over of the front", 3, 2, bagFront},
		bagTurnOver + 1: {"turn-over of the left front half", 2, 2, bagLeftFront},
		bagTurnOver + 2: {"turn-over of the left back half", 1, 2, bagLeftBack},
		bagTurnOver + 3: {"turn-over of the back", 0, 2, bagBack},
		bagTurnOver + 4: {"turn-over of the right front half", 4, 2, bagRightFront},
		bagTurnOver + 5: {"turn-over of the right back half", 5, 2, bagRightBack},
	},
}

// bagReadings are the indices of a bag's readings in its problem.
type bagReadings struct {
	across, up        []int // from the left, from the bottom
	layer, trim, flap int
}

func planGussetBag(asked *Input) (*Plan, error) {
	past := *asked
	in := &past // with the clearance that lets the contents pass the turned-over edge
	in.Fit.Min = measure.Max(in.Fit.Min, in.Caliper.Times(2))
	if err := fault.Join(in.PaperOnly("a bag"), in.checkBag()); err != nil {
		return nil, err
	}
	d, r := newDraft(in), &bagReadings{}
	need := Need{Width: 1, HalfCalipers: 2}
	back, front := d.reading("back", d.ideal(need)), d.round("front", pattern.Width, need)
	d.equal("faces", measure.Length{}, times(1, front), times(-1, back))
	left, right, base := d.gussets()
	high := in.Height.Add(in.length("headroom"))
	height := d.reading("back height", high.Add(pageMargin.Max.Over(2)))
	d.within("headroom", pageMargin, d.form(high.Neg(), times(1, height)))
	r.layer = d.between("layer at the base", in.Caliper, measure.Length{}, measure.Largest())
	d.within("layer at the base", Range{Max: in.Caliper.Times(2)}, d.form(measure.Length{}, times(1, r.layer)))
	least := in.Caliper.Times(3).Over(2)
	r.trim = d.littleOver("trim", least, least, measure.Min(least.Add(in.onRuler(16, 5)), in.Thickness.Over(4)))
	r.flap = d.fixed("base flap", "base_flap")
	r.across = []int{back, left[1], left[0], front, right[0], right[1], d.fixed("lap", "lap")}
	r.up = []int{base, height, d.fixed("turn-over", "turn_over")}
	d.wrapStrips(0, 1, r.across, r.up)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layBag(r, sizes) }
	return d.plan, nil
}

// gussets adds the front and back halves of both gussets, and the base.
func (d *draft) gussets() (left, right [2]int, base int) {
	need, none, layers := Need{Thickness: 1, HalfCalipers: 2 + d.in.lapLayers()}, measure.Length{}, Range{Max: d.in.Caliper.Times(2)}
	deep := d.ideal(need)
	outer := d.in.leftSide(deep)
	left[0], right[0] = d.reading("left front half", outer.Over(2)), d.reading("right front half", deep.Over(2))
	left[1], right[1] = d.reading("left back half", outer.Sub(outer.Over(2))), d.reading("right back half", deep.Sub(deep.Over(2)))
	d.fit(pattern.Thickness, need, times(1, right[0]), times(1, right[1]))
	base = d.reading("base", deep.Add(d.in.Caliper))
	gussets := []rounding.Term{times(1, left[0]), times(1, left[1]), times(-1, right[0]), times(-1, right[1])}
	under := []rounding.Term{times(1, base), times(-1, left[0]), times(-1, left[1])}
	if d.in.inTwo() {
		d.equal("gussets", none, gussets...)
		d.within("base", layers, d.form(none, under...))
	} else {
		d.within("left gusset", layers, d.form(none, gussets...))
		d.equal("base", none, under...)
	}
	d.even(left[0], left[1])
	d.even(right[0], right[1])
	return left, right, base
}

// checkBag refuses what leaves no room for flaps and turn-over, at any size
// that the fit allows.
func (in *Input) checkBag() error {
	if in.Fit.Max.Less(in.Fit.Min) {
		return fault.Join(fault.Fault{Code: fault.Impossible, Field: "fit", Detail: "the contents do not pass the turned-over edge with so little clearance",
			Expected: "more than " + in.describe(in.Fit.Min), Hint: "choose a looser fit or thinner stock"})
	}
	flap := in.length("base_flap")
	if least := measure.Max(in.Caliper.Times(8), measure.Millimetres(8)); in.Thickness.Less(least) {
		return fault.Join(in.Outside("thickness", Range{Min: least, Max: measure.Largest()}, "nothing is left of gussets for so thin contents",
			"choose an envelope or a sleeve for thin contents"))
	}
	half := in.Width.Over(2)
	return fault.Join(
		in.bounded("base_flap", Range{Min: in.Fit.Max.Over(2).Add(in.Caliper), Max: measure.Min(in.Thickness.Over(2), half).Sub(leastGlue)},
			"the flaps do not reach under the contents, or leave no room for one another", "choose another length"),
		in.bounded("lap", Range{Min: in.leastLap(), Max: in.Width.Sub(flap)}, "the lap leaves no room for glue, or stands on the far flap", "make it fit the back"),
		in.bounded("turn_over", Range{Min: in.Caliper.Times(2), Max: in.length("headroom").Over(2).Sub(in.Caliper.Times(3))},
			"the turn-over comes down to the contents", "make it shorter or the headroom greater"),
	)
}

// layBag lays the bag out.
func (d *draft) layBag(r *bagReadings, sizes []measure.Length) pattern.Pattern {
	in, flap, none := d.in, sizes[r.flap], measure.Length{}
	p := d.grid(&bagGrid, extents{sizes: d.sizesOf(r.across, sizes)}, extents{sizes: d.sizesOf(r.up, sizes), rounds: []measure.Length{none, none}})
	x, y := d.laid.Positions(&p.Strips[0]), d.laid.Positions(&p.Strips[1])
	foot, top := y[1].Add(sizes[r.layer]), y[2]
	for panel := bagFront; panel <= bagLap; panel++ {
		if panel != bagBack {
			raise(&p, panel, foot)
		}
	}
	lap := &p.Panels[bagLap]
	lap.Outline[2].Y, lap.Outline[3].Y = top.Sub(sizes[r.up[2]]), top.Sub(sizes[r.up[2]])
	p.Creases[bagLap-1].B.Y = lap.Outline[2].Y
	for i, column := range [...]int{3, 2, 1, 4, 5} {
		foldedFlap(&p, bagFlap+i, x[column], foot, x[column+1], foot.Sub(flap))
	}
	bagGrid.taper(&p, bagFlap, none, flap)
	p.Panels[bagFlap+1].Outline[1].X = x[3].Sub(flap)
	p.Panels[bagFlap+3].Outline[0].X = x[4].Add(flap)
	front, _ := in.layers(none)
	p.Glues = append(baseGlues(x, y[1], flap, front), pattern.Glue{Name: "lap", Panel: bagLap, Face: pattern.Outside, To: bagBack, ToFace: pattern.Inside,
		Area: pattern.Rectangle(x[6], foot, x[7], lap.Outline[2].Y)})
	d.turnOver(&p, sizes[r.trim])
	p.Seams = []pattern.Seam{
		{Name: "back's edge", PanelA: bagBack, A1: pattern.At(x[0], foot), A2: pattern.At(x[0], top),
			PanelB: bagLap, B1: pattern.At(x[6], foot), B2: pattern.At(x[6], top), Apart: in.Caliper},
		{Name: "base's edge", PanelA: bagBase, A1: pattern.At(x[0], none), A2: pattern.At(x[1], none),
			PanelB: bagFront, B1: pattern.At(x[4], foot), B2: pattern.At(x[3], foot), Apart: in.Caliper},
	}
	whole := d.around(p)
	if in.inTwo() {
		w := parting{side: bagLeftFront, face: bagBack, lap: x[7].Sub(x[6]), low: in.Caliper, high: sizes[r.up[2]], apart: x[6].Sub(x[4]).Add(in.Caliper)}
		w.part(&whole)
		lieOnSecondLap(&whole)
	}
	return whole
}

// raise moves the lower end of a wall, and of the crease that it hangs by, up.
func raise(p *pattern.Piece, wall int, to measure.Length) {
	o := p.Panels[wall].Outline
	o[0].Y, o[1].Y = to, to
	if wall > 0 {
		p.Creases[wall-1].A.Y = to
	}
	if wall == bagLeftBack { // the back hangs on it
		p.Creases[bagBack-1].A.Y = to
	}
}

// turnOver trims the parts of the turn-over at the corners of the bag and
// sticks them to the walls.
func (d *draft) turnOver(p *pattern.Piece, by measure.Length) {
	for i, ends := range [...][2]bool{{true, true}, {false, true}, {true, false}, {true, true}, {true, false}, {false, true}} {
		o, c := p.Panels[bagTurnOver+i].Outline, &p.Creases[bagTurnOver+i-1]
		if ends[0] {
			c.A.X = c.A.X.Add(by)
		}
		if ends[1] {
			c.B.X = c.B.X.Sub(by)
		}
		pattern.FillRectangle(o, c.A.X, c.A.Y, c.B.X, p.Height)
		p.Glues = append(p.Glues, pattern.Glue{Name: p.Panels[bagTurnOver+i].Name, Panel: bagTurnOver + i, To: c.From,
			Area: pattern.Rectangle(c.A.X, c.A.Y.Add(d.in.Caliper), c.B.X, p.Height)})
	}
}

// baseGlues sticks the base onto the flaps. The base's lower edge comes to lie
// under the front, its right side under the left gusset, which begins a layer
// behind the front.
func baseGlues(x []measure.Length, base, flap, layer measure.Length) []pattern.Glue {
	none := measure.Length{}
	area := func(name string, to int, x0, y0, x1, y1 measure.Length) pattern.Glue {
		return pattern.Glue{Name: name, Panel: bagBase, To: to, ToFace: pattern.Outside, Area: pattern.Rectangle(x0, y0, x1, y1)}
	}
	left, right := x[3].Sub(x[2]).Add(layer), x[5].Sub(x[4]) // where the gussets' scores come to lie
	return []pattern.Glue{
		area("front edge of the base", bagFlap, flap, none, x[1].Sub(flap), flap),
		area("left front corner of the base", bagFlap+1, x[1].Sub(flap), flap.Add(layer), x[1], left),
		area("left back corner of the base", bagFlap+2, x[1].Sub(flap), left, x[1], base),
		area("right front corner of the base", bagFlap+3, none, flap, flap, right),
		area("right back corner of the base", bagFlap+4, none, right, flap, x[6].Sub(x[4])),
	}
}
