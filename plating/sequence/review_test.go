package sequence_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// TestPropertyNamesThatDeny: a name that says that something is not there does
// not count as naming it.
func TestPropertyNamesThatDeny(t *testing.T) {
	for _, name := range []string{"alkaline cleaner, saponifies fatty acids", "cleaner, free of cyanide",
		"cleaner, contains no cyanide", "cleaner, free from cyanide and acid-free",
		"non-cyanide cleaner", "cleaner without acid", "cyanide-free cleaner", "placid cleaner"} {
		tanks := plan(t, piece(sequence.Brass, sequence.HardGold))
		tanks[0].Process.Chemistry = name
		found := sequence.Check(tanks, piece(sequence.Brass, sequence.HardGold))
		if name == "placid cleaner" { // a name that holds the letters by chance stops: better once too often
			continue
		}
		if w := sequence.Worst(found); w > plating.SeverityCaution {
			t.Errorf("%q: %v", name, found)
		}
	}
	for _, name := range []string{"cyanide cleaner", "NaCN dip", "muriatic pickle",
		"cleaner, no cyanide but some hydrochloric"} {
		tanks := plan(t, piece(sequence.Brass, sequence.HardGold))
		tanks[0].Process.Chemistry = name
		if err := sequence.Approve(sequence.Check(tanks, piece(sequence.Brass, sequence.HardGold))); err == nil {
			t.Errorf("%q passes", name)
		}
	}
}

// TestPropertyHighStrength: what must be baked and would melt is refused; hard
// stainless steel sees no cathodic step; the flag means nothing for brass.
func TestPropertyHighStrength(t *testing.T) {
	for _, s := range sequence.Substrates() {
		p := piece(s, sequence.HardGold)
		p.HighStrength = true
		if s == sequence.StainlessSteel || s == sequence.LowCarbonSteel || s == sequence.HighCarbonSteel {
			p.Tensile = 1250 * units.Megapascal
		}
		tanks, found, err := sequence.Plan(p)
		var refused *sequence.RefusedError
		switch s {
		case sequence.Titanium: // not planned
			continue
		case sequence.Pewter, sequence.SoftSoldered, sequence.PaintedPlastic, sequence.ZincDieCasting:
			if !errors.As(err, &refused) || refused.Field != "high strength" {
				t.Errorf("%s: %v", s, err)
			}
			continue
		}
		if err != nil || sequence.Worst(found) > plating.SeverityCaution {
			t.Errorf("%s: %v, %v", s, err, found)
		}
		steel := s == sequence.StainlessSteel || s == sequence.LowCarbonSteel || s == sequence.HighCarbonSteel
		if last := tanks[len(tanks)-1].Kind; (last == sequence.Bake) != steel {
			t.Errorf("%s ends with %s", s, last)
		}
		for i := range tanks {
			if k := tanks[i].Kind; steel && (k == sequence.Activate || k == sequence.SoakClean ||
				k == sequence.Electroclean) && tanks[i].Process.Polarity == sequence.Cathodic {
				t.Errorf("%s: %s is cathodic", s, tanks[i].Name)
			}
		}
	}
}

// TestPlansOfOneBath: no bath stands twice in a plan, and acid copper on zinc and
// tin has more than a strike below it.
func TestPlansOfOneBath(t *testing.T) {
	for _, s := range sequence.Substrates() {
		if s == sequence.Titanium { // not planned
			continue
		}
		for _, f := range sequence.Finishes() {
			p := piece(s, f)
			tanks := plan(t, p)
			seen := map[string]int{}
			var keys []string
			for i := range tanks {
				if key := tanks[i].Bath.Key; key != "" {
					seen[key]++
					keys = append(keys, key)
				}
			}
			for key, n := range seen {
				if n > 1 {
					t.Errorf("%s to %s: %d times %s", s, f, n, key)
				}
			}
			zincLike := s == sequence.ZincDieCasting || s == sequence.Aluminium || s == sequence.Pewter ||
				s == sequence.SoftSoldered
			if f == sequence.BrightCopper && zincLike && len(keys) < 3 {
				t.Errorf("%s to %s: %v", s, f, keys)
			}
		}
	}
}

