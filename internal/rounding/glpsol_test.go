package rounding_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"

	"creasefit/internal/measure"
	"creasefit/internal/peer"
	"creasefit/internal/rounding"
)

// The objectives in order; those of the marks follow from firstMark on, and
// the sum of the readings comes last.
const (
	missed = iota
	distance
	uneven
	firstMark
)

// linear is a problem at a step as a program for a general solver. All
// lengths are whole multiples of unit, to keep its floats exact.
type linear struct {
	problem *rounding.Problem
	step    measure.Step
	unit    int64
	marks   []int64 // coarser than the step, the finest first, in steps
	relaxed bool
}

// whole returns a length in units.
func (l *linear) whole(length measure.Length) int64 { return length.Nanometres() / l.unit }

// objectives returns, for sizes of the readings, what is to be made least one
// after the other. From firstMark on: how many readings are no multiple of
// each mark. With the coarser ones counted in, the order stays the same.
func (l *linear) objectives(sizes []measure.Length) []int64 {
	j, _ := judge(l.problem, l.step, sizes)
	values := []int64{j.cost[0] / l.unit, j.cost[1] / l.unit, j.cost[2] / l.step.Size().Nanometres()}
	var finer, sum int64
	for k := range l.marks {
		finer += j.cost[firstMark+k]
		values = append(values, finer)
	}
	for _, size := range sizes {
		sum += size.Nanometres() / l.step.Size().Nanometres()
	}
	return append(values, sum)
}

// text writes the program that makes one objective least, with those before
// it held at the given values, in the CPLEX LP format.
func (l *linear) text(values []int64, level int) string {
	var rows, bounds strings.Builder
	var whole, binary []string
	objectives := make([][]string, len(values))
	for i, r := range l.problem.Readings {
		step := l.step.Size()
		lo, hi := l.step.Up(r.Min).Nanometres()/step.Nanometres(), l.step.Down(r.Max).Nanometres()/step.Nanometres()
		if r.Fixed {
			lo = r.Ideal.Nanometres() / step.Nanometres()
			hi = lo
		}
		fmt.Fprintf(&bounds, "%d <= t%d <= %d\n", lo, i, hi)
		whole = append(whole, fmt.Sprintf("t%d", i))
		objectives[len(values)-1] = append(objectives[len(values)-1], fmt.Sprintf("+ t%d", i))
		for k, m := range l.marks {
			if r.Fixed || level < firstMark+k {
				continue
			}
			fmt.Fprintf(&rows, "t%d - %d q%d_%d - r%d_%d = 0\n", i, m, i, k, i, k)
			fmt.Fprintf(&rows, "r%d_%d - %d z%d_%d <= 0\n", i, k, m-1, i, k)
			fmt.Fprintf(&bounds, "-1000 <= q%d_%d <= 1000\n", i, k)
			whole = append(whole, fmt.Sprintf("q%d_%d", i, k))
			binary = append(binary, fmt.Sprintf("z%d_%d", i, k))
			objectives[firstMark+k] = append(objectives[firstMark+k], fmt.Sprintf("+ z%d_%d", i, k))
		}
	}
	for _, c := range l.problem.Closures {
		fmt.Fprintf(&rows, "%s = %d\n", l.form(c.Form, 1), -l.whole(c.Form.Constant))
	}
	for k, w := range l.problem.Windows {
		constant, least, most := l.whole(w.Form.Constant), l.whole(w.Min), l.whole(w.Max)
		f := l.form(w.Form, 1)
		if l.relaxed {
			fmt.Fprintf(&rows, "%s + m%d >= %d\n%s - m%d <= %d\n", f, k, least-constant, f, k, most-constant)
			objectives[missed] = append(objectives[missed], fmt.Sprintf("+ %d m%d", w.Weight, k))
		} else {
			fmt.Fprintf(&rows, "%s >= %d\n%s <= %d\n", f, least-constant, f, most-constant)
		}
		f = l.form(w.Form, 2)
		fmt.Fprintf(&rows, "%s + d%d >= %d\n%s - d%d <= %d\n", f, k, least+most-2*constant, f, k, least+most-2*constant)
		objectives[distance] = append(objectives[distance], fmt.Sprintf("+ %d d%d", w.Weight, k))
	}
	for k, e := range l.problem.Even {
		fmt.Fprintf(&rows, "t%d - t%d - e%d <= 0\nt%d - t%d - e%d <= 0\n", e.A, e.B, k, e.B, e.A, k)
		objectives[uneven] = append(objectives[uneven], fmt.Sprintf("+ e%d", k))
	}
	for k, value := range values[:level] {
		if len(objectives[k]) > 0 {
			fmt.Fprintf(&rows, "%s = %d\n", strings.Join(objectives[k], " "), value)
		}
	}
	objective := strings.Join(objectives[level], " ")
	if objective == "" {
		objective = "0 t0"
	}
	return fmt.Sprintf("Minimize\nobj: %s\nSubject To\n%sBounds\n%sGenerals\n%s\nBinaries\n%s\nEnd\n",
		objective, rows.String(), bounds.String(), strings.Join(whole, " "), strings.Join(binary, " "))
}

