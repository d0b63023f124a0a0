package baths_test

import (
	"fmt"

	"example.com/laydown/plating/baths"
	"example.com/laydown/units/origin"
)

func ExampleFind() {
	b, err := baths.Find(baths.Library(), "silver-strike")
	fmt.Println(b.Name, b.LiveEntry, err)
	// Output: silver, cyanide strike true <nil>
}

// An estimate is known no better than its weakest figure.
func ExampleWeakest() {
	fmt.Println(origin.Weakest(origin.Measured, origin.SecondHand, origin.Published))
	// Output: second hand
}
