package wire

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// told is a request that was solved, what it was asked with, and the answer.
type told struct {
	*solve.Solution
	asked  *Asked
	answer *Solution
}

// solved solves a query about a kind and makes the answer; nil if the kind refuses.
func solved(t *testing.T, k *enclosure.Kind, query string) *told {
	t.Helper()
	a := ask.NewSolve(k).Take()
	a.AddQuery(query)
	a.Parse()
	if !a.Check() {
		return nil
	}
	s, err := solve.Solve(context.Background(), a.Q.Request)
	if err != nil {
		return nil
	}
	require.NoError(t, s.CountYields(context.Background()))
	asked := Ask(&a.Reading, "/v1/solve/"+k.Name)
	return &told{s, asked, OfSolution(s, asked)}
}

// everySolution has each kind made round tasting cards and round a box of tea, in both
// units, of card and of board, and looks at what comes of it.
func everySolution(t *testing.T, look func(t *testing.T, s *told)) {
	t.Helper()
	const cards, tea = "&width=3.5in&height=5in&thickness=0.09in", "&width=4in&height=5in&thickness=1in"
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			made := 0
			for _, of := range []string{
				"unit=in&caliper=0.012in&ruler=1/64in&sheet=12x18in&grammage=240" + cards, "unit=mm&caliper=0.3mm&ruler=0.5mm&step=1mm" + tea,
				"unit=in&caliper=0.06in&board_from=0.05in" + tea, "unit=mm&caliper=0.3mm&sheet=210x297mm&grain=height" + cards,
			} {
				if s := solved(t, k, of); s != nil {
					made++
					look(t, s)
				}
			}
			assert.Positive(t, made, "the kind was never made")
		})
	}
}

// on writes a length down as the exact millimetres that every answer has.
func on(l measure.Length) float64 { return l.Millimetres() }

// sum adds lengths of an answer up.
func sum(list []Panel, across string) (mm float64) {
	for _, p := range list {
		if p.Across == across {
			mm += p.Size.MM
		}
	}
	return mm
}

// TestPanelsAddUpToTheirBlank: what follows one another along a side of a blank is as
// long as the side, each score lies where the panels before it end, and ideals add up as
// readings do. A person checks a blank so before it is scored.
func TestPanelsAddUpToTheirBlank(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		require.Len(t, s.answer.Pieces, len(s.Pattern.Pieces))
		for i, p := range s.answer.Pieces {
			made := &s.Pattern.Pieces[i]
			assert.Equal(t, []any{made.Name, made.Quantity, ""}, []any{p.Name, p.Quantity, p.Layer})
			assert.Equal(t, [2]float64{on(made.Width), on(made.Height)}, [2]float64{p.Blank.Width.MM, p.Blank.Height.MM})
			if got := sum(p.Panels, "width"); got > 0 {
				assert.InDelta(t, p.Blank.Width.MM, got, 1e-6, "%s: panels across its width", p.Name)
			}
			if got := sum(p.Panels, "height"); got > 0 {
				assert.InDelta(t, p.Blank.Height.MM, got, 1e-6, "%s: panels across its height", p.Name)
			}
			for _, sc := range p.Scores {
				beside := on(s.Pattern.Caliper.Times(int64(sc.At.Papers)))
				assert.Contains(t, reached(p.Panels, sc.Across), int64(math.Round(1e6*(sc.At.MM-beside))), "%s of %s ends a panel, or is made beside its end", sc.Name, p.Name)
				from := map[string]string{"width": "left", "height": "bottom", "diagonal": "left"}[sc.Across]
				assert.Equal(t, from, sc.From)
				assert.GreaterOrEqual(t, sc.Angle, 0.0)
				assert.LessOrEqual(t, sc.Angle, 180.0)
				assert.Equal(t, plainer(s, sc.At.MM, sum(p.Panels, sc.Across)), sc.Or != nil, "%s of %s", sc.Name, p.Name)
				if sc.Or != nil {
					whole := sum(p.Panels, sc.Across)
					assert.InDelta(t, whole, sc.At.MM+sc.Or.At.MM, 1e-6, "%s of %s from the other edge", sc.Name, p.Name)
					assert.Equal(t, map[string]string{"left": "right", "bottom": "top"}[sc.From], sc.Or.From)
				}
				assert.Equal(t, s.Pattern.Stiff(), sc.HalfCut != "", "board is cut half through, paper is pressed")
				if sc.HalfCut != "" {
					assert.Equal(t, map[string]string{"valley": "outside", "mountain": "inside"}[sc.Fold], sc.HalfCut)
				}
			}
		}
	})
}

// plainer reports whether a place along a side lies on a coarser mark from the far edge.
func plainer(s *told, at, whole float64) bool {
	mark := func(mm float64) measure.Length {
		own, _ := measure.CoarsestMark(measure.Nanometres(int64(math.Round(1e6*mm))), s.Step.Unit())
		return own.Size()
	}
	return mark(at).Less(mark(whole - at))
}

// reached are the places, in nanometres, at which panels along a side end.
func reached(list []Panel, across string) (ends []int64) {
	at := 0.0
	for _, p := range list {
		if p.Across == across {
			at += p.Size.MM
			ends = append(ends, int64(1e6*at+0.5))
		}
	}
	return ends
}

