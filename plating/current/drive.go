package current

import (
	"bytes"
	"encoding/json"
	"strconv"

	"example.com/laydown/units"
)

// A Drive is what the rectifier holds: the total current, or the voltage between
// the poles. Make one with [ByCurrent] or [ByVoltage]; the zero Drive holds neither
// and is refused.
type Drive struct {
	held    held
	current units.Current
	voltage units.Voltage
}

type held uint8

const (
	nothing held = iota
	theCurrent
	theVoltage
)

// ByCurrent drives the cell by the total current that leaves the bath at the
// cathodes, robbers included.
func ByCurrent(total units.Current) Drive { return Drive{held: theCurrent, current: total} }

// ByVoltage drives the cell by the voltage of the anodes against the cathodes; in a
// bath without walls and anodes, of the bath far away. Equilibrium potentials are
// not part of it: add their difference to get what a meter shows.
func ByVoltage(between units.Voltage) Drive { return Drive{held: theVoltage, voltage: between} }

// Current returns the current that is held; false where it is not the current.
func (d Drive) Current() (units.Current, bool) { return d.current, d.held == theCurrent }

// Voltage returns the voltage that is held; false where it is not the voltage.
func (d Drive) Voltage() (units.Voltage, bool) { return d.voltage, d.held == theVoltage }

// String returns what is held, such as "300 mA".
func (d Drive) String() string {
	switch d.held {
	case theCurrent:
		return d.current.String()
	case theVoltage:
		return d.voltage.String()
	}
	return "no drive"
}

// Scaled returns a drive that holds so many times as much; the zero Drive stays zero.
func (d Drive) Scaled(times float64) Drive {
	d.current *= units.Current(times)
	d.voltage *= units.Voltage(times)
	return d
}

// Check returns a [*units.ValueError] for the zero Drive, a current that is not above
// zero, and a voltage that is not finite. A solver may want more: where no surface
// has a bias, a voltage of zero or less drives nothing.
func (d Drive) Check() error {
	switch d.held {
	case theCurrent:
		return units.Positive("total current", d.current)
	case theVoltage:
		return units.Finite("voltage", d.voltage)
	}
	return &units.ValueError{Field: "drive", Value: "none", Need: "ByCurrent or ByVoltage", Err: units.ErrNotPositive}
}

// MarshalJSON writes {"current":"0.3 A"} or {"voltage":"2 V"}, without loss.
//
// Errors: those of [Drive.Check].
func (d Drive) MarshalJSON() ([]byte, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	if d.held == theCurrent {
		return json.Marshal(map[string]units.Current{"current": d.current})
	}
	return json.Marshal(map[string]units.Voltage{"voltage": d.voltage})
}

// UnmarshalJSON reads what MarshalJSON writes: an object with one member, the current
// or the voltage, with its unit. On an error it leaves d alone.
//
// Errors: a [*units.ValueError] for anything else, for no member, another one or more
// than one, and those of [Drive.Check]; a [*units.ParseError] for a quantity that is
// not understood.
func (d *Drive) UnmarshalJSON(text []byte) error {
	if d == nil {
		return units.Missing("drive to read into", "a pointer to one")
	}
	name, value, err := member(text)
	if err != nil {
		return err
	}
	var got Drive
	switch name {
	case "current":
		got.held = theCurrent
		err = got.current.UnmarshalText([]byte(value))
	case "voltage":
		got.held = theVoltage
		err = got.voltage.UnmarshalText([]byte(value))
	default:
		return badDrive("a member " + strconv.Quote(units.Clip(name)))
	}
	if err == nil {
		err = got.Check()
	}
	if err == nil {
		*d = got
	}
	return err
}

// member returns name and text of the one member of an object. It goes by tokens:
// a decoder into a struct would take the last of two members of one name, names in
// other letters, and null for nothing said.
func member(text []byte) (name, value string, err error) {
	in := json.NewDecoder(bytes.NewReader(text))
	next := func() json.Token {
		t, failed := in.Token()
		if failed != nil {
			return nil
		}
		return t
	}
	if next() != json.Delim('{') {
		return "", "", badDrive("not an object")
	}
	name, named := next().(string)
	if !named {
		return "", "", badDrive("an object without a member")
	}
	value, worded := next().(string)
	if !worded {
		return "", "", badDrive(strconv.Quote(units.Clip(name)) + " without a text")
	}
	if next() != json.Delim('}') {
		return "", "", badDrive("more than one member")
	}
	return name, value, nil
}

func badDrive(value string) error {
	return &units.ValueError{Field: "drive", Value: value, Need: `{"current":"0.3 A"} or {"voltage":"2 V"}`,
		Err: units.ErrSyntax}
}
