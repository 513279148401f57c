package main

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// figures are what some runs measured, by benchmark and metric.
type figures map[[2]string][]float64

// processors is what the testing package puts behind the name of a benchmark.
var processors = regexp.MustCompile(`-\d+$`)

// parse reads what benchmarks print: a name, how often it ran, then figures and their metrics.
func parse(text string) figures {
	read := figures{}
	for line := range strings.Lines(text) {
		fields := strings.Fields(line)
		if len(fields) < 4 || !strings.HasPrefix(fields[0], "Benchmark") {
			continue
		}
		name := processors.ReplaceAllString(strings.TrimPrefix(fields[0], "Benchmark"), "")
		for i := 2; i+1 < len(fields); i += 2 {
			if v, err := strconv.ParseFloat(fields[i], 64); err == nil {
				key := [2]string{name, fields[i+1]}
				read[key] = append(read[key], v)
			}
		}
	}
	return read
}

// middle returns the middle figure of a benchmark.
func (f figures) middle(benchmark, metric string) (float64, error) {
	all := slices.Sorted(slices.Values(f[[2]string{benchmark, metric}]))
	if len(all) == 0 {
		return 0, fmt.Errorf("the benchmark %s reports no %s", benchmark, metric)
	}
	return all[len(all)/2], nil
}

// head is how the table begins.
const head = "| what | measured | beside it, in the same run |\n| --- | --- | --- |\n"

// updated puts into the table of a text what was taken. Other rows keep what they tell.
func updated(text string, taken map[*suite]figures) (string, error) {
	before, rest, found := strings.Cut(text, head)
	if !found {
		return "", errors.New("there is no table of measures in it")
	}
	told := map[string]string{}
	for strings.HasPrefix(rest, "|") {
		var line string
		line, rest, _ = strings.Cut(rest, "\n")
		told[strings.Split(line, " | ")[0]] = line + "\n"
	}
	table := head
	for _, r := range rows {
		line := told["| "+r.what]
		if f := taken[r.suite]; f != nil {
			v, err := f.of(r)
			if err != nil {
				return "", err
			}
			line = fmt.Sprintf("| %s | %s | %s |\n", r.what, spelt(v), r.beside)
		}
		table += line
	}
	return before + table + rest, nil
}

// of returns the figure of a row.
func (f figures) of(r row) (float64, error) {
	v, err := f.middle(r.benchmark, r.metric)
	if err != nil || r.floor == "" {
		return v, err
	}
	floor, err := f.middle(r.floor, r.metric)
	return v / floor, err
}

// spelt writes two digits of a ratio, and whole numbers whole.
func spelt(v float64) string {
	if v >= 10 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strings.TrimSuffix(strconv.FormatFloat(v, 'f', 2, 64), ".00")
}
