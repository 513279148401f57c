package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Options that leave nothing of a sleeve, a slipcase or a card are refused by
// name, with the bound that was broken. The contents are 3 x 5 x 1 in, in stock
// of 0.012 in with a snug fit.
func TestFlatGoodsRefusals(t *testing.T) {
	long := func(text string) enclosure.Value { return enclosure.Value{Length: measure.MustParse(text)} }
	word := func(text string) enclosure.Value { return enclosure.Value{Choice: text} }
	for name, c := range map[string]struct {
		kind     string
		options  map[string]enclosure.Value
		code     fault.Code
		field    string
		expected string
	}{
		// half of 3 + 0.012 + 1/32 is 1.522, less the lap of 1/2 that must not show
		"notch wider than the face": {"sleeve", map[string]enclosure.Value{"notch": long("1 1/2 in")}, fault.Impossible, "notch", "from 1/8 in to 1 in"},
		// 5 - 4 - 1/8 - 1/4
		"notch deeper than the sleeve": {"sleeve", map[string]enclosure.Value{"reveal": long("4 in"), "notch": long("3/4 in")}, fault.Impossible, "notch", "from 1/8 in to 5/8 in"},
		// 5 - 1/4 - 1/8
		"nothing left of the sleeve": {"sleeve", map[string]enclosure.Value{"reveal": long("4 3/4 in")}, fault.Impossible, "reveal", "at most 4 5/8 in"},
		// (1/16 + 0.012) / 2 + 1/8 = 0.16225
		"no glue on the lap":       {"sleeve", map[string]enclosure.Value{"lap": long("1/8 in")}, fault.Impossible, "lap", "from 3/16 in to 3 in"},
		"laps on one another":      {"slipcase", map[string]enclosure.Value{"lap": long("2 3/4 in")}, fault.Impossible, "lap", "from 3/16 in to 2 1/2 in"},
		"faces without a notch":    {"slipcase", map[string]enclosure.Value{"notch_faces": word("front")}, fault.Conflict, "notch_faces", ""},
		"one score, in two":        {"sleeve", map[string]enclosure.Value{"join": word("two-pieces"), "scores": word("one")}, fault.Conflict, "scores", "two or auto"},
		"double walls, in two":     {"tray", map[string]enclosure.Value{"join": word("two-pieces"), "walls": word("double")}, fault.Conflict, "walls", ""},
		"a lap without two pieces": {"tray", map[string]enclosure.Value{"lap": long("1 in")}, fault.Conflict, "lap", ""},
		"too long a lap":           {"lidded-box", map[string]enclosure.Value{"join": word("two-pieces"), "lap": long("3 in")}, fault.Impossible, "lap", "from 1/4 in to 1 3/8 in"},
		"a gap in a side fold":     {"folded-card", map[string]enclosure.Value{"gap": long("1/8 in")}, fault.Conflict, "gap", ""},
		"panels of a letter fold":  {"folded-card", map[string]enclosure.Value{"fold": word("letter"), "panels": {Count: 3}}, fault.Conflict, "panels", ""},
		// 3 - 1/16 - 2 x 1/4
		"a gap without a gate": {"folded-card", map[string]enclosure.Value{"fold": word("gate"), "gap": long("2 3/4 in")}, fault.Impossible, "gap", "at most 2 7/16 in"},
	} {
		t.Run(name, func(t *testing.T) {
			r := request(t, c.kind, "3 in", "1 in", "0.012 in", 0)
			r.Height, r.Options = measure.MustParse("5 in"), c.options
			_, err := solve.Solve(context.Background(), r)
			refusal := firstFault(t, err)
			assert.Equal(t, c.code, refusal.Code)
			assert.Equal(t, c.field, refusal.Field)
			assert.Equal(t, c.expected, refusal.Expected)
		})
	}
}

// What goes into something else has no greatest contents but a least pocket:
// the card and the least clearance.
func TestLeastPocketOfAFoldedCard(t *testing.T) {
	r := request(t, "folded-card", "5 1/4 in", "0 in", "0.012 in", 2)
	r.Height = measure.MustParse("7 1/4 in")
	c, err := solve.CheckOwn(context.Background(), r, &solve.Measurements{
		Blanks: [][2]measure.Length{{measure.MustParse("10 in"), measure.MustParse("7 in")}}, Marks: []measure.Length{measure.MustParse("5 in")},
	})
	assert.NoError(t, err)
	assert.True(t, c.Works)
	assert.Equal(t, measure.MustParse("5 1/8 in"), c.Greatest.Width)
	assert.Equal(t, measure.MustParse("7 1/8 in"), c.Greatest.Height)
}
