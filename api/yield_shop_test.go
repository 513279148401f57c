package api

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/api/wire"
)

// A shop's order: two papers, an offcut in stock, pieces for trials, and what is
// wanted first.
func TestYieldOfAShop(t *testing.T) {
	order := `{"unit":"in","effort_ms":10000,"sheet":[{"size":"12 x 12 in","paper":"kraft"},{"size":"9 x 12 in","paper":"ivory"},
		{"size":"5 x 9 in","paper":"ivory","available":1,"offcut":"yes"}],"items":[
		{"name":"band","blank":"8 1/4 x 1 3/4 in","count":12,"paper":"kraft","spares":2},{"name":"tasting card","blank":"5 x 3 in","count":6,"paper":"ivory"},
		{"name":"honey tag","blank":"2 x 3 1/2 in","count":4,"paper":"ivory","priority":1}]}`
	y := decode[wire.Yield](postJSON(t, "/v1/yield", order).ok())
	assert.Equal(t, 1, y.StockOffcuts)
	assert.Equal(t, 12, y.Items[0].Wanted)
	assert.Equal(t, 2, y.Items[0].Spares)
	assert.Equal(t, 14, y.Items[0].Made)
	assert.Equal(t, "ivory", y.Items[1].Paper)
	assert.LessOrEqual(t, y.Items[2].Ready, y.Items[1].Ready)
	assert.True(t, y.Proven)
	assert.Equal(t, []any{"ivory", true, "kraft", false}, []any{y.Plans[0].Sheet.Paper, y.Plans[0].Sheet.Offcut, y.Plans[1].Sheet.Paper, y.Plans[1].Sheet.Offcut})
	text := postJSON(t, "/v1/yield?format=text", order).ok().Body.String()
	assert.Contains(t, text, "Plan 1: cut 1 offcut of 5 in by 9 in (ivory) like this.")
	assert.Contains(t, text, "of 12 in by 12 in (kraft) like this.")
	assert.Contains(t, postJSON(t, "/v1/yield?format=svg", order).ok().Body.String(), "kraft, 12 in × 12 in")
}

// A paper that there is no sheet of, and an offcut without a number, are said.
func TestYieldOfAShopIsRefused(t *testing.T) {
	p := postJSON(t, "/v1/yield", `{"unit":"in","sheet":{"size":"12 x 12 in","paper":"kraft"},"items":[{"blank":"5 x 3 in","count":2,"paper":"kraf"},{"blank":"5 x 3 in","count":2}]}`).problem(http.StatusBadRequest)
	assert.Equal(t, []string{"items[0].paper", "items[1].paper"}, []string{p.Errors[0].Name, p.Errors[1].Name})
	assert.Equal(t, "did you mean kraft?", p.Errors[0].Hint)
	p = postJSON(t, "/v1/yield", `{"unit":"in","sheet":[{"size":"12 x 12 in"},{"size":"5 x 9 in","offcut":"yes"}],"items":[{"blank":"5 x 3 in","count":2}]}`).problem(http.StatusBadRequest)
	assert.Equal(t, "sheet[1].available", p.Errors[0].Name)
	p = postJSON(t, "/v1/yield", `{"unit":"in","sheet":"12 x 12 in","blank":"5 x 3 in","spares":2}`).problem(http.StatusBadRequest)
	assert.Equal(t, "spares", p.Errors[0].Name)
}
