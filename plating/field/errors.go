package field

import (
	"errors"
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// Reasons, for [errors.Is], beside [current.ErrOverlap] (the solid angle at a panel is
// not that of a free surface), [current.ErrTooLarge] and [current.ErrNotConverged].
var (
	// a hole, a free edge, or an edge used by more than two triangles
	ErrOpen        = errors.New("not a closed surface")
	ErrOrientation = errors.New("triangles turned the wrong way") // normals that point into the metal
	ErrDegenerate  = errors.New("degenerate triangle")            // no area
	ErrGap         = errors.New("gap too narrow for its panels")  // less than half a panel of solution
	ErrSign        = errors.New("current of the wrong sign")      // a primary cathode that seems to dissolve
	ErrOperator    = errors.New("compressed operator out of tolerance")
)

// A MeshError reports a mesh that the method cannot take: which surface, which
// triangle of it (-1 for the whole) and what would do.
//
// Errors of this type are refusals, not warnings: the boundary equation would
// give numbers for such a mesh, and they would mean nothing.
type MeshError struct {
	Surface  string
	Triangle int
	Detail   string
	Need     string
	Err      error
}

// Error returns surface, triangle, reason and remedy in one line.
//
// The triangle is counted from 0 in the order of the caller's mesh.
func (e *MeshError) Error() string {
	at := ""
	if e.Triangle >= 0 {
		at = fmt.Sprintf(", triangle %d", e.Triangle)
	}
	return fmt.Sprintf("surface %q%s: %v: %s; need %s", units.Clip(e.Surface), at, e.Err, e.Detail, e.Need)
}

// Unwrap returns the reason.
func (e *MeshError) Unwrap() error { return e.Err }

// A SignError reports panels of primary cathodes that seem to dissolve where none
// can: the mesh does not resolve the little current there, and the solution is
// not to be used.
//
// It comes after the run, since only the solution shows it. The usual case is a
// deep recess: deep in it the density is below the error that the panels at its
// mouth make there. Smaller panels cure it, or the averaged equation.
type SignError struct {
	Surface  string               // of the worst panel
	Panels   int                  // on all cathodes
	Triangle int                  // the worst one, of that surface
	At       r3.Vec               // its centroid, metres
	Density  units.CurrentDensity // there, negative
	Mean     units.CurrentDensity // over all cathodes
	Need     string
}

// Error returns surface, number of panels, place in millimetres and remedy in one line.
func (e *SignError) Error() string {
	return fmt.Sprintf("surface %q: %v: no primary cathode can dissolve, but %d panels seem to, most of all triangle %d "+
		"at (%.4g, %.4g, %.4g) mm with %v against a mean of %v; need %s", e.Surface, ErrSign, e.Panels, e.Triangle,
		1e3*e.At.X, 1e3*e.At.Y, 1e3*e.At.Z, e.Density, e.Mean, e.Need)
}

// Unwrap returns [ErrSign].
func (e *SignError) Unwrap() error { return ErrSign }

// A CostError reports a run that needs more memory than [MeshOptions.MemoryLimit].
//
// Where the estimate is above the limit the run does not begin. Where the
// blocks turn out larger than estimated it ends while they are built; the cost
// is then what was held.
type CostError struct {
	Cost  Cost
	Limit int64
}

// Error returns need and limit in one line.
func (e *CostError) Error() string {
	return fmt.Sprintf("memory %d MB for %d panels: %v, %d MB; need a coarser mesh or a higher limit",
		e.Cost.Bytes>>20, e.Cost.Unknowns, current.ErrTooLarge, e.Limit>>20)
}

// Unwrap returns [current.ErrTooLarge].
func (e *CostError) Unwrap() error { return current.ErrTooLarge }

// A ConvergenceError reports an iteration that did not reach its tolerance.
//
// The change is the largest of any panel: a single one, on a sliver or at a
// sharp edge, may be what does not settle.
type ConvergenceError struct {
	Steps    int     // Newton steps taken
	Residual float64 // of the last step, volts
	Change   float64 // largest relative change of a current density in it
	Err      error
}

// Error returns what was reached in one line.
//
// A smaller drive tells a law from a mesh: what settles at a tenth of the
// current and not at the whole of it is a law, what settles at neither is the
// mesh.
func (e *ConvergenceError) Error() string {
	return fmt.Sprintf("%v after %d steps: residual %.2g V, largest change %.2g; need a finer mesh or a smaller drive",
		e.Err, e.Steps, e.Residual, e.Change)
}

// Unwrap returns the reason.
func (e *ConvergenceError) Unwrap() error { return e.Err }
