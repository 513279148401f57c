package search

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// A sheet of 12 x 18 in is cut across before its long sides are trimmed, so that a
// trimmer of 12 in suffices; the verifier measures every cut. One mark less does
// not, and the reason is the sheet and not the blanks.
func TestMarginsAreTrimmedInWhicheverOrderTheTrimmerCan(t *testing.T) {
	for _, grain := range []sheet.Side{sheet.AlongHeight, sheet.AlongWidth} {
		o := stallOrder(t)
		o.Sheets[0].Grain, o.Trimmer = grain, measure.Inches(12)
		a, _ := plannedWith(t, o, 20_000_000)
		assert.Equal(t, 3, a.Sheets)
		for _, p := range a.Plans {
			for _, st := range p.Steps {
				assert.LessOrEqual(t, st.Length.Millimetres(), o.Trimmer.Millimetres())
			}
		}
		o.Sheets[0].Width, o.Sheets[0].Height = o.Sheets[0].Height, o.Sheets[0].Width
		plannedWith(t, o, 20_000_000)
		o.Trimmer = in(t, "11 15/16")
		assert.ErrorContains(t, o.Check(), "even the shortest first cut across a sheet is 12 in long")
	}
	o := stallOrder(t)
	o.Trimmer, o.Items[0].Width = measure.Inches(12), measure.Inches(13)
	assert.ErrorContains(t, o.Check(), "the cut along its side is 13 in long")
}
