package traveller_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/laydown/alloys"
	"example.com/laydown/plating"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// TestIndependentEnergy adds up volts, amps and minutes by hand: the plating
// current at the top of its volts, the cleaning current at the top of its own,
// through the rectifier, and the heating.
func TestIndependentEnergy(t *testing.T) {
	j := shipped(t, "hands")
	s := made(t, j)
	joules := 0.0
	for i, k := range s.Coats {
		c := &s.Cards[i]
		switch {
		case k >= 0:
			r := &s.Result.Layers[k].Result
			joules += []float64{6, 3}[k] * float64(r.Current) * float64(r.Time)
		case c.Set > 0:
			joules += 6 * float64(c.Amps) * float64(c.Time.Typical) // both at up to 6 V
		}
	}
	kwh := joules/0.8/3.6e6 + 0.6
	found := false
	for _, l := range s.Quote.Lines {
		if l.Kind.String() == "electricity" {
			found = true
			if got, _ := l.Amount.Float64(); math.Abs(got-kwh*0.31) > 0.011 {
				t.Errorf("electricity %v, by hand %v", got, kwh*0.31)
			}
		}
	}
	if !found {
		t.Error("no electricity")
	}
	// With dear current the sum shows in every digit.
	p := *j.Price
	p.Electricity.PerKilowattHour, p.Margin.OfPrice = p.Electricity.PerKilowattHour.Shift(5),
		p.Margin.OfPrice.Sub(p.Margin.OfPrice)
	j.Price = &p
	s = made(t, j)
	for _, l := range s.Quote.Lines {
		if l.Kind.String() == "electricity" {
			if got, _ := l.Amount.Float64(); math.Abs(got-kwh*31000) > 31 { // three places of a kilowatt hour, upwards
				t.Errorf("electricity %v, by hand %v", got, kwh*31000)
			}
		}
	}
}

// TestOneBathTwice: two stays in one bath are one bath afterwards, with the
// charge and the metal of both.
func TestOneBathTwice(t *testing.T) {
	j := shipped(t, "hands")
	j.Finish, j.Steps = sequence.FinishUnknown, nil
	l := j.Layers[1]
	l.CountBelow = false
	j.Layers = []traveller.Layer{l, l}
	s := made(t, j)
	if len(s.Baths) != 1 {
		t.Fatalf("%d baths", len(s.Baths))
	}
	var charge units.Charge
	var metal units.Mass
	for i := range s.Result.Layers {
		charge += s.Result.Layers[i].Result.Charge
		metal += s.Result.Layers[i].Result.FineMass
	}
	near(t, "charge", float64(s.Baths[0].Charge), float64(charge), 1e-12)
	near(t, "metal", float64(s.Baths[0].Coat), float64(metal), 1e-12)
	j.Layers[0].Bath.Name, j.Layers[1].Bath.Name = "", ""
	if s := made(t, j); len(s.Baths) != 2 {
		t.Errorf("two baths without names are taken for %d", len(s.Baths))
	}
}

