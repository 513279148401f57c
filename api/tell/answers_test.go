package tell

import (
	"encoding/csv"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
)

// mm is a length that is read off a ruler of millimetres.
func mm(reading string, x float64) wire.Length {
	return wire.Length{Reading: reading, In: x / 25.4, MM: x, ExactMM: x}
}

// told is an answer as text, and as the cells of its table below the header, which
// it must be the documented one.
func told(t *testing.T, answer any, header []string) (text string, rows [][]string) {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(string(Append(nil, CSV, answer, Style{})))).ReadAll()
	require.NoError(t, err)
	require.Equal(t, header, rows[0])
	return string(Append(nil, Text, answer, Style{})), rows[1:]
}

// checked is a check of a band that is too short by a little.
func checked() *wire.Check {
	return &wire.Check{
		Words: "It does not work as measured.", Sure: wire.Sure{Chance: 0.25},
		Fit: []wire.Fit{
			{Axis: "width", Verdict: "tight", Chance: 0.25, Nominal: mm("-0.5 mm", -0.5)},
			{Axis: "width", Between: "lid over tray", Verdict: "snug", Chance: 1, Nominal: mm("0.5 mm", 0.5)},
		},
		Closures: []wire.Closure{{Name: "halves", Off: mm("0 mm", 0)}, {Name: "walls", Off: mm("1 mm", 1)}},
		Limits: []wire.Limit{
			{Name: "at the least", Allowed: [2]wire.Length{mm("3 mm", 3), mm("5 mm", 5)}, Value: mm("3 mm", 3)},
			{Name: "at the most", Allowed: [2]wire.Length{mm("3 mm", 3), mm("5 mm", 5)}, Value: mm("5 mm", 5)},
			{Name: "below", Allowed: [2]wire.Length{mm("3 mm", 3), mm("5 mm", 5)}, Value: mm("2.9 mm", 2.9)},
			{Name: "above", Allowed: [2]wire.Length{mm("3 mm", 3), mm("5 mm", 5)}, Value: mm("5.1 mm", 5.1)},
		},
		Mend:     []wire.Change{{Name: "back", From: mm("88 mm", 88), To: mm("89 mm", 89)}},
		Greatest: wire.Greatest{Height: new(mm("120 mm", 120)), Thickness: new(mm("2 mm", 2))},
	}
}

// TestAChecksTable: the verdict, then each clearance, sum, limit and change; a limit
// is kept at both of its ends, and what nothing bounds has no row.
func TestAChecksTable(t *testing.T) {
	text, rows := told(t, checked(), CheckColumns)
	assert.Equal(t, "It does not work as measured.\nchange back from 88 mm to 89 mm\n", text)
	assert.Equal(t, []string{"verdict", "", "no", "0.25", "", "", ""}, rows[0])
	says := make([]string, len(rows))
	for i, r := range rows {
		says[i] = strings.Join(append(r[:3:3], r[6]), "|")
	}
	assert.Equal(t, []string{"verdict||no|", "fit|width|tight|-0.5", "fit|width lid over tray|snug|0.5", "closure|halves|yes|0", "closure|walls|no|1",
		"limit|at the least|yes|3", "limit|at the most|yes|5", "limit|below|no|2.9", "limit|above|no|5.1",
		"mend|back|from 88 mm|89", "greatest|height||120", "greatest|thickness||2"}, says)
	assert.Equal(t, "0.25", rows[1][3], "only a fit has a chance of its own")
	assert.Empty(t, rows[3][3])
	good := checked()
	good.Works, good.Mend = true, nil
	good.Warnings = []wire.Warning{{Detail: "The caliper is estimated."}}
	text, rows = told(t, good, CheckColumns)
	assert.Equal(t, "It does not work as measured.\nThe caliper is estimated.\n", text)
	assert.Equal(t, "yes", rows[0][2])
}

// TestAChecksLayersAreNamed: the rows of a layer bear its name, and the first row is
// that of all of them.
func TestAChecksLayersAreNamed(t *testing.T) {
	p := &wire.PortfolioCheck{Words: "One layer does not work.", Sure: wire.Sure{Chance: 0.5},
		Layers: []wire.LayerCheck{{Name: "1 tray", Check: *checked()}, {Name: "2 sleeve", Check: *checked()}}}
	text, rows := told(t, p, CheckColumns)
	assert.Equal(t, "One layer does not work.\n1 tray: It does not work as measured.\nchange back from 88 mm to 89 mm\n"+
		"2 sleeve: It does not work as measured.\nchange back from 88 mm to 89 mm\n", text)
	assert.Equal(t, []string{"verdict", "", "no", "0.5"}, rows[0][:4])
	assert.Equal(t, []string{"verdict", "1 tray", "no", "0.25"}, rows[1][:4])
	assert.Equal(t, "1 tray width lid over tray", rows[3][1])
	assert.Equal(t, "2 sleeve thickness", rows[len(rows)-1][1])
}

