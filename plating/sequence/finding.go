package sequence

import (
	"strconv"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A Code names a rule, for programs. It does not change with the wording: compare codes,
// show texts. One code may come at several severities, and its text says which case it is.
type Code string

// The rules. Each finding is of one. The rules of one solution by itself have the
// codes of package plating: plating.CodeGoldCyanideAcid and those beside it.
const (
	CodeUnknown         Code = "unknown"           // something is not said: no judgement
	CodeCyanideAcid     Code = "cyanide-acid"      // hydrogen cyanide may form
	CodeClash           Code = "clash"             // two solutions that make gas or fire may meet
	CodeCyanideInLine   Code = "cyanide-in-line"   // a finish free of cyanide behind cyanide
	CodeLeadedBrass     Code = "leaded-brass"      // nothing says whether the brass holds lead
	CodeStrength        Code = "strength"          // the strength of the steel is not said
	CodeTitaniumHeat    Code = "titanium-heat"     // the heat treatment that bonds nickel to titanium
	CodeNoRelief        Code = "no-relief"         // hard steel goes in with its stresses
	CodeNoRinse         Code = "no-rinse"          // one solution is carried into the next
	CodeNotCleaned      Code = "not-cleaned"       // plating over soil
	CodeNotActivated    Code = "not-activated"     // plating over tarnish or a passive film
	CodeNoStrike        Code = "no-strike"         // the first coat does not adhere on this metal
	CodeStrikeBuilds    Code = "strike-builds"     // a strike used for thickness
	CodeTooThick        Code = "too-thick"         // more than a bath is used for
	CodePassiveDry      Code = "passive-dry"       // a passive metal dries before it is covered
	CodePassiveWait     Code = "passive-wait"      // it waits
	CodeNoBarrier       Code = "no-barrier"        // copper or tin diffuses into the gold
	CodeSilverUnderGold Code = "silver-under-gold" // silver diffuses into the gold
	CodeHotCaustic      Code = "hot-caustic"       // caustic dissolves the metal
	CodeStrongAcid      Code = "strong-acid"       // acid dissolves the metal
	CodeAttack          Code = "attack"            // the plating bath attacks what lies under
	CodeImmersion       Code = "immersion"         // the metal of the bath deposits without current and does not adhere
	CodeLiveEntry       Code = "live-entry"        // the current must be on before the piece goes in
	CodeNickelSkin      Code = "nickel-skin"       // nickel against the skin
	CodeDisclose        Code = "disclose"          // the owner must be told
	CodeMercury         Code = "mercury"           // heat drives mercury out of the piece
	CodeBakeMelts       Code = "bake-melts"        // the bake is hotter than the piece stands
	CodeNoBake          Code = "no-bake"           // hydrogen stays in hard steel
	CodeEmbrittle       Code = "embrittle"         // a step drives hydrogen into hard steel
	CodeNoDragOut       Code = "no-drag-out"       // precious metal goes down the rinse
	CodeDryEarly        Code = "dry-early"         // dried before the last water or the last coat
	CodeNoFinalRinse    Code = "no-final-rinse"    // nothing clean at the end
	CodeFinalWater      Code = "final-water"       // the last water leaves stains
	CodeNotDried        Code = "not-dried"         // left wet
	CodeWrongFinish     Code = "wrong-finish"      // the last coat is not the one ordered, or too thin
)

// A Finding is one thing that a check has to say about a sequence. Its severity says what
// follows from it:
//
//	stop     nobody may run this: poison gas or fire may form, or what decides that is not said
//	warning  the coat will fail, the steel may crack, or the owner gets what was not ordered
//	caution  it may go well; look at this on the day
//	info     nothing to change; somebody must be told
//
// Source is a key of REFERENCES.md, "common practice, no source", or "from memory": how far
// the rule may be trusted.
type Finding struct {
	Code     Code             `json:"code"` // of the rule, for programs
	Severity plating.Severity `json:"severity" with:"keep"`
	Tanks    []int            `json:"tanks"`  // indices from 0; empty when the whole is meant
	Text     string           `json:"text"`   // what is so
	Reason   string           `json:"reason"` // why it matters
	Remedy   string           `json:"remedy"` // what to do
	Source   string           `json:"source"` // key, or where it is known from
}

// Sentence writes the finding in one line, without its severity: the tanks,
// counted from 1, what is so, what to do, why, the source.
func (f Finding) Sentence() string {
	at := ""
	if len(f.Tanks) > 0 {
		var n []string
		for _, i := range f.Tanks {
			n = append(n, strconv.Itoa(i+1))
		}
		at = "tank " + strings.Join(n, ", ") + ": "
	}
	return units.Printable(at + plating.Sentences(f.Text, f.Remedy, f.Reason) + " [" + f.Source + "]")
}

// String writes the finding in one line, with its severity.
func (f Finding) String() string { return f.Severity.String() + ": " + f.Sentence() }

// Worst returns the highest severity among findings, info when there are none.
func Worst(all []Finding) plating.Severity {
	w := plating.SeverityInfo
	for _, f := range all {
		w = max(w, f.Severity)
	}
	return w
}

// Approve returns a [*StopError] with the findings that forbid to run a
// sequence, nil when none does. Warnings do not stop; they are for a person to
// weigh.
func Approve(all []Finding) error {
	var stops []Finding
	for _, f := range all {
		if f.Severity == plating.SeverityStop {
			stops = append(stops, f)
		}
	}
	if stops == nil {
		return nil
	}
	return &StopError{Findings: stops}
}

// plural counts: "no rinse stage", "1 rinse stage", "2 rinse stages".
func plural(n int, word string) string {
	if n == 0 {
		return "no " + word
	}
	if n != 1 {
		word += "s"
	}
	return strconv.Itoa(n) + " " + word
}
