package calibrate

import (
	"math"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
	"creasefit/internal/tolerance"
)

// thickness is a caliper and by how much it may be off: errors of readings, each
// as likely anywhere within plus or minus its half. All in nanometres.
type thickness struct {
	caliper float64
	halves  []float64
	from    string
}

// deviation is the standard one.
func (t *thickness) deviation() float64 {
	var squares float64
	for _, h := range t.halves {
		squares += h * h / 3
	}
	return math.Sqrt(squares)
}

// known is the caliper and its tolerance as requests take them, if it was
// measured: three standard deviations of the measurement, and what one sheet
// varies by.
func (t *thickness) known(measured bool) []Known {
	if t.caliper == 0 || !measured {
		return nil
	}
	limit := tolerance.RectangularHalf(Confidence, t.halves...)
	varies := math.Hypot(3*t.deviation(), nanometres(stock.MeasuredTolerance()))
	return []Known{
		{Name: "caliper", Use: length(t.caliper), Estimate: length(t.caliper), Least: length(t.caliper - limit), Greatest: length(t.caliper + limit), From: t.from},
		{Name: "caliper_tolerance", Use: length(varies), Estimate: length(varies), From: "three standard deviations of the caliper, and what one sheet varies by"},
	}
}

// caliper is what the wound strip and the stack say of the caliper, each with the
// weight that its error leaves it; or what is known from elsewhere.
func (m *Measured) caliper() (thickness, error) {
	if m.Caliper.Sign() > 0 {
		return thickness{caliper: nanometres(m.Caliper), halves: []float64{nanometres(stock.Spread(m.Caliper)) / math.Sqrt(3)}}, nil
	}
	strip, err := m.wound()
	if err != nil {
		return thickness{}, err
	}
	pile, err := m.stacked()
	switch {
	case err != nil:
		return thickness{}, err
	case strip.caliper == 0:
		return pile, nil
	case pile.caliper == 0:
		return strip, nil
	}
	return m.weighed(&strip, &pile)
}

// wound solves the loop for the caliper: round a block of W x T, n turns of paper
// whose middle is half a caliper outside what they lie on take
//
//	2n(W + T) + 4n² t
//
// since each of a turn's eight half sides is longer by the half calipers inside.
func (m *Measured) wound() (thickness, error) {
	if m.Wound.IsZero() {
		return thickness{}, nil
	}
	n := float64(m.Turns)
	bare := m.Block.Width.Add(m.Block.Thickness).Times(2 * int64(m.Turns))
	t := thickness{
		caliper: nanometres(m.Wound.Sub(bare)) / (4 * n * n),
		halves:  []float64{m.half() / (4 * n * n), nanometres(m.Block.Tolerance) / (2 * n), nanometres(m.Block.Tolerance) / (2 * n)},
		from:    count(m.Turns, "turns round the block"),
	}
	if !bare.Less(m.Wound) {
		return t, fault.Fault{Code: fault.Impossible, Field: "wound", Value: m.words(m.Wound),
			Detail:   "the strip is shorter than that many turns round the bare block",
			Expected: "more than " + m.words(bare), Hint: "measure the whole length that the turns took, or count the turns again"}
	}
	return t, m.paperlike("wound", t.caliper)
}

// stacked is the height of a stack, by the sheet.
func (m *Measured) stacked() (thickness, error) {
	if m.Stack.IsZero() {
		return thickness{}, nil
	}
	n := float64(m.Sheets)
	t := thickness{caliper: nanometres(m.Stack) / n, halves: []float64{m.half() / n}, from: count(m.Sheets, "sheets in a stack")}
	return t, m.paperlike("stack", t.caliper)
}

// paperlike refuses what no paper or board is like.
func (m *Measured) paperlike(field string, caliper float64) error {
	least, greatest := stock.LeastCaliper(), stock.GreatestCaliper()
	if c := length(caliper); c.Less(least) || greatest.Less(c) {
		return fault.Fault{Code: fault.Impossible, Field: field, Detail: "the paper would be " + m.words(c) + " thick",
			Expected: m.words(least) + " to " + m.words(greatest), Hint: "measure again, and count the turns or sheets again"}
	}
	return nil
}

