package units

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
)

// FromWord returns the place of a word in a list, for types whose values are written as
// words. An empty word of the list is no choice.
//
// Errors: a [*ValueError] that lists the words.
func FromWord(field, text string, words []string) (int, error) {
	if i := slices.Index(words, text); i >= 0 && text != "" {
		return i, nil
	}
	known := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return w == "" })
	between := ", "
	if slices.ContainsFunc(known, func(w string) bool { return strings.Contains(w, ",") }) {
		between = "; "
	}
	return 0, &ValueError{Field: field, Value: strconv.Quote(Clip(text)), Need: "one of " + strings.Join(known, between),
		Err: ErrOutOfRange}
}

// WordOf returns the word at a place of a list, for types whose values are written as
// words.
//
// Errors: a [*ValueError] for a place that the list does not have, or an empty word.
func WordOf(field string, i int, words []string) ([]byte, error) {
	if i < 0 || i >= len(words) || words[i] == "" {
		return nil, &ValueError{Field: field, Value: strconv.Itoa(i), Need: "the number of a word of this package",
			Err: ErrOutOfRange}
	}
	return []byte(words[i]), nil
}

// FlagWords writes flags, each a bit, as a JSON list of their words.
func FlagWords[T ~uint8 | ~uint16](flags T, words []string) ([]byte, error) {
	list := []string{}
	for i, w := range words {
		if flags&(1<<i) != 0 {
			list = append(list, w)
		}
	}
	if flags>>len(words) != 0 {
		return nil, &ValueError{Field: "flags", Value: strconv.Itoa(int(flags)), Need: "flags that have a word",
			Err: ErrOutOfRange}
	}
	return json.Marshal(list)
}

// ReadFlags reads what [FlagWords] writes.
//
// Errors: a [*ValueError] for nil and for a word that is not in the list; those of JSON.
func ReadFlags[T ~uint8 | ~uint16](field string, into *T, raw []byte, words []string) error {
	if into == nil {
		return Missing(field+" to read into", "a pointer to some")
	}
	var list []string
	if err := json.Unmarshal(raw, &list); err != nil {
		return err
	}
	var flags T
	for _, w := range list {
		i, err := FromWord(field, w, words)
		if err != nil {
			return err
		}
		flags |= 1 << i
	}
	*into = flags
	return nil
}

// Words lists the words of the values from first to last of a type, each at the place of
// its number; those before first have none.
func Words[T ~uint8](first, last T, word func(T) string) []string {
	if first > last || word == nil {
		return nil
	}
	list := make([]string, int(last)+1)
	for v := first; ; v++ {
		if list[v] = word(v); v == last {
			return list
		}
	}
}

// ReadWord sets a value from its word, for UnmarshalText.
//
// Errors: a [*ValueError] for nil, and for a word that is not in the list.
func ReadWord[T ~uint8](field string, into *T, text []byte, words []string) error {
	if into == nil {
		return Missing(field+" to read into", "a pointer to one")
	}
	i, err := FromWord(field, string(text), words)
	if err == nil {
		*into = T(i)
	}
	return err
}

// MarshalText writes it in words.
//
// Errors: a [*ValueError] for a number that has none.
func (k QuantityKind) MarshalText() ([]byte, error) {
	return WordOf("kind of quantity", int(k), Words(KindNone, kindEnd-1, QuantityKind.String))
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*ValueError] that lists the words.
func (k *QuantityKind) UnmarshalText(text []byte) error {
	return ReadWord("kind of quantity", k, text, Words(KindNone, kindEnd-1, QuantityKind.String))
}

func scaleWords() []string { return []string{"K", "°C", "°F"} }

// MarshalText writes it in words.
//
// Errors: a [*ValueError] for a number that has none.
func (s Scale) MarshalText() ([]byte, error) {
	return WordOf("scale", int(s), scaleWords())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*ValueError] that lists the words.
func (s *Scale) UnmarshalText(text []byte) error {
	return ReadWord("scale", s, text, scaleWords())
}
