package lessons

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/shape"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// shapeLessons find the area that plates.
func shapeLessons() []Lesson {
	return []Lesson{{
		Word: "piercedhand", Title: "The area of a pierced hand, by its weight", Package: "plating/shape",
		Question: "A pierced brass hand of 0.8 mm weighs 5.1 g; brass has 8.5 g/cm³. All edges together\n" +
			"measure 320 mm. What area plates?",
		Good: "2.5 % for a thickness that is right to 0.02 mm",
		solve: func(b *board) string {
			hand := shape.WeighedSheet{Mass: 5.1 * g, Density: 8.5 * gcc, Thickness: 0.8 * mm, Outline: 320 * mm}
			faces := value[units.Area](b)(shape.SheetFromMass(hand.Mass, hand.Density, hand.Thickness))
			edge := value[units.Ratio](b)(shape.EdgeShare(60*mm, 8*mm, 0.8*mm))
			b.add(hand.Working())
			return fmt.Sprintf("%s plate, %s of it faces. Even a plain hand of 60 mm by 8 mm has edges of %s of "+
				"its faces.", b.last(),
				faces, edge.Percent(0))
		},
	}, {
		Word: "weightchain", Title: "The area of a weight chain", Package: "plating/shape",
		Question: "A chain of 200 oval links, 12 mm by 8 mm outside, is bent of 1.6 mm brass wire.\nWhat area plates?",
		Good:     "exact for round ends; where links touch, nothing plates",
		solve: func(b *board) string {
			link := value[units.Length](b)(shape.OvalLink(12*mm, 8*mm, 1.6*mm))
			b.show("l = 2·(L - W) + π·(W - d)", "Derived", working.Of("l", "middle line of one link", link),
				working.Of("L", "outer length", 12*mm),
				working.Of("W", "outer width", 8*mm), working.Of("d", "diameter of the wire", 1.6*mm))
			b.add(shape.Chain{WireDiameter: 1.6 * mm, Centreline: link, Links: 200}.Working())
			return fmt.Sprintf("%s plate.", b.last())
		},
	}, {
		Word: "loosewire", Title: "The area of loose wire, by its weight", Package: "plating/shape",
		Question: "A bundle of brass wire for pins, 1.2 mm thick, weighs 34 g; brass has 8.5 g/cm³.\nWhat area plates?",
		Good:     "1 % for a diameter that is right to 0.01 mm",
		solve: func(b *board) string {
			wire := shape.WeighedWire{Mass: 34 * g, Density: 8.5 * gcc, Diameter: 1.2 * mm}
			a := value[units.Area](b)(shape.WireFromMass(wire.Mass, wire.Density, wire.Diameter))
			b.add(wire.Working())
			return fmt.Sprintf("%s plate, say %s.", b.last(), a.Text(dm2, 2))
		},
	}, {
		Word: "masked", Title: "A dial with its back stopped off", Package: "plating/shape",
		Question: "A dial plate, 110 mm by 90 mm by 1 mm, has a 20 mm disc of lacquer on its one face;\n" +
			"the back is stopped off. Four 3 mm holes go through. What area plates?",
		Good: "exact for square edges",
		solve: func(b *board) string {
			plate := shape.Plate{Length: 110 * mm, Width: 90 * mm, Thickness: 1 * mm, Faces: shape.OneFace}
			drilled := shape.Drilled{Piece: plate, Holes: []shape.Hole{{Diameter: 3 * mm, Depth: 1 * mm, Count: 4,
				Faces: shape.OneFace}}}
			disc := value[units.Area](b)(shape.Disc{Diameter: 20 * mm, Faces: shape.OneFace}.Area())
			hole := value[working.Step](b)(drilled.Holes[0].Working())
			b.add(shape.Masked{Piece: drilled, Covered: disc}.Working())
			return fmt.Sprintf("%s plate; the holes changed it by %s.", b.last(), hole.Result.Value)
		},
	}, {
		Word: "finial", Title: "A finial of cone and ball", Package: "plating/shape",
		Question: "A finial is a spire, 12 mm at its foot, 3 mm at its top, 40 mm high, with a ball of 10 mm\n" +
			"soldered on. Where they join, a disc of 3 mm is lost on both. What area plates?",
		Good: "exact for the bodies; the solder fillet is left out",
		solve: func(b *board) string {
			spire := shape.Cone{BaseDiameter: 12 * mm, TopDiameter: 3 * mm, Height: 40 * mm}
			joint := shape.Times{Count: 2, Piece: shape.Disc{Diameter: 3 * mm, Faces: shape.OneFace}}
			b.add(shape.Less{Piece: shape.Assembly{spire, shape.Sphere{Diameter: 10 * mm}}, Off: joint}.Working())
			return fmt.Sprintf("%s plate.", b.last())
		},
	}, {
		Word: "pillars", Title: "Six pillars and a case from a drawing", Package: "plating/shape",
		Question: "A load is six round pillars, 8 mm by 45 mm, two hexagonal ones, 7 mm across by 30 mm,\n" +
			"and a case whose drawing says 62 cm². What area plates, and how uneven is the load?",
		Good: "exact; a drawing is as good as its draughtsman",
		solve: func(b *board) string {
			round := shape.Cylinder{Diameter: 8 * mm, Length: 45 * mm}
			hex := shape.HexBar{AcrossFlats: 7 * mm, Length: 30 * mm}
			load := shape.Assembly{shape.Times{Count: 6, Piece: round}, shape.Times{Count: 2, Piece: hex},
				shape.Known{Value: 62 * cm2, What: "area of the case, from its drawing"}}
			one := value[units.Area](b)(round.Area())
			six := value[units.Area](b)(hex.Area())
			k := value[units.Ratio](b)(plating.Spread(plating.Item{Name: "pillar", Count: 6, Area: one},
				plating.Item{Name: "hexagonal pillar", Count: 2, Area: six},
				plating.Item{Name: "case", Count: 1, Area: 62 * cm2}))
			b.add(load.Working())
			return fmt.Sprintf("%s plate. The largest part has %.0f times the area of the smallest: watch the "+
				"small ones.",
				b.last(), float64(k))
		},
	}, {
		Word: "rim", Title: "A bezel rim and a chime tube", Package: "plating/shape",
		Question: "A bezel rim is a ring of 6 mm round bar, 114 mm across its middle; with it hang a chime\n" +
			"tube, 16 mm outside, 14 mm inside, 300 mm long, plated outside only, and a flat ring\n" +
			"40 mm by 30 mm by 1 mm. What area plates together?",
		Good: "exact for the bodies",
		solve: func(b *board) string {
			rim := shape.Torus{CentreDiameter: 114 * mm, TubeDiameter: 6 * mm}
			tube := shape.Tube{Outer: 16 * mm, Inner: 14 * mm, Length: 300 * mm, Sides: shape.OutsideOnly}
			ring := shape.Ring{Outer: 40 * mm, Inner: 30 * mm, Thickness: 1 * mm}
			all := value[units.Area](b)(shape.Sum(rim, tube, ring))
			b.add(shape.Assembly{rim, tube, ring}.Working())
			return fmt.Sprintf("%s plate, say %s.", b.last(), all.Text(dm2, 2))
		},
	}, {
		Word: "screw", Title: "A dozen screws", Package: "plating/shape",
		Question: "Twelve loose screws M3 (pitch 0.5 mm): cheese head 5 mm by 2 mm, thread 6 mm.\n" +
			"The end is a disc, the rack wire is 1 mm by 150 mm. What area plates?",
		Good: "the thread to 0.3 %; a real thread is rounder",
		solve: func(b *board) string {
			thread := shape.Thread{Diameter: 3 * mm, Pitch: 0.5 * mm, Length: 6 * mm}
			k := value[units.Ratio](b)(thread.Factor())
			one := shape.Assembly{shape.ScrewHead{Diameter: 5 * mm, Height: 2 * mm, Shank: 3 * mm}, thread,
				shape.Disc{Diameter: 3 * mm, Faces: shape.OneFace}}
			b.add(shape.Assembly{shape.Times{Count: 12, Piece: one}, shape.Wire{Diameter: 1 * mm,
				Length: 150 * mm}}.Working())
			return fmt.Sprintf("%s plate; a thread has %s of its plain wall.", b.last(), k.Percent(0))
		},
	}, {
		Word: "bob", Title: "A lens-shaped bob, by formula and by mesh", Package: "plating/mesh",
		Question: "A pendulum bob is two domes of 60 mm rim, 9 mm high each. What area plates by formula?\n" +
			"A flat bob of 60 mm by 18 mm is also at hand as a mesh: what does the mesh make of it?",
		Good: "the domes exact; flat triangles lie inside a round wall, finer ones less",
		solve: func(b *board) string {
			domes := shape.Times{Count: 2, Piece: shape.Cap{BaseDiameter: 60 * mm, Height: 9 * mm, OpenBase: true}}
			lens := value[units.Area](b)(domes.Area())
			b.add(domes.Working())
			m := value[mesh.Mesh](b)(mesh.Cylinder(60*mm, 18*mm, mesh.Grid{Size: 4 * mm}))
			part := value[mesh.MeasuredPart](b)(mesh.NewMeasuredPart(m, "area of the flat bob, from its mesh", false))
			v := value[units.Volume](b)(mesh.Volume(m))
			b.add(part.Working())
			return fmt.Sprintf("The lens has %s; the flat bob has %s by its mesh, with %s of metal.", lens, b.last(), v)
		},
	}}
}
