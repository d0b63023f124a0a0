package axi_test

import (
	"math"
	"math/big"
	"testing"

	"gonum.org/v1/gonum/mathext"

	. "example.com/laydown/plating/axi"
)

// TestIndependentElliptic holds the integrals against those of gonum where
// these have their digits.
func TestIndependentElliptic(t *testing.T) {
	for m := 0.001; m < 0.98; m += 0.013 {
		k, e, d := Elliptic(m, 1-m)
		near(t, "K", k, mathext.CompleteK(m), 1e-14)
		near(t, "E", e, mathext.CompleteE(m), 1e-14)
		near(t, "K-E", d, mathext.CompleteK(m)-mathext.CompleteE(m), 1e-12/m)
	}
}

// precise computes K, E and K-E for m₁ with 300 bits, by AGM.
func precise(m1 *big.Float) (k, e, d float64) {
	num := func(v float64) *big.Float { return new(big.Float).SetPrec(300).SetFloat64(v) }
	pi, _ := new(big.Float).SetPrec(300).SetString("3.141592653589793238462643383279502884197" +
		"16939937510582097494459230781640628620899862803482534211706798")
	a, b := num(1), new(big.Float).SetPrec(300).Sqrt(m1)
	m := new(big.Float).SetPrec(300).Sub(num(1), m1)
	sum := new(big.Float).Mul(num(0.5), m)
	pow := num(0.5)
	for range 20 {
		c := new(big.Float).Mul(num(0.5), new(big.Float).Sub(a, b))
		pow.Mul(pow, num(2))
		sum.Add(sum, new(big.Float).Mul(pow, new(big.Float).Mul(c, c)))
		a, b = new(big.Float).Mul(num(0.5), new(big.Float).Add(a, b)),
			new(big.Float).SetPrec(300).Sqrt(new(big.Float).Mul(a, b))
	}
	kk := new(big.Float).Quo(pi, new(big.Float).Add(a, b))
	dd := new(big.Float).Mul(kk, sum)
	ee := new(big.Float).Sub(kk, dd)
	k, _ = kk.Float64()
	d, _ = dd.Float64()
	e, _ = ee.Float64()
	return k, e, d
}

// TestIndependentEllipticExtreme holds them against 300-bit arithmetic at both
// ends, where one of the two parameters alone loses its digits.
func TestIndependentEllipticExtreme(t *testing.T) {
	for _, m1 := range []float64{1e-300, 1e-100, 1e-30, 1e-16, 1e-12, 1e-6, 1e-3, 0.1, 0.5, 0.9} {
		k, e, d := Elliptic(1-m1, m1)
		wk, we, wd := precise(new(big.Float).SetPrec(300).SetFloat64(m1))
		near(t, "K", k, wk, 2e-15)
		near(t, "E", e, we, 1e-14+1e-14*math.Log10(1/m1)/10)
		near(t, "K-E", d, wd, 1e-14)
	}
	for _, m := range []float64{1e-300, 1e-30, 1e-16, 1e-12, 1e-6, 1e-3} {
		one := new(big.Float).SetPrec(300).SetFloat64(1)
		_, _, d := Elliptic(m, 1-m)
		_, _, wd := precise(one.Sub(one, new(big.Float).SetPrec(300).SetFloat64(m)))
		if m > 1e-80 { // below, 300 bits do not hold 1-m either; the limit is π m/4
			near(t, "K-E, small m", d, wd, 1e-14)
		}
		near(t, "K-E, limit", d, math.Pi*m/4, 1e-14+m)
	}
}

// TestPropertyElliptic holds them against Legendre's relation.
func TestPropertyElliptic(t *testing.T) {
	for _, m := range []float64{1e-12, 1e-6, 0.01, 0.3, 0.5, 0.77} {
		k, e, _ := Elliptic(m, 1-m)
		kc, ec, _ := Elliptic(1-m, m)
		near(t, "Legendre's relation", e*kc+ec*k-k*kc, math.Pi/2, 4e-15)
	}
	if k, e, _ := Elliptic(1, 0); !math.IsInf(k, 1) || e != 1 {
		t.Errorf("at m = 1: K = %v, E = %v", k, e)
	}
	if k, _, _ := Elliptic(math.NaN(), math.NaN()); !math.IsNaN(k) {
		t.Errorf("K of NaN is %v", k)
	}
}
