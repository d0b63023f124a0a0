package coat_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// TestHowSure: what a solution says of its error reaches the estimate: known,
// unknown and not resolved are told apart.
func TestHowSure(t *testing.T) {
	b := goldBath(t)
	lay := func(s coat.Surface) plating.Distribution {
		c, err := coat.Lay(s, b, 600)
		if err != nil {
			t.Fatal(err)
		}
		d, err := c.Distribution(s)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	known, guess, lost := bar(10), bar(10), bar(10)
	guess.MinError = math.NaN()
	lost.Unresolved = true
	if d := lay(known); d.Uncertainty != 0.01 {
		t.Errorf("known: %+v", d)
	}
	if d := lay(guess); d.Uncertainty != coat.Assumed || d.Basis == guess.Basis {
		t.Errorf("one mesh: %+v", d)
	}
	d := lay(lost)
	if d.Uncertainty != 1 || d.Basis == lost.Basis {
		t.Errorf("not resolved: %+v", d)
	}
	l := plating.Layer{Bath: *b, Area: 0.01, Distribution: d, MinThickness: 1e-6, CurrentDensity: dm2}
	if r, err := plating.Estimate(&l); err != nil || !r.Warnings.Has(plating.WarnRatioUnsure) {
		t.Errorf("the estimate does not question it: %v, %v", r.Warnings, err)
	}
	c, err := coat.Lay(known, b, 600)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := c.Distribution(bar(9)); err == nil {
		t.Error("another part's surface is taken")
	}
	sum, err := coat.Sum([]coat.Surface{known, lost}, []units.Ratio{0.5, 0.5})
	if err != nil || !sum.Unresolved {
		t.Errorf("a sum hides that a position is not resolved: %v", err)
	}
	worse := bar(10)
	worse.MinError = 0.3
	if sum, err = coat.Sum([]coat.Surface{known, worse}, []units.Ratio{0.5, 0.5}); err != nil || sum.MinError != 0.3 {
		t.Errorf("the error of a sum is %v, %v", sum.MinError, err)
	}
	all, err := coat.Compare([]coat.Way{{Name: "as it is", Surface: known}, {Name: "lost", Surface: halved(lost)}}, b,
		1e-6)
	if err != nil || !all[1].Unresolved {
		t.Fatalf("%+v, %v", all, err)
	}
	if metal, time := coat.Best(all); len(metal)+len(time) != 0 {
		t.Errorf("what is not resolved is recommended: %v, %v", metal, time)
	}
}

// halved takes the density of the thick end down to twice that of the thin one.
func halved(s coat.Surface) coat.Surface {
	for i := range s.Patches {
		s.Patches[i].Density = min(s.Patches[i].Density, 2*s.Patches[0].Density)
	}
	return s
}

// TestSignificantMetal: what is given away counts the whole part, whatever is
// significant.
func TestSignificantMetal(t *testing.T) {
	b := goldBath(t)
	s := bar(10)
	low, err := s.Mark(coat.InBox(r3.Vec{X: -1, Y: -1, Z: -1}, r3.Vec{X: 1, Y: 1, Z: 0.05}))
	if err != nil {
		t.Fatal(err)
	}
	c, err := coat.Lay(low, b, 600)
	if err != nil {
		t.Fatal(err)
	}
	part, err := c.GivenAway(low, b, c.Min)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := c.GivenAway(s, b, c.Min)
	if err != nil || part != whole || part <= 0 {
		t.Errorf("%v given away with marks, %v without, %v", part, whole, err)
	}
	if all := coat.AwayFrom([][2]r3.Vec{{{}, {Z: 1}}}, units.Length(math.NaN())); all(s.Patches[0]) {
		t.Error("a distance that is no number selects")
	}
}

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
		Parts: []axi.Body{{Profile: sheet, Sheet: true}}, Drive: current.ByCurrent(0.1)},
		axi.ProfileOptions{Order: 4, Levels: 1})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := coat.FromAxi(a, 0); !errors.As(err, &v) {
		t.Errorf("a sheet by profile: %v", err)
	}
}

// TestUnresolvedComesAlong: what hangs on one panel is marked by both ways.
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
		Parts: []axi.Body{{Name: "cup",
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
