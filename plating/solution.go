package plating

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// The rules of a solution's chemistry, for programs. They do not change with
// the wording.
const (
	CodeGoldCyanideAcid = "gold-cyanide-acid" // gold(I) cyanide below the pH that it stands
	CodeCyanideInAcid   = "cyanide-in-acid"   // cyanide that no acid bath may hold
	CodePHNotGiven      = "pH-not-given"      // it cannot be judged without
	CodeUnsaidCyanide   = "unsaid-cyanide"    // a valence that stands in cyanide, and none is listed
	CodeWrongSalt       = "wrong-salt"        // a salt that does not fit the bath
	CodePoisonGas       = "poison-gas"        // two things in one solution that make gas or fire
	CodeVessel          = "vessel"            // the solution attacks what it stands in
	CodeAnode           = "anode"             // the bath dissolves or oxidises the anode
	CodeLiveEntry       = "live-entry"        // enter with the current on
	CodeUnusual         = "unusual"           // a figure outside the usual: package sense
	CodeLowEfficiency   = "low-efficiency"    // most of the current makes hydrogen
)

// LowestGoldCyanidePH is the pH below which the gold(I) cyanide complex breaks
// down to gold(I) cyanide and hydrogen cyanide.
//
// Source: [GoldCyanidePatent] ("about 3"; the only print seen).
const LowestGoldCyanidePH PH = 3

// HydrogenCyanidePK is the pH at which half of free cyanide is hydrogen cyanide.
//
// Source: [HCNAcid].
const HydrogenCyanidePK PH = 9.2

const recall = origin.Memory

// A Solution is what is known of the chemistry of a bath or tank, as far as its
// dangers go. A zero field is "not given". Every package that judges a
// solution makes one of what it knows and asks [Solution.Review].
type Solution struct {
	Name    string            // text that may give hazards away
	Hazards Hazard            // as listed
	Metal   string            // that it deposits
	With    []string          // other metals of the deposit
	Valence int               // that Metal is deposited from
	PH      PHWindow          //
	Salts   []faraday.Formula // it is made up or fed with
	Anode   string            // the other electrode, in words; "" also where the piece is the anode
	Vessel  Vessel

	Insoluble bool // the anode does not dissolve, whatever it is of

	Temperature units.Temperature // that it is run at
}

// Solution returns the bath as its chemistry is judged. A valence that is not
// given is taken from the equivalent of the deposit, where that tells.
func (b *OperatingBath) Solution() Solution {
	s := Solution{Name: b.Name, Hazards: b.Hazards, Metal: b.Metal, Valence: b.valence(), PH: b.PH, Anode: b.Anode,
		Vessel: b.Vessel, Insoluble: b.InsolubleAnode, Temperature: b.Temperature.Set}
	if !b.Salt.IsZero() {
		s.Salts = []faraday.Formula{b.Salt}
	}
	return s
}

// AllHazards returns the hazards that are listed and those that name, metal,
// salts and pH give away.
func (s *Solution) AllHazards() Hazard {
	h := s.Hazards.implied() | NamedHazards(s.Name) | MetalHazards(s.Metal)
	for _, m := range s.With {
		h |= MetalHazards(m)
	}
	for _, salt := range s.Salts {
		h |= SaltHazards(salt)
	}
	if s.Temperature > hotAbove() {
		h |= HazardHot
	}
	switch low := s.PH.lowest(); {
	case low > 0 && low < 6:
		h |= HazardAcid
	case low >= 13:
		h |= HazardCaustic
	}
	return h
}

// Unsaid returns which of cyanide and acid the name gives away and the list
// leaves out: the two that a review for hydrogen cyanide goes by.
func Unsaid(listed Hazard, names ...string) Hazard {
	return NamedHazards(names...) &^ listed.implied() & (HazardCyanide | HazardAcid)
}