// TestLengthsAreOneLength: inches and millimetres of a length are the same one (25.4 mm,
// by definition of 1959), what it is off is the reading less the ideal, and what is to be
// set is a mark of the step, papers beside it.
func TestLengthsAreOneLength(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		step := on(s.Step.Size())
		for _, p := range s.answer.Pieces {
			for _, l := range []Length{p.Blank.Width, p.Blank.Height} {
				assert.InDelta(t, l.MM/25.4, l.In, 5.1e-7)
				assert.InDelta(t, l.MM-l.ExactMM, l.OffMM, 1e-9)
				assert.Less(t, l.OffMM, 100*step, "%v: far off its ideal", l)
			}
			for _, c := range p.Cuts {
				assert.InDelta(t, c.Depth.MM/25.4, c.Depth.In, 5.1e-7)
				assert.Equal(t, c.On == "", c.At != nil, "%s lies on a score or has a place of its own", c.Name)
				assert.Contains(t, []string{"left", "right", "top", "bottom"}, c.From)
				if c.Kind == "slit" {
					assert.Zero(t, c.Width.MM)
				}
			}
		}
		assert.Equal(t, s.Step.String(), s.answer.Step)
		assert.Equal(t, s.Request.Unit.String(), s.answer.Unit)
	})
}

// TestEveryLineHasOneStop: each side of a blank is served by one cut, each straight score
// by a stop that lies as far from its edge as one of its lines does, and each slit by one
// that is set to its depth.
func TestEveryLineHasOneStop(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		served := map[string][]float64{} // by piece, edge or line: how far stops are set
		for _, stop := range s.answer.Settings {
			set := stop.At.MM + float64(stop.Papers)*on(s.Pattern.Caliper)
			require.NotEmpty(t, stop.Serves)
			for _, u := range stop.Serves {
				assert.Equal(t, map[bool]string{true: "score", false: "cut"}[u.Do == "score"], stop.Tool, u.Do)
				if u.Do == "blank" {
					served[u.Piece+" "+u.Edge] = append(served[u.Piece+" "+u.Edge], set)
				}
				for _, name := range u.Names {
					line := u.Piece + " " + name + " " + u.Do
					served[line] = append(served[line], fromTheNearEdge(pieceNamed(s.answer, u.Piece), u.Edge, set))
				}
			}
		}
		for i, p := range s.answer.Pieces {
			assert.Equal(t, []float64{p.Blank.Width.MM}, served[p.Name+" left"], "%s is cut to its width", p.Name)
			assert.Equal(t, []float64{p.Blank.Height.MM}, served[p.Name+" bottom"], "%s is cut to its height", p.Name)
			for _, sc := range p.Scores {
				if isStraight(&s.Pattern.Pieces[i], sc.Name) {
					contains(t, served[p.Name+" "+sc.Name+" score"], sc.At.MM, on(s.Pattern.Caliper), p.Name+" "+sc.Name)
				}
			}
			for _, c := range p.Cuts {
				if c.Kind == "slit" && c.On != "" {
					contains(t, served[p.Name+" "+c.Name+" depth"], fromTheNearEdge(&p, c.From, c.Depth.MM), 0, p.Name+" "+c.Name)
				}
			}
		}
	})
}

// pieceNamed is the piece of that name.
func pieceNamed(s *Solution, name string) *Piece {
	return &s.Pieces[slices.IndexFunc(s.Pieces, func(p Piece) bool { return p.Name == name })]
}

// fromTheNearEdge is where a stop set from an edge lies, from the left or the bottom.
func fromTheNearEdge(p *Piece, edge string, set float64) float64 {
	switch edge {
	case "right":
		return p.Blank.Width.MM - set
	case "top":
		return p.Blank.Height.MM - set
	default:
		return set
	}
}

// isStraight reports whether a score runs along a side of its blank.
func isStraight(p *pattern.Piece, name string) bool {
	return slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool {
		return c.Name == name && !c.Bends() && (c.A.X == c.B.X || c.A.Y == c.B.Y)
	})
}

// contains holds a place to be among others, to the nanometre, or one or two papers
// beside one: so far a lap's score lies from the line that it is told on, with a warning.
func contains(t *testing.T, list []float64, at, caliper float64, what string) {
	t.Helper()
	near := func(x float64) bool {
		off := math.Abs(x - at)
		return off < 1e-6 || math.Abs(off-caliper) < 1e-6 || math.Abs(off-2*caliper) < 1e-6
	}
	assert.True(t, slices.ContainsFunc(list, near), "%s lies at %v, its stops at %v", what, at, list)
}

// TestScoresLieWhereFoldsAre: a score is told where some crease of its name is, so that a
// lap that is scored beside its line is told with the paper that the guide tells; and what
// has papers comes to its mark and so many calipers.
func TestScoresLieWhereFoldsAre(t *testing.T) {
	beside := 0
	everySolution(t, func(t *testing.T, s *told) {
		for i, p := range s.answer.Pieces {
			for _, sc := range p.Scores {
				var folds []float64
				for _, c := range s.Pattern.Pieces[i].Creases {
					if at := map[string]measure.Length{"width": c.A.X, "height": c.A.Y}[sc.Across]; c.Name == sc.Name && sc.Across != "diagonal" && c.Bulge == 0 {
						folds = append(folds, on(at))
					}
				}
				if len(folds) > 0 {
					assert.Contains(t, folds, sc.At.MM, "%s of %s", sc.Name, p.Name)
				}
				papersHold(t, s, &sc.At)
				beside += sc.At.Papers
			}
			for _, c := range p.Cuts {
				papersHold(t, s, &c.Depth)
				papersHold(t, s, &c.Width)
				beside += c.Depth.Papers
			}
		}
	})
	assert.Positive(t, beside)
}

// papersHold checks that a mark and its papers come to the length.
func papersHold(t *testing.T, s *told, l *Length) {
	if l.Papers != 0 {
		mark := measure.MustParse(l.Reading)
		assert.InDelta(t, l.MM, on(mark.Add(s.Pattern.Caliper.Times(int64(l.Papers)))), 1e-9)
		assert.True(t, mark.IsMultipleOf(s.Request.Ruler), l.Reading)
	}
}
