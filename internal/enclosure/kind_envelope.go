package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Envelope is a cross cut from a rectangle: the side flaps fold in over the
// contents, the bottom panel folds up over them and is glued to them, and the
// closing flap folds down over it. Each goes round one caliper more than the
// one before.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance, all lengths from crease to crease; a fold of 180 degrees
// round a thickness R takes R + t of the sheet, half on each side of its score,
// and the inner faces of two such folds lie half a caliper further in each:
//
//	side flaps round T, bottom panel round T + t, closing flap round T + 2t
//	back width  = W + T + 2t + c_w
//	back height = H + T + 3 1/2 t + c_h
//	bottom panel + closing flap = back height + overlap
//
// The relief cuts run from the corners of the back to the far edges of the
// flaps. Those of the side flaps begin inside the corners, clear of the folds of
// the panels that go over them: T/2 + 2t or the next mark.
func Envelope() *Kind {
	return &Kind{
		Name:  "envelope",
		Title: "Envelope from a straight-scored blank",
		Help:  "A cross-shaped blank: side flaps in, the bottom panel up and glued to them, the closing flap down.",
		Words: german("Umschlag aus gerade gerilltem Zuschnitt",
			"Ein kreuzförmiger Zuschnitt: Die Seitenklappen kommen nach innen, die untere Klappe darüber und wird auf sie geklebt, die Verschlussklappe schließt das Ganze."),
		Needs:  []string{"width", "height"},
		Sealed: true,
		Params: []Param{
			{Name: "flap", Type: ChoiceParam, Choices: []string{"square", "angled", "pointed"}, Help: "Shape of the closing flap."},
			lengthParam("closing_flap", 5, 1000, "How far the closing flap comes down, measured in its middle.").usually(96, 40),
			sideFlap,
			lengthParam("overlap", 3, 300, "How far the closing flap reaches over the bottom panel, where the gum is.").usually(32, 15),
			lengthParam("bottom_panel", 5, 1000, "How far up the bottom panel comes; as far as the overlap asks for if not given.").seldom(),
			cornerRelief,
			lengthParam("flap_inset", 1, 500, "How far in the far corners of an angled closing flap lie, each.").usually(64, 25).seldom(),
		},
		Plan: planEnvelope,
	}
}

var envelopeGrid = grid{
	piece:  "envelope",
	across: edge{[]string{"left flap", "back width", "right flap"}, []pattern.Score{valley("1", 180), valley("2", 180)}},
	up:     edge{[]string{"bottom panel", "back height", "closing flap"}, []pattern.Score{valley("3", 180), valley("4", 180)}},
	cells: []cell{
		{"back", 1, 1, -1}, {"left flap", 0, 1, 0}, {"right flap", 2, 1, 0}, {"bottom panel", 1, 0, 0}, {"closing flap", 1, 2, 0},
	},
}

// envelopeReadings are the indices of an envelope's readings in its problem.
type envelopeReadings struct {
	across, up    []int // from the left, from the bottom
	relief, inset int   // inset is -1 for flaps that are not angled
	near          int   // of the reliefs at the side flaps' scores, clear of the folds beside them
	overlap       int   // -1 if the bottom panel is given
	point         int   // what lies left of the point of a pointed flap
}

func planEnvelope(in *Input) (*Plan, error) {
	d, r := newDraft(in), &envelopeReadings{inset: -1, overlap: -1}
	width := Need{Width: 1, Thickness: 1, HalfCalipers: 4}
	height := Need{Height: 1, Thickness: 1, HalfCalipers: 7}
	left, right := d.fixed("left flap", "side_flap"), d.fixed("right flap", "side_flap")
	backWidth := d.reading("back width", d.ideal(width))
	backHeight := d.reading("back height", d.ideal(height))
	closing := d.fixed("closing flap", "closing_flap")
	bottom := d.bottomPanel(r, backHeight, closing, width.span(in).Max)
	r.relief = d.fixed("relief", "relief")
	r.near = d.pastFold("relief at the side flaps' scores", in.Thickness.Add(in.Caliper.Times(2)))
	if in.choice("flap") == "angled" {
		r.inset = d.fixed("flap inset", "flap_inset")
	}
	if in.choice("flap") == "pointed" {
		r.point, _ = d.parted("of the point", backWidth, "left of the point", "right of the point")
	}
	r.across, r.up = []int{left, backWidth, right}, []int{bottom, backHeight, closing}
	d.fit(pattern.Width, width, times(1, backWidth))
	d.fit(pattern.Height, height, times(1, backHeight))
	d.strips(0, r.across, r.up)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layEnvelope(r, sizes) }
	return d.plan, fault.Join(in.PaperOnly("an envelope"), in.flat(d), in.checkEnvelope(width.span(in), height.span(in)))
}

