package units

import "strings"

// A QuantityKind names one sort of quantity: all lengths are of one kind, all areas of
// another. The zero QuantityKind is none.
type QuantityKind uint8

// The kinds, in the order of [Kinds].
const (
	KindNone QuantityKind = iota
	KindLength
	KindArea
	KindVolume
	KindMass
	KindDensity
	KindMassPerArea
	KindMassConcentration
	KindAmount
	KindMolarMass
	KindAmountConcentration
	KindCurrent
	KindCurrentDensity
	KindCharge
	KindEquivalent
	KindVoltage
	KindResistance
	KindAreaResistance
	KindConductivity
	KindPower
	KindEnergy
	KindTemperature
	KindTemperatureDifference
	KindDuration
	KindPressure
	KindSpeed
	KindDiffusivity
	KindEfficiency
	KindMassFraction
	KindMoleFraction
	KindRatio
	kindEnd
)

// Kinds returns every kind of quantity, for programs that offer a choice.
func Kinds() []QuantityKind {
	all := make([]QuantityKind, 0, kindEnd-1)
	for k := KindNone + 1; k < kindEnd; k++ {
		all = append(all, k)
	}
	return all
}

// String returns the kind's name in words, as "current density".
func (k QuantityKind) String() string {
	if k >= kindEnd {
		k = KindNone
	}
	return kindTable[k].name
}

// Units returns the symbols that text of this kind may use, in the form they
// are printed. Each has other spellings too: see the package comment.
func (k QuantityKind) Units() []string {
	if k >= kindEnd {
		return nil
	}
	list := make([]string, len(kindTable[k].units))
	for i, u := range kindTable[k].units {
		list[i] = u.symbol
	}
	return list
}

// Spellings returns every spelling of one unit of this kind that text may use,
// the printed one first; nil when the kind has no such unit. A micro sign or a
// Greek mu may stand for u, a raised 2 for 2, a middle dot, an asterisk or a
// space between factors.
func (k QuantityKind) Spellings(symbol string) []string {
	u, _ := k.lookup(normalise(symbol))
	if u == nil {
		return nil
	}
	return append([]string{u.symbol}, strings.Fields(u.also)...)
}

// lookup finds a unit of the kind by its normalised symbol.
func (k QuantityKind) lookup(norm string) (*unit, int) {
	if k >= kindEnd {
		return nil, -1
	}
	list := kindTable[k].units
	for i := range list {
		// A plain u stands for the micro sign; a micro sign for no other u.
		printed := normalise(list[i].symbol)
		if printed == norm || strings.ReplaceAll(printed, "µ", "u") == norm {
			return &list[i], i
		}
		for rest := list[i].also; rest != ""; {
			var one string
			one, rest, _ = strings.Cut(rest, " ")
			if one == norm {
				return &list[i], i
			}
		}
	}
	return nil, -1
}

// kindsOf lists the kinds that know the unit.
func kindsOf(norm string) []QuantityKind {
	var found []QuantityKind
	for _, k := range Kinds() {
		if u, _ := k.lookup(norm); u != nil {
			found = append(found, k)
		}
	}
	return found
}

// normalise brings the many ways to write a unit symbol to one: the micro sign
// for a Greek mu, plain digits for raised ones, one middle dot between
// factors, no space.
func normalise(symbol string) string {
	var b strings.Builder
	rs := []rune(strings.TrimSpace(symbol))
	for i := 0; i < len(rs); i++ {
		switch r := rs[i]; r {
		case '\u00b5', '\u03bc': // micro sign, Greek mu
			b.WriteRune('µ')
		case '²':
			b.WriteByte('2')
		case '³':
			b.WriteByte('3')
		case '^':
			if i+1 < len(rs) && (rs[i+1] == '2' || rs[i+1] == '3') {
				continue
			}
			b.WriteRune(r)
		case ' ', '\t', '\u00a0', '\u2009', '\u202f', '·', '⋅', '∙', '*':
			b.WriteRune('·')
		case '∕', '⁄':
			b.WriteByte('/')
		case '\u03a9', '\u2126': // Greek omega, ohm sign
			b.WriteString("ohm")
		case 'º', '˚':
			b.WriteRune('°')
		case '℃':
			b.WriteString("°C")
		case '℉':
			b.WriteString("°F")
		default:
			b.WriteRune(r)
		}
	}
	s := b.String()
	for strings.Contains(s, "··") {
		s = strings.ReplaceAll(s, "··", "·")
	}
	s = strings.ReplaceAll(s, "·/", "/")
	return strings.ReplaceAll(s, "/·", "/")
}
