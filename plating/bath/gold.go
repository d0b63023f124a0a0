package bath

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// goldCyanide lists the gold baths with cyanide, free or complexed, above pH 6.
// Each figure carries its own source, since one recipe is put together from several:
// "published" was read in print, "secondHand" quotes another print, "memory" was read nowhere.
// A note keeps the figure as printed where it was converted, so that the conversion can be
// checked.
func goldCyanide() []Bath {
	return []Bath{{
		Key: "gold-cyanide-flash", Name: "gold, alkaline cyanide, 24 karat flash", Metal: "Au", Valence: 1,
		Salt: salt("KAu(CN)2"), Use: UseFinish | UseStrike,
		Density: memory(19*gcc, 19.3*gcc),
		Makeup: []Ingredient{
			make1("gold as potassium gold cyanide", published(1.25*gL, 2*gL, "Guidebook2012")),
			make1("potassium cyanide, free", published(7.5*gL, 7.5*gL, "Guidebook2012")),
			make1("dipotassium phosphate", published(15*gL, 15*gL, "Guidebook2012")),
		},
		Content:        published(1.25*gL, 2*gL, "Guidebook2012"),
		Temperature:    noted(published(degF(140), degF(160), "Guidebook2012"), "printed 140-160 °F"),
		CurrentDensity: noted(published(10*ft2, 40*ft2, "Guidebook2012"), "printed 10-40 A/ft²"),
		Volts:          memory(units.Voltage(3), 6),
		PH:             published(plating.PH(10), 11, "Guidebook2011"),
		Efficiency: noted(memory(units.Efficiency(0.2), 0.6),
			"not printed; 2 µin in 5 s at 40 A/ft² would be 22 %, 5 µin in 30 s at 10 A/ft² 37 %"),
		Time:         published(5*units.Second, 30, "Guidebook2011"),
		MaxThickness: noted(published(2*uin, 5*uin, "Guidebook2011"), "printed 0.000002 to 0.000005 in"),
		Anode:        say("stainless steel 316", "Guidebook2011"), AnodeKind: InsolubleAnode,
		AnodeRatio: published(units.Ratio(1), 3, "Guidebook2011"),
		Agitation:  recalled("move the part"),
		Hazards:    plating.HazardCyanide | plating.HazardHot,
		Look:       []string{"even colour, no bare spots", "colour against the master sample, in the same light"},
		Remarks: []Words{
			say("free cyanide, temperature and current density all shift the colour; above 160 °F cyanide breaks down fast",
				"Guidebook2011"),
			say("thinner than 7 microinch it may only be called flash or wash", "Guidebook2011"),
		},
	}, {
		Key: "gold-neutral", Name: "gold, neutral cyanide, soft and pure", Metal: "Au", Valence: 1, Salt: salt("KAu(CN)2"),
		Use:            UseFinish,
		Density:        memory(19*gcc, 19.3*gcc),
		Content:        memory(8*gL, 15*gL),
		Temperature:    memory(degC(55), degC(75)),
		CurrentDensity: memory(0.1*dm2, 0.5*dm2),
		Volts:          memory(units.Voltage(1.5), 3),
		PH:             memory(plating.PH(6), 8),
		Efficiency:     memory(units.Efficiency(0.9), 0.98),
		MaxThickness: noted(published(20*uin, 200*uin, "Guidebook2011"),
			"class of high-purity soft gold, 20 to 200 microinch"),
		Anode: recalled("platinised titanium"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 4),
		Agitation:  recalled("strong: stir or pump, move the part"),
		Hazards:    plating.HazardCyanide | plating.HazardHot,
		Look:       []string{"matt to satin yellow, no red or brown edges"},
		Remarks: []Words{say("neutral cyanide gold is for high-purity gold, industrial and refinishing",
			"Guidebook2011")},
	}}
}

// hard is the deposit of an acid gold bath with a brightening metal.
func hard(symbol string) []Constituent {
	return []Constituent{{"Au", 1, 0.995}, {symbol, 2, 0.0025}, {"", 0, 0.0025}}
}

