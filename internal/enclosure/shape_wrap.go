package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Parameters that the wraps share.
var (
	bandHeight = Param{Name: "band_height", Help: "How high the band is.", DefaultInch: measure.Sixtyfourths(96), DefaultMillimetre: measure.Millimetres(40),
		Least: measure.Millimetres(5), Greatest: measure.Millimetres(1000)}
	scoresPerSide = Param{Name: "scores", Type: ChoiceParam, Advanced: true, Choices: []string{"auto", "one", "two"},
		Help: "Scores at each side: one for thin contents, two for thick ones; auto takes one up to 1/8 in (3 mm)."}
	meetingLine = Param{Name: "meeting", Advanced: true, Help: "How far from the left edge of the front the two ends meet; in the middle if not given.",
		Least: measure.Millimetres(3), Greatest: measure.Millimetres(2000)}
)

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
		d.warn("one-score", "One score at each side goes round contents thicker than 1.5 mm: the corners come out round. scores=two gives sharp ones.")
	}
	return one
}

// halves names the panels of a wrap: a whole face and, opposite, two halves
// that meet or overlap by a lap.
type halves struct {
	left, whole, right string
	lap                measure.Length // zero for halves that meet
}

// thin adds the readings of a wrap with one score a side, from the left: a
// half, the whole opposite face, the other half. They go behind those there are.
func (d *draft) thin(across []int, h halves, need Need) ([]int, error) {
	fold := d.in.Thickness.Add(d.in.Caliper.Times(3)).Over(2)
	l, w, r, err := d.halves(h, need.Of(d.in).Add(d.in.middle()), fold)
	d.fit(pattern.Width, need, times(1, w))
	if in := d.in; oneCapacity.Less(in.Thickness) && in.Width.Less(in.Thickness) {
		err = fault.Join(err, in.Outside("thickness", Range{Max: in.Width}, "one score at each side does not go round contents thicker than wide", "leave scores out, or turn the contents"))
	}
	return append(across, l, w, r), err
}

// thick adds the readings of a wrap with two scores a side, from the left: a
// half, a side, the whole opposite face, the other side, the other half.
func (d *draft) thick(across []int, h halves) ([]int, error) {
	face, depth := Need{Width: 1, HalfCalipers: 2}, Need{Thickness: 1, HalfCalipers: 2}
	side := depth.Of(d.in).Add(d.in.middle())
	l, w, r, err := d.halves(h, face.Of(d.in).Add(d.in.middle()), d.in.Caliper.Over(2))
	left, right := d.reading("left side", side), d.reading("right side", side)
	d.fit(pattern.Width, face, times(1, w))
	d.fit(pattern.Thickness, depth, times(1, left))
	return append(across, l, left, w, right, r), err
}

// halves adds a whole face and the two halves that together reach as far plus
// the lap, split in the middle unless the request says where they meet. Each
// half is at least as long as the lap and what the fold at its side takes up.
func (d *draft) halves(h halves, ideal, fold measure.Length) (l, w, r int, err error) {
	least, reach := h.lap.Add(fold), ideal.Add(h.lap)
	w = d.reading(h.whole, ideal)
	if d.in.given("meeting") {
		l = d.fixed(h.left, "meeting")
		rest := reach.Sub(d.in.length("meeting"))
		r = d.between(h.right, rest, least, measure.Largest())
		err = d.in.checkMeeting(least, reach.Sub(least))
	} else {
		half := reach.Over(2)
		l, r = d.between(h.left, half, least, measure.Largest()), d.between(h.right, reach.Sub(half), least, measure.Largest())
		d.even(l, r)
		if h.lap.Sign() > 0 {
			err = d.in.checkLap(ideal.Sub(fold.Times(2)))
		}
	}
	d.equal("halves", h.lap.Neg(), times(1, l), times(1, r), times(-1, w))
	return l, w, r, err
}

// checkMeeting refuses a meeting line that leaves no room for one of the ends.
func (in *Input) checkMeeting(least, greatest measure.Length) error {
	return in.bounded("meeting", Range{Min: least, Max: greatest}, "the two ends cannot meet there: one of them would have no face to lie on",
		"leave it out to let the ends meet in the middle")
}

// checkLap refuses a lap that is longer than the face it lies on.
func (in *Input) checkLap(face measure.Length) error {
	return in.bounded("lap", Range{Max: face}, "the lap is longer than the face that it lies on", "make the lap shorter")
}

// layReadings lays a row out with the sizes that the readings have come to.
func (r *row) layReadings(across []int, height int, sizes, rounds []measure.Length) pattern.Piece {
	var widths [12]measure.Length
	for i, reading := range across {
		widths[i] = sizes[reading]
	}
	return r.lay(widths[:len(across)], sizes[height], rounds)
}

// wrapPattern makes the pattern of a wrap in one piece: open above and below,
// the contents lying on its root panel and held along the axes of its fits.
func (d *draft) wrapPattern(piece pattern.Piece) pattern.Pattern {
	in := d.in
	height := in.Height
	if height.IsZero() {
		height = piece.Height
	}
	return pattern.Pattern{
		Caliper: in.Caliper, Pieces: []pattern.Piece{piece},
		Cavity: pattern.Cavity{Panel: piece.Root, Width: in.Width, Height: height, Thickness: in.Thickness, Bounded: d.bounded()},
	}
}
