package units

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strings"
	"unicode/utf8"
)

// parse reads text of kind k: a number and a unit, for a duration several of
// them. The result is the float64 nearest to the exact value.
func parse(k QuantityKind, text string) (float64, error) {
	fail := func(err error, format string, args ...any) error {
		return &ParseError{Kind: k, Text: clipTo(text, parseClipped), Reason: fmt.Sprintf(format, args...),
			Accepted: k.Units(), Err: err}
	}
	if len(text) > maxText {
		return 0, fail(ErrSyntax, "longer than %d bytes", maxText)
	}
	if !utf8.ValidString(text) {
		return 0, fail(ErrSyntax, "not valid UTF-8 text")
	}
	s := strings.TrimSpace(text)
	if s == "" {
		return 0, fail(ErrSyntax, "empty; write a number and a unit")
	}
	num, rest := scanNumber(s)
	if num == "" {
		return 0, fail(ErrSyntax, "no number at the start")
	}
	if k == KindDuration {
		return parseDuration(s, fail)
	}
	reading, rest, err := scanFraction(num, rest)
	if err != nil {
		return 0, fail(ErrSyntax, "%v", err)
	}
	u, err := findUnit(k, rest, fail)
	if err != nil {
		return 0, err
	}
	ok := true
	if reading == nil {
		reading, ok = exact(num)
	}
	if !ok {
		return 0, fail(ErrOutOfRange, "the number is too large or too small")
	}
	v, ok := toSI(k, u, reading)
	if !ok {
		return 0, fail(ErrOutOfRange, "the number is too large or too small")
	}
	if k == KindTemperature && v < 0 {
		return 0, fail(ErrOutOfRange, "below absolute zero")
	}
	return v, nil
}

type failer func(err error, format string, args ...any) error

// findUnit resolves the text after a number to a unit of kind k.
func findUnit(k QuantityKind, rest string, fail failer) (*unit, error) {
	norm := normalise(rest)
	if norm == "" {
		if u, _ := k.lookup("1"); u != nil {
			return u, nil // a number without unit
		}
		return nil, fail(ErrUnknownUnit, "no unit after the number")
	}
	if norm != "1" {
		if u, _ := k.lookup(norm); u != nil {
			return u, nil
		}
	}
	symbol := clipTo(strings.TrimSpace(rest), parseClipped)
	switch first := norm[0]; {
	case first == ',':
		return nil, fail(ErrSyntax,
			"a comma after the digits; write a point as the decimal mark and no thousands separator")
	case isDigit(first) || first == '.' || first == '+' || first == '-':
		return nil, fail(ErrSyntax, "more than one number")
	}
	if kinds := kindsOf(norm); len(kinds) > 0 {
		names := make([]string, len(kinds))
		for i, other := range kinds {
			names[i] = other.String()
		}
		return nil, fail(ErrWrongKind, "unit %q is one of %s", symbol, strings.Join(names, " or "))
	}
	if hint := hintFor(norm); hint != "" {
		return nil, fail(ErrUnknownUnit, "unknown unit %q; %s", symbol, hint)
	}
	for _, have := range k.Units() {
		if printed := normalise(have); strings.EqualFold(printed, norm) ||
			strings.EqualFold(strings.ReplaceAll(printed, "µ", "u"), norm) {
			return nil, fail(ErrUnknownUnit, "unknown unit %q; capitals matter, did you mean %s", symbol, have)
		}
	}
	return nil, fail(ErrUnknownUnit, "unknown unit %q", symbol)
}

// hintFor says what to write for a unit that is not read because it has two
// meanings or a shorter name.
func hintFor(norm string) string {
	switch lower := strings.ToLower(norm); {
	case strings.Contains(lower, "gal"):
		return "a gallon is US gal or imp gal"
	case lower == "f" || lower == "c":
		return "degrees are °" + strings.ToUpper(lower) + " or deg" + strings.ToUpper(lower)
	case slices.Contains(strings.Fields("floz fl·oz qt quart quarts pt pint pints cup cups"), lower):
		return "fluid ounces, pints and quarts differ from land to land: write mL, or a part of a gallon as in 1/4 US gal"
	}
	return ""
}

// parseDuration reads one or several numbers with units of time, the longest
// unit first and each once, and adds them exactly.
func parseDuration(s string, fail failer) (float64, error) {
	sum := new(big.Rat)
	last := (*big.Rat)(nil)
	for first := true; s != ""; first = false {
		num, rest := scanNumber(s)
		if num == "" {
			return 0, fail(ErrSyntax, "no number before %q", clipTo(s, parseClipped))
		}
		if !first && (num[0] == '-' || num[0] == '+') {
			return 0, fail(ErrSyntax, "a sign inside a sum of times")
		}
		if f, _, err := scanFraction(num, rest); f != nil || err != nil {
			return 0, fail(ErrSyntax, "a fraction of a time; write it in the next smaller unit, as 30 min")
		}
		end := strings.IndexAny(rest, "0123456789.+-\u2212") // where the next number starts
		if end < 0 {
			end = len(rest)
		}
		u, err := findUnit(KindDuration, rest[:end], fail)
		if err != nil {
			// Was it one unit of another kind, with a digit in it, as A/dm2?
			if _, whole := findUnit(KindDuration, rest, fail); errors.Is(whole, ErrWrongKind) {
				err = whole
			}
			return 0, err
		}
		if num[0] == '-' && end < len(rest) {
			return 0, fail(ErrSyntax, "a negative sum of times; write it in one unit")
		}
		size := ratio(u.factor)
		if last != nil && size.Cmp(last) >= 0 {
			return 0, fail(ErrSyntax, "units of time not in falling order, each once, as in 1 h 20 min")
		}
		reading, ok := exact(num)
		if !ok {
			return 0, fail(ErrOutOfRange, "the number is too large or too small")
		}
		sum.Add(sum, reading.Mul(reading, size))
		last = size
		s = rest[end:]
	}
	v, ok := nearest(sum)
	if !ok {
		return 0, fail(ErrOutOfRange, "the number is too large or too small")
	}
	return v, nil
}
