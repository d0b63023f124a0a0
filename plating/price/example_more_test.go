package price_test

import (
	"fmt"

	"example.com/laydown/plating/price"
	"example.com/laydown/units"
)

func ExampleMinutes() {
	m, err := price.Minutes(33*units.Minute+31*units.Second, 1, price.HalfEven)
	fmt.Println(m, err)
	// Output: 33.5 <nil>
}

func ExampleKilowattHours() {
	e, err := price.KilowattHours((27 * units.Ampere).At(6*units.Volt).For(40*units.Minute), 3, price.Up)
	fmt.Println(e, err)
	// Output: 0.108 <nil>
}
