package current

import "example.com/laydown/units"

func sideWords() []string { return []string{"cathodic", "anodic"} }

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (m Model) MarshalText() ([]byte, error) {
	return units.WordOf("model", int(m), units.Words(Primary, ButlerVolmer, Model.String))
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (m *Model) UnmarshalText(text []byte) error {
	return units.ReadWord("model", m, text, units.Words(Primary, ButlerVolmer, Model.String))
}

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (s Side) MarshalText() ([]byte, error) {
	return units.WordOf("side", int(s), sideWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (s *Side) UnmarshalText(text []byte) error {
	return units.ReadWord("side", s, text, sideWords())
}
