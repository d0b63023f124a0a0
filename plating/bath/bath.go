package bath

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Bath is what is known about a plating solution: ranges with sources, not
// settings. [Bath.At] turns it into a [plating.OperatingBath] at one operating point.
//
// It is the one form of a bath: of the library, of a file of one's own ([Read]), of a
// job and of a thin-spot case. The tags name its fields in JSON.
type Bath struct {
	// Library and Like name a bath of the library, or of a file of baths, by its key: the
	// one that is meant as it stands, or one of like chemistry that lends what is not
	// given here. [Bath.Resolve] puts them in.
	Library string `json:"library" doc:"key of a library bath that is run as it stands"`
	Like    string `json:"like" doc:"key of a bath of like chemistry, which lends what is not given"`

	Key   string `json:"key" doc:"short name for programs, as gold-acid-cobalt"`
	Name  string `json:"name" doc:"by chemistry: gold, acid cyanide, cobalt hardened"`
	Metal string `json:"metal" need:"the symbol of the counted metal, as \"Au\"" doc:"symbol of the metal that is counted"`
	Use   Use    `json:"use" rule:"flags" doc:"its places in a sequence"`

	Valence int `json:"valence" rule:"1..8" doc:"that the metal is deposited from; the usual one when left out"`
	// By shares of the mass, with what is built in without charge.
	Deposit     []Constituent        `json:"constituents" need:"constituents of the deposit" rule:"filled" doc:"of an alloy deposit; left out: the pure metal"`
	Composition Words                `json:"composition" doc:"where the constituents come from"`
	Density     Range[units.Density] `json:"density" in:"g/cm³" doc:"of the deposit; left out: that of the metal, or of the mixture of its constituents"`

	Hazards plating.Hazard    `json:"hazards" with:"keep" unless:"library" rule:"flags" doc:"words of the hazard table; an empty list for none"`
	Salt    faraday.Formula   `json:"salt" need:"a formula in quotes, as \"KAu(CN)2\"" doc:"that it is fed with"`
	PH      Range[plating.PH] `json:"pH"`

	Content        Range[units.MassConcentration] `json:"content" in:"g/L" doc:"of the metal in the bath"`
	Temperature    Range[units.Temperature]       `json:"temperature" in:"°C"`
	CurrentDensity Range[units.CurrentDensity]    `json:"current_density" in:"A/dm²" doc:"that it is run at"`
	Volts          Range[units.Voltage]           `json:"volts" in:"V"`
	Efficiency     Range[units.Efficiency]        `json:"efficiency" in:"%" doc:"of the cathode"`
	Lines          []EfficiencyLine               `json:"efficiency_lines" rule:"filled" doc:"efficiency against current density, where it is known"`
	// What a strike or flash goes by, and how thick the bath is used to plate.
	Time         Range[units.Duration] `json:"time" in:"min" doc:"usual immersion time, of strikes and flashes"`
	MaxThickness Range[units.Length]   `json:"max_thickness" in:"µm" doc:"that it is used for"`

	AnodeKind  AnodeKind          `json:"anode_kind" doc:"whether the anode replaces the metal"`
	Anode      Words              `json:"anode" doc:"what the anode is of"`
	AnodeRatio Range[units.Ratio] `json:"anode_ratio" doc:"anode area over cathode area"`
	Agitation  Words              `json:"agitation"`
	LiveEntry  bool               `json:"live_entry" doc:"the part goes in with the current on"`
	Look       []string           `json:"look" doc:"what to look at before going on"`
	Remarks    []Words            `json:"remarks"`
	Makeup     []Ingredient       `json:"makeup" doc:"what it is made up from, to know it by"`

	// Of the bath that stands in a tank. The last is in the time of a load.
	Volume      units.Volume   `json:"volume" rule:"positive" in:"L"`
	DrawLimit   units.Ratio    `json:"draw_limit" rule:"share" in:"%" doc:"share of the content that may go before the bath is fed"`
	Vessel      plating.Vessel `json:"vessel" doc:"what the tank is made of"`
	Evaporation *units.Volume  `json:"evaporation" rule:"nonnegative" in:"mL" doc:"in the time of a load; 0 mL for none"`

	// Source and Seen are those of figures that do not say their own.
	Source string       `json:"source" doc:"where figures come from that do not say it themselves"`
	Seen   *origin.Seen `json:"seen" doc:"how they were seen; given when left out, in a job"`
}

// AnodeKind says whether the anode replaces the metal. The zero value is "not given".
type AnodeKind uint8

// The kinds of anode.
const (
	AnodeNotGiven  AnodeKind = iota
	SolubleAnode             // it dissolves and replaces about what the coat takes
	InsolubleAnode           // graphite, platinised, stainless: it replaces nothing
	anodeEnd
)

