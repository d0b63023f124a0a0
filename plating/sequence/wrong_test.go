package sequence_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

const (
	stainless = sequence.StainlessSteel
	brass     = sequence.Brass
	zinc      = sequence.ZincDieCasting
	aluminium = sequence.Aluminium
	pewter    = sequence.Pewter
	hard      = sequence.HardGold
	silver    = sequence.Silver
	nickel    = sequence.BrightNickel
)

// wrongs are plans with one mistake put in. The rules named must speak at
// warning or above, and no other.
var wrongs = []struct {
	name   string
	base   sequence.Substrate
	finish sequence.Finish
	edit   func(*line)
	want   sequence.Code
	word   string // in the finding: the right reason
}{
	{"cyanide copper straight into acid nickel", zinc, nickel, func(l *line) {
		l.remove(l.bath("copper-cyanide-build")+1,
			1)
	}, sequence.CodeCyanideAcid, "no clean rinse stage between"},
	{"one stage between cyanide and acid", zinc, nickel, func(l *line) {
		l.tanks[l.bath("copper-cyanide-build")+
			1].Rinse.Stages = 1
	}, sequence.CodeCyanideAcid, "1 clean rinse stage between"},
	{"still water between cyanide and acid", zinc, nickel, func(l *line) {
		l.tanks[l.bath("copper-cyanide-build")+
			1].Rinse.Flow = sequence.Still
	}, sequence.CodeCyanideAcid, "hydrogen cyanide"},
	{"acid dip straight into silver strike", brass, silver, func(l *line) { l.remove(l.kind(sequence.Activate)+1, 1) },
		sequence.CodeCyanideAcid, "carried into cyanide"},
	{"acid carried through hot water into cyanide", brass, silver, func(l *line) {
		i := l.kind(sequence.Activate) + 1
		l.tanks[i].Rinse.Flow = sequence.Still
		l.insert(i+1, sequence.Tank{Kind: sequence.Activate, Process: sequence.Process{Chemistry: "hot water"}},
			rinse(2, sequence.Still))
	}, sequence.CodeCyanideAcid, "carried into cyanide"},
	{"drag-out is no rinse between cyanide gold and acid", brass, sequence.Rhodium, func(l *line) {
		i := l.bath("nickel-watts")
		l.insert(i+2, plated(l.t, sequence.Underplate, "gold-cyanide-flash", 0.1*um),
			sequence.Tank{Kind: sequence.DragOut,
				Rinse: sequence.RinseSet{Stages: 2, Flow: sequence.Still}}, rinse(1, sequence.Running))
	}, sequence.CodeCyanideAcid, "carried into acid"},
	{"one rinse shared by cyanide and acid", zinc, nickel, func(l *line) {
		l.tanks[l.kind(sequence.Activate)+1].Rinse.Station = "rinse A"
		l.tanks[l.bath("copper-cyanide-build")+1].Rinse.Station = "rinse A"
	}, sequence.CodeCyanideAcid, "rinse A stands behind cyanide and behind acid"},
	{"acid rinse before cyanide", stainless, silver, func(l *line) {
		l.tanks[l.bath("nickel-strike-chloride")+1].Rinse = sequence.RinseSet{Stages: 3, Flow: sequence.Running,
			Acidified: true}
	}, sequence.CodeCyanideAcid, "carried into cyanide"},
	{"strong acid straight into acid gold strike", stainless, hard, func(l *line) {
		l.remove(l.kind(sequence.Activate)+1,
			1)
	}, sequence.CodeCyanideAcid, "below about pH 3"},

	{"acid final rinse behind cyanide silver", brass, silver, func(l *line) {
		l.remove(l.last()+2,
			1)
		l.tanks[l.kind(sequence.FinalRinse)].Rinse.Acidified = true
	}, sequence.CodeCyanideAcid, "carried into acid"},
	{"acid drag-out behind cyanide silver", brass, silver, func(l *line) { l.tanks[l.last()+1].Rinse.Acidified = true },
		sequence.CodeCyanideAcid, "carried into acid"},
	{"an acid dip called a rinse behind cyanide", zinc, nickel, func(l *line) {
		l.tanks[l.bath("copper-cyanide-build")+1].Process = sequence.Process{Chemistry: "citric acid",
			Hazards: plating.HazardAcid}
	}, sequence.CodeCyanideAcid, "carried into acid"},
	{"bound cyanide into strong acid", brass, sequence.Rhodium, func(l *line) {
		i := l.last()
		l.insert(i, plated(l.t, sequence.Underplate, "gold-acid-cobalt", 0.1*um), sequence.Tank{Kind: sequence.DragOut,
			Rinse: sequence.RinseSet{Stages: 1}})
	}, sequence.CodeCyanideAcid, "gold cyanide of"},
	{"one rinse behind free and bound cyanide", pewter, hard, func(l *line) {
		l.tanks[l.bath("copper-cyanide-build")+1].Rinse.Station = "Rinse A"
		l.tanks[l.last()+2].Rinse.Station = " rinse  a"
	}, sequence.CodeCyanideAcid, "stands behind cyanide and behind acid"},
	{"cyanide by its formula", brass, hard, func(l *line) {
		l.insert(l.kind(sequence.Activate)+2, sequence.Tank{Kind: sequence.Activate,
			Process: sequence.Process{Chemistry: "KCN, 60 g/L", Effect: sequence.EffectDeoxidise}},
			rinse(2, sequence.Running))
	}, sequence.CodeUnknown, "says cyanide, its list"},
	{"acid by the name of its tank", brass, hard, func(l *line) {
		i := l.kind(sequence.Activate)
		l.tanks[i].Name, l.tanks[i].Process.Chemistry, l.tanks[i].Process.Hazards = "hydrochloric, 10 %", "dip", 0
	}, sequence.CodeUnknown, "says acid, its list"},

	{"pewter in the oven", pewter, hard, func(l *line) {
		l.tanks = append(l.tanks, sequence.Tank{Kind: sequence.Bake, Process: sequence.Process{Chemistry: "oven"},
			Time: 8 * units.Hour})
	}, sequence.CodeBakeMelts, "melt"},
	{"a bake of a minute", sequence.HighCarbonSteel, hard, func(l *line) { l.tanks[l.kind(sequence.Bake)].Time = 60 },
		sequence.CodeNoBake, "too short"},
	{"hard steel in a cathodic dip", sequence.HighCarbonSteel, hard,
		func(l *line) { l.tanks[l.kind(sequence.Activate)].Process.Polarity = sequence.Cathodic },
		sequence.CodeEmbrittle,
		"without current"},
	{"zincate stripped again", aluminium, nickel, func(l *line) {
		i := l.bath("copper-cyanide-build")
		l.insert(i, sequence.Tank{Kind: sequence.Activate, Process: sequence.Process{Chemistry: "nitric acid",
			Effect: sequence.EffectDesmut, Hazards: plating.HazardAcid}}, rinse(2, sequence.Running))
	}, sequence.CodeNotActivated, "a zincate film"},
	{"brass cleaned behind its dip", brass, hard, func(l *line) {
		l.insert(l.kind(sequence.Activate)+2, l.tanks[0],
			rinse(2, sequence.Running))
	}, sequence.CodeNotActivated, "an acid dip"},
	{"brass left in nitric acid", brass, hard, func(l *line) {
		i := l.kind(sequence.Activate)
		l.tanks[i].Process.Chemistry, l.tanks[i].Time = "nitric acid, 50 %", 10*units.Minute
	}, sequence.CodeStrongAcid, "poisonous brown fume"},
	{"pewter in hot caustic, for how long is not said", pewter, nickel, func(l *line) {
		c := electrocleaner(sequence.Cathodic)
		c.Time = 0
		l.insert(2, c, rinse(2, sequence.Running))
	}, sequence.CodeHotCaustic, "is not said"},
	{"zinc in cold caustic for an hour", zinc, nickel, func(l *line) {
		l.tanks[0].Process.Hazards, l.tanks[0].Time = plating.HazardCaustic, units.Hour
		l.tanks[0].Process.Temperature = heatNotGiven()
	}, sequence.CodeHotCaustic, "cold only more slowly"},
	{"painted plastic in hot caustic", sequence.PaintedPlastic, nickel, func(l *line) {
		l.insert(2,
			electrocleaner(sequence.Cathodic), rinse(2, sequence.Running))
	}, sequence.CodeHotCaustic, "lifts the paint"},
	{"a second's copper strike before acid on zinc", zinc, nickel, func(l *line) {
		i := l.bath("copper-cyanide-build")
		l.tanks[i].MinThickness, l.tanks[i].Time = 0, 1
	}, sequence.CodeAttack, "through the pores"},
	{"a hundredth of a micrometre of nickel as barrier", brass, hard,
		func(l *line) { l.tanks[l.bath("nickel-watts")].MinThickness = 0.01 * um }, sequence.CodeNoBarrier,
		"without a barrier"},

	{"stainless dries between strike and gold", stainless, hard, func(l *line) {
		l.insert(l.bath("gold-acid-strike")+3,
			sequence.Tank{Kind: sequence.Dry})
	}, sequence.CodePassiveDry, "peels"},
	{"stainless waits behind the strike", stainless, hard,
		func(l *line) { l.tanks[l.bath("gold-acid-strike")].Wait = 5 * units.Minute }, sequence.CodePassiveWait,
		"waits 5 min"},
	{"zincate waits", aluminium, nickel,
		func(l *line) { l.tanks[l.bath("copper-cyanide-build")-1].Wait = 2 * units.Minute }, sequence.CodePassiveWait,
		"waits 2 min"},
	{"nickel dries under gold", brass, hard, func(l *line) {
		l.remove(l.bath("gold-acid-strike"), 3)
		l.insert(l.bath("nickel-watts")+2, sequence.Tank{Kind: sequence.Dry})
	}, sequence.CodePassiveDry, "passive film"},
	{"brass dries behind its dip", brass, hard, func(l *line) {
		l.insert(l.kind(sequence.Activate)+2,
			sequence.Tank{Kind: sequence.Dry})
	}, sequence.CodeDryEarly, "before"},

	{"gold straight on brass", brass, hard, func(l *line) { l.remove(l.bath("nickel-watts"), 2) },
		sequence.CodeNoBarrier, "copper diffuses into the gold"},
	{"white bronze as barrier", brass, hard, func(l *line) {
		l.tanks[l.bath("nickel-watts")] = plated(l.t, sequence.Underplate, "bronze-white", 2*um)
	}, sequence.CodeNoBarrier, "bronze does not"},
	{"only a nickel strike as barrier", brass, hard, func(l *line) {
		l.tanks[l.bath("nickel-watts")] = plated(l.t, sequence.Strike, "nickel-strike-chloride", 0)
	}, sequence.CodeNoBarrier, "without a barrier"},
	{"gold straight on cyanide copper over tin", pewter, hard, func(l *line) { l.remove(l.bath("nickel-watts"), 2) },
		sequence.CodeNoBarrier, "copper lies under"},
	{"silver under gold", stainless, silver, func(l *line) {
		l.piece.Finish = hard
		i := l.last()
		l.tanks[i].Kind = sequence.Underplate
		l.insert(i+3, plated(l.t, sequence.Plate, "gold-acid-cobalt", 0.1*um), sequence.Tank{Kind: sequence.DragOut,
			Rinse: sequence.RinseSet{Stages: 1}}, rinse(2, sequence.Running))
	}, sequence.CodeSilverUnderGold, "tarnishes through it"},

	{"stainless without strike", stainless, hard, func(l *line) { l.remove(l.bath("gold-acid-strike"), 2) },
		sequence.CodeNoStrike, "passive film forms again"},
	{"silver without strike", brass, silver, func(l *line) { l.remove(l.bath("silver-strike"), 1) },
		sequence.CodeNoStrike, "does not adhere"},
	{"painted plastic straight into nickel", sequence.PaintedPlastic, nickel,
		func(l *line) { l.remove(l.bath("copper-acid"), 2) }, sequence.CodeNoStrike, "cool copper bath"},
	{"zinc with pyrophosphate first", zinc, nickel, func(l *line) {
		l.tanks[l.bath("copper-cyanide-build")] = plated(l.t, sequence.Underplate, "copper-pyro", 3*um)
	}, sequence.CodeNoStrike, "covers zinc without attack"},
	{"steel straight into silver strike", sequence.LowCarbonSteel, silver, func(l *line) {
		l.remove(l.bath("nickel-watts"),
			2)
	}, sequence.CodeNoStrike, "on iron by immersion"},
	{"pewter straight into nickel", pewter, nickel, func(l *line) { l.remove(l.bath("copper-cyanide-build"), 2) },
		sequence.CodeNoStrike, "cyanide copper strike"},

	{"strike with a minimum thickness", stainless, hard,
		func(l *line) { l.tanks[l.bath("gold-acid-strike")].MinThickness = 2 * um },
		sequence.CodeStrikeBuilds, "build in the next bath"},
	{"strike for ten minutes", stainless, hard,
		func(l *line) { l.tanks[l.bath("gold-acid-strike")].Time = 10 * units.Minute }, sequence.CodeStrikeBuilds,
		"lasts 10 min"},
	{"strike bath as the finish", stainless, hard, func(l *line) {
		l.tanks[l.last()] = plated(l.t, sequence.Plate,
			"gold-acid-strike", 0.1*um)
	}, sequence.CodeStrikeBuilds, "stands where thickness is built"},
	{"ten micrometres of hard gold", brass, hard, func(l *line) { l.tanks[l.last()].MinThickness = 10 * um },
		sequence.CodeTooThick, "at most 5.08 µm"},

	{"zinc in hot electrocleaner", zinc, nickel, func(l *line) {
		l.insert(2, electrocleaner(sequence.Cathodic), rinse(2,
			sequence.Running))
	}, sequence.CodeHotCaustic, "dissolves zinc"},
	{"aluminium in hot electrocleaner", aluminium, nickel, func(l *line) {
		l.insert(2, electrocleaner(sequence.Cathodic),
			rinse(2, sequence.Running))
	}, sequence.CodeHotCaustic, "aluminium in"},
	{"aluminium etched for minutes", aluminium, nickel,
		func(l *line) { l.tanks[l.kind(sequence.Activate)].Time = 5 * units.Minute }, sequence.CodeHotCaustic,
		"for 5 min"},
	{"pewter in hot electrocleaner", pewter, nickel, func(l *line) {
		l.insert(2, electrocleaner(sequence.Cathodic),
			rinse(2, sequence.Running))
	}, sequence.CodeHotCaustic, "tin dissolves"},
	{"solder in strong acid", sequence.SoftSoldered, nickel, func(l *line) {
		l.insert(2, strongDip(), rinse(2,
			sequence.Running))
	}, sequence.CodeStrongAcid, "solder"},
	{"zinc in strong acid", zinc, nickel, func(l *line) { l.tanks[l.kind(sequence.Activate)] = strongDip() },
		sequence.CodeStrongAcid, "weak dip"},
	{"acid copper straight on pewter", pewter, nickel, func(l *line) {
		l.tanks[l.bath("copper-cyanide-build")] = plated(l.t, sequence.Underplate, "copper-acid", 3*um)
	}, sequence.CodeStrongAcid, "strong acid dissolves tin"},

	{"acid copper straight on zinc", zinc, nickel, func(l *line) {
		l.tanks[l.bath("copper-cyanide-build")] = plated(l.t, sequence.Underplate, "copper-acid", 3*um)
	}, sequence.CodeImmersion, "by immersion"},
	{"acid copper straight on steel", sequence.LowCarbonSteel, nickel, func(l *line) {
		i := l.last()
		l.insert(i, plated(l.t, sequence.Underplate, "copper-acid", 5*um), rinse(2, sequence.Running))
	}, sequence.CodeImmersion, "acid copper straight on low-carbon steel"},
	{"nickel straight on zincated aluminium", aluminium, nickel, func(l *line) {
		l.remove(l.bath("copper-cyanide-build"),
			2)
	}, sequence.CodeAttack, "dissolves the zinc"},
	{"palladium straight on brass", brass, sequence.Palladium, func(l *line) { l.remove(l.bath("nickel-watts"), 2) },
		sequence.CodeAttack, "ammonia"},
	{"rhodium straight on brass", brass, sequence.Rhodium, func(l *line) { l.remove(l.bath("nickel-watts"), 2) },
		sequence.CodeAttack, "darkens the rhodium"},

	{"zinc enters dead", zinc, nickel, func(l *line) { l.tanks[l.bath("copper-cyanide-build")].LiveEntry = false },
		sequence.CodeLiveEntry, "without current"},
	{"stainless enters dead", stainless, hard, func(l *line) { l.tanks[l.bath("gold-acid-strike")].LiveEntry = false },
		sequence.CodeLiveEntry, "current on before"},
	{"silver strike entered dead", brass, silver, func(l *line) { l.tanks[l.bath("silver-strike")].LiveEntry = false },
		sequence.CodeLiveEntry, "without current"},

	{"nickel under gold on the skin", brass, hard, func(l *line) { l.piece.SkinContact = true },
		sequence.CodeNickelSkin, "0.5 µg/cm²"},
	{"nickel in the gold on the skin", stainless, hard, func(l *line) {
		l.piece.SkinContact = true
		l.tanks[l.last()] = plated(l.t, sequence.Plate, "gold-acid-nickel", 0.1*um)
	}, sequence.CodeNickelSkin, "in the last coat"},
	{"hard steel unbaked", sequence.HighCarbonSteel, hard, func(l *line) { l.remove(l.kind(sequence.Bake), 1) },
		sequence.CodeNoBake, "12 h or more"},
	{"spring of unknown carbon unbaked", sequence.LowCarbonSteel, hard, func(l *line) { l.piece.HighStrength = true },
		sequence.CodeStrength, "hardness"},
	{"hard steel cleaned cathodically", sequence.HighCarbonSteel, hard,
		func(l *line) { l.tanks[l.kind(sequence.Electroclean)] = electrocleaner(sequence.Cathodic) },
		sequence.CodeEmbrittle,
		"clean anodically"},

	{"not cleaned", brass, hard, func(l *line) { l.remove(0, 4) }, sequence.CodeNotCleaned, "grease"},
	{"brass not dipped", brass, hard, func(l *line) { l.remove(l.kind(sequence.Activate), 2) },
		sequence.CodeNotActivated, "an acid dip"},
	{"aluminium without zincate", aluminium, nickel, func(l *line) {
		for range 2 {
			i := l.find(func(t sequence.Tank) bool { return t.Process.Effect.Has(sequence.EffectZincate) })
			l.remove(i, 2)
		}
	}, sequence.CodeNotActivated, "a zincate film"},
	{"no rinse between dip and nickel", brass, hard, func(l *line) { l.remove(l.kind(sequence.Activate)+1, 1) },
		sequence.CodeNoRinse, "drag-out spoils"},
	{"no drag-out behind gold", brass, hard, func(l *line) { l.remove(l.last()+1, 1) }, sequence.CodeNoDragOut,
		"Au down the rinse"},
	{"dried before the final rinse", brass, hard, func(l *line) {
		i := l.kind(sequence.Dry)
		l.tanks[i], l.tanks[i-1] = l.tanks[i-1], l.tanks[i]
	}, sequence.CodeDryEarly, "dried before its last water"},
	{"final rinse of tap water", brass, hard,
		func(l *line) { l.tanks[l.kind(sequence.FinalRinse)].Rinse.Deionised = false }, sequence.CodeFinalWater,
		"spots"},
	{"final rinse still", brass, hard,
		func(l *line) { l.tanks[l.kind(sequence.FinalRinse)].Rinse.Flow = sequence.Still },
		sequence.CodeFinalWater, "still water collects"},
	{"no final rinse", brass, hard, func(l *line) { l.remove(l.kind(sequence.FinalRinse), 1) },
		sequence.CodeNoFinalRinse, "0.037 g/L"},
	{"left wet", brass, hard, func(l *line) { l.remove(l.kind(sequence.Dry), 1) }, sequence.CodeNotDried, "marks"},
	{"another metal than promised", brass, hard, func(l *line) { l.piece.Finish = sequence.Palladium },
		sequence.CodeWrongFinish, "ordered is palladium"},
	{"thinner than ordered", brass, hard, func(l *line) { l.piece.MinThickness = 0.2 * um }, sequence.CodeWrongFinish,
		"ordered are 0.20 µm"},

	{"a tank of no kind", brass, hard, func(l *line) { l.insert(2, sequence.Tank{}) }, sequence.CodeUnknown,
		"cannot be judged"},
	{"a bath without a name", brass, hard, func(l *line) {
		i := l.bath("nickel-watts")
		l.tanks[i].Bath.Name = ""
	}, sequence.CodeUnknown, "by chemistry"},
	{"a dip that does not say what it is", brass, hard,
		func(l *line) { l.tanks[l.kind(sequence.Activate)].Process.Chemistry = "" }, sequence.CodeUnknown,
		"what the tank holds"},
	{"a rinse without stages", brass, hard, func(l *line) { l.tanks[1].Rinse.Stages = 0 }, sequence.CodeUnknown,
		"from 1 to 9"},
	{"cyanide in the name only", brass, sequence.FlashGold, func(l *line) { l.tanks[l.last()].Bath.Hazards = 0 },
		sequence.CodeUnknown, "says cyanide, its list"},
	{"a dip whose acid is not flagged", brass, hard,
		func(l *line) { l.tanks[l.kind(sequence.Activate)].Process.Hazards = 0 }, sequence.CodeUnknown,
		"says acid, its list"},
	{"an acid bath that is not flagged", brass, hard,
		func(l *line) { l.tanks[l.last()].Bath.Hazards = plating.HazardCyanide }, sequence.CodeUnknown,
		"says acid, its list"},
	{"an unknown metal", brass, hard, func(l *line) { l.piece.Substrate = 0 }, sequence.CodeUnknown, "magnet"},
}

