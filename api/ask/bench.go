package ask

import (
	"fmt"
	"strings"

	"creasefit/internal/bench"
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Bench is the tools on the table.
type Bench struct {
	Ruler, Step Step
	Preset      Word
	Cut, Score  Length
}

func (t *Bench) bind(b *Names) {
	b.bind(&t.Ruler, rulerName("The finest mark of the ruler."))
	b.bind(&t.Step, Name{Name: "step", Example: "1/8 in", Advanced: true,
		Help: "Force all readings onto multiples of this mark. Default: the coarsest that fits."})
	b.bind(&t.Preset, Name{Name: "bench", Choices: bench.Names(), Example: bench.Usual, Default: Always(bench.Usual),
		Help: "How the paper is cut and scored; says how exact that is."})
	b.bind(&t.Cut, Name{Name: "cut_tolerance", Example: "1/32 in", Advanced: true,
		Help: "Error of one cut, plus or minus, instead of the bench's."}.spread())
	b.bind(&t.Score, Name{Name: "score_tolerance", Example: "1/32 in", Advanced: true,
		Help: "Error of one score, plus or minus, instead of the bench's."}.spread())
}

// rulerName is the finest mark of a ruler.
func rulerName(help string) Name {
	usual := Default{bench.Ruler(measure.Inch).String(), bench.Ruler(measure.Millimetre).String()}
	return Name{Name: "ruler", Example: usual.Inch, Default: usual, Help: help}
}

// settle fills in the ruler and how exactly this hand cuts and scores.
func (t *Bench) settle(r *Reading, q *solve.Request) {
	t.settleRuler(r)
	q.Ruler, q.Step = t.Ruler.Step, t.Step.Step
	preset, _ := bench.Lookup(t.Preset.Word)
	q.CutError, q.ScoreError = preset.Cut, preset.Score
	if t.Cut.Given {
		q.CutError = t.Cut.Length
	}
	if t.Score.Given {
		q.ScoreError = t.Score.Length
	}
}

// settleRuler settles the finest mark: one that is given, or the usual one, or
// one as fine as the step that is forced.
func (t *Bench) settleRuler(r *Reading) {
	ruler, step := t.Ruler.Step, t.Step.Step
	switch {
	case ruler.IsZero() && step.IsZero():
		t.Ruler.fill(t.Ruler.on(r.unit), "default")
	case ruler.IsZero():
		if ruler = t.Ruler.on(step.Unit()); step.Size().Less(ruler.Size()) {
			ruler = step
		}
		t.Ruler.fill(ruler, "default")
	case len(measure.SearchSteps(ruler)) == 0:
		r.Report(fault.Fault{Code: fault.OutOfRange, Field: t.Ruler.name().Name, Value: t.Ruler.Text,
			Detail: "a ruler has finer marks than that", Expected: "1/2 in or finer, 5 mm or finer", Hint: "force readings onto whole inches with step"}, "")
	case step.IsZero():
	case step.Unit() != ruler.Unit():
		r.rivals(&t.Step, &t.Ruler, "the ruler is divided in "+ruler.Unit().String())
	case step.Size().Less(ruler.Size()):
		r.rivals(&t.Step, &t.Ruler, "the ruler has no marks as fine as that")
	}
}

// Fit is the clearance wanted: a named one, or two lengths.
type Fit struct {
	Named    Word
	Min, Max Length
}

func (t *Fit) bind(b *Names) {
	names, windows := fitWords()
	b.bind(&t.Named, Name{Name: "fit", Choices: names, Example: names[0], Default: Always(enclosure.UsualFit),
		Help: "The clearance wanted: " + windows + "."})
	b.bind(&t.Min, Name{Name: "clearance_min", Example: "0 in", Advanced: true,
		Help: "The least clearance wanted along an axis, in total, instead of a named fit."}.spread())
	b.bind(&t.Max, Name{Name: "clearance_max", Example: "1/16 in", Advanced: true,
		Help: "The greatest clearance wanted along an axis, in total, instead of a named fit."}.spread())
}

// fitWords are the named fits, and their windows in words.
func fitWords() (names []string, windows string) {
	var words []string
	for i, f := range enclosure.NamedFits() {
		to := fmt.Sprintf("to %s (%s)", measure.Finest(measure.Inch).Format(f.InchRange.Max), measure.Finest(measure.Millimetre).Format(f.MillimetreRange.Max))
		if i == 0 {
			to = "0 " + to
		}
		names, words = append(names, f.Name), append(words, f.Name+" "+to)
	}
	return names, strings.Join(words, ", ")
}

// settle settles the window that the clearance must lie in.
func (t *Fit) settle(r *Reading, q *solve.Request) {
	r.exclude(&t.Min, &t.Named, "a named fit has a least clearance of its own")
	r.exclude(&t.Max, &t.Named, "a named fit has a greatest clearance of its own")
	if !t.Min.Given && !t.Max.Given {
		t.Named.fill("default")
		q.FitName = t.Named.Word
		q.Fit = enclosure.FitNamed(q.FitName, q.Ruler.Unit())
		return
	}
	q.Fit = enclosure.Range{Min: t.Min.Length, Max: t.Max.Length}
	switch {
	case !t.Min.Given:
		r.missing(&t.Min, "a greatest clearance needs a least one", "add clearance_min=0"+r.unit.String())
	case !t.Max.Given:
		r.missing(&t.Max, "a least clearance needs a greatest one", "add clearance_max")
	case q.Fit.Max.Less(q.Fit.Min) && len(r.faults) == 0:
		r.Report(fault.Fault{Code: fault.Conflict, Field: t.Max.name().Name, Value: t.Max.Text,
			Detail: "the greatest clearance is below the least", Expected: "at least " + t.Min.Text}, "")
	}
}
