package axi

import "math"

// Elliptic returns the complete elliptic integrals of the first and second
// kind, K and E, and their difference D = K - E.
//
//	K = π / (2 AGM(1, √m₁))
//	D = K Σ 2ⁿ⁻¹ c_n²,  c₀² = m, c_n the half differences of the AGM
//	E = K - D
//
//	m   parameter k²                 0 ≤ m < 1
//	m₁  complementary parameter 1-m  0 < m₁ ≤ 1
//
// Both parameters are arguments, since each loses its digits where the other is
// near one: a caller who knows the geometry knows both to full precision. K, D
// and E are good to 1e-14 relative for m₁ down to 1e-300; D keeps its digits as
// m goes to 0, where K and E meet. For m₁ ≤ 0, K is +Inf and E is 1. A NaN gives NaN.
//
// Source: [DLMF], 19.8(i).
func Elliptic(m, m1 float64) (k, e, d float64) {
	if m1 <= 0 {
		return math.Inf(1), 1, math.Inf(1)
	}
	a, b := 1.0, math.Sqrt(m1)
	sum, pow := 0.5*m, 0.5
	for range 40 {
		c := 0.5 * (a - b)
		pow *= 2
		sum += pow * c * c
		a, b = 0.5*(a+b), math.Sqrt(a*b)
		if math.Abs(c) <= 4e-9*a { // the next difference is below 1e-17
			break
		}
	}
	k = math.Pi / (a + b)
	d = k * sum
	return k, k - d, d
}

// ring returns the potential and its normal derivative of a source spread
// evenly over a ring, as seen from (r, z): the integrals of 1/(4πR) and of its
// derivative along the normal at the ring, times the ring's radius.
//
//	A² = (r+ρ)² + (z-ζ)²,  d² = (r-ρ)² + (z-ζ)²,  m = 4rρ/A²,  m₁ = d²/A²
//	g = ρ K / (πA)
//	h = ( ρ E (x-y)·n/d² - n_r (K-E)/2 ) / (πA)
//
//	ρ, ζ  place of the ring; d2 is d², and dn is (x-y)·n/d²
//
// Both are handed over, because on one and the same line or arc the caller
// knows them without cancellation.
//
// Source: [DLMF], 19.2 and 19.4 (derivatives), with the ring's integral as in [Definition].
func ring(r, z, rho, zeta, nr, d2, dn float64) (g, h float64) {
	dz := z - zeta
	sum := r + rho
	a2 := sum*sum + dz*dz
	k, e, d := Elliptic(4*r*rho/a2, d2/a2)
	f := 1 / (math.Pi * math.Sqrt(a2))
	return f * rho * k, f * (rho*e*dn - 0.5*nr*d)
}
