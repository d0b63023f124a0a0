package field

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// Two meshes give the error estimate; a spot on one panel is called unresolved.
func TestPropertyCompare(t *testing.T) {
	testdata.SlowOnly(t)
	p := hung(6, 4, 1)
	a, b := solve(t, p, MeshOptions{}), solve(t, Refined(p), MeshOptions{})
	d, err := Compare(a, b)
	if err != nil || len(d) != 1 {
		t.Fatalf("%v, %v", d, err)
	}
	t.Logf("%+v", d[0])
	if b.Work.Unknowns != 4*a.Work.Unknowns || d[0].Unresolved || math.Abs(d[0].Total) > 0.02 ||
		math.Abs(d[0].Minimum) > 0.05 || d[0].Minimum == 0 {
		t.Errorf("difference %+v on %d and %d panels", d[0], a.Work.Unknowns, b.Work.Unknowns)
	}
	if _, err := Compare(a, nil); !errors.Is(err, units.ErrInconsistent) {
		t.Errorf("comparison with nothing: %v", err)
	}
	coarse := cup(3, 0.3, 0.6)
	s := solve(t, one(coarse.surface("cup", current.Cathode)), MeshOptions{})
	if !s.Surfaces[0].Minimum.Unresolved {
		t.Errorf("minimum %+v of a cup with three panels across passes as resolved", s.Surfaces[0].Minimum)
	}
	// Deeper still the floor of such a cup seems to dissolve.
	if _, err := Solve(t.Context(), one(cup(3, 0.3, 1.5).surface("cup", current.Cathode)),
		MeshOptions{}); !errors.Is(err, ErrSign) {
		t.Errorf("a deep cup with three panels across: %v, want %v", err, ErrSign)
	}
}
