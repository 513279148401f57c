package wire

import "creasefit/internal/solve"

// PortfolioCheck is the answer of /v1/check/portfolio.
type PortfolioCheck struct {
	Kind   string       `json:"kind" validate:"required,oneof=portfolio" example:"portfolio"`
	Unit   string       `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given  Givens       `json:"given" validate:"required"`
	Works  bool         `json:"works" validate:"required"` // every layer does, round the one before
	Words  string       `json:"words" validate:"required" example:"Every layer closes and goes round the one before."`
	Layers []LayerCheck `json:"layers" validate:"required"` // the innermost first
	Chain  []ChainLink  `json:"chain" validate:"required"`  // how errors add up from layer to layer, folded up as measured
	Sure   Sure         `json:"sure" validate:"required"`   // that all layers go together
	Links  Links        `json:"links" validate:"required"`
}

// LayerCheck is what a layer as measured comes to.
type LayerCheck struct {
	Name string `json:"name" validate:"required" example:"tray"` // its kind, numbered where one comes again
	Check
}

// OfPortfolioCheck is the answer to somebody's own measurements of several
// enclosures; alone asks for one of the layers by itself.
func OfPortfolioCheck(p *solve.PortfolioCheck, a *Asked, alone func(layer int) *Asked) *PortfolioCheck {
	answer := &PortfolioCheck{
		Kind: PortfolioName, Unit: p.Checks[0].Request.Unit.String(), Given: a.Given, Works: p.Works,
		Words: "Every layer closes and goes round the one before.", Sure: sureOfAll(p.Portfolio),
		Links: Links{Self: a.Self, Kind: "/v1/kinds/" + PortfolioName},
	}
	for i, c := range p.Checks {
		name := p.Layers[i].Name()
		if !c.Works && answer.Words[0] == 'E' {
			answer.Words = "The " + name + " does not work as measured."
		}
		answer.Layers = append(answer.Layers, LayerCheck{name, *OfCheck(c, alone(i))})
		answer.Chain = append(answer.Chain, link(name, p.Solutions[i], &p.Chain[i]))
	}
	return answer
}
