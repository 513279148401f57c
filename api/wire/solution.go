package wire

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Solution is the answer of /v1/solve/{kind}.
type Solution struct {
	Kind         string        `json:"kind" validate:"required" example:"slotted-band"`
	Unit         string        `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Step         string        `json:"step" validate:"required" example:"1/8 in"` // all readings are multiples of it
	Given        Givens        `json:"given" validate:"required"`
	Pieces       []Piece       `json:"pieces" validate:"required"`
	Settings     []Stop        `json:"settings" validate:"required"` // each different stop: for cuts, then for scores, those that serve the fewest first
	Fit          []Fit         `json:"fit" validate:"required"`
	Sure         Sure          `json:"sure" validate:"required"`         // that all of it goes together
	Alternatives []Alternative `json:"alternatives" validate:"required"` // finer steps
	Outside      Outside       `json:"outside" validate:"required"`
	Proof        Proof         `json:"proof" validate:"required"`
	Warnings     []Warning     `json:"warnings" validate:"required"`
	Ornament     *Ornament     `json:"ornament,omitempty"` // of a slotted band's closure, if one was asked for
	Yield        *Yields       `json:"yield,omitempty"`    // of the sheet, if the request names one
	Links        Links         `json:"links" validate:"required"`
	// Order is the order of work. It is given only to a request whose show or pick names it.
	Order []WorkStep `json:"order,omitempty"`
}

// OfSolution is the answer to a request that was solved, in the memory of what is
// repeated of it.
func OfSolution(s *solve.Solution, a *Asked) *Solution {
	w := &a.solution
	*w = Solution{
		Kind:         s.Request.Kind.Name,
		Unit:         s.Request.Unit.String(),
		Step:         s.Step.String(),
		Given:        a.Given,
		Pieces:       appendPieces(w.Pieces[:0], s, ""),
		Settings:     appendStops(w.Settings[:0], s),
		Fit:          appendFits(w.Fit[:0], s.Step, s.Fits),
		Sure:         sureOf(s.Request, s.Fits, s.Sure),
		Alternatives: appendAlternatives(w.Alternatives[:0], s, a),
		Outside:      outside(s),
		Proof:        proof(&s.Proof),
		Warnings:     warnings(s.Warnings, a),
		Ornament:     ornament(s.Step, s.Ornament),
		Yield:        yields(s),
		Links:        solutionLinks(s, a),
	}
	return w
}

// Outside is the size of the closed enclosure with the contents inside.
type Outside struct {
	Width     Length  `json:"width" validate:"required"`
	Height    Length  `json:"height" validate:"required"`
	Thickness Length  `json:"thickness" validate:"required"`
	Mass      float64 `json:"mass_g,omitempty" example:"3.1"` // of the paper alone
}

func outside(s *solve.Solution) Outside {
	o := &s.Outside
	return Outside{exact(s.Step, o.Width), exact(s.Step, o.Height), exact(s.Step, o.Thickness), round(max(0, o.Mass), 2)}
}

// Proof is what folding the flat pattern up has shown.
type Proof struct {
	Closes    bool    `json:"closes" validate:"required"`
	Gap       float64 `json:"gap_mm" validate:"required"`
	Tolerance float64 `json:"tolerance_mm" validate:"required"` // the gap that still closes
	Holds     bool    `json:"holds" validate:"required"`        // the contents stand inside without touching
}

func proof(p *solve.Proof) Proof {
	return Proof{p.Closes, p.Gap.Millimetres(), p.Tolerance.Millimetres(), p.Holds}
}

// Warning is something the maker should know.
type Warning struct {
	Code   string `json:"code" validate:"required" example:"estimated-caliper"`
	Detail string `json:"detail" validate:"required"`
	// Try is the address of a calculation without the warning, if one is known.
	Try string `json:"try,omitempty" example:"/v1/solve/sleeve?unit=in&join=two-pieces"`
}

func warnings(list []enclosure.Warning, a *Asked) []Warning {
	return Each(list, func(w enclosure.Warning) Warning { return Warning{w.Code, w.Detail, a.with(w.Try)} })
}

// Ornament is a shape that is cut in half along its middle and glued half and
// half over the closure of a slotted band, each half to the tab on its side.
type Ornament struct {
	Shape         string `json:"shape" validate:"required" example:"heart"`
	CoversTabs    bool   `json:"covers_tabs" validate:"required"`
	CoversSlits   bool   `json:"covers_slits" validate:"required"`
	HalfWidth     Length `json:"half_width" validate:"required"` // of each half, from the meeting line out
	Height        Length `json:"height" validate:"required"`
	GlueFrom      Length `json:"glue_from" validate:"required"` // from the meeting line, so that no slit is glued shut
	GlueTo        Length `json:"glue_to" validate:"required"`
	GlueHeight    Length `json:"glue_height" validate:"required"`
	TrimWidth     Length `json:"trim_width" validate:"required"`   // how far each tab sticks out at the side: trim it away
	ShowsHeight   Length `json:"shows_height" validate:"required"` // how far the tabs show above and below, each
	AddsThickness Length `json:"adds_thickness" validate:"required"`
}

func ornament(step measure.Step, o *enclosure.Ornament) *Ornament {
	if o == nil {
		return nil
	}
	return &Ornament{
		Shape:         o.Shape,
		CoversTabs:    o.CoversTabs,
		CoversSlits:   o.CoversSlits,
		HalfWidth:     exact(step, o.HalfWidth),
		Height:        exact(step, o.Height),
		GlueFrom:      exact(step, o.GlueFrom),
		GlueTo:        exact(step, o.GlueTo),
		GlueHeight:    exact(step, o.GlueHeight),
		TrimWidth:     exact(step, o.TrimWidth),
		ShowsHeight:   exact(step, o.ShowsHeight),
		AddsThickness: exact(step, o.Adds),
	}
}
