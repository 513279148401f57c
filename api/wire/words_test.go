package wire

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
	"creasefit/internal/tolerance"
)

// um is a length of micrometres.
func um(n int64) measure.Length { return measure.Nanometres(1000 * n) }

// marked is the ruler with marks of this size.
func marked(t *testing.T, text string) measure.Step {
	t.Helper()
	step, err := measure.ParseStep(text)
	require.NoError(t, err)
	return step
}

// TestReadings: a mark of the step as it is, one of a finer ruler as such, and
// anything else as a decimal that is rounded once.
func TestReadings(t *testing.T) {
	for _, c := range []struct {
		step string
		at   measure.Length
		want string
	}{
		{"1/8 in", measure.Inches(3), "3 in"},
		{"1/8 in", um(92075), "3 5/8 in"},
		{"1/8 in", um(88900 + 397).Sub(measure.Nanometres(125)), "3 33/64 in"},
		{"1/8 in", um(92100), "3.626 in"},
		{"1 mm", um(92000), "92 mm"},
		{"1 mm", um(92500), "92.5 mm"},
		{"1 mm", um(92075), "92.075 mm"},
		{"1 mm", measure.Nanometres(92075400), "92.075 mm"},
		{"1 mm", measure.Nanometres(-92075600), "-92.076 mm"},
		{"1 mm", measure.Length{}, "0 mm"},
	} {
		assert.Equal(t, c.want, Reading(marked(t, c.step), c.at), "%s %v", c.step, c.at)
	}
	l := length(marked(t, "1 mm"), um(92000), um(92165))
	assert.Equal(t, Length{Reading: "92 mm", In: 3.622047, MM: 92, ExactMM: 92.165, OffMM: -0.165}, l)
	assert.Equal(t, "92.165 mm", exactIn(measure.Millimetre, um(92165)).Reading, "what is stated is not rounded")
	assert.Nil(t, known(measure.Inch, measure.Length{}))
	assert.Nil(t, positive(marked(t, "1 mm"), um(-1)))
	assert.Equal(t, 0.001, positive(marked(t, "1 mm"), um(1)).MM)
	for want, x := range map[string]float64{"0": -0.00001, "0.125": 0.125, "12": 11.99996, "-0.5": -0.5} {
		assert.Equal(t, want, number(x, 4))
	}
	for n, want := range map[int]string{0: "0 sheets", 1: "1 sheet", 2: "2 sheets"} {
		assert.Equal(t, want, Count(n, "sheet", "sheets"))
	}
}

// TestChancesAreSaidDownwards: never more often than it is.
func TestChancesAreSaidDownwards(t *testing.T) {
	for chance, want := range map[float64]string{
		1: "Goes in at least 99 times in 100", 0.99: "Goes in at least 99 times in 100", 0.9899: "Goes in 98 times in 100", 0.29: "Goes in 29 times in 100",
		0.01: "Goes in 1 times in 100", 0.0099: "Hardly ever goes in", 0: "Hardly ever goes in",
	} {
		assert.Equal(t, want, timesIn100(chance, Voice{}), "%v", chance)
	}
}

// request is one in millimetres.
func request(t *testing.T) *solve.Request {
	return &solve.Request{Unit: measure.Millimetre, Ruler: marked(t, "0.5 mm"), Caliper: um(300), CaliperTolerance: um(20), CutError: um(500), ScoreError: um(400),
		SizeTolerance: tolerance.Within(um(100)), ThicknessTolerance: tolerance.Source{Low: um(100), High: um(200)}}
}

