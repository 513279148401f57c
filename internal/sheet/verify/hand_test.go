package verify

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
)

// byHand is an order of two tags of 4 x 5 in and a stub of 3 1/2 x 5 in from a sheet of 12 x
// 12 in with a saw that takes 1/4 in, and its plan, written down with a pencil: a strip 5 in
// high, two tags off it, and 12 - 2 x 4 1/4 = 3 1/2 in are the stub.
func byHand(t *testing.T) (sheet.Order, sheet.Answer) {
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	o := sheet.Order{Ruler: sheettest.Step(t, "1/4 in"), Kerf: in("1/4"), Least: in("2"), Sheets: []sheet.Stock{{Width: in("12"), Height: in("12")}},
		Items: []sheet.Item{{Name: "tag", Width: in("4"), Height: in("5"), Count: 2}, {Name: "stub", Width: in("3 1/2"), Height: in("5"), Count: 1}}}
	rect := func(x, y, w, h string) sheet.Rect { return sheet.Rect{X: in(x), Y: in(y), Width: in(w), Height: in(h)} }
	left := &sheet.Node{Item: sheet.Offcut}
	s := sheet.Sheets{
		Times: 1, Usable: rect("0", "0", "12", "12"),
		Tree: &sheet.Node{Cut: sheet.Height, At: in("5"), High: left, Low: &sheet.Node{Cut: sheet.Width, At: in("4"), Low: &sheet.Node{},
			High: &sheet.Node{Cut: sheet.Width, At: in("4"), Low: &sheet.Node{}, High: &sheet.Node{Item: 1}}}},
		Placed:  []sheet.Placement{{Rect: rect("0", "0", "4", "5")}, {Rect: rect("4 1/4", "0", "4", "5")}, {Item: 1, Rect: rect("8 1/2", "0", "3 1/2", "5")}},
		Offcuts: []sheet.Rect{rect("0", "5 1/4", "12", "6 3/4")},
		Steps: []sheet.Step{
			{Cut: sheet.Height, At: in("5"), Reading: in("5"), OnMark: true, Length: in("12"), Parts: []int{0}, Repeat: 1, Low: []int{1}, Rest: []int{2}, Text: "Saw at 5 in."},
			{Cut: sheet.Width, At: in("4"), Reading: in("4"), OnMark: true, Length: in("5"), Parts: []int{1}, Repeat: 2, Low: []int{3, 4}, Rest: []int{5}, Text: "Saw at 4 in."},
		},
		Parts: []sheet.Part{{ID: 2, Item: sheet.Offcut}, {ID: 3}, {ID: 4}, {ID: 5, Item: 1}},
	}
	return o, sheet.Answer{
		Sheets: 1, Proven: true, LowerBound: 1, Made: []int{2, 1}, Ready: []int{1, 1}, Used: (2*20 + 17.5) / 144, Plans: []sheet.Sheets{s},
		Settings: []sheet.Setting{{Reading: in("5"), Cuts: 1, Steps: []sheet.StepAt{{}}}, {Reading: in("4"), Cuts: 2, Steps: []sheet.StepAt{{Step: 1}}}},
		Work:     sheet.Work{Settings: 2, Cuts: 3, Turns: 1, Stages: 2},
		Usable:   []sheet.Usable{{Extent: sheet.Extent{Width: in("12"), Height: in("6 3/4")}, Times: 1}},
	}
}

// A plan that no program has made stands, and stands no longer where the saw takes more or
// less, the trimmer is shorter or the stub wider.
func TestAPlanByHandStands(t *testing.T) {
	o, a := byHand(t)
	require.NoError(t, Plan(o, a))
	for said, change := range map[string]func(o *sheet.Order, a *sheet.Answer){
		"is not in the tree": func(o *sheet.Order, a *sheet.Answer) { o.Kerf = measure.Length{} },
		"item 1 is":          func(o *sheet.Order, a *sheet.Answer) { o.Items[1].Width = o.Items[0].Width },
		"a cut of {304800000} is longer than the trimmer": func(o *sheet.Order, a *sheet.Answer) { o.Trimmer = measure.Inches(11) },
		"2 sheets of size 0 are cut, more than there are": func(o *sheet.Order, a *sheet.Answer) {
			o.Sheets[0].Available = 1
			a.Plans = append(a.Plans, a.Plans[0])
		},
	} {
		o, a := byHand(t)
		change(&o, &a)
		assert.ErrorContains(t, Plan(o, a), said)
	}
}
