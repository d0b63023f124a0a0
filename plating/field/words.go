package field

import "example.com/laydown/units"

func equationWords() []string { return []string{"automatic", "direct", "single layer"} }

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (e Equation) MarshalText() ([]byte, error) {
	return units.WordOf("equation", int(e), equationWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (e *Equation) UnmarshalText(text []byte) error {
	return units.ReadWord("equation", e, text, equationWords())
}

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (f Face) MarshalText() ([]byte, error) {
	return units.WordOf("face", int(f), units.Words(LowX, HighZ, Face.String))
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (f *Face) UnmarshalText(text []byte) error {
	return units.ReadWord("face", f, text, units.Words(LowX, HighZ, Face.String))
}
