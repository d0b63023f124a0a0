package field

import (
	"context"
	"errors"
	"runtime"
	"testing"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// Above the memory limit a run is refused before it begins.
func TestPropertyMemoryLimit(t *testing.T) {
	p := hung(12, 6, 1.5)
	c, err := Estimate(p, MeshOptions{MemoryLimit: 1 << 20})
	var big *CostError
	if !errors.As(err, &big) || !errors.Is(err, current.ErrTooLarge) || c.Unknowns != 2160 || c.Bytes <= 1<<20 {
		t.Errorf("estimate %+v, %v", c, err)
	}
	if _, err = Solve(t.Context(), p, MeshOptions{MemoryLimit: 1 << 20}); !errors.Is(err, current.ErrTooLarge) {
		t.Errorf("solve: %v", err)
	}
	c, err = Estimate(p, MeshOptions{})
	s := solve(t, p, MeshOptions{})
	if err != nil || c.Bytes < s.Work.OperatorBytes || c.Bytes > 10*s.Work.OperatorBytes {
		t.Errorf("estimate %+v, %v for an operator of %d bytes", c, err, s.Work.OperatorBytes)
	}
}

// TestPropertyWallsAreCountedFirst: walls cut into millions of panels are refused
// before one is laid.
func TestPropertyWallsAreCountedFirst(t *testing.T) {
	p := hung(4, 6, 2)
	p.Box.Panel = units.Length(1e-5 * (p.Box.High.X - p.Box.Low.X))
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	cost, err := Estimate(p, MeshOptions{})
	runtime.ReadMemStats(&after)
	var big *CostError
	if !errors.As(err, &big) || cost.Unknowns < 1_000_000 || cost != big.Cost {
		t.Errorf("cost %+v, %v", cost, err)
	}
	if grown := after.TotalAlloc - before.TotalAlloc; grown > 10<<20 {
		t.Errorf("%d MB to find out", grown>>20)
	}
	if _, err := Solve(context.Background(), p, MeshOptions{}); !errors.Is(err, current.ErrTooLarge) {
		t.Errorf("solve: %v", err)
	}
}
