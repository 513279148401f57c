package search

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/sheet"
)

// stacked are strips above one another, each of so many pieces of a kind side by side.
func stacked(strips ...*layout) *layout {
	whole := strips[len(strips)-1]
	for i := len(strips) - 2; i >= 0; i-- {
		whole = beside(sheet.Height, strips[i], whole)
	}
	return whole
}

// A sheet longer than the trimmer is cut across where its strips end, and what is left
// over lies at the end: only a strip that is cut along the long side is trimmed before.
func TestLongSheetsAreNotTrimmedForNothing(t *testing.T) {
	o := sheet.Order{Ruler: sixteenth(t), Trimmer: in(t, "12"), Sheets: []sheet.Stock{{Width: in(t, "12"), Height: in(t, "18")}}, Items: []sheet.Item{
		{Name: "band", Width: in(t, "1 3/4"), Height: in(t, "8 1/4"), Count: 12}, {Name: "card", Width: in(t, "5"), Height: in(t, "11"), Count: 2}}}
	p := newProblem(o)
	kindOf := map[int]int32{}
	for k := range p.kinds {
		kindOf[p.kinds[k].items[0]] = int32(k)
	}
	readings := func(l *layout) (list []string) {
		a := p.finish([]cutting{{&p.boards[0], l, 1}}, false)
		for _, st := range a.Plans[0].Steps {
			assert.LessOrEqual(t, st.Length.Millimetres(), o.Trimmer.Millimetres())
			list = append(list, st.Cut.String()+" "+o.Ruler.Format(st.Reading))
		}
		return list
	}
	bands := inRow(sheet.Width, &layout{kind: kindOf[0]}, 6)
	assert.Equal(t, []string{"height 8 1/4 in", "width 1 3/4 in"}, readings(stacked(bands, bands)), "no cut at 16 1/2 in before them")
	cards := inRow(sheet.Width, &layout{kind: kindOf[1]}, 2)
	assert.Equal(t, []string{"height 11 in", "width 5 in"}, readings(cards), "18 in are longer than the trimmer")
}

// With no trimmer that is too short, or where all is trimmed at once, strips are as before:
// the blanks of the longest strip want one trim, which serves the others.
func TestWhatIsSpareIsTrimmedOnce(t *testing.T) {
	o := sheet.Order{Ruler: sixteenth(t), Sheets: []sheet.Stock{{Width: in(t, "12"), Height: in(t, "12")}}, Items: []sheet.Item{
		{Name: "band", Width: in(t, "9"), Height: in(t, "2"), Count: 3}, {Name: "tag", Width: in(t, "4"), Height: in(t, "2"), Count: 2}}}
	p := newProblem(o)
	kindOf := map[int]int32{}
	for k := range p.kinds {
		kindOf[p.kinds[k].items[0]] = int32(k)
	}
	band := &layout{kind: kindOf[0]}
	l := stacked(band, band, band, inRow(sheet.Width, &layout{kind: kindOf[1]}, 2))
	for _, eager := range []bool{false, true} {
		a := p.finish([]cutting{{&p.boards[0], l, 1}}, eager)
		assert.Equal(t, []int{3, 2}, a.Made)
		wide := 0
		for _, st := range a.Plans[0].Steps {
			if st.Reading == in(t, "9") {
				wide += len(st.Parts) * st.Repeat
			}
		}
		assert.Equal(t, 1, wide, "one cut at 9 in serves all three bands")
	}
}
