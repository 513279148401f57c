package sheet_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
)

// leftOver is an offcut of a tree.
func leftOver() *sheet.Node { return &sheet.Node{Item: sheet.Offcut} }

// cut divides a rectangle.
func cut(t testing.TB, a sheet.Axis, at string, low, high *sheet.Node) *sheet.Node {
	return &sheet.Node{Cut: a, At: sheettest.Inches(t, at), Low: low, High: high}
}

// bands is a strip of so many sachet bands, one above the other.
func bands(t testing.TB, n int) *sheet.Node {
	tree := leftOver()
	for range n {
		tree = cut(t, sheet.Height, "1 3/4", &sheet.Node{Item: 0}, tree)
	}
	return tree
}

// rect is a rectangle in inches.
func rect(t testing.TB, x, y, w, h string) sheet.Rect {
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	return sheet.Rect{X: in(x), Y: in(y), Width: in(w), Height: in(h)}
}

// Six bands of 8 1/4 x 1 3/4 in come out of 12 x 12 in in two settings and seven cuts: a
// strip of 8 1/4, turned by a quarter, leaves 3 3/4; six cuts of 1 3/4 leave 1 1/2.
func TestASheetOfBandsByHand(t *testing.T) {
	o := sheettest.TeaOrder(t)
	s := o.Described(o.Lay(0, cut(t, sheet.Width, "8 1/4", bands(t, 6), leftOver())))
	assert.Len(t, s.Placed, 6)
	assert.Equal(t, sheet.Placement{Item: 0, Rect: rect(t, "0", "1 3/4", "8 1/4", "1 3/4")}, s.Placed[1])
	assert.Equal(t, []sheet.Rect{rect(t, "0", "10 1/2", "8 1/4", "1 1/2"), rect(t, "8 1/4", "0", "3 3/4", "12")}, s.Offcuts)
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	assert.Equal(t, []sheet.Step{
		{Cut: sheet.Width, At: in("8 1/4"), Reading: in("8 1/4"), OnMark: true, Length: in("12"), Parts: []int{0}, Repeat: 1, Low: []int{1}, Rest: []int{2},
			Text: "Set 8 1/4 in across the width. Cut once: 1 x 8 1/4 in by 12 in."},
		{Cut: sheet.Height, At: in("1 3/4"), Reading: in("1 3/4"), OnMark: true, Length: in("8 1/4"), Parts: []int{1}, Repeat: 6, Low: []int{3, 4, 5, 6, 7, 8}, Rest: []int{9},
			Text: "Set 1 3/4 in across the height. Take 8 1/4 in by 12 in. Cut 6 times: 6 x sachet band."},
	}, s.Steps)
	assert.Equal(t, []sheet.Part{{ID: 3}, {ID: 4}, {ID: 5}, {ID: 6}, {ID: 7}, {ID: 8}, {ID: 9, Item: sheet.Offcut}, {ID: 2, Item: sheet.Offcut}}, s.Parts)

	s.Times = 2
	a := sheet.Answer{Plans: []sheet.Sheets{s}}
	o.Least = in("2")
	o.Sum(&a)
	assert.Equal(t, sheet.Work{Settings: 2, Cuts: 14, Turns: 2, Stages: 2}, a.Work)
	assert.Equal(t, []sheet.Usable{{Extent: sheet.Extent{Width: in("3 3/4"), Height: in("12")}, Times: 2}}, a.Usable, "1 1/2 in is too narrow")
	assert.Equal(t, []int{2, 0, 0}, a.Ready)
	assert.Equal(t, [][]sheet.StepAt{{{Plan: 0, Step: 0}}, {{Plan: 0, Step: 1}}}, [][]sheet.StepAt{a.Settings[0].Steps, a.Settings[1].Steps})
	assert.Equal(t, []int{2, 12}, []int{a.Settings[0].Cuts, a.Settings[1].Cuts})
}

// Two strips of the same size are cut in one stack, the second of which is what the
// last cut left; a strip that is a blank itself is named as one.
func TestStripsAreStacked(t *testing.T) {
	o := sheettest.TeaOrder(t)
	o.Sheets[0].Width = sheettest.Inches(t, "16 1/2")
	s := o.Described(o.Lay(0, cut(t, sheet.Width, "8 1/4", bands(t, 2), bands(t, 2))))
	assert.Equal(t, "Set 8 1/4 in across the width. Cut once: 2 x 8 1/4 in by 12 in.", s.Steps[0].Text)
	assert.Equal(t, "Set 1 3/4 in across the height. Stack 2 of 8 1/4 in by 12 in. Cut 2 times: 4 x sachet band.", s.Steps[1].Text)
	assert.Equal(t, []int{1, 2}, s.Steps[1].Parts)
	assert.Equal(t, []int{3, 4, 6, 7}, s.Steps[1].Low)
	assert.Equal(t, []int{5, 8}, s.Steps[1].Rest)

	o.Sheets[0].Width, o.Sheets[0].Height = sheettest.Inches(t, "8 1/4"), sheettest.Inches(t, "6")
	o.Items[2] = sheet.Item{Width: sheettest.Inches(t, "8 1/4"), Height: sheettest.Inches(t, "4 1/4")}
	s = o.Described(o.Lay(0, cut(t, sheet.Height, "1 3/4", &sheet.Node{Item: 0}, &sheet.Node{Item: 2})))
	assert.Equal(t, "Set 1 3/4 in across the height. Cut once: 1 x sachet band. What is left is 1 x item 3.", s.Steps[0].Text)
	assert.Empty(t, s.Offcuts)
}

