package bath

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// white lists palladium, rhodium and white bronze.
func white() []Bath {
	palladium := Bath{
		Metal: "Pd", Valence: 2, Use: UseUnder | UseFinish,
		Density:      secondHand(12*gcc, 12*gcc, "EqTutorial"),
		Content:      published(10*gL, 20*gL, "PalladiumFeature"),
		Volts:        memory(units.Voltage(1.5), 4),
		MaxThickness: memory(0, 5*um),
		Anode:        say("platinised", "PalladiumFeature"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 2),
		Agitation:  recalled("stir; move the part"),
		Hazards:    plating.HazardAmmonia,
		Look:       []string{"white, even, no cracks under the glass"},
	}
	salt, chloride := palladium, palladium
	salt.Key, salt.Name = "palladium-sulfamate", "palladium, diammine nitrite and sulfamate"
	salt.Makeup = []Ingredient{
		make1("palladium", published(10*gL, 20*gL, "PalladiumFeature")),
		make1("ammonium sulfamate", published(100*gL, 100*gL, "PalladiumFeature")),
	}
	salt.Temperature = published(degC(25), degC(35), "PalladiumFeature")
	salt.CurrentDensity = published(0.1*dm2, 2*dm2, "PalladiumFeature")
	salt.PH = published(plating.PH(7.5), 8.5, "PalladiumFeature")
	salt.Efficiency = noted(memory(units.Efficiency(0.9), 1), "keep it high: hydrogen cracks the deposit")
	salt.Remarks = []Words{say("keep the efficiency high, or hydrogen in the deposit cracks it", "PalladiumFeature")}
	chloride.Key, chloride.Name = "palladium-chloride", "palladium, tetrammine chloride"
	chloride.Makeup = []Ingredient{
		make1("palladium", published(10*gL, 20*gL, "PalladiumFeature")),
		make1("ammonium chloride", published(60*gL, 90*gL, "PalladiumFeature")),
	}
	chloride.Temperature = published(degC(25), degC(50), "PalladiumFeature")
	chloride.CurrentDensity = published(0.1*dm2, 2.5*dm2, "PalladiumFeature")
	chloride.PH = published(plating.PH(8), 9.5, "PalladiumFeature")
	chloride.Efficiency = memory(units.Efficiency(0.85), 0.98)
	chloride.Remarks = []Words{say("nickel strike first: ammonia and chloride attack copper alloys", "PalladiumFeature")}
	return []Bath{salt, chloride, {
		Key: "rhodium-sulfate", Name: "rhodium, sulfate, decorative", Metal: "Rh", Valence: 3, Use: UseFinish,
		Density: secondHand(12.5*gcc, 12.5*gcc, "EqTutorial"),
		Makeup:  []Ingredient{make1("rhodium as sulfate", noted(secondHand(2*gL, 2*gL, "RhodiumRecipe"), "around 2 g/L"))},
		Content: noted(secondHand(2*gL, 2*gL, "RhodiumRecipe"), "around 2 g/L"),

		Temperature:    noted(secondHand(degF(110), degF(125), "RhodiumRecipe"), "printed 110-125 °F"),
		CurrentDensity: noted(secondHand(10*ft2, 100*ft2, "RhodiumRecipe"), "printed 10-100 A/ft²"),
		Volts:          memory(units.Voltage(2.5), 3.5),
		PH:             memory(plating.PH(0.1), 1),
		Efficiency: noted(published(units.Efficiency(0.08), 0.12, "RhodiumEfficiency"),
			"usually, under normal conditions; up to 0.75 was seen with ultrasound"),
		Time:         memory(30*units.Second, 90),
		MaxThickness: memory(0, 0.5*um),
		Anode:        heard("platinum", "RhodiumRecipe"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 3),
		Agitation:  recalled("move the part gently"),
		Hazards:    plating.HazardAcid,
		Look: []string{"blue-white mirror, no yellow or grey cloud",
			"dark edges mean too much current, a dull face too little"},
		Remarks: []Words{
			heard("more acid lowers the efficiency slightly; acid first, then rhodium, or it hydrolyses", "RhodiumRecipe"),
			heard("iron or nickel over 500 ppm, copper over 7 to 8, lead over 3 to 5, silver over 2 spoil the colour",
				"RhodiumProblems"),
		},
	}, {
		Key: "bronze-white", Name: "bronze, white, cyanide and stannate", Metal: "Cu", Valence: 1,
		Use: UseUnder | UseFinish, Deposit: []Constituent{{"Cu", 1, 0.55}, {"Sn", 4, 0.45}},
		Composition: recalled("55 % copper, 45 % tin; white begins above 20 % tin [BronzeColumn]"),
		Density:     memory(8.4*gcc, 8.8*gcc),
		Makeup: []Ingredient{
			make1("sodium stannate", published(100*gL, 100*gL, "BronzeColumn")),
			make1("copper cyanide", published(12*gL, 12*gL, "BronzeColumn")),
			make1("sodium cyanide, free", published(16*gL, 16*gL, "BronzeColumn")),
			make1("sodium hydroxide, free", published(15*gL, 15*gL, "BronzeColumn")),
		},
		Content:     noted(published(8.5*gL, 8.5*gL, "BronzeColumn"), "copper, calculated from the printed salt"),
		Temperature: noted(published(degF(140), degF(160), "BronzeColumn"), "printed 140-160 °F"),
		CurrentDensity: noted(published(20*ft2, 50*ft2, "BronzeColumn"),
			"printed 20-50 A/ft²; white baths are run at 0.5 to 3 A/dm² (from memory)"),
		Volts:        memory(units.Voltage(2), 4),
		PH:           memory(plating.PH(12.5), 13.5),
		Efficiency:   memory(units.Efficiency(0.4), 0.7),
		MaxThickness: memory(0, 5*um),
		Anode:        recalled("stainless steel or graphite"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 2),
		Agitation:  recalled("move the part"),
		Hazards:    plating.HazardCyanide | plating.HazardCaustic | plating.HazardHot,
		Look:       []string{"white, even; yellow tells of too much copper"},
		Remarks: []Words{say("used in place of nickel; it runs from copper colour to white above 20 % tin", "BronzeColumn"),
			say("bronze is no barrier against copper moving into gold", "DiffusionBarrier")},
	}}
}
