package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Slipcase is a case of five sides, open on the sixth, in one piece: back, end
// wall and front follow one another, and the walls above and below hang on the
// back. Each of these ends in a lap that is glued inside the front, so that
// the end wall goes round one caliper more.
//
// With D the contents' size into the case, S the one between its walls and T
// their thickness, t the caliper, c the clearance, all lengths from crease to
// crease or to the open edge; D is the width and S the height, or for a case
// that opens at the top the other way round:
//
//	height = S + t + c_s
//	walls above and below = T + t + c_t, between the back and the laps
//	end wall = these walls + t, within a caliper
//	back = front = D - reveal + t/2 and up to 1/8 in more
//
// A book stands in its case with the spine at the open side.
// The laps are cut back at both ends, so that they clear the end wall.
func Slipcase() *Kind {
	return &Kind{
		Name:  "slipcase",
		Title: "Slipcase",
		Help:  "A case of five sides in one piece, open on the sixth, for a booklet or a set of cards.",
		Words: german("Schuber",
			"Ein Kasten mit fünf Seiten für ein Heft oder einen Kartensatz, an einer Seite offen."),
		Needs: []string{"width", "height", "thickness"},
		Params: append([]Param{
			{Name: "open", Type: ChoiceParam, Choices: []string{"side", "top"},
				Help: "Which way the contents slide in: along their width or along their height."},
			lengthParam("lap", 3, 300, "How wide the laps are that are glued inside the front.").usually(32, 15),
			showing,
		}, notchParams...),
		Plan: planSlipcase,
	}
}

var slipcaseGrid = grid{
	piece:  "slipcase",
	across: edge{[]string{"back", "end wall", "front"}, []pattern.Score{valley("1", 90), valley("2", 90)}},
	up: edge{[]string{"bottom lap", "bottom wall", "case height", "top wall", "top lap"},
		[]pattern.Score{valley("3", 90), valley("4", 90), valley("5", 90), valley("6", 90)}},
	cells: []cell{
		{"back", 0, 2, -1}, {"end wall", 1, 2, 0}, {"front", 2, 2, 1},
		{"bottom wall", 0, 1, 0}, {"top wall", 0, 3, 0}, {"bottom lap", 0, 0, 3}, {"top lap", 0, 4, 4},
	},
}

// slipcaseReadings are the indices of a slipcase's readings in its problem.
type slipcaseReadings struct {
	across, up []int // from the left, from the bottom
	inset      int   // of the ends of the laps: a caliper at the least, and at most a quarter of the face
	notch      thumb
}

func planSlipcase(in *Input) (*Plan, error) {
	d, r := newDraft(in), &slipcaseReadings{}
	deep, into, axis, across := in.Width, "width", pattern.Height, Need{Height: 1, HalfCalipers: 2}
	if in.choice("open") == "top" {
		deep, into, axis, across = in.Height, "height", pattern.Width, Need{Width: 1, HalfCalipers: 2}
	}
	deep = deep.Sub(in.length("reveal"))
	least := deep.Add(in.Caliper.Over(2)) // of the back
	back := d.reading("back", least.Add(in.Little().Over(2)))
	front := d.reading("front", least.Add(in.Little().Over(2)))
	height := d.round("case height", axis, across)
	d.equal("faces", measure.Length{}, times(1, front), times(-1, back))
	d.within("depth", Range{Max: in.Little()}, d.form(least.Neg(), times(1, back)))
	end, bottom, top := d.caseWalls()
	r.across = []int{back, end, front}
	r.up = []int{d.fixed("bottom lap", "lap"), bottom, height, top, d.fixed("top lap", "lap")}
	t := in.Caliper
	r.inset = d.anyOf("inset of the laps", Range{Min: t, Max: measure.Max(t.Times(2), measure.Min(t.Add(in.onRuler(32, 10)), deep.Over(4)))})
	d.strips(0, r.across, r.up)
	var wrong error
	beside := measure.Max(in.Beside(), in.length("lap"))
	r.notch, wrong = d.notched(height, beside, beside, deep)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.laySlipcase(r, sizes) }
	return d.plan, fault.Join(in.checkSlipcase(into, across.Of(in).Sub(in.Caliper)), wrong)
}

