package wire

import (
	"strconv"
	"strings"

	"creasefit/internal/calibrate"
	"creasefit/internal/solve"
)

// Learned is what a folded piece teaches.
type Learned struct {
	Causes []Cause `json:"causes" validate:"required"` // the likeliest first
	// Chance is how often a piece made as stated comes out as far off as this, or farther.
	Chance float64        `json:"chance" validate:"required,min=0,max=1" example:"0.04"`
	Words  string         `json:"words" validate:"required" example:"Most likely the stop at 25 mm was set 0.6 mm too far."`
	Mend   []Change       `json:"mend" validate:"required"` // the smallest change that leaves the wanted clearances
	Use    CalibrationUse `json:"use" validate:"required"`  // names for the next request
	Query  string         `json:"query" validate:"required" example:"caliper=0.32mm&fold_allowance=0.1mm"`
}

// Cause is one thing that was most likely off.
type Cause struct {
	Cause      string  `json:"cause" validate:"required,oneof=cut-stop score-stop one-cut one-score caliper fold" example:"score-stop"`
	At         *Length `json:"at,omitempty"`                                 // of a stop, or of a line made at it
	Off        Length  `json:"off" validate:"required"`                      // more than stated; less if negative
	Deviations float64 `json:"deviations" validate:"required" example:"2.1"` // the same in standard deviations
	Words      string  `json:"words" validate:"required" example:"the score stop at 25 mm was set 0.6 mm too far"`
}

// learnedOf is what the folded piece of a check teaches, nil if it was not
// measured.
func learnedOf(c *solve.Check) *Learned {
	l := c.Lesson
	if l == nil {
		return nil
	}
	q := c.Request
	record := &calibrate.Record{Known: []calibrate.Known{{Name: "caliper", Use: l.Caliper}, {Name: "caliper_tolerance", Use: l.CaliperTolerance},
		{Name: "cut_tolerance", Use: l.Cut}, {Name: "score_tolerance", Use: l.Score}, {Name: "fold_allowance", Use: l.Fold}}}
	answer := &Learned{Chance: round(l.Surprise, 4), Mend: changes(q.Ruler, l.Mend), Query: queryOf(record, q.Unit), Causes: make([]Cause, len(l.Suspects))}
	for _, k := range record.Known {
		*answer.Use.field(k.Name) = fine(k.Use, q.Unit)
	}
	for i, s := range l.Suspects {
		cause := Cause{Cause: s.Of.String(), Off: exactIn(q.Unit, s.Off), Deviations: round(s.Deviations, 2), Words: causeWords(q, s)}
		if s.At.Sign() > 0 {
			cause.At = new(exactIn(q.Unit, s.At))
		}
		answer.Causes[i] = cause
	}
	answer.Words = learnedWords(answer)
	return answer
}

// learnedWords says what a folded piece teaches, in a sentence.
func learnedWords(l *Learned) string {
	if len(l.Causes) == 0 {
		return "It came out as it should: nothing was off by more than hands usually are."
	}
	words := "Most likely " + l.Causes[0].Words + "."
	if len(l.Causes) > 1 {
		words += " Or " + l.Causes[1].Words + "."
	}
	if len(l.Mend) > 0 {
		words += " To mend it: " + strings.Join(Each(l.Mend, func(m Change) string { return m.Name + " " + m.To.Reading }), ", ") + "."
	}
	return words
}

// causeWords says what was off as a maker does.
func causeWords(q *solve.Request, s solve.Suspect) string {
	by := s.Off.Abs().Plain(q.Unit)
	more := func(yes, no string) string {
		if s.Off.Sign() < 0 {
			return no
		}
		return yes
	}
	at := "at " + q.Ruler.Format(q.Ruler.Nearest(s.At))
	switch s.Of {
	case solve.CutStop:
		return "the stop for the cut " + at + " was set " + by + more(" too far", " too short")
	case solve.ScoreStop:
		return "the stop for the score " + at + " was set " + by + more(" too far", " too short")
	case solve.OneCut:
		return "one cut " + at + " lies " + by + more(" too far", " too short")
	case solve.OneScore:
		return "one score or its fold " + at + " lies " + by + more(" too far", " too short")
	case solve.Paper:
		return "the paper is " + by + more(" thicker", " thinner") + " than stated"
	default:
		return "every fold takes up " + by + more(" more", " less") + " (" + strconv.FormatFloat(round(s.Deviations, 1), 'f', -1, 64) + " of its usual errors)"
	}
}
