package field

import (
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A Boundary is a triangle mesh with one role: a piece of the boundary of the
// bath. Seen from the bath the corners of a triangle run anticlockwise, so that
// its normal points from the metal into the bath, as in an STL file of a part.
// Several surfaces may form one closed body together (a part with a masked
// end): their common edges must have the same corner coordinates on both sides,
// to the last bit.
type Boundary struct {
	Name string
	// Vertices are in metres, Triangles their numbers by three.
	Vertices  []r3.Vec
	Triangles [][3]int32
	// Kind is the boundary condition: what it means stands in package current.
	Kind current.Kind
	// Law is the rate law. The zero law is primary: the metal takes the
	// potential of the solution. An insulator has none.
	Law current.Law
	// Vessel says that the surface encloses the bath instead of hanging in it;
	// the normals still point into the bath.
	Vessel bool
	// Sheet says that the surface is open, of no thickness, and wet on both
	// sides. It goes only where every electrode is primary in an unbounded
	// bath.
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

// A Wall gives a whole face of a box a role. Faces without one are insulators,
// and so is the face of the bath towards the air, which no current crosses.
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

// An Equation says how the boundary equation is set up: which unknowns the
// panels carry.
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
	// Galerkin averages the equation over each panel instead of taking it at
	// the centroid: slower by three to four times, and more exact at edges.
	Galerkin bool
	// Tolerance is that of the compressed operator, relative, from 1e-8 to
	// 1e-3; 0 for 1e-5. A tenth of it takes about a fifth more memory.
	Tolerance float64
	// Converged is the largest relative change of a local current density that
	// one more step may make, from 1e-9 to 1e-2; 0 for 1e-5.
	Converged float64
	// MemoryLimit is in bytes, for the whole run; 0 for 4 GB. What is estimated
	// to take more is refused before it begins.
	MemoryLimit int64
	// Workers is the number of goroutines; 0 for GOMAXPROCS. The result is the
	// same for the same number of workers.
	Workers int
	// Progress is told the stage, "operator" or "solution", and how much of it
	// is done. It is called from one goroutine at a time, and should return
	// soon; nil for none.
	Progress func(stage string, done, total int)
}
