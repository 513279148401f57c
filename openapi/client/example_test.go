package client_test

import (
	"context"
	"errors"
	"fmt"
	"log"
	"slices"

	"creasefit/openapi/client"
)

// Tidewater Tea wants a sleeve round a box of sachets: its measurements, and
// the drawing of the same sleeve.
func Example() {
	stall, err := client.New("http://127.0.0.1:8080", nil)
	if err != nil {
		log.Fatal(err)
	}
	box := client.RequestSolveSleeve{Width: "95 mm", Height: "60 mm", Thickness: "24 mm", Caliper: "0.3 mm", Fit: "easy", Ruler: "1 mm"}
	sleeve, err := stall.SolveSleeve(context.Background(), box)
	if err != nil {
		log.Fatal(err)
	}
	for _, score := range sleeve.Pieces[0].Scores {
		fmt.Println(score.Name, "at", score.At.Reading, "from the", score.From)
	}
	drawing, err := stall.File(context.Background(), client.RequestDrawingSleeve{RequestSolveSleeve: box, Theme: "dark"}, "svg")
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(drawing.MediaType)
	// Output:
	// score 1 at 98 mm from the left
	// score 2 at 125 mm from the left
	// score 3 at 223 mm from the left
	// score 4 at 250 mm from the left
	// image/svg+xml
}

// A customer asks whether her tin goes into the sleeve on the shelf, whose
// measurements the stall knows.
func ExampleClient_CheckSleeve() {
	stall, err := client.New("http://127.0.0.1:8080", nil)
	if err != nil {
		log.Fatal(err)
	}
	for _, width := range []string{"95 mm", "99 mm"} {
		check, err := stall.CheckSleeve(context.Background(), client.RequestCheckSleeve{
			RequestSolveSleeve: client.RequestSolveSleeve{Width: width, Height: "60 mm", Thickness: "24 mm", Caliper: "0.3 mm"},
			Blank:              []string{"265 x 60 mm"},
			Marks:              []string{"98 mm", "125 mm", "223 mm", "250 mm"},
		})
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s wide: %t. %s\n", width, check.Works, check.Words)
	}
	// Output:
	// 95 mm wide: true. It closes, and the contents go in: width easy, thickness easy.
	// 99 mm wide: false. It does not work as measured (width tight, thickness easy). The smallest change that mends it is listed.
}

// An order of bands and of loose cards, from two sizes of sheet.
func ExampleClient_Yield() {
	stall, err := client.New("http://127.0.0.1:8080", nil)
	if err != nil {
		log.Fatal(err)
	}
	band := client.RequestSolveSlottedBand{Width: "3 1/2 in", Thickness: "0.09 in", Caliper: "0.012 in", BandHeight: "1 3/4 in"}
	bands := client.ItemOf(band)
	bands.Count = new(12)
	plan, err := stall.Yield(context.Background(), client.RequestYield{
		Unit: "in", EffortMs: new(10_000),
		Sheet: []client.SheetValueYield{{Size: "12 x 12 in", Price: new(0.8)}, {Size: "letter", Price: new(0.5)}},
		Items: []client.ItemsValue{bands, {Name: new("card"), Blank: new("3 1/2 x 5 in"), Count: new(20)}},
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, p := range plan.Plans {
		fmt.Printf("%d of %s x %s\n", p.Times, p.Sheet.Width.Reading, p.Sheet.Height.Reading)
	}
	fmt.Println("cost", *plan.Cost)
	// Output:
	// 2 of 12 in x 12 in
	// 2 of 12 in x 12 in
	// 1 of 12 in x 12 in
	// cost 4
}

// A list of products in one stream.
func ExampleClient_Batch() {
	stall, err := client.New("http://127.0.0.1:8080", nil)
	if err != nil {
		log.Fatal(err)
	}
	products := []client.Line{
		{ID: "tasting cards", Request: client.RequestSolveSlottedBand{Contents: "tasting-cards", Caliper: "0.012 in", Unit: "in"}},
		{ID: "honey jar", Request: client.RequestSolveSleeve{Contents: "honey-jar", Caliper: "0.3 mm"}},
		{ID: "no paper", Request: client.RequestSolveBand{Contents: "tea-tin"}},
	}
	for answer, err := range stall.Batch(context.Background(), slices.Values(products)) {
		if err != nil {
			log.Fatal(err)
		}
		var solution client.Solution
		if err := answer.Into(&solution); err != nil {
			fmt.Println(answer.ID+":", err)
			continue
		}
		blank := solution.Pieces[0].Blank
		fmt.Println(answer.ID+":", blank.Width.Reading, "x", blank.Height.Reading)
	}
	// Output:
	// tasting cards: 8 3/8 in x 1 1/2 in
	// honey jar: 255 mm x 80 mm
	// no paper: creasefit: caliper: the thickness of the paper is needed
}

// What is wrong with a request is an error that names each value.
func ExampleProblem() {
	stall, err := client.New("http://127.0.0.1:8080", nil)
	if err != nil {
		log.Fatal(err)
	}
	_, err = stall.SolveSleeve(context.Background(), client.RequestSolveSleeve{Width: "95", Height: "3 5/7 in", Caliper: "0.3 mm"})
	var problem *client.Problem
	if errors.As(err, &problem) {
		fmt.Println(problem.Status, problem.Title)
		for _, e := range problem.Errors {
			fmt.Printf("%s: %s\n", e.Name, e.Detail)
		}
	}
	// Output:
	// 400 A value cannot be read
	// height: cannot read '3 5/7 in': a ruler has halves, quarters, 8ths, 16ths, 32nds and 64ths, not parts of 1/7
	// width: cannot read '95': a bare number needs a unit
	// thickness: the thickness of the contents is needed
}
