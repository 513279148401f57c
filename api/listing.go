package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
)

// listing is a call whose answer never changes while the service runs. It is
// a calculation all the same, so that it picks, shows, caches and fails like
// the others.
type listing = calculation[*ask.Nothing, *ask.Nothing]

// newListing returns the listing of a value under a path.
func newListing(path string, answer any) *listing {
	return &listing{
		form: ask.NewNothing(tell.FormatNames(tableFormats)...), path: path, formats: tableFormats,
		compute: func(_ context.Context, q *ask.Nothing) (*ask.Nothing, error) { return q, nil },
		answer:  func(*ask.Nothing, *answering) any { return answer },
	}
}
