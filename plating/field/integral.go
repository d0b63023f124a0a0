package field

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The kernel of ∇² in space is 1/(4πr).
const fourPi = 4 * math.Pi

// A triangle holds its corners; the order gives the normal.
//
// With the normal out of the bath the corners run clockwise for one who looks
// from the bath; see [panels.add].
type triangle [3]r3.Vec

// layers returns the potentials of a unit single and a unit double layer on a
// flat triangle, without the factor 1/(4π).
//
//	single = ∫ 1/|x-y| dS          double = ∫ n·(x-y)/|x-y|³ dS
//
// The double layer is the solid angle of the triangle, positive on the side
// its normal n points to, and 0 in its own plane (on the triangle
// itself the mean of both sides). With e the edges, t the
// signed distance of the edge line from the foot of x, and h the height,
//
//	single = Σ t·ln((Ra+Rb+l)/(Ra+Rb-l)) - h·double
//
// It holds for every x, on the triangle and its edges too.
//
// How it comes about: in the plane of the triangle 1/r is the divergence of a
// vector field that points away from the foot of x and has the length (√(ρ² +
// h²) - |h|)/ρ at a distance ρ from it. The integral over the area becomes one
// over the edges, which is the logarithm, and the |h| adds up to the angle that
// the triangle fills as seen from x: the solid angle, times the height.
//
// The solid angle comes from the triple product of the three vectors to the
// corners,
//
//	tan(Ω/2) = a·(b × c)/(|a||b||c| + (a·b)|c| + (b·c)|a| + (c·a)|b|)
//
// with the arc tangent of two arguments, since Ω/2 goes up to π.
//
// Source: [Derived] from the divergence theorem in the plane of the triangle;
// tested against adaptive subdivision.
func layers(tri *triangle, n, x r3.Vec) (single, double float64) {
	// All from x: what is near loses no digits against what is far.
	a, b, c := r3.Sub(tri[0], x), r3.Sub(tri[1], x), r3.Sub(tri[2], x)
	ra, rb, rc := norm(a), norm(b), norm(c)
	h := -r3.Dot(n, a)
	det := r3.Dot(a, r3.Cross(b, c))
	den := ra*rb*rc + r3.Dot(a, b)*rc + r3.Dot(b, c)*ra + r3.Dot(c, a)*rb
	if math.Abs(h) > 1e-11*(ra+rb+rc) { // else in the plane, where the mean of both sides is meant
		double = -2 * math.Atan2(det, den)
	}
	single = edge(a, b, n, ra, rb) + edge(b, c, n, rb, rc) + edge(c, a, n, rc, ra) - h*double
	return single, double
}

// edge returns the contribution of one edge to the single layer,
// t·ln((Ra+Rb+l)/(Ra+Rb-l)). With s = Ra + Rb - l the argument is 1 + 2l/s:
// written so, the logarithm keeps its digits for an x far away, where it is
// small and would be the difference of two numbers alike.
func edge(a, b, n r3.Vec, ra, rb float64) float64 {
	d := r3.Sub(b, a)
	l := norm(d)
	t := r3.Dot(a, r3.Cross(d, n)) / l
	s := ra + rb - l
	if s <= 1e-15*l {
		return 0 // x lies on the edge, where t is 0
	}
	return t * math.Log1p(2*l/s)
}

// norm returns the length of a vector, without the care for overflow that
// coordinates of parts do not need.
func norm(v r3.Vec) float64 { return math.Sqrt(v.X*v.X + v.Y*v.Y + v.Z*v.Z) }

// The rule with seven points that is exact to the fifth degree: the centroid
// and two triples. Weights sum to 1.
var (
	// The order is centroid, first triple, second triple, as in [sevenPoints].
	sevenWeights = [7]float64{9. / 40, w7a, w7a, w7a, w7b, w7b, w7b}
)

const (
	// The points of a triple lie at (1-2w, w, w) and its turns, in shares of
	// the corners, with w = a7 for the first and b7 for the second.
	sqrt15 = 3.87298334620741688517926539978
	w7a    = (155 - sqrt15) / 1200
	w7b    = (155 + sqrt15) / 1200
	a7     = (6 - sqrt15) / 21
	b7     = (6 + sqrt15) / 21
)

// sevenPoints returns the points of the seven-point rule.
func sevenPoints(tri *triangle) (p [7]r3.Vec) {
	p[0] = centroid(tri)
	for k, w := range [2]float64{a7, b7} {
		for i := range 3 {
			u, v, q := tri[i], tri[(i+1)%3], tri[(i+2)%3]
			p[1+3*k+i] = r3.Add(r3.Scale(1-2*w, u), r3.Add(r3.Scale(w, v), r3.Scale(w, q)))
		}
	}
	return p
}

// centroid returns the mean of the corners, where the collocated equation is
// taken.
func centroid(tri *triangle) r3.Vec {
	return r3.Scale(1./3, r3.Add(tri[0], r3.Add(tri[1], tri[2])))
}
