package coat_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

func TestBadInput(t *testing.T) {
	b := goldBath(t)
	for name, change := range map[string]func(*coat.Surface){
		"none":      func(s *coat.Surface) { s.Patches = nil },
		"marks":     func(s *coat.Surface) { s.Significant = []bool{true} },
		"all false": func(s *coat.Surface) { s.Significant = make([]bool, len(s.Patches)) },
		"area":      func(s *coat.Surface) { s.Patches[3].Area = 0 },
		"density":   func(s *coat.Surface) { s.Patches[3].Density = units.CurrentDensity(math.NaN()) },
		"place":     func(s *coat.Surface) { s.Patches[3].At.Y = math.Inf(1) },
		"normal":    func(s *coat.Surface) { s.Patches[3].Normal.Y = math.NaN() },
		"huge":      func(s *coat.Surface) { s.Patches[3].Density = 1e308; s.Patches[3].Area = 1e200 },
	} {
		s := bar(10)
		change(&s)
		if _, err := coat.Lay(s, b, 600); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	s := bar(10)
	for _, time := range []units.Duration{-1, units.Duration(math.NaN()), units.Duration(math.Inf(1))} {
		if _, err := coat.Lay(s, b, time); err == nil {
			t.Errorf("time %v: no error", float64(time))
		}
	}
	if _, err := coat.Lay(s, &plating.OperatingBath{}, 1); err == nil {
		t.Error("no bath: no error")
	}
	for _, least := range []units.Length{0, -1, units.Length(math.NaN())} {
		if _, err := coat.TimeFor(s, b, least); err == nil {
			t.Errorf("least %v: no error", float64(least))
		}
	}
	c, _ := coat.Lay(s, b, 600)
	other := bar(3)
	if _, err := c.Below(other, 1e-6); err == nil {
		t.Error("another surface: no error")
	}
	if _, err := c.GivenAway(other, b, 1e-6); err == nil {
		t.Error("another surface: no error")
	}
	// Current that leaves the metal dissolves and counts as no coat.
	s.Patches[0].Density = -1
	c, err := coat.Lay(s, b, 600)
	if err != nil || c.Min != 0 || c.Dissolving != s.Patches[0].Area {
		t.Errorf("%v %v %v", c.Min, c.Dissolving, err)
	}
	if _, err := c.Distribution(s); err == nil {
		t.Error("ratio zero: no error")
	}
	if got := coat.Where(s, 99); got != "nowhere on the part" {
		t.Error(got)
	}
}

// refused wants a [*units.ValueError].
func refused(t *testing.T, what string, err error) {
	t.Helper()
	var e *units.ValueError
	if !errors.As(err, &e) {
		t.Errorf("%s: %v, want a ValueError", what, err)
	}
}

// TestPropertyOtherSurface: a coat is not held against a surface that it was not laid
// on: another number of patches, another area, marks for other patches.
func TestPropertyOtherSurface(t *testing.T) {
	patches := func(areas ...units.Area) coat.Surface {
		var s coat.Surface
		for _, a := range areas {
			s.Patches = append(s.Patches, coat.Patch{Area: a, Density: 50})
		}
		return s
	}
	b := goldBath(t)
	own := patches(1e-4, 2e-4)
	c, err := coat.Lay(own, b, 600)
	if err != nil {
		t.Fatal(err)
	}
	marked := patches(1e-4, 2e-4)
	marked.Significant = []bool{true}
	for name, s := range map[string]coat.Surface{"none": {}, "fewer": patches(3e-4), "larger": patches(1e-4, 3e-4),
		"smaller": patches(1e-5, 2e-5), "marks": marked, "an area below zero": patches(-1e-4, 4e-4)} {
		_, err := c.Below(s, 1e-6)
		refused(t, name+", below", err)
		_, err = c.GivenAway(s, b, 1e-6)
		refused(t, name+", given away", err)
		_, err = c.Distribution(s)
		refused(t, name+", distribution", err)
	}
	if _, err := c.Below(own, 1e-6); err != nil {
		t.Error(err)
	}
	var none *coat.CoatMap
	_, err = none.Below(own, 1e-6)
	refused(t, "no coat", err)
	_, err = coat.Lay(own, (*plating.OperatingBath)(nil), 600)
	refused(t, "no bath", err)
	_, err = own.Mark(nil)
	refused(t, "no selection", err)
	for name, s := range map[string]coat.Selector{"both": coat.Both(nil, nil), "not": coat.Not(nil)} {
		_, err = own.Mark(s)
		refused(t, name+" of nothing", err)
	}
}

// TestPropertyBrokenProblem: a problem that was changed after it was solved, so that
// its triangles name corners that are not there, is refused.
func TestPropertyBrokenProblem(t *testing.T) {
	ball, err := mesh.Sphere(10*units.Millimetre, mesh.Grid{Size: 4 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	p := field.MeshProblem{Surfaces: []field.Boundary{{Name: "ball", Vertices: ball.Vertices, Triangles: ball.Triangles,
		Kind: current.Cathode}}}
	n := len(ball.Triangles)
	s := &field.MeshSolution{Surfaces: []field.MeshResult{{Name: "ball", Density: make([]units.CurrentDensity, n),
		Area: make([]units.Area, n), Centroid: ball.Vertices[:0:0]}}}
	_, err = coat.FromField(p, s, 0)
	refused(t, "no centroids", err)
	for i := range n {
		s.Surfaces[0].Area[i], s.Surfaces[0].Density[i] = 1e-6, 50
		s.Surfaces[0].Centroid = append(s.Surfaces[0].Centroid, ball.Vertices[0])
	}
	if _, err := coat.FromField(p, s, 0); err != nil {
		t.Fatal(err)
	}
	for _, corner := range []int32{-1, int32(len(ball.Vertices)), 1 << 30} {
		was := p.Surfaces[0].Triangles[n/2]
		p.Surfaces[0].Triangles[n/2] = [3]int32{was[0], corner, was[2]}
		_, err = coat.FromField(p, s, 0)
		refused(t, "a corner that is not there", err)
		p.Surfaces[0].Triangles[n/2] = was
	}
	for _, surface := range []int{-1, 1, 1 << 30} {
		_, err = coat.FromField(p, s, surface)
		refused(t, "no such surface", err)
	}
}

// TestPropertyNothingGiven: nil where a bath, coat, selector or solution belongs is
// an error that names it, never a panic.
func TestPropertyNothingGiven(t *testing.T) {
	s := coat.Surface{Patches: []coat.Patch{{Area: 1, Density: 1}}}
	c := coat.CoatMap{Thickness: make([]units.Length, 1), PartArea: s.Patches[0].Area}
	var none *coat.CoatMap
	for name, err := range map[string]error{
		"selector": second(s.Mark(nil)), "selector of both": second(s.Mark(coat.Both(coat.Facing(s.Patches[0].At, 1), nil))),
		"selector of not":           second(s.Mark(coat.Not(nil))),
		"bath to compare":           second(coat.Compare([]coat.Way{{Name: "as it hangs", Surface: s}}, nil, 1e-6)),
		"bath to lay":               second(coat.Lay(s, nil, 1)),
		"bath for the time":         second(coat.TimeFor(s, nil, 1e-6)),
		"bath for what is given":    second(c.GivenAway(s, nil, 1e-6)),
		"coat for what is given":    second(none.GivenAway(s, nil, 1e-6)),
		"coat below":                second(none.Below(s, 1e-6)),
		"coat for the distribution": second(none.Distribution(s)),
	} {
		var v *units.ValueError
		if !errors.As(err, &v) || !errors.Is(err, units.ErrNotGiven) || v.Need == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, _, err := coat.Schedule([]coat.Surface{s}, []units.Ratio{1}, nil); !errors.Is(err, units.ErrNotGiven) {
		t.Errorf("bath of a schedule: %v", err)
	}
}

func second[T any](_ T, err error) error { return err }

// TestSheetsAreRefused: the density of a sheet is that of both sides together.
func TestSheetsAreRefused(t *testing.T) {
	const mm = units.Millimetre
	disc, err := mesh.Disc(40*mm, mesh.Grid{Size: 5 * mm})
	if err != nil {
		t.Fatal(err)
	}
	p := field.MeshProblem{Conductivity: 10, Drive: current.ByCurrent(0.1),
		Surfaces: []field.Boundary{{Name: "dial", Vertices: disc.Vertices, Triangles: disc.Triangles, Sheet: true}}}
	s, err := field.Solve(context.Background(), p, field.MeshOptions{})
	if err != nil {
		t.Fatal(err)
	}
	var v *units.ValueError
	if _, err := coat.FromField(p, s, 0); !errors.As(err, &v) {
		t.Errorf("a sheet by mesh: %v", err)
	}
	sheet := axi.NewProfile(axi.Point{Z: 5 * mm}).LineTo(axi.Point{R: 20 * mm, Z: 5 * mm})
	a, err := axi.Solve(context.Background(), axi.ProfileProblem{Bath: axi.OpenWithFarAnode(10),
		Parts: []axi.Revolved{{Profile: sheet, Sheet: true}}, Drive: current.ByCurrent(0.1)},
		axi.ProfileOptions{Order: 4, Levels: 1})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := coat.FromAxi(a, 0); !errors.As(err, &v) {
		t.Errorf("a sheet by profile: %v", err)
	}
}
