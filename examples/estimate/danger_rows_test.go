package main

import "strings"

// heldRows are rinses whose name says that they hold more than water, and baths of which
// nobody says whether they are acid.
func heldRows() []row {
	called := func(name, as string) []change { return by(swap(`"name": "`+name+`"`, `"name": "`+as+`"`)) }
	still := entry(`{"kind": "drag-out rinse", "name": "citric acid, 2 %"}`)
	bath := func(name, metal, more string) []change {
		return by(replace(`"library": "nickel-watts"`, ownCoat("nickel", "finish", `{"name": "`+name+`",
				"metal": `+metal+`,
      "efficiency": "95 %", "current_density": {"low": "0.1 A/dm²", "high": "5 A/dm²"}, `+more+`}`)), cut("water 3"))
	}
	// The neighbour says its pH, and has its rinse.
	rinsed := func(name, metal, more string) []change { return bath(name, metal, more)[:1] }
	return []row{
		{"a rinse in vinegar", "zinc", "stop", hcn, called("water 2", "vinegar rinse"), called("water 2",
			"rinse behind the vinegar")},
		{"a rinse in lemon juice", "zinc", "stop", hcn, called("water 2", "lemon juice wash"), nil},
		{"water with a little acid, by its name", "zinc", "stop", hcn,
			called("water 2", "water with a splash of vinegar"), nil},
		{"a rinse with sulfuric acid", "zinc", "stop", hcn, called("water 2", "rinse with 1 % sulfuric acid"),
			called("water 2", "rinse after 1 % sulfuric acid")},
		{"an acid that holds the piece wet", "zinc", "stop", hcn, called("water 2", "citric acid hold"), nil},
		{"a dilute acid rinse", "zinc", "stop", hcn, called("water 2", "dilute acid rinse"), called("water 2",
			"acid rinse")},
		{"a weak acid rinse", "zinc", "stop", hcn, called("water 2", "weak acid rinse"), nil},
		{"rinse water of pH 4", "zinc", "stop", hcn, called("water 2", "pH 4 rinse water"), called("water 2",
			"pH 8 rinse water")},
		{"a wash that neutralises with acid", "zinc", "stop", hcn, called("water 2",
			"neutralising wash, citric acid"), nil},
		{"a still tank of citric acid before cyanide", "zinc", "stop", hcn, by(ahead(`"layer": "copper"`, still)),
			by(ahead(`"layer": "copper"`, strings.Replace(still, "citric acid, 2 %", "drag-in", 1)))},
		{"silver straight into a bleach rinse", "silver", "stop", "violent", called("water 9", "bleach rinse"), nil},
		{"silver straight into a peroxide rinse", "silver", "stop", "can explode", called("water 9",
			"peroxide rinse"), nil},
		{"nitric acid straight into an alcohol rinse", "dial", "stop", "brown fume", called("water 3",
			"alcohol rinse"), nil},
		{"copper sulfate whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("copper, sulfate, bright", `"Cu", "valence": 2`, `"hazards": []`),
			rinsed("copper, sulfate, bright", `"Cu", "valence": 2`, `"hazards": [], "pH": 1.2`)},
		{"rhodium sulfate whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("rhodium, sulfate", `"Rh"`, `"hazards": []`),
			rinsed("rhodium, sulfate", `"Rh"`, `"hazards": [], "pH": 1.2`)},
		{"tin sulfate whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("tin, sulfate", `"Sn", "valence": 2`, `"hazards": []`),
			rinsed("tin, sulfate", `"Sn", "valence": 2`, `"hazards": [], "pH": 1.2`)},
		{"zinc chloride whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("zinc, chloride", `"Zn"`, `"hazards": []`),
			rinsed("zinc, chloride", `"Zn"`, `"hazards": [], "pH": 5.2`)},
		{"palladium chloride whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("palladium, chloride", `"Pd"`, `"hazards": []`),
			rinsed("palladium, chloride", `"Pd"`, `"hazards": ["ammonia"], "pH": 8.5`)},
		{"ruthenium whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("ruthenium, sulfamate", `"Ru"`, `"hazards": []`),
			rinsed("ruthenium, sulfamate", `"Ru"`, `"hazards": [], "pH": 1.5`)},
	}
}