// TestAPlansSteps: one sheet and several, steps by number, a sheet that is the
// blank, the trimmer's settings with the steps they serve, and the caution once.
func TestAPlansSteps(t *testing.T) {
	y := &wire.Yield{
		Summary: "3 sheets. 93 percent of the paper is used.", Proof: "No plan needs fewer.",
		Warnings: []wire.Warning{{Detail: "The stack is thick."}},
		Work:     wire.YieldWork{Settings: 2, Cuts: 5, Turns: 1}, UsableOffcuts: []wire.UsableOffcut{{Count: 2, Words: "A6"}, {Count: 1, Words: "A7"}},
		CutList: []wire.YieldSetting{
			{At: mm("40 mm", 40), Cuts: 1, Steps: []wire.StepRef{{Plan: 1, Step: 1}}},
			{At: mm("60 mm", 60), Cuts: 4, Steps: []wire.StepRef{{Plan: 1, Step: 2}, {Plan: 1, Step: 3}, {Plan: 2, Step: 1}}},
		},
		Plans: []wire.CutPlan{
			{Times: 2, Sheet: wire.SheetSize{Words: "A4"}, Steps: []string{"Cut 40 mm.", "Cut 60 mm."}, Settings: []wire.Setting{
				{Across: "width", From: "left", At: mm("10 mm", 10), Length: mm("297 mm", 297), Trim: true, Repeat: 1, Parts: []int{0}},
				{Across: "height", From: "top", At: mm("40 mm", 40), Length: mm("200 mm", 200), Repeat: 3, Parts: []int{1, 2}},
			}},
			{Times: 1, Sheet: wire.SheetSize{Words: "A5", Offcut: true}},
		},
	}
	text, rows := told(t, y, CuttingColumns)
	assert.Equal(t, "3 sheets. 93 percent of the paper is used. No plan needs fewer.\nWork: 2 settings, 5 cuts, 1 turn.\nUsable offcuts: 2 x A6, 1 x A7.\n"+caution+"\nThe stack is thick.\n"+
		"Set 40 mm: 1 cut (plan 1 step 1).\nSet 60 mm: 4 cuts (plan 1 step 2, 3; plan 2 step 1).\n"+
		"Plan 1: cut 2 sheets of A4 like this.\n1. Cut 40 mm.\n2. Cut 60 mm.\n"+
		"Plan 2: cut 1 offcut of A5 like this.\nNothing to cut: the sheet is the blank.\n", text)
	require.Len(t, rows, 2)
	assert.Equal(t, []string{"1", "2", "1", "width", "left", "10 mm"}, rows[0][:6])
	assert.Equal(t, []string{"margin", "1", "1"}, rows[0][11:])
	assert.Equal(t, []string{"1", "2", "2", "height", "top", "40 mm"}, rows[1][:6])
	assert.Equal(t, []string{"200", "cut", "2", "3"}, rows[1][10:])
}

