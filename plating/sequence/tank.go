package sequence

import (
	"fmt"
	"slices"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// A TankKind says what a tank is for. The zero value is "not said", which a check
// does not let pass.
type TankKind uint8

// The kinds, in the usual order.
const (
	KindUnknown  TankKind = iota // not said: a check stops
	SoakClean                    // hot or warm cleaner, without current
	Electroclean                 // cleaner with current; [Process.Polarity] must be given
	Rinse                        // water between two tanks
	Activate                     // acid dip, etch, desmut, zincate
	Strike                       // thin first coat that adheres
	Underplate                   // coat between strike and finish
	Plate                        // coat that builds the thickness ordered
	DragOut                      // still tank that keeps what clings, behind a bath of precious metal
	FinalRinse                   // last water, deionised
	Dry                          // in warm air
	Bake                         // heats hydrogen out of hard steel, after plating
	Relieve                      // heats the stresses out of hard steel, before cleaning
	kindEnd
)

// kindWords lists the words of the kinds, in their order; files and cards use them.
func kindWords() []string {
	return []string{"unknown", "soak clean", "electroclean", "rinse", "activate", "strike", "underplate", "plate",
		"drag-out rinse", "final rinse", "dry", "bake", "stress relief"}
}

// String returns the kind in words.
func (k TankKind) String() string {
	if k >= kindEnd {
		k = KindUnknown
	}
	return kindWords()[k]
}

// MarshalText writes the kind in words, for JSON.
//
// Errors: a [*units.ValueError] for a number out of range.
func (k TankKind) MarshalText() ([]byte, error) {
	return words("kind of tank", uint8(k), uint8(kindEnd), k.String())
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the kinds.
func (k *TankKind) UnmarshalText(text []byte) error {
	if k == nil {
		return units.Missing("kind of tank to read into", "a pointer to one")
	}
	i, err := choose("kind of tank", string(text), kindWords())
	*k = TankKind(i)
	return err
}

// deposits reports whether the tank lays a coat.
func (k TankKind) deposits() bool { return k == Strike || k == Underplate || k == Plate }

// oven reports whether the piece stays dry: what it carries stays on it.
func (k TankKind) oven() bool { return k == Dry || k == Bake || k == Relieve }

// rinses reports whether the tank is water that takes a film off. A drag-out tank is not:
// it keeps the film.
func (k TankKind) rinses() bool { return k == Rinse || k == FinalRinse }

// cleans reports whether the tank takes grease and soil off.
func (k TankKind) cleans() bool { return k == SoakClean || k == Electroclean }

// A RinseFlow says how rinse water moves.
type RinseFlow uint8

// The flows. Still water collects what it washes off.
const (
	Still RinseFlow = iota
	Running
	Counterflow // each stage feeds the dirtier one before it
	Spray
)

// String returns the flow in words.
func (f RinseFlow) String() string {
	switch f {
	case Running:
		return "running"
	case Counterflow:
		return "counterflow"
	case Spray:
		return "spray"
	case Still:
		return "still"
	}
	return "unknown"
}

// moves reports whether fresh water comes to the rinse.
func (f RinseFlow) moves() bool { return f == Running || f == Counterflow || f == Spray }

// MarshalText writes the flow in words, for JSON.
//
// Errors: a [*units.ValueError] for a number out of range.
func (f RinseFlow) MarshalText() ([]byte, error) {
	return words("flow of the rinse", uint8(f), uint8(Spray)+1, f.String())
}

// A RinseSet is the water of a rinse.
//
// Stages and Flow say how much of a film comes off; a check asks for stages of moving
// water. Station says that two rinses of the sequence are one tank in the shop.
type RinseSet struct {
	Stages    int       `json:"stages"`            // tanks one after the other
	Flow      RinseFlow `json:"flow"`              // how the water moves
	Deionised bool      `json:"deionised"`         // no salts that stain
	Acidified bool      `json:"acidified"`         // a little acid, against a new passive film
	Station   string    `json:"station,omitempty"` // the tank that really stands there: same name, same water
}

// A Tank is one stop of a piece.
type Tank struct {
	Name    string // on the sheet; by chemistry
	Kind    TankKind
	Bath    bath.Bath // of a strike, underplate or plate
	Process Process   // of a clean, activation, dry or bake
	Rinse   RinseSet  // of a rinse

	MinThickness   units.Length         // thickness at the thinnest spot; 0 for a strike that is timed
	CurrentDensity units.CurrentDensity // 0: the middle of the bath's range
	Time           units.Duration       // 0: from the minimum thickness, or the middle of the range
	LiveEntry      bool                 // current on before the piece goes in
	Wait           units.Duration       // in the air before the next tank; 0: at once
	Vessel         plating.Vessel       // of what the tank is made

	all *plating.Hazard // what hazards() found, kept by a review
}

// chemistry is what the tank holds, as its dangers are judged: its bath, or its
// process whatever kind it is called. Water is called after what it stands behind:
// its name does not count, only what it says it holds.
func (t *Tank) chemistry() plating.Solution {
	if t.Kind.deposits() {
		s := t.Bath.Solution()
		s.Name, s.Vessel = t.Name+", "+t.Bath.Name, t.Vessel
		return s
	}
	q := &t.Process
	s := plating.Solution{Name: strings.Join(t.names(), ", "), Hazards: q.Hazards, PH: q.PH, Vessel: t.Vessel}
	if !t.Kind.oven() {
		s.Temperature = q.Temperature.Mid()
	}
	if q.Polarity == Cathodic {
		s.Anode = q.Counter.Text
	}
	return s
}

// calledWater reports whether a rinse is called water, a rinse, or after the tank that
// it stands behind. Any other name says what is in it: "citric acid, 2 %", "weak acid
// rinse", "rinse with vinegar", "bleach rinse".
//
// It matters because the name of a rinse is not judged as a chemistry: "rinse behind the
// cyanide copper" names cyanide and holds water. A false answer makes the name count, and
// asks a question at worst.
func calledWater(name string) bool {
	name = strings.ToLower(name)
	has := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(name, w) })
	}
	switch {
	case name == "" || has("behind", "after"):
		return true
	case has("%", "g/l", "ml/l", " with ", "dilut", "weak", "slight", "splash", "little", "neutralis", "neutraliz",
		"ph ",
		"vinegar", "lemon"):
		return false
	case plating.NamedHazards(name)&(plating.HazardHypochlorite|plating.HazardOxidiser|plating.HazardOrganic) != 0:
		return false
	}
	return has("rins", "water", "spül", "spuel", "wash", "save", "recover", "drag")
}

