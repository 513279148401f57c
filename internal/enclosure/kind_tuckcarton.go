package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// TuckCarton is a folding carton: four panels and a glue lap, dust flaps on the
// sides and a lid with a tuck flap at each end. Both lids hang on the back
// (straight), or the top one on the back and the bottom one on the front
// (reverse).
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance, all lengths from crease to crease, and a the allowance, the
// least ruler mark that is not under one caliper:
//
//	front = back = W + t + c_w
//	right side   = T + t + a + c_t, one more a if a tuck flap lies on both faces
//	left side    = right side + t, since the back goes over the glue lap;
//	               in two pieces, with two laps, both are as the right side + t
//	lid          = the side that it spans - a, so that its tuck flap goes inside
//	body height  = H + t + 2a + c_h, the dust flaps' scores lying a inside it
//
// A carton is measured from centre to centre of its scores (FEFCO/ESBO code);
// inside is one caliper less and outside one caliper more. The contents stand
// behind the tuck flaps and between the dust flaps.
func TuckCarton() *Kind {
	return &Kind{
		Name:  "tuck-carton",
		Title: "Tuck-end carton",
		Help:  "Four panels and a glue lap; each end closes with two dust flaps and a lid whose flap tucks in.",
		Words: german("Faltschachtel mit Einstecklaschen",
			"Vier Wände und eine Klebelasche. Jedes Ende schließt mit zwei Staubklappen und einem Deckel, dessen Lasche eingesteckt wird."),
		Needs: []string{"width", "height", "thickness"},
		Box:   true,
		Params: []Param{
			{Name: "style", Type: ChoiceParam, Choices: []string{"straight", "reverse"},
				Help: "Straight: both lids hang on the back; reverse: the bottom one hangs on the front."},
			lengthParam("tuck", 5, 300, "How far each tuck flap goes in, at most 1.2 times as far as its lid is long; shorter than the default "+
				"if the lid asks for that.").usually(32, 15),
			lengthParam("lap", 3, 300, "How wide the glue lap is.").usually(32, 15),
			lengthParam("dust_flap", 3, 300, "How long each dust flap is; shorter than the default if there is no room for that.").usually(32, 15),
			lengthParam("taper", 0, 300, "How far the sides of a tuck flap run in towards its free edge.").usually(32, 10).seldom(),
			lengthParam("friction_slit", 1, 100, "How long the slits at both ends of a tuck flap's score are, whose corners then catch on the "+
				"dust flaps; none if not given.").seldom(),
			wrapJoin,
		},
		Plan: planTuckCarton,
	}
}

// cartonGrid is the shape of a carton whose bottom lid hangs as said.
func cartonGrid(bottomColumn, bottomOn int) grid {
	return grid{
		piece: "carton",
		across: edge{[]string{"back", "left side", "front", "right side", "lap"},
			[]pattern.Score{valley("1", 90), valley("2", 90), valley("3", 90), valley("4", 90)}},
		up: edge{[]string{"bottom tuck", "bottom lid", "body height", "top lid", "top tuck"},
			[]pattern.Score{valley("5", 90), valley("6", 90), valley("7", 90), valley("8", 90)}},
		cells: []cell{
			cartonFront:      {"front", 2, 2, -1},
			cartonLeft:       {"left side", 1, 2, cartonFront},
			cartonRight:      {"right side", 3, 2, cartonFront},
			cartonBack:       {"back", 0, 2, cartonLeft},
			cartonLap:        {"lap", 4, 2, cartonRight},
			cartonTopLid:     {"top lid", 0, 3, cartonBack},
			cartonTopTuck:    {"top tuck", 0, 4, cartonTopLid},
			cartonBottomLid:  {"bottom lid", bottomColumn, 1, bottomOn},
			cartonBottomTuck: {"bottom tuck", bottomColumn, 0, cartonBottomLid},
			cartonDust:       {"upper left dust flap", 1, 3, cartonLeft},
			cartonDust + 1:   {"upper right dust flap", 3, 3, cartonRight},
			cartonDust + 2:   {"lower left dust flap", 1, 1, cartonLeft},
			cartonDust + 3:   {"lower right dust flap", 3, 1, cartonRight},
		},
	}
}

// The panels of a carton. The dust flaps are the last four.
const (
	cartonFront = iota
	cartonLeft
	cartonRight
	cartonBack
	cartonLap
	cartonTopLid
	cartonTopTuck
	cartonBottomLid
	cartonBottomTuck
	cartonDust
)

var straightCarton, reverseCarton = cartonGrid(0, cartonBack), cartonGrid(2, cartonFront)

// cartonReadings are the indices of a carton's readings in its problem.
type cartonReadings struct {
	across, up             []int // from the left, from the bottom
	allowance, dust, taper int
	slit                   int // -1 without friction slits
}

// thinnestCarton is the least thickness that reaches from the tuck flaps to the
// dust flaps, which begin one more allowance behind them.
var thinnestCarton = measure.Millimetres(2)

func planTuckCarton(in *Input) (*Plan, error) {
	d, r := newDraft(in), &cartonReadings{slit: -1}
	reverse, shape := in.choice("style") == "reverse", &straightCarton
	if reverse {
		shape = &reverseCarton
	}
	r.allowance = d.allowance()
	d.plan.Allowances = append(d.plan.Allowances, r.allowance)
	allowance := &d.plan.Problem.Readings[r.allowance]
	allowance.Max = measure.Min(allowance.Max, in.Thickness)
	d.cartonBody(r, reverse)
	r.dust, r.taper = d.option("dust flap", "dust_flap", in.dustRoom()), d.fixed("taper", "taper")
	if in.given("friction_slit") {
		r.slit = d.fixed("friction slit", "friction_slit")
	}
	d.wrapStrips(0, 1, r.across, r.up)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layCarton(shape, r, sizes) }
	return d.plan, in.checkCarton(reverse, in.Allowance().Max)
}

