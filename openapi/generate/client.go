package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

// writeClient generates the Go client of a specification into a file, by the
// program oapi-codegen, from what clientSpec leaves of the specification.
func writeClient(root string, spec object, file string) error {
	folder, err := os.MkdirTemp("", "client")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	text, err := encode(clientSpec(spec))
	if err != nil {
		return err
	}
	reduced := filepath.Join(folder, "openapi.json")
	if err := os.WriteFile(reduced, text, 0o644); err != nil {
		return err
	}
	if file, err = filepath.Abs(file); err != nil {
		return err
	}
	tool := exec.Command("go", "tool", "oapi-codegen", "-config", "client.yaml", "-o", file, reduced)
	tool.Dir = filepath.Join(root, "openapi", "generate")
	if output, err := tool.CombinedOutput(); err != nil {
		return fmt.Errorf("oapi-codegen: %w\n%s", err, output)
	}
	return nil
}
