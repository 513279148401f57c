package api

import (
	"context"
	"time"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
)

// answering is what answers are made with beside what was computed.
type answering struct {
	*ask.Reading
	options
	path     string
	self     string          // the canonical address, if it is known
	ctx      context.Context // ends when nobody waits for the answer any more
	err      error           // that kept an encoder from writing all of it
	computed time.Time
	timed    bool        // the answer depends on how fast the machine is
	repeated *wire.Asked // what asked returned
	inTable  *tell.Style // of a batch, whose table the answer is part of
}

// style is how the request wants tables and texts.
func (x *answering) style() tell.Style {
	if x.inTable != nil {
		return *x.inTable
	}
	return tell.Style{Bare: x.bare, Comma: x.comma}
}

// mostContentLocation is the longest address that a POST answer names as its
// equivalent GET.
const mostContentLocation = 2000

// location is the address of the GET that equals a POST, empty if it is too long.
func (x *answering) location() string {
	location, link := x.Location(x.path)
	text := string(location)
	if x.self = text[:link]; len(text) > mostContentLocation {
		return ""
	}
	return text
}

// asked is what the answer repeats of the request, until the answer is written.
func (x *answering) asked() *wire.Asked {
	x.repeated = wire.AskAt(x.Reading, x.path, x.self)
	return x.repeated
}
