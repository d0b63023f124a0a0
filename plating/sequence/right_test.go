package sequence_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// TestPropertyEveryPlan: for every base metal, finish, skin and strength a plan
// comes that its own check lets pass with cautions at most, or a typed refusal.
// Cards and layers can be made of it, and a job estimated.
func TestPropertyEveryPlan(t *testing.T) {
	testdata.SlowOnly(t)
	plans := 0
	for _, s := range sequence.Substrates() {
		for _, f := range sequence.Finishes() {
			for _, skin := range []bool{false, true} {
				p := piece(s, f)
				p.SkinContact = skin
				if s == sequence.Titanium {
					continue // not planned: TestPropertyTitanium
				}
				if s == sequence.LowCarbonSteel {
					p.Tensile = 1100 * units.Megapascal
				}
				tanks, found, err := sequence.Plan(p)
				if refuse := skin && (f == sequence.BrightNickel || f == sequence.PaleGold); refuse {
					var e *sequence.RefusedError
					if !errors.As(err, &e) || e.Reason == "" || e.Remedy == "" || e.Source != "NickelRelease" {
						t.Errorf("%s, %s on skin: %v", s, f, err)
					}
					continue
				}
				if err != nil {
					t.Fatalf("%s, %s, skin %v: %v", s, f, skin, err)
				}
				plans++
				if w := sequence.Worst(found); w > plating.SeverityCaution {
					t.Errorf("%s, %s, skin %v: %v", s, f, skin, found)
				}
				complete(t, found)
				last := tanks[len(tanks)-1].Kind
				hard := s == sequence.HighCarbonSteel || s == sequence.LowCarbonSteel
				if hard != (last == sequence.Bake) || !hard && last != sequence.Dry {
					t.Errorf("%s ends with %s", s, last)
				}
				cards, err := sequence.Cards(tanks, p)
				if err != nil {
					t.Errorf("%s, %s: %v", s, f, err)
				}
				for _, c := range cards {
					if c.Text() == "" || c.Kind == sequence.Plate && (c.Amps <= 0 || c.Time.Low <= 0 ||
						len(c.Look) == 0 || len(c.Cautions) == 0 && f != sequence.SulfiteGold) {
						t.Errorf("%s, %s: card %d is empty: %+v", s, f, c.Number, c)
					}
				}
				layers, err := sequence.Layers(tanks, p)
				if err != nil {
					t.Errorf("%s, %s: %v", s, f, err)
					continue
				}
				job := plating.System{Name: p.Name, Substrate: s.String(),
					Parts: []plating.Item{{Count: 1, Area: p.Area}}, Layers: layers}
				res, err := plating.EstimateSystem(job)
				if err != nil {
					t.Errorf("%s, %s: %v", s, f, err)
					continue
				}
				end := res.Layers[len(res.Layers)-1]
				if end.Result.Thinnest < p.MinThickness*(1-1e-9) ||
					end.Result.Warnings.Has(plating.WarnMinThicknessMissed) {
					t.Errorf("%s, %s: %s of %s promised", s, f, end.Result.Thinnest, p.MinThickness)
				}
			}
		}
	}
	if plans < 300 {
		t.Errorf("only %d plans", plans)
	}
}

