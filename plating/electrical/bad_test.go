package electrical_test

import (
	"testing"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
)

func TestBadCell(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*electrical.Cell)
		field  string
		reason error
	}{
		"conductivity": {func(c *electrical.Cell) { c.Conductivity.Low = 0 }, "low end of the conductivity",
			units.ErrNotPositive},
		"conductivity NaN": {func(c *electrical.Cell) { c.Conductivity.High = units.Conductivity(nan) },
			"high end of the conductivity", units.ErrNotFinite},
		"conductivity ends": {func(c *electrical.Cell) { c.Conductivity.Low = 20 }, "conductivity", units.ErrInconsistent},
		"gap":               {func(c *electrical.Cell) { c.Gap.Low = -1 }, "gap", units.ErrNotPositive},
		"gap infinite":      {func(c *electrical.Cell) { c.Gap.High = units.Length(inf) }, "gap", units.ErrNotFinite},
		"gap ends":          {func(c *electrical.Cell) { c.Gap.Low = 1 }, "gap", units.ErrInconsistent},
		"cathode":           {func(c *electrical.Cell) { c.Cathode = 0 }, "cathode", units.ErrNotPositive},
		"anode":             {func(c *electrical.Cell) { c.Anode = -1 }, "anodes", units.ErrNotPositive},
		"reversible": {func(c *electrical.Cell) { c.Reversible.Low = units.Voltage(nan) }, "reversible",
			units.ErrNotFinite},
		"reversible ends": {func(c *electrical.Cell) { c.Reversible.Low = 1 }, "reversible", units.ErrInconsistent},
		"cathode over": {func(c *electrical.Cell) { c.CathodeOverpotential.Low = -0.1 }, "cathode overpotential",
			units.ErrNegative},
		"anode over": {func(c *electrical.Cell) { c.AnodeOverpotential.High = units.Voltage(inf) },
			"anode overpotential", units.ErrNotFinite},
		"leads": {func(c *electrical.Cell) { c.Leads = -1 }, "leads", units.ErrNegative},
		"tiny": {func(c *electrical.Cell) { c.Gap.High = 1e300; c.Cathode, c.Anode = 1e-300, 1e-300 }, "resistance",
			units.ErrNotFinite},
		"pure water": {func(c *electrical.Cell) { c.Conductivity.Low = 5.5e-6 }, "conductivity", units.ErrOutOfRange},
	} {
		k := nickelCell()
		c.change(&k)
		_, err := k.Voltage(1)
		wantField(t, name, err, c.field, c.reason)
		_, err = k.Resistance()
		wantField(t, name, err, c.field, c.reason)
		_, err = k.Power(1)
		wantField(t, name, err, c.field, c.reason)
		_, err = k.Heat(1, 0.5, 0)
		wantField(t, name, err, c.field, c.reason)
		_, err = k.HeatWorking(1, 0.5, 0)
		wantField(t, name, err, c.field, c.reason)
		_, err = k.VoltageWorking(1)
		wantField(t, name, err, c.field, c.reason)
	}
	_, err := nickelCell().Voltage(-1)
	wantField(t, "current", err, "current", units.ErrNegative)
	_, err = nickelCell().Voltage(units.Current(1e308))
	if err != nil {
		wantField(t, "voltage", err, "voltage", units.ErrNotFinite)
	}
	_, err = nickelCell().Power(1e200)
	wantField(t, "power", err, "power", units.ErrNotFinite)
	_, err = nickelCell().Heat(1e200, 0.5, 0)
	wantField(t, "heat", err, "heat", units.ErrNotFinite)
	_, err = nickelCell().Heat(1, 1.2, 0)
	wantField(t, "efficiency", err, "current efficiency", units.ErrOutOfRange)
	_, err = nickelCell().Heat(1, 1, -0.2)
	wantField(t, "share", err, "dissolves", units.ErrOutOfRange)
	_, err = electrical.Mains(-1, 0.8)
	wantField(t, "mains", err, "power", units.ErrNegative)
	_, err = electrical.Mains(1, 0)
	wantField(t, "rectifier", err, "efficiency of the rectifier", units.ErrNotPositive)
}

