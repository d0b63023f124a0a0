package rinse

import "example.com/laydown/units"

func shapeWords() []string {
	list := make([]string, shapeEnd)
	for s := VerticalWell; s < shapeEnd; s++ { // "no shape" is left empty
		list[s] = s.String()
	}
	return list
}

func thicknessWords() []string {
	list := make([]string, thicknessEnd)
	for t := range thicknessEnd {
		list[t] = t.String()
	}
	return list
}

// MarshalText writes the shape in words.
//
// Errors: a [*units.ValueError] for no shape.
func (s Drainage) MarshalText() ([]byte, error) {
	return units.WordOf("how the work hangs", int(s), shapeWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the rows of the table.
func (s *Drainage) UnmarshalText(text []byte) error {
	return units.ReadWord("how the work hangs", s, text, shapeWords())
}

// MarshalText writes the class in words.
//
// Errors: a [*units.ValueError] for a number that is no class.
func (t Thickness) MarshalText() ([]byte, error) {
	return units.WordOf("liquid", int(t), thicknessWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (t *Thickness) UnmarshalText(text []byte) error {
	return units.ReadWord("liquid", t, text, thicknessWords())
}
