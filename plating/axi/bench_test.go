package axi_test

import (
	"fmt"
	"math"
	"testing"

	. "example.com/laydown/plating/axi"
)

// BenchmarkSolve prints, for the two tanks of the accuracy table and for the
// closed cylinder, unknowns, and errors of total and least current density
// against the finest solution in parts of 1e9 (ppb), beside the time:
//
//	go test -run xxx -bench Solve -benchtime 3x ./plating/axi
func BenchmarkSolve(b *testing.B) {
	for _, c := range []struct {
		name string
		p    ProfileProblem
	}{{"cylinder-primary", alone(Revolved{Profile: Rod(1, -1, 1)})}, {"hung-butler-volmer", hung()}, {"cup-tafel", cup()}} {
		best := solve(b, c.p, ProfileOptions{Order: 14, Levels: 5, MaxUnknowns: 2000, NoEstimate: true})
		for _, o := range []ProfileOptions{panels(88), panels(176), panels(352), panels(704), order(4, 1), order(6, 2),
			order(8, 2),
			single, order(10, 3), order(12, 4)} {
			kind := fmt.Sprintf("order%d-levels%d", o.Order, o.Levels)
			switch {
			case o.Panelling == Constant:
				kind = fmt.Sprintf("constant%d", o.Panels)
			case o.Order == 0:
				kind = "default"
			}
			b.Run(c.name+"/"+kind, func(b *testing.B) {
				var s *ProfileSolution
				for b.Loop() {
					s = solve(b, c.p, o)
				}
				b.ReportMetric(float64(s.Checks.Unknowns), "unknowns")
				b.ReportMetric(math.Abs(float64(s.Current/best.Current)-1)*1e9, "ppb-total")
				b.ReportMetric(math.Abs(float64(s.Parts[0].Whole.Min/best.Parts[0].Whole.Min)-1)*1e9, "ppb-min")
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(b.Elapsed().Seconds()/float64(b.N), "s")
			})
		}
	}
}

// BenchmarkEstimate is a whole run with the error estimate, as a user has it.
func BenchmarkEstimate(b *testing.B) {
	for b.Loop() {
		solve(b, cup(), ProfileOptions{})
	}
}

// BenchmarkElliptic is the kernel's share: one K and E.
func BenchmarkElliptic(b *testing.B) {
	for b.Loop() {
		Elliptic(0.999, 1e-3)
	}
}
