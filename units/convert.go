package units

import (
	"errors"
	"strings"
)

// Convert reads a quantity of any kind and writes it in another unit of the
// same kind, with the fewest digits that name the same value.
//
//	units.Convert("25 µin", "µm")  // 0.635 µm
//
// Where a symbol belongs to several kinds (g/cm³ of density and of
// concentration, °C of temperature and of difference) the first kind in
// [Kinds] order that knows both units is meant.
//
// Errors: a [*ParseError] for text that is not a quantity, for an unknown
// unit, and for units of different kinds.
func Convert(text, unit string) (string, error) {
	kinds := kindsOf(normalise(unit))
	if len(kinds) == 0 {
		return "", unknownTarget(text, unit)
	}
	var firstErr error
	for _, k := range kinds {
		v, err := parse(k, text)
		if err == nil {
			u, _ := k.lookup(normalise(unit))
			return inUnit(k, u, v, -1), nil
		}
		if !errors.Is(err, ErrWrongKind) && !errors.Is(err, ErrUnknownUnit) {
			return "", err // of this kind, but wrong: -300 °C is no difference
		}
		if firstErr == nil {
			firstErr = err
		}
	}
	return "", firstErr
}

// ConvertWords is [Convert] of words as they are spoken, the unit behind the quantity: the
// last word, or up to four of them, as in oz / US gal. A longer unit goes before a shorter
// one: A h before h. It returns the words that are the quantity as well.
//
//	units.ConvertWords([]string{"1", "h", "20", "min", "s"})  // 1 h 20 min, 4800 s
//
// Errors: those of [Convert]; a [*ParseError] for fewer than two words.
func ConvertWords(words []string) (quantity, answer string, err error) {
	if len(words) < 2 {
		return "", "", &ParseError{Text: clipTo(strings.Join(words, " "), parseClipped),
			Reason: "need a quantity and a unit", Err: ErrSyntax}
	}
	split := func(n int) (quantity, unit string) {
		at := len(words) - n
		return strings.Join(words[:at], " "), strings.Join(words[at:], " ")
	}
	var first error
	for n := min(4, len(words)-1); n > 0; n-- {
		quantity, unit := split(n)
		if len(KindsOf(unit)) == 0 {
			continue
		}
		if answer, err = Convert(quantity, unit); err == nil {
			return quantity, answer, nil
		}
		if first == nil {
			first = err
		}
	}
	if first == nil { // no such unit: Convert says which there are
		_, first = Convert(split(1))
	}
	return "", "", first
}

// unknownTarget is the error for a unit that no kind knows. It lists the units
// of the kinds that can read the text, and those of all kinds when none can.
func unknownTarget(text, unit string) error {
	e := &ParseError{Text: clipTo(strings.TrimSpace(unit), parseClipped), Reason: "unknown unit", Err: ErrUnknownUnit}
	var kinds []QuantityKind
	for _, k := range Kinds() {
		if _, err := parse(k, text); err == nil {
			kinds = append(kinds, k)
		}
	}
	if kinds == nil {
		kinds = Kinds()
	}
	seen := map[string]bool{}
	for _, k := range kinds {
		for _, u := range k.Units() {
			if !seen[u] {
				seen[u] = true
				e.Accepted = append(e.Accepted, u)
			}
		}
	}
	return e
}

// KindsOf returns the kinds that know a unit, however it is spelled: none for
// an unknown one.
func KindsOf(unit string) []QuantityKind { return kindsOf(normalise(unit)) }
