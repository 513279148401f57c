package solve_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// asked is a request in millimetres, snug to half a millimetre.
func asked(t testing.TB, kind string, width, height, thickness, caliper int64, options ...string) *solve.Request {
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok)
	r := &solve.Request{Kind: k, Unit: measure.Millimetre, Width: measure.Micrometres(width), Height: measure.Micrometres(height),
		Thickness: measure.Micrometres(thickness), Caliper: measure.Micrometres(caliper), FitName: "snug", Fit: enclosure.NamedFits()[0].Range(measure.Millimetre),
		CutError: measure.Micrometres(400), ScoreError: measure.Micrometres(400), Options: map[string]enclosure.Value{}}
	marks := measure.Marks(measure.Millimetre)
	r.Ruler = marks[len(marks)-1]
	for i := 0; i < len(options); i += 2 {
		v := enclosure.Value{Choice: options[i+1]}
		if l, err := measure.Parse(options[i+1], measure.Millimetre, measure.ClearComma); err == nil {
			v = enclosure.Value{Length: l}
		}
		r.Options[options[i]] = v
	}
	return r
}

// refusal is the first fault of a request that has no solution.
func refusal(t *testing.T, r *solve.Request) fault.Fault {
	t.Helper()
	_, err := solve.Solve(context.Background(), r)
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	require.NotEmpty(t, faults)
	return faults[0]
}

// Side flaps of an envelope end clear of the folds of the panels over them: half of
// the spine of the closing flap's fold and half of their own caliper, 3/2 + 2 x 0.3 =
// 2.1 mm. They reached 1.4 mm into them.
func TestSideFlapsClearTheFolds(t *testing.T) {
	s, err := solve.Solve(context.Background(), asked(t, "envelope", 120_000, 90_000, 3_000, 300))
	require.NoError(t, err)
	flap, back := s.Pattern.Pieces[0].Panels[1].Outline, s.Pattern.Pieces[0].Panels[0].Outline
	assert.GreaterOrEqual(t, flap[1].Y.Sub(back[0].Y).Millimetres(), 2.1)
	assert.GreaterOrEqual(t, back[3].Y.Sub(flap[2].Y).Millimetres(), 2.1)
	for panel := 1; panel <= 2; panel++ { // as they were, they do not pass
		p := &s.Ideal.Pieces[0].Panels[panel]
		for i, v := range p.Outline {
			for _, corner := range s.Ideal.Pieces[0].Panels[0].Outline {
				if v.X == corner.X && v.Y.Sub(corner.Y).Abs().Less(measure.Millimetres(4)) {
					p.Outline[i].Y = corner.Y
				}
			}
		}
	}
	assert.NotEmpty(t, fold.Prove(&s.Ideal, measure.Length{}).Faults)
}

// A pointed flap left two open holes beside it: the bottom panel now comes up to
// where its sides meet the side flaps. With the overlap that was taken, 15 mm, it is
// refused.
func TestPointedFlapLeavesNoHoles(t *testing.T) {
	r := asked(t, "envelope", 180_000, 125_000, 0, 200, "flap", "pointed")
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	across, up := s.Pattern.Pieces[0].Strips[0].Cells, s.Pattern.Pieces[0].Strips[1].Cells
	meet := up[2].Size.Millimetres() * across[0].Size.Millimetres() / (across[1].Size.Millimetres() / 2) // similar triangles
	assert.LessOrEqual(t, up[1].Size.Sub(up[0].Size).Millimetres(), meet)
	r.Options["overlap"] = enclosure.Value{Length: measure.Millimetres(15)}
	f := refusal(t, r)
	assert.Equal(t, "overlap", f.Field)
	assert.Contains(t, f.Detail, "holes")
}

// Who lets nothing stand out is not told to let less of it: the contents are too small,
// and so large as is said they are held.
func TestTooSmallToCover(t *testing.T) {
	for _, c := range []struct {
		kind, field, open string
		width, height     int64
	}{{"sleeve", "height", "", 60_000, 4_000}, {"slipcase", "width", "side", 5_000, 90_000}, {"slipcase", "height", "top", 90_000, 5_000}} {
		of := func() *solve.Request {
			r := asked(t, c.kind, c.width, c.height, 8_000, 300)
			if c.open != "" {
				r.Options["open"] = enclosure.Value{Choice: c.open}
			}
			return r
		}
		f := refusal(t, of())
		assert.Equal(t, c.field, f.Field, c.kind)
		r, least := of(), measure.MustParse(strings.TrimPrefix(f.Expected, "at least "))
		if c.field == "width" {
			r.Width = least
		} else {
			r.Height = least
		}
		_, err := solve.Solve(context.Background(), r)
		require.NoError(t, err, c.kind)
		r.Options["reveal"] = enclosure.Value{Length: measure.Millimetres(5)}
		assert.Equal(t, "reveal", refusal(t, r).Field, c.kind)
	}
}

