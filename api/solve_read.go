package api

import (
	"fmt"
	"slices"

	"creasefit/internal/bench"
	"creasefit/internal/contents"
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
	"creasefit/internal/stock"
)

// solveRequest turns the values of a reading into a request for the kind,
// with presets and defaults filled in, and reports what is missing or
// contradicts itself.
func (r *reading) solveRequest(k *enclosure.Kind) *solve.Request {
	q := &solve.Request{Kind: k}
	r.readContents(q)
	r.requireSizes(q)
	r.readRest(q)
	return q
}

// readRest fills in everything but the contents.
func (r *reading) readRest(q *solve.Request) {
	r.readStock(q)
	r.readUnit(q)
	r.readRuler(q)
	r.readBench(q)
	r.readFit(q)
	r.readOptions(q)
}

// has reports whether the name at a place of the table was given.
func (r *reading) has(place int) bool { return r.values[place].given }

// name returns the name at a place of the table.
func (r *reading) name(place int) string { return r.table.params[place].Name }

// conflict reports two names of which only one may be given.
func (r *reading) conflict(place, other int, detail string) {
	r.report(fault.Fault{Code: fault.Conflict, Field: r.name(place), Value: r.values[place].text, Detail: detail,
		Hint: "leave out " + r.name(place) + " or " + r.name(other)}, "")
}

// missing reports a name that is needed, unless an unknown name is already
// taken for it.
func (r *reading) missing(place int, detail, hint string) {
	p := &r.table.params[place]
	if slices.ContainsFunc(r.fixes, func(x fix) bool { return x.name == p.Name && x.field != p.Name }) {
		return
	}
	r.report(fault.Fault{Code: fault.Missing, Field: p.Name, Detail: detail, Expected: p.expected(r.unit), Hint: hint}, "")
}

// exclude reports a conflict if both names were given.
func (r *reading) exclude(place, other int, detail string) {
	if r.has(place) && r.has(other) {
		r.conflict(place, other, detail)
	}
}

// readContents fills in what goes inside.
func (r *reading) readContents(q *solve.Request) {
	r.exclude(pWidth, pContents, "the named contents have a width of their own")
	r.exclude(pHeight, pContents, "the named contents have a height of their own")
	q.Width, q.Height, q.Thickness = r.values[pWidth].length, r.values[pHeight].length, r.values[pThickness].length
	if item, ok := contents.Lookup(r.values[pContents].text); ok {
		q.Width, q.Height = item.Width, item.Height
		q.SizeTolerance = item.SizeTolerance
		if !r.has(pThickness) {
			q.Thickness, q.ThicknessTolerance = item.Thickness, item.ThicknessTolerance
		}
		if r.unit == measure.NoUnit && !r.mistaken {
			r.unit = item.Unit
		}
	}
	if r.has(pContentsTolerance) {
		q.SizeTolerance, q.ThicknessTolerance = r.values[pContentsTolerance].length, r.values[pContentsTolerance].length
	}
}

// requireSizes reports the sizes that the kind cannot do without.
func (r *reading) requireSizes(q *solve.Request) {
	for _, need := range q.Kind.Needs {
		place := r.table.index[need]
		known := [...]measure.Length{q.Width, q.Height, q.Thickness}[place2size(place)]
		switch {
		case r.has(place) || !known.IsZero():
		case r.has(pContents) && contentsKnown(r.values[pContents].text):
			r.missing(place, "the source of these contents states no "+need, "add "+need+" to the request")
		case !r.has(pContents):
			r.missing(place, "the "+need+" of the contents is needed", "give "+need+", or contents by name")
		}
	}
}

// place2size returns the index of a size among width, height and thickness.
func place2size(place int) int { return slices.Index([]int{pWidth, pHeight, pThickness}, place) }

// contentsKnown reports whether the catalogue has contents of that name.
func contentsKnown(name string) bool {
	_, ok := contents.Lookup(name)
	return ok
}

// readStock fills in the paper.
func (r *reading) readStock(q *solve.Request) {
	r.exclude(pCaliper, pStock, "the named stock has a caliper of its own")
	q.Grammage = r.values[pGrammage].number
	switch {
	case r.has(pStock):
		r.readNamedStock(q)
	case r.has(pCaliper):
		q.Caliper, q.CaliperTolerance = r.values[pCaliper].length, stock.MeasuredTolerance()
	case r.has(pGrammage):
		e := stock.EstimateCaliper(q.Grammage)
		q.Caliper, q.CaliperTolerance = e.Caliper, e.Tolerance()
		q.Notes = append(q.Notes, r.estimated("estimated from the grammage", e.Caliper, e.Low, e.High))
	default:
		r.missing(pCaliper, "the thickness of the paper is needed", "give caliper, stock by name, or grammage for an estimate")
	}
	if r.has(pSheet) {
		q.SheetWidth, q.SheetHeight = r.values[pSheet].size[0], r.values[pSheet].size[1]
	}
	q.Grain = grainOf(r.values[pGrain].text)
}

