package guide_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// stepLines counts the lines of text in the steps of a guide.
func stepLines(t *testing.T, s *solve.Solution) (lines int) {
	g, err := guide.Write(s, guide.Options{})
	require.NoError(t, err)
	text := string(g.Text())
	_, text, _ = strings.Cut(text, "\nSteps\n-----\n")
	text, _, _ = strings.Cut(text, "\nTake care\n")
	for _, line := range strings.Split(text, "\n") {
		if line != "" {
			lines++
		}
	}
	return lines
}

// Strangers read few lines.
func TestGuidesStayShort(t *testing.T) {
	for kind, most := range map[string]int{"band": 30, "tray": 40, "lidded-box": 70} {
		assert.LessOrEqual(t, stepLines(t, solved(t, kind, measure.Inch)), most, kind)
	}
}

// A score ends where it would mark a face that stays smooth: those of the tray's
// tabs lie inside its base, those of a carton's dust flaps inside its front.
func TestScoresStayOffFaces(t *testing.T) {
	for kind, want := range map[string]string{
		"tray":        "from the left and right edges, below score 3 and above score 4: for the 4 tabs.",
		"tuck-carton": "from the bottom and top edges, between score 1 and score 2 and right of score 3: for the 4 flaps.",
	} {
		g, err := guide.Write(solved(t, kind, measure.Inch), guide.Options{})
		require.NoError(t, err)
		assert.Contains(t, flowed(g.Text()), want)
	}
}

// It is told alike whichever corner the outlines begin with.
func TestOutlinesBeginAtAnyCorner(t *testing.T) {
	for _, kind := range []string{"tray", "tuck-carton"} {
		s := solved(t, kind, measure.Inch)
		want, err := guide.Write(s, guide.Options{})
		require.NoError(t, err)
		for _, pieces := range [][]pattern.Piece{s.Pattern.Pieces, s.Ideal.Pieces} {
			for i := range pieces {
				for k := range pieces[i].Panels {
					p := &pieces[i].Panels[k]
					p.Outline = slices.Concat(p.Outline[2:], p.Outline[:2])
				}
			}
		}
		have, err := guide.Write(s, guide.Options{})
		require.NoError(t, err)
		assert.Equal(t, want.Text(), have.Text())
	}
}

// Paper that gives way by less than its caliper is not told of; a long tuck that slides past what it closes bows by
// its length squared over eight lids at the most, which is 7.3 mm here.
func TestPaperThatGivesWayIsTold(t *testing.T) {
	told := regexp.MustCompile(`The paper gives way meanwhile by about ([0-9.]+) mm`)
	for tuck, most := range map[string]float64{"15 mm": 0, "60 mm": 60 * 60 / (8 * 61.5)} {
		r := usual(kindOf(t, "tuck-carton"), measure.Millimetre)
		r.Width, r.Height, r.Thickness = measure.Millimetres(93), measure.Millimetres(157), measure.MustParse("62.5 mm")
		r.Caliper, r.SheetWidth, r.SheetHeight = measure.Micrometres(165), measure.Length{}, measure.Length{}
		r.Options["tuck"] = enclosure.Value{Length: measure.MustParse(tuck)}
		s, err := solve.Solve(t.Context(), r)
		require.NoError(t, err)
		g, err := guide.Write(s, guide.Options{})
		require.NoError(t, err)
		o, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
		require.NoError(t, err)
		var want, have []string
		for i := range o.Steps {
			if by := measure.Micrometres(int64(math.Round(1000 * o.Steps[i].Flex))); !by.Less(r.Caliper) {
				want = append(want, by.Decimal(measure.Millimetre, 2))
			}
			assert.LessOrEqual(t, o.Steps[i].Flex, max(most, r.Caliper.Millimetres()))
		}
		for _, m := range told.FindAllStringSubmatch(strings.ReplaceAll(flowed(g.Text()), "\u00a0", " "), -1) {
			have = append(have, m[1]+" mm")
		}
		assert.Equal(t, most > 0, len(want) > 0, tuck)
		assert.Equal(t, want, have, tuck)
	}
}

