package alloys_test

import (
	"errors"
	"math/rand"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

var symbols = map[string]string{"gold": "Au", "silver": "Ag", "platinum": "Pt", "palladium": "Pd"}

// Printed examples of choosing a mark, and legal minima: [FinenessFloor].
func TestReferenceMarkFloor(t *testing.T) {
	checked(t, "markfloor.csv", func(t *testing.T, row testdata.Row) float64 {
		symbol := symbols[row.Text("metal")]
		if row.Text("check") == "minimum_fineness" {
			return must(alloys.FinnishMinimum(symbol))(t).InexactFloat64()
		}
		var list []decimal.Decimal
		for _, m := range strings.Split(row.Text("series"), ";") {
			list = append(list, dec(m))
		}
		own := must(alloys.NewSeries("as printed", symbol, list...))(t)
		uk := must(alloys.FinenessSeries(alloys.ListUnitedKingdom, symbol))(t)
		mark := must(alloys.MarkFor(dec(row.Text("assay_permille")), own))(t)
		if other := must(alloys.MarkFor(dec(row.Text("assay_permille")), uk))(t); !other.Equal(mark) {
			t.Errorf("own series gives %s, the list %s", mark, other)
		}
		return mark.InexactFloat64()
	})
}

// Both ways: every printed fineness is in the list, and the list holds no other: [FinenessSeries].
func TestReferenceFinenessSeries(t *testing.T) {
	printed := map[string][]string{} // list and metal -> marks
	for _, row := range rows(t, "finenessseries.csv") {
		list, _, _ := strings.Cut(row.Text("id"), "-")
		symbol := symbols[row.Text("metal")]
		if list == "fi" {
			if got := must(alloys.FinnishMinimum(symbol))(t); got.String() != row.Text("fineness") {
				t.Errorf("%s: %s", row.Name(), got)
			}
			continue
		}
		printed[list+symbol] = append(printed[list+symbol], row.Text("fineness"))
	}
	for name, list := range map[string]alloys.List{"uk": alloys.ListUnitedKingdom, "list": alloys.ListGeneral} {
		for _, symbol := range symbols {
			s, err := alloys.FinenessSeries(list, symbol)
			var got []string
			for _, m := range s.Marks {
				got = append(got, m.String())
			}
			if diff := cmp.Diff(printed[name+symbol], got); diff != "" {
				t.Errorf("%s %s: %v %s", name, symbol, err, diff)
			}
			if err == nil && (s.Seen == origin.FromMemory || s.Symbol != symbol) {
				t.Errorf("%s %s: %+v", name, symbol, s)
			}
		}
	}
}

// The series of ISO 9202 is from memory. This only pins that it says so.
func TestPinnedISO9202IsFromMemory(t *testing.T) {
	for _, symbol := range symbols {
		if s := must(alloys.FinenessSeries(alloys.ListISO9202, symbol))(t); s.Seen != origin.FromMemory ||
			len(s.Marks) == 0 {
			t.Errorf("%s: %+v", symbol, s)
		}
	}
}

func TestPropertyMarkIsTheFloor(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	s := must(alloys.FinenessSeries(alloys.ListGeneral, "Au"))(t)
	for i := 0; i < 2000; i++ {
		assay := decimal.New(3330000+r.Int63n(6670001), -4)
		mark := must(alloys.MarkFor(assay, s))(t)
		if mark.GreaterThan(assay) {
			t.Fatalf("assay %s marked %s", assay, mark)
		}
		for _, m := range s.Marks {
			if m.GreaterThan(mark) && m.LessThanOrEqual(assay) {
				t.Fatalf("assay %s marked %s, reaches %s", assay, mark, m)
			}
		}
	}
	for assay, want := range map[string]string{"585": "585", "584.9999": "417", "584.999999999999999999": "417",
		"585.000000000000000001": "585", "999.9": "999.9", "1000": "999.9", "333": "333"} {
		if got := must(alloys.MarkFor(dec(assay), s))(t); got.String() != want {
			t.Errorf("assay %s marked %s, want %s", assay, got, want)
		}
	}
	s.Marks[0] = dec("1")
	if again := must(alloys.FinenessSeries(alloys.ListGeneral, "Au"))(t); again.Marks[0].String() != "333" {
		t.Error("a caller changed the table")
	}
}

func TestBadMarkFor(t *testing.T) {
	s := must(alloys.FinenessSeries(alloys.ListUnitedKingdom, "Au"))(t)
	_, err := alloys.MarkFor(dec("374.99"), s)
	isError(t, "below", err, alloys.ErrBelowSeries)
	var below *alloys.BelowSeriesError
	if !errors.As(err, &below) || below.Lowest.String() != "375" || below.Symbol != "Au" {
		t.Errorf("below: %+v", below)
	}
	for _, text := range []string{"0", "-1", "1000.1", "1e90", "1e-90"} {
		if _, err := alloys.MarkFor(dec(text), s); err == nil {
			t.Errorf("assay %s was marked", text)
		}
	}
	if _, err := alloys.MarkFor(decimal.Decimal{}, s); err == nil {
		t.Error("the zero assay was marked")
	}
	_, err = alloys.MarkFor(dec("900"), alloys.MarkSeries{})
	isError(t, "no marks", err, units.ErrNotPositive)
	_, err = alloys.NewSeries("x", "Au", dec("1001"))
	isError(t, "mark 1001", err, units.ErrOutOfRange)
	if _, err := alloys.NewSeries("x", "Xx", dec("900")); err == nil {
		t.Error("a series of an unknown metal")
	}
	for _, list := range []alloys.List{alloys.ListNone, 99} {
		_, err = alloys.FinenessSeries(list, "Au")
		isError(t, list.String(), err, units.ErrOutOfRange)
	}
	_, err = alloys.FinenessSeries(alloys.ListUnitedKingdom, "Cu")
	isError(t, "copper", err, units.ErrOutOfRange)
	_, err = alloys.FinnishMinimum("Cu")
	isError(t, "copper in Finland", err, units.ErrOutOfRange)
}

// The allowed shortfalls: [StampAct]. The older limits in karat are the
// control: the present ones must be tighter.
func TestReferenceStampAct(t *testing.T) {
	for _, row := range rows(t, "stampact.csv") {
		t.Run(row.Name(), func(t *testing.T) {
			article, sample := alloys.OtherArticle, alloys.WithoutSolder
			if strings.HasPrefix(row.Text("article"), "watchcase") {
				article = alloys.WatchcaseOrFlatware
			}
			if row.Text("solder") == "yes" {
				sample = alloys.WithSolder
			}
			s := must(alloys.StampShortfall(symbols[row.Text("metal")], article, sample))(t)
			if row.Text("check") == "old_shortfall_karat" {
				if old := alloys.Karat(row.Float("expected")).Fineness(); s.InexactFloat64() >= float64(old) {
					t.Errorf("%s is not tighter than the old %v", s, old)
				}
				return
			}
			if err := row.Check(s.InexactFloat64()); err != nil {
				t.Error(err)
			}
		})
	}
}

func TestPropertyMeetsStamp(t *testing.T) {
	fourteen := must(alloys.Karat(14).Fineness().Decimal())(t)
	cases := []struct {
		assay string
		stamp alloys.Stamp
		meets bool
	}{
		{"580.4", alloys.Stamp{Symbol: "Au", Mark: fourteen}, true},
		{"580.3", alloys.Stamp{Symbol: "Au", Mark: fourteen}, false},
		{"576.4", alloys.Stamp{Symbol: "Au", Mark: fourteen, Sample: alloys.WithSolder}, true},
		{"576.4", alloys.Stamp{Symbol: "Au", Mark: fourteen, Sample: alloys.WithSolder,
			Article: alloys.WatchcaseOrFlatware},
			false},
		{"921", alloys.Stamp{Symbol: "Ag", Mark: dec("925")}, true},
		{"920.9999", alloys.Stamp{Symbol: "Ag", Mark: dec("925")}, false},
		{"915", alloys.Stamp{Symbol: "Ag", Mark: dec("925"), Sample: alloys.WithSolder}, true},
		{"1000", alloys.Stamp{Symbol: "Au", Mark: dec("750")}, true},
	}
	for _, c := range cases {
		v := must(alloys.MeetsStamp(dec(c.assay), c.stamp))(t)
		if v.Meets != c.meets || !v.Least.Add(v.Shortfall).Equal(v.Mark) {
			t.Errorf("%s against %+v: %+v", c.assay, c.stamp, v)
		}
		steps, err := alloys.MeetsStampWorking(dec(c.assay), c.stamp)
		recompute(t, steps, err)
	}
	for _, bad := range []alloys.Stamp{{}, {Symbol: "Pt", Mark: dec("950")}, {Symbol: "Au", Mark: dec("0")},
		{Symbol: "Au", Mark: dec("2")}, {Symbol: "Au", Mark: dec("1001")},
		{Symbol: "Au", Mark: dec("750"), Article: 9}, {Symbol: "Au", Mark: dec("750"), Sample: 9}} {
		if v, err := alloys.MeetsStamp(dec("750"), bad); err == nil || v.Meets {
			t.Errorf("%+v was judged: %+v", bad, v)
		}
	}
	if _, err := alloys.MeetsStamp(dec("0"), alloys.Stamp{Symbol: "Au", Mark: dec("750")}); err == nil {
		t.Error("an assay of zero was judged")
	}
}

// Terms of the jewellery guides: [FTC23].
func TestReferenceFTC(t *testing.T) {
	checked(t, "ftc.csv", func(t *testing.T, row testdata.Row) float64 {
		name := row.Text("term")
		if name == "sterling" { // the base that vermeil asks for
			return float64(must(alloys.FTCTerm("vermeil"))(t).LeastBase)
		}
		if name == "coin" {
			t.Skip("not a coating; this package has no word list for solid silver")
		}
		term := must(alloys.FTCTerm(name))(t)
		switch row.Text("check") {
		case "min_fine_gold_um":
			return float64(term.LeastFine / units.Micrometre)
		case "thickness_um":
			// The inches of the guides and summaries are "about"; what is
			// checked is that the term's figure is the same to their digits.
			if name == "gold electroplate" {
				near(t, "7 millionths of an inch", float64(term.LeastFine), row.Float("input")*float64(units.Microinch), 0.02)
				return row.Float("input") * float64(units.Microinch/units.Micrometre)
			}
			return float64(term.LeastFine / units.Micrometre)
		case "min_microinch":
			near(t, name, float64(term.LeastFine), row.Float("expected")*float64(units.Microinch), 0.02)
			return row.Float("expected")
		case "min_karat":
			return float64(term.LeastKarat)
		case "min_mass_fraction":
			return float64(term.LeastShare)
		}
		t.Fatalf("unknown check %s", row.Text("check"))
		return 0
	})
}

func TestPropertyTerms(t *testing.T) {
	vermeil := must(alloys.FTCTerm("vermeil"))(t)
	good := alloys.CoatFacts{Karat: 22, Fine: 2.5 * units.Micrometre, Base: 925}
	if short := must(vermeil.Shortfalls(good))(t); len(short) != 0 {
		t.Errorf("good vermeil: %v", short)
	}
	if short := must(vermeil.Shortfalls(alloys.CoatFacts{}))(t); len(short) != 3 {
		t.Errorf("nothing known: %v", short)
	}
	thin := good
	thin.Fine = 2.49 * units.Micrometre
	if short := must(vermeil.Shortfalls(thin))(t); len(short) != 1 {
		t.Errorf("thin vermeil: %v", short)
	}
	filled := must(alloys.FTCTerm("gold filled"))(t)
	if short := must(filled.Shortfalls(alloys.CoatFacts{Karat: 9, Share: 0.04}))(t); len(short) != 2 {
		t.Errorf("poor gold filled: %v", short)
	}
	for _, v := range badNumbers {
		for _, f := range []alloys.CoatFacts{{Karat: alloys.Karat(v)}, {Fine: units.Length(v)},
			{Share: units.MassFraction(v)}, {Base: alloys.Fineness(v)}} {
			if _, err := vermeil.Shortfalls(f); err == nil {
				t.Errorf("%+v was judged", f)
			}
		}
	}
	_, err := vermeil.Shortfalls(alloys.CoatFacts{Karat: 25})
	isError(t, "25 karat", err, units.ErrOutOfRange)
	_, err = alloys.FTCTerm("gold paint")
	isError(t, "gold paint", err, units.ErrOutOfRange)
}
