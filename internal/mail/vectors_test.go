package mail

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

// post finds a post by its name.
func post(t require.TestingT, name string) *Post {
	for _, p := range Posts() {
		if p.Name == name {
			return p
		}
	}
	require.Fail(t, "no such post", name)
	return nil
}

// piece reads a size such as "114 x 162 mm".
func piece(size string) *Piece {
	ls := measure.MustParseSize(size)
	return &Piece{Width: ls[0], Height: ls[1]}
}

// className is the class that takes the piece, "none" if there is none.
func (j *Judgement) className() string {
	if j.Class == nil {
		return "none"
	}
	return j.Class.Name
}

// Envelopes in trade use (ISO 269 and the sizes of the United States, as in the
// data file of GNU units 2.22), sorted by hand by size alone. The sources of
// the bounds stand beside the tables of the posts.
func TestEnvelopes(t *testing.T) {
	for _, e := range []struct{ name, size, us, uk, ca, de, au string }{
		{"C6", "114 x 162 mm", "letter", "letter", "standard", "standardbrief", "small-letter"},
		{"C5", "162 x 229 mm", "flat", "letter", "other", "grossbrief", "large-letter"},
		{"C4", "229 x 324 mm", "flat", "large-letter", "other", "grossbrief", "large-letter"},
		{"DL", "110 x 220 mm", "letter", "letter", "standard", "standardbrief", "small-letter"},
		{"C6/C5", "114 x 229 mm", "letter", "letter", "standard", "standardbrief", "small-letter"},
		{"C7", "81 x 114 mm", "none", "letter", "none", "kompaktbrief", "small-letter"},
		{"B6, at the German limit", "125 x 176 mm", "letter", "letter", "standard", "standardbrief", "small-letter"},
		{"A1 or 4 bar", "3 5/8 x 5 1/8 in", "letter", "letter", "none", "kompaktbrief", "small-letter"},
		{"A2", "4 3/8 x 5 3/4 in", "letter", "letter", "standard", "grossbrief", "small-letter"},
		{"A6", "4 3/4 x 6 1/2 in", "letter", "letter", "standard", "grossbrief", "small-letter"},
		{"A7", "5 1/4 x 7 1/4 in", "letter", "letter", "standard", "grossbrief", "large-letter"},
		{"A8", "5 1/2 x 8 1/8 in", "letter", "letter", "standard", "grossbrief", "large-letter"},
		{"A9", "5 3/4 x 8 3/4 in", "letter", "letter", "standard", "grossbrief", "large-letter"},
		{"A10", "6 x 9 1/2 in", "letter", "large-letter", "standard", "grossbrief", "large-letter"},
		{"#6 3/4", "3 5/8 x 6 1/2 in", "letter", "letter", "standard", "standardbrief", "small-letter"},
		{"#10", "4 1/8 x 9 1/2 in", "letter", "large-letter", "standard", "grossbrief", "large-letter"},
		{"#11", "4 1/2 x 10 3/8 in", "letter", "large-letter", "other", "grossbrief", "large-letter"},
		{"#14, at the limit of the US", "5 x 11 1/2 in", "letter", "large-letter", "other", "grossbrief", "large-letter"},
		{"#16", "6 x 12 in", "flat", "large-letter", "other", "grossbrief", "large-letter"},
		{"#6 1/4", "3 1/2 x 6 in", "letter", "letter", "none", "kompaktbrief", "small-letter"},
		{"5 1/4 in square", "5 1/4 x 5 1/4 in", "letter", "letter", "none", "grossbrief", "large-letter"},
	} {
		for name, want := range map[string]string{"us": e.us, "uk": e.uk, "ca": e.ca, "de": e.de, "au": e.au} {
			j := post(t, name).Judge(piece(e.size))
			assert.Equal(t, want, j.className(), "%s by %s", e.name, name)
		}
	}
}

