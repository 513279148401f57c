package wire

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/mail"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// TestCausesInWords: each thing that may have been off, by how much and which way.
func TestCausesInWords(t *testing.T) {
	r := request(t)
	says := func(of solve.Culprit, off int64) string {
		return causeWords(r, solve.Suspect{Of: of, At: um(92100), Off: um(off), Deviations: 2.345})
	}
	for _, c := range []struct {
		of         solve.Culprit
		more, less string
	}{
		{solve.CutStop, "the stop for the cut at 92 mm was set 0.7 mm too far", "the stop for the cut at 92 mm was set 0.7 mm too short"},
		{solve.ScoreStop, "the stop for the score at 92 mm was set 0.7 mm too far", "the stop for the score at 92 mm was set 0.7 mm too short"},
		{solve.OneCut, "one cut at 92 mm lies 0.7 mm too far", "one cut at 92 mm lies 0.7 mm too short"},
		{solve.OneScore, "one score or its fold at 92 mm lies 0.7 mm too far", "one score or its fold at 92 mm lies 0.7 mm too short"},
		{solve.Paper, "the paper is 0.7 mm thicker than stated", "the paper is 0.7 mm thinner than stated"},
		{solve.Folds, "every fold takes up 0.7 mm more (2.3 of its usual errors)", "every fold takes up 0.7 mm less (2.3 of its usual errors)"},
	} {
		assert.Equal(t, c.more, says(c.of, 700))
		assert.Equal(t, c.less, says(c.of, -700))
	}
	l := &Learned{}
	assert.Equal(t, "It came out as it should: nothing was off by more than hands usually are.", learnedWords(l))
	l.Causes = []Cause{{Words: "the paper is thicker"}}
	assert.Equal(t, "Most likely the paper is thicker.", learnedWords(l))
	l.Causes = append(l.Causes, Cause{Words: "one cut lies too far"})
	l.Mend = []Change{{Name: "back", To: Length{Reading: "90 mm"}}}
	assert.Equal(t, "Most likely the paper is thicker. Or one cut lies too far. To mend it: back 90 mm.", learnedWords(l))
	l.Causes = append(l.Causes, Cause{Words: "never told"})
	l.Mend = []Change{{Name: "back", To: Length{Reading: "90 mm"}}, {Name: "tab", To: Length{Reading: "15 mm"}}}
	assert.Equal(t, "Most likely the paper is thicker. Or one cut lies too far. To mend it: back 90 mm, tab 15 mm.", learnedWords(l))
}

// TestPlanLines: the gap is of sheets or of cost, offcuts of the stock cost nothing, and
// only the last line says why it is the last.
func TestPlanLines(t *testing.T) {
	counted := &sheet.Order{Items: []sheet.Item{{Count: 3}}}
	y := &Yield{Sheets: 5, StockOffcuts: 1, LowerBound: 3, Cost: 7.25}
	line := func(o *sheet.Order, p sheet.Answer, done bool) *PlanLine {
		l := OfPlanLine(y, o, &p, 1500*time.Millisecond, done)
		assert.Equal(t, []any{y, 3.0, done, Seconds(1500 * time.Millisecond)}, []any{l.Plan, l.Bound, l.Done, l.Seconds})
		return l
	}
	assert.Equal(t, 1.0, line(counted, sheet.Answer{}, true).Gap)
	byCost := *counted
	byCost.Minimize = sheet.LeastCost
	assert.Equal(t, 4.25, line(&byCost, sheet.Answer{}, true).Gap)
	single := &sheet.Order{Items: []sheet.Item{{}}}
	assert.Zero(t, line(single, sheet.Answer{}, true).Gap)
	for _, c := range []struct {
		o    *sheet.Order
		p    sheet.Answer
		done bool
		want string
	}{
		{counted, sheet.Answer{Settled: true, Proven: true}, false, ""},
		{counted, sheet.Answer{Settled: true, Proven: true}, true, "settled"},
		{single, sheet.Answer{}, true, "settled"},
		{counted, sheet.Answer{Proven: true}, true, "proven"},
		{counted, sheet.Answer{}, true, "time"},
	} {
		assert.Equal(t, c.want, line(c.o, c.p, c.done).Why)
	}
}