func electrocleaner(p sequence.Polarity) sequence.Tank {
	return sequence.Tank{Kind: sequence.Electroclean, Time: 60,
		Process: sequence.Process{Chemistry: "alkaline electrocleaner, hot caustic", Polarity: p,
			Effect: sequence.EffectClean, Hazards: plating.HazardCaustic | plating.HazardHot, Strong: true}}
}

func strongDip() sequence.Tank {
	return sequence.Tank{Kind: sequence.Activate, Time: 15,
		Process: sequence.Process{Chemistry: "hydrochloric acid, 20 %",
			Effect: sequence.EffectDeoxidise, Hazards: plating.HazardAcid}}
}

// TestPropertyWrongSequences: each mistake is caught with its own reason, and
// nothing else is found at warning or above.
func TestPropertyWrongSequences(t *testing.T) {
	caught := 0
	rules := map[sequence.Code]bool{}
	for _, w := range wrongs {
		t.Run(w.name, func(t *testing.T) {
			p := piece(w.base, w.finish)
			l := &line{t: t, piece: p, tanks: plan(t, p)}
			w.edit(l)
			found := sequence.Check(l.tanks, l.piece)
			caught++
			rules[w.want] = true
			if got := codes(found, plating.SeverityWarning); !slices.Equal(got, []sequence.Code{w.want}) {
				t.Errorf("found %v, want %s only", found, w.want)
			}
			said := false
			for _, f := range found {
				said = said || f.Code == w.want && strings.Contains(strings.ToLower(f.String()),
					strings.ToLower(w.word))
				for _, i := range f.Tanks {
					if i < 0 || i >= len(l.tanks) {
						t.Errorf("tank %d of %d", i, len(l.tanks))
					}
				}
			}
			if !said {
				t.Errorf("no finding says %q: %v", w.word, found)
			}
			stops := w.want == sequence.CodeCyanideAcid || w.want == sequence.CodeUnknown ||
				w.want == sequence.CodeStrength
			if err := sequence.Approve(found); (err != nil) != stops {
				t.Errorf("stopped: %v, want %v", err, stops)
			}
			complete(t, found)
		})
	}
	if caught < 25 {
		t.Errorf("only %d wrong sequences", caught)
	}
	t.Logf("%d wrong sequences, %d rules", caught, len(rules))
}

