package plating

import (
	"fmt"
	"slices"
	"strings"

	"example.com/laydown/faraday"
)

// Cautions returns the cautions in full for these hazards and for any plating
// bath, most dangerous first: for lessons and for programs that keep a sheet of
// them. A bench sheet uses [FrontCautions] and [Solution.AtTank], which are
// short. They remind; safety data sheets, local codes and licensed practice
// decide.
//
// Source: a key in each note; what to do is [Practice].
func Cautions(h Hazard) []Note {
	var notes []Note
	for _, row := range hazardTable {
		if h.Has(row.Flag) {
			notes = append(notes, Note{Severity: SeverityCaution, Text: row.Why, Do: row.Do, Source: row.Source})
		}
	}
	return append(notes, always()...)
}

// always are the two cautions of every plating bath.
func always() []Note {
	return []Note{{
		Severity: SeverityCaution, Source: practice,
		Do:   "Switch the extraction on before the current. Keep flame and spark away.",
		Text: "Current makes hydrogen, which burns, and mist, which you breathe.",
	}, {
		Severity: SeverityCaution, Source: practice,
		Do:   "Pour nothing down the drain: collect rinse water and old baths, recover the metal.",
		Text: "They are hazardous waste. Safety data sheets, local codes and licensed practice decide over this sheet.",
	}}
}

// FrontCautions returns the few lines that stand in front of a job: cyanide with
// acid, burns, hydrogen and mist, waste with local law. h holds the hazards of
// all its tanks. What one tank brings stands at that tank: [Solution.AtTank].
//
// Source: [KCNSheet], [AlkaliDilution], [Practice].
func FrontCautions(h Hazard) []Note {
	var notes []Note
	add := func(source, do, why string) {
		notes = append(notes, Note{Severity: SeverityCaution, Text: why, Do: do, Source: source})
	}
	if h.Has(HazardCyanide) {
		add("KCNSheet", "Never let acid and cyanide meet: not in a tank, a rinse, a drain or a waste drum. Never "+
			"work alone. Arrange first aid for cyanide with a doctor first.",
			"Together they free hydrogen cyanide, which kills.")
	}
	if h&(HazardAcid|HazardCaustic|HazardHot|HazardFluoride|HazardFluoborate) != 0 {
		add("AlkaliDilution", "Wear goggles, gloves and apron. Pour acid and caustic into cold water, never water "+
			"into them.", "They burn and blind.")
	}
	return append(notes, always()...)
}

// AtTank returns the short lines that stand under the name of a tank with this
// solution, the most dangerous first; none for a solution without hazards.
//
// Source: a key in each note.
func (s *Solution) AtTank() []Note {
	h := s.AllHazards()
	var notes []Note
	add := func(text, source string) {
		notes = append(notes, Note{Severity: SeverityCaution, Text: text, Source: source})
	}
	bound := h.Has(HazardCyanide | HazardAcid)
	weak := bound && s.Valence != 3
	for _, row := range hazardTable {
		switch {
		case !h.Has(row.Flag):
		case row.Flag == HazardCyanide && weak:
			add(fmt.Sprintf("CYANIDE IN ACID: pH meter in the bath, extraction on; below pH %s it frees hydrogen "+
				"cyanide, which kills", LowestGoldCyanidePH), "GoldCyanidePatent")
		case row.Flag == HazardCyanide && bound:
			add("GOLD(III) CYANIDE IN STRONG ACID: extraction always on; feed it with its own gold(III) salt only: "+
				"KAu(CN)2 frees hydrogen cyanide in it, which kills", "AuricCyanide")
		case row.Flag == HazardAcid && (weak || h&(HazardNitric|HazardHydrogenChloride) != 0): // said already
		case row.Flag == HazardFluoride && h.Has(HazardFluoborate):
		default:
			add(row.Short, row.Source)
		}
	}
	return notes
}

// Adding returns what to mind when a salt is weighed and added to this
// solution; an empty Note for a salt without hazards. It stands at the line
// that says how much.
//
// Source: a key in the note.
func (s *Solution) Adding(salt faraday.Formula) Note {
	h := SaltHazards(salt)
	n := Note{Severity: SeverityCaution}
	switch {
	case h.Has(HazardCyanide) && s.AllHazards().Has(HazardAcid) && s.Valence != 3:
		n.Text, n.Source = "the salt is poison, and acid frees hydrogen cyanide from it", "GoldCyanidePatent"
		n.Do = fmt.Sprintf("POISON: read the pH first and add nothing below pH %s; weigh it with gloves on, "+
			"dissolve it in water, extraction on", LowestGoldCyanidePH)
	case h.Has(HazardCyanide) && s.AllHazards().Has(HazardAcid):
		n.Text, n.Source = "the salt is poison, and another cyanide salt in its place would free hydrogen cyanide",
			"AuricCyanide"
		n.Do = "POISON: read the label twice; weigh it with gloves on, dissolve it in water, extraction on"
	case h.Has(HazardCyanide):
		n.Text, n.Source = "the salt is poison, and acid frees hydrogen cyanide from it", "KCNSheet"
		n.Do = "POISON: weigh it with gloves on, away from every acid; dissolve it in water, extraction on"
	default:
		for _, row := range hazardTable {
			if h.Has(row.Flag) {
				n.Do, n.Text, n.Source = row.Short, row.Why, row.Source
				return n
			}
		}
		return Note{}
	}
	return n
}

// TankLine joins the short lines of a tank into one, sources once at the end:
// for text, page and card alike. It is "" for none.
func TankLine(notes []Note) string {
	var texts, sources []string
	for _, n := range notes {
		texts = append(texts, strings.TrimSuffix(n.Text, "."))
		for _, key := range strings.Split(n.Source, ", ") {
			if n.Source == practice || n.Source == recall {
				key = n.Source
			}
			if !slices.Contains(sources, key) {
				sources = append(sources, key)
			}
		}
	}
	if texts == nil {
		return ""
	}
	return strings.Join(texts, ". ") + ". [" + strings.Join(sources, "; ") + "]"
}
