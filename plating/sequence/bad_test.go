package sequence_test

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// TestPropertyBadPiece: no plan is guessed; the error names field and remedy.
func TestPropertyBadPiece(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, c := range []struct {
		name   string
		change func(*sequence.Piece)
		check  func(error) bool
	}{
		{"metal unknown", func(p *sequence.Piece) { p.Substrate = 0 }, unsure("base metal")},
		{"metal of no name", func(p *sequence.Piece) { p.Substrate = 99 }, unsure("base metal")},
		{"finish unknown", func(p *sequence.Piece) { p.Finish = 0 }, unsure("finish")},
		{"finish of no name", func(p *sequence.Piece) { p.Finish = 99 }, unsure("finish")},
		{"no promise", func(p *sequence.Piece) { p.MinThickness = 0 }, value("minimum thickness",
			units.ErrNotPositive)},
		{"negative promise", func(p *sequence.Piece) { p.MinThickness = -1e-6 }, value("minimum thickness",
			units.ErrNotPositive)},
		{"promise NaN", func(p *sequence.Piece) { p.MinThickness = nan }, value("minimum thickness",
			units.ErrNotFinite)},
		{"promise infinite", func(p *sequence.Piece) { p.MinThickness = units.Length(math.Inf(1)) },
			value("minimum thickness", units.ErrNotFinite)},
		{"negative area", func(p *sequence.Piece) { p.Area = -1 }, value("area", units.ErrNegative)},
		{"area NaN", func(p *sequence.Piece) { p.Area = units.Area(nan) }, value("area", units.ErrNotFinite)},
		{"flash of a micrometre", func(p *sequence.Piece) { p.Finish, p.MinThickness = sequence.FlashGold, 1*um },
			refused("minimum thickness")},
		{"two micrometres of rhodium", func(p *sequence.Piece) { p.Finish, p.MinThickness = sequence.Rhodium, 2*um },
			refused("minimum thickness")},
		{"nickel on the skin", func(p *sequence.Piece) { p.Finish, p.SkinContact = sequence.BrightNickel, true },
			refused("finish")},
	} {
		p := piece(stainless, hard)
		c.change(&p)
		tanks, _, err := sequence.Plan(p)
		if !c.check(err) || tanks != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func unsure(word string) func(error) bool {
	return func(err error) bool {
		var e *sequence.UnsureError
		return errors.As(err, &e) && strings.Contains(e.What, word) && len(e.Ask) > 0 && strings.Contains(err.Error(),
			e.Ask[0])
	}
}

func refused(field string) func(error) bool {
	return func(err error) bool {
		var e *sequence.RefusedError
		return errors.As(err, &e) && e.Field == field && e.Reason != "" && e.Remedy != "" && e.Source != "" &&
			strings.Contains(err.Error(), e.Remedy)
	}
}

func value(field string, reason error) func(error) bool {
	return func(err error) bool {
		var e *units.ValueError
		return errors.As(err, &e) && e.Field == field && e.Need != "" && errors.Is(err, reason)
	}
}

// TestPropertyBadTank: cards and layers refuse a tank that says too little, by
// number and name; a check stops at it.
func TestPropertyBadTank(t *testing.T) {
	for name, change := range map[string]func(*sequence.Tank){
		"kind of tank":       func(k *sequence.Tank) { k.Kind = 77 },
		"bath":               func(k *sequence.Tank) { k.Bath = bath.Bath{} },
		"current efficiency": func(k *sequence.Tank) { k.Bath.Efficiency = bath.Range[units.Efficiency]{} },
		"current density": func(k *sequence.Tank) {
			k.Bath.CurrentDensity = bath.Range[units.CurrentDensity]{}
		},
		"minimum thickness and time": func(k *sequence.Tank) { k.MinThickness = 0 },
		"time":                       func(k *sequence.Tank) { k.Time = units.Duration(math.NaN()) },
		"wait":                       func(k *sequence.Tank) { k.Wait = -1 },
		"flow of the rinse":          func(k *sequence.Tank) { k.Rinse.Flow = 99 },
		"polarity":                   func(k *sequence.Tank) { k.Process.Polarity = 3 },
		"minimum thickness":          func(k *sequence.Tank) { k.MinThickness = units.Length(math.Inf(1)) },
	} {
		p := piece(brass, hard)
		tanks := plan(t, p)
		i := len(tanks) - 5
		if tanks[i].Kind != sequence.Plate {
			t.Fatal("not the plate")
		}
		change(&tanks[i])
		var e *units.ValueError
		if _, err := sequence.Cards(tanks, p); !errors.As(err, &e) || e.Field != name || !strings.HasPrefix(err.Error(),
			"tank 12, ") {
			t.Errorf("%s: %v", name, err)
		}
		var stop *sequence.StopError
		if _, err := sequence.Layers(tanks, p); !errors.As(err, &stop) || stop.Findings[0].Remedy == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	p := piece(brass, hard)
	tanks := plan(t, p)
	p.Area = 0
	if _, err := sequence.Cards(tanks, p); !value("area", units.ErrNotPositive)(err) {
		t.Errorf("no area: %v", err)
	}
	if _, err := sequence.Layers(tanks, p); !value("area", units.ErrNotPositive)(err) {
		t.Errorf("no area: %v", err)
	}
	p.Area, p.Distribution.MinToAverage = 0.01, 0
	if _, err := sequence.Cards(tanks, p); !value("ratio of thinnest to average", units.ErrNotPositive)(err) {
		t.Errorf("no ratio: %v", err)
	}
	if got := sequence.Check(nil, p); sequence.Approve(got) == nil {
		t.Error("an empty sequence was approved")
	}
	if err := sequence.Approve(nil); err != nil {
		t.Error(err)
	}
	if _, err := sequence.PracticeFor(0); !unsure("base metal")(err) {
		t.Errorf("%v", err)
	}
}

// TestPropertyWords: every word reads back, and a wrong one lists the right ones.
func TestPropertyWords(t *testing.T) {
	for _, s := range sequence.Substrates() {
		if v, err := sequence.ParseSubstrate(" " + strings.ToUpper(s.String())); v != s || err != nil {
			t.Errorf("%s: %v, %v", s, v, err)
		}
		pr, err := sequence.PracticeFor(s)
		if err != nil || len(pr.Steps) < 3 || len(pr.Reasons) == 0 || pr.Unsure == "" || pr.Title == "" ||
			pr.Source == "" {
			t.Errorf("%s: %+v, %v", s, pr, err)
		}
	}
	for _, f := range sequence.Finishes() {
		if v, err := sequence.ParseFinish(f.String()); v != f || err != nil {
			t.Errorf("%s: %v, %v", f, v, err)
		}
		if _, err := bath.Get(f.BathKey()); err != nil {
			t.Errorf("%s: %v", f, err)
		}
	}
	for k := sequence.SoakClean; k <= sequence.Bake; k++ {
		var v sequence.TankKind
		if err := v.UnmarshalText([]byte(k.String())); v != k || err != nil {
			t.Errorf("%s: %v, %v", k, v, err)
		}
	}
	var e *units.ValueError
	if _, err := sequence.ParseSubstrate("adamant" + strings.Repeat("x", 100)); !errors.As(err, &e) ||
		!strings.Contains(e.Need, "pewter") || len(err.Error()) > 400 {
		t.Errorf("%v", err)
	}
	if _, err := sequence.ParseFinish("gold"); !errors.As(err, &e) || !strings.Contains(e.Need, "hard gold") {
		t.Errorf("%v", err)
	}
	if sequence.Substrate(99).String() != "unknown" || sequence.Finish(99).String() != "unknown" ||
		sequence.TankKind(99).String() != "unknown" || sequence.Finish(99).BathKey() != "" {
		t.Error("a value of no name has one")
	}
}

// FuzzCheck: no list of tanks, however odd, panics the check or the cards.
func FuzzCheck(f *testing.F) {
	f.Add([]byte{1, 3, 4, 3, 7, 8, 3, 9, 10}, uint8(2), uint8(1), true)
	f.Add([]byte{0, 200, 5, 5, 10, 7}, uint8(11), uint8(9), false)
	f.Fuzz(func(t *testing.T, kinds []byte, base, finish uint8, flag bool) {
		lib := bath.Library()
		var tanks []sequence.Tank
		for i, k := range kinds[:min(len(kinds), 40)] {
			tank := sequence.Tank{Kind: sequence.TankKind(k % 16), LiveEntry: flag, Wait: units.Duration(k),
				MinThickness: units.Length(k) * 1e-8}
			tank.Bath = lib[(int(k)*7+i)%len(lib)]
			tank.Process = sequence.Process{Chemistry: "x", Effect: sequence.Effect(k), Hazards: tank.Bath.Hazards,
				Strong: k%2 == 0}
			tank.Rinse = sequence.RinseSet{Stages: int(k % 4), Flow: sequence.RinseFlow(k % 5), Acidified: k%7 == 0,
				Station: string(rune('A' + k%3))}
			tanks = append(tanks, tank)
		}
		p := piece(sequence.Substrate(base%20), sequence.Finish(finish%14))
		p.SkinContact, p.HighStrength = flag, !flag
		found := sequence.Check(tanks, p)
		complete(t, found)
		for _, x := range found {
			for _, i := range x.Tanks {
				if i < 0 || i >= len(tanks) {
					t.Fatalf("tank %d of %d", i, len(tanks))
				}
			}
		}
		cards, err := sequence.Cards(tanks, p)
		var e *units.ValueError
		if err != nil && !errors.As(err, &e) {
			t.Fatalf("%v (%T)", err, err)
		}
		_ = sequence.Sheet(p, cards, found)
	})
}

// TestNoWords: a number that is no word of its list is not written as one.
func TestNoWords(t *testing.T) {
	for _, v := range []encoding.TextMarshaler{sequence.TankKind(99), sequence.Substrate(99), sequence.Finish(99),
		sequence.RinseFlow(99), sequence.Polarity(99), price.LineKind(99), plating.PH(math.NaN())} {
		if text, err := v.MarshalText(); err == nil {
			t.Errorf("%T: %s", v, text)
		}
	}
	if s := fmt.Sprint(sequence.RinseFlow(99), sequence.Polarity(99), plating.Severity(99),
		plating.Role(99)); s != "unknown unknown unknown unknown" {
		t.Error(s)
	}
	if _, err := electrical.LatentHeat(math.MaxFloat64); !errors.Is(err, units.ErrOutOfRange) {
		t.Error(err)
	}
	p := piece(brass, hard)
	layers, err := sequence.Layers(plan(t, p), p)
	if err != nil {
		t.Fatal(err)
	}
	layers[0].Role = 200
	var v *units.ValueError
	if _, err := plating.Estimate(&layers[0]); !errors.As(err, &v) || v.Field != "role" {
		t.Errorf("role 200: %v", err)
	}
	b := libraryBath(t, "nickel-watts")
	b.Makeup = append(b.Makeup[:0:0], b.Makeup...)
	b.Makeup[0].Range.High = units.MassConcentration(math.NaN())
	if err := b.Check(); err == nil {
		t.Error("a make-up of NaN")
	}
	p.Distribution.MinToAverage = -1
	if err := p.Check(); !errors.As(err, &v) || v.Field != "ratio of thinnest to average" {
		t.Error(err)
	}
}

// TestUnsaidIsDangerous: a rinse whose flow is no word does not stand between cyanide
// and acid, and an electroclean must say which pole the piece is.
func TestUnsaidIsDangerous(t *testing.T) {
	p := piece(brass, hard)
	for _, flow := range []sequence.RinseFlow{sequence.Still, 99, 255} {
		tanks := []sequence.Tank{{Name: "copper strike", Kind: sequence.Strike, Bath: libraryBath(t,
			"copper-cyanide-strike"), Time: 60, LiveEntry: true},
			{Name: "rinse", Kind: sequence.Rinse, Rinse: sequence.RinseSet{Stages: 2, Flow: flow}},
			{Name: "acid dip", Kind: sequence.Activate, Process: sequence.Process{Chemistry: "sulfuric acid",
				Effect: sequence.EffectDeoxidise, Hazards: plating.HazardAcid}}}
		found := sequence.Check(tanks, p)
		if !slices.Contains(codes(found, plating.SeverityStop), sequence.CodeCyanideAcid) {
			t.Errorf("flow %d: %v", flow, found)
		}
	}
	tanks := plan(t, piece(sequence.HighCarbonSteel, hard))
	i := slices.IndexFunc(tanks, func(k sequence.Tank) bool { return k.Kind == sequence.Electroclean })
	tanks[i].Process.Polarity = sequence.NoCurrent
	if err := sequence.Approve(sequence.Check(tanks, piece(sequence.HighCarbonSteel, hard))); err == nil ||
		!strings.Contains(err.Error(), "cathodic or anodic") {
		t.Errorf("an electroclean without a pole: %v", err)
	}
}
