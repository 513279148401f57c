package guide_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// practice is the strip of common practice: 3 1/2 in wide and 0.09 in thick in
// paper of 0.012 in, tabs of 1/2 in, 1 3/4 in high, snug.
func practice() *solve.Solution {
	k, _ := repertoire.Lookup("slotted-band")
	r := usual(k, measure.Inch)
	r.Height = measure.Length{}
	r.FitName, r.Fit = "snug", enclosure.NamedFits()[0].Range(measure.Inch)
	r.Options["band_height"] = enclosure.Value{Length: measure.MustParse("1 3/4 in")}
	s, err := solve.Solve(context.Background(), r)
	if err != nil {
		panic(err)
	}
	return s
}

func ExampleWrite() {
	g, err := guide.Write(practice(), guide.Options{Language: "en"})
	if err != nil {
		fmt.Println(err)
		return
	}
	score := g.Steps[1]
	fmt.Println(score.Title)
	for _, line := range score.Lines {
		fmt.Println("-", strings.ReplaceAll(line, "\u00a0", " "))
	}
	// Output:
	// Score the band
	// - 1/2 in from the left edge: score 1.
	// - 2 1/4 in from the left edge: score 2.
	// - 5 7/8 in from the left edge: score 3.
	// - 7 3/4 in from the left edge: score 4.
}

func TestStepsComeInTheOrderOfHands(t *testing.T) {
	order := []guide.Stage{guide.StageCut, guide.StageScore, guide.StageSlit, guide.StageFold, guide.StageClose, guide.StageDress}
	s := practice()
	g, err := guide.Write(s, guide.Options{})
	require.NoError(t, err)
	last := -1
	for _, step := range g.Steps {
		at := -1
		for i, stage := range order {
			if stage == step.Stage {
				at = i
			}
		}
		assert.Greater(t, at, last, step.Title)
		last = at
	}
}

func TestNumbersOfASteps(t *testing.T) {
	g, err := guide.Write(practice(), guide.Options{Units: guide.Both})
	require.NoError(t, err)
	score := g.Steps[1].Numbers
	require.Len(t, score, 4)
	assert.Equal(t, guide.Number{What: "at", Text: "2\u00a01/4\u00a0in (57.2\u00a0mm)", In: 2.25, MM: 57.15}, score[1])
	slit := g.Steps[2].Numbers
	assert.Equal(t, "Left slit", strings.ToUpper(slit[0].Of[:1])+slit[0].Of[1:])
}

func TestOrnament(t *testing.T) {
	k, _ := repertoire.Lookup("slotted-band")
	r := usual(k, measure.Inch)
	r.Options["ornament_width"] = enclosure.Value{Length: measure.MustParse("1 in")}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	g, err := guide.Write(s, guide.Options{})
	require.NoError(t, err)
	last := g.Steps[len(g.Steps)-1]
	assert.Equal(t, guide.StageDress, last.Stage)
	assert.Contains(t, last.Text, "The ornament is 1\u00a0in wide and 1\u00a0in high")
	assert.Contains(t, strings.Join(g.Cautions, " "), "open a window")
	assertNumbersFound(t, s, g)
}

// A warning that two pieces would do away with says so in every language.
func TestOfferInWords(t *testing.T) {
	k, _ := repertoire.Lookup("sleeve")
	r := usual(k, measure.Inch)
	r.Thickness = measure.MustParse("1 in")
	r.SheetWidth, r.SheetHeight = measure.MustParse("6 in"), measure.MustParse("6 in")
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	for language, want := range map[string]string{"en": "In two pieces it does: join=two-pieces.", "de": "In zwei Stücken ginge es (join=two-pieces)."} {
		g, err := guide.Write(s, guide.Options{Language: language})
		require.NoError(t, err)
		assert.Contains(t, flowed(g.Text()), want)
	}
}

// Two pieces that are glued to one another are glued flat and folded as one, and the
// contents lie on the face that the second lap is glued to.
func TestGuideInTwoPieces(t *testing.T) {
	for kind, words := range map[string][3]string{"sleeve": {"back", "front half of the sleeve", "all over the outside of the second lap"},
		"tuck-carton": {"", "back half of the carton", "Put glue on the outside of the second lap"},
		"lidded-box":  {"base", "right half of the lid", "outside of the bottom wall of the left half of the lid"},
		"gusset-bag":  {"front", "back half of the bag", "all over the outside of the second lap"}} {
		k, _ := repertoire.Lookup(kind)
		r := usual(k, measure.Inch)
		r.Thickness = measure.MustParse("1 in")
		r.Options["join"] = enclosure.Value{Choice: "two-pieces"}
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		g, err := guide.Write(s, guide.Options{})
		require.NoError(t, err)
		text := flowed(g.Text())
		set := strings.Index(text, "Set the "+words[1]+" down")
		assert.Positive(t, set, "%s: %s", kind, text)
		assert.Less(t, set, strings.LastIndex(text, "up to a right angle"))
		assert.Contains(t, text, words[2])
		if words[0] != "" {
			assert.Contains(t, text, "the inside of the "+words[0])
		}
	}
}

