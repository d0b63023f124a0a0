package units_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/laydown/units"
)

// A tool is one quantity type stripped to float64, so that one test serves all.
type tool struct {
	kind      units.QuantityKind
	parse     func(text string) (float64, error)
	str       func(v float64) string
	marshal   func(v float64) ([]byte, error)
	append    func(b []byte, v float64) ([]byte, error)
	unmarshal func(start float64, text []byte) (float64, error)
	text      func(v, unit float64, decimals int) string // nil for what has no Text(unit, decimals)
	in        func(v, unit float64) float64              // nil for temperatures
	positive  func(field string, v float64) error
	nonNeg    func(field string, v float64) error
	finite    func(field string, v float64) error
}

type quantity interface {
	~float64
	String() string
	MarshalText() ([]byte, error)
	AppendText(b []byte) ([]byte, error)
}

func newTool[Q quantity, P interface {
	*Q
	UnmarshalText(text []byte) error
}](k units.QuantityKind, parse func(string) (Q, error)) tool {
	t := tool{
		kind:    k,
		parse:   func(text string) (float64, error) { v, err := parse(text); return float64(v), err },
		str:     func(v float64) string { return Q(v).String() },
		marshal: func(v float64) ([]byte, error) { return Q(v).MarshalText() },
		append:  func(b []byte, v float64) ([]byte, error) { return Q(v).AppendText(b) },
		unmarshal: func(start float64, text []byte) (float64, error) {
			q := Q(start)
			err := P(&q).UnmarshalText(text)
			return float64(q), err
		},
		positive: func(field string, v float64) error { return units.Positive(field, Q(v)) },
		nonNeg:   func(field string, v float64) error { return units.NonNegative(field, Q(v)) },
		finite:   func(field string, v float64) error { return units.Finite(field, Q(v)) },
	}
	if _, ok := any(Q(0)).(interface{ In(Q) float64 }); ok {
		t.in = func(v, unit float64) float64 { return any(Q(v)).(interface{ In(Q) float64 }).In(Q(unit)) }
	}
	if _, ok := any(Q(0)).(interface{ Text(Q, int) string }); ok {
		t.text = func(v, unit float64, decimals int) string {
			return any(Q(v)).(interface{ Text(Q, int) string }).Text(Q(unit), decimals)
		}
	}
	return t
}

// tools returns one tool for each kind, in the order of Kinds.
func tools() []tool {
	return []tool{
		newTool(units.KindLength, units.ParseLength),
		newTool(units.KindArea, units.ParseArea),
		newTool(units.KindVolume, units.ParseVolume),
		newTool(units.KindMass, units.ParseMass),
		newTool(units.KindDensity, units.ParseDensity),
		newTool(units.KindMassPerArea, units.ParseMassPerArea),
		newTool(units.KindMassConcentration, units.ParseMassConcentration),
		newTool(units.KindAmount, units.ParseAmount),
		newTool(units.KindMolarMass, units.ParseMolarMass),
		newTool(units.KindAmountConcentration, units.ParseAmountConcentration),
		newTool(units.KindCurrent, units.ParseCurrent),
		newTool(units.KindCurrentDensity, units.ParseCurrentDensity),
		newTool(units.KindCharge, units.ParseCharge),
		newTool(units.KindEquivalent, units.ParseEquivalent),
		newTool(units.KindVoltage, units.ParseVoltage),
		newTool(units.KindResistance, units.ParseResistance),
		newTool(units.KindAreaResistance, units.ParseAreaResistance),
		newTool(units.KindConductivity, units.ParseConductivity),
		newTool(units.KindPower, units.ParsePower),
		newTool(units.KindEnergy, units.ParseEnergy),
		newTool(units.KindTemperature, units.ParseTemperature),
		newTool(units.KindTemperatureDifference, units.ParseTemperatureDifference),
		newTool(units.KindDuration, units.ParseDuration),
		newTool(units.KindPressure, units.ParsePressure),
		newTool(units.KindSpeed, units.ParseSpeed),
		newTool(units.KindDiffusivity, units.ParseDiffusivity),
		newTool(units.KindEfficiency, units.ParseEfficiency),
		newTool(units.KindMassFraction, units.ParseMassFraction),
		newTool(units.KindMoleFraction, units.ParseMoleFraction),
		newTool(units.KindRatio, units.ParseRatio),
	}
}

func TestToolsCoverKinds(t *testing.T) {
	all := tools()
	for i, k := range units.Kinds() {
		if i >= len(all) || all[i].kind != k {
			t.Fatalf("no tool for %s", k)
		}
	}
}

// toolOf returns the tool of one kind.
func toolOf(k units.QuantityKind) tool { return tools()[k-1] }

// sample returns n numbers: the corners of float64, then random ones, half of
// them of workshop size, half of any exponent down to the subnormal.
func sample(seed uint64, n int) []float64 {
	list := []float64{0, 1, -1, 0.1, 1.0 / 3, 5e-324, -5e-324, 2.2250738585072009e-308, math.MaxFloat64, -math.MaxFloat64,
		1 << 53, 1<<53 + 2, math.Nextafter(1, 2), math.Nextafter(1, 0), 59.9999999, 60, 3599.5, 86400, 1e15, 9.99999e5, 1e6}
	r := rand.New(rand.NewPCG(seed, 20260102))
	for len(list) < n {
		v := math.Float64frombits(r.Uint64())
		if len(list)%2 == 0 {
			v = math.Exp(60*r.Float64() - 30)
		}
		if v-v == 0 {
			list = append(list, v)
		}
	}
	return list
}

// allowed tells whether a kind can take a value: no temperature is negative.
func (t tool) allowed(v float64) bool { return t.kind != units.KindTemperature || v >= 0 }

// wantParseError checks that err is a *ParseError of the kind and reason that
// names the text and the units that would do.
func wantParseError(t *testing.T, err error, k units.QuantityKind, reason error) *units.ParseError {
	t.Helper()
	var p *units.ParseError
	switch {
	case !errors.As(err, &p):
		t.Fatalf("%v is no *ParseError", err)
	case !errors.Is(err, reason):
		t.Errorf("%v: want %v", err, reason)
	case p.Kind != k:
		t.Errorf("%v: kind %v, want %v", err, p.Kind, k)
	case len(p.Accepted) != len(k.Units()):
		t.Errorf("%v: lists %v, want %v", err, p.Accepted, k.Units())
	case len(err.Error()) > 900:
		t.Errorf("error of %d bytes: %v", len(err.Error()), err)
	}
	return p
}
