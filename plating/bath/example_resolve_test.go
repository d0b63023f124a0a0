package bath_test

import (
	"bytes"
	"fmt"

	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
)

// The workshop knows the efficiency of its own gold bath. All else comes from a bath of
// like chemistry.
func ExampleBath_Resolve() {
	own := bath.Bath{Like: "gold-acid-cobalt", Name: "gold, tank at the window", Metal: "Au", Valence: 1,
		Efficiency: bath.Range[units.Efficiency]{Low: 0.33, High: 0.36}}
	full, err := own.Resolve(bath.Library())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("efficiency", full.Efficiency.Text())
	fmt.Println("current density", full.CurrentDensity.Origin())
	fmt.Println("hazards", full.Hazards)

	own.Like = "nickel-watts"
	_, err = own.Resolve(bath.Library())
	fmt.Println(err)
	// Output:
	// efficiency 33 % to 36 % (given in the job)
	// current density published, Guidebook2011
	// hazards cyanide, acid, cobalt
	// like nickel-watts, a bath of Ni: values that contradict; need one of Au
}

// The schema of bath files tells an editor what fits.
func ExampleSchema() {
	raw, err := bath.Schema()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(bytes.Contains(raw, []byte(`"efficiency_lines"`)))
	// Output: true
}
