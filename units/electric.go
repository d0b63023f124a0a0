package units

// A Current in amperes.
type Current float64

// Units of current.
const (
	Milliampere Current = 1e-3
	Ampere      Current = 1
)

// A CurrentDensity in amperes per square metre of electrode.
type CurrentDensity float64

// Units of current density. The trade's two are 9.290304 apart:
// 1 A/dm² is 9.290304 A/ft².
const (
	AmperePerSquareMetre           CurrentDensity = 1
	AmperePerSquareDecimetre       CurrentDensity = 100
	MilliamperePerSquareCentimetre CurrentDensity = 10
	AmperePerSquareFoot            CurrentDensity = 1 / (foot * foot)
	AmperePerSquareInch            CurrentDensity = 1 / (inch * inch)
)

// A Charge in coulombs (ampere-seconds).
type Charge float64

// Units of charge.
const (
	Coulomb         Charge = 1
	AmpereSecond    Charge = 1
	AmpereMinute    Charge = 60
	AmpereHour      Charge = 3600
	MilliampereHour Charge = 3.6
)

// An Equivalent is an electrochemical equivalent in kilograms per coulomb:
// the mass that one unit of charge deposits when all of it deposits.
type Equivalent float64

// Units of the electrochemical equivalent.
const (
	KilogramPerCoulomb     Equivalent = 1
	MilligramPerCoulomb    Equivalent = 1e-6
	GramPerAmpereHour      Equivalent = 1e-3 / 3600
	GramPerAmpereMinute    Equivalent = 1e-3 / 60
	TroyOuncePerAmpereHour Equivalent = troyOunce / 3600
)

// A Voltage in volts.
type Voltage float64

// Units of voltage.
const (
	Millivolt Voltage = 1e-3
	Volt      Voltage = 1
)

// A Resistance in ohms.
type Resistance float64

// Units of resistance.
const (
	Milliohm Resistance = 1e-3
	Ohm      Resistance = 1
)

// An AreaResistance in ohm square metres: the slope of a voltage against a
// current density, as of a polarised electrode.
type AreaResistance float64

// Units of area resistance.
const (
	OhmSquareCentimetre AreaResistance = 1e-4
	OhmSquareMetre      AreaResistance = 1
)

// A Conductivity in siemens per metre.
type Conductivity float64

// Units of conductivity.
const (
	SiemensPerMetre           Conductivity = 1
	MillisiemensPerCentimetre Conductivity = 0.1
	SiemensPerCentimetre      Conductivity = 100
)

// A Power in watts.
type Power float64

// Units of power.
const (
	Milliwatt Power = 1e-3
	Watt      Power = 1
	Kilowatt  Power = 1000
)

// An Energy in joules.
type Energy float64

// Units of energy.
const (
	Joule        Energy = 1
	Kilojoule    Energy = 1000
	WattHour     Energy = 3600
	KilowattHour Energy = 3.6e6
)

// Over returns the current that density j carries over area a.
func (j CurrentDensity) Over(a Area) Current { return Current(float64(j) * float64(a)) }

// For returns the charge that current i carries in time t.
func (i Current) For(t Duration) Charge { return Charge(float64(i) * float64(t)) }

// Through returns the voltage of current i through resistance r (Ohm's law).
func (i Current) Through(r Resistance) Voltage { return Voltage(float64(i) * float64(r)) }

// At returns the power of current i at voltage u.
func (i Current) At(u Voltage) Power { return Power(float64(i) * float64(u)) }

// For returns the energy that power p delivers in time t.
func (p Power) For(t Duration) Energy { return Energy(float64(p) * float64(t)) }

// PerArea returns the density of current i over area a.
//
// Errors: a [*ValueError] when a is not above zero or i is not finite.
func (i Current) PerArea(a Area) (CurrentDensity, error) {
	return quotient[CurrentDensity]("current", i, "area", a)
}

// At returns how long current i takes to carry charge q.
//
// Errors: a [*ValueError] when i is not above zero or q is not finite.
func (q Charge) At(i Current) (Duration, error) {
	return quotient[Duration]("charge", q, "current", i)
}

// PerTime returns the mean current that carries charge q in time t.
//
// Errors: a [*ValueError] when t is not above zero or q is not finite.
func (q Charge) PerTime(t Duration) (Current, error) {
	return quotient[Current]("charge", q, "time", t)
}

// Across returns the current that voltage u drives through resistance r.
//
// Errors: a [*ValueError] when r is not above zero or u is not finite.
func (u Voltage) Across(r Resistance) (Current, error) {
	return quotient[Current]("voltage", u, "resistance", r)
}

// PerCurrent returns the resistance that takes voltage u at current i.
//
// Errors: a [*ValueError] when i is not above zero or u is not finite.
func (u Voltage) PerCurrent(i Current) (Resistance, error) {
	return quotient[Resistance]("voltage", u, "current", i)
}

// PerTime returns the mean power of energy e delivered in time t.
//
// Errors: a [*ValueError] when t is not above zero or e is not finite.
func (e Energy) PerTime(t Duration) (Power, error) {
	return quotient[Power]("energy", e, "time", t)
}

// Of returns the mass that charge q deposits when all of it deposits.
func (e Equivalent) Of(q Charge) Mass { return Mass(float64(e) * float64(q)) }
