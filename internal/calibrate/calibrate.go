// Package calibrate turns what somebody measured on a test sheet into what she
// says of her paper and her hand from then on: the caliper from a strip wound
// round a block or from a stack, what a fold takes up, how far cuts and scores
// are off, and how the sheet grows when it is wetted.
//
// It draws no test sheet and keeps nothing.
package calibrate

import (
	"math"
	"strconv"

	"creasefit/internal/bench"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Confidence is that of all least and greatest values.
const Confidence = 0.95

// Measured is what was measured; what was not is zero.
type Measured struct {
	Ruler measure.Step // everything was read to the nearest of its marks

	Block  Block
	Turns  int            // of a strip round the block
	Wound  measure.Length // what they took of the strip
	Sheets int            // in a stack
	Stack  measure.Length // its height

	Caliper measure.Length // known from elsewhere; zero if it is not

	Cuts, Scores Stop
	Fold         Folded

	Marked              measure.Length // between two marks on a sheet, before it was wetted
	WetAlong, WetAcross measure.Length // the same along and across the grain, wet
	Bench               bench.Bench    // what cuts and scores are taken for that were not measured
	Unit                measure.Unit   // of what is told in words
}

// Block is what the strip is wound round: its two sizes and by how much each of
// them may be off.
type Block struct{ Width, Thickness, Tolerance measure.Length }

// Stop is lines made at one stop that was set anew for each, and where they came
// to lie.
type Stop struct {
	At    measure.Length
	Lines []measure.Length
}

// Folded is strips scored twice, so far apart, and how far apart their walls
// stand when they are folded up.
type Folded struct {
	Apart  measure.Length
	Inside []measure.Length
}

// Record is what is known from then on.
type Record struct {
	Known  []Known
	Growth []Growth
	Notes  []string // what the maker should know or mend
}

// Known is one length that a request takes by name.
type Known struct {
	Name string
	Use  measure.Length // as a request takes it

	Estimate, Least, Greatest measure.Length // the limits are zero where a source states none
	From                      string         // what it comes from, in words
}

// Growth is by what part a sheet grew along or across its grain.
type Growth struct {
	Name                      string // as it was measured
	Estimate, Least, Greatest float64
}

// Find works out everything that was measured. The error is a fault or faults.
func Find(m *Measured) (*Record, error) {
	r := &Record{}
	var faults fault.Faults
	keep := func(list []Known, err error) {
		if err == nil {
			r.Known = append(r.Known, list...)
		}
		_ = faults.Add(err)
	}
	paper, err := m.caliper()
	keep(paper.known(m.Caliper.IsZero()), err)
	keep(r.spread(&m.Cuts, "cuts", "cut_tolerance", m))
	keep(r.spread(&m.Scores, "scores", "score_tolerance", m))
	keep(m.fold(&paper))
	r.Growth, err = m.growth()
	_ = faults.Add(err)
	return r, faults.Err()
}

// OfBench is the record that stands for a bench: what its source states.
func OfBench(b bench.Bench) *Record {
	from := "bench " + b.Name + ", " + b.Source
	return &Record{Known: []Known{
		{Name: "cut_tolerance", Use: b.Cut, Estimate: b.Cut, From: from},
		{Name: "score_tolerance", Use: b.Score, Estimate: b.Score, From: from},
	}}
}

// words writes a length for a sentence.
func (m *Measured) words(l measure.Length) string { return l.Plain(m.Unit) }

// count writes a number of things.
func count(n int, things string) string { return strconv.Itoa(n) + " " + things }

// half is half of a mark: what was read is off by at most that, either way.
func (m *Measured) half() float64 { return nanometres(m.Ruler.Size()) / 2 }

// nanometres and length go over to floats and back.
func nanometres(l measure.Length) float64 { return float64(l.Nanometres()) }
func length(nm float64) measure.Length    { return measure.Nanometres(int64(math.Round(nm))) }
