package mail

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

// tasting is a tasting card in an envelope that every rule of the US likes.
func tasting() *Piece {
	q := piece("5 x 7 in")
	q.Thickness, q.Mass = measure.MustParse("1/16 in"), Ounces(1)
	return q
}

func TestTraitsOfTheUnitedStates(t *testing.T) {
	for _, e := range []struct {
		name   string
		change func(*Piece)
		class  string
		due    bool
	}{
		{"as it is", func(*Piece) {}, "letter", false},
		{"does not bend", func(q *Piece) { q.Traits = Rigid }, "letter", true},
		{"uneven", func(q *Piece) { q.Traits = Uneven }, "letter", true},
		{"clasp", func(q *Piece) { q.Traits = Clasp }, "letter", true},
		{"plastic", func(q *Piece) { q.Traits = Plastic }, "letter", true},
		{"round", func(q *Piece) { q.Traits = Irregular }, "none", false},
		{"rigid and thick", func(q *Piece) { q.Traits, q.Thickness = Rigid, measure.MustParse("1/2 in") }, "none", false},
		{"thick box", func(q *Piece) { q.Traits, q.Thickness = Box, measure.MustParse("1/2 in") }, "none", false},
		{"thick", func(q *Piece) { q.Thickness = measure.MustParse("1/2 in") }, "flat", false},
		{"square", func(q *Piece) { q.Width = q.Height.Sub(measure.Inches(1)); q.Height = q.Width }, "letter", true},
		{"card too large", func(q *Piece) { q.Traits, q.Thickness = SingleCard, measure.Thousandths(14) }, "letter", false},
		{"card", func(q *Piece) {
			*q = Piece{Width: measure.Inches(4), Height: measure.Inches(6), Thickness: measure.Thousandths(16), Traits: SingleCard}
		}, "postcard", false},
		{"folded card", func(q *Piece) {
			*q = Piece{Width: measure.Inches(4), Height: measure.Inches(6), Thickness: measure.Thousandths(16), Traits: FoldedCard}
		}, "letter", false},
		{"thin and large", func(q *Piece) { q.Thickness = measure.Thousandths(8) }, "letter", true},
		{"thin and small", func(q *Piece) {
			q.Width, q.Height, q.Thickness = measure.Inches(4), measure.Inches(6), measure.Thousandths(8)
		}, "letter", false},
		{"address along the length", func(q *Piece) { q.Address = HeightSide }, "letter", false},
		{"address across", func(q *Piece) { q.Width, q.Height, q.Address = measure.Inches(5), measure.Inches(6), WidthSide }, "letter", true},
		{"address across, and then too short", func(q *Piece) { q.Width, q.Height, q.Address = measure.Inches(4), measure.Inches(6), WidthSide }, "none", false},
		{"large, address across", func(q *Piece) { q.Width, q.Height, q.Address = measure.Inches(11), measure.Inches(14), WidthSide }, "flat", false},
		{"address across, and then too high", func(q *Piece) { q.Address = WidthSide }, "flat", false}, // 7 in > 6 1/8 in
	} {
		q := tasting()
		e.change(q)
		j := post(t, "us").Judge(q)
		assert.Equal(t, e.class, j.className(), e.name)
		assert.Equal(t, e.due, len(j.Surcharges) == 1 && j.Surcharges[0].Name == "nonmachinable" && j.Surcharges[0].Certain, e.name)
	}
}

func TestTraitsElsewhere(t *testing.T) {
	for _, e := range []struct {
		post  string
		trait Trait
		class string
	}{
		{"au", Rigid, "none"}, {"au", Irregular, "none"}, {"au", Clasp, "small-letter"},
		{"be", Plastic, "none"}, {"be", FoldedCard, "none"}, {"be", Rigid, "standardised"},
		{"upu", FoldedCard, "letter"}, {"upu", Clasp, "standardized"},
		{"de", Irregular, "none"}, {"de", Uneven, "standardbrief"},
		{"uk", Rigid | Box, "letter"}, {"ca", Irregular, "standard"},
	} {
		q := piece("110 x 220 mm")
		q.Thickness, q.Mass, q.Traits = measure.Millimetres(1), Grams(10), e.trait
		j := post(t, e.post).Judge(q)
		assert.Equal(t, e.class, j.className(), "%s %b", e.post, e.trait)
		if e.class == "none" {
			require.NotEmpty(t, j.Refusals[0].Rules)
			assert.NotEmpty(t, j.Refusals[0].Rules[0].Source)
		}
	}
}

