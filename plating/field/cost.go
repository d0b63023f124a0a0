package field

import (
	"math"
	"runtime"
)

// A Cost is what a run is expected to take, by laws fitted to the benchmarks of
// this package.
type Cost struct {
	// panels, those of the box included
	Unknowns int
	// at the peak, of which the compressed blocks are the larger part
	Bytes int64
	// on cores of today; within a factor of three
	Seconds float64
}

// besides is what a run holds besides the compressed blocks: panels with their
// quadrature rules, the tree, the vectors of GMRES, the factors of the leaves.
// All grow with the number of panels alone.
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

// The tolerance of the operator and that of the iteration are alike by default:
// a solution that is converged further than its equations are known is no
// better.
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
	// The walls without parts near them are the least: parts refine them, and
	// never make them coarser.
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
// The operator is counted twice and the smaller figure taken: below some
// thousand panels compression saves nothing, and n² entries of four bytes a
// layer are what the blocks hold. Above, a panel takes part in log₂(n) levels
// of the tree at about the same cost each. A smaller tolerance takes a longer
// sum in every block: the terms fall geometrically, so that their number grows
// with the logarithm of the tolerance, 5 decades being the default.
//
// The exponent of the time is above 1 for the same logarithm and because Newton
// and GMRES take a few more steps on finer meshes.
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