// Review judges the solution by itself, wherever it stands: what makes it
// deadly is of severity stop. What it does with the solutions beside it is for
// package sequence.
//
//	gold(I) cyanide in acid    stop below pH 3, judged by the low end; stop when the pH is not given
//	other cyanide in acid, or below pH 9.2: stop; a warning for silver from pH 8 up that is said
//	to hold no free cyanide
//	a salt of another valence  stop; a cyanide salt other than of gold in acid: stop
//	sulfite, sulfide, hypochlorite with acid; nitric or chromic acid or peroxide
//	with organic matter; cyanide with an oxidiser: stop
//	fluoride in glass, acid or caustic in a metal that it dissolves: stop
//	an anode that dissolves or oxidises: warning
//
// A solution without hazards passes: what nobody says and no name gives away is
// not seen.
//
// Source: [GoldCyanidePatent], [KCNSheet], [Hypochlorite], [SulfiteSheet],
// [ICSCNitric], [ICSCPeroxide], [HFSheet], [CausticMetals]; each note names its own.
func (s *Solution) Review() []Note {
	h := s.AllHazards()
	notes := s.cyanide(h)
	notes = append(notes, s.salts(h)...)
	notes = append(notes, s.together(h)...)
	notes = append(notes, s.vessel(h)...)
	return append(notes, s.anode(h)...)
}

// A DangerError carries the notes of a solution that must not be made up, run or
// fed.
type DangerError struct {
	Notes []Note // all of severity stop
}

// Error returns what to do and why for the first, and how many more there are.
func (e *DangerError) Error() string {
	if len(e.Notes) == 0 {
		return "the solution must not be used"
	}
	s := "STOP: " + e.Notes[0].Text + ". " + e.Notes[0].Do + " [" + e.Notes[0].Source + "]"
	if n := len(e.Notes) - 1; n > 0 {
		s += fmt.Sprintf(" (and %d more)", n)
	}
	return units.Printable(s)
}

// Deadly returns a [*DangerError] when the review of a solution finds a stop,
// nil when it finds none: for readers that refuse.
func Deadly(s Solution) error {
	var stops []Note
	for _, n := range s.Review() {
		if n.Severity == SeverityStop {
			stops = append(stops, n)
		}
	}
	if stops == nil {
		return nil
	}
	return &DangerError{Notes: stops}
}

// IsQuestion reports whether the note stops because something is not given, which the
// shop can look up: the pH, or what keeps the metal in solution.
func (n Note) IsQuestion() bool { return n.Code == CodePHNotGiven || n.Code == CodeUnsaidCyanide }

// KnownDeadly is [Deadly] without what is only not given: for readers of books and
// cases, which do not run the bath. They say the question instead.
func KnownDeadly(s Solution) error {
	var danger *DangerError
	if !errors.As(Deadly(s), &danger) {
		return nil
	}
	left := slices.DeleteFunc(danger.Notes, func(n Note) bool { return n.IsQuestion() })
	if len(left) == 0 {
		return nil
	}
	return &DangerError{Notes: left}
}

// lowestSilverCyanidePH is the pH that fast silver baths without free cyanide are kept
// above (from memory).
const lowestSilverCyanidePH PH = 8

// heldOtherwise reports whether a name says what else than cyanide keeps gold(I) or
// copper(I) in solution, or that it is free of cyanide.
func heldOtherwise(name string) bool {
	text := strings.ToLower(name)
	for _, w := range []string{"thiosul", "thiourea", "thiomal", "thiocyan", "iodid", "bromid", "succinimid",
		"hydantoin", "mercapto"} {
		if strings.Contains(text, w) {
			return true
		}
	}
	return strings.Contains(text, "cyan") // and yet not among its hazards: it denies it
}

