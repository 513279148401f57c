// Package solve is the one way through the calculation: from a request in
// exact lengths to a solution, by way of the kind's plan, the exact search
// over steps, the flat pattern, the fold proof and the tolerance stack.
//
// It calls each stage; no stage calls the next one. It reads no text and
// writes none.
package solve

import (
	"maps"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/tolerance"
)

// Request is one calculation, read and checked, with presets filled in.
type Request struct {
	Kind *enclosure.Kind
	Unit measure.Unit // of the answer

	// The contents; a size that the kind does not need may be zero.
	Width, Height, Thickness measure.Length
	SizeTolerance            tolerance.Source // of width and height
	ThicknessTolerance       tolerance.Source

	// The stock.
	Caliper          measure.Length
	BoardFrom        measure.Length // caliper from which the stock does not give way; zero for the usual one
	CaliperTolerance measure.Length
	FoldAllowance    measure.Length // what one fold takes up beside the caliper; negative where folds bulge
	Grammage         float64        // g/m2; zero if unknown
	SheetWidth       measure.Length // zero if no sheet is named
	SheetHeight      measure.Length
	Grain            sheet.Side // that the grain runs along

	Season Season

	// The bench.
	Ruler      measure.Step   // the finest mark
	Step       measure.Step   // a forced step; zero lets the search choose
	CutError   measure.Length // of one cut, three standard deviations
	ScoreError measure.Length // of one score
	WallGive   measure.Length // by how much a clearance between two pieces may be under zero: paper bows

	// The clearance wanted along each fitted axis.
	FitName string // "snug", "easy", "loose", or "" for two numbers
	Fit     enclosure.Range

	// WantedChance is how sure the answer should be if a step is fine enough for
	// it, 0 to 1; zero asks for the plainest numbers.
	WantedChance float64

	Options map[string]enclosure.Value // the kind's own parameters, as given

	// Notes are warnings from reading the request, such as an estimated caliper.
	Notes []enclosure.Warning

	asked    *Request        // what this is an attempt at, if that leaves a fit to the bench
	toFind   []string        // sizes of the contents that a check is to find
	inner    *chain          // what the sizes of the contents depend on, if they are another enclosure
	measured map[string]bool // options that a check took from the measurements
}

// with is the request with another choice of one of the kind's parameters.
func (r *Request) with(o enclosure.Option) Request {
	q := *r
	q.Options = r.given()
	q.Options[o.Name] = enclosure.Value{Choice: o.Choice}
	return q
}

// given is a copy of the options of a request, to be added to.
func (r *Request) given() map[string]enclosure.Value {
	options := make(map[string]enclosure.Value, len(r.Options)+1)
	maps.Copy(options, r.Options)
	return options
}
