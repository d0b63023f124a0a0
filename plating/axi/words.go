package axi

import "example.com/laydown/units"

func extentWords() []string    { return []string{"unbounded", "half space", "vessel"} }
func panellingWords() []string { return []string{"high order", "constant"} }

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (e Extent) MarshalText() ([]byte, error) {
	return units.WordOf("extent of the bath", int(e), extentWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (e *Extent) UnmarshalText(text []byte) error {
	return units.ReadWord("extent of the bath", e, text, extentWords())
}

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (p Panelling) MarshalText() ([]byte, error) {
	return units.WordOf("kind of panels", int(p), panellingWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (p *Panelling) UnmarshalText(text []byte) error {
	return units.ReadWord("kind of panels", p, text, panellingWords())
}
