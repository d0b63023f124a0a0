package coat_test

import (
	"context"
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// softGold is the bath of the examples, at one efficiency.
func softGold() plating.OperatingBath {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		panic(err)
	}
	return plating.OperatingBath{Metal: "Au", Deposit: gold, Efficiency: plating.ConstantEfficiency(0.9)}
}

// dial is a dial of 40 cm² with four patches: its face, its back, and the wall
// and the floor of its sink.
func dial(face, back, wall, floor float64) coat.Surface {
	const dm2 = units.AmperePerSquareDecimetre
	return coat.Surface{Basis: "measured on a trial piece", Patches: []coat.Patch{
		{At: r3.Vec{Z: 0.002}, Normal: r3.Vec{Z: 1}, Area: 15 * units.SquareCentimetre,
			Density: units.CurrentDensity(face) * dm2},
		{At: r3.Vec{}, Normal: r3.Vec{Z: -1}, Area: 20 * units.SquareCentimetre, Density: units.CurrentDensity(back) * dm2},
		{At: r3.Vec{X: 0.01, Z: 0.0015}, Normal: r3.Vec{X: -1}, Area: 1 * units.SquareCentimetre,
			Density: units.CurrentDensity(wall) * dm2},
		{At: r3.Vec{Z: 0.001}, Normal: r3.Vec{Z: 1}, Area: 4 * units.SquareCentimetre,
			Density: units.CurrentDensity(floor) * dm2},
	}}
}

// area marks a surface and tells how much is marked.
func area(s coat.Surface, selected coat.Selector) {
	m, err := s.Mark(selected)
	if err != nil {
		fmt.Println(err)
		return
	}
	sum := units.Area(0)
	for i, p := range m.Patches {
		if m.Significant[i] {
			sum += p.Area
		}
	}
	fmt.Println(sum.Text(units.SquareCentimetre, 0))
}

// The promise holds where the eye sees the dial: what faces up.
func ExampleFacing() {
	area(dial(0.4, 0.2, 0.1, 0.15), coat.Facing(r3.Vec{Z: 1}, 30))
	// Output: 19 cm²
}

// Everything above the back.
func ExampleInBox() {
	area(dial(0.4, 0.2, 0.1, 0.15), coat.InBox(r3.Vec{X: -1, Y: -1, Z: 0.0005}, r3.Vec{X: 1, Y: 1, Z: 1}))
	// Output: 20 cm²
}

// All but what lies within 2 mm of an edge of the sink.
func ExampleAwayFrom() {
	edge := [2]r3.Vec{{X: 0.01, Y: -0.01, Z: 0.002}, {X: 0.01, Y: 0.01, Z: 0.002}}
	area(dial(0.4, 0.2, 0.1, 0.15), coat.AwayFrom([][2]r3.Vec{edge}, 2*units.Millimetre))
	// Output: 39 cm²
}

// What faces up and is not the floor of the sink.
func ExampleBoth() {
	up := coat.Facing(r3.Vec{Z: 1}, 30)
	sink := coat.InBox(r3.Vec{X: -1, Y: -1, Z: 0.0005}, r3.Vec{X: 1, Y: 1, Z: 0.0012})
	area(dial(0.4, 0.2, 0.1, 0.15), coat.Both(up, coat.Not(sink)))
	// Output: 15 cm²
}

// All but the back.
func ExampleNot() {
	area(dial(0.4, 0.2, 0.1, 0.15), coat.Not(coat.Facing(r3.Vec{Z: -1}, 30)))
	// Output: 20 cm²
}

// The dial is turned round half of the time.
func ExampleSum() {
	s, err := coat.Sum([]coat.Surface{dial(0.4, 0.2, 0.1, 0.15), dial(0.2, 0.4, 0.06, 0.07)}, []units.Ratio{0.5, 0.5})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range s.Patches {
		fmt.Println(p.Density)
	}
	// Output:
	// 0.3 A/dm²
	// 0.3 A/dm²
	// 0.08 A/dm²
	// 0.11 A/dm²
}

// The same where the efficiency falls with the current density: the two that come
// back grow the coat that both positions grow one after the other.
func ExampleSchedule() {
	bath := softGold()
	curve, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 10, Efficiency: 0.95},
		plating.EfficiencyPoint{CurrentDensity: 50, Efficiency: 0.75})
	if err != nil {
		fmt.Println(err)
		return
	}
	bath.Efficiency = curve
	s, one, err := coat.Schedule([]coat.Surface{dial(0.4, 0.2, 0.1, 0.15), dial(0.2, 0.4, 0.06, 0.07)}, []units.Ratio{0.5,
		0.5}, &bath)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := coat.Lay(s, &one, 20*units.Minute)
	fmt.Println(c.Min.Text(units.Micrometre, 2), "to", c.Max.Text(units.Micrometre, 2), err)
	// Output: 0.96 µm to 3.17 µm <nil>
}

