package mutation_test

import (
	"go/ast"
	"go/importer"
	"go/token"
	"go/types"
	"io"
	"iter"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// folder is one package that is broken.
type folder struct {
	set     *token.FileSet
	files   []*source
	imports types.Importer
}

// newFolder reads a package and what it imports, as it was compiled.
func newFolder(t *testing.T, root, name string) *folder {
	t.Helper()
	f := &folder{set: token.NewFileSet()}
	list := func(arguments ...string) iter.Seq[string] {
		command := exec.Command("go", append([]string{"list"}, append(arguments, "./"+name)...)...)
		command.Dir, command.Stderr = root, os.Stderr
		text, err := command.Output()
		require.NoError(t, err)
		return strings.SplitSeq(strings.TrimSpace(string(text)), "\n")
	}
	for base := range list("-f", `{{join .GoFiles "\n"}}`) {
		path := filepath.Join(root, name, base)
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		file, err := newSource(f.set, path, text)
		require.NoError(t, err)
		f.files = append(f.files, file)
	}
	compiled := map[string]string{}
	for line := range list("-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}") {
		path, file, _ := strings.Cut(line, " ")
		compiled[path] = file
	}
	f.imports = importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) { return os.Open(compiled[path]) })
	return f
}

// compiles says whether a package with a mutant in it is Go. Only the broken file is read
// again, and imported packages are kept by the importer.
func (f *folder) compiles(m *mutant) bool {
	broken, err := newSource(f.set, m.file.path, m.broken())
	if err != nil {
		return false
	}
	var files []*ast.File
	for _, file := range f.files {
		if file == m.file {
			file = broken
		}
		files = append(files, file.parsed)
	}
	_, err = (&types.Config{Importer: f.imports}).Check("broken", f.set, files, nil)
	return err == nil
}

// TestCompiles breaks this project's smallest package so that it is Go and is none.
func TestCompiles(t *testing.T) {
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	f := newFolder(t, root, "internal/bench")
	require.NotEmpty(t, f.files)
	file := f.files[0]
	at := strings.Index(string(file.text), "package")
	require.True(t, f.compiles(&mutant{file: file, from: at, to: at, text: "\n"}))
	require.False(t, f.compiles(&mutant{file: file, from: at, to: at + len("package"), text: "parcel"}), "no Go")
	require.False(t, f.compiles(&mutant{file: file, from: len(file.text), to: len(file.text), text: "var x int = true"}), "of another type")
}
