package solve_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// cornersOf are the corners of a solution's outlines as somebody measures them.
func cornersOf(s *solve.Solution) (corners [][2]measure.Length) {
	for i := range s.Pattern.Pieces {
		if s.Pattern.Pieces[i].WholeBlank() {
			continue
		}
		for _, ring := range s.Pattern.Pieces[i].Contours() {
			for _, c := range ring {
				corners = append(corners, [2]measure.Length{c.X, c.Y})
			}
		}
	}
	return corners
}

// What a maker reads off the blanks, scores and outlines of any kind is judged as the
// solution itself; only cuts of their own are asked for by name.
func TestOutlinesSettleWhatLiesOnNoEdge(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			r := asked(t, k.Name, 88_000, 125_000, 38_000, 300)
			s, err := solve.Solve(context.Background(), r)
			if err != nil {
				r.Thickness, r.Height = measure.Millimetres(2), measure.Millimetres(90)
				if s, err = solve.Solve(context.Background(), r); err != nil {
					r.Height, r.Thickness = measure.Length{}, measure.Millimetres(30)
					s, err = solve.Solve(context.Background(), r)
				}
			}
			require.NoError(t, err)
			own := s.ReadOff()
			all := own.Depths
			own.Corners, own.Depths = cornersOf(s), nil
			if len(own.Corners) == 0 {
				return
			}
			_, err = solve.CheckOwn(context.Background(), r, own)
			var faults fault.Faults
			require.NoError(t, faults.Add(err))
			for _, f := range faults {
				require.Equal(t, "depths", f.Field, f.Error())
			}
			if len(faults) > 0 { // cuts of their own: those with these names
				_, names, _ := strings.Cut(faults[0].Expected, ": ")
				own.Depths = named(t, r, s, all, strings.Split(names, ", "))
				assert.Less(t, len(own.Depths), len(all)+1)
			}
			c, err := solve.CheckOwn(context.Background(), r, own)
			require.NoError(t, err)
			assert.True(t, c.Works, "%v", c.Findings)
		})
	}
}

// named picks sizes by the names that a check without the outline asks for them by.
func named(t *testing.T, r *solve.Request, s *solve.Solution, all []measure.Length, wanted []string) (picked []measure.Length) {
	own := s.ReadOff()
	own.Depths = nil
	_, err := solve.CheckOwn(context.Background(), r, own)
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	require.NotEmpty(t, faults)
	_, list, _ := strings.Cut(faults[0].Expected, ": ")
	list, _, _ = strings.Cut(list, ";")
	from := 0
	names := strings.Split(list, ", ")
	for _, w := range wanted {
		for names[from] != w {
			from++
		}
		picked = append(picked, all[from])
		from++
	}
	return picked
}

// A corner that contradicts the scores is named.
func TestCornersThatContradictAreNamed(t *testing.T) {
	r := asked(t, "tray", 88_000, 125_000, 38_000, 300)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	own := s.ReadOff()
	own.Corners, own.Depths = cornersOf(s), nil
	own.Corners[7][0] = own.Corners[7][0].Add(measure.Millimetres(3))
	_, err = solve.CheckOwn(context.Background(), r, own)
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	require.NotEmpty(t, faults)
	assert.Equal(t, "outline", faults[0].Field)
	assert.Contains(t, faults[0].Detail, "corner 8 does not lie from the left where", "they are counted from one")
	own.Corners[7][0] = own.Corners[7][0].Sub(measure.Millimetres(3))
	own.Corners[8][1] = own.Corners[8][1].Add(measure.Millimetres(3))
	_, err = solve.CheckOwn(context.Background(), r, own)
	faults = nil
	require.NoError(t, faults.Add(err))
	assert.Contains(t, faults[0].Detail, "corner 9 does not lie from the bottom where")
	own.Corners = own.Corners[:5]
	_, err = solve.CheckOwn(context.Background(), r, own)
	faults = nil
	require.NoError(t, faults.Add(err))
	assert.Equal(t, "outline", faults[0].Field)
	assert.Contains(t, faults[0].Expected, "corners of the outline")
}

// One depth too many is told with what the further sizes are, and that the outline, which was
// not measured, would show them.
func TestDepthsTooManyAreTold(t *testing.T) {
	for _, kind := range []string{"envelope", "slotted-band"} {
		r := asked(t, kind, 88_000, 125_000, 2_000, 300)
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		own := s.ReadOff()
		require.NotEmpty(t, own.Depths, kind)
		own.Depths = append(own.Depths, measure.Millimetres(10))
		_, err = solve.CheckOwn(context.Background(), r, own)
		var faults fault.Faults
		require.NoError(t, faults.Add(err))
		require.NotEmpty(t, faults)
		assert.Equal(t, "depths", faults[0].Field)
		said := faults[0].Detail + faults[0].Expected + faults[0].Hint
		assert.Contains(t, said, "further sizes: ")
		assert.Contains(t, said, "or the corners of the outline, which show what is no cut of its own")
	}
}

// What was not measured is told as missing alone: there is nothing of it that could go
// down. Marks that do are told as such.
func TestWhatWasNotMeasuredIsMissing(t *testing.T) {
	for _, kind := range []string{"tray", "slotted-band", "prism-box", "tuck-carton"} {
		thickness := int64(40_000)
		if kind == "slotted-band" {
			thickness = 2_000
		}
		r := asked(t, kind, 88_000, 125_000, thickness, 300)
		if kind == "prism-box" {
			r.Height = measure.Length{}
		}
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		faultsOf := func(own *solve.Measurements) (codes []fault.Code) {
			_, err := solve.CheckOwn(context.Background(), r, own)
			var faults fault.Faults
			require.NoError(t, faults.Add(err), kind)
			for _, f := range faults {
				codes = append(codes, f.Code)
			}
			return codes
		}
		own := s.ReadOff()
		for _, list := range []*[]measure.Length{&own.Marks, &own.Rises} {
			whole := *list
			for n := range whole {
				*list = whole[:n]
				assert.Equal(t, []fault.Code{fault.Missing}, faultsOf(own), "%s, %d of %d", kind, n, len(whole))
			}
			*list = whole
		}
		own.Marks = slices.Clone(own.Marks)
		slices.Reverse(own.Marks)
		assert.Contains(t, faultsOf(own), fault.Impossible, kind)
	}
}
