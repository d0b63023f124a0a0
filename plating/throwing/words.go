package throwing

import (
	"errors"

	"example.com/laydown/units"
)

// classWords lists the classes that have a rule of thumb.
func classWords() []string {
	list := make([]string, OpenRecess+1)
	for c := SmoothRound; c <= OpenRecess; c++ {
		list[c] = c.String()
	}
	return list
}

// MarshalText writes the class in words.
//
// Errors: a [*units.ValueError] for a class that has no rule of thumb.
func (c Class) MarshalText() ([]byte, error) {
	return units.WordOf("class of shape", int(c), classWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the classes. Anything deeper is computed or
// measured.
func (c *Class) UnmarshalText(text []byte) error {
	if c == nil {
		return units.Missing("class of shape to read into", "a pointer to one")
	}
	i, err := units.FromWord("class of shape", string(text), classWords())
	*c = Class(i)
	var unknown *units.ValueError
	if errors.As(err, &unknown) {
		unknown.Need += "; for anything deeper compute or measure the ratio"
	}
	return err
}

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (p Panel) MarshalText() ([]byte, error) {
	return units.WordOf("slanted cell", int(p), units.Words(Panel267, Panel1000, Panel.String))
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (p *Panel) UnmarshalText(text []byte) error {
	return units.ReadWord("slanted cell", p, text, units.Words(Panel267, Panel1000, Panel.String))
}