// The Belgian and the international rules differ between sources where these
// rows say that they may take a piece.
func TestInternationalAndBelgianSizes(t *testing.T) {
	for _, e := range []struct {
		size, post, class string
		verdict           Verdict
	}{
		{"110 x 220 mm", "upu", "standardized", Takes},
		{"120 x 235 mm", "upu", "standardized", Takes},   // the greatest that Korea Post quotes
		{"125 x 235 mm", "upu", "standardized", MayTake}, // that Cyprus quotes
		{"125.1 x 235 mm", "upu", "letter", Takes},
		{"90 x 140 mm", "upu", "standardized", Takes},
		{"88 x 138 mm", "upu", "standardized", MayTake}, // by the 2 mm allowed for
		{"87.9 x 138 mm", "upu", "none", Refused},
		{"600 x 290 mm", "upu", "letter", Takes},
		{"602 x 290 mm", "upu", "letter", MayTake},
		{"602.1 x 290 mm", "upu", "none", Refused},
		{"125 x 235 mm", "be", "standardised", Takes},
		{"127 x 237 mm", "be", "standardised", MayTake},
		{"127.1 x 235 mm", "be", "none", Refused},
		{"90 x 140 mm", "be", "standardised", Takes},
	} {
		q := piece(e.size)
		q.Thickness, q.Mass = measure.Millimetres(1), Grams(10)
		j := post(t, e.post).Judge(q)
		assert.Equal(t, e.class, j.className(), "%s by %s", e.size, e.post)
		assert.Equal(t, e.verdict, j.Verdict, "%s by %s", e.size, e.post)
	}
}

// Thickness and mass decide where the size leaves a choice.
func TestThicknessAndMass(t *testing.T) {
	for _, e := range []struct {
		post, size, thickness string
		mass                  Mass
		class                 string
	}{
		{"us", "5 x 7 in", "1/4 in", Ounces(3.5), "letter"},
		{"us", "5 x 7 in", "0.251 in", Ounces(3), "flat"},
		{"us", "5 x 7 in", "1/4 in", Ounces(3.51), "flat"}, // pays as a flat (DMM 101.1.1c)
		{"us", "15 x 12 in", "3/4 in", Ounces(10), "flat"},
		{"us", "15 x 12 in", "0.751 in", Ounces(10), "none"},
		{"us", "5 x 7 in", "0.006 in", Ounces(1), "none"},
		{"us", "3 x 4 in", "0.3 in", Ounces(1), "flat"}, // over 1/4 in no least size (Notice 59)
		{"uk", "114 x 162 mm", "5 mm", Grams(100), "letter"},
		{"uk", "114 x 162 mm", "5.1 mm", Grams(100), "large-letter"},
		{"uk", "114 x 162 mm", "5 mm", Grams(100.1), "large-letter"},
		{"uk", "353 x 250 mm", "25 mm", Grams(750), "large-letter"},
		{"uk", "353 x 250 mm", "25 mm", Grams(751), "none"},
		{"ca", "245 x 156 mm", "5 mm", Grams(50), "standard"},
		{"ca", "245 x 156 mm", "5 mm", Grams(51), "other"},
		{"ca", "380 x 270 mm", "20 mm", Grams(500), "other"},
		{"ca", "380 x 270 mm", "20.1 mm", Grams(500), "none"},
		{"ca", "140 x 90 mm", "0.17 mm", Grams(5), "none"},
		{"ca", "140 x 90 mm", "0.18 mm", Grams(1), "none"},
		{"de", "114 x 162 mm", "5 mm", Grams(20), "standardbrief"},
		{"de", "114 x 162 mm", "5.1 mm", Grams(20), "kompaktbrief"},
		{"de", "114 x 162 mm", "10 mm", Grams(51), "grossbrief"},
		{"de", "114 x 162 mm", "20 mm", Grams(1000), "maxibrief"},
		{"de", "114 x 162 mm", "50 mm", Grams(1000), "maxibrief"},
		{"de", "114 x 162 mm", "50.1 mm", Grams(1000), "none"},
		{"au", "130 x 240 mm", "5 mm", Grams(249.9), "small-letter"},
		{"au", "130 x 240 mm", "5 mm", Grams(250), "large-letter"}, // "less than 250 grams"
		{"au", "260 x 360 mm", "20 mm", Grams(500), "large-letter"},
		{"be", "110 x 220 mm", "0.15 mm", Grams(50), "standardised"},
		{"be", "110 x 220 mm", "0.14 mm", Grams(50), "none"},
		{"be", "110 x 220 mm", "1 mm", Grams(51), "none"},
		{"upu", "110 x 220 mm", "5 mm", Grams(20), "standardized"},
		{"upu", "110 x 220 mm", "5 mm", Grams(21), "letter"},
		{"upu", "110 x 220 mm", "5 mm", Grams(2001), "none"},
		{"upu", "400 x 400 mm", "100 mm", Grams(1000), "letter"},
		{"upu", "400 x 400 mm", "103 mm", Grams(1000), "none"},
	} {
		q := piece(e.size)
		q.Thickness, q.Mass = measure.MustParse(e.thickness), e.mass
		j := post(t, e.post).Judge(q)
		assert.Equal(t, e.class, j.className(), "%s x %s of %g g by %s", e.size, e.thickness, e.mass.Grams(), e.post)
	}
}
