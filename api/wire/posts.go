package wire

import (
	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// PostList is the answer of /v1/posts.
type PostList struct {
	Posts []PostTable `json:"posts" validate:"required"`
}

// Posts are the tables of all posts, each in the unit of its rules.
func Posts() PostList {
	var list PostList
	for _, p := range mail.Posts() {
		t := PostTable{Name: p.Name, Title: p.Title, Edition: p.Edition, ByAddress: p.ByAddress, NotConfirmed: p.NotConfirmed}
		for i := range p.Classes {
			t.Classes = append(t.Classes, class(&p.Classes[i], p.Unit))
		}
		list.Posts = append(list.Posts, t)
	}
	return list
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

func class(c *mail.Class, unit measure.Unit) PostClass {
	d := PostClass{Name: c.Name, Title: c.Title, Limits: mailLimits(c.Limits, unit), Rules: rules(c.Rules), Conditions: c.Conditions}
	for _, s := range c.Surcharges {
		d.Surcharges = append(d.Surcharges, PostSurcharge{s.Name, mailLimits(s.Limits, unit), rules(s.Rules)})
	}
	return d
}

// PostRule is what keeps a piece out of a class, or makes it dearer, beside
// sizes and mass.
type PostRule struct {
	Detail string `json:"detail" validate:"required" example:"it is a box"`
	Source string `json:"source" validate:"required"`
}

func rules(list []mail.Rule) []PostRule {
	rules := make([]PostRule, len(list))
	for i, r := range list {
		rules[i] = PostRule{"it " + r.Why, r.Source}
	}
	return rules
}

// PostSurcharge is due beyond any of its limits, and if any of its rules
// holds.
type PostSurcharge struct {
	Name   string      `json:"name" validate:"required" example:"nonmachinable"`
	Limits []MailLimit `json:"limits" validate:"required"`
	Rules  []PostRule  `json:"rules" validate:"required"`
}
