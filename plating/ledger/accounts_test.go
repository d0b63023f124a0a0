package ledger_test

import (
	"bytes"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// book opens a book in memory and posts events, a day apart.
func book(t *testing.T, b ledger.Account, events ...ledger.Event) *ledger.Ledger {
	t.Helper()
	l, err := ledger.New(b, day(0))
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range events {
		if _, err := l.Post(ledger.Entry{When: day(float64(i + 1)), Event: e}); err != nil {
			t.Fatalf("%T: %v", e, err)
		}
	}
	return l
}

// TestIndependentAccounts adds up what the records say and holds the sums against the
// accounts of the balance; the balance closes.
func TestIndependentAccounts(t *testing.T) {
	rng := rand.New(rand.NewPCG(201, 202))
	var met ledger.Balance
	for range 60 {
		l := randomLedger(rng, 1+rng.IntN(30))
		b := l.Account()
		sum := ledger.Balance{Opening: units.Mass(float64(b.Content) * float64(b.Volume))}
		for _, r := range l.Records() {
			sum.Added += r.Added
			sum.FromAnode += r.FromAnode
			sum.DraggedIn += r.DraggedIn
			sum.Deposited += r.Deposited
			sum.DraggedOut += r.DraggedOut
			sum.Corrected += r.Corrected
			sum.Analysed += r.Analysed
			switch e := r.Entry.Event.(type) {
			case ledger.Addition:
				near(t, "added", float64(r.Added), float64(must(e.MetalMass(b.Metal))), 1e-15)
			case ledger.Correction:
				near(t, "corrected", float64(r.Corrected), float64(e.Metal), 0)
			case ledger.Load:
				near(t, "dragged in", float64(r.DraggedIn), float64(e.DragIn)*float64(e.DragInContent), 1e-15)
			}
		}
		got, through := l.State().Balance, float64(l.State().Balance.Through())
		if got.Now != l.State().Metal {
			t.Errorf("now %v, metal %v", got.Now, l.State().Metal)
		}
		for _, v := range [][3]*units.Mass{{&got.Opening, &sum.Opening, &met.Opening}, {&got.Added, &sum.Added, &met.Added},
			{&got.FromAnode, &sum.FromAnode, &met.FromAnode}, {&got.DraggedIn, &sum.DraggedIn, &met.DraggedIn},
			{&got.Deposited, &sum.Deposited, &met.Deposited}, {&got.DraggedOut, &sum.DraggedOut, &met.DraggedOut},
			{&got.Corrected, &sum.Corrected, &met.Corrected}, {&got.Analysed, &sum.Analysed, &met.Analysed}} {
			if math.Abs(float64(*v[0]-*v[1])) > 1e-14*through {
				t.Fatalf("%+v, by the records %+v", got, sum)
			}
			if *v[1] != 0 {
				*v[2] = 1
			}
		}
		if off := math.Abs(float64(got.Gap())); off > 1e-12*through {
			t.Fatalf("gap %g of %g: %+v", off, through, got)
		}
	}
	if met != (ledger.Balance{Opening: 1, Added: 1, FromAnode: 1, DraggedIn: 1, Deposited: 1, DraggedOut: 1, Corrected: 1,
		Analysed: 1}) {
		t.Errorf("an account was never used: %+v", met)
	}
}

// TestPropertyGap: each account goes into the gap with its sign and into what went
// through the book without one. The figures are powers of two, so that a sum tells its parts.
func TestPropertyGap(t *testing.T) {
	b := ledger.Balance{Opening: 1, Added: 2, FromAnode: 4, DraggedIn: 8, Deposited: 16, DraggedOut: 32, Corrected: 64,
		Analysed: 128, Now: 256}
	if got := b.Gap(); got != 1+2+4+8-16-32+64+128-256 {
		t.Errorf("gap %v", got)
	}
	if got := b.Through(); got != 255 {
		t.Errorf("through %v", got)
	}
	b.Corrected, b.Analysed = -64, -128
	if got := b.Gap(); got != 1+2+4+8-16-32-64-128-256 {
		t.Errorf("gap %v", got)
	}
	if got := b.Through(); got != 255 {
		t.Errorf("through %v", got)
	}
}

// TestPropertySinceAddition: metal sets the meter back, water does not; an analysis sets its own.
func TestPropertySinceAddition(t *testing.T) {
	q := 7 * units.AmpereMinute
	load, water := ledger.Load{Charge: q}, ledger.Addition{Water: units.Millilitre}
	for _, c := range []struct {
		events       []ledger.Event
		since, whole units.Charge
	}{
		{[]ledger.Event{load, load}, 2 * q, 2 * q}, {[]ledger.Event{load, water, load}, 2 * q, 2 * q},
		{[]ledger.Event{load, ledger.Addition{Metal: units.Milligram}, load}, q, 2 * q},
		{[]ledger.Event{load, ledger.Addition{Metal: units.Milligram}}, 0, q},
	} {
		s := book(t, goldBath(), c.events...).State()
		if s.SinceAddition != c.since || s.Charge != c.whole {
			t.Errorf("%v since the addition, %v in all; want %v and %v", s.SinceAddition, s.Charge, c.since, c.whole)
		}
	}
	analysis := ledger.Analysis{Content: 8, Uncertainty: 1}
	for _, c := range []struct {
		events []ledger.Event
		since  units.Charge
	}{{[]ledger.Event{load, water, load}, 2 * q}, {[]ledger.Event{load, analysis}, 0},
		{[]ledger.Event{load, analysis, load}, q}} {
		if s := book(t, goldBath(), c.events...).State(); s.SinceAnalysis != c.since {
			t.Errorf("%v since the analysis, want %v", s.SinceAnalysis, c.since)
		}
	}
}

// TestPropertyEmptyOpening: a bath without metal has no turnovers, and takes its first metal.
func TestPropertyEmptyOpening(t *testing.T) {
	b := goldBath()
	b.Content, b.Target = 0, 8*units.GramPerLitre
	s := book(t, b, ledger.Addition{Metal: 40 * units.Gram}, ledger.Load{Charge: 10 * units.AmpereMinute}).State()
	if s.Turnovers != 0 || s.Balance.Opening != 0 || !(s.Balance.Deposited > 0) {
		t.Errorf("%+v", s)
	}
	// All of the metal may go, and no more.
	b = goldBath()
	gone := ledger.Correction{Metal: -units.Mass(float64(b.Content) * float64(b.Volume)), Reason: "metal won back"}
	if s := book(t, b, gone).State(); s.Metal != 0 || s.Content != 0 {
		t.Errorf("%+v", s)
	}
}

// TestPropertyWrittenBytes: WriteTo tells how many bytes it wrote.
func TestPropertyWrittenBytes(t *testing.T) {
	l := book(t, goldBath(), ledger.Load{Charge: units.AmpereMinute}, ledger.Addition{Metal: units.Gram})
	var text bytes.Buffer
	if n, err := l.WriteTo(&text); err != nil || n != int64(text.Len()) || n == 0 {
		t.Errorf("%d bytes told, %d written, %v", n, text.Len(), err)
	}
	for room := range text.Len() {
		w := &limited{n: room}
		if n, err := l.WriteTo(w); err == nil || n != int64(w.Len()) {
			t.Fatalf("%d bytes told, %d written, %v", n, w.Len(), err)
		}
	}
	if b, err := ledger.Start(&limited{n: 20}, goldBath(), day(0)); err == nil {
		t.Errorf("no error of the writer: %v", b)
	}
}

// TestPropertyOwnLists: the book keeps a list of salts of its own.
func TestPropertyOwnLists(t *testing.T) {
	b := goldBath()
	l := book(t, b)
	b.Salts[0] = formula("AuCN")
	mine := l.Account()
	mine.Salts[0] = formula("AuCl3")
	if got := l.Account().Salts[0].String(); got != "KAu(CN)2" {
		t.Errorf("the salt of the book became %s", got)
	}
}

// TestPropertyLabel: the content on the label goes before that of the formula.
func TestPropertyLabel(t *testing.T) {
	a := ledger.Addition{Salt: formula("KAu(CN)2"), SaltMass: 10 * units.Gram, Label: 0.683, Metal: units.Gram,
		Solution: 20 * units.Millilitre, SolutionContent: 100 * units.GramPerLitre}
	near(t, "by the label", float64(must(a.MetalMass("Au"))), float64((6.83+1+2)*units.Gram), 1e-14)
	a.Label = 0
	share := float64(must(faraday.MetalContent(a.Salt, "Au")))
	near(t, "by the formula", float64(must(a.MetalMass("Au"))), (10*share+1+2)*float64(units.Gram), 1e-14)
	thin := ledger.Addition{Solution: units.Litre, SolutionContent: 0.5 * units.GramPerLitre}
	near(t, "half a gram a litre", float64(must(thin.MetalMass("Au"))), float64(0.5*units.Gram), 1e-14)
	a.Label = 1
	near(t, "all metal", float64(must(a.MetalMass("Au"))), float64((10+1+2)*units.Gram), 1e-14)
}

// TestPropertyTimeOfTheCalendar: what a process adds to a time for itself is not in the book.
func TestPropertyTimeOfTheCalendar(t *testing.T) {
	now := time.Now()
	l := must(ledger.New(goldBath(), now))
	r := must(l.Post(ledger.Entry{When: now, Event: ledger.Load{Charge: 1}}))
	if plain := now.Round(0); r.Entry.When != plain || l.Opened() != plain || l.State().When != plain {
		t.Errorf("%v, %v, %v", r.Entry.When, l.Opened(), l.State().When)
	}
}