// readNamedStock fills in a paper of the catalogue.
func (r *reading) readNamedStock(q *solve.Request) {
	s, ok := stock.Lookup(r.values[pStock].text)
	if !ok {
		return
	}
	q.Caliper, q.CaliperTolerance = s.Caliper, s.CaliperTolerance
	if s.Grammage > 0 {
		r.exclude(pGrammage, pStock, "the named stock has a grammage of its own")
		q.Grammage = s.Grammage
	}
	if s.Estimated {
		q.Notes = append(q.Notes, r.estimated("a usual figure, not a published one", s.Caliper, s.Low, s.High))
	}
}

// estimated is the warning that a caliper was not measured.
func (r *reading) estimated(how string, caliper, low, high measure.Length) enclosure.Warning {
	unit := r.unit
	if unit == measure.NoUnit {
		unit = measure.Millimetre
	}
	return enclosure.Warning{Code: "estimated-caliper", Detail: fmt.Sprintf(
		"The caliper of %s is %s: %s to %s is likely. Measure ten sheets and divide by ten.",
		plainLength(caliper, unit), how, plainLength(low, unit), plainLength(high, unit))}
}

// plainLength writes a length as a short decimal of the unit.
func plainLength(l measure.Length, unit measure.Unit) string {
	places := 2
	if unit == measure.Inch {
		places = 4
	}
	return string(measure.AppendDecimal(nil, l, unit, places)) + " " + unit.String()
}

// grainOf returns the direction of a word of the grain choices.
func grainOf(word string) solve.Grain {
	switch word {
	case solve.GrainWidth.String():
		return solve.GrainWidth
	case solve.GrainHeight.String():
		return solve.GrainHeight
	default:
		return solve.GrainUnknown
	}
}

// readUnit settles the unit of the answer.
func (r *reading) readUnit(q *solve.Request) {
	if r.unit == measure.NoUnit && len(r.faults) == 0 {
		r.missing(pUnit, "the request names no unit and has no length that does", "add unit=in or unit=mm")
	}
	q.Unit = r.unit
}

// readRuler settles the finest mark and a forced step.
func (r *reading) readRuler(q *solve.Request) {
	q.Step = r.values[pStep].step
	if q.Ruler = r.values[pRuler].step; q.Ruler.IsZero() {
		q.Ruler = defaultRuler(q.Unit, q.Step)
		return
	}
	switch {
	case len(measure.SearchSteps(q.Ruler)) == 0:
		r.report(fault.Fault{Code: fault.OutOfRange, Field: r.name(pRuler), Value: r.values[pRuler].text,
			Detail: "a ruler has finer marks than that", Expected: "1/2 in or finer, 5 mm or finer", Hint: "force readings onto whole inches with step"}, "")
	case q.Step.IsZero():
	case q.Step.Unit() != q.Ruler.Unit():
		r.conflict(pStep, pRuler, "the ruler is divided in "+q.Ruler.Unit().String())
	case q.Step.Size().Less(q.Ruler.Size()):
		r.conflict(pStep, pRuler, "the ruler has no marks as fine as that")
	}
}

// defaultRuler is the ruler of a request that names none: 1/16 in or 0.5 mm,
// or as fine as the step that it forces.
func defaultRuler(unit measure.Unit, step measure.Step) measure.Step {
	if !step.IsZero() {
		unit = step.Unit()
	}
	marks := measure.Marks(unit)
	ruler := marks[len(marks)-1]
	if unit == measure.Inch {
		ruler = marks[len(marks)-3]
	}
	if !step.IsZero() && step.Size().Less(ruler.Size()) {
		return step
	}
	return ruler
}

// readBench fills in how exactly this hand cuts and scores.
func (r *reading) readBench(q *solve.Request) {
	name := r.values[pBench].text
	if !r.has(pBench) {
		name = defaultBench
	}
	b, _ := bench.Lookup(name)
	q.CutError, q.ScoreError = b.Cut, b.Score
	if r.has(pCutTolerance) {
		q.CutError = r.values[pCutTolerance].length
	}
	if r.has(pScoreTolerance) {
		q.ScoreError = r.values[pScoreTolerance].length
	}
}

// readOptions passes on the kind's own names.
func (r *reading) readOptions(q *solve.Request) {
	for i, p := range q.Kind.Params {
		v := &r.values[pOwn+i]
		if !v.given {
			continue
		}
		if q.Options == nil {
			q.Options = make(map[string]enclosure.Value, len(q.Kind.Params))
		}
		q.Options[p.Name] = enclosure.Value{Length: v.length, Count: int64(v.number), Choice: v.text}
	}
}
