// Package deploy holds what goes out beside the program: here the list of
// changes, which the service shows to its callers.
package deploy

import _ "embed"

// Changes is the list of changes, in Markdown.
//
//go:embed CHANGELOG.md
var Changes string
