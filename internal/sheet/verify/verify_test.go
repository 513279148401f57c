package verify

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/search"
	"creasefit/internal/sheet/sheettest"
)

// A verifier that passes everything proves nothing: each of these spoils a
// sound plan in one way, and what was spoilt must be said, whatever else is.
func TestVerifierFindsFaults(t *testing.T) {
	inch := measure.Inches(1)
	type spoilt struct {
		said  string
		spoil func(o *sheet.Order, a *sheet.Answer)
	}
	for _, c := range []spoilt{
		{"are made, 24 wanted", func(o *sheet.Order, a *sheet.Answer) { o.Items[0].Count-- }},
		{"are made, 26 wanted", func(o *sheet.Order, a *sheet.Answer) { o.Items[0].Count++ }},
		{"item 0 is {", func(o *sheet.Order, a *sheet.Answer) { o.Items[0].Width = o.Items[0].Width.Sub(inch) }},
		{"is not in the tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Tree.At = a.Plans[0].Tree.At.Sub(inch) }},
		{"is outside of", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Tree.At = inch.Times(99) }},
		{"a cut at {0} is outside of", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Tree.At = measure.Length{} }},
		{"a cut has only one part", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Tree.High = nil }},
		{"there is no item 3", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed[0].Item = 3; leaf(a.Plans[0].Tree).Item = 3 }},
		{"it has no tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Tree = nil }},
		{"there is no sheet 1", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Stock = 1 }},
		{"there is no sheet -1", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Stock = -1 }},
		{"it is cut 0 times", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Times = 0 }},
		{"longer than the trimmer", func(o *sheet.Order, a *sheet.Answer) { o.Trimmer = inch }},
		{"is not in the tree", func(o *sheet.Order, a *sheet.Answer) { o.Kerf = inch }},
		{"not inside the margins", func(o *sheet.Order, a *sheet.Answer) { o.Margin = inch }},
		{"item 1 lies across its grain", func(o *sheet.Order, a *sheet.Answer) { o.Sheets[0].Grain = sheet.AlongWidth }},
		{"item 1 lies across its grain", func(o *sheet.Order, a *sheet.Answer) { o.Sheets[0].Grain = sheet.AnySide }},
		{"sheets are cut, not", func(o *sheet.Order, a *sheet.Answer) { a.Sheets++ }},
		{"sheets cost 0, not 1", func(o *sheet.Order, a *sheet.Answer) { a.Cost++ }},
		{"more than there are", func(o *sheet.Order, a *sheet.Answer) { o.Sheets[0].Available = 1 }},
		{"is not in the tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed[0].X = inch }},
		{"lies outside of the sheet", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed[0].X = inch.Times(9) }},
		{"lies outside of the sheet", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed[0].Y = inch.Neg() }},
		{"blanks and offcuts are listed, the tree has", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed = a.Plans[0].Placed[1:] }},
		{"are made, not [26 6 8]", func(o *sheet.Order, a *sheet.Answer) { a.Made[0]++ }},
		{"are made, not [25 6]", func(o *sheet.Order, a *sheet.Answer) { a.Made = a.Made[:2] }},
		{"cuts part", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps = a.Plans[0].Steps[1:] }},
		{"wrong about the mark", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].OnMark = !a.Plans[0].Steps[0].OnMark }},
		{"the words of step 1 do not say where to set the trimmer", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Text = "" }},
		{"makes the wrong number of parts", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Repeat++ }},
		{"the cut is", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Length = inch }},
		{"elsewhere than the tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].At = inch }},
		{"the reading is not the nearest mark", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Reading = inch.Times(3) }},
		{"parts that nothing is said of", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Parts = a.Plans[0].Parts[1:] }},
		{"is not left by the steps", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Parts[0].ID = 999 }},
		{"the steps put item -1 elsewhere than the tree", func(o *sheet.Order, a *sheet.Answer) {
			for i := range a.Plans[0].Parts {
				a.Plans[0].Parts[i].Item = sheet.Offcut
			}
		}},
		{"the steps make", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Parts = a.Plans[0].Parts[1:] }},
		{"makes the wrong number of parts", func(o *sheet.Order, a *sheet.Answer) {
			st := &a.Plans[0].Steps[0]
			st.Parts, st.Low, st.Rest = nil, nil, nil
		}},
		{"but not called proven", func(o *sheet.Order, a *sheet.Answer) { a.Proven = false }},
		{"one sheet gives", func(o *sheet.Order, a *sheet.Answer) { a.PerSheet = 3 }},
		{"is above the plan's", func(o *sheet.Order, a *sheet.Answer) { a.LowerBound = 99 }},
		{"is called proven with a lower bound of 1", func(o *sheet.Order, a *sheet.Answer) { a.LowerBound = 1 }},
		{"of the area is used", func(o *sheet.Order, a *sheet.Answer) { a.Used = 0 }},
		{"of the area is used", func(o *sheet.Order, a *sheet.Answer) { a.Used -= 0.00001 }},
		{"setting 1 makes a cut at", func(o *sheet.Order, a *sheet.Answer) { a.Settings[0].Reading = inch.Times(3) }},
		{"setting 1 has a step that there is not", func(o *sheet.Order, a *sheet.Answer) { a.Settings[0].Steps[0].Step = 99 }},
		{"setting 1 has a step that there is not", func(o *sheet.Order, a *sheet.Answer) { a.Settings[0].Steps[0].Plan = len(a.Plans) }},
		{"steps are not made by the settings", func(o *sheet.Order, a *sheet.Answer) { a.Settings = a.Settings[1:] }},
		{"is made before part", func(o *sheet.Order, a *sheet.Answer) {
			last := len(a.Settings) - 1
			a.Settings[0], a.Settings[last] = a.Settings[last], a.Settings[0]
		}},
		{"setting 1 makes", func(o *sheet.Order, a *sheet.Answer) { a.Settings[0].Cuts++ }},
		{"the work is", func(o *sheet.Order, a *sheet.Answer) { a.Work.Cuts-- }},
		{"the work is", func(o *sheet.Order, a *sheet.Answer) { a.Work.Settings-- }},
		{"stages, not", func(o *sheet.Order, a *sheet.Answer) { a.Work.Stages++ }},
	} {
		o := sheettest.TeaOrder(t)
		a := planned(t, o)
		c.spoil(&o, &a)
		assert.ErrorContains(t, Plan(o, a), c.said)
	}
}

