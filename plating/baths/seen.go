package baths

import "example.com/laydown/units"

// Seen says how a figure came to be known. The zero value is the weakest. The
// same word serves as the confidence of a result: the weakest of all that went
// into it.
type Seen uint8

// The ways, the weakest first.
const (
	FromMemory Seen = iota // recalled or common practice; no publication was seen. A lead to check
	SecondHand             // read in a text that quotes or summarises the publication
	Published              // read in a copy of the publication itself
	Given                  // the caller's own word; how it was found is not said
	Measured               // found on the caller's own bath
)

// MemorySource is the source of a figure that nobody has looked up.
const MemorySource = "from memory, unverified"

// JobSource is the source of a figure that a job gives without saying where it
// is from.
const JobSource = "given in the job"

// PracticeSource is the source of what the trade does and nobody has printed,
// as far as is known here. It is seen no better than from memory.
const PracticeSource = "common practice, no source"

// String returns the way in words.
func (s Seen) String() string {
	switch s {
	case SecondHand:
		return "second hand"
	case Published:
		return "published"
	case Given:
		return "given"
	case Measured:
		return "measured"
	}
	return "from memory"
}

// MarshalText writes the way in words, for JSON.
func (s Seen) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the ways.
func (s *Seen) UnmarshalText(text []byte) error {
	for v := FromMemory; v <= Measured; v++ {
		if string(text) == v.String() {
			*s = v
			return nil
		}
	}
	return &units.ValueError{Field: "how it was seen", Value: cut(string(text)),
		Need: "from memory, second hand, published, given or measured", Err: units.ErrOutOfRange}
}

// Weakest returns the weakest of several ways: an estimate is known no better
// than the worst figure in it. Without any it returns [FromMemory].
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
