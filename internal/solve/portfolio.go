package solve

import (
	"context"
	"strconv"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/tolerance"
)

// MostLayers is how many enclosures a portfolio may have.
const MostLayers = 12

// Layer is one enclosure of a portfolio.
type Layer struct {
	Number  int      // among the layers of its kind, from 1 on; filled in
	Request *Request // its contents are filled in, but for those of the innermost layer
	Turn    Turn
	Place   string // how a request leads to it, for faults
}

// Name tells a layer from all others: its kind, with a number from the second
// of a kind on.
func (l *Layer) Name() string { return l.numbered(l.Request.Kind.Name) }

// Title is what people call the layer.
func (l *Layer) Title(say func(string) string) string { return l.numbered(say(l.Request.Kind.Title)) }

func (l *Layer) numbered(name string) string {
	if l.Number > 1 {
		return name + " " + strconv.Itoa(l.Number)
	}
	return name
}

// Turn is how a layer takes what it goes round.
type Turn uint8

// The turns: as it lies; its width and height exchanged; standing on an edge,
// its height and thickness exchanged; standing on an end, its width and
// thickness exchanged.
const (
	AsItLies Turn = iota
	Quarter
	OnEdge
	OnEnd
)

// axes are the axes of what lies inside that run along the layer's own.
func (t Turn) axes() [3]pattern.Axis {
	return [...][3]pattern.Axis{
		AsItLies: {pattern.Width, pattern.Height, pattern.Thickness},
		Quarter:  {pattern.Height, pattern.Width, pattern.Thickness},
		OnEdge:   {pattern.Width, pattern.Thickness, pattern.Height},
		OnEnd:    {pattern.Thickness, pattern.Height, pattern.Width},
	}[t]
}

// Portfolio is several enclosures round one another, the innermost first.
type Portfolio struct {
	Layers    []Layer
	Solutions []*Solution // one a layer
	Chain     []Link      // one a layer
	Sure      Certainty   // of all layers together; Weakest is a fit of the layer Unsurest
	Unsurest  int
}

// Link is one layer of the tolerance chain: how sure the sizes are of what it
// goes round, and of itself when it is closed, along its own axes.
type Link struct {
	Contents, Outside [3]Sure

	chain *chain // what the outside depends on
}

// Sure is a size and how far it may be off.
type Sure struct {
	Nominal   measure.Length
	WorstCase enclosure.Range
	RSS       enclosure.Range // root-sum-square, three standard deviations
}

// SolvePortfolio solves the layers from the inside to the outside: what the
// fold proof measures round one is what the next goes round, and the errors of
// all its settings count in the next one's clearances. The error is that of the
// first layer without a solution, its faults named by the layer's place, or
// the context's.
func SolvePortfolio(ctx context.Context, layers []Layer) (*Portfolio, error) {
	p := &Portfolio{Layers: layers}
	err := p.fromInside(func(i int) (*Solution, error) { return Solve(ctx, layers[i].Request) })
	if err != nil {
		return nil, err
	}
	return p, nil
}

// fromInside numbers the layers and has each made round the one before it. The
// error is that of the first layer that cannot be made, its faults named by the
// layer's place.
func (p *Portfolio) fromInside(made func(i int) (*Solution, error)) error {
	count := map[string]int{}
	for i := range p.Layers {
		l := &p.Layers[i]
		count[l.Request.Kind.Name]++
		l.Number = count[l.Request.Kind.Name]
		if i > 0 {
			l.goRound(p.Solutions[i-1], &p.Chain[i-1])
		}
		s, err := made(i)
		if err == nil && i > 0 && s.Pattern.Cavity.Into {
			err = fault.Fault{Code: fault.Impossible, Field: "kind", Value: l.Request.Kind.Name,
				Detail: "this kind goes into what it is made for, not round it", Hint: "make it the first layer"}
		}
		if err != nil {
			return fault.Under(l.Place, err)
		}
		p.Solutions, p.Chain = append(p.Solutions, s), append(p.Chain, s.link())
	}
	p.together()
	return nil
}

// goRound makes the outside of a solved layer, turned, the contents of this one.
func (l *Layer) goRound(inner *Solution, link *Link) {
	q, sizes := l.Request, inner.Outside.sizes()
	q.inner = &chain{ledger: link.chain.ledger}
	for axis, along := range l.Turn.axes() {
		*q.size(pattern.Axis(axis).String()) = sizes[along]
		q.inner.depends[axis] = link.chain.depends[along]
	}
}

// link says how sure the sizes of what a solved layer goes round are, and its
// own outside.
func (s *Solution) link() Link {
	a := &s.judgement().account
	l := Link{chain: &chain{ledger: a.ledger, depends: s.dependence()}}
	for axis, outside := range s.Outside.sizes() {
		inside := make([]float64, len(a.sources))
		a.spread(inside, pattern.Axis(axis), 1)
		l.Contents[axis] = a.sure(*s.Request.size(pattern.Axis(axis).String()), inside)
		l.Outside[axis] = a.sure(outside, l.chain.depends[axis])
	}
	return l
}

// sure adds up what a size depends on.
func (a *account) sure(size measure.Length, times []float64) Sure {
	r := tolerance.Stack(&tolerance.Form{Nominal: size, Times: times}, a.sources)
	return Sure{size, r.WorstCase, r.RSS}
}

// together is how sure all layers are at once. The sources of each go on those
// of the layer inside it, so that what they share is shared.
func (p *Portfolio) together() {
	var forms []tolerance.Form
	least := 2.0
	p.Sure.Weakest = -1
	for i, s := range p.Solutions {
		forms = append(forms, s.judgement().forms...)
		if s.Sure.Weakest >= 0 && s.Sure.Chance < least {
			least, p.Unsurest, p.Sure.Weakest = s.Sure.Chance, i, s.Sure.Weakest
		}
	}
	c := tolerance.Joint(forms, p.Solutions[len(p.Solutions)-1].judgement().sources)
	p.Sure.Chance, p.Sure.Within, p.Sure.Datum = c.Chance, c.Within, p.Solutions[p.Unsurest].Sure.Datum
}

// GiveBack lets other requests have the memory of all solutions, none of which must be
// used any more.
func (p *Portfolio) GiveBack() {
	for _, s := range p.Solutions {
		s.GiveBack()
	}
}
