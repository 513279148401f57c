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
}

// Link is one layer of the tolerance chain: how sure the sizes are of what it
// goes round, and of itself when it is closed, along its own axes.
type Link struct {
	Contents, Outside [3]Sure

	depends *[3][]tolerance.Term // what the outside depends on
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
	p, count := &Portfolio{Layers: layers}, map[string]int{}
	for i := range layers {
		l := &layers[i]
		count[l.Request.Kind.Name]++
		l.Number = count[l.Request.Kind.Name]
		if i > 0 {
			l.goRound(p.Solutions[i-1], &p.Chain[i-1])
		}
		s, err := Solve(ctx, l.Request)
		if err == nil && i > 0 && s.Pattern.Cavity.Into {
			err = fault.Fault{Code: fault.Impossible, Field: "kind", Value: l.Request.Kind.Name,
				Detail: "this kind goes into what it is made for, not round it", Hint: "make it the first layer"}
		}
		if err != nil {
			return nil, fault.Under(l.Place, err)
		}
		p.Solutions, p.Chain = append(p.Solutions, s), append(p.Chain, s.link())
	}
	return p, nil
}

// goRound makes the outside of a solved layer, turned, the contents of this one.
func (l *Layer) goRound(inner *Solution, link *Link) {
	q, sizes := l.Request, inner.Outside.sizes()
	q.inner = &[3][]tolerance.Term{}
	for axis, along := range l.Turn.axes() {
		*q.size(pattern.Axis(axis).String()) = sizes[along]
		q.inner[axis] = link.depends[along]
	}
}

// link says how sure the sizes of what a solved layer goes round are, and its
// own outside.
func (s *Solution) link() Link {
	l := Link{depends: s.dependence()}
	for axis, outside := range s.Outside.sizes() {
		l.Contents[axis] = sure(*s.Request.size(pattern.Axis(axis).String()), s.Request.spread(nil, pattern.Axis(axis), 1))
		l.Outside[axis] = sure(outside, l.depends[axis])
	}
	return l
}

// sure adds up what a size depends on.
func sure(size measure.Length, on []tolerance.Term) Sure {
	r := tolerance.Stack(size, on)
	return Sure{size, enclosure.Range(r.WorstCase), enclosure.Range(r.RSS)}
}
