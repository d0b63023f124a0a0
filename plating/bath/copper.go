package bath

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// copperAcid lists the copper baths that deposit from Cu(II).
func copperAcid() []Bath {
	acid := Bath{
		Metal: "Cu", Valence: 2, Use: UseUnder | UseFinish,
		Density:      secondHand(8.92*gcc, 8.92*gcc, "EqTutorial"),
		Temperature:  memory(degC(18), degC(30)),
		Volts:        published(units.Voltage(1), 4, "Guidebook2012"),
		PH:           memory(plating.PH(0.1), 1),
		Efficiency:   noted(published(units.Efficiency(1), 1, "Guidebook2011"), "printed: essentially 100 %"),
		MaxThickness: memory(0, 100*um),
		Anode:        say("copper with phosphorus", "Guidebook2011"),
		AnodeRatio:   memory(units.Ratio(1), 2),
		Agitation:    say("air", "Guidebook2011"),
		Hazards:      plating.HazardAcid,
		Look:         []string{"bright and level, no burnt edges, no streaks below holes", "black film on the anodes even"},
		Remarks: []Words{recalled("never straight on steel, zinc or zincated aluminium: copper deposits by " +
			"immersion and does not hold")},
	}
	plain, throw := acid, acid
	plain.Salt, throw.Salt = salt("CuSO4·5H2O"), salt("CuSO4·5H2O")
	plain.Key, plain.Name = "copper-acid", "copper, acid sulfate"
	plain.Makeup = []Ingredient{
		make1("copper sulfate pentahydrate", published(195*gL, 248*gL, "Guidebook2011")),
		make1("sulfuric acid", published(30*gL, 75*gL, "Guidebook2011")),
		make1("chloride", noted(published(0.05*gL, 0.12*gL, "Guidebook2011"), "printed 50-120 ppm")),
	}
	plain.Content = noted(published(49.6*gL, 63.1*gL, "Guidebook2011"), "calculated from the printed salt")
	plain.CurrentDensity = noted(published(20*ft2, 100*ft2, "Guidebook2011"), "printed 20-100 A/ft²")
	throw.Key, throw.Name = "copper-acid-throw", "copper, acid sulfate, high throw"
	throw.Makeup = []Ingredient{
		make1("copper sulfate pentahydrate", published(60*gL, 75*gL, "Guidebook2011")),
		make1("sulfuric acid", published(187*gL, 225*gL, "Guidebook2011")),
		make1("chloride", noted(published(0.05*gL, 0.1*gL, "Guidebook2011"), "printed 50-100 ppm")),
	}
	throw.Content = noted(published(15.3*gL, 19.1*gL, "Guidebook2011"), "calculated from the printed salt")
	throw.CurrentDensity = memory(1*dm2, 4*dm2)
	return []Bath{plain, throw, {
		Key: "copper-pyro", Name: "copper, pyrophosphate", Metal: "Cu", Valence: 2, Use: UseUnder | UseFinish,
		Density: secondHand(8.92*gcc, 8.92*gcc, "EqTutorial"),
		Makeup: []Ingredient{
			make1("copper pyrophosphate trihydrate", published(52.5*gL, 84*gL, "Guidebook2012")),
			make1("potassium pyrophosphate", published(201*gL, 349*gL, "Guidebook2012")),
			make1("potassium nitrate", published(3*gL, 6*gL, "Guidebook2012")),
		},
		Content:        published(18.8*gL, 30*gL, "Guidebook2012"),
		Temperature:    noted(published(degC(43), degC(60), "Guidebook2012"), "above 60 °C it turns to orthophosphate"),
		CurrentDensity: published(1*dm2, 8*dm2, "Guidebook2012"),
		Volts:          memory(units.Voltage(2), 5),
		PH:             published(plating.PH(8), 8.7, "Guidebook2012"),
		Efficiency:     memory(units.Efficiency(0.95), 1),
		MaxThickness:   memory(0, 50*um),
		Anode:          recalled("copper, free of oxygen"),
		AnodeRatio:     memory(units.Ratio(1), 2),
		Agitation:      say("strong air", "Guidebook2012"),
		Hazards:        plating.HazardAmmonia | plating.HazardHot,
		Look:           []string{"even satin, no banding, no burnt edges"},
		Remarks: []Words{say("ammonia is lost daily; keep the ratio of pyrophosphate to copper between 7.0 and 7.5",
			"Guidebook2012"),
			say("steel wants a pyrophosphate strike first, zinc a cyanide one", "Guidebook2012")},
	}}
}

