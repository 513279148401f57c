package api

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// readFit settles the window that the clearance must lie in.
func (r *reading) readFit(q *solve.Request) {
	r.exclude(pClearanceMin, pFit, "a named fit has a least clearance of its own")
	r.exclude(pClearanceMax, pFit, "a named fit has a greatest clearance of its own")
	if !r.has(pClearanceMin) && !r.has(pClearanceMax) {
		q.FitName = defaultFit
		if r.has(pFit) {
			q.FitName = r.values[pFit].text
		}
		q.Fit = namedFit(q.FitName, q.Ruler.Unit())
		return
	}
	q.Fit = enclosure.Range{Min: r.values[pClearanceMin].length, Max: r.values[pClearanceMax].length}
	switch {
	case !r.has(pClearanceMin):
		r.missing(pClearanceMin, "a greatest clearance needs a least one", "add clearance_min=0"+q.Unit.String())
	case !r.has(pClearanceMax):
		r.missing(pClearanceMax, "a least clearance needs a greatest one", "add clearance_max")
	case q.Fit.Max.Less(q.Fit.Min) && len(r.faults) == 0:
		r.report(fault.Fault{Code: fault.Conflict, Field: r.name(pClearanceMax), Value: r.values[pClearanceMax].text,
			Detail: "the greatest clearance is below the least", Expected: "at least " + r.values[pClearanceMin].text}, "")
	}
}

// namedFit returns the window of a named fit on rulers of the unit (common
// practice): total clearance along an axis.
func namedFit(name string, unit measure.Unit) enclosure.Range {
	marks := [...]measure.Length{{}, measure.Sixtyfourths(4), measure.Sixtyfourths(8), measure.Sixtyfourths(16)}
	if unit == measure.Millimetre {
		marks = [...]measure.Length{{}, measure.Micrometres(1500), measure.Millimetres(3), measure.Millimetres(6)}
	}
	switch name {
	case "snug":
		return enclosure.Range{Min: marks[0], Max: marks[1]}
	case "loose":
		return enclosure.Range{Min: marks[2], Max: marks[3]}
	default:
		return enclosure.Range{Min: marks[1], Max: marks[2]}
	}
}
