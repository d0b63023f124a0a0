package axi_test

import (
	"context"
	"errors"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// TestPropertyStiff: exponentials far from the guess converge in few steps, at
// any voltage, and by current as well. Steps that are only capped need 20.
func TestPropertyStiff(t *testing.T) {
	long(t)
	for _, volts := range []units.Voltage{0.01, 0.5, 3, 20, 1000} {
		for _, law := range []current.Law{tafel(0.0065, 1e-6), tafel(0.02, 1e-6), butlerVolmer(1e-6),
			butlerVolmer(1e3)} {
			if law.Model == current.Tafel && volts < 0.5 {
				continue // refused: TestPropertyTafel
			}
			p := hung()
			p.Parts[0].Law = law
			p.Drive = current.ByVoltage(volts)
			s := solve(t, p, order(6, 1))
			// V - φ of 1e-10 V has few digits
			if s.Checks.Iterations > 15 || s.Current <= 0 || s.Checks.Residual > 1e-7 {
				t.Errorf("%v at %v: %d steps, %v, residual %.1e", law.Model, volts, s.Checks.Iterations, s.Current,
					s.Checks.Residual)
			}
			p.Drive = current.ByCurrent(s.Current)
			b := solve(t, p, order(6, 1))
			near(t, "voltage", float64(b.Voltage), float64(volts), 1e-8)
		}
	}
}

// Floating metal that lets no current through, to the last bit, has no potential.
func TestPropertySingular(t *testing.T) {
	p := hung()
	p.Bath.Conductivity = 1e300
	p.Parts = append(p.Parts, Revolved{Name: "ring", Profile: Torus(40*mm, 30*mm, 4*mm), Kind: current.Floating,
		Law: butlerVolmer(1e-30)})
	for _, o := range []ProfileOptions{{}, single, quick} {
		s, err := Solve(context.Background(), p, o)
		var e *SolveError
		if s != nil || !errors.Is(err, ErrSingular) || !errors.As(err, &e) || e.Unknowns == 0 {
			t.Errorf("nothing fixes the ring: %v", err)
		}
	}
}
