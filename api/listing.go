package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
)

// listing is a call whose answer never changes while the service runs. It is
// a calculation all the same, so that it picks, shows, caches and fails like
// the others.
type listing = calculation[*ask.Nothing, *ask.Nothing]

// newListing returns the listing of a value under a path.
func newListing(path string, answer any) *listing {
	return &listing{
		form: ask.New[ask.Nothing](tell.FormatNames(tableFormats)...), path: path, formats: tableFormats,
		compute: func(_ context.Context, q *ask.Nothing) (*ask.Nothing, error) { return q, nil },
		answer:  func(*ask.Nothing, *answering) any { return answer },
	}
}

// search is a list of presets that have sizes: all of it, or those nearest to a
// size.
type search = calculation[*ask.Near, *ask.Near]

// newSearch returns the list under a path; of makes it as far as it is wanted.
func newSearch(path string, of func(*ask.Near) any) *search {
	return &search{
		form: ask.New[ask.Near](tell.FormatNames(tableFormats)...), path: path, formats: tableFormats,
		compute: func(_ context.Context, q *ask.Near) (*ask.Near, error) { return q, nil },
		answer:  func(q *ask.Near, _ *answering) any { return of(q) },
	}
}

func newContentsSearch() *search {
	return newSearch("/v1/contents", func(q *ask.Near) any { return wire.Contents(q) })
}

func newSheetSearch() *search {
	return newSearch("/v1/sheets/sizes", func(q *ask.Near) any { return wire.Sheets(q) })
}
