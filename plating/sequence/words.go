package sequence

import (
	"slices"

	"example.com/laydown/units"
)

// flowWords lists the words of the flows, in their order.
func flowWords() []string { return []string{"still", "running", "counterflow", "spray"} }

// UnmarshalText reads the flow in words.
//
// Errors: a [*units.ValueError] that lists the words.
func (f *RinseFlow) UnmarshalText(text []byte) error {
	return units.ReadWord("flow of the rinse", f, text, flowWords())
}

// polarityWords lists the words of the polarities, in their order.
func polarityWords() []string { return []string{"no current", "cathodic", "anodic"} }

// UnmarshalText reads the polarity in words.
//
// Errors: a [*units.ValueError] that lists the words.
func (p *Polarity) UnmarshalText(text []byte) error {
	return units.ReadWord("polarity", p, text, polarityWords())
}

// effectWords lists the words of the effects in the order of their bits.
func effectWords() []string {
	return []string{"clean", "deoxidise", "activate", "etch", "desmut", "zincate"}
}

// String lists the effects in words.
func (e Effect) String() string {
	if i := slices.Index([]Effect{EffectClean, EffectDeoxidise, EffectActivate, EffectEtch, EffectDesmut,
		EffectZincate}, e); i >= 0 {
		return effectWords()[i]
	}
	raw, _ := e.MarshalJSON()
	return string(raw)
}

// UnmarshalText reads one effect.
//
// Errors: a [*units.ValueError] that lists the words.
func (e *Effect) UnmarshalText(text []byte) error {
	if e == nil {
		return units.Missing("effect to read into", "a pointer to one")
	}
	i, err := units.FromWord("effect", string(text), effectWords())
	if err == nil {
		*e = 1 << i
	}
	return err
}

// MarshalJSON writes the effects as a list of words.
func (e Effect) MarshalJSON() ([]byte, error) { return units.FlagWords(e, effectWords()) }

// UnmarshalJSON reads what MarshalJSON writes.
func (e *Effect) UnmarshalJSON(raw []byte) error {
	return units.ReadFlags("effect", e, raw, effectWords())
}
