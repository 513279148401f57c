package api

// The types of this file are the shapes of answers. The specification is
// generated from them, tests decode answers into them, and a Go client may.
// Tags named validate say what a caller may rely on.

// Length is one measure as every answer gives it.
type Length struct {
	Reading string  `json:"reading" validate:"required" example:"3 5/8 in"` // what to set on the ruler
	In      float64 `json:"in" validate:"required" example:"3.625"`         // the same in inches, rounded to a millionth
	MM      float64 `json:"mm" validate:"required" example:"92.075"`        // the same in millimetres, exact
	ExactMM float64 `json:"exact_mm" validate:"required" example:"91.91"`   // on an endlessly fine ruler
	OffMM   float64 `json:"off_mm" validate:"required" example:"0.165"`     // reading minus ideal
}

// Given is how one value of the request was understood.
type Given struct {
	Text string   `json:"text" validate:"required" example:"3 1/2 in"`                               // as given, or as filled in
	MM   *float64 `json:"mm,omitempty" example:"88.9"`                                               // of a length
	In   *float64 `json:"in,omitempty" example:"3.5"`                                                // of a length
	From string   `json:"from,omitempty" validate:"omitempty,oneof=contents stock grammage default"` // where it comes from, if not from the request
}

// Solution is the answer of /v1/solve/{kind}.
type Solution struct {
	Kind         string           `json:"kind" validate:"required" example:"slotted-band"`
	Unit         string           `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Step         string           `json:"step" validate:"required" example:"1/8 in"` // all readings are multiples of it
	Given        map[string]Given `json:"given" validate:"required"`
	Pieces       []Piece          `json:"pieces" validate:"required"`
	Fit          []Fit            `json:"fit" validate:"required"`
	Alternatives []Alternative    `json:"alternatives" validate:"required"` // finer steps
	Outside      Outside          `json:"outside" validate:"required"`
	Proof        Proof            `json:"proof" validate:"required"`
	Warnings     []Warning        `json:"warnings" validate:"required"`
	Ornament     *Ornament        `json:"ornament,omitempty"` // of a slotted band's closure, if one was asked for
	Yield        *Yields          `json:"yield,omitempty"`    // of the sheet, if the request names one
	Links        Links            `json:"links" validate:"required"`
}

// Yields is how the pieces come out of the request's sheet.
type Yields struct {
	Sheet  Blank        `json:"sheet" validate:"required"`
	Pieces []PieceYield `json:"pieces" validate:"required"`
}

// PieceYield is how one piece comes out of the sheet, in cuts from edge to
// edge. Of more than a hundred blanks the number is absent: the link counts
// them.
type PieceYield struct {
	Piece    string   `json:"piece" validate:"required" example:"band"`
	PerSheet *int     `json:"per_sheet,omitempty" example:"8"`
	Turned   *int     `json:"turned,omitempty" example:"2"` // so many lie with their width along the sheet's height
	Used     *float64 `json:"used,omitempty" example:"0.80"`
	Folds    string   `json:"folds,omitempty" validate:"omitempty,oneof=along across"` // how the main folds lie to the grain, if both are known
}

// Ornament is a shape that is cut in half along its middle and glued half and
// half over the closure of a slotted band, each half to the tab on its side.
type Ornament struct {
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

// Piece is one part of the enclosure.
type Piece struct {
	Name     string  `json:"name" validate:"required" example:"band"`
	Layer    string  `json:"layer,omitempty" example:"tray"` // of a portfolio
	Quantity int     `json:"quantity" validate:"required,min=1" example:"1"`
	Blank    Blank   `json:"blank" validate:"required"`
	Panels   []Panel `json:"panels" validate:"required"`
	Scores   []Score `json:"scores" validate:"required"` // from the left, or from the bottom
	Cuts     []Cut   `json:"cuts" validate:"required"`
}

// Blank is the rectangle that a piece is cut from.
type Blank struct {
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
}

// Panel is one size along an edge of the blank.
type Panel struct {
	Name   string `json:"name" validate:"required" example:"left tab"`
	Across string `json:"across" validate:"required,oneof=width height diagonal"`
	Size   Length `json:"size" validate:"required"`
}

// Score is a pressed line across the blank.
type Score struct {
	Name   string  `json:"name" validate:"required" example:"score 1"`
	Across string  `json:"across" validate:"required,oneof=width height diagonal"`
	At     Length  `json:"at" validate:"required"`
	From   string  `json:"from" validate:"required,oneof=left bottom"`
	Fold   string  `json:"fold" validate:"required,oneof=valley mountain"`
	Angle  float64 `json:"angle" validate:"required" example:"90"` // degrees folded when closed
	Or     *Turned `json:"or,omitempty"`                           // plainer when the blank is turned end for end
}

// Turned is a score measured from the opposite edge.
type Turned struct {
	At   Length `json:"at" validate:"required"`
	From string `json:"from" validate:"required,oneof=right top"`
}

// Cut is a cut inside the blank.
type Cut struct {
	Name  string  `json:"name" validate:"required" example:"left slit"`
	Kind  string  `json:"kind" validate:"required,oneof=slit slot notch window relief"`
	On    string  `json:"on,omitempty" example:"score 1"` // the score that it lies on
	At    *Length `json:"at,omitempty"`                   // where it lies, if on no score, from the left or the bottom
	From  string  `json:"from" validate:"required,oneof=top bottom left right"`
	Depth Length  `json:"depth" validate:"required"`
	Width Length  `json:"width" validate:"required"` // zero for a slit
}

// Fit is how the contents go in along one axis.
type Fit struct {
	Axis      string   `json:"axis" validate:"required,oneof=width height thickness diagonal"`
	Between   string   `json:"between,omitempty" example:"lid over tray"` // which pieces, if not the contents and what holds them
	Verdict   string   `json:"verdict" validate:"required,oneof=tight snug easy loose slack"`
	Window    []Length `json:"window" validate:"required,min=2,max=2"` // the clearance that was asked for
	Nominal   Length   `json:"nominal" validate:"required"`
	WorstCase []Length `json:"worst_case" validate:"required,min=2,max=2"`
	RSS       []Length `json:"rss" validate:"required,min=2,max=2"`                    // root-sum-square of the errors, three standard deviations
	Chance    float64  `json:"chance" validate:"required,min=0,max=1" example:"0.993"` // that it goes in
}

// Alternative is the answer at a finer step.
type Alternative struct {
	Step string `json:"step" validate:"required" example:"1/16 in"`
	Gain string `json:"gain" validate:"required"`
	Fit  []Fit  `json:"fit" validate:"required"`
	Link string `json:"link" validate:"required"`
}

// Outside is the size of the closed enclosure with the contents inside.
type Outside struct {
	Width     Length   `json:"width" validate:"required"`
	Height    Length   `json:"height" validate:"required"`
	Thickness Length   `json:"thickness" validate:"required"`
	Mass      *float64 `json:"mass_g,omitempty" example:"3.1"` // of the paper alone
}

// Proof is what folding the flat pattern up has shown.
type Proof struct {
	Closes    bool    `json:"closes" validate:"required"`
	Gap       float64 `json:"gap_mm" validate:"required"`
	Tolerance float64 `json:"tolerance_mm" validate:"required"` // the gap that still closes
	Holds     bool    `json:"holds" validate:"required"`        // the contents stand inside without touching
}

// Warning is something the maker should know.
type Warning struct {
	Code   string `json:"code" validate:"required" example:"estimated-caliper"`
	Detail string `json:"detail" validate:"required"`
	// Try is the address of a calculation without the warning, if one is known.
	Try string `json:"try,omitempty" example:"/v1/solve/sleeve?unit=in&join=two-pieces"`
}

// Links lead on from a solution.
type Links struct {
	Self string `json:"self" validate:"required" example:"/v1/solve/slotted-band?unit=in"`
	Kind string `json:"kind" validate:"required" example:"/v1/kinds/slotted-band"`
	// Drawing and Guide are of the same request; a check has none.
	Drawing string `json:"drawing,omitempty" example:"/v1/drawing/slotted-band?unit=in"`
	Guide   string `json:"guide,omitempty" example:"/v1/guide/slotted-band?unit=in"`
	// Mail asks posts about the outside, without a mass: that of the contents is not known.
	Mail string `json:"mail,omitempty" example:"/v1/mail?unit=in&width=3-3/4in&height=5in&thickness=1/8in"`
	// Yield is the cut plan of the pieces, if the request names a sheet.
	Yield string `json:"yield,omitempty" example:"/v1/yield?unit=in&sheet=letter&blank=8-1/4inx1-3/4in"`
}

// Problem is an answer that is none (RFC 9457).
type Problem struct {
	Type      string    `json:"type" validate:"required" example:"/problems/unreadable"`
	Title     string    `json:"title" validate:"required"`
	Status    int       `json:"status" validate:"required" example:"400"`
	Detail    string    `json:"detail" validate:"required"`
	Errors    []Invalid `json:"errors" validate:"required,max=20"`
	NotListed int       `json:"not_listed,omitempty"` // further errors
	Try       string    `json:"try,omitempty"`        // a corrected address, if one can be guessed
}

// Invalid is one thing that is wrong with a request.
type Invalid struct {
	Code     string `json:"code" validate:"required" example:"unreadable"`
	Name     string `json:"name,omitempty" example:"width"`
	Value    string `json:"value,omitempty" example:"3 5/7 in"` // as given, cut at 64 characters
	Detail   string `json:"detail,omitempty"`
	Expected string `json:"expected,omitempty"`
	Hint     string `json:"hint,omitempty"`
}