// heatRows are tanks that an oven or a flame makes dangerous, and hydrogen that an acid
// drives into hard steel.
func heatRows() []row {
	wash := func(holds string) string {
		return entry(`{"kind": "activate", "holds": "`+holds+`", "time": "5 s"}`) + waterTank
	}
	oven := behind(`"dry"`, entry(`{"kind": "bake", "holds": "oven", "temperature": "350 °C", "time": "20 min"}`))
	acetone := entry(`{"kind": "soak clean", "holds": "acetone"}`)
	air := entry(`{"kind": "dry", "holds": "moving air"}`)
	dipped := func(with string) change {
		return swap(`"does": ["deoxidise"], "time": "10 s"`, `"does": ["deoxidise"]`+with)
	}
	hydrochloric := swap(`"holds": "sulfuric acid, 4 %"`, `"holds": "hydrochloric acid, 30 %"`)
	cathodic := entry(`{"kind": "electroclean", "holds": "electrocleaner", "polarity": "cathodic", "time": "60 s"}`)
	cleaner := func(more string) string {
		return entry(`{"kind": "electroclean", "holds": "cleaner 4", "polarity": "anodic", "time": "60 s"`+more+`}`) +
			waterTank
	}
	at := func(name, station string) change {
		return swap(`"name": "`+name+`"`, `"name": "`+name+`", "station": "`+station+`"`)
	}
	return []row{
		{"quicksilver in the oven", "silver", "warning", "mercury vapour",
			by(behind("water 2", wash("quicksilver wash")), oven),
			by(behind("water 2", wash("quicksilver wash")))},
		{"a quicking dip in the oven", "silver", "warning", "mercury vapour",
			by(behind("water 2", wash("quicking dip")), oven),
			by(behind("water 2", wash("quicking dip")))},
		{"an amalgam in the oven", "silver", "warning", "mercury vapour",
			by(behind("water 2", wash("gold amalgam wash")), oven), nil},
		{"Hg(NO3)2 in the oven", "silver", "warning", "mercury vapour",
			by(behind("water 2", wash("Hg(NO3)2")), oven), nil},
		{"mercury on a hot plate", "silver", "warning", "mercury vapour",
			by(behind("water 2", wash("mercuric nitrate")), swap(`"holds": "warm air"`, `"holds": "hot plate"`)),
			by(behind("water 2", wash("mercuric nitrate")))},
		{"mercury dried at 350 °C", "silver", "warning", "mercury vapour",
			by(behind("water 2", wash("mercuric nitrate")),
				swap(`"holds": "warm air"`, `"holds": "air", "temperature": "350 °C"`)),
			by(behind("water 2", wash("mercuric nitrate")),
				swap(`"holds": "warm air"`, `"holds": "air", "temperature": "60 °C"`))},
		{"white spirit straight into the bake", "spring", "stop", "wet with solvent",
			by(replace(`"dry"`, strings.Replace(acetone, "acetone", "white spirit", 1))), nil},
		{"mineral spirits straight into the bake", "spring", "stop", "wet with solvent",
			by(replace(`"dry"`, strings.Replace(acetone, "acetone", "mineral spirits", 1))), nil},
		{"acetone straight into the stress relief", "spring", "stop", "wet with solvent",
			by(ahead(`"stress relief"`, acetone)),
			by(ahead(`"stress relief"`, acetone+air))},
		{"acetone dried over a flame", "zinc", "stop", "wet with solvent",
			by(ahead("mild alkaline", acetone+entry(`{"kind": "dry", "holds": "gas flame"}`))),
			by(ahead("mild alkaline", acetone+air))},
		{"alcohol dried in an oven of 120 °C", "zinc", "stop", "wet with solvent",
			by(ahead("mild alkaline", strings.Replace(acetone, "acetone", "alcohol", 1)+
				entry(`{"kind": "dry", "holds": "air", "temperature": "120 °C"}`))),
			by(ahead("mild alkaline", strings.Replace(acetone, "acetone", "alcohol", 1)+
				entry(`{"kind": "dry", "holds": "air", "temperature": "35 °C"}`)))},
		{"a spring left in the pickle", "spring", "warning", "as long as it stays", by(dipped(`, "time": "20 min"`)),
			by(dipped(`, "time": "30 s"`))},
		{"a spring in hydrochloric acid for 10 min", "spring", "warning", "as long as it stays",
			by(hydrochloric, dipped(`, "time": "10 min"`)), by(hydrochloric, dipped(`, "time": "8 s"`))},
		{"a spring in acid for a time that is not said", "spring", "warning", "as long as it stays",
			by(dipped("")), nil},
		{"acid behind the bake", "spring", "warning", "drives hydrogen in again",
			by(behind(`"bake"`, pickleTank+waterTank)), nil},
		{"a cathodic clean behind the bake", "spring", "warning", "drives hydrogen in again",
			by(behind(`"bake"`, cathodic)), nil},
		{"an electroclean of zinc that does not say what it holds", "zinc", "warning", "dissolves zinc",
			by(behind("water 1", cleaner(""))), by(behind("water 1", cleaner(`, "mild": true`)))},
		{"an electroclean of aluminium that does not say what it holds", "dial", "warning", "dissolves zinc",
			by(behind("water 1", cleaner(""))), by(behind("water 1", cleaner(`, "mild": true`)))},
		{"an electroclean of unsaid content in aluminium ware", "hand", "stop", "eats through",
			by(swap(`"holds": "electrocleaner", "hazards": ["caustic", "hot"]`,
				`"holds": "cleaner 4", "vessel": "aluminium"`)),
			by(swap(`"holds": "electrocleaner", "hazards": ["caustic", "hot"]`,
				`"holds": "cleaner 4", "vessel": "steel"`))},
		{"a cleaner of pH 12.5 in aluminium ware", "zinc", "stop", "eats through",
			by(swap(`"holds": "mild alkaline cleaner"`, `"holds": "cleaner 4", "pH": 12.5, "vessel": "aluminium"`)),
			by(swap(`"holds": "mild alkaline cleaner"`, `"holds": "cleaner 4", "pH": 9.5, "vessel": "aluminium"`))},
		{"silver cyanide in zinc-coated ware", "silver", "stop", "dissolves the vessel",
			by(swap(`"hazards": ["cyanide"], "pH": 12`, `"hazards": ["cyanide"], "pH": 12, "vessel": "galvanised"`)),
			by(swap(`"hazards": ["cyanide"], "pH": 12`, `"hazards": ["cyanide"], "pH": 12, "vessel": "steel"`))},
		{"alkaline gold at pH 7", "wheel", "stop", hcn,
			by(swap(`"name": "gold, acid cyanide strike"`, `"name": "gold, alkaline cyanide, free cyanide 15 g/L"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": ["cyanide"], "pH": 7`)), nil},
		{"one station, written two ways", "zinc", "stop", "same water", by(at("water 2", "A-1"), at("water 3", "a 1")),
			by(at("water 2", "A-1"), at("water 3", "A-2"))},
	}
}

