package api

import (
	"net/http"
	"net/url"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/guide"
)

// An ornament, of ours or drawn, is the last step of the work: in the order, in the
// guide with its picture, and in the model.
func TestOrnamentIsTheLastStep(t *testing.T) {
	for _, shape := range []string{"heart", "M20 40C-10 20 0 0 10 0Q20 0 20 10Q20 0 30 0C40 0 50 20 20 40Z"} {
		query := cards + "&ornament_width=2in&ornament_shape=" + url.QueryEscape(shape)
		s := decode[wire.Solution](get(t, "/v1/solve/slotted-band?"+query+"&show=order,ornament,links").ok())
		last := s.Order[len(s.Order)-1]
		assert.Equal(t, "dress", last.Do)
		assert.Equal(t, []string{"ornament", "band"}, last.Pieces)
		assert.Equal(t, []float64{90, 180, 90, 180}, []float64{last.Turns[0].From, last.Turns[0].To, last.Turns[1].From, last.Turns[1].To})
		assert.Equal(t, "ornament", last.Moves[0].What)
		assert.Equal(t, shape, s.Ornament.Shape)
		g := decode[guide.Guide](get(t, "/v1/guide/slotted-band?"+query+"&pictures=light").ok())
		dress := g.Steps[len(g.Steps)-1]
		require.Equal(t, guide.StageDress, dress.Stage)
		assert.Equal(t, []int{last.Step}, dress.Order)
		assert.Contains(t, dress.Pictures[0], "ornament")
		get(t, "/v1/drawing/slotted-band?"+query+"&view=step&picture="+strconv.Itoa(last.Step)).ok()
		model := get(t, "/v1/drawing/slotted-band.glb?"+query).ok().Body.String()
		for _, part := range []string{`"left half"`, `"right half"`, strconv.Itoa(last.Step) + " dress"} {
			assert.Contains(t, model, part)
		}
		finished := get(t, "/v1/drawing/slotted-band?"+query+"&view=finished").ok().Body.String()
		assert.NotEqual(t, finished, get(t, "/v1/drawing/slotted-band?"+cards+"&view=finished").ok().Body.String())
	}
}

// What is wrong with a path is said with its place, and the hint is a path that is taken.
func TestOrnamentPathsAreRefused(t *testing.T) {
	for path, want := range map[string]string{"M0 0L10": "at character 8", "M0 0L10 10L10 0L0 10Z": "crosses itself", "hart": `there is no ornament_shape "hart"`} {
		p := get(t, "/v1/solve/slotted-band?"+cards+"&ornament_width=2in&ornament_shape="+url.QueryEscape(path)).problem(http.StatusBadRequest)
		require.Len(t, p.Errors, 1)
		assert.Equal(t, "ornament_shape", p.Errors[0].Name)
		assert.Contains(t, p.Errors[0].Detail, want)
	}
	get(t, "/v1/solve/slotted-band?"+cards+"&ornament_width=2in&ornament_shape=M0+30L20+0L40+30Z").ok()
}
