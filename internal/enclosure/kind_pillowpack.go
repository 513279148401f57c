package enclosure

import (
	"math"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// PillowPack is a tube of two faces whose ends close by curved scores: pressed
// in, their flaps bend the faces out. Each score is an arc across the face; its
// flap is as wide as the lens between the arc and its mirror image, so that the
// two flaps of an end cover one another.
//
// A bent sheet keeps its lengths. With the straight lines that it bends about
// running up the blank, the face rises from edge to middle as its score does, so
// that an arc of chord D and rise h gives a pack of 2h in the middle (arXiv
// 2509.02049, Isometric deformations of pillow boxes). It must be no steeper than 45
// degrees at its ends.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance:
//
//	front = back = D, wide enough for W + c_w between the inner faces T/2 off
//	               the middle plane (see lens)
//	body = H + t + c_h, from score to score along the middle
//	flap = middle height, from score to score and at mid-caliper
func PillowPack() *Kind {
	return &Kind{
		Name:  "pillow-pack",
		Title: "Pillow pack",
		Help:  "Two faces glued to a tube; curved scores at the ends, pressed in, bend the faces out.",
		Words: german("Kissenschachtel",
			"Zwei Seiten mit gebogenen Rillen an den Enden, die sich zu einem Kissen wölben."),
		Needs: []string{"width", "height", "thickness"},
		Params: []Param{
			lengthParam("middle_height", 3, 500, "How high the pack is in the middle, centre to centre of the stock; the next half inch or 10 mm "+
				"over one and a quarter of the thickness and an eighth of the width if not given."),
			lengthParam("lap", 3, 300, "How wide the glue lap is.").usually(32, 15),
		},
		Plan: planPillowPack,
	}
}

// pillow is what a pillow pack is worked out from.
type pillow struct {
	in     *Input
	middle measure.Length
}

// clearance returns the clearance along the width that faces of a width leave.
func (p pillow) clearance(face measure.Length) measure.Length {
	l := newLens(face, p.middle)
	inside := l.inside(p.in.Thickness.Millimetres()/2, p.in.Caliper.Millimetres())
	return measure.Nanometres(int64(math.Round(inside * 1e6))).Sub(p.in.Width)
}

// face returns the width of faces that leave a clearance, to some nanometres:
// by the secants of the clearance, which is an almost straight line of it.
func (p pillow) face(clearance measure.Length) measure.Length {
	last, at := measure.Sum(p.in.Width, clearance, p.middle.Times(2)), measure.Sum(p.in.Width, clearance, p.middle).Times(2)
	off := p.clearance(last).Sub(clearance)
	for range 40 {
		next := p.clearance(at).Sub(clearance)
		if next.Abs().Nanometres() <= 2 || next == off {
			break
		}
		by := float64(next.Nanometres()) / float64(next.Sub(off).Nanometres()) * float64(at.Sub(last).Nanometres())
		last, off, at = at, next, measure.Max(p.middle, at.Sub(measure.Nanometres(int64(math.Round(by)))))
	}
	return at
}

// steepest is the bulge of an arc that begins at 45 degrees.
var steepest = math.Tan(math.Pi / 8)

// tooSteep reports whether the scores of the narrowest faces would begin
// steeper than 45 degrees.
func (p pillow) tooSteep() bool { return curveBulge(p.face(p.in.Fit.Min), p.middle) > steepest }

func planPillowPack(in *Input) (*Plan, error) {
	p := pillow{in, in.length("middle_height")}
	if p.middle.IsZero() {
		p.middle = in.defaultMiddle()
	}
	if err := fault.Join(in.PaperOnly("a pillow pack"), p.check()); err != nil {
		return nil, err
	}
	d := newDraft(in)
	ideal, zero := p.face(in.middle()), p.face(measure.Length{})
	back, front := d.reading("back", ideal), d.reading("front", ideal)
	d.fitted(Fit{Axis: pattern.Width, Need: Need{Width: 1, Thickness: p.perThickness(ideal)}, Wanted: in.Fit,
		Curve: func(value measure.Length) measure.Length { return p.clearance(zero.Add(value)) }},
		Range{Min: p.face(in.Fit.Min).Sub(zero), Max: p.face(in.Fit.Max).Sub(zero)}, d.form(zero.Neg(), times(1, front)))
	d.equal("faces", measure.Length{}, times(1, front), times(-1, back))
	body := d.round("body", pattern.Height, Need{Height: 1, HalfCalipers: 2})
	flaps := [2]int{}
	for i, name := range [...]string{"bottom flap", "top flap"} {
		flaps[i] = d.add(rounding.Reading{Name: name, Ideal: p.middle, Fixed: true}, "middle_height")
	}
	rise := d.reading("rise of a score", p.middle.Over(2)) // half of a flap: where the ends of its score lie
	d.equal("rise of a score", measure.Length{}, times(2, rise), times(-1, flaps[0]))
	lap := d.fixed("lap", "lap")
	d.strips(0, []int{back, front, lap}, []int{flaps[0], body, flaps[1]})
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern {
		return d.layPillow(sizes[front], sizes[back], sizes[lap], sizes[flaps[0]], sizes[body], sizes[rise])
	}
	return d.plan, nil
}

// perThickness returns how much width a little more thickness takes, as a
// whole number that is not too small.
func (p pillow) perThickness(face measure.Length) int64 {
	little := measure.Micrometres(10)
	thicker := *p.in
	thicker.Thickness = thicker.Thickness.Add(little)
	lost := p.clearance(face).Sub(pillow{&thicker, p.middle}.clearance(face))
	return lost.Nanometres()/little.Nanometres() + 1
}

// leastMiddle is what the contents go under with some of the width left, and
// what still bends the faces: a twelfth of the width.
func (in *Input) leastMiddle() measure.Length {
	return measure.Max(in.Thickness.Times(5).Over(4).Add(in.Caliper.Times(2)), in.Width.Over(12))
}

// defaultMiddle is the least half inch or 10 mm, half of which is on every ruler's
// marks, that the contents go under and that is an eighth of the width.
func (in *Input) defaultMiddle() measure.Length {
	mark := in.onRuler(32, 10)
	least := measure.Max(in.leastMiddle(), in.Width.Over(8))
	return mark.Times((least.Nanometres() + mark.Nanometres() - 1) / mark.Nanometres())
}

// check refuses a middle height that the contents do not go under or that bends
// the ends more than 45 degrees, and a lap that is too wide.
func (p pillow) check() error {
	in := p.in
	least := in.leastMiddle()
	wrong := func(bound Range) error {
		return fault.Join(in.Outside("middle_height", bound, "the contents do not go under that height, or the scores would begin steeper than 45 degrees",
			"choose another middle_height, or a box for contents as thick as wide"))
	}
	if p.middle.Less(least) {
		return wrong(Range{Min: least, Max: measure.Largest()})
	}
	if p.tooSteep() {
		return wrong(Range{Min: least, Max: p.flattest(least)})
	}
	return fault.Join(in.bounded("lap", Range{Min: leastGlue, Max: measure.Min(in.Width.Over(2), in.Height.Over(3))},
		"the lap leaves no room for glue, or is too wide for the back", "choose another lap"))
}

// flattest returns the greatest middle height whose scores are not too steep,
// to the micrometre.
func (p pillow) flattest(least measure.Length) measure.Length {
	low, high := least, p.middle
	for measure.Micrometres(1).Less(high.Sub(low)) {
		if mid := low.Add(high).Over(2); (pillow{p.in, mid}).tooSteep() {
			high = mid
		} else {
			low = mid
		}
	}
	return low
}

// layPillow lays the pack out, from the left: back, front, lap. The ends of the
// side scores lie half of a flap in from the edges of the blank.
func (d *draft) layPillow(front, back, lap, flap, body, rise measure.Length) pattern.Pattern {
	none := measure.Length{}
	high := measure.Sum(flap, body, flap)
	low, top := rise, high.Sub(rise)
	x := []measure.Length{none, back, back.Add(front), measure.Sum(back, front, lap)}
	chords := curvedScore(pattern.At(none, none), front, flap)
	side := 180 - 2*180/math.Pi*math.Asin(pattern.Slope(chords[0], chords[1]))
	scores := []pattern.Score{valley("1", side), valley("2", side), valley("3", 90), valley("4", 90)}
	p := pattern.Piece{
		Name: "pack", Quantity: 1, Width: x[3], Height: high,
		Strips: []pattern.Strip{
			{Across: pattern.Width, Cells: []pattern.Cell{{Name: "back", Size: back}, {Name: "front", Size: front}, {Name: "lap", Size: lap}}, Scores: scores[:2]},
			{Across: pattern.Height, Cells: []pattern.Cell{{Name: "bottom flap", Size: flap}, {Name: "body", Size: body}, {Name: "top flap", Size: flap}}, Scores: scores[2:]},
		},
		Panels: []pattern.Panel{bentFace("front", x[1], x[2], low, top, flap), bentFace("back", x[0], x[1], low, top, flap),
			{Name: "lap", Outline: pattern.Polygon(pattern.At(x[2], low), pattern.At(x[3], low.Add(lap)), pattern.At(x[3], top.Sub(lap)), pattern.At(x[2], top))}},
		Seams: []pattern.Seam{{Name: "back's edge", PanelA: 1, A1: pattern.At(none, low), A2: pattern.At(none, top),
			PanelB: 2, B1: pattern.At(x[2], low), B2: pattern.At(x[2], top)}},
		Glues: []pattern.Glue{{Name: "lap", Panel: 2, Face: pattern.Outside, To: 1, ToFace: pattern.Inside,
			Area: pattern.Rectangle(x[2], low.Add(lap), x[3], top.Sub(lap))}},
	}
	fold(&p, scores[0], pattern.At(x[1], low), pattern.At(x[1], top), 0, 1)
	fold(&p, scores[1], pattern.At(x[2], low), pattern.At(x[2], top), 0, 2)
	for i, face := range [...]string{"front", "back"} {
		curvedFlap(&p, "lower flap of the "+face, scores[2], i, x[1-i], x[2-i], low, -1, flap)
		curvedFlap(&p, "upper flap of the "+face, scores[3], i, x[1-i], x[2-i], top, 1, flap)
	}
	whole := d.around(p)
	whole.Cavity.Floats = true
	return whole
}

// bentFace is a face between two curved scores.
func bentFace(name string, x0, x1, low, top, middle measure.Length) pattern.Panel {
	o := pattern.Rectangle(x0, low, x1, top)
	in := -curveBulge(x1.Sub(x0), middle)
	o[0].Bulge, o[2].Bulge = in, in
	return pattern.Panel{Name: name, Outline: o}
}

// curvedFlap adds a flap and its curved score, whose ends lie at y; the score
// bends towards the face, upwards at its lower end (-1), and the free edge of
// the flap away from it.
func curvedFlap(p *pattern.Piece, name string, s pattern.Score, face int, x0, x1, y measure.Length, bend float64, middle measure.Length) {
	bulge := curveBulge(x1.Sub(x0), middle)
	a, b := pattern.At(x0, y), pattern.At(x1, y)
	p.Panels = append(p.Panels, pattern.Panel{Name: name, Outline: []pattern.Vertex{{Point: a, Bulge: bulge}, {Point: b, Bulge: bulge}}})
	fold(p, s, a, b, face, len(p.Panels)-1)
	p.Creases[len(p.Creases)-1].Bulge = bend * bulge
}
