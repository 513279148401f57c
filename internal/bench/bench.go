// Package bench is the tools on the table: how exactly this hand cuts and
// scores. Each preset names its source.
//
// It says nothing about what a tool can reach or what it costs.
package bench

import (
	"slices"

	"creasefit/internal/measure"
)

// Bench is one way of cutting and scoring.
type Bench struct {
	Name   string // on the wire: lower case
	Title  string
	Cut    measure.Length // error of one cut, plus or minus three standard deviations
	Score  measure.Length // error of one score, the same
	Source string
}

// The figures vary from hand to hand, so a request may give its own. Printers
// state finished trim to 1/32 or 1/16 in and folds to 1/32 in.
var benches = []Bench{
	{"hand", "knife, ruler and bone folder", measure.Sixtyfourths(2), measure.Sixtyfourths(2), "common practice"},
	{"trimmer", "guillotine or rotary trimmer and score board", measure.Sixtyfourths(1), measure.Sixtyfourths(1), "common practice"},
	{"plotter", "cutting machine", measure.Micrometres(200), measure.Micrometres(200), "common practice"},
}

// Usual is the bench of a request that names none.
const Usual = "hand"

// Ruler returns the ruler of a request that names none: the finest mark of a
// household ruler (common practice).
func Ruler(u measure.Unit) measure.Step {
	if u == measure.Inch {
		return measure.MustParseStep("1/16 in")
	}
	return measure.MustParseStep("0.5 mm")
}

// All returns the benches, the least exact first.
func All() []Bench { return slices.Clone(benches) }

// Names returns their names in the same order.
func Names() []string {
	names := make([]string, len(benches))
	for i, b := range benches {
		names[i] = b.Name
	}
	return names
}

// Lookup returns the bench of that name, or false if there is none.
func Lookup(name string) (Bench, bool) {
	i := slices.IndexFunc(benches, func(b Bench) bool { return b.Name == name })
	if i < 0 {
		return Bench{}, false
	}
	return benches[i], true
}
