package mail

import "math"

// The words that the tables of the posts are written in.

// most is a greatest bound of a quantity, least a least one.
func most(of Quantity, n int64) Limit  { return Limit{Bound: Amount{of, n}} }
func least(of Quantity, n int64) Limit { return Limit{Bound: Amount{of, n}, Least: true} }

// below is a greatest bound that is not taken itself.
func below(of Quantity, n int64) Limit { return Limit{Bound: Amount{of, n}, Open: true} }

// above is a least bound that is not taken itself.
func above(of Quantity, n int64) Limit { return Limit{Bound: Amount{of, n}, Least: true, Open: true} }

// mm, inch, grams, ounces and ratio are amounts.
func mm(x float64) int64     { return int64(math.Round(x * 1e6)) }
func inch(x float64) int64   { return int64(math.Round(x * 25.4e6)) }
func grams(x float64) int64  { return Grams(x).picograms }
func ounces(x float64) int64 { return Ounces(x).picograms }
func ratio(x float64) int64  { return int64(math.Round(x * ratioUnit)) }

// face bounds length and height from a least and a greatest one.
func face(leastLength, leastHeight, mostLength, mostHeight int64) []Limit {
	return []Limit{least(OfLength, leastLength), least(OfHeight, leastHeight), most(OfLength, mostLength), most(OfHeight, mostHeight)}
}

// within gives limits their source.
func within(source string, limits ...Limit) []Limit {
	for i := range limits {
		limits[i].Source = source
	}
	return limits
}

// graced gives a limit a further bound with the reason for it.
func (l Limit) graced(n int64, doubt string) Limit {
	l.Grace, l.Doubt = Amount{l.Bound.of, n}, doubt
	return l
}

// hearsay marks a limit without an official source.
func (l Limit) hearsay() Limit {
	l.Hearsay = true
	return l
}

// unless waives a limit for pieces within the others.
func (l Limit) unless(others ...Limit) Limit {
	l.Unless = others
	return l
}

// join puts limits of several sources together.
func join(lists ...[]Limit) []Limit {
	var all []Limit
	for _, list := range lists {
		all = append(all, list...)
	}
	return all
}
