package shape

import "example.com/laydown/units"

func faceWords() []string  { return []string{"both", "one"} }
func sideWords() []string  { return []string{"both", "outside", "inside"} }
func styleWords() []string { return []string{"cheese", "pan", "countersunk"} }

// MarshalText writes "both" or "one".
//
// Errors: a [*units.ValueError] for a number that is no choice.
func (f Faces) MarshalText() ([]byte, error) { return units.WordOf("faces", int(f), faceWords()) }

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (f *Faces) UnmarshalText(text []byte) error {
	return units.ReadWord("faces", f, text, faceWords())
}

// MarshalText writes "both", "outside" or "inside".
//
// Errors: a [*units.ValueError] for a number that is no choice.
func (s Sides) MarshalText() ([]byte, error) { return units.WordOf("sides", int(s), sideWords()) }

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (s *Sides) UnmarshalText(text []byte) error {
	return units.ReadWord("sides", s, text, sideWords())
}

// MarshalText writes "cheese", "pan" or "countersunk".
//
// Errors: a [*units.ValueError] for a number that is no style.
func (s HeadStyle) MarshalText() ([]byte, error) {
	return units.WordOf("style of the head", int(s), styleWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (s *HeadStyle) UnmarshalText(text []byte) error {
	return units.ReadWord("style of the head", s, text, styleWords())
}
