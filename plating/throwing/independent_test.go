package throwing

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/laydown/units"
)

// TestIndependentRecess integrates the equation of the recess from the floor to
// the mouth step by step, with and without a floor, and compares.
func TestIndependentRecess(t *testing.T) {
	// s'' = nu² s (linear) or nu² e^s (Tafel, s = ln j), s' = beta nu² s or
	// beta nu² e^s at the floor. Runs up from a bottom value; the mouth's value
	// is found by halving for Tafel, by proportion for linear.
	run := func(nu2, beta, bottom float64, source func(float64) float64) (mouth, mean float64) {
		const n = 1000
		h := 1.0 / n
		s, v := bottom, beta*nu2*source(bottom)
		for range n {
			// One step of fourth order.
			k1s, k1v := v, nu2*source(s)
			k2s, k2v := v+h/2*k1v, nu2*source(s+h/2*k1s)
			k3s, k3v := v+h/2*k2v, nu2*source(s+h/2*k2s)
			k4s, k4v := v+h*k3v, nu2*source(s+h*k3s)
			mean += h / 6 * (source(s) + 4*source(s+h/2*v+h*h/8*k1v) + source(s+h*k3s))
			s += h / 6 * (k1s + 2*k2s + 2*k3s + k4s)
			v += h / 6 * (k1v + 2*k2v + 2*k3v + k4v)
		}
		return s, mean
	}
	for _, nu := range []float64{0.1, 0.5, 1, 2, 5} {
		for _, beta := range []float64{0, 0.05, 0.25, 0.5} {
			mouth, mean := run(nu*nu, beta, 1, func(s float64) float64 { return s })
			got := linearThrow(nu, beta)
			if apart(float64(got.Bottom), 1/mouth) > 1e-9 || apart(float64(got.Mean), mean/mouth) > 1e-6 {
				t.Errorf("linear, nu %g, beta %g: %v, want %v and %v", nu, beta, got, 1/mouth, mean/mouth)
			}
			low, high := -20.0, 0.0 // of ln(bottom/mouth)
			for range 60 {
				mid := (low + high) / 2
				if m, _ := run(nu*nu, beta, mid, math.Exp); m < 0 {
					low = mid
				} else {
					high = mid
				}
			}
			_, mean = run(nu*nu, beta, low, math.Exp)
			got = tafelThrow(nu, beta)
			if apart(float64(got.Bottom), math.Exp(low)) > 1e-8 || apart(float64(got.Mean), mean) > 1e-6 {
				t.Errorf("Tafel, nu %g, beta %g: %v, want %v and %v", nu, beta, got, math.Exp(low), mean)
			}
		}
	}
}

func apart(got, want float64) float64 { return math.Abs(got-want) / math.Abs(want) }

// TestIndependentPlan closes the plan of the map: anode and short wall come
// out as given though only long wall and cathode were fitted. The integrals are
// done by another rule: sums over even steps of ln of the distance to a corner.
func TestIndependentPlan(t *testing.T) {
	even := func(f func(s float64) float64) float64 {
		sum := 0.0
		for y := -160.0; y <= 160; y += 0.05 {
			s := math.Exp(y)
			sum += 0.05 * s * f(s)
		}
		return sum
	}
	for _, p := range []Trapezoid{Trapezoid267(), {1, 1, 2}, {1, 0.5, 0.6}, {2, 1, 5}, {1, 2, 2}, {1, 0.2, 0.2}, {1, 4,
		5}} {
		m := must(p.Primary())(t)
		scale := float64(m.length) / m.whole()
		anode := scale * even(func(s float64) float64 {
			return 1 / math.Sqrt(s) * math.Pow(1+s, m.b-1) * math.Pow(1+m.t+s, -m.b)
		})
		short := scale * even(func(s float64) float64 {
			return 1 / math.Sqrt(1+m.t+s) * math.Pow(m.t+s, m.b-1) * math.Pow(s, -m.b)
		})
		if apart(anode, float64(p.Anode)) > 1e-9 || apart(short, float64(p.Short)) > 1e-9 {
			t.Errorf("%+v: anode %v, short wall %v", p, anode, short)
		}
		// The mean of the current density is one: an even sum after x = L s².
		const n = 1000
		sum := 0.0
		for i := range n {
			s := (float64(i) + 0.5) / n
			sum += 2 * s / n * float64(must(m.At(units.Length(s*s)*m.length))(t))
		}
		if math.Abs(sum-1) > 5e-4 {
			t.Errorf("%+v: mean %v", p, sum)
		}
	}
}

