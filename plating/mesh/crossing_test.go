package mesh

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// moved moves a mesh without a change of its shape, anywhere.
func moved(t testing.TB, m Mesh, rng *rand.Rand) Mesh {
	t.Helper()
	axis := r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}
	m = must(t)(Rotate(m, 7*rng.Float64(), axis))
	return must(t)(Translate(m, r3.Scale(0.05, r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(),
		Z: rng.NormFloat64()})))
}

// bar is a box with its middle at a place, of twelve triangles or more.
func bar(t testing.TB, length, width, height units.Length, at r3.Vec, panel units.Length) Mesh {
	t.Helper()
	return must(t)(Translate(must(t)(Box(length, width, height, Grid{Size: panel})), at))
}

// figureEight is a tube whose middle runs in an eight: one closed surface that goes
// through itself in the middle. Raised lifts one strand over the other.
func figureEight(raised float64) Mesh {
	const along, around, a, r = 32, 8, 0.02, 0.002
	var m Mesh
	for i := range along {
		s := 2 * math.Pi * float64(i) / along
		sin, cos := math.Sincos(s)
		middle := r3.Vec{X: a * sin, Y: a * sin * cos, Z: raised * cos}
		ahead := r3.Unit(r3.Vec{X: cos, Y: cos*cos - sin*sin})
		side := r3.Vec{X: -ahead.Y, Y: ahead.X}
		for k := range around {
			sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.3) / around)
			m.Vertices = append(m.Vertices, r3.Add(middle, r3.Add(r3.Scale(r*cos, side), r3.Vec{Z: r * sin})))
			p, q := int32(i*around+k), int32(i*around+(k+1)%around)
			u, v := (p+around)%(along*around), (q+around)%(along*around)
			m.Triangles = append(m.Triangles, [3]int32{p, u, v}, [3]int32{p, v, q})
		}
	}
	if m.volume() < 0 {
		for i := range m.Triangles {
			m.flip(i)
		}
	}
	return m
}

// A double is a surface with a verdict on it.
type double struct {
	name         string
	m            Mesh
	cut, covered bool
	pieces       int
}

