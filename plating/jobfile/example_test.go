package jobfile_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

const pendulumBob = `{
  "format": "laydown job 1",
  "job": "pendulum bob of a regulator",
  "parts": [{"name": "bob", "shape": {"kind": "disc", "diameter": "10 cm", "thickness": "1 cm"}}],
  "layers": [{
    "name": "nickel", "min_to_average": 0.5, "min_thickness": "5 µm", "current_density": "3 A/dm²",
    "bath": {"metal": "Ni", "valence": 2, "density": "8.9 g/cm³", "efficiency": "95 %"}
  }]
}`

func ExampleRead() {
	job, err := jobfile.Read(strings.NewReader(pendulumBob))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(job.Name, job.Parts[0].Area.Text(units.SquareCentimetre, 1))

	// A mistake is named with its line and with what would do.
	_, err = jobfile.Read(strings.NewReader(strings.Replace(pendulumBob, `"95 %"`, `"95"`, 1)))
	var wrong *jobfile.Error
	if errors.As(err, &wrong) {
		fmt.Println(wrong)
	}
	// Output:
	// pendulum bob of a regulator 188.5 cm²
	// job file line 7, layers[1].bath.efficiency: is "95"; need a fraction above 0 and at most 1, as 0.35 or "35 %"
}

func ExampleNewReport() {
	job, err := jobfile.Read(strings.NewReader(pendulumBob))
	if err != nil {
		fmt.Println(err)
		return
	}
	res, err := plating.EstimateJob(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := jobfile.NewReport(job, res, false)
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(report)
	fmt.Println(json.Valid(text), err)

	// Texts hold every digit; read them as quantities before you round.
	amps, err := units.ParseCurrent(report.Layers[0].Current)
	fmt.Println(amps.Text(units.Ampere, 2), err)
	// Output:
	// true <nil>
	// 5.65 A <nil>
}

// A job of the clock workshop, with everything that goes on its sheet.
func ExampleReadShop() {
	file, err := testdata.Files.Open("jobs/hands.json")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer file.Close()
	job, err := jobfile.ReadShop(file)
	if err != nil {
		fmt.Println(err)
		return
	}
	sheet, err := traveller.Make(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := jobfile.NewShopReport(&sheet, false)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(report.Sequence), "tanks,", report.Sequence[6].Name, "live:", report.Sequence[6].LiveEntry)
	fmt.Println(report.Stop, report.Price.Currency.Code, report.Price.Total.IsPositive())
	// Output:
	// 14 tanks, acid gold strike live: true
	// false EUR true
}
