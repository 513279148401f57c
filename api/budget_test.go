package api

import (
	"context"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/fault"
	"creasefit/internal/sheet"
)

// TestDearRequestsAreRefusedWithTheirPrice: what would take more than one call
// may ask for is refused before it is begun, with the limit, the price and what
// is within it, which is then answered.
func TestDearRequestsAreRefusedWithTheirPrice(t *testing.T) {
	const bag = "/v1/drawing/gusset-bag.pdf?unit=mm&width=2000&height=2000&thickness=500&caliper=0.5&fit=easy&view=template&paper="
	for _, c := range []struct{ target, name, price, limit, within, again string }{
		{bag + "140x140mm", "paper", "the drawing takes 1400 pages of this paper", "at most 500 pages", "paper=a0 takes", bag + "a0"},
		{"/v1/yield?unit=mm&sheet=5000x5000&blank=83x31", "blank", "come out of a sheet 9716 times", "at most 6000 times", "a blank of 106 mm x 39.5 mm is within it",
			"/v1/yield?unit=mm&sheet=5000x5000&blank=106x39.5"},
	} {
		p := get(t, c.target).problem(http.StatusUnprocessableEntity)
		assert.Equal(t, "/problems/over-budget", p.Type)
		require.Len(t, p.Errors, 1)
		assert.Equal(t, c.name, p.Errors[0].Name)
		assert.Contains(t, p.Errors[0].Detail, c.price)
		assert.Equal(t, c.limit, p.Errors[0].Expected)
		assert.Contains(t, p.Errors[0].Hint, c.within)
		get(t, c.again).ok()
	}
}

// TestFailuresThatAlwaysFailDoNotAskToBeRepeated: only load is worth another
// try.
func TestFailuresThatAlwaysFailDoNotAskToBeRepeated(t *testing.T) {
	for _, k := range problemKinds {
		w := httptest.NewRecorder()
		c := shared().echo.NewContext(httptest.NewRequest(http.MethodGet, "/", nil), w)
		require.NoError(t, shared().answerProblem(c, single(k.code, "for a test", "")))
		load := k.code == codeOverloaded || k.code == codeDraining || k.code == codeTooManyCalls
		assert.Equal(t, load, w.Header().Get("Retry-After") != "", k.code)
		assert.Equal(t, load, w.Code == http.StatusServiceUnavailable || w.Code == http.StatusTooManyRequests, k.code)
	}
}

// TestEncodersStopWhenTheCallerIsGone: an encoder is held up at its next write,
// and one that writes on and on at the most that an answer may be.
func TestEncodersStopWhenTheCallerIsGone(t *testing.T) {
	ctx, leave := context.WithCancel(context.Background())
	x := &answering{ctx: ctx}
	written := 0
	x.encoded(nil, func(w io.Writer) error {
		for {
			n, err := w.Write(make([]byte, 1000))
			if err != nil {
				return err
			}
			if written += n; written == 5000 {
				leave()
			}
		}
	})
	assert.Equal(t, 5000, written)
	assert.ErrorIs(t, x.err, context.Canceled)
	x = &answering{ctx: context.Background()}
	assert.Len(t, x.encoded([]byte("a"), func(w io.Writer) error {
		_, err := w.Write(make([]byte, mostAnswer-1))
		return err
	}), mostAnswer)
	require.NoError(t, x.err)
	x.encoded(nil, func(w io.Writer) error {
		_, err := w.Write(make([]byte, mostAnswer+1))
		return err
	})
	var f fault.Fault
	require.True(t, errors.As(x.err, &f))
	assert.Equal(t, fault.OverBudget, f.Code)
}

// TestPicturesStopWhenTheCallerIsGone leaves while pictures and pages are
// worked on.
func TestPicturesStopWhenTheCallerIsGone(t *testing.T) {
	const bag = "unit=mm&width=2000&height=2000&thickness=500&caliper=0.5&fit=easy"
	for _, target := range []string{"/v1/drawing/gusset-bag.pdf?" + bag, "/v1/drawing/gusset-bag.png?pixels=4096&" + bag, "/v1/guide/gusset-bag.pdf?" + bag} {
		ctx, leave := context.WithCancel(context.Background())
		leave()
		w := httptest.NewRecorder()
		began := time.Now()
		unremembering().Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, target, nil).WithContext(ctx))
		assert.NotEqual(t, http.StatusOK, w.Code, target)
		t.Log(target, time.Since(began))
	}
}

// TestLongPlansAreListedOnlyInShort: a plan that places very many blanks is
// answered as its cuts.
func TestLongPlansAreListedOnlyInShort(t *testing.T) {
	a := &yieldAnswer{}
	a.plan.Plans = append(a.plan.Plans, plannedBlanks(mostPlaced), plannedBlanks(1))
	for _, f := range yieldFormats {
		if err := a.price(f); f == tell.CSV || f == tell.Text {
			assert.NoError(t, err)
		} else {
			assert.ErrorContains(t, err, "15001 blanks")
		}
	}
	a.plan.Plans = a.plan.Plans[:1]
	assert.NoError(t, a.price(tell.JSON))
}

// plannedBlanks is a sheet with that many blanks.
func plannedBlanks(n int) sheet.Sheets { return sheet.Sheets{Placed: make([]sheet.Placement, n)} }

// Of many faults below twenty are told and the others counted, as of those that are found
// in the names.
func TestManyFaultsFromBelowAreCounted(t *testing.T) {
	c := shared().echo.NewContext(httptest.NewRequest(http.MethodGet, "/", nil), httptest.NewRecorder())
	for n, hidden := range map[int]int{1: 0, ask.MostReported: 0, ask.MostReported + 5: 5} {
		faults := make(fault.Faults, n)
		for i := range faults {
			faults[i] = fault.Fault{Code: fault.Impossible, Detail: "for a test"}
		}
		p := shared().problemFrom(c, faults).answer()
		assert.Len(t, p.Errors, n-hidden)
		assert.Equal(t, hidden, p.NotListed)
	}
}
