package stock_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

func describe(t testing.TB, k stock.Known) stock.Description {
	t.Helper()
	d, err := stock.Describe(k)
	require.NoError(t, err)
	return d
}

// JCP K10, 110 lb index: 200 g/m2, 0.230 mm.
func TestDescribeWithEverythingKnown(t *testing.T) {
	d := describe(t, stock.Known{
		Caliper: measure.Micrometres(230), BasisWeight: 110, Grade: grade(t, "index"),
		SheetWidth: measure.MustParse("25.5 in"), SheetHeight: measure.MustParse("30.5 in"),
	})
	assert.False(t, d.CaliperEstimated || d.GrammageEstimated)
	assert.Empty(t, d.Contradict)
	assert.InEpsilon(t, 198.87536, d.Grammage, 1e-7)
	assert.InDelta(t, 0.865, d.Density, 0.001)
	assert.InEpsilon(t, 110*0.45359237, d.ReamMass, 1e-9, "a ream of the basis size weighs the basis weight")
	assert.InEpsilon(t, d.ReamMass/500*1000, d.SheetMass, 1e-12)
}

func TestDescribeEstimatesTheCaliper(t *testing.T) {
	d := describe(t, stock.Known{Grammage: 200})
	assert.True(t, d.CaliperEstimated)
	assert.Equal(t, measure.Micrometres(250), d.Caliper)
	assert.Equal(t, measure.Micrometres(200), d.Low)
	assert.Equal(t, measure.Micrometres(308), d.High)
	assert.InDelta(t, 0.8, d.Density, 1e-9)
	assert.Zero(t, d.SheetMass)
}

func TestDescribeEstimatesTheGrammage(t *testing.T) {
	d := describe(t, stock.Known{Caliper: measure.Thousandths(12)})
	assert.True(t, d.GrammageEstimated)
	assert.InDelta(t, 243.84, d.Grammage, 1e-9, "12 points in GNU units 2.22")
	assert.InDelta(t, 304.8*0.65, d.LowGrammage, 1e-9, "bulky paper has 0.65 g/cm3, glossy 1: the range of TestDescribeEstimatesTheCaliper")
	assert.InDelta(t, 304.8, d.HighGrammage, 1e-9)
}

// Bulking thickness (ISO 534): the height of a pile by the number of its
// sheets. A point is a thousandth of an inch (JCP L70).
func TestDescribeFromAStackOrPoints(t *testing.T) {
	assert.Equal(t, measure.Micrometres(240), describe(t, stock.Known{Stack: measure.Millimetres(12), StackSheets: 50}).Caliper)
	assert.Equal(t, measure.MustParse("0.012 in"), describe(t, stock.Known{Points: 12}).Caliper)
	assert.Equal(t, measure.MustParse("0.0125 in"), describe(t, stock.Known{Points: 12.5}).Caliper)
}

// A packet that says 80 lb cover and 216 g/m2, 12 points and 0.3 mm says the
// same twice; the first figure of each is taken.
func TestDescribeTakesFiguresThatAgree(t *testing.T) {
	d := describe(t, stock.Known{Caliper: measure.Micrometres(300), Points: 12, Stack: measure.Millimetres(3), StackSheets: 10, Grammage: 216, BasisWeight: 80, Grade: grade(t, "cover")})
	assert.Equal(t, measure.Micrometres(300), d.Caliper)
	assert.InDelta(t, 216, d.Grammage, 0)
	for grammage, agrees := range map[float64]bool{202: false, 203: true, 232: true, 233: false} {
		_, err := stock.Describe(stock.Known{Grammage: grammage, BasisWeight: 80, Grade: grade(t, "cover")})
		assert.Equal(t, agrees, err == nil, "216.33 g/m2 beside %v", grammage)
	}
}

// The bounds themselves are paper, what is beyond them is not; one sheet is a stack.
func TestDescribeTakesItsBounds(t *testing.T) {
	for grammage, taken := range map[float64]bool{stock.LeastGrammage: true, stock.GreatestGrammage: true, stock.LeastGrammage - 0.001: false, stock.GreatestGrammage + 0.001: false} {
		_, err := stock.Describe(stock.Known{Grammage: grammage})
		assert.Equal(t, taken, err == nil, "%v g/m2", grammage)
	}
	beyond := measure.Nanometres(1)
	for caliper, taken := range map[measure.Length]bool{stock.LeastCaliper(): true, stock.GreatestCaliper(): true, stock.LeastCaliper().Sub(beyond): false, stock.GreatestCaliper().Add(beyond): false} {
		_, err := stock.Describe(stock.Known{Caliper: caliper})
		assert.Equal(t, taken, err == nil, "%v", caliper)
	}
	assert.Equal(t, measure.Micrometres(300), describe(t, stock.Known{Stack: measure.Micrometres(300), StackSheets: 1}).Caliper)
}

