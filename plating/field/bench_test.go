//go:build unix

package field

import (
	"context"
	"fmt"
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
)

// The benchmarks print panels, error, seconds, processor seconds and the peak
// of memory of one solution. Those above 10 000 panels run only with
// LAYDOWN_HEAVY=1 in the environment.

// cubeExact is C of the unit cube, extrapolated from averaged runs of this
// package (BenchmarkPrimaryAveraged); it is good to about 3e-7.
const cubeExact = 0.6606781

func measure(b *testing.B, heavy bool, p MeshProblem, o MeshOptions, value func(*MeshSolution) float64, exact float64) {
	if heavy && os.Getenv("LAYDOWN_HEAVY") == "" {
		b.Skip("set LAYDOWN_HEAVY=1")
	}
	for b.Loop() {
		runtime.GC()
		debug.FreeOSMemory()
		_ = os.WriteFile("/proc/self/clear_refs", []byte("5"), 0) // sets the peak back where the system can
		var before, after syscall.Rusage
		_ = syscall.Getrusage(syscall.RUSAGE_SELF, &before)
		start := time.Now()
		s, err := Solve(context.Background(), p, o)
		if err != nil {
			b.Fatal(err)
		}
		wall := time.Since(start).Seconds()
		_ = syscall.Getrusage(syscall.RUSAGE_SELF, &after)
		b.ReportMetric(float64(s.Work.Unknowns), "panels")
		b.ReportMetric(wall, "s")
		b.ReportMetric(cpu(&after)-cpu(&before), "cpu-s")
		b.ReportMetric(float64(s.Work.OperatorBytes)/1e6, "operator-MB")
		b.ReportMetric(peakMB(), "peak-MB")
		b.ReportMetric((value(s)/exact-1)*1e6, "ppm-error")
		b.ReportMetric(float64(s.Work.Krylov), "krylov")
		b.ReportMetric(s.Work.Build, "build-s")
		c := s.Checks
		b.Logf("N %d: error %.2e, Newton %d, row sums %.0e, operator %.0e, imbalance %.1e, minimum %v", s.Work.Unknowns,
			value(s)/exact-1, s.Work.Newton, c.RowSum, c.Operator, c.CurrentImbalance, s.Surfaces[0].Minimum.Density)
	}
}

func cpu(r *syscall.Rusage) float64 {
	return float64(r.Utime.Sec+r.Stime.Sec) + float64(r.Utime.Usec+r.Stime.Usec)/1e6
}

// peakMB returns the peak of resident memory, 0 where the system does not tell.
func peakMB() float64 {
	data, _ := os.ReadFile("/proc/self/status")
	for line := range strings.Lines(string(data)) {
		if f := strings.Fields(line); len(f) > 1 && f[0] == "VmHWM:" {
			kb, _ := strconv.ParseFloat(f[1], 64)
			return kb / 1000
		}
	}
	return 0
}

// Graded cube, primary, unbounded bath, collocation.
func BenchmarkPrimaryCube(b *testing.B) {
	for _, n := range []int{13, 26, 50, 91} {
		b.Run(fmt.Sprint(12*n*n), func(b *testing.B) {
			measure(b, n > 28, one(cube(n, 1, r3.Vec{}, 2).surface("cube", current.Cathode)), MeshOptions{}, capacitance,
				cubeExact)
		})
	}
}

// Graded cube, averaged equation.
func BenchmarkPrimaryAveraged(b *testing.B) {
	for _, n := range []int{13, 26, 38} {
		b.Run(fmt.Sprint(12*n*n), func(b *testing.B) {
			measure(b, n > 28, one(cube(n, 1, r3.Vec{}, 2.5).surface("cube", current.Cathode)),
				MeshOptions{Galerkin: true, Tolerance: 1e-6},
				capacitance, cubeExact)
		})
	}
}

// Sphere: the error is that of the facets.
func BenchmarkPrimarySphere(b *testing.B) {
	for _, n := range []int{26, 50, 92} {
		b.Run(fmt.Sprint(12*n*n), func(b *testing.B) {
			measure(b, n > 28, one(ball(n, 1)), MeshOptions{}, capacitance, 1)
		})
	}
}

// Disc without thickness, drawn to the rim.
func BenchmarkPrimaryDisc(b *testing.B) {
	for _, n := range []int{18, 36, 71} {
		b.Run(fmt.Sprint(6*n*n), func(b *testing.B) {
			s := disc(n, 1, 2).surface("disc", current.Cathode)
			s.Sheet = true
			measure(b, n > 40, one(s), MeshOptions{}, capacitance, 2/math.Pi)
		})
	}
}

// Cube in a tank with kinetics, 2 V given. The reference current is known to 5e-5.
func BenchmarkTankCube(b *testing.B) {
	for _, n := range []int{12, 22, 44, 82} {
		p := hung(n, n/2, 2)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			measure(b, n > 22, p, MeshOptions{}, func(s *MeshSolution) float64 { return float64(s.Current) }, 5.9350)
		})
	}
}
