package thinspot

import "example.com/laydown/units"

func strokeWords() []string { return []string{"solid", "dashed", "dotted", "marks"} }

// MarshalText writes the stroke in a word.
//
// Errors: a [*units.ValueError] for a number that has none.
func (s Stroke) MarshalText() ([]byte, error) { return units.WordOf("stroke", int(s), strokeWords()) }

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (s *Stroke) UnmarshalText(text []byte) error {
	return units.ReadWord("stroke", s, text, strokeWords())
}
