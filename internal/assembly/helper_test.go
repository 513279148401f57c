package assembly_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// asked is a request for a tasting tin of the stall in paper of 0.3 mm, with
// choices and lengths of the kind's own as "name=word" or "name=12.5" in mm.
func asked(t testing.TB, kind string, options ...string) *solve.Request {
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok, kind)
	marks := measure.Marks(measure.Millimetre)
	r := &solve.Request{
		Kind: k, Unit: measure.Millimetre, Width: measure.Millimetres(88), Height: measure.Millimetres(125), Thickness: measure.Millimetres(38),
		Caliper: measure.Micrometres(300), Ruler: marks[len(marks)-1], FitName: "easy", Fit: enclosure.NamedFits()[1].Range(measure.Millimetre),
		Options: map[string]enclosure.Value{},
	}
	for _, o := range options {
		name, text, _ := strings.Cut(o, "=")
		give(t, r, name, text)
	}
	return r
}

// give gives a request a size of the contents, the caliper, or an option.
func give(t testing.TB, r *solve.Request, name, text string) {
	length := func() measure.Length { return measure.MustParse(text + " mm") }
	switch name {
	case "width":
		r.Width = length()
	case "height":
		r.Height = length()
	case "thickness":
		r.Thickness = length()
	case "caliper":
		r.Caliper = length()
	default:
		for _, p := range r.Kind.Params {
			if p.Name != name {
				continue
			}
			switch p.Type {
			case enclosure.ChoiceParam:
				r.Options[name] = enclosure.Value{Choice: text}
			case enclosure.CountParam:
				var n int64
				_, err := fmt.Sscan(text, &n)
				require.NoError(t, err)
				r.Options[name] = enclosure.Value{Count: n}
			default:
				r.Options[name] = enclosure.Value{Length: length()}
			}
			return
		}
		require.Fail(t, "no such option", "%s of %s", name, r.Kind.Name)
	}
}

// ordered solves a request and finds its order.
func ordered(t testing.TB, r *solve.Request) (*solve.Solution, *assembly.Order) {
	t.Helper()
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	o, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
	require.NoError(t, err)
	return s, o
}

// told is an order in a line a step, without the making of blanks.
func told(p *pattern.Pattern, o *assembly.Order) (lines []string) {
	for i := range o.Steps {
		if s := &o.Steps[i]; s.Do > assembly.Slit {
			lines = append(lines, toldStep(p, s))
		}
	}
	return lines
}

func toldStep(p *pattern.Pattern, s *assembly.Step) string {
	var parts []string
	for _, turn := range s.Turns {
		piece := &p.Pieces[turn.Piece]
		name := piece.Panels[piece.Creases[turn.Crease].To].Name
		if len(p.Pieces) > 1 {
			name = piece.Name + "'s " + name
		}
		parts = append(parts, name)
	}
	for _, travel := range s.Travels {
		if travel.Piece < 0 {
			parts = append(parts, "contents")
		} else {
			parts = append(parts, p.Pieces[travel.Piece].Name)
		}
	}
	return s.Do.String() + ": " + strings.Join(parts, ", ")
}
