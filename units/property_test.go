package units_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"example.com/laydown/units"
)

// TestPropertyTextParse: for every unit of every kind, text with the fewest
// digits reads back to the same float64, and so does the lossless text.
func TestPropertyTextParse(t *testing.T) {
	for _, tool := range tools() {
		type size struct {
			symbol string
			si     float64
		}
		var sizes []size
		for _, symbol := range tool.kind.Units() {
			si := 1.0
			if symbol != "1" && tool.kind != units.KindTemperature {
				var err error
				if si, err = tool.parse("1 " + symbol); err != nil {
					t.Fatal(err)
				}
			}
			sizes = append(sizes, size{symbol, si})
		}
		for _, v := range sample(uint64(tool.kind), 64) {
			if !tool.allowed(v) {
				continue
			}
			for i, u := range sizes {
				text := ""
				switch {
				case tool.text != nil:
					text = tool.text(v, u.si, -1)
				case tool.kind == units.KindTemperature:
					text = units.Temperature(v).Text(units.Scale(i), -1)
				default:
					text = percent(tool.kind, v)
				}
				if got, err := tool.parse(text); got != v || err != nil {
					t.Errorf("%s %v in %s: %q reads as %v, %v", tool.kind, v, u.symbol, text, got, err)
				}
			}
			b, err := tool.marshal(v)
			if err != nil {
				t.Fatal(err)
			}
			if got, err := tool.unmarshal(0, b); got != v || err != nil {
				t.Errorf("%s %v: %q reads as %v, %v", tool.kind, v, b, got, err)
			}
		}
	}
}

func percent(k units.QuantityKind, v float64) string {
	switch k {
	case units.KindEfficiency:
		return units.Efficiency(v).Percent(-1)
	case units.KindMassFraction:
		return units.MassFraction(v).Percent(-1)
	case units.KindMoleFraction:
		return units.MoleFraction(v).Percent(-1)
	}
	return units.Ratio(v).Percent(-1)
}

// TestPropertyStringReads: what String writes for people can be read, and is
// right to six digits (times of a minute or more: to the second).
func TestPropertyStringReads(t *testing.T) {
	for _, tool := range tools() {
		for _, v := range sample(1000+uint64(tool.kind), 400) {
			if !tool.allowed(v) || math.Abs(v) > 1.79e308 { // six digits may round up beyond float64
				continue
			}
			text := tool.str(v)
			if len(text) > 40 {
				t.Errorf("%s: %q is no text for people", tool.kind, text)
			}
			got, err := tool.parse(text)
			tol := 5.0001e-6*math.Abs(v) + 5e-324
			switch tool.kind {
			case units.KindTemperature:
				tol = 5.0001e-6*math.Abs(v-273.15) + 1e-13
			case units.KindDuration:
				if v >= 60 && v < 1e15 {
					tol = 0.5
				}
			}
			if err != nil || math.Abs(got-v) > tol {
				t.Errorf("%s %v: String is %q, which reads as %v, %v", tool.kind, v, text, got, err)
			}
		}
	}
}

// TestPropertyConvert: into every unit of the kind and back is the identity,
// and Convert agrees with Text.
func TestPropertyConvert(t *testing.T) {
	for _, tool := range tools() {
		if tool.kind == units.KindTemperatureDifference {
			continue // Convert reads °C as a temperature
		}
		for _, v := range sample(2000+uint64(tool.kind), 36) {
			if !tool.allowed(v) {
				continue
			}
			start, err := tool.marshal(v)
			if err != nil {
				t.Fatal(err)
			}
			for _, symbol := range tool.kind.Units() {
				out, err := units.Convert(string(start), symbol)
				if err != nil {
					t.Errorf("%s to %s: %v", start, symbol, err)
					continue
				}
				if back, err := tool.parse(out); back != v || err != nil {
					t.Errorf("%s to %s: %q reads as %v, %v", start, symbol, out, back, err)
				}
			}
		}
	}
}

// TestPropertyMonotone: a longer reading is never a smaller quantity.
func TestPropertyMonotone(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for _, tool := range tools() {
		for _, symbol := range tool.kind.Units() {
			if symbol == "1" {
				symbol = ""
			}
			for range 20 {
				a := math.Abs(r.NormFloat64())
				b := math.Nextafter(a, 9)
				x, errA := tool.parse(strconv.FormatFloat(a, 'g', -1, 64) + " " + symbol)
				y, errB := tool.parse(strconv.FormatFloat(b, 'g', -1, 64) + " " + symbol)
				if errA != nil || errB != nil || x > y {
					t.Errorf("%s: %v %s reads as %v, %v %s as %v", tool.kind, a, symbol, x, b, symbol, y)
				}
			}
		}
	}
}