// TestStepsCarry: what a step says of waiting reaches the review, and one load
// between returns is the rule when none is said.
func TestStepsCarry(t *testing.T) {
	j := own(t)
	for i := range j.Steps {
		if j.Steps[i].Layer == 1 {
			j.Steps[i].Tank.Wait = 5 * units.Minute
		}
	}
	found := false
	s := made(t, j)
	for _, f := range s.Findings {
		found = found || f.Code == sequence.CodePassiveWait
	}
	if !found {
		t.Errorf("stainless waits five minutes behind its strike: %v", s.Findings)
	}
	j = shipped(t, "hands")
	water := *j.Rinse
	water.Loads = 0
	j.Rinse = &water
	none := made(t, j)
	water.Loads = 1
	if one := made(t, j); none.Rinsing.Metals[1].Back != one.Rinsing.Metals[1].Back {
		t.Errorf("%v without a number of loads, %v with one", none.Rinsing.Metals[1].Back, one.Rinsing.Metals[1].Back)
	}
	// Load by load, in grams, until every round is like the last.
	water.Loads = 7
	m := made(t, j).Rinsing.Metals[1]
	bath, d, tank := float64(j.Layers[1].Bath.Content), float64(made(t, j).Rinsing.Carried.High),
		float64(water.DragOutTank)
	grams, back, full, poured := 0.0, 0.0, 0.0, math.Min(tank, 7*float64(water.Evaporation))
	for range 3000 {
		for range 7 {
			grams += bath * d
			grams -= grams * d / (tank + d)
		}
		full = grams / tank
		back = full * poured
		grams -= back
	}
	near(t, "poured back", float64(m.Poured), poured, 1e-12)
	near(t, "share that comes back", float64(m.Back), back/(7*bath*d), 1e-9)
	near(t, "last water behind the drag-out tank", float64(m.LastWater), full/float64(water.Ratio), 1e-9)
	water.DragOutTank, water.Evaporation, water.Loads = 0, 0, 0
	m = made(t, j).Rinsing.Metals[1]
	near(t, "last water without one", float64(m.LastWater), bath/float64(water.Ratio), 1e-12)
	if m.Poured != 0 || m.Loads != 0 || m.Back != 0 {
		t.Errorf("nothing to pour from: %+v", m)
	}
	// The hot bath makes room for what clings to its load, the cold one for nothing.
	water.DragOutTank, water.Evaporation, water.Loads = 3*units.Litre, 40*units.Millilitre, 10
	cold, none2 := j, units.Volume(0)
	cold.Layers = slices.Clone(j.Layers)
	cold.Layers[0].Evaporation = &none2
	list := made(t, cold).Rinsing.Metals
	if list[0].Back != 0 || !list[0].Full || list[0].Lost != list[0].High || list[1].Full ||
		list[1].Evaporates != water.Evaporation || list[1].Back < 0.9 {
		t.Errorf("a strike from which nothing evaporates: %+v", list)
	}
	minus := -units.Millilitre
	cold.Layers[0].Evaporation = &minus
	var v *units.ValueError
	if _, err := traveller.Make(cold); !errors.As(err, &v) || !strings.Contains(v.Field,
		"evaporation of acid gold strike") {
		t.Errorf("%v", err)
	}
	// What the shop weighed is not called printed.
	water.Shape, water.Measured, water.Drain, water.Thickness = 0, 3*units.Millilitre, 0, 0
	if c := made(t, j).Rinsing.Carried; c.Seen != origin.Measured || c.Seen.String() != "measured" || c.Low != c.High {
		t.Errorf("%+v", c)
	}
	// A promise above what is timed: the piece is judged by what the last coat comes to.
	j = shipped(t, "hands")
	j.Layers[1].Promise, j.Layers[1].Time, j.Layers[1].CountBelow = 0, 10*units.Minute, false
	if s := made(t, j); s.Stop() || sequence.Worst(s.Findings) > plating.SeverityCaution {
		t.Errorf("a timed finish: %v", s.Findings)
	}
	// Another metal in the next tank is no onward bath.
	j = shipped(t, "bezels")
	s = made(t, j)
	for _, m := range s.Rinsing.Metals {
		if m.Onward {
			t.Errorf("%s goes onward", m.Bath)
		}
	}
}

// TestGasOfTheLowEnd: hydrogen is reckoned with the lowest efficiency.
func TestGasOfTheLowEnd(t *testing.T) {
	j := shipped(t, "hands")
	j.Finish, j.Price, j.Rinse = sequence.FinishUnknown, nil, nil
	s := made(t, j)
	r := &s.Result.Layers[0].Result
	want := (1 - 0.08) * float64(r.Current) * 5 / 3 / (2 * 96485.33212) * 24.465e-3 // at the top of the window, 5 A/dm²
	if s.Gas.Tank != 0 {
		t.Fatalf("most hydrogen at coat %d", s.Gas.Tank+1)
	}
	near(t, "hydrogen of the strike", float64(s.Gas.Flow.Hydrogen), want, 1e-4)
	// In a sequence of the two coats alone it is the same.
	j = shipped(t, "hands")
	j.Price, j.Rinse, j.Steps = nil, nil, []traveller.Step{{Layer: 1}, {Layer: 2}}
	s = made(t, j)
	if len(s.Cards) != 2 || s.Gas == nil || s.Gas.Tank != 0 {
		t.Fatalf("%d cards, most hydrogen %+v", len(s.Cards), s.Gas)
	}
	near(t, "hydrogen of the strike in a sequence", float64(s.Gas.Flow.Hydrogen), want, 1e-4)
	if plating.DefaultDrawLimit != 0.1 {
		t.Error("the draw limit is not that of the documents")
	}
}