// checkEnvelope refuses flaps that do not meet or get in one another's way, at
// any size of the back that the fit allows.
func (in *Input) checkEnvelope(w, h Range) error {
	none := measure.Length{}
	cut, closing, overlap := in.length("relief"), in.length("closing_flap"), measure.Max(in.length("overlap"), in.overlapRoom(w.Max).Min)
	glued := cut.Add(leastGlue)
	throat := in.Thickness.Add(in.Caliper.Times(2)) // what the closing flap's fold takes of the back
	reliefs := Range{Min: in.clearOfFold(in.Thickness.Add(in.Caliper.Times(2))), Max: measure.Min(w.Min, h.Min).Sub(leastGlue).Over(2)}
	if inset := in.slant(w.Max); inset.Sign() > 0 { // deeper ones reach beyond where the flap meets the side flaps
		reliefs.Max = measure.Min(reliefs.Max, in.meets(inset))
	}
	errs := []error{
		in.bounded("relief", reliefs, "the relief cuts do not clear the folds, or leave nothing of the flaps or holes", "choose another relief or wider side flaps"),
		in.bounded("side_flap", Range{Min: glued, Max: w.Min.Over(2)},
			"the side flaps leave no room for glue beside the relief cuts, or lie on one another", "make the side flaps fit the back"),
	}
	if in.given("overlap") && in.choice("flap") != "square" {
		errs = append(errs, in.bounded("overlap", in.overlapRoom(w.Max), "the closing flap leaves holes beside it, or does not meet the bottom panel",
			"make the side flaps or the overlap larger, or choose another flap"))
	}
	if in.given("bottom_panel") {
		errs = append(errs, in.bounded("closing_flap", Range{Min: none, Max: h.Min}, "the closing flap is longer than the back", "make it shorter"),
			in.bounded("bottom_panel", Range{Min: measure.Max(glued, h.Max.Add(overlap).Sub(closing)), Max: h.Min.Sub(throat)},
				"the flaps do not meet with that overlap, or the bottom panel comes out at the top", "leave it out to get it from the overlap"))
	} else {
		errs = append(errs, in.bounded("closing_flap", Range{Min: overlap.Add(throat), Max: h.Min.Sub(measure.Max(none, glued.Sub(overlap)))},
			"the closing flap does not meet the bottom panel with that overlap, or leaves no room for it", "choose another closing flap or overlap"))
	}
	if in.choice("flap") == "angled" {
		errs = append(errs, in.bounded("flap_inset", Range{Min: none, Max: w.Min.Over(2)}, "the sides of the closing flap would cross", "choose flap=pointed for a point"))
	}
	return fault.Join(errs...)
}

// overlapRoom is how far a closing flap may reach over the bottom panel of a back
// of a width: as far as asked for, and where its sides slant so far that they meet
// the side flaps' where the bottom panel ends.
func (in *Input) overlapRoom(backWidth measure.Length) Range {
	closing, inset := in.length("closing_flap"), in.slant(backWidth)
	if inset.IsZero() {
		return Range{Min: in.length("overlap"), Max: measure.Largest()}
	}
	return Range{Min: measure.Max(in.param("overlap").Least, closing.Sub(in.meets(inset))), Max: closing.Sub(in.Thickness).Sub(in.Caliper.Times(2))}
}

// slant is how far each side of the closing flap runs in towards its free edge.
func (in *Input) slant(backWidth measure.Length) measure.Length {
	switch in.choice("flap") {
	case "pointed":
		return backWidth.Over(2)
	case "angled":
		return in.length("flap_inset")
	}
	return measure.Length{}
}

// meets is how far down the sides of a closing flap meet the edges of the side
// flaps, at most at its free edge.
func (in *Input) meets(inset measure.Length) measure.Length {
	return scaled(in.length("closing_flap"), min(1, ratio(in.length("side_flap"), inset)))
}

