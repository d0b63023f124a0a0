package plating

import (
	"slices"
	"strings"
	"unicode"
)

// A name is the text of a bath's or tank's name, cut into words.
//
// A name is judged because the list of hazards may be short: "copper, KCN" without the flag
// for cyanide is a slip that kills. So a word that may mean a hazard counts as one, unless
// the name clearly denies it: a false alarm costs a correction, a missed hazard can kill.
type name struct {
	words  []word
	groups bool // a cyanide group in brackets, as in a formula
	hedged bool // it takes a denial back or weakens it: "mostly", "no longer", "isn't"
}

// A word is a run of letters and digits in small letters, without the brackets
// of a formula.
type word struct {
	text   string
	broken bool // a comma, semicolon, colon, stop or bracket stands before it
}

// subscripts maps the small digits of a formula to plain ones.
const subscripts = "₀₁₂₃₄₅₆₇₈₉"

// readName cuts a name into words. Hyphens, dashes, slashes and underscores
// part words; brackets inside a word belong to a formula and are left out.
//
// Letters come in small, digits of formulas as plain digits, wide forms of other keyboards
// as narrow ones. What stands between two punctuation marks is one phrase: a denial does
// not reach over a comma.
func readName(text string) name {
	text = strings.Map(func(r rune) rune {
		if r >= '！' && r <= '～' { // full width
			return r - '！' + '!'
		}
		return r
	}, text)
	n := name{groups: strings.Contains(strings.ToLower(text), "(cn)")}
	var b strings.Builder
	broken := false
	flush := func() {
		if b.Len() > 0 {
			n.words = append(n.words, word{b.String(), broken})
			b.Reset()
			broken = false
		}
	}
	small := strings.ToLower(text)
	for at, r := range small {
		if i := strings.IndexRune(subscripts, r); i >= 0 {
			r = rune('0' + i/len("₀"))
		}
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && strings.ContainsRune("()[]{}", r) && !(strings.ContainsRune("([{", r) &&
			aside(small[at+1:])):
			// a formula: KAu(CN)2
		case r == '\u00ad' || r == '\u200b': // a soft hyphen or nothing at all
		default:
			flush()
			broken = broken || strings.ContainsRune(",;:.()[]{}", r)
		}
	}
	flush()
	n.spaced()
	not := false
	for i, w := range n.words {
		last := i > 0 && i == len(n.words)-1 && oneOf(w.text, []string{"no", "not", "non", "more", "added", "libre"})
		denies := not && oneOf(w.text, []string{"non", "no", "without", "free"})
		n.hedged = n.hedged || last || denies || oneOf(w.text, hedges())
		not = not || w.text == "not" || w.text == "never"
	}
	return n
}

// aside reports whether what stands behind an opened bracket is a strength or a state,
// not a group of the formula before it: HCl(aq), HF(10 %), NaOH(s).
func aside(rest string) bool {
	for _, w := range []string{"aq", "conc", "dil", "tech", "fum", "s)", "l)", "g)"} {
		if strings.HasPrefix(rest, w) {
			return true
		}
	}
	return rest != "" && rest[0] >= '0' && rest[0] <= '9'
}

// spaced adds what letters by themselves spell: "K C N". A letter behind a comma
// begins anew.
func (n *name) spaced() {
	run := ""
	words := n.words
	for i := 0; i <= len(words); i++ {
		single := i < len(words) && len([]rune(words[i].text)) == 1
		if !single || words[i].broken {
			if len(run) > 1 {
				n.words = append(n.words, word{run, true})
			}
			run = ""
		}
		if single {
			run += words[i].text
		}
	}
}

// near reports whether a word is another with one slip: a letter more, a letter less,
// a wrong one, or two changed about.
//
// It is the edit distance of one, with two neighbours changed about counted as one edit.
// Only a few long words are looked for in this way: a slip of one letter turns many short
// ones into others.
func near(word, right string) bool {
	a, b := []rune(word), []rune(right)
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	rest := func(x []rune, k int) string { return string(x[min(k, len(x)):]) }
	switch len(a) - len(b) {
	case 0:
		return rest(a, i+1) == rest(b, i+1) ||
			i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && rest(a, i+2) == rest(b, i+2)
	case 1:
		return rest(a, i+1) == rest(b, i)
	case -1:
		return rest(a, i) == rest(b, i+1)
	}
	return false
}

// acid reports whether the name gives a pH below 6.
//
// Figures of 6 and above name baths that are near neutral or alkaline; the digit before the
// stop decides, so that "pH 3.8" is 3.
func (n name) acid() bool {
	for i, w := range n.words {
		value, ok := strings.CutPrefix(w.text, "ph")
		for k := i + 1; ok && k < len(n.words) && (value == "" || oneOf(value, fillers())); k++ {
			value = n.words[k].text
		}
		if ok && len(value) == 1 && value[0] >= '0' && value[0] < '6' { // what stands before the stop of "3.8"
			return true
		}
	}
	return false
}

// fillers are words that may stand between "pH" and its figure.
func fillers() []string {
	return []string{"value", "of", "is", "at", "about", "around", "approx", "approximately", "ca", "circa",
		"below", "under",
		"kept", "set", "adjusted", "brought", "to", "near", "max", "up", "from", "wert"}
}

