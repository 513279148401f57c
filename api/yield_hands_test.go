package api

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/api/wire"
)

// craft is an order of a market stall that takes three sheets and, by hand,
// eleven settings of the trimmer.
const craft = `{"unit":"in","effort_ms":10000,"sheet":"12 x 18 in","sheet_grain":"height","margin":"1/4 in","trimmer_length":"18 in","items":[
	{"name":"band","blank":"8 1/4 x 1 3/4 in","grain":"width","count":14},{"name":"card","blank":"5 x 3 in","count":11},{"name":"tag","blank":"2 x 3 1/2 in","count":20}]}`

// A plan is as easy on the hands as one made by hand, and says so.
func TestYieldIsEasyOnTheHands(t *testing.T) {
	y := decode[wire.Yield](postJSON(t, "/v1/yield", craft).ok())
	assert.Equal(t, 3, y.Sheets)
	assert.True(t, y.Proven)
	assert.LessOrEqual(t, y.Work.Settings, 14)
	assert.Len(t, y.CutList, y.Work.Settings)
	assert.NotEmpty(t, y.UsableOffcuts)
	assert.InDelta(t, 100*y.Used, y.UsedPercent, 0.06)
	text := postJSON(t, "/v1/yield?format=text", craft).ok().Body.String()
	assert.Regexp(t, `Set 8 1/4 in: 14 cuts \(plan 1 step \d`, text)
	assert.Contains(t, text, fmt.Sprintf("\nWork: %d settings, %d cuts, %d turns.\n", y.Work.Settings, y.Work.Cuts, y.Work.Turns))
	largest := y.UsableOffcuts[0]
	assert.Contains(t, text, fmt.Sprintf("\nUsable offcuts: %d x %s by %s", largest.Count, largest.Width.Reading, largest.Height.Reading))
	assert.NotContains(t, postJSON(t, "/v1/yield?format=text", strings.Replace(craft, "{", `{"offcut_least":"17 in",`, 1)).ok().Body.String(), "offcut")
}

// Whoever asks what one sheet gives is told the easy way to cut it: eight bands in two
// settings by hand; the answer is the same every time, whatever effort is named.
func TestOneSheetIsEasyOnTheHands(t *testing.T) {
	y := decode[wire.Yield](get(t, "/v1/yield?unit=in&sheet=12x12&blank=8-1/4x1-3/4&effort_ms=1").ok())
	assert.Equal(t, []int{8, 2}, []int{y.PerSheet, y.Work.Settings})
	y.Links = wire.YieldLinks{}
	more := decode[wire.Yield](get(t, "/v1/yield?unit=in&sheet=12x12&blank=8-1/4x1-3/4&effort_ms=9000").ok())
	more.Links = wire.YieldLinks{}
	assert.Equal(t, y, more)
}

// What is preferred comes first: stages, or the largest usable offcut.
func TestYieldByPreference(t *testing.T) {
	plans := map[string]wire.Yield{}
	for _, prefer := range []string{"settings", "offcut", "stages"} {
		plans[prefer] = decode[wire.Yield](postJSON(t, "/v1/yield", strings.Replace(craft, "{", `{"offcut_least":"3 in","prefer":"`+prefer+`",`, 1)).ok())
	}
	area := func(y wire.Yield) float64 {
		if len(y.UsableOffcuts) == 0 {
			return 0
		}
		return y.UsableOffcuts[0].Width.In * y.UsableOffcuts[0].Height.In
	}
	assert.LessOrEqual(t, plans["stages"].Work.Stages, plans["settings"].Work.Stages)
	assert.LessOrEqual(t, plans["settings"].Work.Settings, plans["stages"].Work.Settings)
	assert.GreaterOrEqual(t, area(plans["offcut"]), area(plans["settings"]))
	postJSON(t, "/v1/yield", strings.Replace(craft, "{", `{"prefer":"speed",`, 1)).problem(http.StatusBadRequest)
}

// Two blanks of one size without counts share the sheet; neither has a number of its own.
func TestYieldOfTheSameBlankTwice(t *testing.T) {
	y := decode[wire.Yield](postJSON(t, "/v1/yield", `{"unit":"in","sheet":"12 x 12 in","items":[{"name":"card","blank":"5 x 3"},{"name":"tag","blank":"5 x 3"}]}`).ok())
	assert.Equal(t, 8, y.Items[0].Made+y.Items[1].Made, "two columns of four: 10 x 12 in")
	assert.Zero(t, y.PerSheet)
}