func TestContradictionsNameBothFigures(t *testing.T) {
	_, err := stock.Describe(stock.Known{Grammage: 120, BasisWeight: 80, Grade: grade(t, "cover"), Points: 12, Caliper: measure.Micrometres(230)})
	assert.ErrorContains(t, err, "basis_weight comes to 216.3 g/m2, but grammage to 120 g/m2")
	assert.ErrorContains(t, err, "points comes to 0.3048 mm, but caliper to 0.23 mm")
}

// A weighed letter sheet of 20 lb bond: 4.5359237 g.
func TestDescribeFromTheScales(t *testing.T) {
	letter, _ := stock.LookupSheet("letter")
	d := describe(t, stock.Known{SheetMass: 4.5359237, SheetWidth: letter.Width, SheetHeight: letter.Height})
	assert.InEpsilon(t, 75.194607, d.Grammage, 1e-7)
	for _, w := range d.Weights {
		if w.Grade.Name == "bond" {
			assert.InEpsilon(t, 20, w.Pounds, 1e-9)
		}
	}
	assert.Len(t, d.Weights, len(stock.GradeNames()))
}

func TestDescribeDoubtsTheDensity(t *testing.T) {
	for caliper, unlikely := range map[string]bool{"0.07 mm": true, "0.08 mm": false, "0.19 mm": false, "0.2 mm": false, "0.21 mm": true} {
		for named, fields := range map[bool][]string{false: {"caliper", "grammage"}, true: {"stock", "stock"}} {
			got := describe(t, stock.Known{Grammage: 100, Caliper: measure.MustParse(caliper), Named: named}).Contradict
			if !unlikely {
				fields = nil
			}
			assert.Equal(t, fields, got, caliper)
		}
	}
}

// A caller in inches is told of inches: 12 points are 0.012 in, 1/2 in of ten sheets
// 0.05 in each.
func TestDescribeRefusesInTheCallersUnit(t *testing.T) {
	_, err := stock.Describe(stock.Known{Unit: measure.Inch, Points: 12, Stack: measure.MustParse("1/2 in"), StackSheets: 10})
	var faults fault.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "points comes to 0.012 in, but stack to 0.05 in", faults[0].Detail)
	_, err = stock.Describe(stock.Known{Unit: measure.Inch, Caliper: measure.Inches(1)})
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "1", faults[0].Value)
	assert.Equal(t, "0.0004 in to 0.1969 in", faults[0].Expected)
	_, err = stock.Describe(stock.Known{Stack: measure.Millimetres(60), StackSheets: 10, SheetMass: 1, SheetWidth: measure.Millimetres(1000), SheetHeight: measure.Millimetres(1000)})
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, [2]string{"1", "5 g/m2 to 3000 g/m2"}, [2]string{faults[0].Value, faults[0].Expected})
	assert.Equal(t, [2]string{"60", "0.01 mm to 5 mm"}, [2]string{faults[1].Value, faults[1].Expected})
}