func TestBadAnode(t *testing.T) {
	for name, f := range map[string]struct {
		call   func() error
		field  string
		reason error
	}{
		"area": {func() error { _, err := electrical.AnodeArea(0, 1); return err }, "cathode", units.ErrNotPositive},
		"ratio": {func() error { _, err := electrical.AnodeArea(1, units.Ratio(nan)); return err }, "ratio",
			units.ErrNotFinite},
		"huge": {func() error { _, err := electrical.AnodeArea(1e200, 1e200); return err }, "anode area",
			units.ErrNotFinite},
		"current": {func() error { _, err := electrical.AnodeCurrentDensity(-1, 1); return err }, "current",
			units.ErrNegative},
		"anode": {func() error { _, err := electrical.AnodeCurrentDensity(1, 0); return err }, "anode area",
			units.ErrNotPositive},
		"working": {func() error { _, err := electrical.AnodeWorking(1, 0, 1); return err }, "ratio",
			units.ErrNotPositive},
		"working I": {func() error { _, err := electrical.AnodeWorking(1, 1, -1); return err }, "current",
			units.ErrNegative},
		"equivalent": {func() error { _, err := electrical.AnodeUsed(0, 1, 1, 1); return err }, "equivalent",
			units.ErrNotPositive},
		"charge": {func() error { _, err := electrical.AnodeUsed(1, -1, 1, 1); return err }, "charge",
			units.ErrNegative},
		"share": {func() error { _, err := electrical.AnodeUsed(1, 1, 2, 1); return err }, "share",
			units.ErrOutOfRange},
		"efficiency": {func() error { _, err := electrical.AnodeUsedWorking(1, 1, 1, 1.01); return err },
			"anode efficiency", units.ErrOutOfRange},
		"mean first": {func() error { _, err := electrical.MeanArea(0, 1); return err }, "first", units.ErrNotPositive},
		"mean second": {func() error { _, err := electrical.MeanArea(1, units.Area(inf)); return err }, "second",
			units.ErrNotFinite},
		"kappa": {func() error { _, err := electrical.Resistance(0, 1, 1, 1); return err }, "conductivity",
			units.ErrNotPositive},
		"gap": {func() error { _, err := electrical.ResistanceWorking(1, 0, 1, 1); return err }, "gap",
			units.ErrNotPositive},
		"anodes": {func() error { _, err := electrical.Resistance(1, 1, 0, 1); return err }, "anodes",
			units.ErrNotPositive},
		"cathode": {func() error { _, err := electrical.Resistance(1, 1, 1, -1); return err }, "cathode",
			units.ErrNotPositive},
	} {
		wantField(t, name, f.call(), f.field, f.reason)
	}
}

func TestBadTank(t *testing.T) {
	c := units.Celsius
	for name, b := range map[string]struct {
		change func(*electrical.HeatedTank)
		field  string
		reason error
	}{
		"mass": {func(k *electrical.HeatedTank) { k.Mass = 0 }, "mass", units.ErrNotPositive},
		"specific": {func(k *electrical.HeatedTank) { k.SpecificHeat = electrical.SpecificHeat(nan) }, "specific heat",
			units.ErrNotFinite},
		"loss": {func(k *electrical.HeatedTank) { k.Loss = -1 }, "heat loss", units.ErrNegative},
		"room": {func(k *electrical.HeatedTank) { k.Room = 0 }, "room", units.ErrNotPositive},
		"capacity": {func(k *electrical.HeatedTank) { k.Mass, k.SpecificHeat = 1e200, 1e200 }, "heat capacity",
			units.ErrNotFinite},
	} {
		k := tank()
		b.change(&k)
		for _, call := range []func() error{
			func() error { _, err := k.After(c(20), 1, 1); return err }, func() error { _, err := k.Steady(1); return err },
			func() error { _, err := k.TimeTo(c(20), c(30), 1); return err }, func() error {
				_, err := k.Hold(c(30),
					0)
				return err
			},
			func() error { _, err := k.Reach(c(20), c(30), 1, 0); return err }, func() error {
				_, err := k.HeaterWorking(c(20),
					c(30), 1, 0)
				return err
			},
		} {
			wantField(t, name, call(), b.field, b.reason)
		}
	}
	k := tank()
	for name, b := range map[string]struct {
		call   func() error
		field  string
		reason error
	}{
		"start": {func() error { _, err := k.After(0, 1, 1); return err }, "start", units.ErrNotPositive},
		"heat": {func() error { _, err := k.After(c(20), units.Power(nan), 1); return err }, "heat",
			units.ErrNotFinite},
		"time": {func() error { _, err := k.After(c(20), 1, -1); return err }, "time", units.ErrNegative},
		"frozen": {func() error { _, err := k.After(c(20), -1e6, 3600); return err }, "afterwards",
			units.ErrNotPositive},
		"no loss": {func() error { k := k; k.Loss = 0; _, err := k.Steady(1); return err }, "heat loss",
			units.ErrNotPositive},
		"steady":     {func() error { _, err := k.Steady(-1e6); return err }, "steady", units.ErrNotPositive},
		"too little": {func() error { _, err := k.TimeTo(c(20), c(60), 100); return err }, "target", units.ErrInconsistent},
		"no heat":    {func() error { _, err := k.TimeTo(c(20), c(60), 0); return err }, "target", units.ErrInconsistent},
		"wrong way":  {func() error { _, err := k.TimeTo(c(60), c(70), 0); return err }, "target", units.ErrInconsistent},
		"target": {func() error { _, err := k.TimeTo(c(20), units.Temperature(nan), 100); return err }, "target",
			units.ErrNotFinite},
		"reach":      {func() error { _, err := k.Reach(c(20), 0, 1, 0); return err }, "target", units.ErrNotPositive},
		"reach time": {func() error { _, err := k.Reach(c(20), c(30), 0, 0); return err }, "time", units.ErrNotPositive},
		"hold": {func() error { _, err := k.Hold(units.Temperature(inf), 0); return err }, "start",
			units.ErrNotFinite},
		"not cooled": {func() error { _, err := k.LossFromCooling(c(50), c(50), 1); return err }, "temperatures",
			units.ErrInconsistent},
		"below room": {func() error { _, err := k.LossFromCooling(c(50), c(10), 1); return err }, "temperatures",
			units.ErrInconsistent},
		"cooling time": {func() error { _, err := k.LossFromCooling(c(50), c(40), 0); return err }, "time",
			units.ErrNotPositive},
		"cooling end": {func() error { _, err := k.LossFromCooling(c(50), 0, 1); return err }, "end", units.ErrNotPositive},
		"cooling from": {func() error { _, err := k.LossFromCooling(0, c(40), 1); return err }, "start",
			units.ErrNotPositive},
	} {
		wantField(t, name, b.call(), b.field, b.reason)
	}
}