func doubles(t testing.TB) []double {
	merge := func(all ...Mesh) Mesh { return must(t)(Merge(all...)) }
	turned := func(m Mesh) Mesh {
		m = m.Clone()
		for i := range m.Triangles {
			m.flip(i)
		}
		return m
	}
	ring := must(t)(Torus(0.018, 0.002, Grid{Size: 0.002}))
	stone := must(t)(Sphere(0.004, Grid{Size: 0.001}))
	ball := must(t)(Sphere(0.02, Grid{Size: 0.004}))
	long, across := bar(t, 0.06, 0.004, 0.004, r3.Vec{}, 1), bar(t, 0.003, 0.05, 0.003, r3.Vec{X: 0.004, Z: 0.0002}, 1)
	cube := bar(t, 0.01, 0.01, 0.01, r3.Vec{}, 1)
	apart := func(gap float64) Mesh {
		return merge(cube, bar(t, 0.01, 0.01, 0.01, r3.Vec{X: 0.01 + gap, Y: 0.003}, 1))
	}
	welded := merge(cube, bar(t, 0.01, 0.01, 0.01, r3.Vec{X: 0.01}, 1))
	if n, _ := welded.weld(1e-9); n != 4 {
		t.Fatalf("%d corners joined", n)
	}
	return []double{
		{"crossed bars", merge(long, across), true, false, 2},
		{"crossed bars of one height", merge(long, bar(t, 0.004, 0.05, 0.004, r3.Vec{}, 1)), true, true, 2},
		{"crossed bars on a grid", merge(bar(t, 0.06, 0.004, 0.004, r3.Vec{}, 0.002), bar(t, 0.004, 0.06, 0.004,
			r3.Vec{}, 0.002)), false, true, 2},
		{"ring with a stone", merge(ring, must(t)(Translate(stone, r3.Vec{X: 0.0095}))), true, false, 2},
		{"cube half in a ball", merge(ball, bar(t, 0.009, 0.009, 0.009, r3.Vec{X: 0.01}, 0.003)), true, false, 2},
		{"bars end in end", merge(cube, bar(t, 0.01, 0.01, 0.01, r3.Vec{X: 0.009}, 1)), false, true, 2},
		{"peg sunk by 1 µm", merge(cube, bar(t, 0.002, 0.002, 0.01, r3.Vec{Z: 0.01 - 1e-6}, 1)), true, false, 2},
		{"figure eight", figureEight(0), true, false, 1},
		{"hollow that comes through", merge(cube, turned(bar(t, 0.004, 0.004, 0.004, r3.Vec{X: 0.004}, 1))),
			true, false, 2},
		{"faces that touch", apart(0), false, true, 2},
		{"faces that touch, corner on corner", merge(cube, bar(t, 0.01, 0.01, 0.01, r3.Vec{X: 0.01}, 1)),
			false, true, 2},
		{"body that stands on another",
			merge(cube, must(t)(Translate(tetra(0.003), r3.Vec{X: 0.001, Y: 0.001, Z: 0.005}))), false, true, 2},
		{"a face of two bodies", welded, false, true, 1},

		{"raised eight", figureEight(0.0025), false, false, 1},
		{"gap of 1 µm", apart(1e-6), false, false, 2},
		{"gap of 0.1 µm", apart(1e-7), false, false, 2},
		{"peg over a gap of 1 µm", merge(cube, bar(t, 0.002, 0.002, 0.01, r3.Vec{Z: 0.01 + 1e-6}, 1)), false, false, 2},
		{"hollow", merge(cube, turned(bar(t, 0.004, 0.004, 0.004, r3.Vec{X: 0.001}, 1))), false, false, 2},
		{"hollow under a skin of 1 µm", merge(cube, turned(bar(t, 0.004, 0.004, 0.004, r3.Vec{X: 0.003 - 1e-6}, 1))),
			false, false, 2},
		{"link through a ring", merge(ring, must(t)(Translate(must(t)(Rotate(ring, math.Pi/2, r3.Vec{X: 1})),
			r3.Vec{X: 0.009}))), false, false, 2},
		{"edges that touch", merge(cube, bar(t, 0.01, 0.01, 0.01, r3.Vec{X: 0.01, Y: 0.01, Z: 0.002}, 1)),
			false, false, 2},
		{"corner on a face", merge(cube, must(t)(Translate(must(t)(Rotate(tetra(0.003), math.Pi, r3.Vec{X: 1})),
			r3.Vec{X: 0.001, Y: 0.001, Z: 0.008}))), false, false, 2},
	}
}

// TestPropertyCrossing: bodies that cross or cover each other are no sound body, in
// whatever place they lie; what is said has a place, names no area, and Repair does
// not take them. Bodies with a gap, hollows and links stay sound.
func TestPropertyCrossing(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for _, d := range doubles(t) {
		first := report(t, d.m)
		// Counted by hand: faces that lie on each other, two triangles a square on each body.
		if want, known := map[string]int{"crossed bars on a grid": 2 * 4 * 4, "bars end in end": 4 * 4,
			"faces that touch":                   4,
			"faces that touch, corner on corner": 4, "a face of two bodies": 4}[d.name]; known &&
			first.Covered != want {
			t.Errorf("%s: %d covered, by hand %d", d.name, first.Covered, want)
		}
		for turn := range 6 {
			m := d.m
			if turn > 0 {
				m = moved(t, d.m, rng)
			}
			name := fmt.Sprintf("%s, turn %d", d.name, turn)
			r := report(t, m)
			if r.Cut > 0 != d.cut || r.Covered > 0 != d.covered || r.Cut != first.Cut || r.Covered != first.Covered ||
				r.Components != d.pieces {
				t.Fatalf("%s: %d cut, %d covered, at first %d, %d, %d pieces", name, r.Cut, r.Covered,
					first.Cut, first.Covered, r.Components)
			}
			if !d.cut && !d.covered {
				if !r.Sound() || len(r.Places) != 0 || !strings.Contains(r.String(), "area ") {
					t.Fatalf("%s: %v", name, r)
				}
				continue
			}
			if turn < 2 {
				refused(t, name, m, r)
			}
			for k, p := range r.Places {
				if q := first.Places[k]; p.Triangles != q.Triangles || p.Pieces != q.Pieces || p.Covers != q.Covers {
					t.Errorf("%s: place %d is %+v, at first %+v", name, k, p, q)
				}
			}
		}
	}
}