// form writes a form's readings, times a factor, in units.
func (l *linear) form(f rounding.Form, factor int64) string {
	coefficients := map[int]int64{}
	for _, t := range f.Terms {
		coefficients[t.Reading] += factor * t.Coefficient * l.whole(l.step.Size())
	}
	var s strings.Builder
	for i := range l.problem.Readings {
		if c := coefficients[i]; c != 0 {
			fmt.Fprintf(&s, " %+d t%d", c, i)
		}
	}
	if s.Len() == 0 {
		return "0 t0"
	}
	return strings.TrimSpace(s.String())
}

var noSolution = regexp.MustCompile(`HAS NO (INTEGER |PRIMAL )?FEASIBLE SOLUTION`)

// solved is what glpsol made of a program.
type solved struct {
	least    int64         // the least value
	feasible bool          // false if it proves that there is none
	took     time.Duration // of a processor
}

// glpsol solves a program.
func glpsol(path, dir, name, program string) (s solved, err error) {
	in, out := filepath.Join(dir, name+".lp"), filepath.Join(dir, name+".sol")
	if err := os.WriteFile(in, []byte(program), 0o600); err != nil {
		return s, err
	}
	c := exec.Command(path, "--lp", in, "--write", out, "--tmlim", "60", "--gomory", "--mir")
	said, err := c.CombinedOutput()
	if err != nil {
		return s, fmt.Errorf("%w: %s", err, said)
	}
	s.took = c.ProcessState.UserTime() + c.ProcessState.SystemTime()
	if noSolution.Match(said) {
		return s, nil
	}
	written, err := os.ReadFile(out)
	if err != nil {
		return s, err
	}
	for line := range strings.Lines(string(written)) {
		var rows, columns int
		var value float64
		if n, _ := fmt.Sscanf(line, "s mip %d %d o %g", &rows, &columns, &value); n == 3 {
			s.least, s.feasible = int64(math.Round(value)), true
			return s, nil
		}
	}
	return s, fmt.Errorf("no proven optimum: %s", said)
}

// largeProblem makes a problem of so many readings and closures, most with solutions
// at the step.
func largeProblem(r *rand.Rand, step measure.Step, unit int64, n, closures int) *rounding.Problem {
	p := &rounding.Problem{}
	length := func(steps int64) measure.Length { return step.Size().Times(steps) }
	units := func(n int64) measure.Length { return measure.Nanometres(unit * n) }
	for range n {
		at, below, above := 2+r.Int64N(40), r.Int64N(30), r.Int64N(30)
		p.Readings = append(p.Readings, rounding.Reading{
			Ideal: length(at), Min: length(max(0, at-below)), Max: length(at + above), Fixed: r.IntN(8) == 0,
		})
	}
	ideals := idealsOf(p)
	for range closures {
		f := randomForm(r, n, 4, 3)
		f.Constant = f.Value(ideals).Neg()
		p.Closures = append(p.Closures, rounding.Closure{Form: f})
	}
	perStep := step.Size().Nanometres() / unit
	for range 1 + r.IntN(5) {
		f := randomForm(r, n, 3, 2)
		f.Constant = f.Value(ideals).Neg()
		least := units(r.Int64N(8*perStep) - 7*perStep)
		p.Windows = append(p.Windows, rounding.Window{
			Form: f, Weight: 1 + r.Int64N(3), Min: least, Max: least.Add(units(r.Int64N(12 * perStep))),
		})
	}
	for range r.IntN(3) {
		two := r.Perm(n)
		p.Even = append(p.Even, rounding.Pair{A: two[0], B: two[1]})
	}
	return p
}

// nextLinear makes the k-th problem of a row, at one step or another.
func nextLinear(random *rand.Rand, k int) *linear {
	inch, mm := measure.Marks(measure.Inch), measure.Marks(measure.Millimetre)
	steps := []measure.Step{inch[2], inch[3], inch[4], mm[1], mm[2], mm[3]}
	l := &linear{step: steps[k%len(steps)], unit: 3_175}
	if l.step.Unit() == measure.Millimetre {
		l.unit = 10_000
	}
	for _, mark := range slices.Backward(measure.Marks(l.step.Unit())) {
		if n := mark.Size().Nanometres() / l.step.Size().Nanometres(); n > 1 {
			l.marks = append(l.marks, n)
		}
	}
	l.problem = largeProblem(random, l.step, l.unit, 6+random.IntN(9), 2+random.IntN(3))
	return l
}

// smallest is a program of which next to nothing but the start of glpsol is seen.
const smallest = "Minimize\n t: x\nSubject To\n c: x >= 1\nGenerals\n x\nEnd\n"

