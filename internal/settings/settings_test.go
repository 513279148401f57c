package settings_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
)

// mm and at are shorthand for the tables below.
func mm(text string) measure.Length { return measure.MustParse(text + "mm") }
func at(x, y string) pattern.Point  { return pattern.At(mm(x), mm(y)) }
func crease(a, b pattern.Point) pattern.Crease {
	return pattern.Crease{A: a, B: b, Fold: pattern.Valley, Angle: 90}
}

// strip is 100 by 40 mm, scored at 20 and 80, a tab's score a caliper inside
// the first, and a slit 12 deep from the bottom at 60.
func strip() pattern.Pattern {
	return pattern.Pattern{Caliper: mm("0.3"), Pieces: []pattern.Piece{{
		Quantity: 1, Width: mm("100"), Height: mm("40"),
		Creases: []pattern.Crease{crease(at("20", "0"), at("20", "40")), crease(at("80", "0"), at("80", "40")),
			crease(at("20.3", "0"), at("20.3", "8")), crease(at("0", "0"), at("10", "10"))},
		Cuts: []pattern.Cut{{Kind: pattern.Slit, From: "bottom", At: mm("60"), Depth: mm("12")}},
	}}}
}

func TestOf(t *testing.T) {
	p, step := strip(), measure.Marks(measure.Millimetre)[2]
	line := func(e settings.Edge, creases ...int) settings.Use {
		return settings.Use{Do: settings.Line, Edge: e, Creases: creases, Cut: -1}
	}
	list := settings.Of(&p, step, step, settings.Nearer)
	assert.Equal(t, []settings.Setting{
		{Tool: settings.Cut, At: mm("12"), Serves: []settings.Use{{Do: settings.Depth, Edge: settings.Bottom}}},
		{Tool: settings.Cut, At: mm("100"), Serves: []settings.Use{{Do: settings.Blank, Edge: settings.Left, Cut: -1}}},
		{Tool: settings.Cut, At: mm("40"), Serves: []settings.Use{{Do: settings.Blank, Edge: settings.Bottom, Cut: -1}, {Do: settings.Place, Edge: settings.Right}}},
		{Tool: settings.Score, At: mm("20"), Papers: 1, Serves: []settings.Use{line(settings.Left, 2)}},
		{Tool: settings.Score, At: mm("20"), Serves: []settings.Use{line(settings.Left, 0), line(settings.Right, 1)}},
	}, list)
	assert.Len(t, settings.Of(&p, step, step, settings.OneEdge), 7, "20 and 80 no longer share a stop, nor 40 and 60")
}

// Slits and slots have a depth and, along the edge that they begin at, a place; what
// begins at no edge, or is no slit, has none. A score that slants or is flat is set by
// points.
func TestWhatHasAStop(t *testing.T) {
	step := measure.Marks(measure.Millimetre)[2]
	piece := pattern.Piece{Quantity: 1, Width: mm("100"), Height: mm("60")}
	of := func(cuts []pattern.Cut, creases ...pattern.Crease) []settings.Use {
		piece.Cuts, piece.Creases = cuts, creases
		var uses []settings.Use
		for _, s := range settings.Of(&pattern.Pattern{Caliper: mm("0.3"), Pieces: []pattern.Piece{piece}}, step, step, settings.OneEdge) {
			for _, u := range s.Serves {
				if u.Do != settings.Blank {
					u.Creases = nil
					uses = append(uses, u)
				}
			}
		}
		return uses
	}
	cut := func(kind pattern.CutKind, from, on string) []pattern.Cut {
		return []pattern.Cut{{Kind: kind, From: from, On: on, At: mm("20"), Depth: mm("12")}}
	}
	depth := func(e settings.Edge) settings.Use { return settings.Use{Do: settings.Depth, Edge: e} }
	place := func(e settings.Edge) settings.Use { return settings.Use{Do: settings.Place, Edge: e} }
	for from, edge := range map[string]settings.Edge{"left": settings.Left, "right": settings.Right, "bottom": settings.Bottom, "top": settings.Top} {
		along := settings.Left
		if edge == settings.Left || edge == settings.Right {
			along = settings.Bottom
		}
		for _, kind := range []pattern.CutKind{pattern.Slit, pattern.Slot} {
			assert.Equal(t, []settings.Use{depth(edge), place(along)}, of(cut(kind, from, "")), "%v from the %s", kind, from)
			assert.Equal(t, []settings.Use{depth(edge)}, of(cut(kind, from, "score 1")), "a %v on a score lies where that does", kind)
		}
	}
	assert.Empty(t, of(cut(pattern.Slit, "", "")))
	assert.Empty(t, of(cut(pattern.Notch, "left", "")))
	level := settings.Use{Do: settings.Line, Edge: settings.Bottom, Cut: -1}
	assert.Equal(t, []settings.Use{level}, of(nil, crease(at("0", "20"), at("100", "20"))))
	assert.Empty(t, of(nil, crease(at("0", "20"), at("100", "20.1"))))
}

// A line in the middle is measured from the left; whatever the datum, both ways
// of saying where a line lies name the same place.
func TestFrom(t *testing.T) {
	for _, d := range []settings.Datum{settings.Nearer, settings.OneEdge} {
		for _, x := range []string{"1", "49.999", "50", "50.001", "99"} {
			from, far := d.From(mm(x), mm("100"))
			if far {
				assert.Equal(t, settings.Nearer, d)
				from = mm("100").Sub(from)
			}
			assert.Equal(t, mm(x), from)
		}
	}
	_, far := settings.Nearer.From(mm("50"), mm("100"))
	assert.False(t, far)
}
