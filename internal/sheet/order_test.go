package sheet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
)

// A blank lies as its grain and the sheet's allow: not at all where the sheet's is not
// known, or the paper is another; a square without grain in one way only.
func TestTurns(t *testing.T) {
	for _, c := range []struct {
		item, stock sheet.Side
		square      bool
		paper       string
		want        []bool
	}{
		{sheet.AnySide, sheet.AnySide, false, "", []bool{false, true}},
		{sheet.AnySide, sheet.AlongWidth, true, "", []bool{false}},
		{sheet.AlongWidth, sheet.AnySide, false, "", nil},
		{sheet.AlongWidth, sheet.AlongWidth, false, "", []bool{false}},
		{sheet.AlongWidth, sheet.AlongHeight, false, "", []bool{true}},
		{sheet.AlongHeight, sheet.AlongHeight, true, "", []bool{false}},
		{sheet.AnySide, sheet.AnySide, false, "kraft", nil},
	} {
		it := sheet.Item{Width: measure.Inches(3), Height: measure.Inches(2), Grain: c.item, Paper: c.paper}
		if c.square {
			it.Height = it.Width
		}
		o := sheet.Order{Sheets: []sheet.Stock{{Grain: c.stock}}, Items: []sheet.Item{it}}
		assert.Equal(t, c.want, o.Turns(0, 0), "%+v", c)
	}
}

// What a trimmer can free: nothing that is larger than the sheet; a side longer than
// the trimmer only across the whole sheet; nothing from a sheet that it cannot cut at
// all, but the sheet itself.
func TestReachable(t *testing.T) {
	for _, c := range []struct {
		w, h, margin, trimmer string
		want                  bool
	}{
		{"12", "18", "0", "0", true},
		{"12 1/16", "9", "0", "0", false},
		{"9", "18 1/16", "0", "0", false},
		{"12", "9", "0", "12", true},
		{"11", "13", "0", "12", false},
		{"12", "13", "0", "12", true},
		{"12", "18", "0", "11", true},
		{"12", "9", "0", "11", false},
		{"6", "6", "0", "12", true},
		{"6", "6", "1/4", "12", true},
		{"6", "6", "1/4", "11 15/16", false},
		{"11 1/2", "13", "1/4", "12", false},
		{"11 1/2", "17 1/2", "1/4", "18", true},
	} {
		in := func(text string) measure.Length { return sheettest.Inches(t, text) }
		o := sheet.Order{Sheets: []sheet.Stock{{Width: in("12"), Height: in("18")}}, Margin: in(c.margin), Trimmer: in(c.trimmer),
			Items: []sheet.Item{{Width: in(c.w), Height: in(c.h)}, {Width: in(c.h), Height: in(c.w)}}}
		assert.Equal(t, c.want, o.Reachable(0, 0, false), "%+v", c)
		assert.Equal(t, c.want, o.Reachable(1, 0, true), "%+v, turned", c)
	}
}

// One whole sheet costs more than all offcuts of the stock together; for the least cost
// offcuts that have a price are counted by it.
func TestCost(t *testing.T) {
	o := sheet.Order{Sheets: []sheet.Stock{{Price: 35}, {Price: 7, Offcut: true, Available: 3}, {Offcut: true, Available: 2}}}
	costs := func() []int64 { return []int64{o.Whole(), o.Cost(0), o.Cost(1), o.Cost(2)} }
	assert.Equal(t, []int64{6, 6, 1, 1}, costs())
	o.Minimize = sheet.LeastCost
	assert.Equal(t, []int64{6, 35 * 6, 7 * 6, 1}, costs())
	o.Sheets = o.Sheets[:1]
	assert.EqualValues(t, 1, o.Whole())
}

// The items with priority come first, in order; those without come last and together.
func TestRanks(t *testing.T) {
	o := sheet.Order{Items: []sheet.Item{{}, {Priority: 2}, {Priority: 1}}}
	assert.Equal(t, []int{math.MaxInt, 2, 1}, []int{o.Rank(0), o.Rank(1), o.Rank(2)})
	assert.True(t, o.Prioritized())
	assert.Equal(t, 1, o.RankOf(&sheet.Sheets{Placed: []sheet.Placement{{Item: 0}, {Item: 2}, {Item: 1}}}))
	o.Items = []sheet.Item{{Priority: 3}, {Priority: 3}}
	assert.False(t, o.Prioritized())
}

