package wire

import (
	"strconv"

	"creasefit/internal/measure"
	"creasefit/internal/settings"
	"creasefit/internal/solve"
	"creasefit/internal/tolerance"
)

// Sure is how likely it is that all goes together at once.
type Sure struct {
	Chance float64 `json:"chance" validate:"required,min=0,max=1" example:"0.974"`
	// Within is how far the chance may be off by the way it is worked out.
	Within float64 `json:"within" validate:"required" example:"0.0005"`
	// Words says the same as people say it, with lengths that a ruler has.
	Words   string   `json:"words" validate:"required" example:"Goes in 97 times in 100. About 1/16 in of room along the width."`
	Of      string   `json:"of" validate:"required" example:"the contents go in, past every face, and lid over tray goes together, all at once"`
	Assumes []string `json:"assumes" validate:"required"`
	Weakest *Weakest `json:"weakest,omitempty"` // absent where nothing has to go in
}

// Weakest is the fit that is the least sure.
type Weakest struct {
	Layer   string  `json:"layer,omitempty" example:"lidded-box"` // of a portfolio
	Axis    string  `json:"axis" validate:"required,oneof=width height thickness diagonal"`
	Between string  `json:"between,omitempty" example:"lid over tray"`
	Chance  float64 `json:"chance" validate:"required,min=0,max=1" example:"0.982"` // of this one alone
}

// sureOf is how sure a solution is.
func sureOf(r *solve.Request, fits []solve.Fit, c solve.Certainty) Sure {
	s := Sure{Chance: round(c.Chance, 4), Within: round(c.Within, 4), Words: sureWords(r, fits, c), Of: sureOfWhat(fits), Assumes: assumes(r, fits, c.Datum)}
	if c.Weakest >= 0 {
		f := &fits[c.Weakest]
		s.Weakest = &Weakest{Axis: f.Axis.String(), Between: f.Between, Chance: round(f.Chance, 4)}
	}
	return s
}

// sureOfWhat says what a chance is the chance of.
func sureOfWhat(fits []solve.Fit) string {
	of, between := "the contents go in, past every face", ""
	for _, f := range fits {
		if f.Between != "" && f.Between != between {
			between = f.Between
			of += ", and " + between + " goes together"
		}
	}
	return of + ", all at once"
}

// sureWords says how often it goes in, how much room the least sure fit has and
// what the worst is, to the ruler's mark.
func sureWords(r *solve.Request, fits []solve.Fit, c solve.Certainty) string {
	if c.Weakest < 0 {
		return "Nothing has to go into anything."
	}
	f := &fits[c.Weakest]
	words := timesIn100(c.Chance, Voice{}) + ". " + room(r, f.Nominal) + " along the " + f.Axis.String()
	if f.Between != "" {
		words += ", " + f.Between
	}
	if tight := nearest(r, f.WorstCase.Min.Neg()); tight.Sign() > 0 {
		return words + "; if everything goes wrong it could be " + r.Ruler.Format(tight) + " too tight."
	}
	return words + ", whatever goes wrong."
}

// timesIn100 says a chance as so many times in a hundred, downwards.
func timesIn100(chance float64, in Voice) string {
	switch n := int(chance*100 + 1e-9); {
	case n >= 99:
		return in.Say("Goes in at least 99 times in 100")
	case n < 1:
		return in.Say("Hardly ever goes in")
	default:
		return in.Say("Goes in %d times in 100", n)
	}
}

// room says how much room there is.
func room(r *solve.Request, l measure.Length) string {
	if l = nearest(r, l); l.Sign() <= 0 {
		return "Next to no room"
	}
	return "About " + r.Ruler.Format(l) + " of room"
}

// nearest is the nearest mark of the request's ruler.
func nearest(r *solve.Request, l measure.Length) measure.Length { return r.Ruler.Nearest(l) }

// assumes says in words what a chance takes for granted.
func assumes(r *solve.Request, fits []solve.Fit, datum settings.Datum) []string {
	from := "scores are measured from the nearer edge, so that those as far from opposite edges share a stop"
	if datum == settings.OneEdge {
		from = "scores are measured from the left and the bottom edge, which is surer here than from the nearer one"
	}
	list := []string{
		"errors are normal: what is stated as plus or minus is three standard deviations",
		"a stop is set once for all that is made at it; of its error a quarter is each stroke's and a quarter each fold's",
		from,
		"cuts within " + r.CutError.Plain(r.Unit) + ", scores within " + r.ScoreError.Plain(r.Unit),
		"all paper from one pack, " + r.Caliper.Plain(r.Unit) + " thick within " + r.CaliperTolerance.Plain(r.Unit),
		"contents within " + sides(r, r.SizeTolerance) + ", thick within " + sides(r, r.ThicknessTolerance),
	}
	if r.Season.MadeAt > 0 {
		list = append(list, "made at "+humidity(r.Season.MadeAt)+" and used at "+humidity(r.Season.UsedAt)+" relative humidity; sheets grow "+
			growth(solve.GrowthAlong)+" along and "+growth(solve.GrowthAcross)+" across the grain from 33 to 66 % (ranges of a paper supplier for bond paper), and the main folds run along it")
	}
	for _, f := range fits {
		if f.Between != "" && r.WallGive.Sign() > 0 {
			return append(list, "what goes over or into another part may press its walls by "+r.WallGive.Plain(r.Unit)+" in all")
		}
	}
	return list
}

// humidity and growth say a part in percent.
func humidity(percent float64) string { return strconv.FormatFloat(percent, 'f', -1, 64) + " %" }
func growth(g solve.Growth) string {
	return strconv.FormatFloat(100*g.Least, 'f', 1, 64) + " to " + humidity(100*g.Greatest)
}

// sides says how far something varies either way.
func sides(r *solve.Request, s tolerance.Source) string {
	if s.Low == s.High {
		return s.Low.Plain(r.Unit)
	}
	return s.Low.Plain(r.Unit) + " less and " + s.High.Plain(r.Unit) + " more"
}
