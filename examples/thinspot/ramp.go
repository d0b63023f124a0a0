package main

import "image/color"

// A ramp turns a thickness into a colour: thin is dark, thick is light. The
// lightness rises all the way, so that it reads in black and white and for eyes
// that do not tell red from green; the hue goes from blue to a warm white.
type ramp struct{ low, high float64 }

// stops are red, green and blue from dark to light.
var stops = [...][3]float64{{14, 22, 66}, {32, 72, 130}, {62, 124, 150}, {124, 168, 148}, {196, 202, 146}, {250, 238,
	196}}

// at returns the colour of a value; what lies outside takes the end.
func (r ramp) at(v float64) color.RGBA {
	x := 0.5
	if r.high > r.low {
		x = (v - r.low) / (r.high - r.low)
	}
	x = min(max(x, 0), 1) * float64(len(stops)-1)
	i := min(int(x), len(stops)-2)
	f := x - float64(i)
	mix := func(k int) uint8 { return uint8(stops[i][k] + f*(stops[i+1][k]-stops[i][k]) + 0.5) }
	return color.RGBA{mix(0), mix(1), mix(2), 255}
}
