// Package api is the HTTP service: it reads flat names from a query string, a
// JSON body or a form, turns them into a typed request, has it computed, and
// writes the answer in the format asked for.
//
// Every calculation is one value of the type calculation: a table of names, a
// function that reads the typed request, one that computes, and one writer a
// format. The table is shared by the reader, by /v1/kinds and by the generated
// specification.
//
// It knows every status code and media type of the service and does no
// geometry, no rounding of readings and no physics.
package api
