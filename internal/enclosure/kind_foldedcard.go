package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// FoldedCard is a sheet folded flat into a card that goes into an envelope or a
// pocket. Width and height are those of its inside, so that the clearance is
// what it has over the closed card.
//
// With W and H the inside of the envelope, t the caliper, c the clearance, all
// lengths from crease to crease or to a free edge; a fold of 180 degrees round
// R takes R + t of the sheet, half on each side of its score, so that paper
// folded on paper ends where its score is:
//
//	side, tent:  front = back = W - c_w (tent: H - c_h)
//	gate:        left gate + gap + right gate = back = W - c_w
//	letter:      back = W - c_w + t/2: the front goes round the inner panel, so
//	             that its fold lies half of a caliper in
//	             front = back, inner = back - creep
//	             creep = 2t or the next mark of the ruler, one step at the least
//	accordion:   every panel = W - c_w
//	all:         height = H - c_h (tent: width = W - c_w)
//
// The creep leaves half of a caliper between the inner panel and the fold that
// it lies in. Printers' guides take 1/16 in for letter folds, and 1/8 in for
// the gap of gate folds.
func FoldedCard() *Kind {
	return &Kind{
		Name:  "folded-card",
		Title: "Folded card for an envelope",
		Help:  "A sheet folded flat to go into an envelope or a pocket; width and height are the inside of that.",
		Words: german("Gefaltete Karte",
			"Eine Karte, seitlich, als Zelt, als Fenster, als Wickelfalz oder im Zickzack gefaltet, die in einen Umschlag oder eine Tasche passt."),
		Needs: []string{"width", "height"},
		Params: []Param{
			{Name: "fold", Type: ChoiceParam, Choices: []string{"side", "tent", "gate", "letter", "accordion"},
				Help: "Folded at the side, at the top, as a gate of two panels, in three as a letter, or to and fro."},
			{Name: "panels", Type: CountParam, Help: "Panels of an accordion.", DefaultCount: 4, LeastCount: 2, GreatestCount: 12},
			{Name: "gap", Help: "Gap between the two panels of a gate; about 1/8 in (3 mm) if not given.", Greatest: measure.Millimetres(500)},
		},
		Plan: planFoldedCard,
	}
}

var cardPanels = []string{"panel 1", "panel 2", "panel 3", "panel 4", "panel 5", "panel 6",
	"panel 7", "panel 8", "panel 9", "panel 10", "panel 11", "panel 12"}

var cardScores = []pattern.Score{valley("1", 180), mountain("2", 180), valley("3", 180), mountain("4", 180), valley("5", 180), mountain("6", 180),
	valley("7", 180), mountain("8", 180), valley("9", 180), mountain("10", 180), valley("11", 180)}

var (
	sideCard   = row{piece: "card", root: 1, height: "card height", panels: []string{"front", "back"}, scores: cardScores[:1]}
	tentCard   = row{piece: "card", root: 1, height: "card width", panels: sideCard.panels, scores: cardScores[:1]}
	gateCard   = row{piece: "card", root: 1, height: "card height", panels: []string{"left gate", "back", "right gate"}, scores: []pattern.Score{valley("1", 180), valley("2", 180)}}
	letterCard = row{piece: "card", root: 1, height: "card height", panels: []string{"front", "back", "inner panel"}, scores: gateCard.scores}
)

// cardReadings are the indices of a card's readings in its problem.
type cardReadings struct {
	across []int // the panels from the left
	height int
	creep  int // of a letter fold
}

func planFoldedCard(in *Input) (*Plan, error) {
	d, r := newDraft(in), &cardReadings{}
	fold, shape := in.choice("fold"), &sideCard
	across, up := pattern.Width, pattern.Height
	switch fold {
	case "side":
		d.accordion(r, across, shape.panels)
	case "tent":
		shape, across, up = &tentCard, pattern.Height, pattern.Width
		d.accordion(r, across, shape.panels)
	case "gate":
		shape = &gateCard
		d.gate(r)
	case "letter":
		shape = &letterCard
		d.letter(r)
	default:
		n := in.count("panels")
		shape = &row{piece: "card", height: "card height", panels: cardPanels[:n], scores: cardScores[:n-1]}
		d.accordion(r, across, shape.panels)
	}
	r.height = d.cardSize(shape.height, up, 0)
	d.strip(0, pattern.Width, r.across...)
	d.strip(0, pattern.Height, r.height)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layCard(shape, fold, r, sizes) }
	return d.plan, fault.Join(in.PaperOnly("a folded card"), in.checkCard(fold))
}

// cardSize adds a reading that is a size of the closed card and some half
// calipers, and its fit: what the envelope has over it.
func (d *draft) cardSize(name string, axis pattern.Axis, halfCalipers int64) int {
	need := Need{Width: -1, HalfCalipers: -halfCalipers}
	if axis == pattern.Height {
		need = Need{Height: -1, HalfCalipers: -halfCalipers}
	}
	size := d.between(name, need.Of(d.in).Neg().Sub(d.in.middle()), d.in.Beside(), measure.Largest())
	d.fit(axis, need, times(-1, size))
	return size
}

