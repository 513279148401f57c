package api

import (
	"html"
	"strconv"
	"strings"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/api/edge"
	"creasefit/internal/fault"
	"creasefit/openapi"
)

// documents are the files that never change while the service runs.
type documents struct {
	specJSON, specText, specYAML *edge.File
	problems                     map[string]*edge.File
}

// newDocuments writes them once for all services of the process.
var newDocuments = sync.OnceValue(func() documents {
	d := documents{
		specJSON: edge.NewFile("application/json", openapi.JSON(), cachePublic[0]),
		specText: edge.NewFile("application/json", openapi.Text(), cachePublic[0]),
		specYAML: edge.NewFile("application/yaml", openapi.YAML(), cachePublic[0]),
		problems: map[string]*edge.File{},
	}
	for i := range problemKinds {
		k := &problemKinds[i]
		d.problems[string(k.code)] = edge.NewFile("text/html; charset=utf-8", []byte(problemPage(k)), cachePublic[0]).Page(edge.PolicyAlone)
	}
	return d
})

// plainStyle makes a page of text readable, on phones and in the dark, too.
const plainStyle = ":root{color-scheme:light dark}body{max-width:46rem;margin:2rem auto;padding:0 1rem;font:1.05rem/1.5 Georgia,serif}" +
	"pre{white-space:pre-wrap;overflow-wrap:anywhere;font-size:.95rem}li{margin-block:.3rem}"

// page puts a body into an HTML page.
func page(title, body string) string {
	return "<!DOCTYPE html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><style>" + plainStyle + "</style><title>" +
		html.EscapeString(title) + "</title></head>\n<body>\n<h1>" + html.EscapeString(title) + "</h1>\n" + body + "</body>\n</html>\n"
}

// FirstRequest is the address of a first calculation to try.
const FirstRequest = "/v1/solve/slotted-band?unit=in&width=3.5&thickness=0.09&caliper=0.012&band_height=1-3/4&tab=1/2&fit=snug&ruler=1/8in&format=text"

// problemPage explains one type of problem.
func problemPage(k *problemKind) string {
	return page(k.title, "<p>"+html.EscapeString(k.help)+"</p>\n<p>HTTP status "+strconv.Itoa(k.status)+", code <code>"+string(k.code)+"</code>.</p>\n")
}

// specJSON answers with the specification.
//
//	@Summary	The specification as JSON
//	@ID			spec-json
//	@Tags		service
//	@Produce	json
//	@Success	200	{object}	object
//	@Router		/openapi.json [get]
func (s *Service) specJSON(c echo.Context) error { return s.documents.specJSON.Serve(c) }

// specText answers with the specification in one form of each value.
//
//	@Summary		The specification for generators
//	@Description	One form of each value, lengths as texts, calculations by POST and answers in JSON alone, so that each operation has one type.
//	@ID				spec-text
//	@Tags			service
//	@Produce		json
//	@Success		200	{object}	object
//	@Router			/openapi-text.json [get]
func (s *Service) specText(c echo.Context) error { return s.documents.specText.Serve(c) }

// specOfKind answers with what the specification says of one kind.
//
//	@Summary	The specification of one kind's calls
//	@ID			spec-kind
//	@Tags		service
//	@Param		kind	path	string	true	"kind of enclosure"
//	@Produce	json
//	@Success	200	{object}	object
//	@Produce	application/problem+json
//	@Failure	404	{object}	wire.Problem
//	@Produce	json
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

// showProblem answers with the page that a problem's type leads to.
//
//	@Summary	What a type of problem means
//	@ID			problem
//	@Tags		service
//	@Param		code	path	string	true	"code of the problem"
//	@Produce	html
//	@Success	200	{string}	string
//	@Produce	application/problem+json
//	@Failure	404	{object}	wire.Problem
//	@Produce	json
//	@Router		/problems/{code} [get]
func (s *Service) showProblem(c echo.Context) error {
	d, ok := s.documents.problems[c.Param("code")]
	if !ok {
		return s.answerProblem(c, problemOf(fault.Faults{{Code: codeNotFound, Field: "code", Value: c.Param("code"), Detail: "there is no such type of problem"}}))
	}
	return d.Serve(c)
}
