package api

import (
	"strings"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/api/edge"
	"creasefit/openapi"
)

// documents are the files that never change while the service runs.
type documents struct {
	specJSON, specText, specYAML *edge.File
}

// newDocuments writes them once for all services of the process.
var newDocuments = sync.OnceValue(func() documents {
	return documents{
		specJSON: edge.NewFile("application/json", openapi.JSON(), cachePublic[0]),
		specText: edge.NewFile("application/json", openapi.Text(), cachePublic[0]),
		specYAML: edge.NewFile("application/yaml", openapi.YAML(), cachePublic[0]),
	}
})

// FirstRequest is the address of a first calculation to try.
const FirstRequest = "/v1/solve/slotted-band?unit=in&width=3.5&thickness=0.09&caliper=0.012&band_height=1-3/4&tab=1/2&fit=snug&ruler=1/8in&format=text"

// specJSON answers with the specification.
//
//	@Summary	The specification as JSON
//	@ID			spec-json
//	@Tags		service
//	@Success	200	{object}	object
//	@Router		/openapi.json [get]
func (s *Service) specJSON(c echo.Context) error { return s.documents.specJSON.Serve(c) }

// specText answers with the specification in one form of each value.
//
//	@Summary		The specification for generators
//	@Description	One form of each value, lengths as texts, calculations by POST and answers in JSON alone, so that each operation has one type.
//	@ID				spec-text
//	@Tags			service
//	@Success		200	{object}	object
//	@Router			/openapi-text.json [get]
func (s *Service) specText(c echo.Context) error { return s.documents.specText.Serve(c) }

// specOfKind answers with what the specification says of one kind.
//
//	@Summary	The specification of one kind's calls
//	@ID			spec-kind
//	@Tags		service
//	@Param		kind	path	string	true	"kind of enclosure"
//	@Success	200	{object}	object
//	@Router		/openapi/{kind}.json [get]
func (s *Service) specOfKind(c echo.Context) error {
	kind, ok := strings.CutSuffix(c.Param("kind"), ".json")
	document := openapi.OfKind(kind)
	if !ok || document == nil {
		return s.answerProblem(c, s.kinds.noSuchKind(c, kind))
	}
	return edge.NewFile("application/json", document, cachePublic[0]).Serve(c)
}

// specYAML answers with the specification.
//
//	@Summary	The specification as YAML
//	@ID			spec-yaml
//	@Tags		service
//	@Produce	application/yaml
//	@Success	200	{string}	string
//	@Router		/openapi.yaml [get]
func (s *Service) specYAML(c echo.Context) error { return s.documents.specYAML.Serve(c) }
