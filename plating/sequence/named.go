package sequence

import (
	"strings"

	"example.com/laydown/plating"
)

// cyanideWords and acidWords tell a solution by its name. A forgotten hazard
// would blind the check for hydrogen cyanide.
func cyanideWords() []string { return []string{"cyanide", "prussiate", "kcn", "nacn", "cucn", "agcn"} }

func acidWords() []string {
	return []string{"acid", "muriatic", "hydrochloric", "hydrofluoric", "chromic", "sulfuric", "sulphuric", "nitric", "phosphoric", "fluoboric", "pickle", "pickling", "hcl", "h2so4", "hno3", "vitriol", "bisulfate"}
}

// unnamed returns a hazard that the tank's name or chemistry names and its
// hazards do not, "" when there is none.
func (t *Tank) unnamed() string {
	h := t.hazards()
	var names []string
	switch {
	case t.Kind.deposits():
		names = []string{t.Name, t.Bath.Name}
	case t.solution():
		names = []string{t.Name, t.Process.Chemistry}
	case t.Kind == Dry || t.Kind == Bake:
		return ""
	default: // water is called after what it stands behind; what it holds is what it says it holds
		names = []string{t.Process.Chemistry}
	}
	for _, name := range names {
		switch {
		case speaks(name, cyanideWords()) && !h.Has(plating.HazardCyanide):
			return "cyanide"
		case speaks(name, acidWords()) && !h.Has(plating.HazardAcid):
			return "acid"
		}
	}
	return ""
}

// speaks reports whether a text names one of some words, other than to say that
// it is not there.
func speaks(text string, words []string) bool {
	text = strings.ToLower(text)
	for _, harmless := range []string{"fatty acid", "amino acid", "acid rinse"} {
		text = strings.ReplaceAll(text, harmless, "")
	}
	for _, w := range words {
		plain := text
		for _, no := range []string{"free of ", "free from ", "without ", "contains no ", "no ", "non-", "non ", "not "} {
			plain = strings.ReplaceAll(plain, no+w, "")
		}
		plain = strings.ReplaceAll(plain, w+"-free", "")
		if found(plain, w) {
			return true
		}
	}
	return false
}

// found reports whether a word stands in a text, short ones as words of their own.
func found(text, word string) bool {
	if len(word) > 5 || word == "acid" {
		return strings.Contains(text, word)
	}
	for _, f := range strings.FieldsFunc(text, func(r rune) bool { return !('a' <= r && r <= 'z' || '0' <= r && r <= '9') }) {
		if f == word {
			return true
		}
	}
	return false
}
