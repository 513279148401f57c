package tolerance_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/tolerance"
)

// Critical values of the NIST/SEMATECH e-Handbook of Statistical Methods, tables
// 1.3.6.7.4 (chi-square) and 1.3.6.7.2 (Student's t); from memory, and the same
// in every book of tables.
func TestTablesOfSamples(t *testing.T) {
	for _, c := range []struct {
		p       float64
		degrees int
		value   float64
	}{
		{0.95, 1, 3.841}, {0.95, 2, 5.991}, {0.975, 9, 19.023}, {0.025, 9, 2.700}, {0.99, 10, 23.209}, {0.975, 10, 20.483},
		{0.025, 10, 3.247}, {0.95, 30, 43.773}, {0.05, 30, 18.493}, {0.025, 99, 73.361}, {0.975, 99, 128.422},
	} {
		assert.InDelta(t, c.value, tolerance.ChiSquareQuantile(c.p, c.degrees), 0.0006, "%v, %d", c.p, c.degrees)
	}
	for _, c := range []struct {
		p       float64
		degrees int
		value   float64
	}{
		{0.95, 1, 6.314}, {0.975, 1, 12.706}, {0.975, 2, 4.303}, {0.975, 4, 2.776}, {0.975, 9, 2.262}, {0.99, 10, 2.764}, {0.95, 30, 1.697}, {0.975, 100, 1.984},
	} {
		assert.InDelta(t, c.value, tolerance.StudentQuantile(c.p, c.degrees), 0.0006, "%v, %d", c.p, c.degrees)
	}
}

// The limits of a standard deviation of one, by the number of observations, that
// the documentation of the Boost C++ libraries prints for 95 % ("Confidence
// Intervals on the Standard Deviation"); and those of the 100 gear diameters of
// the NIST data set GEAR.DAT there, deviation 0.0062789: 0.00551 to 0.00729.
func TestLimitsOfADeviation(t *testing.T) {
	for observations, want := range map[int][2]float64{
		2: {0.4461, 31.9102}, 3: {0.5207, 6.2847}, 4: {0.5665, 3.7285}, 5: {0.5991, 2.8736}, 10: {0.6878, 1.8256},
		15: {0.7321, 1.5771}, 30: {0.7964, 1.3443}, 60: {0.8476, 1.2197}, 100: {0.8780, 1.1617},
	} {
		degrees := observations - 1
		least := math.Sqrt(float64(degrees) / tolerance.ChiSquareQuantile(0.975, degrees))
		greatest := math.Sqrt(float64(degrees) / tolerance.ChiSquareQuantile(0.025, degrees))
		assert.InDelta(t, want[0], least, 0.00006, "%d", observations)
		assert.InDelta(t, want[1], greatest, 0.00006, "%d", observations)
		if observations == 100 {
			assert.InDelta(t, 0.00551, 0.0062789*least, 0.000005)
			assert.InDelta(t, 0.00729, 0.0062789*greatest, 0.000005)
		}
	}
}

// Three errors alike, each as likely anywhere within its half: 95 % lie within
// 1.937 standard deviations of their sum, 99 % within 2.379 (JCGM 100:2008, G.2.2,
// from memory); one alone: 95 % of its half; two alike: a triangle.
func TestSumsOfReadings(t *testing.T) {
	deviation := math.Sqrt(3 * 1.0 / 3)
	assert.InDelta(t, 1.937, tolerance.RectangularHalf(0.95, 1, 1, 1)/deviation, 0.0006)
	assert.InDelta(t, 2.379, tolerance.RectangularHalf(0.99, 1, 1, 1)/deviation, 0.0006)
	assert.InDelta(t, 0.95*3, tolerance.RectangularHalf(0.95, 3), 1e-9)
	assert.InDelta(t, 2*(1-math.Sqrt(0.05)), tolerance.RectangularHalf(0.95, 1, 1), 1e-9)
	assert.InDelta(t, tolerance.RectangularHalf(0.95, 1, 0.5), tolerance.RectangularHalf(0.95, 1, 0.5, 0.002, 0), 1e-9)
	assert.Zero(t, tolerance.RectangularHalf(0.95))
}
