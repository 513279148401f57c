package api

// Mail is the answer of /v1/mail.
type Mail struct {
	Unit   string           `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given  map[string]Given `json:"given" validate:"required"`
	Words  string           `json:"words" validate:"required" example:"us: letter, nonmachinable; de: perhaps standardbrief"` // all in one line
	Posts  []PostVerdict    `json:"posts" validate:"required"`
	Advice string           `json:"advice" validate:"required"`
	Links  MailLinks        `json:"links" validate:"required"`
}

// MailLinks lead on from what posts make of a piece.
type MailLinks struct {
	Self  string `json:"self" validate:"required" example:"/v1/mail?unit=in&width=5in&height=7in"`
	Posts string `json:"posts" validate:"required" example:"/v1/posts"` // the tables
}

// PostVerdict is what one post makes of a piece.
type PostVerdict struct {
	Post         string         `json:"post" validate:"required" example:"us"`
	Title        string         `json:"title" validate:"required"`
	Edition      string         `json:"edition" validate:"required"`                               // that the table follows
	Verdict      string         `json:"verdict" validate:"required,oneof=takes may-take none"`     // may-take: a limit of the class is unsure or disputed
	Class        string         `json:"class,omitempty" example:"letter"`                          // the cheapest that takes it
	ClassTitle   string         `json:"class_title,omitempty" example:"Letter"`                    // as the post prints it
	Surcharges   []MailDue      `json:"surcharges" validate:"required"`                            // that the class takes it with
	Nearest      *MailStanding  `json:"nearest,omitempty"`                                         // the limit that it is nearest to, in parts of the limit
	Limits       []MailStanding `json:"limits" validate:"required"`                                // of the class
	NotIn        []MailNotIn    `json:"not_in" validate:"required"`                                // the cheaper classes, or all
	Unknown      []string       `json:"unknown" validate:"required,dive,oneof=thickness sum mass"` // what limits of the class need and the request does not say
	Conditions   []string       `json:"conditions" validate:"required"`                            // of the class, which were not checked
	NotConfirmed []string       `json:"not_confirmed" validate:"required"`                         // what the table does not have, or not for certain
}

// MailDue is a surcharge.
type MailDue struct {
	Name    string       `json:"name" validate:"required" example:"nonmachinable"`
	Certain bool         `json:"certain" validate:"required"` // else it depends on what is unsure or disputed
	Reasons []MailReason `json:"reasons" validate:"required"`
}

// MailNotIn is a class that does not take the piece.
type MailNotIn struct {
	Class   string       `json:"class" validate:"required" example:"postcard"`
	Title   string       `json:"title" validate:"required" example:"Postcard"`
	Reasons []MailReason `json:"reasons" validate:"required"`
}

// MailReason is a limit or a rule that the piece does not keep.
type MailReason struct {
	Detail string        `json:"detail" validate:"required" example:"the thickness is 7 mm (at most 5 mm): 2 mm over"`
	Source string        `json:"source" validate:"required"`
	Limit  *MailStanding `json:"limit,omitempty"` // none: it is no matter of size or mass
}

// MailStanding is a limit and how the piece stands to it.
type MailStanding struct {
	MailLimit
	State  string      `json:"state" validate:"required,oneof=inside unknown unsure disputed outside"`
	Detail string      `json:"detail" validate:"required" example:"the mass is 18 g (at most 20 g): 2 g left"`
	Value  *MailAmount `json:"value,omitempty"` // of the piece, if it is known
	Left   *MailAmount `json:"left,omitempty"`  // below nothing: so much beyond it
}

// MailLimit is one bound of a class.
type MailLimit struct {
	Of        string      `json:"of" validate:"required,oneof=length height longer-side shorter-side thickness sum mass ratio" example:"thickness"`
	Bound     string      `json:"bound" validate:"required,oneof=least greatest" example:"greatest"`
	At        MailAmount  `json:"at" validate:"required"`
	Inclusive bool        `json:"inclusive" validate:"required"` // the bound itself is taken
	Grace     *MailAmount `json:"grace,omitempty"`               // between at and this it is disputed
	Doubt     string      `json:"doubt,omitempty"`               // why
	Confirmed bool        `json:"confirmed" validate:"required"` // else it keeps nothing out
	Unless    []MailLimit `json:"unless,omitempty"`              // it is waived for what is within all of these
	Source    string      `json:"source" validate:"required"`
}

// MailAmount is a length, a mass or a ratio.
type MailAmount struct {
	Text  string   `json:"text" validate:"required" example:"1/4 in"`
	In    *float64 `json:"in,omitempty" example:"0.25"`
	MM    *float64 `json:"mm,omitempty" example:"6.35"`
	Oz    *float64 `json:"oz,omitempty" example:"3.5"`
	G     *float64 `json:"g,omitempty" example:"99.2233"`
	Ratio *float64 `json:"ratio,omitempty" example:"1.3"`
}

// PostList is the answer of /v1/posts.
type PostList struct {
	Posts []PostTable `json:"posts" validate:"required"`
}

// PostTable is the size classes of one post.
type PostTable struct {
	Name         string      `json:"name" validate:"required" example:"us"`
	Title        string      `json:"title" validate:"required"`
	Edition      string      `json:"edition" validate:"required"`
	ByAddress    bool        `json:"by_address" validate:"required"` // the length is the side that the address reads along
	Classes      []PostClass `json:"classes" validate:"required"`    // the cheapest first
	NotConfirmed []string    `json:"not_confirmed" validate:"required"`
}

// PostClass is one size class.
type PostClass struct {
	Name       string          `json:"name" validate:"required" example:"letter"`
	Title      string          `json:"title" validate:"required" example:"Letter"`
	Limits     []MailLimit     `json:"limits" validate:"required"`
	Rules      []PostRule      `json:"rules" validate:"required"`
	Surcharges []PostSurcharge `json:"surcharges" validate:"required"`
	Conditions []string        `json:"conditions" validate:"required"`
}

// PostRule is what keeps a piece out of a class, or makes it dearer, beside
// sizes and mass.
type PostRule struct {
	Detail string `json:"detail" validate:"required" example:"it is a box"`
	Source string `json:"source" validate:"required"`
}

// PostSurcharge is due beyond any of its limits, and if any of its rules
// holds.
type PostSurcharge struct {
	Name   string      `json:"name" validate:"required" example:"nonmachinable"`
	Limits []MailLimit `json:"limits" validate:"required"`
	Rules  []PostRule  `json:"rules" validate:"required"`
}
