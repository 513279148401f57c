package api

import (
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