// hedges are words that leave a denial open. A name that holds one denies nothing.
func hedges() []string {
	return []string{"isn", "isnt", "wasn", "wasnt", "aren", "arent", "longer", "yet", "quite", "entirely",
		"really", "wholly",
		"mostly", "largely", "virtually", "essentially", "substantially", "practically", "formerly", "previously",
		"was",
		"far", "anything", "nowhere", "scarcely", "barely", "hardly", "nearly", "almost", "instead", "rather",
		"supposed",
		"said", "considered", "called", "cannot", "can", "made", "next", "beyond", "smell", "except", "unless",
		"until", "above", "exceeding", "mehr", "fast",
		"keineswegs", "nicht", "pas", "presque", "quasi", "casi", "libero"}
}

// names reports whether the name gives the hazard of a row away.
//
// The hazard of a metal does not count behind "for" or "on": "activator for nickel" holds
// none.
func (n name) names(row *HazardRow) bool {
	if row.Flag == HazardCyanide && n.groups || row.Flag == HazardAcid && n.acid() {
		return true
	}
	purpose := false // behind "for", "on", "over": the metal below, not the bath's own
	for i, w := range n.words {
		if w.broken {
			purpose = false
		}
		if oneOf(w.text, purposeWords()) {
			purpose = true
			continue
		}
		if purpose && len(row.Metals) > 0 {
			continue
		}
		if n.says(i, row) && !n.harmless(i, row) && !n.denied(i, row) {
			return true
		}
	}
	return false
}

// says reports whether the word at i is one of the row's: long ones anywhere in it,
// formulas and short ones as a word of their own, two words one behind the other.
func (n name) says(i int, row *HazardRow) bool {
	for _, w := range row.Names {
		if strings.IndexByte(w, ' ') >= 0 {
			if parts := strings.Fields(w); i+len(parts) <= len(n.words) && n.match(i, parts) {
				return true
			}
		} else if strings.Contains(n.words[i].text, w) {
			return true
		}
	}
	for _, right := range row.Near {
		if near(n.words[i].text, right) {
			return true
		}
	}
	bare := strings.TrimRight(n.words[i].text, "0123456789") // HCl10
	return oneOf(n.words[i].text, row.Tokens) || bare != "" && oneOf(bare, row.Tokens)
}

// harmless reports whether the word at i stands in a phrase that means
// something else: "fatty acid", "nickel silver".
func (n name) harmless(i int, row *HazardRow) bool {
	for _, phrase := range row.Harmless {
		parts := strings.Fields(phrase)
		for k := range parts { // the word may be any of the phrase's
			if start := i - k; start >= 0 && start+len(parts) <= len(n.words) && n.match(start, parts) {
				return true
			}
		}
	}
	return false
}

// match reports whether words from start on are those of a phrase, with nothing
// but blanks or hyphens between. A plural counts.
func (n name) match(start int, parts []string) bool {
	for k, p := range parts {
		w := n.words[start+k]
		if k > 0 && w.broken || w.text != p && w.text != p+"s" {
			return false
		}
	}
	return true
}

// denied reports whether the name says that what the word at i names is not
// there: "free of cyanide", "cyanide-free", "non cyanide". A second denial
// takes the first back. "Cyanide, free 10 g/L" names free cyanide.
func (n name) denied(i int, row *HazardRow) bool {
	if n.hedged {
		return false
	}
	w := n.words[i].text
	for _, own := range slices.Concat(row.Names, row.Tokens, row.Near) { // in one word: cyanidfrei, noncyanide
		if w == "non"+own || strings.HasSuffix(w, own+"free") || strings.HasSuffix(w, own+"frei") {
			return true
		}
	}
	if i+1 < len(n.words) && !n.words[i+1].broken && oneOf(n.words[i+1].text, []string{"free", "frei"}) {
		number := i+2 < len(n.words) && n.words[i+2].text[0] >= '0' && n.words[i+2].text[0] <= '9'
		of := i+2 < len(n.words) && oneOf(n.words[i+2].text, []string{"of", "from", "von"}) // belongs to what follows
		return !number && !of && !n.negated(i-1)
	}
	// Back over "or" and the word before it: "without cyanide or acid".
	k := i - 1
	for k >= 1 && !n.words[k+1].broken && oneOf(n.words[k].text, []string{"or", "nor", "oder"}) && !n.words[k].broken {
		k -= 2
	}
	if k >= 0 && !n.words[k+1].broken && oneOf(n.words[k].text, []string{"any", "all"}) {
		k--
	}
	if k < 0 || n.words[k+1].broken {
		return false
	}
	switch {
	case oneOf(n.words[k].text, denials()):
		return !n.negated(k - 1)
	case oneOf(n.words[k].text, []string{"of", "from", "von"}) && k >= 1 && oneOf(n.words[k-1].text, []string{"free",
		"frei"}):
		return !n.negated(k - 2)
	}
	return false
}

// negated reports whether the word at k takes a denial back: "not free of".
func (n name) negated(k int) bool {
	return k >= 0 && oneOf(n.words[k].text, []string{"not", "never", "nicht", "hardly", "nearly", "almost", "no",
		"non"})
}

// denials are words in front of a hazard that deny it, in the languages of the table.
func denials() []string {
	return []string{"no", "non", "not", "without", "ohne", "kein", "sans", "senza", "sin", "zero"}
}

// purposeWords stand before what a bath is for, not what it holds.
func purposeWords() []string {
	return []string{"for", "on", "onto", "over", "under", "behind", "before", "after", "from", "für", "auf",
		"pour", "sur",
		"per", "su"}
}

// oneOf reports whether a text is one of a list.
func oneOf(text string, list []string) bool {
	for _, w := range list {
		if w == text {
			return true
		}
	}
	return false
}
