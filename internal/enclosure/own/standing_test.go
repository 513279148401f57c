package own_test

import (
	"context"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// solved solves a kind for contents in inches, in stock of 0.012 in.
func solved(t *testing.T, k *enclosure.Kind, width, height, thickness string, options map[string]enclosure.Value) (*solve.Solution, error) {
	t.Helper()
	length := func(text string) measure.Length { return measure.MustParse(text + " in") }
	q := &solve.Request{Kind: k, Unit: measure.Inch, Ruler: measure.Marks(measure.Inch)[5], Caliper: length("0.012"),
		Width: length(width), Height: length(height), Thickness: length(thickness), FitName: "snug", Fit: enclosure.NamedFits()[0].Range(measure.Inch), Options: options}
	return solve.Solve(context.Background(), q)
}

// What a choice that is left to the contents comes to: one score a side round what is as
// thick as a capacity step of folder makers, 1/8 in, and two round what is thicker (common
// practice); two in board, which does not fold flat.
func TestContentsDecideWhatIsLeftToThem(t *testing.T) {
	band := own.Standing("band")
	for thickness, scores := range map[string]int{"3/64": 2, "1/8": 2, "9/64": 4, "1": 4} {
		s, err := solved(t, band, "3", "5", thickness, map[string]enclosure.Value{})
		require.NoError(t, err, thickness)
		assert.Len(t, s.Pattern.Pieces[0].Creases, scores, thickness)
		warned := thickness == "1/8" // which is over 1.5 mm
		assert.Equal(t, warned, len(s.Warnings) > 0 && s.Warnings[0].Code == "one-score", "%s: %v", thickness, s.Warnings)
	}
	s, err := solved(t, band, "3", "5", "3/64", map[string]enclosure.Value{"scores": {Choice: "two"}})
	require.NoError(t, err)
	assert.Len(t, s.Pattern.Pieces[0].Creases, 4)
	in := &enclosure.Input{Width: measure.Millimetres(80), Thickness: measure.Millimetres(2), Caliper: pattern.Board, Given: map[string]enclosure.Value{}, Params: band.Params}
	_, err = band.Plan(in)
	assert.NoError(t, err, "two scores a side in board")
	in.Given["scores"] = enclosure.Value{Choice: "one"}
	_, err = band.Plan(in)
	assert.ErrorContains(t, err, "a band with one score at each side is made of paper")
}

// Limits worked by hand for contents of 3 x 1 in with a snug fit, whose middle is 1/32 in.
func TestLimitsAreWorkedOutForTheContents(t *testing.T) {
	long := func(text string) enclosure.Value { return enclosure.Value{Length: measure.MustParse(text)} }
	for name, c := range map[string]struct {
		kind            string
		options         map[string]enclosure.Value
		field, expected string
	}{
		"lap":               {"band", map[string]enclosure.Value{"lap": long("3 1/4 in")}, "lap", "at most 3 1/32 in"},                                                     // the face and the middle of the fit
		"meeting":           {"band", map[string]enclosure.Value{"meeting": long("1/4 in")}, "meeting", "from 33/64 in to 3 1/32 in"},                                      // the lap of 1/2 and 0.006 at the least
		"height of a band":  {"slotted-band", map[string]enclosure.Value{"band_height": long("1/4 in")}, "band_height", "at least 9/16 in"},                                // 2 x 1/4 and half of the play of 1/8
		"gap":               {"folded-card", map[string]enclosure.Value{"fold": {Choice: "gate"}, "gap": long("2 3/4 in")}, "gap", "at most 2 7/16 in"},                    // 3 - 1/16 - 2 x 1/4
		"no gap in no card": {"folded-card", map[string]enclosure.Value{"fold": {Choice: "gate"}, "gap": {}}, "gap", "larger contents: there is no such length for these"}, // 1/2 - 1/16 - 2 x 1/4 is under nothing
		"another fold":      {"folded-card", map[string]enclosure.Value{"fold": {Choice: "tent"}, "gap": long("1/8 in")}, "gap", ""},                                       // goes with a gate
		"a roll's scores":   {"band", map[string]enclosure.Value{"shape": {Choice: "round"}, "scores": {Choice: "one"}}, "scores", ""},                                     // a roll has none
	} {
		t.Run(name, func(t *testing.T) {
			k, inch := own.Standing(c.kind), measure.Inches
			in := &enclosure.Input{Unit: measure.Inch, Width: inch(3), Height: inch(5), Thickness: inch(1), Caliper: measure.MustParse("0.012 in"),
				Fit: enclosure.NamedFits()[0].Range(measure.Inch), Given: c.options, Params: k.Params}
			if name == "no gap in no card" {
				in.Width, in.Fit = measure.MustParse("1/2 in"), enclosure.Range{Max: measure.MustParse("1/16 in")}
			}
			if c.options["shape"].Choice != "" {
				in.Thickness = in.Width
			}
			_, err := k.Plan(in)
			var faults fault.Faults
			require.NoError(t, faults.Add(err))
			if in.Width == inch(3) {
				require.Len(t, faults, 1)
			}
			last := faults[len(faults)-1] // the width is told before it
			assert.Equal(t, c.field, last.Field)
			assert.Equal(t, c.expected, last.Expected)
		})
	}
}

// A size that may be left out makes a difference, and a count says how many panels there are.
func TestGivenSizesAndCountsSayWhatIsThere(t *testing.T) {
	card := own.Standing("folded-card")
	gap := map[string]enclosure.Value{"fold": {Choice: "gate"}, "gap": {Length: measure.MustParse("1/4 in")}}
	s, err := solved(t, card, "5", "7", "1/8", gap)
	require.NoError(t, err)
	p := s.Pattern.Pieces[0].Strips[0].Cells
	assert.Equal(t, measure.MustParse("1/4 in"), p[1].Size.Sub(p[0].Size).Sub(p[2].Size), "back less both gates is the gap")
	for _, panels := range []int64{2, 7, 12} {
		s, err := solved(t, card, "5", "7", "1/8", map[string]enclosure.Value{"fold": {Choice: "accordion"}, "panels": {Count: panels}})
		require.NoError(t, err)
		assert.Len(t, s.Pattern.Pieces[0].Panels, int(panels))
		assert.Len(t, s.Pattern.Pieces[0].Seams, int(panels-1))
	}
}

// What a design can say to stand as a kind is refused where it says nothing that holds.
func TestWhatKindsSayIsReadWithCare(t *testing.T) {
	design := func(more string) string {
		return strings.Replace(string(own.Simplest().Text), `"pieces":`, more+`,"pieces":`, 1)
	}
	counts := make([]string, 32) // which come to 64 to the power of 32 ways
	for i := range counts {
		counts[i] = `{"name":"n` + strconv.Itoa(i) + `","count":["1","64"],"usual":"4"}`
	}
	for name, c := range map[string]struct{ text, place string }{
		"a count without bounds": {design(`"choices":[{"name":"n","count":["9","2"],"usual":"4"}]`), "design.choices[0]"},
		"a huge count":           {design(`"choices":[{"name":"n","count":["1","99999999999"],"usual":"4"}]`), "design.choices[0]"},
		"too many ways":          {design(`"choices":[` + strings.Join(counts, ",") + `]`), "design.choices"},
		"two conditions":         {design(`"choices":[{"name":"a","of":["b","c"]},{"name":"d","of":["e","f"],"when":{"a":"b","d":"e"}}]`), "design.choices[1].when"},
		"no such size":           {design(`"limits":[{"of":"depth","least":["1 in"]}]`), "design.limits[0].of"},
		"no sum":                 {design(`"limits":[{"of":"width","least":["2 x lap"]}]`), "design.limits[0].least[0]"},
		"no such need":           {design(`"needs":["depth"]`), "design.needs[0]"},
		"an ornament in the air": {design(`"ornament":{"tab":"tab","height":"lap"}`), "design.ornament.tab"},
		"a roll with sides":      {strings.Replace(string(own.Simplest().Text), `"on":"right side","edge":"right"`, `"on":"right side","edge":"right","fold":"round"`, 1), "design.pieces[0].panels"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := own.Read([]byte(c.text))
			var faults fault.Faults
			require.NoError(t, faults.Add(err))
			places := map[string]bool{}
			for _, f := range faults {
				places[f.Field] = true
			}
			assert.True(t, places[c.place], "%+v", faults)
		})
	}
}
