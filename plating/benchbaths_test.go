package plating

import (
	"strings"
	"testing"

	"example.com/laydown/faraday"
)

// A benchBath is a bath as a shop writes it, with what its review must say: nothing, or a
// word of a severity.
type benchBath struct {
	name    string
	metal   string
	valence int
	hazards Hazard
	low     PH
	high    PH
	salt    string
	anode   string
	vessel  Vessel
	level   Severity // of the word; no meaning without one
	word    string
}

const (
	cy  = HazardCyanide
	ac  = HazardAcid
	cau = HazardCaustic
)

// sound are usual baths of the bench. Nothing is wrong with any.
func sound() []benchBath {
	return []benchBath{
		{name: "copper, acid sulfate, bright", metal: "Cu", valence: 2, hazards: ac, low: 0.3, high: 0.8,
			salt:  "CuSO4·5H2O",
			anode: "copper, phosphorised", vessel: VesselPlastic},
		{name: "nickel, Watts, bright", metal: "Ni", hazards: ac | HazardBoric, low: 4, high: 4.6,
			salt:  "NiSO4·6H2O",
			anode: "nickel", vessel: VesselPlastic},
		{name: "nickel, sulfamate", metal: "Ni", low: 3.8, high: 4.2, anode: "nickel, S-rounds",
			vessel: VesselPlastic},
		{name: "nickel, sulfate only", metal: "Ni", hazards: ac, low: 4, high: 4.5, anode: "platinised titanium"},
		{name: "nickel, chloride strike", metal: "Ni", hazards: ac | HazardHydrogenChloride, low: 0.5, high: 1,
			anode: "nickel"},
		{name: "nickel, pyrophosphate", metal: "Ni", low: 8.5, high: 9.2, anode: "nickel"},
		{name: "silver, cyanide, rack", metal: "Ag", valence: 1, hazards: cy, low: 12, high: 12.5, salt: "KAg(CN)2",
			anode: "silver", vessel: VesselPlastic},
		{name: "silver, cyanide strike", metal: "Ag", valence: 1, hazards: cy, low: 11.5, high: 12.5,
			anode:  "stainless steel",
			vessel: VesselStainless},
		{name: "silver, cyanide, pH not measured", metal: "Ag", valence: 1, hazards: cy, salt: "AgCN",
			anode: "silver"},
		{name: "silver, thiosulfate", metal: "Ag", low: 9, high: 10, anode: "silver"},
		{name: "silver, succinimide, free of cyanide", metal: "Ag", low: 8, high: 9, anode: "silver"},
		{name: "silver, methanesulfonic acid", metal: "Ag", hazards: ac, low: 0.5, high: 1.5, anode: "silver"},
		{name: "gold, neutral cyanide", metal: "Au", valence: 1, hazards: cy, low: 6, high: 7, salt: "KAu(CN)2",
			anode: "platinised titanium", vessel: VesselGlass},
		{name: "gold, neutral cyanide, phosphate", metal: "Au", valence: 1, hazards: cy, low: 5.8, high: 6.5,
			salt: "KAu(CN)2"},
		{name: "gold, alkaline cyanide", metal: "Au", valence: 1, hazards: cy, low: 10, high: 11.5,
			salt:  "KAu(CN)2",
			anode: "stainless steel", vessel: VesselStainless},
		{name: "gold, alkaline cyanide, free cyanide 10 g/L", metal: "Au", valence: 1, hazards: cy,
			low: 10.5, high: 11.5},
		{name: "gold bath 3, alkaline cyanide", metal: "Au", valence: 1, salt: "KAu(CN)2"},
		{name: "gold bath 3, listed", metal: "Au", valence: 1, hazards: cy, salt: "KAu(CN)2"},
		{name: "gold, green, silver alloy, cyanide", metal: "Au", valence: 1, hazards: cy, low: 11, high: 12},
		{name: "gold, acid cyanide, citrate", metal: "Au", valence: 1, hazards: cy | ac, low: 3.8, high: 4.4,
			salt:  "KAu(CN)2",
			anode: "platinised titanium", vessel: VesselGlass},
		{name: "gold, acid cyanide strike", metal: "Au", valence: 1, hazards: cy | ac, low: 3.2, high: 4,
			salt: "KAu(CN)2"},
		{name: "gold, acid cyanide, gold(III)", metal: "Au", valence: 3, hazards: cy | ac, low: 0.5, high: 1,
			salt: "KAu(CN)4"},
		{name: "gold, sulfite", metal: "Au", valence: 1, hazards: HazardSulfite, low: 8.5, high: 9.5},
		{name: "gold, ammonium sulfite", metal: "Au", valence: 1, hazards: HazardSulfite, low: 6.5, high: 7},
		{name: "gold, thiosulfate", metal: "Au", valence: 1, low: 5.5, high: 6.5},
		{name: "gold, thiourea", metal: "Au", valence: 1, hazards: ac, low: 2, high: 3},
		{name: "gold, weakly acid, free of cyanide", metal: "Au", valence: 1, hazards: ac, low: 5, high: 5.5},
		{name: "gold, chloride", metal: "Au", valence: 3, hazards: ac, low: 0.8, high: 1.2, salt: "HAuCl4",
			anode: "gold"},
		{name: "rhodium, sulfate", metal: "Rh", hazards: ac, low: 0.3, high: 1, anode: "platinised titanium",
			vessel: VesselGlass},
		{name: "palladium, diammine", metal: "Pd", hazards: HazardAmmonia, low: 7.5, high: 8.5,
			anode: "platinised titanium"},
		{name: "palladium, tetrammine chloride", metal: "Pd", hazards: HazardAmmonia, low: 8, high: 9,
			anode: "platinised titanium"},
		{name: "platinum, dinitro salt", metal: "Pt", hazards: ac, low: 1, high: 2, anode: "platinised titanium"},
		{name: "ruthenium, sulfamate", metal: "Ru", hazards: ac, low: 1, high: 2, anode: "platinised titanium"},
		{name: "bronze, white, cyanide and stannate", metal: "Cu", valence: 1, hazards: cy | cau,
			low: 12.8, high: 13.3,
			anode: "graphite", vessel: VesselPlastic},
		{name: "copper, cyanide strike", metal: "Cu", valence: 1, hazards: cy, low: 10.5, high: 12, salt: "CuCN",
			anode:  "copper",
			vessel: VesselSteel},
		{name: "copper, pyrophosphate", metal: "Cu", valence: 2, hazards: HazardHot, low: 8, high: 8.7,
			anode: "copper"},
		{name: "copper, alkaline, non-cyanide", metal: "Cu", valence: 2, low: 9, high: 10, anode: "copper"},
		{name: "copper, alkaline, free of cyanide", metal: "Cu", valence: 1, low: 9, high: 10, anode: "copper"},
		{name: "copper(I), thiosulfate", metal: "Cu", valence: 1, low: 7, high: 8, anode: "copper"},
		{name: "brass, cyanide", metal: "Cu", valence: 1, hazards: cy, low: 9.8, high: 10.5, salt: "CuCN",
			anode: "brass"},
		{name: "brass, cyanide, ammoniated", metal: "Cu", valence: 1, hazards: cy | HazardAmmonia,
			low: 9.5, high: 10.2,
			anode: "brass"},
		{name: "tin, acid sulfate", metal: "Sn", valence: 2, hazards: ac, low: 0.3, high: 0.8, anode: "tin"},
		{name: "tin, stannate", metal: "Sn", valence: 4, hazards: cau, low: 12.5, high: 13.5, anode: "tin",
			vessel: VesselSteel},
		{name: "zinc, acid chloride", metal: "Zn", hazards: ac, low: 5, high: 5.6, anode: "zinc"},
		{name: "zinc, alkaline, non-cyanide", metal: "Zn", hazards: cau, low: 13.5, high: 14, anode: "steel",
			vessel: VesselSteel},
		{name: "iron, chloride", metal: "Fe", hazards: ac, low: 0.8, high: 1.2, anode: "iron"},
		{name: "chromium, decorative", metal: "Cr", valence: 6, hazards: ac, low: 0.3, high: 0.8, anode: "lead"},
		{name: "nitric desmut", hazards: ac | HazardNitric, vessel: VesselPlastic},
		{name: "fluoboric acid dip", hazards: ac | HazardFluoborate, vessel: VesselPlastic},
		{name: "anodic electroclean", hazards: cau, vessel: VesselSteel},
		{name: "zincate", hazards: cau, vessel: VesselPlastic},
		{name: "mild alkaline cleaner", low: 9.5, high: 10.5, vessel: VesselAluminium},
		{name: "deoxidising dip in alcohol", vessel: VesselGlass},
	}
}

