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
	if f == nil {
		return units.Missing("faces to read into", "a pointer to some")
	}
	i, err := units.FromWord("faces", string(text), faceWords())
	*f = Faces(i)
	return err
}

// MarshalText writes "both", "outside" or "inside".
//
// Errors: a [*units.ValueError] for a number that is no choice.
func (s Sides) MarshalText() ([]byte, error) { return units.WordOf("sides", int(s), sideWords()) }

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (s *Sides) UnmarshalText(text []byte) error {
	if s == nil {
		return units.Missing("sides to read into", "a pointer to some")
	}
	i, err := units.FromWord("sides", string(text), sideWords())
	*s = Sides(i)
	return err
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
	if s == nil {
		return units.Missing("style of the head to read into", "a pointer to one")
	}
	i, err := units.FromWord("style of the head", string(text), styleWords())
	*s = HeadStyle(i)
	return err
}
