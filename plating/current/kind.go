package current

import (
	"strconv"
	"strings"

	"example.com/laydown/units"
)

// A Kind says what a surface does in the bath. The zero Kind is a cathode.
type Kind uint8

// The kinds. A robber (thief) is a cathode, a shield an insulator.
const (
	Cathode   Kind = iota // metal at the negative pole
	Anode                 // metal at the positive pole
	Insulator             // no current crosses it
	Floating              // metal without a wire: its net current is zero
	kindEnd
)

// Kinds returns the words of the kinds in their order.
func Kinds() []string { return []string{"cathode", "anode", "insulator", "floating metal"} }

// String returns the kind in words.
func (k Kind) String() string {
	if k >= kindEnd {
		return "unknown kind"
	}
	return Kinds()[k]
}

// Electrode reports whether the kind is metal that is wired to a pole.
func (k Kind) Electrode() bool { return k == Cathode || k == Anode }

// Check returns a [*units.ValueError] for a number that is no kind; of names the
// surface.
func (k Kind) Check(of string) error {
	if k < kindEnd {
		return nil
	}
	return badWord("kind of "+units.Clip(of), strconv.Itoa(int(k)), Kinds())
}

// MarshalText writes the kind in words.
//
// Errors: a [*units.ValueError] for a number that is no kind.
func (k Kind) MarshalText() ([]byte, error) {
	if k >= kindEnd {
		return nil, badWord("kind of surface", strconv.Itoa(int(k)), Kinds())
	}
	return []byte(k.String()), nil
}

// UnmarshalText reads what MarshalText writes. On an error it leaves k alone.
//
// Errors: a [*units.ValueError] that lists the kinds.
func (k *Kind) UnmarshalText(text []byte) error {
	if k == nil {
		return units.Missing("kind of surface to read into", "a pointer to one")
	}
	i, err := choose("kind of surface", text, Kinds())
	if err == nil {
		*k = Kind(i)
	}
	return err
}

// choose returns the place of a word in a list.
func choose(field string, text []byte, words []string) (int, error) {
	for i, w := range words {
		if w == string(text) {
			return i, nil
		}
	}
	return 0, badWord(field, strconv.Quote(units.Clip(string(text))), words)
}

func badWord(field, value string, words []string) error {
	return &units.ValueError{Field: field, Value: value, Need: "one of " + strings.Join(words, ", "),
		Err: units.ErrOutOfRange}
}