// planned is a sound plan of an order.
func planned(t *testing.T, o sheet.Order) sheet.Answer {
	t.Helper()
	a, err := search.Plan(context.Background(), o)
	require.NoError(t, err)
	require.NoError(t, Plan(o, a))
	return a
}

// marketOrder has margins that a short trimmer takes off the parts, tins before all
// else, and a cut that leaves two usable offcuts.
func marketOrder(t *testing.T) sheet.Order {
	o := sheettest.TeaOrder(t)
	o.Sheets[0].Height, o.Margin, o.Trimmer = measure.Inches(18), sheettest.Inches(t, "1/4"), measure.Inches(12)
	o.Items[1].Priority, o.Least = 1, sheettest.Inches(t, "3/4")
	return o
}

// What is told beside the cuts follows from them, and so does what comes first.
func TestVerifierReplaysWhatIsToldOfCuts(t *testing.T) {
	type spoilt struct {
		said  string
		spoil func(o *sheet.Order, a *sheet.Answer)
	}
	inch := measure.Inches(1)
	for _, c := range []spoilt{
		{"step 1: wrong about the margin", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Trim = false }},
		{"wrong about the margin", func(o *sheet.Order, a *sheet.Answer) {
			for i := range a.Plans[0].Steps {
				a.Plans[0].Steps[i].Trim = true
			}
		}},
		{"wrong about the margin", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[1].Turned = false }},
		{"elsewhere than the tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[2].Turned = true }},
		{"turns, not", func(o *sheet.Order, a *sheet.Answer) { a.Work.Turns-- }},
		{"turns, not", func(o *sheet.Order, a *sheet.Answer) { a.Work.Turns = 0 }},
		{"of the area is used, not", func(o *sheet.Order, a *sheet.Answer) { a.Used *= 1.0001 }},
		{"is not in the tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Offcuts[0].Width = inch }},
		{"is not in the tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Offcuts[0].Y = inch.Times(17) }},
		{"blanks and offcuts are listed", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Offcuts = a.Plans[0].Offcuts[1:] }},
		{"item -1 overlaps another", func(o *sheet.Order, a *sheet.Answer) {
			a.Plans[0].Offcuts = append(a.Plans[0].Offcuts, a.Plans[0].Offcuts[0])
		}},
		{"the steps put item -1 elsewhere", func(o *sheet.Order, a *sheet.Answer) {
			for i := range a.Plans[0].Parts {
				a.Plans[0].Parts[i].Turned = a.Plans[0].Parts[i].Item == sheet.Offcut
			}
		}},
		{"usable offcuts are", func(o *sheet.Order, a *sheet.Answer) { a.Usable[0].Times++ }},
		{"0 usable offcuts are", func(o *sheet.Order, a *sheet.Answer) { a.Usable[0].Width = a.Usable[0].Width.Add(inch) }},
		{"0 usable offcuts are", func(o *sheet.Order, a *sheet.Answer) { a.Usable = append(a.Usable, a.Usable[0]) }},
		{"are not listed", func(o *sheet.Order, a *sheet.Answer) { a.Usable = a.Usable[1:] }},
		{"are not listed", func(o *sheet.Order, a *sheet.Answer) { o.Least = measure.Length{} }},
		{"0 usable offcuts are", func(o *sheet.Order, a *sheet.Answer) { o.Least = inch.Times(12) }},
		{"not the largest first", func(o *sheet.Order, a *sheet.Answer) { slices.Reverse(a.Usable) }},
		{"all is made after", func(o *sheet.Order, a *sheet.Answer) { a.Ready[1]-- }},
		{"all is made after", func(o *sheet.Order, a *sheet.Answer) { a.Ready = nil }},
		{"has priority over one before it", func(o *sheet.Order, a *sheet.Answer) { slices.Reverse(a.Plans) }},
		{"is of a plan that has priority over one before it", func(o *sheet.Order, a *sheet.Answer) { slices.Reverse(a.Settings) }},
		{"do not say where to set the trimmer", func(o *sheet.Order, a *sheet.Answer) {
			steps := a.Plans[0].Steps
			steps[0].Text = strings.ReplaceAll(steps[0].Text, " in", " mm")
		}},
	} {
		o := marketOrder(t)
		a := planned(t, o)
		require.Greater(t, len(a.Usable), 1)
		require.Greater(t, len(a.Plans), 1)
		c.spoil(&o, &a)
		assert.ErrorContains(t, Plan(o, a), c.said)
	}
}