// refused checks all that is said of a surface that crosses.
func refused(t *testing.T, name string, m Mesh, r Findings) {
	t.Helper()
	fault := r.Fault()
	typed(t, name, fault)
	if r.Sound() || !errors.Is(fault, ErrCrossing) || !strings.Contains(fault.Error(), "union") ||
		!strings.Contains(fault.Error(), ") mm") || strings.Contains(fault.Error(), "e-") ||
		strings.Contains(fault.Error(), "Repair") {
		t.Errorf("%s: %v", name, fault)
	}
	if s := r.String(); strings.Contains(s, "cm²") || strings.Contains(s, "mL") || !strings.Contains(s, "no area") {
		t.Errorf("%s: the report names an area: %s", name, s)
	}
	if len(r.Places) == 0 || len(r.Places) > mostPlaces {
		t.Errorf("%s: %d places", name, len(r.Places))
	}
	for _, p := range r.Places {
		for _, i := range p.Triangles {
			if d := offTriangle(m.triangle(int32(i)), p.At); d > 1e-8 {
				t.Errorf("%s: place %v is %.3g m off triangle %d", name, p.At, d, i)
			}
		}
	}
	for _, open := range []bool{false, true} {
		if p, err := NewMeasuredPart(m, "", open); !errors.Is(err, ErrCrossing) || p != (MeasuredPart{}) {
			t.Errorf("%s: NewMeasuredPart %v", name, err)
		}
		for _, weld := range []units.Length{0, units.Micrometre / 10} {
			got, _, err := Repair(m, RepairOptions{Weld: weld, Open: open})
			if err == nil || got.Triangles != nil {
				t.Errorf("%s: Repair claims to have mended it", name)
			}
		}
	}
}

// offTriangle returns how far a place is off a triangle, by walking over it.
func offTriangle(t corners, p r3.Vec) float64 {
	least := math.Inf(1)
	from, size := [2]float64{0.5, 0.5}, 0.5
	for range 40 { // ever finer around the nearest found
		best := from
		for i := -4.; i <= 4; i++ {
			for k := -4.; k <= 4; k++ {
				u, v := from[0]+i*size/4, from[1]+k*size/4
				if u < 0 || v < 0 || u+v > 1 {
					continue
				}
				at := r3.Add(t[0], r3.Add(r3.Scale(u, r3.Sub(t[1], t[0])), r3.Scale(v, r3.Sub(t[2], t[0]))))
				if d := r3.Norm(r3.Sub(at, p)); d < least {
					least, best = d, [2]float64{u, v}
				}
			}
		}
		from, size = best, size*0.6
	}
	return least
}

// An exact is a place in whole numbers of a grain.
type exact [3]int64

// The grain is 2^-20 m, about 1 µm. Up to farGrains, 0.25 m, the determinants of
// whole numbers below are exact: differences under 2^19, six products under 2^57.
const (
	grain     = 1. / (1 << 20)
	farGrains = 1 << 18
)

// orient returns on which side of the plane of a, b and c a place d is: the sign of
// a determinant.
func orient(a, b, c, d exact) int {
	var m [3][3]int64
	for k, v := range [3]exact{b, c, d} {
		for i := range v {
			m[k][i] = v[i] - a[i]
		}
	}
	sum := m[0][0]*(m[1][1]*m[2][2]-m[1][2]*m[2][1]) + m[0][1]*(m[1][2]*m[2][0]-m[1][0]*m[2][2]) +
		m[0][2]*(m[1][0]*m[2][1]-m[1][1]*m[2][0])
	return cmp.Compare(sum, 0)
}

