package alloys_test

import (
	"errors"
	"math"
	"math/big"
	"math/rand"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func karats(k float64) units.MassFraction { return alloys.Karat(k).MassFraction() }

// Printed examples of raising, lowering and holding: [RaisingGold].
func TestReferenceKarating(t *testing.T) {
	checked(t, "karating.csv", func(t *testing.T, row testdata.Row) float64 {
		unit := map[string]units.Mass{"g": units.Gram, "dwt": units.Pennyweight}[row.Text("unit")]
		stock := units.Mass(row.Float("mass")) * unit
		from := karats(row.Float("karat_from"))
		switch row.Text("check") {
		case "raise_fine_g", "raise_fine_dwt":
			return float64(must(alloys.Raise(stock, from, karats(row.Float("karat_to"))))(t).Add / unit)
		case "raise_total_g":
			return float64(must(alloys.Raise(stock, from, karats(row.Float("karat_to"))))(t).Total / unit)
		case "lower_alloy_g", "lower_alloy_dwt":
			return float64(must(alloys.Lower(stock, from, karats(row.Float("karat_to"))))(t).Add / unit)
		case "lower_total_g", "lower_total_dwt":
			return float64(must(alloys.Lower(stock, from, karats(row.Float("karat_to"))))(t).Total / unit)
		case "fine_g":
			return float64(must(alloys.Lower(stock, from, from))(t).Fine / unit)
		}
		t.Fatalf("unknown check %s", row.Text("check"))
		return 0
	})
}

// Alloy per unit of mass, with the misprinted 24 to 9: [LoweringFactors].
func TestReferenceLoweringFactors(t *testing.T) {
	checked(t, "loweringfactors.csv", func(t *testing.T, row testdata.Row) float64 {
		return float64(must(alloys.Lower(units.Gram, karats(row.Float("karat_from")),
			karats(row.Float("karat_to"))))(t).Add / units.Gram)
	})
}

// Composing 18 karat of its metals, and from fine gold to be used up: [Composed].
func TestReferenceComposed(t *testing.T) {
	names := map[string]string{"au": "Au", "ag": "Ag", "cu": "Cu"}
	checked(t, "composed.csv", func(t *testing.T, row testdata.Row) float64 {
		mass := units.Mass(row.Float("mass_g")) * units.Gram
		var a alloys.Additions
		if row.Text("basis") == "fine" {
			a = must(alloys.ToComposition(alloys.Lot{Mass: mass, Composition: parse(t, "Au 1000")}, auAgCu(t, row), 0))(t)
		} else {
			a = must(alloys.ToComposition(alloys.Lot{}, auAgCu(t, row), mass))(t)
		}
		if row.Text("check") == "total_g" {
			return float64(a.Total / units.Gram)
		}
		for _, p := range a.Add {
			if p.Symbol == names[row.Text("element")] {
				return float64(p.Mass / units.Gram)
			}
		}
		t.Fatal("no such element")
		return 0
	})
}

// Whole karats in exact fractions, 24ths of a hundred units of mass.
func TestIndependentKaratingByFractions(t *testing.T) {
	for from := int64(1); from <= 24; from++ {
		for to := int64(1); to <= 24; to++ {
			switch {
			case to < from: // a = 100 (from - to)/to
				want, _ := big.NewRat(100*(from-to), to).Float64()
				near(t, "lower", float64(must(alloys.Lower(100, karats(float64(from)), karats(float64(to))))(t).Add), want,
					1e-13)
			case to > from && to < 24: // a = 100 (to - from)/(24 - to)
				want, _ := big.NewRat(100*(to-from), 24-to).Float64()
				near(t, "raise", float64(must(alloys.Raise(100, karats(float64(from)), karats(float64(to))))(t).Add), want,
					1e-13)
			}
			if from+1 < to { // two stocks to the karat one above the lower
				want, _ := big.NewRat(100, to-from).Float64()
				b := must(alloys.BlendTo(100, karats(float64(from)), karats(float64(to)), karats(float64(from+1))))(t)
				near(t, "blend", float64(b.High), want, 1e-12)
				near(t, "blend", float64(b.Low+b.High), 100, 1e-13)
			}
		}
	}
}

func TestPropertyRaiseThenLower(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for i := 0; i < 500; i++ {
		from := units.MassFraction(0.05 + 0.9*r.Float64())
		to := from + units.MassFraction(r.Float64())*(0.99-from)
		stock := units.Mass(1+99*r.Float64()) * units.Gram
		up := must(alloys.Raise(stock, from, to))(t)
		near(t, "gold after raising", float64(up.Fine), float64(up.Total)*float64(to), 1e-12)
		near(t, "gold in", float64(up.Fine), float64(stock)*float64(from)+float64(up.Add), 1e-12)
		down := must(alloys.Lower(up.Total, to, from))(t)
		near(t, "gold kept", float64(down.Fine), float64(up.Fine), 1e-12)
		near(t, "share again", float64(down.Fine)/float64(down.Total), float64(from), 1e-12)
		steps, err := alloys.RaiseWorking(stock, from, to)
		recompute(t, steps, err)
		steps, err = alloys.LowerWorking(up.Total, to, from)
		recompute(t, steps, err)
		steps, err = alloys.BlendToWorking(stock, from, 1, to)
		recompute(t, steps, err)
	}
	if k := must(alloys.Raise(1, 0.75, 0.75))(t); k.Add != 0 || k.Total != 1 {
		t.Errorf("raising to the same: %+v", k)
	}
}

func TestPropertyBlendConserves(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	for i := 0; i < 300; i++ {
		lots := make([]alloys.Lot, 1+r.Intn(4))
		fine := map[string]float64{}
		var mass float64
		for k := range lots {
			lots[k] = alloys.Lot{Mass: units.Mass(r.Float64()+1e-3) * units.Gram, Composition: random(t, r)}
			mass += float64(lots[k].Mass)
			for _, p := range lots[k].Composition.Parts() {
				fine[p.Symbol] += float64(lots[k].Of(p.Symbol))
			}
		}
		melt := must(alloys.Blend(lots...))(t)
		near(t, "mass", float64(melt.Mass), mass, 1e-13)
		for symbol, m := range fine {
			near(t, symbol, float64(melt.Of(symbol)), m, 1e-12)
		}
		if len(melt.Composition.Parts()) != len(fine) {
			t.Errorf("%v has lost or won a metal", melt.Composition)
		}
		if back := parse(t, string(must(melt.Composition.MarshalText())(t))); !back.Equal(melt.Composition) {
			t.Errorf("%v does not read back", melt.Composition)
		}
		steps, err := alloys.BlendWorking(lots...)
		recompute(t, steps, err)
	}
}

// Melting the stock with the additions must give the target.
func TestPropertyToCompositionReachesTarget(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	target := parse(t, "Au 750, Ag 125, Cu 100, Zn 25")
	for i := 0; i < 300; i++ {
		a, b := r.Float64(), r.Float64()
		stock := alloys.Lot{Mass: units.Mass(1+r.Float64()) * units.Gram, Composition: must(alloys.FromMasses(
			alloys.MassPart{Symbol: "Au", Mass: units.Mass(a)}, alloys.MassPart{Symbol: "Ag", Mass: units.Mass(b)},
			alloys.MassPart{Symbol: "Cu", Mass: 0.1}))(t)}
		least := must(alloys.ToComposition(stock, target, 0))(t)
		for _, total := range []units.Mass{0, least.Total, least.Total * 1.5} {
			add := must(alloys.ToComposition(stock, target, total))(t)
			lots := []alloys.Lot{stock}
			for _, p := range add.Add {
				if p.Mass < 0 {
					t.Fatalf("negative addition %+v", add)
				}
				pure := must(alloys.NewComposition(alloys.ElementShare{Symbol: p.Symbol, Share: 1}))(t)
				lots = append(lots, alloys.Lot{Mass: p.Mass, Composition: pure})
			}
			melt := must(alloys.Blend(lots...))(t)
			near(t, "total", float64(melt.Mass), float64(add.Total), 1e-9)
			for _, p := range target.Parts() {
				near(t, p.Symbol, float64(melt.Composition.Share(p.Symbol)), float64(p.Share), 1e-9)
			}
			if (add.Limiting == "") != (total > least.Total) {
				t.Errorf("limiting %q with total %v of least %v", add.Limiting, total, least.Total)
			}
			steps, err := alloys.ToCompositionWorking(stock, target, total)
			recompute(t, steps, err)
		}
		_, err := alloys.ToComposition(stock, target, least.Total*0.99)
		var much *alloys.TooMuchError
		if !errors.As(err, &much) || much.Symbol != least.Limiting || much.Have <= much.Most {
			t.Errorf("too small a melt: %v", err)
		}
	}
}

func TestBadKarating(t *testing.T) {
	for _, v := range append(badNumbers, 1.5) {
		w := units.MassFraction(v)
		for i, err := range []error{
			second(alloys.Raise(1, w, 0.9)), second(alloys.Raise(1, 0.5, w)), second(alloys.Lower(1, w, 0.5)),
			second(alloys.Lower(1, 0.9, w)),
			second(alloys.BlendTo(1, w, 0.9, 0.6)), second(alloys.BlendTo(1, 0.5, w, 0.6)), second(alloys.BlendTo(1, 0.5, 0.9,
				w)),
		} {
			if err == nil {
				t.Errorf("share %v was accepted by call %d", v, i)
			}
		}
	}
	gold := parse(t, "Au 1000")
	for _, v := range append(badNumbers, 0) {
		m := units.Mass(v)
		for i, err := range []error{
			second(alloys.Raise(m, 0.5, 0.6)), second(alloys.Lower(m, 0.6, 0.5)), second(alloys.BlendTo(m, 0.5, 0.9, 0.6)),
			second(alloys.Blend(alloys.Lot{Mass: m, Composition: gold})), second(alloys.ToComposition(alloys.Lot{Mass: m,
				Composition: gold}, gold, 0)),
			second(alloys.ToComposition(alloys.Lot{}, gold, m)),
		} {
			if err == nil {
				t.Errorf("mass %v was accepted by call %d", v, i)
			}
		}
	}
	isError(t, "raise to fine", second(alloys.Raise(1, 0.5, 1)), units.ErrOutOfRange)
	isError(t, "raise down", second(alloys.Raise(1, 0.6, 0.5)), units.ErrInconsistent)
	isError(t, "lower up", second(alloys.Lower(1, 0.5, 0.6)), units.ErrInconsistent)
	isError(t, "lower to nothing", second(alloys.Lower(1, 0.5, 0)), units.ErrNotPositive)
	isError(t, "overflow", second(alloys.Lower(1e300, 1, 1e-300)), units.ErrNotFinite)
	isError(t, "stocks exchanged", second(alloys.BlendTo(1, 0.9, 0.5, 0.6)), units.ErrInconsistent)
	isError(t, "outside the stocks", second(alloys.BlendTo(1, 0.5, 0.6, 0.7)), units.ErrInconsistent)
	isError(t, "no lots", second(alloys.Blend()), units.ErrNotPositive)
	isError(t, "lot of nothing known", second(alloys.Blend(alloys.Lot{Mass: 1})), units.ErrNotPositive)
	isError(t, "sum of lots", second(alloys.Blend(alloys.Lot{Mass: math.MaxFloat64, Composition: gold},
		alloys.Lot{Mass: math.MaxFloat64, Composition: gold})), units.ErrNotFinite)
	isError(t, "no target", second(alloys.ToComposition(alloys.Lot{}, alloys.Composition{}, 1)), units.ErrNotPositive)
	isError(t, "silver unwanted",
		second(alloys.ToComposition(alloys.Lot{Mass: 1, Composition: parse(t, "Au 750, Ag 250")},
			parse(t, "Au 750, Cu 250"), 0)), alloys.ErrTooMuch)
	speck := must(alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 1}, alloys.ElementShare{Symbol: "Cu",
		Share: 1e-300}))(t)
	isError(t, "overflow", second(alloys.ToComposition(alloys.Lot{Mass: 1e300, Composition: parse(t, "Cu 1000")}, speck,
		0)), units.ErrNotFinite)
}

func second[T any](_ T, err error) error { return err }
