package solve

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// A pattern adapted to what it was made for is the very pattern, of every kind, in
// every fit, in both units, and in every style that there is.
func TestAdaptingToItsOwnContentsGivesThePatternBack(t *testing.T) {
	given := 0
	for _, k := range repertoire.Kinds() {
		for fit := range enclosure.NamedFits() {
			for _, thickness := range []int64{2, 24} {
				for _, options := range styles(k) {
					r := seen(t, k.Name, fit, 95, 60, thickness)
					r.Options = options
					s, err := Solve(context.Background(), r)
					if err != nil {
						continue
					}
					made, wanted := *s.Request, *s.Request
					a, err := Adapt(context.Background(), &made, &wanted, s.ReadOff())
					require.NoError(t, err, "%s %v", k.Name, options)
					assert.Equal(t, s.Pattern, a.After.Pattern, "%s %v", k.Name, options)
					given++
				}
			}
		}
	}
	assert.Greater(t, given, 150)
	t.Logf("%d patterns", given)
}

// styles are no options and each choice but the usual one.
func styles(k *enclosure.Kind) []map[string]enclosure.Value {
	list := []map[string]enclosure.Value{nil}
	for _, p := range k.Params {
		if p.Type == enclosure.ChoiceParam {
			for _, word := range p.Choices[1:] {
				list = append(list, map[string]enclosure.Value{p.Name: {Choice: word}})
			}
		}
	}
	return list
}

// A sleeve 3 x 4 made loose and with a wide lap is loose and has that lap round
// 3 1/4 x 4 1/2, too: by hand, every panel grows by as much as the thing does.
func TestAdaptKeepsTheCharacter(t *testing.T) {
	r := seen(t, "sleeve", 2, 76, 100, 20)
	r.Options = map[string]enclosure.Value{"lap": {Length: measure.Millimetres(22)}}
	s, err := Solve(context.Background(), r)
	require.NoError(t, err)
	made := *s.Request
	made.Options, made.FitName, made.Fit = nil, "easy", enclosure.FitNamed("easy", measure.Millimetre)
	wanted := made
	wanted.Width, wanted.Height = measure.Millimetres(83), measure.Millimetres(114)
	a, err := Adapt(context.Background(), &made, &wanted, s.ReadOff())
	require.NoError(t, err)
	grown := map[string]int64{}
	for _, c := range a.Sizes {
		grown[c.Name] = c.To.Sub(c.From).Nanometres() / 1_000_000
	}
	assert.Equal(t, s.Pattern.Pieces[0].Height.Add(measure.Millimetres(14)), a.After.Pattern.Pieces[0].Height)
	assert.Equal(t, s.Pattern.Pieces[0].Width.Add(measure.Millimetres(14)), a.After.Pattern.Pieces[0].Width, "front and back grow by 7 mm each: %v", grown)
	assert.Equal(t, int64(0), grown["lap"], "%v", grown)
	assert.Equal(t, s.Fits[0].Nominal, a.After.Fits[0].Nominal, "as loose as before")
	assert.True(t, a.After.Proof.Closes && a.After.Proof.Holds)
}

// The style is read off where nobody says it; what does not add up is refused.
func TestAdaptReadsTheStyle(t *testing.T) {
	r := seen(t, "slotted-band", 1, 95, 60, 2)
	r.Options = map[string]enclosure.Value{"scores": {Choice: "two"}}
	s, err := Solve(context.Background(), r)
	require.NoError(t, err)
	made := *s.Request
	made.Options = nil
	wanted := made
	wanted.Width = measure.Millimetres(120)
	a, err := Adapt(context.Background(), &made, &wanted, s.ReadOff())
	require.NoError(t, err)
	assert.Equal(t, []Choice{{"scores", "two"}}, a.Style)
	made.Options = r.Options
	own := s.ReadOff()
	own.Marks[2] = own.Marks[2].Add(measure.Millimetres(3))
	_, err = Adapt(context.Background(), &made, &wanted, own)
	assert.ErrorContains(t, err, "do not add up")
}

// The marks of a ruler are everybody's: a search at finer ones leaves them as they are.
func TestSearchingFinerLeavesTheRulersAlone(t *testing.T) {
	eighths := measure.MustParseStep("1/8 in")
	_ = append(measure.SearchSteps(eighths), measure.Finest(measure.Inch))
	assert.Equal(t, "1/16 in", measure.MustParseStep("1/16 in").String())
	assert.Equal(t, "1/32 in", measure.Marks(measure.Inch)[5].String())
}