// Nothing is filled before it is made, nor put into what is not made.
func TestPortfolioIsMadeBeforeItIsFilled(t *testing.T) {
	g, err := guide.WritePortfolio(nested(t, measure.Inch, "dividers", "tray", "sleeve"), guide.Options{})
	require.NoError(t, err)
	text := flowed(g.Text())
	at := func(what string) int {
		assert.Contains(t, text, what)
		return strings.Index(text, what)
	}
	order := []int{at("Fold and glue the tray"), at("Fold and glue the sleeve"), at("Stand the width strip on edge"),
		at("Lay the dividers on the inside of the base"), at("Slide the tray in from the top edge")}
	assert.IsIncreasing(t, order)
}

// Whatever a layer alone needs, the whole needs: baking paper for glue too, though the inmost layer has none. Of
// rulers it needs one, with the finest marks of all.
func TestPortfolioNeedsWhatItsLayersNeed(t *testing.T) {
	p := nested(t, measure.Inch, "dividers", "tray", "sleeve")
	whole, err := guide.WritePortfolio(p, guide.Options{})
	require.NoError(t, err)
	texts := func(items []guide.Item) (all []string) {
		for _, item := range items {
			_, text, of := strings.Cut(item.Text, ": ")
			if !of {
				text = item.Text
			}
			all = append(all, text)
		}
		return all
	}
	for _, s := range p.Solutions {
		alone, err := guide.Write(s, guide.Options{})
		require.NoError(t, err)
		assert.Subset(t, texts(whole.Materials), texts(alone.Materials))
		assert.Subset(t, texts(whole.Tools), texts(alone.Tools)[1:])
	}
	assert.Equal(t, "Ruler marked in 1/8\u00a0in", whole.Tools[0].Text, "two layers are made at 1/2 in and 1/8 in")
	assert.Equal(t, 1, strings.Count(strings.Join(texts(whole.Tools), "\n"), "Ruler"))
}

func TestLanguageChoice(t *testing.T) {
	s := practice()
	for asked, want := range map[string]string{"": "en", "en": "en", "en-GB": "en", "de": "de", "de-AT": "de", "DE": "de"} {
		g, err := guide.Write(s, guide.Options{Language: asked})
		require.NoError(t, err, asked)
		assert.Equal(t, want, g.Language)
	}
	for _, asked := range []string{"fr", "xx", "not a language", "d"} {
		_, err := guide.Write(s, guide.Options{Language: asked})
		var f fault.Fault
		require.ErrorAs(t, err, &f, asked)
		assert.Equal(t, fault.Unknown, f.Code)
		assert.Equal(t, asked, f.Value)
		assert.Equal(t, "en or de", f.Expected)
	}
}

func TestParseUnits(t *testing.T) {
	for word, want := range map[string]guide.Units{"": guide.OfRuler, "in": guide.Inches, "mm": guide.Millimetres, "both": guide.Both} {
		got, err := guide.ParseUnits(word)
		require.NoError(t, err)
		assert.Equal(t, want, got)
	}
	_, err := guide.ParseUnits("cm")
	assert.ErrorAs(t, err, &fault.Fault{})
}

// Ways of writing 2 1/4 in: the millimetres are 57.15 exactly.
func TestUnits(t *testing.T) {
	for units, want := range map[guide.Units]string{
		guide.OfRuler: "2 1/4 in", guide.Inches: "2 1/4 in", guide.Millimetres: "57.2 mm", guide.Both: "2 1/4 in (57.2 mm)",
	} {
		g, err := guide.Write(practice(), guide.Options{Units: units})
		require.NoError(t, err)
		assert.Equal(t, want+" from the left edge: score 2.", strings.ReplaceAll(g.Steps[1].Lines[1], "\u00a0", " "))
	}
}

// A slit that meets no edge is no cut into one: its length, how far it lies from the
// edge beside it, and where it begins and ends.
func TestASlitInsideTheBlankReadsAsOne(t *testing.T) {
	r := usual(kindOf(t, "drawer-box"), measure.Millimetre)
	r.Options["ribbon_slit"] = enclosure.Value{Length: measure.MustParse("12 mm")}
	s, err := solve.Solve(t.Context(), r)
	require.NoError(t, err)
	for language, want := range map[string]string{
		"en": `Ribbon slit: a slit 12 mm long, [0-9.]+ mm from the top edge and along it, from [0-9.]+ mm to [0-9.]+ mm from the left edge\.`,
		"de": `Bandschlitz: ein Schlitz, 12 mm lang, [0-9,]+ mm von der oberen Kante entfernt und an ihr entlang, von [0-9,]+ mm bis [0-9,]+ mm von der linken Kante\.`,
	} {
		g, err := guide.Write(s, guide.Options{Language: language})
		require.NoError(t, err)
		assert.Regexp(t, want, strings.ReplaceAll(flowed(g.Text()), "\u00a0", " "))
	}
}

func BenchmarkWrite(b *testing.B) {
	s := practice()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := guide.Write(s, guide.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHTML(b *testing.B) {
	g, err := guide.Write(practice(), guide.Options{})
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := g.HTML(guide.Pictures{}); err != nil {
			b.Fatal(err)
		}
	}
}