// Exactly at a bound is inside, one nanometre beyond is outside (DMM 101: not
// less than, not more than, inclusive).
func TestBoundsAreInside(t *testing.T) {
	nanometre := measure.Nanometres(1)
	at := func(length, height, thickness string) *Piece {
		return &Piece{Width: measure.MustParse(length), Height: measure.MustParse(height), Thickness: measure.MustParse(thickness), Mass: Ounces(3.5)}
	}
	us := post(t, "us")
	for _, e := range []struct {
		q      *Piece
		beyond func(*Piece)
		class  string // then
	}{
		{at("5 in", "3 1/2 in", "0.007 in"), func(q *Piece) { q.Width = q.Width.Sub(nanometre) }, "none"},
		{at("5 in", "3 1/2 in", "0.007 in"), func(q *Piece) { q.Height = q.Height.Sub(nanometre) }, "none"},
		{at("5 in", "3 1/2 in", "0.007 in"), func(q *Piece) { q.Thickness = q.Thickness.Sub(nanometre) }, "none"},
		{at("11 1/2 in", "6 1/8 in", "1/4 in"), func(q *Piece) { q.Width = q.Width.Add(nanometre) }, "flat"},
		{at("11 1/2 in", "6 1/8 in", "1/4 in"), func(q *Piece) { q.Height = q.Height.Add(nanometre) }, "flat"},
		{at("11 1/2 in", "6 1/8 in", "1/4 in"), func(q *Piece) { q.Thickness = q.Thickness.Add(nanometre) }, "flat"},
		{at("11 1/2 in", "6 1/8 in", "1/4 in"), func(q *Piece) { q.Mass.picograms++ }, "flat"},
	} {
		j := us.Judge(e.q)
		assert.Equal(t, "letter", j.className())
		assert.Equal(t, Takes, j.Verdict)
		e.beyond(e.q)
		after := us.Judge(e.q)
		assert.Equal(t, e.class, after.className())
	}
}

func TestRatioIsExact(t *testing.T) {
	surcharges := func(width, height string, more int64) int {
		q := tasting()
		q.Width, q.Height = measure.MustParse(width).Add(measure.Nanometres(more)), measure.MustParse(height)
		j, certain := post(t, "us").Judge(q), 0
		for _, d := range j.Surcharges {
			if d.Certain {
				certain++
			}
		}
		assert.Len(t, j.Surcharges, certain, "what is not due is not told")
		return certain
	}
	assert.Zero(t, surcharges("6.5 in", "5 in", 0), "1.3")
	assert.Equal(t, 1, surcharges("6.5 in", "5 in", -1), "and that is certain")
	assert.Zero(t, surcharges("10 in", "4 in", 0), "2.5")
	assert.Equal(t, 1, surcharges("10 in", "4 in", 1))
}

// An address stays on the face that it was put on, however thick the piece is;
// without one the shortest side is the thickness (DMM 101: the length is the side
// that the address reads along).
func TestAnAddressKeepsItsFace(t *testing.T) {
	q := &Piece{Width: measure.Inches(5), Height: measure.Inches(3), Thickness: measure.Inches(4), Address: WidthSide}
	sizes := func() [3]measure.Length {
		m := q.seenBy(post(t, "us"))
		return [3]measure.Length{measure.Nanometres(m.length.nominal), measure.Nanometres(m.height.nominal), measure.Nanometres(m.thickness.nominal)}
	}
	assert.Equal(t, [3]measure.Length{measure.Inches(5), measure.Inches(3), measure.Inches(4)}, sizes())
	q.Address = HeightSide
	assert.Equal(t, [3]measure.Length{measure.Inches(3), measure.Inches(5), measure.Inches(4)}, sizes())
	q.Address = LongerSide
	assert.Equal(t, [3]measure.Length{measure.Inches(5), measure.Inches(4), measure.Inches(3)}, sizes())
}

