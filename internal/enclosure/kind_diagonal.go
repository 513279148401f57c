package enclosure

import (
	"math"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// DiagonalEnvelope is a square blank turned by 45 degrees, whose four corners
// fold in one after the other: right, bottom, left and, to close it, top. Each
// goes round one caliper more than the one before.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearance; from crease to crease, square to the creases, where each fold
// takes half of its R + t and t/2 for its inner face:
//
//	right flap round T, bottom T + t, left T + 2t, top T + 3t
//	width w  = W + T + 3t + c_w
//	height h = H + T + 4t + c_h
//
// Readings lie along a side of the square, at 45 degrees to the creases, so
// that the square root of 2 goes from them to the folded size. From a corner
// of the square that becomes a side flap:
//
//	to the first score                  p = h / sqrt 2
//	between the two scores              overlap
//	from the second score to the end    q = w / sqrt 2
//	side of the square                  s = p + overlap + q
//
// On the folded envelope the overlap is the width of each seam, and with none
// s = (w + h) / sqrt 2. The two scores cross half of the overlap in from the
// side; a notch is cut out beside them up to there, so wide that the flaps clear
// the folds beside them. A fit's form is measured
// along the side; Fit.Clearance makes it a clearance, to the nanometre.
func DiagonalEnvelope() *Kind {
	return &Kind{
		Name:  "diagonal-envelope",
		Title: "Envelope from a square laid cornerwise",
		Help:  "A square blank turned by 45 degrees, its four corners folded in over one another: right, bottom, left, top.",
		Words: german("Umschlag aus einem Quadrat, schräg gerillt",
			"Ein auf die Spitze gestelltes Quadrat, dessen vier Ecken nacheinander eingeklappt werden: rechts, unten, links, oben."),
		Needs:  []string{"width", "height"},
		Sealed: true,
		Params: []Param{
			lengthParam("overlap", 0, 300, "How wide the flaps lie on one another along each seam; none lets them meet edge to edge.").usually(32, 15),
		},
		Plan: planDiagonal,
	}
}

// diagonalReadings are the indices of the readings along a side; back is how far the
// hinges of the flaps end before the corners of the back, clear of the folds beside them.
type diagonalReadings struct{ first, overlap, rest, back int }

func planDiagonal(in *Input) (*Plan, error) {
	d, r := newDraft(in), &diagonalReadings{}
	width := Need{Width: 1, Thickness: 1, HalfCalipers: 6}
	height := Need{Height: 1, Thickness: 1, HalfCalipers: 8}
	r.first = d.reading("to the first score", alongSide(d.ideal(height)))
	r.overlap = d.fixed("overlap", "overlap")
	r.rest = d.reading("from the second score", alongSide(d.ideal(width)))
	d.scaledFit(Fit{Axis: pattern.Width, Need: width, Scale: math.Sqrt2, Share: math.Sqrt2, Wanted: in.Fit}, width.Of(in), times(1, r.rest))
	d.scaledFit(Fit{Axis: pattern.Height, Need: height, Scale: math.Sqrt2, Share: math.Sqrt2, Wanted: in.Fit}, height.Of(in), times(1, r.first))
	r.back = d.atLeast("flaps cut back", alongSide(in.clearOfFold(in.Thickness.Add(in.Caliper.Times(3)))))
	d.strip(0, pattern.Diagonal, r.first, r.overlap, r.rest)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layDiagonal(r, sizes) }
	return d.plan, fault.Join(in.PaperOnly("an envelope"), in.flat(d), in.checkDiagonal(width.span(in), height.span(in)))
}

// alongSide returns what a length across the folds is along the side of the
// square, to the nanometre.
func alongSide(l measure.Length) measure.Length { return scaled(l, 1/math.Sqrt2) }

// checkDiagonal refuses flaps that reach past the opposite fold, at any size
// that the fit allows.
func (in *Input) checkDiagonal(w, h Range) error {
	folds := in.Thickness.Add(in.Caliper.Times(5)) // more than the opposite fold takes up
	if err := fault.Join(in.notTooLong("width", in.Width, w, h, folds), in.notTooLong("height", in.Height, h, w, folds)); err != nil {
		return err
	}
	low, high := alongSide(h.Min).Times(2).Sub(alongSide(w.Max)), alongSide(w.Min).Times(2).Sub(alongSide(h.Max))
	return in.bounded("overlap", Range{Max: measure.Min(low, high).Sub(folds)},
		"the flaps would reach past the opposite folds", "make the overlap smaller")
}

// notTooLong refuses a size of the contents whose flaps would reach past the
// opposite fold even without an overlap.
func (in *Input) notTooLong(field string, size measure.Length, along, across Range, folds measure.Length) error {
	most := across.Min.Times(2).Sub(scaled(folds, math.Sqrt2)).Sub(along.Max.Sub(size))
	if !most.Less(size) {
		return nil
	}
	return in.Outside(field, Range{Max: most}, "a square blank takes contents up to about twice as long as wide: the flaps would reach past the opposite folds",
		"choose the kind envelope for these contents")
}

// diagonalScores are the scores that bottom and top, and right and left flap
// hang by: those of two opposite flaps are marked at the same distances.
var diagonalScores = []pattern.Score{valley("1", 180), valley("2", 180)}

