package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Pocket is a page with a pocket that folds up from its lower edge. The
// pocket's side flaps fold in behind it and are glued to the page, so that the
// contents stand between the pocket and its flaps. A gusset, two scores instead
// of one at the bottom and at each side, makes room for thick contents.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance, all lengths from crease to crease; a fold of 180 degrees round
// R takes R + t of the sheet, half on each side of its score:
//
//	no gusset:  side folds round T, bottom fold round T + t (a flap lies in it)
//	            pocket width = W + T + 2t + c_w
//	            page height  = H + T/2 + 1 1/2 t and more, from the bottom score
//	gusset:     pocket width  = W + t + c_w
//	            side gussets  = T + t + c_t
//	            bottom gusset = side gusset + t, within a caliper
//	            page height   = H + t/2 and more, from the score of the gusset
//
// The relief cuts run from the corners of the pocket to the free edges of the
// flaps: at the flaps' scores they begin clear of the bottom fold, T/2 + 1 1/2 t or
// the next mark in; with a gusset they have come about half of the way there.
func Pocket() *Kind {
	return &Kind{
		Name:  "pocket",
		Title: "Page with a pocket",
		Help:  "A card or page whose lower end folds up into a pocket, its side flaps glued behind it; with a gusset for thick contents.",
		Words: german("Blatt mit Tasche",
			"Eine Karte oder ein Blatt, dessen unteres Ende sich zur Tasche hochklappt, die Seitenklappen dahinter verklebt; mit Balgfalten für dicken Inhalt."),
		Needs: []string{"width", "height"},
		Params: []Param{
			lengthParam("pocket_height", 10, 1000, "How high the pocket is.").usually(192, 75),
			lengthParam("page_height", 10, 2000, "How high the page is; up to 1/2 in more than the contents and the pocket if not given."),
			sideFlap,
			{Name: "gusset", Type: ChoiceParam, Choices: []string{"auto", "no", "yes"},
				Help: "Two scores at the bottom and the sides; auto makes them for contents over 1/8 in (3 mm)."},
			cornerRelief,
		},
		Plan: planPocket,
	}
}

var pocketFlat = grid{
	piece:  "page",
	across: edge{[]string{"left flap", "pocket width", "right flap"}, []pattern.Score{valley("1", 180), valley("2", 180)}},
	up:     edge{[]string{"pocket height", "page height"}, []pattern.Score{valley("3", 180)}},
	cells:  []cell{{"page", 1, 1, -1}, {"pocket", 1, 0, 0}, {"left flap", 0, 0, 1}, {"right flap", 2, 0, 1}},
}

var pocketDeep = grid{
	piece: "page",
	across: edge{[]string{"left flap", "left gusset", "pocket width", "right gusset", "right flap"},
		[]pattern.Score{valley("1", 90), valley("2", 90), valley("3", 90), valley("4", 90)}},
	up: edge{[]string{"pocket height", "bottom gusset", "page height"}, []pattern.Score{valley("5", 90), valley("6", 90)}},
	cells: []cell{
		{"page", 2, 2, -1}, {"bottom gusset", 2, 1, 0}, {"pocket", 2, 0, 1},
		{"left gusset", 1, 0, 2}, {"right gusset", 3, 0, 2}, {"left flap", 0, 0, 3}, {"right flap", 4, 0, 4},
	},
}

// pocketReadings are the indices of a pocket's readings in its problem.
type pocketReadings struct {
	across, up []int // from the left, from the bottom
	relief     int
	near       int // of the relief at the flaps' scores
}

func planPocket(in *Input) (*Plan, error) {
	d, r := newDraft(in), &pocketReadings{}
	height, left, right := d.fixed("pocket height", "pocket_height"), d.fixed("left flap", "side_flap"), d.fixed("right flap", "side_flap")
	r.relief = d.fixed("relief", "relief")
	gusset := in.choice("gusset") == "yes" || in.choice("gusset") == "auto" && oneCapacity.Less(in.Thickness)
	var err error
	if gusset {
		cut := in.length("relief")
		r.near = d.anyOf("relief at the gussets", Range{Min: cut.Over(4), Max: cut.Times(3).Over(4)})
		face, depth := Need{Width: 1, HalfCalipers: 2}, Need{Thickness: 1, HalfCalipers: 2}
		width, leftSide := d.round("pocket width", pattern.Width, face), d.round("left gusset", pattern.Thickness, depth)
		rightSide, bottom := d.reading("right gusset", d.ideal(depth)), d.reading("bottom gusset", d.ideal(depth).Add(in.Caliper))
		d.equal("gussets", measure.Length{}, times(1, leftSide), times(-1, rightSide))
		d.within("bottom gusset", Range{Max: in.Caliper.Times(2)}, d.form(measure.Length{}, times(1, bottom), times(-1, leftSide)))
		r.across, r.up = []int{left, leftSide, width, rightSide, right}, []int{height, bottom, d.page(in.Caliper.Over(2))}
		err = in.checkPocket(face.span(in), in.Caliper, in.Caliper)
	} else {
		face := Need{Width: 1, Thickness: 1, HalfCalipers: 4}
		r.near = d.pastFold("relief at the side flaps' scores", in.Thickness.Add(in.Caliper))
		width, bottom := d.round("pocket width", pattern.Width, face), in.spine(in.Thickness.Add(in.Caliper))
		r.across, r.up = []int{left, width, right}, []int{height, d.page(bottom.Add(in.Caliper).Over(2))}
		err = fault.Join(in.flat(d), in.checkPocket(face.span(in), in.spine(in.Thickness), bottom))
	}
	err = fault.Join(in.PaperOnly("a page with a pocket"), err)
	d.strips(0, r.across, r.up)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layPocket(r, sizes, gusset) }
	return d.plan, err
}

