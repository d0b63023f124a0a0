package rinse_test

import (
	"fmt"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Twelve hour hands on a rack, 184 cm² in all, out of a gold bath of 8 g/L.
func ExampleWetLoad_DragOut() {
	load := rinse.WetLoad{Area: 184 * units.SquareCentimetre, Shape: rinse.VerticalPoor}
	c, err := load.DragOut()
	fmt.Printf("%.1f mL, %v [%s] %v\n", c.Low.In(units.Millilitre), c.Seen, c.Source, err)
	gold := (8 * units.GramPerLitre).Of(c.Low)
	fmt.Printf("%.0f mg of gold\n", gold.In(units.Milligram))
	load.Drain = 20 * units.Second
	c, _ = load.DragOut()
	fmt.Printf("20 s over the bath: %.1f mL, %v\n", c.Low.In(units.Millilitre), c.Seen)
	// Output:
	// 1.5 mL, published [DragOutTable] <nil>
	// 12 mg of gold
	// 20 s over the bath: 1.1 mL, from memory
}

// How deep a film clings to a dial plate that is lifted at 2 cm/s.
func ExampleWithdrawal_Film() {
	f, err := rinse.Withdrawal{Speed: 0.02, Viscosity: 1.2 * rinse.MillipascalSecond,
		Density: 1050, Tension: 45 * rinse.MillinewtonPerMetre}.Film()
	fmt.Printf("%.0f µm on each face, Ca %.5f %v\n", f.Depth.In(units.Micrometre), float64(f.Capillary), err)
	h, _ := rinse.Hanging{Height: 150 * units.Millimetre, Time: 10, Viscosity: 1.2 * rinse.MillipascalSecond,
		Density: 1050}.DrainedFilm()
	fmt.Printf("%.0f µm after ten seconds\n", h.In(units.Micrometre))
	// Output:
	// 13 µm on each face, Ca 0.00053 <nil>
	// 28 µm after ten seconds
}

// A rack of bezels drips 31, 17 and 10 mL in three times five seconds.
func ExampleFitDrips() {
	fit, err := rinse.FitDrips(5*units.Second, 31*units.Millilitre, 17*units.Millilitre, 10*units.Millilitre)
	fmt.Printf("time constant %.1f s %v\n", float64(fit.Curve.Constant), err)
	more, _ := fit.Curve.Saved(15, 25)
	fmt.Printf("ten seconds more save %.0f mL\n", more.In(units.Millilitre))
	// Output:
	// time constant 8.6 s <nil>
	// ten seconds more save 8 mL
}

// The still rinse behind the gold bath of the workshop: when is it worth
// sending to the refiner, at half a gram to the litre?
func ExampleRinseTank_LoadsTo() {
	tank := rinse.RinseTank{Bath: 8 * units.GramPerLitre, Volume: 2 * units.Litre, DragOut: 1.5 * units.Millilitre}
	n, err := tank.LoadsTo(0.5 * units.GramPerLitre)
	fmt.Println(n, "loads", err)
	t, _ := tank.TimeTo(0.5*units.GramPerLitre, 40*units.Minute)
	fmt.Println(t)
	// Output:
	// 87 loads <nil>
	// 58 h
}

func ExampleRinseTank_Balance() {
	b, err := rinse.RinseTank{Bath: 8 * units.GramPerLitre, Volume: 2 * units.Litre,
		DragOut: 1.5 * units.Millilitre}.Balance(87)
	fmt.Printf("in %.3f g, kept %.3f g, on the work %.3f g %v\n", b.In.In(units.Gram), b.Kept.In(units.Gram),
		b.OnWork.In(units.Gram), err)
	// Output: in 1.044 g, kept 1.010 g, on the work 0.034 g <nil>
}

// A running rinse after the lunch break: clean at first, then as it stays.
func ExampleRunning_After() {
	r := rinse.Running{Bath: 8 * units.GramPerLitre, Volume: 20 * units.Litre,
		Water: 60 * rinse.LitrePerHour, DragIn: 0.06 * rinse.LitrePerHour}
	ratio, err := r.Ratio()
	c, _ := r.After(20 * units.Minute)
	fmt.Printf("1:%.0f in the end %v; after 20 min %.1f mg/L\n", float64(ratio), err, c.In(units.MilligramPerLitre))
	// Output: 1:1001 in the end <nil>; after 20 min 5.1 mg/L
}

func ExampleCounterflow_Ratio() {
	c := rinse.Counterflow{Stages: 2, Water: 3 * rinse.LitrePerHour, DragIn: 0.06 * rinse.LitrePerHour}
	r, err := c.Ratio()
	fmt.Printf("%.0f:1 %v\n", float64(r), err)
	row, _ := c.Tanks(8 * units.GramPerLitre)
	for i, content := range row {
		fmt.Printf("rinse %d: %.1f mg/L\n", i+1, content.In(units.MilligramPerLitre))
	}
	// Output:
	// 2551:1 <nil>
	// rinse 1: 159.9 mg/L
	// rinse 2: 3.1 mg/L
}

// Water for 3000:1 behind nickel, in one to three tanks.
func ExampleWaterFor() {
	for n := 1; n <= 3; n++ {
		q, err := rinse.WaterFor(3000, n, 0.06*rinse.LitrePerHour, 0)
		fmt.Printf("%d: %.2f L/h %v\n", n, q.In(rinse.LitrePerHour), err)
	}
	// Output:
	// 1: 179.94 L/h <nil>
	// 2: 3.26 L/h <nil>
	// 3: 0.84 L/h <nil>
}

func ExampleCounterflow_Working() {
	steps, _ := rinse.Counterflow{Stages: 2, Water: 3 * rinse.LitrePerHour,
		DragIn: 0.06 * rinse.LitrePerHour}.Working(8 * units.GramPerLitre)
	fmt.Print(working.Text(steps[1:2]))
	// Output:
	// bath over last rinse: 2551
	//   R = 1 + r + r^2·D/D_in  [Derived]
	//     r = 50 (water over drag-out)
	//     D = 60 mL/h (drag-out of every rinse)
	//     D_in = 60 mL/h (drag-in from the bath)
}

// Two taps, 20 L/h together, and work that takes on half of what it brings.
func ExampleSplitWater() {
	q, err := rinse.SplitWater(20*rinse.LitrePerHour, 2, 0.2*rinse.LitrePerHour, 0.1*rinse.LitrePerHour)
	fmt.Println(q, err)
	// Output: [9.95 L/h 10.05 L/h] <nil>
}

func ExampleLeftOnPart() {
	r, err := rinse.LeftOnPart(3.1*units.MilligramPerLitre, 1.5*units.Millilitre, 184*units.SquareCentimetre)
	fmt.Printf("%.1f µg %v\n", r.Mass.In(units.Microgram), err)
	// Output: 4.7 µg <nil>
}

func ExampleSpray_Ratio() {
	r, err := rinse.Spray{Film: 1.5 * units.Millilitre, Water: 15 * units.Millilitre, Mixing: 0.3}.Ratio()
	fmt.Printf("%.0f:1 %v\n", float64(r), err)
	// Output: 20:1 <nil>
}

// A week at the gold bath: what a drag-out tank saves.
func ExampleRecovery_Over() {
	r := rinse.Recovery{Bath: 8 * units.GramPerLitre, DragOut: 60 * rinse.MillilitrePerHour,
		Evaporation: 120 * rinse.MillilitrePerHour}
	for r.Tanks = 0; r.Tanks <= 2; r.Tanks++ {
		o, err := r.Over(40 * units.Hour)
		fmt.Printf("%d: lost %.2f g of %.2f g %v\n", r.Tanks, o.Lost.In(units.Gram), o.Dragged.In(units.Gram), err)
	}
	// Output:
	// 0: lost 19.20 g of 19.20 g <nil>
	// 1: lost 4.80 g of 19.20 g <nil>
	// 2: lost 1.48 g of 19.20 g <nil>
}

func ExampleBatch_Cycle() {
	b := rinse.Batch{Bath: 8 * units.GramPerLitre, Volume: 2 * units.Litre, DragOut: 1.5 * units.Millilitre,
		Evaporation: 3 * units.Millilitre, Loads: 100}
	c, err := b.Cycle()
	fmt.Printf("pour back %.0f mL, share kept %s %v\n", c.Poured.In(units.Millilitre), c.Share.Percent(0), err)
	// Output: pour back 450 mL, share kept 77 % <nil>
}

func ExampleRatioFor() {
	limit := rinse.Limits()[0]
	r, err := rinse.RatioFor(8*units.GramPerLitre, limit.Most)
	fmt.Printf("%s of %s: %.0f:1 %v\n", limit.Printed, limit.Of, float64(r), err)
	// Output: 0.005 oz/gal of metal or cyanide: 214:1 <nil>
}

func ExampleFigures() {
	for _, f := range rinse.Figures()[:2] {
		fmt.Println(f.Shape, f.Low.Text(units.Micrometre, 0), f.Source)
	}
	// Output:
	// vertical, well drained 16 µm DragOutTable
	// vertical, poorly drained 81 µm DragOutTable
}

func ExampleCriteria() {
	c := rinse.Criteria()
	fmt.Println(c[len(c)-1].After, float64(c[len(c)-1].Low), "to", float64(c[len(c)-1].High), c[0].Source)
	// Output: nickel 3000 to 10000 RinseCriteria
}

func ExampleLimits() {
	for _, l := range rinse.Limits() {
		fmt.Println(l.Of, l.Printed, l.Source)
	}
	// Output:
	// metal or cyanide 0.005 oz/gal RinsingLessWater
	// chromium 0.002 oz/gal RinsingLessWater
}

// A load every six minutes that carries 3 mL.
func ExampleNewFlow() {
	f, err := rinse.NewFlow(3*units.Millilitre, 6*units.Minute)
	fmt.Println(f, err)
	// Output: 30 mL/h <nil>
}

// Two running rinses, each with water of its own, to a thousandth.
func ExampleSeriesWaterFor() {
	d, err := rinse.NewFlow(3*units.Millilitre, 6*units.Minute)
	if err != nil {
		fmt.Println(err)
		return
	}
	list, err := rinse.SeriesWaterFor(1000, 2, d, d)
	for _, f := range list {
		fmt.Println(f)
	}
	fmt.Println(err)
	// Output:
	// 0.918683 L/h
	// 0.918683 L/h
	// <nil>
}

// A spray over the tank, on a film of 1.5 mL, half as good as perfect mixing.
func ExampleSprayWaterFor() {
	w, err := rinse.SprayWaterFor(100, 1.5*units.Millilitre, 0.5)
	fmt.Println(w.Text(units.Millilitre, 1), err)
	// Output: 13.8 mL <nil>
}

func ExampleWaterForWorking() {
	d, err := rinse.NewFlow(3*units.Millilitre, 6*units.Minute)
	if err != nil {
		fmt.Println(err)
		return
	}
	steps, err := rinse.WaterForWorking(1000, 2, d, d)
	if err != nil {
		fmt.Println(err)
		return
	}
	last := steps[len(steps)-1]
	fmt.Println(last.Result.Meaning+":", last.Result.Value)
	// Output: fresh water: 0.933327 L/h
}

func ExampleLeftOnPartWorking() {
	steps, err := rinse.LeftOnPartWorking(8*units.MilligramPerLitre, 1.5*units.Millilitre, 184*units.SquareCentimetre)
	for _, s := range steps {
		fmt.Println(s.Formula, "=", s.Result.Value)
	}
	fmt.Println(err)
	// Output:
	// m = C·V = 0.012 mg
	// m_A = m/A = 6.52174e-05 mg/cm²
	// <nil>
}
