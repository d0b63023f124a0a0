// Package origin says how a figure came to be known: one vocabulary for the
// library's tables, its baths, its cautions and its reference files.
//
// A figure that nobody has looked up is a lead to check. A figure that was read
// in the publication is as good as the publication. A figure that was measured
// on the caller's own bath is the best for that bath. [Weakest] gives what a
// result may claim: no more than the worst figure in it.
package origin

import (
	"strings"

	"example.com/laydown/units"
)

// Seen says how a figure came to be known. The zero value is the weakest. The
// same word serves as the confidence of a result.
type Seen uint8

// The ways, the weakest first.
const (
	FromMemory Seen = iota // recalled or common practice: no publication was read
	SecondHand             // read in a text that quotes or summarises the publication
	Computed               // computed for this library by a second method
	Published              // read in a copy of the publication itself
	Given                  // the caller's own word: how it was found is not said
	Measured               // found on the caller's own bath, piece or rack
	seenEnd
)

// Sources of figures that no publication stands behind.
const (
	Memory   = "from memory, unverified"    // nobody has looked it up
	Practice = "common practice, no source" // the trade does so; no print is known here
	Job      = "given in the job"           // the job gives it and does not say from where
)

// Words returns the words, the weakest first.
func Words() []string {
	return []string{"from memory", "second hand", "computed", "published", "given", "measured"}
}

// String returns the way in words.
func (s Seen) String() string {
	if s >= seenEnd {
		s = FromMemory
	}
	return Words()[s]
}

// MarshalText writes the way in words, for JSON.
func (s Seen) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the ways.
func (s *Seen) UnmarshalText(text []byte) error {
	if s == nil {
		return units.Missing("how the figure was seen", "a pointer to it")
	}
	v, err := Parse(string(text))
	*s = v
	return err
}

// Parse reads one of the words.
//
// Errors: a [*units.ValueError] that lists them.
func Parse(text string) (Seen, error) {
	for i, w := range Words() {
		if text == w {
			return Seen(i), nil
		}
	}
	return FromMemory, &units.ValueError{Field: "how the figure was seen", Value: units.Clip(text),
		Need: "one of " + strings.Join(Words(), ", "), Err: units.ErrOutOfRange}
}

// Weakest returns the weakest of several ways: a result is known no better than
// the worst figure in it. Without any it returns [FromMemory].
func Weakest(all ...Seen) Seen {
	if len(all) == 0 {
		return FromMemory
	}
	w := all[0]
	for _, s := range all[1:] {
		w = min(w, s)
	}
	return w
}

// Text writes the way with the key of the source where there is one:
// "published, Guidebook2011", "from memory", "common practice, no source".
func Text(s Seen, source string) string {
	switch source {
	case "", Memory:
		return s.String()
	case Practice, Job:
		return source
	}
	return s.String() + ", " + source
}
