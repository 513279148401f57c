package api

import (
	"bytes"
	"cmp"
	"fmt"
	"html/template"
	"log/slog"
	"net/http"
	"slices"
	"strings"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/api/edge"
	"creasefit/api/tell"
	"creasefit/deploy"
	"creasefit/internal/fault"
	"creasefit/internal/manual"
	"creasefit/internal/repertoire"
	"creasefit/internal/web"
)

// manualPage is one page with its English address.
type manualPage struct {
	name, path string // of its template
	data       func() any
}

// pagesOfManual are all pages of the manual.
func pagesOfManual() []manualPage {
	pages := []manualPage{
		{"docs", "/docs", func() any { return manual.Tasks }},
		{"glossary", "/docs/glossary", func() any { return manual.Glossary }},
		{"design", "/docs/design", func() any { return manual.Design }},
		{"formats", "/docs/formats", func() any { return formatTable() }},
		{"limits", "/docs/limits", func() any { return limitRows() }},
		{"changes", "/docs/changes", func() any { return manual.Prose(deploy.Changes) }},
		{"problems", "/problems", func() any { return problemList() }},
	}
	for _, k := range problemList() {
		pages = append(pages, manualPage{"problem", "/problems/" + k.Code, func() any { return k }})
	}
	return pages
}

// manualFiles are the pages that were asked for, by their addresses: each is made
// once for all services of the process.
var manualFiles sync.Map

// file returns the page in a language.
func (p manualPage) file(language string) *edge.File {
	address := manual.Address(p.path, language)
	if known, ok := manualFiles.Load(address); ok {
		return known.(*edge.File)
	}
	a := web.ManualStyle()
	style := template.HTML(`<link rel="stylesheet" href="` + a.Pinned + `" integrity="` + a.Integrity + `">`)
	written := manual.Write(manual.Page{Name: p.name, Path: p.path, Language: language, Style: style, Data: p.data()}, askForManual)
	made, _ := manualFiles.LoadOrStore(address, edge.NewFile(web.Media, written, cacheShortly).Page(web.Policy))
	return made.(*edge.File)
}

// manualRoutes registers the pages.
func (s *Service) manualRoutes() {
	for _, p := range pagesOfManual() {
		for _, language := range manual.Languages {
			if address := manual.Address(p.path, language); address != "/docs" {
				s.get(address, func(c echo.Context) error { return p.file(language).Serve(c) })
			}
		}
	}
	s.get("/llms.txt", func(c echo.Context) error { return agentsFile().Serve(c) })
}

// showManual answers with what can be done, each with a request that runs.
//
//	@Summary	Tasks, each with a request that runs and its answer
//	@ID			docs
//	@Tags		service
//	@Produce	html
//	@Success	200	{string}	string
//	@Router		/docs [get]
func (s *Service) showManual(c echo.Context) error {
	return pagesOfManual()[0].file(manual.Languages[0]).Serve(c)
}

// showProblem answers where the manual has no page of a type of problem.
//
//	@Summary	What a type of problem means
//	@ID			problem
//	@Tags		service
//	@Param		code	path	string	true	"code of the problem"
//	@Produce	html
//	@Success	200	{string}	string
//	@Router		/problems/{code} [get]
func (s *Service) showProblem(c echo.Context) error {
	return s.answerProblem(c, problemOf(fault.Faults{{Code: codeNotFound, Field: "code", Value: c.Param("code"), Detail: "there is no such type of problem", Hint: "/problems lists them"}}))
}

// problemList is the catalogue of problems, in the order of the table.
func problemList() []manual.Problem {
	list := make([]manual.Problem, len(problemKinds))
	for i, k := range problemKinds {
		p := manual.Problems[string(k.code)]
		p.Code, p.Status, p.Title.En, p.Help.En = string(k.code), k.status, k.title, k.help
		list[i] = p
	}
	return list
}

// formats is which call answers in what.
type formats struct {
	Formats []string
	Rows    []formatRow
}

type formatRow struct {
	Call string
	Has  []bool
}