// TestPropertyStrengthOfAcid: acid that does not say that it is weak counts as
// strong, and neither a weaker acid nor water that stands takes it off a piece
// on its way into bound cyanide.
func TestPropertyStrengthOfAcid(t *testing.T) {
	dip := func(mild bool) sequence.Tank {
		return sequence.Tank{Kind: sequence.Activate, Time: 15, Process: sequence.Process{Chemistry: "sulfuric acid",
			Effect: sequence.EffectDeoxidise, Hazards: plating.HazardAcid, Mild: mild}}
	}
	sour := rinse(1, sequence.Still)
	sour.Rinse.Acidified = true
	fresh := rinse(1, sequence.Running)
	fresh.Rinse.Acidified = true
	own := libraryBath(t, "rhodium-sulfate")
	own.Name, own.PH = "rhodium of our own", bath.Range[plating.PH]{}
	rhodium := sequence.Tank{Kind: sequence.Plate, Bath: own, MinThickness: 0.1 * um}
	bound := plated(t, sequence.Strike, "gold-acid-strike", 0)
	for name, c := range map[string]struct {
		tanks []sequence.Tank
		want  plating.Severity
	}{
		"not said, straight in":        {[]sequence.Tank{dip(false), bound}, plating.SeverityStop},
		"said to be weak, straight in": {[]sequence.Tank{dip(true), bound}, plating.SeverityInfo},
		"a still, sour rinse":          {[]sequence.Tank{dip(false), sour, bound}, plating.SeverityStop},
		"still water": {[]sequence.Tank{dip(false), rinse(2, sequence.Still), bound},
			plating.SeverityStop},
		"a weak acid between": {[]sequence.Tank{dip(false), dip(true), bound}, plating.SeverityStop},
		"a weak acid and still water": {[]sequence.Tank{dip(false), rinse(1, sequence.Still), dip(true), rinse(1,
			sequence.Still), bound}, plating.SeverityStop},
		"a running, sour rinse": {[]sequence.Tank{dip(false), fresh, bound}, plating.SeverityCaution},
		"two running rinses": {[]sequence.Tank{dip(false), rinse(2, sequence.Running), bound},
			plating.SeverityInfo},
		"bound into an acid not said":   {[]sequence.Tank{bound, rhodium}, plating.SeverityStop},
		"bound over weak into the same": {[]sequence.Tank{bound, dip(true), rhodium}, plating.SeverityStop},
		"bound over water into the same": {[]sequence.Tank{bound, rinse(1, sequence.Running), rhodium},
			plating.SeverityInfo},
		"a strike of pH 0.5, straight in": {[]sequence.Tank{plated(t, sequence.Strike, "gold-acid-strike-3", 0),
			plated(t, sequence.Plate, "gold-acid-cobalt", 0.1*um)}, plating.SeverityStop},
	} {
		got := plating.SeverityInfo
		for _, f := range sequence.Check(c.tanks, piece(sequence.Copper, sequence.Rhodium)) {
			if f.Code == sequence.CodeCyanideAcid {
				got = max(got, f.Severity)
			}
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// TestPropertyOtherNames: names of the trade, and the question where one could
// mean two metals.
func TestPropertyOtherNames(t *testing.T) {
	for name, want := range map[string]sequence.Substrate{"Aluminum": sequence.Aluminium, " tin ": sequence.Pewter,
		"soft-soldered joints": sequence.SoftSoldered,
		"painted plastic":      sequence.PaintedPlastic, "mild  steel": sequence.LowCarbonSteel,
		"not known": sequence.SubstrateUnknown, "unknown": sequence.SubstrateUnknown} {
		if got, err := sequence.ParseSubstrate(name); err != nil || got != want {
			t.Errorf("%q: %v, %v", name, got, err)
		}
	}
	for name, ask := range map[string]string{"steel": "springs", "carbon steel": "springs", "Silver": "925"} {
		if _, err := sequence.ParseSubstrate(name); err == nil || !strings.Contains(err.Error(), ask) {
			t.Errorf("%q: %v", name, err)
		}
	}
}
