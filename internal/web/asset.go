package web

import (
	"crypto/sha256"
	"crypto/sha512"
	"embed"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"io/fs"
	"strings"

	"creasefit/internal/repertoire"
)

// Line is the line of elements that stay compatible with one another: pages
// that load an element by it get improvements without being changed.
const Line = "1"

//go:embed solver fold page path words both
var sources embed.FS

// Asset is one file as it is served.
type Asset struct {
	Path      string // the address that always gives the current file
	Pinned    string // the address that gives these very bytes or nothing
	Media     string // content type
	Integrity string // of subresource integrity (W3C SRI): the SHA-384 hash
	Body      []byte // must not be changed
}

// NewAsset returns the file name under a folder of the service. The folder is
// versioned: <folder>/<line>/<name> and <folder>/<line>-<hash>/<name>.
func NewAsset(folder, name, media, body string) Asset {
	short := sha256.Sum256([]byte(body))
	long := sha512.Sum384([]byte(body))
	return Asset{
		Path:   folder + "/" + Line + "/" + name,
		Pinned: folder + "/" + Line + "-" + hex.EncodeToString(short[:6]) + "/" + name, Media: media,
		Integrity: "sha384-" + base64.StdEncoding.EncodeToString(long[:]), Body: []byte(body),
	}
}

const (
	script     = "text/javascript; charset=utf-8"
	styleSheet = "text/css; charset=utf-8"
	markup     = "text/html; charset=utf-8"
)

// element joins the parts of an element in the order of their names into one
// classic script, with its style sheet and further constants before them.
func element(folder, constants string) Asset {
	var b strings.Builder
	b.WriteString("// Creasefit: <creasefit-" + folder + ">. Needs nothing else.\n(() => {\n\"use strict\";\n")
	b.WriteString("const sheet = new CSSStyleSheet();\nsheet.replaceSync(" + quoted(source(folder+"/"+folder+".css")) + ");\n")
	b.WriteString(constants)
	b.WriteString(scriptsOf(folder))
	b.WriteString("})();\n")
	return NewAsset("/element", "creasefit-"+folder+".js", script, b.String())
}

// titles is what every kind is called in further languages, by language and by the
// kind's name, and the words that the element shares with the pages.
func titles() string {
	all := map[string]map[string]string{}
	for _, k := range repertoire.Kinds() {
		for language, words := range k.Words {
			if all[language] == nil {
				all[language] = map[string]string{}
			}
			all[language][k.Name] = words.Title
		}
	}
	shared := map[string]any{}
	for _, language := range Languages()[1:] {
		w := wordsOf(language)
		shared[language] = map[string]any{"names": w.Names, "choices": w.Choices, "problems": w.Problems}
	}
	return "const TITLES = " + quoted(all) + ";\nconst SHARED = " + quoted(shared) + ";\n"
}

// scriptsOf is the scripts of a folder in the order of their names.
func scriptsOf(folder string) string {
	names, err := fs.Glob(sources, folder+"/*.js")
	if err != nil {
		panic(err) // the pattern is a constant
	}
	var b strings.Builder
	for _, name := range names {
		b.WriteString(source(name))
	}
	return b.String()
}

// source returns an embedded file.
func source(name string) string {
	text, err := sources.ReadFile(name)
	if err != nil {
		panic(err) // the name is one of our own
	}
	return string(text)
}

// quoted writes a value as a literal of JavaScript.
func quoted(value any) string {
	literal, err := json.Marshal(value)
	if err != nil {
		panic(err) // texts and maps of texts always have a literal
	}
	return string(literal)
}
