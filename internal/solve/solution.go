package solve

import (
	"sync"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Solution is the answer to a request. Pattern and Ideal have the same shape:
// each size of one has its twin in the other, as set on the ruler and as it
// would be on an endlessly fine one.
type Solution struct {
	Request      *Request
	Step         measure.Step
	Pattern      pattern.Pattern
	Ideal        pattern.Pattern
	Fits         []Fit
	Sure         Certainty
	Alternatives []Alternative
	Outside      Outside
	Proof        Proof
	Warnings     []enclosure.Warning
	Ornament     *enclosure.Ornament // nil if none is asked for
	Yields       []Yield             // of each piece, once CountYields was called for a request with a sheet

	plan   *enclosure.Plan
	sizes  []measure.Length  // of the plan's readings
	plates [3]measure.Length // the extent of what is folded up
	judged *judgement        // nil until it is asked for again
}

// judgement is what the fits were judged by, made anew: few ask for it, and it is
// as large as all the rest.
func (s *Solution) judgement() *judgement {
	if s.judged == nil {
		s.judged = s.Request.judgeFrom(s.plan, s.sizes, s.Sure.Datum)
	}
	return s.judged
}

// Fit is how the contents, or one piece in another, go in along one axis.
type Fit struct {
	Axis      pattern.Axis
	Between   string // the pieces that it is between, such as "lid over tray"; "" for the contents
	Verdict   string // "snug", "easy", "loose", "tight" (under zero) or "slack" (over loose)
	Window    enclosure.Range
	Nominal   measure.Length
	WorstCase enclosure.Range
	RSS       enclosure.Range // root-sum-square
	Chance    float64         // that this one goes in, whatever the others do; 0 to 1
	Give      measure.Length  // how much under zero it still goes in
}

// Alternative is the answer at a finer step.
type Alternative struct {
	Step   measure.Step
	Nearer measure.Length // by how much less the clearances miss the middles of their windows, in all
	Gap    measure.Length // that it leaves at its closures; the answer's where the stock gives so much
	Fits   []Fit
	Chance float64 // of all together; zero unless the request wants a chance
}

// Proof is the summary of the fold proof.
type Proof struct {
	Closes    bool
	Gap       measure.Length // the greatest at any closure
	Tolerance measure.Length // the gap that still closes
	Holds     bool           // the contents stand inside without touching
}

// solutions are those whose memory the next ones can have.
var solutions = sync.Pool{New: func() any { return new(Solution) }}

// GiveBack lets other requests have the memory of a solution, which must not be used
// any more, nor anything that was laid out for it.
func (s *Solution) GiveBack() {
	s.plan.Memory.GiveBack()
	clear(s.Fits)
	clear(s.Warnings)
	*s = Solution{Fits: s.Fits[:0], Alternatives: s.Alternatives[:0], Warnings: s.Warnings[:0]}
	solutions.Put(s)
}
