package units

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/big"
	"path/filepath"
	"strings"
	"testing"
)

// This file rebuilds every unit from its definition, in exact arithmetic and
// with its dimension, and does not look at the factors of the table.

// A measure is a number of SI units with its dimension.
type measure struct {
	size *big.Rat
	dim  [6]int // powers of m, kg, s, A, K, mol
}

func number(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic("not a number: " + text)
	}
	return r
}

func (a measure) times(b measure, power int) measure {
	out := measure{new(big.Rat).Set(a.size), a.dim}
	for range max(power, -power) {
		if power > 0 {
			out.size.Mul(out.size, b.size)
		} else {
			out.size.Quo(out.size, b.size)
		}
	}
	for i := range out.dim {
		out.dim[i] += power * b.dim[i]
	}
	return out
}

// definitions holds each defined unit as a number and an expression of
// units defined before it. The relations are those that the law and the SI
// give; the tables [SP811] (Appendix B.8), [GNUUnits] and [TradeChecks]
// (Handbook 44, Appendix C: 16 oz and 7000 gr to the pound, 480 gr to the troy
// ounce) print the products, and the three tests in reference_test.go hold
// this package against those prints.
var definitions = []struct{ symbol, number, expression string }{
	{"g", "1/1000", "kg"},
	{"L", "1", "dm³"}, // one cubic decimetre since 1964
	{"in", "2.54", "cm"},
	{"ft", "12", "in"},
	{"mil", "1/1000", "in"},
	{"lb", "0.45359237", "kg"},
	{"oz", "1/16", "lb"},
	{"gr", "1/7000", "lb"},
	{"dwt", "24", "gr"},
	{"ozt", "20", "dwt"},
	{"US gal", "231", "in³"},
	{"imp gal", "4.54609", "L"},
	{"min", "60", "s"},
	{"h", "60", "min"},
	{"d", "24", "h"},
	{"C", "1", "A·s"},
	{"V", "1", "kg·m²/(A·s³)"},
	{"Ω", "1", "V/A"},
	{"S", "1", "A/V"},
	{"W", "1", "V·A"},
	{"J", "1", "W·s"},
	{"Pa", "1", "kg/(m·s²)"},
	{"bar", "100000", "Pa"},
	{"atm", "101325", "Pa"},
	{"psi", "9.80665", "lb·m/(s²·in²)"}, // a pound-force is a pound under standard gravity
	{"ksi", "1000", "psi"},
	{"°C", "1", "K"}, // as a difference; the zero points have their own test
	{"°F", "5/9", "K"},
	{"%", "1/100", "1"},
	{"‰", "1/1000", "1"},
}

var prefixes = map[string]string{"M": "1000000", "k": "1000", "h": "100", "d": "1/10", "c": "1/100", "m": "1/1000",
	"µ": "1/1000000", "n": "1/1000000000"}

// unitBook returns all defined units by symbol.
func unitBook() map[string]measure {
	one := func(i int) measure {
		m := measure{size: big.NewRat(1, 1)}
		if i >= 0 {
			m.dim[i] = 1
		}
		return m
	}
	book := map[string]measure{"m": one(0), "kg": one(1), "s": one(2), "A": one(3), "K": one(4), "mol": one(5),
		"1": one(-1)}
	for _, d := range definitions {
		m, err := evaluate(book, d.expression)
		if err != nil {
			panic(err)
		}
		m.size.Mul(m.size, number(d.number))
		book[d.symbol] = m
	}
	return book
}

// evaluate works out a symbol such as g/(A·h) from the defined units.
func evaluate(book map[string]measure, symbol string) (measure, error) {
	out := measure{size: big.NewRat(1, 1)}
	over, under, _ := strings.Cut(symbol, "/")
	under = strings.TrimSuffix(strings.TrimPrefix(under, "("), ")")
	for sign, product := range map[int]string{1: over, -1: under} {
		if product == "" {
			continue
		}
		for _, factor := range strings.Split(product, "·") {
			power := sign
			if base, found := strings.CutSuffix(factor, "²"); found {
				factor, power = base, 2*sign
			} else if base, found := strings.CutSuffix(factor, "³"); found {
				factor, power = base, 3*sign
			}
			m, found := book[factor]
			for prefix, size := range prefixes {
				if base, ok := strings.CutPrefix(factor, prefix); ok && !found && book[base].size != nil {
					m = measure{new(big.Rat).Mul(number(size), book[base].size), book[base].dim}
					found = true
					break
				}
			}
			if !found {
				return out, fmt.Errorf("unit %q: %q has no definition in this test", symbol, factor)
			}
			out = out.times(m, power)
		}
	}
	return out, nil
}

