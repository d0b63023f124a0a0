package alloys

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/laydown/units"
)

const (
	maxText     = 2000 // characters of text that a parser reads
	maxNumber   = 60   // characters of a number in it
	maxExponent = 400  // largest power of ten in a number
)

// needPart says what a part looks like.
const needPart = "an element symbol and a share in per mille, as Au 750, or with a sign, as Au 75 %"

// ParseComposition reads a composition such as
//
//	Au 750, Ag 125, Cu 125
//	Au 750, Ag 125, Cu rest
//	Au 75 %, Ag 12.5 %, Cu 12.5 %
//
// Parts stand between commas or semicolons: an element symbol, then its share
// of the mass in per mille, or in per cent with the sign. One part may have
// "rest" (also "balance" or "bal.") in place of a number: it takes what the
// others leave of 1000. The form is this library's own. Shares are the
// float64 nearest to what the text says; the rest is computed exactly.
//
// Errors: a [*units.ValueError] for text that is not so, or a rest that is not
// above zero; otherwise those of [NewComposition].
func ParseComposition(text string) (Composition, error) {
	if len(text) > maxText || !utf8.ValidString(text) {
		return Composition{}, bad("composition", strconv.Quote(units.Clip(text)),
			fmt.Sprintf("UTF-8 text of at most %d bytes", maxText), units.ErrSyntax)
	}
	var parts []ElementShare
	left := big.NewRat(1, 1)
	rest := -1
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' })
	if len(fields) != strings.Count(text, ",")+strings.Count(text, ";")+1 || len(fields) > maxParts {
		return Composition{}, bad("composition", strconv.Quote(units.Clip(text)), "one part between commas: "+needPart,
			units.ErrSyntax)
	}
	for i, field := range fields {
		symbol, share, err := parsePart(field)
		if err != nil {
			return Composition{}, err
		}
		parts = append(parts, ElementShare{Symbol: symbol})
		if share == nil {
			if rest >= 0 {
				return Composition{}, bad("share of "+units.Clip(symbol), "rest", "rest for one element only",
					units.ErrInconsistent)
			}
			rest = i
			continue
		}
		left.Sub(left, share)
		f, _ := share.Float64()
		parts[i].Share = units.MassFraction(f)
	}
	if rest >= 0 {
		if left.Sign() <= 0 {
			return Composition{}, bad("share of "+units.Clip(parts[rest].Symbol), "rest",
				"other shares that sum to less than 1000 ‰", units.ErrInconsistent)
		}
		f, _ := left.Float64()
		parts[rest].Share = units.MassFraction(f)
	}
	return NewComposition(parts...)
}

// parsePart reads one part. A nil share stands for the rest.
func parsePart(field string) (symbol string, share *big.Rat, err error) {
	s := strings.TrimSpace(field)
	n := strings.IndexFunc(s, func(r rune) bool { return (r < 'A' || r > 'Z') && (r < 'a' || r > 'z') })
	if n <= 0 {
		return "", nil, bad("part of a composition", strconv.Quote(units.Clip(s)), needPart, units.ErrSyntax)
	}
	symbol, s = s[:n], strings.TrimSpace(s[n:])
	switch s {
	case "rest", "balance", "bal", "bal.":
		return symbol, nil, nil
	}
	whole := int64(1000)
	if cut, found := strings.CutSuffix(s, "%"); found {
		whole, s = 100, cut
	} else {
		s = strings.TrimSuffix(s, "‰")
	}
	share, ok := readDecimal(strings.TrimSpace(s))
	if !ok {
		return "", nil, bad("share of "+units.Clip(symbol), strconv.Quote(units.Clip(s)), needPart+", or rest",
			units.ErrSyntax)
	}
	return symbol, share.Quo(share, big.NewRat(whole, 1)), nil
}

// plainNumber reports whether s is a decimal number without sign, with or
// without an exponent of bounded size.
func plainNumber(s string) bool {
	mantissa, exponent, found := strings.Cut(strings.ToLower(s), "e")
	if found {
		e, err := strconv.Atoi(exponent)
		if err != nil || e > maxExponent || e < -maxExponent {
			return false
		}
	}
	whole, part, _ := strings.Cut(mantissa, ".")
	digits := func(s string) bool { return strings.Trim(s, "0123456789") == "" }
	return len(s) <= maxNumber && len(whole)+len(part) > 0 && digits(whole) && digits(part)
}

// readDecimal reads a plain number exactly.
func readDecimal(s string) (*big.Rat, bool) {
	if !plainNumber(s) {
		return nil, false
	}
	return new(big.Rat).SetString(s)
}

// String writes the composition for people: per mille, at most six digits, in
// the order given.
func (c Composition) String() string {
	if c.IsZero() {
		return "no composition"
	}
	list := make([]string, len(c.parts))
	for i, p := range c.parts {
		list[i] = p.Symbol + " " + number(shift(float64(p.Share), 3))
	}
	return strings.Join(list, ", ")
}

// AppendText appends the composition without loss in the form that
// [ParseComposition] reads; nothing for the zero Composition.
func (c Composition) AppendText(b []byte) ([]byte, error) {
	for i, p := range c.parts {
		if i > 0 {
			b = append(b, ", "...)
		}
		b = append(append(append(b, p.Symbol...), ' '), permilleText(float64(p.Share))...)
	}
	return b, nil
}

// MarshalText writes the composition without loss, for JSON, map keys and flags.
func (c Composition) MarshalText() ([]byte, error) { return c.AppendText(nil) }

// UnmarshalText reads what [ParseComposition] reads, and no text as the zero
// Composition. On an error it leaves c alone.
func (c *Composition) UnmarshalText(text []byte) error {
	if c == nil {
		return units.Missing("composition to read into", "a pointer to one")
	}
	if len(text) == 0 {
		*c = Composition{}
		return nil
	}
	got, err := ParseComposition(string(text))
	if err == nil {
		*c = got
	}
	return err
}