// Strips of one width that follow one another are one step, though they are cut on
// differently; what is left of that size is told with them, a stack is of one sort.
func TestStripsOfOneWidthAreOneStep(t *testing.T) {
	o := sheettest.TeaOrder(t)
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	o.Sheets[0].Width, o.Sheets[0].Height = in("8 1/4"), in("8")
	o.Items = append(o.Items, sheet.Item{Name: "tag", Width: in("4"), Height: in("2")})
	tags := func() *sheet.Node { return cut(t, sheet.Width, "4", &sheet.Node{Item: 3}, leftOver()) }
	two := cut(t, sheet.Width, "4", &sheet.Node{Item: 3}, cut(t, sheet.Width, "4", &sheet.Node{Item: 3}, leftOver()))
	s := o.Described(o.Lay(0, cut(t, sheet.Height, "2", two, cut(t, sheet.Height, "2", tags(), cut(t, sheet.Height, "2", tags(), tags())))))
	assert.Equal(t, []string{
		"Set 2 in across the height. Cut 3 times: 4 x 8 1/4 in by 2 in.",
		"Set 4 in across the width. Take 8 1/4 in by 2 in. Cut 2 times: 2 x tag.",
		"Set 4 in across the width. Stack 3 of 8 1/4 in by 2 in. Cut once: 3 x tag.",
	}, []string{s.Steps[0].Text, s.Steps[1].Text, s.Steps[2].Text})
	assert.Equal(t, [][]int{{0}, {1}, {2, 3, 4}}, [][]int{s.Steps[0].Parts, s.Steps[1].Parts, s.Steps[2].Parts})
	assert.Len(t, s.Placed, 5)
	whole := &sheet.Node{Item: 2}
	o.Sheets[0].Height, o.Items[2].Width, o.Items[2].Height = in("6"), in("8 1/4"), in("2")
	s = o.Described(o.Lay(0, cut(t, sheet.Height, "2", whole, cut(t, sheet.Height, "2", two, whole))))
	assert.Equal(t, "Set 2 in across the height. Cut 2 times: 2 x tasting card, 1 x 8 1/4 in by 2 in.", s.Steps[0].Text)
}

// A margin is trimmed off all four sides before the first cut, the sheet turned half
// round for the two far ones; a mark between marks is rounded and said.
func TestMarginsAreTrimmedFirst(t *testing.T) {
	o := sheettest.TeaOrder(t)
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	o.Margin = in("1/4")
	s := o.Described(o.Lay(0, cut(t, sheet.Width, "8 1/32", leftOver(), leftOver())))
	assert.Equal(t, rect(t, "1/4", "1/4", "11 1/2", "11 1/2"), s.Usable)
	texts := []string{}
	for _, st := range s.Steps[:4] {
		texts = append(texts, st.Text)
		assert.True(t, st.Trim)
	}
	assert.Equal(t, []string{
		"Set 11 3/4 in across the width. Cut off the margin.", "Turn it half round. Set 11 1/2 in across the width. Cut off the margin.",
		"Set 11 3/4 in across the height. Cut off the margin.", "Turn it half round. Set 11 1/2 in across the height. Cut off the margin.",
	}, texts)
	assert.Equal(t, []measure.Length{in("12"), in("12"), in("11 1/2"), in("11 1/2"), in("11 1/2")},
		[]measure.Length{s.Steps[0].Length, s.Steps[1].Length, s.Steps[2].Length, s.Steps[3].Length, s.Steps[4].Length})
	assert.Contains(t, s.Steps[4].Text, "(nearest mark 8 1/16 in)")
	assert.False(t, s.Steps[4].OnMark)
	assert.Equal(t, []int{2, 4, 6, 8, 9, 10}, ids(s.Parts))
}

