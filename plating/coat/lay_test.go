package coat_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// TestIndependentLay compares with the integrals of a density that rises
// linearly from 1 to 3 A/dm².
func TestIndependentLay(t *testing.T) {
	b := goldBath(t)
	s := bar(1000)
	c, err := coat.Lay(s, b, 10*units.Minute)
	if err != nil {
		t.Fatal(err)
	}
	per, err := b.Deposit.Thickness(1*dm2, 10*units.Minute, 0.9) // for 1 A/dm²
	if err != nil {
		t.Fatal(err)
	}
	for what, pair := range map[string][2]float64{
		"mean":    {float64(c.Average), 2 * float64(per)},
		"min":     {float64(c.Min), 1.001 * float64(per)},
		"max":     {float64(c.Max), 2.999 * float64(per)},
		"ratio":   {float64(c.MinToAverage), 1.001 / 2},
		"current": {float64(c.Current), 0.2},
		"mass":    {float64(c.Mass), 0.2 * 600 * 0.9 * float64(b.Deposit.Equivalent)},
		"fine":    {float64(c.FineMass), 0.997 * 0.2 * 600 * 0.9 * float64(b.Deposit.Equivalent)},
		"p05":     {float64(c.P05), 1.1 * float64(per)},
		"p95":     {float64(c.P95), 2.9 * float64(per)},
	} {
		if d := relative(pair[0], pair[1]); d > 2e-3 && strings.HasPrefix(what, "p") || d > 1e-12 && !strings.HasPrefix(what,
			"p") {
			t.Errorf("%s: %v, want %v", what, pair[0], pair[1])
		}
	}
	// Thinner than twice the unit: the lower half.
	a, err := c.Below(s, 2*per)
	if err != nil || relative(float64(a), 0.5e-3) > 1e-9 {
		t.Errorf("below: %v %v", a, err)
	}
	// Above the unit: the mean of (x - 1) over 1..3 is 1, on the whole area.
	away, err := c.GivenAway(s, b, per)
	if want := 0.997 * float64(b.Deposit.Density) * float64(per) * 1e-3; err != nil || relative(float64(away),
		want) > 1e-9 {
		t.Errorf("given away: %v, want %v, %v", away, want, err)
	}
	d, err := c.Distribution(s)
	if err != nil || d.MinToAverage != c.MinToAverage || d.Basis != "made up" || d.Uncertainty != 0.01 {
		t.Errorf("%+v %v", d, err)
	}
}

// TestPropertyTimeKeepsTheMinThickness: after TimeFor the thinnest spot has the
// promise, with a constant efficiency and with a curve that moves the thinnest
// spot to where the current is largest.
func TestPropertyTimeKeepsTheMinThickness(t *testing.T) {
	b := goldBath(t)
	steep, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 1 * dm2, Efficiency: 0.9},
		plating.EfficiencyPoint{CurrentDensity: 3 * dm2, Efficiency: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	for name, curve := range map[string]plating.EfficiencyCurve{"constant": b.Efficiency, "steep": steep} {
		b.Efficiency = curve
		s := bar(200)
		least := 2.5 * units.Micrometre
		time, err := coat.TimeFor(s, b, least)
		if err != nil {
			t.Fatal(err)
		}
		c, err := coat.Lay(s, b, time)
		if err != nil {
			t.Fatal(err)
		}
		if relative(float64(c.Min), float64(least)) > 1e-12 {
			t.Errorf("%s: %v, promised %v", name, c.Min, least)
		}
		if thinAtTop := c.MinPatch == 199; thinAtTop != (name == "steep") {
			t.Errorf("%s: thinnest patch %d", name, c.MinPatch)
		}
		if c.EfficiencyHeld != 0 {
			t.Errorf("%s: %v held", name, c.EfficiencyHeld)
		}
		// The whole job agrees with plating.Estimate where the efficiency is constant.
		if name == "constant" {
			dist, _ := c.Distribution(s)
			r, err := plating.Estimate(&plating.Layer{Bath: *b, Area: c.PartArea, Distribution: dist, MinThickness: least,
				CurrentDensity: 2 * dm2})
			if err != nil || relative(float64(r.Time), float64(time)) > 1e-12 || relative(float64(r.Mass),
				float64(c.Mass)) > 1e-12 {
				t.Errorf("Estimate: %v and %v, %v", r.Time, time, err)
			}
		}
	}
}

// TestSignificantMetal: what is given away counts the whole part, whatever is
// significant.
func TestSignificantMetal(t *testing.T) {
	b := goldBath(t)
	s := bar(10)
	low, err := s.Mark(coat.InBox(r3.Vec{X: -1, Y: -1, Z: -1}, r3.Vec{X: 1, Y: 1, Z: 0.05}))
	if err != nil {
		t.Fatal(err)
	}
	c, err := coat.Lay(low, b, 600)
	if err != nil {
		t.Fatal(err)
	}
	part, err := c.GivenAway(low, b, c.Min)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := c.GivenAway(s, b, c.Min)
	if err != nil || part != whole || part <= 0 {
		t.Errorf("%v given away with marks, %v without, %v", part, whole, err)
	}
	if all := coat.AwayFrom([][2]r3.Vec{{{}, {Z: 1}}}, units.Length(math.NaN())); all(s.Patches[0]) {
		t.Error("a distance that is no number selects")
	}
}