// String returns the kind in words.
func (k AnodeKind) String() string {
	if k >= anodeEnd {
		return "unknown"
	}
	return [...]string{"not given", "soluble", "insoluble"}[k]
}

// MarshalText writes the kind in words.
//
// Errors: a [*units.ValueError] for a number that is no kind.
func (k AnodeKind) MarshalText() ([]byte, error) {
	if k >= anodeEnd {
		return nil, &units.ValueError{Field: "kind of anode", Value: strconv.Itoa(int(k)), Need: anodeWords,
			Err: units.ErrOutOfRange}
	}
	return []byte(k.String()), nil
}

const anodeWords = "one of not given, soluble, insoluble"

// UnmarshalText reads what MarshalText writes.
//
// Errors: a [*units.ValueError] that lists the words.
func (k *AnodeKind) UnmarshalText(text []byte) error {
	if k == nil {
		return units.Missing("kind of anode to read into", "a pointer to one")
	}
	for i := range anodeEnd {
		if i.String() == string(text) {
			*k = i
			return nil
		}
	}
	return &units.ValueError{Field: "kind of anode", Value: strconv.Quote(units.Clip(string(text))), Need: anodeWords,
		Err: units.ErrOutOfRange}
}

// Use is the set of places a bath may take in a sequence.
type Use uint8

// The places.
const (
	UseStrike Use = 1 << iota
	UseUnder
	UseFinish
)

// Has reports whether every use of u2 is in u.
func (u Use) Has(u2 Use) bool { return u&u2 == u2 }

