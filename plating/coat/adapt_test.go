package coat_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// TestReferenceSphereFromAxi: a ball inside a ball-shaped anode has an even
// coat (exact by symmetry), and the areas of the patches sum to that of the
// sphere. A mask is left out.
func TestReferenceSphereFromAxi(t *testing.T) {
	p := axi.ProfileProblem{Bath: axi.OpenWithFarAnode(5), Drive: current.ByCurrent(0.1),
		Parts: []axi.Revolved{{Name: "bob", Profile: axi.Ball(10*units.Millimetre, 0), Law: current.TafelCathode(1, 0.5,
			units.Celsius(25))}}}
	s, err := axi.Solve(context.Background(), p, axi.ProfileOptions{})
	if err != nil {
		t.Fatal(err)
	}
	surface, err := coat.FromAxi(s, 0)
	if err != nil {
		t.Fatal(err)
	}
	c, err := coat.Lay(surface, goldBath(t), 600)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(float64(c.MinToAverage)-1) > 1e-9 {
		t.Errorf("ratio %v, want 1", c.MinToAverage)
	}
	if want := 4 * math.Pi * 1e-4; relative(float64(c.PartArea), want) > 1e-9 {
		t.Errorf("area %v, want %v", float64(c.PartArea), want)
	}
	if relative(float64(c.Current), 0.1) > 1e-9 {
		t.Errorf("current %v", c.Current)
	}
	for _, q := range surface.Patches {
		if r := math.Hypot(q.At.X, q.At.Z); relative(r, 0.01) > 1e-9 || relative((q.At.X*q.Normal.X+q.At.Z*q.Normal.Z)/r,
			1) > 1e-9 {
			t.Fatalf("patch at %v has normal %v", q.At, q.Normal)
		}
	}
	if !(surface.MinError < 1e-6) || !strings.Contains(surface.Basis, "unknowns") {
		t.Errorf("%v %q", surface.MinError, surface.Basis)
	}
	if _, err := coat.FromAxi(s, 1); err == nil {
		t.Error("no such part: no error")
	}
	if _, err := coat.FromAxi(nil, 0); err == nil {
		t.Error("no solution: no error")
	}
}

// TestIndependentAxiAgainstField: the coat on a rod in an open bath by both
// methods. The mesh is coarse: 3 % at the thinnest spot.
func TestIndependentAxiAgainstField(t *testing.T) {
	const mm = units.Millimetre
	law := current.LinearLaw(2e-3)
	s, err := axi.Solve(context.Background(), axi.ProfileProblem{Bath: axi.OpenWithFarAnode(5),
		Drive: current.ByCurrent(0.1),
		Parts: []axi.Revolved{{Name: "rod", Profile: axi.Rod(10*mm, -10*mm, 10*mm), Law: law}}}, axi.ProfileOptions{})
	if err != nil {
		t.Fatal(err)
	}
	a, err := coat.FromAxi(s, 0)
	if err != nil {
		t.Fatal(err)
	}
	m, err := mesh.Cylinder(20*mm, 20*mm, mesh.Grid{Size: 3 * mm, Grade: 2})
	if err != nil {
		t.Fatal(err)
	}
	problem := field.MeshProblem{Conductivity: 5, Drive: current.ByCurrent(0.1),
		Surfaces: []field.Boundary{{Name: "rod", Vertices: m.Vertices, Triangles: m.Triangles, Law: law}}}
	f, err := field.Solve(context.Background(), problem, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := coat.FromField(problem, f, 0)
	if err != nil {
		t.Fatal(err)
	}
	bath := goldBath(t)
	x, err := coat.Lay(a, bath, 600)
	if err != nil {
		t.Fatal(err)
	}
	y, err := coat.Lay(b, bath, 600)
	if err != nil {
		t.Fatal(err)
	}
	if relative(float64(y.MinToAverage), float64(x.MinToAverage)) > 0.03 || relative(float64(y.PartArea),
		float64(x.PartArea)) > 0.03 {
		t.Errorf("profile %v on %v, mesh %v on %v", x.MinToAverage, x.PartArea, y.MinToAverage, y.PartArea)
	}
	if _, err := coat.FromField(problem, f, 7); err == nil {
		t.Error("no such surface: no error")
	}
	problem.Surfaces[0].Triangles = problem.Surfaces[0].Triangles[1:]
	if _, err := coat.FromField(problem, f, 0); err == nil {
		t.Error("another mesh: no error")
	}
}

// halved takes the density of the thick end down to twice that of the thin one.
func halved(s coat.Surface) coat.Surface {
	for i := range s.Patches {
		s.Patches[i].Density = min(s.Patches[i].Density, 2*s.Patches[0].Density)
	}
	return s
}

// TestUnresolvedComesAlong: what rests on one panel is marked by both ways.
func TestUnresolvedComesAlong(t *testing.T) {
	const mm = units.Millimetre
	box, err := mesh.Cup(30*mm, 30*mm, 20*mm, 15*mm, mesh.Grid{Size: 9 * mm})
	if err != nil {
		t.Fatal(err)
	}
	p := field.MeshProblem{Conductivity: 10, Drive: current.ByCurrent(0.1),
		Surfaces: []field.Boundary{{Name: "cup", Vertices: box.Vertices, Triangles: box.Triangles}}}
	s, err := field.Solve(context.Background(), p, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	got, err := coat.FromField(p, s, 0)
	if err != nil || !s.Surfaces[0].Minimum.Unresolved || !got.Unresolved {
		t.Errorf("by mesh: %v, solution %v, surface %v", err, s.Surfaces[0].Minimum.Unresolved, got.Unresolved)
	}
	// A notch with a sharp inward corner, primary, on a coarse mesh.
	cup := axi.NewProfile(axi.Point{}).LineTo(axi.Point{R: 15 * mm}, axi.Point{R: 15 * mm, Z: 30 * mm},
		axi.Point{R: 10 * mm, Z: 30 * mm}, axi.Point{R: 10 * mm, Z: 5 * mm}, axi.Point{Z: 5 * mm})
	a, err := axi.Solve(context.Background(), axi.ProfileProblem{Bath: axi.OpenWithFarAnode(10),
		Parts: []axi.Revolved{{Name: "cup",
			Profile: cup}}, Drive: current.ByCurrent(0.1)}, axi.ProfileOptions{Order: 4, Levels: 1})
	if err != nil {
		t.Fatal(err)
	}
	marked := false
	for _, w := range a.Warnings {
		marked = marked || w.Code == current.Unresolved
	}
	round, err := coat.FromAxi(a, 0)
	if err != nil || !marked || !round.Unresolved {
		t.Errorf("by profile: %v, solution %v, surface %v (%v)", err, marked, round.Unresolved, a.Warnings)
	}
}
