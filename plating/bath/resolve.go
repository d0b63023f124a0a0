package bath

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// Resolve puts in what the bath names: the library bath that it is, or one of like
// chemistry that lends what is not given here. Figures that do not say where they come
// from take Source and Seen of the bath, or are given in the job. A density that is not
// given is that of the metal, or of the mixture of the constituents with the uncertainty
// of [alloys.Density].
//
// A bath that is run as it stands (Library) keeps the ranges of the library; its own
// content, temperature, salt and tank are those of the day.
//
// Errors: a [*units.ValueError] for a key that no bath has, for two keys, for a figure
// that a library bath does not take, for a bath of like chemistry of another metal; an
// error of [alloys] for constituents of which no density is known.
func (b Bath) Resolve(known []Bath) (Bath, error) {
	switch {
	case b.Library != "" && b.Like != "":
		return Bath{}, bad("like", b.Like, `either "library" or "like", not both`)
	case b.Library != "":
		base, err := Find(known, b.Library)
		if err != nil {
			return Bath{}, put("library", err)
		}
		return b.day(base)
	}
	// The bath's own figures are completed first and only then laid over those of the lender:
	// what the shop says must never take its source from another bath.
	own, err := b.complete()
	if err != nil || b.Like == "" {
		return own, err
	}
	lent, err := Find(known, b.Like)
	if err != nil {
		return Bath{}, put("like", err)
	}
	// Window and temperature of another metal's bath mean nothing here, however like the
	// chemistry.
	if lent.Metal != own.Metal {
		return Bath{}, bad("like", b.Like+", a bath of "+lent.Metal, "one of "+own.Metal)
	}
	return own.over(lent), nil
}

func bad(field, value, need string) error {
	return put(field, &units.ValueError{Field: field, Value: units.Clip(value), Need: need, Err: units.ErrInconsistent})
}

// day is a bath of the library as it stands in the shop.
func (b Bath) day(base Bath) (Bath, error) {
	alone := Bath{Library: b.Library, Content: b.Content, Temperature: Range[units.Temperature]{Set: b.Temperature.Set},
		Salt: b.Salt, Volume: b.Volume, DrawLimit: b.DrawLimit, Vessel: b.Vessel, Evaporation: b.Evaporation}
	// What is allowed beside "library" is written down once, as a bath that has just that.
	// Whatever differs from it is refused, fields added later too.
	if field := b.beside(&alone); field != "" {
		return Bath{}, bad(field, "given beside \"library\"", besideLibrary)
	}
	base.Library = b.Library
	if !b.Salt.IsZero() { // the job's own word over the library's: it is reviewed
		base.Salt = b.Salt
	}
	// The ranges stay those of the library. What the shop gives is a value in use within them.
	base.Content.Set, base.Temperature.Set = b.Content.Point(), b.Temperature.Set
	base.Volume, base.DrawLimit, base.Vessel, base.Evaporation = b.Volume, b.DrawLimit, b.Vessel, b.Evaporation
	return base, nil
}

const besideLibrary = `nothing but content, the temperature that is "set", salt, volume, draw_limit, vessel and ` +
	`evaporation; for a bath with figures of its own "like" in place of "library"`

// beside names the first field in which b is another than alone, "" for none.
func (b *Bath) beside(alone *Bath) string {
	v, w := reflect.ValueOf(b).Elem(), reflect.ValueOf(alone).Elem()
	for i := range v.NumField() {
		if !reflect.DeepEqual(v.Field(i).Interface(), w.Field(i).Interface()) {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			return name
		}
	}
	return ""
}

// complete fills in the density, the symbol that is counted among the constituents, and
// where figures come from.
func (b Bath) complete() (Bath, error) {
	source, seen := b.Source, origin.Given
	if b.Seen != nil {
		seen = *b.Seen
	}
	if source == "" {
		source = origin.Job
		if b.Seen != nil && seen == origin.FromMemory {
			source = origin.Memory
		}
	}
	// Sources are filled in below through pointers. Without copies they would appear in the
	// caller's bath too.
	b.Lines, b.Remarks, b.Makeup = slices.Clone(b.Lines), slices.Clone(b.Remarks), slices.Clone(b.Makeup)
	for _, f := range append(b.each(), b.listed()...) {
		if f.given && *f.source == "" {
			*f.source, *f.seen = source, seen
		}
	}
	for _, c := range b.Deposit {
		b.Hazards |= plating.MetalHazards(c.Symbol)
		if c.Symbol != b.Metal || c.Symbol == "" {
			continue
		}
		if b.Valence != 0 && b.Valence != c.Valence {
			return Bath{}, bad("valence", strconv.Itoa(b.Valence), `it with each of the "constituents" when they are given`)
		}
		b.Valence = c.Valence
	}
	if b.Valence == 0 {
		e, err := faraday.Lookup(b.Metal)
		if err != nil {
			return Bath{}, put("metal", err)
		}
		b.Valence = e.UsualValence()
	}
	if len(b.Deposit) > 0 && b.Composition.Text == "" {
		b.Composition = Words{"constituents as given", source, seen}
	}
	if b.Density.Given() {
		return b, nil
	}
	var err error
	b.Density, err = b.bulk()
	if len(b.Deposit) > 0 {
		return b, put("constituents", err)
	}
	return b, put("metal", err)
}

