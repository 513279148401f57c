package own_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// wrong reads and solves a design for a stack of cards and returns what is wrong.
func wrong(t *testing.T, design string) fault.Faults {
	t.Helper()
	k, err := own.Read([]byte(design))
	if err == nil {
		_, err = solve.Solve(context.Background(), request(k, measure.Millimetre, things[0], 300))
	}
	var faults fault.Faults
	require.NoError(t, faults.Add(err), "nothing but faults")
	return faults
}

// sleeveWith is a sleeve whose panels and statements are changed.
func sleeveWith(changes ...string) string {
	text := string(own.Simplest().Text)
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			panic("the example has no " + changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	return text
}

// Ideas that are half said are told what is missing, where it stands, and what would
// mend it.
func TestHalfSaidIdeasAreTold(t *testing.T) {
	for name, c := range map[string]struct {
		design        string
		place, detail string
		hint          string
	}{
		"too little": {sleeveWith(`,{"meet":"edge of front","with":"fold of lap"}`, ""), "design.pieces[0].panels[2]", "nothing says how far front reaches", "what its edge meets"},
		"too much": {sleeveWith(`"edge":"left"},{"panel":"front"`, `"edge":"left","reach":"40 mm"},{"panel":"front"`, `{"panel":"right side","on":"back","edge":"right"}`, `{"panel":"right side","on":"back","edge":"right","reach":"20 mm"}`),
			"design.joins[0]", "contradicts that left side has its own length, that right side has its own length: they are 19.7 mm apart", "leave one of them out"},
		"passing through": {`{"design":"x","pieces":[{"piece":"a","panels":[{"panel":"base","across":{"covers":"width"},"up":{"covers":"height"}},{"panel":"left","on":"base","edge":"left","reach":"40 mm"},
			{"panel":"roof","on":"left","edge":"left","reach":"150 mm"},{"panel":"right","on":"base","edge":"right","reach":"60 mm"}]}]}`,
			"design.pieces[0].panels", "passes through", "lie on the other"},
		"in the way": {`{"design":"x","pieces":[{"piece":"a","panels":[{"panel":"base","across":{"covers":"width"},"up":{"covers":"height"}},{"panel":"left","on":"base","edge":"left","reach":"8 mm"},
			{"panel":"roof","on":"left","edge":"left","reach":"50 mm"}]}]}`,
			"design.", "", ""},
		"glue in the air":  {sleeveWith(`{"glue":"lap","to":"front"}`, `{"glue":"lap","to":"back"}`), "design.holds", "too big for the cavity", "lie on another panel"},
		"across":           {sleeveWith(`{"meet":"edge of front","with":"fold of lap"}`, `{"glue":"left side","to":"back"}`), "design.joins[1]", "does not lie flat on back", "fold one of them another way"},
		"lines that cross": {sleeveWith(`"with":"fold of lap"`, `"with":"top edge of back"`), "design.joins[1]", "the edge of front and the top edge of back lie across one another", "name two lines that run the same way"},
		"no lap":           {sleeveWith(`"reach":"lap"`, `"reach":"2 mm"`), "design.joins[0]", "lap has 2 mm of front to be glued to", "reach farther"},
	} {
		t.Run(name, func(t *testing.T) {
			faults := wrong(t, c.design)
			require.NotEmpty(t, faults)
			found := false
			for _, f := range faults {
				if strings.HasPrefix(f.Field, c.place) && strings.Contains(f.Detail, c.detail) {
					found = true
					assert.Contains(t, f.Hint, c.hint)
				}
			}
			assert.True(t, found, "%+v", faults)
		})
	}
}

// A hint that says it was tried is one: followed, the design has a solution.
func TestHintsWereTried(t *testing.T) {
	card := func(reach string) string {
		return `{"design":"x","pieces":[{"piece":"a","panels":[{"panel":"base",` + reach + `}]}]}`
	}
	for name, c := range map[string]struct{ design, tried, mended string }{
		"too little": {sleeveWith(`,{"meet":"edge of front","with":"fold of lap"}`, ""), "tried: let front reach as far as back",
			sleeveWith(`,{"meet":"edge of front","with":"fold of lap"}`, "", `{"panel":"front","on":"left side","edge":"left"`, `{"panel":"front","on":"left side","edge":"left","reach":{"like":"back"}`)},
		"too much": {sleeveWith(`"edge":"left"},{"panel":"front"`, `"edge":"left","reach":"40 mm"},{"panel":"front"`, `{"panel":"right side","on":"back","edge":"right"}`, `{"panel":"right side","on":"back","edge":"right","reach":"15 mm"}`),
			"tried: free left side", sleeveWith(`{"panel":"right side","on":"back","edge":"right"}`, `{"panel":"right side","on":"back","edge":"right","reach":"15 mm"}`)},
		"no height":    {card(`"across":"90 mm"`), `tried: let base go up as far as the contents ("up": {"covers": "height"})`, card(`"across":"90 mm","up":{"covers":"height"}`)},
		"no width":     {card(`"up":"200 mm"`), `tried: let base go across as far as the contents ("across": {"covers": "width"})`, card(`"across":{"covers":"width"},"up":"200 mm"`)},
		"a wrong fold": {sleeveWith(`"edge":"left"},{"panel":"front"`, `"edge":"left","fold":"mountain"},{"panel":"front"`), "tried: fold left side up", sleeveWith()},
	} {
		t.Run(name, func(t *testing.T) {
			hints := []string{}
			for _, f := range wrong(t, c.design) {
				hints = append(hints, f.Hint)
			}
			assert.Contains(t, strings.Join(hints, "\n"), c.tried)
			assert.Empty(t, wrong(t, c.mended))
		})
	}
}

// A side where the contents would fall out is told, unless it is meant.
func TestOpenSidesAreTold(t *testing.T) {
	for text, want := range map[string]string{sleeveWith(`"open":["height"],`, ""): "at the bottom and at the top", sleeveWith(): ""} {
		k, err := own.Read([]byte(text))
		require.NoError(t, err)
		s, err := solve.Solve(context.Background(), request(k, measure.Millimetre, things[0], 300))
		require.NoError(t, err)
		told := ""
		for _, w := range s.Warnings {
			if w.Code == "open-side" {
				told = w.Detail
			}
		}
		assert.Equal(t, want != "", told != "")
		assert.Contains(t, told, want)
	}
}

// Several things that are wrong are told at once.
func TestSeveralThingsAreToldAtOnce(t *testing.T) {
	faults := wrong(t, sleeveWith(`"edge":"left"},{"panel":"front"`, `"edge":"lefft"},{"panel":"front"`, `"on":"right side"`, `"on":"right sidee"`, `"to":"front"`, `"to":"frront"`))
	places := []string{}
	for _, f := range faults {
		places = append(places, f.Field)
		assert.NotEmpty(t, f.Hint, "%+v", f)
	}
	assert.Subset(t, places, []string{"design.pieces[0].panels[1].edge", "design.pieces[0].panels[4].on", "design.joins[0]"})
}

// Documents that are made to hurt are refused at once, with the place.
func TestHostileDesignsAreRefused(t *testing.T) {
	panels := func(n int, on string) string {
		all := []string{`{"panel":"p0"}`}
		for i := 1; i < n; i++ {
			all = append(all, fmt.Sprintf(`{"panel":"p%d","on":"p%d","edge":"right","reach":"20 mm"}`, i, i-1))
		}
		return `{"design":"x","pieces":[{"piece":"a","panels":[` + strings.Join(all, ",") + on + `]}]}`
	}
	many := strings.Repeat(`{"even":"p0","with":"p1"},`, 9_999) + `{"even":"p0","with":"p1"}`
	for name, c := range map[string]struct {
		design, place string
		code          fault.Code
	}{
		"not JSON":         {`{"design":`, "design.design", fault.Unreadable},
		"no object":        {`[1]`, "design", fault.Unreadable},
		"two documents":    {`{} {}`, "design", fault.Unreadable},
		"deep":             {`{"design":` + strings.Repeat("[", 40) + strings.Repeat("]", 40) + `}`, "design.design" + strings.Repeat("[0]", 8), fault.Unreadable},
		"nothing":          {`{"design":"x","pieces":null}`, "design.pieces", fault.Unreadable},
		"twice a member":   {`{"design":"x","design":"y"}`, "design.design", fault.Repeated},
		"a cycle":          {`{"design":"x","pieces":[{"piece":"a","panels":[{"panel":"r"},{"panel":"a","on":"b","edge":"left"},{"panel":"b","on":"a","edge":"top"}]}]}`, "design.pieces[0].panels[1].on", fault.Conflict},
		"twice a panel":    {panels(3, `,{"panel":"p1","on":"p2","edge":"top"}`), "design.pieces[0].panels[3].panel", fault.Repeated},
		"twice an edge":    {panels(3, `,{"panel":"p9","on":"p0","edge":"right"}`), "design.pieces[0].panels[3].edge", fault.Conflict},
		"65 panels":        {panels(65, ""), "design.pieces[0].panels", fault.TooMany},
		"10000 panels":     {panels(3000, ""), "", fault.TooMany},
		"10000 statements": {strings.Replace(panels(2, ""), `]}]}`, `]}],"joins":[`+many+`]}`, 1), "", fault.TooMany},
		"9 pieces":         {`{"design":"x","pieces":[` + strings.Repeat(`{"piece":"a","panels":[{"panel":"b"}]},`, 8) + `{"piece":"a","panels":[{"panel":"b"}]}]}`, "design.pieces", fault.TooMany},
		"a huge number":    {strings.Replace(panels(2, ""), "20 mm", "1e99 mm", 1), "design.pieces[0].panels[1].reach", fault.Unreadable},
		"a large number":   {strings.Replace(panels(2, ""), "20 mm", "50000 mm", 1), "design.pieces[0].panels[1].reach", fault.OutOfRange},
		"a word":           {strings.Replace(panels(2, ""), `"20 mm"`, `true`, 1), "design.pieces[0].panels[1].reach", fault.Unreadable},
		"no unit":          {strings.Replace(panels(2, ""), `"20 mm"`, `20`, 1), "design.pieces[0].panels[1].reach", fault.Unreadable},
		"bells":            {strings.Replace(panels(2, ""), `"panel":"p1"`, `"panel":"p\u0007"`, 1), "design.pieces[0].panels[1].panel", fault.Unreadable},
		"two roots":        {panels(2, `,{"panel":"p9"}`), "design.pieces[0].panels[2].on", fault.Missing},
		"no root":          {`{"design":"x","pieces":[{"piece":"a","panels":[]}]}`, "design.pieces[0].panels", fault.Missing},
	} {
		t.Run(name, func(t *testing.T) {
			faults := wrong(t, c.design)
			require.NotEmpty(t, faults)
			assert.LessOrEqual(t, len(faults), 20)
			codes, places := []fault.Code{}, []string{}
			for _, f := range faults {
				codes, places = append(codes, f.Code), append(places, f.Field)
			}
			assert.Contains(t, codes, c.code)
			if c.place != "" {
				assert.Contains(t, places, c.place)
			}
		})
	}
}

// Shares of shares of shares are refused where they would not be exact any more.
func TestSharesBeyondWhatIsExactAreRefused(t *testing.T) {
	panels := []string{`{"panel":"p0","across":{"covers":"width"},"up":{"covers":"height"}}`}
	for i := 1; i < 12; i++ {
		panels = append(panels, fmt.Sprintf(`{"panel":"p%d","on":"p%d","edge":"right","fold":"flat","reach":{"share":"13/15","of":"p%d"}}`, i, i-1, i-1))
	}
	faults := wrong(t, `{"design":"x","pieces":[{"piece":"a","panels":[`+strings.Join(panels, ",")+`]}]}`)
	require.NotEmpty(t, faults)
	assert.Contains(t, faults[0].Detail, "too intricate")
}
