package bath

import "example.com/laydown/units"

// A Typical is one row of the printed table of usual current densities and
// tank volts.
type Typical struct {
	Bath           string // as the table names it
	CurrentDensity Range[units.CurrentDensity]
	Volts          Range[units.Voltage]
}

// TypicalTable returns the printed table of usual current densities and tank
// volts by bath, for baths that are not in the library and as a second opinion
// on those that are. The order of its rows was recovered from column text.
//
// Source: [Guidebook2012] p. 762, Table I.
func TypicalTable() []Typical {
	// The table is printed in A/ft²; the rows hold its numbers as they stand there.
	row := func(bath string, low, high units.CurrentDensity, v1, v2 units.Voltage) Typical {
		return Typical{bath, published(low*ft2, high*ft2, "Guidebook2012"), published(v1, v2, "Guidebook2012")}
	}
	return []Typical{
		row("brass", 5, 20, 2, 5),
		row("cadmium", 5, 50, 2, 5),
		row("chromium, decorative", 100, 200, 4, 6),
		row("chromium, hard", 200, 500, 5, 12),
		row("copper cyanide", 20, 60, 2, 5),
		row("copper sulfate", 15, 50, 1, 4),
		row("gold, acid", 10, 30, 5, 6),
		row("nickel", 20, 100, 4, 8),
		row("silver", 5, 30, 0.5, 2),
		row("tin fluoborate", 25, 150, 1, 3),
		row("tin stannate", 30, 100, 4, 6),
		row("tin sulfate", 10, 40, 1, 4),
		row("zinc cyanide", 10, 90, 1.5, 6),
	}
}