// freeCyanide reports whether a name says that the bath holds free cyanide, which an
// alkaline gold bath does, or that it holds none beside the metal's own.
func freeCyanide(name string) (said, denied bool) {
	text := " " + strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return unicode.IsSpace(r) || strings.ContainsRune("-,;:()", r)
	}), " ") + " "
	for _, no := range []string{" no ", " without ", " free of ", " non ", " zero "} {
		denied = denied || strings.Contains(text, no+"free cyanide ")
	}
	return !denied && (strings.Contains(text, " free cyanide ") || strings.Contains(text, " alkaline ")), denied
}

const freesHCN = "hydrogen cyanide comes off, and it kills"

// cyanide judges cyanide in acid.
//
//	HCN ⇌ H⁺ + CN⁻,  share of HCN = 1/(1 + 10^(pH - 9.2)) [HCNAcid]
//
// Free cyanide is half gas at pH 9.2 already. Bound in the gold(I) complex it stays down to
// about pH 3, which is why acid gold baths can be run [GoldCyanidePatent]. No other metal
// holds it that well. What the bath does not say is asked for: a pH by its low end, since
// that is when the gas comes; and what holds gold(I) or copper(I) in solution, since it is
// cyanide as a rule.
func (s *Solution) cyanide(h Hazard) []Note {
	stop := func(code, source, text, do string) []Note {
		return []Note{{Code: code, Severity: SeverityStop, Text: text, Do: do, Source: source}}
	}
	alkaline := !h.Has(HazardAcid)
	if (s.Metal == "Au" && !alkaline || s.Metal == "Cu") && s.Valence == 1 &&
		h&(HazardCyanide|HazardSulfite|HazardHydrogenChloride) == 0 && !heldOtherwise(s.Name) {
		name := map[string]string{"Au": "gold", "Cu": "copper"}[s.Metal]
		return stop(CodeUnsaidCyanide, recall, name+"(I), and what keeps it in solution is not said: it is cyanide "+
			"as a rule, and acid frees hydrogen cyanide from it, which kills",
			"Read the label of the salt. Add cyanide to the hazards if it holds any. If it holds none, correct the "+
				"valence, or say in the name what the bath holds, as thiosulfate or free of cyanide")
	}
	said, denied := freeCyanide(s.Name)
	low := s.PH.lowest()
	if s.Metal == "Au" && s.Valence != 3 && alkaline && low == 0 && h.Has(HazardCyanide) && !h.Has(HazardCaustic) &&
		s.Hazards == 0 && !said && !hasWord(strings.ToLower(s.Name), "neutral") {
		return stop(CodePHNotGiven, "GoldCyanidePatent",
			fmt.Sprintf("gold cyanide, and nothing says whether the bath is acid: below pH %s %s",
				LowestGoldCyanidePH, freesHCN),
			"Measure the pH and give it with its low end")
	}
	if !h.Has(HazardCyanide) || alkaline && (s.Metal == "Au" && !said || low == 0 || low >= HydrogenCyanidePK) {
		return nil
	}
	switch {
	case alkaline && denied && s.Metal == "Ag" && low >= lowestSilverCyanidePH:
		return []Note{{Code: CodeCyanideInAcid, Severity: SeverityWarning, Source: recall,
			Text: fmt.Sprintf("silver cyanide without free cyanide at pH %s: the current frees cyanide, and below "+
				"pH %s more than half of it is hydrogen cyanide, which kills", low, HydrogenCyanidePK),
			Do: fmt.Sprintf("Run it with the extraction on only. Keep it above pH %s. Add no free cyanide",
				lowestSilverCyanidePH)}}
	case alkaline:
		return stop(CodeCyanideInAcid, "HCNAcid",
			fmt.Sprintf("cyanide at pH %s: below pH %s more than half of free cyanide "+
				"is hydrogen cyanide, which comes off and kills", low, HydrogenCyanidePK),
			"Do not run or feed this bath. Switch the extraction on and leave the room. Let who answers for the "+
				"bath measure its pH again")
	case s.Metal != "Au" && s.Metal != "":
		return stop(CodeCyanideInAcid, "KCNSheet", "cyanide in an acid bath of "+units.Clip(s.Metal)+": "+freesHCN,
			"Do not use this bath. If it is made up already, switch the extraction on and leave the room. Correct "+
				"the list of hazards if one of the two is wrong: only gold cyanide stands in weak acid")
	case s.Valence == 3: // the gold(III) complex: see the caution at the tank
		return nil
	case s.PH.Low == 0 && (s.PH.High == 0 || s.PH.High >= LowestGoldCyanidePH):
		return stop(CodePHNotGiven, "GoldCyanidePatent",
			fmt.Sprintf("gold cyanide in acid, and the lowest pH is not given: below pH %s %s",
				LowestGoldCyanidePH, freesHCN),
			fmt.Sprintf("Measure the pH and give it with its low end. Give the valence if the bath holds gold(III). "+
				"If it is below %s, switch the extraction on and leave the room", LowestGoldCyanidePH))
	case s.PH.lowest() < LowestGoldCyanidePH:
		return stop(CodeGoldCyanideAcid, "GoldCyanidePatent",
			fmt.Sprintf("gold(I) cyanide at pH %s: below pH %s the complex breaks down, %s", s.PH.lowest(),
				LowestGoldCyanidePH, freesHCN),
			fmt.Sprintf("Do not make up, run or feed this bath. If it is made up already, switch the extraction on "+
				"and leave the room. Keep a gold(I) cyanide bath above pH %s. A strike in stronger acid holds "+
				"gold(III): then say valence 3 and name its own salt", LowestGoldCyanidePH))
	}
	return nil
}