// caseWalls adds the readings of the three walls and the fit between the back
// and the laps.
func (d *draft) caseWalls() (end, bottom, top int) {
	depth := Need{Thickness: 1, HalfCalipers: 2}
	bottom, top = d.reading("bottom wall", d.ideal(depth)), d.round("top wall", pattern.Thickness, depth)
	end = d.reading("end wall", d.ideal(depth).Add(d.in.Caliper))
	d.equal("walls", measure.Length{}, times(1, bottom), times(-1, top))
	d.layer("end wall", end, top)
	if d.in.Thickness.Less(thinnest) {
		d.warn("narrow-walls", "The contents are so thin that the walls are hard to fold: a pocket or an envelope suits them better.")
	}
	return end, bottom, top
}

// checkSlipcase refuses a case that is not there, and laps that have no room or
// leave none for glue and for the contents' play; into is the size of the contents
// that goes in, between the one between the walls.
func (in *Input) checkSlipcase(into string, between measure.Length) error {
	least := measure.Max(in.Beside(), in.Caliper.Times(8)).Add(leastGlue.Times(2))
	loose := in.Fit.Max.Add(in.Caliper).Over(2)
	return fault.Join(
		in.covers(into, least, "nothing is left of the case"),
		in.bounded("lap", Range{Min: loose.Add(leastGlue), Max: between.Over(2)}, "the laps leave no room for glue, or lie on one another", "make them fit the front"),
	)
}

// laySlipcase lays the case out, cuts its laps back, glues them inside the
// front and bites the notch out.
func (d *draft) laySlipcase(r *slipcaseReadings, sizes []measure.Length) pattern.Pattern {
	in, inset := d.in, sizes[r.inset]
	p := d.grid(&slipcaseGrid, extents{sizes: d.sizesOf(r.across, sizes)}, extents{sizes: d.sizesOf(r.up, sizes)})
	for _, wall := range [...]int{3, 4} { // clear of the end wall
		o, c := p.Panels[wall].Outline, &p.Creases[wall-1]
		c.B.X = c.B.X.Sub(in.trim())
		o[1].X, o[2].X = c.B.X, c.B.X
	}
	slipcaseGrid.taper(&p, 5, inset, inset)
	slipcaseGrid.taper(&p, 6, inset, inset)
	x, y := d.laid.Positions(&p.Strips[0]), d.laid.Positions(&p.Strips[1])
	p.Glues = make([]pattern.Glue, 2)
	p.Seams = make([]pattern.Seam, 2)
	for i, far := range [...]measure.Length{y[1], y[4]} { // below and above
		lap := &p.Panels[5+i]
		p.Glues[i] = pattern.Glue{Name: lap.Name, Panel: 5 + i, Face: pattern.Outside, To: 2, ToFace: pattern.Inside, Area: lap.Outline}
		edge := y[2+i]
		p.Seams[i] = pattern.Seam{Name: [...]string{"lower edge", "upper edge"}[i], Apart: in.Caliper,
			PanelA: 2, A1: pattern.At(x[3], edge), A2: pattern.At(x[2], edge),
			PanelB: 3 + i, B1: pattern.At(x[0], far), B2: pattern.At(x[1], far)}
	}
	p.Cuts = d.slipcaseCorners(x, y, inset, in.trim())
	if r.notch.radius >= 0 {
		at, radius := y[2].Add(sizes[r.notch.before]), sizes[r.notch.radius]
		bite(&p, 2, rightEdge, "notch of the front", at, radius)
		if in.choice("notch_faces") == "both" {
			bite(&p, 0, leftEdge, "notch of the back", at, radius)
		}
	}
	whole := d.around(p)
	if in.choice("open") == "top" {
		whole.Cavity.Turned = 90
	}
	return whole
}

// slipcaseCorners lists what is cut away at the four corners.
func (d *draft) slipcaseCorners(x, y []measure.Length, inset, trim measure.Length) []pattern.Cut {
	left, right, end := x[0].Add(inset), x[1].Sub(inset), x[1].Sub(trim)
	return []pattern.Cut{
		d.relief("lower left corner", "left", pattern.At(x[0], y[1]), pattern.At(left, y[1]), pattern.At(left, y[0])),
		d.relief("lower right corner", "right", pattern.At(x[3], y[2]), pattern.At(x[1], y[2]), pattern.At(end, y[2]), pattern.At(end, y[1]), pattern.At(right, y[1]), pattern.At(right, y[0])),
		d.relief("upper left corner", "left", pattern.At(x[0], y[4]), pattern.At(left, y[4]), pattern.At(left, y[5])),
		d.relief("upper right corner", "right", pattern.At(x[3], y[3]), pattern.At(x[1], y[3]), pattern.At(end, y[3]), pattern.At(end, y[4]), pattern.At(right, y[4]), pattern.At(right, y[5])),
	}
}