// apart is by what part of it a caliper from a stack may be over one from a
// strip, beside their errors: sheets do not lie close (ISO 534 tells single
// sheets from those in a stack).
const apart = 0.1

// weighed is the mean of two calipers by the squares of their deviations. Two
// that contradict one another are a fault.
func (m *Measured) weighed(strip, pile *thickness) (thickness, error) {
	u, v := strip.deviation(), pile.deviation()
	if off := math.Abs(strip.caliper - pile.caliper); off > 3*math.Hypot(u, v)+apart*strip.caliper {
		return thickness{}, fault.Fault{Code: fault.Conflict, Field: "stack", Value: m.words(m.Stack),
			Detail: "the stack says that the paper is " + m.words(length(pile.caliper)) + " thick, the wound strip " + m.words(length(strip.caliper)),
			Hint:   "press the stack flat, count the turns again, and leave out what you trust less"}
	}
	weight := v * v / (u*u + v*v)
	both := thickness{caliper: weight*strip.caliper + (1-weight)*pile.caliper, from: strip.from + " and " + pile.from}
	for _, h := range strip.halves {
		both.halves = append(both.halves, weight*h)
	}
	for _, h := range pile.halves {
		both.halves = append(both.halves, (1-weight)*h)
	}
	return both, nil
}

// fold is what one fold takes up: of strips scored twice and folded up, what
// their walls stand closer together than a caliper less than the scores.
func (m *Measured) fold(paper *thickness) ([]Known, error) {
	n := len(m.Fold.Inside)
	if n == 0 {
		return nil, nil
	}
	if err := few("folded_inside", n); err != nil {
		return nil, err
	}
	if paper.caliper == 0 {
		return nil, fault.Fault{Code: fault.Missing, Field: "caliper", Detail: "what a fold takes up is beside the caliper, which is not known",
			Hint: "give caliper, or measure it: wound and turns, or stack and stack_count"}
	}
	s := sampleOf(m.Fold.Inside, nanometres(m.Ruler.Size()))
	most := m.Fold.Apart.Add(m.Ruler.Size())
	if far := length(s.mean); most.Less(far) || far.Times(2).Less(m.Fold.Apart) {
		return nil, fault.Fault{Code: fault.Conflict, Field: "folded_inside", Value: m.words(far),
			Detail:   "walls folded up at scores " + m.words(m.Fold.Apart) + " apart do not stand so far apart",
			Expected: m.words(m.Fold.Apart.Over(2)) + " to " + m.words(most), Hint: "measure from wall to wall inside, and between the two scores on the flat strip"}
	}
	taken := nanometres(m.Fold.Apart) - paper.caliper - s.mean
	own := s.deviation / math.Sqrt(float64(n))
	all := math.Hypot(own, paper.deviation())
	limit := s.student(own, all) * all
	return []Known{{Name: "fold_allowance", Use: length(taken), Estimate: length(taken), Least: length(taken - limit), Greatest: length(taken + limit),
		From: count(n, "strips folded up")}}, nil
}

// growth is by what part the marks of a wetted sheet went apart.
func (m *Measured) growth() (list []Growth, err error) {
	var faults fault.Faults
	for _, side := range [...]struct {
		name string
		wet  measure.Length
	}{{"wet_along", m.WetAlong}, {"wet_across", m.WetAcross}} {
		if side.wet.IsZero() {
			continue
		}
		marked := nanometres(m.Marked)
		grown := nanometres(side.wet)/marked - 1
		if math.Abs(grown) > mostGrowth {
			faults = append(faults, fault.Fault{Code: fault.Conflict, Field: side.name, Value: m.words(side.wet),
				Detail:   "no paper grows or shrinks that much between marks that were " + m.words(m.Marked) + " apart",
				Expected: m.words(length(marked*(1-mostGrowth))) + " to " + m.words(length(marked*(1+mostGrowth))), Hint: "measure between the same two marks, and give marked as they were before"})
			continue
		}
		limit := tolerance.RectangularHalf(Confidence, m.half(), m.half()) / marked
		list = append(list, Growth{side.name, grown, grown - limit, grown + limit})
	}
	return list, faults.Err()
}

// mostGrowth is by what part paper grows at most: wetted with paste it is 2 to 3
// % across the grain (bookbinders' notes).
const mostGrowth = 0.06
