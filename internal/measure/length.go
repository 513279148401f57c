package measure

import "cmp"

// Length is an exact length: a whole number of nanometres. Its zero value is
// a valid length of zero. Length is comparable with == and every method
// returns a new value.
//
// Every multiple of 1/64 in (396 875 nm) and every decimal millimetre down to
// 1 nm is exact, since 1 in = 25.4 mm exactly (the international yard of
// 1 July 1959; NIST SP 811, appendix B).
type Length struct{ nm int64 }

// Range is a least and a greatest length.
type Range struct{ Min, Max Length }

// Nanometres per unit of length.
const (
	nmPerMillimetre = 1_000_000
	nmPerInch       = 25_400_000
	nmPer64th       = nmPerInch / 64
)

// largest is what a request may name; sums of a few thousand such lengths
// stay far inside int64.
var largest = Length{100_000 * nmPerMillimetre}

// Largest returns the greatest length that Parse accepts: 100 m.
func Largest() Length { return largest }

// Nanometres returns the length of n nanometres.
func Nanometres(n int64) Length { return Length{n} }

// Micrometres returns the length of n micrometres.
func Micrometres(n int64) Length { return Length{n * 1_000} }

// Millimetres returns the length of n whole millimetres.
func Millimetres(n int64) Length { return Length{n * nmPerMillimetre} }

// Inches returns the length of n whole inches.
func Inches(n int64) Length { return Length{n * nmPerInch} }

// Thousandths returns the length of n/1000 in, the unit of American caliper
// ("points").
func Thousandths(n int64) Length { return Length{n * nmPerInch / 1000} }

// Sixtyfourths returns the length of n/64 in.
func Sixtyfourths(n int64) Length { return Length{n * nmPer64th} }

// Nanometres returns the exact number of nanometres.
func (l Length) Nanometres() int64 { return l.nm }

// Millimetres returns the length in millimetres, for geometry and statistics.
func (l Length) Millimetres() float64 { return float64(l.nm) / nmPerMillimetre }

// Inches returns the length in inches, for geometry and statistics.
func (l Length) Inches() float64 { return float64(l.nm) / nmPerInch }

// Add returns l + m.
func (l Length) Add(m Length) Length { return Length{l.nm + m.nm} }

// Sub returns l - m.
func (l Length) Sub(m Length) Length { return Length{l.nm - m.nm} }

// Neg returns -l.
func (l Length) Neg() Length { return Length{-l.nm} }

// Abs returns the length without its sign.
func (l Length) Abs() Length { return Length{max(l.nm, -l.nm)} }

// Times returns n copies of l, end to end.
func (l Length) Times(n int64) Length { return Length{l.nm * n} }

// Over returns l divided by n, a positive number, rounded to the nearest
// nanometre, halves away from zero.
func (l Length) Over(n int64) Length {
	half := n / 2
	if l.nm < 0 {
		half = -half
	}
	return Length{(l.nm + half) / n}
}

// Compare returns -1, 0 or 1 as l is shorter than, equal to or longer than m.
func (l Length) Compare(m Length) int { return cmp.Compare(l.nm, m.nm) }

// Less reports whether l is shorter than m.
func (l Length) Less(m Length) bool { return l.nm < m.nm }

// Sign returns -1, 0 or 1 as l is negative, zero or positive.
func (l Length) Sign() int { return cmp.Compare(l.nm, 0) }

// IsZero reports whether l is zero.
func (l Length) IsZero() bool { return l.nm == 0 }

// IsMultipleOf reports whether l is a whole number of marks of the step.
func (l Length) IsMultipleOf(s Step) bool { return l.nm%s.size.nm == 0 }

// Sum returns the exact sum of the lengths; zero for none.
func Sum(ls ...Length) Length {
	var sum Length
	for _, l := range ls {
		sum.nm += l.nm
	}
	return sum
}

// Max returns the longer of l and m.
func Max(l, m Length) Length { return Length{max(l.nm, m.nm)} }

// Min returns the shorter of l and m.
func Min(l, m Length) Length { return Length{min(l.nm, m.nm)} }
