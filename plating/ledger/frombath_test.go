package ledger_test

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

var update = flag.Bool("update", false, "write testdata/schema/book.json anew")

// TestPinnedSchema: the committed schema is that of the fields that are read; -update writes
// it anew.
func TestPinnedSchema(t *testing.T) {
	raw := must(ledger.Schema())
	const name = "../../testdata/schema/book.json"
	if *update {
		if err := os.WriteFile(name, raw, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if want, err := os.ReadFile(name); err != nil || !bytes.Equal(raw, want) {
		t.Errorf("%s is not the schema of the fields that are read: %v; -update, and read the difference", name, err)
	}
}

// TestPinnedOldBook: a book of before the one form of a bath opens, and is written with the
// same checksums.
func TestPinnedOldBook(t *testing.T) {
	text, err := os.ReadFile("testdata/oldbook.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	l, err := ledger.Open(bytes.NewReader(text))
	if err != nil || l.Len() != 15 || l.Account().Fine != 0.996 {
		t.Fatalf("%+v, %v", l, err)
	}
	if got := bytesOf(l); !bytes.Equal(got, text) {
		t.Errorf("written anew it is\n%s", got)
	}
}

// hardGold is a bath of an alloy, with insoluble anodes.
func hardGold() bath.Bath {
	return bath.Bath{Name: "gold, acid cyanide", Metal: "Au",
		Deposit: []bath.Constituent{{Symbol: "Au", Valence: 1, Share: 0.98},
			{Symbol: "Co", Valence: 2, Share: 0.012}, {Share: 0.008}}, Salt: formula("KAu(CN)2"), Volume: 5 * units.Litre,
		Content:    bath.Range[units.MassConcentration]{Low: 8 * units.GramPerLitre, High: 8 * units.GramPerLitre},
		Efficiency: bath.Range[units.Efficiency]{Low: 0.3, High: 0.4}, AnodeKind: bath.InsolubleAnode, Source: "demo data"}
}

// TestIndependentFromBath: what the account counts with is what the deposit makes, by hand
// 1/ε = Σ w·zF/M over what takes charge.
func TestIndependentFromBath(t *testing.T) {
	a := must(ledger.FromBath(hardGold(), ledger.Keeping{Low: 7 * units.GramPerLitre,
		Salts: []faraday.Formula{formula("KCN"), formula("KAu(CN)2")}}))
	const f, au, co = 96485.33212, 0.196966570, 0.058933194
	near(t, "equivalent", float64(a.Equivalent), 1/(0.98*f/au+0.012*2*f/co), 1e-7)
	if a.Fine != 0.98 || a.Valence != 1 || a.Efficiency != (ledger.EfficiencyRange{Value: 0.35, Low: 0.3, High: 0.4}) ||
		a.Anode != (ledger.Anode{}) || a.Volume != 5*units.Litre || a.Low != 7*units.GramPerLitre ||
		a.Source != "demo data" ||
		len(a.Salts) != 2 || a.Salts[0].String() != "KAu(CN)2" {
		t.Errorf("%+v", a)
	}
	b := hardGold()
	b.Deposit, b.Efficiency = nil, bath.Range[units.Efficiency]{Low: 0.35, High: 0.35}
	a = must(ledger.FromBath(b, ledger.Keeping{}))
	near(t, "equivalent of gold(I)", float64(a.Equivalent), au/f, 1e-7)
	if a.Fine != 0 || a.Efficiency != (ledger.EfficiencyRange{Value: 0.35}) || a.Check() != nil {
		t.Errorf("%+v, %v", a, a.Check())
	}
	b.Lines = []bath.EfficiencyLine{{Points: []bath.EfficiencyBand{{CurrentDensity: 50, Low: 0.4, High: 0.5},
		{CurrentDensity: 150, Low: 0.2, High: 0.3}}}}
	b.CurrentDensity = bath.Range[units.CurrentDensity]{Low: 50, High: 150}
	a = must(ledger.FromBath(b, ledger.Keeping{}))
	near(t, "low end of the lines", float64(a.Efficiency.Low), 0.3, 1e-12)
	near(t, "middle of the lines", float64(a.Efficiency.Value), 0.35, 1e-12)
}

// TestPropertyFromLibrary: a bath of the library as it stands needs tank and content of its
// own, and says where its figures come from.
func TestPropertyFromLibrary(t *testing.T) {
	b := bath.Bath{Library: "nickel-watts", Volume: 20 * units.Litre}
	if _, err := ledger.FromBath(b, ledger.Keeping{}); !errors.Is(err, units.ErrNotGiven) ||
		!strings.Contains(err.Error(), "content") {
		t.Errorf("without a content: %v", err)
	}
	b.Content.Low, b.Content.High = 70*units.GramPerLitre, 70*units.GramPerLitre
	_, err := ledger.FromBath(b, ledger.Keeping{})
	if !errors.Is(err, units.ErrNotGiven) || !strings.Contains(err.Error(), "anodes") {
		t.Errorf("without its anodes: %v", err)
	}
	k := ledger.Keeping{Anodes: &ledger.SolubleAnodes{Share: 0.9, Efficiency: bath.Range[units.Efficiency]{Low: 0.96,
		High: 1}}}
	a, err := ledger.FromBath(b, k)
	if err != nil || a.Check() != nil || a.Metal != "Ni" || a.Name == "" || a.Source == "" ||
		!(a.Efficiency.Value > 0.9) ||
		a.Content != 70*units.GramPerLitre || a.Anode.Share != 0.9 || a.Anode.Efficiency.Value != 0.98 {
		t.Errorf("%+v, %v, %v", a, err, a.Check())
	}
}

// TestPropertyNotAssumed: what a book cannot do without is asked for.
func TestPropertyNotAssumed(t *testing.T) {
	for field, spoil := range map[string]func(b *bath.Bath, k *ledger.Keeping){
		"name":        func(b *bath.Bath, _ *ledger.Keeping) { b.Name = "" },
		"metal":       func(b *bath.Bath, _ *ledger.Keeping) { b.Metal = "" },
		"volume":      func(b *bath.Bath, _ *ledger.Keeping) { b.Volume = 0 },
		"content":     func(b *bath.Bath, _ *ledger.Keeping) { b.Content = bath.Range[units.MassConcentration]{} },
		"anode_kind":  func(b *bath.Bath, _ *ledger.Keeping) { b.AnodeKind = bath.AnodeNotGiven },
		"efficiency":  func(b *bath.Bath, _ *ledger.Keeping) { b.Efficiency = bath.Range[units.Efficiency]{} },
		"book.anodes": func(b *bath.Bath, _ *ledger.Keeping) { b.AnodeKind = bath.SolubleAnode },
		"anodes":      func(_ *bath.Bath, k *ledger.Keeping) { k.Anodes = &ledger.SolubleAnodes{Share: 1} },
		"like":        func(b *bath.Bath, _ *ledger.Keeping) { b.Like = "nickel-watts" },
	} {
		b, k := hardGold(), ledger.Keeping{}
		spoil(&b, &k)
		a, err := ledger.FromBath(b, k)
		var e *units.ValueError
		if !errors.As(err, &e) || !strings.Contains(err.Error(), field) || a.Name != "" {
			t.Errorf("%s: %v", field, err)
		}
	}
}