// goldValence returns the valence of gold in one of its simple cyanides or
// chlorides, and false when the formula does not tell.
//
//	v = (n(Cl) + n(CN) - n(K) - n(Na) - [n(H) - 2 n(O)]) / n(Au)
//
// The charges of a salt sum to zero; hydrogen counts where there is no cyanide, less that
// of its water: KAu(CN)₂ gives 1, HAuCl₄·3H₂O gives 3.
func goldValence(salt faraday.Formula) (int, bool) {
	gold := salt.Count("Au")
	if gold == 0 {
		return 0, false
	}
	negative := salt.Count("Cl") + min(salt.Count("C"), salt.Count("N"))
	positive := salt.Count("K") + salt.Count("Na")
	if salt.Count("C") == 0 {
		positive += salt.Count("H") - 2*salt.Count("O") // HAuCl4 with or without its water
	}
	v := (negative - positive) / gold
	if v != 1 && v != 3 {
		return 0, false
	}
	return int(v), true
}

// salts judges what the bath is made up or fed with.
//
// A gold salt of the other valence is the mistake that looks right: both are called
// potassium gold cyanide. Gold(I) cyanide in the strong acid of a gold(III) bath breaks
// down.
func (s *Solution) salts(h Hazard) []Note {
	var notes []Note
	stop := func(source, text, do string) {
		notes = append(notes, Note{Code: CodeWrongSalt, Severity: SeverityStop, Text: text, Do: do, Source: source})
	}
	for _, salt := range s.Salts {
		v, gold := goldValence(salt)
		cyanide := cyanideGroups(salt) > 0
		switch {
		case gold && s.Metal == "Au" && s.Valence != 0 && v != s.Valence:
			stop("Definition", fmt.Sprintf("%s holds gold(%s), the bath deposits gold(%s): %s", salt,
				roman(v), roman(s.Valence), wrongSalt(cyanide && h.Has(HazardAcid))),
				"Do not add it. Name the salt that the bath is made up with")
		case cyanide && h.Has(HazardAcid) && !gold:
			stop("KCNSheet", fmt.Sprintf("%s into an acid bath: %s", salt, freesHCN),
				"Do not add it. Name the salt that the bath is made up with")
		}
	}
	return notes
}

// wrongSalt says what a salt of the wrong valence does.
func wrongSalt(gas bool) string {
	if gas {
		return "in acid it may free hydrogen cyanide, which kills"
	}
	return "amounts and current would be wrong"
}

