package mutation_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mutant is one place of a file that is written otherwise.
type mutant struct {
	file     *source
	from, to int // offsets
	text     string
	around   around
}

// around is the part of a declaration that a mutant lies in and that is written
// twice, broken and whole: the body of a function or the value of a variable.
type around struct {
	from, to int
	function bool
	typ      string // of a function its results, of a variable its type if it is written
}

// woven says whether the mutant can share a program with others: a constant
// cannot, since nothing can be chosen while a program runs.
func (m *mutant) woven() bool { return m.around.to > 0 }

// within is what is around the mutant, broken.
func (m *mutant) within() string {
	text := m.file.text
	return string(text[m.around.from:m.from]) + m.text + string(text[m.to:m.around.to])
}

// broken is the whole file with the mutant in it.
func (m *mutant) broken() []byte {
	text := m.file.text
	return []byte(string(text[:m.from]) + m.text + string(text[m.to:]))
}

// String names the place and what is written there.
func (m *mutant) String() string {
	line := strings.Count(string(m.file.text[:m.from]), "\n") + 1
	return fmt.Sprintf("%s:%d: %s -> %s", m.file.path, line, m.file.text[m.from:m.to], m.text)
}

// source is one file as it was read.
type source struct {
	path   string
	text   []byte
	set    *token.FileSet
	parsed *ast.File
}

// newSource parses a file, its positions among those of a set.
func newSource(set *token.FileSet, path string, text []byte) (*source, error) {
	parsed, err := parser.ParseFile(set, path, text, parser.SkipObjectResolution)
	return &source{path, text, set, parsed}, err
}

// at is the offset of a position.
func (s *source) at(p token.Pos) int { return s.set.Position(p).Offset }

// slice is the text of a node.
func (s *source) slice(n ast.Node) string { return string(s.text[s.at(n.Pos()):s.at(n.End())]) }

// mutants lists every way in which a file is broken.
func (s *source) mutants() (list []mutant) {
	for _, d := range s.parsed.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			a := around{from: s.at(d.Body.Lbrace) + 1, to: s.at(d.Body.Rbrace), function: true}
			if d.Type.Results != nil {
				a.typ = s.slice(d.Type.Results)
			}
			list = append(list, s.mutantsIn(d.Body, a)...)
		case *ast.GenDecl:
			for _, spec := range d.Specs {
				list = append(list, s.mutantsOfValues(d.Tok, spec)...)
			}
		}
	}
	return list
}

// mutantsOfValues are those of the values of variables and constants.
func (s *source) mutantsOfValues(tok token.Token, spec ast.Spec) (list []mutant) {
	values, ok := spec.(*ast.ValueSpec)
	if !ok {
		return nil
	}
	for _, v := range values.Values {
		var a around
		if tok == token.VAR {
			a = around{from: s.at(v.Pos()), to: s.at(v.End())}
			if values.Type != nil {
				a.typ = s.slice(values.Type)
			}
		}
		list = append(list, s.mutantsIn(v, a)...)
	}
	return list
}

// others is what an operator is taken for.
var others = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.QUO,
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
	token.LAND: token.LOR, token.LOR: token.LAND, token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN, token.INC: token.DEC, token.DEC: token.INC,
}

// mutantsIn are those of one node: another operator, a condition that is turned
// round, a number one higher, a call left out, true for false.
func (s *source) mutantsIn(root ast.Node, a around) (list []mutant) {
	replace := func(from, to token.Pos, by string) {
		list = append(list, mutant{s, s.at(from), s.at(to), by, a})
	}
	operator := func(p token.Pos, t token.Token) {
		if other, ok := others[t]; ok {
			replace(p, p+token.Pos(len(t.String())), other.String())
		}
	}
	ast.Inspect(root, func(node ast.Node) bool {
		switch n := node.(type) {
		case *ast.BinaryExpr:
			operator(n.OpPos, n.Op)
		case *ast.AssignStmt:
			operator(n.TokPos, n.Tok)
		case *ast.IncDecStmt:
			operator(n.TokPos, n.Tok)
		case *ast.IfStmt:
			replace(n.Cond.Pos(), n.Cond.End(), "!("+s.slice(n.Cond)+")")
		case *ast.ExprStmt:
			replace(n.Pos(), n.End(), "")
		case *ast.BasicLit:
			if number, err := strconv.Atoi(n.Value); err == nil {
				replace(n.Pos(), n.End(), strconv.Itoa(number+1))
			}
		case *ast.Ident:
			if n.Name == "true" || n.Name == "false" {
				replace(n.Pos(), n.End(), strconv.FormatBool(n.Name == "false"))
			}
		case *ast.CallExpr:
			if make, ok := n.Fun.(*ast.Ident); ok && make.Name == "make" && len(n.Args) == 3 {
				list = append(list, s.mutantsIn(n.Args[1], a)...)
				return false // how much room there is changes nothing
			}
		case *ast.Field: // of a struct: its tags are no code
			return n.Tag == nil
		}
		return true
	})
	return list
}

// small is broken in every way by the tests of this package.
const small = `package p

const most = 7

var least, name = 2, "a"

var even []bool = []bool{true}

func f(a int) bool {
	if a < 3 {
		println()
	}
	a++
	return even[0] // whole
}

func g() {
	f(1)
	even = make([]bool, 4, 5+6)
}
`

// TestMutantsAreWhatTheyShouldBe breaks a small file in every way.
func TestMutantsAreWhatTheyShouldBe(t *testing.T) {
	file, err := newSource(token.NewFileSet(), "p.go", []byte(small))
	require.NoError(t, err)
	var broken []string
	for _, m := range file.mutants() {
		broken = append(broken, strings.TrimPrefix(m.String(), "p.go:"))
	}
	assert.Equal(t, []string{
		"3: 7 -> 8", "5: 2 -> 3", "7: true -> false", "10: a < 3 -> !(a < 3)", "10: < -> <=", "10: 3 -> 4",
		"11: println() -> ", "13: ++ -> --", "14: 0 -> 1", "18: f(1) -> ", "18: 1 -> 2", "19: 4 -> 5",
	}, broken)
}
