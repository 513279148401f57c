package fault_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fault"
)

var (
	width   = fault.Fault{Code: fault.Unreadable, Field: "width", Detail: "not a length"}
	caliper = fault.Fault{Code: fault.OutOfRange, Field: "caliper", Detail: "too thick"}
	whole   = fault.Fault{Code: fault.Missing, Detail: "the body is empty"}
)

func TestAddTakesFaultsApart(t *testing.T) {
	var all fault.Faults
	require.NoError(t, all.Add(nil))
	assert.Empty(t, all)
	require.NoError(t, all.Add(width))
	require.NoError(t, all.Add(fault.Faults{caliper, whole}))
	require.NoError(t, all.Add(fmt.Errorf("reading the request: %w", width)))
	assert.Equal(t, fault.Faults{width, caliper, whole, width}, all, "in the order found, wrapped ones too")
}

func TestAddReturnsWhatIsNotAboutTheRequest(t *testing.T) {
	all := fault.Faults{width}
	disk := errors.New("disk full")
	assert.Equal(t, disk, all.Add(disk))
	assert.Equal(t, fault.Faults{width}, all)
}

// An empty list must not become an error that is not nil.
func TestErr(t *testing.T) {
	var none fault.Faults
	require.True(t, none.Err() == nil)
	require.True(t, fault.Faults{}.Err() == nil)
	var back fault.Faults
	require.ErrorAs(t, fault.Faults{width, caliper}.Err(), &back)
	assert.Equal(t, fault.Faults{width, caliper}, back)
}

func TestErrorText(t *testing.T) {
	assert.Equal(t, "width: not a length", width.Error())
	assert.Equal(t, "the body is empty", whole.Error())
	assert.Equal(t, "width: not a length\nthe body is empty", fault.Faults{width, whole}.Error())
}

func TestUnderstood(t *testing.T) {
	understood := []fault.Code{fault.NoFit, fault.Impossible, fault.NoProof, fault.NoPlan, fault.OverBudget}
	for _, code := range []fault.Code{
		fault.Unreadable, fault.NoUnit, fault.Ambiguous, fault.Unknown, fault.Missing, fault.Repeated, fault.Conflict,
		fault.OutOfRange, fault.TooFine, fault.TooMany, fault.NoFit, fault.Impossible, fault.NoProof, fault.NoPlan, fault.OverBudget,
	} {
		assert.Equal(t, slices.Contains(understood, code), fault.Fault{Code: code}.Understood(), string(code))
	}
}

func TestJoin(t *testing.T) {
	assert.True(t, fault.Join() == nil)
	assert.True(t, fault.Join(nil, nil) == nil)
	assert.Equal(t, fault.Faults{width, caliper, whole}, fault.Join(width, nil, fault.Faults{caliper, whole}))
	disk := errors.New("disk full")
	assert.Equal(t, disk, fault.Join(width, disk, caliper), "what is not about the request goes first")
}

// A fault of a member stands under the name of what holds it; any other error stays.
func TestUnder(t *testing.T) {
	disk := errors.New("disk full")
	require.NoError(t, fault.Under("sheet", nil))
	assert.Equal(t, disk, fault.Under("sheet", disk))
	var fs fault.Faults
	require.ErrorAs(t, fault.Under("items[0]", fault.Faults{width, whole}), &fs)
	assert.Equal(t, []string{"items[0].width", "items[0]"}, []string{fs[0].Field, fs[1].Field})
	assert.Equal(t, "width", width.Under("").Field)
}
