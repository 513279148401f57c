package rounding_test

import (
	"context"
	"fmt"

	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// A wrap round a tin of Tidewater Tea: the back goes round 3.614 in, snug to
// 1/16 in, and the two halves of the front add up to it.
func ExampleSearch_At() {
	need := measure.Thousandths(3_614)
	problem := &rounding.Problem{
		Readings: []rounding.Reading{
			{Name: "left half", Max: measure.Inches(12)},
			{Name: "back", Max: measure.Inches(12)},
			{Name: "right half", Max: measure.Inches(12)},
		},
		Closures: []rounding.Closure{{
			Name: "the halves meet",
			Form: rounding.Form{Terms: []rounding.Term{{Reading: 0, Coefficient: 1}, {Reading: 2, Coefficient: 1}, {Reading: 1, Coefficient: -1}}},
		}},
		Windows: []rounding.Window{{
			Name:   "clearance",
			Form:   rounding.Form{Terms: []rounding.Term{{Reading: 1, Coefficient: 1}}, Constant: need.Neg()},
			Max:    measure.Sixtyfourths(4),
			Weight: 1,
		}},
		Even: []rounding.Pair{{A: 0, B: 2}},
	}
	search := rounding.NewSearch(problem)
	for _, step := range measure.Marks(measure.Inch)[2:5] {
		sizes, ok, err := search.At(context.Background(), step)
		if err != nil {
			fmt.Println(err)
			return
		}
		if !ok {
			fmt.Println(step, "does not fit")
			continue
		}
		fmt.Println(step, "gives", step.Format(sizes[0]), "+", step.Format(sizes[2]), "=", step.Format(sizes[1]))
	}
	// Output:
	// 1/4 in does not fit
	// 1/8 in gives 1 3/4 in + 1 7/8 in = 3 5/8 in
	// 1/16 in gives 1 13/16 in + 1 13/16 in = 3 5/8 in
}

// No quarter of an inch lies in the window: the nearest misses it by a
// little.
func ExampleSearch_NearestMiss() {
	problem := &rounding.Problem{
		Readings: []rounding.Reading{{Name: "back", Max: measure.Inches(12)}},
		Windows: []rounding.Window{{
			Name:   "clearance",
			Form:   rounding.Form{Terms: []rounding.Term{{Reading: 0, Coefficient: 1}}, Constant: measure.Thousandths(3_614).Neg()},
			Max:    measure.Sixtyfourths(4),
			Weight: 1,
		}},
	}
	miss, err := rounding.NewSearch(problem).NearestMiss(context.Background(), measure.Marks(measure.Inch)[2])
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, off := range miss.Windows {
		fmt.Printf("%s: %.4f in\n", problem.Windows[off.Window].Name, off.By.Inches())
	}
	// Output: clearance: 0.0735 in
}
