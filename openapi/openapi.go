// Package openapi holds the specification of the service (OpenAPI 3.1), which
// is generated from the annotations of package api and from the tables that
// requests are read with. See generate for how.
//
// It knows no routes and serves nothing.
package openapi

import _ "embed"

//go:generate go run ./generate

//go:embed openapi.json
var specJSON []byte

//go:embed openapi.yaml
var specYAML []byte

// JSON returns the specification as JSON. The bytes must not be changed.
func JSON() []byte { return specJSON }

// YAML returns the specification as YAML. The bytes must not be changed.
func YAML() []byte { return specYAML }
