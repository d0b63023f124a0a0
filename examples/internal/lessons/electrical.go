package lessons

import (
	"fmt"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
)

// electricalLessons are about anodes, volts, heat and air.
func electricalLessons() []Lesson {
	cell := electrical.Cell{
		Conductivity: electrical.Interval[units.Conductivity]{Low: 4 * units.SiemensPerMetre,
			High: 6 * units.SiemensPerMetre},
		Gap: electrical.Exactly(100 * mm), Cathode: 1 * dm2, Anode: 2 * dm2,
		Reversible:           electrical.Interval[units.Voltage]{Low: 1.2, High: 1.6},
		CathodeOverpotential: electrical.Interval[units.Voltage]{Low: 0.3, High: 0.5},
		AnodeOverpotential:   electrical.Interval[units.Voltage]{Low: 0.3, High: 0.6}, Leads: 20 * units.Milliohm,
	}
	tank := electrical.HeatedTank{Mass: 20 * units.Kilogram, SpecificHeat: 4 * electrical.JoulePerGramKelvin,
		Loss: 8 * electrical.WattPerKelvin,
		Room: units.Celsius(20)}
	return []Lesson{{
		Word: "anodes", Title: "Anodes for a load", Package: "plating/electrical",
		Question: "105 cm² of hands are to have twice their area of stainless anodes at 0.5 A.\n" +
			"How large are the anodes and what current density do they carry?",
		Good: "a mean; edges and near spots carry more",
		solve: func(b *board) string {
			a := value[units.Area](b)(electrical.AnodeArea(105*cm2, 2))
			b.add(electrical.AnodeWorking(105*cm2, 2, 0.5*units.Ampere))
			return fmt.Sprintf("Hang %s; they carry %s.", a, b.last())
		},
	}, {
		Word: "anodeused", Title: "How much nickel the anodes lose", Package: "plating/electrical",
		Question: "A nickel bath ran 40 A h. All current goes through nickel anodes, 98 % of it dissolves metal.\n" +
			"How much have they lost?",
		Good: "sludge and stubs come on top",
		solve: func(b *board) string {
			ni := value[faraday.Deposit](b)(faraday.NewDeposit("Ni", 2))
			m := value[units.Mass](b)(electrical.AnodeUsed(ni.Equivalent, 40*units.AmpereHour, 1, 0.98))
			b.one(electrical.AnodeUsedWorking(ni.Equivalent, 40*units.AmpereHour, 1, 0.98))
			return fmt.Sprintf("They have lost %s, say %s.", b.last(), m.Text(g, 0))
		},
	}, {
		Word: "resistance", Title: "The resistance of the bath between the electrodes", Package: "plating/electrical",
		Question: "Anodes of 2 dm² face work of 1 dm² at 100 mm; the bath conducts 5 S/m.\nWhat is its resistance?",
		Good:     "plates that fill the tank's section; a small part far away has half of it",
		solve: func(b *board) string {
			a := value[units.Area](b)(electrical.MeanArea(2*dm2, 1*dm2))
			r := value[units.Resistance](b)(electrical.Resistance(5*units.SiemensPerMetre, 100*mm, 2*dm2, 1*dm2))
			b.add(electrical.ResistanceWorking(5*units.SiemensPerMetre, 100*mm, 2*dm2, 1*dm2))
			return fmt.Sprintf("It is %s, so each ampere costs %s; the current has %s to itself.", b.last(),
				units.Current(units.Ampere).Through(r).Text(units.Volt, 1), a.Text(dm2, 2))
		},
	}, {
		Word: "volts", Title: "What the rectifier will show", Package: "plating/electrical",
		Question: "The same cell takes 2 A with insoluble anodes. At rest its reactions want 1.2 to 1.6 V; the bath\n" +
			"conducts 4 to 6 S/m. How many volts, watts, and watts from the mains at 80 %?",
		Good: "the window is as wide as it can get; its high end sizes the rectifier",
		solve: func(b *board) string {
			r := value[electrical.Interval[units.Resistance]](b)(cell.Resistance())
			v := value[electrical.Drop](b)(cell.Voltage(2 * units.Ampere))
			p := value[electrical.Interval[units.Power]](b)(cell.Power(2 * units.Ampere))
			m := value[units.Power](b)(electrical.Mains(p.High, 0.8))
			b.add(cell.VoltageWorking(2 * units.Ampere))
			return fmt.Sprintf("From %s to %s. The bath's own %s take %s of it. At the most that is %s, %s from "+
				"the mains.", v.Total.Low, b.last(),
				r, v.Solution, p.High.Text(units.Watt, 1), m.Text(units.Watt, 1))
		},
	}, {
		Word: "bathheat", Title: "What the current heats the bath by", Package: "plating/electrical",
		Question: "The same cell runs hard gold at 2 A and 35 % efficiency.\nHow many watts stay in the bath?",
		Good:     "both ends hold; size a cooler by the high one",
		solve: func(b *board) string {
			p := value[electrical.Interval[units.Power]](b)(cell.Heat(2*units.Ampere, 0.35, 0))
			b.add(cell.HeatWorking(2*units.Ampere, 0.35, 0))
			return fmt.Sprintf("Between %s and %s.", p.Low, b.last())
		},
	}, {
		Word: "heater", Title: "Sizing a heater", Package: "plating/electrical",
		Question: "A bath of 20 kg, 4 J/(g·K), loses 8 W for each kelvin and the room has 20 °C.\n" +
			"Which heater brings it from 20 to 60 °C in 1 h, and which one holds it there?",
		Good: "as good as the loss: let the bath cool for an hour and measure it",
		solve: func(b *board) string {
			start, warm := units.Celsius(20), units.Celsius(60)
			h := value[electrical.HeatLoss](b)(tank.LossFromCooling(warm, units.Celsius(48), units.Hour))
			reach := value[units.Power](b)(tank.Reach(start, warm, units.Hour, 0))
			t := value[units.Duration](b)(tank.TimeTo(start, warm, 800*units.Watt))
			end := value[units.Temperature](b)(tank.Steady(400 * units.Watt))
			b.add(tank.HeaterWorking(start, warm, units.Hour, 0))
			return fmt.Sprintf("%s bring it there, %s hold it. 800 W would need %s, 400 W never pass %s. Cooling "+
				"from 60 to 48 °C in an hour speaks for %.1f W/K.",
				reach.Text(units.Watt, 0), b.last(), t.Text(units.Minute, 0), end, h.In(electrical.WattPerKelvin))
		},
	}, {
		Word: "evaporation", Title: "Water that a warm bath loses", Package: "plating/electrical",
		Question: "A bath of 60 °C has 8 dm² open to a room of 20 °C, half humid, without draught.\n" +
			"How much water goes in 8 h?",
		Good: "published formulas differ by a quarter; bubbled air changes it by more",
		solve: func(b *board) string {
			top := electrical.OpenTop{Area: 8 * dm2, Water: units.Celsius(60), Air: units.Celsius(20), Humidity: 0.5}
			e := value[electrical.Evaporated](b)(top.Evaporation(8 * units.Hour))
			p := value[units.Pressure](b)(electrical.SaturationPressure(top.Water))
			l := value[electrical.HeatOfVaporisation](b)(electrical.LatentHeat(top.Water))
			b.add(top.EvaporationWorking(8 * units.Hour))
			return fmt.Sprintf("By the formula %s, by measurements %s. The vapour has %s, and each kilogram takes "+
				"%.0f kJ with it.", b.last(), e.Litres,
				p.Text(units.Kilopascal, 1), l.In(electrical.KilojoulePerKilogram))
		},
	}, {
		Word: "ventilation", Title: "Air against hydrogen", Package: "plating/electrical",
		Question: "A cathodic cleaner runs 10 A; all of it makes hydrogen, at 20 °C and one atmosphere. The air " +
			"mixes so\n" +
			"badly that three times the even amount is asked for. How much fresh air keeps it at a quarter of " +
			"what burns?",
		Good: "arithmetic, no design: under a hood gas gathers whatever the mean",
		solve: func(b *board) string {
			v := electrical.Vent{Current: 10 * units.Ampere, Temperature: units.Celsius(20),
				Pressure: units.Atmosphere, Mixing: 3}
			a := value[electrical.Airing](b)(v.Air())
			b.add(v.AirWorking())
			return fmt.Sprintf("The cleaner gives off %.2f L of hydrogen a minute; it takes %s of fresh air.",
				a.Hydrogen.In(electrical.LitrePerMinute), b.last())
		},
	}}
}
