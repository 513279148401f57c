package wire

import (
	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// PortfolioName is what the assembly of several kinds is called where kinds are
// named.
const PortfolioName = "portfolio"

// Portfolio is the answer of /v1/solve/portfolio.
type Portfolio struct {
	Kind     string           `json:"kind" validate:"required,oneof=portfolio" example:"portfolio"`
	Unit     string           `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given    Givens           `json:"given" validate:"required"`
	Layers   []PortfolioLayer `json:"layers" validate:"required"` // the innermost first
	Pieces   []Piece          `json:"pieces" validate:"required"` // of all layers
	Chain    []ChainLink      `json:"chain" validate:"required"`  // how errors add up from layer to layer
	Sure     Sure             `json:"sure" validate:"required"`   // that all layers go together
	Outside  Outside          `json:"outside" validate:"required"`
	Proof    Proof            `json:"proof" validate:"required"` // of all layers: the greatest gap
	Warnings []Warning        `json:"warnings" validate:"required"`
	Links    Links            `json:"links" validate:"required"`
}

// OfPortfolio is the answer to a portfolio that was solved; alone asks for one
// of its layers by itself.
func OfPortfolio(p *solve.Portfolio, a *Asked, alone func(layer int) *Asked) *Portfolio {
	whole := *p.Solutions[len(p.Solutions)-1]
	whole.Outside.Mass, whole.Proof = wholeMass(p), wholeProof(p)
	answer := &Portfolio{
		Kind:     PortfolioName,
		Pieces:   a.solution.Pieces[:0],
		Unit:     whole.Request.Unit.String(),
		Given:    a.Given,
		Sure:     sureOfAll(p),
		Outside:  outside(&whole),
		Proof:    proof(&whole.Proof),
		Warnings: warnings(allWarnings(p), a),
		Links:    kindLinks(PortfolioName, a),
	}
	answer.Links.Mail = mailLink(a, whole.Request.Unit, &whole.Outside, 0)
	for i, s := range p.Solutions {
		name := p.Layers[i].Name()
		a := alone(i)
		answer.Layers = append(answer.Layers, layer(&p.Layers[i], s, a))
		a.Release() // its texts stay
		answer.Pieces = appendPieces(answer.Pieces, s, name)
		answer.Chain = append(answer.Chain, link(name, s, &p.Chain[i]))
	}
	return answer
}

// link is one layer of the tolerance chain.
func link(name string, s *solve.Solution, l *solve.Link) ChainLink {
	return ChainLink{name, sizes(s.Step, &l.Contents), appendFits(nil, s.Step, s.Fits), sizes(s.Step, &l.Outside)}
}

// sureOfAll is how sure all layers are at once.
func sureOfAll(p *solve.Portfolio) Sure {
	s := p.Solutions[p.Unsurest]
	all := sureOf(s.Request, s.Fits, p.Sure)
	all.Of = "all layers: " + all.Of
	if all.Weakest != nil {
		all.Weakest.Layer = p.Layers[p.Unsurest].Name()
	}
	return all
}

// PortfolioLayer is one enclosure of a portfolio.
type PortfolioLayer struct {
	Name   string  `json:"name" validate:"required" example:"tray"` // its kind, numbered where one comes again
	Kind   string  `json:"kind" validate:"required" example:"tray"`
	Turned string  `json:"turned" validate:"required,oneof=no quarter edge end" example:"no"` // what is inside, before it goes in
	Step   string  `json:"step" validate:"required" example:"1/8 in"`
	Proof  Proof   `json:"proof" validate:"required"`
	Yield  *Yields `json:"yield,omitempty"`           // of the sheet, if there is one
	Links  Links   `json:"links" validate:"required"` // of the layer alone, with what it goes round as its contents
}

func layer(l *solve.Layer, s *solve.Solution, alone *Asked) PortfolioLayer {
	links := kindLinks(s.Request.Kind.Name, alone)
	if s.Yields != nil {
		links.Yield = yieldLink(s, alone)
	}
	return PortfolioLayer{l.Name(), s.Request.Kind.Name, ask.Turns()[l.Turn], s.Step.String(), proof(&s.Proof), yields(s), links}
}

// ChainLink is one layer of the tolerance chain.
type ChainLink struct {
	Layer    string    `json:"layer" validate:"required" example:"tray"`
	Contents SureSizes `json:"contents" validate:"required"` // what the layer goes round, along its own axes
	Fit      []Fit     `json:"fit" validate:"required"`
	Outside  SureSizes `json:"outside" validate:"required"` // of the layer when it is closed
}

// SureSizes are sizes with how sure they are.
type SureSizes struct {
	Width     SureSize `json:"width" validate:"required"`
	Height    SureSize `json:"height" validate:"required"`
	Thickness SureSize `json:"thickness" validate:"required"`
}

func sizes(step measure.Step, s *[3]solve.Sure) SureSizes {
	return SureSizes{size(step, &s[0]), size(step, &s[1]), size(step, &s[2])}
}

// SureSize is a size and how far it may be off.
type SureSize struct {
	Nominal   Length    `json:"nominal" validate:"required"`
	WorstCase [2]Length `json:"worst_case" validate:"required,min=2,max=2"`
	RSS       [2]Length `json:"rss" validate:"required,min=2,max=2"` // root-sum-square of the errors, three standard deviations
}

func size(step measure.Step, s *solve.Sure) SureSize {
	return SureSize{exact(step, s.Nominal), span(step, s.WorstCase.Min, s.WorstCase.Max), span(step, s.RSS.Min, s.RSS.Max)}
}

// wholeMass is that of the paper of all layers; zero if that of one is unknown.
func wholeMass(p *solve.Portfolio) float64 {
	sum := 0.0
	for _, s := range p.Solutions {
		if s.Outside.Mass <= 0 {
			return 0
		}
		sum += s.Outside.Mass
	}
	return sum
}

// wholeProof is what folding all layers up has shown: the greatest gap, and the
// tolerance that it is to be held against.
func wholeProof(p *solve.Portfolio) solve.Proof {
	all := solve.Proof{Closes: true, Holds: true}
	for _, s := range p.Solutions {
		all.Closes, all.Holds = all.Closes && s.Proof.Closes, all.Holds && s.Proof.Holds
		if !s.Proof.Gap.Less(all.Gap) {
			all.Gap, all.Tolerance = s.Proof.Gap, s.Proof.Tolerance
		}
	}
	return all
}

// allWarnings are those of all layers, each named.
func allWarnings(p *solve.Portfolio) []enclosure.Warning {
	var all []enclosure.Warning
	for i, s := range p.Solutions {
		for _, w := range s.Warnings {
			w.Detail = p.Layers[i].Name() + ": " + w.Detail
			all = append(all, w)
		}
	}
	return all
}
