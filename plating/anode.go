package plating

import (
	"slices"
	"strings"
)

// An electrode is one material that the text of an anode names.
type electrode struct {
	name  string
	words []string
	metal string // that dissolves from it, "" for none
}

// electrodes lists the materials, those with the longer names first: they take
// their words out of the text.
func electrodes() []electrode {
	return []electrode{
		{"platinised titanium", []string{"platinised titanium", "platinized titanium", "titanium, platinised",
			"platinised niobium", "mixed oxide", "iridium oxide"}, ""},
		{"stainless steel", []string{"stainless steel", "stainless"}, "Fe"},
		{"steel", []string{"plain steel", "mild steel", "steel", "iron"}, "Fe"},
		{"platinum", []string{"platinum", "platinised", "platinized"}, ""},
		{"titanium", []string{"titanium"}, "Ti"},
		{"graphite", []string{"graphite", "carbon"}, ""},
		{"bronze", []string{"bronze"}, "Cu"},
		{"brass", []string{"brass"}, "Cu"},
		{"lead", []string{"lead"}, "Pb"},
		{"copper", []string{"copper"}, "Cu"},
		{"nickel", []string{"nickel"}, "Ni"},
		{"silver", []string{"silver"}, "Ag"},
		{"gold", []string{"gold"}, "Au"},
		{"palladium", []string{"palladium"}, "Pd"},
		{"zinc", []string{"zinc"}, "Zn"},
		{"tin", []string{"tin"}, "Sn"},
		{"cadmium", []string{"cadmium"}, "Cd"},
		{"cobalt", []string{"cobalt"}, "Co"},
		{"aluminium", []string{"aluminium", "aluminum"}, "Al"},
	}
}

// anodes finds the materials that a text names. What stands between "none",
// "no", "not" or "never" and the next comma is not one of them.
//
// "Platinised titanium, no stainless steel" is one material: what is denied is cut out
// first, and the words of a longer name are taken out before shorter ones are looked for.
func anodes(text string) []electrode {
	text = strings.ToLower(text)
	for _, no := range []string{"none ", "not ", "nor ", "never ", "no ", "free of ", "without "} {
		for {
			i := strings.Index(" "+text, " "+no)
			if i < 0 {
				break
			}
			rest := text[i:]
			to := len(rest)
			if k := strings.IndexAny(rest, ",;."); k >= 0 {
				to = k + 1
			}
			text = text[:i] + rest[to:]
		}
	}
	var found []electrode
	for _, e := range electrodes() {
		for _, w := range e.words {
			if hasWord(text, w) {
				found = append(found, e)
				for _, own := range e.words {
					text = strings.ReplaceAll(text, own, " ")
				}
				if e.name == "platinised titanium" { // "titanium with mixed oxide"
					text = strings.ReplaceAll(text, "titanium", " ")
				}
				break
			}
		}
	}
	return found
}

// hasWord reports whether a word stands in a text by itself.
func hasWord(text, w string) bool {
	for at := 0; ; {
		i := strings.Index(text[at:], w)
		if i < 0 {
			return false
		}
		from, to := at+i, at+i+len(w)
		letter := func(k int) bool { return k >= 0 && k < len(text) && text[k] >= 'a' && text[k] <= 'z' }
		if !letter(from-1) && !letter(to) {
			return true
		}
		at = to
	}
}

// chloride reports whether the name tells of chloride, as that of a Watts bath does.
func (s *Solution) chloride() bool {
	name := strings.ToLower(s.Name)
	return strings.Contains(name, "chlorid") || hasWord(name, "watts")
}

// anode finds an anode that the solution dissolves or oxidises, or that frees a
// gas that harms.
//
//	iron in acid            dissolves, and its iron spoils the deposit
//	titanium in fluoride    dissolves, under platinum too
//	bare titanium           grows an oxide that carries no current
//	lead                    lasts in sulfuric and chromic acid only
//	another metal           goes into the bath and plates out with its own [AnodeColour]
//	insoluble, in chloride  frees chlorine
//
// All but the fifth from memory. A metal that the bath deposits is never a wrong anode.
func (s *Solution) anode(h Hazard) []Note {
	var notes []Note
	add := func(source, text, do string) {
		notes = append(notes, Note{Code: CodeAnode, Severity: SeverityWarning, Text: text, Do: do, Source: source})
	}
	acid := h.Has(HazardAcid)
	list := anodes(s.Anode)
	if list == nil && s.Insoluble {
		list = []electrode{{name: "unnamed", metal: ""}}
	}
	for _, e := range list {
		own := e.metal == s.Metal || slices.Contains(s.With, e.metal)
		switch {
		case e.metal == "Fe" && acid && !own:
			add(recall, "a "+e.name+" anode in an acid bath: the anode dissolves; iron, chromium and nickel spoil "+
				"the deposit", "Use platinised titanium, or the anode that the bath is made for")
		case e.metal == "Fe" || e.metal == "" && e.name != "platinised titanium": // graphite, platinum, unnamed
		case e.metal == "" || e.metal == "Ti":
			if h&(HazardFluoride|HazardFluoborate) != 0 {
				add(recall, "a titanium anode in fluoride: fluoride dissolves it, also under platinum",
					"Use graphite, platinum, or an anode of the bath's own metal")
			} else if e.metal == "Ti" {
				add(recall, "a bare titanium anode: titanium grows an oxide that carries no current",
					"Use platinised titanium")
			}
		case e.metal == "Pb" && !own:
			if !acid || h&(HazardHydrogenChloride|HazardNitric|HazardFluoborate|HazardCyanide) != 0 {
				add(recall, "a lead anode: lead lasts in sulfuric and chromic acid only and dissolves in this bath",
					"Use platinised titanium, or the anode that the bath is made for")
			}
		case !own && s.Metal != "":
			add("AnodeColour", "a "+e.name+" anode in a bath of "+s.Metal+
				": the anode dissolves into the bath and plates out with the "+s.Metal,
				"Use an anode of "+s.Metal+", or one that does not dissolve")
		}
		switch {
		case own || e.metal != "" && e.metal != "Ti" && e.metal != "Fe":
		case h.Has(HazardHydrogenChloride):
			add(recall, "an anode that does not dissolve, in hydrochloric acid: such an anode frees chlorine",
				"Use an anode of the bath's own metal, and draw off at the tank")
		case acid && s.chloride():
			add(recall, "an anode that does not dissolve, in a bath with chloride: such an anode frees chlorine",
				"Use an anode of the bath's own metal, or a bath without chloride")
		}
	}
	return notes
}
