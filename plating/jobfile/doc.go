// Package jobfile reads plating jobs from JSON and writes their results.
//
// A job file is one object. Quantities are text with a unit, in any spelling
// that package units reads; plain shares may be numbers. Unknown fields are
// refused, with the line and the known ones.
//
//	{
//	  "format": "laydown job 1",             needed
//	  "job": "24 hands, hard gold",          name for the sheet
//	  "substrate": "stainless steel",        base metal, in words
//	  "parts": [                             needed, one or more
//	    {"name": "hand", "count": 24,        count: 1 when left out
//	     "area": "5.2 cm²"},                 of one piece; or "shape", see below
//	    {"name": "bezel", "shape": {"kind": "torus", ...}, "masked": "2.5 cm²"}
//	  ],
//	  "layers": [ ... ]                      needed, the first one first
//	}
//
// A layer:
//
//	{
//	  "name": "hard gold",
//	  "role": "finish",                      or "strike", "underplate"
//	  "bath": { ... },                       needed
//	  "min_to_mean": 0.6,                    needed: thinnest spot over mean thickness
//	  "basis": "given",                      where that ratio comes from
//	  "promise": "2.5 µm",                   of these three give two:
//	  "current_density": "0.8 A/dm²",        (or "current": "1.4 A" for the load)
//	  "time": "10 min",
//	  "area": "180 cm²",                     when it is not that of the load
//	  "count_below": true                    layers of the same metal below count too
//	}
//
// A bath:
//
//	{
//	  "name": "gold, acid cyanide, cobalt hardened",   by chemistry
//	  "metal": "Au",                         needed: the metal that is promised
//	  "valence": 1,                          the usual one when left out
//	  "density": "17.3 g/cm³",               of the deposit; the bulk metal's when left out
//	  "constituents": [                      of an alloy deposit, instead of "valence"
//	    {"metal": "Au", "valence": 1, "share": "99.6 %"},
//	    {"metal": "Co", "valence": 2, "share": "0.2 %"},
//	    {"inclusion": true, "share": "0.2 %"}],        built in without charge
//	  "efficiency": "35 %",                  needed; or points of a curve:
//	      [{"current_density": "0.3 A/dm²", "efficiency": "40 %"}, ...]
//	  "window": {"low": "0.3 A/dm²", "high": "1.2 A/dm²"},
//	  "volts": {"low": "2 V", "high": "3 V"},
//	  "temperature": {"low": "32 °C", "high": "42 °C", "set": "38 °C"},
//	  "content": "8 g/L", "volume": "5 L",   of the metal in the bath
//	  "draw_limit": "10 %",                  of the content, before it is fed
//	  "most_thickness": "5 µm",
//	  "anode": "insoluble",                  or "soluble"
//	  "hazards": ["cyanide", "acid"],        also caustic, nickel, hot, ammonia, chromate, fluoride
//	  "source": "demo data"                  where these figures come from
//	}
//
// A shape has a "kind" and the dimensions of package shape: plate (length,
// width, thickness, faces, holes), disc (diameter, thickness, faces, holes),
// ring (outer, inner, thickness, faces, holes), cylinder (diameter, length,
// open_ends), tube (outer, inner, length, sides, open_ends), cone
// (base_diameter, top_diameter, height, open_base, open_top), sphere
// (diameter), cap (base_diameter or sphere_diameter, height, open_base), torus
// (centre_diameter, tube_diameter), hexbar (across_flats, length, open_ends),
// wire (diameter, length), thread (diameter, pitch, length), sum (of: a list of
// shapes). "faces" is "both" or "one", "sides" is "both", "outside" or
// "inside"; a hole has diameter, depth, count, blind, bare, faces.
//
// Three files of a clock-restoration workshop stand in testdata/jobs.
package jobfile
