package api

import (
	"context"
	"time"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
)

// answering is what answers are made with beside what was computed.
type answering struct {
	*ask.Reading
	options
	path     string
	ctx      context.Context // ends when nobody waits for the answer any more
	err      error           // that kept an encoder from writing all of it
	computed time.Time
	timed    bool        // the answer depends on how fast the machine is
	inTable  *tell.Style // of a batch, whose table the answer is part of
}

// style is how the request wants tables and texts.
func (x *answering) style() tell.Style {
	if x.inTable != nil {
		return *x.inTable
	}
	return tell.Style{Bare: x.bare, Comma: x.comma}
}

// asked is what the answer repeats of the request.
func (x *answering) asked() *wire.Asked {
	given := x.Given()
	a := &wire.Asked{Path: x.path, Query: string(x.Link("")), Given: make(wire.Givens, len(given)), Sheet: string(x.AppendValue(nil, "sheet"))}
	both := make([]wire.Both, len(given))
	for i, g := range given {
		a.Given[i] = wire.Given{Name: g.Name, Text: g.Text, From: g.From}
		if g.Measured {
			both[i] = wire.InBoth(g.Length)
			a.Given[i].Both = &both[i]
		}
	}
	a.With = func(o enclosure.Option) string { return string(x.LinkWith(x.path, o.Name, o.Choice)) }
	return a
}
