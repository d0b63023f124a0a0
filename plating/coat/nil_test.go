package coat_test

import (
	"errors"
	"testing"

	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// TestPropertyNothingGiven: nil where a bath, coat, selector or solution belongs is
// an error that names it, never a panic.
func TestPropertyNothingGiven(t *testing.T) {
	s := coat.Surface{Patches: []coat.Patch{{Area: 1, Density: 1}}}
	c := coat.Coat{Thickness: make([]units.Length, 1), PartArea: s.Patches[0].Area}
	var none *coat.Coat
	for name, err := range map[string]error{
		"selector": second(s.Mark(nil)), "selector of both": second(s.Mark(coat.Both(coat.Facing(s.Patches[0].At, 1), nil))),
		"selector of not":           second(s.Mark(coat.Not(nil))),
		"bath to compare":           second(coat.Compare([]coat.Way{{Name: "as it hangs", Surface: s}}, nil, 1e-6)),
		"bath to lay":               second(coat.Lay(s, nil, 1)),
		"bath for the time":         second(coat.TimeFor(s, nil, 1e-6)),
		"bath for what is given":    second(c.GivenAway(s, nil, 1e-6)),
		"coat for what is given":    second(none.GivenAway(s, nil, 1e-6)),
		"coat below":                second(none.Below(s, 1e-6)),
		"coat for the distribution": second(none.Distribution(s)),
	} {
		var v *units.ValueError
		if !errors.As(err, &v) || !errors.Is(err, units.ErrNotGiven) || v.Need == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, _, err := coat.Schedule([]coat.Surface{s}, []units.Ratio{1}, nil); !errors.Is(err, units.ErrNotGiven) {
		t.Errorf("bath of a schedule: %v", err)
	}
}

func second[T any](_ T, err error) error { return err }
