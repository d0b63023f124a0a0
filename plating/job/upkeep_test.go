package job_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// TestBakeIsNoLabour: nobody stands by an oven for a night.
func TestBakeIsNoLabour(t *testing.T) {
	j := planned(sequence.HighCarbonSteel, sequence.HardGold)
	j.Tensile = 1050 * units.Megapascal
	s := made(t, j)
	if s.Oven.Low < 7*units.Hour || s.Line.High > 2*units.Hour {
		t.Errorf("oven %v, line %v", s.Oven, s.Line)
	}
}

// TestOnwardBalance: what a strike's load carries into the next bath is missing
// in the one and found in the other.
func TestOnwardBalance(t *testing.T) {
	s := made(t, shipped(t, "finial"))
	strike, silver := s.Baths[0], s.Baths[1]
	if strike.Drips != s.Rinsing.Metals[0].High || silver.Gained != strike.Drips || strike.Gained != 0 {
		t.Errorf("strike %+v\nsilver %+v", strike, silver)
	}
	near(t, "fed to the strike", float64(strike.Feed.Metal), float64(strike.Coat+strike.Drips), 1e-9)
}

// TestSalts: a bath is fed with a salt of its own chemistry, or none is guessed.
func TestSalts(t *testing.T) {
	for key, want := range map[string]string{"gold-acid-cobalt": "KAu(CN)2", "silver-cyanide": "KAg(CN)2",
		"nickel-watts": "NiSO4·6H2O", "nickel-strike-chloride": "NiCl2·6H2O",
		"copper-acid": "CuSO4·5H2O", "copper-cyanide-strike": "CuCN", "gold-sulfite": "", "palladium-sulfamate": "",
		"copper-pyro": "", "rhodium-sulfate": "", "bronze-white": ""} {
		text := `{"format": "laydown job 1", "parts": [{"area": "50 cm²"}], "layers": [
			{"bath": {"library": "` + key +
			`", "volume": "4 L", "content": "5 g/L"}, "min_to_average": 0.5, "min_thickness": "0.1 µm"}],
			"rinse": {"drag_out": "1 mL"}}`
		j, err := job.Read(strings.NewReader(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		if f := made(t, j).Baths[0].Feed; f != nil {
			got = f.Salt.String()
		}
		if strings.ReplaceAll(got, "·", ".") != strings.ReplaceAll(want, "·", ".") {
			t.Errorf("%s is fed with %q, want %q", key, got, want)
		}
	}
}

// TestOwnSaltIsNotGuessed: a nickel bath of the shop's own may be of any salt,
// whatever lends its anode.
func TestOwnSaltIsNotGuessed(t *testing.T) {
	for _, name := range []string{"nickel, sulfamate", "nickel, sulfamate, low chloride",
		"nickel, Watts, of sulfate and chloride"} {
		j := shipped(t, "bezels")
		j.Layers[0].Bath.Name, j.Layers[0].Bath.Salt = name, faraday.Formula{}
		if f := made(t, j).Baths[0].Feed; f != nil {
			t.Errorf("%s is fed with %s", name, f.Salt)
		}
	}
	if f := made(t, shipped(t, "bezels")).Baths[0].Feed; f == nil || f.Salt.String() == "" {
		t.Error("the salt that the job names is lost")
	}
}

// TestShortOfTheMinThickness: amps and minutes given that keep the minimum thickness in the
// middle of the efficiency and not at its low end are questioned.
func TestShortOfTheMinThickness(t *testing.T) {
	warned := func(s *job.Sheet, i int) bool {
		for _, n := range s.Coats()[i].Notes {
			if n.Severity == plating.SeverityWarning && strings.Contains(n.Text, "of the minimum 2.50 µm") {
				return true
			}
		}
		return false
	}
	s := made(t, shipped(t, "bezels"))
	if !warned(&s, 2) {
		t.Errorf("no warning: %v, spread %v", s.Coats()[2].Notes, s.Coats()[2].Spread.Thinnest)
	}
	j := shipped(t, "bezels")
	l := &j.Layers[2]
	l.CurrentDensity, l.Time = 0.3*units.AmperePerSquareDecimetre, 40*units.Minute
	if s := made(t, j); warned(&s, 2) {
		t.Errorf("warned with %v at the least", s.Coats()[2].Spread.Thinnest)
	}
	// Brass does not crack by hydrogen, steel may.
	for name, want := range map[string]bool{"bezels": false, "hands": true} {
		s := made(t, shipped(t, name))
		found := false
		for i := range s.Coats() {
			for _, n := range s.Coats()[i].Notes {
				found = found || strings.Contains(n.Do, "hardened steel")
			}
		}
		if found != want {
			t.Errorf("%s: hardened steel is spoken of: %v", name, found)
		}
	}
}

func upTo(s units.Length) bath.Range[units.Length] { return bath.Range[units.Length]{High: s} }

// TestOwnLimitWins: the shop's own bath may build what the library's is not used
// for.
func TestOwnLimitWins(t *testing.T) {
	j := shipped(t, "hands")
	j.Layers[1].MinThickness, j.Layers[1].Bath.MaxThickness = 6*units.Micrometre, upTo(20*units.Micrometre)
	if s := made(t, j); s.Forbidden() {
		t.Error("it stops")
	}
	j.Layers[1].Bath.MaxThickness = upTo(5 * units.Micrometre)
	var refused *sequence.RefusedError
	if _, err := j.Sheet(); !errors.As(err, &refused) {
		t.Errorf("6 µm of a bath for 5: %v", err)
	}
}

// TestStagesOfTheJob: the stages that the job asks for stand on the cards and in
// the water, and one stage between cyanide and acid stops.
func TestStagesOfTheJob(t *testing.T) {
	j := planned(sequence.ZincDieCasting, sequence.BrightNickel)
	j.Rinse = &job.Rinse{Shape: rinse.VerticalWell, Ratio: 1000, Stages: 3}
	s := made(t, j)
	n := 0
	for i, step := range s.Steps() {
		if step.Kind == sequence.Rinse && *step.Flow == sequence.Counterflow {
			n++
			if step.Stages != 3 {
				t.Errorf("tank %d has %d stages", i+1, step.Stages)
			}
		}
	}
	// 1 + r + r² + r³ = 1000.
	r := 9.0
	for range 50 {
		r = math.Cbrt(1000 - 1 - r - r*r)
	}
	near(t, "water", float64(s.Rinsing.Water), r*float64(s.Rinsing.Carried.High), 1e-9)
	near(t, "all water", float64(s.Rinsing.Total), float64(n)*float64(s.Rinsing.Water), 1e-12)
	if math.Abs(1+r+r*r+r*r*r-1000) > 1e-6 || n < 3 || s.Rinsing.Rinses != n {
		t.Errorf("%d rinses, told %d", n, s.Rinsing.Rinses)
	}
	j.Rinse.Stages = 1
	if s := made(t, j); !s.Forbidden() {
		t.Error("one stage between cyanide copper and acid nickel passes")
	}
}

// TestOneNameOneBath: two layers in baths of one name and another content are
// refused.
func TestOneNameOneBath(t *testing.T) {
	j := shipped(t, "hands")
	j.Layers[0].Bath.Name = j.Layers[1].Bath.Name
	var v *units.ValueError
	if _, err := j.Sheet(); !errors.As(err, &v) || !strings.Contains(err.Error(),
		"another name for another tank") {
		t.Errorf("%v", err)
	}
	if s := (job.Spread{Confidence: origin.Given, Known: true}); s.Trust() != "rests on figures of your own" {
		t.Error(s.Trust())
	}
}
