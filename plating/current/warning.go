package current

import (
	"fmt"
	"strconv"

	"example.com/laydown/units"
)

// A Warning says what to beware of in a solution. It does not stop a run.
type Warning struct {
	Code    WarningCode `json:"code"`
	Surface string      `json:"surface,omitempty"` // its name; "" where the warning is about the whole cell
	Text    string      `json:"text"`
}

// String returns the surface and the text.
func (w Warning) String() string {
	if w.Surface == "" {
		return w.Text
	}
	return w.Surface + ": " + w.Text
}

// A WarningCode tells the kinds of warning apart. The zero code is none.
type WarningCode uint8

// The codes.
const (
	Unresolved         WarningCode = iota + 1 // the thinnest spot depends on the mesh
	NarrowGap                                 // a gap of bath smaller than half a panel
	ThinMetal                                 // a body so thin that its panels do not tell its two sides apart
	InfiniteEdge                              // the primary current density has no greatest value
	ZeroCorner                                // the primary current density falls to zero in an inward corner
	Bipolar                                   // floating metal plates at one end and dissolves at the other
	Reversed                                  // part of a cathode dissolves, or of an anode plates
	Unbalanced                                // the currents do not add up
	OverflowedLaw                             // an exponent was held at its limit
	RoughShape                                // the solid angles seen from some panels are off
	LooseApproximation                        // the compressed equations are further off than asked for
	TafelLow                                  // the reverse reaction begins to count against a Tafel law
	codeEnd
)

// WarningCodes returns the words of the codes, from [Unresolved] on.
func WarningCodes() []string {
	return []string{"unresolved", "narrow gap", "thin metal", "infinite edge", "zero corner", "bipolar", "reversed",
		"unbalanced", "overflowed law", "rough shape", "loose approximation", "Tafel low"}
}

// String returns the code in words.
func (c WarningCode) String() string {
	if c == 0 || c >= codeEnd {
		return "unknown warning"
	}
	return WarningCodes()[c-1]
}

// MarshalText writes the code in words.
//
// Errors: a [*units.ValueError] for a number that is no code.
func (c WarningCode) MarshalText() ([]byte, error) {
	if c == 0 || c >= codeEnd {
		return nil, badWord("code of a warning", strconv.Itoa(int(c)), WarningCodes())
	}
	return []byte(c.String()), nil
}

// UnmarshalText reads what MarshalText writes. On an error it leaves c alone.
//
// Errors: a [*units.ValueError] that lists the codes.
func (c *WarningCode) UnmarshalText(text []byte) error {
	if c == nil {
		return units.Missing("code of a warning to read into", "a pointer to one")
	}
	i, err := choose("code of a warning", text, WarningCodes())
	if err == nil {
		*c = WarningCode(i + 1)
	}
	return err
}

// WarnTafel returns the warning that a Tafel law deserves at the least current density
// of a cathode, above [FewNeglect]; false where it deserves none.
//
// Source: [Derived], as [Law.Neglected].
func (l Law) WarnTafel(surface string, least units.CurrentDensity) (Warning, bool) {
	share := l.Neglected(least)
	if !(share > FewNeglect) {
		return Warning{}, false
	}
	return Warning{Code: TafelLow, Surface: surface, Text: fmt.Sprintf(
		"the Tafel law leaves out %s of the least current density; the Butler-Volmer law would give it",
		share.Percent(0))}, true
}
