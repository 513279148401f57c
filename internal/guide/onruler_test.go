package guide_test

import (
	"strings"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// assertOnRuler checks that no step tells a length that the ruler of the answer has
// no mark for, but for what the caller gave and how far the paper has to flex.
func assertOnRuler(t assert.TestingT, s *solve.Solution, g guide.Guide) {
	given := []measure.Length{s.Request.Width, s.Request.Height, s.Request.Thickness, s.Request.Caliper}
	if o := s.Ornament; o != nil { // it is cut by its template, and measured by nobody
		given = append(given, o.Adds, o.ShowsHeight, o.HalfWidth.Times(2), o.Height)
	}
	marks := s.Step
	if size := s.Request.Ruler.String(); strings.HasSuffix(strings.ReplaceAll(g.Tools[0].Text, "\u00a0", " "), " "+size) {
		marks = s.Request.Ruler // it asks for the finer ruler, so it is at hand
	}
	for i := range g.Steps {
		text := g.Steps[i].Whole()
		for _, m := range figure.FindAllStringSubmatch(text, -1) {
			if m[7] == "" || (m[7] == "mm") != (s.Step.Unit() == measure.Millimetre) {
				continue
			}
			unit := "in"
			if m[7] == "mm" {
				unit = "mm"
			}
			length, err := measure.Parse(written(m)+" "+unit, s.Step.Unit(), measure.DecimalPoint)
			if assert.NoError(t, err, m[0]) && !near(length, append(given, marks.Nearest(length))) {
				assert.Fail(t, "not on the ruler", "%q of %q, ruler %s", m[0], text, marks)
			}
		}
	}
}

// written is the number of a figure as it is parsed.
func written(m []string) string {
	if m[3] != "" {
		return strings.TrimSpace(m[2] + " " + m[3] + "/" + m[4])
	}
	if m[6] != "" {
		return m[5] + "." + m[6]
	}
	return m[5]
}

// near reports whether a length is one of some as far as it is written.
func near(l measure.Length, all []measure.Length) bool {
	for _, one := range all {
		if one.Sub(l).Abs().Less(measure.Micrometres(13)) {
			return true
		}
	}
	return false
}
