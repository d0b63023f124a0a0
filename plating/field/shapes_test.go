package field

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
)

// annulus makes the vessel between two cylinders of 10 and 50 mm.
func annulus(sectors int, height float64, law current.Law) []Boundary {
	rings, layers := sectors/4+2, max(2, sectors/8)
	var in, out, ends soup
	r := make([]float64, rings+1)
	for i := range r {
		r[i] = 0.01 * math.Pow(5, graded(rings, 0, 1, 1.5)[i])
	}
	z := graded(layers, 0, height, 1.5)
	at := func(k int, r, z float64) r3.Vec {
		a := 2 * math.Pi * float64(k%sectors) / float64(sectors)
		return r3.Vec{X: r * math.Cos(a), Y: r * math.Sin(a), Z: z}
	}
	for k := range sectors {
		for i := range layers {
			in.quad(at(k, 0.01, z[i]), at(k+1, 0.01, z[i]), at(k+1, 0.01, z[i+1]), at(k, 0.01, z[i+1]))
			out.quad(at(k, r[rings], z[i]), at(k, r[rings], z[i+1]), at(k+1, r[rings], z[i+1]), at(k+1, r[rings], z[i]))
		}
		for i := range rings {
			a, b := r[i], r[i+1]
			if i == 0 {
				a = 0.01
			}
			ends.quad(at(k, a, 0), at(k, b, 0), at(k+1, b, 0), at(k+1, a, 0))
			ends.quad(at(k, a, height), at(k+1, a, height), at(k+1, b, height), at(k, b, height))
		}
	}
	s := []Boundary{in.surface("inner", current.Cathode), out.surface("outer", current.Anode),
		ends.surface("ends", current.Insulator)}
	s[0].Law = law
	for i := range s {
		s[i].Vessel = true
	}
	return s
}

// channel makes a slab: an insulating channel of half width b and height h
// with an anode on top and on the floor a cathode strip of half width a.
func channel(a, b, h, depth float64, n int, law current.Law) []Boundary {
	var x []float64
	if a < b {
		side := int(math.Max(2, math.Round(float64(n)*(b-a)/(2*a))))
		x = append(x, graded(side, -b, -a, 2)[:side]...)
		x = append(x, graded(n, -a, a, 2)[:n]...)
		x = append(x, graded(side, a, b, 2)...)
	} else {
		x = graded(n, -b, b, 1.5)
	}
	whole := boxMesh(x, graded(max(4, n/4), 0, depth, 1), graded(max(4, n/2), 0, h, 1.5)).inverted().surface("",
		current.Insulator)
	whole.Vessel = true
	floor := subsetOf(whole, func(v r3.Vec) bool { return v.Z == 0 && math.Abs(v.X) < a })
	top := subsetOf(whole, func(v r3.Vec) bool { return math.Abs(v.Z-h) < 1e-12 })
	rest := subsetOf(whole, func(v r3.Vec) bool { return !(v.Z == 0 && math.Abs(v.X) < a) && math.Abs(v.Z-h) >= 1e-12 })
	floor.Kind, floor.Name, floor.Law = current.Cathode, "strip", law
	top.Kind, top.Name = current.Anode, "top"
	return []Boundary{floor, top, rest}
}

// cup makes a square cup: outer side 1, height h, walls of the given thickness
// and a floor as thick, n cells across the bore.
func cup(n int, wall, h float64) *soup {
	side := append(graded(4, 0, wall, 1)[:4], append(graded(n, wall, 1-wall, 1)[:n], graded(4, 1-wall, 1, 1)...)...)
	up := append(graded(3, 0, 0.1, 1)[:3], graded(int(h*float64(2*n)), 0.1, h, 1)...)
	return filled(side, side, up, func(x, y, z float64) bool {
		in := func(v float64) bool { return v > wall && v < 1-wall }
		return !(in(x) && in(y) && z > 0.1)
	})
}

// filled makes the surface of the cells of a grid for which f holds at the middle.
func filled(x, y, z []float64, f func(x, y, z float64) bool) *soup {
	s := &soup{}
	g := [3][]float64{x, y, z}
	full := func(c [3]int) bool {
		var m [3]float64
		for a := range 3 {
			if c[a] < 0 || c[a] >= len(g[a])-1 {
				return false
			}
			m[a] = (g[a][c[a]] + g[a][c[a]+1]) / 2
		}
		return f(m[0], m[1], m[2])
	}
	for i := range len(x) - 1 {
		for j := range len(y) - 1 {
			for k := range len(z) - 1 {
				c := [3]int{i, j, k}
				if !full(c) {
					continue
				}
				for a := range 3 {
					for side := range 2 {
						next := c
						next[a] += 2*side - 1
						if full(next) {
							continue
						}
						u, v := (a+1)%3, (a+2)%3
						at := func(du, dv int) r3.Vec {
							var w [3]float64
							w[a], w[u], w[v] = g[a][c[a]+side], g[u][c[u]+du], g[v][c[v]+dv]
							return r3.Vec{X: w[0], Y: w[1], Z: w[2]}
						}
						p, q, r, o := at(0, 0), at(1, 0), at(1, 1), at(0, 1)
						if side == 0 {
							q, o = o, q
						}
						s.quad(p, q, r, o)
					}
				}
			}
		}
	}
	return s
}