// goldOther lists the acid and cyanide-free gold baths.
func goldOther() []Bath {
	mix := recalled("99.5 % gold, 0.25 % brightening metal (printed, about), 0.25 % built in without charge")
	return []Bath{{
		Key: "gold-acid-cobalt", Name: "gold, acid cyanide, cobalt hardened", Metal: "Au", Valence: 1,
		Salt: salt("KAu(CN)2"), Use: UseFinish,
		Deposit: hard("Co"), Composition: mix,
		Density: published(16*gcc, 17*gcc, "GoldBulletinPlating"),
		Makeup: []Ingredient{
			make1("gold as potassium gold cyanide", published(4*gL, 8*gL, "Guidebook2011")),
			make1("conducting salts", published(120*gL, 120*gL, "Guidebook2011")),
			make1("cobalt", published(0.5*gL, 0.5*gL, "Guidebook2011")),
		},
		Content:        published(4*gL, 8*gL, "Guidebook2011"),
		Temperature:    noted(published(degF(80), degF(90), "Guidebook2011"), "printed 80-90 °F"),
		CurrentDensity: noted(published(10*ft2, 20*ft2, "Guidebook2011"), "printed 10-20 A/ft²"),
		Volts: noted(published(units.Voltage(5), 6, "Guidebook2012"),
			"printed for acid gold at 10-30 A/ft²; small tanks show less"),
		PH: published(plating.PH(4.4), 4.8, "Guidebook2011"),
		Efficiency: noted(memory(units.Efficiency(0.25), 0.45),
			"falls with cobalt, with lower pH and with rising current density"),
		MaxThickness: noted(published(20*uin, 200*uin, "Guidebook2011"), "class of hard bright gold, 20 to 200 microinch"),
		Anode:        recalled("platinised titanium"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 4),
		Agitation:  say("required", "Guidebook2011"),
		Hazards:    plating.HazardCyanide | plating.HazardAcid | plating.HazardCobalt,
		Look:       []string{"bright, even yellow, no haze or brown edges", "gassing even over the part"},
		Remarks: []Words{
			say("hardened acid gold at pH 3.5 to 5 holds about 0.25 % base metal and is lighter than pure gold",
				"GoldBulletinPlating"),
			heard("the gold complex breaks down below about pH 3 and gives off hydrogen cyanide", "GoldCyanidePatent"),
			recalled("bench practice runs weaker current, about 0.5 A/dm² near 38 °C, outside the printed ranges"),
		},
	}, {
		Key: "gold-acid-nickel", Name: "gold, acid cyanide, nickel hardened, pale yellow", Metal: "Au", Valence: 1,
		Salt: salt("KAu(CN)2"), Use: UseFinish,
		Deposit: hard("Ni"), Composition: mix,
		Density: published(16*gcc, 17*gcc, "GoldBulletinPlating"),
		Makeup: []Ingredient{
			make1("gold as potassium gold cyanide", published(4*gL, 8*gL, "Guidebook2011")),
			make1("conducting salts", published(120*gL, 120*gL, "Guidebook2011")),
			make1("nickel", published(1*gL, 3*gL, "Guidebook2011")),
		},
		Content:        published(4*gL, 8*gL, "Guidebook2011"),
		Temperature:    noted(published(degF(90), degF(100), "Guidebook2011"), "printed 90-100 °F"),
		CurrentDensity: noted(published(10*ft2, 20*ft2, "Guidebook2011"), "printed 10-20 A/ft²"),
		Volts:          published(units.Voltage(5), 6, "Guidebook2012"),
		PH:             published(plating.PH(4), 4.2, "Guidebook2011"),
		Efficiency:     memory(units.Efficiency(0.25), 0.45),
		MaxThickness: noted(published(20*uin, 400*uin, "Guidebook2011"),
			"class of heavy decorative alloy, 20 to over 400 microinch"),
		Anode: recalled("platinised titanium"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 4),
		Agitation:  say("required", "Guidebook2011"),
		Hazards:    plating.HazardCyanide | plating.HazardAcid | plating.HazardNickel,
		Look:       []string{"bright, even pale yellow, no haze or brown edges", "colour against the master sample"},
		Remarks: []Words{
			recalled("nickel is in the deposit: not for pieces that are worn on the skin"),
			heard("the gold complex breaks down below about pH 3 and gives off hydrogen cyanide", "GoldCyanidePatent"),
		},
	}, goldOneStrike(), goldThreeStrike(), {
		Key: "gold-sulfite", Name: "gold, sulfite, free of cyanide", Metal: "Au", Valence: 1, Use: UseFinish,
		Density:        memory(19*gcc, 19.3*gcc),
		Content:        memory(8*gL, 15*gL),
		Temperature:    memory(degC(40), degC(60)),
		CurrentDensity: memory(0.1*dm2, 0.5*dm2),
		Volts:          memory(units.Voltage(1), 3),
		PH:             memory(plating.PH(8), 10),
		Efficiency:     memory(units.Efficiency(0.95), 1),
		MaxThickness:   memory(0, 10*um),
		Anode:          recalled("platinised titanium"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 2),
		Agitation:  recalled("stir; move the part"),
		Hazards:    plating.HazardSulfite | plating.HazardHot,
		Look:       []string{"bath clear, no red or brown cloud (the complex breaks down)", "bright even yellow"},
		Remarks: []Words{say("gold without cyanide is generally sulfite", "Guidebook2011"),
			recalled("acid carried in breaks the complex and sets sulfur dioxide free: keep pH above 8")},
	}}
}

