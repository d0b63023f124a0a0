package plating

import (
	"strings"

	"example.com/laydown/units"
)

// A Hazard is a set of dangers that a bath brings by its chemistry.
type Hazard uint16

// The hazards. A bath of metal cyanide in acid has both HazardCyanide and
// HazardAcid.
const (
	HazardCyanide  Hazard = 1 << iota // free or bound cyanide
	HazardAcid                        // pH below 7
	HazardCaustic                     // strongly alkaline
	HazardNickel                      // nickel salts or a nickel deposit
	HazardHot                         // above about 45 °C
	HazardAmmonia                     // gives off ammonia
	HazardChromate                    // hexavalent chromium
	HazardFluoride                    // fluoride or fluoroborate
	HazardNitric                      // nitric acid: brown fume
)

// Has reports whether every hazard of h2 is in h.
func (h Hazard) Has(h2 Hazard) bool { return h&h2 == h2 }

// AllHazards returns the hazards that the bath names and those that its own
// name, metal and temperature give away, so that one forgotten in the list is
// still warned of: cyanide, acid, nickel, chromic, ammonia, fluoride, nitric in the name (unless
// it says free of it), nickel as the metal, more than 45 °C.
func (b *Bath) AllHazards() Hazard {
	h := b.Hazards
	name := strings.ToLower(b.Name)
	for _, w := range []struct {
		word string
		flag Hazard
	}{
		{"cyanide", HazardCyanide}, {"acid", HazardAcid}, {"nickel", HazardNickel}, {"chromic", HazardChromate},
		{"chromium", HazardChromate}, {"ammonia", HazardAmmonia}, {"fluo", HazardFluoride}, {"caustic", HazardCaustic},
		{"nitric", HazardNitric},
	} {
		plain := name
		for _, denial := range []string{w.word + "-free", w.word + " free", "non-" + w.word, "without " + w.word, "free of " + w.word, "free from " + w.word, "no " + w.word} {
			plain = strings.ReplaceAll(plain, denial, "")
		}
		if strings.Contains(plain, w.word) {
			h |= w.flag
		}
	}
	if b.Metal == "Ni" {
		h |= HazardNickel
	}
	if b.Heat.Set > units.Celsius(45) {
		h |= HazardHot
	}
	return h
}

// freeCyanide reports whether the bath holds cyanide that is not kept bound in acid.
func (h Hazard) freeCyanide() bool { return h.Has(HazardCyanide) && !h.Has(HazardAcid) }

// Cautions returns the usual cautions for a bath with these hazards and for
// any plating bath, most dangerous first. They remind; they do not replace the
// safety data sheets, local law or licensed practice.
//
// Source: [Practice].
func Cautions(h Hazard) []Note {
	list := []struct {
		when     Hazard
		severity Severity
		text, do string
	}{
		{HazardCyanide | HazardAcid, SeverityCaution, "the bath holds bound cyanide in acid: below about pH 3 it gives off hydrogen cyanide",
			"never add acid without the pH meter in the bath, and only under extraction"},
		{HazardCyanide, SeverityCaution, "cyanide: a fraction of a gram swallowed, or the gas, can kill; acid sets the gas free",
			"keep acid and its rinse water away, rinse twice in between, never work alone, have first aid for cyanide arranged with a doctor"},
		{HazardChromate, SeverityCaution, "hexavalent chromium: poisonous, causes cancer", "extraction, gloves, no mist; the limits for air and waste are law"},
		{HazardFluoride, SeverityCaution, "fluoride burns go deep and hurt late", "gloves and shield; calcium gluconate gel at hand"},
		{HazardNitric, SeverityCaution, "nitric acid gives off brown fume with metal and with what is organic; lungs that have taken it fail hours later",
			"draw off at the tank, no wood, cloth or loose chips near it; to a doctor after breathing it, also without pain"},
		{HazardCaustic, SeverityCaution, "hot caustic blinds", "goggles and shield; add caustic slowly to cold water, never water to caustic"},
		{HazardAcid, SeverityCaution, "acid burns", "goggles, gloves, apron; acid into water, never water into acid"},
		{HazardAmmonia, SeverityCaution, "ammonia comes off", "draw off at the tank"},
		{HazardNickel, SeverityCaution, "nickel salts sensitise the skin and their mist causes cancer; nickel against skin causes allergy",
			"gloves, extraction at the tank; tell the owner of a piece that is worn"},
		{HazardHot, SeverityCaution, "hot bath: mist and burns", "cover or extract, lower parts in slowly"},
		{0, SeverityCaution, "hydrogen and mist come off while current flows", "extraction on before the current, no flame or spark near the tank"},
		{0, SeverityCaution, "rinse water and old baths are hazardous waste", "nothing to the drain; collect, recover the metal, and follow local law"},
	}
	var notes []Note
	for _, c := range list {
		if h.Has(c.when) {
			notes = append(notes, Note{Severity: c.severity, Text: c.text, Do: c.do, Source: practice})
		}
	}
	return notes
}
