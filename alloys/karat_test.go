package alloys_test

import (
	"math/big"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"github.com/shopspring/decimal"
)

// Printed finenesses of karats, exact and marked: [FinenessMarks].
func TestReferenceFineness(t *testing.T) {
	checked(t, "fineness.csv", func(t *testing.T, row testdata.Row) float64 {
		k := alloys.Karat(row.Float("karat"))
		if row.Text("check") == "fineness_exact" {
			return float64(k.Fineness())
		}
		m := must(alloys.MarkedFineness(k))(t)
		back := must(alloys.KaratOfMark(m.Mark))(t)
		if back.Karat != k || m.Seen == origin.FromMemory {
			t.Errorf("mark %s belongs to %v (%v)", m.Mark, back.Karat, m.Seen)
		}
		return m.Mark.InexactFloat64()
	})
}

func TestIndependentKaratByFractions(t *testing.T) {
	for k := int64(1); k <= 24; k++ {
		want, _ := big.NewRat(k*1000, 24).Float64()
		if got := float64(alloys.Karat(k).Fineness()); got != want {
			t.Errorf("%d K: %v, want %v", k, got, want)
		}
		share, _ := big.NewRat(k, 24).Float64()
		if got := float64(alloys.Karat(k).MassFraction()); got != share {
			t.Errorf("%d K: share %v, want %v", k, got, share)
		}
	}
	for tenths := int64(1); tenths <= 10000; tenths++ {
		f, _ := big.NewRat(tenths, 10).Float64()
		want, _ := big.NewRat(tenths, 10000).Float64()
		if got := alloys.Fineness(f).MassFraction(); float64(got) != want {
			t.Fatalf("fineness %v: share %v, want %v", f, got, want)
		}
		if got := alloys.NewFineness(units.MassFraction(want)); float64(got) != f {
			t.Fatalf("share %v: fineness %v, want %v", want, got, f)
		}
	}
}

func TestPropertyKaratThereAndBack(t *testing.T) {
	if k := parse(t, "Au 750, Cu rest").Karat(); k != 18 {
		t.Errorf("750 gold is %v", k)
	}
	last := alloys.Fineness(0)
	for k := alloys.Karat(0.25); k <= 24; k += 0.25 {
		f := k.Fineness()
		near(t, k.String(), float64(f.Karat()), float64(k), 1e-15)
		if f <= last {
			t.Errorf("%v: fineness does not rise", k)
		}
		last = f
	}
	last = 0
	for _, m := range alloys.KaratMarks() {
		if m.Exact <= last || m.Mark.Sub(decimal.NewFromFloat(float64(m.Exact))).Abs().GreaterThan(dec("1.67")) {
			t.Errorf("%v: mark %s against %v", m.Karat, m.Mark, m.Exact)
		}
		last = m.Exact
	}
}

func TestPropertyFinenessDecimal(t *testing.T) {
	for f, want := range map[alloys.Fineness]string{585: "585", 584.9999: "584.9999", 584.99999999999994: "585",
		583.3333333333334: "583.333333333", 958.3: "958.3", 1000: "1000"} {
		if got := must(f.Decimal())(t); !got.Equal(dec(want)) {
			t.Errorf("%v: %s, want %s", float64(f), got, want)
		}
	}
	for _, v := range append(badNumbers, 0, 1000.1) {
		if _, err := alloys.Fineness(v).Decimal(); err == nil {
			t.Errorf("fineness %v was accepted", v)
		}
	}
}

func TestPropertyParseKaratAndFineness(t *testing.T) {
	for _, text := range []string{"18", "18K", "18 K", "18k", " 18 kt", "18 ct", "18 karat", "18.0 carat", "1.8e1K"} {
		if k, err := alloys.ParseKarat(text); err != nil || k != 18 {
			t.Errorf("%q: %v, %v", text, k, err)
		}
	}
	for _, text := range []string{"750", "750 ‰", "750‰", "750.0", ".75e3"} {
		if f, err := alloys.ParseFineness(text); err != nil || f != 750 {
			t.Errorf("%q: %v, %v", text, f, err)
		}
	}
	for _, text := range []string{"", "K", "18 Q", "-18", "+18", "NaN", "Inf", "0x18", "1_8", "18,5", "18 K K", "1e99999",
		"e", ".", strings.Repeat("9", 500)} {
		k, err := alloys.ParseKarat(text)
		isError(t, "karat "+text, err, units.ErrSyntax)
		f, err := alloys.ParseFineness(text)
		isError(t, "fineness "+text, err, units.ErrSyntax)
		if k != 0 || f != 0 {
			t.Errorf("%q: a value with an error", text)
		}
	}
	_, err := alloys.ParseKarat("25 K")
	isError(t, "25 K", err, units.ErrOutOfRange)
	_, err = alloys.ParseKarat("0")
	isError(t, "0 K", err, units.ErrNotPositive)
	_, err = alloys.ParseFineness("1001")
	isError(t, "1001", err, units.ErrOutOfRange)
	_, err = alloys.ParseFineness("1e399")
	isError(t, "1e399", err, units.ErrSyntax)
}

func TestBadMarks(t *testing.T) {
	for _, v := range append(badNumbers, 0, 25, 21) {
		if m, err := alloys.MarkedFineness(alloys.Karat(v)); err == nil || !m.Mark.IsZero() {
			t.Errorf("karat %v was marked", v)
		}
	}
	for _, text := range []string{"0", "-1", "586", "1001", "1e100", "1e-100"} {
		if _, err := alloys.KaratOfMark(dec(text)); err == nil {
			t.Errorf("mark %s was read", text)
		}
	}
	if _, err := alloys.KaratOfMark(decimal.Decimal{}); err == nil {
		t.Error("the zero mark was read")
	}
}

func FuzzParseKarat(f *testing.F) {
	for _, s := range []string{"18 K", "14kt", "9.5", "750 ‰", "1e1 ct"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if k, err := alloys.ParseKarat(text); err == nil {
			if k.Check("karat") != nil {
				t.Fatalf("%q: %v", text, k)
			}
			if _, err := alloys.ParseKarat(k.String()); err != nil {
				t.Fatal(err)
			}
		}
		if v, err := alloys.ParseFineness(text); err == nil {
			if v.Check("fineness") != nil {
				t.Fatalf("%q: %v", text, v)
			}
			if _, err := v.Decimal(); err != nil {
				t.Fatal(err)
			}
			if _, err := alloys.ParseFineness(v.String()); err != nil {
				t.Fatal(err)
			}
		}
	})
}