// TestStandingsInWords: what a piece has, the bound as it is taken, and what is left of it;
// all three are here the thickness of a German letter (Deutsche Post: 5 mm).
func TestStandingsInWords(t *testing.T) {
	var five mail.Amount
	for _, p := range mail.Posts() {
		for i := range p.Classes {
			for _, l := range p.Classes[i].Limits {
				if p.Name == "de" && l.Bound.Of() == mail.OfThickness && l.Bound.Length() == um(5000) {
					five = l.Bound
				}
			}
		}
	}
	said := func(l mail.Limit, state mail.State) string {
		l.Bound = five
		return standingWords(&mail.Finding{Limit: &l, State: state, Value: five, Left: five}, Voice{Unit: measure.Millimetre})
	}
	for _, c := range []struct {
		limit mail.Limit
		state mail.State
		want  string
	}{
		{mail.Limit{}, mail.Inside, "(at most 5 mm): 5 mm left"},
		{mail.Limit{Open: true}, mail.Outside, "(less than 5 mm): 5 mm over"},
		{mail.Limit{Least: true}, mail.Outside, "(at least 5 mm): 5 mm under"},
		{mail.Limit{Least: true, Open: true}, mail.Unsure, "(more than 5 mm): 5 mm left, it may be under by its tolerance"},
		{mail.Limit{Hearsay: true, Doubt: "never told"}, mail.Disputed, "(at most 5 mm): 5 mm over, but the bound is not confirmed"},
		{mail.Limit{Doubt: "the post has its own gauge"}, mail.Disputed, "(at most 5 mm): 5 mm over, but the post has its own gauge"},
	} {
		assert.Equal(t, "the thickness is 5 mm "+c.want, said(c.limit, c.state))
	}
	assert.Equal(t, "the thickness is not known (at most 5 mm)", said(mail.Limit{}, mail.Unknown))
}

// TestPlacesAsHandsSetThem: a mark with its papers, a mark of the finer ruler as such, and a
// place that neither comes to as it is, to the nanometre.
func TestPlacesAsHandsSetThem(t *testing.T) {
	s := &solve.Solution{Request: request(t), Step: marked(t, "1 mm")}
	s.Pattern.Caliper = um(300)
	for _, c := range []struct {
		at      int64
		how     pattern.Set
		reading string
		papers  int
	}{
		{90_000, pattern.Set{Mark: um(90_000)}, "90 mm", 0},
		{89_700, pattern.Set{Mark: um(90_000), Papers: -1}, "90 mm", -1},
		{90_600, pattern.Set{Mark: um(90_000), Papers: 2}, "90 mm", 2},
		{90_500, pattern.Set{Mark: um(90_500)}, "90.5 mm", 0},
		{90_123, pattern.Set{Mark: um(90_000)}, "90.123 mm", 0},
		{90_300, pattern.Set{Mark: um(90_000)}, "90.3 mm", 0},
	} {
		l := set(s, um(c.at), c.how)
		assert.Equal(t, c.reading, l.Reading, c.at)
		assert.Equal(t, c.papers, l.Papers, c.at)
		assert.Equal(t, []float64{float64(c.at) / 1000, 0}, []float64{l.MM, l.OffMM}, "in numbers it is where it lies")
	}
	crossed := corner(s, solve.Corner{Vertex: pattern.Vertex{Point: pattern.At(um(90_000), um(0)), Bulge: -0.41421356}, X: pattern.Set{Mark: um(90_000)}, Cross: [2]string{"back", "base"}}, 2)
	assert.Equal(t, "where back and base cross", crossed.Where)
	assert.Equal(t, []any{2, -0.414214}, []any{crossed.Ring, crossed.Bulge})
}

// TestWhatACheckComesTo: the clearances by their verdicts, or that there are none, as of
// mats that lie on one another.
func TestWhatACheckComesTo(t *testing.T) {
	fits := []solve.Fit{{Axis: pattern.Width, Verdict: "snug"}, {Axis: pattern.Height, Verdict: "tight"}}
	mend := []solve.Change{{Name: "back"}}
	for _, c := range []struct {
		check solve.Check
		want  string
	}{
		{solve.Check{Works: true, Solution: solve.Solution{Fits: fits}}, "It closes, and the contents go in: width snug, height tight."},
		{solve.Check{Works: true}, "It closes, and nothing has to go into anything."},
		{solve.Check{Solution: solve.Solution{Fits: fits}, Mended: true, Mend: mend}, "It does not work as measured (width snug, height tight). The smallest change that mends it is listed."},
		{solve.Check{Mended: true, Mend: mend}, "It does not work as measured. The smallest change that mends it is listed."},
		{solve.Check{Solution: solve.Solution{Fits: fits[:1]}, Mended: true}, "It does not work as measured (width snug), and no readings of this ruler near it would."},
		{solve.Check{Mend: mend}, "It does not work as measured, and no readings of this ruler near it would."},
	} {
		assert.Equal(t, c.want, checkWords(&c.check))
	}
}
