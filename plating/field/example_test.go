package field_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/units"
)

// block returns a rectangular block with n by n cells on each face.
func block(low, high r3.Vec, n int) (v []r3.Vec, t [][3]int32) {
	number := map[r3.Vec]int32{}
	corner := func(axis int, side, a, b float64) int32 {
		var c [3]float64
		c[axis], c[(axis+1)%3], c[(axis+2)%3] = side, a, b
		p := r3.Vec{X: low.X + c[0]*(high.X-low.X), Y: low.Y + c[1]*(high.Y-low.Y), Z: low.Z + c[2]*(high.Z-low.Z)}
		k, ok := number[p]
		if !ok {
			k = int32(len(v))
			number[p] = k
			v = append(v, p)
		}
		return k
	}
	at := func(i int) float64 { // closer together at the edges
		return (1 - math.Cos(math.Pi*float64(i)/float64(n))) / 2
	}
	for axis := range 3 {
		for side := range 2 {
			for i := range n {
				for j := range n {
					s := float64(side)
					a, b := corner(axis, s, at(i), at(j)), corner(axis, s, at(i+1), at(j))
					c, d := corner(axis, s, at(i+1), at(j+1)), corner(axis, s, at(i), at(j+1))
					if side == 0 {
						b, d = d, b
					}
					t = append(t, [3]int32{a, b, c}, [3]int32{a, c, d})
				}
			}
		}
	}
	return v, t
}

// bath is a clock's pendulum bob, a block of 30 mm by 30 mm by 10 mm, before
// an anode wall in a tank of 120 mm.
func bath() field.MeshProblem {
	v, t := block(r3.Vec{X: 0.055, Y: 0.045, Z: 0.045}, r3.Vec{X: 0.065, Y: 0.075, Z: 0.075}, 8)
	bob := field.Boundary{Name: "bob", Vertices: v, Triangles: t,
		Law: current.TafelCathode(1*units.AmperePerSquareMetre, 0.5, units.Celsius(50))}
	return field.MeshProblem{
		Conductivity: 20, Box: &field.Box{High: r3.Vec{X: 0.12, Y: 0.12, Z: 0.12},
			Walls: []field.Wall{{Face: field.LowX, Kind: current.Anode}}},
		Surfaces: []field.Boundary{bob},
		Drive:    current.ByCurrent(0.3),
	}
}

