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

// tally is what became of the mutants of one package.
type tally struct{ noticed, tried int }

// TestSample breaks a sample of places one by one, and lists those that no test
// has noticed.
func TestSample(t *testing.T) {
	if *in == "" {
		t.Skip("it is run by hand: -in names the packages that are broken")
	}
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	sampled := sample(t, root)
	programs := map[string]*program{}
	together := maps.Clone(sampled)
	maps.DeleteFunc(together, func(_ int, m *mutant) bool { return !m.woven() })
	laid := overlay(t, together)
	for _, name := range slices.Compact(slices.Sorted(slices.Values(append(names(*in), names(*by)...)))) {
		if p := build(t, root, name, laid); p != nil {
			programs[name] = p
		}
	}
	for _, name := range slices.Sorted(maps.Keys(programs)) {
		begun := time.Now()
		programs[name].look(t)
		t.Logf("%s: %d tests in %.0f s", name, len(programs[name].tests), time.Since(begun).Seconds())
	}
	rates := map[string]*tally{}
	for _, n := range slices.Sorted(maps.Keys(sampled)) {
		m := sampled[n]
		name := folderOf(root, m)
		if rates[name] == nil {
			rates[name] = &tally{}
		}
		rates[name].tried++
		looking := programs
		if !m.woven() {
			looking = alone(t, root, n, m)
		}
		if noticed, how := notices(looking, name, n); noticed {
			rates[name].noticed++
		} else {
			t.Logf("%d %s: %s", n, how, strings.TrimPrefix(m.String(), root+"/"))
		}
	}
	var all tally
	for _, name := range names(*in) {
		if r := rates[name]; r != nil {
			t.Logf("%s: %d of %d noticed", name, r.noticed, r.tried)
			all = tally{all.noticed + r.noticed, all.tried + r.tried}
		}
	}
	t.Logf("all: %d of %d noticed", all.noticed, all.tried)
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

// alone builds the programs of a mutant that cannot be chosen while they run; it
// is taken as reached by every test.
func alone(t *testing.T, root string, number int, m *mutant) map[string]*program {
	t.Helper()
	programs, laid := map[string]*program{}, overlay(t, map[int]*mutant{number: m})
	for _, name := range append([]string{folderOf(root, m)}, names(*by)...) {
		if p := build(t, root, name, laid); p != nil {
			for i := range p.tests {
				p.tests[i].reaches = map[int]bool{number: true}
			}
			programs[name] = p
		}
	}
	return programs
}

// notices asks the tests of the mutant's own package, then those of others.
func notices(programs map[string]*program, own string, number int) (noticed bool, how string) {
	how = "not reached"
	for _, name := range append([]string{own}, names(*by)...) {
		if p := programs[name]; p != nil {
			reached, noticed := p.notices(number)
			if noticed {
				return true, ""
			}
			if reached {
				how = "not noticed"
			}
		}
	}
	return false, how
}
