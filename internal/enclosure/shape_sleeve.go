package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

var sleeveThick = grid{
	piece: "sleeve",
	across: edge{[]string{"front", "left side", "back", "right side", "lap"},
		[]pattern.Score{valley("1", 90), valley("2", 90), valley("3", 90), valley("4", 90)}},
	up:    edge{names: []string{"sleeve height"}},
	cells: []cell{{"front", 0, 0, 1}, {"left side", 1, 0, 2}, {"back", 2, 0, -1}, {"right side", 3, 0, 2}, {"lap", 4, 0, 3}},
	root:  2,
}

// tube adds the readings of a sleeve with two scores a side, from the left: its faces,
// its sides with the right one as said, and its lap.
func (d *draft) tube(face, side measure.Length) []int {
	front, left := d.reading("front", face), d.reading("left side", d.in.leftSide(side))
	back, right := d.reading("back", face), d.reading("right side", side)
	d.equal("faces", measure.Length{}, times(1, front), times(-1, back))
	return []int{front, left, back, right, d.fixed("lap", "lap")}
}

// showing is how much of the contents an open end lets see.
var showing = lengthParam("reveal", 0, 1000, "How much of the contents stands out at the open ends; none if not given.")

// covers refuses contents of which nothing is left to cover: they are too small along a
// field for the least of it, or too much of them stands out.
func (in *Input) covers(field string, least measure.Length, detail string) error {
	size := in.Height
	if field == "width" {
		size = in.Width
	}
	if size.Less(least) {
		return in.Outside(field, Range{Min: least, Max: measure.Largest()}, detail, "choose a band or an envelope for small contents")
	}
	return in.bounded("reveal", Range{Max: size.Sub(least)}, detail, "let less of the contents stand out")
}

// layer states that the outer of two readings goes round one layer of stock
// more than the inner: the nearest to one caliper that the ruler has.
func (d *draft) layer(name string, outer, inner int) {
	d.within(name, Range{Max: d.in.Caliper.Times(2)}, d.form(measure.Length{}, times(1, outer), times(-1, inner)))
	d.plan.Over = append(d.plan.Over, rounding.Pair{A: outer, B: inner})
}

// partSleeve parts a sleeve with two scores a side into two halves.
func partSleeve(p *pattern.Pattern, piece int) {
	across := p.Pieces[piece].Strips[0].Cells
	w := parting{piece: piece, side: 1, face: 0, lap: across[4].Size, apart: across[3].Size.Add(p.Caliper)}
	w.part(p)
}

// glueSleeve glues the lap inside the front, from so far beside its score.
func glueSleeve(p *pattern.Piece, beside measure.Length) {
	last := len(p.Panels) - 1
	begin := p.Panels[last].Outline[0].X.Add(beside)
	p.Glues = []pattern.Glue{{Name: "lap", Panel: last, Face: pattern.Outside, To: 0, ToFace: pattern.Inside,
		Area: pattern.Rectangle(begin, measure.Length{}, p.Width, p.Height)}}
}

// seamSleeve brings the free edge of the front to the score of the lap, a
// caliper outside it.
func seamSleeve(p *pattern.Piece, caliper measure.Length) {
	front, c := p.Panels[0].Outline, &p.Creases[len(p.Creases)-1]
	p.Seams = []pattern.Seam{{Name: "front's edge", PanelA: 0, A1: front[0].Point, A2: front[3].Point,
		PanelB: len(p.Panels) - 2, B1: c.A, B2: c.B, Apart: caliper}}
}

// biteSleeve cuts the notch into the front and, as far from the left side, into
// the back.
func (d *draft) biteSleeve(p *pattern.Piece, fromLeft, radius measure.Length) {
	bite(p, 0, topEdge, "notch of the front", p.Creases[0].A.X.Sub(fromLeft), radius)
	if d.in.choice("notch_faces") == "both" {
		left := p.Panels[p.Root].Outline[0].X
		bite(p, p.Root, topEdge, "notch of the back", left.Add(fromLeft), radius)
	}
}
