// Package terminal is how the programs in examples speak to a person: whatever text
// a file or a command line gave them, one line stays one line and no character of it
// moves the cursor. See [units.Printable].
package terminal

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"example.com/laydown/units"
)

// Line writes one line.
func Line(w io.Writer, format string, args ...any) error {
	_, err := fmt.Fprintln(w, units.Printable(fmt.Sprintf(format, args...)))
	return err
}

// Error writes an error behind the name of the program, joined errors each in a line
// of its own.
func Error(w io.Writer, program string, err error) {
	if joined, ok := err.(interface{ Unwrap() []error }); ok && isJoin(err) {
		for _, e := range joined.Unwrap() {
			Error(w, program, e)
		}
		return
	}
	_ = Line(w, "%s: %v", program, err)
}

// isJoin reports whether an error is one of [errors.Join], which has nothing to say
// of its own, and not one that wraps several.
func isJoin(err error) bool { return fmt.Sprintf("%T", err) == fmt.Sprintf("%T", errors.Join(io.EOF)) }

// Parse reads the command line. Where it is wrong or asks for help, Parse says so with
// the usage and returns false and the status to exit with.
func Parse(flags *flag.FlagSet, args []string, w io.Writer, usage func()) (status int, ok bool) {
	flags.SetOutput(io.Discard) // it would print what it was given as it is
	flags.Usage = func() {}
	err := flags.Parse(args)
	flags.SetOutput(w)
	switch {
	case err == nil:
		return 0, true
	case errors.Is(err, flag.ErrHelp):
		usage()
		return 0, false
	}
	Error(w, flags.Name(), err)
	usage()
	return 2, false
}