// rights are lines as shops run them that differ from the plans; none has a
// mistake, and nothing may be found at warning or above.
var rights = []struct {
	name   string
	base   sequence.Substrate
	finish sequence.Finish
	edit   func(*line)
}{
	{"two cleaners without water between", brass, hard, func(l *line) { l.remove(1, 1) }},
	{"spray rinses", brass, hard, func(l *line) {
		for i := range l.tanks {
			if l.tanks[i].Kind == sequence.Rinse {
				l.tanks[i].Rinse = sequence.RinseSet{Stages: 2, Flow: sequence.Spray}
			}
		}
	}},
	{"one rinse stage where no cyanide is", brass, nickel, func(l *line) {
		for i := range l.tanks {
			if l.tanks[i].Kind == sequence.Rinse {
				l.tanks[i].Rinse = sequence.RinseSet{Stages: 1, Flow: sequence.Running}
			}
		}
	}},
	{"stainless activated and struck in one", stainless, silver,
		func(l *line) { l.remove(l.kind(sequence.Activate), 2) }},
	{"stainless dried, then struck in acid", stainless, hard, func(l *line) {
		l.tanks[l.bath("gold-acid-strike")] = plated(l.t, sequence.Strike, "gold-acid-strike-3", 0)
		l.insert(l.kind(sequence.Activate)+2, sequence.Tank{Kind: sequence.Dry})
	}},
	{"nickel dried and made active again", brass, hard, func(l *line) {
		i := l.bath("nickel-watts") + 2
		l.insert(i, sequence.Tank{Kind: sequence.Dry}, plated(l.t, sequence.Strike, "nickel-strike-chloride", 0),
			rinse(2, sequence.Counterflow))
	}},
	{"short hand-over behind the strike", stainless, hard,
		func(l *line) { l.tanks[l.bath("gold-acid-strike")].Wait = 10 }},
	{"brass waits wet behind its dip", brass, hard, func(l *line) {
		l.tanks[l.kind(sequence.Activate)+
			1].Wait = 2 * units.Minute
	}},
	{"copper strike and copper bath of one chemistry", zinc, nickel, func(l *line) {
		l.insert(l.bath("copper-cyanide-build")+1, plated(l.t, sequence.Underplate, "copper-cyanide-fast", 10*um))
	}},
	{"acid copper over cyanide copper on zinc", zinc, nickel, func(l *line) {
		l.insert(l.bath("copper-cyanide-build")+2, plated(l.t, sequence.Underplate, "copper-acid", 10*um), rinse(2,
			sequence.Counterflow))
	}},
	{"copper and nickel on steel", sequence.LowCarbonSteel, hard, func(l *line) {
		l.insert(l.bath("nickel-watts"), plated(l.t, sequence.Strike, "copper-cyanide-strike", 0), rinse(2,
			sequence.Counterflow),
			plated(l.t, sequence.Underplate, "copper-acid", 10*um), rinse(2, sequence.Counterflow))
	}},
	{"palladium in place of nickel, over a nickel strike", brass, hard, func(l *line) {
		i := l.bath("nickel-watts")
		l.tanks[i] = plated(l.t, sequence.Strike, "nickel-strike-chloride", 0)
		l.insert(i+2, plated(l.t, sequence.Underplate, "palladium-chloride", 0.5*um),
			sequence.Tank{Kind: sequence.DragOut,
				Rinse: sequence.RinseSet{Stages: 1}}, rinse(2, sequence.Running))
	}},
	{"semi-bright nickel", brass, hard, func(l *line) {
		l.tanks[l.bath("nickel-watts")] = plated(l.t, sequence.Underplate, "nickel-semibright", 8*um)
	}},
	{"two golds, strike first", brass, hard, func(l *line) {
		l.insert(l.last(), plated(l.t, sequence.Strike, "gold-acid-strike", 0), rinse(1, sequence.Running))
	}},
	{"gold straight on sterling", sequence.SterlingSilver, hard, func(l *line) { l.remove(l.bath("nickel-watts"), 2) }},
	{"silver straight on silver", sequence.FineSilver, silver, func(l *line) { l.remove(l.bath("silver-strike"), 1) }},
	{"stations of their own", zinc, nickel, func(l *line) {
		l.tanks[l.kind(sequence.Activate)+1].Rinse.Station = "rinse A"
		l.tanks[l.bath("copper-cyanide-build")+1].Rinse.Station = "rinse B"
	}},
	{"pewter seconds in a cleaner", pewter, nickel, func(l *line) {
		c := electrocleaner(sequence.Cathodic)
		c.Time = 10
		l.insert(2, c, rinse(2, sequence.Running))
	}},
	{"thicker than promised", brass, hard, func(l *line) { l.tanks[l.last()].MinThickness = 0.5 * um }},
	{"a bath of the shop's own", brass, hard, func(l *line) {
		b := libraryBath(l.t, "gold-acid-cobalt")
		b.Key, b.Name = "bench", "gold, acid cyanide, bench tank"
		b.Efficiency = bath.Range[units.Efficiency]{Low: 0.33, High: 0.36, Source: "trial pieces",
			Seen: origin.Measured}
		l.tanks[l.last()].Bath = b
	}},
	{"baked, then nothing", sequence.HighCarbonSteel, hard, func(*line) {}},
}

func TestPropertyRightSequences(t *testing.T) {
	for _, r := range rights {
		t.Run(r.name, func(t *testing.T) {
			p := piece(r.base, r.finish)
			l := &line{t: t, piece: p, tanks: plan(t, p)}
			r.edit(l)
			found := sequence.Check(l.tanks, l.piece)
			if got := codes(found, plating.SeverityWarning); len(got) != 0 {
				t.Errorf("found %v", found)
			}
			complete(t, found)
			if _, err := sequence.Cards(l.tanks, l.piece); err != nil {
				t.Error(err)
			}
		})
	}
	if len(rights) < 15 {
		t.Errorf("only %d", len(rights))
	}
}

// TestPropertyCautions: what a plan brings up by its nature.
func TestPropertyCautions(t *testing.T) {
	for _, c := range []struct {
		base sequence.Substrate
		skin bool
		want []sequence.Code
	}{
		{sequence.NickelSilver, true, []sequence.Code{sequence.CodeNickelSkin}},
		{sequence.Nickel, true, []sequence.Code{sequence.CodeNickelSkin}},
		{sequence.SterlingSilver, false, []sequence.Code{sequence.CodeDisclose}},
		{sequence.SterlingSilver, true, nil},
		{stainless, true, nil},
		{brass, true, []sequence.Code{sequence.CodeLeadedBrass}},
		{sequence.LeadedBrass, true, nil},
	} {
		p := piece(c.base, hard)
		p.SkinContact = c.skin
		_, found, err := sequence.Plan(p)
		if got := codes(found, plating.SeverityInfo); err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%s, skin %v: %v, %v", c.base, c.skin, found, err)
		}
	}
}