func TestBadSurfaceAndVent(t *testing.T) {
	for name, b := range map[string]struct {
		change func(*electrical.OpenTop)
		field  string
		reason error
	}{
		"area":     {func(s *electrical.OpenTop) { s.Area = 0 }, "surface", units.ErrNotPositive},
		"humidity": {func(s *electrical.OpenTop) { s.Humidity = 50 }, "humidity", units.ErrOutOfRange},
		"draught":  {func(s *electrical.OpenTop) { s.Draught = -1 }, "draught", units.ErrNegative},
		"water":    {func(s *electrical.OpenTop) { s.Water = 55 }, "temperature of the bath", units.ErrOutOfRange},
		"boiling": {func(s *electrical.OpenTop) { s.Water = units.Celsius(101) }, "temperature of the bath",
			units.ErrOutOfRange},
		"NaN": {func(s *electrical.OpenTop) { s.Water = units.Temperature(nan) }, "temperature of the bath",
			units.ErrNotFinite},
		"air":  {func(s *electrical.OpenTop) { s.Air = 0 }, "temperature of the air", units.ErrNotPositive},
		"huge": {func(s *electrical.OpenTop) { s.Area = 1e306 }, "heat of evaporation", units.ErrNotFinite},
	} {
		s := surface()
		b.change(&s)
		_, err := s.Evaporation(units.Hour)
		wantField(t, name, err, b.field, b.reason)
		_, err = s.EvaporationWorking(units.Hour)
		wantField(t, name, err, b.field, b.reason)
	}
	_, err := surface().Evaporation(-1)
	wantField(t, "time", err, "time", units.ErrNegative)
	for name, T := range map[string]units.Temperature{"cold": 270, "critical": 650} {
		_, err := electrical.SaturationPressure(T)
		wantField(t, name, err, "temperature", units.ErrOutOfRange)
	}
	_, err = electrical.SaturationPressure(-1)
	wantField(t, "negative", err, "temperature", units.ErrNotPositive)
	_, err = electrical.LatentHeat(0)
	wantField(t, "zero", err, "temperature", units.ErrNotPositive)

	for name, b := range map[string]struct {
		change func(*electrical.Vent)
		field  string
		reason error
	}{
		"current":    {func(v *electrical.Vent) { v.Current = -1 }, "current", units.ErrNegative},
		"efficiency": {func(v *electrical.Vent) { v.Efficiency = 1.1 }, "current efficiency", units.ErrOutOfRange},
		"no mixing":  {func(v *electrical.Vent) { v.Mixing = 0 }, "mixing", units.ErrNotPositive},
		"mixing":     {func(v *electrical.Vent) { v.Mixing = 0.5 }, "mixing", units.ErrOutOfRange},
		"share":      {func(v *electrical.Vent) { v.Share = 25 }, "share", units.ErrOutOfRange},
		"cold":       {func(v *electrical.Vent) { v.Temperature = 0 }, "temperature", units.ErrNotPositive},
		"pressure":   {func(v *electrical.Vent) { v.Pressure = units.Pressure(nan) }, "pressure", units.ErrNotFinite},
		"huge":       {func(v *electrical.Vent) { v.Current, v.Mixing = 1e200, 1e200 }, "flow of air", units.ErrNotFinite},
	} {
		v := vent()
		b.change(&v)
		_, err := v.Air()
		wantField(t, name, err, b.field, b.reason)
		_, err = v.AirWorking()
		wantField(t, name, err, b.field, b.reason)
	}
}
