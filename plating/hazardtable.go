package plating

import (
	"slices"

	"example.com/laydown/units/origin"
)

// A HazardRow is one row of the table of hazards.
type HazardRow struct {
	Flag Hazard
	Word string // as files write it: "cyanide"

	// What gives the hazard away in a name. Names count anywhere in a word,
	// Tokens (formulas, short words) as a word of their own; both in small
	// letters, formulas without brackets. Harmless phrases mean something else.
	Names, Tokens, Harmless []string
	Near                    []string // words of which a slip of one letter counts too
	Metals                  []string // whose salts bring it
	Implies                 Hazard   // what comes with the name: hydrochloric is acid

	Short string // the line under the name of a tank: what to do first, then why
	Do    string // the caution in full: what to do
	Why   string // and why
	// Source is the key of what was read, or [origin.Practice] or [origin.Memory].
	// It stands for Why; what to do is common practice.
	Source string
}

// HazardTable returns a copy of the table of hazards, the most dangerous first.
//
// Source: a key in each row.
func HazardTable() []HazardRow { return slices.Clone(hazardTable) }

// hazardTable is read only.
var hazardTable = []HazardRow{
	{
		Flag: HazardCyanide, Word: "cyanide",
		Names: []string{"cyan", "zyan", "kyanid", "cyjan", "cianet", "siyan", "syanid", "цианид", "cyanid",
			"zyanid", "cyanur", "cianur", "prussiat", "aurocyan", "argentocyan",
			"cyano", "cyanat", "hydrocyan", "cyanhydr", "cyanwasser", "prussic", "blausäure", "blausaeure",
			"zyankali", "cyankal", "cyanhalt",
			"kcn", "nacn", "nh4cn", "agcn", "cucn", "aucn"},
		Harmless: []string{"cyanoacrylate", "cyanotype", "cyan ink", "cyan dye"},
		Tokens: []string{"cn", "kcn", "nacn", "cucn", "agcn", "aucn", "zncn2", "cdcn2", "hcn", "kaucn2", "naaucn2",
			"kaucn4",
			"kagcn2", "naagcn2",
			"k2cucn3", "na2cucn3", "kcucn2", "cianyde", "sianide", "pgc", "bombing"},
		Near:  []string{"cyanide"},
		Short: "CYANIDE: keep acid away, acid frees hydrogen cyanide, which kills; never work alone",
		Do: "Keep acid and its rinse water away. Never work alone. Arrange first aid for cyanide with a doctor " +
			"before you start. Do not rely on the smell: many cannot smell it.",
		Why:    "A fraction of a gram swallowed can kill. Acid frees hydrogen cyanide gas.",
		Source: "KCNSheet",
	}, {
		Flag: HazardFluoride, Word: "fluoride",
		Names: []string{"hydrofluor", "bifluorid", "fluorid", "fluorwasserstoff", "flusssäure", "flußsäure",
			"flussäure",
			"flusssaeure", "flussaeure", "fluorhyd", "fluorhid", "fluorhíd", "fluorur", "fluorsilic", "fluorosilic",
			"fluosilic"},
		Tokens: []string{"hf", "kf", "naf", "nh4f", "nh4hf2", "khf2", "nahf2", "h2sif6"},
		Short:  "FLUORIDE: calcium gluconate gel at hand, plastic and never glass; the burn goes deep and hurts late",
		Do: "Have calcium gluconate gel at hand. Wear a face shield and long gloves. Never use glass or enamel: " +
			"use plastic.",
		Why:    "Fluoride burns go deep and hurt late. Hydrofluoric acid etches glass.",
		Source: "HFSheet",
	}, {
		Flag: HazardNitric, Word: "nitric", Implies: HazardAcid,
		Names: []string{"nitric", "salpeters", "nitrique", "nitrico", "nítrico", "königswasser", "koenigswasser",
			"azotic",
			"salpeterzuur", "spirit of nitre", "spirits of nitre"},
		Tokens: []string{"hno3", "fortis", "regia", "régale", "regale", "nitirc", "ntiric", "nirtic", "nitic",
			"nitrc",
			"nital"},
		Short: "NITRIC ACID: goggles, gloves, extraction on, no wood, cloth or solvent near; the brown fume harms " +
			"the lungs hours later",
		Do: "Draw off at the tank. Keep wood, cloth, solvents and loose chips away. Who has breathed the fume " +
			"goes to a doctor, also when he feels well.",
		Why: "Nitric acid may set fire to what is organic and gives off brown fume with it. Lungs may fill with " +
			"water hours or days later.",
		Source: "ICSCNitric, PHENitrogenDioxide",
	}, {
		Flag: HazardHypochlorite, Word: "hypochlorite",
		Names: []string{"hypochlor", "bleach", "javel", "bleich", "hipoclor", "ipoclor", "chlorkalk",
			"chlorinated lime",
			"chloride of lime", "candeggina", "lejía"},
		Tokens: []string{"naocl", "naclo", "caclo2", "caocl2", "chlorine"},
		Short:  "HYPOCHLORITE: keep acid and ammonia away; acid frees chlorine",
		Do:     "Keep acid and ammonia away. Do not pour it into strong cyanide.",
		Why:    "With acid it frees chlorine. With concentrated cyanide it reacts violently.",
		Source: "Hypochlorite",
	}, {
		Flag: HazardSulfide, Word: "sulfide",
		Names: []string{"sulfid", "sulphid", "polysulf", "schwefelleber", "lime sulfur", "lime sulphur", "sulfurated",
			"sulphurated", "sulfuret", "sulphuret", "sulfure de", "sulfuro", "solfuro", "hepar", "foie de soufre"},
		Tokens: []string{"liver", "na2s", "k2s", "h2s", "nh42s", "nahs", "nash"},
		Short:  "SULFIDE: keep acid away, acid frees hydrogen sulfide, which kills",
		Do:     "Keep acid and its rinse water away.",
		Why:    "Acid frees hydrogen sulfide. It kills, and it numbs the nose first.",
		Source: origin.Memory,
	}, {
		Flag: HazardChromate, Word: "chromate",
		Names: []string{"chromic", "chromat", "chromium", "hexavalent", "chromsäure", "chromsaeure", "chromique",
			"cromico",
			"crómico"},
		Tokens:   []string{"chrome", "cro3", "k2cr2o7", "na2cr2o7", "h2cro4"},
		Metals:   []string{"Cr"},
		Harmless: []string{"chromium steel", "chrome steel", "high chromium", "chromium grade", "nickel chromium"},
		Short:    "CHROMIUM(VI): extraction on, gloves; the mist causes cancer",
		Do:       "Draw off at the tank, cover the surface, wear gloves. The limits for air and waste are law.",
		Why:      "Hexavalent chromium is poisonous and causes cancer. Its mist eats through the nose.",
		Source:   "ChromicSheet",
	}, {
		Flag: HazardToxicMetal, Word: "toxic metal",
		Names: []string{"mercur", "quicksilver", "amalgam", "cadmium", "arsen", "thallium", "selen", "beryllium",
			"quickening", "quicking", "quecksilber", "kadmium", "calomel", "corrosive sublimate"},
		Tokens: []string{"cdcn2", "cdso4", "cdcl2", "cdo", "hg", "hgcl2", "hgo", "hgno32", "hgcn2", "as2o3", "seo2"},
		Metals: []string{"Hg", "Cd", "As", "Tl", "Se", "Be"},
		Short:  "TOXIC METAL: gloves, extraction, no food near; it gathers in the body",
		Do:     "Wear gloves, draw off at the tank, keep food away. Heat nothing that holds mercury.",
		Why:    "Salts of mercury, cadmium, arsenic and thallium poison, and they gather in the body.",
		Source: origin.Memory,
	}, {
		Flag: HazardCaustic, Word: "caustic",
		Names: []string{"caustic", "hydroxid", "electroclean", "natronlauge", "kalilauge", "zincate", "stannate",
			"caustiqu", "cáustic", "hydroxyd", "idrossid", "hidróxid", "hidroxid", "lauge", "ätznatron",
			"aetznatron", "ätzkali", "aetzkali"},
		Tokens: []string{"naoh", "koh", "lye", "potash", "soda"},
		Harmless: []string{"soda ash", "baking soda", "washing soda", "mild alkaline electrocleaner",
			"ammonium hydroxide", "zincated aluminium", "nickel hydroxide", "potash alum"},
		Short: "CAUSTIC: goggles and face shield on; a splash blinds",
		Do: "Wear goggles and a face shield. Add caustic slowly to cold water, never water to caustic. Keep " +
			"zinc and aluminium out.",
		Why:    "Hot caustic blinds. With zinc and aluminium it makes hydrogen.",
		Source: "AlkaliDilution, CausticMetals",
	}, {
		Flag: HazardAcid, Word: "acid",
		Names: []string{"acid", "muriatic", "chromic", "sulfuric", "sulphuric", "phosphoric", "hydrochlor",
			"hydrofluor",
			"fluobor", "pickl", "vitriol", "säure",
			"saeure", "bisulfat", "bisulphat", "königswasser", "acyd", "hydrocyan", "cyanhydr", "prussic",
			"bifluorid",
			"difluorid", "fluorhyd", "fluorhid", "fluorhíd", "fluorobor", "tetrafluorob", "spirits of salt",
			"lemon juice", "vinegar", "sulfamic", "sulphamic",
			"ferric chloride", "iron chloride", "bright dip", "zuur", "svavelsyr", "svovlsyr", "saltsyr",
			"salpetersyr",
			"kyselin", "кислот"},
		Near: []string{"sulfuric", "sulphuric", "phosphoric"},
		Tokens: []string{"citric", "lactic", "perchloric", "hydrobromic", "methanesulfonic", "methanesulphonic",
			"msa", "kwas",
			"piranha", "regia", "fortis", "hcl", "h2so4", "hno3", "h3po4", "hf", "hbf4", "khso4", "nahso4", "sauer",
			"ácido", "oleum", "acetic", "formic", "oxalic", "régale", "regale", "h3nso3", "saure", "saures",
			"saurer", "saurem", "acide", "acido", "h2s04", "hn03", "cro3",
			"h2cro4", "nh4hf2", "khf2", "nahf2", "h2sif6", "ch3cooh", "ch3so3h", "fecl3"},
		Harmless: []string{"fatty acid", "amino acid", "boric acid", "zuurstof", "hepar sulfuris", "hepar sulphuris"},
		Short:    "ACID: goggles, gloves and apron on, pour acid into water; acid burns",
		Do:       "Wear goggles, gloves and an apron. Pour acid into water, never water into acid.",
		Why:      "Acid burns. Water poured into strong acid boils and throws it out.",
		Source:   "AlkaliDilution",
	}, {
		Flag: HazardHydrogenChloride, Word: "hydrogen chloride", Implies: HazardAcid,
		Names: []string{"hydrochlor", "muriatic", "salzsäure", "chlorhydr", "cloridri", "hydrogen chloride",
			"königswasser",
			"chlorwasserstoff", "clorhídr", "clorhidr", "zoutzuur", "saltsyr"},
		Tokens: []string{"hcl", "regia", "régale", "regale"},
		Near:   []string{"hydrochloric", "muriatic"},
		Short:  "HYDROCHLORIC ACID: goggles and gloves on, extraction on; acid and fume burn skin and lungs",
		Do:     "Draw off at the tank. Keep the tank covered when it rests.",
		Why:    "The fume burns the lungs: 5 ppm is not to be passed at any time (NIOSH).",
		Source: "HClSheet",
	}, {
		Flag: HazardFluoborate, Word: "fluoborate", Implies: HazardFluoride | HazardAcid,
		Names:  []string{"fluobor", "fluorobor", "tetrafluorob", "fluoroborat"},
		Tokens: []string{"hbf4", "bf4", "pbbf42", "cubf42", "snbf42"},
		Short:  "FLUOBORATE: treat it as hydrofluoric acid; it may free some",
		Do:     "Treat it as hydrofluoric acid: calcium gluconate gel at hand, plastic, no glass.",
		Why:    "Fluoboric acid may free hydrogen fluoride. Its burns are treated with calcium gluconate.",
		Source: "FluoboricSheet",
	}, {
		Flag: HazardSulfite, Word: "sulfite",
		Names:  []string{"sulfit", "sulphit", "bisulfit", "disulfit", "solfit", "dithionit"},
		Tokens: []string{"so2", "na2so3", "k2so3", "nahso3", "na2s2o5", "k2s2o5"},
		Short:  "SULFITE: keep acid away, acid frees sulfur dioxide, which chokes",
		Do:     "Keep acid and its rinse water away. Keep the extraction on.",
		Why:    "Acid frees sulfur dioxide, which chokes, and drops the gold out of the bath.",
		Source: "SulfiteSheet",
	}, {
		Flag: HazardAmmonia, Word: "ammonia",
		Names: []string{"ammonia", "ammonium hydroxide", "ammoniak", "ammoniaca", "salmiak", "amoniac", "amoníac",
			"hartshorn"},
		Tokens: []string{"nh3", "nh4oh", "diammine", "tetrammine", "ammine"},
		Short:  "AMMONIA: extraction on; never let it dry on silver or gold salts, the crust can explode",
		Do: "Draw off at the tank. Keep bleach away. Never let ammonia and silver or gold salts dry together, " +
			"nor store them mixed.",
		Why: "Ammonia harms eyes and lungs. With silver and gold oxides it forms compounds that explode " +
			"when shaken.",
		Source: "ICSCAmmonia",
	}, {
		Flag: HazardNickel, Word: "nickel",
		Names:    []string{"nickel", "nichel", "níquel", "niquel"},
		Tokens:   []string{"niso4", "nicl2", "nickelous"},
		Metals:   []string{"Ni"},
		Harmless: []string{"nickel silver"},
		Short:    "NICKEL SALTS: gloves, extraction on; they sensitise the skin and the mist causes cancer",
		Do: "Wear gloves and draw off at the tank. Tell the owner of a piece that is worn that nickel lies " +
			"under the coat.",
		Why: "Nickel is a strong skin sensitiser. Its salts cause cancer (IARC group 1). Nickel against the " +
			"skin causes allergy.",
		Source: "NickelHealth",
	}, {
		Flag: HazardCobalt, Word: "cobalt",
		Names:  []string{"cobalt", "kobalt"},
		Tokens: []string{"coso4", "cocl2"},
		Metals: []string{"Co"},
		Short:  "COBALT SALTS: gloves, extraction on; they sensitise skin and lungs and may cause cancer",
		Do:     "Wear gloves, draw off at the tank, raise no dust.",
		Why:    "Cobalt sulfate sensitises skin and lungs and is suspected of causing cancer.",
		Source: "CobaltSheet",
	}, {
		Flag: HazardLead, Word: "lead",
		Names:    []string{"plumb"},
		Tokens:   []string{"pb", "pbno32", "lead", "leaded", "pbo2", "pbso4", "blei", "plomb"},
		Metals:   []string{"Pb"},
		Harmless: []string{"lead time", "lead wire", "leaded brass", "leaded bronze", "lead in"},
		Short:    "LEAD: gloves, no dust, wash before you eat; it gathers in the body",
		Do:       "Wear gloves, raise no dust, wash your hands before you eat. Keep its sludge as hazardous waste.",
		Why:      "Lead gathers in the body. It is reasonably anticipated to cause cancer (NTP).",
		Source:   "LeadNTP",
	}, {
		Flag: HazardBoric, Word: "boric acid",
		Names:  []string{"borax", "borsäure", "borique"},
		Tokens: []string{"boric", "h3bo3"},
		Short:  "BORIC ACID: gloves, no dust; it may harm fertility and the unborn child",
		Do:     "Wear gloves and raise no dust when you weigh it.",
		Why:    "Boric acid may harm fertility and the unborn child.",
		Source: "BoricSheet",
	}, {
		Flag: HazardOxidiser, Word: "oxidiser",
		Names: []string{"peroxid", "persulf", "permangan", "chlorate", "oxidis", "oxidiz", "perborat", "persulph",
			"peroxyd",
			"perossid", "peroxo", "peroxymono", "percarbonat", "perhydrol", "perchloric", "oxygénée", "ossigenata",
			"oxigenada"},
		Tokens: []string{"h2o2", "kmno4", "naclo3", "bombing", "piranha", "nh42s2o8", "na2s2o8", "k2s2o8"},
		Harmless: []string{"deoxidiser", "deoxidising", "deoxidise", "deoxidizer", "deoxidizing", "deoxidize",
			"oxidised",
			"oxidized"},
		Short:  "OXIDISER: no solvent, cloth or metal powder near; it starts fires",
		Do:     "Keep solvents, cloth and metal powder away. Cover loosely: it gives off gas.",
		Why:    "Strong peroxide catches fire or explodes with heat, metals and what is organic.",
		Source: "ICSCPeroxide",
	}, {
		Flag: HazardOrganic, Word: "organic",
		Names: []string{"solvent", "alcohol", "acetone", "ethanol", "methanol", "propanol", "white spirit", "petrol",
			"benzine", "turpentine", "glycer", "glycol",
			"trichlor", "perchloroethylen", "toluene", "xylene", "naphtha", "methylated", "thinner", "kerosene",
			"paraffin",
			"sawdust", "alkohol", "alcool", "aceton", "benzin", "gasoline", "mineral spirits", "surgical spirit",
			"ethyl acetate",
			"butyl acetate", "lighter fluid", "dichlorometh", "methylene chloride", "hexane", "heptane", "varnish",
			"lacquer",
			"shellac", "formaldehyd", "formalin", "cotton wool"},
		Tokens:   []string{"ipa", "spirit", "spirits", "spiritus", "oil", "oils", "mek", "ether", "turps", "nital"},
		Harmless: []string{"spirit of salt", "spirits of salt"},
		Short:    "SOLVENT: no flame or spark; keep it out of nitric acid, chromic acid and peroxide",
		Do:       "Keep flame and spark away. Rinse it off before nitric acid, chromic acid or peroxide.",
		Why:      "It burns. Strong oxidisers set it on fire.",
		Source:   "ICSCNitric",
	}, {
		Flag: HazardHot, Word: "hot",
		Names:  []string{"boiling"},
		Tokens: []string{"hot", "heiß", "heiss", "heißes", "heisses", "scalding"},
		Short:  "HOT: lower the piece in slowly; it scalds",
		Do:     "Lower the piece in slowly. Cover the tank or draw off at it.",
		Why:    "A hot bath scalds and throws mist.",
		Source: origin.Practice,
	},
}