// spelledRows are tanks whose chemistry stands in a formula with its strength, in an old
// name or in another language.
func spelledRows() []row {
	var rows []row
	dip := func(holds string) change {
		return replace("weak sulfuric", entry(`{"kind": "activate", "does": ["deoxidise"], "holds": "`+holds+`",
				"hazards": [],
     "time": "12 s"}`))
	}
	for _, acid := range []string{"HCl(aq)", "HCl(10 %)", "HCl10%", "H2SO4(5 %)", "HNO3(dil.)", "citric 2 %",
		"lactic 5 %",
		"hydrobromic, weak", "perchloric, 1 %", "methanesulfonic 10 %", "Chlorwasserstoff", "zoutzuur",
		"zwavelzuur", "saltsyra",
		"svavelsyra", "kyselina", "kwas", "серная кислота", "dip 3, pH of 3.5", "dip 3, pH about 4", "pH-value 2",
		"piranha",
		"nitic", "azotic, weak", "HF(1 %)"} {
		rows = append(rows, row{"before cyanide: " + acid, "zinc", "stop", hcn, by(dip(acid), cut("water 2")), nil})
	}
	for _, cyanide := range []string{"silver, cyan 40 g/L", "Cyansilber", "cyjanek srebra",
		"kyanid", "цианид серебра",
		"no cyanide above 5 g/L", "no cyanide except the strike", "cyanide-free until fed"} {
		rows = append(rows, row{"behind strong acid: " + cyanide, "silver", "stop", hcn,
			by(cut(`"silver strike", "role"`), cut(`"layer": "silver strike"`), swap(`, "salt": "KAg(CN)2"`, ""),
				swap(`"hazards": ["cyanide"], "pH": 12`, `"hazards": []`), swap(`"name": "silver, cyanide", "metal": "Ag"`,
					`"name": "`+cyanide+`", "metal": "Ag"`), cut("water 2"), cut("same water")), nil})
	}
	add := func(name, base, word, mark, tank string, rinsed bool) {
		first := entry(`{"kind": "activate", "holds": "` + tank + `", "time": "5 s"}`)
		r := row{name + ": " + tank, base, "stop", word, by(behind(mark, first)), nil}
		if rinsed {
			r.safe = by(behind(mark, first+waterTank))
		}
		rows = append(rows, r)
	}
	for _, s := range []string{"sulphuret of potassium", "Na2S(aq)", "(NH4)2S", "sulfuro", "Sulfid",
		"sulphurated potassa"} {
		add("straight into acid", "wheel", "hydrogen sulfide", "water 1", s, true)
	}
	for _, s := range []string{"chloride of lime", "chlorinated lime", "Chlorbleiche", "Ca(OCl)2",
		"candeggina", "pool chlorine"} {
		add("straight into acid", "wheel", "chlorine", "water 1", s, true)
	}
	for _, s := range []string{"ammonium persulphate", "H2O2(3%)", "(NH4)2S2O8", "peroxyde d'hydrogène",
		"sodium percarbonate",
		"peroxymonosulfate"} {
		add("straight into silver cyanide", "silver", "can explode", "same water", s, true)
	}
	for _, s := range []string{"mineral spirits", "turps", "Alkohol", "gasoline", "ether", "Waschbenzin",
		"formalin"} {
		rows = append(rows, row{"straight into nitric acid: " + s, "dial", "stop", "brown fume",
			by(replace("water 2", entry(`{"kind": "soak clean", "holds": "`+s+`", "time": "1 min"}`))), nil})
	}
	for _, s := range []string{"Flußsäure", "hexafluorosilicic acid",
		"fluorure d'ammonium", "HF(10 %)", "ácido fluorhídrico"} {
		held := func(vessel string) []change {
			return by(swap(`"holds": "fluoboric acid, 10 %", "hazards": ["acid", "fluoborate"],
     "vessel": "plastic"`, `"holds": "`+s+`", "hazards": ["acid"], "vessel": "`+vessel+`"`))
		}
		rows = append(rows, row{"in glass: " + s, "wheel", "stop",
			"fluoride in glass", held("glass"), held("plastic")})
	}
	return rows
}
