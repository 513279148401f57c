package api

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

// ContentsList is the answer of /v1/contents.
type ContentsList struct {
	Contents []ContentsPreset `json:"contents" validate:"required"`
}

// ContentsPreset is one thing that goes inside.
type ContentsPreset struct {
	Name               string  `json:"name" validate:"required" example:"id-1"`
	Title              string  `json:"title" validate:"required"`
	Width              Length  `json:"width" validate:"required"`
	Height             Length  `json:"height" validate:"required"`
	Thickness          *Length `json:"thickness,omitempty"` // none: the request must say
	SizeTolerance      *Length `json:"size_tolerance,omitempty"`
	ThicknessTolerance *Length `json:"thickness_tolerance,omitempty"`
	Source             string  `json:"source" validate:"required"`
	Invented           bool    `json:"invented" validate:"required"` // made up for the examples
}

// StockList is the answer of /v1/stocks.
type StockList struct {
	Stocks []StockPreset `json:"stocks" validate:"required"`
}

// StockPreset is one paper.
type StockPreset struct {
	Name             string   `json:"name" validate:"required" example:"index-110"`
	Title            string   `json:"title" validate:"required"`
	Caliper          Length   `json:"caliper" validate:"required"`
	CaliperTolerance *Length  `json:"caliper_tolerance,omitempty"`
	Estimated        bool     `json:"estimated" validate:"required"` // ought to be measured
	CaliperRange     []Length `json:"caliper_range" validate:"required,min=2,max=2"`
	Grammage         *float64 `json:"grammage,omitempty" example:"200"` // g/m2
	Source           string   `json:"source" validate:"required"`
}

// SheetList is the answer of /v1/sheets/sizes.
type SheetList struct {
	Sheets []SheetPreset `json:"sheets" validate:"required"`
}

// SheetPreset is one size that paper is sold in.
type SheetPreset struct {
	Name   string `json:"name" validate:"required" example:"letter"`
	Title  string `json:"title" validate:"required"`
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Source string `json:"source" validate:"required"`
}

// BenchList is the answer of /v1/benches.
type BenchList struct {
	Benches []BenchPreset `json:"benches" validate:"required"`
}

// BenchPreset is one way of cutting and scoring.
type BenchPreset struct {
	Name           string `json:"name" validate:"required" example:"hand"`
	Title          string `json:"title" validate:"required"`
	CutTolerance   Length `json:"cut_tolerance" validate:"required"`
	ScoreTolerance Length `json:"score_tolerance" validate:"required"`
	Source         string `json:"source" validate:"required"`
}

// Limits is the answer of /v1/limits.
type Limits struct {
	URL            int   `json:"url_bytes" validate:"required" example:"8000"`
	Names          int   `json:"names" validate:"required" example:"64"`
	Value          int   `json:"value_characters" validate:"required" example:"64"`
	Body           int64 `json:"body_bytes" validate:"required" example:"65536"`
	YieldBody      int64 `json:"yield_body_bytes" validate:"required" example:"1048576"`
	Items          int   `json:"yield_items" validate:"required" example:"200"`
	Pieces         int   `json:"yield_pieces" validate:"required" example:"100000"`
	EffortMillis   int64 `json:"yield_effort_ms" validate:"required" example:"10000"`
	Planning       int   `json:"planning" validate:"required" example:"8"` // orders planned at once
	Depth          int   `json:"json_depth" validate:"required" example:"16"`
	Lengths        int   `json:"ruler_lengths" validate:"required" example:"50"`
	SolveMillis    int64 `json:"solve_ms" validate:"required" example:"250"`
	RequestMillis  int64 `json:"request_ms" validate:"required" example:"10000"`
	Running        int   `json:"running" validate:"required" example:"64"`
	Waiting        int   `json:"waiting" validate:"required" example:"256"`
	ReportedAtOnce int   `json:"errors_at_once" validate:"required" example:"20"`
}

// Ruler is the answer of /v1/ruler.
type Ruler struct {
	Unit    string        `json:"unit" validate:"required,oneof=in mm" example:"mm"`
	Lengths []RulerLength `json:"lengths" validate:"required"`
	Links   SelfLink      `json:"links" validate:"required"`
}

// RulerLength is one length on every ruler.
type RulerLength struct {
	Text     string         `json:"text" validate:"required" example:"92.1 mm"` // as given
	MM       float64        `json:"mm" validate:"required" example:"92.1"`
	In       float64        `json:"in" validate:"required" example:"3.625984"`
	Readings []RulerReading `json:"readings" validate:"required"`
}

// RulerReading is the nearest mark of one ruler.
type RulerReading struct {
	Step string `json:"step" validate:"required" example:"1/8 in"`
	At   Length `json:"at" validate:"required"`
}

// SelfLink is the canonical address of an answer.
type SelfLink struct {
	Self string `json:"self" validate:"required"`
}

// Paper is the answer of /v1/stock.
type Paper struct {
	Caliper           Length        `json:"caliper" validate:"required"`
	CaliperEstimated  bool          `json:"caliper_estimated" validate:"required"`
	CaliperRange      []Length      `json:"caliper_range" validate:"required,min=2,max=2"`
	Grammage          float64       `json:"grammage" validate:"required" example:"216.33"` // g/m2
	GrammageEstimated bool          `json:"grammage_estimated" validate:"required"`
	GrammageRange     []float64     `json:"grammage_range" validate:"required,min=2,max=2"`
	Density           float64       `json:"density" validate:"required" example:"0.8"` // g/cm3
	Unlikely          bool          `json:"unlikely" validate:"required"`              // no paper has such a density
	BasisWeights      []BasisWeight `json:"basis_weights" validate:"required"`
	SheetMass         *float64      `json:"sheet_mass,omitempty"` // grams
	ReamMass          *float64      `json:"ream_mass,omitempty"`  // kilograms of 500 sheets
	Source            string        `json:"source,omitempty"`     // of a named stock
	Links             SelfLink      `json:"links" validate:"required"`
}

// BasisWeight is how heavy the paper is in one grade's terms.
type BasisWeight struct {
	Grade  string  `json:"grade" validate:"required" example:"cover"`
	Basis  string  `json:"basis" validate:"required" example:"500 sheets of 20 x 26 in"`
	Pounds float64 `json:"pounds" validate:"required" example:"80"`
}