// BenchmarkGlpsol reports how many times as long glpsol takes for all objectives of
// a problem as the search, net of what it takes to start: the median of the problems.
// Both are the least of several, and glpsol's the time of a processor, so that other
// work on the machine hardly counts.
func BenchmarkGlpsol(b *testing.B) {
	path, dir, random := peer.Path(b, "glpsol", "apt-get install -y glpk-utils"), b.TempDir(), rand.New(rand.NewPCG(1959, 7))
	run := func(program string) time.Duration {
		s, err := glpsol(path, dir, "timed", program)
		require.NoError(b, err)
		return s.took
	}
	net := func(program string) time.Duration {
		started, solved := run(smallest), run(program)
		for range 6 {
			started, solved = min(started, run(smallest)), min(solved, run(program))
		}
		return solved - started
	}
	var ratios []float64
	var search rounding.Search // one for all, as those that solve have it
	for k := 0; b.Loop(); k++ {
		l := nextLinear(random, k)
		sizes, ours := l.searched(b, &search)
		if sizes == nil {
			continue
		}
		var theirs time.Duration
		want := l.objectives(sizes)
		for level := distance; level < len(want); level++ {
			theirs += net(l.text(want, level))
		}
		ratios = append(ratios, float64(theirs)/float64(ours))
	}
	slices.Sort(ratios)
	b.ReportMetric(ratios[len(ratios)/2], "times-as-long")
}

// searched returns what the search finds and the least time that it takes, prepared anew.
func (l *linear) searched(b *testing.B, search *rounding.Search) (sizes []measure.Length, least time.Duration) {
	least = math.MaxInt64
	for range 21 {
		begun := time.Now()
		search.Prepare(l.problem)
		found, ok, err := search.At(context.Background(), l.step)
		least = min(least, time.Since(begun))
		require.NoError(b, err)
		if ok {
			sizes = found
		}
	}
	return sizes, least
}

// Each objective of larger problems, one after the other, is what a general
// integer-programming solver finds (GLPK's glpsol).
func TestSearchEqualsGlpsol(t *testing.T) {
	path := peer.Path(t, "glpsol", "apt-get install -y glpk-utils")
	random := rand.New(rand.NewPCG(1959, 7))
	dir := t.TempDir()
	var group errgroup.Group
	group.SetLimit(2)
	feasible, infeasible := make([]bool, 600), make([]bool, 600)
	for k := range feasible {
		l := nextLinear(random, k)
		group.Go(func() (err error) {
			feasible[k], infeasible[k], err = l.compare(t, path, dir, fmt.Sprint(k))
			return err
		})
	}
	require.NoError(t, group.Wait())
	solved, without := count(feasible), count(infeasible)
	t.Logf("%d problems with solutions and %d without", solved, without)
	assert.Equal(t, len(feasible), solved+without)
	assert.Greater(t, solved, 300)
	assert.Greater(t, without, 40)
}

func count(these []bool) (n int) {
	for _, this := range these {
		if this {
			n++
		}
	}
	return n
}

// compare asks both solvers; of a problem without solutions it asks for the
// nearest miss.
func (l *linear) compare(t *testing.T, path, dir, name string) (feasible, infeasible bool, err error) {
	search := rounding.NewSearch(l.problem)
	sizes, found, err := search.At(context.Background(), l.step)
	if err != nil {
		return false, false, err
	}
	if !found {
		got, err := glpsol(path, dir, name, l.text(make([]int64, firstMark+len(l.marks)+1), distance))
		if err != nil || !assert.False(t, got.feasible, "problem %s: %+v", name, l.problem) {
			return false, false, err
		}
		return false, true, l.compareMiss(t, search, path, dir, name)
	}
	want := l.objectives(sizes)
	for level := distance; level < len(want); level++ {
		got, err := glpsol(path, dir, name, l.text(want, level))
		if err != nil {
			return true, false, err
		}
		assert.True(t, got.feasible, "problem %s: %+v", name, l.problem)
		assert.Equal(t, got.least, want[level], "objective %d of problem %s: %+v", level, name, l.problem)
	}
	return true, false, nil
}

func (l *linear) compareMiss(t *testing.T, search *rounding.Search, path, dir, name string) error {
	miss, err := search.NearestMiss(context.Background(), l.step)
	if err != nil {
		return err
	}
	l.relaxed = true
	got, err := glpsol(path, dir, name, l.text(make([]int64, firstMark+len(l.marks)+1), missed))
	if err != nil {
		return err
	}
	assert.Equal(t, got.feasible, miss.Closes, "problem %s: %+v", name, l.problem)
	var sum int64
	for _, off := range miss.Windows {
		sum += l.problem.Windows[off.Window].Weight * l.whole(off.By.Abs())
	}
	assert.Equal(t, got.least, sum, "problem %s: %+v", name, l.problem)
	return nil
}
