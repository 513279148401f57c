package wire

// KindList is the answer of /v1/kinds.
type KindList struct {
	Kinds      []KindSummary `json:"kinds" validate:"required"`
	Assemblies []KindSummary `json:"assemblies" validate:"required"` // of several kinds
}

// KindSummary is one kind in the catalogue.
type KindSummary struct {
	Name  string `json:"name" validate:"required" example:"slotted-band"`
	Title string `json:"title" validate:"required"`
	Help  string `json:"help" validate:"required"`
	Link  string `json:"link" validate:"required" example:"/v1/kinds/slotted-band"`
}

// Kind is the answer of /v1/kinds/{kind}.
type Kind struct {
	Name       string      `json:"name" validate:"required" example:"slotted-band"`
	Title      string      `json:"title" validate:"required"`
	Help       string      `json:"help" validate:"required"`
	Needs      []string    `json:"needs" validate:"required"` // sizes of the contents that it cannot do without
	Parameters []Parameter `json:"parameters" validate:"required"`
	Links      KindLinks   `json:"links" validate:"required"`
}

// KindLinks lead on from a kind.
type KindLinks struct {
	Self  string `json:"self" validate:"required"`
	Solve string `json:"solve" validate:"required"`
}

// Parameter is one name that calculations about a kind know.
type Parameter struct {
	Name      string            `json:"name" validate:"required" example:"tab"`
	Type      string            `json:"type" validate:"required,oneof=length size step choice preset count number text object"`
	About     string            `json:"about" validate:"required,oneof=calculation answer"` // what is computed, or how it is answered
	Help      string            `json:"help" validate:"required"`
	Example   string            `json:"sample" validate:"required" example:"1/2 in"`      // a value that is taken
	Unit      string            `json:"unit,omitempty" validate:"omitempty,oneof=length"` // length: in or mm
	Default   *ParameterDefault `json:"default,omitempty"`                                // none: not taken, or worked out
	Least     *Bound            `json:"least,omitempty"`
	Greatest  *Bound            `json:"greatest,omitempty"`
	Choices   []string          `json:"choices,omitempty"`
	Catalogue string            `json:"catalogue,omitempty" example:"/v1/contents"` // where the words that are taken are listed
	Words     []string          `json:"-"`                                          // those words, for the specification
	Forms     []Form            `json:"-"`                                          // the shapes of an object, for the specification
	Most      int               `json:"-"`                                          // values of a list, for the specification
	Longest   int               `json:"-"`                                          // characters of a text, for the specification
	List      bool              `json:"list" validate:"required"`                   // may be given several times
	Advanced  bool              `json:"advanced" validate:"required"`               // seldom needed
}

// Form is one shape of an object.
type Form struct {
	Help     string
	Members  []Parameter
	Required []string
	Short    string // the member that a plain text stands for; empty for none
	Open     bool   // further members are taken
}

// ParameterDefault is what is taken when a name is left out, on inch and on
// millimetre rulers.
type ParameterDefault struct {
	In string `json:"in" validate:"required" example:"1/2 in"`
	MM string `json:"mm" validate:"required" example:"15 mm"`
}

// Bound is a least or greatest value: of a length in both units, or a number.
type Bound struct {
	In     *float64 `json:"in,omitempty" example:"0.11811"`
	MM     *float64 `json:"mm,omitempty" example:"3"`
	Number *float64 `json:"number,omitempty"`
}
