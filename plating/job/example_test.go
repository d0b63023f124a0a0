package job_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"

	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
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
	j, err := job.Read(strings.NewReader(pendulumBob), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(j.Name, len(j.Parts), len(j.Layers))

	// A mistake is named with its line and with what would do.
	_, err = job.Read(strings.NewReader(strings.Replace(pendulumBob, `"95 %"`, `"95"`, 1)), nil)
	var wrong *units.FileError
	if errors.As(err, &wrong) {
		fmt.Println(wrong)
	}
	// Output:
	// pendulum bob of a regulator 1 1
	// job file line 7, layers[1].bath.efficiency: is "95"; need a fraction above 0 and at most 1, as 0.35 or "35 %"
}

func ExampleSheet_WriteJSON() {
	j, err := job.Read(strings.NewReader(pendulumBob), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := j.Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	var text bytes.Buffer
	if err := s.WriteJSON(&text, job.SheetOptions{}); err != nil {
		fmt.Println(err)
		return
	}
	var sheet struct {
		Area  string
		Tanks []struct{ Coat struct{ Current string } }
	}
	if err := json.Unmarshal(text.Bytes(), &sheet); err != nil {
		fmt.Println(err)
		return
	}
	// Texts hold every digit; read them as quantities before you round.
	area, err := units.ParseArea(sheet.Area)
	fmt.Println(area.Text(units.SquareCentimetre, 1), err)
	amps, err := units.ParseCurrent(sheet.Tanks[0].Coat.Current)
	fmt.Println(amps.Text(units.Ampere, 2), err)
	// Output:
	// 188.5 cm² <nil>
	// 5.65 A <nil>
}

// A job in Go, written as a file that others read.
func ExampleJob_Write() {
	j := job.Job{Name: "pendulum bob", Parts: []job.Part{{Name: "bob", Count: 1, Area: 188 * units.SquareCentimetre}},
		Layers: []job.OwnCoat{{Bath: bath.Bath{Library: "nickel-watts"}, MinThickness: 4 * units.Micrometre,
			Evenness: job.Evenness{MinToAverage: 0.5}}}}
	if err := j.Write(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// {
	//   "format": "laydown job 1",
	//   "job": "pendulum bob",
	//   "parts": [
	//     {
	//       "name": "bob",
	//       "count": 1,
	//       "area": "188 cm²"
	//     }
	//   ],
	//   "layers": [
	//     {
	//       "bath": {
	//         "library": "nickel-watts"
	//       },
	//       "min_to_average": "0.5",
	//       "min_thickness": "4 µm"
	//     }
	//   ]
	// }
}