// accordion adds panels that are all as wide as the card. The second one, which
// has a score at its left, stands for all of them.
func (d *draft) accordion(r *cardReadings, axis pattern.Axis, panels []string) {
	r.across = make([]int, len(panels))
	r.across[1] = d.cardSize(panels[1], axis, 0)
	whole := d.plan.Problem.Readings[r.across[1]].Ideal
	for i, name := range panels {
		if i != 1 {
			r.across[i] = d.reading(name, whole)
			d.equal("panels", measure.Length{}, times(1, r.across[i]), times(-1, r.across[1]))
		}
	}
}

// gate adds two panels that meet over the back but for a gap.
func (d *draft) gate(r *cardReadings) {
	back := d.cardSize("back", pattern.Width, 0)
	gap := d.in.Little() // what a gap that is not given may come to: from none to twice as much
	if d.in.given("gap") {
		gap = d.in.length("gap")
	}
	both := d.plan.Problem.Readings[back].Ideal.Sub(gap)
	left := d.between("left gate", both.Over(2), d.in.Beside(), measure.Largest())
	right := d.between("right gate", both.Sub(both.Over(2)), d.in.Beside(), measure.Largest())
	if d.in.given("gap") {
		d.equal("gate", measure.Length{}, times(1, left), times(1, right), times(-1, back), times(1, d.fixed("gap", "gap")))
	} else {
		d.within("gap", Range{Max: gap.Times(2)}, d.form(measure.Length{}, times(1, back), times(-1, left), times(-1, right)))
	}
	d.even(left, right)
	r.across = []int{left, back, right}
}

// letter adds a front and an inner panel, which lies between front and back and
// is shorter by the creep. Being as even as can be, it is as little shorter as
// the ruler allows.
func (d *draft) letter(r *cardReadings) {
	back := d.cardSize("back", pattern.Width, 1)
	whole, creep := d.plan.Problem.Readings[back].Ideal, d.in.Caliper.Times(2)
	front, inner := d.reading("front", whole), d.between("inner panel", whole.Sub(creep), d.in.Beside(), measure.Largest())
	r.creep = d.between("creep", creep, creep, creep.Add(d.in.Little().Times(2)))
	d.equal("front and back", measure.Length{}, times(1, front), times(-1, back))
	d.equal("inner panel", measure.Length{}, times(1, inner), times(1, r.creep), times(-1, back))
	d.even(back, inner)
	r.across = []int{front, back, inner}
}

// checkCard refuses options of another fold, and envelopes and gaps that leave
// nothing of the card.
func (in *Input) checkCard(fold string) error {
	least, none := in.Fit.Max.Add(in.Beside().Times(3)), measure.Length{}
	var errs [4]error
	for i, size := range [...]measure.Length{in.Width, in.Height} {
		if size.Less(least) {
			errs[i] = in.outside([...]string{"width", "height"}[i], Range{Min: least, Max: measure.Largest()}, "nothing is left of a card that goes in there",
				"give the inside of the envelope or pocket that the card goes into")
		}
	}
	switch {
	case fold != "gate":
		errs[2] = in.onlyFor("gap", "fold", "gate")
	case in.given("gap"):
		errs[2] = in.bounded("gap", Range{Min: none, Max: in.Width.Sub(least).Add(in.Beside())}, "the gap leaves nothing of the gate", "make the gap smaller")
	}
	if fold != "accordion" {
		errs[3] = in.onlyFor("panels", "fold", "accordion")
	}
	return fault.Join(errs[:]...)
}

// layCard lays the card out. A tent lies on its side, its fold upright.
func (d *draft) layCard(shape *row, fold string, r *cardReadings, sizes []measure.Length) pattern.Pattern {
	in := d.in
	rounds := make([]measure.Length, len(shape.scores))
	if fold == "letter" {
		rounds[0] = in.Caliper
	}
	p := shape.layReadings(r.across, r.height, sizes, rounds)
	cavity := pattern.Cavity{Panel: p.Root, Width: in.Width, Height: in.Height, Bounded: d.bounded(), Into: true}
	x := p.Strips[0].Positions()
	switch fold {
	case "gate":
		p.Seams = []pattern.Seam{upright("gate", &p, 0, x[0], 2, x[3], x[2].Sub(x[1]).Sub(x[1]).Sub(x[3].Sub(x[2])))}
		if in.given("gap") {
			p.Seams[0].Apart = in.length("gap")
		}
	case "letter":
		p.Seams = []pattern.Seam{
			upright("front's edge", &p, 0, x[0], 1, x[2], in.Caliper.Times(2)),
			upright("creep", &p, 2, x[3], 1, x[1].Add(sizes[r.creep]), in.Caliper),
		}
	case "tent":
		cavity.Turned = 90
		fallthrough
	default:
		for i := 1; i < len(r.across); i++ {
			p.Seams = append(p.Seams, upright("edges", &p, i-1, x[i-1], i, x[i+1], in.Caliper))
		}
	}
	return pattern.Pattern{Caliper: in.Caliper, Pieces: []pattern.Piece{p}, Cavity: cavity}
}

// upright returns the seam of two lines that run up the whole piece: one panel
// at ax comes to lie on another at bx.
func upright(name string, p *pattern.Piece, a int, ax measure.Length, b int, bx, apart measure.Length) pattern.Seam {
	none := measure.Length{}
	return pattern.Seam{Name: name, Apart: apart,
		PanelA: a, A1: pattern.At(ax, none), A2: pattern.At(ax, p.Height),
		PanelB: b, B1: pattern.At(bx, none), B2: pattern.At(bx, p.Height)}
}