// names are the texts that may give away what the tank holds.
func (t *Tank) names() []string {
	switch {
	case t.Kind.deposits():
		return []string{t.Name, t.Bath.Name}
	case t.Kind == Electroclean && !t.Process.Mild && !t.Process.PH.Given() &&
		!strings.Contains(strings.ToLower(t.Name+t.Process.Chemistry), "mild"):
		return []string{t.Name, t.Process.Chemistry, t.Kind.String()} // it is caustic as a rule
	case t.solution():
		return []string{t.Name, t.Process.Chemistry}
	case t.Kind.oven():
		return nil
	case (t.Kind.rinses() || t.Kind == DragOut) && !calledWater(t.Name):
		return []string{t.Name, t.Process.Chemistry}
	}
	return []string{t.Process.Chemistry}
}

// hazards returns the dangers of what the tank holds, listed or given away by a name, and
// acid in rinse water that is made acid. The larger of the two counts: a list that forgets
// cyanide does not make a bath safe.
func (t *Tank) hazards() plating.Hazard {
	if t.all != nil {
		return *t.all
	}
	s := t.chemistry()
	h := s.AllHazards()
	if t.acidified() {
		h |= plating.HazardAcid
	}
	return h
}

// acidified reports whether the tank is water that is made a little acid.
func (t *Tank) acidified() bool {
	return (t.Kind.rinses() || t.Kind == DragOut) && t.Rinse.Acidified
}

// listed returns the hazards that the tank itself lists: what its maker thought of, to hold
// against what its name gives away.
func (t *Tank) listed() plating.Hazard {
	switch {
	case t.Kind.deposits():
		return t.Bath.Hazards
	case t.acidified():
		return t.Process.Hazards | plating.HazardAcid
	}
	return t.Process.Hazards
}

// strongAcid reports whether the tank holds acid below about pH 1, or acid of
// which nobody says that it is weaker.
//
// The line at pH 1 is from memory. What is measured goes before what is said, and what is
// not said counts as strong.
func (t *Tank) strongAcid() bool {
	if !t.hazards().Has(plating.HazardAcid) {
		return false
	}
	if t.Kind.deposits() {
		return t.Bath.PH.Low < 1 // 0 where it is not given
	}
	if t.Kind.rinses() || t.Kind == DragOut {
		return t.Process.Hazards.Has(plating.HazardAcid) && !t.Process.Mild // acidified water is mild
	}
	if p := t.Process.PH; p.Given() { // measured, over what somebody calls it
		return p.Low < 1 && (p.Low > 0 || p.High < 1 || !t.Process.Mild)
	}
	return !t.Process.Mild
}

