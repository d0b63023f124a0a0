package current

import "errors"

// Reasons that the solvers share, for [errors.Is].
var (
	ErrOverlap      = errors.New("bodies that cut, touch or enclose others") // or the walls
	ErrTooLarge     = errors.New("above the limit that is set")              // of unknowns or memory
	ErrNotConverged = errors.New("iteration has not converged")              // that of the rate laws
)
