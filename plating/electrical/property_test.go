package electrical_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
)

// TestPropertyMeanArea: between the geometric and the arithmetic mean, the same
// both ways round, smooth through equal areas.
func TestPropertyMeanArea(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	for range 2000 {
		a := math.Exp(rng.NormFloat64() * 3)
		b := a * math.Exp(rng.NormFloat64()*math.Pow(10, -8*rng.Float64()))
		m := float64(must(electrical.MeanArea(units.Area(a), units.Area(b))))
		if m < math.Sqrt(a*b)*(1-1e-14) || m > (a+b)/2*(1+1e-14) {
			t.Errorf("%g and %g: %g", a, b, m)
		}
		if n := float64(must(electrical.MeanArea(units.Area(b), units.Area(a)))); n != m {
			t.Errorf("not the same both ways: %g, %g", m, n)
		}
	}
	near(t, "equal", float64(must(electrical.MeanArea(2, 2))), 2, 0)
	near(t, "far apart", float64(must(electrical.MeanArea(1e300, 1e-300))), 1e300/(600*math.Ln10), 1e-12)
}

// TestPropertyVoltage: parts add up; a window in gives a window out; it grows
// with current and gap, falls with conductivity and area.
func TestPropertyVoltage(t *testing.T) {
	c := nickelCell()
	d := must(c.Voltage(27 * units.Ampere))
	near(t, "low", float64(d.Total.Low), float64(d.Reversible.Low+d.Cathode.Low+d.Anode.Low+d.Solution.Low+d.Leads.Low),
		1e-15)
	near(t, "high", float64(d.Total.High), float64(d.Reversible.High+d.Cathode.High+d.Anode.High+d.Solution.High+
		d.Leads.High), 1e-15)
	near(t, "leads", float64(d.Total.High-d.Electrodes.High), 27*0.005, 1e-12)
	if !(d.Total.Low < d.Total.High) || !d.Total.Has(d.Total.Low) || d.Total.Has(d.Total.High+1) {
		t.Errorf("window %v", d.Total)
	}
	more := func(name string, change func(*electrical.Cell)) {
		e := nickelCell()
		change(&e)
		if v := must(e.Voltage(27 * units.Ampere)); !(v.Total.High > d.Total.High) {
			t.Errorf("%s: %v, was %v", name, v.Total, d.Total)
		}
	}
	more("wider", func(e *electrical.Cell) { e.Gap.High *= 2 })
	more("thinner", func(e *electrical.Cell) { e.Conductivity.Low /= 2 })
	more("smaller anodes", func(e *electrical.Cell) { e.Anode /= 2 })
	more("smaller load", func(e *electrical.Cell) { e.Cathode /= 2 })
	more("reversible", func(e *electrical.Cell) { e.Reversible.High = 1 })
	more("leads", func(e *electrical.Cell) { e.Leads *= 2 })
	more("cathode", func(e *electrical.Cell) { e.CathodeOverpotential.High = 1 })
	more("anode", func(e *electrical.Cell) { e.AnodeOverpotential.High = 1 })

	c.Gap, c.Conductivity = electrical.Exactly(15*units.Centimetre), electrical.Exactly(8*units.SiemensPerMetre)
	c.CathodeOverpotential, c.AnodeOverpotential = electrical.Exactly[units.Voltage](0.4),
		electrical.Exactly[units.Voltage](0.2)
	if v := must(c.Voltage(27 * units.Ampere)); v.Total.Low != v.Total.High {
		t.Errorf("exact figures give a window: %v", v.Total)
	}
	none := must(c.Voltage(0))
	near(t, "no current", float64(none.Total.High), 0.6, 1e-12)
}

