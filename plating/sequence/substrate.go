package sequence

import (
	"strconv"
	"strings"

	"example.com/laydown/units"
)

// A Substrate is the base metal of a piece. The zero value is "not known", and
// no plan is made for it.
type Substrate uint8

// The substrates.
const (
	SubstrateUnknown Substrate = iota // not known: no plan is made
	StainlessSteel                    // of any grade; [Piece.Tensile] tells whether it is hard
	Copper                            // unalloyed
	Brass                             // that holds no lead
	LeadedBrass                       // clock brass, free-cutting brass: up to 4 % lead
	Bronze                            // copper and tin
	NickelSilver                      // copper, nickel and zinc: holds no silver
	Nickel                            // solid, or a nickel plate that has dried
	SterlingSilver                    // 925 parts of silver, the rest copper
	FineSilver                        // 999 parts of silver
	LowCarbonSteel                    // below 0.35 % carbon, not hardened
	HighCarbonSteel                   // 0.35 % carbon or more, case-hardened, or high in strength
	ZincDieCasting                    // zinc alloy with aluminium; caustic and acid dissolve it
	Aluminium                         // and its alloys
	Titanium                          // reviewed, never planned
	Pewter                            // and other tin
	SoftSoldered                      // joints of tin solder, whatever the metal around them
	PaintedPlastic                    // made conductive by paint
	substrateEnd
)

// substrateWords lists the names in the order of the substrates; files use them.
func substrateWords() []string {
	return []string{"unknown", "stainless steel", "copper", "brass", "leaded brass", "bronze",
		"nickel silver", "nickel", "sterling silver", "fine silver",
		"low-carbon steel", "high-carbon steel", "zinc die casting", "aluminium", "titanium", "pewter", "soft-soldered",
		"conductive-painted plastic"}
}

// Substrates returns all that are known by name.
func Substrates() []Substrate {
	var all []Substrate
	for s := SubstrateUnknown + 1; s < substrateEnd; s++ {
		all = append(all, s)
	}
	return all
}

// String returns the name in words.
func (s Substrate) String() string {
	if s >= substrateEnd {
		s = SubstrateUnknown
	}
	return substrateWords()[s]
}

// MarshalText writes the name, for JSON and flags.
//
// Errors: a [*units.ValueError] for a number out of range.
func (s Substrate) MarshalText() ([]byte, error) {
	return words("base metal", uint8(s), uint8(substrateEnd), s.String())
}

// words writes a word of a list, and refuses a number past its end.
func words(field string, n, end uint8, word string) ([]byte, error) {
	if n >= end {
		return nil, &units.ValueError{Field: field, Value: strconv.Itoa(int(n)), Need: "one of those of this package",
			Err: units.ErrOutOfRange}
	}
	return []byte(word), nil
}

// UnmarshalText reads a name as [ParseSubstrate].
//
// Errors: a [*units.ValueError] that lists the names.
func (s *Substrate) UnmarshalText(text []byte) error {
	if s == nil {
		return units.Missing("base metal to read into", "a pointer to one")
	}
	v, err := ParseSubstrate(string(text))
	*s = v
	return err
}

// ParseSubstrate reads the name of a substrate, or another that the trade uses
// for it; capitals do not count. "Unknown" and "not known" are read as such.
//
// Errors: a [*units.ValueError] that lists the names, or tells apart what a name
// as "steel" could mean.
func ParseSubstrate(text string) (Substrate, error) {
	plain := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	for _, w := range otherWords() {
		if w.word == plain {
			if w.ask == "" {
				return w.is, nil
			}
			return SubstrateUnknown, &units.ValueError{Field: "base metal", Value: strconv.Quote(units.Clip(plain)),
				Need: w.ask, Err: units.ErrOutOfRange}
		}
	}
	i, err := choose("base metal", text, substrateWords())
	return Substrate(i), err
}

// An otherWord is another name that the trade uses, or one that could mean two
// metals with the question that tells them apart.
type otherWord struct {
	word string
	is   Substrate
	ask  string
}

// otherWords lists the trade's other names. "Steel" and "silver" are not among those that
// are read: each is two metals with two preparations, and a guess would be wrong for one of
// them.
func otherWords() []otherWord {
	const steel = "low-carbon steel, or high-carbon steel for springs, arbors, case-hardened and hard parts; " +
		"stainless steel if a magnet does not hold or it never rusts"
	const silver = "sterling silver or fine silver: look for a mark of 925 or 999; a worn edge that shows yellow is " +
		"plate over brass"
	return []otherWord{
		{"not known", SubstrateUnknown, ""}, {"aluminum", Aluminium, ""}, {"tin", Pewter, ""}, {"tinned", Pewter, ""},
		{"soft solder", SoftSoldered, ""},
		{"soft-soldered joints", SoftSoldered, ""}, {"soft soldered", SoftSoldered, ""}, {"soldered", SoftSoldered, ""},
		{"painted plastic", PaintedPlastic, ""},
		{"zinc", ZincDieCasting, ""}, {"zinc alloy", ZincDieCasting, ""}, {"zinc casting", ZincDieCasting, ""},
		{"german silver", NickelSilver, ""}, {"mild steel", LowCarbonSteel, ""},
		{"clock brass", LeadedBrass, ""}, {"engraving brass", LeadedBrass, ""}, {"free-cutting brass", LeadedBrass, ""},
		{"free cutting brass", LeadedBrass, ""},
		{"free-machining brass", LeadedBrass, ""}, {"turned brass", LeadedBrass, ""}, {"unleaded brass", Brass, ""},
		{"lead-free brass", Brass, ""}, {"cartridge brass", Brass, ""},
		{"spring steel", HighCarbonSteel, ""}, {"stainless", StainlessSteel, ""},
		{"steel", 0, steel}, {"carbon steel", 0, steel}, {"silver", 0, silver},
	}
}

