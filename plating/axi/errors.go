package axi

import (
	"errors"
	"fmt"

	"example.com/laydown/plating/current"
)

// Reasons, for [errors.Is], beside [current.ErrOverlap], [current.ErrTooLarge] and
// [current.ErrNotConverged]. A [*units.ValueError] wraps the ones about the description
// of a problem, a [*SolveError] the ones about the solution.
var (
	ErrProfile     = errors.New("not a usable profile")                // empty, broken, or open where it must be closed
	ErrCrossing    = errors.New("profile crosses or touches itself")   // two segments have a point in common
	ErrOutside     = errors.New("outside the bath")                    // a part beyond the vessel or below the floor
	ErrShort       = errors.New("cathode and anode touch")             // metal of the two rails in contact
	ErrNoElectrode = errors.New("no electrode")                        // a side of the cell is missing
	ErrSingular    = errors.New("system of equations is not solvable") // nothing fixes the potentials
)

// A SolveError reports a problem that was well described but not solved.
type SolveError struct {
	Unknowns   int     // of the system
	Iterations int     // of Newton's method
	Change     float64 // last relative change of a current density
	Err        error   // the reason: one of those of this package or of current
}

// Error returns the reason with the numbers and what would do in one line.
func (e *SolveError) Error() string {
	need := "a law with a milder slope, or a smaller voltage"
	switch e.Err {
	case current.ErrTooLarge:
		return fmt.Sprintf("current distribution with %d unknowns: %v; need fewer corners (a curve is an arc, not a "+
			"chain of lines), the constant method, or a higher limit", e.Unknowns, e.Err)
	case ErrSingular:
		need = "an electrode that fixes the potential"
	}
	return fmt.Sprintf("current distribution with %d unknowns: %v (%d iterations, last change %.1e); need %s",
		e.Unknowns, e.Err, e.Iterations, e.Change, need)
}

// Unwrap returns the reason.
func (e *SolveError) Unwrap() error { return e.Err }
