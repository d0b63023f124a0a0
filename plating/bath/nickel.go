package bath

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// nickel lists the nickel baths and the strike for passive metals.
func nickel() []Bath {
	watts := Bath{
		Metal: "Ni", Valence: 2, Use: UseUnder | UseFinish, Salt: salt("NiSO4·6H2O"),
		Density:        secondHand(8.90*gcc, 8.90*gcc, "EqTutorial"),
		Temperature:    published(degC(40), degC(65), "NickelEncyclopaedia"),
		CurrentDensity: published(2*dm2, 10*dm2, "NickelEncyclopaedia"),
		Volts:          published(units.Voltage(4), 8, "Guidebook2012"),
		PH: noted(published(plating.PH(4.7), 5.1, "NickelEncyclopaedia"),
			"handbooks more often give 3.5 to 4.5 (from memory)"),
		Efficiency:   noted(published(units.Efficiency(0.93), 0.95, "NickelMinutes"), "working efficiency, about"),
		MaxThickness: memory(0, 50*um),
		Anode:        say("nickel", "NickelEncyclopaedia"),
		AnodeRatio:   memory(units.Ratio(2), 2),
		Agitation:    say("air or moving rod", "NickelEncyclopaedia"),
		Hazards:      plating.HazardNickel | plating.HazardAcid | plating.HazardBoric | plating.HazardHot,
		Look: []string{"even, bright to the recesses; no pits (gas), no burnt edges",
			"go on wet: a nickel face that waits grows passive"},
		Remarks: []Words{recalled("peroxide, wetting agent and brightener as the analysis says; iron and copper darken " +
			"the recesses")},
	}
	bright := watts
	bright.Key, bright.Name = "nickel-watts", "nickel, Watts, bright"
	bright.Makeup = []Ingredient{
		make1("nickel sulfate hexahydrate", published(150*gL, 300*gL, "NickelEncyclopaedia")),
		make1("nickel chloride hexahydrate", published(60*gL, 150*gL, "NickelEncyclopaedia")),
		make1("boric acid", published(37*gL, 52*gL, "NickelEncyclopaedia")),
	}
	bright.Content = noted(published(48.3*gL, 104*gL, "NickelEncyclopaedia"), "calculated from the printed salts")
	semi := watts
	semi.Key, semi.Name = "nickel-semibright", "nickel, Watts, semi-bright"
	semi.Makeup = []Ingredient{
		make1("nickel sulfate hexahydrate", published(225*gL, 300*gL, "NickelEncyclopaedia")),
		make1("nickel chloride hexahydrate", published(30*gL, 45*gL, "NickelEncyclopaedia")),
		make1("boric acid", published(37*gL, 52*gL, "NickelEncyclopaedia")),
	}
	semi.Content = noted(published(57.6*gL, 78.1*gL, "NickelEncyclopaedia"), "calculated from the printed salts")
	semi.Look = []string{"even, satin, no pits, no burnt edges", "go on wet: a nickel face that waits grows passive"}
	return []Bath{bright, semi, {
		Key: "nickel-strike-chloride", Name: "nickel, chloride and hydrochloric acid strike", Metal: "Ni", Valence: 2,
		Use: UseStrike, Salt: salt("NiCl2·6H2O"),
		Density: secondHand(8.90*gcc, 8.90*gcc, "EqTutorial"),
		Makeup: []Ingredient{
			make1("nickel chloride", noted(secondHand(240*gL, 240*gL, "NickelStrikeArticle"),
				"taken as the hexahydrate; the article does not say")),
			make1("hydrochloric acid, concentrated", noted(secondHand(40*gL, 40*gL, "NickelStrikeArticle"),
				"other prints give three times as much")),
		},
		Content: noted(secondHand(59.3*gL, 80*gL, "NickelStrikeArticle"),
			"calculated from 240 g/L of the hexahydrate; upper limit printed 70 to 80 g/L"),
		Temperature: noted(secondHand(degF(70), degF(90), "NickelStrikeArticle"), "printed 70-90 °F"),
		CurrentDensity: noted(published(50*ft2, 225*ft2, "Guidebook2013"),
			"prints disagree: 50 A/ft² for nickel-chromium alloys and 150-225 for nickel on one page; an article gives "+
				"10-45 [NickelStrikeArticle]"),
		Volts:        memory(units.Voltage(3), 6),
		PH:           memory(plating.PH(0.1), 1),
		Efficiency:   noted(memory(units.Efficiency(0.1), 0.5), "poor, says the article"),
		Time:         secondHand(30*units.Second, 120, "NickelStrikeArticle"),
		MaxThickness: memory(0, 1*um),
		Anode:        heard("nickel", "NickelStrikeArticle"),
		AnodeRatio:   memory(units.Ratio(1), 2),
		Agitation:    recalled("none, or move the part"),
		Hazards:      plating.HazardNickel | plating.HazardAcid | plating.HazardHydrogenChloride, LiveEntry: true,
		Look:    []string{"strong gas over the whole part at once", "complete grey film; go on at once, wet"},
		Remarks: []Words{recalled("the acid takes the passive film, the nickel covers before it can grow again")},
	}}
}