// TestWhatPostsSay: the class for certain or perhaps, each surcharge and each class
// that does not take it with all its reasons, notes of limits that are not plainly
// kept, and of the nearest limit only while it is kept.
func TestWhatPostsSay(t *testing.T) {
	nearest := &wire.MailStanding{MailLimit: wire.MailLimit{Of: "thickness", Bound: "greatest", At: wire.MailAmount{MM: new(5.0)}},
		State: "inside", Detail: "the thickness is 4 mm (at most 5 mm): 1 mm left", Value: &wire.MailAmount{MM: new(4.0)}, Left: &wire.MailAmount{MM: new(1.0)}}
	unsure := *nearest
	unsure.State, unsure.Detail = "unsure", "it may be over"
	v := wire.PostVerdict{Post: "de", Title: "Post", Edition: "2026", Verdict: "takes", Class: "letter", ClassTitle: "Brief", Nearest: nearest,
		Surcharges: []wire.MailDue{{Name: "square", Certain: true, Reasons: []wire.MailReason{{Detail: "a"}, {Detail: "b"}}}, {Name: "rigid", Reasons: []wire.MailReason{{Detail: "c"}}}},
		NotIn:      []wire.MailNotIn{{Title: "Postkarte", Reasons: []wire.MailReason{{Detail: "too thick"}}}},
		Limits:     []wire.MailStanding{*nearest, unsure}, Conditions: []string{"Closed.", "Flat."}, NotConfirmed: []string{"Prices."}, Unknown: []string{"mass"}}
	none := wire.PostVerdict{Post: "us", Title: "Service", Edition: "2025", Verdict: "none", NotConfirmed: []string{"None."}}
	perhaps := v
	perhaps.Verdict, perhaps.Nearest, perhaps.Conditions = "may-take", &unsure, nil
	text, rows := told(t, &wire.Mail{Advice: "Ask.", Posts: []wire.PostVerdict{v, none, perhaps}}, MailColumns)
	middle := "  Surcharge, square: a; b.\n  Surcharge, perhaps rigid: c.\n  Not Postkarte: too thick.\n  Note: it may be over.\n"
	assert.Equal(t, "Post: Brief.\n"+middle+"  Nearest limit: the thickness is 4 mm (at most 5 mm): 1 mm left.\n  Also: Closed. Flat.\n  Not confirmed: Prices.\n  By 2026.\n"+
		"Service: no class of the table takes it.\n  Not confirmed: None.\n  By 2025.\n"+
		"Post: perhaps Brief.\n"+middle+"  Not confirmed: Prices.\n  By 2026.\nAsk.\n", text)
	assert.Equal(t, []string{"de", "letter", "takes", "square perhaps rigid", "mass", "thickness", "greatest", "5", "4", "1", "mm"}, rows[0])
	assert.Equal(t, []string{"us", "", "none", "", "", "", "", "", "", "", ""}, rows[1])
	for want, a := range map[string]wire.MailAmount{"g": {G: new(20.0), Oz: new(0.7)}, "ratio": {Ratio: new(1.3)}} {
		_, unit := bare(&a)
		assert.Equal(t, want, unit)
	}
}

// TestWhatIsAdapted: every size in the table, in the text only those that change, with
// the wanted decimal mark.
func TestWhatIsAdapted(t *testing.T) {
	a := &wire.Adapted{Words: "Made.", Sizes: []wire.SizeBeside{{Name: "back", Was: mm("88.5 mm", 88.5), Now: mm("90.5 mm", 90.5)}, {Name: "tab", Was: mm("15 mm", 15), Now: mm("15 mm", 15)}}}
	text, rows := told(t, a, AdaptColumns)
	assert.Equal(t, "Made.\nback: 90.5 mm instead of 88.5 mm\n", text)
	assert.Equal(t, [][]string{{"back", "88.5 mm", "90.5 mm", "yes"}, {"tab", "15 mm", "15 mm", "no"}}, rows)
	assert.Equal(t, "Made.\nback: 90,5 mm instead of 88,5 mm\n", string(Append(nil, Text, a, Style{Comma: true})))
}

// TestWhatMatches: the least room along each axis in the answer's unit, and why a
// pair does not go together.
func TestWhatMatches(t *testing.T) {
	room := func(axis string, x float64) wire.MatchRoom { return wire.MatchRoom{Axis: axis, Left: mm("", x)} }
	m := &wire.Matches{Unit: "mm", Count: 2, Fits: 1, Ranked: []wire.Ranked{
		{ID: "tin-1", Fits: true, Verdict: "easy", Chance: 0.9, Room: []wire.MatchRoom{room("width", 5.08), room("width", 2.54), room("width", 7.62), room("height", 25.4)}},
		{ID: "tin-2", Verdict: "tight", Why: []string{"1 mm too little", "no glue"}},
	}}
	text, rows := told(t, m, MatchColumns)
	assert.Equal(t, "1 of 2 fit.\ntin-1: easy\ntin-2: tight, 1 mm too little; no glue\n", text)
	assert.Equal(t, [][]string{{"tin-1", "yes", "easy", "0.9", "2.54", "25.4", "", ""}, {"tin-2", "no", "tight", "0", "", "", "", "1 mm too little; no glue"}}, rows)
	m.Unit, m.Count = "in", 1
	text, rows = told(t, m, MatchColumns)
	assert.Contains(t, text, "1 of 1 fits.\n")
	assert.Equal(t, []string{"0.1", "1"}, rows[0][4:6])
}

