// Package openapi holds the specification of the service (OpenAPI 3.1), which
// is generated from the annotations of package api and from the names that
// requests are read with. See generate for how.
//
// It knows no routes and serves nothing.
package openapi

import (
	_ "embed"
	"sync"
)

//go:generate go run ./generate

//go:embed openapi.json
var specJSON []byte

//go:embed openapi-text.json
var textJSON []byte

//go:embed openapi.yaml
var specYAML []byte

// Module is the JavaScript module that asks the service, and ModuleTypes its
// declarations for TypeScript; beside them in the folder module is the manifest of
// a package.
var (
	//go:embed module/creasefit.js
	Module string
	//go:embed module/creasefit.d.ts
	ModuleTypes string
)

// JSON returns the specification as JSON without spaces. The bytes must not be
// changed.
var JSON = sync.OnceValue(func() []byte { return compact(specJSON) })

// Text returns it with one form of each value: lengths and numbers of requests
// as one type each, lists as lists, answers in JSON alone. It is what the Go
// client is generated from. The bytes must not be changed.
var Text = sync.OnceValue(func() []byte { return compact(textJSON) })

// YAML returns the specification as YAML. The bytes must not be changed.
func YAML() []byte { return specYAML }