// Board does not give way: what is bent or folded flat says so, and what is made of
// board is folded up without any edge pressed into another.
func TestBoard(t *testing.T) {
	for _, kind := range []string{"slotted-band", "envelope", "diagonal-envelope", "pocket", "folded-card", "gusset-bag", "pillow-pack"} {
		f := refusal(t, asked(t, kind, 120_000, 90_000, 2_000, 1_500))
		assert.Equal(t, "caliper", f.Field, kind)
		assert.Equal(t, "under 0.8 mm", f.Expected, kind)
	}
	inches := asked(t, "envelope", 120_000, 90_000, 2_000, 1_500)
	inches.Unit, inches.Ruler = measure.Inch, measure.MustParseStep("1/16 in")
	assert.Equal(t, "under 0.031 in", refusal(t, inches).Expected, "who measures in inches is told in inches: 0.8 / 25.4")
	for kind, slit := range map[string][]string{"dividers": {"slots", "slit"}, "tuck-carton": {"friction_slit", "5mm"}} {
		f := refusal(t, asked(t, kind, 120_000, 90_000, 60_000, 1_500, slit...))
		assert.Equal(t, slit[0], f.Field, kind)
		assert.Contains(t, f.Detail, "no width", kind)
	}
	soft := asked(t, "tuck-carton", 120_000, 90_000, 60_000, 900) // of stock that gives way at 0.9 mm, edges are pressed in
	soft.BoardFrom = measure.Millimetres(1)
	s, err := solve.Solve(context.Background(), soft)
	require.NoError(t, err)
	assert.Empty(t, fold.Prove(&s.Ideal, measure.Length{}).Faults)
	s.Ideal.BoardFrom = measure.Length{}
	assert.NotEmpty(t, fold.Prove(&s.Ideal, measure.Length{}).Faults, "board of 0.9 mm is not")
	for _, kind := range []string{"tray", "lidded-box", "drawer-box", "slipcase", "tuck-carton", "prism-box", "sleeve", "dividers"} {
		r := asked(t, kind, 120_000, 90_000, 60_000, 1_500)
		if kind == "prism-box" {
			r.Height = measure.Length{}
		}
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err, kind)
		exact := fold.Prove(&s.Ideal, measure.Length{})
		assert.Empty(t, exact.Faults, kind)
	}
}

// Side walls end between outside tabs: the blank is one part, without crumbs, and
// nothing is slit that is not said.
func TestOutsideTabsLeaveNoCrumbs(t *testing.T) {
	s, err := solve.Solve(context.Background(), asked(t, "tray", 76_000, 102_000, 25_000, 400, "corners", "outside"))
	require.NoError(t, err)
	outline := s.Pattern.Pieces[0].Contours()
	assert.Len(t, outline, 1)
	assert.Len(t, outline[0], 36)
}

// A tuck of 15 mm does not go into a carton of 2.8 mm: at most 1.2 times its lid.
func TestTuckGoesInOverItsLid(t *testing.T) {
	f := refusal(t, asked(t, "tuck-carton", 60_000, 90_000, 2_800, 300, "tuck", "15 mm"))
	assert.Equal(t, "tuck", f.Field)
	s, err := solve.Solve(context.Background(), asked(t, "tuck-carton", 60_000, 90_000, 8_000, 300))
	require.NoError(t, err)
	up := s.Pattern.Pieces[0].Strips[1].Cells
	assert.LessOrEqual(t, up[4].Size.Millimetres(), 1.2*up[3].Size.Millimetres(), "the default gives way to the lid")
}