// TestPropertyHeat: never more than the rectifier gives; all of it with soluble
// anodes; less by 1.48 V where only water is split.
func TestPropertyHeat(t *testing.T) {
	c := nickelCell()
	c.Reversible = electrical.Interval[units.Voltage]{Low: 1.5, High: 2}
	i := 27 * units.Ampere
	p, d := must(c.Power(i)), must(c.Voltage(i))
	for _, eff := range []units.Efficiency{0, 0.3, 0.95, 1} {
		for _, s := range []units.Ratio{0, 0.5, 1} {
			h := must(c.Heat(i, eff, s))
			if h.Low > h.High || h.High > p.High || h.Low < 0 {
				t.Errorf("heat %v of %v", h, p)
			}
			g := math.Min(1-float64(eff), 1-float64(s))
			near(t, "low", float64(h.Low), 27*(float64(d.Electrodes.Low)-g*1.4812), 1e-4)
		}
	}
	c.Reversible = electrical.Exactly[units.Voltage](-5)
	if h := must(c.Heat(i, 0, 0)); h.Low != 0 || h.High < 0 {
		t.Errorf("heat below zero: %v", h)
	}
	if p := must(c.Power(i)); p.Low != 0 {
		t.Errorf("power below zero: %v", p)
	}
	near(t, "mains", float64(must(electrical.Mains(85, 0.85))), 100, 1e-12)
}

// TestPropertyTank: every direction undoes the other, with and without loss.
func TestPropertyTank(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 2000 {
		k := tank()
		k.Loss = electrical.HeatLoss(math.Pow(10, -9+11*rng.Float64()))
		if rng.IntN(4) == 0 {
			k.Loss = 0
		}
		start, target := units.Celsius(15+40*rng.Float64()), units.Celsius(15+60*rng.Float64())
		d := units.Duration(60 + 7000*rng.Float64())
		own := units.Power(100 * rng.Float64())
		p := must(k.Reach(start, target, d, own))
		near(t, "reach, after", float64(must(k.After(start, p+own, d))), float64(target), 1e-12)
		way := math.Abs(float64(target - start))
		back, err := k.TimeTo(start, target, p+own)
		left := float64(p+own) - float64(k.Loss)*float64(target-k.Room)
		if err == nil && math.Abs(left) > 1e-3*(math.Abs(float64(p))+float64(k.Loss)*100+1) && way > 0.1 {
			near(t, "time", float64(back), float64(d), 1e-6)
		}
		if hold := must(k.Hold(target, own)); k.Loss > 1e-6 {
			near(t, "hold is steady", float64(must(k.Steady(hold+own))), float64(target), 1e-9)
			near(t, "hold stays", float64(must(k.After(target, hold+own, d))), float64(target), 1e-9)
		}
	}
	k := tank()
	cooled := must(k.After(units.Celsius(55), 0, units.Hour))
	near(t, "loss from cooling", float64(must(k.LossFromCooling(units.Celsius(55), cooled, units.Hour))), float64(k.Loss),
		1e-9)
	if got := must(k.TimeTo(units.Celsius(30), units.Celsius(30), 0)); got != 0 {
		t.Errorf("no way takes %v", got)
	}
	near(t, "no loss", float64(must(electrical.HeatedTank{Mass: 1, SpecificHeat: 4186, Room: 293.15}.TimeTo(293.15,
		294.15, 4186))), 1, 1e-12)
}

// TestPropertyEvaporation: none into saturated air at the same temperature,
// none when the air is wetter, more when warmer, drier, windier, in proportion
// to area and time.
func TestPropertyEvaporation(t *testing.T) {
	base := must(surface().Evaporation(units.Hour))
	if !(base.Window.Low < base.Mass && base.Mass < base.Window.High && base.Heat.Low < base.Power &&
		base.Power < base.Heat.High) {
		t.Errorf("%+v", base)
	}
	near(t, "litres", float64(base.Litres.High)*1000, float64(base.Window.High), 1e-12)
	near(t, "heat", float64(base.Power)*3600, float64(base.Mass)*float64(must(electrical.LatentHeat(units.Celsius(55)))),
		1e-12)
	change := func(f func(*electrical.OpenTop)) electrical.Evaporated {
		s := surface()
		f(&s)
		return must(s.Evaporation(units.Hour))
	}
	for name, e := range map[string]electrical.Evaporated{
		"warmer":      change(func(s *electrical.OpenTop) { s.Water = units.Celsius(56) }),
		"drier":       change(func(s *electrical.OpenTop) { s.Humidity = 0.3 }),
		"windier":     change(func(s *electrical.OpenTop) { s.Draught = 0.5 }),
		"colder room": change(func(s *electrical.OpenTop) { s.Air = units.Celsius(10) }),
	} {
		if !(e.Mass > base.Mass) {
			t.Errorf("%s: %v, was %v", name, e.Mass, base.Mass)
		}
	}
	near(t, "area", float64(change(func(s *electrical.OpenTop) { s.Area *= 3 }).Mass), 3*float64(base.Mass), 1e-12)
	near(t, "time", float64(must(surface().Evaporation(10*units.Hour)).Mass), 10*float64(base.Mass), 1e-12)
	if e := change(func(s *electrical.OpenTop) { s.Water, s.Humidity = s.Air, 1 }); e.Mass != 0 {
		t.Errorf("into saturated air: %v", e.Mass)
	}
	if e := change(func(s *electrical.OpenTop) { s.Water, s.Humidity = units.Celsius(5), 1 }); e.Mass != 0 {
		t.Errorf("a cold bath: %v", e.Mass)
	}
	if v, err := electrical.LatentHeat(units.Celsius(120)); v <= 0 || !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("latent heat at 120 °C: %v, %v", v, err)
	}
}