// TestReferenceDefinitions holds every factor of the table against the
// definition, exactly, and its dimension against that of the kind.
func TestReferenceDefinitions(t *testing.T) {
	book, n := unitBook(), 0
	for _, k := range Kinds() {
		si, err := evaluate(book, kindTable[k].si)
		if err != nil {
			t.Fatal(err)
		}
		if si.size.Cmp(big.NewRat(1, 1)) != 0 {
			t.Errorf("%s: %s is not an SI unit without factor", k, kindTable[k].si)
		}
		for _, u := range kindTable[k].units {
			n++
			want, err := evaluate(book, u.symbol)
			switch {
			case err != nil:
				t.Errorf("%s: %v", k, err)
			case want.dim != si.dim:
				t.Errorf("%s: %s has dimension %v, want that of %s, %v", k, u.symbol, want.dim, kindTable[k].si, si.dim)
			case ratio(u.factor).Cmp(want.size) != 0:
				t.Errorf("%s: 1 %s = %s %s, want %s", k, u.symbol, ratio(u.factor).RatString(), kindTable[k].si,
					want.size.RatString())
			}
		}
	}
	t.Logf("%d units of %d kinds", n, len(Kinds()))
}

// typedConstants pairs every exported unit constant with its symbol.
var typedConstants = map[string]struct {
	value  float64
	symbol string
	text   string // the constant as its type prints it
}{
	"Nanometre": typed(Nanometre, "nm"), "Micrometre": typed(Micrometre, "µm"), "Millimetre": typed(Millimetre, "mm"),
	"Centimetre": typed(Centimetre, "cm"), "Metre": typed(Metre, "m"), "Microinch": typed(Microinch, "µin"),
	"Mil": typed(Mil, "mil"), "Inch": typed(Inch, "in"), "Foot": typed(Foot, "ft"),

	"SquareMillimetre": typed(SquareMillimetre, "mm²"), "SquareCentimetre": typed(SquareCentimetre, "cm²"),
	"SquareDecimetre": typed(SquareDecimetre, "dm²"), "SquareMetre": typed(SquareMetre, "m²"),
	"SquareInch": typed(SquareInch, "in²"), "SquareFoot": typed(SquareFoot, "ft²"),

	"CubicMillimetre": typed(CubicMillimetre, "mm³"), "CubicCentimetre": typed(CubicCentimetre, "cm³"),
	"Millilitre": typed(Millilitre, "mL"), "Litre": typed(Litre, "L"), "CubicMetre": typed(CubicMetre, "m³"),
	"CubicInch": typed(CubicInch, "in³"), "CubicFoot": typed(CubicFoot, "ft³"),
	"USGallon": typed(USGallon, "US gal"), "ImperialGallon": typed(ImperialGallon, "imp gal"),

	"Microgram": typed(Microgram, "µg"), "Milligram": typed(Milligram, "mg"), "Gram": typed(Gram, "g"),
	"Kilogram": typed(Kilogram, "kg"), "Grain": typed(Grain, "gr"), "Pennyweight": typed(Pennyweight, "dwt"),
	"TroyOunce": typed(TroyOunce, "ozt"), "Ounce": typed(Ounce, "oz"), "Pound": typed(Pound, "lb"),

	"KilogramPerCubicMetre":  typed(KilogramPerCubicMetre, "kg/m³"),
	"GramPerCubicCentimetre": typed(GramPerCubicCentimetre, "g/cm³"),

	"GramPerSquareMetre":           typed(GramPerSquareMetre, "g/m²"),
	"MilligramPerSquareCentimetre": typed(MilligramPerSquareCentimetre, "mg/cm²"),
	"GramPerSquareDecimetre":       typed(GramPerSquareDecimetre, "g/dm²"),
	"KilogramPerSquareMetre":       typed(KilogramPerSquareMetre, "kg/m²"),
	"MilligramPerSquareInch":       typed(MilligramPerSquareInch, "mg/in²"),
	"OuncePerSquareFoot":           typed(OuncePerSquareFoot, "oz/ft²"),
	"TroyOuncePerSquareFoot":       typed(TroyOuncePerSquareFoot, "ozt/ft²"),

	"MilligramPerLitre":            typed(MilligramPerLitre, "mg/L"),
	"GramPerLitre":                 typed(GramPerLitre, "g/L"),
	"OuncePerUSGallon":             typed(OuncePerUSGallon, "oz/US gal"),
	"OuncePerImperialGallon":       typed(OuncePerImperialGallon, "oz/imp gal"),
	"TroyOuncePerUSGallon":         typed(TroyOuncePerUSGallon, "ozt/US gal"),
	"TroyOuncePerImperialGallon":   typed(TroyOuncePerImperialGallon, "ozt/imp gal"),
	"PennyweightPerUSGallon":       typed(PennyweightPerUSGallon, "dwt/US gal"),
	"PennyweightPerImperialGallon": typed(PennyweightPerImperialGallon, "dwt/imp gal"),
	"PoundPerUSGallon":             typed(PoundPerUSGallon, "lb/US gal"),

	"Millimole": typed(Millimole, "mmol"), "Mole": typed(Mole, "mol"),
	"GramPerMole": typed(GramPerMole, "g/mol"), "KilogramPerMole": typed(KilogramPerMole, "kg/mol"),
	"MolePerCubicMetre": typed(MolePerCubicMetre, "mol/m³"), "MillimolePerLitre": typed(MillimolePerLitre, "mmol/L"),
	"MolePerLitre": typed(MolePerLitre, "mol/L"),

	"Milliampere": typed(Milliampere, "mA"), "Ampere": typed(Ampere, "A"),
	"AmperePerSquareMetre":           typed(AmperePerSquareMetre, "A/m²"),
	"AmperePerSquareDecimetre":       typed(AmperePerSquareDecimetre, "A/dm²"),
	"MilliamperePerSquareCentimetre": typed(MilliamperePerSquareCentimetre, "mA/cm²"),
	"AmperePerSquareFoot":            typed(AmperePerSquareFoot, "A/ft²"),
	"AmperePerSquareInch":            typed(AmperePerSquareInch, "A/in²"),
	"Coulomb":                        typed(Coulomb, "C"), "AmpereSecond": typed(AmpereSecond, "A·s"),
	"AmpereMinute": typed(AmpereMinute, "A·min"),
	"AmpereHour":   typed(AmpereHour, "A·h"), "MilliampereHour": typed(MilliampereHour, "mA·h"),

	"KilogramPerCoulomb": typed(KilogramPerCoulomb, "kg/C"), "MilligramPerCoulomb": typed(MilligramPerCoulomb, "mg/C"),
	"GramPerAmpereHour": typed(GramPerAmpereHour, "g/(A·h)"), "GramPerAmpereMinute": typed(GramPerAmpereMinute,
		"g/(A·min)"),
	"TroyOuncePerAmpereHour": typed(TroyOuncePerAmpereHour, "ozt/(A·h)"),

	"Millivolt": typed(Millivolt, "mV"), "Volt": typed(Volt, "V"),
	"Milliohm": typed(Milliohm, "mΩ"), "Ohm": typed(Ohm, "Ω"),
	"OhmSquareCentimetre": typed(OhmSquareCentimetre, "Ω·cm²"), "OhmSquareMetre": typed(OhmSquareMetre, "Ω·m²"),
	"SiemensPerMetre": typed(SiemensPerMetre, "S/m"), "MillisiemensPerCentimetre": typed(MillisiemensPerCentimetre,
		"mS/cm"),
	"SiemensPerCentimetre": typed(SiemensPerCentimetre, "S/cm"),
	"Milliwatt":            typed(Milliwatt, "mW"), "Watt": typed(Watt, "W"), "Kilowatt": typed(Kilowatt, "kW"),
	"Joule": typed(Joule, "J"), "Kilojoule": typed(Kilojoule, "kJ"), "WattHour": typed(WattHour, "W·h"),
	"KilowattHour": typed(KilowattHour, "kW·h"),

	"Kelvin": typed(Kelvin, "K"), "FahrenheitDegree": typed(FahrenheitDegree, "°F"),

	"Millisecond": typed(Millisecond, "ms"), "Second": typed(Second, "s"), "Minute": typed(Minute, "min"),
	"Hour": typed(Hour, "h"), "Day": typed(Day, "d"),
	"Pascal": typed(Pascal, "Pa"), "Hectopascal": typed(Hectopascal, "hPa"), "Kilopascal": typed(Kilopascal, "kPa"),
	"Megapascal": typed(Megapascal, "MPa"),
	"Bar":        typed(Bar, "bar"), "Atmosphere": typed(Atmosphere, "atm"),
	"MetrePerSecond": typed(MetrePerSecond, "m/s"), "MicrometrePerSecond": typed(MicrometrePerSecond, "µm/s"),
	"MicrometrePerMinute": typed(MicrometrePerMinute, "µm/min"), "MicrometrePerHour": typed(MicrometrePerHour, "µm/h"),
	"SquareMetrePerSecond":      typed(SquareMetrePerSecond, "m²/s"),
	"SquareCentimetrePerSecond": typed(SquareCentimetrePerSecond, "cm²/s"),
}