// harmful are neighbours of those that kill, maim or ruin.
func harmful() []benchBath {
	const stop, warn = SeverityStop, SeverityWarning
	return []benchBath{
		{name: "silver, fast, no free cyanide", metal: "Ag", valence: 1, hazards: cy, low: 8.5, high: 9,
			level: warn,
			word:  "Add no free cyanide"},
		{name: "silver, fast, without free cyanide", metal: "Ag", valence: 1, hazards: cy, low: 7.5, high: 9,
			level: stop,
			word:  "hydrogen cyanide"},
		{name: "silver, fast", metal: "Ag", valence: 1, hazards: cy, low: 8.5, high: 9, level: stop,
			word: "hydrogen cyanide"},
		{name: "silver, free cyanide 20 g/L", metal: "Ag", valence: 1, hazards: cy, low: 9, high: 9, level: stop,
			word: "hydrogen cyanide"},
		{name: "copper, cyanide, no free cyanide", metal: "Cu", valence: 1, hazards: cy, low: 8.5, high: 9,
			level: stop,
			word:  "hydrogen cyanide"},
		{name: "gold, alkaline cyanide", metal: "Au", valence: 1, hazards: cy, low: 7, high: 9, level: stop,
			word: "hydrogen cyanide"},
		{name: "gold, cyanide, free cyanide 15 g/L", metal: "Au", valence: 1, hazards: cy, low: 8, high: 8,
			level: stop,
			word:  "hydrogen cyanide"},
		{name: "gold, free-cyanide flash", metal: "Au", valence: 1, hazards: cy, low: 8, high: 8, level: stop,
			word: "hydrogen cyanide"},
		{name: "gold, acid, bright", metal: "Au", valence: 1, hazards: ac, low: 1.5, high: 1.5, level: stop,
			word: "Read the label of the salt"},
		{name: "copper, alkaline strike", metal: "Cu", valence: 1, hazards: cau, low: 12, high: 13, level: stop,
			word: "Read the label of the salt"},
		{name: "silver, cyanide", metal: "Ag", valence: 1, hazards: cy, low: 12, high: 12,
			vessel: VesselAluminium, level: stop,
			word: "cyanide dissolves the vessel"},
		{name: "gold, neutral cyanide", metal: "Au", valence: 1, hazards: cy, low: 6, high: 7,
			vessel: VesselAluminium, level: stop,
			word: "cyanide dissolves the vessel"},
		{name: "cleaner 4", low: 11.5, high: 12.5, vessel: VesselAluminium, level: stop, word: "eats through"},
		{name: "nickel, Watts type", metal: "Ni", hazards: ac, low: 4, high: 4.6, anode: "platinised titanium",
			level: warn,
			word:  "frees chlorine"},
		{name: "nickel, sulfate and chloride", metal: "Ni", hazards: ac, low: 4, high: 4.6, anode: "graphite",
			level: warn,
			word:  "frees chlorine"},
		{name: "zinc, acid chloride", metal: "Zn", hazards: ac, low: 5, high: 5.6, anode: "mixed oxide",
			level: warn,
			word:  "frees chlorine"},
		{name: "gold, acid cyanide", metal: "Au", valence: 1, hazards: cy | ac, low: 4, high: 4.4, anode: "iron",
			level: warn,
			word:  "steel anode"},
		{name: "gold, acid cyanide", metal: "Au", valence: 1, hazards: cy, low: 2, high: 4, level: stop,
			word: "hydrogen cyanide"},
		{name: "gold bath 3", metal: "Au", valence: 1, salt: "KAu(CN)2", level: stop, word: "Measure the pH"},
		{name: "nital, 2 %", level: stop, word: "fire"},
		{name: "HCl(10 %) and NaOCl", level: stop, word: "chlorine"},
		{name: "sulphuret of potassium in vinegar", level: stop, word: "hydrogen sulfide"},
		{name: "persulphate and KCN", level: stop, word: "explode"},
		{name: "Flußsäure", vessel: VesselGlass, level: stop, word: "etches the vessel"},
		{name: "HNO3(conc.) in alcohol", level: stop, word: "fire"},
		{name: "chloride of lime and ammonia", level: stop, word: "chloramine"},
		{name: "peroxyde d'hydrogène, acetone", level: stop, word: "fire"},
	}
}

