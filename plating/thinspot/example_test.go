package thinspot_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"sync"

	"example.com/laydown/plating/thinspot"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func ExampleRead() {
	file, err := testdata.Files.Open("cases/bezel.json")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer file.Close()
	c, err := thinspot.Read(file, nil) // the case names no file
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Name, c.MinThickness, len(c.Mesh.Problem.Surfaces), "bodies")
	// Output: bezel of a carriage clock between two anodes 1 µm 3 bodies
}

// A mistake in the file is told by line and field.
func ExampleRead_wrong() {
	_, err := thinspot.Read(strings.NewReader(`{
  "format": "laydown case 1",
  "conductivity": "6"
}`), nil)
	fmt.Println(err)
	// Output: case file line 3, conductivity: conductivity "6": no unit after the number; accepted: S/m, mS/cm, S/cm
}

// bob is the demo's pendulum bob with a groove in its rim, solved without other arrangements.
var bob = solvedOnce("bob")

// block is a small block before an anode wall on its left, solved on one mesh.
var block = solvedOnce("block")

func solvedOnce(name string) func() (thinspot.Result, error) {
	return sync.OnceValues(func() (r thinspot.Result, err error) {
		file, err := testdata.Files.Open("cases/" + name + ".json")
		if err != nil {
			return r, err
		}
		defer file.Close()
		c, err := thinspot.Read(file, nil)
		if err != nil {
			return r, err
		}
		return c.Solve(context.Background(), thinspot.Options{NoAdvice: true, Quick: true})
	})
}

// finial is the ball on top of a bracket clock, below a ring of an anode.
var finial = sync.OnceValues(func() (thinspot.Result, error) {
	c, err := thinspot.Read(strings.NewReader(`{
  "format": "laydown case 1", "case": "finial of a bracket clock", "conductivity": "6 S/m",
  "bath": {"name": "gold", "metal": "Au", "valence": 1, "density": "17 g/cm³", "efficiency": "35 %"},
  "current": "0.1 A", "min_thickness": "1 µm", "parts": [
    {"name": "finial", "ball": {"radius": "12 mm", "height": "100 mm"}},
    {"name": "anode", "kind": "anode", "torus": {"radius": "40 mm", "height": "125 mm", "thickness": "3 mm"}}]
}`), nil)
	if err != nil {
		return thinspot.Result{}, err
	}
	return c.Solve(context.Background(), thinspot.Options{NoAdvice: true})
})

func ExampleCase_Solve() {
	r, err := finial()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Coat.Time, "for", r.Coat.Min, "of", r.Coat.Average.Text(units.Micrometre, 2), "on average")
	fmt.Println("thinnest", r.Where)
	fmt.Println(r.Above.Text(units.Milligram, 0), "of", r.Case.Bath.Metal, "above the minimum thickness")
	// Output:
	// 7 min 33 s for 1 µm of 1.05 µm on average
	// thinnest at the axis, low, facing down
	// 2 mg of Au above the minimum thickness
}

// The first lines of the page.
func ExampleResult_WriteText() {
	r, err := finial()
	if err != nil {
		fmt.Println(err)
		return
	}
	var page bytes.Buffer
	if err := r.WriteText(&page); err != nil {
		fmt.Println(err)
		return
	}
	for range 6 {
		line, _ := page.ReadString('\n')
		fmt.Fprint(os.Stdout, line)
	}
	// Output:
	// THIN SPOT: finial of a bracket clock
	//
	// workpiece    finial, 18.1 cm², 0.100 A through it of 0.100 A in all, 0.10 V across the cell (equilibrium potentials taken off)
	// time         7 min 34 s until the thinnest spot has the minimum of 1.000 µm
	// thinnest     1.000 µm at r = 0.2 mm, z = 88.0 mm (at the axis, low, facing down)
	// then         average 1.053 µm, 5 % of the area under 1.004 µm, 5 % over 1.095 µm
}

// A script takes the figures by name.
func ExampleResult_MarshalJSON() {
	r, err := finial()
	if err != nil {
		fmt.Println(err)
		return
	}
	raw, err := json.Marshal(r)
	if err != nil {
		fmt.Println(err)
		return
	}
	var f struct {
		Ratio float64 `json:"min_to_average"`
		Where string  `json:"thinnest_where"`
	}
	err = json.Unmarshal(raw, &f)
	fmt.Printf("%.3f %s %v\n", f.Ratio, f.Where, err)
	// Output: 0.950 at the axis, low, facing down <nil>
}

// What is drawn, for whatever draws curves.
func ExampleResult_Pictures() {
	r, err := finial()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range r.Pictures() {
		fmt.Println(p.Title+":", p.Chart.Y.Label, p.Chart.X.Label)
		for _, c := range p.Chart.Curves {
			fmt.Println(c.Name)
		}
	}
	// Output:
	// finial of a bracket clock: thickness after 7 min 34 s, µm along the profile, mm
	// thickness
	// minimum thickness
	// average over the workpiece
	// thinnest spot
}

// How much a mesh takes is known before it is solved.
func ExampleCase_Cost() {
	file, err := testdata.Files.Open("cases/bezel.json")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer file.Close()
	c, err := thinspot.Read(file, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	cost, err := c.Cost(thinspot.Options{Quick: true})
	fmt.Println(cost.Unknowns, "panels,", cost.Memory/1e6, "MB; no finer mesh:", cost.NoFiner, err)
	// Output: 7224 panels, 185 MB; no finer mesh: not asked for <nil>
}
