package lessons

import (
	"fmt"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// dripping is what a rack of hands carries off: 20 mL every 10 min.
func dripping(b *board) rinse.Flow {
	return value[rinse.Flow](b)(rinse.NewFlow(20*units.Millilitre, 10*units.Minute))
}

// rinseLessons are about drag-out and about rinses.
func rinseLessons() []Lesson {
	const bath = 8 * gl
	const litre, ml = units.Litre, units.Millilitre
	return []Lesson{{
		Word: "dragout", Title: "What a load carries off", Package: "plating/rinse",
		Question: "40 dm² of dial plates hang upright, drain well for 20 s over a gold bath.\n" +
			"How much solution goes with them?",
		Good: "a factor of two; weigh a wet rack where it matters",
		solve: func(b *board) string {
			load := rinse.WetLoad{Area: 40 * dm2, Shape: rinse.VerticalWell, Drain: 20 * units.Second,
				Thickness: rinse.Thin}
			b.add(load.DragOutWorking())
			return fmt.Sprintf("About %s go with them.", b.last())
		},
	}, {
		Word: "film", Title: "The film on a plate that is drawn out", Package: "plating/rinse",
		Question: "A dial plate of 110 mm leaves a bath as thin as water at 5 mm/s; with a wetting agent the " +
			"surface\n" +
			"tension is 35 mN/m. How deep is the film, and how deep after 20 s of draining?",
		Good: "for clean flat faces; the bead at the lower edge comes on top",
		solve: func(b *board) string {
			const mu, rho = 1 * rinse.MillipascalSecond, 1.05 * gcc
			out := rinse.Withdrawal{Speed: 0.005 * units.MetrePerSecond, Viscosity: mu, Density: rho,
				Tension: 35 * rinse.MillinewtonPerMetre}
			hang := rinse.Hanging{Height: 110 * mm, Time: 20 * units.Second, Viscosity: mu, Density: rho}
			film := value[rinse.Film](b)(out.Film())
			b.add(out.FilmWorking())
			b.add(hang.DrainedFilmWorking())
			return fmt.Sprintf("It comes out with %s on each face. Draining alone would leave %s, which is more: "+
				"the lesser one holds.",
				film.Depth.Text(um, 1), b.last())
		},
	}, {
		Word: "drain", Title: "How long to let a rack drip", Package: "plating/rinse",
		Question: "Under a rack three graduates catch 12, 6 and 3 mL in 5 s each. Another 2 mL never drip off.\n" +
			"How much is left after 15 s, and what do 15 s more save?",
		Good: "the drips fit exactly here; measure your own rack",
		solve: func(b *board) string {
			fit := value[rinse.DrainFit](b)(rinse.FitDrips(5*units.Second, 12*ml, 6*ml, 3*ml))
			curve := fit.Curve
			curve.Held = 2 * ml
			saved := value[units.Volume](b)(curve.Saved(15*units.Second, 30*units.Second))
			b.add(curve.LeftWorking(15 * units.Second))
			return fmt.Sprintf("%s are left; 15 s more save %s.", b.last(), saved.Text(ml, 1))
		},
	}, {
		Word: "residue", Title: "What dries on the work", Package: "plating/rinse",
		Question: "The last rinse holds 15 mg/L of gold; 20 mL of it hang on 10 dm² of hands.\n" +
			"How much dries on each square metre?",
		Good: "what came from the bath; hard water leaves its own",
		solve: func(b *board) string {
			const c = 15 * units.MilligramPerLitre
			r := value[rinse.Residue](b)(rinse.LeftOnPart(c, 20*ml, 10*dm2))
			b.add(rinse.LeftOnPartWorking(c, 20*ml, 10*dm2))
			limit := rinse.Limits()[0]
			return fmt.Sprintf("%s on the load, %s; a published limit for a last rinse is %s of %s.", r.Mass,
				b.last(), limit.Printed, limit.Of)
		},
	}, {
		Word: "stillrinse", Title: "A drag-out tank fills", Package: "plating/rinse",
		Question: "A still rinse of 10 L takes 20 mL from each load of a bath with 8 g/L gold.\n" +
			"What does it hold after 50 loads, and when is 1 g/L reached at a load every 10 min?",
		Good: "exact for complete mixing; move the work",
		solve: func(b *board) string {
			tank := rinse.RinseTank{Bath: bath, Volume: 10 * litre, DragOut: 20 * ml}
			n := value[int](b)(tank.LoadsTo(1 * gl))
			t := value[units.Duration](b)(tank.TimeTo(1*gl, 10*units.Minute))
			bal := value[rinse.MetalBalance](b)(tank.Balance(50))
			b.add(tank.AfterWorking(50))
			return fmt.Sprintf("After 50 loads it holds %s; 1 g/L takes %d loads, %s. Of %s carried in, %s went "+
				"on with the work.",
				b.last(), n, t.Text(units.Hour, 1), bal.In, bal.OnWork.Text(g, 2))
		},
	}, {
		Word: "threestills", Title: "Three still rinses in a row", Package: "plating/rinse",
		Question: "Three still rinses of 10 L stand in a row; each load carries 20 mL from tank to tank.\n" +
			"How much weaker than the bath is the last one after 50 loads?",
		Good: "exact for complete mixing; it gets worse with every load",
		solve: func(b *board) string {
			tank := rinse.RinseTank{Bath: bath, Volume: 10 * litre, DragOut: 20 * ml}
			row := value[[]units.MassConcentration](b)(tank.Row([]units.Volume{10 * litre, 10 * litre, 10 * litre}, 50))
			if b.err != nil {
				return ""
			}
			r := value[units.Ratio](b)(rinse.RatioFor(bath, row[2]))
			b.add(tank.AfterWorking(50))
			b.show("R = C₀/C₃", "Definition", working.Number("R", "bath over the last rinse", float64(r)),
				working.Of("C₀", "content of the bath", bath),
				working.Of("C₃", "content of the third rinse, load by load", row[2]))
			published := rinse.Criteria()
			least := published[len(published)-1]
			return fmt.Sprintf("The last rinse is %s times weaker than the bath, the first only %.3g times; behind %s "+
				"%.0f to %.0f are published.", b.last(), float64(bath)/float64(row[0]), least.After, float64(least.Low),
				float64(least.High))
		},
	}, {
		Word: "runningrinse", Title: "One rinse with running water", Package: "plating/rinse",
		Question: "A rinse of 20 L gets 30 L of water an hour; the work brings 20 mL every 10 min.\n" +
			"What does it hold after 1 h, and what in the long run?",
		Good: "exact for a steady stream of work; between loads it swings",
		solve: func(b *board) string {
			run := rinse.Running{Bath: bath, Volume: 20 * litre, Water: 30 * rinse.LitrePerHour, DragIn: dripping(b)}
			r, c := value[units.Ratio](b)(run.Ratio()), value[units.MassConcentration](b)(run.Steady())
			half := value[units.Duration](b)(run.TimeTo(c / 2))
			b.add(run.AfterWorking(units.Hour))
			return fmt.Sprintf("After 1 h it holds %s, in the long run %s, 1 in %.0f. Half of that stands after %s.",
				b.last(), c, float64(r),
				half.Text(units.Minute, 0))
		},
	}, {
		Word: "counterflow", Title: "Two rinses in counterflow", Package: "plating/rinse",
		Question: "The bath has 8 g/L gold, the last rinse may hold 8 mg/L. The work brings 20 mL every 10 min.\n" +
			"How much water do two rinses need that run against the work?",
		Good: "complete mixing; take a tenth to a half more",
		solve: func(b *board) string {
			d := dripping(b)
			r := value[units.Ratio](b)(rinse.RatioFor(bath, 8*units.MilligramPerLitre))
			q := value[rinse.Flow](b)(rinse.WaterFor(r, 2, d, 0))
			row := rinse.Counterflow{Stages: 2, Water: q, DragIn: d}
			tanks := value[[]units.MassConcentration](b)(row.Tanks(bath))
			if b.err != nil {
				return ""
			}
			b.add(rinse.WaterForWorking(r, 2, d, 0))
			b.add(row.Working(bath))
			return fmt.Sprintf("%s are enough for 1 in %.0f; the first rinse then holds %s, the last one %s.", q,
				float64(r), tanks[0], b.last())
		},
	}, {
		Word: "rinsesapart", Title: "Two rinses, each with its own water", Package: "plating/rinse",
		Question: "The same 1 in 1000 with two rinses that do not share their water.\nHow much does each need?",
		Good:     "complete mixing; counterflow needs half of it",
		solve: func(b *board) string {
			d := dripping(b)
			q := value[[]rinse.Flow](b)(rinse.SeriesWaterFor(1000, 2, d, 0))
			if b.err != nil {
				return ""
			}
			split := value[[]rinse.Flow](b)(rinse.SplitWater(q[0]+q[1], 2, d, 0))
			b.add(rinse.RinseSeries{Water: split, DragIn: d}.Working())
			return fmt.Sprintf("Each needs %s; that brings 1 in %s.", q[0], b.last())
		},
	}}
}

// recoveryLessons bring gold back.
func recoveryLessons() []Lesson {
	const bath = 8 * gl
	const litre, ml = units.Litre, units.Millilitre
	return []Lesson{{
		Word: "spray", Title: "Spraying over the bath", Package: "plating/rinse",
		Question: "A rack holds 20 mL of gold bath. It is sprayed with 60 mL of water, of which half meets the\n" +
			"film. How much weaker is the film, and what water would make it 1 in 10?",
		Good: "as good as the share that meets the film: measure it",
		solve: func(b *board) string {
			s := rinse.Spray{Film: 20 * ml, Water: 60 * ml, Mixing: 0.5}
			r := value[units.Ratio](b)(s.Ratio())
			w := value[units.Volume](b)(rinse.SprayWaterFor(10, s.Film, s.Mixing))
			b.add(s.Working())
			return fmt.Sprintf("The film is %s times weaker, so %.0f %% of the gold runs back; 1 in 10 takes %s.",
				b.last(), 100-100/float64(r), w.Text(ml, 0))
		},
	}, {
		Word: "recovery", Title: "What drag-out tanks bring back", Package: "plating/rinse",
		Question: "A warm gold bath loses 60 mL of water an hour; the work takes 20 mL every 10 min and comes dry.\n" +
			"Two drag-out tanks feed it back. How much gold is lost in a week of 40 h?",
		Good: "in the long run and with complete mixing; what spoils a bath comes back too",
		solve: func(b *board) string {
			r := rinse.Recovery{Bath: bath, DragOut: dripping(b), Evaporation: 60 * rinse.MillilitrePerHour, Tanks: 2}
			o := value[rinse.Recovered](b)(r.Over(40 * units.Hour))
			b.add(r.Working(40 * units.Hour))
			return fmt.Sprintf("%s are carried out, %s come back, that is %s; %s are lost.", o.Dragged,
				o.Back.Text(g, 2), o.Share.Percent(0),
				b.last())
		},
	}, {
		Word: "pourback", Title: "Pouring a drag-out tank back by hand", Package: "plating/rinse",
		Question: "A drag-out tank of 2 L is poured back after every 50 loads of 20 mL; the bath evaporates 20 mL a\n" +
			"load and the work comes dry. How rich is the tank before pouring?",
		Good: "once every round is like the last",
		solve: func(b *board) string {
			batch := rinse.Batch{Bath: bath, Volume: 2 * litre, DragOut: 20 * ml, Evaporation: 20 * ml, Loads: 50}
			c := value[rinse.BatchCycle](b)(batch.Cycle())
			b.add(batch.Working())
			return fmt.Sprintf("Before pouring it holds %s; %s of %s go back, that is %s.", c.Full.Text(gl, 2),
				b.last(), c.Dragged, c.Share.Percent(0))
		},
	}}
}