func ExampleSolve() {
	s, err := field.Solve(context.Background(), bath(), field.MeshOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	bob := &s.Surfaces[0]
	p95, _ := bob.Percentile(0.95)
	fmt.Printf("cell voltage %.2f V\n", float64(s.CellVoltage))
	fmt.Printf("thinnest spot %.0f %% of the mean, on the far side: %v\n", 100*float64(bob.Minimum.Density/bob.Mean()),
		bob.Minimum.At.X > 0.064)
	fmt.Printf("95 %% of the area get at most %.1f times the mean\n", float64(p95/bob.Mean()))
	fmt.Printf("row sums good to 1e-4: %v\n", s.Checks.RowSum < 1e-4)
	// Output:
	// cell voltage 0.36 V
	// thinnest spot 76 % of the mean, on the far side: true
	// 95 % of the area get at most 1.2 times the mean
	// row sums good to 1e-4: true
}

func ExampleEstimate() {
	c, err := field.Estimate(bath(), field.MeshOptions{MemoryLimit: 1 << 20})
	fmt.Println(c.Unknowns, "panels")
	fmt.Println("refused:", err != nil)
	// Output:
	// 1968 panels
	// refused: true
}

// open is the same bob in a bath without walls, the anode far away, on a coarse mesh.
func open() field.MeshProblem {
	p := bath()
	p.Box = nil
	p.Surfaces[0].Vertices, p.Surfaces[0].Triangles = block(r3.Vec{}, r3.Vec{X: 0.01, Y: 0.03, Z: 0.03}, 4)
	return p
}

func ExampleCompare() {
	p := open()
	coarse, err := field.Solve(context.Background(), p, field.MeshOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fine, err := field.Solve(context.Background(), field.Refined(p), field.MeshOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := field.Compare(coarse, fine)
	fmt.Printf("%s: the minimum moves by %.1f %%, resolved: %v, %v\n", d[0].Name, 100*math.Abs(d[0].Minimum),
		!d[0].Unresolved, err)
	_, err = field.Compare(coarse, nil)
	fmt.Println(err)
	// Output:
	// bob: the minimum moves by 1.4 %, resolved: true, <nil>
	// solutions different surfaces: values that contradict; need two solutions of one problem
}

func ExampleRefined() {
	p := open()
	q := field.Refined(p)
	a, b := p.Surfaces[0], q.Surfaces[0]
	fmt.Println(len(a.Triangles), "triangles become", len(b.Triangles))
	fmt.Println(len(a.Vertices), "corners become", len(b.Vertices)) // 6 edges for each 4 triangles
	fmt.Println("walls of the tank:", field.Refined(bath()).Box.Panel)
	// Output:
	// 192 triangles become 768
	// 98 corners become 386
	// walls of the tank: 6 mm
}

func ExampleMeshResult_Percentile() {
	r := field.MeshResult{Density: []units.CurrentDensity{40, 90, 60, 50}, Area: []units.Area{1, 0.5, 0.5, 2}}
	for _, part := range []float64{0, 0.5, 0.95} {
		j, err := r.Percentile(part)
		fmt.Printf("%.0f %% of the area get at most %v, %v\n", 100*part, j, err)
	}
	_, err := r.Percentile(95)
	fmt.Println(err)
	// Output:
	// 0 % of the area get at most 0.4 A/dm², <nil>
	// 50 % of the area get at most 0.5 A/dm², <nil>
	// 95 % of the area get at most 0.9 A/dm², <nil>
	// percentile 95: out of range; need a fraction from 0 to 1
}

func ExampleMeshResult_Mean() {
	r := field.MeshResult{Area: []units.Area{0.01, 0.02}, Total: 1.5}
	fmt.Println(r.Mean())
	// Output: 0.5 A/dm²
}

func ExampleMeshResult_TotalArea() {
	r := field.MeshResult{Area: []units.Area{0.01, 0.02}}
	fmt.Println(r.TotalArea(), "m²")
	// Output: 0.03 m²
}

// Floating metal in the bath: the solution says which end of it dissolves.
func ExampleMeshSolution() {
	p := bath()
	ring := field.Boundary{Name: "bezel", Kind: current.Floating, Law: current.LinearLaw(5 * units.OhmSquareCentimetre)}
	ring.Vertices, ring.Triangles = block(r3.Vec{X: 0.025, Y: 0.055, Z: 0.055}, r3.Vec{X: 0.04, Y: 0.065, Z: 0.065}, 4)
	p.Surfaces = append(p.Surfaces, ring)
	s, err := field.Solve(context.Background(), p, field.MeshOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, w := range s.Warnings {
		fmt.Println(w.Surface+":", w.Code)
	}
	bezel := s.Surfaces[1]
	fmt.Printf("net current zero: %v\n", math.Abs(float64(bezel.Total)) < 1e-6)
	fmt.Printf("its least current density dissolves: %v\n", bezel.Minimum.Density < 0)
	// Output:
	// bezel: bipolar
	// net current zero: true
	// its least current density dissolves: true
}

func ExampleCostError() {
	_, err := field.Solve(context.Background(), bath(), field.MeshOptions{MemoryLimit: 1 << 20})
	var big *field.CostError
	if errors.As(err, &big) {
		fmt.Println(big.Cost.Unknowns, "panels, allowed:", big.Limit>>20, "MB,", errors.Is(err, current.ErrTooLarge))
	}
	// Output: 1968 panels, allowed: 1 MB, true
}

func ExampleFace() {
	fmt.Println(field.LowX, field.HighZ, field.Face(6))
	// Output: low x high z unknown face
}

func ExampleCorner_Estimate() {
	// The total moved by 1 % when the panels were halved.
	free := field.Corner{}
	masked := field.Corner{Angle: math.Pi, Share: 0.2} // masked in the plane of the face
	fmt.Printf("no mask: off by %.1f %%\n", 100*free.Estimate(0.01))
	fmt.Printf("masked:  off by %.1f %%\n", 100*masked.Estimate(0.01))
	// Output:
	// no mask: off by 1.0 %
	// masked:  off by 4.0 %
}

func ExampleSignError() {
	_, err := field.Solve(context.Background(), bath(), field.MeshOptions{})
	var wrong *field.SignError
	if errors.As(err, &wrong) {
		fmt.Printf("%d panels seem to dissolve, the worst at %v m: %s\n", wrong.Panels, wrong.At, wrong.Need)
		return
	}
	fmt.Println("no cathode dissolves")
	// Output: no cathode dissolves
}

func ExampleBoundary() {
	// A surface that is not closed is refused with the reason and the remedy.
	p := bath()
	p.Surfaces[0].Triangles = p.Surfaces[0].Triangles[1:]
	_, err := field.Solve(context.Background(), p, field.MeshOptions{})
	fmt.Println(strings.ReplaceAll(err.Error(), "; ", ";\n"))
	// Output:
	// surface "bob", triangle 0: not a closed surface: an edge without a neighbour;
	// need a closed body (thicken a sheet, fill a hole, weld corners)
}
