package api

import (
	"encoding/json"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/guide"
	"creasefit/internal/repertoire"
)

// tin is a request that most kinds have an answer to; what holds flat things, what
// stands in a box and what goes round one size want others.
const tin = "unit=mm&width=88&height=125&thickness=12&caliper=0.3"

var others = []string{tin, "unit=mm&width=88&height=125&thickness=2&caliper=0.2", "unit=mm&width=88&height=125&thickness=38&caliper=0.3", "unit=mm&width=120&thickness=12&caliper=0.3"}

// TestOrderIsGivenToThoseWhoNameIt asks for it by show and by pick, before and
// after the plain answer was remembered.
func TestOrderIsGivenToThoseWhoNameIt(t *testing.T) {
	const path = "/v1/solve/tray?" + tin
	for range 2 {
		assert.NotContains(t, get(t, path).ok().Body.String(), `"order":`)
	}
	assert.JSONEq(t, `{"step":"1 mm"}`, get(t, path+"&show=step").ok().Body.String())
	var a struct {
		Step  string          `json:"step"`
		Order []wire.WorkStep `json:"order"`
	}
	require.NoError(t, json.Unmarshal(get(t, path+"&show=step,+order").ok().Body.Bytes(), &a))
	assert.Equal(t, "1 mm", a.Step)
	var did []string
	for i, s := range a.Order {
		assert.Equal(t, i+1, s.Step)
		did = append(did, s.Do)
	}
	assert.Equal(t, []string{"cut", "score", "slit", "fold", "glue", "put in"}, did)
	glue := a.Order[4]
	assert.Len(t, glue.Glues, 4, "four tabs")
	assert.Equal(t, 2, glue.Alike, "two walls")
	assert.Equal(t, wire.WorkTurn{Piece: "tray", Panel: "left wall", Score: "score 1", Fold: "valley", From: 0, To: 90}, glue.Turns[0])
	assert.Equal(t, []float64{0, 0, -1}, a.Order[5].Moves[0].Way, "the contents come down on the base")
	assert.Equal(t, "glue", get(t, path+"&pick=/order/4/do").ok().Body.String())
}

// TestEveryKindTellsItsOrder compares the order on the wire with the steps that
// the guide of the same request tells: each step once, and in order.
func TestEveryKindTellsItsOrder(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			var query string
			for _, names := range others {
				if query = k.Name + "?" + names; get(t, "/v1/solve/"+query).Code == http.StatusOK {
					break
				}
			}
			var a struct{ Order []wire.WorkStep }
			require.NoError(t, json.Unmarshal(get(t, "/v1/solve/"+query+"&show=order").ok().Body.Bytes(), &a))
			var g guide.Guide
			require.NoError(t, json.Unmarshal(get(t, "/v1/guide/"+query).ok().Body.Bytes(), &g))
			var told []int
			for i := range g.Steps {
				if n := g.Steps[i].Order; len(n) > 0 && (len(told) == 0 || told[len(told)-1] != n[len(n)-1]) {
					told = append(told, n...)
				}
			}
			want := make([]int, len(a.Order))
			for i := range want {
				want[i] = i + 1
			}
			assert.Equal(t, want, told)
		})
	}
}

// TestGainSaysWhatItCloses asks for a sleeve whose plainest readings leave a gap.
func TestGainSaysWhatItCloses(t *testing.T) {
	gain := get(t, "/v1/solve/sleeve?unit=in&width=50mm&height=120mm&thickness=2mm&caliper=0.06&fit=loose&ruler=1/32in&pick=/alternatives/0/gain").ok().Body.String()
	assert.Contains(t, gain, "the gap of 0.06 in closes to 0.003 in")
}

// Scores of board say on which side they are cut half through, in every form of the
// answer; those of paper do not.
func TestScoresOfBoardSayWhereTheyAreCut(t *testing.T) {
	const tray = "/v1/solve/tray?unit=mm&width=120&height=90&thickness=30&caliper="
	var a struct{ Pieces []wire.Piece }
	require.NoError(t, json.Unmarshal(get(t, tray+"1.5").ok().Body.Bytes(), &a))
	for _, s := range a.Pieces[0].Scores {
		assert.Equal(t, map[string]string{"valley": "outside", "mountain": "inside"}[s.Fold], s.HalfCut, s.Name)
	}
	assert.Contains(t, get(t, tray+"1.5&format=csv").ok().Body.String(), "half-cut outside,score 1")
	assert.NotContains(t, get(t, tray+"0.4").ok().Body.String(), "half_cut")
	cutter := "/v1/drawing/tray.svg?view=cutter&unit=mm&width=120&height=90&thickness=30&caliper="
	assert.Contains(t, get(t, cutter+"1.5").ok().Body.String(), `id="half-cut-other-side"`)
	assert.NotContains(t, get(t, cutter+"1.5").ok().Body.String(), `id="score"`)
}
