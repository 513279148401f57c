package solve

import (
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
	"creasefit/internal/tolerance"
)

// reason is what an error comes from.
type reason uint8

const (
	stopSet  reason = iota // a stop was set a little off: all lines made at it share that
	stroke                 // a line lies a little beside its stop, and its fold beside the line
	pack                   // the sheets of a pack are as thick as one another, but not as stated
	contents               // what goes inside varies
	season                 // paper grows more or less than most does
)

// cause tells one source of error from all others of a solution and of those
// that it goes round. Many are compared: it is small.
type cause struct {
	at    measure.Length // where a stop is set, or the caliper of a pack
	layer int32          // of a portfolio, for stops and contents
	of    reason
	tool  settings.Tool
	along pattern.Axis
}

// ledger lists the sources of error, each once.
type ledger struct {
	layer   int32
	sources []tolerance.Source
	causes  []cause
}

// of returns the source of a cause, which is added if it is new. Each stroke is.
func (l *ledger) of(c cause, s tolerance.Source) int {
	if c.of != stroke {
		for i := range l.causes {
			if known := &l.causes[i]; known.at == c.at && *known == c {
				return i
			}
		}
	}
	l.sources, l.causes = append(l.sources, s), append(l.causes, c)
	return len(l.sources) - 1
}

// The error of a line is its stop's, which all lines made at it share, and its
// own: that of the stroke, and on a score of the fold. Root-sum-square and at
// worst they come to what the bench states; of the whole, stroke and fold are a
// quarter each (common practice).
const (
	strokeShare = 0.25
	foldShare   = 0.3535533905932738 // stroke and fold, root-sum-square
)

// slips are the errors of a stop, and of one line made at it.
type slips struct{ stop, own tolerance.Source }

// slipsOf are those of lines whose whole error is that, a share of it their own.
func slipsOf(whole measure.Length, share float64) slips {
	single := tolerance.Within(part(whole, share))
	common := tolerance.Within(whole.Sub(single.High))
	common.Deviation = part(whole, math.Sqrt(1-share*share)/3)
	return slips{common, single}
}

// line adds the two sources of a line made at a stop: the stop's and its own.
func (l *ledger) line(e *slips, t settings.Tool, at measure.Length) (stop, own int) {
	stop = l.of(cause{of: stopSet, layer: l.layer, tool: t, at: at}, e.stop)
	own = l.of(cause{of: stroke, layer: l.layer, tool: t, at: at}, e.own)
	return stop, own
}

// part is a share of a length, to the nanometre.
func part(l measure.Length, share float64) measure.Length {
	return measure.Nanometres(int64(math.Round(float64(l.Nanometres()) * share)))
}

// chain is what a layer goes round: the sources so far, and what its sizes
// depend on, by source, along its own axes.
type chain struct {
	ledger
	depends [3][]float64
}
