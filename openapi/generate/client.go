package main

import (
	"fmt"
	"os/exec"
	"path/filepath"
)

// writeClient generates the Go client of a specification, both in files, by the
// program oapi-codegen.
func writeClient(root, spec, file string) error {
	for _, name := range []*string{&spec, &file} {
		var err error
		if *name, err = filepath.Abs(*name); err != nil {
			return err
		}
	}
	tool := exec.Command("go", "tool", "oapi-codegen", "-config", "client.yaml", "-o", file, spec)
	tool.Dir = filepath.Join(root, "openapi", "generate")
	if output, err := tool.CombinedOutput(); err != nil {
		return fmt.Errorf("oapi-codegen: %w\n%s", err, output)
	}
	return nil
}
