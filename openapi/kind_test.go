package openapi_test

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"strings"
	"testing"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/openapi"
)

// documents are those that the service gives away.
func documents(t *testing.T) map[string][]byte {
	t.Helper()
	return map[string][]byte{"openapi.json": openapi.JSON(), "openapi-text.json": openapi.Text(), "openapi/sleeve.json": openapi.OfKind("sleeve")}
}

// TestDocumentsAreValid checks each document, with all its examples.
func TestDocumentsAreValid(t *testing.T) {
	for name, document := range documents(t) {
		spec, err := openapi3.NewLoader().LoadFromData(document)
		require.NoError(t, err, name)
		assert.NoError(t, spec.Validate(context.Background(), openapi3.EnableExamplesValidation()), name)
		assert.Equal(t, "3.1.0", spec.OpenAPI, name)
	}
}

// TestSpecificationIsSmall holds the documents to what a generator and a person
// can use.
func TestSpecificationIsSmall(t *testing.T) {
	for name, document := range documents(t) {
		var packed bytes.Buffer
		z := gzip.NewWriter(&packed)
		_, err := z.Write(document)
		require.NoError(t, err)
		require.NoError(t, z.Close())
		assert.LessOrEqual(t, len(document), 700_000, name)
		assert.LessOrEqual(t, packed.Len(), 90_000, name)
		t.Logf("%s: %d bytes, %d by gzip", name, len(document), packed.Len())
	}
}

// TestEveryTagIsDeclared keeps every call in the reference page, which has a
// section for each declared tag.
func TestEveryTagIsDeclared(t *testing.T) {
	for name, document := range documents(t) {
		spec, err := openapi3.NewLoader().LoadFromData(document)
		require.NoError(t, err)
		for path, item := range spec.Paths.Map() {
			for method, o := range item.Operations() {
				assert.NotEqual(t, "HEAD", method, "HEAD is a sentence in the description")
				require.Len(t, o.Tags, 1, "%s %s", method, path)
				assert.NotNil(t, spec.Tags.Get(o.Tags[0]), "%s: %s %s has a tag that is not declared", name, method, path)
			}
		}
	}
}

// TestOneKind checks that the document of a kind has its calls and nothing that
// they do not lead to.
func TestOneKind(t *testing.T) {
	spec, err := openapi3.NewLoader().LoadFromData(openapi.OfKind("sleeve"))
	require.NoError(t, err)
	for path := range spec.Paths.Map() {
		assert.True(t, strings.HasSuffix(path, "/sleeve"), path)
	}
	assert.Equal(t, 5, spec.Paths.Len(), "solve, check, adapt, drawing and guide")
	assert.Nil(t, spec.Components.Schemas["RequestSolveBand"])
	assert.Nil(t, openapi.OfKind("no-such"))
	assert.Nil(t, openapi.OfKind(""))
	assert.Less(t, len(openapi.OfKind("sleeve")), len(openapi.JSON())/3)
}

// TestAnswersAreOpen checks that no answer forbids further members.
func TestAnswersAreOpen(t *testing.T) {
	var spec struct {
		Components struct{ Schemas map[string]json.RawMessage }
	}
	require.NoError(t, json.Unmarshal(openapi.JSON(), &spec))
	assert.NotContains(t, string(spec.Components.Schemas["Solution"]), "additionalProperties\":false")
	for name, schema := range spec.Components.Schemas {
		if !strings.Contains(name, "Value") {
			assert.NotContains(t, string(schema), `"additionalProperties":false`, name)
		}
	}
}

// TestOneOperationHasOneType checks the document for generators: no value has
// two types, no operation two bodies or two answers.
func TestOneOperationHasOneType(t *testing.T) {
	assert.NotContains(t, string(openapi.Text()), `"type":[`)
	assert.NotContains(t, string(openapi.Text()), `"oneOf"`)
	spec, err := openapi3.NewLoader().LoadFromData(openapi.Text())
	require.NoError(t, err)
	for path, item := range spec.Paths.Map() {
		require.Len(t, item.Operations(), 1, path)
		for _, o := range item.Operations() {
			assert.Len(t, o.Responses.Value("200").Value.Content, 1, path)
			if o.RequestBody != nil {
				assert.Len(t, o.RequestBody.Value.Content, 1, path)
			}
		}
	}
}