// cartonBody adds the readings along the edges of the blank, with their
// closures and fits.
func (d *draft) cartonBody(r *cartonReadings, reverse bool) {
	in, a := d.in, d.in.Caliper // the ideal allowance
	need := Need{Width: 1, HalfCalipers: 2}
	back, front := d.reading("back", d.ideal(need)), d.round("front", pattern.Width, need)
	d.equal("faces", measure.Length{}, times(1, front), times(-1, back))

	need = Need{Height: 1, HalfCalipers: 2}
	body := d.reading("body height", measure.Sum(need.Of(in), a.Times(2), in.middle()))
	d.fit(pattern.Height, need, times(1, body), times(-2, r.allowance))

	need = Need{Thickness: 1, HalfCalipers: 2 + in.lapLayers()}
	tucks, bottomSide := int64(1), 0
	if reverse {
		tucks = 2
	}
	side := measure.Sum(need.Of(in), a.Times(tucks), in.middle())
	left, right := d.reading("left side", in.leftSide(side)), d.reading("right side", side)
	d.fit(pattern.Thickness, need, times(1, right), times(-tucks, r.allowance))
	d.wrapSides(left, right)
	if bottomSide = left; reverse {
		bottomSide = right
	}
	top, bottom := d.lid("top lid", left, r.allowance), d.lid("bottom lid", bottomSide, r.allowance)
	r.across = []int{back, left, front, right, d.fixed("lap", "lap")}
	room := in.tuckRoom(reverse)
	low, high := d.option("bottom tuck", "tuck", room), d.option("top tuck", "tuck", room)
	if !d.plan.Problem.Readings[low].Fixed {
		d.equal("tucks", measure.Length{}, times(1, low), times(-1, high))
	}
	r.up = []int{low, bottom, body, top, high}
}

// lid adds the reading of a lid that spans a side, but for the allowance.
func (d *draft) lid(name string, side, allowance int) int {
	ideal := d.plan.Problem.Readings[side].Ideal.Sub(d.in.Caliper)
	lid := d.reading(name, ideal)
	d.equal(name, measure.Length{}, times(1, lid), times(1, allowance), times(-1, side))
	return lid
}

// tuckRoom is how long tuck flaps may be at any size that the fit allows: they
// come down to the contents, do not meet, and are at most 1.2 times as long as their
// lid, beyond which they do not go in (common practice: 1.1 to 1.3).
func (in *Input) tuckRoom(reverse bool) Range {
	high, lid := in.Height.Add(in.Fit.Min), measure.Sum(in.Thickness, in.Caliper, in.Fit.Min)
	if !reverse {
		high = high.Over(2) // the two tuck flaps lie in one plane
	}
	return Range{Min: measure.Sum(in.Allowance().Max, in.Caliper, in.Fit.Max.Over(2)), Max: measure.Min(high, lid.Times(6).Over(5))}
}

// dustRoom is how long dust flaps may be at any size that the fit allows, beside
// the shortest tuck flaps.
func (in *Input) dustRoom() Range {
	tuck := in.tuckRoom(true)
	if in.given("tuck") {
		tuck.Min = in.length("tuck")
	}
	return Range{Min: in.Fit.Max.Over(2).Add(in.Caliper), Max: measure.Min(in.Width.Add(in.Fit.Min).Over(2), measure.Sum(in.Thickness, in.Fit.Min, tuck.Min))}
}

// unless refuses an option that is given or has no room at all.
func (in *Input) unless(field string, room Range, detail, hint string) error {
	if !in.given(field) && !room.Max.Less(room.Min) {
		return nil
	}
	return in.bounded(field, room, detail, hint)
}

// checkCarton refuses flaps that get in one another's way, at any size that the
// fit allows.
func (in *Input) checkCarton(reverse bool, allowance measure.Length) error {
	half := in.Width.Add(in.Fit.Min).Over(2)
	tip := half.Sub(allowance).Sub(in.Beside()).Sub(in.Caliper)
	errs := []error{
		in.unless("tuck", in.tuckRoom(reverse),
			"the tuck flaps do not come down to the contents, or are longer than goes in over their lid", "choose another tuck or a closer fit"),
		in.bounded("lap", Range{Min: in.leastLap(), Max: half}, "the lap leaves no room for glue, or reaches under the far dust flaps", "make it fit half of the back"),
		in.unless("dust_flap", in.dustRoom(),
			"the dust flaps do not reach over the contents, would lie on one another or stand out of the blank", "choose another length"),
		in.bounded("taper", Range{Max: tip}, "nothing is left of the tuck flaps' free edges", "make the taper smaller"),
	}
	if in.given("friction_slit") {
		errs = append(errs, in.noSlit("friction_slit", "leave it out: board holds its tuck by itself"), in.bounded("friction_slit", Range{Max: tip}, "the friction slits leave nothing of the tuck flaps' scores", "make them shorter"))
	}
	if least := measure.Max(thinnestCarton, in.Caliper); in.Thickness.Less(least) {
		errs = append(errs, in.Outside("thickness", Range{Min: least, Max: measure.Largest()}, "so thin contents would stand in front of the dust flaps",
			"choose an envelope or a sleeve for thin contents"))
	}
	return fault.Join(errs...)
}
