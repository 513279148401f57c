package verify

import (
	"context"
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
		{"blanks are listed, the tree has", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed = a.Plans[0].Placed[1:] }},
		{"item 0: the number made is wrong", func(o *sheet.Order, a *sheet.Answer) { a.Made[0]++ }},
		{"item 2: the number made is wrong", func(o *sheet.Order, a *sheet.Answer) { a.Made = a.Made[:2] }},
		{"cuts part", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps = a.Plans[0].Steps[1:] }},
		{"wrong about the mark", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].OnMark = !a.Plans[0].Steps[0].OnMark }},
		{"step 1 has no words", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Text = "" }},
		{"makes the wrong number of parts", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Repeat++ }},
		{"the cut is", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Length = inch }},
		{"elsewhere than the tree", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].At = inch }},
		{"the reading is not the nearest mark", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Reading = inch.Times(3) }},
		{"parts that nothing is said of", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Parts = a.Plans[0].Parts[1:] }},
		{"is not left by the steps", func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Parts[0].ID = 999 }},
		{"the steps make", func(o *sheet.Order, a *sheet.Answer) {
			for i := range a.Plans[0].Parts {
				a.Plans[0].Parts[i].Item = sheet.Offcut
			}
		}},
		{"but not called proven", func(o *sheet.Order, a *sheet.Answer) { a.Proven = false }},
		{"one sheet gives", func(o *sheet.Order, a *sheet.Answer) { a.PerSheet = 3 }},
		{"is above the plan's", func(o *sheet.Order, a *sheet.Answer) { a.LowerBound = 99 }},
		{"is called proven with a lower bound of 1", func(o *sheet.Order, a *sheet.Answer) { a.LowerBound = 1 }},
		{"of the area is used", func(o *sheet.Order, a *sheet.Answer) { a.Used = 0 }},
		{"of the area is used", func(o *sheet.Order, a *sheet.Answer) { a.Used = 1.1 }},
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
		a, err := search.Plan(context.Background(), o)
		require.NoError(t, err)
		require.NoError(t, Plan(o, a))
		c.spoil(&o, &a)
		assert.ErrorContains(t, Plan(o, a), c.said)
	}
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
