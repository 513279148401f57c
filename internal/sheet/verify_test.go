package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
)

// A verifier that passes everything proves nothing: each of these spoils a
// sound plan in one way, and must be found.
func TestVerifierFindsFaults(t *testing.T) {
	inch := measure.Inches(1)
	for name, spoil := range map[string]func(o *Order, a *Answer){
		"a blank too many":      func(o *Order, a *Answer) { o.Items[0].Count-- },
		"another blank":         func(o *Order, a *Answer) { o.Items[0].Width = o.Items[0].Width.Sub(inch) },
		"a cut moved":           func(o *Order, a *Answer) { a.Plans[0].Tree.At = a.Plans[0].Tree.At.Sub(inch) },
		"a short trimmer":       func(o *Order, a *Answer) { o.Trimmer = inch },
		"a kerf":                func(o *Order, a *Answer) { o.Kerf = inch },
		"a margin":              func(o *Order, a *Answer) { o.Margin = inch },
		"the grain":             func(o *Order, a *Answer) { o.Sheets[0].Grain = AlongWidth },
		"one more sheet":        func(o *Order, a *Answer) { a.Plans[0].Times++ },
		"a wrong total":         func(o *Order, a *Answer) { a.Sheets++ },
		"a placement moved":     func(o *Order, a *Answer) { a.Plans[0].Placed[0].X = inch },
		"a placement lost":      func(o *Order, a *Answer) { a.Plans[0].Placed = a.Plans[0].Placed[1:] },
		"a step lost":           func(o *Order, a *Answer) { a.Plans[0].Steps = a.Plans[0].Steps[1:] },
		"a step's setting":      func(o *Order, a *Answer) { a.Plans[0].Steps[0].At = inch },
		"a step's reading":      func(o *Order, a *Answer) { a.Plans[0].Steps[0].Reading = inch.Times(3) },
		"a part forgotten":      func(o *Order, a *Answer) { a.Plans[0].Parts = a.Plans[0].Parts[1:] },
		"out of stock":          func(o *Order, a *Answer) { o.Sheets[0].Available = 1 },
		"a blank not made":      func(o *Order, a *Answer) { o.Items[0].Count++ },
		"a proof not claimed":   func(o *Order, a *Answer) { a.Proven = false },
		"a count of one sheet":  func(o *Order, a *Answer) { a.PerSheet = 3 },
		"a bound too high":      func(o *Order, a *Answer) { a.LowerBound = 99 },
		"a proof without bound": func(o *Order, a *Answer) { a.LowerBound = 1 },
	} {
		o := teaOrder(t)
		a := planned(t, o)
		spoil(&o, &a)
		assert.Error(t, Verify(o, a), name)
	}
}

// Blanks that only touch are apart; any shared area is found, wherever it is.
func TestOverlapsAreFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(n int) measure.Length { return measure.Millimetres(int64(n)) }
		var placed []Placement
		overlap := false
		for range rapid.IntRange(1, 6).Draw(t, "blanks") {
			x, y := rapid.IntRange(0, 8).Draw(t, "x"), rapid.IntRange(0, 8).Draw(t, "y")
			w, h := rapid.IntRange(1, 4).Draw(t, "w"), rapid.IntRange(1, 4).Draw(t, "h")
			r := Rect{mm(x), mm(y), mm(w), mm(h)}
			for _, p := range placed {
				overlap = overlap || x < int(p.X.Millimetres()+p.Width.Millimetres()) && int(p.X.Millimetres()) < x+w &&
					y < int(p.Y.Millimetres()+p.Height.Millimetres()) && int(p.Y.Millimetres()) < y+h
			}
			placed = append(placed, Placement{Rect: r})
		}
		var v verifier
		v.apart(placed)
		assert.Equal(t, overlap, len(v.wrong) > 0)
	})
}

// A plan that fails verification is an error that tells the log of the order.
func TestUnsoundPlansAreTold(t *testing.T) {
	o := teaOrder(t)
	a := planned(t, o)
	a.Made[0]--
	u := &Unsound{o, Verify(o, a)}
	assert.ErrorContains(t, u, "item 0: the number made is wrong")
	assert.ErrorIs(t, u, u.Wrong)
	assert.Contains(t, u.LogValue().String(), "sachet band")
}