// TestWhatIsSuggested: of a kind that does not work only why; the post's class with
// how sure it is.
func TestWhatIsSuggested(t *testing.T) {
	a := &wire.Suggestions{Kinds: []wire.Suggestion{
		{Kind: "band", Title: "Band", Works: true, Why: []wire.Reason{{Detail: "No glue."}, {Detail: "It fits."}}, Step: "1 mm", Chance: new(0.97), Minutes: 5.5,
			Blank: &wire.Blank{Width: mm("200 mm", 200), Height: mm("40 mm", 40)}, Sheets: new(0), Post: &wire.Posted{Class: "letter", Verdict: "may-take"}, Link: "/a"},
		{Kind: "tray", Title: "Tray", Why: []wire.Reason{{Detail: "too thick", Expected: "at most 3 mm"}}, Post: &wire.Posted{Verdict: "none"}, Link: "/b"},
	}}
	text, rows := told(t, a, SuggestionColumns)
	assert.Equal(t, "Band works: No glue. It fits.\nTray does not work: too thick (at most 3 mm)\n", text)
	assert.Equal(t, []string{"band", "yes", "No glue. It fits.", "1 mm", "0.97", "200 mm", "40 mm", "0", "5.5", "letter may-take", "/a"}, rows[0])
	assert.Equal(t, []string{"tray", "no", "too thick (at most 3 mm)", "", "", "", "", "", "", "none", "/b"}, rows[1])
}

// TestPapersBesideAMark: one and several, beyond the mark and short of it.
func TestPapersBesideAMark(t *testing.T) {
	for papers, want := range map[int]string{1: "4 mm and 1 paper (4.3 mm) from the left", 2: "4 mm and 2 papers (4.3 mm) from the left", -1: "4 mm less 1 paper (4.3 mm) from the left", 0: "4 mm from the left"} {
		l := mm("4 mm", 4.3)
		l.Papers = papers
		assert.Equal(t, want, string(Style{}.appendLength(nil, &l, "left")))
	}
	r := wire.Ruler{Lengths: []wire.RulerLength{{Readings: []wire.RulerReading{{Step: "1/8 in", At: mm("3 5/8 in", 92.075)}}}, {Readings: []wire.RulerReading{{Step: "1 mm", At: mm("92 mm", 92)}}}}}
	assert.Equal(t, "length 1, reading 1/8 in: 3 5/8 in\nlength 2, reading 1 mm: 92 mm\n", string(Append(nil, Text, &r, Style{})))
}

// Every kind of row is one whole element of XML, whose name is said in one word.
func TestRowsAreElements(t *testing.T) {
	corner := wire.Corner{X: mm("4 mm", 4), Y: mm("5 mm", 5)}
	s := &wire.Solution{Pieces: []wire.Piece{{Name: "tray", Blank: wire.Blank{Width: mm("90 mm", 90), Height: mm("60 mm", 60)},
		Scores:  []wire.Score{{Name: "score 1", From: "left", At: mm("20 mm", 20), HalfCut: "inside"}, {Name: "score 2", From: "bottom", At: mm("20 mm", 20)}},
		Panels:  []wire.Panel{{Name: "left \"wall\"", Size: mm("20 mm", 20)}},
		Cuts:    []wire.Cut{{Name: "slit", Kind: "slit", From: "top", Depth: mm("9 mm", 9)}, {Name: "ribbon slit", Kind: "slit", From: "left", At: new(mm("30 mm", 30)), Depth: mm("9 mm", 9), Long: new(mm("12 mm", 12))}},
		Outline: []wire.Corner{corner}, Partials: []wire.Partial{{Name: "score 1", Panel: "tuck", Begins: corner, Ends: corner}},
	}}}
	d := xml.NewDecoder(strings.NewReader(string(Append(nil, XML, s, Style{}))))
	d.CharsetReader = func(_ string, in io.Reader) (io.Reader, error) { return in, nil } // ASCII is UTF-8
	elements := map[string]int{}
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		if begun, ok := token.(xml.StartElement); ok {
			elements[begun.Name.Local]++
		}
	}
	assert.Equal(t, map[string]int{"measurements": 1, "blank": 2, "half-cut-inside": 1, "score": 1, "panel": 1, "slit": 4, "outline": 2, "end": 4}, elements)
}
