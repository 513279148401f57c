package fold

import (
	"fmt"

	"creasefit/internal/measure"
)

// A strip goes round a stack of cards; its right half is cut a caliper short,
// so that the tabs no longer meet.
func ExampleProve() {
	b := rightBand()
	proof := Prove(b.pattern(), measure.Length{})
	fmt.Println(proof.Closes, proof.Holds, proof.Clearances[0].Axis, proof.Clearances[0].Clearance.Millimetres(), "mm")

	b.front2 -= b.t
	for _, fault := range Prove(b.pattern(), measure.Length{}).Faults {
		fmt.Println(fault)
	}
	// Output:
	// true true width 0.8 mm
	// joint "tabs" has its cuts on two lines, apart by 0.304800 mm
}
