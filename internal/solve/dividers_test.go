package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

func TestRandomDividersFoldUp(t *testing.T) {
	checkRandom(t, "dividers", measure.Millimetres(60))
}

func TestEveryCaliperOfDividersCounts(t *testing.T) {
	for _, slots := range []string{"slit", "slot"} {
		t.Run(slots, func(t *testing.T) {
			r := thick(t, "dividers")
			r.Options = choices("slots", slots)
			checkMutants(t, r, "slot before its mark", "slot after its mark")
		})
	}
}

// cellsOf makes a request for so many cells in a tin of 200 x 300 x 40 mm,
// which the strips fill, in stock of 1 mm.
func cellsOf(t testing.TB, columns, rows int64) *solve.Request {
	r := thick(t, "dividers")
	r.Unit, r.Ruler = measure.Millimetre, measure.Marks(measure.Millimetre)[3]
	r.Width, r.Height, r.Thickness, r.Caliper = measure.Millimetres(200), measure.Millimetres(300), measure.Millimetres(40), measure.Millimetres(1)
	r.Fit = enclosure.Range{Min: measure.Millimetres(-1), Max: measure.Millimetres(1)}
	r.Options["columns"], r.Options["rows"] = enclosure.Value{Count: columns}, enclosure.Value{Count: rows}
	return r
}

// In a cross-lap each piece is notched half of its thickness, as wide as the
// other one is thick (W. Noyes, Handwork in Wood, 1910, joint 14), and slot k of
// n equal cells lies at k / n of the strip: the ideals, but for the seating and
// the play that are wanted.
func TestDividersAgainstTheCrossLap(t *testing.T) {
	r := cellsOf(t, 5, 3)
	plan, err := r.Kind.Plan(&enclosure.Input{Unit: r.Unit, Width: r.Width, Height: r.Height, Thickness: r.Thickness,
		Caliper: r.Caliper, Fit: r.Fit, Given: r.Options, Params: r.Kind.Params})
	require.NoError(t, err)
	var sizes []measure.Length
	for _, reading := range plan.Problem.Readings {
		sizes = append(sizes, reading.Ideal)
	}
	p := plan.Build(sizes)
	seating, play := measure.MustParse("2.25 mm"), measure.MustParse("0.5 mm") // the middles of 0.75 to 3.75 and of 0 to 1 mm
	for i, want := range [][]string{{"40 mm", "80 mm", "120 mm", "160 mm"}, {"100 mm", "200 mm"}} {
		require.Len(t, p.Pieces[i].Cuts, len(want))
		for k, cut := range p.Pieces[i].Cuts {
			assert.Equal(t, measure.MustParse(want[k]), cut.At)
			assert.Equal(t, p.Pieces[i].Height.Add(seating).Over(2), cut.Depth)
			assert.Equal(t, r.Caliper.Add(play), cut.Width)
		}
	}
	assert.Equal(t, []int{2, 4}, []int{p.Pieces[0].Quantity, p.Pieces[1].Quantity})
}

// All strips stand in their slots: as many plates as there are strips, and none
// passes through another one. The stock's own caliper is what a slit opens to.
func TestDividersStandInTheirSlots(t *testing.T) {
	for _, slots := range []string{"slit", "slot"} {
		r := cellsOf(t, 5, 3)
		r.Options["slots"] = enclosure.Value{Choice: slots}
		if slots == "slit" {
			r.Caliper = measure.Micrometres(700) // board goes into no slit
		}
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		assert.Len(t, fold.Fold(&s.Pattern, 1).Plates, 2+4)
		for i := range s.Pattern.Places {
			p := s.Pattern
			p.Places = append(p.Places[:0:0], p.Places...)
			moved := measure.Millimetres(3)
			p.Places[i].X, p.Places[i].Y = p.Places[i].X.Add(moved), p.Places[i].Y.Add(moved)
			assert.False(t, fold.Prove(&p, s.Proof.Tolerance).Closes, "%s: strip %d beside its slots", slots, i)
		}
	}
}

// Strips that are longer than the sheet say so, and of how many parts they are:
// 299 mm at the least of sheets of 200 mm that lap by 12.7 mm are two, of 150 mm
// (2 x 150 - 12.7 = 287.3) three.
func TestDividersLongerThanTheSheet(t *testing.T) {
	for sheet, parts := range map[int64]string{400: "", 200: "of 2 parts or more", 150: "of 3 parts or more"} {
		r := cellsOf(t, 3, 3)
		r.SheetWidth, r.SheetHeight = measure.Millimetres(sheet), measure.Millimetres(100)
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		if parts == "" {
			assert.Empty(t, warned(s, "strip-join"))
		} else {
			assert.Contains(t, warned(s, "strip-join"), "The strips along the height are longer than the sheet: make each "+parts)
		}
	}
}

// By hand for a room of 3 or 2 x 5 x 1 1/2 in, 0.012 in stock and 1/16 to 1/8 in of
// clearance: strips are up to 5/32 in lower than the room and keep 1/4 in beside
// their slots, which are half as deep; a cell needs 1/4 in beside its slot and the slot's 0.012 in and
// 1/16 in, 0.3245 in; along 2 - 1/8 in there is room for five. Two of three
// columns in 3 in may be (3 - 1/8 - 0.3245) / 2 = 1.275 in at the most; beside one
// of 1 in the other may be 3 - 1/8 - 0.3245 - 1 = 1.5505 in.
func TestDividersRefusals(t *testing.T) {
	r := thick(t, "dividers")
	r.Width = measure.MustParse("2 in")
	r.Options["columns"] = enclosure.Value{Count: 6}
	checkImpossible(t, r, "columns", "at most 5")
	r = thick(t, "dividers")
	r.Options["column_width"] = enclosure.Value{Length: measure.MustParse("1 1/2 in")}
	checkImpossible(t, r, "column_width", "from 3/8 in to 1 1/4 in")
	r = thick(t, "dividers")
	r.Options["column_1"], r.Options["column_2"] = enclosure.Value{Length: measure.MustParse("1 5/8 in")}, enclosure.Value{Length: measure.MustParse("1 in")}
	checkImpossible(t, r, "column_1", "from 3/8 in to 1 1/2 in")
	r = thick(t, "dividers")
	r.Options["columns"], r.Options["column_3"] = enclosure.Value{Count: 2}, enclosure.Value{Length: measure.MustParse("1 in")}
	checkConflict(t, r, "column_3: there are only 2 columns")
	r = thick(t, "dividers")
	r.Options["row_1"], r.Options["row_2"] = enclosure.Value{Length: measure.MustParse("2 in")}, enclosure.Value{Length: measure.MustParse("2 in")}
	checkConflict(t, r, "row_2: one of the cells must take up what is left")
	r = thick(t, "dividers")
	r.Thickness = measure.MustParse("1/2 in")
	checkImpossible(t, r, "thickness", "at least 13/16 in")
}

// checkConflict checks that two values of a request contradict each other.
func checkConflict(t *testing.T, r *solve.Request, want string) {
	t.Helper()
	_, err := solve.Solve(context.Background(), r)
	var faults fault.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, fault.Conflict, faults[0].Code)
	assert.Equal(t, want, faults[0].Error())
}

func BenchmarkSolveDividers(b *testing.B) { benchmarkThick(b, "dividers") }

func BenchmarkSolveMostDividers(b *testing.B) {
	r := cellsOf(b, 8, 8)
	benchmarkSolve(b, r)
}
