package bath

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// silver lists the cyanide silver bath and its strike.
func silver() []Bath {
	return []Bath{{
		Key: "silver-strike", Name: "silver, cyanide strike", Metal: "Ag", Valence: 1, Salt: salt("KAg(CN)2"),
		Use: UseStrike, Density: secondHand(10.5*gcc, 10.5*gcc, "EqTutorial"),
		Makeup: []Ingredient{
			make1("silver", noted(secondHand(0, 5*gL, "SilverStrikeThread"), "typically 5 g/L or less")),
			make1("potassium cyanide", secondHand(60*gL, 60*gL, "SilverStrikeThread")),
		},
		Content:        noted(secondHand(0, 5*gL, "SilverStrikeThread"), "typically 5 g/L or less"),
		Temperature:    memory(degC(18), degC(30)),
		CurrentDensity: noted(memory(0.7*dm2, 2.5*dm2), "0.7 A/dm² second hand [SilverStrikeThread], the rest from memory"),
		Volts:          memory(units.Voltage(4), 6),
		PH:             memory(plating.PH(11.5), 13),
		Efficiency:     memory(units.Efficiency(0.2), 0.6),
		Time:           memory(8*units.Second, 25),
		MaxThickness:   memory(0, 0.25*um),
		Anode:          recalled("stainless steel, or silver"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 2),
		Agitation:  recalled("none, or move the part"),
		Hazards:    plating.HazardCyanide, LiveEntry: true,
		Look: []string{"white film over the whole part within seconds",
			"no grey, loose film: that is silver by immersion; strip it"},
		Remarks: []Words{heard("low silver and much cyanide keep silver from depositing by itself on the base metal, "+
			"which would not hold", "SilverStrikeThread")},
	}, {
		Key: "silver-cyanide", Name: "silver, cyanide, rack", Metal: "Ag", Valence: 1, Salt: salt("KAg(CN)2"),
		Use:     UseFinish | UseUnder,
		Density: secondHand(10.5*gcc, 10.5*gcc, "EqTutorial"),
		Makeup: []Ingredient{
			make1("silver as potassium silver cyanide", published(15*gL, 40*gL, "Guidebook2012")),
			make1("potassium cyanide, free", published(12*gL, 120*gL, "Guidebook2012")),
			make1("potassium carbonate, at least", published(15*gL, 0, "Guidebook2012")),
		},
		Content:        published(15*gL, 40*gL, "Guidebook2012"),
		Temperature:    published(degC(20), degC(30), "Guidebook2012"),
		CurrentDensity: published(0.5*dm2, 4*dm2, "Guidebook2012"),
		Volts:          published(units.Voltage(0.5), 2, "Guidebook2012"),
		PH:             memory(plating.PH(11.5), 13),
		Efficiency:     memory(units.Efficiency(0.98), 1),
		MaxThickness:   memory(0, 40*um),
		Anode:          recalled("silver, bagged"),
		AnodeRatio:     memory(units.Ratio(1), 2),
		Agitation:      recalled("move the part"),
		Hazards:        plating.HazardCyanide,
		Look:           []string{"even white, no streaks, no burnt edges", "anodes clean, neither black nor crusted"},
		Remarks: []Words{
			recalled("always behind a silver strike, straight from it without rinsing: both are cyanide")},
	}}
}