// TestPropertyProducts: each quotient undoes its product to 2 roundings.
func TestPropertyProducts(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	positive := func() float64 { return math.Exp(20*r.Float64() - 10) }
	for range 500 {
		a, b := positive(), positive()
		same := func(name string, got, want float64, err error) {
			if err != nil || math.Abs(got-want) > 4.5e-16*want {
				t.Errorf("%s of %v and %v: %v, want %v (%v)", name, a, b, got, want, err)
			}
		}
		x, err := units.Length(a).Times(units.Length(b)).PerLength(units.Length(b))
		same("rectangle", float64(x), a, err)
		x, err = units.Length(a).Over(units.Area(b)).PerArea(units.Area(b))
		same("coat", float64(x), a, err)
		area, err := units.Area(a).Times(units.Length(b)).PerLength(units.Length(b))
		same("prism", float64(area), a, err)
		x, err = units.Length(a).AtDensity(units.Density(b)).Thickness(units.Density(b))
		same("thickness", float64(x), a, err)
		volume, err := units.Density(b).Of(units.Volume(a)).AtDensity(units.Density(b))
		same("volume", float64(volume), a, err)
		rho, err := units.Density(a).Of(units.Volume(b)).PerVolume(units.Volume(b))
		same("density", float64(rho), a, err)
		c, err := units.MassConcentration(a).Of(units.Volume(b)).DissolvedIn(units.Volume(b))
		same("concentration", float64(c), a, err)
		w, err := units.MassPerArea(a).Over(units.Area(b)).PerArea(units.Area(b))
		same("mass per area", float64(w), a, err)
		j, err := units.CurrentDensity(a).Over(units.Area(b)).PerArea(units.Area(b))
		same("current density", float64(j), a, err)
		time, err := units.Current(b).For(units.Duration(a)).At(units.Current(b))
		same("time", float64(time), a, err)
		i, err := units.Current(a).For(units.Duration(b)).PerTime(units.Duration(b))
		same("current", float64(i), a, err)
		i, err = units.Current(a).Through(units.Resistance(b)).Across(units.Resistance(b))
		same("ohm", float64(i), a, err)
		res, err := units.Current(b).Through(units.Resistance(a)).PerCurrent(units.Current(b))
		same("resistance", float64(res), a, err)
		p, err := units.Power(a).For(units.Duration(b)).PerTime(units.Duration(b))
		same("power", float64(p), a, err)

		// Products that have no quotient: commuting or known factors.
		same("power of current", float64(units.Current(a).At(units.Voltage(b))), a*b, nil)
		same("equivalent", float64(units.Equivalent(a).Of(units.Charge(b))), a*b, nil)
		same("molar mass", float64(units.MolarMass(a).Of(units.Amount(b))), a*b, nil)
		same("growth", float64(units.Speed(a).For(units.Duration(b))), a*b, nil)
	}
}

// TestPropertyProductsCarry: products pass NaN and infinities on, so that the
// formula behind them can refuse them by name.
func TestPropertyProductsCarry(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for name, got := range map[string]float64{
			"area":   float64(units.Length(v).Times(2)),
			"charge": float64(units.Current(2).For(units.Duration(v))),
			"mass":   float64(units.Equivalent(v).Of(2)),
			"°C":     float64(units.Celsius(v)),
			"°F":     float64(units.Fahrenheit(v)),
			"add":    float64(units.Temperature(v).Add(2)),
			"sub":    float64(units.Temperature(v).Sub(2)),
		} {
			if got != v && !(math.IsNaN(v) && math.IsNaN(got)) {
				t.Errorf("%s of %v: %v", name, v, got)
			}
		}
	}
	if v := units.Fahrenheit(math.MaxFloat64); !math.IsInf(float64(v), 1) && v <= math.MaxFloat64/2 {
		t.Errorf("the hottest °F: %v", v)
	}
}