// String names the uses.
func (u Use) String() string {
	var words []string
	for i, w := range useWords() {
		if u.Has(1 << i) {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

func useWords() []string { return []string{"strike", "underplate", "finish"} }

// A Constituent is one part of the deposit's mass. One without a symbol is built in
// without charge.
type Constituent struct {
	Symbol  string
	Valence int
	Share   units.MassFraction
}

// An Ingredient is one thing the bath is made up from.
type Ingredient struct {
	Name  string                         `json:"name" with:"must" need:"its chemical name, with its water of crystallisation"`
	Range Range[units.MassConcentration] `json:"content" in:"g/L"`
}

// Fine returns the share of the counted metal in the deposit's mass.
func (b *Bath) Fine() units.MassFraction {
	if len(b.Deposit) == 0 {
		return 1
	}
	var w units.MassFraction
	for _, c := range b.Deposit {
		if c.Symbol == b.Metal {
			w += c.Share
		}
	}
	return w
}

// Solution returns the bath as its chemistry is judged: see [plating.Solution.Review].
func (b *Bath) Solution() plating.Solution {
	s := plating.Solution{Name: b.Name, Hazards: b.Hazards, Metal: b.Metal, Valence: b.Valence,
		PH: plating.PHWindow{Low: b.PH.Low, High: b.PH.High}, Anode: b.Anode.Text,
		Insoluble: b.AnodeKind == InsolubleAnode, Vessel: b.Vessel, Temperature: b.Temperature.Mid()}
	for _, c := range b.Deposit {
		if c.Symbol != b.Metal && c.Symbol != "" {
			s.With = append(s.With, c.Symbol)
		}
	}
	if !b.Salt.IsZero() {
		s.Salts = []faraday.Formula{b.Salt}
	}
	return s
}

// AllHazards returns every hazard of the bath, listed or given away; see
// [plating.Solution.AllHazards].
func (b *Bath) AllHazards() plating.Hazard {
	s := b.Solution()
	return s.AllHazards()
}

// deposit returns what the bath lays down at a density.
func (b *Bath) deposit(rho units.Density) (faraday.Deposit, error) {
	if len(b.Deposit) == 0 {
		d, err := faraday.NewDeposit(b.Metal, b.Valence)
		if err != nil {
			return d, err
		}
		d.Density = rho
		return d, nil
	}
	parts := make([]faraday.DepositPart, len(b.Deposit))
	for i, c := range b.Deposit {
		parts[i] = faraday.DepositPart{Share: c.Share}
		if c.Symbol != "" {
			var err error
			if parts[i], err = faraday.NewDepositPart(c.Symbol, c.Valence, c.Share); err != nil {
				return faraday.Deposit{}, err
			}
		}
	}
	eq, err := faraday.MixedEquivalent(parts...)
	return faraday.Deposit{Equivalent: eq, Density: rho}, err
}

// Check returns a [*units.ValueError] or a [*faraday.ElementError] for the
// first thing that no estimate can take: an unknown metal, a range
// the wrong way round, no efficiency or density.
func (b *Bath) Check() error {
	if b == nil {
		return units.Missing("bath", "one of the library, or of Read")
	}
	need := func(field, value, need string) error {
		return &units.ValueError{Field: field, Value: value, Need: need, Err: units.ErrInconsistent}
	}
	switch {
	case b.Use == 0 || b.Use > UseStrike|UseUnder|UseFinish:
		return put("use", need("use of the bath", "not given", "one or more of strike, underplate, finish"))
	case !b.Density.Given():
		return put("density", need("density of the deposit", "not given", "a range with its source"))
	case !b.Efficiency.Given() && len(b.Lines) == 0:
		return put("efficiency", need("current efficiency", "not given", "a range with its source, or lines of points"))
	}
	if err := b.checkDeposit(); err != nil {
		return err
	}
	if b.Efficiency.Given() {
		if err := firstError(
			put("efficiency.low", units.PositiveFraction("low end of the current efficiency", b.Efficiency.Low)),
			put("efficiency.high", units.PositiveFraction("high end of the current efficiency",
				b.Efficiency.High))); err != nil {
			return err
		}
	}
	if b.PH.High > 16 {
		return put("pH", &units.ValueError{Field: "pH", Value: b.PH.String(), Need: "at most 16", Err: units.ErrOutOfRange})
	}
	if err := checkLines(b.Lines); err != nil {
		return put("efficiency_lines", err)
	}
	for i, m := range b.Makeup {
		if err := m.Range.Check("content of " + m.Name); err != nil {
			return put(fmt.Sprintf("makeup[%d].content", i+1), err)
		}
	}
	return firstError(put("density", b.Density.Check("density of the deposit")),
		put("efficiency", b.Efficiency.Check("current efficiency")),
		put("density.low", units.Positive("low end of the density of the deposit", b.Density.Low)),
		put("density.high", units.Positive("high end of the density of the deposit", b.Density.High)),
		put("content", b.Content.Check("metal content")), put("temperature", b.Temperature.Check("temperature")),
		put("current_density", b.CurrentDensity.Check("current density")), put("volts", b.Volts.Check("volts")),
		put("pH", b.PH.Check("pH")), put("time", b.Time.Check("immersion time")),
		put("max_thickness", b.MaxThickness.Check("maximum thickness")),
		put("anode_ratio", b.AnodeRatio.Check("anode ratio")),
		put("content", b.Content.Sense(sense.Content())), put("temperature", b.Temperature.Sense(sense.Solution())),
		put("current_density", b.CurrentDensity.Sense(sense.CurrentDensity())), put("volts", b.Volts.Sense(sense.Volts())),
		put("time", b.Time.Sense(sense.Time())), put("max_thickness", b.MaxThickness.Sense(sense.Coat())), b.checkSet())
}

// checkDeposit holds metal, valence and density of the deposit against the elements.
func (b *Bath) checkDeposit() error {
	if _, err := b.deposit(b.Density.Mid()); err != nil {
		var v *units.ValueError
		switch {
		case len(b.Deposit) > 0:
			return put("constituents", err)
		case errors.As(err, &v):
			return put("valence", err)
		}
		return put("metal", err)
	}
	if b.Fine() == 0 {
		return put("constituents", &units.ValueError{Field: "share of " + b.Metal + " in the deposit", Value: "0",
			Need: "the counted metal among the constituents", Err: units.ErrInconsistent})
	}
	bulk, err := b.bulk()
	if err != nil || bulk.High == 0 {
		return nil // a metal of which no density is known
	}
	of := b.Metal
	if len(b.Deposit) > 0 {
		of = "the metals of the deposit"
	}
	for _, rho := range []units.Density{b.Density.Low, b.Density.High} {
		if err := faraday.CheckDensity(rho, bulk.Mid(), of); rho > 0 && err != nil {
			return put("density", err)
		}
	}
	return nil
}

// checkSet refuses a value in use of a figure that nobody sets: nothing would go by it.
func (b *Bath) checkSet() error {
	for _, f := range []struct {
		path string
		set  float64
	}{{"density", float64(b.Density.Set)}, {"pH", float64(b.PH.Set)}, {"volts", float64(b.Volts.Set)},
		{"time", float64(b.Time.Set)},
		{"max_thickness", float64(b.MaxThickness.Set)}, {"anode_ratio", float64(b.AnodeRatio.Set)}} {
		if f.set != 0 {
			return put(f.path+".set", &units.ValueError{Field: f.path, Value: "set", Need: "its low and high end: a value " +
				"that is set has only content, temperature, efficiency and current_density", Err: units.ErrInconsistent})
		}
	}
	return nil
}

// put says which field of the bath an error is about, for the readers of files.
func put(path string, err error) error { return strictjson.Put(path, err) }

func firstError(all ...error) error {
	for _, err := range all {
		if err != nil {
			return err
		}
	}
	return nil
}
