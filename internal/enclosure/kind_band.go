package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Band is a wrap closed by a glued lap: the outer half goes over the inner one
// at the back, so its side is one caliper longer.
//
// With W and T the contents' width and thickness, t the caliper, c the
// clearance, all lengths from crease to crease:
//
//	one score a side:   front = W + T + 2 1/2 t + c_w
//	two scores a side:  front = W + t + c_w,
//	                    inner side = T + t + c_t,
//	                    outer side = inner side + t, within a caliper
//	both:               inner half + outer half = front + lap
func Band() *Kind {
	return &Kind{
		Name:  "band",
		Title: "Belly band with a glued lap",
		Help:  "A strip round the contents, its ends glued over one another at the back.",
		Words: german("Bauchbinde mit Klebelasche",
			"Ein Streifen um den Inhalt, dessen Enden auf der Rückseite übereinandergeklebt werden."),
		Needs: []string{"width", "thickness"},
		Params: []Param{
			contentsShape,
			bandHeight,
			{Name: "lap", Help: "How far the outer end goes over the inner one, where the glue is.", DefaultInch: measure.Sixtyfourths(32), DefaultMillimetre: measure.Millimetres(15),
				Least: measure.Millimetres(3), Greatest: measure.Millimetres(300)},
			scoresPerSide,
			meetingLine,
		},
		Plan: planBand,
	}
}

var bandThin = row{
	piece: "band", root: 1, height: "band height",
	panels: []string{"inner half", "front", "outer half"},
	scores: []pattern.Score{valley("1", 180), valley("2", 180)},
}

var bandThick = row{
	piece: "band", root: 2, height: "band height",
	panels: []string{"inner half", "left side", "front", "right side", "outer half"},
	scores: []pattern.Score{valley("1", 90), valley("2", 90), valley("3", 90), valley("4", 90)},
}

func planBand(in *Input) (*Plan, error) {
	d := newDraft(in)
	if Round(in.Given) {
		return d.rolled("band", d.fixed("band height", "band_height"))
	}
	height, lap := d.fixed("band height", "band_height"), d.fixed("lap", "lap")
	names := halves{left: "inner half", whole: "front", right: "outer half", lap: in.length("lap")}
	var shape *row
	var across []int
	var err, wrong error
	if in.oneScore(d) {
		shape = &bandThin
		wrong = in.PaperOnly("a band with one score at each side")
		across, err = d.thin(nil, names, Need{Width: 1, Thickness: 1, HalfCalipers: 5})
	} else {
		shape = &bandThick
		across, err = d.thick(nil, names)
		inner, outer := across[1], across[3]
		d.plan.Problem.Readings[outer].Ideal = d.plan.Problem.Readings[inner].Ideal.Add(in.Caliper)
		d.layer("outer side", outer, inner)
	}
	d.strip(0, pattern.Width, across...)
	d.strip(0, pattern.Height, height)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern {
		rounds := []measure.Length{in.Thickness, in.Thickness.Add(in.Caliper), {}, {}}
		return d.wrapPattern(glueLap(shape.layReadings(across, height, sizes, rounds), sizes[lap]))
	}
	return d.plan, fault.Join(err, wrong)
}

// glueLap sticks the inside of the outer half's end onto the inner half.
func glueLap(piece pattern.Piece, lap measure.Length) pattern.Piece {
	piece.Glues = []pattern.Glue{{
		Name: "lap", Panel: len(piece.Panels) - 1, Face: pattern.Inside,
		Area: pattern.Rectangle(piece.Width.Sub(lap), measure.Length{}, piece.Width, piece.Height),
		To:   0, ToFace: pattern.Outside,
	}}
	return piece
}
