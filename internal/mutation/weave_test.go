package mutation_test

import (
	"encoding/json"
	"fmt"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The names of what chooses a mutant while a program runs, and notes which are
// reached.
const (
	envChosen  = "MUTANT_CHOSEN"
	envReached = "MUTANT_REACHED"
)

// chooser is the file that a package gets beside its own. A mutant is noted in
// the file of envReached the first time that it could be chosen.
const chooser = `package %s

import (
	"os"
	"strconv"
	"sync"
)

var mutantChosen_, _ = strconv.Atoi(os.Getenv("` + envChosen + `"))

var mutantReached_ = os.Getenv("` + envReached + `")

var mutantsSeen_ sync.Map

func mutant_(n int) bool {
	if mutantReached_ != "" {
		mutantNote_(n)
	}
	return n == mutantChosen_
}

func mutantNote_(n int) {
	if _, seen := mutantsSeen_.LoadOrStore(n, true); seen {
		return
	}
	f, err := os.OpenFile(mutantReached_, os.O_APPEND|os.O_WRONLY|os.O_CREATE, 0o600)
	if err != nil {
		panic(err)
	}
	_, _ = f.WriteString(strconv.Itoa(n) + "\n")
	_ = f.Close()
}

func mutantOr_[T any](chosen bool, broken, whole T) T {
	if chosen {
		return broken
	}
	return whole
}
`

// weave writes a file with several mutants in it, none of which is there before
// it is chosen by its number.
func weave(text []byte, mutants map[int]*mutant) string {
	numbers := slices.Sorted(maps.Keys(mutants))
	// From the last declaration to the first, so that offsets stay what they are.
	slices.SortStableFunc(numbers, func(a, b int) int { return mutants[b].around.from - mutants[a].around.from })
	woven, values := string(text), map[int]string{}
	for _, n := range numbers {
		m := mutants[n]
		a := m.around
		switch {
		case !a.function:
			whole, again := values[a.from]
			if !again {
				whole = string(text[a.from:a.to])
			}
			values[a.from] = fmt.Sprintf("mutantOr_%s(mutant_(%d), %s, %s)", instance(a.typ), n, m.within(), whole)
			woven = woven[:a.from] + values[a.from] + woven[a.from+len(whole):]
		case a.typ == "":
			woven = woven[:a.from] + fmt.Sprintf(" if mutant_(%d) { func() {%s\n}(); return };", n, m.within()) + woven[a.from:]
		default:
			woven = woven[:a.from] + fmt.Sprintf(" if mutant_(%d) { return func() %s {%s\n}() };", n, a.typ, m.within()) + woven[a.from:]
		}
	}
	return woven
}

// instance names the type of a variable that has one written.
func instance(typ string) string {
	if typ == "" {
		return ""
	}
	return "[" + typ + "]"
}

// overlay writes files that stand for those of the project, and the list of them
// that go takes; the list's path is returned.
func overlay(t *testing.T, mutants map[int]*mutant) string {
	t.Helper()
	folder, replaced := t.TempDir(), map[string]string{}
	put := func(path, text string) {
		replaced[path] = filepath.Join(folder, fmt.Sprintf("%d.go", len(replaced)))
		require.NoError(t, os.WriteFile(replaced[path], []byte(text), 0o600))
	}
	files := map[*source]map[int]*mutant{}
	for n, m := range mutants {
		if !m.woven() {
			put(m.file.path, string(m.broken()))
			continue
		}
		if files[m.file] == nil {
			files[m.file] = map[int]*mutant{}
		}
		files[m.file][n] = m
	}
	for file, list := range files {
		put(file.path, weave(file.text, list))
		if beside := filepath.Join(filepath.Dir(file.path), "mutant_chooser.go"); replaced[beside] == "" {
			put(beside, fmt.Sprintf(chooser, file.parsed.Name.Name))
		}
	}
	list, err := json.Marshal(map[string]any{"Replace": replaced})
	require.NoError(t, err)
	path := filepath.Join(folder, "overlay.json")
	require.NoError(t, os.WriteFile(path, list, 0o600))
	return path
}

// TestWeave writes all mutants of a small file into it, and looks at how.
func TestWeave(t *testing.T) {
	file, err := newSource(token.NewFileSet(), "p.go", []byte(small))
	require.NoError(t, err)
	woven := map[int]*mutant{}
	for i, m := range file.mutants() {
		if m.woven() {
			woven[i] = &m
		}
	}
	assert.Len(t, woven, 11, "all but that of the constant")
	text := weave(file.text, woven)
	_, err = newSource(token.NewFileSet(), "p.go", []byte(text))
	require.NoError(t, err, text)
	for _, part := range []string{
		"const most = 7\n",
		`var least, name = mutantOr_(mutant_(1), 3, 2), "a"`,
		"var even []bool = mutantOr_[[]bool](mutant_(2), []bool{false}, []bool{true})",
		"if mutant_(7) { return func() bool {\n\tif a < 3 {\n\t\tprintln()\n\t}\n\ta--\n\treturn even[0] // whole\n\n}() };",
		"if mutant_(10) { func() {\n\tf(2)\n\teven = make([]bool, 4, 5+6)\n\n}(); return };",
	} {
		assert.Contains(t, text, part)
	}
}