// TestPropertyPrimary: falls along the panel, comes back by Place, is even in a
// straight cell with the conductance of a channel.
func TestPropertyPrimary(t *testing.T) {
	m := must(Trapezoid267().Primary())(t)
	last := math.Inf(1)
	for i := 1; i <= 2000; i++ {
		x := units.Length(float64(i)/2000) * m.length
		r := must(m.At(x))(t)
		if !(float64(r) < last) {
			t.Fatalf("does not fall at %v", x)
		}
		last = float64(r)
		if i == 2000 {
			if r != 0 {
				t.Errorf("%v at the low end", r)
			}
			continue
		}
		if back := must(m.Place(r))(t); apart(float64(back), float64(x)) > 1e-12 {
			t.Errorf("%v comes back as %v", x, back)
		}
	}
	for _, x := range []units.Length{1e-30, 1e-12} {
		if back := must(m.Place(must(m.At(x))(t)))(t); apart(float64(back), float64(x)) > 1e-9 {
			t.Errorf("%v comes back as %v", x, back)
		}
	}
	// The high end rises with the exponent B - 1/2 over 1 - B, the low end falls
	// with (1/2 - B)/B: -0.363 and +1.33 for the 267 mL plan.
	slope := func(a, b units.Length) float64 {
		return math.Log(float64(must(m.At(b))(t)/must(m.At(a))(t))) / math.Log(2)
	}
	if s := slope(1e-9, 2e-9); math.Abs(s+0.363) > 1e-3 {
		t.Errorf("exponent at the high end %.4f", s)
	}
	if s := slope(m.length-1e-9, m.length-2e-9); math.Abs(s-1.33) > 1e-2 {
		t.Errorf("exponent at the low end %.4f", s)
	}
	flat := must(Trapezoid{Anode: 2, Short: 3, Long: 3}.Primary())(t)
	if s := must(flat.ShapeFactor())(t); apart(float64(s), 2.0/3) > 1e-12 {
		t.Errorf("straight cell: shape factor %v", s)
	}
	for _, x := range []units.Length{0.01, 1, 2} {
		if r := must(flat.At(x))(t); apart(float64(r), 1) > 1e-12 {
			t.Errorf("straight cell: %v at %v", r, x)
		}
	}
}

// TestPropertyPanel: the law falls, is positive in its range, comes back by
// Place, and lies near the primary distribution in the middle of the panel.
func TestPropertyPanel(t *testing.T) {
	m := must(Trapezoid267().Primary())(t)
	const depth = 48.16 * units.Millimetre // 267 mL on the plan's 55.4 cm²
	for _, p := range []Panel{Panel267, Panel1000} {
		last := units.CurrentDensity(math.Inf(1))
		for i := range 301 {
			x := units.Length(0.25+float64(i)/100) * units.Inch
			j := must(p.Density(2, x))(t)
			if !(j > 0 && j < last) {
				t.Errorf("%v: %v at %v", p, j, x)
			}
			last = j
			if back := must(p.Place(2, j))(t); apart(float64(back), float64(x)) > 1e-12 {
				t.Errorf("%v: %v comes back as %v", p, x, back)
			}
			if p == Panel267 && x > 0.5*units.Inch && x < 2.2*units.Inch {
				primary := float64(must(m.At(x))(t)) * 2 / float64(m.length) / float64(depth)
				if apart(primary, float64(j)) > 0.25 {
					t.Errorf("%v at %v, primary %v", j, x, units.CurrentDensity(primary))
				}
			}
		}
		for _, x := range []units.Length{0.2499 * units.Inch, 3.2501 * units.Inch, 1e-9, 1, 3.7 * units.Inch} {
			j, err := p.Density(1, x)
			if j != 0 {
				t.Errorf("%v: a value of %v at %v", p, j, x)
			}
			typed(t, "outside", err)
		}
		for _, j := range []units.CurrentDensity{0.1, 1e5} {
			x, err := p.Place(1, j)
			if x != 0 {
				t.Errorf("%v: a place of %v for %v", p, x, j)
			}
			typed(t, "outside", err)
		}
	}
	if j := must(Panel267.Density(1, 6.35*units.Millimetre))(t); apart(asf(j), 57.02) > 1e-4 {
		t.Errorf("6.35 mm: %v", j)
	}
}

