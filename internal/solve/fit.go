package solve

import (
	"math"
	"slices"
	"sync"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
	"creasefit/internal/tolerance"
)

// Certainty is how sure it is that everything goes in, closes and slides: along
// all axes, past all faces and with all nested parts at once.
type Certainty struct {
	Chance  float64 // 0 to 1
	Within  float64 // how far it may be off by the way it is worked out
	Weakest int     // the fit that is the least sure, -1 without fits
	Datum   settings.Datum
}

// judgement is what a plan made with certain sizes comes to.
type judgement struct {
	fits  []Fit
	least float64          // by how many deviations the form that is the least sure by itself holds
	forms []tolerance.Form // all that has to be at least zero, over the account's sources
	account

	judged    bool // whether certainty knows the chance
	certainty Certainty

	cells []float64       // of all forms
	faces [mostFaces]face // of a fit
}

// judgements are those whose memory the next ones can have.
var judgements = sync.Pool{New: func() any { return new(judgement) }}

// giveBack gives a judgement back, which must not be used any more; it keeps
// nothing of its request alive.
func (j *judgement) giveBack() {
	j.r, j.plan, j.sizes, j.along = nil, nil, nil, nil
	judgements.Put(j)
}

// worthTurning is by how much surer fits must be for lines to be measured all from
// one edge: from the nearer edge they take the fewest settings.
const worthTurning = 0.02

// judge says how the contents go in with the given sizes of the readings.
func (r *Request) judge(plan *enclosure.Plan, sizes []measure.Length) *judgement {
	j := r.judgeFrom(plan, sizes, settings.Nearer)
	if alone := j.alone(); alone < 1-worthTurning {
		one := r.judgeFrom(plan, sizes, settings.OneEdge)
		if one.alone() > alone+worthTurning {
			j, one = one, j
		}
		one.giveBack()
	}
	return j
}

// sure is how sure everything is at once, worked out when it is first asked for.
func (j *judgement) sure() Certainty {
	if !j.judged {
		all := tolerance.Joint(j.forms, j.sources)
		j.certainty.Chance, j.certainty.Within, j.judged = all.Chance, all.Within, true
	}
	return j.certainty
}

// reaches reports whether everything is as sure as that, which it is not where
// one clearance by itself is not.
func (j *judgement) reaches(chance float64) bool {
	return tolerance.Phi(j.least) >= chance && j.sure().Chance >= chance
}

// alone is the chance of all fits as if they had nothing to do with one another.
func (j *judgement) alone() float64 {
	chance := 1.0
	for i := range j.fits {
		chance *= j.fits[i].Chance
	}
	return chance
}

// judgeFrom says what every fit by itself comes to with lines measured from
// certain edges, and what has to hold.
func (r *Request) judgeFrom(plan *enclosure.Plan, sizes []measure.Length, datum settings.Datum) *judgement {
	j := judgements.Get().(*judgement)
	j.least, j.judged, j.certainty = math.Inf(1), false, Certainty{Weakest: -1, Datum: datum}
	j.open(r, plan, sizes, datum)
	j.fits = slices.Grow(j.fits[:0], len(plan.Fits))[:len(plan.Fits)]
	j.forms = slices.Grow(j.forms[:0], 3*len(plan.Fits))
	j.cells = slices.Grow(j.cells[:0], 3*len(plan.Fits)*len(j.sources))
	for i := range plan.Fits {
		f := &plan.Fits[i]
		list := faces(j.faces[:0], plan, f, sizes)
		for n := range list {
			var times []float64
			times, j.cells = grow(j.cells, len(j.sources))
			j.forms = append(j.forms, j.form(f, &list[n], times))
			form, sure := &j.forms[len(j.forms)-1], 0.0
			if n == 0 {
				own := tolerance.Stack(form, j.sources)
				j.fits[i], sure = r.fit(f, &own), own.Deviations
			} else {
				sure = form.Deviations(j.sources)
			}
			if sure < j.least || j.certainty.Weakest < 0 {
				j.least, j.certainty.Weakest = sure, i
			}
		}
	}
	return j
}

// eachFit appends what the fits come to by themselves.
func (a *account) eachFit(fits []Fit) []Fit {
	var space [64]float64
	fits, times := slices.Grow(fits, len(a.plan.Fits)), append(space[:0], make([]float64, len(a.sources))...)
	for i := range a.plan.Fits {
		clear(times)
		f, own := &a.plan.Fits[i], face{}
		own.of.of(a.plan.Problem.Windows[f.Window].Form.Terms)
		form := a.form(f, &own, times)
		stack := tolerance.Stack(&form, a.sources)
		fits = append(fits, a.r.fit(f, &stack))
	}
	return fits
}

// grow takes so many cells of those that are kept ready, or new ones, all zero.
func grow(cells []float64, n int) (taken, rest []float64) {
	if cap(cells)-len(cells) < n {
		return make([]float64, n), cells
	}
	rest = cells[:len(cells)+n]
	taken = rest[len(cells):]
	clear(taken)
	return taken, rest
}

// fit is what a stack says of a fit. The give is in the chance alone: it is no
// room.
func (r *Request) fit(f *enclosure.Fit, own *tolerance.Result) Fit {
	give := r.give(f)
	clearance := own.Nominal.Sub(give)
	return Fit{
		Axis: f.Axis, Between: f.Between, Verdict: enclosure.Verdict(clearance, r.Ruler.Unit()), Window: f.Wanted,
		Nominal: clearance, Chance: own.Chance, Give: give,
		WorstCase: enclosure.Range{Min: own.WorstCase.Min.Sub(give), Max: own.WorstCase.Max.Sub(give)},
		RSS:       enclosure.Range{Min: own.RSS.Min.Sub(give), Max: own.RSS.Max.Sub(give)},
	}
}

// give is how much a clearance may be under zero: walls of paper bow where a
// part of the same make goes over them or into them.
func (r *Request) give(f *enclosure.Fit) measure.Length {
	if f.Between == "" {
		return measure.Length{}
	}
	return r.WallGive
}

// form is a clearance with its give, and what it depends on: the lines that its
// readings lie between, the contents and the caliper.
func (a *account) form(f *enclosure.Fit, of *face, times []float64) tolerance.Form {
	value := a.plan.Problem.Windows[f.Window].Form.Value(a.sizes).Add(of.more) // closures are exact
	moves := slope(f)
	a.settings(times, of.of, moves)
	a.spread(times, pattern.Width, -float64(f.Need.Width))
	a.spread(times, pattern.Height, -float64(f.Need.Height))
	a.spread(times, pattern.Thickness, -float64(f.Need.Thickness))
	times[a.pack] -= float64(f.Need.HalfCalipers) / 2
	a.growths(times, &of.of, moves)
	return tolerance.Form{Nominal: f.Clearance(value).Add(a.r.give(f)), Times: times}
}

// slope is how much a clearance moves with its readings: as they do; as often
// as the fit says where it is measured at another angle; or as its curve rises
// over a stretch of 1 mm.
func slope(f *enclosure.Fit) float64 {
	switch {
	case f.Scale > 0:
		return f.Share
	case f.Curve != nil:
		over := measure.Millimetres(1)
		return f.Curve(over.Over(2)).Sub(f.Curve(over.Over(-2))).Millimetres()
	default:
		return 1
	}
}
