package api

import (
	"encoding/json"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/manual"
)

// TestPortfolioAsMeasured checks what solving gives, and the same with one score
// of the sleeve a quarter of an inch off.
func TestPortfolioAsMeasured(t *testing.T) {
	query, body := portfolioCheckExample()
	good := decode[wire.PortfolioCheck](get(t, "/v1/check/portfolio?"+query).ok())
	assert.True(t, good.Works, good.Words)
	require.Len(t, good.Layers, 2)
	assert.Equal(t, []string{"tray", "sleeve"}, []string{good.Layers[0].Name, good.Layers[1].Name})
	solved := decode[wire.Portfolio](get(t, "/v1/solve/portfolio?unit=in&width=5&height=4&thickness=1&caliper=0.012&fit=easy&layers=tray&layers=sleeve").ok())
	assert.Equal(t, solved.Chain, good.Chain, "as solved, errors add up as solved")
	assert.InDelta(t, solved.Sure.Chance, good.Sure.Chance, 0.0001)
	assert.True(t, decode[wire.Check](get(t, good.Layers[1].Links.Self).ok()).Works, "the layer alone goes round the tray as well")

	var own map[string]any
	require.NoError(t, json.Unmarshal([]byte(body), &own))
	own["layers"].([]any)[1].(map[string]any)["marks"].([]any)[0] = "4 in"
	off, err := json.Marshal(own)
	require.NoError(t, err)
	bad := decode[wire.PortfolioCheck](postJSON(t, "/v1/check/portfolio", string(off)).ok())
	assert.False(t, bad.Works)
	assert.True(t, bad.Layers[0].Works)
	assert.Equal(t, "The sleeve does not work as measured.", bad.Words)
	rows := rowsOf(t, get(t, "/v1/check/portfolio.csv?"+query).ok().Body.String())
	assert.Equal(t, []string{"verdict", "", "yes"}, rows[1][:3])
	assert.Equal(t, []string{"verdict", "tray", "yes"}, rows[2][:3])
	bare := askOutside(t, manual.Request{Target: "/v1/check/portfolio?unit=in&width=5&height=4&thickness=1&caliper=0.012&layers=tray"})
	assert.Equal(t, http.StatusBadRequest, bare.Status)
	assert.Contains(t, bare.Body, `"name":"layers[0].blank"`)
}
