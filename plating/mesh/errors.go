package mesh

import (
	"errors"
	"fmt"
	"strings"

	"example.com/laydown/units"
)

// Reasons, for [errors.Is]. Every [*FaultError] wraps one of them.
var (
	ErrTruncated = errors.New("file ends too early") // fewer data than the file promises
	// a word, number or byte that the format does not allow there
	ErrSyntax      = errors.New("not as the format has it")
	ErrUnsupported = errors.New("not supported")       // allowed by the format, not read here
	ErrNotFinite   = errors.New("not a finite number") // NaN or an infinity
	ErrTooLarge    = errors.New("too large")           // a coordinate or a count that cannot be
	// a triangle names a vertex that the mesh has not
	ErrIndex = errors.New("corner that does not exist")
	ErrEmpty = errors.New("no surface") // no triangle, or an area of zero
	// cannot be cut into triangles without guessing
	ErrPolygon = errors.New("not a flat convex polygon")
	ErrOpen    = errors.New("not closed")               // edges used by one triangle only
	ErrCrowded = errors.New("more than two at an edge") // edges used by three triangles or more
	// no consistent outside, or one that may be meant either way
	ErrOrientation = errors.New("inside and outside unclear")
	ErrCrossing    = errors.New("surfaces that cross or lie on each other") // of two bodies or of one
	ErrDuplicate   = errors.New("faces that lie twice")                     // faces with the same three corners
	ErrCollapse    = errors.New("corners would fall together")
)

// A FaultError reports a file or a mesh that cannot be taken: where, what was
// found and what would do.
type FaultError struct {
	What     string // what is wrong, in words, with the value found
	Need     string // what would do
	Line     int    // line of a text file, from 1; 0 when there is none
	Offset   int64  // byte of a file, from 0; -1 when it is not about a file
	Triangle int    // triangle, from 0; -1 when it is not about one
	Err      error  // the reason: one of the sentinels of this package
}

// Error returns place, finding, reason and remedy in one line.
func (e *FaultError) Error() string {
	var b strings.Builder
	switch {
	case e.Line > 0:
		fmt.Fprintf(&b, "line %d: ", e.Line)
	case e.Offset >= 0:
		fmt.Fprintf(&b, "byte %d: ", e.Offset)
	}
	if e.Triangle >= 0 {
		fmt.Fprintf(&b, "triangle %d: ", e.Triangle)
	}
	fmt.Fprintf(&b, "%s: %v", e.What, e.Err)
	if e.Need != "" {
		fmt.Fprintf(&b, "; need %s", e.Need)
	}
	return units.Printable(b.String())
}

// Unwrap returns the reason.
func (e *FaultError) Unwrap() error { return e.Err }

// about makes an error on the mesh as a whole.
func about(reason error, need, format string, args ...any) *FaultError {
	return &FaultError{What: fmt.Sprintf(format, args...), Need: need, Offset: -1, Triangle: -1, Err: reason}
}

// aboutTriangle makes an error on one triangle.
func aboutTriangle(i int, reason error, need, format string, args ...any) *FaultError {
	e := about(reason, need, format, args...)
	e.Triangle = i
	return e
}

// clip shortens text from a file for a message and makes it printable.
func clip(text []byte) string {
	return fmt.Sprintf("%q", units.Clip(string(text[:min(len(text), 1000)])))
}
