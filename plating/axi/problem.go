package axi

import (
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A Revolved is a part of the cell: a body of revolution in the bath.
type Revolved struct {
	Name    string       // for messages and results; parts without one are numbered
	Profile Profile      // turned round the axis
	Kind    current.Kind // cathode, anode, insulator or floating
	Law     current.Law  // of the surface; the zero Law is primary: no polarisation
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
	Unbounded Extent = iota // no walls
	HalfSpace               // above a floor at Z = 0
	Vessel                  // within Electrolyte.Shape
)

// An Electrolyte is the bath: what conducts, how far it reaches, and what holds it.
type Electrolyte struct {
	Conductivity units.Conductivity // κ, > 0 [S/m]
	Extent       Extent             // how far it reaches
	// FarAnode puts the anode infinitely far away, as a sphere without end.
	// Only without a vessel. Without it the parts alone carry the current.
	FarAnode bool
	// Shape is the inside of a vessel: from the lowest point on the axis,
	// outwards, to the highest point on the axis, the bath's surface included.
	Shape Profile
	// Walls lists the electrodes among the segments of Shape; the others insulate.
	Walls []WallSegment
}

// A WallSegment is a segment of the vessel that is an electrode.
type WallSegment struct {
	Segment int           // of Electrolyte.Shape, from 0
	Name    string        // for messages and results
	Kind    current.Kind  // Cathode, Anode or Floating
	Law     current.Law   // the zero Law is primary
	Bias    units.Voltage // above its rail, as of a Body
}

// The segments of a tank made by [Tank].
const (
	TankBottom  = iota // the flat bottom, from the axis outwards
	TankSide           // the round side, from the bottom up
	TankSurface        // the surface of the bath, back to the axis
)

// Open returns a bath without walls in which the parts carry all the current.
func Open(conductivity units.Conductivity) Electrolyte {
	return Electrolyte{Conductivity: conductivity}
}

// OpenWithFarAnode returns a bath without walls and an anode infinitely far away.
func OpenWithFarAnode(conductivity units.Conductivity) Electrolyte {
	return Electrolyte{Conductivity: conductivity, FarAnode: true}
}

// Tank returns a bath in a cylindrical tank, bottom at Z = 0, surface at Z =
// depth; all of it insulates. Make electrodes of its walls with [Electrolyte.With].
func Tank(conductivity units.Conductivity, radius, depth units.Length) Electrolyte {
	shape := NewProfile(Point{0, 0}).LineTo(Point{radius, 0}, Point{radius, depth}, Point{0, depth})
	return Electrolyte{Conductivity: conductivity, Extent: Vessel, Shape: shape}
}

// With returns the bath with one more electrode among its walls.
func (b Electrolyte) With(w WallSegment) Electrolyte {
	b.Walls = append(append(make([]WallSegment, 0, len(b.Walls)+1), b.Walls...), w)
	return b
}

// A ProfileProblem is a cell of bodies of revolution: bath, bodies, drive.
type ProfileProblem struct {
	Bath  Electrolyte   // what conducts
	Parts []Revolved    // cathodes, anodes, shields
	Drive current.Drive // current into the cathodes, or voltage
}

// A Panelling is the way the boundary is cut.
type Panelling uint8

// HighOrder panels carry polynomials and shrink towards every edge; Constant
// panels carry one value each, are cut with grading exponent 3, and serve for
// a quick answer and as a second method to compare with.
const (
	HighOrder Panelling = iota // polynomials of ProfileOptions.Order coefficients
	Constant                   // one value a panel
)

// ProfileOptions are the settings of the calculation. The zero ProfileOptions are those
// for a part's total to about 1e-8 and its minimum to 1e-6.
type ProfileOptions struct {
	Panelling Panelling
	Order     int // HighOrder: unknowns a panel, 4 to 16; 0 means 8
	Levels    int // HighOrder: steps of grading to an edge, 1 to 12; 0 means 3
	Panels    int // Constant: about how many panels; 0 means 350
	// MaxUnknowns refuses a problem that needs more; 0 means 1400, at most
	// 2000: time grows with its cube.
	MaxUnknowns int
	NoEstimate  bool // leave out the coarser solution, and with it the error estimate
	Workers     int  // goroutines that integrate; 0 means as many as processors
}
