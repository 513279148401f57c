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
// sound plan in one way, and must be found.
func TestVerifierFindsFaults(t *testing.T) {
	inch := measure.Inches(1)
	for name, spoil := range map[string]func(o *sheet.Order, a *sheet.Answer){
		"a blank too many":     func(o *sheet.Order, a *sheet.Answer) { o.Items[0].Count-- },
		"another blank":        func(o *sheet.Order, a *sheet.Answer) { o.Items[0].Width = o.Items[0].Width.Sub(inch) },
		"a cut moved":          func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Tree.At = a.Plans[0].Tree.At.Sub(inch) },
		"a short trimmer":      func(o *sheet.Order, a *sheet.Answer) { o.Trimmer = inch },
		"a kerf":               func(o *sheet.Order, a *sheet.Answer) { o.Kerf = inch },
		"a margin":             func(o *sheet.Order, a *sheet.Answer) { o.Margin = inch },
		"the grain":            func(o *sheet.Order, a *sheet.Answer) { o.Sheets[0].Grain = sheet.AlongWidth },
		"one more sheet":       func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Times++ },
		"a wrong total":        func(o *sheet.Order, a *sheet.Answer) { a.Sheets++ },
		"a placement moved":    func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed[0].X = inch },
		"a placement lost":     func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Placed = a.Plans[0].Placed[1:] },
		"a step lost":          func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps = a.Plans[0].Steps[1:] },
		"a step's setting":     func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].At = inch },
		"a step's reading":     func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Steps[0].Reading = inch.Times(3) },
		"a part forgotten":     func(o *sheet.Order, a *sheet.Answer) { a.Plans[0].Parts = a.Plans[0].Parts[1:] },
		"out of stock":         func(o *sheet.Order, a *sheet.Answer) { o.Sheets[0].Available = 1 },
		"a blank not made":     func(o *sheet.Order, a *sheet.Answer) { o.Items[0].Count++ },
		"a proof not claimed":  func(o *sheet.Order, a *sheet.Answer) { a.Proven = false },
		"a count of one sheet": func(o *sheet.Order, a *sheet.Answer) { a.PerSheet = 3 },
		"a setting moved":      func(o *sheet.Order, a *sheet.Answer) { a.Settings[0].Reading = inch.Times(3) },
		"a setting lost":       func(o *sheet.Order, a *sheet.Answer) { a.Settings = a.Settings[1:] },
		"settings exchanged": func(o *sheet.Order, a *sheet.Answer) {
			last := len(a.Settings) - 1
			a.Settings[0], a.Settings[last] = a.Settings[last], a.Settings[0]
		},
		"cuts not counted":      func(o *sheet.Order, a *sheet.Answer) { a.Work.Cuts-- },
		"another stage":         func(o *sheet.Order, a *sheet.Answer) { a.Work.Stages++ },
		"a bound too high":      func(o *sheet.Order, a *sheet.Answer) { a.LowerBound = 99 },
		"a proof without bound": func(o *sheet.Order, a *sheet.Answer) { a.LowerBound = 1 },
	} {
		o := sheettest.TeaOrder(t)
		a, err := search.Plan(context.Background(), o)
		require.NoError(t, err)
		require.NoError(t, Plan(o, a))
		spoil(&o, &a)
		assert.Error(t, Plan(o, a), name)
	}
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