// pierces reports whether a side of one triangle goes through the inside of the
// other.
func pierces(s, t [3]exact) bool {
	for range 2 {
		for k := range t {
			v, w := t[k], t[(k+1)%3]
			if orient(s[0], s[1], s[2], v)*orient(s[0], s[1], s[2], w) >= 0 {
				continue
			}
			a, b, c := orient(v, w, s[0], s[1]), orient(v, w, s[1], s[2]), orient(v, w, s[2], s[0])
			if a != 0 && a == b && b == c {
				return true
			}
		}
		s, t = t, s
	}
	return false
}

// onGrain moves the corners of a mesh to whole grains, which floating point holds
// without rounding, and returns them as such too.
func onGrain(t *testing.T, m Mesh) (Mesh, []exact) {
	m = m.Clone()
	list := make([]exact, len(m.Vertices))
	for i, v := range m.Vertices {
		x, y, z := math.Round(v.X/grain), math.Round(v.Y/grain), math.Round(v.Z/grain)
		if max(math.Abs(x), math.Abs(y), math.Abs(z)) > farGrains {
			t.Fatalf("vertex %d at %v is too far for whole numbers", i, v)
		}
		m.Vertices[i] = r3.Vec{X: x * grain, Y: y * grain, Z: z * grain}
		list[i] = exact{int64(x), int64(y), int64(z)}
	}
	return m, list
}

// TestIndependentCrossing holds the triangles that are found against those of all
// pairs in whole numbers, without a tree and without rounding, on bodies in general
// position and on triangles strewn about.
func TestIndependentCrossing(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	var list []Mesh
	for range 2 {
		for _, d := range doubles(t) {
			if len(d.m.Triangles) > 1200 {
				continue
			}
			m := must(t)(Rotate(d.m, 7*rng.Float64(), r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: 1}))
			for i := range m.Vertices { // out of all planes and lines that corners have in common
				m.Vertices[i] = r3.Add(m.Vertices[i], r3.Scale(2e-4, r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(),
					Z: rng.NormFloat64()}))
			}
			list = append(list, m)
		}
		var strewn Mesh
		for k := range 60 {
			at := r3.Vec{X: rng.Float64(), Y: rng.Float64(), Z: rng.Float64()}
			for range 3 {
				strewn.Vertices = append(strewn.Vertices,
					r3.Scale(0.02, r3.Add(at, r3.Scale(0.4, r3.Vec{X: rng.NormFloat64(),
						Y: rng.NormFloat64(), Z: rng.NormFloat64()}))))
			}
			strewn.Triangles = append(strewn.Triangles, [3]int32{int32(3 * k), int32(3*k + 1), int32(3*k + 2)})
			if k%3 == 1 { // with a corner in common with the one before
				strewn.Triangles[k][1] = strewn.Triangles[k-1][0]
			}
		}
		list = append(list, strewn)
	}
	crossed := 0
	for n, m := range list {
		m, places := onGrain(t, m)
		at := func(i int) (t [3]exact) {
			for k, v := range m.Triangles[i] {
				t[k] = places[v]
			}
			return t
		}
		want := make([]bool, len(m.Triangles))
		var pairs [][2]int
		for i := range m.Triangles {
			for j := i + 1; j < len(m.Triangles); j++ {
				if pierces(at(i), at(j)) {
					want[i], want[j] = true, true
					pairs = append(pairs, [2]int{i, j})
				}
			}
		}
		count := 0
		for _, is := range want {
			if is {
				count++
			}
		}
		got := m.crossings(m.copies()) // two bodies share a face in one
		if got.cut != count || got.covered != 0 {
			t.Errorf("mesh %d: %d cut, %d covered, in whole numbers %d", n, got.cut, got.covered, count)
		}
		for k, p := range got.places {
			if k < len(pairs) && p.Triangles != pairs[k] {
				t.Errorf("mesh %d: pair %d is %v, in whole numbers %v", n, k, p.Triangles, pairs[k])
			}
		}
		crossed += count
	}
	if crossed < 200 {
		t.Errorf("only %d triangles cross in all", crossed)
	}
}