// TestHowSureInWords: the least sure fit with its room, and the worst of it only if that
// is no more than half a mark of the ruler away from too tight.
func TestHowSureInWords(t *testing.T) {
	r := request(t)
	fits := []solve.Fit{
		{Axis: pattern.Width, Nominal: um(1200), WorstCase: enclosure.Range{Min: um(200)}, Chance: 1},
		{Axis: pattern.Thickness, Between: "lid over tray", Nominal: um(600), WorstCase: enclosure.Range{Min: um(-700)}, Chance: 0.97},
		{Axis: pattern.Height, Between: "lid over tray", Nominal: um(0), WorstCase: enclosure.Range{Min: um(-200)}, Chance: 0.98},
	}
	says := func(weakest int) string { return sureWords(r, fits, solve.Certainty{Chance: 0.95, Weakest: weakest}) }
	assert.Equal(t, "Goes in 95 times in 100. About 1 mm of room along the width, whatever goes wrong.", says(0))
	assert.Equal(t, "Goes in 95 times in 100. About 0.5 mm of room along the thickness, lid over tray; if everything goes wrong it could be 0.5 mm too tight.", says(1))
	assert.Equal(t, "Goes in 95 times in 100. Next to no room along the height, lid over tray, whatever goes wrong.", says(2))
	assert.Equal(t, "Nothing has to go into anything.", says(-1))
	assert.Equal(t, "the contents go in, past every face, and lid over tray goes together, all at once", sureOfWhat(fits))
	s := sureOf(r, fits, solve.Certainty{Chance: 0.95, Weakest: 1})
	assert.Equal(t, &Weakest{Axis: "thickness", Between: "lid over tray", Chance: 0.97}, s.Weakest)
	assert.Nil(t, sureOf(r, nil, solve.Certainty{Weakest: -1}).Weakest)
}

// TestWhatAChanceTakesForGranted: each assumption is said where it is made and nowhere
// else.
func TestWhatAChanceTakesForGranted(t *testing.T) {
	r, between := request(t), []solve.Fit{{Between: "lid over tray"}}
	plainly := assumes(r, between, settings.Nearer)
	assert.Contains(t, plainly, "cuts within 0.5 mm, scores within 0.4 mm")
	assert.Contains(t, plainly, "all paper from one pack, 0.3 mm thick within 0.02 mm")
	assert.Contains(t, plainly, "contents within 0.1 mm, thick within 0.1 mm less and 0.2 mm more")
	assert.Contains(t, plainly[2], "the nearer edge, so that")
	assert.Contains(t, assumes(r, between, settings.OneEdge)[2], "the left and the bottom edge")
	assert.Len(t, plainly, 6)
	r.WallGive = um(300)
	assert.Equal(t, "what goes over or into another part may press its walls by 0.3 mm in all", assumes(r, between, settings.Nearer)[6])
	assert.Len(t, assumes(r, []solve.Fit{{}}, settings.Nearer), 6, "nothing goes over another part")
	r.Season = solve.Season{MadeAt: 33, UsedAt: 65.5}
	assert.Contains(t, assumes(r, nil, settings.Nearer)[6], "made at 33 % and used at 65.5 % relative humidity; sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain")
	r.Unit, r.CutError = measure.Inch, um(794)
	assert.Contains(t, assumes(r, nil, settings.Nearer)[3], "cuts within 0.031 in")
}

// TestAPairInWords: what is short along each axis, what else is against it, and every
// fault of a kind that refuses.
func TestAPairInWords(t *testing.T) {
	m := &solve.Match{Verdict: "tight", Chance: 0.123456, Against: []string{"it is sealed"}, Rooms: []solve.Room{
		{Axis: pattern.Width, Left: um(-1500)}, {Axis: pattern.Height, Left: measure.Length{}}, {Axis: pattern.Thickness, Between: "lid over tray", Left: um(250)}}}
	r := OfMatch("tin", m, measure.Millimetre)
	assert.Equal(t, []string{"it is sealed", "1.5 mm too little along the width"}, r.Why)
	assert.Equal(t, 0.1235, r.Chance)
	assert.Equal(t, "lid over tray", r.Room[2].Between)
	assert.Equal(t, []string{"it is sealed"}, m.Against, "which is not written over")
	assert.Equal(t, "0.0591 in too little along the width", OfMatch("tin", m, measure.Inch).Why[1])
	m = &solve.Match{Refused: fault.Faults{{Code: fault.Impossible, Field: "width", Detail: "too wide"}, {Code: fault.Impossible, Detail: "no room"}}}
	r = OfMatch("tin", m, measure.Inch)
	assert.Equal(t, "refused", r.Verdict)
	assert.Equal(t, []string{"width: too wide", "no room"}, r.Why)
	assert.Equal(t, []string{"broken"}, OfMatch("tin", &solve.Match{Refused: fmt.Errorf("broken")}, measure.Inch).Why)
}