// The least inset of a slipcase's laps is what the folded case needs: with it the
// proof passes, with half a caliper less than the end wall asks for it does not.
func TestLeastInsetIsWhatTheCaseNeeds(t *testing.T) {
	r := asked(t, "slipcase", 120_000, 90_000, 20_000, 400)
	plan, sizes := planned(t, r, r.Caliper)
	for i, reading := range plan.Problem.Readings {
		if reading.Name != "inset of the laps" {
			continue
		}
		for _, w := range plan.Problem.Windows {
			if w.Name == reading.Name {
				sizes[i] = w.Min
			}
		}
		p := plan.Build(sizes)
		assert.Empty(t, fold.Prove(&p, measure.Length{}).Faults)
		sizes[i] = measure.Length{}
		p = plan.Build(sizes)
		assert.NotEmpty(t, fold.Prove(&p, measure.Length{}).Faults)
	}
}

// The inner panel of a letter fold is shorter by 2t or the next mark, at most 6 mm
// more: a creep of a centimetre is not given.
func TestGreatestCreep(t *testing.T) {
	r := asked(t, "folded-card", 211_000, 111_000, 0, 200, "fold", "letter")
	r.FitName, r.Fit = "", enclosure.Range{Min: measure.Millimetres(1), Max: measure.Millimetres(12)}
	plan, _ := planned(t, r, r.Caliper)
	for _, reading := range plan.Problem.Readings {
		if reading.Name == "creep" {
			assert.InDelta(t, 0.4, reading.Min.Millimetres(), 1e-9)
			assert.LessOrEqual(t, reading.Max.Millimetres(), 0.4+6)
		}
	}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	cells := s.Pattern.Pieces[0].Strips[0].Cells
	assert.LessOrEqual(t, cells[1].Size.Sub(cells[2].Size).Millimetres(), 6.4)
}

// Under an ornament the tabs are pressed flat: the outside is the closed band, a tab
// and the ornament thick, as the guide says, and not as high as the tabs stood.
func TestOrnamentLiesOnPressedTabs(t *testing.T) {
	r := asked(t, "slotted-band", 89_000, 0, 2_300, 300)
	plain, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	r.Options["ornament_width"] = enclosure.Value{Length: measure.Millimetres(40)}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	assert.InDelta(t, 2.3+2*0.3+2*0.3, s.Outside.Thickness.Millimetres(), 0.7, "the fit leaves some room")
	tab := s.Pattern.Pieces[0].Strips[0].Cells[0].Size
	assert.InDelta(t, plain.Outside.Thickness.Sub(tab).Add(s.Ornament.Adds).Millimetres(), s.Outside.Thickness.Millimetres(), 0.3, "within the half caliper that tabs stand in the front")
}

// A step that closes a gap says so: at 1/8 in a sleeve of stock of 0.06 in has equal
// sides, and a gap of one caliper that 1/16 in closes.
func TestAlternativesSayWhatTheyClose(t *testing.T) {
	r := asked(t, "sleeve", 50_000, 120_000, 2_000, 1_524)
	r.Unit, r.Ruler = measure.Inch, measure.Marks(measure.Inch)[5]
	r.FitName, r.Fit = "loose", enclosure.NamedFits()[2].Range(measure.Inch)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	require.NotEmpty(t, s.Alternatives)
	assert.Equal(t, measure.Micrometres(1_524), s.Proof.Gap)
	for _, a := range s.Alternatives {
		forced := *r
		forced.Step = a.Step
		alone, err := solve.Solve(context.Background(), &forced)
		require.NoError(t, err)
		assert.Equal(t, alone.Proof.Gap, a.Gap, "as that step alone has it")
	}
	assert.Equal(t, measure.Sixtyfourths(4).Sub(measure.Micrometres(1_524)), s.Alternatives[0].Gap, "1/16 in less a caliper")
}

// The front of a sleeve with one score a side ends before the fold at the lap: half of
// the thickness that the fold goes round rises on the front's own side of the score,
// and a front that reached into it would stand off. Its ideal edge was caught by a
// golden answer alone.
func TestFrontOfASleeveEndsBeforeTheFold(t *testing.T) {
	for _, thickness := range []int64{400, 1_200, 2_200, 3_000} {
		r := asked(t, "sleeve", 120_000, 90_000, thickness, 300, "scores", "one")
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		for _, p := range []*pattern.Pattern{&s.Pattern, &s.Ideal} {
			cells := p.Pieces[0].Strips[0].Cells
			back, front := cells[1].Size, cells[0].Size
			assert.GreaterOrEqual(t, back.Sub(front).Nanometres(), 500*thickness, "half of it, in nanometres")
		}
	}
}
