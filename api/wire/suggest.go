package wire

import (
	"math"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/mail"
	"creasefit/internal/solve"
)

// Suggestions is the answer of /v1/suggest.
type Suggestions struct {
	Unit    string       `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given   Givens       `json:"given" validate:"required"`
	Works   int          `json:"works" validate:"required" example:"11"` // how many kinds work; they stand first
	Kinds   []Suggestion `json:"kinds" validate:"required"`              // the best first
	Designs []Suggestion `json:"designs" validate:"required"`            // of /v1/designs that work, the best first, without pictures
	Links   SelfLink     `json:"links" validate:"required"`
	Voice   Voice        `json:"-"` // that the words are in; those of what does not work are a problem's
}

// Suggestion is what one kind comes to for the thing. From step on there is
// nothing of a kind that does not work.
type Suggestion struct {
	Kind    string   `json:"kind" validate:"required" example:"slotted-band"`
	Title   string   `json:"title" validate:"required" example:"Slotted belly band"`
	Works   bool     `json:"works" validate:"required"`
	Why     []Reason `json:"why" validate:"required"`    // what speaks for its place or, if it does not work, what keeps it from that
	Missed  []string `json:"missed" validate:"required"` // wishes that it does not keep
	Step    string   `json:"step,omitempty" example:"1/8 in"`
	Chance  *float64 `json:"chance,omitempty" example:"0.974"` // that all of it goes together
	Blank   *Blank   `json:"blank,omitempty"`                  // of its largest piece
	Pieces  int      `json:"pieces,omitempty" example:"1"`     // how many there are to cut
	Sheets  *int     `json:"sheets,omitempty" example:"1"`     // that one of it takes, 0 if a blank is larger; absent if no sheet is named
	Strokes int      `json:"strokes,omitempty" example:"8"`    // cuts and scores
	Minutes float64  `json:"minutes,omitempty" example:"5.5"`  // for them, at 40 seconds a stop and 15 each
	Outside *Outside `json:"outside,omitempty"`
	Post    *Posted  `json:"post,omitempty"`    // if one was named
	Picture string   `json:"picture,omitempty"` // SVG of the finished enclosure, if pictures were asked for
	Link    string   `json:"link" validate:"required" example:"/v1/solve/slotted-band?unit=in&width=3-1/2in"`
}

// Reason is one thing that speaks for or against a kind. Its code is that of a
// problem, or one of sure, unsure, glue, no-glue, reusable, sealed, sheets,
// beyond-sheet, cuts and inside.
type Reason struct {
	Code     string `json:"code" validate:"required" example:"impossible"`
	Name     string `json:"name,omitempty" example:"thickness"` // that it is about
	Detail   string `json:"detail" validate:"required" example:"one score at each side does not go round contents that thick"`
	Expected string `json:"expected,omitempty" example:"at most 1/8 in"`
	Hint     string `json:"hint,omitempty"`
}

// Posted is what the post makes of the finished piece without its mass, which is
// not known.
type Posted struct {
	Post    string `json:"post" validate:"required" example:"us"`
	Verdict string `json:"verdict" validate:"required,oneof=takes may-take none"`
	Class   string `json:"class,omitempty" example:"letter"`
	Advice  string `json:"advice" validate:"required" example:"Confirm with your post office before mailing: rules change, and its own measuring decides."`
}

// OfSuggestions are kinds in their order; link is the address of a kind's solve
// and picture its picture, empty if none is wanted.
func OfSuggestions(list, designs []solve.Suggestion, in Voice, a *Asked, link func(*enclosure.Kind) string, picture func(*solve.Solution) string) *Suggestions {
	all := &Suggestions{Unit: in.Unit.String(), Given: a.Given, Links: SelfLink{a.Self}, Voice: in}
	all.Designs = Each(designs, func(g solve.Suggestion) Suggestion {
		w := suggestion(&g, in)
		w.Link = link(g.Kind)
		return w
	})
	for i := range list {
		g := suggestion(&list[i], in)
		if g.Link = link(list[i].Kind); g.Works {
			g.Picture = picture(list[i].Solution)
			all.Works++
		}
		all.Kinds = append(all.Kinds, g)
	}
	return all
}

func suggestion(g *solve.Suggestion, in Voice) Suggestion {
	w := Suggestion{Kind: g.Kind.Name, Title: in.Say(g.Kind.Title)}
	w.Missed = Each(g.Missed, func(m solve.Wish) string { return string(m) })
	s := g.Solution
	if s == nil {
		w.Why = Each(g.Why, func(f fault.Fault) Reason { return Reason{string(f.Code), f.Field, f.Detail, f.Expected, f.Hint} })
		return w
	}
	w.Works, w.Why, w.Post = true, forIt(g, in), posted(g.Post, in)
	w.Step, w.Chance, w.Outside = s.Step.String(), new(round(s.Sure.Chance, 4)), new(outside(s))
	w.Blank, w.Pieces = largest(s)
	w.Strokes, w.Minutes = g.Strokes, round(g.Work.Minutes(), 2)
	if !s.Request.SheetWidth.IsZero() {
		w.Sheets = &g.Sheets
	}
	return w
}

// largest is the blank of the largest piece, and how many pieces there are.
func largest(s *solve.Solution) (blank *Blank, pieces int) {
	most := 0.0
	for i := range s.Pattern.Pieces {
		p := &s.Pattern.Pieces[i]
		pieces += p.Quantity
		if area := p.Width.Millimetres() * p.Height.Millimetres(); area > most {
			most, blank = area, &Blank{exact(s.Step, p.Width), exact(s.Step, p.Height)}
		}
	}
	return blank, pieces
}

// posted is what a post makes of it; nil if none was named.
func posted(j *mail.Judgement, in Voice) *Posted {
	if j == nil {
		return nil
	}
	p := &Posted{Post: j.Post.Name, Verdict: j.Verdict.String(), Advice: in.Say(mailAdvice)}
	if j.Class != nil {
		p.Class = j.Class.Name
	}
	return p
}

// forIt says what speaks for the place of a kind that works.
func forIt(g *solve.Suggestion, in Voice) []Reason {
	s := g.Solution
	sure := Reason{Code: "sure", Detail: timesIn100(s.Sure.Chance, in) + "."}
	for _, w := range s.Warnings {
		if w.Code == "unsure-fit" {
			sure.Code = "unsure"
		}
	}
	list := []Reason{sure, {Code: "cuts", Detail: in.Say("%s, about %s.",
		in.count(g.Strokes, "cut or score", "cuts and scores"), in.count(int(math.Ceil(g.Work.Minutes())), "minute", "minutes"))}}
	say := func(is bool, code, detail, otherCode, other string) {
		if !is {
			code, detail = otherCode, other
		}
		if code != "" {
			list = append(list, Reason{Code: code, Detail: in.Say(detail)})
		}
	}
	say(g.Glued(), "glue", "It is glued.", "no-glue", "No glue.")
	say(g.Kind.Sealed, "sealed", "Sealed, it is opened by tearing.", "reusable", "It opens and closes again.")
	say(s.Pattern.Cavity.Into, "inside", "It goes into what it is made for, not round it.", "", "")
	say(g.Beyond(), "beyond-sheet", "It does not come out of this sheet.", "", "")
	if g.Sheets > 0 {
		list = append(list, Reason{Code: "sheets", Detail: in.Say("It takes %s.", in.count(g.Sheets, "sheet", "sheets"))})
	}
	return list
}