// layDiagonal lays the square out, with p, o and q along its sides. The
// corners of the back lie half of o in from each side.
func (d *draft) layDiagonal(r *diagonalReadings, sizes []measure.Length) pattern.Pattern {
	in, none, t := d.in, measure.Length{}, d.in.Caliper
	p, o, q := sizes[r.first], sizes[r.overlap], sizes[r.rest]
	e, s, h := o.Over(2), measure.Sum(p, o, q), sizes[r.back]
	n := h.Times(2)
	low, right := pattern.At(p.Add(e), e), pattern.At(measure.Sum(p, q, e), q.Add(e))
	left, high := pattern.At(e, p.Add(e)), pattern.At(q.Add(e), measure.Sum(p, q, e))
	piece := pattern.Piece{
		Name: "envelope", Quantity: 1, Width: s, Height: s, Strips: []pattern.Strip{{Across: pattern.Diagonal, Scores: diagonalScores,
			Cells: []pattern.Cell{{Name: "to the first score", Size: p}, {Name: "overlap", Size: o}, {Name: "from the second score", Size: q}}}},
		Panels: []pattern.Panel{
			{Name: "back", Outline: pattern.Polygon(low, right, high, left)},
			{Name: "right flap", Outline: pattern.Polygon(shifted(right, h.Neg(), h), pattern.At(s, measure.Sum(q, o, n)), pattern.At(s, s), pattern.At(measure.Sum(q, o, n), s), shifted(high, h, h.Neg()))},
			{Name: "bottom flap", Outline: pattern.Polygon(shifted(low, h, h), pattern.At(measure.Sum(p, o, n), none), pattern.At(s, none), pattern.At(s, q.Sub(n)), shifted(right, h.Neg(), h.Neg()))},
			{Name: "left flap", Outline: pattern.Polygon(shifted(left, h, h.Neg()), pattern.At(none, p.Sub(n)), pattern.At(none, none), pattern.At(p.Sub(n), none), shifted(low, h.Neg(), h))},
			{Name: "top flap", Outline: pattern.Polygon(shifted(high, h.Neg(), h.Neg()), pattern.At(q.Sub(n), s), pattern.At(none, s), pattern.At(none, measure.Sum(p, o, n)), shifted(left, h, h))},
		},
	}
	for i, flap := range piece.Panels[1:] {
		fold(&piece, diagonalScores[(i+1)%2], flap.Outline[0].Point, flap.Outline[4].Point, 0, i+1)
		piece.Creases[i].Round = in.Thickness.Add(t.Times(int64(i)))
	}
	for i, corner := range [...]pattern.Point{low, right, high, left} {
		after, before := piece.Panels[[...]int{2, 1, 4, 3}[i]].Outline, piece.Panels[[...]int{3, 2, 1, 4}[i]].Outline
		piece.Cuts = append(piece.Cuts, notchAt(i, corner, e, before, after))
	}
	folds := measure.Max(in.Thickness.Add(t.Times(4)), n)
	if o.Sign() > 0 {
		piece.Glues = diagonalGlues(p, o, q, folds)
	}
	piece.Seams = diagonalSeams(p, o, q, folds, t)
	whole := d.around(piece)
	whole.Cavity.Turned, whole.Cavity.Covered = 45, []pattern.Axis{pattern.Thickness}
	return whole
}

// diagonalGlues sticks the bottom flap onto the right one and the left flap onto
// the bottom one, along the sides of the blank, clear of the folds.
func diagonalGlues(p, o, q, folds measure.Length) []pattern.Glue {
	s, longer := measure.Sum(p, o, q), measure.Max(p, q)
	return []pattern.Glue{
		{Name: "right seam", Panel: 2, To: 1, ToFace: pattern.Outside, Area: pattern.Rectangle(s.Sub(o), longer.Sub(p), s, q.Sub(folds))},
		{Name: "left seam", Panel: 3, To: 2, ToFace: pattern.Outside, Area: pattern.Rectangle(longer.Sub(q), measure.Length{}, p.Sub(folds), o)},
	}
}

// diagonalSeams says how far the glued flaps reach over one another: the edge
// of one lies the overlap in from the edge of the other.
func diagonalSeams(p, o, q, folds, apart measure.Length) []pattern.Seam {
	s, longer, none := measure.Sum(p, o, q), measure.Max(p, q), measure.Length{}
	return []pattern.Seam{
		{Name: "right seam", PanelA: 1, A1: pattern.At(s, s.Add(q).Sub(longer)), A2: pattern.At(s, measure.Sum(q, o, folds)),
			PanelB: 2, B1: pattern.At(s.Sub(o), longer.Sub(p)), B2: pattern.At(s.Sub(o), q.Sub(folds)), Apart: apart},
		{Name: "left seam", PanelA: 3, A1: pattern.At(longer.Sub(q), none), A2: pattern.At(p.Sub(folds), none),
			PanelB: 2, B1: pattern.At(s.Add(p).Sub(longer), o), B2: pattern.At(measure.Sum(p, o, folds), o), Apart: apart},
	}
}

// shifted returns a point moved by x and y.
func shifted(p pattern.Point, x, y measure.Length) pattern.Point {
	return pattern.At(p.X.Add(x), p.Y.Add(y))
}

// notchAt is what is cut out at corner i of the back, from the lowest one on,
// between the flaps before and after it: from the edge of the blank to the hinge of
// one, to the corner, and from the hinge of the other to the edge.
func notchAt(i int, corner pattern.Point, depth measure.Length, before, after []pattern.Vertex) pattern.Cut {
	names, from := [...]string{"lower notch", "right notch", "upper notch", "left notch"}, [...]string{"bottom", "right", "top", "left"}
	a, b, at := before[3].Point, after[1].Point, corner.X
	if i%2 == 1 {
		at = corner.Y
	}
	return pattern.Cut{Name: names[i], Kind: pattern.Notch, From: from[i], At: at, Depth: depth, Width: b.X.Sub(a.X).Add(b.Y.Sub(a.Y)).Abs(),
		Path: pattern.Polygon(a, before[4].Point, corner, after[0].Point, b)}
}