// TestWhatAFinerStepIsWorth in each unit, with the gap that it closes.
func TestWhatAFinerStepIsWorth(t *testing.T) {
	a := &solve.Alternative{Nearer: um(1234), Gap: um(100)}
	assert.Equal(t, "the clearances come 1.23 mm nearer to the middle of their windows", gain(a, um(100), measure.Millimetre))
	assert.Equal(t, "the gap of 0.5 mm closes to 0.1 mm; the clearances come 1.23 mm nearer to the middle of their windows", gain(a, um(500), measure.Millimetre))
	assert.Equal(t, "the gap of 0.02 in closes to 0.004 in; the clearances come 0.049 in nearer to the middle of their windows", gain(a, um(500), measure.Inch))
	a.Nearer = measure.Length{}
	assert.Equal(t, "the clearances come no nearer to the middle of their windows", gain(a, um(100), measure.Millimetre))
}

// TestAPlanInWords: by the sheet or by the order, with offcuts of the stock, and the
// cost where that is kept small.
func TestAPlanInWords(t *testing.T) {
	counted := &sheet.Order{Items: []sheet.Item{{Count: 5}}}
	assert.Equal(t, "1 sheet. 93 percent of the paper is used.", PlanSummary(counted, &sheet.Answer{Sheets: 1, Used: 0.934, PerSheet: 5}))
	assert.Equal(t, "2 sheets and 1 offcut from stock. 50 percent of the paper is used.", PlanSummary(counted, &sheet.Answer{Sheets: 3, Offcuts: 1, Used: 0.5}))
	assert.Equal(t, "One sheet gives 8. 100 percent of the paper is used.", PlanSummary(&sheet.Order{Items: []sheet.Item{{}}}, &sheet.Answer{Sheets: 1, Used: 1, PerSheet: 8}))
	counted.Minimize = sheet.LeastCost
	assert.Equal(t, "2 sheets for 4.25. 50 percent of the paper is used.", PlanSummary(counted, &sheet.Answer{Sheets: 2, Cost: 17 * ask.PriceUnit / 4, Used: 0.5}))
	c := cutting{counted, &sheet.Answer{LowerBound: 3 * ask.PriceUnit / 2}, marked(t, "1 mm")}
	assert.Equal(t, 1.5, c.bound())
	counted.Minimize = 0
	c.plan.LowerBound = 3
	assert.Equal(t, 3.0, c.bound())
	for want, s := range map[string]sheet.Step{"left": {Cut: sheet.Width}, "right": {Cut: sheet.Width, Turned: true}, "bottom": {Cut: sheet.Height}, "top": {Cut: sheet.Height, Turned: true}} {
		assert.Equal(t, want, edge(&s))
	}
	assert.Equal(t, Leaf{Offcut: true}, c.leaf(sheet.Offcut, true))
}

// TestPresetsByHowNearTheyAre: the better way up counts, the first of equals stays
// first, and no more are listed than are wanted.
func TestPresetsByHowNearTheyAre(t *testing.T) {
	list := func() []sized[string] {
		return []sized[string]{{"far", um(50000), um(90000), measure.Millimetre}, {"across", um(60000), um(40500), measure.Millimetre}, {"upright", um(40500), um(60000), measure.Millimetre}}
	}
	var off []string
	mark := func(_ *string, n Near) { off = append(off, fmt.Sprint(n.Off.MM, n.Turned)) }
	q := &ask.Near{}
	assert.Equal(t, []string{"far", "across", "upright"}, picked(list(), q, mark))
	assert.Empty(t, off, "no size was asked for")
	q.Size.Width, q.Size.Height, q.Size.Given = um(40000), um(60000), true
	assert.Equal(t, []string{"across", "upright", "far"}, picked(list(), q, mark))
	assert.Equal(t, []string{"0.5 true", "0.5 false", "30 false"}, off)
}

