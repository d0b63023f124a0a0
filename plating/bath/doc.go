// Package baths is a library of plating baths by chemistry. Each figure is a
// range with the key of its source and how it was seen, and an estimate carries
// the ranges to its result.
//
// # 1. A bath is known in ranges
//
// A handbook prints "10 to 20 A/ft²", not a number, and a bath drifts through
// its range between two analyses. A [Bath] therefore holds a [Range] for each
// figure: temperature, current density, pH, metal content, volts, efficiency,
// density of the deposit, anode ratio, usual immersion time and maximum thickness. The
// units are those of the print; quantities convert.
//
// # 2. What a figure is worth
//
// [origin.Published] was read in a copy of the publication, [origin.SecondHand] in a text
// that quotes it, [origin.FromMemory] nowhere: it is what finishers remember, and
// shown as such wherever it is printed. [origin.Given] and [origin.Measured] are for your own. The
// confidence of a result is the weakest figure that went into it
// ([Bath.Confidence], [Span.Confidence]). Most efficiencies and many densities
// of gold baths are from memory: weigh a trial piece ([plating.Trial]) before
// you commit yourself by them.
//
// # 3. The library
//
// [Library] lists all, [Get] finds one by key.
//
//	gold-cyanide-flash      gold-neutral          gold-acid-cobalt
//	gold-acid-nickel        gold-acid-strike      gold-acid-strike-3
//	gold-sulfite            silver-strike         silver-cyanide
//	nickel-watts            nickel-semibright     nickel-strike-chloride
//	copper-acid             copper-acid-throw     copper-pyro
//	copper-cyanide-strike   copper-cyanide-build  copper-cyanide-fast
//	palladium-sulfamate     palladium-chloride
//	rhodium-sulfate         bronze-white
//
// [TypicalTable] is the printed table of usual current densities and volts.
//
// # 4. From range to setting
//
// [Bath.At] picks an operating [OperatingPoint] and gives a [plating.OperatingBath]; what is not
// picked is the middle of its range. [EstimateRange] computes a layer at the
// ends of efficiency and density too, so that "12 minutes" becomes "12 (9 to
// 16) minutes".
//
// # 5. Efficiency lines
//
// Efficiency depends on current density, temperature and metal content. No
// publication seen for the library prints that dependence, so library baths
// hold one band each. A bath of your own may hold [EfficiencyLine] values, one
// for each temperature and content; between them it is interpolated straight,
// outside the end is held and a [*units.RangeError] says so.
//
// # 6. Your own baths
//
// [Read] takes JSON:
//
//	{
//	  "format": "laydown baths 1",
//	  "baths": [{
//	    "key": "bench-gold",                     needed, not one of the library's
//	    "name": "gold, acid cyanide, cobalt hardened, bench tank",   needed, by chemistry
//	    "metal": "Au", "valence": 1,             counted metal; its usual valence when left out
//	    "use": ["finish"],                       needed: strike, underplate, finish
//	    "hazards": ["cyanide", "acid"],          needed: words of [plating.HazardTable], such as
//	                                             cyanide, acid, hot; [] for none
//	    "salt": "KAu(CN)2",                      what it is fed with
//	    "density": {"low": "17 g/cm³", "high": "17.5 g/cm³",
//	                "source": "weighed coats of March", "seen": "measured"},
//	    "efficiency": {"low": "30 %", "high": "38 %", "source": "...", "seen": "measured"},
//	    "efficiency_lines": [{                   instead of, or beside, "efficiency"
//	      "temperature": "38 °C", "content": "8 g/L", "source": "...", "seen": "measured",
//	      "points": [{"current_density": "0.3 A/dm²", "efficiency": "40 %"},
//	                 {"current_density": "1 A/dm²", "low": "28 %", "high": "32 %"}]}],
//	    "deposit": {"source": "...", "seen": "...", "constituents": [   of an alloy
//	      {"metal": "Au", "valence": 1, "share": "99.5 %"}, {"inclusion": true, "share": "0.5 %"}]},
//	    "content": {...}, "temperature": {...}, "current_density": {...}, "volts": {...},
//	    "pH": {"low": 4.2, "high": 4.6, ...}, "time": {...}, "max_thickness": {"high": "5 µm", ...},
//	    "anode_ratio": {"low": 1, "high": 2, ...}, "anode_kind": "insoluble",    or "soluble"
//	    "anode": {"text": "platinised titanium", "source": "...", "seen": "..."},
//	    "agitation": {"text": "...", "source": "...", "seen": "..."},
//	    "live_entry": false,
//	    "look": ["even colour"],
//	    "remarks": [{"text": "...", "source": "...", "seen": "..."}]
//	  }]
//	}
//
// Every figure has "low", "high" or both (efficiency and density both), "seen" (from memory, second hand, computed,
// published, given, measured), "source" unless from memory, and may have a "note".
// Errors are [*units.FileError] values with line and field.
//
// # 7. What this is not
//
// It is no recipe book: makeup is given to know a bath by, not to mix it.
// Cyanide, hot acid and metal salts kill and maim; see [plating.Cautions].
package bath