// What an anode before the sink saves against the dial as it hangs.
func ExampleCompare() {
	bath := softGold()
	list, err := coat.Compare([]coat.Way{{Name: "as it hangs", Surface: dial(0.4, 0.2, 0.1, 0.15)},
		{Name: "anode before the sink", Surface: dial(0.38, 0.2, 0.16, 0.2)}}, &bath, 1*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range list {
		fmt.Println(o.Name+":", o.Time, o.MinToAverage.Percent(0), "saves", o.SavedMass.Text(units.Milligram, 0))
	}
	// Output:
	// as it hangs: 17 min 30 s 37 % saves 0 mg
	// anode before the sink: 10 min 57 s 60 % saves 78 mg
}

func ExampleBest() {
	bath := softGold()
	list, err := coat.Compare([]coat.Way{{Name: "as it hangs", Surface: dial(0.4, 0.2, 0.1, 0.15)},
		{Name: "anode before the sink", Surface: dial(0.38, 0.2, 0.16, 0.2)}}, &bath, 1*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	metal, time := coat.Best(list)
	fmt.Println(metal, time)
	// Output: [anode before the sink] [anode before the sink]
}

// From the profile of a ball in a round tank.
func ExampleFromAxi() {
	const mm = units.Millimetre
	s, err := axi.Solve(context.Background(), axi.ProfileProblem{Bath: axi.Tank(6, 80*mm,
		200*mm).With(axi.WallSegment{Segment: axi.TankSide, Kind: current.Anode}), Drive: current.ByCurrent(0.1),
		Parts: []axi.Revolved{{Name: "ball", Profile: axi.Ball(10*mm, 100*mm), Law: current.TafelCathode(1, 0.5,
			units.Celsius(38))}}}, axi.ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	surface, err := coat.FromAxi(s, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	bath := softGold()
	c, err := coat.Lay(surface, &bath, 10*units.Minute)
	fmt.Println(c.Area.Text(units.SquareCentimetre, 1), c.Average.Text(units.Micrometre, 1), c.MinToAverage > 0.9, err)
	// Output: 12.6 cm² 4.5 µm true <nil>
}

// From the mesh of a plate in a wide bath.
func ExampleFromField() {
	const mm = units.Millimetre
	m, err := mesh.Box(30*mm, 4*mm, 20*mm, mesh.Grid{Size: 4 * mm, Grade: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	p := field.MeshProblem{Conductivity: 6, Drive: current.ByCurrent(0.05), Surfaces: []field.Boundary{
		{Name: "plate", Kind: current.Cathode, Vertices: m.Vertices, Triangles: m.Triangles, Law: current.TafelCathode(1, 0.5,
			units.Celsius(38))}}}
	s, err := field.Solve(context.Background(), p, field.MeshOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	surface, err := coat.FromField(p, s, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	bath := softGold()
	c, err := coat.Lay(surface, &bath, 10*units.Minute)
	fmt.Println(c.Area.Text(units.SquareCentimetre, 1), c.Average.Text(units.Micrometre, 1), c.MinToAverage < 0.9, err)
	// Output: 16.0 cm² 1.8 µm true <nil>
}

func ExampleTimeFor() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	bath := plating.OperatingBath{Metal: "Au", Deposit: gold, Efficiency: plating.ConstantEfficiency(0.9)}
	bob := coat.Surface{Basis: "measured on a trial piece", Patches: []coat.Patch{
		{At: r3.Vec{Z: 0}, Normal: r3.Vec{Z: -1}, Area: 20 * units.SquareCentimetre,
			Density: 0.2 * units.AmperePerSquareDecimetre},
		{At: r3.Vec{Z: 0.02}, Normal: r3.Vec{Z: 1}, Area: 20 * units.SquareCentimetre,
			Density: 0.4 * units.AmperePerSquareDecimetre},
	}}
	t, err := coat.TimeFor(bob, &bath, 1*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := coat.Lay(bob, &bath, t)
	fmt.Println(t, "thinnest", coat.Where(bob, c.MinPatch), err)
	fmt.Println(c.Min, "of", c.Average, "on average, ratio", c.MinToAverage.Percent(0))
	// Output:
	// 8 min 45 s thinnest at the bottom, facing down <nil>
	// 1 µm of 1.5 µm on average, ratio 67 %
}
