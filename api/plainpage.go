package api

import (
	"html"
	"net/url"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/edge"
	"creasefit/api/tell"
	"creasefit/internal/repertoire"
)

// What a browser that opens an address is answered: a plain page with what others
// get as data, and with where to go from there.

// browsing reports whether a browser opens the address to show it: programs and the
// scripts of pages do not ask for HTML.
func browsing(c echo.Context) bool {
	return edge.WantsPage(c.Request().Method, c.Request().Header.Get("Accept"))
}

// answerPage is the page of an answer in lines of text, or in JSON.
func (o *outcome) answerPage(body []byte) []byte {
	u := o.c.Request().URL
	data := *u
	query := strings.TrimSuffix(u.RawQuery+"&", "&")
	data.RawQuery = strings.TrimPrefix(query+"&format=json", "&")
	links := link(data.RequestURI(), "The same as data")
	kind, solved := strings.CutPrefix(o.path, "/v1/solve/")
	if _, known := repertoire.Lookup(kind); solved && known {
		asked := strings.TrimPrefix(string(o.r.Link("")), "?")
		links = link("/?kind="+kind+"&"+asked, "Change it, see the steps with pictures, print it") + link("/v1/guide/"+kind+"?"+asked+"&format=html", "Instructions") + links
	}
	return []byte(page("Creasefit", "<pre>"+html.EscapeString(string(body))+"</pre>\n<ul>"+links+"</ul>\n"))
}

// problemInPage is the page of a problem: what is wrong, what would mend it.
func (p *problem) problemInPage() []byte {
	var b strings.Builder
	b.WriteString("<p>" + html.EscapeString(p.detail) + "</p>\n<ul>")
	for _, f := range p.faults {
		said := f.Error()
		if f.Expected != "" {
			said += ": " + f.Expected
		}
		if f.Hint != "" {
			said += " (" + f.Hint + ")"
		}
		b.WriteString("<li>" + html.EscapeString(said) + "</li>")
	}
	b.WriteString("</ul>\n<ul>")
	if p.try != "" {
		plain, err := url.PathUnescape(p.try)
		if err != nil {
			plain = p.try
		}
		b.WriteString(link(p.try, "Perhaps this was meant: "+plain))
	}
	b.WriteString(link("/", "Begin with the thing") + link("/docs", "All calls") + link("/problems/"+string(p.kind.code), "What this problem means") + "</ul>\n")
	return []byte(page(p.kind.title, b.String()))
}

// link is a line of a list that leads on.
func link(to, text string) string {
	return `<li><a href="` + html.EscapeString(to) + `">` + html.EscapeString(text) + "</a></li>"
}

// asPage turns an answer that nobody named a format for into a page, in lines of
// text where it has those.
func (o *options) asPage(offered []tell.Format) {
	if !o.byAccept || o.format != tell.JSON || o.show != nil {
		return
	}
	o.page = true
	if f, ok := tell.FormatNamed("text", offered); ok {
		o.format = f
	}
}

// plainStyle makes a page of text readable, on phones and in the dark, too.
const plainStyle = ":root{color-scheme:light dark}body{max-width:46rem;margin:2rem auto;padding:0 1rem;font:1.05rem/1.5 Georgia,serif}" +
	"pre{white-space:pre-wrap;overflow-wrap:anywhere;font-size:.95rem}li{margin-block:.3rem}"

// page puts a body into an HTML page.
func page(title, body string) string {
	return "<!DOCTYPE html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><style>" + plainStyle + "</style><title>" +
		html.EscapeString(title) + "</title></head>\n<body>\n<h1>" + html.EscapeString(title) + "</h1>\n" + body + "</body>\n</html>\n"
}
