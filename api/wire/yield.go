package wire

import (
	"fmt"
	"strings"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// Yield is the answer of /v1/yield.
type Yield struct {
	Unit          string         `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Ruler         string         `json:"ruler" validate:"required" example:"1/16 in"` // that cuts are set to
	Sheets        int            `json:"sheets" validate:"required" example:"6"`      // how many are cut, offcuts of the stock among them
	StockOffcuts  int            `json:"stock_offcuts,omitempty" example:"1"`         // how many of them are such offcuts
	Proven        bool           `json:"proven" validate:"required"`                  // no plan needs less, or gives more
	LowerBound    float64        `json:"lower_bound" validate:"required" example:"6"` // nothing needs less: whole sheets, or cost if that is kept small
	PerSheet      int            `json:"per_sheet,omitempty" example:"8"`             // blanks that one sheet gives at most, of a single blank
	Cost          float64        `json:"cost,omitempty" example:"4.2"`                // of all sheets that are cut, if they have prices
	Used          float64        `json:"used" validate:"required,min=0,max=1" example:"0.93"`
	UsedPercent   float64        `json:"used_percent" validate:"required,min=0,max=100" example:"93"` // of the paper that is cut
	Work          YieldWork      `json:"work" validate:"required"`
	CutList       []YieldSetting `json:"cut_list" validate:"required"`       // every setting of the trimmer over all plans, in order
	UsableOffcuts []UsableOffcut `json:"usable_offcuts" validate:"required"` // no side shorter than offcut_least, the largest first
	Items         []YieldItem    `json:"items" validate:"required"`
	Plans         []CutPlan      `json:"plans" validate:"required"`
	Proof         string         `json:"proof" validate:"required"`
	Warnings      []Warning      `json:"warnings" validate:"required"`
	Picture       string         `json:"picture,omitempty"` // SVG of the sheets, if pictures were asked for
	Links         YieldLinks     `json:"links" validate:"required"`

	Summary string       `json:"-"` // in a sentence or two
	Order   *sheet.Order `json:"-"` // whose language is that of the words
}

// OfYield is the answer to an order that was planned.
func OfYield(o *sheet.Order, p *sheet.Answer, unit measure.Unit, warned []enclosure.Warning, a *Asked) *Yield {
	c := cutting{o, p, o.Ruler}
	return &Yield{
		Unit:          unit.String(),
		Ruler:         o.Ruler.String(),
		Sheets:        p.Sheets,
		StockOffcuts:  p.Offcuts,
		Proven:        p.Proven,
		LowerBound:    c.bound(),
		PerSheet:      p.PerSheet,
		Cost:          price(p.Cost),
		Used:          round(p.Used, 6),
		UsedPercent:   round(100*p.Used, 1),
		Work:          YieldWork{p.Work.Settings, p.Work.Cuts, p.Work.Turns, p.Work.Stages},
		CutList:       c.cutList(),
		UsableOffcuts: c.usable(),
		Items:         c.items(),
		Plans:         c.plans(),
		Proof:         o.Word(p.Proof),
		Warnings:      warnings(warned, a),
		Links:         YieldLinks{a.Self, a.Self + "&format=svg"},
		Summary:       PlanSummary(o, p),
		Order:         o,
	}
}

// PlanSummary says in a sentence or two what a plan comes to.
func PlanSummary(o *sheet.Order, p *sheet.Answer) string {
	say := func(text string, value any) string { return fmt.Sprintf(o.Word(text), value) }
	count := func(n int, one, many string) string {
		if n == 1 {
			many = one
		}
		return say("%d "+many, n)
	}
	sheets := count(p.Sheets-p.Offcuts, "sheet", "sheets")
	if p.Offcuts > 0 {
		sheets += say(" and %s from stock", count(p.Offcuts, "offcut", "offcuts"))
	}
	used := say("%s percent of the paper is used.", number(100*p.Used, 0))
	if o.Items[0].Count == 0 && p.PerSheet > 0 {
		return say("One sheet gives %d.", p.PerSheet) + " " + used
	}
	if o.Minimize == sheet.LeastCost {
		sheets += say(" for %s", strings.ReplaceAll(number(price(p.Cost), 4), ".", o.Word(".")))
	}
	return sheets + ". " + used
}

// YieldItem is one blank as it was understood, and how many are made of it.
type YieldItem struct {
	Name   string `json:"name" validate:"required" example:"band"`
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Grain  string `json:"grain" validate:"required,oneof=any width height"`
	Paper  string `json:"paper,omitempty" example:"kraft"`
	Wanted int    `json:"wanted,omitempty" example:"25"` // absent: as many as one sheet gives
	Spares int    `json:"spares,omitempty" example:"2"`  // made beside them, for trials
	Made   int    `json:"made" validate:"required" example:"27"`
	Ready  int    `json:"ready" validate:"required" example:"3"` // all of it is made when so many sheets are cut, in the order of plans
}

// YieldWork is what an order asks of a person, one sheet at a time; a stack
// saves its share.
type YieldWork struct {
	Settings int `json:"settings" validate:"required" example:"11"` // positions that the trimmer is set to, one after another
	Cuts     int `json:"cuts" validate:"required" example:"72"`
	Turns    int `json:"turns" validate:"required" example:"26"` // of a part between two cuts
	Stages   int `json:"stages" validate:"required" example:"2"` // most directions of cutting one after another, from a trimmed sheet to a blank
}

// YieldSetting is one position of the trimmer and all that is cut at it before it
// is set anew.
type YieldSetting struct {
	At    Length    `json:"at" validate:"required"`
	Cuts  int       `json:"cuts" validate:"required" example:"14"`
	Steps []StepRef `json:"steps" validate:"required"`
}

// StepRef is a step of a plan; both are counted from one.
type StepRef struct {
	Plan int `json:"plan" validate:"required,min=1" example:"1"`
	Step int `json:"step" validate:"required,min=1" example:"5"`
}

// UsableOffcut is an offcut worth keeping, and how many there are of it.
type UsableOffcut struct {
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Count  int    `json:"count" validate:"required" example:"2"`

	Words string `json:"-"` // its size as it is said
}

// YieldLinks lead on from a plan.
type YieldLinks struct {
	Self    string `json:"self" validate:"required" example:"/v1/yield?unit=in"`
	Picture string `json:"picture" validate:"required" example:"/v1/yield?unit=in&format=svg"`
}

// cutting is a planned order on its way to an answer.
type cutting struct {
	order *sheet.Order
	plan  *sheet.Answer
	step  measure.Step
}

func price(p int64) float64 { return float64(p) / ask.PriceUnit }

// bound is the greatest proven lower bound, of sheets or of cost.
func (c cutting) bound() float64 {
	if c.order.Minimize == sheet.LeastCost {
		return price(c.plan.LowerBound)
	}
	return float64(c.plan.LowerBound)
}

// items are the blanks and how many are made.
func (c cutting) items() []YieldItem {
	list := make([]YieldItem, len(c.order.Items))
	for i, it := range c.order.Items {
		grain := [...]string{"any", "width", "height"}[it.Grain]
		list[i] = YieldItem{Name: it.Name, Width: exact(c.step, it.Width), Height: exact(c.step, it.Height), Grain: grain, Paper: it.Paper,
			Wanted: it.Count - it.Spares, Spares: it.Spares, Made: c.plan.Made[i], Ready: c.plan.Ready[i]}
	}
	return list
}

// cutList is the settings of the trimmer over all plans.
func (c cutting) cutList() []YieldSetting {
	list := make([]YieldSetting, len(c.plan.Settings))
	for i, s := range c.plan.Settings {
		list[i] = YieldSetting{At: exact(c.step, s.Reading), Cuts: s.Cuts}
		for _, at := range s.Steps {
			list[i].Steps = append(list[i].Steps, StepRef{at.Plan + 1, at.Step + 1})
		}
	}
	return list
}

// usable are the offcuts worth keeping.
func (c cutting) usable() []UsableOffcut {
	return Each(c.plan.Usable, func(u sheet.Usable) UsableOffcut {
		return UsableOffcut{exact(c.step, u.Width), exact(c.step, u.Height), u.Times, c.size(u.Width, u.Height)}
	})
}
