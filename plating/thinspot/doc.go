// Package thinspot computes where a workpiece is plated thinnest, how long it has to
// hang until that spot has the minimum thickness, and what other arrangements save.
//
//	c, err := thinspot.Read(file, open)
//	cost, err := c.Cost(thinspot.Options{})      // memory and time, before anything is solved
//	r, err := c.Solve(ctx, thinspot.Options{})
//	err = r.WriteText(os.Stdout)                 // or json.Marshal(r), r.WriteCSV, r.Pictures
//
// # Method
//
// The current distribution is solved by package axi for a body of revolution, or by
// package field for meshes. Package coat lays the metal on it, with the bath's efficiency
// at the current density of each place, until the thinnest place of the significant
// surface has the minimum thickness:
//
//	s = ε·η(j)·j·t/ρ        t so that min s is the minimum thickness
//
//	s     thickness of a place                [m]
//	j     current density there               [A/m²]
//	η(j)  efficiency at that density          0 < η ≤ 1
//	ε, ρ  of the deposit                      [kg/C], [kg/m³]
//	t     time                                [s]
//
// Where the workpiece hangs in several positions, each place gets the metal of all of
// them by their shares x of the time, and j stands for the density that grows the same:
// η(j)·j = Σ x·η(j_k)·j_k.
//
// By profile the error of the least density comes from a coarser mesh that is solved
// beside. By mesh it comes from a second mesh of half the panel size; that is left out
// where it takes more than [Options] allow, and then the error is not known. A minimum
// that lies on one panel, or that changes by more than a tenth from mesh to mesh, is
// unresolved: claim nothing for it.
//
// # Other arrangements
//
// They are those of the trade, each with the workpiece where it hangs and, where nothing
// else is said, at the same current through all cathodes. With w for the diagonal of the
// workpiece seen from above, R for its radius by profile, and g for a gap of 0.15·w or
// 0.2·R, at least 5 mm:
//
//	half the current
//	the anodes half as far again      level, away from the middle of the workpiece
//	an anode inside                   a rod in a hollow that is open above
//	a robber ring                     at the distance g, at a quarter more current
//	a shield                          a tube at the distance g, that does not conduct
//	upside down half of the time; by mesh also turned half and a quarter round
//
// All are solved on one mesh with the case as it hangs and compared at the same minimum
// thickness, each at its own time; the metal on robbers and on fellow workpieces is spent
// too. What does not fit the case is not tried, and says why.
//
// # Accuracy
//
// The result knows the error of the solution. That of conductivity, rate law and
// efficiency comes on top, and is mostly larger: check on a piece with a gauge. The
// current is taken as steady and the coat as thin beside the workpiece. The potential of
// the solution obeys Laplace's equation: nothing is said about metal that runs short in a
// narrow recess.
//
// # Case file
//
// A case is a body of revolution in a round tank or an open bath, or meshes in a
// rectangular tank. Quantities are text with a unit, in any spelling that package units
// reads; plain shares may be numbers. Unknown fields are refused, with the line and the
// known ones.
//
//	{
//	  "format": "laydown case 1",                needed
//	  "case": "pendulum bob",                    name
//	  "method": "profile",                       or "mesh", see below
//	  "bath": { ... },                           needed: as in a job, see package bath
//	  "conductivity": "6 S/m",                   needed
//	  "tank": {"radius": "150 mm", "depth": "300 mm"},   left out: an open bath, the anode far away
//	  "current": "0.6 A",                        one of the two: for all cathodes,
//	  "voltage": "2 V",                          or between the rails
//	  "min_thickness": "2.5 µm",                 needed
//	  "significant": { ... },                    where the minimum thickness holds; left out: everywhere
//	  "price_per_g": "98.50", "currency": "EUR",
//	  "parts": [                                 needed; the first one is the workpiece
//	    {"name": "bob", "kind": "cathode",       or anode, shield, robber, floating
//	     "law": {"model": "tafel", "exchange": "1 A/m²", "alpha": 0.5, "temperature": "38 °C"},
//	     "profile": {"start": ["0 mm", "141 mm"], "steps": [
//	       {"to": ["36 mm", "147 mm"], "by": "cap"},
//	       {"to": ["40 mm", "147 mm"]},
//	       {"to": ["40 mm", "153 mm"], "by": "arc", "via": ["43 mm", "150 mm"]}, ...]}},
//	    {"name": "anode", "kind": "anode",
//	     "tube": {"inner": "130 mm", "outer": "132 mm", "low": "50 mm", "high": "250 mm"}}
//	  ]
//	}
//
// Points are radius and height. A step is a line unless "by" says arc (through
// "via") or cap (an arc whose centre is on the axis). Instead of a profile a part
// may be a "rod" (radius, low, high), a "ball" (radius, height), a "torus"
// (radius, height, thickness) or a "tube". A law's model is primary (the law
// left out), linear (resistance), tafel (exchange, alpha, temperature) or
// butler-volmer (exchange, anodic, cathodic, temperature).
//
// By mesh the tank has "length", "width" and "depth", along x, y and z, with a
// corner at the origin and the surface of the solution on top; a part is
//
//	{"name": "bezel", "kind": "cathode", "law": { ... },
//	 "torus": {"centre_diameter": "84 mm", "tube_diameter": "6 mm"},
//	                       or box (length, width, height), plate (length, width, thickness,
//	                       edge_radius), cylinder (diameter, length), tube (outer, inner, length),
//	                       sphere (diameter), cup (outer, height, recess, depth)
//	 "panel": "3 mm", "grade": 2,                longest side of a triangle; smaller at edges
//	 "turn": [{"axis": "x", "degrees": 90}],     about its middle, one after the other
//	 "at": ["150 mm", "100 mm", "120 mm"]}       where the middle of its box comes, before it is turned
//
//	{"name": "cherub", "file": "cherub.stl", "unit": "mm",     STL or PLY; neither knows its unit
//	 "repair": true, "weld": "0.01 mm",          what is safe is mended, and said
//	 "panel": "3 mm",                            longest side of a triangle, see mesh.Split
//	 "refine": 1, "at": [ ... ]}                 then each triangle becomes four, so often
//
//	{"name": "anodes", "kind": "anode", "wall": "low x"}       a whole wall of the tank
//
// A panel is a sixteenth of the longest side when left out and at least a 200th of
// it; grade goes from 1, even panels, to 3 and is 2 when left out. Bodies must lie
// apart, none through a wall. What a case may hold is bounded, so that a slip of the
// pen cannot fill the memory: 60 parts, 24 positions, a million triangles a body.
//
// The workpiece may change its place: "positions" lists them with their share of the
// time, each turned from the way it hangs, and moved when "at" is given:
//
//	"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}]
//
// "significant" may hold, and then all of them count: "box" (low, high: two points;
// by profile radius, 0 and height), "facing" (direction, within: degrees) and, by
// mesh, "away_from_edges" (sharper_than: degrees, distance).
//
// [Read] keeps what the file says in [Case].File; [CaseFile.Write] writes it, as a program that
// makes cases does, and [Schema] describes it to other programs.
//
// Cases of a clock-restoration workshop stand in testdata/cases: bob by profile, bezel
// and figure by mesh, and block, which is small and quick.
package thinspot
