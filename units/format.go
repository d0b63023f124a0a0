package units

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// display writes v for people: at most six significant digits, in a unit of
// handy size.
func display(k QuantityKind, v float64) string {
	if k == KindDuration && v >= 60 && v <= math.MaxFloat64 {
		return displayDuration(v)
	}
	row := &kindTable[k]
	if v-v != 0 { // NaN, infinities
		return strings.TrimSpace(strconv.FormatFloat(v, 'g', -1, 64) + " " + shown(row.si))
	}
	var best *unit
	for _, symbol := range strings.Split(row.ladder, ",") {
		u, _ := k.lookup(normalise(symbol))
		size, _ := ratio(u.factor).Float64()
		if best == nil || math.Abs(v) >= size {
			best = u
		}
	}
	// Not as a float64: in this unit the number may be beyond its range.
	x := new(big.Float).SetPrec(128).SetRat(fromSI(k, best, v))
	return strings.TrimSpace(x.Text('g', 6) + " " + shown(best.symbol))
}

// shown is the symbol behind a number; that of a plain number is not written.
func shown(symbol string) string {
	if symbol == "1" {
		return ""
	}
	return symbol
}

// displayDuration writes a time of a minute or more to the second. A negative
// time is not for it: -1 h 20 min could be read two ways.
func displayDuration(v float64) string {
	if v >= 1e15 {
		return strconv.FormatFloat(v/3600, 'g', 6, 64) + " h"
	}
	s := int64(math.Round(v))
	var parts []string
	if h := s / 3600; h > 0 {
		parts = append(parts, strconv.FormatInt(h, 10)+" h")
	}
	if m := s / 60 % 60; m > 0 {
		parts = append(parts, strconv.FormatInt(m, 10)+" min")
	}
	if r := s % 60; r > 0 {
		parts = append(parts, strconv.FormatInt(r, 10)+" s")
	}
	return strings.Join(parts, " ")
}

// inUnit writes v in unit u with a number of decimals, or with the fewest
// digits that read back to the same value when decimals is negative.
func inUnit(k QuantityKind, u *unit, v float64, decimals int) string {
	if v-v != 0 {
		return display(k, v)
	}
	if decimals >= 0 {
		s := fromSI(k, u, v).FloatString(min(decimals, 40))
		if strings.Trim(s, "-0.") == "" {
			s = strings.TrimPrefix(s, "-") // no negative zero
		}
		return strings.TrimSpace(s + " " + shown(u.symbol))
	}
	s, ok := shortest(k, u, v)
	if !ok {
		b, _ := appendExact(nil, k, v)
		return string(b)
	}
	return strings.TrimSpace(s + " " + shown(u.symbol))
}

// text writes v in the unit of kind k whose size is the float64 size, or in
// the SI unit when there is none.
func text(k QuantityKind, v, size float64, decimals int) string {
	list := kindTable[k].units
	for i := range list {
		if f, _ := ratio(list[i].factor).Float64(); f == size {
			return inUnit(k, &list[i], v, decimals)
		}
	}
	u, _ := k.lookup(normalise(kindTable[k].si))
	return inUnit(k, u, v, decimals)
}

// appendExact writes v in its SI unit with the fewest digits that give the
// same float64 back.
func appendExact(b []byte, k QuantityKind, v float64) ([]byte, error) {
	if v-v != 0 {
		return b, &ValueError{Field: k.String(), Value: fmt.Sprint(v), Need: "a finite number to write it as text",
			Err: ErrNotFinite}
	}
	if v == 0 {
		v = 0 // a negative zero is zero
	}
	b = strconv.AppendFloat(b, v, 'g', -1, 64)
	if si := shown(kindTable[k].si); si != "" {
		b = append(b, ' ')
		b = append(b, si...)
	}
	return b, nil
}

// Text writes t on a scale with a number of decimals; with a negative number
// of decimals it takes the fewest digits that read back to the same
// temperature (in kelvins where 40 digits are not enough). A scale this
// package does not know is replaced by kelvins.
func (t Temperature) Text(scale Scale, decimals int) string {
	symbol := "K"
	switch scale {
	case CelsiusScale:
		symbol = "°C"
	case FahrenheitScale:
		symbol = "°F"
	}
	u, _ := KindTemperature.lookup(symbol)
	return inUnit(KindTemperature, u, float64(t), decimals)
}
