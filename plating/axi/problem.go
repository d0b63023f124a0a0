package axi

import (
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A Kind says what a surface does in the cell.
type Kind uint8

// The kinds of surface. All cathodes hang on one rail and all anodes on
// another. A robber (thief) is a cathode whose metal nobody wants, a shield an
// insulator. A floating part is metal that is wired to neither rail: current
// enters it at one end and leaves at the other.
const (
	Cathode Kind = iota
	Anode
	Insulator
	Floating
)

// String returns the kind in words.
func (k Kind) String() string {
	switch k {
	case Cathode:
		return "cathode"
	case Anode:
		return "anode"
	case Insulator:
		return "insulator"
	case Floating:
		return "floating"
	}
	return "unknown kind"
}

// A Part is a body of revolution in the bath.
type Part struct {
	Name    string // for messages and results; parts without one are numbered
	Profile Profile
	Kind    Kind
	Law     current.Law // of the surface; the zero Law is primary: no polarisation
	// Bias is the potential of the part above that of its rail, as from a
	// rectifier of its own. Not for insulators and floating parts.
	Bias units.Voltage
	// Masked lists segments of the profile, from 0, that are stopped off.
	Masked []int
	// Sheet marks an open profile: metal without thickness. With both sides in
	// the bath it must be primary, and its current density is that of both
	// sides together; lying on the floor of a half space it may have any law.
	Sheet bool
}

// An Extent says how far the bath reaches.
type Extent uint8

// The extents. HalfSpace is the bath above an insulating floor at Z = 0.
const (
	Unbounded Extent = iota
	HalfSpace
	Vessel
)

// A Bath is the electrolyte and what holds it.
type Bath struct {
	Conductivity units.Conductivity
	Extent       Extent
	// FarAnode puts the anode infinitely far away, as a sphere without end.
	// Only without a vessel. Without it the parts alone carry the current.
	FarAnode bool
	// Shape is the inside of a vessel: from the lowest point on the axis,
	// outwards, to the highest point on the axis, the bath's surface included.
	Shape Profile
	// Walls lists the electrodes among the segments of Shape; the others insulate.
	Walls []Wall
}

// A Wall is a segment of the vessel that is an electrode.
type Wall struct {
	Segment int // of Bath.Shape, from 0
	Name    string
	Kind    Kind // Cathode, Anode or Floating
	Law     current.Law
	Bias    units.Voltage
}

// The segments of a tank made by [Tank].
const (
	TankBottom = iota
	TankSide
	TankSurface
)

// Open returns a bath without walls in which the parts carry all the current.
func Open(conductivity units.Conductivity) Bath { return Bath{Conductivity: conductivity} }

// OpenWithFarAnode returns a bath without walls and an anode infinitely far away.
func OpenWithFarAnode(conductivity units.Conductivity) Bath {
	return Bath{Conductivity: conductivity, FarAnode: true}
}

// Tank returns a bath in a cylindrical tank, bottom at Z = 0, surface at Z =
// depth; all of it insulates. Make electrodes of its walls with [Bath.With].
func Tank(conductivity units.Conductivity, radius, depth units.Length) Bath {
	shape := NewProfile(Point{0, 0}).LineTo(Point{radius, 0}, Point{radius, depth}, Point{0, depth})
	return Bath{Conductivity: conductivity, Extent: Vessel, Shape: shape}
}

// With returns the bath with one more electrode among its walls.
func (b Bath) With(w Wall) Bath {
	b.Walls = append(append(make([]Wall, 0, len(b.Walls)+1), b.Walls...), w)
	return b
}

// A Drive is what the rectifier holds: the total current, or the voltage
// between anode rail and cathode rail. The zero Drive is refused.
type Drive struct {
	control control
	current units.Current
	voltage units.Voltage
}

type control uint8

const (
	byNothing control = iota
	byCurrent
	byVoltage
)

// ByCurrent drives the cell by the total current that leaves the bath at the
// cathodes, robbers included.
func ByCurrent(total units.Current) Drive { return Drive{control: byCurrent, current: total} }

// ByVoltage drives the cell by the voltage between the rails. Equilibrium
// potentials are not part of it: add their difference to get what a meter shows.
func ByVoltage(between units.Voltage) Drive { return Drive{control: byVoltage, voltage: between} }

// A Problem is a cell: bath, bodies, drive.
type Problem struct {
	Bath  Bath
	Parts []Part
	Drive Drive
}

// A Method is the way the boundary is cut.
type Method uint8

// HighOrder panels carry polynomials and shrink towards every edge; Constant
// panels carry one value each, are cut with grading exponent 3, and serve for
// a quick answer and as a second method to compare with.
const (
	HighOrder Method = iota
	Constant
)

// Options are the settings of the calculation. The zero Options are those
// for a part's total to about 1e-8 and its minimum to 1e-6.
type Options struct {
	Method Method
	Order  int // HighOrder: unknowns a panel, 4 to 16; 0 means 8
	Levels int // HighOrder: steps of grading to an edge, 1 to 12; 0 means 3
	Panels int // Constant: about how many panels; 0 means 350
	// MaxUnknowns refuses a problem that needs more; 0 means 1400, at most
	// 2000: time grows with its cube.
	MaxUnknowns int
	NoEstimate  bool // leave out the coarser solution, and with it the error estimate
	Workers     int  // goroutines that integrate; 0 means as many as processors
}