// complete wants reason, remedy and source in each finding.
func complete(t *testing.T, found []sequence.Finding) {
	t.Helper()
	for _, f := range found {
		if f.Code == "" || f.Text == "" || f.Reason == "" || f.Remedy == "" || f.Source == "" {
			t.Errorf("incomplete: %+v", f)
		}
	}
}

// TestGoldOnNickel: gold on nickel has its strike in every plan; without it, also
// on nickel as base metal, that is a caution, and none where gold lies between.
func TestGoldOnNickel(t *testing.T) {
	for _, s := range []sequence.Substrate{brass, sequence.Nickel, sequence.LowCarbonSteel, sequence.SterlingSilver} {
		p := piece(s, hard)
		l := &line{t: t, piece: p, tanks: plan(t, p)}
		has := func() bool {
			return slices.ContainsFunc(sequence.Check(l.tanks, p), func(f sequence.Finding) bool {
				return f.Code == sequence.CodeNoStrike && f.Severity == plating.SeverityCaution &&
					strings.Contains(f.String(), "straight on nickel")
			})
		}
		if has() {
			t.Errorf("%s: the plan itself lays gold straight on nickel", s)
		}
		l.remove(l.bath("gold-acid-strike"), 3)
		if !has() {
			t.Errorf("%s: no word of gold straight on nickel", s)
		}
	}
	// A flash is a strike itself.
	p := piece(brass, sequence.FlashGold)
	tanks := plan(t, p)
	if slices.ContainsFunc(tanks, func(k sequence.Tank) bool { return k.Bath.Key == "gold-acid-strike" }) {
		t.Error("a strike below a flash")
	}
	for _, f := range sequence.Check(tanks, p) {
		if f.Code == sequence.CodeNoStrike {
			t.Error(f)
		}
	}
}