// TestPropertyWorking: the shown calculation of each shipped job can be computed
// again from its own formulas, and its last steps are the figures of the sheet.
func TestPropertyWorking(t *testing.T) {
	for _, name := range []string{"hands", "bezels", "finial"} {
		s := made(t, shipped(t, name))
		list, err := s.Working()
		if err != nil {
			t.Fatal(err)
		}
		steps := 0
		var told []string
		for _, c := range list {
			told = append(told, c.Title)
			for i := range c.Steps {
				steps++
				again, err := c.Steps[i].Recompute()
				if want := c.Steps[i].Result.SI; err != nil || math.Abs(again-want) > 1e-9*math.Abs(want) {
					t.Errorf("%s, %s: %v, shown %v, %v", name, c.Title, again, want, err)
				}
			}
		}
		if steps < 15 || !strings.HasPrefix(strings.Join(told, "; "), "area of the load; ") ||
			!strings.Contains(strings.Join(told, "; "), "drag-out of the load; water of one counterflow rinse") {
			t.Errorf("%s: %d steps in %q", name, steps, told)
		}
		for i := range s.Baths {
			if f := s.Baths[i].Feed; f != nil && f.SaltMass > 0 && !slices.Contains(told, "feeding "+s.Baths[i].Bath) {
				t.Errorf("%s: nothing on feeding %s", name, s.Baths[i].Bath)
			}
		}
	}
}

// TestBadRinse: every figure of the rinsing is looked at, also one that the others
// make idle.
func TestBadRinse(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*traveller.Rinse){
		"ratio of rinsing -5":             func(r *traveller.Rinse) { r.Ratio = -5 },
		"ratio of rinsing NaN":            func(r *traveller.Rinse) { r.Ratio = units.Ratio(nan) },
		"volume of the drag-out tank -1":  func(r *traveller.Rinse) { r.DragOutTank = -1 },
		"volume of the drag-out tank NaN": func(r *traveller.Rinse) { r.DragOutTank = units.Volume(nan) },
		"loads between returns -7":        func(r *traveller.Rinse) { r.Loads = -7 },
		"rinse stages -3":                 func(r *traveller.Rinse) { r.Ratio, r.Stages = 0, -3 },
		"evaporation in the time of a load NaN": func(r *traveller.Rinse) {
			r.DragOutTank, r.Evaporation = 0,
				units.Volume(nan)
		},
		"time of draining NaN": func(r *traveller.Rinse) {
			r.Shape, r.Measured, r.Drain = 0, 1e-6,
				units.Duration(nan)
		},
		"thickness of the solution 77": func(r *traveller.Rinse) { r.Shape, r.Measured, r.Thickness = 0, 1e-6, 77 },
	} {
		j := shipped(t, "hands")
		water := *j.Rinse
		change(&water)
		j.Rinse = &water
		var v *units.ValueError
		if _, err := traveller.Make(j); !errors.As(err, &v) || !strings.HasPrefix(v.Field+" "+v.Value, name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestOwnCosts: what a quote holds already is added to, and nothing is added to a
// number that nobody could write out.
func TestOwnCosts(t *testing.T) {
	j := shipped(t, "hands")
	was := made(t, j).Quote
	own := *j.Price
	own.Deposit = []price.Metal{{Symbol: "Au", Mass: alloys.Weighed{Amount: decimal.New(1, 0), Unit: alloys.PerGram}}}
	j.Price = &own
	now := made(t, j).Quote
	count := func(q *price.Quote) (n int) {
		for _, l := range q.Lines {
			if l.Kind == price.KindDeposit {
				n++
			}
		}
		return n
	}
	if count(now) != count(was)+1 || !now.Total.GreaterThan(was.Total.Add(decimal.New(100, 0))) {
		t.Errorf("a gram of gold more: %s, before %s", now.Total, was.Total)
	}
	own.Electricity.KilowattHours = decimal.New(1, 2_000_000_000)
	if _, err := traveller.Make(j); err == nil || !strings.Contains(err.Error(), "energy") {
		t.Errorf("a number without end: %v", err)
	}
}
