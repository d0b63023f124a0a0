package rinse_test

import (
	"fmt"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/units"
)

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
func ExampleFlowOf() {
	f, err := rinse.FlowOf(3*units.Millilitre, 6*units.Minute)
	fmt.Println(f, err)
	// Output: 30 mL/h <nil>
}

// Two running rinses, each with water of its own, to a thousandth.
func ExampleSeriesWaterFor() {
	d, err := rinse.FlowOf(3*units.Millilitre, 6*units.Minute)
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
	d, err := rinse.FlowOf(3*units.Millilitre, 6*units.Minute)
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