// choose finds a word of a list that starts with the word for "unknown",
// which is read too.
func choose(field, text string, words []string) (int, error) {
	plain := strings.ToLower(strings.TrimSpace(text))
	for i, w := range words {
		if w == plain {
			return i, nil
		}
	}
	return 0, &units.ValueError{Field: field, Value: strconv.Quote(units.Clip(text)),
		Need: "one of " + strings.Join(words[1:], ", "), Err: units.ErrOutOfRange}
}

// passive reports whether the bare metal grows a film again by itself within
// seconds after it was activated.
func (s Substrate) passive() bool {
	return s == StainlessSteel || s == Nickel || s == Titanium || s == Aluminium
}

// melts reports whether the metal, its solder or its paint does not stand the
// heat of a bake. From memory: tin-lead solder melts at 183 °C, pewter at 170 to
// 230 °C, zinc castings blister.
func (s Substrate) melts() bool { return s.tin() || s == PaintedPlastic || s == ZincDieCasting }

// copperBearing reports whether copper can move from the metal into gold.
func (s Substrate) copperBearing() bool {
	return s == Copper || s == Brass || s == LeadedBrass || s == Bronze || s == NickelSilver
}

// silver reports whether the base is silver.
func (s Substrate) silver() bool { return s == SterlingSilver || s == FineSilver }

// tin reports whether the base is tin or carries tin on its face.
func (s Substrate) tin() bool { return s == Pewter || s == SoftSoldered }

// steel reports whether the base is plain steel.
func (s Substrate) steel() bool { return s == LowCarbonSteel || s == HighCarbonSteel }

// A Finish is the outer coat that is ordered. The zero value is "not given".
type Finish uint8

// The finishes, each with a bath of the library.
const (
	FinishUnknown Finish = iota
	HardGold             // gold-acid-cobalt
	PaleGold             // gold-acid-nickel
	SoftGold             // gold-neutral
	SulfiteGold          // gold-sulfite
	FlashGold            // gold-cyanide-flash
	Silver               // silver-cyanide
	BrightNickel         // nickel-watts
	BrightCopper         // copper-acid
	Palladium            // palladium-sulfamate
	Rhodium              // rhodium-sulfate
	WhiteBronze          // bronze-white
	finishEnd
)

// finishWords lists the names in the order of the finishes; files use them.
func finishWords() []string {
	return []string{"unknown", "hard gold", "pale gold", "soft gold", "sulfite gold", "flash gold", "silver",
		"bright nickel", "bright copper",
		"palladium", "rhodium", "white bronze"}
}

// Finishes returns all finishes.
func Finishes() []Finish {
	var all []Finish
	for f := FinishUnknown + 1; f < finishEnd; f++ {
		all = append(all, f)
	}
	return all
}

// String returns the name in words.
func (f Finish) String() string {
	if f >= finishEnd {
		f = FinishUnknown
	}
	return finishWords()[f]
}

// MarshalText writes the name, for JSON and flags.
//
// Errors: a [*units.ValueError] for a number out of range.
func (f Finish) MarshalText() ([]byte, error) {
	return words("finish", uint8(f), uint8(finishEnd), f.String())
}

// UnmarshalText reads a name as [ParseFinish].
//
// Errors: a [*units.ValueError] that lists the names.
func (f *Finish) UnmarshalText(text []byte) error {
	if f == nil {
		return units.Missing("finish to read into", "a pointer to one")
	}
	v, err := ParseFinish(string(text))
	*f = v
	return err
}

// ParseFinish reads the name of a finish; capitals do not count.
//
// Errors: a [*units.ValueError] that lists the names.
func ParseFinish(text string) (Finish, error) {
	i, err := choose("finish", text, finishWords())
	return Finish(i), err
}

// BathKey returns the key of the library bath that gives the finish, "" for
// one that is not known.
func (f Finish) BathKey() string {
	if f >= finishEnd {
		f = FinishUnknown
	}
	return []string{"", "gold-acid-cobalt", "gold-acid-nickel", "gold-neutral", "gold-sulfite", "gold-cyanide-flash",
		"silver-cyanide",
		"nickel-watts", "copper-acid", "palladium-sulfamate", "rhodium-sulfate", "bronze-white"}[f]
}

// gold reports whether the finish is gold.
func (f Finish) gold() bool { return f >= HardGold && f <= FlashGold }
