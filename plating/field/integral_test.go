package field

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
)

// The integrals over a triangle against adaptive subdivision with the
// seven-point rule.
func TestIndependentIntegrals(t *testing.T) {
	tri := triangle{{X: 0.1, Y: -0.2, Z: 0.3}, {X: 1.2, Y: 0.1, Z: -0.1}, {X: 0.2, Y: 0.9, Z: 0.4}}
	n := r3.Unit(r3.Cross(r3.Sub(tri[1], tri[0]), r3.Sub(tri[2], tri[0])))
	c := centroid(&tri)
	for _, x := range []r3.Vec{
		r3.Add(c, r3.Scale(0.3, n)), r3.Add(c, r3.Scale(-0.05, n)), {X: 2, Y: 1, Z: 1}, {X: 0.1, Y: -0.2, Z: 0.5},
		r3.Add(tri[1], r3.Scale(0.4, r3.Sub(tri[1], tri[0]))), r3.Add(r3.Scale(1.5, r3.Sub(tri[1], tri[2])), tri[1]),
	} {
		g, k := layers(&tri, n, x)
		wg, wk := adaptive(&tri, n, x, 9)
		if math.Abs(g-wg) > 1e-7*wg || math.Abs(k-wk) > 1e-6*(math.Abs(wk)+1e-3) {
			t.Errorf("at %v: %.10f, %.10f, want %.10f, %.10f", x, g, k, wg, wk)
		}
	}
	// On the triangle itself the single layer is finite and the double one zero.
	g, k := layers(&tri, n, c)
	wg := polar(&tri, c)
	if math.Abs(g-wg) > 1e-9*wg || k != 0 {
		t.Errorf("at the centroid: %.8f, %g, want %.8f, 0", g, k, wg)
	}
	for _, x := range []r3.Vec{tri[0], r3.Scale(0.5, r3.Add(tri[0], tri[1]))} { // corner, edge
		if g, k := layers(&tri, n, x); !(g > 0 && g < 10) || k != 0 {
			t.Errorf("on the rim at %v: %g, %g", x, g, k)
		}
	}
}

// polar integrates 1/r over a triangle from a point in it: ∫ r(θ) dθ, by
// Simpson's rule along the edges.
func polar(t *triangle, x r3.Vec) float64 {
	sum := 0.0
	for k := range 3 {
		a, b := r3.Sub(t[k], x), r3.Sub(t[(k+1)%3], x)
		twice := norm(r3.Cross(a, b)) // r²·dθ = twice·ds
		const m = 4000
		for i := range m + 1 {
			w := 2.0 + 2*float64(i%2)
			if i == 0 || i == m {
				w = 1
			}
			s := float64(i) / m
			sum += w / (3 * m) * twice / norm(r3.Add(r3.Scale(1-s, a), r3.Scale(s, b)))
		}
	}
	return sum
}

func adaptive(t *triangle, n, x r3.Vec, depth int) (single, double float64) {
	l := longest(t)
	if depth == 0 || norm(r3.Sub(centroid(t), x)) > 6*l {
		area := norm(r3.Cross(r3.Sub(t[1], t[0]), r3.Sub(t[2], t[0]))) / 2
		for m, y := range sevenPoints(t) {
			d := r3.Sub(x, y)
			r := norm(d)
			if r == 0 {
				continue
			}
			single += area * sevenWeights[m] / r
			double += area * sevenWeights[m] * r3.Dot(n, d) / (r * r * r)
		}
		return single, double
	}
	a, b, c := between(t[0], t[1]), between(t[1], t[2]), between(t[2], t[0])
	for _, s := range []triangle{{t[0], a, c}, {a, t[1], b}, {c, b, t[2]}, {a, b, c}} {
		g, k := adaptive(&s, n, x, depth-1)
		single += g
		double += k
	}
	return single, double
}

// The rule with seven points is exact to the fifth degree: ∫ x^a·y^b over the
// unit triangle is a!·b!/(a+b+2)!.
func TestIndependentSevenPoints(t *testing.T) {
	f := []float64{1, 1, 2, 6, 24, 120, 720, 5040}
	p := sevenPoints(&triangle{{}, {X: 1}, {Y: 1}})
	for a := range 6 {
		for b := range 6 - a {
			sum := 0.0
			for m, x := range p {
				sum += sevenWeights[m] / 2 * math.Pow(x.X, float64(a)) * math.Pow(x.Y, float64(b))
			}
			near2(t, "moment", sum, f[a]*f[b]/f[a+b+2], 1e-13)
		}
	}
}

// Where one quadrature rule hands over to the next neither may jump.
func TestPropertyTrapQuadrature(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var worst [2]float64
	for range 3000 {
		v := func() r3.Vec { return r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()} }
		p := &panels{}
		p.add(triangle{v(), v(), v()}, 0, 0)
		p.finish()
		p.rules()
		d := r3.Unit(v())
		for k, far := range []float64{nearRule, farRule} {
			x := r3.Add(p.at[0], r3.Scale(far*p.diam[0]*1.001, d))
			g, w := p.atNear(0, x)
			a, b := p.atMiddle(0, x)
			if k == 1 {
				a, b = p.far[0].atFar(x)
			}
			e := max(math.Abs(a/g-1), math.Abs(b-w)*far*p.diam[0]/g)
			worst[k] = max(worst[k], e)
		}
	}
	t.Logf("jumps %.1e from the integral to seven points, %.1e to the moments", worst[0], worst[1])
	if worst[0] > 2e-5 || worst[1] > 2e-4 {
		t.Errorf("jumps %.1e and %.1e", worst[0], worst[1])
	}
}

// The averaged equation gives a lower bound; a careless outer rule breaks it.
func TestPropertyTrapLowerBound(t *testing.T) {
	testdata.SlowOnly(t)
	last := 0.0
	for _, n := range []int{6, 10, 16} {
		c := capacitance(solve(t, one(cube(n, 1, r3.Vec{}, 2.5).surface("", current.Cathode)), MeshOptions{Galerkin: true,
			Tolerance: 1e-6}))
		if !(c > last && c < 0.66068) {
			t.Errorf("n = %d: %.7f after %.7f", n, c, last)
		}
		last = c
	}
}
