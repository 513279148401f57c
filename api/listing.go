package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
)

// newListing returns a call whose answer never changes while the service runs. It
// is a calculation all the same, so that it picks, shows, caches and fails like
// the others.
func newListing(path string, answer any) computing {
	return &calculation[*ask.Nothing, *ask.Nothing]{
		form: ask.New[ask.Nothing](tell.FormatNames(tableFormats)...), path: path, formats: tableFormats,
		compute: func(_ context.Context, q *ask.Nothing) (*ask.Nothing, error) { return q, nil },
		answer:  func(*ask.Nothing, *answering) any { return answer },
	}
}

// newSearch returns a list of presets that have sizes, all of it or those nearest to a
// size; of makes it as far as it is wanted.
func newSearch(path string, of func(*ask.Near) any) computing {
	return &calculation[*ask.Near, *ask.Near]{
		form: ask.New[ask.Near](tell.FormatNames(tableFormats)...), path: path, formats: tableFormats,
		compute: func(_ context.Context, q *ask.Near) (*ask.Near, error) { return q, nil },
		answer:  func(q *ask.Near, _ *answering) any { return of(q) },
	}
}