// bottomPanel adds the bottom panel's reading: as given, or so that the
// closing flap reaches over it by the overlap.
func (d *draft) bottomPanel(r *envelopeReadings, backHeight, closing int, backWidth measure.Length) int {
	if d.in.given("bottom_panel") {
		return d.fixed("bottom panel", "bottom_panel")
	}
	if room := d.in.overlapRoom(backWidth); d.in.given("overlap") || !d.in.length("overlap").Less(room.Min) {
		r.overlap = d.fixed("overlap", "overlap")
	} else {
		r.overlap = d.atLeast("overlap", room.Min)
	}
	back := d.plan.Problem.Readings[backHeight].Ideal
	bottom := d.reading("bottom panel", back.Add(d.plan.Problem.Readings[r.overlap].Ideal).Sub(d.in.length("closing_flap")))
	d.equal("flaps", measure.Length{}, times(1, bottom), times(1, closing), times(-1, backHeight), times(-1, r.overlap))
	return bottom
}

// layEnvelope lays the cross out, shapes its flaps and glues the bottom panel
// to the side flaps.
func (d *draft) layEnvelope(r *envelopeReadings, sizes []measure.Length) pattern.Pattern {
	in, cut := d.in, sizes[r.relief]
	side, bottom := in.Thickness, in.Thickness.Add(in.Caliper)
	p := d.grid(&envelopeGrid,
		extents{d.sizesOf(r.across, sizes), []measure.Length{side, side}},
		extents{d.sizesOf(r.up, sizes), []measure.Length{bottom, bottom.Add(in.Caliper)}})
	envelopeGrid.taper(&p, 1, sizes[r.near], cut)
	envelopeGrid.taper(&p, 2, sizes[r.near], cut)
	envelopeGrid.taper(&p, 3, measure.Length{}, cut)
	switch closing := &p.Panels[4]; {
	case r.inset >= 0:
		envelopeGrid.taper(&p, 4, measure.Length{}, sizes[r.inset])
	case in.choice("flap") == "pointed":
		o := closing.Outline
		closing.Outline = pattern.Polygon(o[0].Point, o[1].Point, pattern.At(o[0].X.Add(sizes[r.point]), p.Height))
	}
	p.Cuts = d.envelopeCorners(&p)
	if r.overlap >= 0 {
		p.Seams = closingSeam(&p, sizes[r.overlap], in.Caliper)
	}
	flap, panel, back := sizes[r.across[0]], sizes[r.up[0]], sizes[r.up[1]]
	x := measure.Max(cut, in.spine(side).Over(2))
	low, high := panel.Sub(measure.Min(panel, back.Sub(cut))), panel.Sub(measure.Max(cut, in.spine(bottom).Over(2)))
	p.Glues = []pattern.Glue{
		{Name: "left edge", Panel: 3, To: 1, ToFace: pattern.Outside, Area: pattern.Rectangle(flap.Add(x), low, flap.Times(2), high)},
		{Name: "right edge", Panel: 3, To: 2, ToFace: pattern.Outside, Area: pattern.Rectangle(p.Width.Sub(flap.Times(2)), low, p.Width.Sub(flap).Sub(x), high)},
	}
	whole := d.around(p)
	whole.Cavity.Covered = []pattern.Axis{pattern.Thickness}
	return whole
}

// closingSeam says where the edge of the closing flap, or its point, comes to
// lie: the overlap below the edge of the bottom panel.
func closingSeam(p *pattern.Piece, overlap, apart measure.Length) []pattern.Seam {
	o := p.Panels[4].Outline
	a1, a2 := o[len(o)-1].Point, o[2].Point
	return []pattern.Seam{{Name: "overlap", PanelA: 4, A1: a1, A2: a2,
		PanelB: 3, B1: pattern.At(a1.X, overlap), B2: pattern.At(a2.X, overlap), Apart: apart}}
}

// envelopeCorners lists what is cut away at the four corners.
func (d *draft) envelopeCorners(p *pattern.Piece) []pattern.Cut {
	left, right, bottom, closing := p.Panels[1].Outline, p.Panels[2].Outline, p.Panels[3].Outline, p.Panels[4].Outline
	last := len(closing) - 1
	return []pattern.Cut{
		d.relief("lower left corner", "left", left[0].Point, left[1].Point, bottom[3].Point, bottom[0].Point),
		d.relief("lower right corner", "right", right[1].Point, right[0].Point, bottom[2].Point, bottom[1].Point),
		d.relief("upper left corner", "left", left[3].Point, left[2].Point, closing[0].Point, closing[last].Point),
		d.relief("upper right corner", "right", right[2].Point, right[3].Point, closing[1].Point, closing[2].Point),
	}
}
