package alloys_test

import (
	"math"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
)

// A second way: weigh a deposit out of its parts and assay it.
func TestIndependentDepositByMass(t *testing.T) {
	gold, cobalt, carbon := 997.0*units.Milligram, 3.0*units.Milligram, 11.0*units.Milligram
	d := must(alloys.DepositFromMasses(carbon, alloys.MassPart{Symbol: "Au", Mass: gold}, alloys.MassPart{Symbol: "Co",
		Mass: cobalt}))(t)
	f := must(d.Fineness("Au"))(t)
	near(t, "fineness", float64(f), float64(must(alloys.Assay(gold, gold+cobalt+carbon))(t)), 1e-14)
	k := must(d.Karat())(t)
	near(t, "karat", float64(k), 24*997.0/1011.0, 1e-14)
	if k >= 24 || f >= d.Metals.Fineness("Au") {
		t.Errorf("a deposit with non-metal assays %v, its metals %v", f, d.Metals.Fineness("Au"))
	}
	if none := must(d.Fineness("Ag"))(t); none != 0 {
		t.Errorf("silver %v in a deposit without", none)
	}
	for _, symbol := range []string{"Au", "Co", "Ag"} {
		steps, err := d.FinenessWorking(symbol)
		recompute(t, steps, err)
	}
	steps, err := alloys.AssayWorking(gold, gold+cobalt)
	recompute(t, steps, err)
}

// Built up from volumes: so much metal, so much non-metal, one body.
func TestIndependentNonMetalByVolume(t *testing.T) {
	metals, other := units.Density(19250), units.Density(1500)
	for n := 0.0; n <= 0.05; n += 0.005 {
		body := 1 / ((1-n)/float64(metals) + n/float64(other))
		got := must(alloys.NonMetalFromDensity(units.Density(body), metals, other))(t)
		if math.Abs(float64(got)-n) > 1e-13 {
			t.Errorf("non-metal %v back as %v", n, got)
		}
		if n > 0 {
			steps, err := alloys.NonMetalFromDensityWorking(units.Density(body), metals, other)
			recompute(t, steps, err)
		}
	}
}

func TestPropertyPureDeposit(t *testing.T) {
	d := alloys.DepositComposition{Metals: parse(t, "Au 1000")}
	if k := must(d.Karat())(t); k != 24 {
		t.Errorf("pure gold is %v", k)
	}
	if f := must(alloys.Assay(1, 1))(t); f != 1000 {
		t.Errorf("all of it is %v", f)
	}
}

func TestBadAssay(t *testing.T) {
	for _, v := range append(badNumbers, 0) {
		if _, err := alloys.Assay(units.Mass(v), 1); err == nil {
			t.Errorf("fine metal %v", v)
		}
		if _, err := alloys.Assay(1, units.Mass(v)); err == nil {
			t.Errorf("sample %v", v)
		}
		if _, err := alloys.NonMetalFromDensity(units.Density(v), 19300, 1500); err == nil {
			t.Errorf("deposit density %v", v)
		}
		if _, err := alloys.NonMetalFromDensity(17000, units.Density(v), 1500); err == nil {
			t.Errorf("metal density %v", v)
		}
		if _, err := alloys.NonMetalFromDensity(17000, 19300, units.Density(v)); err == nil {
			t.Errorf("non-metal density %v", v)
		}
	}
	_, err := alloys.Assay(2, 1)
	isError(t, "more than the sample", err, units.ErrInconsistent)
	_, err = alloys.NonMetalFromDensity(20000, 19300, 1500)
	isError(t, "denser than its metals", err, units.ErrOutOfRange)
	for _, v := range append(badNumbers, 1, 1.1) {
		d := alloys.DepositComposition{Metals: parse(t, "Au 1000"), NonMetal: units.MassFraction(v)}
		if f, err := d.Fineness("Au"); err == nil || f != 0 {
			t.Errorf("non-metal %v gave %v", v, f)
		}
	}
	for _, v := range badNumbers {
		if _, err := alloys.DepositFromMasses(units.Mass(v), alloys.MassPart{Symbol: "Au", Mass: 1}); err == nil {
			t.Errorf("mass of non-metal %v", v)
		}
	}
	_, err = alloys.DepositComposition{}.Fineness("Au")
	isError(t, "zero Deposit", err, units.ErrNotPositive)
	_, err = alloys.DepositComposition{}.Karat()
	isError(t, "zero Deposit", err, units.ErrNotPositive)
	_, err = alloys.DepositFromMasses(1)
	isError(t, "no metals", err, units.ErrNotPositive)
	_, err = alloys.DepositFromMasses(math.MaxFloat64, alloys.MassPart{Symbol: "Au", Mass: math.MaxFloat64})
	isError(t, "overflow", err, units.ErrNotFinite)
	_, err = alloys.DepositFromMasses(1e300, alloys.MassPart{Symbol: "Au", Mass: 1e-300})
	isError(t, "all non-metal", err, units.ErrOutOfRange)
}
