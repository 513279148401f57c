package own_test

import (
	"testing"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// FuzzRead reads any text as a design: it is a kind, whose plan is made or refused, or
// faults, and never a panic or another error.
func FuzzRead(f *testing.F) {
	for _, e := range all() {
		f.Add(string(e.Text))
	}
	f.Add(`{"design":"x","pieces":[{"piece":"a","panels":[{"panel":"b"}]},{"piece":"c","over":"a","panels":[{"panel":"d"},{"panel":"e","on":"d","edge":"left","reach":{"down":"table"}}]}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		k, err := own.Read([]byte(text))
		var plan *enclosure.Plan
		if err == nil {
			plan, err = k.Plan(inputOf(request(k, measure.Millimetre, things[0], 300)))
		}
		if err == nil {
			err = plan.Check()
		}
		var faults fault.Faults
		if other := faults.Add(err); other != nil {
			t.Fatalf("not a fault: %v", other)
		}
	})
}