// Every limit of the class is told, each with what it is of; of two that a piece is
// as near to, the one that the post lists first.
func TestEveryLimitIsTold(t *testing.T) {
	for _, p := range Posts() {
		q := piece("110 x 220 mm")
		q.Thickness, q.Mass = measure.Millimetres(1), Grams(10)
		j := p.Judge(q)
		for i, f := range j.Limits {
			require.NotNil(t, f.Limit, "%s %d", p.Name, i)
		}
	}
	bound := Amount{OfThickness, 4}
	tie := Judgement{Limits: []Finding{{Limit: &Limit{Bound: bound}, Left: Amount{OfThickness, 2}}, {Limit: &Limit{Bound: Amount{OfThickness, 8}}, Left: Amount{OfThickness, 4}}}}
	for i := range tie.Limits {
		tie.Limits[i].State = Inside
	}
	nearest, ok := tie.Nearest()
	require.True(t, ok)
	assert.Same(t, tie.Limits[0].Limit, nearest.Limit)
}

// UPU Convention Regulations: length, height and thickness together at most 900 mm. Exactly
// so much is inside, and with a tolerance it is not sure.
func TestTheSumOfThreeSizes(t *testing.T) {
	q := piece("500 x 250 mm")
	q.Thickness, q.Mass = measure.Millimetres(150), Grams(1000)
	sum := func() Finding {
		j := judged(t, "upu", q)
		for _, f := range append(j.Limits, j.Refusals[len(j.Refusals)-1].Limits...) {
			if f.Bound.Of() == OfSum {
				return f
			}
		}
		t.Fatal("no class has a limit of the sum")
		return Finding{}
	}
	f := sum()
	assert.Equal(t, measure.Millimetres(900), f.Value.Length())
	assert.Equal(t, Inside, f.State)
	q.SizeTolerance = measure.Nanometres(1)
	assert.Equal(t, Unsure, sum().State)
	q.SizeTolerance, q.Thickness = measure.Length{}, measure.Millimetres(150).Add(measure.Nanometres(1))
	assert.Equal(t, Disputed, sum().State, "the regulations allow for 2 mm")
}

// The rules of the United States are in inches, those of others in millimetres.
func TestTablesAreInTheirUnit(t *testing.T) {
	for _, p := range Posts() {
		assert.Equal(t, p.Name == "us", p.Unit == measure.Inch, p.Name)
	}
}

// The international pound of 453.592 37 g is sixteen ounces (NIST SP 811, appendix B).
func TestOunces(t *testing.T) {
	assert.InDelta(t, 16, Grams(453.59237).Ounces(), 1e-9)
	assert.InDelta(t, 453.59237, Ounces(16).Grams(), 1e-9)
	assert.InDelta(t, 12.5, Ounces(12.5).Ounces(), 1e-9)
}

// A mass that is not known keeps a piece out of nothing, and is told.
func TestUnknown(t *testing.T) {
	q := piece("114 x 162 mm")
	j := post(t, "de").Judge(q)
	assert.Equal(t, "standardbrief", j.className())
	assert.Equal(t, []Quantity{OfThickness, OfMass}, j.Unknown)
	j = post(t, "us").Judge(piece("9 x 12 in"))
	assert.Equal(t, []Quantity{OfThickness, OfMass}, j.Unknown)
	j = post(t, "upu").Judge(piece("400 x 300 mm"))
	assert.Equal(t, []Quantity{OfSum, OfMass}, j.Unknown)
}