// formatTable lists the formats of every call, from the names that it is read
// with.
func formatTable() formats {
	var t formats
	for f := tell.JSON; f <= tell.GLB; f++ {
		t.Formats = append(t.Formats, f.String())
	}
	seen := map[string]bool{}
	for _, spec := range CallSpecs() {
		path := cmp.Or(spec.Annotated, spec.Path)
		if seen[path] {
			continue
		}
		seen[path] = true
		row := formatRow{Call: path}
		for _, p := range spec.Parameters {
			if p.Name == "format" {
				for _, f := range t.Formats {
					row.Has = append(row.Has, slices.Contains(p.Choices, f))
				}
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// limitRow is one limit as the manual shows it.
type limitRow struct{ Name, Value string }

// limitRows are the limits of a service with the settings of an empty
// environment.
func limitRows() []limitRow {
	var rows []limitRow
	answer := askForManual(manual.Request{Target: "/v1/limits.csv?header=0"})
	for line := range strings.Lines(answer.Body) {
		name, value, _ := strings.Cut(strings.TrimSpace(line), ",")
		rows = append(rows, limitRow{strings.TrimPrefix(name, "/"), value})
	}
	return rows
}

// teacher is a service of its own that answers the requests of the manual, so
// that keys and limits of the real one do not show in them.
var teacher struct {
	sync.Once
	http.Handler
}

// askForManual sends a request of the manual to the teacher.
func askForManual(r manual.Request) manual.Answer {
	request, err := http.NewRequest(cmp.Or(r.Method, http.MethodGet), r.Target, strings.NewReader(r.Body))
	if err != nil {
		panic(err) // the manual is our own
	}
	request.RequestURI, request.RemoteAddr = r.Target, "127.0.0.1:1"
	if r.Media != "" {
		request.Header.Set("Content-Type", r.Media)
	}
	w := &heard{header: http.Header{}, status: http.StatusOK}
	teacher.Do(func() { teacher.Handler = New(DefaultConfig(), slog.New(slog.DiscardHandler)).Handler() })
	teacher.ServeHTTP(w, request)
	media, _, _ := strings.Cut(w.header.Get("Content-Type"), ";")
	return manual.Answer{Status: w.status, Media: media, Body: w.body.String()}
}

// heard keeps an answer in memory.
type heard struct {
	header http.Header
	status int
	body   bytes.Buffer
}

func (h *heard) Header() http.Header            { return h.header }
func (h *heard) WriteHeader(status int)         { h.status = status }
func (h *heard) Write(text []byte) (int, error) { return h.body.Write(text) }
func (h *heard) Flush()                         {} // all of it is kept

// agentsFile is what an agent with little room needs to know.
var agentsFile = sync.OnceValue(func() *edge.File {
	var b strings.Builder
	b.WriteString("# Creasefit\n\n> The maths of hand-made paper enclosures: send the size of a thing and the thickness of a paper, get readings for a real ruler, proven by folding.\n\n")
	b.WriteString("All calls take the same flat names by GET (query) or POST (JSON). Lengths are texts with a unit (`3 1/2 in`, `92.1 mm`); bare numbers need `unit=in` or `unit=mm`. " +
		"Unknown names are refused; every problem (RFC 9457) lists all wrong names with hints and, in `try`, a mended address. " +
		"`show=step,sure` keeps members, `pick=/sure/chance` one value, `format=text` is the shortest whole answer.\n\n## Calls\n\n")
	for _, row := range formatTable().Rows {
		b.WriteString("- " + row.Call + "\n")
	}
	b.WriteString("- POST /v1/batch: many of them, as JSON lines or a table\n\n## Kinds\n\nEach link is a compact description of the names of a kind.\n\n")
	for _, k := range repertoire.Kinds() {
		fmt.Fprintf(&b, "- [%s](/v1/kinds/%s.txt): %s\n", k.Name, k.Name, k.Help)
	}
	b.WriteString("\n## More\n\n- [Tasks with requests and answers](/docs)\n- [Problems](/problems)\n- [Specification, one type a value](/openapi-text.json); of one kind: /openapi/{kind}.json\n- [Contents](/v1/contents.csv), [papers](/v1/stocks.csv), [sheets](/v1/sheets/sizes.csv), [benches](/v1/benches.csv)\n")
	return edge.NewFile(plainText[0], []byte(b.String()), cacheShortly)
})