func typed[Q interface {
	Quantity
	Text(unit Q, decimals int) string
}](v Q, symbol string) struct {
	value        float64
	symbol, text string
} {
	return struct {
		value        float64
		symbol, text string
	}{float64(v), symbol, v.Text(v, -1)}
}

// TestReferenceConstants holds every exported unit constant against the
// float64 nearest to its definition, and its printed form against the symbol.
func TestReferenceConstants(t *testing.T) {
	book := unitBook()
	// Of units of one size the first of the table names them all.
	sameSize := map[string]string{"cm³": "mL", "A·s": "C", "mol/m³": "mmol/L"}
	for name, c := range typedConstants {
		want, err := evaluate(book, c.symbol)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if nearest, _ := want.size.Float64(); c.value != nearest {
			t.Errorf("%s = %v, want the float64 nearest to %s: %v", name, c.value, want.size.RatString(), nearest)
		}
		printed := c.symbol
		if other := sameSize[printed]; other != "" {
			printed = other
		}
		if c.text != "1 "+printed {
			t.Errorf("%s prints as %q, want %q", name, c.text, "1 "+printed)
		}
	}
	for _, name := range exportedConstants(t) {
		if _, found := typedConstants[name]; !found {
			t.Errorf("constant %s has no definition in this test", name)
		}
	}
}

