package bath

import (
	"sort"
	"strconv"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// Library returns all baths of this package, by metal. Each call makes them
// afresh: change yours as you like.
func Library() []Bath {
	var all []Bath
	all = append(all, goldCyanide()...)
	all = append(all, goldOther()...)
	all = append(all, silver()...)
	all = append(all, nickel()...)
	all = append(all, copperAcid()...)
	all = append(all, copperCyanide()...)
	all = append(all, white()...)
	for i := range all {
		if all[i].AnodeKind == AnodeNotGiven { // the tables say it of the others
			all[i].AnodeKind = SolubleAnode
		}
	}
	return all
}

// Get returns the library bath of a key.
//
// Errors: a [*units.ValueError] that lists the keys.
func Get(key string) (Bath, error) { return Find(Library(), key) }

// Find returns the bath of a key from a list, as from [Library] or [Read].
//
// Errors: a [*units.ValueError] that lists the keys.
func Find(list []Bath, key string) (Bath, error) {
	var keys []string
	for _, b := range list {
		if b.Key == key {
			return b, nil
		}
		keys = append(keys, b.Key)
	}
	sort.Strings(keys)
	return Bath{}, &units.ValueError{Field: "key of a bath", Value: strconv.Quote(units.Clip(key)), Need: "one of " +
		strings.Join(keys, ", "), Err: units.ErrOutOfRange}
}

// Short forms for the tables of the library: units as printed, and origins.
const (
	ft2 = units.AmperePerSquareFoot
	dm2 = units.AmperePerSquareDecimetre
	gL  = units.GramPerLitre
	gcc = units.GramPerCubicCentimetre
	uin = units.Microinch
	um  = units.Micrometre
)

func published[Q units.Quantity](low, high Q, key string) Range[Q] {
	return Range[Q]{Low: low, High: high, Source: key, Seen: origin.Published}
}

func secondHand[Q units.Quantity](low, high Q, key string) Range[Q] {
	return Range[Q]{Low: low, High: high, Source: key, Seen: origin.SecondHand}
}

func memory[Q units.Quantity](low, high Q) Range[Q] {
	return Range[Q]{Low: low, High: high, Source: origin.Memory}
}

// noted adds how the figure was printed or calculated.
func noted[Q units.Quantity](r Range[Q], note string) Range[Q] {
	r.Note = note
	return r
}

// salt parses a formula of the library; a test holds that none fails.
func salt(text string) faraday.Formula {
	f, err := faraday.ParseFormula(text)
	if err != nil {
		return faraday.Formula{}
	}
	return f
}

func degF(t float64) units.Temperature { return units.Fahrenheit(t) }
func degC(t float64) units.Temperature { return units.Celsius(t) }

func say(text, key string) Words {
	return Words{Text: text, Source: key, Seen: origin.Published}
}

func heard(text, key string) Words {
	return Words{Text: text, Source: key, Seen: origin.SecondHand}
}

func recalled(text string) Words { return Words{Text: text, Source: origin.Memory} }

func make1(name string, r Range[units.MassConcentration]) Ingredient { return Ingredient{name, r} }
