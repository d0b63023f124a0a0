package thinspot

import "image/color"

// A ColourScale turns thickness in micrometres into colours: thin is dark, thick is light.
// The lightness rises all the way, so that it reads in black and white and for eyes
// that do not tell red from green; the hue goes from blue to a warm white.
type ColourScale struct {
	Low, High float64 // µm
	Label     string  // in words, with what is marked
	Mark      float64 // µm, the minimum thickness: a line across the scale where it lies on it
}

// stops are red, green and blue from dark to light.
var stops = [...][3]float64{{14, 22, 66}, {32, 72, 130}, {62, 124, 150}, {124, 168, 148}, {196, 202, 146}, {250, 238,
	196}}

// Colour returns the colour of a thickness in micrometres; what lies outside the scale
// takes its end, and what is no number the middle.
func (s ColourScale) Colour(v float64) color.RGBA {
	x := 0.5
	if s.High > s.Low && v == v {
		x = (v - s.Low) / (s.High - s.Low)
	}
	if x != x { // a scale without end
		x = 0.5
	}
	x = min(max(x, 0), 1) * float64(len(stops)-1)
	i := min(int(x), len(stops)-2)
	f := x - float64(i)
	mix := func(k int) uint8 { return uint8(stops[i][k] + f*(stops[i+1][k]-stops[i][k]) + 0.5) }
	return color.RGBA{mix(0), mix(1), mix(2), 255}
}