// Board is not pressed with a bone folder: its scores are cut half through.
func TestBoardIsCutHalfThrough(t *testing.T) {
	r := usual(kindOf(t, "tray"), measure.Millimetre)
	r.Caliper = measure.Millimetres(2)
	s, err := solve.Solve(t.Context(), r)
	require.NoError(t, err)
	g, err := guide.Write(s, guide.Options{})
	require.NoError(t, err)
	text := flowed(g.Text())
	assert.Contains(t, text, "Half-cut the folds of the tray")
	assert.Contains(t, text, "cut half through instead of pressed")
	assert.Contains(t, text, "Board, ")
	assert.NotContains(t, text, "named, before you press")
	assert.NotContains(t, text, "bone folder")
	r.BoardFrom = measure.Millimetres(3) // soft stock, its maker says
	s, err = solve.Solve(t.Context(), r)
	require.NoError(t, err)
	g, err = guide.Write(s, guide.Options{})
	require.NoError(t, err)
	assert.Contains(t, flowed(g.Text()), "bone folder")
}

// What is done as before is not told again: the lid of a box is made like its tray.
func TestLikeStepsAreToldOnce(t *testing.T) {
	g, err := guide.Write(solved(t, "lidded-box", measure.Inch), guide.Options{})
	require.NoError(t, err)
	assert.Equal(t, 3, strings.Count(flowed(g.Text()), "Do this as for the tray."), "scores, cuts, folds")
}

// Every length in cutting, scoring and folding is on the ruler, or a mark and
// papers.
func TestLengthsOfStepsAreOnTheRuler(t *testing.T) {
	told := []string{"gives way", "their cuts together", "in its place"} // what nobody sets
	off := regexp.MustCompile(`\d\.\d+\x{a0}in`)
	for _, k := range repertoire.Kinds() {
		g, err := guide.Write(solved(t, k.Name, measure.Inch), guide.Options{})
		require.NoError(t, err)
		for i := range g.Steps {
			for _, line := range g.Steps[i].Lines {
				polygon := k.Name == "prism-box" && strings.Contains(line, "across") // whose corners lie on no mark
				if !polygon && !slices.ContainsFunc(told, func(w string) bool { return strings.Contains(line, w) }) {
					assert.NotRegexp(t, off, line, k.Name)
				}
			}
		}
	}
}

// Papers are told of where a hand sets them, not of sizes that are only told.
func TestSizesAreNotToldInPapers(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		g, err := guide.Write(solved(t, k.Name, measure.Millimetre), guide.Options{})
		require.NoError(t, err)
		assert.NotRegexp(t, `[+−].papers?\b`, g.Summary+g.Materials[len(g.Materials)-1].Text, k.Name)
		for i := range g.Steps {
			if first, _, found := strings.Cut(g.Steps[i].Whole(), "A paper more or less"); found {
				assert.Regexp(t, `\d.papers?\b`, first, "%s, step %d", k.Name, i+1)
			}
		}
	}
}

// The grain that is given is believed, and where it cannot be kept the warning
// alone speaks of it.
func TestGivenGrainIsBelieved(t *testing.T) {
	r := usual(kindOf(t, "sleeve"), measure.Inch)
	r.SheetWidth, r.SheetHeight, r.Grain = measure.MustParse("12 in"), measure.MustParse("18 in"), sheet.AlongHeight
	s, err := solve.Solve(t.Context(), r)
	require.NoError(t, err)
	g, err := guide.Write(s, guide.Options{})
	require.NoError(t, err)
	assert.Contains(t, g.Steps[0].Whole(), "the grain, which runs along the height of your sheet")
	assert.NotContains(t, g.Steps[0].Whole(), "if it shows")
}

func kindOf(t *testing.T, name string) *enclosure.Kind {
	k, ok := repertoire.Lookup(name)
	require.True(t, ok)
	return k
}
