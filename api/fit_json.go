package api

import (
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// appendFits appends how the contents go in along each axis.
func appendFits(dst []byte, step measure.Step, fits []solve.Fit) []byte {
	dst = append(dst, '[')
	for i := range fits {
		dst = comma(dst, i)
		f := &fits[i]
		dst = append(append(append(dst, `{"axis":"`...), f.Axis.String()...), '"')
		if f.Between != "" {
			dst = appendString(append(dst, `,"between":`...), f.Between)
		}
		dst = append(dst, `,"verdict":"`...)
		dst = append(append(dst, f.Verdict...), `","window":`...)
		dst = appendRange(dst, step, f.Window.Min, f.Window.Max)
		dst = appendExact(append(dst, `,"nominal":`...), step, f.Nominal)
		dst = appendRange(append(dst, `,"worst_case":`...), step, f.WorstCase.Min, f.WorstCase.Max)
		dst = appendRange(append(dst, `,"rss":`...), step, f.RSS.Min, f.RSS.Max)
		dst = append(appendDecimal(append(dst, `,"chance":`...), f.Chance, 4), '}')
	}
	return append(dst, ']')
}

// appendAlternatives appends the answers at finer steps, each with the
// address that forces it.
func appendAlternatives(dst []byte, s *solve.Solution, self []byte) []byte {
	dst = append(dst, '[')
	for i := range s.Alternatives {
		dst = comma(dst, i)
		a := &s.Alternatives[i]
		dst = append(append(append(dst, `{"step":"`...), a.Step.String()...), `","gain":`...)
		dst = appendGain(dst, a, s.Request.Unit)
		dst = appendFits(append(dst, `,"fit":`...), a.Step, a.Fits)
		dst = append(dst, `,"link":"`...)
		dst = append(append(dst, self...), "&step="...)
		dst = append(a.Step.AppendURL(dst, a.Step.Size()), `"}`...)
	}
	return append(dst, ']')
}

// appendGain appends in words what a finer step is worth.
func appendGain(dst []byte, a *solve.Alternative, unit measure.Unit) []byte {
	if a.Nearer.Sign() <= 0 {
		return append(dst, `"the clearances come no nearer to the middle of their windows"`...)
	}
	places := 2
	if unit == measure.Inch {
		places = 3
	}
	dst = measure.AppendDecimal(append(dst, `"the clearances come `...), a.Nearer, unit, places)
	return append(append(append(dst, ' '), unit.String()...), ` nearer to the middle of their windows"`...)
}
