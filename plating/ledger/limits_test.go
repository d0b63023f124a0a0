package ledger_test

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// says checks that an error is a complete ValueError of a field and holds the words.
func says(t *testing.T, name string, err error, field, words string) {
	t.Helper()
	v := (*units.ValueError)(nil)
	if !errors.As(err, &v) || v.Field != field || !strings.Contains(err.Error(), words) {
		t.Errorf("%s: %v; want field %q and %q", name, err, field, words)
	}
}

// TestPropertyBathLimits: figures at their limit are taken, a little beyond they are not.
func TestPropertyBathLimits(t *testing.T) {
	gold := goldBath()
	full := float64(gold.Equivalent)
	for name, c := range map[string]struct {
		at, beyond func(*ledger.Account)
		field      string
		words      string
	}{
		"valence": {func(b *ledger.Account) { b.Name, b.Salts, b.Valence = "bath", nil, 8 },
			func(b *ledger.Account) { b.Name, b.Salts, b.Valence = "bath", nil, 9 }, "valence", "1 to 8"},
		"no valence": {func(b *ledger.Account) { b.Valence = 0 }, func(b *ledger.Account) { b.Valence = -1 }, "valence",
			"valence -1: out of range; need 1 to 8"},
		"salts": {func(b *ledger.Account) { b.Salts = repeat(gold.Salts[0], 20) },
			func(b *ledger.Account) { b.Salts = repeat(gold.Salts[0], 21) }, "salts", "at most 20"},
		"name": {func(b *ledger.Account) { b.Name = strings.Repeat("x", 1000) },
			func(b *ledger.Account) { b.Name = strings.Repeat("x", 1001) }, "name of the bath", "at most 1000 bytes"},
		"name, UTF-8": {func(b *ledger.Account) { b.Name = "\u00b5" }, func(b *ledger.Account) { b.Name = "\xb5" },
			"name of the bath", "plain text in UTF-8"},
		"low and high": {func(b *ledger.Account) { b.Low, b.High = 7.9, 8 }, func(b *ledger.Account) {
			b.Low, b.High = 8,
				8
		},
			"low alarm", "less than the high alarm"},
		"target and low": {func(b *ledger.Account) { b.Target = b.Low },
			func(b *ledger.Account) { b.Target = b.Low - 1e-9 }, "target content", "between the alarms"},
		"target and high": {func(b *ledger.Account) { b.Target = b.High },
			func(b *ledger.Account) { b.Target = b.High + 1e-9 }, "target content", "between the alarms"},
		"level": {func(b *ledger.Account) { b.Level = b.Volume }, func(b *ledger.Account) { b.Level = b.Volume + 1e-9 },
			"level alarm", "at most the bath volume"},
		"efficiency and high end": {func(b *ledger.Account) { b.Efficiency.Value = b.Efficiency.High },
			func(b *ledger.Account) { b.Efficiency.Value = b.Efficiency.High + 1e-9 }, "current efficiency",
			"between its ends"},
		"efficiency and low end": {func(b *ledger.Account) { b.Efficiency.Value = b.Efficiency.Low },
			func(b *ledger.Account) { b.Efficiency.Value = b.Efficiency.Low - 1e-9 }, "current efficiency",
			"between its ends"},
		"equivalent, alloy, above": {func(b *ledger.Account) {
			b.Fine, b.Equivalent = 0.5,
				units.Equivalent(2*1.0099*full)
		},
			func(b *ledger.Account) { b.Fine, b.Equivalent = 0.5, units.Equivalent(2*1.0101*full) },
			"electrochemical equivalent", "for one electron an ion"},
		// No whole number of electrons fits two thirds; below an eighth, with its slack, none can.
		"equivalent, pure, between": {func(b *ledger.Account) { b.Fine, b.Equivalent = 0, units.Equivalent(full*2/3) },
			func(b *ledger.Account) { b.Fine, b.Equivalent = 0, units.Equivalent(full/9) },
			"electrochemical equivalent", "or a whole part of that"},
		"pH": {func(b *ledger.Account) { b.PH = plating.PHWindow{Low: 4, High: 5} },
			func(b *ledger.Account) { b.PH = plating.PHWindow{Low: 17, High: 18} }, "pH", "at most 16"},
	} {
		at, beyond := gold, gold
		c.at(&at)
		c.beyond(&beyond)
		if err := at.Check(); err != nil {
			t.Errorf("%s at its limit: %v", name, err)
		}
		says(t, name, beyond.Check(), c.field, c.words)
	}
	nickel := nickelBath()
	nickel.Anode.Equivalent = nickel.Equivalent / 10 // the point slipped
	says(t, "anode", nickel.Check(), "equivalent of the anode", "or a whole part of that")
	nickel.Anode.Equivalent = nickel.Equivalent
	if err := nickel.Check(); err != nil {
		t.Error(err)
	}
}