// TestPostsSentences holds every sentence about a limit to the numbers beside it, over
// thin, thick, square, long and heavy pieces and every post.
func TestPostsSentences(t *testing.T) {
	seen := map[string]int{}
	for _, size := range [][3]int64{{90, 55, 1}, {140, 140, 5}, {240, 165, 5}, {250, 176, 6}, {360, 250, 19}, {600, 100, 30}} {
		for _, grams := range []float64{0, 18.5, 600, 3000} {
			piece := &mail.Piece{Width: measure.Millimetres(size[0]), Height: measure.Millimetres(size[1]), Thickness: measure.Millimetres(size[2]),
				Mass: mail.Grams(grams), SizeTolerance: um(1000), ThicknessTolerance: um(500)}
			var judged []mail.Judgement
			for _, p := range mail.Posts() {
				judged = append(judged, p.Judge(piece))
			}
			for _, unit := range []measure.Unit{measure.Inch, measure.Millimetre} {
				for _, v := range OfMail(judged, Voice{Unit: unit}, &Asked{}).Posts {
					for _, s := range v.Limits {
						seen[s.State]++
						sentenceHolds(t, &s)
					}
					for _, not := range v.NotIn {
						for _, r := range not.Reasons {
							if r.Limit != nil {
								seen[r.Limit.State]++
								sentenceHolds(t, r.Limit)
							}
						}
					}
				}
			}
		}
	}
	for _, state := range []string{"inside", "unknown", "unsure", "outside"} {
		assert.Greater(t, seen[state], 10, state)
	}
}

// sentenceHolds reads a sentence about a limit back.
func sentenceHolds(t *testing.T, s *MailStanding) {
	t.Helper()
	bound := map[string]string{"greatest true": "at most ", "greatest false": "less than ", "least true": "at least ", "least false": "more than "}[fmt.Sprint(s.Bound, " ", s.Inclusive)]
	assert.Contains(t, s.Detail, "("+bound+s.At.Text+")")
	if s.State == "unknown" {
		assert.Nil(t, s.Value)
		assert.Contains(t, s.Detail, " is not known (")
		return
	}
	assert.Contains(t, s.Detail, " is "+s.Value.Text+" (")
	left := numberOf(&s.At) - numberOf(s.Value)
	if s.Bound == "least" {
		left = -left
	}
	assert.InDelta(t, left, numberOf(s.Left), 2e-4, "%s", s.Detail) // numbers are rounded to four decimals
	_, standing, _ := strings.Cut(s.Detail, "): ")
	assert.True(t, strings.HasPrefix(standing, strings.TrimPrefix(s.Left.Text, "-")), "%s: %s", s.Detail, s.Left.Text)
	beyond := map[string]string{"greatest": "over", "least": "under"}[s.Bound]
	switch s.State {
	case "inside":
		assert.True(t, strings.HasSuffix(standing, " left"), s.Detail)
	case "unsure":
		assert.True(t, strings.HasSuffix(standing, " left, it may be "+beyond+" by its tolerance"), s.Detail)
	case "outside":
		assert.True(t, strings.HasSuffix(standing, " "+beyond), s.Detail)
	default:
		assert.Contains(t, standing, " "+beyond+", but ", s.Detail)
	}
}

// numberOf is an amount as a number of one unit.
func numberOf(a *MailAmount) float64 {
	switch {
	case a.MM != nil:
		return *a.MM
	case a.G != nil:
		return *a.G
	default:
		return *a.Ratio
	}
}
