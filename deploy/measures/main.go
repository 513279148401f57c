// Command measures takes the figures of README.md's table, each beside its floor or
// its peer in the same run, and writes the table:
//
//	go run ./deploy/measures            prints it
//	go run ./deploy/measures README.md  puts it where the file has one
//
// A figure is the middle of so many runs as -count says. The published orders of cut
// plans are planned with -long alone; what was not measured keeps its line. Figures of a
// machine that does other things are worth little.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"strings"
)

// row is a line of the table.
type row struct {
	suite     *suite
	benchmark string // the name without Benchmark
	metric    string
	floor     string // the benchmark whose metric the figure is told in, if it is not a ratio itself
	what      string
	beside    string
}

// suite is what one run of a package's benchmarks measures.
type suite struct {
	folder, benchmarks, time string
	long                     bool // only taken when asked for
}

var (
	calls    = &suite{folder: "./api", benchmarks: "SolveCall", time: "6000x"}
	streams  = &suite{folder: "./api", benchmarks: "^BenchmarkBatch$|WideTable", time: "3x"}
	floods   = &suite{folder: "./api", benchmarks: "Overload|Shed", time: "1x"}
	readings = &suite{folder: "./internal/rounding", benchmarks: "Glpsol", time: "40x"}
	vectors  = &suite{folder: "./internal/draw/svg", benchmarks: ".", time: "2000x"}
	models   = &suite{folder: "./internal/draw/glb", benchmarks: ".", time: "300x"}
	pixels   = &suite{folder: "./internal/draw/png", benchmarks: ".", time: "30x"}
	copies   = &suite{folder: "./internal/sheet/search", benchmarks: "Many", time: "1x", long: true}
	bins     = &suite{folder: "./internal/sheet/search", benchmarks: "Bins", time: "1x", long: true}
)

const (
	floorRate = "calls in the processor time of one of an echo handler that binds, validates and writes the same bytes"
	fresh     = "fresh-of-floor"
	repeated  = "repeated-of-floor"
)

var rows = []row{
	{calls, "SolveCall/slotted-band", fresh, "", "a slotted band over HTTP, no request like another", floorRate},
	{calls, "SolveCall/tray", fresh, "", "a tray", "the same"},
	{calls, "SolveCall/tuck-carton", fresh, "", "a tuck carton", "the same"},
	{calls, "SolveCall/dividers", fresh, "", "dividers", "the same"},
	{calls, "SolveCall/slotted-band", repeated, "", "a slotted band that was answered lately", "the same"},
	{calls, "SolveCall/tray", repeated, "", "a tray that was answered lately", "the same"},
	{calls, "SolveCall/tuck-carton", repeated, "", "a tuck carton that was answered lately", "the same"},
	{calls, "SolveCall/dividers", repeated, "", "dividers that were answered lately", "the same"},
	{streams, "Batch", "batch-of-alone", "", "a stream of lines over HTTP", "lines while as many are read, solved and written in the process"},
	{streams, "WideTable", "wide-of-lines", "", "10 000 products as a wide table", "times what they take as lines of JSON"},
	{floods, "Shed", "shed-of-answered", "", "a call that is turned away", "times the processor time of one that is answered"},
	{floods, "Overload", "flooded", "", "four times the calls that can be answered", "of those answered at the peak still are"},
	{floods, "Overload", "kept", "", "cheap calls beside dear ones", "of their rate alone"},
	{floods, "Overload", "p99-ratio", "", "the slowest of a hundred cheap calls beside dear ones", "times the slowest of a hundred alone"},
	{readings, "Glpsol", "times-as-long", "", "the finest readings that meet, by glpsol, net of its start", "times the search's"},
	{vectors, "SVG", "ns/op", "Floor", "a drawing as SVG", "times the copying of its bytes"},
	{models, "GLB", "ns/op", "Floor", "a drawing as glTF", "times the folding of its pattern"},
	{pixels, "PNG800", "ns/op", "Floor", "a drawing as PNG, 800 pixels wide", "times the encoding of an empty picture"},
	{copies, "Many", "proven", "", "published orders of many copies, 2 s of work each", "of 42 plans proven least"},
	{copies, "Many", "most-above", "", "the one farthest from its bound", "sheets above it"},
	{bins, "Bins", "proven", "", "public bins of 20 to 100 pieces, 2 s each", "of 500 plans proven least"},
	{bins, "Bins", "met", "", "those whose optimum is published", "of 364 met"},
}

func main() {
	count := flag.Int("count", 3, "runs of which a figure is the middle")
	long := flag.Bool("long", false, "plan the public orders too")
	flag.Parse()
	if err := run(*count, *long, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "measures:", err)
		os.Exit(1)
	}
}

// run measures and prints the table, or puts it into a file.
func run(count int, long bool, into string) error {
	old := head
	if into != "" {
		b, err := os.ReadFile(into)
		if err != nil {
			return err
		}
		old = string(b)
	}
	taken, err := measure(count, long)
	if err != nil {
		return err
	}
	updated, err := updated(old, taken)
	if err != nil {
		return fmt.Errorf("%s: %w", into, err)
	}
	if into == "" {
		fmt.Print(updated)
		return nil
	}
	return os.WriteFile(into, []byte(updated), 0o644)
}

// measure runs the suites.
func measure(count int, long bool) (map[*suite]figures, error) {
	taken := map[*suite]figures{}
	for _, r := range rows {
		if taken[r.suite] != nil || r.suite.long && !long {
			continue
		}
		text, err := r.suite.run(count)
		if err != nil {
			return nil, err
		}
		taken[r.suite] = parse(text)
	}
	return taken, nil
}

// run returns what the benchmarks print; memory is collected as the program does it.
func (s *suite) run(count int) (string, error) {
	c := exec.Command("go", "test", s.folder, "-run", "^$", "-bench", s.benchmarks, "-benchtime", s.time, "-count", fmt.Sprint(count), "-timeout", "2h")
	c.Env = append(os.Environ(), "GOGC=400")
	var out strings.Builder
	c.Stdout, c.Stderr = &out, os.Stderr
	fmt.Fprintln(os.Stderr, strings.Join(c.Args, " "))
	if err := c.Run(); err != nil {
		return "", fmt.Errorf("%s: %w\n%s", s.folder, err, out.String())
	}
	return out.String(), nil
}
