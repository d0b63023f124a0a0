package sequence_test

import (
	"errors"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/sequence"
)

// TestPropertyNamesThatDeny: a name that says that something is not there does
// not count as naming it.
func TestPropertyNamesThatDeny(t *testing.T) {
	for _, name := range []string{"alkaline cleaner, saponifies fatty acids", "cleaner, free of cyanide", "cleaner, contains no cyanide", "cleaner, free from cyanide and acid-free",
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
	for _, name := range []string{"cyanide cleaner", "NaCN dip", "muriatic pickle", "cleaner, no cyanide but some hydrochloric"} {
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
		tanks, found, err := sequence.Plan(p)
		var refused *sequence.RefusedError
		switch s {
		case sequence.Pewter, sequence.SoftSoldered, sequence.PaintedPlastic, sequence.ZincDieCasting:
			if !errors.As(err, &refused) || refused.Field != "high strength" {
				t.Errorf("%s: %v", s, err)
			}
			continue
		}
		if err != nil || sequence.Worst(found) > plating.SeverityCaution {
			t.Errorf("%s: %v, %v", s, err, found)
		}
		steel := s == sequence.StainlessSteel || s == sequence.LowCarbonSteel || s == sequence.HighCarbonSteel || s == sequence.Titanium
		if last := tanks[len(tanks)-1].Kind; (last == sequence.Bake) != steel {
			t.Errorf("%s ends with %s", s, last)
		}
		for i := range tanks {
			if k := tanks[i].Kind; steel && (k == sequence.Activate || k == sequence.SoakClean || k == sequence.Electroclean) && tanks[i].Process.Polarity == sequence.Cathodic {
				t.Errorf("%s: %s is cathodic", s, tanks[i].Name)
			}
		}
	}
}

// TestPlansOfOneBath: no bath stands twice in a plan, and acid copper on zinc and
// tin has more than a strike below it.
func TestPlansOfOneBath(t *testing.T) {
	for _, s := range sequence.Substrates() {
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
			zincLike := s == sequence.ZincDieCasting || s == sequence.Aluminium || s == sequence.Pewter || s == sequence.SoftSoldered
			if f == sequence.BrightCopper && zincLike && len(keys) < 3 {
				t.Errorf("%s to %s: %v", s, f, keys)
			}
		}
	}
}