// A part is turned where it is cut across after it was cut along, not before its first cut
// and not between cuts of one direction; every sheet of a plan counts. By hand.
func TestTurnsAreCounted(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sheettest.Step(t, "1/16 in"), Effort: sheet.MostEffort, Sheets: []sheet.Stock{{Width: in(12), Height: in(12)}},
		Items: []sheet.Item{{Name: "tag", Width: in(4), Height: in(6), Count: 18, Grain: sheet.AlongHeight}}}
	o.Sheets[0].Grain = sheet.AlongHeight
	a := planned(t, o)
	assert.Equal(t, 3, a.Sheets)
	assert.Equal(t, 2*3, a.Work.Turns, "two halves of each of three sheets, which are cut into three tags")
	assert.Equal(t, 3+2*2*3, a.Work.Cuts)
	a.Work.Turns = 2
	assert.ErrorContains(t, Plan(o, a), "there are 6 turns, not 2")
}

// A blank as large as its sheet takes no cut, and a plan of it no setting and no stage.
func TestWholeSheetsTakeNoWork(t *testing.T) {
	o := sheettest.TeaOrder(t)
	o.Items = o.Items[:1]
	o.Items[0].Width, o.Items[0].Height, o.Items[0].Count = o.Sheets[0].Width, o.Sheets[0].Height, 2
	a, err := search.Plan(context.Background(), o)
	require.NoError(t, err)
	require.NoError(t, Plan(o, a))
	assert.Equal(t, sheet.Work{}, a.Work)
	assert.Equal(t, 2, a.Sheets)
	a.Work.Stages = 1
	assert.ErrorContains(t, Plan(o, a), "there are 0 stages, not 1")
}

// leaf is the first blank of a tree.
func leaf(n *sheet.Node) *sheet.Node {
	for n.Low != nil {
		n = n.Low
	}
	return n
}

// Blanks that only touch are apart; any shared area is found, wherever it is.
func TestOverlapsAreFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(n int) measure.Length { return measure.Millimetres(int64(n)) }
		var placed []sheet.Placement
		overlap := false
		for range rapid.IntRange(1, 6).Draw(t, "blanks") {
			x, y := rapid.IntRange(0, 8).Draw(t, "x"), rapid.IntRange(0, 8).Draw(t, "y")
			w, h := rapid.IntRange(1, 4).Draw(t, "w"), rapid.IntRange(1, 4).Draw(t, "h")
			r := sheet.Rect{X: mm(x), Y: mm(y), Width: mm(w), Height: mm(h)}
			for _, p := range placed {
				overlap = overlap || x < int(p.X.Millimetres()+p.Width.Millimetres()) && int(p.X.Millimetres()) < x+w &&
					y < int(p.Y.Millimetres()+p.Height.Millimetres()) && int(p.Y.Millimetres()) < y+h
			}
			placed = append(placed, sheet.Placement{Rect: r})
		}
		var v verifier
		v.apart(placed)
		assert.Equal(t, overlap, len(v.wrong) > 0)
	})
}
