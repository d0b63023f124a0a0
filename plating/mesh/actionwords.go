package mesh

import "example.com/laydown/units"

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (k ActionKind) MarshalText() ([]byte, error) {
	return units.WordOf("kind of repair", int(k), units.Words(Welded, DroppedVertices, ActionKind.String))
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (k *ActionKind) UnmarshalText(text []byte) error {
	return units.ReadWord("kind of repair", k, text, units.Words(Welded, DroppedVertices, ActionKind.String))
}