func repeat(f faraday.Formula, n int) []faraday.Formula {
	list := make([]faraday.Formula, n)
	for i := range list {
		list[i] = f
	}
	return list
}

// TestPropertyDeadlyBath: what the chemistry of a bath forbids, its book does.
func TestPropertyDeadlyBath(t *testing.T) {
	b := goldBath()
	b.Name, b.PH = "silver, cyanide", plating.PHWindow{Low: 1, High: 2}
	b.Metal, b.Equivalent, b.Fine, b.Salts = "Ag", equivalent("Ag", 1), 0, nil
	var danger *plating.DangerError
	if err := b.Check(); !errors.As(err, &danger) {
		t.Errorf("cyanide in acid: %v", err)
	}
}

// TestPropertySolutionOfTheBath: the chemistry has the hazards and the valence of the bath,
// or the valence that fits the equivalent.
func TestPropertySolutionOfTheBath(t *testing.T) {
	b := nickelBath()
	b.Hazards = 3
	if s := b.Solution(); s.Valence != 2 || s.Hazards != 3 || s.Metal != "Ni" || s.Name != b.Name || len(s.Salts) != 2 {
		t.Errorf("%+v", s)
	}
	b.Valence = 3
	if s := b.Solution(); s.Valence != 3 {
		t.Errorf("valence %d, given as 3", s.Valence)
	}
}

// TestPropertyEntryLimits: figures of an entry at their limit are taken, beyond they are not.
func TestPropertyEntryLimits(t *testing.T) {
	b := goldBath()
	q, u := 10*units.AmpereMinute, 10*units.Milligram
	most := b.Equivalent.Of(q) + 3*u
	words := strings.Repeat("x", 1000)
	for name, c := range map[string]struct {
		at, beyond ledger.Event
		field      string
		words      string
	}{
		"weighed": {ledger.Load{Charge: q, Weighed: most, WeighedUncertainty: u},
			ledger.Load{Charge: q, Weighed: most + units.Microgram, WeighedUncertainty: u}, "weighed deposit",
			"at most the " + b.Equivalent.Of(q).String() + " that"},
		"weighed, little charge": {ledger.Load{Charge: 0.5, Weighed: b.Equivalent.Of(0.5)},
			ledger.Load{Charge: 0.5, Weighed: units.Gram}, "weighed deposit", "check meter, balance"},
		"two marks": {ledger.Addition{Water: 5 * units.Litre}, ledger.Addition{Water: 5*units.Litre + units.Millilitre},
			"volume of the bath", "at most 2 times the 5 L of the mark"},
		"two marks for a while": {ledger.Load{DragIn: 5 * units.Litre, DragOut: 2 * units.Litre},
			ledger.Load{DragIn: 6 * units.Litre, DragOut: 2 * units.Litre}, "volume of the bath",
			"volume of the bath 11 L"},
		"reason": {ledger.Correction{Metal: units.Gram, Reason: words},
			ledger.Correction{Metal: units.Gram, Reason: words + "x"}, "reason of the correction", "1001 bytes"},
	} {
		book(t, b, c.at)
		_, err := must(ledger.New(b, day(0))).Post(ledger.Entry{When: day(1), Event: c.beyond})
		says(t, name, err, c.field, c.words)
	}
	note := ledger.Entry{When: day(1), Event: ledger.Load{Charge: q}, Note: words}
	must(must(ledger.New(b, day(0))).Post(note))
	note.Note += "x"
	_, tooLong := must(ledger.New(b, day(0))).Post(note)
	says(t, "note", tooLong, "note", "1001 bytes: out of range; need at most 1000 bytes")
	// Charges add up to no number.
	l := book(t, b, ledger.Load{Charge: 1e308, Weighed: units.Milligram})
	_, err := l.Post(ledger.Entry{When: day(2), Event: ledger.Load{Charge: 1e308, Weighed: units.Milligram}})
	wantField(t, "charges", err, "charge in the book", units.ErrNotFinite)
}

