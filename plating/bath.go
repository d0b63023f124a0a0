package plating

import (
	"strconv"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// An OperatingBath is a plating solution as it is run, named by its chemistry, with what an estimate
// asks of it. Deposit and Efficiency are needed; a field left zero is "not
// given" and the checks that want it are left out and said to be.
type OperatingBath struct {
	Name    string             // by chemistry: "gold, acid cyanide, cobalt hardened"
	Metal   string             // symbol of the metal that is counted and counted: "Au"
	Deposit faraday.Deposit    // what is laid: equivalent and density
	Fine    units.MassFraction // share of Metal in the deposit's mass; 0 means all of it

	Efficiency  EfficiencyCurve      // current efficiency, by current density
	Window      CurrentDensityWindow // current densities the bath is run at
	Volts       VoltageWindow        // what the rectifier will show
	Temperature TemperatureWindow    // as set, with its window

	PH      PHWindow        // range that it is kept in
	Salt    faraday.Formula // that it is fed with; the zero Formula: not given
	Anode   string          // of what: "platinised titanium"; "" for not given
	Vessel  Vessel          // of what the tank is made
	Valence int             // that Metal is deposited from; 0: not given

	Content   units.MassConcentration // of Metal in the bath
	Volume    units.Volume            // of the bath, for what is left
	DrawLimit units.Ratio             // share of Content that may go before the bath is fed; 0 means 10 %

	MaxThickness units.Length // what the bath is used for at most

	InsolubleAnode bool   // graphite, platinised or stainless: it does not replace the metal
	Hazards        Hazard // as listed; see [OperatingBath.AllHazards]
	Source         string // where the figures come from, for the sheet
}

// A CurrentDensityWindow is a range of current densities. Zero ends are "not given".
type CurrentDensityWindow struct{ Low, High units.CurrentDensity }

// String returns the window in words, "not given" when it is empty.
func (w CurrentDensityWindow) String() string {
	switch {
	case w == CurrentDensityWindow{}:
		return "not given"
	case w.High == 0:
		return short(w.Low) + " and more"
	case w.Low == 0:
		return "up to " + short(w.High)
	}
	return short(w.Low) + " to " + short(w.High)
}

// A VoltageWindow is the range the rectifier will show. It is an expectation,
// not a setting: the current sets the coat. Zero means "not given".
type VoltageWindow struct{ Low, High units.Voltage }

// A TemperatureWindow is a range of bath temperatures with the one in use.
// Zero means "not given".
type TemperatureWindow struct{ Low, High, Set units.Temperature }

// fine returns the share of the counted metal, 1 when it is not given.
func (b *OperatingBath) fine() units.MassFraction {
	if b.Fine == 0 {
		return 1
	}
	return b.Fine
}

// DefaultDrawLimit is the share of a bath's metal that may go before it is fed
// when the bath does not say (common practice, no source).
const DefaultDrawLimit units.Ratio = 0.1

// drawLimit returns the share of the metal that may go.
func (b *OperatingBath) drawLimit() units.Ratio {
	if b.DrawLimit == 0 {
		return DefaultDrawLimit
	}
	return b.DrawLimit
}

// Check returns a [*units.ValueError] for the first field that no estimate can
// take: NaN, negative, ends of a window the wrong way round.
func (b *OperatingBath) Check() error {
	if b == nil {
		return units.Missing("bath", "the bath that plates")
	}
	if err := b.Deposit.Check(); err != nil {
		return err
	}
	if err := units.Fraction("share of the counted metal in the deposit", b.Fine); err != nil {
		return err
	}
	if b.Efficiency.IsZero() {
		return &units.ValueError{Field: "current efficiency", Value: "not given",
			Need: "a fraction above 0 and at most 1, or a curve", Err: units.ErrNotPositive}
	}
	if len(b.Efficiency.points) == 0 {
		if err := units.PositiveFraction("current efficiency", b.Efficiency.constant); err != nil {
			return err
		}
	}
	if err := checkWindow("current density window", b.Window.Low, b.Window.High); err != nil {
		return err
	}
	if err := checkWindow("voltage window", b.Volts.Low, b.Volts.High); err != nil {
		return err
	}
	if err := checkWindow("temperature window", b.Temperature.Low, b.Temperature.High); err != nil {
		return err
	}
	for _, err := range []error{
		units.NonNegative("bath temperature", b.Temperature.Set), sense.Solution().CheckAs("bath temperature",
			b.Temperature.Set),
		sense.Solution().CheckAs("low end of the temperature window", b.Temperature.Low),
		sense.Solution().CheckAs("high end of the temperature window", b.Temperature.High),
		units.NonNegative("metal content", b.Content), sense.Content().Check(b.Content),
		units.NonNegative("bath volume", b.Volume), sense.Volume().Check(b.Volume),
		sense.Volts().CheckAs("high end of the voltage window", b.Volts.High),
		sense.CurrentDensity().CheckAs("high end of the current density window", b.Window.High),
	} {
		if err != nil {
			return err
		}
	}
	if err := units.Fraction("draw limit", b.DrawLimit); err != nil {
		return err
	}
	if b.Valence < 0 || b.Valence > 8 {
		return &units.ValueError{Field: "valence", Value: strconv.Itoa(b.Valence), Need: "1 to 8, or 0 for not given",
			Err: units.ErrOutOfRange}
	}
	if err := b.PH.Check(); err != nil {
		return err
	}
	return units.NonNegative("maximum thickness", b.MaxThickness)
}

// checkWindow wants 0 ≤ low ≤ high, both finite; an end of zero is not given.
func checkWindow[Q units.Quantity](name string, low, high Q) error {
	if low >= 0 && low <= high && high-high == 0 {
		return nil
	}
	if err := units.NonNegative("low end of the "+name, low); err != nil {
		return err
	}
	if err := units.NonNegative("high end of the "+name, high); err != nil {
		return err
	}
	if high == 0 {
		return nil // only the low end is given
	}
	return &units.ValueError{Field: name, Value: low.String() + " to " + high.String(),
		Need: "the low end first", Err: units.ErrInconsistent}
}

// valence returns the valence that the counted metal is deposited from: as
// given, else the one that fits the equivalent of the deposit within 5 %, 0 when
// none does.
func (b *OperatingBath) valence() int {
	if b.Valence != 0 {
		return b.Valence
	}
	return faraday.FittingValence(b.Metal, b.Deposit.Equivalent)
}
