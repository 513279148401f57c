package enclosure_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// filled is how much of its rectangle an ornament of a path fills.
func filled(t *testing.T, path string) float64 {
	p := shaped(t, path, "2 in", "2 in").Piece()
	return (area(p.Panels[0].Outline) + area(p.Panels[1].Outline)) / (p.Width.Millimetres() * p.Height.Millimetres())
}

// Areas by hand. A segment of a parabola is two thirds of its rectangle (Archimedes);
// the cubic has x = 120t^2 - 80t^3 and y = 120t(1-t), so an area of 960 in 40 x 30.
func TestPathsDrawTheirOutlines(t *testing.T) {
	rows := []struct {
		want  float64
		paths []string
	}{
		{1, []string{"M0 0L40 0L40 30L0 30Z", "M0 0H40V30H0Z", "m5,5h40v30h-40z", "M0,0 40,0 40,30 0,30", " m 0 0 40 0 0 30 -40 0 z ", "M.5.5L40.5.5 40.5 30.5.5 30.5z", "M0-0L4e1 0 40 3E+1 0 +30Z"}},
		{0.5, []string{"M0 30L20 0L40 30Z", "M0 30l20-30 20 30z"}},
		{2.0 / 3, []string{"M0 20Q20-20 40 20Z", "m0 20q20-40 40 0z", "M0 20C13.333333-6.666667 26.666667-6.666667 40 20Z"}},
		{0.8, []string{"M0 30C0-10 40-10 40 30Z", "m0 30c0-40 40-40 40 0z"}},
		{math.Pi / 4, []string{"M0 20A20 20 0 0 1 40 20A20 20 0 0 1 0 20Z", "M0 20a20 20 0 1140 0 20 20 0 11-40 0z", "M0 20A20,20,0,0,1,40,20 20 20 0 010 20", "M0 20A2 1 0 0 1 40 20Z"}},
		// turned by 30 degrees: pi 20 10 in 2 sqrt(325) by 2 sqrt(175)
		{math.Pi * 200 / (4 * math.Sqrt(325*175)), []string{"M17.320508 10A20 10 30 0 1-17.320508-10A20 10 30 0 1 17.320508 10Z"}},
		// a smooth curve goes on as the mirrored one that is written out
		{filled(t, "M0 20C0 0 10 0 20 10C30 20 40 20 40 0V40H0Z"), []string{"M0 20C0 0 10 0 20 10S40 20 40 0V40H0Z", "M0 20c0-20 10-20 20-10s20 10 20-10v40h-40z"}},
		{filled(t, "M0 20Q10 0 20 20Q30 40 40 20V60H0Z"), []string{"M0 20Q10 0 20 20T40 20V60H0Z", "M0 20q10-20 20 0t20 0v40h-40z"}},
	}
	for _, row := range rows {
		for _, path := range row.paths {
			require.NoError(t, enclosure.CheckOutline(path), path)
			assert.InDelta(t, row.want, filled(t, path), 1.5e-3, path)
		}
	}
}

// What is drawn is as high as it was drawn, and its halves may differ.
func TestDrawnOrnamentKeepsItsProportions(t *testing.T) {
	assert.Equal(t, measure.MustParse("1 1/2 in"), shaped(t, "M0 0H40V30H20L0 15Z", "2 in", "").Height)
	assert.Equal(t, measure.MustParse("2 in"), shaped(t, "heart", "2 in", "").Height)
	p := shaped(t, "M0 0H40V30H20L0 15Z", "2 in", "2 in").Piece()
	assert.InDelta(t, 0.75, area(p.Panels[0].Outline)/area(p.Panels[1].Outline), 1e-3)
}

// Every fault says where it is.
func TestPathsAreRefused(t *testing.T) {
	for path, want := range map[string]string{
		"L0 0":                            "at character 1 the outline must begin with M",
		"M0 0L40 0L40":                    "at character 13 a number",
		"M0 0L40,,0":                      "at character 9 a number",
		"M,0 0":                           "at character 2 a number",
		"M0 0 X":                          "at character 6 stands 'X'",
		"M0 0 ä":                          "at character 6 stands 'ä'",
		"M0 0":                            "at character 5 no line is drawn",
		"M0 0H40V30Z M1 1H2":              "at character 13 a second outline",
		"M0 0H40V30ZL1 1":                 "at character 12 a second outline",
		"M0 0A20 20 0 2 0 40 0":           "at character 14 a flag",
		"M0 0L1e9 0":                      "at character 6 a number",
		"M0 0L. 0":                        "at character 6 a number",
		"M0 0H40":                         "no area",
		"M0 0L40 30L40 0L0 30Z":           "crosses itself near 20 15",
		"M0 0H40V30H30V10H10V30H0Z M":     "second outline",
		"M0 0H40V30H0V20H30V10H0Z":        "meets it 4 times instead of twice",
		"M" + strings.Repeat(" 1 1", 600): "at character 2001",
	} {
		err := enclosure.CheckOutline(path)
		require.Error(t, err, path)
		assert.Contains(t, err.Error(), want, path)
	}
}

func FuzzOutline(f *testing.F) {
	for _, path := range []string{"M0 30L20 0L40 30Z", "m0 30c0-40 40-40 40 0z", "M0 20a20 20 0 1140 0 20 20 0 11-40 0z", "M0 20Q10 0 20 20T40 20V60H0Z", "M0 20C0 0 10 0 20 10S40 20 40 0V40H0Z"} {
		f.Add(path)
	}
	f.Fuzz(func(t *testing.T, path string) {
		if enclosure.CheckOutline(path) == nil && len(path) < enclosure.MostPath-1 {
			assert.NoError(t, enclosure.CheckOutline(" "+path+"\n"), "white space round it changes nothing")
		}
	})
}
