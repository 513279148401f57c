package enclosure

import (
	"sync"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// draft gathers what a kind states into a plan, and has room for what is laid out by
// it. The arrays are where the plan's lists begin, so that most plans are one piece
// of memory.
type draft struct {
	in    *Input
	plan  *Plan
	terms []rounding.Term // one backing array for all forms
	laid  pattern.Memory
	space struct {
		plan     Plan
		readings [12]rounding.Reading
		sources  [12]string
		closures [3]rounding.Closure
		windows  [6]rounding.Window
		even     [4]rounding.Pair
		terms    [24]rounding.Term
		strips   [3]Strip
		fits     [3]Fit
		warnings [2]Warning
	}
}

// newDraft starts a plan for the input.
func newDraft(in *Input) *draft {
	d := drafts.Get().(*draft)
	d.in, d.terms = in, d.terms[:0]
	p, q := d.plan, &d.plan.Problem
	*p = Plan{
		Problem: rounding.Problem{Readings: q.Readings[:0], Closures: q.Closures[:0], Windows: q.Windows[:0], Even: q.Even[:0]},
		Sources: p.Sources[:0], Strips: p.Strips[:0], Fits: p.Fits[:0], Warnings: p.Warnings[:0],
		Over: p.Over[:0], Allowances: p.Allowances[:0], Memory: d, Laid: &d.laid,
	}
	return d
}

// drafts are those whose memory the next ones can have: a portfolio plans its
// layers anew for everything that their outsides may depend on.
var drafts = sync.Pool{New: func() any {
	d := new(draft)
	s, p := &d.space, &d.space.plan
	d.plan, d.terms, p.Sources, p.Strips, p.Fits, p.Warnings = p, s.terms[:0], s.sources[:0], s.strips[:0], s.fits[:0], s.warnings[:0]
	p.Problem = rounding.Problem{Readings: s.readings[:0], Closures: s.closures[:0], Windows: s.windows[:0], Even: s.even[:0]}
	return d
}}

// GiveBack lets the next draft have the memory of this one.
func (d *draft) GiveBack() {
	d.laid.GiveBack()
	drafts.Put(d)
}

// reading adds a reading that the search may choose, from one ruler mark up.
func (d *draft) reading(name string, ideal measure.Length) int {
	return d.between(name, ideal, measure.Nanometres(1), measure.Largest())
}

// between adds a reading that the search may choose within bounds.
func (d *draft) between(name string, ideal, least, greatest measure.Length) int {
	return d.add(rounding.Reading{Name: name, Ideal: ideal, Min: least, Max: greatest}, "")
}

// fixed adds a reading that is kept as a parameter says.
func (d *draft) fixed(name, param string) int {
	return d.add(rounding.Reading{Name: name, Ideal: d.in.length(param), Fixed: true}, param)
}

// option adds a reading that a parameter says; where it is not given and its
// default does not lie in the room that there is, the search chooses one that does.
func (d *draft) option(name, param string, room Range) int {
	size := d.in.length(param)
	if d.in.given(param) || room.Max.Less(room.Min) || !size.Less(room.Min) && !room.Max.Less(size) {
		return d.fixed(name, param)
	}
	return d.anyOf(name, room)
}

// anyOf adds a reading that the search may choose within a range, best in its middle.
func (d *draft) anyOf(name string, r Range) int {
	i := d.between(name, middle(r), r.Min, r.Max)
	d.within(name, r, d.form(measure.Length{}, times(1, i)))
	return i
}

// littleOver adds a reading that the search may choose between two bounds, the
// nearest to the least.
func (d *draft) littleOver(name string, ideal, least, most measure.Length) int {
	i := d.between(name, ideal, least, most)
	d.within(name, Range{Min: least.Times(2).Sub(most), Max: most}, d.form(measure.Length{}, times(1, i)))
	return i
}

// atLeast adds a reading that is as little over a need as the ruler has marks; some
// mark of every step lies in its range.
func (d *draft) atLeast(name string, need measure.Length) int {
	return d.littleOver(name, need, need, need.Add(d.in.Little().Times(2)))
}

// allowance adds the reading of what a part is shorter by that goes into another.
func (d *draft) allowance() int {
	room := d.in.Allowance()
	return d.littleOver("allowance", d.in.Caliper, room.Min, room.Max)
}

func (d *draft) add(r rounding.Reading, source string) int {
	d.plan.Problem.Readings = append(d.plan.Problem.Readings, r)
	d.plan.Sources = append(d.plan.Sources, source)
	return len(d.plan.Problem.Readings) - 1
}

// times makes a term: so many times a reading.
func times(coefficient int64, reading int) rounding.Term {
	return rounding.Term{Reading: reading, Coefficient: coefficient}
}

// all makes terms: so many times each reading.
func all(coefficient int64, readings []int) []rounding.Term {
	terms := make([]rounding.Term, len(readings))
	for i, reading := range readings {
		terms[i] = times(coefficient, reading)
	}
	return terms
}

// form makes a form out of terms and a constant.
func (d *draft) form(constant measure.Length, terms ...rounding.Term) rounding.Form {
	from := len(d.terms)
	d.terms = append(d.terms, terms...)
	return rounding.Form{Terms: d.terms[from:len(d.terms):len(d.terms)], Constant: constant}
}

// equal states that the terms and the constant add up to nothing.
func (d *draft) equal(name string, constant measure.Length, terms ...rounding.Term) {
	d.plan.Problem.Closures = append(d.plan.Problem.Closures, rounding.Closure{Name: name, Form: d.form(constant, terms...)})
}

// within states that a form must lie in a range.
func (d *draft) within(name string, r Range, f rounding.Form) {
	d.plan.Problem.Windows = append(d.plan.Problem.Windows, rounding.Window{Name: name, Form: f, Min: r.Min, Max: r.Max, Weight: 1})
}

// anywhere states that a form must lie in a range, anywhere in it as well.
func (d *draft) anywhere(name string, r Range, f rounding.Form) {
	d.plan.Problem.Windows = append(d.plan.Problem.Windows, rounding.Window{Name: name, Form: f, Min: r.Min, Max: r.Max})
}

// fit states that the terms less the need are the clearance along an axis,
// which must lie in the range that the request wants.
func (d *draft) fit(axis pattern.Axis, need Need, terms ...rounding.Term) {
	d.nest("", axis, d.in.Fit, need, terms...)
}

// ideal is the size that has the middle of the wanted fit over a need.
func (d *draft) ideal(need Need) measure.Length { return need.Of(d.in).Add(d.in.middle()) }

// round adds the reading of a size that goes round contents along an axis, with its fit.
func (d *draft) round(name string, axis pattern.Axis, need Need) int {
	i := d.reading(name, d.ideal(need))
	d.fit(axis, need, times(1, i))
	return i
}

// nest states that the terms less the need are the clearance between two pieces,
// or with "" of the contents, along an axis, which must lie in a range of its own.
func (d *draft) nest(between string, axis pattern.Axis, r Range, need Need, terms ...rounding.Term) {
	d.fitted(Fit{Between: between, Axis: axis, Wanted: r, Need: need}, r, d.form(need.Of(d.in).Neg(), terms...))
}

// scaledFit states that the terms, so many times as the fit's scale says, less
// what is taken from them are a clearance.
func (d *draft) scaledFit(f Fit, taken measure.Length, terms ...rounding.Term) {
	along := func(l measure.Length) measure.Length { return scaled(l, 1/f.Scale) }
	d.fitted(f, Range{Min: along(f.Wanted.Min), Max: along(f.Wanted.Max)}, d.form(along(taken).Neg(), terms...))
}

// fitted adds a fit and the window of its form.
func (d *draft) fitted(f Fit, r Range, form rounding.Form) {
	f.Window = len(d.plan.Problem.Windows)
	d.plan.Fits = append(d.plan.Fits, f)
	name := f.Axis.String()
	if f.Between != "" {
		name += ", " + f.Between
	}
	d.within(name, r, form)
}

// even states that two readings should be equal if they can be.
func (d *draft) even(a, b int) {
	d.plan.Problem.Even = append(d.plan.Problem.Even, rounding.Pair{A: a, B: b})
}

// parted adds the readings of what lies on both sides of a point on a reading's
// size: in its middle, if the ruler has a mark there, and so far from its ends.
func (d *draft) parted(what string, whole int, before, after string, least ...measure.Length) (a, b int) {
	ideal, least := d.plan.Problem.Readings[whole].Ideal, append(least, measure.Nanometres(1), measure.Nanometres(1))
	a = d.between(before, ideal.Over(2), least[0], measure.Largest())
	b = d.between(after, ideal.Sub(ideal.Over(2)), least[1], measure.Largest())
	d.equal(what, measure.Length{}, times(1, a), times(1, b), times(-1, whole))
	d.even(a, b)
	return a, b
}

// strip states that readings follow one another along an edge of a piece.
func (d *draft) strip(piece int, across pattern.Axis, readings ...int) {
	d.plan.Strips = append(d.plan.Strips, Strip{Piece: piece, Across: across, Readings: readings})
}

// strips states that readings follow one another across a piece and up it.
func (d *draft) strips(piece int, across, up []int) {
	d.strip(piece, pattern.Width, across...)
	d.strip(piece, pattern.Height, up...)
}

// warn adds a warning.
func (d *draft) warn(code, detail string) {
	d.plan.Warnings = append(d.plan.Warnings, Warning{Code: code, Detail: detail})
}

// bounded returns the axes of the fits: those along which plates hold the
// contents on both sides.
func (d *draft) bounded() []pattern.Axis {
	axes := make([]pattern.Axis, 0, len(d.plan.Fits))
	for _, f := range d.plan.Fits {
		if f.Between == "" {
			axes = append(axes, f.Axis)
		}
	}
	return axes
}

// middle returns the clearance in the middle of the wanted fit.
func (in *Input) middle() measure.Length { return middle(in.Fit) }

func middle(r Range) measure.Length { return r.Min.Add(r.Max).Over(2) }