// exportedConstants lists the exported constants of the package, but for the
// kinds and the temperature scales.
func exportedConstants(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
				for _, spec := range g.Specs {
					for _, id := range spec.(*ast.ValueSpec).Names {
						if id.IsExported() && !strings.HasPrefix(id.Name, "Kind") && !strings.HasSuffix(id.Name, "Scale") {
							names = append(names, id.Name)
						}
					}
				}
			}
		}
	}
	if len(names) < 100 {
		t.Fatalf("only %d constants found", len(names))
	}
	return names
}

// TestReferenceZeroPoints: 0 °C is 273.15 K, and 32 °F is 0 °C, exactly.
func TestReferenceZeroPoints(t *testing.T) {
	if got := offset(KindTemperature, "°C"); got.Cmp(number("273.15")) != 0 {
		t.Errorf("0 °C = %s K", got.RatString())
	}
	freezing := new(big.Rat).Mul(number("32"), number("5/9"))
	if got := offset(KindTemperature, "°F"); freezing.Add(freezing, got).Cmp(number("273.15")) != 0 {
		t.Errorf("32 °F = %s K", freezing.RatString())
	}
	for _, k := range Kinds() {
		for _, u := range kindTable[k].units {
			if off := offset(k, u.symbol); off != nil && k != KindTemperature {
				t.Errorf("%s: %s has a zero point %v of its own", k, u.symbol, off)
			}
		}
	}
}
