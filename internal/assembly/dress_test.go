package assembly_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// dressed is a slotted band with an ornament 60 mm wide, and its order of work.
func dressed(t *testing.T, options ...string) (*pattern.Pattern, *assembly.Order) {
	s, o := ordered(t, asked(t, "slotted-band", append(options, "ornament_width=60")...))
	whole := s.Pattern
	whole.Pieces = append(whole.Pieces[:1:1], s.Ornament.Piece())
	return &whole, o.Dressed(&whole)
}

// The ornament comes last: its halves meet over the line where the ends of the band
// meet, each over the tab of its own side, in whose area their glue lies, off the slits,
// two papers above the front; the tabs lie between.
func TestOrnamentLiesOnTheTabs(t *testing.T) {
	for _, shape := range []string{"rectangle", "heart", "star", "M0 30L20 0L40 30Z"} {
		p, o := dressed(t, "ornament_shape="+shape)
		last := len(o.Steps) - 1
		require.Equal(t, "dress", o.Steps[last].Do.String())
		f := o.Frame(last, 1)
		n := len(f.Model.Plates)
		require.Len(t, f.Present, n)
		front := plate(t, &f, "left front")
		for i, name := range []string{"left tab", "right tab"} {
			tab, half := plate(t, &f, name), &f.Model.Plates[n-2+i]
			assert.InDelta(t, -1, tab.Inside.Dot(front.Inside), 1e-9, "the tab is turned over onto the front")
			assert.InDelta(t, p.Caliper.Millimetres(), above(front, tab.Outline[0]), 1e-9, "the %s lies on the front", name)
			assert.InDelta(t, 2*p.Caliper.Millimetres(), above(front, half.Outline[0]), 1e-9, "the half lies on the tab")
			low, high := across(front, tab.Outline)
			for _, v := range p.Pieces[1].Glues[i].Area {
				at := spotOn(half, v)
				x := at.Minus(front.Frame.Origin).Dot(front.Frame.X)
				assert.GreaterOrEqual(t, x, low-1e-6, "%s: glue of the half over the %s", shape, name)
				assert.LessOrEqual(t, x, high+1e-6, "%s: glue of the half over the %s", shape, name)
			}
		}
	}
}

// Before its step the ornament is nowhere, and the steps before are those of the band.
func TestOrnamentComesLast(t *testing.T) {
	p, o := dressed(t)
	s, plain := ordered(t, asked(t, "slotted-band", "ornament_width=60"))
	require.Len(t, o.Steps, len(plain.Steps)+1)
	assert.Len(t, s.Pattern.Pieces, len(p.Pieces)-1)
	for i := range plain.Steps {
		want, got := plain.Frame(i, 0.5), o.Frame(i, 0.5)
		n := len(want.Model.Plates)
		assert.Equal(t, want.Model.Plates, got.Model.Plates[:n])
		assert.Equal(t, append(want.Present, false, false), got.Present)
	}
	waiting, half, done := o.Frame(len(plain.Steps), 0), o.Frame(len(plain.Steps), 0.5), o.Frame(len(plain.Steps), 1)
	n := len(done.Model.Plates) - 1
	before := o.Frame(len(plain.Steps)-1, 1)
	assert.Equal(t, waiting.Model.Plates[n].Outline, before.Model.Plates[n].Outline, "it comes from where it waited")
	front := plate(t, &done, "left front")
	from, to := above(front, waiting.Model.Plates[n].Outline[0]), above(front, done.Model.Plates[n].Outline[0])
	assert.InDelta(t, o.Steps[len(plain.Steps)].Travels[0].By, from-to, 1e-9)
	assert.Equal(t, waiting.Model.Plates[n].Outline, half.Model.Plates[n].Outline, "the tabs are pressed first")
	assert.InDelta(t, 0, plate(t, &waiting, "left tab").Inside.Dot(front.Inside), 1e-9, "the tabs stand up")
	assert.InDelta(t, -1, plate(t, &half, "left tab").Inside.Dot(front.Inside), 1e-9)
}

func plate(t *testing.T, f *assembly.Frame, name string) *fold.Plate {
	for i := range f.Model.Plates {
		if f.Model.Plates[i].Name == name {
			return &f.Model.Plates[i]
		}
	}
	require.Fail(t, "no plate", name)
	return nil
}

// above is how far a place lies above the outside of a plate.
func above(pl *fold.Plate, at fold.Vec) float64 { return -at.Minus(pl.Outline[0]).Dot(pl.Inside) }

// across is how far places reach along a plate's width.
func across(pl *fold.Plate, places []fold.Vec) (low, high float64) {
	for i, v := range places {
		x := v.Minus(pl.Frame.Origin).Dot(pl.Frame.X)
		if i == 0 {
			low, high = x, x
		}
		low, high = min(low, x), max(high, x)
	}
	return low, high
}

// spotOn is where a spot of a blank is on a plate.
func spotOn(pl *fold.Plate, v pattern.Vertex) (at fold.Vec) {
	for k := range at {
		at[k] = pl.Frame.Origin[k] + pl.Frame.X[k]*v.X.Millimetres() + pl.Frame.Y[k]*v.Y.Millimetres()
	}
	return at
}
