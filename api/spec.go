package api

import (
	"strings"

	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
)

// CallSpec is what the specification says of one call beyond its annotations:
// the names it knows and an example. It comes from the tables that requests
// are read with, so that the two cannot drift apart.
type CallSpec struct {
	Path       string // as it is called
	Annotated  string // the path of its annotations, if another
	Summary    string // if another than that of the annotations
	Parameters []wire.Parameter
	Media      []string // of the answer, the default first
	Example    string   // query of a GET, without a question mark
	Body       string   // of a POST, mostly the same request; empty for a call without POST
	Table      string   // of a POST whose list comes as the rows of CSV; empty for a call without
}

// spec is what the specification says of the calculation, without an example.
func (k *calculation[Q, A]) spec() CallSpec {
	return CallSpec{Path: k.path, Parameters: describeNames(k.form.Names()), Media: wire.Each(k.formats, tell.Format.MediaType)}
}

// asked adds an example.
func (s CallSpec) asked(query, body string) CallSpec {
	s.Example, s.Body = query, body
	return s
}

// ofKind says that the annotations are those of every kind, and adds the
// kind's example.
func (s CallSpec) ofKind(k *enclosure.Kind, summary string) CallSpec {
	s.Annotated, s.Summary = strings.TrimSuffix(s.Path, k.Name)+"{kind}", summary+k.Name
	return s.asked(solveExample(k))
}