// TestPropertyTemperature: the functions round once, so that every tenth of a
// degree that a thermometer shows prints as shown; the readings undo them.
func TestPropertyTemperature(t *testing.T) {
	for tenth := -2730; tenth <= 10000; tenth++ {
		x := float64(tenth) / 10
		want := strconv.FormatFloat(x, 'f', -1, 64)
		c, f := units.Celsius(x), units.Fahrenheit(x)
		for name, test := range map[string]struct {
			t    units.Temperature
			read float64
			tol  float64
			text string
		}{
			"°C": {c, c.Celsius(), 2e-13, want + " °C"},
			"°F": {f, f.Fahrenheit(), 4e-13, want + " °F"},
		} {
			if test.t > units.Celsius(-17) && test.t < units.Celsius(238) { // baths: what the doc comments promise
				test.tol = map[string]float64{"°C": 6e-14, "°F": 2e-13}[name]
			}
			parsed, err := units.ParseTemperature(test.text)
			if err != nil || math.Abs(float64(parsed-test.t)) > 2.3e-13 {
				t.Errorf("%s: %v, want %v (%v)", test.text, test.t, parsed, err)
			}
			if math.Abs(test.read-x) > test.tol {
				t.Errorf("%s reads as %v %s", test.text, test.read, name)
			}
		}
		if tenth%10 == 0 { // whole degrees are exact numbers, so nothing but the one rounding
			if got := c.Text(units.CelsiusScale, -1); got != want+" °C" {
				t.Errorf("Celsius(%v) prints as %q", x, got)
			}
			if got := f.Text(units.FahrenheitScale, -1); got != want+" °F" {
				t.Errorf("Fahrenheit(%v) prints as %q", x, got)
			}
		}
		if d := c.Sub(units.Celsius(0)); math.Abs(d.In(units.Kelvin)-x) > 2e-13 ||
			math.Abs(float64(units.Celsius(0).Add(d)-c)) > 2.3e-13 {
			t.Errorf("%v °C less 0 °C is %v", x, d)
		}
		if c.Kelvin() != float64(c) {
			t.Errorf("%v K", c.Kelvin())
		}
	}
}

// TestPropertyIn: In undoes multiplying by a unit to 2 roundings.
func TestPropertyIn(t *testing.T) {
	for _, x := range []float64{0, 1, -2.5, 1.0 / 3, 1e12} {
		for name, got := range map[string]float64{
			"µin":    (units.Length(x) * units.Microinch).In(units.Microinch),
			"in²":    (units.Area(x) * units.SquareInch).In(units.SquareInch),
			"gal":    (units.Volume(x) * units.USGallon).In(units.USGallon),
			"dwt":    (units.Mass(x) * units.Pennyweight).In(units.Pennyweight),
			"A/ft²":  (units.CurrentDensity(x) * units.AmperePerSquareFoot).In(units.AmperePerSquareFoot),
			"h":      (units.Duration(x) * units.Hour).In(units.Hour),
			"°F":     (units.TemperatureDifference(x) * units.FahrenheitDegree).In(units.FahrenheitDegree),
			"A·h":    (units.Charge(x) * units.AmpereHour).In(units.AmpereHour),
			"g/cm³":  (units.Density(x) * units.GramPerCubicCentimetre).In(units.GramPerCubicCentimetre),
			"mg/cm²": (units.MassPerArea(x) * units.MilligramPerSquareCentimetre).In(units.MilligramPerSquareCentimetre),
			"g/L":    (units.MassConcentration(x) * units.GramPerLitre).In(units.GramPerLitre),
			"mol":    (units.Amount(x) * units.Mole).In(units.Mole),
			"g/mol":  (units.MolarMass(x) * units.GramPerMole).In(units.GramPerMole),
			"mol/L":  (units.AmountConcentration(x) * units.MolePerLitre).In(units.MolePerLitre),
			"A":      (units.Current(x) * units.Ampere).In(units.Ampere),
			"g/Ah":   (units.Equivalent(x) * units.GramPerAmpereHour).In(units.GramPerAmpereHour),
			"mV":     (units.Voltage(x) * units.Millivolt).In(units.Millivolt),
			"mΩ":     (units.Resistance(x) * units.Milliohm).In(units.Milliohm),
			"Ω·cm²":  (units.AreaResistance(x) * units.OhmSquareCentimetre).In(units.OhmSquareCentimetre),
			"mS/cm":  (units.Conductivity(x) * units.MillisiemensPerCentimetre).In(units.MillisiemensPerCentimetre),
			"kW":     (units.Power(x) * units.Kilowatt).In(units.Kilowatt),
			"kW·h":   (units.Energy(x) * units.KilowattHour).In(units.KilowattHour),
			"bar":    (units.Pressure(x) * units.Bar).In(units.Bar),
			"µm/min": (units.Speed(x) * units.MicrometrePerMinute).In(units.MicrometrePerMinute),
			"cm²/s":  (units.Diffusivity(x) * units.SquareCentimetrePerSecond).In(units.SquareCentimetrePerSecond),
		} {
			if math.Abs(got-x) > 4.5e-16*math.Abs(x) {
				t.Errorf("%v %s reads as %v", x, name, got)
			}
		}
	}
}
