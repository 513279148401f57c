package ask_test

import (
	"fmt"

	"creasefit/api/ask"
	"creasefit/internal/repertoire"
)

// A request is read, checked as a whole, and has one canonical address.
func ExampleForm() {
	kind, _ := repertoire.Lookup("band")
	form := ask.NewSolve(kind, "json")
	asked := form.Take()
	defer asked.Release()
	asked.AddQuery("width=88.9mm&thickness=2+mm&stock=index-110&fit=snug")
	asked.Parse()
	fmt.Println(asked.Check(), asked.Unit())
	fmt.Println(string(asked.Link("/v1/solve/band")))
	for _, g := range asked.Given() {
		if g.From != "" {
			fmt.Println(g.Name, g.Text, "from", g.From)
		}
	}
	// Output:
	// true mm
	// /v1/solve/band?unit=mm&width=88.9mm&thickness=2mm&stock=index-110&fit=snug
	// caliper 0.23 mm from stock
	// ruler 0.5 mm from default
}

// Everything that is wrong is found at once, and a query that would be taken is told.
func ExampleAsked_Corrected() {
	kind, _ := repertoire.Lookup("band")
	asked := ask.NewSolve(kind, "json").Take()
	asked.AddQuery("unit=mm&widht=88.9&thickness=2&caliper=0.3&fit=snag")
	asked.Parse()
	asked.Check()
	for _, f := range asked.Faults() {
		fmt.Println(f.Code, f.Field, "-", f.Hint)
	}
	fmt.Println(asked.Corrected())
	// Output:
	// unknown widht - did you mean width?
	// unknown fit - did you mean snug?
	// unit=mm&width=88.9&thickness=2&caliper=0.3&fit=snug true
}

// A member of a JSON object is found without decoding the rest.
func ExampleMember() {
	object := []byte(`{"id": "tin-1", "size": {"width": "4 in"}}`)
	fmt.Println(ask.Member(object, "id"))
	fmt.Println(ask.Member(object, "size"))
	// Output:
	// tin-1
	// {"width": "4 in"}
}
