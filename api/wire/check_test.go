package wire

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// kindOf is the kind of that name.
func kindOf(t *testing.T, name string) *enclosure.Kind {
	t.Helper()
	k, ok := repertoire.Lookup(name)
	require.True(t, ok, name)
	return k
}

// checked judges measurements that a query has.
func checked(t *testing.T, kind, query string) *Check {
	t.Helper()
	a := ask.NewCheck(kindOf(t, kind)).Take()
	a.AddQuery(query)
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	c, err := solve.CheckFinished(context.Background(), a.Q.Request, a.Q.Measurements(), a.Q.Finished())
	require.NoError(t, err)
	return OfCheck(c, Ask(&a.Reading, "/v1/check/"+kind))
}

// sleeveAsCut is a sleeve round 90 x 60 x 5 mm: front 92.5, side 6.5, back 92, side 7 and a
// lap, cut by hand.
const sleeveAsCut = "unit=mm&width=90&height=60&thickness=5&caliper=0.25&blank=205.5x60&marks=92.5&marks=99&marks=191&marks=198"

// TestACheckSaysHowFarItIsOff: the front is half a millimetre longer than the back, and a
// side than the other; the sums that must be nothing say so, and the smallest change makes
// them so.
func TestACheckSaysHowFarItIsOff(t *testing.T) {
	c := checked(t, "sleeve", sleeveAsCut)
	assert.False(t, c.Works)
	assert.Equal(t, []any{"sleeve", "mm"}, []any{c.Kind, c.Unit})
	off := map[float64]int{}
	for _, closure := range c.Closures {
		off[max(closure.Off.MM, -closure.Off.MM)]++
	}
	assert.Positive(t, off[0.5], "%v", c.Closures)
	require.NotEmpty(t, c.Mend)
	for _, m := range c.Mend {
		assert.NotEqual(t, m.From.MM, m.To.MM, m.Name)
		assert.LessOrEqual(t, max(m.From.MM-m.To.MM, m.To.MM-m.From.MM), 2.0, "%s: the smallest change", m.Name)
	}
	assert.True(t, strings.HasPrefix(c.Words, "It does not work as measured ("), c.Words)
	assert.Nil(t, c.Learned, "nothing was measured on the folded piece")
	assert.Equal(t, "/v1/kinds/sleeve", c.Links.Kind)
	assert.Empty(t, c.Links.Drawing, "a check has none")
}

// TestMendedReadingsWork: what a check says to change is what the next check finds right.
func TestMendedReadingsWork(t *testing.T) {
	c := checked(t, "sleeve", sleeveAsCut)
	sizes := map[string]float64{"front": 92.5, "left side": 6.5, "back": 92, "right side": 7}
	var names []string
	for _, m := range c.Mend {
		names = append(names, m.Name)
		for name, size := range sizes {
			if m.From.MM == size {
				sizes[name] = m.To.MM
			}
		}
	}
	at, query := 0.0, "unit=mm&width=90&height=60&thickness=5&caliper=0.25&blank="
	lap := 205.5 - 198
	marks := ""
	for _, name := range []string{"front", "left side", "back", "right side"} {
		at += sizes[name]
		marks += "&marks=" + number(at, 3)
	}
	again := checked(t, "sleeve", query+number(at+lap, 3)+"x60"+marks)
	assert.True(t, again.Works, "changed %v: %s %v", names, again.Words, again.Closures)
	assert.True(t, strings.HasPrefix(again.Words, "It closes, and the contents go in: "), again.Words)
	assert.Empty(t, again.Mend)
	assert.Empty(t, again.Findings)
	for _, g := range []*Length{again.Greatest.Width, again.Greatest.Thickness} {
		require.NotNil(t, g)
	}
	assert.GreaterOrEqual(t, again.Greatest.Width.MM, 90.0, "what it was made for goes in")
	assert.GreaterOrEqual(t, again.Greatest.Thickness.MM, 5.0)
}

// TestAFoldedPieceTeaches: a sleeve that came out 1 mm wider inside than it was to be says
// what was most likely off, by how much and at which stop, and what to say of paper and hand.
func TestAFoldedPieceTeaches(t *testing.T) {
	k := kindOf(t, "sleeve")
	s := solved(t, k, "unit=mm&width=90&height=60&thickness=5&caliper=0.25")
	own := s.answer.Links.Check[strings.Index(s.answer.Links.Check, "?")+1:]
	room := 90.0
	for _, f := range s.answer.Fit {
		if f.Axis == "width" {
			room += f.Nominal.MM
		}
	}
	right := checked(t, "sleeve", own+"&inside_width="+number(room, 3)+"mm")
	require.NotNil(t, right.Learned)
	assert.Empty(t, right.Learned.Causes)
	assert.Greater(t, right.Learned.Chance, 0.5, "it came out as it should")
	wide := checked(t, "sleeve", own+"&inside_width="+number(room+1, 3)+"mm").Learned
	require.NotNil(t, wide)
	require.NotEmpty(t, wide.Causes)
	assert.Less(t, wide.Chance, right.Learned.Chance)
	for i, c := range wide.Causes {
		assert.Positive(t, c.Deviations*c.Off.MM, "both tell which way it is off")
		if i > 0 {
			assert.LessOrEqual(t, math.Abs(c.Deviations), math.Abs(wide.Causes[i-1].Deviations), "the likeliest first")
		}
		stop := strings.HasSuffix(c.Cause, "-stop") || strings.HasPrefix(c.Cause, "one-")
		assert.Equal(t, stop, c.At != nil, "%s: a stop has a place, paper and folds have none", c.Cause)
	}
	assert.Contains(t, wide.Words, wide.Causes[0].Words)
	assert.Contains(t, wide.Query, "caliper=")
	assert.Contains(t, wide.Query, "fold_allowance=")
}

// TestAnAdaptationStandsBesideWhatItWasMadeOf: as many sizes before as after, and the words
// count those that change.
func TestAnAdaptationStandsBesideWhatItWasMadeOf(t *testing.T) {
	k := kindOf(t, "sleeve")
	s := solved(t, k, "unit=mm&width=90&height=60&thickness=5&caliper=0.25&fit=snug")
	own := s.answer.Links.Check[strings.Index(s.answer.Links.Check, "?")+1:]
	a := ask.NewAdapt(k).Take()
	a.AddQuery(strings.Replace(own, "width=90", "width=100", 1) + "&made_for_width=90")
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	made, err := solve.Adapt(context.Background(), a.Q.MadeFor, a.Q.Request, a.Q.Measurements())
	require.NoError(t, err)
	w := OfAdapted(made, Ask(&a.Reading, "/v1/adapt/"+made.After.Request.Kind.Name))
	changed := 0
	for _, size := range w.Sizes {
		if size.Was.MM != size.Now.MM {
			changed++
			assert.InDelta(t, 10, size.Now.MM-size.Was.MM, 1, "%s: the contents are 10 mm wider", size.Name)
		}
	}
	assert.Positive(t, changed)
	assert.Contains(t, w.Words, ". "+number(float64(changed), 0)+" of "+Count(len(w.Sizes), "size changes.", "sizes change."))
	assert.Contains(t, w.Words, "Made for the new thing at "+w.Now.Step)
	assert.True(t, w.Was.Works && w.Now.Proof.Closes)
}
