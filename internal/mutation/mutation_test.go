// Package mutation_test breaks the project in small ways and says whether its
// tests notice. It is run by hand:
//
//	go test ./internal/mutation -v -timeout 1h -run Sample -in ./api/ask,./internal/stock -count-of 40 -seed 7
//
// -in names the packages that are broken, -by packages whose tests have to notice
// beside their own. The same seed breaks the same places.
package mutation_test

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	in      = flag.String("in", "", "packages that are broken, parted by commas")
	by      = flag.String("by", "", "packages whose tests have to notice too, parted by commas")
	countOf = flag.Int("count-of", 20, "how many places are broken")
	only    = flag.String("only", "", "which tests of -by are run, as -run has it")
	seed    = flag.Uint64("seed", 1, "which places are")
)

// mutant is one place of a file that is written otherwise.
type mutant struct {
	file     string
	from, to int // offsets
	text     string
}

// others is what an operator is taken for.
var others = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.QUO,
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
	token.LAND: token.LOR, token.LOR: token.LAND, token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN, token.INC: token.DEC, token.DEC: token.INC,
}

// mutantsOf lists every way in which a file is broken: another operator, a
// condition that is turned round, a number one higher, a call left out, true for
// false.
func mutantsOf(file string, text []byte) ([]mutant, error) {
	set := token.NewFileSet()
	parsed, err := parser.ParseFile(set, file, text, 0)
	if err != nil {
		return nil, err
	}
	var list []mutant
	at := func(p token.Pos) int { return set.Position(p).Offset }
	replace := func(from, to token.Pos, by string) { list = append(list, mutant{file, at(from), at(to), by}) }
	operator := func(p token.Pos, t token.Token) {
		if other, ok := others[t]; ok {
			replace(p, p+token.Pos(len(t.String())), other.String())
		}
	}
	ast.Inspect(parsed, func(node ast.Node) bool {
		switch n := node.(type) {
		case *ast.BinaryExpr:
			operator(n.OpPos, n.Op)
		case *ast.AssignStmt:
			operator(n.TokPos, n.Tok)
		case *ast.IncDecStmt:
			operator(n.TokPos, n.Tok)
		case *ast.IfStmt:
			replace(n.Cond.Pos(), n.Cond.End(), "!("+string(text[at(n.Cond.Pos()):at(n.Cond.End())])+")")
		case *ast.ExprStmt:
			replace(n.Pos(), n.End(), "")
		case *ast.BasicLit:
			if number, err := strconv.Atoi(n.Value); err == nil {
				replace(n.Pos(), n.End(), strconv.Itoa(number+1))
			}
		case *ast.Ident:
			if n.Name == "true" || n.Name == "false" {
				replace(n.Pos(), n.End(), map[string]string{"true": "false", "false": "true"}[n.Name])
			}
		case *ast.Field: // of a struct: its tags are no code
			return n.Tag == nil
		}
		return true
	})
	return list, nil
}

// TestMutantsAreWhatTheyShouldBe breaks a small file in every way.
func TestMutantsAreWhatTheyShouldBe(t *testing.T) {
	text := []byte("package p\n\nfunc f(a int) bool {\n\tif a < 3 {\n\t\tprintln()\n\t}\n\ta++\n\treturn true\n}\n")
	list, err := mutantsOf("p.go", text)
	require.NoError(t, err)
	var broken []string
	for _, m := range list {
		broken = append(broken, string(text[m.from:m.to])+" -> "+m.text)
	}
	assert.ElementsMatch(t, []string{"a < 3 -> !(a < 3)", "< -> <=", "3 -> 4", "println() -> ", "++ -> --", "true -> false"}, broken)
}

// TestSample breaks a sample of places one by one, and lists those that no test
// has noticed.
func TestSample(t *testing.T) {
	if *in == "" {
		t.Skip("it is run by hand: -in names the packages that are broken")
	}
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	all := mutantsIn(t, root)
	random := rand.New(rand.NewPCG(*seed, 0))
	random.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	killed, tried := map[string]int{}, map[string]int{}
	for _, m := range all {
		if total(tried) == *countOf {
			break
		}
		folder, _ := filepath.Rel(root, filepath.Dir(m.file))
		noticed, compiles := m.try(t, root, "./"+folder)
		if !compiles {
			continue
		}
		tried[folder]++
		if noticed {
			killed[folder]++
		} else {
			t.Log("not noticed: " + m.String())
		}
	}
	for folder := range tried {
		t.Logf("%s: %d of %d noticed", folder, killed[folder], tried[folder])
	}
	t.Logf("all: %d of %d noticed, of %d places", total(killed), total(tried), len(all))
}

// mutantsIn lists the mutants of the packages that are broken.
func mutantsIn(t *testing.T, root string) []mutant {
	t.Helper()
	var all []mutant
	for folder := range strings.SplitSeq(*in, ",") {
		files, err := filepath.Glob(filepath.Join(root, folder, "*.go"))
		require.NoError(t, err)
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			list, err := mutantsOf(file, text)
			require.NoError(t, err)
			all = append(all, list...)
		}
	}
	return all
}

// total adds counts up.
func total(counts map[string]int) int {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return sum
}

// mostTime is how long tests may take before they count as having noticed.
const mostTime = 3 * time.Minute

// try runs the short tests with one place broken.
func (m *mutant) try(t *testing.T, root, folder string) (noticed, compiles bool) {
	t.Helper()
	text, err := os.ReadFile(m.file)
	require.NoError(t, err)
	temporary := t.TempDir()
	broken, overlay := filepath.Join(temporary, "broken.go"), filepath.Join(temporary, "overlay.json")
	require.NoError(t, os.WriteFile(broken, slices.Concat(text[:m.from], []byte(m.text), text[m.to:]), 0o600))
	laid, err := json.Marshal(map[string]any{"Replace": map[string]string{m.file: broken}})
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(overlay, laid, 0o600))
	run := func(ctx context.Context, folder, program string, arguments ...string) error {
		command := exec.CommandContext(ctx, program, arguments...)
		command.Dir = folder
		return command.Run()
	}
	tests := filepath.Join(temporary, "broken.test")
	if run(context.Background(), root, "go", "test", "-overlay", overlay, "-vet=off", "-c", "-o", tests, folder) != nil {
		return false, false
	}
	ctx, stop := context.WithTimeout(context.Background(), mostTime)
	defer stop()
	if _, err := os.Stat(tests); err == nil && run(ctx, filepath.Join(root, folder), tests, "-test.short", "-test.failfast") != nil {
		return true, true
	}
	others := []string{"test", "-overlay", overlay, "-short", "-failfast", "-count=1", "-run", *only}
	return *by != "" && run(ctx, root, "go", append(others, strings.Split(*by, ",")...)...) != nil, true
}

// String names the place and what was written there.
func (m *mutant) String() string {
	text, _ := os.ReadFile(m.file)
	return fmt.Sprintf("%s:%d: %s -> %s", m.file, strings.Count(string(text[:m.from]), "\n")+1, text[m.from:m.to], m.text)
}