// Where the trimmer is too short for the long side, that side's margins come off the
// parts, after the sheet was cut across; an offcut keeps its own.
func TestMarginsAreTrimmedOffParts(t *testing.T) {
	o := sheettest.TeaOrder(t)
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	o.Sheets[0].Height, o.Margin, o.Trimmer = in("18"), in("1/4"), in("12")
	s := o.Lay(0, cut(t, sheet.Height, "9", &sheet.Node{Item: 0}, leftOver()))
	var made []string
	for _, st := range s.Steps {
		assert.False(t, in("12").Less(st.Length))
		made = append(made, fmt.Sprint(st.Cut, st.Trim, st.Turned, st.Parts, st.Low))
	}
	assert.Equal(t, []string{"height true false [0] [1]", "height true true [1] [3]", "height false false [3] [5]", "width true false [5] [7]", "width true true [7] [9]"}, made)
	s = o.Described(s)
	assert.Equal(t, "Set 11 3/4 in across the width. Take 12 in by 9 in. Cut off the margin.", s.Steps[3].Text)
	assert.Equal(t, "Turn it half round. Set 11 1/2 in across the width. Cut off the margin.", s.Steps[4].Text)
	assert.Equal(t, []sheet.Part{{ID: 2, Item: sheet.Offcut}, {ID: 4, Item: sheet.Offcut}, {ID: 8, Item: sheet.Offcut}, {ID: 10, Item: sheet.Offcut}, {ID: 9}, {ID: 6, Item: sheet.Offcut}}, s.Parts)
}

// ids are the numbers of parts.
func ids(parts []sheet.Part) (list []int) {
	for _, p := range parts {
		list = append(list, p.ID)
	}
	return list
}

// The kerf comes off the high part, which it may take whole.
func TestDivide(t *testing.T) {
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	o, have := sheet.Order{Kerf: in("1/8")}, sheet.Extent{Width: in("5"), Height: in("4")}
	low, high := o.Divide(sheet.Width, in("3"), have)
	assert.Equal(t, []sheet.Extent{{Width: in("3"), Height: in("4")}, {Width: in("1 7/8"), Height: in("4")}}, []sheet.Extent{low, high})
	low, high = o.Divide(sheet.Height, in("3"), have)
	assert.Equal(t, []sheet.Extent{{Width: in("5"), Height: in("3")}, {Width: in("5"), Height: in("7/8")}}, []sheet.Extent{low, high})
	_, high = o.Divide(sheet.Width, in("4 15/16"), have)
	assert.Zero(t, high.Width.Sign())
	o.Sheets, o.Ruler = []sheet.Stock{{Width: have.Width, Height: have.Height}}, sheettest.Step(t, "1/16 in")
	s := o.Lay(0, cut(t, sheet.Width, "4 15/16", leftOver(), leftOver()))
	assert.Len(t, s.Offcuts, 1, "what the kerf takes whole is no offcut")
}

// Equal trees are cut alike; any difference in a cut, a place or a piece is one.
func TestSame(t *testing.T) {
	tree := func() *sheet.Node { return cut(t, sheet.Width, "2", &sheet.Node{Item: 1}, leftOver()) }
	assert.True(t, sheet.Same(tree(), tree()))
	for name, change := range map[string]func(n *sheet.Node){
		"axis":   func(n *sheet.Node) { n.Cut = sheet.Height },
		"place":  func(n *sheet.Node) { n.At = sheettest.Inches(t, "3") },
		"item":   func(n *sheet.Node) { n.Low.Item = 2 },
		"turned": func(n *sheet.Node) { n.Low.Turned = true },
		"high":   func(n *sheet.Node) { n.High.Item = 0 },
		"deeper": func(n *sheet.Node) { n.High = tree() },
	} {
		other := tree()
		change(other)
		assert.False(t, sheet.Same(tree(), other), name)
		assert.False(t, sheet.Same(other, tree()), name)
	}
}

// Every word of a step goes through the order's language: those that are left when all
// that was said is taken out are names, numbers and the unit.
func TestEveryWordIsSaid(t *testing.T) {
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	for _, trimmer := range []string{"18", "12"} {
		o := sheettest.TeaOrder(t)
		o.Sheets[0].Height, o.Margin, o.Trimmer = in("18"), in("1/4"), in(trimmer)
		o.Items[0].Name, o.Items[1].Name = "", ""
		place := regexp.MustCompile(`%[sd]`)
		o.Say = func(text string) string {
			if text == "." {
				return ","
			}
			return strings.Join(place.FindAllString(text, -1), " ")
		}
		strip := func() *sheet.Node { return cut(t, sheet.Width, "8 1/32", &sheet.Node{Item: 1}, &sheet.Node{Item: 0}) }
		s := o.Described(o.Lay(0, cut(t, sheet.Height, "5", strip(), cut(t, sheet.Height, "5", strip(), cut(t, sheet.Height, "4", leftOver(), &sheet.Node{Item: 0})))))
		require.NotEmpty(t, s.Steps)
		for _, st := range s.Steps {
			assert.NotRegexp(t, `[a-wyzA-Z]`, st.Text, "only the x of how many")
		}
	}
}
