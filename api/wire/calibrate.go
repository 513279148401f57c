package wire

import (
	"net/url"
	"strings"

	"creasefit/internal/calibrate"
	"creasefit/internal/measure"
)

// Calibration is the answer of /v1/calibrate.
type Calibration struct {
	Unit   string            `json:"unit" validate:"required,oneof=in mm" example:"mm"`
	Use    CalibrationUse    `json:"use" validate:"required"`                                               // names for the next request
	Query  string            `json:"query" validate:"required" example:"caliper=0.3mm&cut_tolerance=0.6mm"` // the same for an address: the text to keep
	Words  string            `json:"words" validate:"required" example:"caliper 0.3 mm (0.29 to 0.31), cut tolerance 0.6 mm"`
	How    []CalibrationHow  `json:"how" validate:"required"`    // how each came about
	Growth []CalibrationGrew `json:"growth" validate:"required"` // of a wetted sheet
	Notes  []string          `json:"notes" validate:"required"`  // what to mend before measuring again
	Links  CalibrationLinks  `json:"links" validate:"required"`
}

// CalibrationUse is the names that were found, as a request takes them.
type CalibrationUse struct {
	Caliper          string `json:"caliper,omitempty" example:"0.3 mm"`
	CaliperTolerance string `json:"caliper_tolerance,omitempty" example:"0.02 mm"`
	CutTolerance     string `json:"cut_tolerance,omitempty" example:"0.6 mm"`
	ScoreTolerance   string `json:"score_tolerance,omitempty" example:"0.5 mm"`
	FoldAllowance    string `json:"fold_allowance,omitempty" example:"0.1 mm"`
}

// field is where a name is kept.
func (u *CalibrationUse) field(name string) *string {
	return map[string]*string{"caliper": &u.Caliper, "caliper_tolerance": &u.CaliperTolerance, "cut_tolerance": &u.CutTolerance,
		"score_tolerance": &u.ScoreTolerance, "fold_allowance": &u.FoldAllowance}[name]
}

// CalibrationHow is how one name came about.
type CalibrationHow struct {
	Name       string  `json:"name" validate:"required" example:"caliper"`
	Estimate   Length  `json:"estimate" validate:"required"`
	Least      *Length `json:"least,omitempty"` // none where it is no measurement
	Greatest   *Length `json:"greatest,omitempty"`
	Confidence float64 `json:"confidence,omitempty" example:"0.95"` // that it lies between these
	From       string  `json:"from" validate:"required" example:"10 turns round the block"`
}

// CalibrationGrew is by how much a sheet grew one way, in percent.
type CalibrationGrew struct {
	Name       string  `json:"name" validate:"required,oneof=wet_along wet_across" example:"wet_across"`
	Percent    float64 `json:"percent" validate:"required" example:"2"`
	Least      float64 `json:"least" validate:"required" example:"1.8"`
	Greatest   float64 `json:"greatest" validate:"required" example:"2.2"`
	Confidence float64 `json:"confidence" validate:"required" example:"0.95"`
}

// CalibrationLinks lead on from what was learned.
type CalibrationLinks struct {
	Self  string `json:"self" validate:"required" example:"/v1/calibrate?unit=mm&caliper=0.3mm"`
	Sheet string `json:"sheet" validate:"required" example:"/v1/calibrate.pdf?unit=mm"` // the test sheet to make and measure
	Kinds string `json:"kinds" validate:"required" example:"/v1/kinds"`                 // what the names are of use for
}

// OfCalibration is what was learned of a paper and a hand.
func OfCalibration(r *calibrate.Record, unit measure.Unit, a *Asked) *Calibration {
	c := &Calibration{Unit: unit.String(), Notes: append([]string{}, r.Notes...),
		Links: CalibrationLinks{Self: a.Self, Sheet: "/v1/calibrate.pdf?unit=" + unit.String(), Kinds: "/v1/kinds"}}
	var words []string
	for i := range r.Known {
		k := &r.Known[i]
		*c.Use.field(k.Name) = fine(k.Use, unit)
		how := CalibrationHow{Name: k.Name, Estimate: exactIn(unit, k.Estimate), From: k.From}
		if k.Least != k.Greatest {
			how.Least, how.Greatest, how.Confidence = new(exactIn(unit, k.Least)), new(exactIn(unit, k.Greatest)), calibrate.Confidence
		}
		c.How, words = append(c.How, how), append(words, calibrationWords(k, unit))
	}
	c.Growth = Each(r.Growth, func(g calibrate.Growth) CalibrationGrew {
		return CalibrationGrew{g.Name, round(100*g.Estimate, 2), round(100*g.Least, 2), round(100*g.Greatest, 2), calibrate.Confidence}
	})
	c.Query, c.Words = queryOf(r, unit), strings.Join(words, ", ")
	return c
}

// queryOf is what is known as names of a query.
func queryOf(r *calibrate.Record, unit measure.Unit) string {
	return strings.Join(Each(r.Known, func(k calibrate.Known) string {
		return k.Name + "=" + url.QueryEscape(strings.ReplaceAll(fine(k.Use, unit), " ", ""))
	}), "&")
}

// calibrationWords says what is known of a name, and within which limits.
func calibrationWords(k *calibrate.Known, unit measure.Unit) string {
	said := strings.ReplaceAll(k.Name, "_", " ") + " " + fine(k.Use, unit)
	if k.Least == k.Greatest {
		return said
	}
	bare := func(l measure.Length) string { return strings.TrimSuffix(fine(l, unit), " "+unit.String()) }
	return said + " (" + bare(k.Least) + " to " + bare(k.Greatest) + ")"
}

// fine writes a length to the thousandth of a millimetre, or as many places of an
// inch.
func fine(l measure.Length, unit measure.Unit) string {
	if unit == measure.Inch {
		return l.Decimal(unit, 4)
	}
	return l.Decimal(unit, 3)
}
