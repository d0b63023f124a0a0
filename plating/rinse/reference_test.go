package rinse_test

import (
	"math"
	"testing"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

func singleRatio(t *testing.T, row testdata.Row) float64 {
	r := rinse.Running{Bath: 1, Water: rinse.Flow(row.Float("water")) * rinse.USGallonPerHour,
		DragIn: rinse.Flow(row.Float("drag_in")) * rinse.USGallonPerHour}
	return float64(must(r.Ratio())(t))
}

func TestReferenceRinsingLessWater(t *testing.T) {
	checked(t, "rinsinglesswater.csv", func(t *testing.T, row testdata.Row) float64 {
		switch row.Text("check") {
		case "ratio":
			return singleRatio(t, row)
		case "rinse_oz_gal":
			r := rinse.Running{Bath: units.MassConcentration(row.Float("bath")) * units.OuncePerUSGallon,
				Water:  rinse.Flow(row.Float("water")) * rinse.USGallonPerHour,
				DragIn: rinse.Flow(row.Float("drag_in")) * rinse.USGallonPerHour}
			return must(r.Steady())(t).In(units.OuncePerUSGallon)
		}
		for _, l := range rinse.Limits() {
			if l.Of == row.Text("of") {
				return l.Most.In(units.OuncePerUSGallon)
			}
		}
		return math.NaN()
	})
}

func TestReferenceSingleRinses(t *testing.T) {
	checked(t, "rinsingtenminutes.csv", singleRatio)
	checked(t, "rinseprimer2011.csv", func(t *testing.T, row testdata.Row) float64 {
		if row.Text("check") == "percent" {
			return 100 / singleRatio(t, row)
		}
		return singleRatio(t, row)
	})
}

func TestReferenceCounterflowNickel(t *testing.T) {
	checked(t, "counterflownickel.csv", func(t *testing.T, row testdata.Row) float64 {
		ratio := must(rinse.RatioFor(units.MassConcentration(row.Float("bath"))*units.MilligramPerLitre,
			units.MassConcentration(row.Float("final"))*units.MilligramPerLitre))(t)
		return must(rinse.WaterFor(ratio, int(row.Float("stages")), 1*lh, 0))(t).In(lh)
	})
}

func TestReferenceCounterflowNote(t *testing.T) {
	checked(t, "counterflownote.csv", func(t *testing.T, row testdata.Row) float64 {
		film := units.Length(row.Float("film") * float64(units.Millilitre) / float64(units.SquareFoot))
		drag := must(rinse.NewFlow(film.Over(units.Area(row.Float("area"))*units.SquareFoot), units.Hour))(t)
		bath := units.MassConcentration(row.Float("bath")) * gL
		if row.Text("check") == "carried" {
			return bath.Of(drag.Over(units.Hour)).In(units.Gram)
		}
		ratio := must(rinse.RatioFor(bath, units.MassConcentration(row.Float("final"))*units.MilligramPerLitre))(t)
		q := must(rinse.WaterFor(ratio, 1, drag, 0))(t)
		if row.Text("check") == "water_gal_min" {
			return q.In(rinse.USGallonPerMinute)
		}
		return q.In(rinse.LitrePerMinute)
	})
}

func TestReferenceDragOutTable(t *testing.T) {
	used := 0
	checked(t, "dragouttable.csv", func(t *testing.T, row testdata.Row) float64 {
		for _, f := range rinse.Figures() {
			if f.Shape.String() != row.Text("shape") {
				continue
			}
			used++
			if f.Seen != origin.Published || f.Source != "DragOutTable" {
				t.Errorf("%v: seen %v, source %s", f.Shape, f.Seen, f.Source)
			}
			load := rinse.WetLoad{Area: 1000 * units.SquareFoot, Shape: f.Shape}
			c := must(load.DragOut())(t)
			if c.Seen != f.Seen || c.Factor != 1 {
				t.Errorf("%v: the plain figure is seen as %v with factor %v", f.Shape, c.Seen, c.Factor)
			}
			if row.Text("check") == "high" {
				return c.High.In(units.USGallon)
			}
			return c.Low.In(units.USGallon)
		}
		return math.NaN()
	})
	if used != len(rinse.Figures())+1 {
		t.Errorf("%d rows for %d figures", used, len(rinse.Figures()))
	}
}

func TestReferenceCriteria(t *testing.T) {
	used := 0
	checked(t, "rinsecriteria.csv", func(t *testing.T, row testdata.Row) float64 {
		for _, c := range rinse.Criteria() {
			if c.After == row.Text("process") {
				used++
				if row.Text("check") == "high" {
					return float64(c.High)
				}
				return float64(c.Low)
			}
		}
		return math.NaN()
	})
	if used != 2*len(rinse.Criteria()) {
		t.Errorf("%d rows for %d criteria", used, len(rinse.Criteria()))
	}
}

// The printed forms of the film laws: their numbers.
func TestReferenceFilms(t *testing.T) {
	w := rinse.Withdrawal{Speed: 0.001, Viscosity: rinse.MillipascalSecond, Density: 1000, Tension: 0.05}
	checked(t, "filmlaw.csv", func(t *testing.T, _ testdata.Row) float64 {
		f := must(w.Film())(t)
		return float64(f.Depth) / (math.Sqrt(0.05/(1000*9.80665)) * math.Pow(0.001*0.001/0.05, 2.0/3))
	})
	checked(t, "dragoutload.csv", func(t *testing.T, _ testdata.Row) float64 {
		// Drawn out for 40 s at 5 mm/s the plate stands 200 mm out of the pool.
		mean := must(rinse.Hanging{Height: 0.2, Time: 40, Viscosity: 0.05, Density: 1100}.DrainedFilm())(t)
		return math.Sqrt(0.05*0.005/(1100*9.80665)) / float64(mean)
	})
}
