package alloys

// Seen says how a figure of this package's tables came to be known. The zero
// value is the weakest.
type Seen uint8

// The ways. A figure from memory is a lead to check before it is relied on; no
// test of this package uses one as the answer.
const (
	FromMemory Seen = iota // recalled; the publication was not seen
	SecondHand             // read in a text that quotes the publication
	StoredCopy             // read in a stored copy of the publication itself
	Measured               // found by the caller on a piece, a rack or a bath
)

// String returns the way in words.
func (s Seen) String() string {
	switch s {
	case Measured:
		return "measured"
	case StoredCopy:
		return "stored copy"
	case SecondHand:
		return "second hand"
	}
	return "from memory"
}
