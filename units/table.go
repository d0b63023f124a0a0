package units

// A unit is one row of the table of accepted units.
type unit struct {
	symbol string // as printed
	factor string // how many SI units it is: an exact decimal or quotient of two
	also   string // further spellings, normalised, separated by blanks
}

// A kindRow is what the package knows about one kind.
type kindRow struct {
	name   string
	si     string // symbol of the SI unit, used for lossless text
	ladder string // symbols that String chooses from, smallest first
	units  []unit
}

// kindTable is read only. Factors are exact: the tests hold each against its
// legal definition, and against the typed constants of this package.
var kindTable = [kindEnd]kindRow{
	KindNone: {name: "quantity"},
	KindLength: {"length", "m", "µm,mm,m", []unit{
		{"m", "1", ""}, {"cm", "0.01", ""}, {"mm", "0.001", ""},
		{"µm", "0.000001", "micron microns"}, {"nm", "1e-9", ""},
		{"in", "0.0254", "inch inches"}, {"ft", "0.3048", "foot feet"},
		{"mil", "0.0000254", "thou mils"}, {"µin", "0.0000000254", "microinch microinches"},
	}},
	KindArea: {"area", "m²", "cm²,m²", []unit{
		{"m²", "1", ""}, {"dm²", "0.01", ""}, {"cm²", "0.0001", ""}, {"mm²", "0.000001", ""},
		{"in²", "0.00064516", "sqin"}, {"ft²", "0.09290304", "sqft"},
	}},
	KindVolume: {"volume", "m³", "mL,L", []unit{
		{"L", "0.001", "l"}, {"mL", "0.000001", "ml"}, {"m³", "1", ""}, {"dm³", "0.001", ""},
		{"cm³", "0.000001", "cc"}, {"mm³", "1e-9", ""}, {"in³", "0.000016387064", ""}, {"ft³", "0.028316846592", ""},
		{"US gal", "0.003785411784", "usgal"}, {"imp gal", "0.00454609", "impgal UK·gal"},
	}},
	KindMass: {"mass", "kg", "mg,g,kg", []unit{
		{"g", "0.001", ""}, {"mg", "0.000001", ""}, {"µg", "1e-9", ""}, {"kg", "1", ""},
		{"gr", "0.00006479891", "grain grains"}, {"dwt", "0.00155517384", "pennyweight pennyweights"},
		{"ozt", "0.0311034768", "oz·t troy·oz"}, {"oz", "0.028349523125", "ozav"}, {"lb", "0.45359237", "lbs"},
	}},
	KindDensity: {"density", "kg/m³", "g/cm³", []unit{
		{"g/cm³", "1000", "g/cc g/mL g/ml"}, {"kg/m³", "1", ""}, {"kg/L", "1000", "kg/l"},
		{"lb/in³", "0.45359237/0.000016387064", ""},
	}},
	KindMassPerArea: {"mass per area", "kg/m²", "mg/cm²", []unit{
		{"mg/cm²", "0.01", ""}, {"g/m²", "0.001", ""}, {"g/dm²", "0.1", ""}, {"kg/m²", "1", ""},
		{"mg/in²", "0.000001/0.00064516", ""}, {"g/ft²", "0.001/0.09290304", ""},
		{"oz/ft²", "0.028349523125/0.09290304", ""}, {"ozt/ft²", "0.0311034768/0.09290304", ""},
	}},
	KindMassConcentration: {"mass concentration", "kg/m³", "mg/L,g/L", []unit{
		{"g/L", "1", "g/l"}, {"mg/L", "0.001", "mg/l"}, {"kg/m³", "1", ""}, {"g/mL", "1000", "g/ml g/cm3"},
		{"oz/US gal", "0.028349523125/0.003785411784", "oz/usgal"},
		{"oz/imp gal", "0.028349523125/0.00454609", "oz/impgal oz/UK·gal"},
		{"ozt/US gal", "0.0311034768/0.003785411784", "ozt/usgal"},
		{"ozt/imp gal", "0.0311034768/0.00454609", "ozt/impgal ozt/UK·gal"},
		{"dwt/US gal", "0.00155517384/0.003785411784", "dwt/usgal"},
		{"dwt/imp gal", "0.00155517384/0.00454609", "dwt/impgal dwt/UK·gal"},
		{"lb/US gal", "0.45359237/0.003785411784", "lb/usgal"},
	}},
	KindAmount:    {"amount of substance", "mol", "mmol,mol", []unit{{"mol", "1", ""}, {"mmol", "0.001", ""}}},
	KindMolarMass: {"molar mass", "kg/mol", "g/mol", []unit{{"g/mol", "0.001", ""}, {"kg/mol", "1", ""}}},
	KindAmountConcentration: {"amount concentration", "mol/m³", "mol/L", []unit{{"mol/L", "1000", "mol/l mol/dm3"},
		{"mmol/L", "1", "mmol/l"}, {"mol/m³", "1", ""}}},
	KindCurrent: {"current", "A", "mA,A", []unit{{"A", "1", ""}, {"mA", "0.001", ""}, {"kA", "1000", ""}}},
	KindCurrentDensity: {"current density", "A/m²", "A/dm²", []unit{
		{"A/dm²", "100", ""}, {"A/m²", "1", ""}, {"mA/cm²", "10", ""}, {"A/cm²", "10000", ""},
		{"A/ft²", "1/0.09290304", "A/sqft"}, {"A/in²", "1/0.00064516", "A/sqin"},
	}},
	KindCharge: {"charge", "C", "A·s,A·min,A·h", []unit{
		{"C", "1", ""}, {"A·s", "1", "As"}, {"A·min", "60", "Amin"}, {"A·h", "3600", "Ah"}, {"mA·h", "3.6", "mAh"},
		{"mA·s", "0.001", ""}, {"mA·min", "0.06", ""},
	}},
	KindEquivalent: {"electrochemical equivalent", "kg/C", "g/(A·h)", []unit{
		{"g/(A·h)", "0.001/3600", "g/A·h g/Ah g/(Ah)"}, {"mg/C", "0.000001", "mg/(A·s) mg/As"}, {"kg/C", "1", ""}, {"g/C",
			"0.001", ""},
		{"g/(A·min)", "0.001/60", "g/A·min g/Amin"}, {"ozt/(A·h)", "0.0311034768/3600", "ozt/A·h ozt/Ah"},
	}},
	KindVoltage:        {"voltage", "V", "mV,V", []unit{{"V", "1", ""}, {"mV", "0.001", ""}, {"kV", "1000", ""}}},
	KindResistance:     {"resistance", "Ω", "mΩ,Ω", []unit{{"Ω", "1", "Ohm"}, {"mΩ", "0.001", "mOhm"}}},
	KindAreaResistance: {"area resistance", "Ω·m²", "Ω·cm²", []unit{{"Ω·cm²", "0.0001", ""}, {"Ω·m²", "1", ""}}},
	KindConductivity: {"conductivity", "S/m", "S/m", []unit{{"S/m", "1", ""}, {"mS/cm", "0.1", ""}, {"S/cm", "100",
		""}}},
	KindPower: {"power", "W", "mW,W,kW", []unit{{"W", "1", ""}, {"mW", "0.001", ""}, {"kW", "1000", ""}}},
	KindEnergy: {"energy", "J", "J,W·h,kW·h", []unit{{"J", "1", ""}, {"kJ", "1000", ""}, {"W·h", "3600", "Wh"},
		{"kW·h", "3600000", "kWh"}}},
	KindTemperature: {"temperature", "K", "°C", []unit{
		{"°C", "1", "degC deg·C celsius"}, {"°F", "5/9", "degF deg·F fahrenheit"}, {"K", "1", "kelvin"},
	}},
	KindTemperatureDifference: {"temperature difference", "K", "K", []unit{
		{"K", "1", "kelvin"}, {"°C", "1", "degC deg·C"}, {"°F", "5/9", "degF deg·F"},
	}},
	KindDuration: {"duration", "s", "s", []unit{
		{"s", "1", "sec second seconds"}, {"min", "60", "minute minutes"}, {"h", "3600", "hr hour hours"},
		{"d", "86400", "day days"}, {"ms", "0.001", ""}, {"µs", "0.000001", ""},
	}},
	KindPressure: {"pressure", "Pa", "kPa,MPa", []unit{
		{"Pa", "1", ""}, {"hPa", "100", "mbar"}, {"kPa", "1000", ""}, {"MPa", "1000000", "N/mm2"}, {"bar", "100000", ""},
		{"atm", "101325", ""},
		{"psi", "4.4482216152605/0.00064516", ""}, {"ksi", "4448.2216152605/0.00064516", ""},
	}},
	KindSpeed: {"speed", "m/s", "µm/min", []unit{{"µm/min", "0.000001/60", ""}, {"µm/h", "0.000001/3600", ""},
		{"µm/s", "0.000001", ""}, {"mm/s", "0.001", ""}, {"m/s", "1", ""}}},
	KindDiffusivity:  {"diffusivity", "m²/s", "m²/s", []unit{{"m²/s", "1", ""}, {"cm²/s", "0.0001", ""}}},
	KindEfficiency:   {"efficiency", "1", "%", percentUnits},
	KindMassFraction: {"mass fraction", "1", "%", percentUnits},
	KindMoleFraction: {"mole fraction", "1", "%", percentUnits},
	KindRatio:        {"ratio", "1", "1", percentUnits},
}

// percentUnits are those of a number without unit. The symbol 1 is not
// printed: the number alone stands for it.
var percentUnits = []unit{{"1", "1", ""}, {"%", "0.01", "percent pct"}, {"‰", "0.001", "permille"}}