func TestDescribeRefuses(t *testing.T) {
	sheet := stock.Known{SheetWidth: measure.Inches(8), SheetHeight: measure.Inches(11)}
	for _, c := range []struct {
		name  string
		known stock.Known
		want  []string
	}{
		{"nothing", stock.Known{}, []string{"missing caliper"}},
		{"only a size", sheet, []string{"missing caliper"}},
		{"weights that contradict", stock.Known{Grammage: 90, BasisWeight: 20, Grade: grade(t, "bond")}, []string{"conflict basis_weight"}},
		{"weights of which two lack something", stock.Known{Grammage: 80, BasisWeight: 20, SheetMass: 5}, []string{"missing grade", "missing sheet"}},
		{"calipers that contradict", stock.Known{Caliper: measure.Millimetres(1), Points: 12, Stack: measure.Millimetres(12), StackSheets: 10}, []string{"conflict stack", "conflict points"}},
		{"a stack of nobody knows how many", stock.Known{Stack: measure.Millimetres(12)}, []string{"missing stack_sheets"}},
		{"sheets without a stack", stock.Known{StackSheets: 10, Points: 12}, []string{"missing stack"}},
		{"a stack of cloth", stock.Known{Stack: measure.Millimetres(60), StackSheets: 10}, []string{"out-of-range stack"}},
		{"thick in points", stock.Known{Points: 300}, []string{"out-of-range points"}},
		{"no grade", stock.Known{BasisWeight: 20}, []string{"missing grade"}},
		{"no size", stock.Known{SheetMass: 5}, []string{"missing sheet"}},
		{"half a size", stock.Known{SheetMass: 5, SheetWidth: measure.Inches(8)}, []string{"missing sheet"}},
		{"too light", stock.Known{Grammage: 1}, []string{"out-of-range grammage"}},
		{"too heavy", stock.Known{BasisWeight: 5000, Grade: grade(t, "cover")}, []string{"out-of-range basis_weight"}},
		{"negative", stock.Known{Grammage: -80}, []string{"out-of-range grammage"}},
		{"not a number", stock.Known{Grammage: math.NaN()}, []string{"out-of-range grammage"}},
		{"infinite", stock.Known{Grammage: math.Inf(1)}, []string{"out-of-range grammage"}},
		{"too thick", stock.Known{Caliper: measure.Millimetres(6)}, []string{"out-of-range caliper"}},
		{"below nothing", stock.Known{Caliper: measure.Millimetres(-1)}, []string{"out-of-range caliper"}},
		{"both wrong", stock.Known{Caliper: measure.Nanometres(1), Grammage: 1e9}, []string{"out-of-range grammage", "out-of-range caliper"}},
	} {
		_, err := stock.Describe(c.known)
		var faults fault.Faults
		require.ErrorAs(t, err, &faults, c.name)
		var got []string
		for _, f := range faults {
			got = append(got, fmt.Sprint(f.Code, " ", f.Field))
			assert.NotEmpty(t, f.Detail, c.name)
			assert.NotEmpty(t, f.Expected, c.name)
		}
		assert.Equal(t, c.want, got, c.name)
	}
}

// Whichever way a paper's weight is said, the description is the same.
func TestDescribeAgreesWithItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		known := stock.Known{
			Grammage:   rapid.Float64Range(2*stock.LeastGrammage, 1000).Draw(t, "grammage"),
			SheetWidth: measure.Millimetres(rapid.Int64Range(10, 2000).Draw(t, "width")), SheetHeight: measure.Millimetres(300),
		}
		first, err := stock.Describe(known)
		require.NoError(t, err)
		weight := rapid.SampledFrom(first.Weights).Draw(t, "weight")
		for _, other := range []stock.Known{
			{BasisWeight: weight.Pounds, Grade: weight.Grade, SheetWidth: known.SheetWidth, SheetHeight: known.SheetHeight},
			{SheetMass: first.SheetMass, SheetWidth: known.SheetWidth, SheetHeight: known.SheetHeight},
		} {
			second, err := stock.Describe(other)
			require.NoError(t, err)
			assert.InEpsilon(t, first.Grammage, second.Grammage, 1e-9)
			assert.InEpsilon(t, first.SheetMass, second.SheetMass, 1e-9)
			assert.InDelta(t, first.Caliper.Millimetres(), second.Caliper.Millimetres(), 0.0011)
		}
	})
}

func ExampleDescribe() {
	cover, _ := stock.LookupGrade("cover")
	d, err := stock.Describe(stock.Known{BasisWeight: 80, Grade: cover})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f g/m2, about %.2f mm thick (%.2f to %.2f)\n",
		d.Grammage, d.Caliper.Millimetres(), d.Low.Millimetres(), d.High.Millimetres())
	// Output: 216.3 g/m2, about 0.27 mm thick (0.22 to 0.33)
}

func ExampleLookup() {
	s, _ := stock.Lookup("index-110")
	fmt.Printf("%s: %v mm +- %v mm, %v g/m2\n", s.Title, s.Caliper.Millimetres(), s.CaliperTolerance.Millimetres(), s.Grammage)
	// Output: index, 110 lb: 0.23 mm +- 0.0127 mm, 200 g/m2
}

// What may stand in the place of what is missing is told as people write it.
func TestMissingGradeNamesThem(t *testing.T) {
	_, err := stock.Describe(stock.Known{BasisWeight: 80})
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	assert.Equal(t, "one of "+strings.Join(stock.GradeNames(), ", "), faults[0].Expected)
	assert.NotContains(t, faults[0].Expected, "[")
}
