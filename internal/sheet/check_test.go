package sheet

import (
	"context"
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// teaOrder is a sound order: sachets and tins of a market stall.
func teaOrder(t testing.TB) Order {
	return Order{
		Sheets: []Stock{{Width: in(t, "12"), Height: in(t, "12"), Grain: AlongHeight}},
		Ruler:  sixteenth(t),
		Items: []Item{
			{Name: "sachet band", Width: in(t, "8 1/4"), Height: in(t, "1 3/4"), Count: 25},
			{Name: "tin wrap", Width: in(t, "9 1/2"), Height: in(t, "3"), Count: 6, Grain: AlongHeight},
			{Name: "tasting card", Width: in(t, "5 1/2"), Height: in(t, "4 1/4"), Count: 8},
		},
	}
}

func TestFaultyOrders(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(o *Order)
		code  fault.Code
		field string
	}{
		"no sheet":  {func(o *Order) { o.Sheets = nil }, fault.Missing, "sheet"},
		"no items":  {func(o *Order) { o.Items = nil }, fault.Missing, "items"},
		"no ruler":  {func(o *Order) { o.Ruler = measure.Step{} }, fault.Missing, "ruler"},
		"too large": {func(o *Order) { o.Items[1].Width = in(t, "13") }, fault.OutOfRange, "items[1].blank"},
		"too large turned": {func(o *Order) {
			o.Sheets[0].Height = in(t, "9")
			o.Sheets[0].Width = in(t, "12")
			o.Items[1].Grain = AlongWidth
		}, fault.OutOfRange, "items[1].blank"},
		"no size":         {func(o *Order) { o.Items[0].Height = measure.Length{} }, fault.OutOfRange, "items[0].blank"},
		"one count short": {func(o *Order) { o.Items[2].Count = 0 }, fault.Conflict, "items[2].count"},
		"negative count":  {func(o *Order) { o.Items[2].Count = -1 }, fault.OutOfRange, "items[2].count"},
		"too many pieces": {func(o *Order) { o.Items[0].Count, o.Items[1].Count = MostPieces, 1 }, fault.TooMany, "items"},
		"too many items":  {func(o *Order) { o.Items = make([]Item, MostItems+1) }, fault.TooMany, "items"},
		"grain not known": {func(o *Order) { o.Sheets[0].Grain = AnySide }, fault.Missing, "sheet_grain"},
		"margin too wide": {func(o *Order) { o.Margin = in(t, "6") }, fault.OutOfRange, "margin"},
		"negative kerf":   {func(o *Order) { o.Kerf = in(t, "1").Neg() }, fault.OutOfRange, "kerf"},
		"short trimmer":   {func(o *Order) { o.Trimmer = in(t, "9") }, fault.Impossible, "trimmer_length"},
		"too much effort": {func(o *Order) { o.Effort = time.Minute }, fault.OutOfRange, "effort_ms"},
		"no price":        {func(o *Order) { o.Minimize = LeastCost }, fault.Missing, "sheet[0].price"},
		"negative stock":  {func(o *Order) { o.Sheets[0].Available = -1 }, fault.OutOfRange, "sheet[0].available"},
		"a speck": {func(o *Order) {
			o.Items = o.Items[:1]
			o.Items[0].Width, o.Items[0].Height, o.Items[0].Count = in(t, "1/32"), in(t, "1/32"), 0
		}, fault.TooMany, "items[0].blank"},
		"out of stock": {func(o *Order) { o.Sheets[0].Available = 2 }, fault.Impossible, "sheet"},
	} {
		t.Run(name, func(t *testing.T) {
			o := teaOrder(t)
			c.spoil(&o)
			_, err := Plan(context.Background(), o)
			var faults fault.Faults
			require.NoError(t, faults.Add(err))
			require.NotEmpty(t, faults)
			assert.Equal(t, c.code, faults[0].Code, faults.Error())
			assert.Equal(t, c.field, faults[0].Field)
			assert.NotEmpty(t, faults[0].Detail)
		})
	}
}

func TestAllFaultsAreNamed(t *testing.T) {
	o := teaOrder(t)
	o.Items[0].Width, o.Items[2].Height = in(t, "14"), in(t, "20")
	_, err := Plan(context.Background(), o)
	var faults fault.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 2)
	assert.Equal(t, "items[0].blank", faults[0].Field)
	assert.Contains(t, faults[0].Detail, "sachet band")
	assert.Equal(t, "items[2].blank", faults[1].Field)
}

func TestCancelledOrders(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, count := range []int{0, 5} {
		o := teaOrder(t)
		for i := range o.Items {
			o.Items[i].Count = count
		}
		_, err := Plan(ctx, o)
		assert.True(t, errors.Is(err, context.Canceled))
	}
}