// TestPropertyAdditionWords: what half of a salt or a solution was given is told.
func TestPropertyAdditionWords(t *testing.T) {
	salt, g, ml := formula("KAu(CN)2"), units.Gram, units.Millilitre
	for _, c := range []struct {
		addition     ledger.Addition
		field, words string
	}{
		{ledger.Addition{SaltMass: 2 * g}, "salt", "salt mass of 2 g without a formula: "},
		{ledger.Addition{Salt: salt}, "salt", "salt KAu(CN)2 without a mass: "},
		{ledger.Addition{Label: 0.5, Water: ml}, "salt", "salt label without a salt: "},
		{ledger.Addition{Solution: 3 * ml}, "solution", "solution solution of 3 mL without its content: "},
		{ledger.Addition{SolutionContent: 4}, "solution", "solution content of 4 g/L without a volume: "},
		{ledger.Addition{Salt: salt, SaltMass: -2 * g}, "mass of salt", "mass of salt -2 g: below zero"},
		{ledger.Addition{Water: -3 * ml}, "volume of water", "volume of water -3 mL: below zero"},
		{ledger.Addition{SolutionContent: -4}, "content of the solution", "content of the solution -4 g/L: below zero"},
		{ledger.Addition{Salt: salt, SaltMass: g, Label: 2}, "metal content by the label", ""},
		{ledger.Addition{Salt: formula("NaCl"), SaltMass: g}, "metal content", "metal content of NaCl"},
		{ledger.Addition{Uncertainty: -2 * g}, "uncertainty of the addition", "uncertainty of the addition -2 g"},
	} {
		m, err := c.addition.MetalMass("Au")
		v := (*units.ValueError)(nil)
		if !errors.As(err, &v) || !strings.HasPrefix(v.Field, c.field) || !strings.HasPrefix(err.Error(), c.words) ||
			m != 0 {
			t.Errorf("%q: %v, %v", c.words, m, err)
		}
	}
}

// TestPropertyClockLimits: a day ahead and fifty years behind are the most, to the second.
func TestPropertyClockLimits(t *testing.T) {
	now := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	for when, words := range map[time.Time]string{
		now.Add(24 * time.Hour):                                    "",
		now.Add(24*time.Hour + 1):                                  "at most a day later",
		time.Date(1976, 3, 2, 8, 0, 0, 0, time.UTC):                "",
		time.Date(1976, 3, 2, 8, 0, 0, 0, time.UTC).Add(-1):        "at most 50 years before",
		time.Date(2926, 3, 2, 8, 0, 0, 0, time.UTC):                "at most a day later",
		time.Date(1926, 3, 2, 8, 0, 0, 0, time.UTC).Add(time.Hour): "at most 50 years before",
	} {
		err := ledger.CheckClock("time", when, now)
		if words == "" {
			if err != nil {
				t.Error(err)
			}
			continue
		}
		says(t, when.String(), err, "time", words)
	}
	l := must(ledger.New(goldBath(), now.Add(24*time.Hour)))
	if got := l.Ahead(now); got != nil {
		t.Errorf("an opening a day ahead: %v", got)
	}
	if got := l.Ahead(now.Add(-1)); len(got) != 1 || got[0] != 0 {
		t.Errorf("an opening more than a day ahead: %v", got)
	}
	must(l.Post(ledger.Entry{When: now.Add(25 * time.Hour), Event: ledger.Load{Charge: 1}}))
	if got := l.Ahead(now.Add(time.Hour)); got != nil {
		t.Errorf("an entry a day ahead: %v", got)
	}
	if got := l.Ahead(now.Add(time.Hour - 1)); len(got) != 1 || got[0] != 1 {
		t.Errorf("an entry more than a day ahead: %v", got)
	}
}