// Of two plans, the first with what has priority, all settings of the first come
// before those of the second, though one mark would serve both.
func TestSettingsOfWhatHasPriorityComeFirst(t *testing.T) {
	o := sheettest.TeaOrder(t)
	one := cut(t, sheet.Height, "1 3/4", &sheet.Node{Item: 0}, cut(t, sheet.Height, "3", &sheet.Node{Item: 1}, leftOver()))
	other := cut(t, sheet.Height, "1 3/4", &sheet.Node{Item: 0}, leftOver())
	a := sheet.Answer{Plans: []sheet.Sheets{o.Lay(0, one), o.Lay(0, other)}}
	o.Sum(&a)
	assert.Equal(t, sheet.Work{Settings: 2, Cuts: 3, Stages: 1}, a.Work)
	assert.Equal(t, []sheet.StepAt{{Plan: 0}, {Plan: 1}}, a.Settings[0].Steps)
	assert.Equal(t, []int{2, 1, 0}, a.Ready)
	o.Items[1].Priority = 1
	o.Sum(&a)
	assert.Equal(t, sheet.Work{Settings: 3, Cuts: 3, Stages: 1}, a.Work)
	assert.Equal(t, []sheet.StepAt{{Plan: 1}}, a.Settings[2].Steps)
}

// A mark that serves one step after another is set once, before marks that must come
// again; cuts count every part, every repeat and every sheet of a plan.
func TestSettle(t *testing.T) {
	three, five := measure.Inches(3), measure.Inches(5)
	chained := sheet.Sheets{Times: 2, Tree: leftOver(), Steps: []sheet.Step{
		{Reading: three, Parts: []int{0}, Repeat: 1, Low: []int{1}, Rest: []int{2}},
		{Reading: three, Parts: []int{2}, Repeat: 3, Low: []int{3, 4, 5}, Rest: []int{6}},
		{Reading: five, Parts: []int{1, 6}, Repeat: 1, Low: []int{7, 8}, Rest: []int{9, 10}},
	}}
	alone := sheet.Sheets{Times: 1, Tree: leftOver(), Steps: []sheet.Step{{Reading: five, Parts: []int{0}, Repeat: 1, Low: []int{1}, Rest: []int{2}}}}
	list, work := sheet.Settle([]sheet.Sheets{chained, alone, alone})
	assert.Equal(t, []sheet.Setting{
		{Reading: three, Cuts: 8, Steps: []sheet.StepAt{{Plan: 0, Step: 0}, {Plan: 0, Step: 1}}},
		{Reading: five, Cuts: 6, Steps: []sheet.StepAt{{Plan: 0, Step: 2}, {Plan: 1}, {Plan: 2}}},
	}, list)
	assert.Equal(t, 2, work.Settings)
	assert.Equal(t, 14, work.Cuts)
}

// Of two marks that are as good the one that the plans name first is set first: there and back again is
// three settings, whichever begins.
func TestSettlingBeginsWhereThePlansDo(t *testing.T) {
	three, five := measure.Inches(3), measure.Inches(5)
	both := func(first, second measure.Length) sheet.Sheets {
		return sheet.Sheets{Times: 1, Tree: leftOver(), Steps: []sheet.Step{
			{Reading: first, Parts: []int{0}, Repeat: 1, Low: []int{1}, Rest: []int{2}},
			{Reading: second, Parts: []int{2}, Repeat: 1, Low: []int{3}, Rest: []int{4}},
		}}
	}
	list, work := sheet.Settle([]sheet.Sheets{both(three, five), both(five, three)})
	assert.Equal(t, []sheet.Setting{
		{Reading: three, Cuts: 1, Steps: []sheet.StepAt{{Plan: 0, Step: 0}}},
		{Reading: five, Cuts: 2, Steps: []sheet.StepAt{{Plan: 0, Step: 1}, {Plan: 1, Step: 0}}},
		{Reading: three, Cuts: 1, Steps: []sheet.StepAt{{Plan: 1, Step: 1}}},
	}, list)
	assert.Equal(t, 3, work.Settings)
}

// Stages count runs of cuts in one direction, and a trim across a run is one more.
func TestStages(t *testing.T) {
	blank := &sheet.Node{Item: 0}
	one := cut(t, sheet.Width, "2", blank, cut(t, sheet.Width, "2", blank, leftOver()))
	two := cut(t, sheet.Height, "2", one, leftOver())
	three := cut(t, sheet.Width, "5", two, one)
	assert.Equal(t, []int{0, 1, 2, 3}, []int{blank.Stages(), one.Stages(), two.Stages(), three.Stages()})
	high := cut(t, sheet.Width, "5", blank, two)
	assert.Equal(t, 3, high.Stages())
}

// Papers are listed once each, and the area of plans is that of their sheets.
func TestPapersAndArea(t *testing.T) {
	o := sheet.Order{Items: []sheet.Item{{Paper: "kraft"}, {Paper: "ivory"}, {Paper: "kraft"}},
		Sheets: []sheet.Stock{{Width: measure.Millimetres(20), Height: measure.Millimetres(30)}, {Width: measure.Millimetres(5), Height: measure.Millimetres(4)}}}
	assert.Equal(t, []string{"kraft", "ivory"}, o.Papers())
	assert.InDelta(t, 3*600+20, o.PlanArea([]sheet.Sheets{{Times: 3}, {Times: 1, Stock: 1}}), 1e-9)
}