// roman writes a valence as chemists do: gold(III).
func roman(v int) string {
	if v >= 1 && v <= 8 {
		return []string{"I", "II", "III", "IV", "V", "VI", "VII", "VIII"}[v-1]
	}
	return fmt.Sprint(v)
}

// A Clash is two hazards that must not meet, in one solution or carried from
// one into the other, with what they make.
type Clash struct {
	A, B   Hazard // the pair, in either order
	Makes  string // "chlorine, which kills"
	Source string // key, or from memory
}

// Clashes returns the pairs that must not meet. Cyanide with acid is the worst
// and has rules of its own: [Solution.Review], and package sequence.
func Clashes() []Clash {
	const fire = "fire and brown fume"
	return []Clash{
		{HazardSulfide, HazardAcid, "hydrogen sulfide, which kills", recall},
		{HazardHypochlorite, HazardAcid, "chlorine, which kills", "Hypochlorite"},
		{HazardHypochlorite, HazardAmmonia, "chloramine, which chokes", "Hypochlorite"},
		{HazardHypochlorite, HazardCyanide, "a violent reaction and chlorine", "Hypochlorite"},
		{HazardOxidiser, HazardCyanide, "a reaction that can explode", "CyanideOxidiser"},
		{HazardNitric, HazardOrganic, fire, "ICSCNitric"},
		{HazardChromate, HazardOrganic, "fire", "ICSCChromate"},
		{HazardOxidiser, HazardOrganic, "fire", "ICSCPeroxide"},
		{HazardSulfite, HazardAcid, "sulfur dioxide, which chokes", "SulfiteSheet"},
	}
}

// together finds what must not be in one solution.
func (s *Solution) together(h Hazard) []Note {
	var notes []Note
	for _, c := range Clashes() {
		if !h.Has(c.A | c.B) {
			continue
		}
		if c.A == HazardSulfite && s.PH.Low >= 5 {
			continue // some sulfite baths are kept a little acid
		}
		notes = append(notes, Note{Code: CodePoisonGas, Severity: SeverityStop, Source: c.Source,
			Text: fmt.Sprintf("%s and %s in one solution: together they make %s", c.A, c.B, c.Makes),
			Do:   "Do not mix or run it. Correct the list of hazards if one of the two is wrong"})
	}
	return notes
}

// vessel finds a solution that attacks what it stands in.
func (s *Solution) vessel(h Hazard) []Note {
	stop := func(source, text, do string) []Note {
		return []Note{{Code: CodeVessel, Severity: SeverityStop, Text: text, Do: do, Source: source}}
	}
	fluoride := h&(HazardFluoride|HazardFluoborate) != 0
	switch {
	case s.Vessel == VesselGlass && fluoride:
		return stop("HFSheet", "fluoride in glass: fluoride etches the vessel through",
			"Use polypropylene or polyethylene")
	case (s.Vessel == VesselSteel || s.Vessel == VesselAluminium) && h.Has(HazardAcid),
		s.Vessel == VesselStainless && h.Has(HazardAcid) && (fluoride || h.Has(HazardHydrogenChloride)):
		return stop(recall, "acid in a vessel of "+s.Vessel.String()+": acid eats through the vessel and frees "+
			"hydrogen", "Use plastic or glass")
	case s.Vessel == VesselAluminium && h.Has(HazardCyanide):
		return stop(recall, "cyanide in aluminium or zinc-coated ware: cyanide dissolves the vessel and frees hydrogen",
			"Use plastic, steel or stainless steel")
	case s.Vessel == VesselAluminium && (h.Has(HazardCaustic) || s.PH.High >= 11 || s.PH.Low >= 11):
		return stop("CausticMetals", "caustic in aluminium or zinc-coated ware: caustic eats through the vessel and "+
			"frees hydrogen", "Use plastic, steel or stainless steel")
	}
	return nil
}
