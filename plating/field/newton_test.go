package field

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// Anodic and cathodic kinetics both, through many decades of the drive: the
// iteration settles in few steps.
func TestPropertyNewton(t *testing.T) {
	testdata.SlowOnly(t)
	for _, c := range []struct {
		j0, b, volts float64
	}{{1, 0.05, 2}, {1e-6, 0.026, 1}, {1e-9, 0.05, 10}, {10, 0.013, 0.05}, {0.1, 0.1, 100}, {1e-3, 0.05, 1e-3}} {
		p := hung(8, 5, 1.5)
		p.Surfaces[0].Law = butlerVolmer(c.j0, c.b)
		p.Box.Walls[0].Law = butlerVolmer(c.j0*10, c.b)
		p.Drive = current.ByVoltage(units.Voltage(c.volts))
		a := solve(t, p, MeshOptions{})
		if c.volts < 10*c.b { // the reverse reaction counts: a Tafel law is refused
			if a.Work.Newton > 15 {
				t.Errorf("%+v: %d Newton steps", c, a.Work.Newton)
			}
			continue
		}
		p.Surfaces[0].Law = tafel(c.j0, c.b)
		b := solve(t, p, MeshOptions{})
		t.Logf("%+v: %d and %d steps, %.4g A", c, a.Work.Newton, b.Work.Newton, a.Current)
		if a.Work.Newton > 15 || b.Work.Newton > 15 {
			t.Errorf("%+v: %d and %d Newton steps", c, a.Work.Newton, b.Work.Newton)
		}
	}
}

// The bound that ends the iteration holds: a run to the last digit changes no
// local current density by more. The laws span the same decades; the last cells
// are linear, and what GMRES leaves there sits on the smallest panels.
func TestPropertyStop(t *testing.T) {
	testdata.SlowOnly(t)
	cells := map[string]MeshProblem{}
	for _, c := range []struct {
		j0, b, volts float64
	}{{1, 0.05, 2}, {1e-6, 0.026, 1}, {1e-9, 0.05, 10}, {10, 0.013, 0.05}, {0.1, 0.1, 100}, {1e-3, 0.05, 1e-3}} {
		for _, l := range []current.Law{butlerVolmer(c.j0, c.b), tafel(c.j0, c.b)} {
			if l.Model == current.Tafel && c.volts < 10*c.b {
				continue // refused: TestPropertyTafel
			}
			p := hung(12, 6, 2.5)
			p.Surfaces[0].Law = l
			p.Box.Walls[0].Law = butlerVolmer(c.j0*10, c.b)
			p.Drive = current.ByVoltage(units.Voltage(c.volts))
			cells[fmt.Sprint(c, l.Model)] = p
		}
	}
	linear := hung(16, 8, 3)
	linear.Surfaces[0].Law = current.LinearLaw(1e-5)
	primary := hung(16, 8, 3)
	primary.Surfaces[0].Law = current.Law{}
	cells["linear"], cells["primary in a tank"] = linear, primary
	cells["primary"] = one(cube(26, 1, r3.Vec{}, 3).surface("cube", current.Cathode))
	for name, p := range cells {
		b := solve(t, p, MeshOptions{Converged: 1e-9})
		for _, wanted := range []float64{1e-3, 1e-5} {
			a := solve(t, p, MeshOptions{Converged: wanted})
			worst := 0.0
			for i := range a.Surfaces {
				mean := math.Abs(float64(b.Surfaces[i].Mean()))
				for k, j := range a.Surfaces[i].Density {
					is := float64(b.Surfaces[i].Density[k])
					worst = max(worst, math.Abs(float64(j)-is)/(math.Abs(is)+1e-7*mean))
				}
			}
			t.Logf("%s: %d and %d steps, bound %.1e, is %.1e, residual %.1e V", name, a.Work.Newton, b.Work.Newton,
				a.Checks.Change, worst, a.Checks.Residual)
			if worst > wanted || worst > 2*a.Checks.Change+1e-9 {
				t.Errorf("%s: stopped at %.1e where %.1e was wanted", name, worst, wanted)
			}
		}
	}
}

// A Tafel law whose reverse reaction counts at the least current density is
// refused; with the full law the same cell is solved.
func TestPropertyTafel(t *testing.T) {
	p := hung(8, 5, 1.5)
	p.Surfaces[0].Law = tafel(10, 0.05)
	p.Drive = current.ByVoltage(0.05)
	var refused *current.TafelError
	if _, err := Solve(t.Context(), p, MeshOptions{}); !errors.As(err, &refused) || refused.Surface == "" ||
		refused.Neglects <= current.MostNeglect {
		t.Errorf("%v", err)
	}
	p.Surfaces[0].Law = butlerVolmer(10, 0.05)
	solve(t, p, MeshOptions{})
	p.Surfaces[0].Law = tafel(1e-6, 0.05)
	p.Drive = current.ByVoltage(2)
	for _, w := range solve(t, p, MeshOptions{}).Warnings {
		if strings.Contains(w.Text, "Tafel") {
			t.Errorf("far above its exchange current density: %v", w)
		}
	}
}

// Conditioning: panels drawn to the edges of a cube raise the condition number of
// the single layer from 1e2 to 1e4. The steps of GMRES must not follow it.
func TestPropertyTrapConditioning(t *testing.T) {
	testdata.SlowOnly(t)
	for name, at := range map[string]func(exponent float64) MeshProblem{
		"bath without end": func(e float64) MeshProblem { return one(cube(14, 1, r3.Vec{}, e).surface("", current.Cathode)) },
		"tank":             func(e float64) MeshProblem { return hung(10, 6, e) },
	} {
		var steps []int
		for _, e := range []float64{1, 2, 3} {
			steps = append(steps, solve(t, at(e), MeshOptions{}).Work.Krylov)
		}
		t.Logf("%s: %v steps at grading 1, 2, 3", name, steps)
		if steps[1] > 3*steps[0]/2 || steps[2] > 5*steps[0]/2 || steps[2] > 90 {
			t.Errorf("%s: %v steps at grading 1, 2, 3", name, steps)
		}
	}
}

// Deep in a recess the current is a small part of the whole; it must not hang
// on the tolerance of the iteration.
func TestPropertyTrapRecess(t *testing.T) {
	testdata.SlowOnly(t)
	p := one(cup(12, 0.3, 0.6).surface("cup", current.Cathode))
	a := solve(t, p, MeshOptions{})
	b := solve(t, p, MeshOptions{Tolerance: 1e-7, Converged: 1e-9})
	floor := r3.Vec{X: 0.5, Y: 0.5, Z: 0.1}
	x, y := a.Surfaces[0].Density[a.Surfaces[0].nearest(floor)], b.Surfaces[0].Density[b.Surfaces[0].nearest(floor)]
	part := float64(x / a.Surfaces[0].Mean())
	t.Logf("floor over mean %.3e, off by %.1e", part, float64(x/y)-1)
	near2(t, "floor", float64(x), float64(y), 1e-2)
	if !(part > 0 && part < 0.1) {
		t.Errorf("floor over mean %.3e", part)
	}
}
