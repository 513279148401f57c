package api

// Check is the answer of /v1/check/{kind}.
type Check struct {
	Kind     string           `json:"kind" validate:"required" example:"slotted-band"`
	Unit     string           `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given    map[string]Given `json:"given" validate:"required"`
	Works    bool             `json:"works" validate:"required"` // all adds up, closes and holds the contents
	Words    string           `json:"words" validate:"required" example:"It closes, and the contents go in: width snug."`
	Closures []Closure        `json:"closures" validate:"required"`
	Limits   []Limit          `json:"limits" validate:"required"`
	Fit      []Fit            `json:"fit" validate:"required"`
	Proof    Proof            `json:"proof" validate:"required"`
	Findings []string         `json:"findings" validate:"required"` // what the fold proof says against it
	Mend     []Change         `json:"mend" validate:"required"`     // the smallest change that mends it
	Greatest Greatest         `json:"greatest" validate:"required"`
	Warnings []Warning        `json:"warnings" validate:"required"`
	Links    Links            `json:"links" validate:"required"`
}

// Closure is a sum that must be zero.
type Closure struct {
	Name string `json:"name" validate:"required" example:"halves"`
	Off  Length `json:"off" validate:"required"`
}

// Limit is a bound on something other than a clearance.
type Limit struct {
	Name    string   `json:"name" validate:"required" example:"slit"`
	Allowed []Length `json:"allowed" validate:"required,min=2,max=2"`
	Value   Length   `json:"value" validate:"required"`
}

// Change is one size and what it should become.
type Change struct {
	Name string `json:"name" validate:"required" example:"right front"`
	From Length `json:"from" validate:"required"`
	To   Length `json:"to" validate:"required"`
}

// Greatest is the largest contents that go in with the least clearance wanted,
// each size with the others as they are.
type Greatest struct {
	Width     *Length `json:"width,omitempty"`
	Height    *Length `json:"height,omitempty"`
	Thickness *Length `json:"thickness,omitempty"`
}
