package sequence

import (
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// An Effect is a set of things that a clean or an activation does to a face.
type Effect uint16

// The effects.
const (
	EffectClean     Effect = 1 << iota // takes grease and soil
	EffectDeoxidise                    // takes tarnish and the film of the cleaner
	EffectActivate                     // takes the passive film of stainless steel or nickel
	EffectEtch                         // roughens or opens the face
	EffectDesmut                       // takes what the etch leaves
	EffectZincate                      // lays an immersion film of zinc on aluminium
)

// Has reports whether every effect of e2 is in e.
func (e Effect) Has(e2 Effect) bool { return e&e2 == e2 }

// A Polarity says which pole the piece is.
type Polarity uint8

// The polarities.
const (
	NoCurrent Polarity = iota
	Cathodic           // the piece is the negative pole; hydrogen forms on it
	Anodic             // the piece is the positive pole; oxygen forms on it
)

// String returns the polarity in words.
func (p Polarity) String() string {
	switch p {
	case Cathodic:
		return "cathodic"
	case Anodic:
		return "anodic"
	case NoCurrent:
		return "no current"
	}
	return "unknown"
}

// MarshalText writes the polarity in words, for JSON.
//
// Errors: a [*units.ValueError] for a number out of range.
func (p Polarity) MarshalText() ([]byte, error) {
	return words("polarity", uint8(p), uint8(Anodic)+1, p.String())
}

// A Process is a tank that does not plate: what it holds and how it is run.
type Process struct {
	Chemistry string           // in words, by chemistry: "sulfuric acid dip, 5 to 10 % by volume"
	Effect    Effect           // what it does to the face
	Hazards   plating.Hazard   // as listed; names may give away more
	PH        plating.PHWindow // measured; it goes before Mild
	// acid of pH 1 or more, or caustic that is mild and inhibited; what does not say so counts as strong
	Mild           bool
	Strong         bool                             // much caustic
	Polarity       Polarity                         // which pole the piece is
	Temperature    bath.Range[units.Temperature]    // of an oven too
	CurrentDensity bath.Range[units.CurrentDensity] // on the piece; not given without current
	Volts          bath.Range[units.Voltage]        // what the rectifier shows
	Time           bath.Range[units.Duration]       // usual immersion time
	Counter        bath.Words                       // the other electrode
	Agitation      bath.Words                       // of piece or solution
	Look           []string                         // what to look at before going on
	Source         string                           // of the chemistry
	Seen           origin.Seen                      // how the chemistry was seen
}

const (
	practice = origin.Practice
	recall   = origin.Memory
)

// mem is a range from memory.
func mem[Q units.Quantity](low, high Q) bath.Range[Q] {
	return bath.Range[Q]{Low: low, High: high, Source: recall}
}

// shop is a range by common practice, without a source.
func shop[Q units.Quantity](low, high Q) bath.Range[Q] {
	return bath.Range[Q]{Low: low, High: high, Source: practice}
}

// printed is a range that was read, with its key.
func printed[Q units.Quantity](low, high Q, key string) bath.Range[Q] {
	return bath.Range[Q]{Low: low, High: high, Source: key, Seen: origin.Published}
}

// heat is a range of temperature from memory, in °C.
func heat(low, high float64) bath.Range[units.Temperature] {
	return mem(units.Celsius(low), units.Celsius(high))
}

// move is the agitation of tanks without their own.
func move() bath.Words { return bath.Words{Text: "move the piece", Source: practice} }

// waterBreak is the test of a clean face: grease breaks the film of water. It is the one
// check of cleaning that needs no instrument.
const waterBreak = "water runs off as one film, without a break, for 30 s; else clean again"

// soak is the mild cleaner that no base metal minds: warm, inhibited, without current.
func soak() Tank {
	return Tank{Name: "soak in mild alkaline cleaner", Kind: SoakClean, Process: Process{
		Chemistry: "alkaline cleaner, mild, inhibited", Effect: EffectClean, Hazards: plating.HazardHot,
		Temperature: heat(50, 60), Time: shop(2*units.Minute, 5*units.Minute), Agitation: move(),
		Look:   []string{waterBreak},
		Source: practice}}
}

// electroclean is the hot caustic cleaner with current, whose gas lifts the soil.
//
// Cathodic it makes twice the gas, and hydrogen that hard steel takes up; anodic it makes
// oxygen, which tarnishes copper and silver. Anodic time for steels: [Guidebook2013]; the
// rest common practice and memory.
func electroclean(p Polarity) Tank {
	t := Tank{Name: p.String() + " electroclean", Kind: Electroclean, Process: Process{
		Chemistry: "alkaline electrocleaner, hot caustic", Effect: EffectClean,
		Hazards: plating.HazardCaustic | plating.HazardHot, Strong: true,
		Polarity: p, Temperature: heat(60, 80), CurrentDensity: mem(3*dm2, 8*dm2), Volts: shop(units.Voltage(4), 6),
		Time:      shop(30*units.Second, 60),
		Counter:   bath.Words{Text: "plain steel or stainless steel, no smaller than the load", Source: practice},
		Agitation: move(),
		Look:      []string{waterBreak, "no dark film on the piece"}, Source: practice}}
	if p == Anodic {
		t.Process.Time = printed(units.Minute, 2*units.Minute, "Guidebook2013")
		t.Process.Time.Note = "anodic at 6 V for 1 to 2 min, printed for steels"
	}
	return t
}

// dip is an acid dip without current.
func dip(name string, effect Effect, strong bool, seconds bath.Range[units.Duration], source string,
	seen origin.Seen) Tank {
	return Tank{Name: name, Kind: Activate, Process: Process{Chemistry: name, Effect: effect,
		Hazards: plating.HazardAcid, Mild: !strong,
		Temperature: heat(18, 30), Time: seconds, Agitation: move(),
		Look: []string{"even, clean metal; no gas streaks, no smut"}, Source: source, Seen: seen}}
}

// sulfuricDip takes tarnish and the alkaline film off copper alloys and silver. Acid and
// strength: [Guidebook2013].
func sulfuricDip() Tank {
	return dip("sulfuric acid dip, 5 to 10 % by volume", EffectDeoxidise, true, shop(15*units.Second, 30),
		"Guidebook2013", origin.Published)
}

// steelDip takes rust bloom and the alkaline film off steel; weak and short, so that little
// hydrogen goes in. Acid and strength: [Guidebook2011].
func steelDip() Tank {
	return dip("sulfuric acid dip, 3 to 5 % by volume", EffectDeoxidise, true, shop(5*units.Second, 15),
		"Guidebook2011", origin.Published)
}

// zincDip only just takes the oxide: zinc dissolves in any acid. From memory.
func zincDip() Tank {
	return dip("weak sulfuric acid dip, under 1 %", EffectDeoxidise, false, mem(5*units.Second, 20), recall,
		origin.FromMemory)
}

// stainlessActivation takes the passive film; the strike that follows covers.
func stainlessActivation() Tank {
	t := dip("cathodic activation in sulfuric acid, 5 to 10 % by volume", EffectActivate|EffectDeoxidise, true,
		mem(30*units.Second, 120), recall, origin.FromMemory)
	t.Process.Polarity, t.Process.CurrentDensity = Cathodic, mem(0.5*dm2, 2*dm2)
	t.Process.Volts = mem(units.Voltage(2), 6)
	t.Process.Counter = bath.Words{Text: "lead or graphite, none that dissolves", Source: recall}
	t.Process.Look = []string{"gas over the whole piece", "go straight on, wet"}
	return t
}

// nickelActivation is the anodic etch of nickel.
func nickelActivation() Tank {
	t := dip("anodic etch in sulfuric acid, 25 % by volume", EffectActivate|EffectEtch|EffectDeoxidise, true,
		printed(units.Minute, 3*units.Minute, "Guidebook2013"), "Guidebook2013", origin.Published)
	t.Process.Polarity, t.Process.CurrentDensity = Anodic, printed(15*ft2, 25*ft2, "Guidebook2013")
	t.Process.Volts = mem(units.Voltage(2), 6)
	t.Process.Counter = bath.Words{Text: "lead", Source: recall}
	t.Process.Look = []string{"even grey face",
		"no brass or copper shows: each minute takes up to 0.44 µm of nickel at the middle of the current; where a " +
			"worn plate is eaten through, stop and treat the piece as what lies below",
		"go straight on, wet"}
	return t
}

// aluminiumEtch opens the oxide of aluminium; it leaves a grey smut of the alloying metals.
func aluminiumEtch() Tank {
	t := dip("alkaline etch for aluminium, short", EffectEtch, true, mem(15*units.Second, 30),
		recall, origin.FromMemory)
	t.Process.Hazards, t.Process.Temperature = plating.HazardCaustic|plating.HazardHot, heat(45, 60)
	t.Process.Look = []string{"even gassing, grey smut; never longer, it dissolves the metal"}
	return t
}

// desmut dissolves what the etch left, and strips a first zincate. The acid and its
// strength: [Guidebook2013]; that it spares aluminium: from memory.
func desmut() Tank {
	t := dip("nitric acid, 50 % by volume", EffectDesmut|EffectDeoxidise, true, mem(15*units.Second, 60),
		"Guidebook2013", origin.Published)
	t.Process.Hazards |= plating.HazardNitric
	t.Process.Look = []string{"white, no smut on a paper towel"}
	return t
}

// zincate exchanges aluminium for a thin film of zinc: it dissolves the oxide and plates in
// the same moment, without current.
func zincate(name string, low, high units.Duration) Tank {
	t := dip(name, EffectZincate, true, mem(low, high), recall, origin.FromMemory)
	t.Process.Hazards, t.Process.Temperature = plating.HazardCaustic, heat(18, 29)
	t.Process.Look = []string{"even grey-blue film; patches: strip in nitric acid and begin again",
		"no gassing; gassing means that smut is left"}
	return t
}

// fluoborateDip takes tarnish and the lead at the face of leaded brass.
func fluoborateDip() Tank {
	t := dip("fluoboric acid dip, 10 to 30 %", EffectDeoxidise, true,
		bath.Range[units.Duration]{High: 2 * units.Minute, Source: "LeadedBrassColumn", Seen: origin.Published,
			Note: "no more than two minutes"}, "LeadedBrassColumn", origin.Published)
	t.Process.Hazards |= plating.HazardFluoborate | plating.HazardFluoride
	t.Process.Look = []string{"even, clean metal; no grey or white smut of lead when wiped"}
	t.Vessel = plating.VesselPlastic
	return t
}

// stressRelief heats hard steel before it is cleaned. Its temperature is that of the
// practice [ASTMB849], its time from memory; the practice has classes of it that were not
// read.
func stressRelief() Tank {
	return Tank{Name: "stress relief", Kind: Relieve, Process: Process{Chemistry: "oven", Source: "ASTMB849",
		Seen:        origin.Published,
		Temperature: printed(units.Celsius(190), units.Celsius(230), "ASTMB849"), Time: mem(1*units.Hour, 4*units.Hour),
		Look: []string{"never above the tempering temperature of the steel",
			"cool slowly; then clean, before anything makes hydrogen"}}}
}

// bake heats the hydrogen out after plating, as long as the strength asks: [BakeFor].
func bake(p *Piece) Tank {
	t := Tank{Name: "bake", Kind: Bake, Process: Process{Chemistry: "oven", Source: "ASTMB850", Seen: origin.SecondHand,
		Temperature: bath.Range[units.Temperature]{Low: bakeLow(), High: bakeHigh(), Source: "ASTMB850",
			Seen: origin.SecondHand},
		Look: []string{"in the oven within 3 h of the last current",
			"never above the tempering temperature of the steel",
			"colour of the coat after the oven"}}}
	if least, err := BakeFor(p.Tensile); err == nil && least > 0 {
		t.Process.Time = bath.Range[units.Duration]{Low: least, Source: "ASTMB850", Seen: origin.SecondHand,
			Note: "or more"}
	}
	return t
}

const (
	dm2 = units.AmperePerSquareDecimetre
	ft2 = units.AmperePerSquareFoot
	um  = units.Micrometre
)
