package tolerance

import "math"

// pair is the chance that two standard normal quantities correlated by rho are
// at most h and k: the product of their own, both, and the integral of the density
// over the correlation (Z. Drezner and G. O. Wesolowsky, "On the computation of
// the bivariate normal integral", J. Stat. Comp. Simul. 35, 1990), by the Gauss
// and Legendre rule. It is off by at most 2 10^-5, near correlations of one.
func pair(h, k, both, rho float64) float64 {
	half := math.Asin(min(max(rho, -1), 1)) / 2
	var sum float64
	for i, x := range legendre {
		for _, angle := range [...]float64{half * (1 - x), half * (1 + x)} {
			sin, cos := math.Sincos(angle)
			sum += weights[i] * math.Exp(-(h*h+k*k-2*h*k*sin)/(2*cos*cos))
		}
	}
	return min(max(both+sum*half/(2*math.Pi), 0), 1)
}

// legendre and weights are half of the 10-point rule (Abramowitz and Stegun,
// table 25.4).
var (
	legendre = [...]float64{0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717}
	weights  = [...]float64{0.2955242247147529, 0.2692667193099963, 0.2190863625159820, 0.1494513491505806, 0.0666713443086881}
)
