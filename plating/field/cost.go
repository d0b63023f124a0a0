package field

import (
	"math"
	"runtime"
)

// A Cost is what a run is expected to take.
type Cost struct {
	Unknowns int     // panels, those of the box included
	Bytes    int64   // at the peak
	Seconds  float64 // on cores of today; within a factor of three
}

// besides is what a run holds besides the compressed blocks.
func besides(n int, single bool) int64 {
	if single {
		return 8000 * int64(n)
	}
	return 10_000 * int64(n)
}

// settings are the options with their defaults filled in.
type settings struct {
	tolerance, converged float64
	limit                int64
	workers              int
	progress             func(string, int, int)
}

func (o *MeshOptions) settings() settings {
	s := settings{o.Tolerance, o.Converged, o.MemoryLimit, o.Workers, o.Progress}
	if s.tolerance == 0 {
		s.tolerance = 1e-5
	}
	if s.converged == 0 {
		s.converged = 1e-5
	}
	if s.limit == 0 {
		s.limit = 4 << 30
	}
	if s.workers == 0 {
		s.workers = runtime.GOMAXPROCS(0)
	}
	return s
}

// tooBig refuses, before anything is laid, what no way of laying it would bring
// under the memory limit: the walls of a box may ask for millions of panels.
func (p *MeshProblem) tooBig(o *MeshOptions) error {
	if p.Box == nil {
		return nil
	}
	n := fewestPanels(p.Box)
	for i := range p.Surfaces {
		n += len(p.Surfaces[i].Triangles)
	}
	s := o.settings()
	if least := cost(n, false, o.Galerkin, &s); least.Bytes > s.limit {
		return &CostError{Cost: least, Limit: s.limit}
	}
	return nil
}

// cost estimates a run by laws fitted to the benchmarks of this package, and to a free
// form in a tank.
//
//	bytes = n·(a + b·log₂(n/32))     seconds = t·n^p/workers
//
// Within a third for the bytes of meshes like those and a factor of three for the
// seconds; a thin or crowded body takes more. Of the bytes, a·n are panels, tree and
// what the collector has not cleared yet, measured as memory of the whole process.
//
// Source: [Derived] from BenchmarkPrimaryCube, BenchmarkPrimarySphere and BenchmarkTankCube.
func cost(n int, single, galerkin bool, s *settings) Cost {
	x := float64(n)
	layers, grows, t, p := 2.0, 2000.0, 3.5e-5, 1.3
	if single {
		layers, grows, t, p = 1, 650, 2e-5, 1.25
	}
	grows *= -math.Log10(s.tolerance) / 5
	operator := min(4*layers*x*x, grows*x*math.Log2(max(x, 64)/32))
	seconds := t * math.Pow(x, p) / float64(s.workers)
	if galerkin {
		seconds *= 3.5
	}
	return Cost{Unknowns: n, Bytes: int64(operator) + besides(n, single), Seconds: seconds}
}
