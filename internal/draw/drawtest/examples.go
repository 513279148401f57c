package drawtest

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// Worked solves the examples of every kind that were worked by hand.
func Worked(t *testing.T) (samples []Sample) {
	for _, k := range repertoire.Kinds() {
		text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "kinds", k.Name+".json"))
		require.NoError(t, err)
		var rows []struct {
			Name    string
			Request map[string]string
		}
		require.NoError(t, json.Unmarshal(text, &rows))
		for _, row := range rows {
			s, err := solve.Solve(context.Background(), Asked(t, k.Name, row.Request))
			require.NoError(t, err)
			samples = append(samples, Sample{k.Name + ", " + row.Name, s})
		}
	}
	return samples
}

// Asked reads a request as the tables of examples have it.
func Asked(t *testing.T, kind string, names map[string]string) *solve.Request {
	t.Helper()
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok)
	unit := measure.Inch
	if names["unit"] == "mm" {
		unit = measure.Millimetre
	}
	r := &solve.Request{Kind: k, Unit: unit, CutError: measure.Sixtyfourths(1), ScoreError: measure.Sixtyfourths(1), Options: map[string]enclosure.Value{}}
	length := func(text string) measure.Length {
		l, err := measure.Parse(text, unit, measure.ClearComma)
		require.NoError(t, err)
		return l
	}
	step := func(text string) measure.Step {
		s, err := measure.ParseStep(text)
		if err != nil {
			s, err = measure.ParseStep(text + " " + unit.String())
		}
		require.NoError(t, err)
		return s
	}
	lengths := map[string]*measure.Length{"width": &r.Width, "height": &r.Height, "thickness": &r.Thickness, "caliper": &r.Caliper,
		"clearance_min": &r.Fit.Min, "clearance_max": &r.Fit.Max}
	steps := map[string]*measure.Step{"ruler": &r.Ruler, "step": &r.Step}
	for name, text := range names {
		switch {
		case name == "unit":
		case lengths[name] != nil:
			*lengths[name] = length(text)
		case steps[name] != nil:
			*steps[name] = step(text)
		case name == "fit":
			at := slices.IndexFunc(enclosure.NamedFits(), func(f enclosure.NamedFit) bool { return f.Name == text })
			r.FitName, r.Fit = text, enclosure.NamedFits()[at].Range(unit)
		default:
			r.Options[name] = optionValue(t, k, name, text, length)
		}
	}
	return r
}

func optionValue(t *testing.T, k *enclosure.Kind, name, text string, length func(string) measure.Length) enclosure.Value {
	t.Helper()
	for _, p := range k.Params {
		if p.Name != name {
			continue
		}
		switch p.Type {
		case enclosure.ChoiceParam:
			require.Contains(t, p.Choices, text)
			return enclosure.Value{Choice: text}
		case enclosure.CountParam:
			n, err := strconv.ParseInt(text, 10, 64)
			require.NoError(t, err)
			return enclosure.Value{Count: n}
		default:
			return enclosure.Value{Length: length(text)}
		}
	}
	t.Fatalf("%s has no option %q", k.Name, name)
	return enclosure.Value{}
}