// The worst case of the tolerances crosses the limit of 5 mm.
func TestTolerances(t *testing.T) {
	q := piece("114 x 162 mm")
	q.Thickness, q.ThicknessTolerance, q.Mass = measure.MustParse("4.8 mm"), measure.MustParse("0.2 mm"), Grams(90)
	assert.Equal(t, Takes, judged(t, "uk", q).Verdict)
	q.ThicknessTolerance = measure.MustParse("0.3 mm")
	j := judged(t, "uk", q)
	assert.Equal(t, MayTake, j.Verdict)
	unsure := ofStates(j.Limits, Unsure)
	require.Len(t, unsure, 1)
	assert.Equal(t, OfThickness, unsure[0].Bound.Of())
	assert.Equal(t, "0.2", string(measure.AppendDecimal(nil, unsure[0].Left.Length(), measure.Millimetre, 6)))
	q.ThicknessTolerance, q.MassTolerance = measure.Length{}, Grams(11)
	assert.Equal(t, MayTake, judged(t, "uk", q).Verdict)
	q.MassTolerance, q.SizeTolerance = Mass{}, measure.Millimetres(44) // 70 mm or more, if that is the bound
	assert.Equal(t, Takes, judged(t, "uk", q).Verdict)
	q.SizeTolerance = measure.Millimetres(45)
	assert.Equal(t, MayTake, judged(t, "uk", q).Verdict)
}

func judged(t *testing.T, name string, q *Piece) Judgement { return post(t, name).Judge(q) }

// What has no official source keeps nothing out, but is told.
func TestHearsay(t *testing.T) {
	j := judged(t, "uk", piece("60 x 90 mm"))
	assert.Equal(t, "letter", j.className())
	assert.Equal(t, MayTake, j.Verdict)
	assert.Len(t, ofStates(j.Limits, Disputed), 2)
	for _, f := range ofStates(j.Limits, Disputed) {
		assert.True(t, f.Hearsay)
	}
	q := tasting()
	q.Mass = Ounces(13.1)
	j = judged(t, "us", q)
	assert.Equal(t, "flat", j.className())
	assert.Equal(t, MayTake, j.Verdict)
}

// An unsure surcharge is told as such.
func TestUnsureSurcharge(t *testing.T) {
	q := tasting()
	q.Width, q.Height, q.SizeTolerance = measure.MustParse("6.5 in"), measure.Inches(5), measure.Sixtyfourths(1)
	j := judged(t, "us", q)
	require.Len(t, j.Surcharges, 1)
	assert.False(t, j.Surcharges[0].Certain)
	assert.Equal(t, Unsure, j.Surcharges[0].Limits[0].State)
}

func TestByHowMuch(t *testing.T) {
	q := piece("111.125 x 146.05 mm") // A2
	q.Thickness, q.Mass = measure.Millimetres(7), Grams(30)
	j := judged(t, "de", q)
	require.Len(t, j.Refusals, 2)
	first := map[Quantity]Finding{}
	for _, f := range j.Refusals[0].Limits {
		first[f.Bound.Of()] = f
		assert.Negative(t, f.Left.n)
	}
	assert.Equal(t, measure.Millimetres(2), first[OfThickness].Left.Abs().Length())
	assert.Equal(t, Grams(10), first[OfMass].Left.Abs().Mass())
	assert.InDelta(t, 1.3143, first[OfRatio].Value.Ratio(), 5e-5)
	nearest, ok := j.Nearest()
	require.True(t, ok)
	assert.Equal(t, OfLength, nearest.Bound.Of(), "146.05 mm of at least 100 mm: 46 parts of a hundred")
}

// TestAPlainLetterCostsNoMore: nothing is due for it, and as little as there can be of a
// thickness is known.
func TestAPlainLetterCostsNoMore(t *testing.T) {
	q := piece("5 x 7 in")
	q.Thickness = measure.Nanometres(1)
	j := post(t, "us").Judge(q)
	assert.Empty(t, j.Surcharges)
	assert.NotContains(t, j.Unknown, OfThickness)
	q.Thickness = measure.Sixtyfourths(1)
	j = post(t, "us").Judge(q)
	assert.Equal(t, "letter", j.Class.Name)
	assert.Empty(t, j.Surcharges)
}

// TestUnitsOfPosts: rules of the United States are in inches (USPS Domestic Mail Manual), all
// others in millimetres.
func TestUnitsOfPosts(t *testing.T) {
	for _, p := range Posts() {
		assert.Equal(t, p.Name == "us", p.Unit == measure.Inch, p.Name)
	}
}
