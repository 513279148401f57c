package api

// Portfolio is the answer of /v1/solve/portfolio.
type Portfolio struct {
	Kind     string           `json:"kind" validate:"required,oneof=portfolio" example:"portfolio"`
	Unit     string           `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given    map[string]Given `json:"given" validate:"required"`
	Layers   []PortfolioLayer `json:"layers" validate:"required"` // the innermost first
	Pieces   []Piece          `json:"pieces" validate:"required"` // of all layers
	Chain    []ChainLink      `json:"chain" validate:"required"`  // how errors add up from layer to layer
	Outside  Outside          `json:"outside" validate:"required"`
	Proof    Proof            `json:"proof" validate:"required"` // of all layers: the greatest gap
	Warnings []Warning        `json:"warnings" validate:"required"`
	Links    Links            `json:"links" validate:"required"`
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

// SureSize is a size and how far it may be off.
type SureSize struct {
	Nominal   Length   `json:"nominal" validate:"required"`
	WorstCase []Length `json:"worst_case" validate:"required,min=2,max=2"`
	RSS       []Length `json:"rss" validate:"required,min=2,max=2"` // root-sum-square of the errors, three standard deviations
}
