package baths_test

import (
	"fmt"

	"example.com/laydown/plating/baths"
)

func ExampleFind() {
	b, err := baths.Find(baths.Library(), "silver-strike")
	fmt.Println(b.Name, b.LiveEntry, err)
	// Output: silver, cyanide strike true <nil>
}

// An estimate is known no better than its weakest figure.
func ExampleWeakest() {
	fmt.Println(baths.Weakest(baths.Measured, baths.SecondHand, baths.Published))
	// Output: second hand
}