// page adds the reading of the page's height: as given, or a margin more than
// the pocket and the contents that stand so far above its score.
func (d *draft) page(above measure.Length) int {
	if d.in.given("page_height") {
		return d.fixed("page height", "page_height")
	}
	least := measure.Max(d.in.Height.Add(above), d.in.length("pocket_height"))
	page := d.reading("page height", least.Add(pageMargin.Max.Over(2)))
	d.within("margin of the page", pageMargin, d.form(least.Neg(), times(1, page)))
	return page
}

// checkPocket refuses sizes that leave no room for glue or for one another, at
// any width that the fit allows; the folds are what the side and the bottom
// folds take of the sheet.
func (in *Input) checkPocket(w Range, side, bottom measure.Length) error {
	cut, high := in.length("relief"), in.length("pocket_height")
	margin := measure.Max(cut, bottom.Over(2))
	return fault.Join(
		in.bounded("pocket_height", Range{Min: margin.Add(cut).Add(leastGlue), Max: in.orElse("page_height", measure.Largest())},
			"the pocket is higher than the page, or too low for glue beside the relief cuts", "choose another pocket height, page height or relief"),
		in.bounded("side_flap", Range{Min: measure.Max(side.Over(2).Add(leastGlue), in.Fit.Max), Max: w.Min.Over(2)},
			"the side flaps leave no room for glue behind the contents, or lie on one another", "make the side flaps fit the pocket"),
		in.bounded("relief", Range{Min: in.clearOfFold(in.Thickness.Add(in.Caliper)), Max: measure.Min(high.Sub(leastGlue).Over(2), in.Height)},
			"the relief cuts do not clear the folds, or leave nothing of the flaps behind the contents", "choose another relief"),
	)
}

// layPocket lays the page out, cuts the corners and glues the flaps to it.
func (d *draft) layPocket(r *pocketReadings, sizes []measure.Length, gusset bool) pattern.Pattern {
	in, cut, none := d.in, sizes[r.relief], measure.Length{}
	across, up := extents{sizes: d.sizesOf(r.across, sizes)}, extents{sizes: d.sizesOf(r.up, sizes)}
	shape, near, fold, margin := &pocketDeep, sizes[r.near], none, cut
	if !gusset {
		side, bottom := in.Thickness, in.Thickness.Add(in.Caliper)
		shape, fold, margin = &pocketFlat, in.spine(side).Over(2), measure.Max(cut, in.spine(bottom).Over(2))
		across.rounds, up.rounds = []measure.Length{side, side}, []measure.Length{bottom}
	}
	p := d.grid(shape, across, up)
	left, right, pocket := len(shape.cells)-2, len(shape.cells)-1, len(up.sizes)-1
	if gusset {
		shape.taper(&p, left-2, none, near)
		shape.taper(&p, right-2, none, near)
	}
	shape.taper(&p, left, near, cut)
	shape.taper(&p, right, near, cut)
	p.Cuts = d.pocketCorners(&p, left, right, pocket)
	flap, top := across.sizes[0].Sub(fold), up.sizes[0].Sub(margin)
	p.Glues = []pattern.Glue{
		{Name: "left flap", Panel: left, Face: pattern.Outside, To: 0, Area: pattern.Rectangle(none, cut, flap, top)},
		{Name: "right flap", Panel: right, Face: pattern.Outside, To: 0, Area: pattern.Rectangle(p.Width.Sub(flap), cut, p.Width, top)},
	}
	whole := d.around(p)
	whole.Cavity.Panel = pocket
	return whole
}

// pocketCorners lists what is cut away beside the page and below the flaps.
func (d *draft) pocketCorners(p *pattern.Piece, left, right, pocket int) []pattern.Cut {
	l, r, own, page := p.Panels[left].Outline, p.Panels[right].Outline, p.Panels[pocket].Outline, p.Panels[0].Outline
	return []pattern.Cut{
		d.relief("lower left corner", "left", l[0].Point, l[1].Point, own[0].Point),
		d.relief("lower right corner", "right", r[1].Point, r[0].Point, own[1].Point),
		d.relief("left of the page", "left", l[3].Point, l[2].Point, own[3].Point, page[3].Point),
		d.relief("right of the page", "right", r[2].Point, r[3].Point, own[2].Point, page[2].Point),
	}
}
