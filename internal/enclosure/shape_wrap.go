package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// scoresPerSide is how many scores a wrap has at each side.
var scoresPerSide = Param{Name: "scores", Type: ChoiceParam, Advanced: true, Choices: []string{"auto", "one", "two"},
	Help: "Scores at each side: one for thin contents, two for thick ones; auto takes one up to 1/8 in (3 mm)."}

// thinnest is what one score bends round before its corners round off so much
// that a second score pays (common practice); one score still goes round
// contents up to a capacity step of folder makers, 1/8 in.
var (
	thinnest    = measure.Micrometres(1500)
	oneCapacity = measure.Sixtyfourths(8)
)

// oneScore decides between one and two scores a side.
func (in *Input) oneScore(d *draft) bool {
	choice := in.choice("scores")
	one := choice == "one" || choice == "auto" && !oneCapacity.Less(in.Thickness) && !in.stiff()
	if one && thinnest.Less(in.Thickness) {
		d.warn("one-score", "One score at each side goes round rather thick contents here: the corners come out round. scores=two gives sharp ones.")
	}
	return one
}

// around makes the pattern of pieces, and lays the contents on what stays still of the
// first of them, held along the axes of the fits.
func (d *draft) around(pieces ...pattern.Piece) pattern.Pattern {
	in := d.in
	height := in.Height
	if height.IsZero() {
		height = pieces[0].Height
	}
	list := d.laid.Pieces.Take(len(pieces))
	copy(list, pieces)
	return pattern.Pattern{
		Caliper: in.Caliper, Pieces: list,
		Cavity: pattern.Cavity{Panel: pieces[0].Root, Width: in.Width, Height: height, Thickness: in.Thickness, Bounded: d.bounded()},
	}
}