// goldOneStrike is the strike of gold(I) cyanide in weak acid.
func goldOneStrike() Bath {
	return Bath{
		Key: "gold-acid-strike", Name: "gold, acid cyanide strike, gold(I)", Metal: "Au", Valence: 1, Use: UseStrike,
		Salt:           salt("KAu(CN)2"),
		Density:        memory(19*gcc, 19.3*gcc),
		Content:        memory(0.5*gL, 2*gL),
		Temperature:    memory(degC(20), degC(50)),
		CurrentDensity: memory(1*dm2, 5*dm2),
		Volts:          memory(units.Voltage(4), 6),
		PH: noted(memory(plating.PH(3.2), 4),
			"the complex breaks down below about 3; the low end leaves room for the error of the meter"),
		Efficiency:   memory(units.Efficiency(0.05), 0.15),
		Time:         memory(15*units.Second, 60),
		MaxThickness: memory(0, 0.25*um),
		Anode:        recalled("platinised titanium"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 4),
		Agitation:  recalled("move the part"),
		Hazards:    plating.HazardCyanide | plating.HazardAcid, LiveEntry: true,
		Look: []string{"gas over the whole part at once",
			"a complete, thin yellow film; strip and start again if any spot is bare"},
		Remarks: []Words{
			heard("the gold(I) complex breaks down below about pH 3 to gold cyanide and hydrogen cyanide",
				"GoldCyanidePatent"),
			recalled("for nickel that is fresh and wet, and for stainless steel that was activated right before; it does " +
				"not build thickness"),
		},
	}
}

// goldThreeStrike is the strike of gold(III) cyanide in strong acid.
func goldThreeStrike() Bath {
	return Bath{
		Key: "gold-acid-strike-3", Name: "gold, strongly acid cyanide strike, gold(III)", Metal: "Au", Valence: 3,
		Use: UseStrike, Salt: salt("KAu(CN)4"),
		Density:        memory(19*gcc, 19.3*gcc),
		Content:        memory(1*gL, 4*gL),
		Temperature:    memory(degC(20), degC(45)),
		CurrentDensity: memory(1*dm2, 5*dm2),
		Volts:          memory(units.Voltage(3), 6),
		PH:             memory(plating.PH(0.3), 2),
		Efficiency:     memory(units.Efficiency(0.05), 0.3),
		Time:           memory(15*units.Second, 120),
		MaxThickness:   memory(0, 0.25*um),
		Anode:          recalled("platinised titanium"), AnodeKind: InsolubleAnode,
		AnodeRatio: memory(units.Ratio(1), 4),
		Agitation:  recalled("move the part"),
		Hazards:    plating.HazardCyanide | plating.HazardAcid, LiveEntry: true,
		Look: []string{"gas over the whole part at once",
			"a complete, thin yellow film; strip and start again if any spot is bare"},
		Remarks: []Words{
			say("strong acid can free hydrogen cyanide from this complex too: extraction always on", "AuricCyanide"),
			recalled("the acid takes the passive film of stainless steel and nickel, the gold covers before it grows " +
				"again; it does not build thickness"),
			recalled("three electrons lay one gold atom: the metal for a charge is a third of that of a gold(I) bath; feed " +
				"it with its own salt only"),
		},
	}
}
