package wire

import (
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Fit is how the contents go in along one axis.
type Fit struct {
	Axis      string    `json:"axis" validate:"required,oneof=width height thickness diagonal"`
	Between   string    `json:"between,omitempty" example:"lid over tray"` // which pieces, if not the contents and what holds them
	Verdict   string    `json:"verdict" validate:"required,oneof=tight snug easy loose slack"`
	Window    [2]Length `json:"window" validate:"required,min=2,max=2"` // the clearance that was asked for
	Nominal   Length    `json:"nominal" validate:"required"`
	WorstCase [2]Length `json:"worst_case" validate:"required,min=2,max=2"`
	RSS       [2]Length `json:"rss" validate:"required,min=2,max=2"`                    // root-sum-square of the errors, three standard deviations
	Chance    float64   `json:"chance" validate:"required,min=0,max=1" example:"0.993"` // that it goes in
}

// appendFits appends fits, with lengths as the step has them.
func appendFits(fits []Fit, step measure.Step, list []solve.Fit) []Fit {
	for i := range list {
		f := &list[i]
		fits = append(fits, Fit{
			Axis:      f.Axis.String(),
			Between:   f.Between,
			Verdict:   f.Verdict,
			Window:    span(step, f.Window.Min, f.Window.Max),
			Nominal:   exact(step, f.Nominal),
			WorstCase: span(step, f.WorstCase.Min, f.WorstCase.Max),
			RSS:       span(step, f.RSS.Min, f.RSS.Max),
			Chance:    round(f.Chance, 4),
		})
	}
	return fits
}

// Alternative is the answer at a finer step or, if a chance was wanted, at a
// plainer one.
type Alternative struct {
	Step string `json:"step" validate:"required" example:"1/16 in"`
	Gain string `json:"gain" validate:"required"`
	// Chance is that of all together; absent unless the request wants a chance.
	Chance float64 `json:"chance,omitempty" validate:"omitempty,min=0,max=1" example:"0.91"`
	Fit    []Fit   `json:"fit" validate:"required"`
	Link   string  `json:"link" validate:"required"`
}

// appendAlternatives appends the answers at finer steps, each with the address that
// forces it.
func appendAlternatives(list []Alternative, s *solve.Solution, asked *Asked) []Alternative {
	for i := range s.Alternatives {
		a := &s.Alternatives[i]
		var w *Alternative
		list, w = more(list)
		*w = Alternative{
			Step:   a.Step.String(),
			Gain:   gain(a, s.Proof.Gap, s.Request.Unit),
			Chance: round(a.Chance, 4),
			Fit:    appendFits(w.Fit[:0], a.Step, a.Fits),
			Link:   asked.join(asked.Self, "&step=", a.Step.FormatURL(a.Step.Size())),
		}
	}
	return list
}

// gain says what a finer step is worth.
func gain(a *solve.Alternative, gap measure.Length, unit measure.Unit) string {
	places := 2
	if unit == measure.Inch {
		places = 3
	}
	closes := ""
	if a.Gap.Less(gap) {
		closes = "the gap of " + gap.Decimal(unit, places) + " closes to " + a.Gap.Decimal(unit, places) + "; "
	}
	if a.Nearer.Sign() <= 0 {
		return closes + "the clearances come no nearer to the middle of their windows"
	}
	return closes + "the clearances come " + a.Nearer.Decimal(unit, places) + " nearer to the middle of their windows"
}
