package plating

import (
	"encoding/json"
	"strconv"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// A Hazard is a set of dangers that a solution brings by its chemistry. One
// table, [HazardTable], says for each flag how it is written, what gives it
// away and what to do about it; every package and every reader goes by it.
type Hazard uint32

// The hazards. A bath of metal cyanide in acid has both HazardCyanide and
// HazardAcid.
const (
	HazardCyanide          Hazard = 1 << iota // free cyanide, or cyanide complexed with a metal
	HazardAcid                                // pH below 7
	HazardCaustic                             // strongly alkaline
	HazardNickel                              // nickel salts or a nickel deposit
	HazardHot                                 // above 45 °C
	HazardAmmonia                             // gives off ammonia
	HazardChromate                            // hexavalent chromium
	HazardFluoride                            // fluoride or hydrofluoric acid
	HazardNitric                              // nitric acid: brown fume
	HazardCobalt                              // cobalt salts
	HazardSulfite                             // gives off sulfur dioxide with acid
	HazardHydrogenChloride                    // hydrochloric acid: its fume
	HazardBoric                               // boric acid
	HazardLead                                // lead salts, or a lead electrode
	HazardFluoborate                          // fluoborate or fluoboric acid: may free hydrogen fluoride
	HazardSulfide                             // gives off hydrogen sulfide with acid
	HazardHypochlorite                        // gives off chlorine with acid
	HazardOxidiser                            // peroxide and other strong oxidisers
	HazardOrganic                             // solvents and other organic liquids
	HazardToxicMetal                          // salts of mercury, cadmium, arsenic, thallium and the like
	hazardEnd
)

// hotAbove returns the temperature above which a solution scalds within seconds (common
// practice, no source).
func hotAbove() units.Temperature { return units.Celsius(45) }

// Has reports whether every hazard of h2 is in h.
func (h Hazard) Has(h2 Hazard) bool { return h&h2 == h2 }

// Words returns the hazards as files write them, in the order of the table.
func (h Hazard) Words() []string {
	var list []string
	for _, row := range hazardTable {
		if h.Has(row.Flag) {
			list = append(list, row.Word)
		}
	}
	return list
}

// String names the hazards: "cyanide, acid"; "none" for none.
func (h Hazard) String() string {
	if list := h.Words(); len(list) > 0 {
		return strings.Join(list, ", ")
	}
	return "none"
}

// UnmarshalText reads one word as [ParseHazard].
//
// Errors: a [*units.ValueError] that lists the words.
func (h *Hazard) UnmarshalText(text []byte) error {
	if h == nil {
		return units.Missing("hazard to read into", "a pointer to one")
	}
	v, err := ParseHazard(string(text))
	*h = v
	return err
}

// ParseHazard reads the word of one hazard as files write it.
//
// Errors: a [*units.ValueError] that lists the words.
func ParseHazard(text string) (Hazard, error) {
	for _, row := range hazardTable {
		if row.Word == text {
			return row.Flag, nil
		}
	}
	return 0, &units.ValueError{Field: "hazard", Value: strconv.Quote(units.Clip(text)),
		Need: "one of " + strings.Join((hazardEnd-1).Words(), ", "), Err: units.ErrOutOfRange}
}

// NamedHazards returns the hazards that names give away: of a bath, a tank, an
// ingredient or a salt. A name that says that something is not there, as
// "free of cyanide", does not name it. Where a name can be read two ways it
// counts as dangerous.
func NamedHazards(names ...string) Hazard {
	var h Hazard
	table := hazardTable
	for _, name := range names {
		text := readName(name)
		for i := range table {
			if h&table[i].Flag == 0 && text.names(&table[i]) {
				h |= table[i].Flag | table[i].Implies
			}
		}
	}
	return h
}

// implied adds what comes with a hazard: who lists nitric lists acid.
func (h Hazard) implied() Hazard {
	for i := range hazardTable {
		if h.Has(hazardTable[i].Flag) {
			h |= hazardTable[i].Implies
		}
	}
	return h
}

// SaltHazards returns the hazards that a salt brings by its formula: cyanide
// groups, fluorine, and the metals of the table.
func SaltHazards(salt faraday.Formula) Hazard {
	if salt.IsZero() {
		return 0
	}
	h := NamedHazards(salt.String())
	if cyanideGroups(salt) > 0 {
		h |= HazardCyanide
	}
	for _, e := range salt.Elements() {
		h |= MetalHazards(e.Symbol)
		if e.Symbol == "F" && salt.Count("B") == 0 {
			h |= HazardFluoride
		}
	}
	return h
}

// MetalHazards returns the hazards that the salts of a metal bring.
func MetalHazards(symbol string) Hazard {
	var h Hazard
	for _, row := range hazardTable {
		for _, m := range row.Metals {
			if m == symbol {
				h |= row.Flag
			}
		}
	}
	return h
}

// cyanideGroups counts the CN groups of a salt: as many as its carbon and
// nitrogen allow, when it writes the group.
func cyanideGroups(salt faraday.Formula) float64 {
	group, err := faraday.ParseFormula("CN")
	if err != nil {
		return 0
	}
	if _, err := salt.MassFractionOf(group); err != nil {
		return 0
	}
	return min(salt.Count("C"), salt.Count("N"))
}

// AllHazards returns every hazard of the bath: those that it names, and those
// that its name, metal, salt, pH and temperature give away, so that one
// forgotten in the list still counts.
func (b *OperatingBath) AllHazards() Hazard {
	s := b.Solution()
	return s.AllHazards()
}

// Precious reports whether a metal is one of the precious metals: what clings
// from its bath is kept, and its price counts. One list for every package.
//
// Source: [Definition] (gold, silver and the six platinum metals).
func Precious(symbol string) bool {
	switch symbol {
	case "Au", "Ag", "Pt", "Pd", "Rh", "Ru", "Ir", "Os":
		return true
	}
	return false
}

// MarshalJSON writes the hazards as a list of words.
func (h Hazard) MarshalJSON() ([]byte, error) {
	list := h.Words()
	if list == nil {
		list = []string{}
	}
	return json.Marshal(list)
}

// UnmarshalJSON reads a list of words.
//
// Errors: a [*units.ValueError] for a word that names no hazard.
func (h *Hazard) UnmarshalJSON(raw []byte) error {
	if h == nil {
		return units.Missing("hazards to read into", "a pointer to them")
	}
	var list []string
	if err := json.Unmarshal(raw, &list); err != nil {
		return err
	}
	*h = 0
	for _, w := range list {
		v, err := ParseHazard(w)
		if err != nil {
			return err
		}
		*h |= v
	}
	return nil
}
