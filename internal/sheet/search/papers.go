package search

import (
	"context"
	"errors"
	"slices"
	"time"

	"creasefit/internal/fault"
	"creasefit/internal/sheet"
)

// paperOrder is the part of an order that is of one paper, with the places of its
// items and sheets in the whole.
type paperOrder struct {
	sheet.Order
	paper         string
	items, sheets []int
}

// byPaper parts an order with counts into those of its papers.
func byPaper(o sheet.Order) []paperOrder {
	var list []paperOrder
	for _, paper := range o.Papers() {
		p := paperOrder{Order: o, paper: paper}
		p.Items, p.Sheets = nil, nil
		for i, it := range o.Items {
			if it.Paper == paper {
				p.Items, p.items = append(p.Items, it), append(p.items, i)
			}
		}
		for i, s := range o.Sheets {
			if s.Paper == paper {
				p.Sheets, p.sheets = append(p.Sheets, s), append(p.sheets, i)
			}
		}
		list = append(list, p)
	}
	return list
}

// followPapers plans one paper after another, each in its share of the time that is
// left; what is left of one serves the next.
func followPapers(ctx context.Context, o sheet.Order, each func(sheet.Answer)) (sheet.Answer, error) {
	end, papers := time.Now().Add(o.Effort), byPaper(o)
	whole := sheet.Answer{Proven: true, Settled: true, Made: make([]int, len(o.Items))}
	for i := range papers {
		p := &papers[i]
		p.Effort = max(time.Millisecond, time.Until(end)/time.Duration(len(papers)-i))
		var told func(sheet.Answer)
		if each != nil && i == len(papers)-1 {
			told = func(a sheet.Answer) { each(p.joined(o, whole, a)) }
		}
		a, err := Follow(ctx, p.Order, told)
		if err != nil {
			return sheet.Answer{}, p.renamed(err)
		}
		whole = p.joined(o, whole, a)
	}
	return whole, nil
}

// renamed says of a fault which paper it is of.
func (p *paperOrder) renamed(err error) error {
	var f fault.Fault
	if errors.As(err, &f) && p.paper != "" {
		f.Detail = p.paper + ": " + f.Detail
		return f
	}
	return err
}

// joined adds the plans of one paper to those of others.
func (p *paperOrder) joined(o sheet.Order, whole, a sheet.Answer) sheet.Answer {
	area := o.PlanArea(whole.Plans)
	added := p.PlanArea(a.Plans)
	whole.Used = (whole.Used*area + a.Used*added) / (area + added)
	whole.Sheets, whole.Offcuts, whole.Cost = whole.Sheets+a.Sheets, whole.Offcuts+a.Offcuts, whole.Cost+a.Cost
	whole.LowerBound += a.LowerBound
	whole.Proven, whole.Settled = whole.Proven && a.Proven, whole.Settled && a.Settled
	whole.Made, whole.Plans = slices.Clone(whole.Made), slices.Clone(whole.Plans)
	for i, n := range a.Made {
		whole.Made[p.items[i]] = n
	}
	for _, s := range a.Plans {
		whole.Plans = append(whole.Plans, p.placed(s))
	}
	whole.Proof = joinedProof(whole.Proof, p.paper, a.Proof)
	whole.Warnings = append(slices.Clone(whole.Warnings), a.Warnings...)
	o.Sum(&whole)
	return whole
}

// joinedProof adds what is proven of a paper.
func joinedProof(before, paper, proof string) string {
	if paper != "" {
		proof = paper + ": " + proof
	}
	if before == "" {
		return proof
	}
	return before + " " + proof
}

// placed gives a plan the places of items and sheets in the whole order.
func (p *paperOrder) placed(s sheet.Sheets) sheet.Sheets {
	s.Stock, s.Tree = p.sheets[s.Stock], p.tree(s.Tree)
	s.Placed, s.Parts = slices.Clone(s.Placed), slices.Clone(s.Parts)
	for i := range s.Placed {
		s.Placed[i].Item = p.items[s.Placed[i].Item]
	}
	for i := range s.Parts {
		if s.Parts[i].Item != sheet.Offcut {
			s.Parts[i].Item = p.items[s.Parts[i].Item]
		}
	}
	return s
}

// tree is a cut tree with those places.
func (p *paperOrder) tree(n *sheet.Node) *sheet.Node {
	c := *n
	if n.IsCut() {
		c.Low, c.High = p.tree(n.Low), p.tree(n.High)
	} else if n.Item != sheet.Offcut {
		c.Item = p.items[n.Item]
	}
	return &c
}
