package tell_test

import (
	"fmt"
	"math"
	"os"
	"strings"

	"creasefit/api/tell"
	"creasefit/api/wire"
)

// answer is a band as it is told in the examples.
func answer() *wire.Solution {
	at := func(reading string, in, mm float64) wire.Length {
		return wire.Length{Reading: reading, In: in, MM: mm, ExactMM: mm}
	}
	return &wire.Solution{Pieces: []wire.Piece{{
		Name: "band", Blank: wire.Blank{Width: at("8 1/4 in", 8.25, 209.55), Height: at("1 3/4 in", 1.75, 44.45)},
		Scores: []wire.Score{{Name: "score 1", At: at("2 1/4 in", 2.25, 57.15), From: "left"}},
	}}}
}

// One answer in a table, as a person reads it aloud, and for a spreadsheet's formulas.
func ExampleAppend() {
	table := tell.Append(nil, tell.CSV, answer(), tell.Style{Comma: true})
	fmt.Print(strings.ReplaceAll(string(table), "\r", ""))
	_, _ = os.Stdout.Write(tell.Append(nil, tell.Text, answer(), tell.Style{}))
	_, _ = os.Stdout.Write(tell.Append(nil, tell.XML, answer(), tell.Style{}))
	// Output:
	// piece;what;name;from;reading;in;mm
	// band;blank;width;;8 1/4 in;8,25;209,55
	// band;blank;height;;1 3/4 in;1,75;44,45
	// band;score;score 1;left;2 1/4 in;2,25;57,15
	// band, blank width: 8 1/4 in
	// band, blank height: 1 3/4 in
	// band, score 1: 2 1/4 in from the left
	// <?xml version="1.0" encoding="US-ASCII"?>
	// <measurements>
	//   <blank piece="band" name="width" reading="8 1/4 in" in="8.25" mm="209.55"/>
	//   <blank piece="band" name="height" reading="1 3/4 in" in="1.75" mm="44.45"/>
	//   <score piece="band" name="score 1" from="left" reading="2 1/4 in" in="2.25" mm="57.15"/>
	// </measurements>
}

// The most specific range of an Accept header counts, then its weight.
func ExampleAccepted() {
	offered := []tell.Format{tell.JSON, tell.CSV, tell.XML}
	fmt.Println(tell.Accepted("text/*;q=0.9, application/json;q=0.8", offered))
	fmt.Println(tell.Accepted("application/xml, */*;q=0.1", offered))
	fmt.Println(tell.Accepted("image/heic", offered))
	// Output:
	// csv
	// xml
	// json
}

// A number has neither an exponent nor a negative zero.
func ExampleAppendNumber() {
	for _, x := range []float64{92.075, 1e9, 1e-6, math.Copysign(0, -1)} {
		fmt.Println(string(tell.AppendNumber(nil, x)))
	}
	// Output:
	// 92.075
	// 1000000000
	// 0.000001
	// 0
}
