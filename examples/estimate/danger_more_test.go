package main

import "strings"

// heldRows are rinses whose name says that they hold more than water, and baths of which
// nobody says whether they are acid.
func heldRows() []row {
	called := func(name, as string) []change { return by(swap(`"name": "`+name+`"`, `"name": "`+as+`"`)) }
	still := entry(`{"kind": "drag-out rinse", "name": "citric acid, 2 %"}`)
	bath := func(name, metal, more string) []change {
		return by(replace(`"library": "nickel-watts"`, ownCoat("nickel", "finish", `{"name": "`+name+`", "metal": `+metal+`,
      "efficiency": "95 %", "window": {"low": "0.1 A/dm²", "high": "5 A/dm²"}, `+more+`}`)), cut("water 3"))
	}
	// The neighbour says its pH, and has its rinse.
	rinsed := func(name, metal, more string) []change { return bath(name, metal, more)[:1] }
	return []row{
		{"a rinse in vinegar", "zinc", "stop", hcn, called("water 2", "vinegar rinse"), called("water 2", "rinse behind the vinegar")},
		{"a rinse in lemon juice", "zinc", "stop", hcn, called("water 2", "lemon juice wash"), nil},
		{"water with a little acid, by its name", "zinc", "stop", hcn,
			called("water 2", "water with a splash of vinegar"), nil},
		{"a rinse with sulfuric acid", "zinc", "stop", hcn, called("water 2", "rinse with 1 % sulfuric acid"),
			called("water 2", "rinse after 1 % sulfuric acid")},
		{"an acid that holds the piece wet", "zinc", "stop", hcn, called("water 2", "citric acid hold"), nil},
		{"a dilute acid rinse", "zinc", "stop", hcn, called("water 2", "dilute acid rinse"), called("water 2", "acid rinse")},
		{"a weak acid rinse", "zinc", "stop", hcn, called("water 2", "weak acid rinse"), nil},
		{"rinse water of pH 4", "zinc", "stop", hcn, called("water 2", "pH 4 rinse water"), called("water 2", "pH 8 rinse water")},
		{"a wash that neutralises with acid", "zinc", "stop", hcn, called("water 2", "neutralising wash, citric acid"), nil},
		{"a still tank of citric acid before cyanide", "zinc", "stop", hcn, by(ahead(`"layer": "copper"`, still)),
			by(ahead(`"layer": "copper"`, strings.Replace(still, "citric acid, 2 %", "drag-in", 1)))},
		{"silver straight into a bleach rinse", "silver", "stop", "violent", called("water 9", "bleach rinse"), nil},
		{"silver straight into a peroxide rinse", "silver", "stop", "can explode", called("water 9", "peroxide rinse"), nil},
		{"nitric acid straight into an alcohol rinse", "dial", "stop", "brown fume", called("water 3", "alcohol rinse"), nil},
		{"copper sulfate whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("copper, sulfate, bright", `"Cu", "valence": 2`, `"hazards": []`),
			rinsed("copper, sulfate, bright", `"Cu", "valence": 2`, `"hazards": [], "pH": 1.2`)},
		{"rhodium sulfate whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("rhodium, sulfate", `"Rh"`, `"hazards": []`), rinsed("rhodium, sulfate", `"Rh"`, `"hazards": [], "pH": 1.2`)},
		{"tin sulfate whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("tin, sulfate", `"Sn", "valence": 2`, `"hazards": []`),
			rinsed("tin, sulfate", `"Sn", "valence": 2`, `"hazards": [], "pH": 1.2`)},
		{"zinc chloride whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("zinc, chloride", `"Zn"`, `"hazards": []`), rinsed("zinc, chloride", `"Zn"`, `"hazards": [], "pH": 5.2`)},
		{"palladium chloride whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("palladium, chloride", `"Pd"`, `"hazards": []`),
			rinsed("palladium, chloride", `"Pd"`, `"hazards": ["ammonia"], "pH": 8.5`)},
		{"ruthenium whose list forgets the acid, behind cyanide", "zinc", "stop", hcn,
			bath("ruthenium, sulfamate", `"Ru"`, `"hazards": []`),
			rinsed("ruthenium, sulfamate", `"Ru"`, `"hazards": [], "pH": 1.5`)},
	}
}
