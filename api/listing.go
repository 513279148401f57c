package api

import (
	"context"
	"encoding/json"

	"creasefit/api/tell"
)

// nothing is the request of a call that takes no names of its own.
type nothing struct{}

// listing is a call whose answer never changes while the service runs. It is
// a calculation all the same, so that it picks, shows, caches and fails like
// the others.
type listing = calculation[nothing, nothing]

// newListing returns the listing of a value under a path.
func newListing(path string, answer any) *listing {
	body, err := json.Marshal(answer)
	if err != nil {
		panic(err) // the answer is one of our own tables
	}
	only := []tell.Format{tell.JSON}
	return &listing{
		table: newTable(answerParams(only)), path: path, formats: only,
		read:    func(*reading) nothing { return nothing{} },
		compute: func(context.Context, nothing) (nothing, error) { return nothing{}, nil },
		write:   func(dst []byte, _ tell.Format, _ nothing, _ *answering) []byte { return append(dst, body...) },
	}
}
