package job_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// hourHand is a job with one coat from the library: the hour hand of a bracket clock.
func hourHand() job.Job {
	return job.Job{Name: "hour hand", Substrate: "nickel-plated steel",
		Parts: []job.Part{{Name: "hand", Count: 1, Area: 5.2 * units.SquareCentimetre}},
		Layers: []job.OwnCoat{{Name: "gold", Bath: bath.Bath{Library: "gold-acid-cobalt"},
			MinThickness: 1 * units.Micrometre, Evenness: job.Evenness{MinToAverage: 0.6}}}}
}

// A job that a program makes is checked before it is computed: the fault has a path.
func ExampleJob_Check() {
	j := hourHand()
	fmt.Println(j.Check())

	j.Layers[0].MinToAverage = 1.2
	var fault *job.Fault
	if errors.As(j.Check(), &fault) {
		fmt.Println(fault.Path)
	}
	// Output:
	// <nil>
	// layers[1].min_to_average
}

// The sheet as text: here the settings of its only tank.
func ExampleSheet_WriteText() {
	s, err := hourHand().Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	var text bytes.Buffer
	if err := s.WriteText(&text, job.SheetOptions{}); err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(text.String()) {
		if strings.Contains(line, "[ ] set ") || strings.Contains(line, "[ ] time ") {
			fmt.Println(strings.Join(strings.Fields(line), " "))
		}
	}
	// Output:
	// [ ] set 84.0 mA 1.61 A/dm² (range 1.08 A/dm² to 2.15 A/dm²) on the whole area
	// [ ] time 4 min 2 s for the minimum thickness of 1.00 µm at the thinnest spot
}

// The sheet as a page to print: it holds the same words.
func ExampleSheet_WriteHTML() {
	s, err := hourHand().Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	var page bytes.Buffer
	if err := s.WriteHTML(&page, job.SheetOptions{}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.HasPrefix(page.String(), "<!DOCTYPE html>"), strings.Contains(page.String(), "hour hand"))
	// Output: true true
}

// Every formula with its numbers, chapter by chapter.
func ExampleSheet_Working() {
	s, err := hourHand().Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	chapters, err := s.Working()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range chapters {
		fmt.Println(c.Title)
	}
	fmt.Println(chapters[1].Steps[0].Formula)
	// Output:
	// area of the load
	// gold
	// hydrogen of tank 1
	// s = s_min/r
}

// The schema of job files tells an editor what fits.
func ExampleSchema() {
	raw, err := job.Schema()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(bytes.Contains(raw, []byte(`"min_thickness"`)))
	// Output: true
}
