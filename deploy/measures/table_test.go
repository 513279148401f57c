package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What the testing package prints, by the format that its documentation of
// BenchmarkResult and the "Go Benchmark Data Format" state.
const printed = `goos: linux
pkg: creasefit/api
BenchmarkSolveCall/tray-2         	    7437	         0.2812 fresh-of-floor	         0.8935 repeated-of-floor
BenchmarkSolveCall/tray-2         	    7437	         0.2512 fresh-of-floor	         0.9935 repeated-of-floor
BenchmarkSolveCall/tray-2         	    7437	         0.3812 fresh-of-floor	         0.9035 repeated-of-floor
BenchmarkSVG-2     	    2000	      4000 ns/op	     120 B/op	       3 allocs/op
BenchmarkFloor     	    2000	      1600 ns/op
PASS
`

func TestFiguresAreTheMiddleOnes(t *testing.T) {
	f := parse(printed)
	v, err := f.middle("SolveCall/tray", "fresh-of-floor")
	require.NoError(t, err)
	assert.Equal(t, 0.2812, v)
	v, err = f.middle("Floor", "ns/op")
	require.NoError(t, err)
	assert.Equal(t, 1600.0, v)
	_, err = f.middle("SolveCall/tray", "ns/op")
	assert.EqualError(t, err, "the benchmark SolveCall/tray reports no ns/op")
}

// What was not taken stays, and what nothing takes any more goes.
func TestTableHasWhatWasTaken(t *testing.T) {
	pdf, png := "| a drawing as PDF | 1 | times a floor |\n", "| a drawing as PNG, 800 pixels wide | 7 | times the encoding of an empty picture |\n"
	got, err := updated("before\n\n"+head+png+pdf+"\nafter | all\n", map[*suite]figures{vectors: parse(printed)})
	require.NoError(t, err)
	assert.Equal(t, "before\n\n"+head+"| a drawing as SVG | 2.50 | times the copying of its bytes |\n"+png+"\nafter | all\n", got)
	_, err = updated(head, map[*suite]figures{calls: parse(printed)})
	assert.EqualError(t, err, "the benchmark SolveCall/slotted-band reports no fresh-of-floor")
	_, err = updated("no table", nil)
	assert.Error(t, err)
	assert.Equal(t, []string{"0.28", "3", "1.02", "442"}, []string{spelt(0.2812), spelt(3), spelt(1.024), spelt(441.7)})
}

// README.md tells every measure, and none that nothing takes.
func TestReadmeTellsTheMeasures(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, rest, found := strings.Cut(string(readme), head)
	require.True(t, found)
	for _, r := range rows {
		line, left, _ := strings.Cut(rest, "\n")
		assert.Regexp(t, "^"+regexp.QuoteMeta("| "+r.what+" | ")+`[\d.]+`+regexp.QuoteMeta(" | "+r.beside+" |")+"$", line)
		rest = left
	}
	assert.False(t, strings.HasPrefix(rest, "|"))
}

// Every row is taken by the benchmark of that name, in the package of its suite.
func TestRowsAreMeasured(t *testing.T) {
	for _, r := range rows {
		for _, name := range []string{r.benchmark, r.floor} {
			if name == "" {
				continue
			}
			name, _, _ = strings.Cut(name, "/")
			assert.True(t, declared(t, r.suite.folder, name), "%s has no Benchmark%s", r.suite.folder, name)
			assert.Regexp(t, r.suite.benchmarks, "Benchmark"+name)
		}
	}
}

// declared reports whether the tests of a folder have a benchmark.
func declared(t *testing.T, folder, name string) bool {
	entries, err := os.ReadDir("../../" + folder)
	require.NoError(t, err)
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), "_test.go") {
			text, err := os.ReadFile("../../" + folder + "/" + e.Name())
			require.NoError(t, err)
			if strings.Contains(string(text), "\nfunc Benchmark"+name+"(") {
				return true
			}
		}
	}
	return false
}
