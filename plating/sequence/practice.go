package sequence

import (
	"slices"
	"strings"

	"example.com/laydown/plating/bath"
	"example.com/laydown/units/origin"
)

// A Practice is what publications and the trade say about one base metal.
type Practice struct {
	Standard string       // number of the published practice, "" when there is none
	Title    string       // its title
	Source   string       // key
	Seen     origin.Seen  // how number and title were seen
	Detail   origin.Seen  // how the steps were seen: mostly from memory
	Steps    []string     // preparation, activation, strike, underplate, in words
	Reasons  []bath.Words // why the steps are so, each with its source
	Unsure   string       // what to do when a step is in doubt
}

// For returns the practice with the reasons that concern coats of these metals:
// what gold or silver suffers is left out where none is laid.
func (p Practice) For(metals ...string) Practice {
	reasons := p.Reasons
	p.Reasons = nil
	for _, w := range reasons {
		if strings.Contains(w.Text, "gold") && !slices.Contains(metals, "Au") ||
			strings.HasPrefix(w.Text, "silver deposits on copper") && !slices.Contains(metals, "Ag") {
			continue
		}
		p.Reasons = append(p.Reasons, w)
	}
	return p
}

// PracticeFor returns the practice for a base metal.
//
// Errors: an [*UnsureError] for a metal that is not known.
func PracticeFor(s Substrate) (Practice, error) {
	said := func(text, key string) bath.Words {
		return bath.Words{Text: text, Source: key, Seen: origin.Published}
	}
	known := func(text string) bath.Words { return bath.Words{Text: text, Source: recall} }
	barrier := said("copper diffuses into gold and tarnishes there; nickel and palladium are good barriers, "+
		"bronze is not", "DiffusionBarrier")
	p := Practice{Seen: origin.Published}
	switch s {
	case StainlessSteel:
		p.Standard, p.Title, p.Source, p.Detail = "ASTM B254", "Preparation of and Electroplating on Stainless Steel",
			"ASTMB254", origin.SecondHand
		p.Steps = []string{"degrease", "anodic electroclean",
			"activate, or activate and plate in one step in an acid strike",
			"slightly acid rinse", "straight on, never dry",
			"acid gold strike under gold; nickel chloride strike under the rest"}
		p.Reasons = []bath.Words{said("the thin oxide film forms again when the piece dries or meets water with "+
			"oxygen; nothing adheres to it", "ASTMB254"),
			said("once active, it takes any of the common metals", "ASTMB254")}
		p.Unsure = "if the grade is not known, plate one piece, bend it and rub it; the high-chromium grades want " +
			"the nickel chloride strike"
	case LeadedBrass:
		p.Standard, p.Title, p.Source = "ASTM B281",
			"Preparation of Copper and Copper-Base Alloys for Electroplating and Conversion Coatings", "ASTMB281"
		p.Steps = []string{"soak", "cathodic electroclean, short",
			"fluoboric acid dip of 10 to 30 %, two minutes at most, in plastic",
			"nickel barrier, or white bronze and palladium where it meets the skin",
			"gold strike on nickel, live, and gold; silver only over a silver strike"}
		p.Reasons = []bath.Words{barrier,
			said("lead is smeared over the face in machining and an alkaline cleaner does not take it off; "+
				"fluoboric acid does, or the plate flakes off", "LeadedBrassColumn"),
			said("lead forms insoluble salts with most acids used in pickling", "ASTMB319"),
			known("silver deposits on copper by immersion and does not adhere: strike first")}
		p.Unsure = "plate one piece, bend it and rub it; if the coat peels, the lead was not taken off"
	case Copper, Brass, Bronze, NickelSilver:
		p.Standard, p.Title, p.Source = "ASTM B281",
			"Preparation of Copper and Copper-Base Alloys for Electroplating and Conversion Coatings", "ASTMB281"
		p.Steps = []string{"soak", "cathodic electroclean", "mild sulfuric acid dip",
			"nickel barrier, or white bronze and palladium where it meets the skin",
			"gold strike on nickel, live, and gold; silver only over a silver strike"}
		p.Reasons = []bath.Words{barrier,
			known("silver deposits on copper by immersion and does not adhere: strike first")}
		p.Unsure = "turned and clock brass usually holds lead: then say leaded brass. Old lacquer comes off first. " +
			"Try one piece"
	case Nickel:
		p.Standard, p.Title, p.Source, p.Seen, p.Detail = "ASTM B343",
			"Preparation of Nickel for Electroplating with Nickel",
			"ASTMB343", origin.SecondHand, origin.Published
		p.Steps = []string{"soak", "cathodic electroclean", "anodic etch in 25 % sulfuric acid",
			"nickel chloride strike, live", "on at once, wet"}
		p.Reasons = []bath.Words{said("nickel that has dried is passive and needs the treatment of stainless steel",
			"Guidebook2013")}
		p.Unsure = "fresh nickel that never dried needs a rinse only; if in doubt, treat it as passive"
	case SterlingSilver, FineSilver:
		p.Steps = []string{"soak", "sulfuric acid dip, 5 to 10 %",
			"palladium barrier, or nickel where nothing touches skin",
			"silver strike under silver", "gold"}
		p.Source, p.Standard, p.Title = "Guidebook2013", "", "chapter on surface preparation"
		p.Reasons = []bath.Words{known("silver diffuses into gold and tarnishes through it"),
			{Text: "a base metal such as nickel between sterling and gold must be disclosed to the buyer",
				Source: "FTC23", Seen: origin.Published}}
		p.Unsure = "a piece may be plate over brass: look at worn edges; treat it as brass if so"
	case LowCarbonSteel:
		p.Standard, p.Title, p.Source, p.Detail = "ASTM B183", "Preparation of Low-Carbon Steel for Electroplating",
			"ASTMB183", origin.Published
		p.Steps = []string{"soak", "anodic electroclean", "sulfuric acid dip, 3 to 5 %",
			"nickel, or cyanide copper strike and plate"}
		p.Reasons = []bath.Words{known("rust under the coat; copper from acid deposits on iron by immersion and " +
			"does not adhere")}
		p.Unsure = "if it may be hard or spring steel, treat it as high-carbon steel and bake"
	case HighCarbonSteel:
		p.Standard, p.Title, p.Source, p.Detail = "ASTM B242", "Preparation of High-Carbon Steel for Electroplating",
			"ASTMB242", origin.Published
		p.Steps = []string{"stress relief", "soak", "anodic electroclean, never cathodic",
			"short sulfuric acid dip, 3 to 5 %", "nickel, or cyanide copper strike and plate",
			"bake after plating by its strength"}
		p.Reasons = []bath.Words{said("0.35 % carbon or more and case-hardened steel take up hydrogen in cleaning, "+
			"dip and bath, and crack later", "ASTMB242"),
			{Text: "a bake at 190 to 220 °C drives it out: 8 h for steel of 1001 to 1100 MPa, 2 h more for each 100 " +
				"MPa, 22 h for 1701 to 1800 MPa", Source: "ASTMB850", Seen: origin.SecondHand},
			said("steel of 1000 MPa and more that was machined, ground or cold-formed is stress-relieved before the "+
				"first step that charges hydrogen", "ASTMB849")}
		p.Unsure = "where a spring or arbor carries load and its strength is not known, do not plate it"
	case ZincDieCasting:
		p.Standard, p.Title, p.Source = "ASTM B252",
			"Preparation of Zinc Alloy Die Castings for Electroplating and Conversion Coatings", "ASTMB252"
		p.Steps = []string{"mild soak, no hot caustic", "mild alkaline electroclean where it is inhibited for zinc",
			"weak acid dip, seconds", "cyanide copper strike and plate, live, 3 µm",
			"then nickel, and only then acid baths"}
		p.Reasons = []bath.Words{known("acid and caustic dissolve zinc; copper from acid deposits on it by " +
			"immersion and does not adhere")}
		p.Unsure = "a blister or an old bare spot means plate over rotten zinc: strip, look, and refuse what is " +
			"pitted through"
	case Aluminium:
		p.Standard, p.Title, p.Source, p.Seen, p.Detail = "ASTM B253",
			"Preparation of Aluminum Alloys for Electroplating",
			"ASTMB253", origin.SecondHand, origin.Published
		p.Steps = []string{"mild soak", "short etch", "desmut in nitric acid",
			"zincate, strip in nitric acid, zincate again",
			"cyanide copper strike and plate, live, 3 to 5 µm", "then nickel"}
		p.Reasons = []bath.Words{said("the strike-and-plate bath is the one most used on zincated aluminium",
			"Guidebook2011"),
			known("the oxide film grows at once; zinc keeps its place until copper covers")}
		p.Unsure = "castings with much silicon want fluoride in the desmut: try a hidden spot, or refuse"
	case Titanium:
		p.Standard, p.Title, p.Source, p.Detail = "ASTM B481",
			"Preparation of Titanium and Titanium Alloys for Electroplating", "ASTMB481", origin.Published
		p.Steps = []string{"clean", "pickle and etch in hydrofluoric acid, or liquid abrasive blast",
			"nickel of 1 µm or more, or acid copper or chromium, straight on",
			"1 to 4 h in argon at 540 to 800 °C after a chemical etch or a blast, to bond the nickel; then make the " +
				"nickel active again"}
		p.Reasons = []bath.Words{said("chromium, acid copper or nickel may go straight on; anything else needs 1 µm "+
			"of nickel first; the bond is mechanical", "ASTMB481")}
		p.Unsure = "it is not planned here: send it to a plater with a hydrofluoric acid line and an argon furnace"
	case Pewter, SoftSoldered:
		p.Source, p.Title, p.Seen = recall, "no published practice was seen", origin.FromMemory
		p.Steps = []string{"mild soak, short", "no strong acid, no hot caustic",
			"cyanide copper strike and plate, live",
			"then nickel or white bronze and palladium"}
		p.Reasons = []bath.Words{known("tin is soft, dissolves in strong acid and in hot caustic, and its oxide is " +
			"passive"), said("tin diffuses into gold as well", "DiffusionBarrier")}
		p.Unsure = "old lead-rich pewter may not take a coat at all: try a hidden spot, or refuse"
		if s == SoftSoldered {
			p.Unsure = "look for every joint with a glass and treat the whole piece by its softest metal; what must " +
				"stand heat or load is taken apart first"
		}
	case PaintedPlastic:
		p.Source, p.Title, p.Seen = recall, "no published practice was seen", origin.FromMemory
		p.Steps = []string{"wipe and soak cool and mild",
			"acid copper, started at a fifth of the usual current and raised as the copper covers", "then as copper"}
		p.Reasons = []bath.Words{known("the paint conducts poorly: the coat starts at the contact and burns there; " +
			"hot or caustic baths lift paint")}
		p.Unsure = "measure the paint, contact to far end; above some tens of ohms more contacts are needed"
	default:
		return Practice{}, &UnsureError{What: "the base metal is not known", Ask: identify()}
	}
	return p, nil
}
