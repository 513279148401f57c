package mutation_test

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// program is the tests of one package, built with mutants in it.
type program struct {
	folder string // where it is run
	path   string
	tests  []single
}

// single is one test, how long it takes and the numbers of the mutants that it
// reaches.
type single struct {
	name    string
	took    time.Duration
	reaches map[int]bool
}

// build builds the tests of a package; nil if it has none.
func build(t *testing.T, root, name, laid string) *program {
	t.Helper()
	p := &program{filepath.Join(root, name), filepath.Join(t.TempDir(), "broken.test"), nil}
	command := exec.Command("go", "test", "-overlay", laid, "-vet=off", "-c", "-o", p.path, "./"+name)
	command.Dir = root
	said, err := command.CombinedOutput()
	require.NoError(t, err, "%s: %s", name, said)
	if _, err := os.Stat(p.path); err != nil {
		return nil
	}
	said, err = p.command(context.Background(), "-test.list", *only).Output()
	require.NoError(t, err, name)
	for line := range strings.Lines(string(said)) {
		if word := strings.TrimSpace(line); !strings.HasPrefix(word, "Benchmark") {
			p.tests = append(p.tests, single{name: word})
		}
	}
	return p
}

// command is a run of the program.
func (p *program) command(ctx context.Context, arguments ...string) *exec.Cmd {
	c := exec.CommandContext(ctx, p.path, arguments...)
	c.Dir, c.WaitDelay = p.folder, time.Second
	return c
}

// run runs tests by name, and says whether they pass within a time.
func (p *program) run(most time.Duration, tests []single, env ...string) bool {
	ctx, stop := context.WithTimeout(context.Background(), most)
	defer stop()
	names := make([]string, len(tests))
	for i, s := range tests {
		names[i] = s.name
	}
	c := p.command(ctx, "-test.short", "-test.failfast", "-test.run", "^("+strings.Join(names, "|")+")$")
	c.Env = append(os.Environ(), env...)
	return c.Run() == nil
}

// look runs each test alone with nothing broken, and keeps those that pass with
// what they reach, the quickest first.
func (p *program) look(t *testing.T) {
	t.Helper()
	var good []single
	for i, s := range p.tests {
		noted := filepath.Join(t.TempDir(), strconv.Itoa(i))
		begun := time.Now()
		if !p.run(10*time.Minute, p.tests[i:i+1], envReached+"="+noted) {
			t.Logf("%s fails with nothing broken: it is left out", s.name)
			continue
		}
		s.took, s.reaches = time.Since(begun), map[int]bool{}
		text, _ := os.ReadFile(noted) // there is none if nothing was reached
		for line := range strings.Lines(string(text)) {
			n, err := strconv.Atoi(strings.TrimSpace(line))
			require.NoError(t, err)
			s.reaches[n] = true
		}
		good = append(good, s)
	}
	slices.SortFunc(good, func(a, b single) int { return int(a.took - b.took) })
	p.tests = good
}

// firstTurn is how long the first tests that look for a mutant take; the next
// ones take twice as long, so that a mutant that is noticed is noticed soon.
const firstTurn = 500 * time.Millisecond

// notices says whether one of the tests that reach a mutant fails with it, or
// takes far longer.
func (p *program) notices(number int) (reached, noticed bool) {
	var turn []single
	var sum time.Duration
	most := firstTurn
	chosen := envChosen + "=" + strconv.Itoa(number)
	for _, s := range p.tests {
		if !s.reaches[number] {
			continue
		}
		turn, sum = append(turn, s), sum+s.took
		if sum < most {
			continue
		}
		if !p.run(20*time.Second+20*sum, turn, chosen) {
			return true, true
		}
		turn, sum, most, reached = nil, 0, 2*most, true
	}
	if len(turn) == 0 {
		return reached, false
	}
	return true, !p.run(20*time.Second+20*sum, turn, chosen)
}