// review returns what a review says of a bath.
func (b *benchBath) review(t *testing.T) []Note {
	t.Helper()
	s := Solution{Name: b.name, Metal: b.metal, Valence: b.valence, Hazards: b.hazards, Anode: b.anode,
		Vessel: b.vessel, PH: PHWindow{Low: b.low, High: b.high}}
	if b.salt != "" {
		f, err := faraday.ParseFormula(b.salt)
		if err != nil {
			t.Fatal(err)
		}
		s.Salts = []faraday.Formula{f}
	}
	return s.Review()
}

// TestPropertyBenchBaths: of the usual baths of the bench the review says nothing; of
// their neighbours that kill, maim or ruin it says what to do.
func TestPropertyBenchBaths(t *testing.T) {
	for _, b := range sound() {
		for _, n := range b.review(t) {
			t.Errorf("%s: %s: %s", b.name, n.Severity, n.Line())
		}
	}
	for _, b := range harmful() {
		found, all := false, ""
		for _, n := range b.review(t) {
			found = found || n.Severity == b.level && strings.Contains(n.Line(), b.word)
			all += n.Severity.String() + ": " + n.Line() + " "
		}
		if !found {
			t.Errorf("%s at pH %s: no %s says %q: %s", b.name, PHWindow{Low: b.low, High: b.high}, b.level, b.word, all)
		}
	}
}
