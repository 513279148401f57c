package solve

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
	"creasefit/internal/settings"
	"creasefit/internal/tolerance"
)

// account says what the clearances of a plan depend on when it is made with
// certain sizes, its lines measured from certain edges.
type account struct {
	r     *Request
	plan  *enclosure.Plan
	sizes []measure.Length
	datum settings.Datum
	ledger
	made  [2]slips // with each tool
	lines []line   // of one strip after the other: those between its readings, and the end of the blank
	loose []line   // by reading: the cut of one that lies in no strip; placed if it has none

	pack     int
	contents [3]int // by axis

	along  []bool // by reading: whether it lies along the grain; nil without another season
	growth [2]int // along and across the grain
}

// line is a score or a cut: the source of its stop, its own, and whether it is
// measured from the far end of the blank.
type line struct {
	stop, own int
	far       bool
}

// open lists the sources of all lines of a plan, behind those of what it goes
// round. An account that was open before is made anew in its own memory.
func (a *account) open(r *Request, plan *enclosure.Plan, sizes []measure.Length, datum settings.Datum) {
	a.r, a.plan, a.sizes, a.datum, a.layer, a.along = r, plan, sizes, datum, 0, nil
	a.made = [...]slips{settings.Cut: slipsOf(r.CutError, strokeShare), settings.Score: slipsOf(r.ScoreError, foldShare)}
	a.ready()
	if r.inner != nil {
		a.layer = r.inner.layer + 1
		a.sources, a.causes = append(a.sources, r.inner.sources...), append(a.causes, r.inner.causes...)
	}
	a.common()
	a.seasons()
	for i := range plan.Strips {
		a.strip(&plan.Strips[i])
	}
	for i := range a.loose {
		a.cut(i)
	}
}

// ready empties the lists and makes room for all that a plan may add to them.
func (a *account) ready() {
	lines := 0
	for i := range a.plan.Strips {
		lines += len(a.plan.Strips[i].Readings)
	}
	sources := 2*(lines+len(a.sizes)) + len(a.contents) + len(a.growth) + 1
	if a.r.inner != nil {
		sources += len(a.r.inner.sources)
	}
	a.sources, a.causes = slices.Grow(a.sources[:0], sources), slices.Grow(a.causes[:0], sources)
	a.lines, a.loose = slices.Grow(a.lines[:0], lines), slices.Grow(a.loose[:0], len(a.sizes))[:len(a.sizes)]
	clear(a.loose)
}

// placed marks a reading that has no cut of its own.
const placed = -1

// strip adds the lines of a strip: scores between its readings and the cut at
// its end.
func (a *account) strip(s *enclosure.Strip) {
	var length, at measure.Length
	for _, reading := range s.Readings {
		length = length.Add(a.sizes[reading])
		a.loose[reading].stop = placed
	}
	for i, reading := range s.Readings {
		at = at.Add(a.sizes[reading])
		var l line
		tool, from := settings.Cut, at
		if i < len(s.Readings)-1 {
			tool = settings.Score
			from, l.far = a.datum.From(at, length)
		}
		l.stop, l.own = a.line(&a.made[tool], tool, from)
		a.lines = append(a.lines, l)
	}
}

// cut adds the cut of a reading that lies in no strip, unless the request fixes
// it, it is nothing or it only moves the lines of another one.
func (a *account) cut(reading int) {
	l := &a.loose[reading]
	if l.stop == placed || a.sizes[reading].IsZero() || a.plan.Problem.Readings[reading].Fixed || slices.Contains(a.plan.Allowances, reading) {
		l.stop = placed
		return
	}
	l.stop, l.own = a.line(&a.made[settings.Cut], settings.Cut, a.sizes[reading])
}

// coefficients say, by reading, how often each goes into a length.
type coefficients [64]int16

// of returns how often each goes into a form.
func (c *coefficients) of(terms []rounding.Term) {
	for _, t := range terms {
		c[t.Reading] += int16(t.Coefficient)
	}
}

// settings adds how often each source goes into a length made of readings, so
// many times. Two neighbouring panels share the line between them, so that its
// error cancels or adds up there; a reading along several edges counts along the
// first.
func (a *account) settings(times []float64, c coefficients, scale float64) {
	rest := a.lines
	for i := range a.plan.Strips {
		readings := a.plan.Strips[i].Readings
		lines := rest[:len(readings)]
		rest = rest[len(readings):]
		if !c.any(readings) {
			continue
		}
		end := 0.0 // how often the end of the blank goes into it
		for j := range readings {
			own, next := c[readings[j]], int16(0)
			if j < len(readings)-1 {
				next = c[readings[j+1]]
			}
			weight := float64(own-next) * scale
			if lines[j].far {
				end, weight = end+weight, -weight
			}
			if j == len(readings)-1 {
				weight += end
			}
			lines[j].add(times, weight)
		}
		for _, reading := range readings {
			c[reading] = 0
		}
	}
	for i := range a.loose {
		a.loose[i].add(times, float64(c[i])*scale)
	}
}

// any reports whether any of the readings counts.
func (c *coefficients) any(readings []int) bool {
	for _, reading := range readings {
		if c[reading] != 0 {
			return true
		}
	}
	return false
}

// add counts a line.
func (l *line) add(times []float64, weight float64) {
	if l.stop >= 0 {
		times[l.stop] += weight
		times[l.own] += weight
	}
}

// spread adds so many times the uncertainty of the contents along an axis: how
// much they vary or, where they are another enclosure, what its own outside
// depends on.
func (a *account) spread(times []float64, axis pattern.Axis, count float64) {
	if a.r.inner == nil {
		times[a.contents[axis]] += count
		return
	}
	for i, t := range a.r.inner.depends[axis] {
		times[i] += count * t
	}
}

// common adds the sources that do not come from lines: the contents, unless
// they are another enclosure, and the pack, shared by all that is made of the
// same stock.
func (a *account) common() {
	r := a.r
	a.pack = a.of(cause{of: pack, at: r.Caliper}, tolerance.Within(r.CaliperTolerance))
	if r.inner != nil {
		return
	}
	for axis, varies := range [...]tolerance.Source{r.SizeTolerance, r.SizeTolerance, r.ThicknessTolerance} {
		a.contents[axis] = a.of(cause{of: contents, layer: a.layer, along: pattern.Axis(axis)}, varies)
	}
}
