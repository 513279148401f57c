package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// MatStack is layers of card for the front of a card, each smaller than the one
// below it by the same reveal on every side.
//
// With W and H the front of the card and r the reveal, each layer from edge to
// edge:
//
//	layer k:  width = W - 2kr, height = H - 2kr
//
// The layers step down by exactly 2r. A front that lies on no mark of the ruler
// leaves up to 1/16 in more or less than 2r to the first one.
func MatStack() *Kind {
	return &Kind{
		Name:  "mat-stack",
		Title: "Stack of mats for a card front",
		Help:  "Layers that step down by an even reveal, one on the other; width and height are those of the card's front.",
		Words: german("Gestufte Lagen",
			"Immer kleinere Lagen übereinander auf der Vorderseite einer Karte, jede mit demselben sichtbaren Rand."),
		Needs: []string{"width", "height"},
		Params: []Param{
			{Name: "layers", Type: CountParam, Help: "How many layers lie on the card.", DefaultCount: 2, LeastCount: 2, GreatestCount: mostMats},
			lengthParam("reveal", 1, 300, "How much of each layer shows round the next; about 1/8 in (3 mm) if not given."),
		},
		Plan: planMatStack,
	}
}

var matLayers, matWidths, matHeights = numbered("layer ", mostMats), numbered("width ", mostMats), numbered("height ", mostMats)

// mostMats is how many layers a stack may have.
const mostMats = 6

// leastMat is the smallest side of a layer that is still worth sticking on.
var leastMat = measure.Millimetres(12)

// matReadings are the indices of a stack's readings in its problem.
type matReadings struct {
	reveal          int
	widths, heights []int // from the lowest layer up
}

func planMatStack(in *Input) (*Plan, error) {
	d, r, n := newDraft(in), &matReadings{}, in.count("layers")
	room := measure.Min(in.Width, in.Height).Sub(leastMat).Over(2 * n) // for each reveal
	step := Range{Min: in.onRuler(4, 2), Max: in.onRuler(12, 4)}       // about 1/8 in or 3 mm (common practice)
	var wrong error
	if in.given("reveal") {
		r.reveal = d.fixed("reveal", "reveal")
		wrong = in.bounded("reveal", Range{Max: room}, "the reveals leave nothing of the topmost layer", "choose a smaller reveal or fewer layers")
	} else {
		wrong = in.checkLayers(room, step.Min)
		step.Max = measure.Max(step.Min, measure.Min(step.Max, room))
		r.reveal = d.anyOf("reveal", step)
	}
	r.widths = d.layers(matWidths[:n], in.Width, r.reveal)
	r.heights = d.layers(matHeights[:n], in.Height, r.reveal)
	for i := range r.widths {
		d.strips(i, []int{r.widths[i]}, []int{r.heights[i]})
	}
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layMats(r, sizes) }
	return d.plan, fault.Join(wrong)
}

// checkLayers refuses more layers than there is room for, with the least reveal.
func (in *Input) checkLayers(room, least measure.Length) error {
	if !room.Less(least) {
		return nil
	}
	most := measure.Min(in.Width, in.Height).Sub(leastMat).Nanometres() / least.Times(2).Nanometres()
	if most < 2 {
		return fault.Fault{Code: fault.Impossible, Field: "layers", Detail: "the front is too small for layers with a reveal between them",
			Expected: "a front of at least " + in.describe(leastMat.Add(least.Times(4))), Hint: "give a smaller reveal, or choose a larger card"}
	}
	return fault.Fault{Code: fault.Impossible, Field: "layers", Detail: "the reveals of so many layers leave nothing of the topmost one",
		Expected: "at most " + string('0'+rune(most)), Hint: "choose fewer layers or give a smaller reveal"}
}

// layers adds the readings of one side of every layer.
func (d *draft) layers(names []string, front measure.Length, reveal int) []int {
	sides := make([]int, len(names))
	twice := d.plan.Problem.Readings[reveal].Ideal.Times(2)
	for i, name := range names {
		sides[i] = d.reading(name, front.Sub(twice.Times(int64(i)+1)))
		if i > 0 {
			d.equal("reveals", measure.Length{}, times(1, sides[i-1]), times(-1, sides[i]), times(-2, reveal))
		}
	}
	off := d.in.Little().Over(2)
	d.within("reveal of the first layer", Range{Min: off.Neg(), Max: off}, d.form(front, times(-1, sides[0]), times(-2, reveal)))
	return sides
}

// layMats cuts the layers and lays each in the middle of the one below.
func (d *draft) layMats(r *matReadings, sizes []measure.Length) pattern.Pattern {
	in, reveal, none := d.in, sizes[r.reveal], measure.Length{}
	p := pattern.Pattern{
		Caliper: in.Caliper, Pieces: make([]pattern.Piece, len(r.widths)), Places: make([]pattern.Place, len(r.widths)-1),
		Cavity: pattern.Cavity{Width: in.Width, Height: in.Height, Bounded: d.bounded(), Into: true},
	}
	for i := range p.Pieces {
		width, height := sizes[r.widths[i]], sizes[r.heights[i]]
		p.Pieces[i] = pattern.Piece{
			Name: matLayers[i], Quantity: 1, Width: width, Height: height,
			Strips: []pattern.Strip{
				{Across: pattern.Width, Cells: []pattern.Cell{{Name: matWidths[i], Size: width}}},
				{Across: pattern.Height, Cells: []pattern.Cell{{Name: matHeights[i], Size: height}}},
			},
			Panels: []pattern.Panel{{Name: matLayers[i], Outline: pattern.Rectangle(none, none, width, height)}},
		}
		if i > 0 {
			p.Places[i-1] = pattern.Place{Piece: i, On: i - 1, X: reveal, Y: reveal, Above: in.Caliper}
		}
	}
	return p
}
