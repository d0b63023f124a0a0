package alloys

import "example.com/laydown/units"

func articleWords() []string { return []string{"other article", "watchcase or flatware"} }
func sampleWords() []string  { return []string{"without solder", "with solder"} }

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (a Article) MarshalText() ([]byte, error) {
	return units.WordOf("article", int(a), articleWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (a *Article) UnmarshalText(text []byte) error {
	return units.ReadWord("article", a, text, articleWords())
}

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (s AssaySample) MarshalText() ([]byte, error) {
	return units.WordOf("sample", int(s), sampleWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (s *AssaySample) UnmarshalText(text []byte) error {
	return units.ReadWord("sample", s, text, sampleWords())
}

// MarshalText writes it in words.
//
// Errors: a [*units.ValueError] for a number that has none.
func (l List) MarshalText() ([]byte, error) {
	return units.WordOf("list of finenesses", int(l), units.Words(ListNone, ListISO9202, List.String))
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (l *List) UnmarshalText(text []byte) error {
	return units.ReadWord("list of finenesses", l, text, units.Words(ListNone, ListISO9202, List.String))
}
