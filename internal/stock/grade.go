package stock

import "slices"

// Grade is a family of papers whose basis weight is the mass in pounds of one
// ream of its basis size (TAPPI T 410).
type Grade struct {
	Name  string   // on the wire
	Also  []string // other names of the same basis size
	Title string
	Basis string  // what is weighed
	area  float64 // of all that is weighed, in square inches
}

const (
	gramsPerPound       = 453.59237 // exact
	metresPerInch       = 0.0254    // exact
	squareMetresPerInch = metresPerInch * metresPerInch
	sheetsPerReam       = 500
)

// The basis sizes are those of GNU units 2.22 (definitions.units) and, for
// bond, cover, bristol, index, tag and text, of the JCP Paper Specification
// Standards (US Government Publishing Office).
var grades = []Grade{
	ream("bond", "writing, ledger, copy", 17, 22, "17 x 22 in", "writing", "ledger", "copy"),
	ream("cover", "cover", 20, 26, "20 x 26 in"),
	ream("text", "book, text, offset", 25, 38, "25 x 38 in", "book", "offset"),
	ream("index", "index, index bristol", 25.5, 30.5, "25 1/2 x 30 1/2 in"),
	ream("bristol", "bristol, postcard", 22.5, 28.5, "22 1/2 x 28 1/2 in", "postcard"),
	ream("tag", "tag, bag, newsprint, tissue, wrapping", 24, 36, "24 x 36 in", "bag", "newsprint", "tissue", "wrapping"),
	ream("blotting", "blotting", 19, 24, "19 x 24 in"),
	ream("blanks", "blanks", 22, 28, "22 x 28 in"),
	{Name: "paperboard", Also: []string{"boxboard"}, Title: "paperboard, boxboard", Basis: "1000 square feet", area: 1000 * 144},
}

// ream makes the grade of 500 sheets of a size in inches.
func ream(name, title string, width, height float64, size string, also ...string) Grade {
	return Grade{Name: name, Also: also, Title: title, Basis: "500 sheets of " + size, area: sheetsPerReam * width * height}
}

// Grades returns the grades, the most usual first.
func Grades() []Grade { return slices.Clone(grades) }

// GradeNames returns their names in the same order, without the other names.
func GradeNames() []string {
	names := make([]string, len(grades))
	for i, g := range grades {
		names[i] = g.Name
	}
	return names
}

// LookupGrade returns the grade of that name or other name, or false.
func LookupGrade(name string) (Grade, bool) {
	i := slices.IndexFunc(grades, func(g Grade) bool { return g.Name == name || slices.Contains(g.Also, name) })
	if i < 0 {
		return Grade{}, false
	}
	return grades[i], true
}

// Grammage converts a basis weight in pounds to g/m2.
func (g Grade) Grammage(pounds float64) float64 {
	return pounds * gramsPerPound / (g.area * squareMetresPerInch)
}

// BasisWeight converts g/m2 to a basis weight in pounds.
func (g Grade) BasisWeight(grammage float64) float64 {
	return grammage * g.area * squareMetresPerInch / gramsPerPound
}
