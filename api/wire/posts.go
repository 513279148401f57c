package wire

import "creasefit/internal/mail"

// PostList is the answer of /v1/posts.
type PostList struct {
	Posts []PostTable `json:"posts" validate:"required"`
}

// Posts are the tables of all posts, each in the unit of its rules.
func Posts(in Voice) PostList {
	return PostList{Each(mail.Posts(), func(p *mail.Post) PostTable {
		in := Voice{p.Unit, in.In}
		return PostTable{Name: p.Name, Title: in.Say(p.Title), Edition: in.Say(p.Edition), ByAddress: p.ByAddress, NotConfirmed: in.each(p.NotConfirmed),
			Classes: Each(p.Classes, func(c mail.Class) PostClass { return class(&c, in) })}
	})}
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

func class(c *mail.Class, in Voice) PostClass {
	return PostClass{Name: c.Name, Title: c.Title, Limits: mailLimits(c.Limits, in), Rules: rules(c.Rules, in), Conditions: in.each(c.Conditions),
		Surcharges: Each(c.Surcharges, func(s mail.Surcharge) PostSurcharge {
			return PostSurcharge{s.Name, mailLimits(s.Limits, in), rules(s.Rules, in)}
		})}
}

// PostRule is what keeps a piece out of a class, or makes it dearer, beside
// sizes and mass.
type PostRule struct {
	Detail string `json:"detail" validate:"required" example:"it is a box"`
	Source string `json:"source" validate:"required"`
}

func rules(list []mail.Rule, in Voice) []PostRule {
	return Each(list, func(r mail.Rule) PostRule { return PostRule{in.Say("it " + r.Why), r.Source} })
}

// PostSurcharge is due beyond any of its limits, and if any of its rules
// holds.
type PostSurcharge struct {
	Name   string      `json:"name" validate:"required" example:"nonmachinable"`
	Limits []MailLimit `json:"limits" validate:"required"`
	Rules  []PostRule  `json:"rules" validate:"required"`
}
