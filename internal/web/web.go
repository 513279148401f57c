// Package web holds what the service shows to people: two custom elements
// that any page can embed (<creasefit-solver>, a request as a sentence to fill
// in, and <creasefit-fold>, a folded enclosure that opens and closes), a page that
// other pages may frame, the workbench, which leads from a thing to what goes round
// it (page/path.html and the scripts in path), and the reference page of the
// specification. What the workbench says is in words, one file a language.
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

	"creasefit/internal/manual"
)

// Policy is the content security policy (W3C CSP 3) that the pages need: own
// scripts, styles and calls only, and nothing inline.
const Policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"

// FramePolicy is that of the page that other pages may frame.
const FramePolicy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types 'none'"

// Media is the content type of the pages.
const Media = markup

// files are all files but the pages, made once.
type files struct {
	Solver, Fold                            Asset
	Path, Reference, Style, ReferenceScript Asset
	Frame, FrameScript                      Asset
	Own, OwnStyle, Manual                   Asset
}

var made = sync.OnceValue(func() *files {
	return &files{
		Solver:          element("solver", titles()+source("both/svg.js")),
		Fold:            element("fold", ""),
		Frame:           NewAsset("/assets", "frame.css", styleSheet, source("page/frame.css")),
		FrameScript:     NewAsset("/assets", "frame.js", script, source("page/frame.js")),
		Path:            NewAsset("/assets", "path.js", script, "(() => {\n\"use strict\";\n"+source("both/svg.js")+scriptsOf("path")+"})();\n"),
		Reference:       NewAsset("/assets", "reference.css", styleSheet, source("page/common.css")+source("page/reference.css")),
		Style:           NewAsset("/assets", "path.css", styleSheet, source("page/common.css")+source("page/head.css")+source("page/path.css")),
		Own:             NewAsset("/assets", "own.js", script, "(() => {\n"+source("page/own.js")+source("page/own-flat.js")+source("page/own-say.js")+"})();\n"),
		OwnStyle:        NewAsset("/assets", "own.css", styleSheet, source("page/common.css")+source("page/head.css")+source("page/own.css")),
		Manual:          NewAsset("/assets", "manual.css", styleSheet, source("page/common.css")+manual.Style()),
		ReferenceScript: NewAsset("/assets", "reference.js", script, source("page/reference.js")),
	}
})

// Assets lists every file that the pages and other people's pages load.
func Assets() []Asset {
	f := made()
	return []Asset{f.Solver, f.Fold, f.Frame, f.FrameScript, f.Path, f.Style, f.Reference, f.ReferenceScript, f.Own, f.OwnStyle, f.Manual}
}

// ManualStyle is the style sheet of the manual.
func ManualStyle() Asset { return made().Manual }

// Frame returns the page with the element alone, to be framed by pages that take no
// scripts.
func Frame() []byte { return rendered("page/frame.html", made()) }

// rendered fills a page in; its template and its data are our own.
func rendered(name string, data any) []byte {
	var b bytes.Buffer
	if err := template.Must(template.New(name).Funcs(template.FuncMap{"inc": func(i int) int { return i + 1 }}).Parse(source(name))).Execute(&b, data); err != nil {
		panic(err)
	}
	return b.Bytes()
}