// solution reports whether the tank holds something that must be rinsed off.
func (t *Tank) solution() bool { return t.Kind.deposits() || t.Kind.cleans() || t.Kind == Activate }

// title names the tank for a message: by its name, else by what it holds, else by its kind.
func (t *Tank) title() string {
	switch {
	case t.Name != "":
		return t.Name
	case t.Bath.Name != "" && t.Kind.deposits():
		return t.Bath.Name
	case t.Process.Chemistry != "":
		return t.Process.Chemistry
	}
	return t.Kind.String()
}

// Check returns a [*units.ValueError] for the first thing that is missing or
// cannot be: the kind, the bath of a plating tank, the chemistry of a clean or
// an activation, the stages of a rinse, a time that is no number.
func (t *Tank) Check() error {
	if t == nil {
		return units.Missing("tank", "a tank with its kind")
	}
	missing := func(field, value, need string) error {
		return &units.ValueError{Field: field, Value: value, Need: need, Err: units.ErrInconsistent}
	}
	switch {
	case t.Kind == KindUnknown || t.Kind >= kindEnd:
		return missing("kind of tank", "not said",
			"one of soak clean, electroclean, rinse, activate, strike, underplate, plate, drag-out rinse, final "+
				"rinse, dry, bake, stress relief")
	case t.Kind.deposits():
		if strings.TrimSpace(t.Bath.Name) == "" {
			return missing("bath", "not given", "a bath by chemistry, from the library or your own")
		}
		if err := t.Bath.Check(); err != nil {
			return err
		}
		if t.CurrentDensity == 0 && !t.Bath.CurrentDensity.Given() {
			return missing("current density", "not given", "a current density, or a bath with a range of it")
		}
		if t.MinThickness == 0 && t.Time == 0 && !t.Bath.Time.Given() {
			return missing("minimum thickness and time", "neither given",
				"one of the two, or a bath with a usual immersion time")
		}
	case t.Kind.cleans() || t.Kind == Activate:
		if t.Process.Chemistry == "" {
			return missing("chemistry", "not given", "what the tank holds, with its hazards")
		}
		if t.Kind == Electroclean && t.Process.Polarity == NoCurrent {
			return missing("polarity", "not said", "cathodic or anodic: hydrogen or oxygen on the piece")
		}
	case t.Kind.rinses() || t.Kind == DragOut:
		if t.Rinse.Stages < 1 || t.Rinse.Stages > 9 {
			return missing("rinse stages", fmt.Sprint(t.Rinse.Stages), "a count from 1 to 9")
		}
	}
	q := &t.Process
	if t.Rinse.Flow > Spray {
		return &units.ValueError{Field: "flow of the rinse", Value: fmt.Sprint(uint8(t.Rinse.Flow)),
			Need: "still, running, counterflow or spray", Err: units.ErrOutOfRange}
	}
	if q.Polarity > Anodic {
		return &units.ValueError{Field: "polarity", Value: fmt.Sprint(uint8(q.Polarity)),
			Need: "no current, cathodic or anodic", Err: units.ErrOutOfRange}
	}
	heat := sense.Solution()
	if t.Kind.oven() {
		heat = sense.Oven()
	}
	for _, err := range []error{q.Temperature.Check("temperature"), q.Temperature.Sense(heat),
		q.CurrentDensity.Check("current density"), q.CurrentDensity.Sense(sense.CurrentDensity()),
		q.Volts.Check("volts"), q.Volts.Sense(sense.Volts()), q.Time.Check("immersion time"),
		q.Time.Sense(sense.Time()), sense.Coat().CheckAs("minimum thickness", t.MinThickness),
		sense.CurrentDensity().Check(t.CurrentDensity), sense.Time().Check(t.Time),
		sense.Time().CheckAs("wait", t.Wait)} {
		if err != nil {
			return err
		}
	}
	for _, err := range []error{units.NonNegative("minimum thickness", t.MinThickness),
		units.NonNegative("current density", t.CurrentDensity),
		units.NonNegative("time", t.Time), units.NonNegative("wait", t.Wait)} {
		if err != nil {
			return err
		}
	}
	return nil
}