// TestPropertyYears: a book holds the years 1900 to 2999.
func TestPropertyYears(t *testing.T) {
	first := time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC)
	last := time.Date(2999, 12, 31, 23, 59, 59, 0, time.UTC)
	l := must(ledger.New(goldBath(), first))
	must(l.Post(ledger.Entry{When: last, Event: ledger.Load{Charge: 1}}))
	_, err := l.Post(ledger.Entry{When: last.Add(time.Second), Event: ledger.Load{Charge: 1}})
	says(t, "3000", err, "time of the entry", "in the year 3000")
	_, err = ledger.New(goldBath(), first.Add(-time.Second))
	says(t, "1899", err, "time of the opening", "in the year 1899")
}

// TestPropertyFileNames: a name of no byte, of too many, or with a zero is refused before
// the system sees it.
func TestPropertyFileNames(t *testing.T) {
	long := strings.Repeat("x", 4096)
	zero := filepath.Join(t.TempDir(), "a\x00b")
	for name, path := range map[string]string{"none": "", "long": long + "x", "zero": zero} {
		_, err := ledger.CreateFile(path, goldBath(), day(0))
		says(t, name, err, "name of the file", "1 to 4096 bytes")
		_, err = ledger.OpenFile(path)
		says(t, name, err, "name of the file", "1 to 4096 bytes")
	}
	v := (*units.ValueError)(nil)
	if _, err := ledger.OpenFile(long); err == nil || errors.As(err, &v) { // the system's own business
		t.Errorf("4096 bytes: %v", err)
	}
}

// TestPropertyOrderWords: an entry that is too old is told what is the last one that
// counts, and how to get rid of it, where there is one.
func TestPropertyOrderWords(t *testing.T) {
	older := ledger.Entry{When: day(-1), Event: ledger.Load{Charge: 1}}
	l := must(ledger.New(goldBath(), day(0)))
	refused := func(e ledger.Entry, words, not string) {
		t.Helper()
		_, err := l.Post(e)
		says(t, words, err, "time of the entry", words)
		if err != nil && not != "" && strings.Contains(err.Error(), not) {
			t.Errorf("%v: says %q", err, not)
		}
	}
	opening := day(0).Format(time.RFC3339)
	refused(older, "the last entry, "+opening, "(no.")
	must(l.Post(ledger.Entry{When: day(1), Event: ledger.Load{Charge: 1}}))
	refused(older, "(no. 1); if the time of no. 1 is wrong, void it", "")
	void := ledger.Entry{When: day(-1), Event: ledger.Void{Entry: 1, Reason: "x"}}
	refused(void, "not before the opening, "+opening, "(no.")
	must(l.Post(ledger.Entry{When: day(2), Event: ledger.Load{Charge: 1}}))
	refused(older, "(no. 2)", "")
	void.When = day(3)
	must(l.Post(void))
	void.Event = ledger.Void{Entry: 2, Reason: "x"}
	must(l.Post(void))
	refused(older, "the last entry, "+opening, "(no.") // none counts
	_, err := must(ledger.New(goldBath(), day(0))).Post(void)
	says(t, "none yet", err, "entry to void", "need an entry: this book has none yet")
}
