package axi

import "example.com/laydown/units"

// Rod returns the profile of a round bar or disc on the axis, from one height to a higher one.
func Rod(radius, low, high units.Length) Profile {
	return NewProfile(Point{0, low}).LineTo(Point{radius, low}, Point{radius, high}, Point{0, high})
}

// Ball returns the profile of a sphere on the axis about a height.
func Ball(radius, height units.Length) Profile {
	return NewProfile(Point{0, height - radius}).ArcVia(Point{radius, height}, Point{0, height + radius})
}

// Torus returns the profile of a ring of round wire: the radius to the
// middle of the wire, its height, and the thickness of the wire.
func Torus(radius, height, thickness units.Length) Profile {
	h := thickness / 2
	low, high := Point{radius, height - h}, Point{radius, height + h}
	return NewProfile(low).ArcVia(Point{radius + h, height}, high).ArcVia(Point{radius - h, height}, low)
}

// Tube returns the profile of a cylinder open at both ends, as of a sheet
// anode bent round the tank or of a shield.
func Tube(inner, outer, low, high units.Length) Profile {
	return NewProfile(Point{inner, low}).LineTo(Point{outer, low}, Point{outer, high}, Point{inner, high}, Point{inner,
		low})
}
