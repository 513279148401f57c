// Command generate writes openapi.json, openapi-text.json and openapi.yaml: the annotations of
// package api as the swag tool reads them, then what that tool cannot say. From
// these it writes the Go client.
//
// It decides nothing about the service; every name, bound and example comes
// from package api.
package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"go.yaml.in/yaml/v3"
)

func main() {
	if err := write("..", "."); err != nil {
		fmt.Fprintln(os.Stderr, "generate:", err)
		os.Exit(1)
	}
}

// write generates the specification of the project at root, and its client,
// into the folder.
func write(root, folder string) error {
	annotated, err := readAnnotations(root)
	if err != nil {
		return err
	}
	spec, err := complete(annotated)
	if err != nil {
		return err
	}
	plain := textSpec(spec)
	asJSON, asText := encode(spec), encode(plain)
	asYAML, err := inYAML(asJSON)
	if err != nil {
		return err
	}
	files := map[string][]byte{"openapi.json": asJSON, "openapi.yaml": asYAML, "openapi-text.json": asText}
	for name, content := range moduleOf(plain) {
		files[filepath.Join("module", name)] = content
	}
	for name, content := range files {
		if err := os.WriteFile(filepath.Join(folder, name), content, 0o644); err != nil {
			return err
		}
	}
	return writeClient(root, filepath.Join(folder, "openapi-text.json"), filepath.Join(folder, "client", "client.gen.go"))
}

// encode writes JSON with sorted members, the same bytes every time.
func encode(spec object) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(spec); err != nil {
		panic(err) // it is made of texts, numbers, lists and objects
	}
	return b.Bytes()
}

// inYAML writes JSON as YAML with its members in the order they have. A library
// that sorts them anew has no fixed place for a number between words.
func inYAML(asJSON []byte) ([]byte, error) {
	var document yaml.Node
	if err := yaml.Unmarshal(asJSON, &document); err != nil {
		return nil, err
	}
	if err := plain(&document); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	if err := e.Encode(&document); err != nil {
		return nil, err
	}
	return b.Bytes(), e.Close()
}

// plain takes away the braces and quotation marks that YAML does not need; older
// readers need them round words like "on" and "no", which the library knows.
func plain(node *yaml.Node) error {
	node.Style = 0
	if node.Kind == yaml.ScalarNode && node.ShortTag() == "!!str" {
		return node.Encode(node.Value)
	}
	for _, child := range node.Content {
		if err := plain(child); err != nil {
			return err
		}
	}
	return nil
}

// readAnnotations runs the swag tool over package api, and over package guide
// for the shape of its answers.
func readAnnotations(root string) (object, error) {
	folder, err := os.MkdirTemp("", "openapi")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	sources := filepath.Join(root, "api") + "," + filepath.Join(root, "internal", "guide")
	swag := exec.Command("go", "tool", "swag", "init", "--v3.1", "--dir", sources, "--generalInfo", "spec_info.go",
		"--output", folder, "--outputTypes", "json", "--quiet")
	if output, err := swag.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("swag: %w\n%s", err, output)
	}
	text, err := os.ReadFile(filepath.Join(folder, "swagger.json"))
	if err != nil {
		return nil, err
	}
	var spec object
	return spec, json.Unmarshal(renamed(text), &spec)
}
