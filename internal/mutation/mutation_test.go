// Package mutation_test breaks the project in small ways and says whether its
// tests notice. It is run by hand:
//
//	go test ./internal/mutation -v -timeout 1h -run Sample -in ./api/ask,./internal/stock -by ./api -count-of 10 -seed 7
//
// -in names the packages that are broken, -by packages whose tests have to notice
// beside their own. The same seed breaks the same places. All mutants are woven
// into one program a package of tests and chosen while it runs, so that each
// program is built once; each test is run alone once with nothing broken, which
// says what mutants it reaches, and a mutant is looked for by those tests only.
package mutation_test

import (
	"flag"
	"maps"
	"math/rand/v2"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var (
	in      = flag.String("in", "", "packages that are broken, parted by commas")
	by      = flag.String("by", "", "packages whose tests have to notice too, parted by commas")
	countOf = flag.Int("count-of", 10, "how many places are broken in each package")
	only    = flag.String("only", ".", "which tests look, as -run has it")
	these   = flag.String("these", "", "numbers of the places that are broken, parted by commas: all of the sample if empty")
	seed    = flag.Uint64("seed", 1, "which places are")
)

// trial is a sample on its way: what is left of it is what no test has noticed so far.
type trial struct {
	*testing.T
	root     string
	sampled  map[int]*mutant
	laid     string // the overlay of all that are woven
	programs map[string]*program
	reached  map[int]bool
}

// TestSample breaks a sample of places one by one, and lists those that no test
// has noticed: first the tests of their own packages, then those of others.
func TestSample(t *testing.T) {
	if *in == "" {
		t.Skip("it is run by hand: -in names the packages that are broken")
	}
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	r := &trial{t, root, sample(t, root), "", map[string]*program{}, map[int]bool{}}
	together := maps.Clone(r.sampled)
	maps.DeleteFunc(together, func(_ int, m *mutant) bool { return !m.woven() })
	r.laid = overlay(t, together)
	left := map[int]bool{}
	for _, name := range names(*in) {
		for n := range r.of(name) {
			left[n] = true
		}
		r.ask(name, r.of(name), left)
		r.tell(name, left)
	}
	t.Log("beside their own packages' tests, those of " + *by)
	for _, name := range names(*by) {
		others := maps.Clone(r.sampled)
		maps.DeleteFunc(others, func(n int, _ *mutant) bool { return r.of(name)[n] != nil }) // its own were asked first
		r.ask(name, others, left)
	}
	all := 0
	for _, name := range names(*in) {
		all += r.tell(name, left)
	}
	t.Logf("all: %d of %d noticed", all, len(r.sampled))
}

// of are the mutants of a package.
func (r *trial) of(name string) map[int]*mutant {
	own := maps.Clone(r.sampled)
	maps.DeleteFunc(own, func(_ int, m *mutant) bool { return folderOf(r.root, m) != name })
	return own
}

// ask has the tests of a package look for mutants that are left, and takes those out that
// they notice.
func (r *trial) ask(name string, among map[int]*mutant, left map[int]bool) {
	for _, n := range slices.Sorted(maps.Keys(among)) {
		if !left[n] {
			continue
		}
		p := r.program(name, n, among[n])
		if p == nil {
			return // the package has no tests
		}
		reached, noticed := p.notices(n)
		r.reached[n] = r.reached[n] || reached
		left[n] = !noticed
	}
}

// tell lists what is left of a package, and returns how many were noticed.
func (r *trial) tell(name string, left map[int]bool) (noticed int) {
	own := r.of(name)
	for _, n := range slices.Sorted(maps.Keys(own)) {
		if !left[n] {
			noticed++
			continue
		}
		how := map[bool]string{true: "not noticed", false: "not reached"}[r.reached[n]]
		r.Logf("%d %s: %s", n, how, strings.TrimPrefix(own[n].String(), r.root+"/"))
	}
	r.Logf("%s: %d of %d noticed", name, noticed, len(own))
	return noticed
}

// program is the tests of a package with a mutant in them that can be chosen, built and
// looked at the first time that it is needed. A mutant that cannot be chosen has one of
// its own, every test of which is taken to reach it.
func (r *trial) program(name string, number int, m *mutant) *program {
	if !m.woven() {
		p := build(r.T, r.root, name, overlay(r.T, map[int]*mutant{number: m}))
		if p == nil {
			return nil
		}
		for i := range p.tests {
			p.tests[i].reaches = map[int]bool{number: true}
		}
		return p
	}
	p, built := r.programs[name]
	if !built {
		begun := time.Now()
		if p = build(r.T, r.root, name, r.laid); p != nil {
			p.look(r.T)
			r.Logf("%s: %d tests in %.0f s", name, len(p.tests), time.Since(begun).Seconds())
		}
		r.programs[name] = p
	}
	return p
}

// names are the packages of a list, without dots before them.
func names(list string) (names []string) {
	for name := range strings.SplitSeq(list, ",") {
		if name != "" {
			names = append(names, path.Clean(name))
		}
	}
	return names
}

// folderOf is the package that a mutant is in.
func folderOf(root string, m *mutant) string {
	name, _ := filepath.Rel(root, filepath.Dir(m.file.path))
	return filepath.ToSlash(name)
}

// sample takes mutants of each package that are Go, numbered from 1.
func sample(t *testing.T, root string) map[int]*mutant {
	t.Helper()
	sampled, number := map[int]*mutant{}, 0
	for _, name := range names(*in) {
		f := newFolder(t, root, name)
		var all []mutant
		for _, file := range f.files {
			if strings.HasSuffix(file.path, ".gen.go") {
				continue
			}
			all = append(all, file.mutants()...)
		}
		random := rand.New(rand.NewPCG(*seed, 0))
		random.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		left := *countOf
		for i := range all {
			if left > 0 && f.compiles(&all[i]) {
				left--
				number++
				sampled[number] = &all[i]
			}
		}
	}
	if *these != "" {
		chosen := strings.Split(*these, ",")
		maps.DeleteFunc(sampled, func(n int, _ *mutant) bool { return !slices.Contains(chosen, strconv.Itoa(n)) })
	}
	return sampled
}