// TestPropertyNickelEtch: what the anodic etch takes off a minute is Faraday's law
// at the middle of its current, if all of it dissolves nickel.
func TestPropertyNickelEtch(t *testing.T) {
	for _, k := range plan(t, piece(sequence.Nickel, hard)) {
		if k.Process.Polarity != sequence.Anodic {
			continue
		}
		j := float64(k.Process.CurrentDensity.Low+k.Process.CurrentDensity.High) / 2
		took := j * 0.0586934 * 60 / (2 * 96485.332 * 8908) * 1e6
		if want := fmt.Sprintf("takes up to %.2f µm of nickel", took); !strings.Contains(
			strings.Join(k.Process.Look, "; "),
			want) {
			t.Errorf("%v, want %q", k.Process.Look, want)
		}
		return
	}
	t.Error("no anodic etch")
}

// TestPropertyCopperStrike: the copper that builds is 3 µm at the thinnest spot,
// less where its mean would pass what the bath is used for, and a plan for any ratio
// passes its own estimate.
func TestPropertyCopperStrike(t *testing.T) {
	most := libraryBath(t, "copper-cyanide-build").MaxThickness.High
	for _, base := range []sequence.Substrate{sequence.ZincDieCasting, sequence.Aluminium, sequence.Pewter,
		sequence.SoftSoldered} {
		for _, ratio := range []units.Ratio{1, 0.8, 0.6, 0.55, 0.5, 0.31, 0.1, 0.004} {
			p := piece(base, hard)
			p.Distribution.MinToAverage = ratio
			tanks := plan(t, p)
			i := slices.IndexFunc(tanks, func(k sequence.Tank) bool { return k.Bath.Key == "copper-cyanide-build" })
			got := tanks[i].MinThickness
			if ideal := min(3*um, units.Length(float64(most)*float64(ratio))); got > max(ideal, um/20)*(1+1e-12) ||
				got < ideal-um/20 {
				t.Errorf("%s, ratio %v: %v of copper, want about %v", base, ratio, got, ideal)
			}
			if thin := strings.Contains(strings.Join(tanks[i].Bath.Look, " "), "with a lens"); thin != (got < 2*um) {
				t.Errorf("%s, ratio %v: %v, said to be thin: %v", base, ratio, got, thin)
			}
			layers, err := sequence.Layers(tanks, p)
			if err != nil {
				t.Fatal(err)
			}
			job := plating.System{Parts: []plating.Item{{Count: 1, Area: p.Area}}, Layers: layers[:1]}
			res, err := plating.EstimateSystem(job)
			if err != nil {
				t.Fatal(err)
			}
			if r := res.Layers[0].Result; ratio > 0.01 && r.Warnings.Has(plating.WarnTooThick) {
				t.Errorf("%s, ratio %v: %v on average, for a bath of %v", base, ratio, r.Average, most)
			}
		}
	}
}

// TestReasonsFor: a reason that speaks of gold or of silver's exchange goes with its metal.
func TestReasonsFor(t *testing.T) {
	for _, c := range []struct {
		base   sequence.Substrate
		metals []string
		has    []string
		not    []string
	}{
		{sequence.SterlingSilver, []string{"Ni", "Rh"}, nil, []string{"gold"}},
		{sequence.SterlingSilver, []string{"Pd", "Au"}, []string{"silver diffuses into gold", "disclosed to the buyer"},
			nil},
		{sequence.Copper, []string{"Ag"}, []string{"silver deposits"}, []string{"gold"}},
		{sequence.Brass, []string{"Ni", "Au"}, []string{"copper diffuses into gold"}, []string{"silver deposits"}},
		{sequence.StainlessSteel, []string{"Ni"}, []string{"oxide film", "once active"}, nil},
	} {
		p, err := sequence.PracticeFor(c.base)
		if err != nil {
			t.Fatal(err)
		}
		all := len(p.Reasons)
		text := ""
		for _, w := range p.For(c.metals...).Reasons {
			text += w.Text + "\n"
		}
		for _, w := range c.has {
			if !strings.Contains(text, w) {
				t.Errorf("%s under %v: no %q in %s", c.base, c.metals, w, text)
			}
		}
		for _, w := range c.not {
			if strings.Contains(text, w) {
				t.Errorf("%s under %v: %q in %s", c.base, c.metals, w, text)
			}
		}
		if len(p.Reasons) != all {
			t.Error("the practice itself changed")
		}
	}
}