// bulk is the density of the metal, or of the mixture of the constituents; what has no
// symbol takes no part in it. The zero Range where the table has none.
func (b *Bath) bulk() (Range[units.Density], error) {
	if len(b.Deposit) == 0 {
		e, err := faraday.Lookup(b.Metal)
		if err != nil {
			return Range[units.Density]{}, err
		}
		return Range[units.Density]{Low: e.Density, High: e.Density, Source: "CRC95", Seen: origin.Published}, nil
	}
	var parts []alloys.MassPart
	for _, c := range b.Deposit {
		// What is built in without a symbol has no density in the table. Hard gold is therefore
		// lighter than the rule says; the note on the figure tells so.
		if c.Symbol != "" {
			parts = append(parts, alloys.MassPart{Symbol: c.Symbol, Mass: units.Mass(c.Share)})
		}
	}
	mix, err := alloys.FromMasses(parts...)
	if err != nil {
		return Range[units.Density]{}, err
	}
	d, err := alloys.Density(mix, alloys.DensityOptions{})
	if err != nil {
		return Range[units.Density]{}, err
	}
	return Range[units.Density]{Low: d.Low(), High: d.High(), Source: "MixingRule", Seen: origin.Computed,
		Note: "by ideal mixing; electrodeposits are often lighter, hard gold by a tenth: weigh a trial piece"}, nil
}

// over is the bath's own figures over those that a bath of like chemistry lends. A bath
// of another valence lends no pH: what one stands, the other may not.
func (b Bath) over(lent Bath) Bath {
	full := lent
	own := b.each()
	// Both lists are in the same order, so a figure meets its counterpart by place.
	for i, f := range full.each() {
		if own[i].given {
			f.take(own[i])
		}
	}
	// From here on nothing is lent. Name, deposit, efficiency, density and content are what an
	// estimate computes with or is told by: they are the bath's own or not given.
	full.Key, full.Library, full.Like, full.Name, full.Metal, full.Use = b.Key, "", b.Like, b.Name, b.Metal, b.Use
	if b.Use == 0 {
		full.Use = lent.Use
	}
	full.Valence = b.Valence
	if !b.PH.Given() && b.Valence != lent.Valence {
		full.PH = Range[plating.PH]{}
	}
	full.Deposit, full.Composition = b.Deposit, b.Composition
	// Hazards are joined: neither bath may take one off the other.
	full.Hazards |= b.Hazards
	full.Lines, full.Efficiency, full.Density, full.Content = b.Lines, b.Efficiency, b.Density, b.Content
	full.Salt, full.Makeup = b.Salt, b.Makeup
	if full.LiveEntry = b.LiveEntry || lent.LiveEntry; len(b.Look) > 0 {
		full.Look = b.Look
	}
	if len(b.Remarks) > 0 {
		full.Remarks = b.Remarks
	}
	if b.AnodeKind != AnodeNotGiven {
		full.AnodeKind = b.AnodeKind
		if b.Anode.Text == "" && b.AnodeKind != lent.AnodeKind {
			full.Anode = Words{} // the lender's anode is of the other kind
		}
	}
	full.Volume, full.DrawLimit, full.Vessel, full.Evaporation = b.Volume, b.DrawLimit, b.Vessel, b.Evaporation
	full.Source, full.Seen = b.Source, b.Seen
	return full
}

// Lend fills what b does not say from full, which is b over a bath of like chemistry, as
// far as dangers are judged by it: hazards, pH, the anode.
func (b *Bath) Lend(full Bath) {
	b.Hazards, b.AnodeKind = full.Hazards, full.AnodeKind
	if !b.PH.Given() {
		b.PH = full.PH
	}
	if b.Anode.Text == "" {
		b.Anode = full.Anode
	}
}

// An entry is one figure of a bath with where it comes from.
type entry struct {
	name   string
	given  bool
	source *string
	seen   *origin.Seen
	value  any
	set    func(value any)
}

func (f entry) take(from entry) { f.set(from.value) }

// entryOf gives a figure with the way to set it. Figures of different quantities have
// different types; behind an entry they can be walked in one list.
func entryOf[Q units.Quantity](name string, r *Range[Q]) entry {
	return entry{name, r.Given() || r.Set != 0, &r.Source, &r.Seen, *r, func(v any) { *r = v.(Range[Q]) }}
}

func entryOfWords(name string, w *Words) entry {
	return entry{name, w.Text != "", &w.Source, &w.Seen, *w, func(v any) { *w = v.(Words) }}
}

// each lists the figures of a bath that have a source, given or not, always in the same
// order.
func (b *Bath) each() []entry {
	list := []entry{entryOf("density", &b.Density), entryOf("pH", &b.PH), entryOf("content", &b.Content),
		entryOf("temperature", &b.Temperature), entryOf("current_density", &b.CurrentDensity), entryOf("volts", &b.Volts),
		entryOf("efficiency", &b.Efficiency), entryOf("time", &b.Time), entryOf("max_thickness", &b.MaxThickness),
		entryOf("anode_ratio", &b.AnodeRatio), entryOfWords("anode", &b.Anode), entryOfWords("agitation", &b.Agitation)}
	return list
}

// listed lists the figures and remarks of which a bath may have any number.
func (b *Bath) listed() []entry {
	var list []entry
	for i := range b.Lines {
		list = append(list, entry{name: fmt.Sprintf("efficiency_lines[%d]", i+1), given: true, source: &b.Lines[i].Source,
			seen: &b.Lines[i].Seen})
	}
	for i := range b.Remarks {
		list = append(list, entryOfWords(fmt.Sprintf("remarks[%d]", i+1), &b.Remarks[i]))
	}
	for i := range b.Makeup {
		list = append(list, entryOf(fmt.Sprintf("makeup[%d].content", i+1), &b.Makeup[i].Range))
	}
	return list
}

// unsaid names the first figure that does not say where it comes from, "" when all do.
func (b *Bath) unsaid() string {
	for _, f := range append(b.each(), b.listed()...) {
		if f.given && *f.source == "" {
			return f.name
		}
	}
	if len(b.Deposit) > 0 && b.Composition.Source == "" {
		return "composition"
	}
	return ""
}
