package api

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
)

// A band of common practice for something 3 1/2 in wide, wanted for 3 3/4 in.
const band = "unit=in&thickness=0.09&caliper=0.012&fit=snug&ruler=1/8in&blank=8-1/4x1-3/4&marks=1/2&marks=2-1/4&marks=5-7/8&marks=7-3/4&depths=1&depths=1"

func TestAdaptABand(t *testing.T) {
	a := decode[wire.Adapted](get(t, "/v1/adapt/slotted-band?"+band+"&made_for_width=3-1/2&width=3-3/4").ok())
	require.True(t, a.Was.Works)
	assert.Equal(t, "8 3/4 in", a.Now.Pieces[0].Blank.Width.Reading, "back and front a quarter of an inch each")
	assert.Equal(t, "1 3/4 in", a.Now.Pieces[0].Blank.Height.Reading)
	assert.Equal(t, a.Was.Fit[0].Nominal.MM, a.Now.Fit[0].Nominal.MM)
	assert.Contains(t, a.Words, "width snug")
	back := get(t, "/v1/adapt/slotted-band?"+band+"&width=3-1/2&format=csv").ok().Body.String()
	assert.Equal(t, 0, strings.Count(back, ",yes"), "its own contents give it back: %s", back)
	text := get(t, "/v1/adapt/slotted-band?"+band+"&made_for_width=3-1/2&width=3-3/4&format=text").ok().Body.String()
	assert.Contains(t, text, "back: 3 7/8 in instead of 3 5/8 in")
	p := get(t, "/v1/adapt/slotted-band?"+band+"&made_for_width=3-1/2").problem(400)
	assert.Equal(t, "width", p.Errors[0].Name)
	p = get(t, "/v1/adapt/slotted-band?"+strings.Replace(band, "7-3/4", "7-5/8", 1)+"&width=3-1/2").problem(422)
	assert.Contains(t, p.Errors[0].Hint, "/v1/check/slotted-band")
}
