package enclosure

import (
	"math"
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// contentsShape is what a wrap goes round.
var contentsShape = Param{Name: "shape", Type: ChoiceParam, Choices: []string{"box", "round"},
	Help: "What the contents are: a box, or round as a jar is, as wide as thick, with a strip rolled round it. Nothing is scored then."}

// Shape is the shape of the contents as one of the kinds' own parameters.
func Shape() Param { return contentsShape }

// Round reports whether options say that the contents are round, and so as thick as
// they are wide.
func Round(given map[string]Value) bool { return given[contentsShape.Name].Choice == "round" }

// Rolls reports whether a kind can be rolled round contents that are round.
func (k *Kind) Rolls() bool {
	return slices.ContainsFunc(k.Params, func(p Param) bool { return p.Name == contentsShape.Name })
}

// Roll is a strip that is rolled round contents: what it and its sizes are called, and the
// options that its height and its lap have.
type Roll struct{ Piece, High, Body, Lap, Height, Width string }

// Roll plans a strip as high as an option says.
func (in *Input) Roll(r Roll) (*Plan, error) {
	d := newDraft(in)
	return d.rolled(&r, d.fixed(r.High, r.Height))
}

// rolled plans a strip that is rolled round contents and closed by a lap over its
// other end. A bent sheet keeps its length halfway through its caliper, so that
// with D the contents' diameter, t the caliper and c the clearance
//
//	body = pi (D + t + c)
//
// as plate is cut that is rolled to a cylinder: pi times the mean diameter (common
// practice of sheet metal workers). Where the lap begins it rises over one caliper
// of the end beneath it, which takes no more than the caliper's square over twice
// the way that it rises in.
func (d *draft) rolled(r *Roll, height int) (*Plan, error) {
	in, need := d.in, Need{Width: 1, HalfCalipers: 2}
	body := d.reading(r.Body, scaled(d.ideal(need), math.Pi))
	d.scaledFit(Fit{Axis: pattern.Width, Need: need, Scale: 1 / math.Pi, Share: 1 / math.Pi, Wanted: in.Fit}, need.Of(in), times(1, body))
	across := []int{body, d.fixed(r.Lap, r.Width)}
	d.strips(0, across, []int{height})
	shape := grid{piece: r.Piece, across: edge{[]string{r.Body, r.Lap}, []pattern.Score{{Name: r.Lap, Angle: 360}}}, up: edge{names: []string{r.High}},
		cells: []cell{{r.Body, 0, 0, -1}, {r.Lap, 1, 0, 0}}}
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern {
		piece := d.grid(&shape, extents{sizes: d.sizesOf(across, sizes)}, extents{sizes: []measure.Length{sizes[height]}})
		whole := d.around(glueLap(piece, sizes[across[1]]))
		whole.Cavity.Round = true
		return whole
	}
	return d.plan, fault.Join(in.PaperOnly("what is rolled up"), in.checkRound(r.Width))
}

// glueLap sticks the inside of the outer half's end onto the inner half.
func glueLap(piece pattern.Piece, lap measure.Length) pattern.Piece {
	piece.Glues = []pattern.Glue{{
		Name: "lap", Panel: len(piece.Panels) - 1, Face: pattern.Inside,
		Area: pattern.Rectangle(piece.Width.Sub(lap), measure.Length{}, piece.Width, piece.Height),
		To:   0, ToFace: pattern.Outside,
	}}
	return piece
}

// checkRound refuses what goes with contents that have sides, and a lap that reaches
// farther than a quarter of the way round.
func (in *Input) checkRound(lap string) error {
	wrong := in.bounded(lap, Range{Min: leastGlue, Max: in.Width.Times(3).Over(4)}, "the lap leaves no room for glue, or goes a quarter of the way round", "choose another lap")
	if in.Thickness != in.Width {
		wrong = fault.Join(wrong, in.Outside("thickness", Range{Min: in.Width, Max: in.Width}, "round contents are as thick as wide", "give the diameter as width and as thickness, or leave shape out"))
	}
	return wrong
}
