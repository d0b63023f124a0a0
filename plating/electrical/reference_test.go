package electrical_test

import (
	"math"
	"testing"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// rows runs a check for every row of a table, [key] named in the file.
func rows(t *testing.T, file string, compute func(testdata.Row) float64) {
	t.Helper()
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		if err := row.Check(compute(row)); err != nil {
			t.Error(err)
		}
	}
}

// TestReferenceResistance: columns of solution, [NaOHColumn].
func TestReferenceResistance(t *testing.T) {
	rows(t, "naohcolumn.csv", func(row testdata.Row) float64 {
		kappa := row.FloatOr("conductivity_S_cm", 1/row.FloatOr("resistivity_ohm_cm", math.NaN()))
		d := row.Float("diameter_cm")
		area := units.Area(math.Pi/4*d*d) * units.SquareCentimetre
		r := must(electrical.Resistance(units.Conductivity(kappa)*units.SiemensPerCentimetre,
			units.Length(row.Float("length_cm"))*units.Centimetre, area, area))
		return float64(r)
	})
}

// TestReferenceSteam: the check values of the formulation itself, [IAPWSIF97].
func TestReferenceSteam(t *testing.T) {
	rows(t, "iapwsif97.csv", func(row testdata.Row) float64 {
		return float64(must(electrical.SaturationPressure(units.Temperature(row.Float("temperature_K"))))) / 1e6
	})
}

// TestReferenceLatentHeat: [FAO1990].
func TestReferenceLatentHeat(t *testing.T) {
	rows(t, "fao1990.csv", func(row testdata.Row) float64 {
		return must(electrical.LatentHeat(units.Celsius(row.Float("temperature_C")))).In(
			1000 * electrical.KilojoulePerKilogram)
	})
}

// TestReferenceEvaporation: the printed equation with its own units, [PoolEvaporation].
func TestReferenceEvaporation(t *testing.T) {
	const btuHourFoot = 1055.05585262 / 3600 / 0.09290304 // W/m²
	water, air := units.Celsius(40), units.Celsius(25)
	rows(t, "poolevaporation.csv", func(row testdata.Row) float64 {
		s := electrical.OpenTop{Area: units.SquareFoot, Water: water, Air: air, Humidity: 1,
			Draught: units.Speed(row.Float("speed_ft_min") * 0.3048 / 60)}
		e := must(s.Evaporation(units.Hour))
		difference := float64(must(electrical.SaturationPressure(water))-must(electrical.SaturationPressure(
			air))) / 3386.389
		if row.Text("check") == "still_share" {
			near(t, "low heat", float64(e.Heat.Low)/float64(e.Power), row.Float("expected"), 1e-12)
			return float64(e.Window.Low) / float64(e.Mass)
		}
		return float64(e.Power) / 0.09290304 / btuHourFoot / difference * row.Float("difference_inHg")
	})
}

// TestReferenceOpenTank: another published table, in the window of ours, [OpenTankTable].
func TestReferenceOpenTank(t *testing.T) {
	const btuHour = 1055.05585262 / 3600 // W
	rows(t, "opentanktable.csv", func(row testdata.Row) float64 {
		s := electrical.OpenTop{Area: units.SquareFoot, Water: units.Fahrenheit(row.Float("water_F")),
			Air:      units.Fahrenheit(row.Float("room_F")),
			Humidity: units.Ratio(row.Float("humidity"))}
		e := must(s.Evaporation(units.Hour))
		low, high := float64(e.Heat.Low)/btuHour, float64(e.Heat.High)/btuHour
		if print := row.Float("expected"); print+5 < low || print-5 > high { // rounded to ten
			t.Errorf("%s: printed %g, window %.0f to %.0f", row.Name(), print, low, high)
		}
		return float64(e.Power) / btuHour
	})
}

// TestReferenceOpenWater: a worked example by another formula, [OpenWaterExample].
func TestReferenceOpenWater(t *testing.T) {
	rows(t, "openwaterexample.csv", func(row testdata.Row) float64 {
		// Vapour pressures from the humidity ratios: x = 0.62198·p/(101325 - p).
		pressure := func(x float64) float64 { return 101325 * x / (0.62198 + x) }
		pw, pa := pressure(row.Float("ratio_surface")), pressure(row.Float("ratio_air"))
		water := temperatureOf(pw)
		s := electrical.OpenTop{Area: units.Area(row.Float("length_m") * row.Float("width_m")), Water: water, Air: water,
			Humidity: units.Ratio(pa / pw), Draught: units.Speed(row.Float("speed_m_s"))}
		return float64(must(s.Evaporation(units.Second)).Mass)
	})
}

// temperatureOf inverts the vapour pressure by halving.
func temperatureOf(p float64) units.Temperature {
	low, high := 273.15, 373.15
	for range 60 {
		mid := (low + high) / 2
		if float64(must(electrical.SaturationPressure(units.Temperature(mid)))) < p {
			low = mid
		} else {
			high = mid
		}
	}
	return units.Temperature(low)
}

// TestReferenceHydrogen: [HydrogenSafetyPage], [HydrogenPractice], [BatteryAir].
func TestReferenceHydrogen(t *testing.T) {
	rows(t, "hydrogensafetypage.csv", func(testdata.Row) float64 { return 100 * float64(electrical.HydrogenLimit) })
	air := func(row testdata.Row) electrical.Airing {
		return must(electrical.Vent{Current: units.Current(row.FloatOr("current_A", 1)),
			Temperature: units.Celsius(row.FloatOr("temp_C", 20)), Pressure: units.Atmosphere,
			Mixing: units.Ratio(row.FloatOr("mixing", 1)), Share: units.Ratio(row.Float("share"))}.Air())
	}
	rows(t, "hydrogenpractice.csv", func(row testdata.Row) float64 { return 100 * float64(air(row).Limit) })
	rows(t, "batteryair.csv", func(row testdata.Row) float64 {
		a := air(row)
		switch row.Text("check") {
		case "hydrogen_L_h":
			return a.Hydrogen.In(electrical.CubicMetrePerHour) * 1000
		case "dilution":
			return float64(a.Air) / float64(a.Hydrogen)
		}
		return a.Air.In(electrical.CubicMetrePerHour)
	})
	quarter := vent()
	quarter.Share = 0.25
	if must(quarter.Air()) != must(vent().Air()) {
		t.Error("no share is not a quarter")
	}
}

// TestReferenceHeat: [OpenStaxCollegePhysics], [WaterElectrolysis].
func TestReferenceHeat(t *testing.T) {
	rows(t, "openstaxcollegephysics.csv", func(row testdata.Row) float64 {
		tank := electrical.HeatedTank{Mass: units.Mass(row.Float("mass_kg")),
			SpecificHeat: electrical.SpecificHeat(row.Float("specific_heat")), Room: units.Celsius(20)}
		p := must(tank.Reach(units.Celsius(row.Float("from_C")), units.Celsius(row.Float("to_C")), 100*units.Second, 0))
		return float64(p) * 100 / 1000
	})
	rows(t, "waterelectrolysis.csv", func(testdata.Row) float64 { return float64(electrical.Thermoneutral) })
}
