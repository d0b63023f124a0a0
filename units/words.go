package units

import (
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