// TestPropertyCrossingPair: of two triangles neither order nor first corner nor
// direction matters.
func TestPropertyCrossingPair(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	point := func() r3.Vec { return r3.Vec{X: rng.Float64(), Y: rng.Float64(), Z: float64(rng.IntN(3)) / 2} }
	kinds := map[[2]bool]int{}
	for range 60000 {
		s, u := corners{point(), point(), point()}, corners{point(), point(), point()}
		if flat(s[0], s[1], s[2]) || flat(u[0], u[1], u[2]) {
			continue
		}
		_, covers, found := crossing(s, u, 1e-7)
		kinds[[2]bool{covers && found, found}]++
		for _, p := range [][2]corners{{u, s}, {corners{s[1], s[2], s[0]}, u}, {s, corners{u[2], u[1], u[0]}}} {
			if _, c, f := crossing(p[0], p[1], 1e-7); f != found || f && c != covers {
				t.Fatalf("%v %v: %v %v, turned about %v %v", s, u, found, covers, f, c)
			}
		}
	}
	if len(kinds) != 3 || kinds[[2]bool{true, true}] < 100 || kinds[[2]bool{false, true}] < 100 {
		t.Errorf("kinds of pairs %v", kinds)
	}
}

// TestPropertySoundInSingle: the bodies of the generators stay sound when they are
// turned and written in single precision.
func TestPropertySoundInSingle(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 42))
	all := map[string]Mesh{"bunny": bunny(t, units.Millimetre)}
	for _, s := range samples() {
		all[s.name] = must(t)(s.make(Grid{Size: 3e-3, Grade: 2}))
	}
	for name, m := range all {
		for range 3 {
			again := must(t)(ReadSTL(strings.NewReader(string(stl(t, moved(t, m, rng)))), units.Millimetre))
			if r := report(t, again); !r.Sound() {
				t.Errorf("%s: %v", name, r)
			}
		}
	}
	// So do the faces that touch stay covered.
	for _, d := range doubles(t) {
		if d.covered && !d.cut && d.pieces == 2 {
			again := must(t)(ReadSTL(strings.NewReader(string(stl(t, moved(t, d.m, rng)))), units.Millimetre))
			if r := report(t, again); r.Sound() || r.counted() {
				t.Errorf("%s in single precision: %v", d.name, r)
			}
		}
	}
}

// TestPropertyCrossingTime: 200 000 triangles take seconds, and so does a tilted
// drawing of long needles, whose boxes all meet.
func TestPropertyCrossingTime(t *testing.T) {
	testdata.SlowOnly(t)
	ball := must(t)(Sphere(0.02, Grid{Size: 0.02 / 110}))
	two := must(t)(Merge(ball, must(t)(Translate(ball, r3.Vec{X: 0.012, Y: 0.001, Z: 0.002}))))
	const n = 5000
	needles := Mesh{Vertices: []r3.Vec{{}, {Z: 0.1}}}
	for i := range int32(n) {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		needles.Vertices = append(needles.Vertices, r3.Vec{X: 0.02 * cos, Y: 0.02 * sin}, r3.Vec{X: 0.02 * cos,
			Y: 0.02 * sin, Z: 0.1})
		p, q := 2+2*i, 2+2*((i+1)%n)
		needles.Triangles = append(needles.Triangles, [3]int32{p, q, q + 1}, [3]int32{p, q + 1, p + 1},
			[3]int32{0, q, p}, [3]int32{1, p + 1, q + 1})
	}
	needles = must(t)(Rotate(needles, 0.8, r3.Vec{X: 1, Y: 1, Z: 0.3}))
	for name, m := range map[string]Mesh{"two balls": two, "needles": needles} {
		start := time.Now()
		r := report(t, m)
		if took := time.Since(start); took > 30*time.Second { // about 3 s on one core of a server
			t.Errorf("%s: %d triangles take %v", name, len(m.Triangles), took)
		}
		if (r.Cut > 0) != (name == "two balls") {
			t.Errorf("%s: %v", name, r)
		}
	}
}
