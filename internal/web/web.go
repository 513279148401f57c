// Package web holds what the service shows to people: two custom elements
// that any page can embed (<creasefit-solver>, a request as a sentence to fill
// in, and <creasefit-fold>, a folded enclosure that opens and closes), the
// workbench page made of them, and the reference page of the specification.
//
// The elements are written as parts of a few functions each and joined into
// one dependency-free script. Every file has two addresses: one that always
// gives the current file, and one that names its content and can be pinned
// with its subresource-integrity hash.
//
// The package serves nothing and computes nothing; it knows no request.
package web

import (
	"bytes"
	"html/template"
	"sync"
)

// Policy is the content security policy (W3C CSP 3) that the pages need: own
// scripts, styles and calls only, and nothing inline.
const Policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"

// Media is the content type of the pages.
const Media = markup

// files are all files but the pages, made once.
type files struct {
	Solver, Fold                                 Asset
	Workbench, Reference, Style, ReferenceScript Asset
}

var made = sync.OnceValue(func() *files {
	return &files{
		Solver:          element("solver", titles()),
		Fold:            element("fold", ""),
		Workbench:       newAsset("/assets", "workbench.js", script, source("page/workbench.js")+source("page/order.js")+source("page/nest.js")),
		Reference:       newAsset("/assets", "reference.css", styleSheet, source("page/common.css")+source("page/reference.css")),
		Style:           newAsset("/assets", "workbench.css", styleSheet, source("page/common.css")+source("page/workbench.css")),
		ReferenceScript: newAsset("/assets", "reference.js", script, source("page/reference.js")),
	}
})

// Assets lists every file that the pages and other people's pages load.
func Assets() []Asset {
	f := made()
	return []Asset{f.Solver, f.Fold, f.Workbench, f.Style, f.Reference, f.ReferenceScript}
}

// Workbench returns the page that shows all kinds, the elements, the planning
// of an order and the same request for other programs.
func Workbench() []byte { return rendered("page/workbench.html", made()) }

// rendered fills a page in; its template and its data are our own.
func rendered(name string, data any) []byte {
	var b bytes.Buffer
	if err := template.Must(template.New(name).Funcs(template.FuncMap{"inc": func(i int) int { return i + 1 }}).Parse(source(name))).Execute(&b, data); err != nil {
		panic(err)
	}
	return b.Bytes()
}
