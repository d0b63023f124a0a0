package job_test

import (
	"fmt"
	"os"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// parts is a table of a clock workshop; the count of the second row is missing.
const parts = `part,count,area_cm2,metal,efficiency,current_density_A_dm2,min_thickness_um,min_to_average,price_per_g
minute hand,12,5.06,Au,0.37,0.5,1,0.6,98.50
bezel,,47.2,Au,0.92,0.3,2.5,0.55,98.50
pendulum bob,1,210,Ag,0.99,0.8,5,0.7,1.35
`

// Every row is worked out, or says what is wrong with it.
func ExampleRows() {
	table, err := job.Rows(strings.NewReader(parts))
	if err != nil {
		fmt.Println(err)
		return
	}
	for row, err := range table.All() {
		if err != nil {
			fmt.Println(err) // the input cannot be read any further
			return
		}
		e, err := row.Estimate()
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(row.Part, e.Current.Text(units.Ampere, 3), e.Time.Text(units.Minute, 1), e.Mass.Text(units.Gram, 3),
			e.Cost)
	}
	// Output:
	// minute hand 0.304 A 14.2 min 0.195 g 19.21
	// count "": need a whole number from 1 to 1000000000 (line 3)
	// pendulum bob 1.680 A 14.1 min 1.575 g 2.13
}

// From CSV to CSV, with the rows that failed counted.
func ExampleEstimateRows() {
	n, err := job.EstimateRows(os.Stdout, strings.NewReader(parts[:strings.Index(parts, "pendulum")]))
	fmt.Println(n, err)
	// Output:
	// part,count,area_cm2,metal,efficiency,current_density_A_dm2,min_thickness_um,min_to_average,price_per_g,current_A,time_min,charge_Ah,average_thickness_um,metal_g,metal_cost,error
	// minute hand,12,5.06,Au,0.37,0.5,1,0.6,98.50,0.3036,14.1955379097133,0.0718294218231495,1.66666666666667,0.195316,19.21,
	// bezel,,47.2,Au,0.92,0.3,2.5,0.55,98.50,,,,,,,"count """": need a whole number from 1 to 1000000000 (line 3)"
	// 1 of 2 rows failed; see the column error; the first stands on line 3 <nil>
}

// A writer of one's own loop: rows of silver are left out.
func ExampleRowWriter() {
	table, err := job.Rows(strings.NewReader(parts))
	if err != nil {
		fmt.Println(err)
		return
	}
	out, err := job.NewRowWriter(os.Stdout, table)
	for row, rowErr := range table.All() {
		if err != nil || rowErr != nil {
			fmt.Println(err, rowErr)
			return
		}
		if row.Layer.Bath.Metal != "Ag" {
			e, wrong := row.Estimate()
			err = out.Write(&row, &e, wrong)
		}
	}
	fmt.Println(out.Flush(), out.Count())
	// Output:
	// part,count,area_cm2,metal,efficiency,current_density_A_dm2,min_thickness_um,min_to_average,price_per_g,current_A,time_min,charge_Ah,average_thickness_um,metal_g,metal_cost,error
	// minute hand,12,5.06,Au,0.37,0.5,1,0.6,98.50,0.3036,14.1955379097133,0.0718294218231495,1.66666666666667,0.195316,19.21,
	// bezel,,47.2,Au,0.92,0.3,2.5,0.55,98.50,,,,,,,"count """": need a whole number from 1 to 1000000000 (line 3)"
	// <nil> 1 of 2 rows failed; see the column error; the first stands on line 3
}

// A row made in code is priced as one of a table.
func ExampleRow_Estimate() {
	silver, err := faraday.NewDeposit("Ag", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	row := job.Row{Part: "dial", Count: 1, PricePerGram: decimal.RequireFromString("1.35"), Layer: plating.Layer{
		Bath: plating.OperatingBath{Metal: "Ag", Deposit: silver, Efficiency: plating.ConstantEfficiency(0.99)},
		Area: 180 * units.SquareCentimetre, Distribution: plating.Distribution{MinToAverage: 0.8},
		MinThickness: 4 * units.Micrometre, CurrentDensity: 0.8 * units.AmperePerSquareDecimetre,
	}}
	e, err := row.Estimate()
	fmt.Println(e.Mass.Text(units.Gram, 3), e.Cost, err)
	// Output:
	// 0.945 g 1.28 <nil>
}
