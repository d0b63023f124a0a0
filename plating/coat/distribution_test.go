package coat_test

import (
	"math"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// TestHowSure: what a solution says of its error reaches the estimate: known,
// unknown and not resolved are told apart.
func TestHowSure(t *testing.T) {
	b := goldBath(t)
	lay := func(s coat.Surface) plating.Distribution {
		c, err := coat.Lay(s, b, 600)
		if err != nil {
			t.Fatal(err)
		}
		d, err := c.Distribution(s)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	known, guess, lost := bar(10), bar(10), bar(10)
	guess.MinError = math.NaN()
	lost.Unresolved = true
	if d := lay(known); d.Uncertainty != 0.01 {
		t.Errorf("known: %+v", d)
	}
	if d := lay(guess); d.Uncertainty != coat.Assumed || d.Basis == guess.Basis {
		t.Errorf("one mesh: %+v", d)
	}
	d := lay(lost)
	if d.Uncertainty != 1 || d.Basis == lost.Basis {
		t.Errorf("not resolved: %+v", d)
	}
	l := plating.Layer{Bath: *b, Area: 0.01, Distribution: d, MinThickness: 1e-6, CurrentDensity: dm2}
	if r, err := plating.Estimate(&l); err != nil || !r.Warnings.Has(plating.WarnRatioUnsure) {
		t.Errorf("the estimate does not question it: %v, %v", r.Warnings, err)
	}
	c, err := coat.Lay(known, b, 600)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := c.Distribution(bar(9)); err == nil {
		t.Error("another part's surface is taken")
	}
	sum, err := coat.Sum([]coat.Surface{known, lost}, []units.Ratio{0.5, 0.5})
	if err != nil || !sum.Unresolved {
		t.Errorf("a sum hides that a position is not resolved: %v", err)
	}
	worse := bar(10)
	worse.MinError = 0.3
	if sum, err = coat.Sum([]coat.Surface{known, worse}, []units.Ratio{0.5, 0.5}); err != nil || sum.MinError != 0.3 {
		t.Errorf("the error of a sum is %v, %v", sum.MinError, err)
	}
	all, err := coat.Compare([]coat.Way{{Name: "as it is", Surface: known}, {Name: "lost", Surface: halved(lost)}}, b,
		1e-6)
	if err != nil || !all[1].Unresolved {
		t.Fatalf("%+v, %v", all, err)
	}
	if metal, time := coat.Best(all); len(metal)+len(time) != 0 {
		t.Errorf("what is not resolved is recommended: %v, %v", metal, time)
	}
}
