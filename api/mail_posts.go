package api

import (
	"github.com/labstack/echo/v4"

	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// listPosts answers with the size classes of the posts.
//
//	@Summary	Posts and their size classes
//	@ID			posts
//	@Tags		presets
//	@Produce	json
//	@Success	200	{object}	PostList
//	@Header		200	{string}	ETag	"strong"
//	@Produce	application/problem+json
//	@Failure	400,414,429,500,503	{object}	Problem
//	@Produce	json
//	@Router		/v1/posts [get]
func (s *Service) listPosts(c echo.Context) error { return s.lists.posts.serve(s, c, "") }

// describePosts is the posts as they are listed, each in the unit of its rules.
func describePosts() PostList {
	var list PostList
	for _, p := range mail.Posts() {
		t := PostTable{Name: p.Name, Title: p.Title, Edition: p.Edition, ByAddress: p.ByAddress, NotConfirmed: p.NotConfirmed}
		for i := range p.Classes {
			t.Classes = append(t.Classes, describeClass(&p.Classes[i], p.Unit))
		}
		list.Posts = append(list.Posts, t)
	}
	return list
}

// describeClass is one class as it is listed.
func describeClass(c *mail.Class, unit measure.Unit) PostClass {
	d := PostClass{Name: c.Name, Title: c.Title, Limits: wireLimits(c.Limits, unit), Rules: describeRules(c.Rules),
		Surcharges: []PostSurcharge{}, Conditions: append([]string{}, c.Conditions...)}
	for _, s := range c.Surcharges {
		d.Surcharges = append(d.Surcharges, PostSurcharge{s.Name, wireLimits(s.Limits, unit), describeRules(s.Rules)})
	}
	return d
}

// describeRules is rules as they are listed.
func describeRules(rules []mail.Rule) []PostRule {
	list := make([]PostRule, len(rules))
	for i, r := range rules {
		list[i] = PostRule{"it " + r.Why, r.Source}
	}
	return list
}