// copperCyanide lists the copper baths that deposit from Cu(I).
func copperCyanide() []Bath {
	cyanide := Bath{
		Metal: "Cu", Valence: 1, Salt: salt("CuCN"),
		Density:    secondHand(8.92*gcc, 8.92*gcc, "EqTutorial"),
		Volts:      published(units.Voltage(2), 5, "Guidebook2012"),
		PH:         memory(plating.PH(10.5), 13),
		Anode:      recalled("copper, free of oxygen"),
		AnodeRatio: memory(units.Ratio(1), 2),
		Hazards:    plating.HazardCyanide | plating.HazardCaustic | plating.HazardHot,
	}
	strike, build, fast := cyanide, cyanide, cyanide
	strike.Key, strike.Name, strike.Use = "copper-cyanide-strike", "copper, cyanide strike", UseStrike
	strike.Makeup = []Ingredient{
		make1("copper cyanide", published(30*gL, 30*gL, "Guidebook2011")),
		make1("potassium cyanide, total", published(58.5*gL, 58.5*gL, "Guidebook2011")),
		make1("potassium cyanide, free", published(11.25*gL, 15*gL, "Guidebook2011")),
		make1("potassium carbonate", published(15*gL, 15*gL, "Guidebook2011")),
		make1("Rochelle salt", published(30*gL, 30*gL, "Guidebook2011")),
		make1("potassium hydroxide", published(3.75*gL, 7.5*gL, "Guidebook2011")),
	}
	strike.Content = noted(published(21.3*gL, 21.3*gL, "Guidebook2011"), "calculated from the printed salt")
	strike.Temperature = published(degC(24), degC(66), "Guidebook2011")
	strike.CurrentDensity = published(0.5*dm2, 4*dm2, "Guidebook2011")
	strike.Efficiency = published(units.Efficiency(0.3), 0.6, "Guidebook2011")
	strike.Time = noted(published(30*units.Second, 120, "Guidebook2011"), "or until fully covered")
	strike.MaxThickness = memory(0, 1.5*um)
	strike.Agitation = say("none or mechanical", "Guidebook2011")
	strike.LiveEntry = true
	strike.Look = []string{"pink film over the whole part, recesses too", "no blisters when rubbed"}
	strike.Remarks = []Words{say("on zinc and zincated aluminium the cover must be complete before any acid bath",
		"Guidebook2011"),
		recalled("copper anodes go on dissolving: take them out when the bath rests")}

	build.Key, build.Name, build.Use = "copper-cyanide-build", "copper, cyanide strike and plate in one",
		UseStrike|UseUnder
	build.Makeup = []Ingredient{
		make1("copper cyanide", published(42*gL, 42*gL, "Guidebook2011")),
		make1("potassium cyanide, total", published(66.6*gL, 66.6*gL, "Guidebook2011")),
		make1("potassium carbonate", published(30*gL, 30*gL, "Guidebook2011")),
		make1("Rochelle salt", published(60*gL, 60*gL, "Guidebook2011")),
	}
	build.Content = noted(published(29.8*gL, 29.8*gL, "Guidebook2011"), "calculated from the printed salt")
	build.Temperature = memory(degC(40), degC(60))
	build.CurrentDensity = memory(1*dm2, 2.5*dm2)
	build.Efficiency = memory(units.Efficiency(0.4), 0.7)
	build.MaxThickness = noted(published(3*um, 5*um, "Guidebook2011"), "deposits of 3.0 to 5.0 µm")
	build.Agitation = recalled("none or mechanical")
	build.LiveEntry = true
	build.Look = []string{"even pink, no bare recesses, no blisters"}
	build.Remarks = []Words{say("the bath most used on zincated aluminium, and on zinc die castings that need more "+
		"than a strike", "Guidebook2011")}

	fast.Key, fast.Name, fast.Use = "copper-cyanide-fast", "copper, cyanide, high efficiency", UseUnder|UseFinish
	fast.Makeup = []Ingredient{
		make1("copper cyanide", noted(published(60*gL, 75*gL, "Guidebook2011"), "60 with potassium, 75 with sodium salts")),
		make1("cyanide, free", published(15*gL, 15*gL, "Guidebook2011")),
		make1("potassium or sodium hydroxide", published(15*gL, 15*gL, "Guidebook2011")),
		make1("Rochelle salt", published(45*gL, 45*gL, "Guidebook2011")),
	}
	fast.Content = noted(published(42.6*gL, 53.2*gL, "Guidebook2011"), "calculated from the printed salt")
	fast.Temperature = published(degC(60), degC(71), "Guidebook2011")
	fast.CurrentDensity = noted(published(0, 80*ft2, "Guidebook2011"), "printed up to 80 A/ft²")
	fast.Efficiency = published(units.Efficiency(0.9), 0.99, "Guidebook2011")
	fast.MaxThickness = memory(0, 50*um)
	fast.Agitation = say("mechanical, solution or air", "Guidebook2011")
	fast.Look = []string{"even, no red dull recesses"}
	fast.Remarks = []Words{recalled("behind a cyanide strike, straight from it: both are cyanide")}
	return []Bath{strike, build, fast}
}
