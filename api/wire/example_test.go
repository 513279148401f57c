package wire_test

import (
	"encoding/json"
	"fmt"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// A length is told as it is set on the ruler; what no mark shows is a decimal, rounded once.
func ExampleReading() {
	eighths, _ := measure.ParseStep("1/8 in")
	for _, text := range []string{"92.075 mm", "3 33/64 in", "92.1 mm"} {
		fmt.Println(wire.Reading(eighths, measure.MustParse(text)))
	}
	// Output:
	// 3 5/8 in
	// 3 33/64 in
	// 3.626 in
}

// An answer repeats how each value of the request was understood.
func ExampleGivens() {
	both := wire.InBoth(measure.MustParse("3 1/2 in"))
	given := wire.Givens{{Name: "width", Text: "3 1/2 in", Both: &both}, {Name: "fit", Text: "easy", From: "default"}}
	fmt.Println(given.Of("width").MM, "mm")
	fmt.Println(given.Of("fit").Text, "by", given.Of("fit").From)
	// Output:
	// 88.9 mm
	// easy by default
}

// What posts make of a piece is one line to read and a verdict a post with its reasons.
func ExampleOfMail() {
	asked := ask.New[ask.Mail]("json").Take()
	asked.AddQuery("width=5in&height=5in&thickness=1/16in&mass_oz=1&post=us")
	asked.Parse()
	asked.Check()
	piece := asked.Q.Piece()
	var judged []mail.Judgement
	for _, p := range asked.Q.Asked() {
		judged = append(judged, p.Judge(&piece))
	}
	answer := wire.OfMail(judged, wire.Voice{Unit: asked.Unit()}, wire.Ask(&asked.Reading, "/v1/mail"))
	fmt.Println(answer.Words)
	fmt.Println(answer.Posts[0].Surcharges[0].Reasons[0].Detail)
	fmt.Println(answer.Links.Self)
	// Output:
	// us: letter, nonmachinable
	// the length divided by the height is 1 (at least 1.3): 0.3 under
	// /v1/mail?unit=in&width=5in&height=5in&thickness=1/16in&mass_oz=1&post=us
}

// A list can be searched by size: the nearest first, whichever way up, and how far it is off.
func ExampleSheets() {
	asked := ask.New[ask.Near]("json").Take()
	asked.AddQuery("near=300x210mm&top=2")
	asked.Parse()
	asked.Check()
	for _, s := range wire.Sheets(asked.Q).Sheets {
		fmt.Println(s.Name, s.Off.Reading, s.Turned)
	}
	// Output:
	// a4 3 mm true
	// letter 20.6 mm true
}

// Figures of a paper that are not known are estimated, and say so.
func ExampleOfPaper() {
	known, _ := stock.Describe(stock.Known{Caliper: measure.MustParse("0.3 mm"), Grammage: 216})
	answer := wire.OfPaper(&known, measure.Millimetre, "", &wire.Asked{})
	text, _ := json.Marshal(map[string]any{"density": answer.Density, "estimated": answer.CaliperEstimated || answer.GrammageEstimated, "unlikely": answer.Unlikely})
	fmt.Println(string(text))
	// Output: {"density":0.72,"estimated":false,"unlikely":false}
}