// TestPropertyVent: in proportion to current and mixing; none at 100 %.
func TestPropertyVent(t *testing.T) {
	base := must(vent().Air())
	v := vent()
	v.Current *= 2
	v.Mixing *= 3
	near(t, "six times", float64(must(v.Air()).Air), 6*float64(base.Air), 1e-12)
	v.Efficiency = 1
	if a := must(v.Air()); a.Air != 0 || a.Hydrogen != 0 {
		t.Errorf("at 100 %%: %+v", a)
	}
	v.Efficiency = 0
	if !(must(v.Air()).Air > base.Air) {
		t.Error("no more air for no metal")
	}
}

// TestPropertyAnode: turns round and adds up.
func TestPropertyAnode(t *testing.T) {
	a := must(electrical.AnodeArea(9*units.SquareDecimetre, 2))
	near(t, "area", a.In(units.SquareDecimetre), 18, 1e-12)
	near(t, "current density", must(electrical.AnodeCurrentDensity(27, a)).In(units.AmperePerSquareDecimetre), 1.5, 1e-12)
	eq := 1.0947 * units.GramPerAmpereHour
	whole := must(electrical.AnodeUsed(eq, units.AmpereHour, 1, 1))
	near(t, "used", whole.In(units.Gram), 1.0947, 1e-12)
	near(t, "part", float64(must(electrical.AnodeUsed(eq, units.AmpereHour, 0.6, 0.95))), 0.57*float64(whole), 1e-12)
}

// TestPropertyWorking recomputes every shown calculation.
func TestPropertyWorking(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	for range 300 {
		u := func() float64 { return 0.05 + rng.Float64() }
		recompute(t, must(electrical.AnodeWorking(units.Area(u()), units.Ratio(u()), units.Current(u())))...)
		recompute(t, must(electrical.AnodeUsedWorking(units.Equivalent(u()), units.Charge(u()), units.Ratio(rng.Float64()),
			units.Efficiency(rng.Float64()+1e-9)/2)))
		recompute(t, must(electrical.ResistanceWorking(units.Conductivity(u()), units.Length(u()), units.Area(u()),
			units.Area(u())))...)
		c := nickelCell()
		c.Anode, c.Cathode = units.Area(u()), units.Area(u())
		c.Reversible.High = units.Voltage(u())
		recompute(t, must(c.VoltageWorking(units.Current(u())))...)
		recompute(t, must(c.HeatWorking(units.Current(u()), units.Efficiency(rng.Float64()),
			units.Ratio(rng.Float64())))...)
		k := tank()
		if rng.IntN(3) == 0 {
			k.Loss = 0
		}
		recompute(t, must(k.HeaterWorking(units.Celsius(20+u()), units.Celsius(50+u()), units.Duration(3600*u()),
			units.Power(10*u())))...)
		s := surface()
		s.Draught, s.Humidity = units.Speed(u()), units.Ratio(rng.Float64())
		recompute(t, must(s.EvaporationWorking(units.Duration(3600*u())))...)
		v := vent()
		v.Efficiency = units.Efficiency(rng.Float64())
		recompute(t, must(v.AirWorking())...)
	}
	recompute(t, must(electrical.ResistanceWorking(8, 0.15, 0.1, 0.1))...)
}