// TestPropertyInverses: figures, cells and recesses come back.
func TestPropertyInverses(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 2))
	log := func(low, high float64) float64 {
		return math.Exp(math.Log(low) + rng.Float64()*(math.Log(high)-math.Log(low)))
	}
	same := func(what string, got, want units.Ratio, tol float64) {
		t.Helper()
		if !(apart(float64(got), float64(want)) <= tol) {
			t.Errorf("%s: %v, want %v", what, float64(got), float64(want))
		}
	}
	for range 3000 {
		k := units.Ratio(1 + log(1e-2, 50))
		m := units.Ratio(log(1e-2, 100))
		same("Haring-Blum", must(must(NewHaringBlum(k, m))(t).Metal())(t), m, 1e-9)
		same("Heatley", must(must(NewHeatley(k, m))(t).Metal())(t), m, 1e-9)
		if k+m > 2.01 {
			same("Field", must(must(NewField(k, m))(t).Metal())(t), m, 1e-9)
		}
		p, wa := units.Ratio(1+log(1e-2, 50)), units.Ratio(log(1e-3, 1e3))
		lin, taf := must(LinearRatio(p, wa))(t), must(TafelRatio(p, wa))(t)
		if !(lin >= 1 && lin <= p && taf >= 1 && taf <= p) {
			t.Errorf("P %v, Wa %v: %v, %v", p, wa, lin, taf)
		}
		if lin > 1.001 && taf > 1.001 && p/lin > 1.0001 && p/taf > 1.0001 {
			same("linear", must(LinearWagner(p, lin))(t), wa, 1e-9)
			same("Tafel", must(TafelWagner(p, taf))(t), wa, 1e-9)
		}
		r := Recess{Width: units.Length(log(1e-5, 1e-1)), Trench: rng.IntN(2) == 0, BareFloor: rng.IntN(2) == 0}
		r.Depth = r.Width * units.Length(log(1, 50))
		kappa, slope := units.Conductivity(log(1, 100)), units.AreaResistance(log(1e-6, 1e-2))
		lt, tt := must(r.Linear(kappa, slope))(t), must(r.Tafel(kappa, slope))(t)
		if !(lt.Bottom >= 0 && lt.Bottom <= lt.Mean && lt.Mean <= 1 && tt.Bottom >= lt.Bottom && tt.Bottom <= tt.Mean &&
			tt.Mean <= 1) {
			t.Errorf("%+v: linear %v, Tafel %v", r, lt, tt)
		}
		if lt.Bottom > 1e-9 && lt.Bottom < 0.999 {
			same("linear depth", units.Ratio(must(r.LinearDepth(lt.Bottom, kappa, slope))(t)), units.Ratio(r.Depth), 1e-7)
		}
		if tt.Bottom > 1e-9 && tt.Bottom < 0.999 {
			same("Tafel depth", units.Ratio(must(r.TafelDepth(tt.Bottom, kappa, slope))(t)), units.Ratio(r.Depth), 1e-7)
		}
	}
}

// TestPropertyLimits: what each closed form tends to.
func TestPropertyLimits(t *testing.T) {
	near := func(what string, got units.Ratio, want, tol float64) {
		t.Helper()
		if !(math.Abs(float64(got)-want) <= tol) {
			t.Errorf("%s: %v, want %v", what, float64(got), want)
		}
	}
	near("linear, primary", must(LinearRatio(5, 0))(t), 5, 1e-15)
	near("Tafel, primary", must(TafelRatio(5, 0))(t), 5, 1e-13)
	near("linear, even", must(LinearRatio(5, 1e12))(t), 1, 1e-11)
	near("Tafel, even", must(TafelRatio(5, 1e12))(t), 1, 1e-11)
	near("Tafel, even, to the first order", (must(TafelRatio(5, 1e6))(t)-1)*1e6, 4, 1e-4)
	near("Wagner at M = P", must(LinearWagner(5, 5))(t), 0, 0)
	near("Wagner at M = P", must(TafelWagner(5, 5))(t), 0, 0)
	for _, beta := range []float64{0, 0.25, 0.5} {
		for name, f := range map[string]func(nu, beta float64) Throw{"linear": linearThrow, "Tafel": tafelThrow} {
			near(name+", shallow", f(1e-9, beta).Bottom, 1, 1e-12)
			near(name+", shallow mean", f(1e-9, beta).Mean, 1, 1e-12)
			// To the second order 1 - nu²/2 - beta nu² for both.
			near(name+", second order", (1-f(1e-3, beta).Bottom)*1e6, 0.5+beta, 1e-5)
			last := Throw{2, 2}
			for nu := 0.01; nu < 1000; nu *= 1.1 {
				got := f(nu, beta)
				if !(got.Bottom < last.Bottom && got.Mean < last.Mean || got.Bottom == 0) {
					t.Errorf("%s does not fall at %g: %v after %v", name, nu, got, last)
				}
				last = got
			}
		}
	}
	// Deep, bare floor: Tafel falls with pi²/(2 nu²) as theta comes to a right angle.
	near("Tafel, deep", tafelThrow(1e4, 0).Bottom*1e8, math.Pi*math.Pi/2, 1e-2)
	near("two levels, all far", must(TwoLevels(4, 1))(t).MinToAverage, 1, 0)
	near("two levels, half", must(TwoLevels(4, 0.5))(t).MinToAverage, 0.4, 1e-15)
	near("even", must(TwoLevels(1, 0.3))(t).MinToAverage, 1, 1e-15)
	near("readings", must(FromReadings([]units.Length{2e-6, 1e-6, 3e-6}))(t).MinToAverage, 0.5, 1e-15)
	near("equal efficiencies", must(MetalRatio(3, 0.9, 0.9))(t), 3, 1e-15)
	near("falling efficiency", must(MetalRatio(3, 0.5, 1))(t), 1.5, 1e-15)
	// Wagner number of a cell: the slope may be that of a Tafel line.
	c := HaringBlumCell{Near: 2.5 * units.Centimetre, Far: 12.5 * units.Centimetre}
	near("cell", must(c.Wagner(10, 2.5e-3))(t), 1, 1e-15)
}
