package wire

import (
	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// Mail is the answer of /v1/mail.
type Mail struct {
	Unit   string        `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given  Givens        `json:"given" validate:"required"`
	Words  string        `json:"words" validate:"required" example:"us: letter, nonmachinable; de: perhaps standardbrief"` // all in one line
	Posts  []PostVerdict `json:"posts" validate:"required"`
	Advice string        `json:"advice" validate:"required"`
	Links  MailLinks     `json:"links" validate:"required"`
	Voice  Voice         `json:"-"` // that the words are in
}

// mailAdvice stands in every answer about mailing.
const mailAdvice = "Confirm with your post office before mailing: rules change, and its own measuring decides."

// OfMail is what posts make of a piece.
func OfMail(list []mail.Judgement, in Voice, a *Asked) *Mail {
	posts := Each(list, func(j mail.Judgement) PostVerdict { return verdict(&j, in) })
	return &Mail{Unit: in.Unit.String(), Given: a.Given, Words: mailWords(posts, in), Posts: posts, Advice: in.Say(mailAdvice),
		Links: MailLinks{a.Self, "/v1/posts"}, Voice: in}
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

func verdict(j *mail.Judgement, in Voice) PostVerdict {
	v := PostVerdict{Post: j.Post.Name, Title: in.Say(j.Post.Title), Edition: in.Say(j.Post.Edition), Verdict: j.Verdict.String(),
		Limits: Each(j.Limits, func(f mail.Finding) MailStanding { return standing(&f, in) }), NotConfirmed: in.each(j.Post.NotConfirmed)}
	if j.Class != nil {
		v.Class, v.ClassTitle, v.Conditions = j.Class.Name, j.Class.Title, in.each(j.Class.Conditions)
	}
	if f, ok := j.Nearest(); ok {
		v.Nearest = new(standing(&f, in))
	}
	v.Surcharges = Each(j.Surcharges, func(d mail.Due) MailDue { return MailDue{d.Name, d.Certain, reasons(d.Limits, d.Rules, in)} })
	v.NotIn = Each(j.Refusals, func(r mail.Refusal) MailNotIn {
		return MailNotIn{r.Class.Name, r.Class.Title, reasons(r.Limits, r.Rules, in)}
	})
	v.Unknown = Each(j.Unknown, mail.Quantity.String)
	return v
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

// reasons joins limits and rules that a piece does not keep.
func reasons(limits []mail.Finding, rules []*mail.Rule, in Voice) []MailReason {
	return append(Each(limits, func(f mail.Finding) MailReason {
		s := standing(&f, in)
		return MailReason{s.Detail, f.Source, &s}
	}), Each(rules, func(r *mail.Rule) MailReason { return MailReason{in.Say("it " + r.Why), r.Source, nil} })...)
}

// MailStanding is a limit and how the piece stands to it.
type MailStanding struct {
	MailLimit
	State  string      `json:"state" validate:"required,oneof=inside unknown unsure disputed outside"`
	Detail string      `json:"detail" validate:"required" example:"the mass is 18 g (at most 20 g): 2 g left"`
	Value  *MailAmount `json:"value,omitempty"` // of the piece, if it is known
	Left   *MailAmount `json:"left,omitempty"`  // below nothing: so much beyond it
}

func standing(f *mail.Finding, in Voice) MailStanding {
	s := MailStanding{MailLimit: mailLimit(f.Limit, in), State: f.State.String(), Detail: standingWords(f, in)}
	if f.State != mail.Unknown {
		s.Value, s.Left = new(amount(f.Value, in)), new(amount(f.Left, in))
	}
	return s
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

func mailLimit(l *mail.Limit, in Voice) MailLimit {
	w := MailLimit{Of: l.Bound.Of().String(), Bound: "greatest", At: amount(l.Bound, in), Inclusive: !l.Open,
		Doubt: in.Say(l.Doubt), Confirmed: !l.Hearsay, Unless: mailLimits(l.Unless, in), Source: l.Source}
	if l.Least {
		w.Bound = "least"
	}
	if !l.Grace.IsZero() {
		w.Grace = new(amount(l.Grace, in))
	}
	return w
}

func mailLimits(list []mail.Limit, in Voice) []MailLimit {
	return Each(list, func(l mail.Limit) MailLimit { return mailLimit(&l, in) })
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

// amount is a length in both units, a mass in both, or a ratio.
func amount(a mail.Amount, in Voice) MailAmount {
	w := MailAmount{Text: amountText(a, in)}
	switch a.Of() {
	case mail.OfMass:
		w.G, w.Oz = new(round(a.Mass().Grams(), 4)), new(round(a.Mass().Ounces(), 4))
	case mail.OfRatio:
		w.Ratio = new(round(a.Ratio(), 4))
	default:
		w.In, w.MM = new(a.Length().Rounded(measure.Inch)), new(a.Length().Millimetres())
	}
	return w
}
