package rinse_test

import (
	"math"
	"testing"
)

// A vat of the simulation holds litres and grams, and knows no formula of the
// package: liquid is poured in, mixed, and taken out.
type vat struct{ litres, grams float64 }

func (v *vat) pour(litres, grams float64) { v.litres += litres; v.grams += grams }

// take removes liquid at the content of the vat and returns its grams.
func (v *vat) take(litres float64) float64 {
	g := v.grams / v.litres * litres
	v.litres -= litres
	v.grams -= g
	return g
}

// A line is a row of vats on which every tank holds a load at all times: in
// each turn all loads move on by one tank together, and water moves the other
// way. The loads carry in litres out of the bath, and out litres from each vat.
type line struct {
	vats         []vat
	bath         float64 // g/L
	in, out      float64 // L
	counterflow  float64 // L of water a turn into the last vat, moving up
	own          []float64
	dragged, off float64 // g carried past the last vat, g run over at the first
}

// turn moves loads and water once. What comes to a vat left its neighbour at
// the end of the turn before; it hangs there while the water comes in.
func (l *line) turn() {
	n := len(l.vats)
	films, waters := make([]float64, n), make([]float64, n) // grams on the way
	for i := range l.vats {
		films[i] = l.vats[i].grams / l.vats[i].litres * l.out
		waters[i] = l.vats[i].grams / l.vats[i].litres * l.counterflow
	}
	before := make([]float64, n)
	for i := range l.vats {
		before[i] = l.vats[i].litres
	}
	for i := range l.vats {
		v := &l.vats[i]
		// What moves away leaves, what comes arrives.
		v.litres, v.grams = v.litres-l.out, v.grams-films[i]
		if i > 0 {
			v.litres, v.grams = v.litres-l.counterflow, v.grams-waters[i]
		}
		if i == 0 {
			v.pour(l.in, l.in*l.bath)
		} else {
			v.pour(l.out, films[i-1])
		}
		if i == n-1 {
			v.pour(l.counterflow, 0)
		} else {
			v.pour(l.counterflow, waters[i+1])
		}
		if l.own != nil {
			v.pour(l.own[i], 0)
		}
		if over := v.litres - before[i]; over > 0 {
			l.off += v.take(over)
		}
	}
	l.dragged += films[n-1]
}

// settle turns until nothing changes any more.
func (l *line) settle(t *testing.T) {
	t.Helper()
	for turn := 0; turn < 3_000_000; turn++ {
		old := make([]float64, len(l.vats))
		for i := range l.vats {
			old[i] = l.vats[i].grams
		}
		l.turn()
		moved := 0.0
		for i := range l.vats {
			moved = math.Max(moved, math.Abs(l.vats[i].grams-old[i])/l.vats[i].grams)
		}
		if turn > 20 && moved < 1e-15 {
			return
		}
	}
	t.Fatal("the line does not settle")
}

func (l *line) content(i int) float64 { return l.vats[i].grams / l.vats[i].litres }

// steadyLine is the simulation with small vats, so that it settles soon: the
// steady state does not depend on their size.
func steadyLine(n int, q, in, out float64, own []float64) *line {
	l := &line{vats: make([]vat, n), bath: 8, in: in, out: out, counterflow: q, own: own}
	for i := range l.vats {
		l.vats[i] = vat{litres: 2*(q+in+out) + float64(i)*out, grams: 1e-3}
		if own != nil {
			l.vats[i].litres += 2 * own[i]
		}
	}
	return l
}
