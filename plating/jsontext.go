package plating

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"

	"example.com/laydown/units"
)

// The zero curve is written as null, one value as text, points as a list:
//
//	"0.35"
//	[{"current_density": "50 A/m²", "efficiency": "0.37"}, ...]

// pointText is one point of a curve in JSON.
type pointText struct {
	CurrentDensity units.CurrentDensity `json:"current_density"`
	Efficiency     units.Efficiency     `json:"efficiency"`
}

// MarshalJSON writes the curve without loss.
//
// Errors: a [*units.ValueError] for a value that is no number.
func (c EfficiencyCurve) MarshalJSON() ([]byte, error) {
	switch {
	case len(c.points) > 0:
		list := make([]pointText, len(c.points))
		for i, p := range c.points {
			list[i] = pointText(p)
		}
		return json.Marshal(list)
	case c.constant == 0:
		return []byte("null"), nil
	}
	return json.Marshal(c.constant)
}

// UnmarshalJSON reads what MarshalJSON writes.
//
// Errors: those of [NewEfficiencyCurve]; a [*units.ValueError] for a value that is no
// efficiency.
func (c *EfficiencyCurve) UnmarshalJSON(raw []byte) error {
	if c == nil {
		return units.Missing("efficiency curve to read into", "a pointer to one")
	}
	raw = bytes.TrimSpace(raw)
	if bytes.Equal(raw, []byte("null")) {
		*c = EfficiencyCurve{}
		return nil
	}
	if len(raw) > 0 && raw[0] == '[' {
		var list []pointText
		if err := json.Unmarshal(raw, &list); err != nil {
			return err
		}
		points := make([]EfficiencyPoint, len(list))
		for i, p := range list {
			points[i] = EfficiencyPoint(p)
		}
		v, err := NewEfficiencyCurve(points...)
		*c = v
		return err
	}
	var eff units.Efficiency
	if err := json.Unmarshal(raw, &eff); err != nil {
		return err
	}
	if err := units.PositiveFraction("efficiency", eff); err != nil {
		return err
	}
	*c = ConstantEfficiency(eff)
	return nil
}

func severities() []string {
	return []string{SeverityInfo.String(), SeverityCaution.String(), SeverityWarning.String(), SeverityStop.String()}
}

// MarshalText writes the severity in words.
//
// Errors: a [*units.ValueError] for a number that is no severity.
func (s Severity) MarshalText() ([]byte, error) {
	return units.WordOf("severity", int(s), severities())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (s *Severity) UnmarshalText(text []byte) error {
	return units.ReadWord("severity", s, text, severities())
}

// roles lists the words of the roles in their order.
func roles() []string {
	return []string{RoleFinish.String(), RoleStrike.String(), RoleUnder.String()}
}

// MarshalText writes the role in words.
//
// Errors: a [*units.ValueError] for a number that is no role.
func (r Role) MarshalText() ([]byte, error) {
	if r > RoleUnder {
		return nil, badWord("role", r.String(), roles())
	}
	return []byte(r.String()), nil
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (r *Role) UnmarshalText(text []byte) error {
	if r == nil {
		return units.Missing("role to read into", "a pointer to one")
	}
	i := slices.Index(roles(), string(text))
	if i < 0 {
		return badWord("role", string(text), roles())
	}
	*r = Role(i)
	return nil
}

// warningWords are the flags in words, in their order.
func warningWords() []string {
	return []string{"current density low", "current density high", "window unknown", "efficiency held", "bath drawn",
		"bath empty", "metal unknown", "too thick", "minimum thickness missed", "uneven", "time short",
		"temperature low",
		"temperature high", "gas", "anode insoluble", "ratio unsure", "unusual"}
}

// Words returns the flags as JSON writes them.
func (w Warnings) Words() []string {
	list := []string{}
	for i, word := range warningWords() {
		if w.Has(1 << i) {
			list = append(list, word)
		}
	}
	return list
}

// MarshalJSON writes the flags as a list of words.
//
// Errors: a [*units.ValueError] for a flag that has none.
func (w Warnings) MarshalJSON() ([]byte, error) {
	if w >= warnEnd {
		return nil, badWord("warnings", "a flag without a word", warningWords())
	}
	return json.Marshal(w.Words())
}

// UnmarshalJSON reads what MarshalJSON writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (w *Warnings) UnmarshalJSON(raw []byte) error {
	if w == nil {
		return units.Missing("warnings to read into", "a pointer to some")
	}
	var list []string
	if err := json.Unmarshal(raw, &list); err != nil {
		return err
	}
	var v Warnings
	for _, word := range list {
		i := slices.Index(warningWords(), word)
		if i < 0 {
			return badWord("warning", word, warningWords())
		}
		v |= 1 << i
	}
	*w = v
	return nil
}

// badWord refuses a word that is not in a list.
func badWord(field, text string, words []string) error {
	return &units.ValueError{Field: field, Value: "\"" + units.Clip(text) + "\"", Need: "one of " +
		strings.Join(words, ", "), Err: units.ErrOutOfRange}
}
