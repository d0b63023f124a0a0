package field

import (
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A Boundary is a triangle mesh with one role: a piece of the boundary of the bath. Seen from the bath the corners
// of a triangle run anticlockwise, so that its normal points from the metal
// into the bath, as in an STL file of a part. Several surfaces may form one
// closed body together (a part with a masked end): their common edges must
// have the same corner coordinates on both sides, to the last bit.
type Boundary struct {
	Name      string
	Vertices  []r3.Vec // metres
	Triangles [][3]int32
	Kind      current.Kind
	Law       current.Law // the zero law is primary: the metal takes the potential of the solution
	Vessel    bool        // encloses the bath instead of hanging in it; the normals still point into the bath
	// open, of no thickness, wet on both sides; only where every electrode is primary in an unbounded bath
	Sheet bool
}

// A Face names a wall of a [Box].
type Face uint8

// The faces, by the axis and the side they are on.
const (
	LowX Face = iota
	HighX
	LowY
	HighY
	LowZ
	HighZ
)

// String returns the face in words, such as "low x".
func (f Face) String() string {
	if f > HighZ {
		return "unknown face"
	}
	return [...]string{"low x", "high x", "low y", "high y", "low z", "high z"}[f]
}

// A Wall gives a whole face of a box a role. Faces without one are insulators.
type Wall struct {
	Face Face
	Kind current.Kind
	Law  current.Law
}

// A Box is a rectangular tank, its free surface of the solution included. The
// package lays the panels on its walls.
type Box struct {
	Low, High r3.Vec       // opposite corners, metres
	Walls     []Wall       // faces that are not insulators
	Panel     units.Length // largest edge of a wall panel; 0 for a tenth of the longest side
}

// A MeshProblem is a bath with everything in it. Without a box and without a vessel
// surface the bath is unbounded. Where there is no anode it must be: the anode is then
// far away, and the voltage counts from it.
type MeshProblem struct {
	Conductivity units.Conductivity // > 0
	Box          *Box               // nil where there is none
	Surfaces     []Boundary
	Drive        current.Drive // a voltage must be above zero
}

// An Equation says how the boundary equation is set up.
type Equation uint8

// The methods. Direct always works on closed bodies; SingleLayer needs an
// unbounded bath with primary electrodes alone, and is several times quicker.
const (
	Automatic   Equation = iota // SingleLayer where it can, else Direct
	Direct                      // Green's formula, potential and flux as unknowns
	SingleLayer                 // first-kind equation, the flux as unknown
)

// MeshOptions tune a run. The zero value is a good choice.
type MeshOptions struct {
	Equation Equation
	// average the equation over each panel instead of taking it at the centroid: slower, more exact at edges
	Galerkin    bool
	Tolerance   float64 // of the compressed operator, relative; 0 for 1e-5
	Converged   float64 // largest relative change of a local current density that one more step may make; 0 for 1e-5
	MemoryLimit int64   // bytes; 0 for 4 GB
	Workers     int     // goroutines; 0 for GOMAXPROCS. The result is the same for the same number of workers.
	Progress    func(stage string, done, total int)
}
